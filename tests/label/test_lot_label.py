"""Labels of jars and drums: what they say, their status on the day, and the code read back by a scanner."""

from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

import pytest
import zxingcpp
from freezegun import freeze_time
from making import deliver
from shop import Shop

from ledger.documents.kit.layout import label_layout, sheet_layout
from ledger.documents.label.labels import draw_labels
from ledger.errors import Refused
from ledger.operations.stock.lots import decide_lots
from ledger.operations.stock.receive import DeliveryLine
from ledger.views.label.lot_label import LotLabel, lot_label

TODAY = date(2026, 6, 1)
LAYOUTS = [("lot-jar", "a4-24"), ("lot-jar", "letter-21"), ("lot-jar", "roll"), ("lot-drum", "a4-8")]


def of(shop: Shop, code: str, today: date = TODAY) -> LotLabel:
    with shop.book.look() as rows:
        return lot_label(rows, code, today)


def drawn(read: Any, view: LotLabel, layout: str = "lot-jar", sheet: str = "a4-24", **more: Any) -> Any:
    return read(draw_labels(view, label_layout(layout), sheet_layout(sheet), **{"count": 1, **more}))


def said(page: Any) -> str:
    return " ".join(page.text().replace("\u00a0", " ").split())


def test_what_it_says(shop: Shop, read: Any) -> None:
    text = said(drawn(read, of(shop, shop.olive)))
    for words in (
        shop.olive, "olive oil", "Tarnlow Oils, lot 4471/2", "Received 2 Mar 2026", "Best before 31 Aug 2027",
        "ACCEPTED", "as of 1 Jun 2026", "Opened",
    ):  # fmt: skip
        assert words in text, words
    assert "LYE" not in text
    assert "do not use" not in text


def test_lye_carries_its_caution_and_a_lot_without_a_number_says_so(shop: Shop, read: Any) -> None:
    text = said(drawn(read, of(shop, shop.lye)))
    assert "LYE burns skin and blinds eyes. The safety sheet comes first." in text
    assert "Tarnlow Oils, lot SH 88 A" in text
    assert "Best before" not in text
    assert "Tarnlow Oils, lot unknown" in said(drawn(read, of(shop, shop.water)))


@pytest.mark.parametrize(("layout", "sheet"), LAYOUTS)
def test_the_code_is_read_back(read: Any, jar: LotLabel, layout: str, sheet: str) -> None:
    form, dots = label_layout(layout), 4 * 72 / 25.4
    left, top = sheet_layout(sheet).corner_mm(0, form.width_mm, form.height_mm)
    area = [round(side * dots) for side in (left, top, left + form.width_mm, top + form.height_mm)]
    (found,) = zxingcpp.read_barcodes(drawn(read, jar, layout, sheet).part(area, scale=4))
    assert found.text == "L41-5"


@pytest.mark.parametrize("status", ["quarantine", "on hold", "rejected", "out of date"])
def test_a_jar_that_may_not_be_used_does_not_look_like_a_good_one(read: Any, jar: LotLabel, status: str) -> None:
    panel = next(one for one in label_layout("lot-jar").panels if "status" in one.placed)
    dots = 6 * 72 / 25.4
    left, top = sheet_layout("a4-24").corner_mm(0, 70, 37)
    area = [round(side * dots) for side in (left + panel.x_mm, top + panel.y_mm)]
    area += [round(area[0] + panel.width_mm * dots), round(area[1] + panel.height_mm * dots)]

    def black(view: LotLabel) -> float:
        """How much of the panel of the status is black."""
        picture = drawn(read, view).part(area, scale=6).point(lambda shade: 255 * (shade < 128))
        return picture.histogram()[255] / (picture.width * picture.height)

    assert black(jar) < 0.3
    bad = replace(jar, status=status)
    assert black(bad) > 0.6
    assert f"{status.upper()} 1 Jun 2026: do not use" in said(drawn(read, bad))


@pytest.mark.parametrize(
    ("today", "status"),
    [(date(2027, 8, 30), "accepted"), (date(2027, 8, 31), "accepted"), (date(2027, 9, 1), "out of date")],
)
def test_the_day_it_is_best_before_is_a_good_one_still(shop: Shop, today: date, status: str) -> None:
    assert of(shop, shop.olive, today).status == status


@pytest.mark.parametrize("verdict", ["on hold", "rejected"])
def test_a_hold_is_told_before_an_old_date(shop: Shop, verdict: Any) -> None:
    decide_lots(shop.book, [shop.olive], verdict=verdict, on=TODAY, by="Nuala", reason="the supplier rang")
    assert of(shop, shop.olive, date(2027, 9, 1)).status == verdict


def test_bars_have_labels_of_their_own(shop: Shop) -> None:
    with pytest.raises(Refused, match=f"soapledger label print {shop.batch}"):
        of(shop, shop.batch)


@pytest.mark.parametrize("layout", ["lot-jar", "lot-drum"])
def test_the_longest_ordinary_words_have_room(read: Any, jar: LotLabel, layout: str) -> None:
    long = replace(
        jar,
        code="L4105-0",
        material="Atlas cedarwood essential oil",
        came_from="Quillmarsh Chemicals, lot 2026/000123-K",
    )
    sheet = "a4-24" if layout == "lot-jar" else "a4-8"
    assert "Atlas cedarwood" in said(
        drawn(read, replace(long, caution="LYE burns skin and blinds eyes."), layout, sheet)
    )


def test_what_has_no_room_on_a_jar_is_sent_to_the_drum(read: Any, jar: LotLabel) -> None:
    long = replace(jar, caution="LYE burns. " * 12)
    with pytest.raises(Refused, match="--layout lot-drum"):
        drawn(read, long)


def test_the_command_prints_so_many_of_each_and_names_what_is_not_to_be_used(shop: Shop, run: Any, read: Any) -> None:
    fresh = deliver(shop.book, DeliveryLine("olive oil", 1_000_000, "N 1", 900), accepted=False)
    with freeze_time("2026-06-01 09:30:00"):
        out = run("lot", "label", shop.olive, fresh, "--count", "2", "-o", "jars.pdf").stdout
        assert "4 labels in jars.pdf." in out
        assert f"Marked not to be used, as of 1 Jun 2026: {fresh} (quarantine)." in out
        codes = sorted(one.text for one in zxingcpp.read_barcodes(read(Path("jars.pdf").read_bytes()).image()))
        assert codes == sorted([shop.olive, shop.olive, fresh, fresh])
        assert "There is no lot" in run("lot", "label", shop.olive, "L41-5", "-o", "none.pdf", code=2).stderr
        assert not Path("none.pdf").exists()
        run("lot", "label", shop.olive, "-o", "jars.pdf", code=2)  # it is there already
        assert "1 label in one.pdf." in run("lot", "label", shop.olive, "-o", "one.pdf").stdout
        refused = run("lot", "label", shop.olive, "--layout", "band", "-o", "x.pdf", code=1).stderr
        assert 'is for = "bar"; take one for = "lot" here' in refused


def test_the_entry_count_stays(shop: Shop, run: Any) -> None:
    before = shop.rows().execute("SELECT count(*) FROM entry").fetchone()[0]
    run("lot", "label", shop.olive, "-o", "jars.pdf")
    assert shop.rows().execute("SELECT count(*) FROM entry").fetchone()[0] == before
