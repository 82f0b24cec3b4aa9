"""Price cards and stall signs, as they are typed and as they are printed."""

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from ledger.documents.kit.layout import label_layout, sheet_layout
from ledger.documents.label.labels import draw_labels
from ledger.reference.shipped import templates

pytestmark = pytest.mark.usefixtures("frozen")


@pytest.fixture
def card(shop: Any, run: Any, read: Any) -> Any:
    """The words of a card of the worked shop's bars of 100 g, of a maker in Ireland."""

    def printed(*words: str) -> str:
        run("label", "ticket", shop.batch, "--market", "eu", "-o", "card.pdf", "--force", *words)
        return str(read(Path("card.pdf").read_bytes()).text().replace("\xa0", " "))

    return printed


def test_a_card_has_the_price_and_that_of_a_kilogram(card: Any) -> None:
    for layout in ("ticket-price", "ticket-shelf", "ticket-stall"):
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


SPOKEN = {"de": "€65.00 je kg", "fr": "€65.00 par kg", "en fr": "€65.00 per kg / par kg", "nl": "€65.00/kg"}


def test_a_card_speaks_the_language_asked_for(card: Any) -> None:
    """German, French, both; of Dutch no words are shipped, and a stroke needs none."""
    for language, says in SPOKEN.items():
        said = card("--price", "6.50", "--language", language, "--layout", "ticket-shelf")
        assert says in said
        assert ("per kg" in said) == ("en" in language)
        assert PdfReader("card.pdf").root_object["/Lang"] == language[:2]


def test_what_she_wrote_and_the_batch_are_in_that_language_too(card: Any, tmp_path: Any) -> None:
    """A card of her own with what it is and its batch."""
    text = (templates() / "ticket-shelf.toml").read_text(encoding="utf-8")
    mine = text.replace('["product"]', '["product", "function", "batch_code"]')
    (tmp_path / "mine.toml").write_text(mine, encoding="utf-8")
    said = card("--layout", "mine.toml", "--language", "de")
    assert "Seife" in said
    assert "Charge 26-" in said


PRICES = {"£6.50": "£6.50", "6.50 GBP": "£6.50", "USD 6.50": "$6.50", "€6.50": "€6.50", "6,50 €": "€6.50"}


def test_a_price_is_in_the_money_it_is_written_with(card: Any) -> None:
    for typed, says in PRICES.items():
        assert says in card("--price", typed)


NO_ONE_MONEY: list[tuple[str, str]] = [
    ("$6.50", "'$6.50' may be USD or CAD or AUD or NZD; write the code, such as 6.50 USD."),
    ("£6.50 EUR", "The price '£6.50 EUR' is "),
    ("dear", "cannot be read from 'dear'"),
]


def test_a_price_in_no_one_money_is_refused(shop: Any, run: Any) -> None:
    for typed, says in NO_ONE_MONEY:
        words = ("label", "ticket", shop.batch, "--market", "eu", "-o", "card.pdf", "--price", typed)
        assert says in run(*words, code=2).stderr


def test_in_northern_ireland_a_price_is_in_pounds(shop: Any, run: Any) -> None:
    words = (
        "label",
        "ticket",
        shop.batch,
        "--market",
        "eu",
        "-o",
        "card.pdf",
        "--northern-ireland",
        "--price",
        "6.50 EUR",
    )
    assert "Prices in Northern Ireland are in GBP; write --price '6.50 GBP'." in run(*words, code=2).stderr


def test_a_card_has_the_colour_of_its_product(ticket: Any, read: Any) -> None:
    """The middle of the block of ticket-shelf.toml, 9 mm right of and 18.5 mm under the corner of the paper."""
    for colour, seen in (("#5b6f4e", (0x5B, 0x6F, 0x4E)), (None, (255, 255, 255))):
        drawn = draw_labels(replace(ticket, colour=colour), label_layout("ticket-shelf"), sheet_layout("a4-8"), count=1)
        picture = read(drawn).image(scale=2).convert("RGB")
        at = picture.getpixel((round((9 + 80) * 144 / 25.4), round((18.5 + 33) * 144 / 25.4)))
        assert all(abs(one - other) <= 1 for one, other in zip(at, seen, strict=True))
