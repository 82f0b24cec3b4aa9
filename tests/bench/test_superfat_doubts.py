"""What is doubted of a superfat as weighed, from the figures alone: at nothing, and a grain to each side."""

import pytest

from ledger.domain.bench.decision import undecided
from ledger.domain.bench.superfat import as_weighed_doubt, burning_doubt, superfat_doubt
from ledger.domain.lye.uncertainty import Superfat
from ledger.domain.lye.weighed import LyeCheck

CHECK = LyeCheck(1, 1, 1, "NaOH", 1_000_000, superfat=None, before_addition=None, figures={}, stated=())


def superfat(nominal: int, likely: int) -> Superfat:
    return Superfat(nominal, likely, likely - 10_000, ())


@pytest.mark.parametrize("likely", [1, 50_000])
def test_a_superfat_that_is_likely_more_than_nothing_is_not_doubted(likely: int) -> None:
    assert as_weighed_doubt("26-125-3", CHECK._replace(superfat=superfat(60_000, likely))) is None
    assert as_weighed_doubt("26-125-3", CHECK) is None  # not reckoned yet


@pytest.mark.parametrize(
    ("nominal", "likely", "words", "of"),
    [
        (20_000, 0, "superfat of 2.00 %, likely as low as 0.00 %: lye may be left over and burn.", ("likely nothing",)),
        (1, -1, "likely as low as", ("likely nothing",)),
        (0, -1, "superfat of 0.00 %: lye is left over and it would burn.", ("likely nothing", "0.00 %")),
        (-10_000, -30_000, "of \u22121.00 %: lye is left over and it would burn.", ("likely nothing", "\u22121.00 %")),
    ],
)
def test_lye_that_may_be_or_is_left_over_is_asked_about(
    nominal: int, likely: int, words: str, of: tuple[str, ...]
) -> None:
    doubt = as_weighed_doubt("26-125-3", CHECK._replace(superfat=superfat(nominal, likely)))
    assert doubt is not None
    assert words in doubt.words
    assert "Nothing was written. Weigh again; for what can be done: soapledger batch correct 26-125-3" in doubt.words
    assert doubt.of == of


def test_the_pot_is_asked_about_before_the_fat_held_back_goes_in() -> None:
    check = CHECK._replace(superfat=superfat(80_000, 60_000), before_addition=superfat(20_000, -1))
    doubt = as_weighed_doubt("26-125-3", check)
    assert doubt is not None
    assert "batch 26-125-3, before the fat held back goes in, has a superfat of 2.00 %" in doubt.words


def test_figures_that_stand_alone_are_named() -> None:
    check = CHECK._replace(superfat=superfat(20_000, 0), stated=("olive oil: 189 typed", "soda: 99 %"))
    assert "and burn. Reckoned with olive oil: 189 typed; soda: 99 %. Nothing" in getattr(
        as_weighed_doubt("26-125-3", check), "words", ""
    )


def test_a_way_that_leaves_lye_over_is_none() -> None:
    may = burning_doubt("26-125-3", "water", superfat(20_000, 0)).words
    assert "it leaves batch 26-125-3 with a superfat of 2.00 %, likely as low as 0.00 %: lye may be left over" in may
    burns = burning_doubt("26-125-3", "water", superfat(0, -1)).words
    assert "'water' is not a way out here: it leaves batch 26-125-3 with a superfat of 0.00 %: lye is left" in burns


def test_likely_nothing_is_decided_once_and_nothing_for_its_figure_alone() -> None:
    known = {("superfat", "likely nothing"), ("superfat", "0.00 %")}
    assert undecided([superfat_doubt("", superfat(10_000, -5_000))], known) == ()
    assert undecided([superfat_doubt("", superfat(0, -1))], known) == ()
    assert undecided([superfat_doubt("", superfat(-10_000, -30_000))], known) != ()
