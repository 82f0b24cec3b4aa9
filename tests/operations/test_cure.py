"""Weighings of marked bars, and what they forecast."""

from datetime import date, timedelta
from typing import Any

import pytest
from freezegun import freeze_time
from making import MADE, cut, planned

from ledger.errors import BadInput, Refused
from ledger.operations.cure import weigh_bars
from ledger.views.batch import find_batch
from ledger.views.cure import cure_list
from ledger.views.cure_forecast import forecast, weighings

CUT = MADE + timedelta(days=1)


def view(shop: Any, code: str) -> Any:
    with shop.book.look() as rows:
        batch = find_batch(rows, code)
        return forecast(rows, batch, weighings(rows, batch))


def test_before_weighings_the_composition_and_then_the_bars_themselves(shop: Any) -> None:
    code = cut(shop.book)
    assert view(shop, code).basis == "composition"
    # 10 % in the end at 6 % a day: 1 - 0.1 (1 - e^(-0.06 t)), of 140 g
    for days, grams in ((0, 140.0), (7, 135.2), (14, 132.0), (21, 130.0), (28, 128.6)):
        weigh_bars(shop.book, code, {"A": round(grams * 1000)}, on=date(2026, 5, 8) + timedelta(days=days))
        assert view(shop, code).basis == ("weighings" if days >= 21 else "composition")
    found = view(shop, code)
    assert found.curve.loss == pytest.approx(0.1, abs=0.005)
    assert abs((found.steady_on - date(2026, 5, 8)).days - 34) <= 3  # 33.6 days by the closed formula
    weight, give = found.weight_on(date(2027, 5, 8))
    assert weight == pytest.approx(126_000, rel=0.006)  # 90 % of 140 g
    assert 0 < give < 2_000


def test_weighed_before_the_cut_or_with_nothing(shop: Any) -> None:
    with pytest.raises(Refused, match="no bars on the rack"):
        weigh_bars(shop.book, planned(shop.book), {"A": 1}, on=MADE)
    code = cut(shop.book)
    for weights in ({}, {"A": 0}):
        with pytest.raises(BadInput, match=r"A=101\.2g"):
            weigh_bars(shop.book, code, weights, on=date(2026, 6, 1))
    with pytest.raises(BadInput, match="was cut on"):
        weigh_bars(shop.book, code, {"A": 100_000}, on=date(2026, 5, 1))


def test_a_bar_heavier_than_before_is_asked_about_once_and_kept(shop: Any, run: Any) -> None:
    code = cut(shop.book)
    with freeze_time("2026-06-01 09:00:00"):
        run("cure", "weigh", code, "A=130", "--on", "2026-05-20")
        assert "damp weather" in run("cure", "weigh", code, "A=131", input="no\n", code=2).stderr
        assert "1 bar" in run("cure", "weigh", code, "A=131", input="yes\n").stdout
        assert "before. Is it right?" in run("cure", "weigh", code, "A=13.1", input="n\n", code=2).stderr
        shown = run("cure", "show", code).stdout
        assert "131 g" in shown
        assert "From its composition" in shown


def test_what_is_due_to_be_weighed_and_the_calendar(shop: Any, run: Any) -> None:
    code = cut(shop.book)
    with shop.book.look() as rows:
        (one,) = cure_list(rows, on=date(2026, 5, 20))
        cut_on = one.cut_on
        assert one.weigh_on == cut_on + timedelta(days=7)
    with freeze_time("2026-05-31 09:00:00"):
        assert f"To be weighed: {code}" in run("cure", "list").stdout
        run("cure", "calendar", "-o", "rack.ics")
