"""Stickers, blocks and notices where the height of the net quantity goes by the front of the pack."""

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from shop import ADDRESS, SETUP, Shop

from ledger.documents.kit.layout import label_layout, shipped
from ledger.documents.label.block import set_block
from ledger.domain.label.panel import read_front
from ledger.markets import market
from ledger.operations.house.setup import set_up

EIGHTH = 25.4 / 8
MM = 72 / 25.4


@pytest.fixture
def abroad(shop: Shop) -> Shop:
    set_up(shop.book, replace(SETUP, addresses={"us": ADDRESS, "ca": ADDRESS, "eu": ADDRESS}))
    return shop


def said(result: Any) -> str:
    return " ".join(result.stdout.split())


def test_every_layout_with_a_net_quantity_is_made_for_a_pack() -> None:
    """So that nobody in the US or Canada is asked before the first label; tickets are no labels."""
    for name in shipped("label"):
        form = label_layout(name)
        if form.purpose in ("bar", "sticker"):
            assert form.pack is not None, name


@pytest.mark.usefixtures("frozen")
def test_a_sticker_says_for_which_pack_it_was_set_and_where_it_goes(abroad: Shop, run: Any, read: Any) -> None:
    """66 x 90 mm are 9.2 square inches: 1/8 in, in the lowest 30 %; 2 x 2.5 in are 5: 1/16 in, anywhere."""
    words = ("label", "print", abroad.batch, "--market", "us-soap", "--layout", "sticker-large", "--draft", "--force")
    told = said(run(*words, "-o", "s.pdf"))
    assert "The net quantity is as high as a front of 66 x 90 mm asks, for which the layout is made" in told
    assert "the net quantity stands in the lowest 30 % of the front: the sticker goes there." in told
    (letter,) = [one for one in read(Path("s.pdf").read_bytes()).glyphs()[:14] if one.sign == "o"]
    assert letter.bottom - letter.top >= EIGHTH
    told = said(run(*words, "--pack", "2 x 2.5 in", "-o", "s.pdf"))
    assert "which the layout" not in told
    assert "lowest" not in told


@pytest.mark.usefixtures("frozen")
def test_a_sticker_that_is_too_small_names_the_one_that_takes_it(abroad: Shop, run: Any) -> None:
    words = ("label", "print", abroad.batch, "--market", "us-soap", "--layout", "sticker-small", "--draft")
    assert "(--layout sticker-band or sticker-large)" in run(*words, "-o", "s.pdf", code=1).stderr
    run(*words, "--pack", "2 x 2.5 in", "-o", "s.pdf")


@pytest.mark.usefixtures("frozen")
def test_a_notice_has_no_net_quantity_and_asks_for_no_pack(abroad: Shop, run: Any) -> None:
    run("label", "approve", abroad.batch, "--market", "ca")
    told = said(run("label", "print", abroad.batch, "--market", "ca", "--layout", "notice-shelf", "-o", "n.pdf"))
    assert told.startswith("1 notice for batch")
    assert "as high as a front" not in told


def test_in_a_block_the_net_quantity_keeps_a_letter_free_above_and_below(label: Any) -> None:
    """21 CFR 701.13(f), from memory: the height of the letter; of the lines beside it the capitals count."""
    law, front = market("us-soap"), read_front("55 x 80 mm")
    view = replace(
        label,
        market="us-soap",
        net_quantity="Net Wt 3.52 oz (100 g)",
        figure_height_mm=law.figure_height(100_000, front.cm2),
        lettering=law.lettering.on(front.cm2),
    )
    lines = set_block(view, width_mm=80, says="", business="").filled.lines
    (at,) = [number for number, one in enumerate(lines) if one.text.startswith("Net")]
    net, above, below = lines[at], lines[at - 1], lines[at + 1]
    capital = 0.698 * net.size
    assert net.base - capital - above.base >= capital - 0.01
    assert below.base - 0.698 * below.size - net.base >= capital - 0.01


@pytest.mark.usefixtures("frozen")
def test_what_a_block_does_not_hold_is_said(abroad: Shop, run: Any) -> None:
    told = said(run("label", "block", abroad.batch, "--market", "eu", "--language", "nl", "--draft", "-o", "b.svg"))
    assert "Set the hourglass before 03/2028; the block holds words alone." in told
    us = ("label", "block", abroad.batch, "--market", "us-soap", "--draft", "--pack")
    assert "stands in the lowest 30 % of the front" in said(run(*us, "55 x 80 mm", "-o", "c.svg"))
    assert "lowest" not in said(run(*us, "2 x 2.5 in", "-o", "d.svg"))


@pytest.mark.usefixtures("frozen")
@pytest.mark.parametrize(
    ("code", "says"),
    [
        ("us-soap", "Figures stamped or moulded into the bar or its box stand 1/16 in higher than printed ones"),
        ("us-cosmetic", "half that where the surface is under 12 sq in, of which no use is made here"),
        ("ca", "0.8 mm where all of it stands on a display surface of 10 cm² or less, of which no use is made here"),
    ],
)
def test_what_the_law_lets_be_otherwise_and_is_not_drawn_here_is_said(
    abroad: Shop, run: Any, code: str, says: str
) -> None:
    assert says in said(run("label", "check", abroad.batch, "--market", code))
