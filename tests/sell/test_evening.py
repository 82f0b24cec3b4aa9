"""What became of every bar that stood at a stall, worked out by hand."""

import pytest

from ledger.domain.sell.assumed import candidates, first_out, together
from ledger.domain.sell.evening import Outcome, Stood, Told, evening
from ledger.errors import BadInput, Refused

OLD, NEW, OAT = (
    Stood(1, "26-118-0", 50, "Rosemary", 6),
    Stood(2, "26-124-5", 50, "Rosemary", 6),
    Stood(3, "26-120-2", 51, "Oat", 4),
)
NONE: frozenset[int] = frozenset()


def home(bars: int, *, lot: int | None = None, product: int | None = None) -> Told:
    return Told("home", bars, lot, product)


def test_what_did_not_come_home_was_sold() -> None:
    ended = evening([OLD, OAT], [home(2, lot=1), home(0, lot=3)], [])
    assert ended == [Outcome(1, 2, 0, 0, 4, NONE, False), Outcome(3, 0, 0, 0, 4, NONE, False)]


def test_of_bars_counted_by_product_the_oldest_are_sold_first() -> None:
    """Twelve went, five came home: the seven sold are the six old ones and one new, and either may be the other."""
    ended = evening([OLD, NEW], [home(5, product=50)], [])
    assert ended == [Outcome(1, 0, 0, 0, 6, frozenset({2}), True), Outcome(2, 5, 0, 0, 1, frozenset({1}), True)]


@pytest.mark.parametrize("came", [0, 12])
def test_where_all_or_none_were_sold_nothing_is_assumed(came: int) -> None:
    assert {one.may_be for one in evening([OLD, NEW], [home(came, product=50)], [])} == {NONE}


def test_what_was_stolen_or_broken_is_not_sold() -> None:
    ended = evening(
        [OLD, NEW], [home(3, product=50), Told("stolen", 1, product_id=50), Told("broken", 2, lot_id=1)], []
    )
    assert [(one.home, one.stolen, one.broken, one.sold) for one in ended] == [(0, 0, 2, 4), (3, 1, 0, 2)]


def test_what_went_out_assumed_is_sold_assumed_though_each_batch_was_read() -> None:
    (ended,) = evening([OLD], [home(2, lot=1)], [(1, 9)])
    assert ended == Outcome(1, 2, 0, 0, 4, frozenset({9}), False)


@pytest.mark.parametrize(
    ("told", "kind", "said"),
    [
        ([home(7, lot=1), home(0, lot=2)], Refused, "6 bars of batch 26-118-0 went out, so 7 cannot have come back."),
        ([home(13, product=50)], Refused, "12 bars of Rosemary went out, so 13 cannot have come back."),
        (
            [home(6, lot=1), home(6, lot=2), Told("stolen", 1, product_id=50)],
            Refused,
            "12 bars of Rosemary went out, and 12 of them are told already, so 1 cannot have been stolen.",
        ),
        ([home(1, lot=1)], BadInput, "How many of batch 26-124-5 came back? Write 26-124-5=0 if none did."),
        (
            [home(1, lot=1), home(3, product=50)],
            BadInput,
            "stands by product and by batch (26-118-0); write it one way",
        ),
    ],
)
def test_what_cannot_have_been_is_told(told: list[Told], kind: type[Exception], said: str) -> None:
    with pytest.raises(kind) as error:
        evening([OLD, NEW], told, [])
    assert said in str(error.value)


def test_lots_taken_for_each_other_are_one_group() -> None:
    assert together([(1, 2), (2, 3), (7, 8)]) == {
        **dict.fromkeys((1, 2, 3), frozenset({1, 2, 3})),
        **dict.fromkeys((7, 8), frozenset({7, 8})),
    }


def test_a_batch_that_was_taken_for_another_before_is_a_candidate_though_its_bars_are_booked_gone() -> None:
    """Only lot 1 stands there by the books, but last week's bars of it may have been lot 2's."""
    assert candidates([1], {1: 5}, [(2, 1)], any_of_them=False) == {1: frozenset({2})}


def test_the_oldest_go_first() -> None:
    assert first_out(8, {1: 5, 2: 0, 3: 9}) == {1: 5, 3: 3}
