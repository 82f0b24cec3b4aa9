"""A cut that is long past, a count or a weight the loaf cannot mean, the same cut twice: asked about first."""

from typing import Any

import pytest
from freezegun import freeze_time
from making import batch_of, planned, weighed
from once import once
from shop import Shop

from ledger.views.bench.cut_doubts import bulk_doubts, cut_doubts

CUT = ("batch", "cut")


@pytest.fixture
@once
def poured(shop: Shop) -> str:
    """A plain bar poured on 6 May 2026: 1440.478 g, ten bars of 100 g planned."""
    return weighed(shop.book, planned(shop.book))


@pytest.mark.parametrize(("day", "asked"), [("2026-05-09", False), ("2026-05-10", True)])  # three days after, and four
def test_a_cut_without_its_day_is_asked_about_after_three_days(
    shop: Shop, run: Any, poured: str, day: str, asked: bool
) -> None:
    with freeze_time(f"{day} 10:00"):
        done = run(*CUT, poured, "10", "--weight", "1310 g", code=2 if asked else 0)
        if asked:
            assert done.stderr.strip() == (
                f"Batch {poured} was made on 6 May 2026, 4 days ago; say when it was cut: --on 2026-05-07, or "
                "--on today."
            )
            assert batch_of(shop.book, poured).yield_lot_id is None
            run(*CUT, poured, "10", "--weight", "1310 g", "--on", "today")
    assert batch_of(shop.book, poured).made == 10


def test_the_prompt_takes_no_enter_for_the_day_of_an_old_loaf(shop: Shop, run: Any, poured: str) -> None:
    with freeze_time("2026-05-10 10:00"):
        done = run("batch", "log", poured, input="\n\n10\n\n2026-05-07\n1310\n\n\n\n")
    assert "Enter books nothing here now. Type it, or - for 10 May 2026" in done.stderr
    assert str(batch_of(shop.book, poured).yielded_on) == "2026-05-07"


@pytest.mark.parametrize(
    ("bars", "mg", "asked"),
    [
        (10, 1_310_000, False),
        (3, 390_000, False),  # of ten: a third, more than a fifth
        (2, 260_000, True),  # a fifth
        (49, None, False),
        (50, None, True),  # five times
        (100, None, True),
        (10, 500_000, False),  # 50 g each, half of the 100 g declared
        (10, 499_999, True),
        (10, 3_000_000, False),  # 300 g each, three times
        (10, 3_000_001, True),
    ],
)
def test_a_count_and_a_weight_are_asked_about_at_their_limit(
    shop: Shop, poured: str, bars: int, mg: int | None, asked: bool
) -> None:
    with shop.book.look() as rows:
        assert bool(cut_doubts(rows, batch_of(shop.book, poured), bars, mg, 0)) is asked


def test_a_weight_a_thousand_times_off_is_refused_with_what_to_type(shop: Shop, run: Any, poured: str) -> None:
    done = run(*CUT, poured, "10", "--weight", "1.31 g", "--on", "2026-05-07", input="n\n", code=1)
    assert (
        "10 bars that weigh 1.31 g weigh 0.13 g each, and the recipe's 100 g after the cure, a thousand times less; if "
        "the scale showed 1 310 g, type 1310 g or 1.31 kg." in done.stderr.replace("\u00a0", " ")
    )
    assert batch_of(shop.book, poured).yield_lot_id is None


def test_a_count_ten_times_off_is_asked_and_booked_when_it_is_right(shop: Shop, run: Any, poured: str) -> None:
    words = (*CUT, poured, "1", "--weight", "1310 g", "--on", "2026-05-07")
    assert "The recipe gives 10 bars, and 1 were cut." in run(*words, input="n\n", code=1).stderr
    assert batch_of(shop.book, poured).yield_lot_id is None
    run(*words, "--yes")
    assert batch_of(shop.book, poured).made == 1


def test_bars_that_the_mass_does_not_allow_are_refused(shop: Shop, run: Any, poured: str) -> None:
    # 15 bars of 100 g would be 1500 g of 1440.478
    said = run(*CUT, poured, "15", "--on", "2026-05-07", code=1).stderr
    assert "15 bars of 100 g would weigh" in said
    assert batch_of(shop.book, poured).yield_lot_id is None


def test_the_same_cut_twice_is_refused(shop: Shop, run: Any, poured: str) -> None:
    words = (*CUT, poured, "10", "--weight", "1310 g", "--on", "2026-05-07")
    run(*words)
    assert f"Batch {poured} is curing already" in run(*words, code=1).stderr
    assert batch_of(shop.book, poured).made == 10


@pytest.mark.parametrize(("mg", "asked"), [(288_096, False), (288_095, True), (0, False)])  # a fifth of 1 440 478 mg
def test_little_that_came_of_much_is_asked_about(shop: Shop, poured: str, mg: int, asked: bool) -> None:
    with shop.book.look() as rows:
        assert bool(bulk_doubts(rows, batch_of(shop.book, poured), mg)) is asked
