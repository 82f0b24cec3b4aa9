"""Whatever was done in whatever order, what was paid is somewhere, to the minor unit, on any day one asks.

Held against a tally of its own (`tally.py`), over random seasons (`seasons.py`).
"""

from datetime import date, timedelta
from random import Random

import pytest
from cost.seasons import Season
from cost.tally import Tally
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from ledger.rows.laws import what_was_paid_is_somewhere
from ledger.views.cost.worth import worth


def held_against_the_tally(season: Season, on: date) -> None:
    found = worth(season.ledger.rows, on)
    paid = sum(one.goods or 0 for one in season.lots if season.stands(one) and one.on <= on and one.batch is None)
    carried = sum(one.carriage for one in season.lots if season.stands(one) and one.on <= on and one.batch is None)
    assert (found.goods_minor + found.carriage_minor, found.differs_minor) == (paid + carried, 0)
    for work, accounts in ((False, found.goods), (True, found.work)):
        tally = Tally(season, on, work=work)
        whole = found.work_minor + found.house_minor if work else paid + carried
        assert sum(accounts.values()) == whole == tally.put_in
        kept = {name: amount for name, amount in tally.accounts.items() if " " not in name or name in ACCOUNTS}
        assert sum(kept.values()) == 0  # what was paid is the one account below zero
        for name in ACCOUNTS:
            off = abs(tally.accounts.get(name, 0) - accounts.get(name, 0))
            assert off <= tally.slack.get(name, 0), (name, on, work)
    spoilt = Tally(season, on).spoilt
    assert {*found.unknown_in} == {season.ledger.code("batch", one) for one in spoilt}
    unknown = [one for one in season.lots if season.stands(one) and one.on <= on and one.batch is None]
    assert [one.code for one in found.unknown] == [
        season.ledger.code("lot", one.id) for one in unknown if one.goods is None
    ]


ACCOUNTS = (
    "materials", "made ahead", "offcuts", "in work", "bars here", "bars rejected", "retained samples", "returns shelf",
    "bars at stalls", "bars at shops", "sold", "own use", "given away", "thrown away", "sent back", "counted off",
    "given up", "outside",
)  # fmt: skip


def asked_of(season: Season, back: list[int]) -> None:
    for days in (0, *back):
        held_against_the_tally(season, season.day - timedelta(days=days))
    assert not list(what_was_paid_is_somewhere(season.ledger.rows))


def season_of(number: int, steps: int, *, written_off: bool, hour: int | None) -> Season:
    """The first so many steps of the season of a number: a shorter one is the beginning of a longer."""
    chance = Random(number)
    done = [(*(chance.randrange(size) for size in (27, 1000, 1000, 1000, 10)),) for _ in range(steps)]
    return Season(done, written_off=written_off, hour=hour)  # type: ignore[arg-type]


season = given(
    number=st.integers(0, 10**9),
    steps=st.integers(10, 120),
    back=st.lists(st.integers(1, 400), max_size=2),
    written_off=st.booleans(),
    hour=st.sampled_from([None, 0, 599, 1500]),
)


@settings(max_examples=120, suppress_health_check=[HealthCheck.too_slow])
@season
def test_what_was_paid_is_somewhere(
    number: int, steps: int, back: list[int], written_off: bool, hour: int | None
) -> None:
    asked_of(season_of(number, steps, written_off=written_off, hour=hour), back)


@pytest.mark.slow
@settings(max_examples=5000, suppress_health_check=[HealthCheck.too_slow])
@season
def test_what_was_paid_is_somewhere_in_thousands_of_seasons(
    number: int, steps: int, back: list[int], written_off: bool, hour: int | None
) -> None:
    asked_of(season_of(number, steps, written_off=written_off, hour=hour), back)
