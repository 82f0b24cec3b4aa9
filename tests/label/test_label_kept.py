"""A print run keeps what was set as text in a numbered format; labels/ holds one text of each format so far.

A particular more on a label is a format more: raise FORMAT, say in _UNSAID what was set before, and lay a text of the
new format beside the others, which stay as they are.
"""

import json
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from shop import Shop

from ledger.errors import Refused
from ledger.markets import market
from ledger.operations.label.labels import LabelRequest, approve_label, print_labels, reprint_labels
from ledger.storage.tables.label import LabelRun
from ledger.views.label import label_kept
from ledger.views.label.label import LabelText
from ledger.views.label.label_kept import FORMAT, kept_text, label_from
from ledger.views.label.picture import LabelPicture

KEPT = Path(__file__).with_name("labels")
NOW = date(2026, 6, 1)
# Batch 26-001-4 of the worked shop, in the European Union; its particulars as they stand in the recipe and settings.
SET = LabelText(
    market="eu",
    product="Plain Bar",
    function="Soap",
    net_quantity="100 g",
    net_mg=100_000,
    figure_height_mm=3,
    ingredients_heading="Ingredients",
    ingredients="OLEA EUROPAEA FRUIT OIL, COCOS NUCIFERA OIL, AQUA, SODIUM HYDROXIDE",
    batch_code="26-001-4",
    best_before="Best used before the end of April 2028",
    after_opening_months=None,
    origin=None,
    code_text="26-001-4",
    responsible_name="Nuala Quill",
    responsible_address="Tidewrack Soaps, 3 Slip Lane, Port Emmer",
    precautions=(),
    made_on=date(2026, 4, 1),
    status="released",
    draft=False,
    policy="as added",
    declared=(),
    allergens=None,
    rules=(),
    remains=(),
)
# What format 2 keeps beside: what is hers. Of her picture the name and the digest; its content is among the papers.
HERS = replace(
    SET,
    business="Tidewrack Soaps",
    line="From the slipway",
    use="For hands",
    web="https://www.tidewrack.example",
    colour="#5b6f4e",
    picture=LabelPicture("wave.svg", "ab" * 32),
)
# What format 3 keeps beside: where words of a language may break.
BROKEN = replace(HERS, breaks=("Haut-reizungen",))


def kept(number: int) -> str:
    return (KEPT / f"format-{number}.json").read_text(encoding="utf-8").strip()


@pytest.mark.parametrize("number", range(FORMAT + 1))
def test_a_text_of_every_format_is_read_as_it_was_set(number: int) -> None:
    assert label_from(kept(number), number or None) == (SET, SET, HERS, BROKEN)[number]


def test_the_format_of_today_is_written_as_its_text_stands() -> None:
    assert kept_text(BROKEN) == kept(FORMAT)


def test_a_particular_that_an_earlier_format_lacked_is_what_was_set_then(monkeypatch: pytest.MonkeyPatch) -> None:
    lacking = {key: value for key, value in json.loads(kept(0)).items() if key != "policy"}
    monkeypatch.setitem(label_kept._UNSAID, "policy", "as added")
    assert label_from(json.dumps(lacking), None) == SET
    said = json.dumps({**lacking, "policy": "as saponified"})
    assert label_from(said, 1) == replace(SET, policy="as saponified")


def test_a_particular_that_is_set_no_more_is_passed_over() -> None:
    assert label_from(json.dumps({**json.loads(kept(0)), "emblem": "a wave"}), None) == SET


def test_labels_of_a_newer_program_are_refused() -> None:
    with pytest.raises(Refused, match="set by a newer soapledger"):
        label_from(kept(FORMAT), FORMAT + 1)


def test_a_run_printed_again_keeps_its_own_format(shop: Shop) -> None:
    request = LabelRequest(shop.batch, "eu", "band", 10, NOW, layout_source="layout", sheet_source="sheet")
    approve_label(shop.book, request, by="Nuala")
    print_labels(shop.book, request, lambda _: b"drawn")
    with shop.book.write("label print") as tx:  # as a program before the formats wrote it
        lot = tx.rows.execute("SELECT lot_id FROM label_run").fetchone()[0]
        old = LabelRun(lot_id=lot, on=NOW, layout="band", market="eu", count=1, text="Plain Bar", text_digest="0" * 64)
        old.view, old.layout_source, old.sheet_source, old.start = kept(0), "layout", "sheet", 1
        tx.add(old)
        tx.say("Printed 1 label.")
    drawn = []

    def draw(view: LabelText, *_: str) -> bytes:
        drawn.append(view)
        return b"drawn"

    for number in (1, 2):
        reprint_labels(shop.book, number, 1, on=NOW, start=1, draw=draw)
    # made on 1 April 2026, to keep 24 months: today March is printed, the month that has ended by 1 April 2028
    until = "Best used before the end of March 2028"
    now = replace(SET, best_before=until, languages="en", lettering=market("eu").lettering, business="Tidewrack Soaps")
    assert drawn == [now, SET]
    formats = [row[0] for row in shop.rows().execute("SELECT view_format FROM label_run ORDER BY id")]
    assert formats == [FORMAT, None, FORMAT, None]
