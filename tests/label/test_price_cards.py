"""Price cards and stall signs, as they are typed and as they are printed."""

from typing import Any

import pytest
from pypdf import PdfReader

pytestmark = pytest.mark.usefixtures("frozen")


@pytest.fixture
def card(shop: Any, run: Any) -> Any:
    """The words of a card of the worked shop's bars of 100 g, of a maker in Ireland."""

    def printed(*words: str) -> str:
        run("label", "ticket", shop.batch, "--market", "eu", "-o", "card.pdf", "--force", *words)
        return " ".join(PdfReader("card.pdf").pages[0].extract_text().replace("\xa0", " ").split())

    return printed


@pytest.mark.parametrize("layout", ["ticket-price", "ticket-shelf", "ticket-stall"])
def test_a_card_has_the_price_and_that_of_a_kilogram(card: Any, layout: str) -> None:
    said = card("--price", "6.50", "--layout", layout)
    for words in ("Plain Bar", "€6.50", "€65.00 per kg", "100 g"):
        assert words in said
    assert ("Tidewrack Soaps" in said) == (layout != "ticket-price")


def test_a_trader_who_is_spared_leaves_the_price_of_a_kilogram_out(card: Any) -> None:
    assert "per kg" not in card("--price", "6.50", "--no-unit-price")


def test_without_a_price_there_is_room_to_write_one(card: Any) -> None:
    said = card("--layout", "ticket-stall")
    assert "Plain Bar" in said
    assert "€" not in said


def test_a_price_of_nothing_is_none_and_a_huge_one_is_printed_whole(card: Any, shop: Any, run: Any) -> None:
    refused = run("label", "ticket", shop.batch, "--market", "eu", "--price", "0", "-o", "none.pdf", code=2).stderr
    assert "leave --price out for room to write one" in refused
    assert "€0.01" in card("--price", "0.01")
    assert "€1,234,567.00" in card("--price", "1234567")


def test_a_pound_is_priced_in_the_united_states_where_she_wants_it(shop: Any, run: Any) -> None:
    """No federal rule was found, so it stands only where it is asked for; 6.50 × 453.59237 / 100 = 29.48."""
    run("init", "--market", "us=Nuala Quill; Tidewrack Soaps, 3 Slip Lane, Port Emmer")
    words = ("label", "ticket", shop.batch, "--market", "us-soap", "--price", "6.50", "--force", "-o", "us.pdf")
    run(*words)
    assert "per lb" not in PdfReader("us.pdf").pages[0].extract_text()
    run(*words, "--unit-price")
    assert "€29.48 per lb" in PdfReader("us.pdf").pages[0].extract_text().replace("\xa0", " ")
