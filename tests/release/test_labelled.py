"""No bar leaves bare, nor under a label whose list of allergens the day has changed, unless a person decides so.

Regulation (EU) 2023/1545: the first list for bars first supplied up to 31 July 2026, the long one from 1 August.
"""

from collections.abc import Callable
from dataclasses import replace
from datetime import date, timedelta
from typing import Any

import pytest
from freezegun import freeze_time
from making import CHECKED, LOOKED_GOOD, cut
from once import once
from scented import with_camphor
from shop import SETUP, Shop

from ledger.domain.release.bars import Passing
from ledger.domain.release.releasing import Releasing
from ledger.errors import BadInput, Refused
from ledger.operations.cure.weighing import weigh_bars
from ledger.operations.house.setup import set_up
from ledger.operations.keep.undo import undo
from ledger.operations.label.labels import Counted, LabelRequest, approve_label, count_run, print_labels, reprint_labels
from ledger.operations.material.skin import state_contents
from ledger.operations.release.release import pass_bars, release_bars
from ledger.operations.sell.dispatch import dispatch
from ledger.operations.sell.gift import gift
from ledger.operations.sell.stall_out import stall_out
from ledger.operations.sell.take_back import take_back
from ledger.operations.stock.lots import waste_lot
from ledger.rows.label import runs
from ledger.views.label.label_check import label_check
from ledger.views.label.label_due import labels_due

PASSED = date(2026, 6, 3)  # cut on 6 May, cured 28 days
SOLD_ON = date(2028, 7, 31)
BEFORE, LAST, FIRST, AFTER = (date(2026, 7, 30), date(2026, 7, 31), date(2026, 8, 1), date(2026, 8, 2))


@pytest.fixture
def packed(shop: Shop) -> str:
    return str(once(with_camphor)(shop))


def label(shop: Shop, code: str, on: date, *, market: str = "eu", count: int = 10, counted: bool = True) -> int:
    """Labels approved and printed on a day; returns the number of the run."""
    request = LabelRequest(code, market, "band", count, on, layout_source="layout", sheet_source="sheet")
    approve_label(shop.book, request, by="Nuala")
    print_labels(shop.book, request, lambda _: b"drawn")
    with shop.book.look() as rows:
        run = runs(rows)[-1].number
    if counted:
        count_run(shop.book, run, Counted(0, 0, specimen=0), on=on)
    return run


def release(shop: Shop, code: str, on: date, **more: Any) -> int:
    """Released without an assessment, which is decided by name; what is decided about labels stands apart."""
    return release_bars(
        shop.book, code, Releasing(on=on, by="Nuala", checks=LOOKED_GOOD, **{"anyway": "a trial", **more})
    )


@pytest.fixture
def released(shop: Shop, packed: str) -> int:
    """Labelled and released on the last day of the list; the number of the run."""
    return int(once(label_and_release)(shop, packed))


def label_and_release(shop: Shop, code: str) -> int:
    run = label(shop, code, LAST)
    release(shop, code, LAST)
    return run


def doors(shop: Shop, code: str, on: date) -> list[Callable[[], object]]:
    """Every way by which a bar leaves."""
    return [
        lambda: stall_out(shop.book, "Quay market", {code: 1}, on=on),
        lambda: dispatch(shop.book, "heron", {code: 1}, on=on, price_minor=400, note=None),
        lambda: gift(shop.book, {code: 1}, to="a neighbour", on=on),
    ]


def reasons(shop: Shop) -> str:
    """Why bars were released, as the last decision says."""
    row = shop.rows().execute("SELECT reason FROM decision WHERE verdict = 'released' ORDER BY id DESC").fetchone()
    return str(row[0])


def entries(shop: Shop) -> int:
    """How many entries the ledger has."""
    return int(shop.rows().execute("SELECT count(*) FROM entry").fetchone()[0])


@pytest.mark.parametrize("on", [BEFORE, LAST])
def test_up_to_the_last_day_of_the_list_bars_leave_under_it(shop: Shop, packed: str, on: date) -> None:
    label(shop, packed, BEFORE)
    assert release(shop, packed, on) == 10
    for leave in doors(shop, packed, on):
        leave()


@pytest.mark.parametrize("on", [FIRST, AFTER])
def test_from_the_day_the_list_changed_every_door_asks(shop: Shop, packed: str, released: int, on: date) -> None:
    before = entries(shop)
    for leave in doors(shop, packed, on):
        with pytest.raises(Refused) as refused:
            leave()
        for words in (
            f"run {released} for eu, its text of 31 Jul 2026, does not name Camphor, which the long list (81 names)",
            f"soapledger label approve {packed} --market eu, then soapledger label print {packed} --market eu",
            "first supplied by 31 Jul 2026 may carry them until 31 Jul 2028: add --first-supplied 'DAY; TO WHOM'",
        ):
            assert words in str(refused.value)
    assert entries(shop) == before


@pytest.mark.usefixtures("released")
def test_new_labels_open_the_door_once_they_are_counted(shop: Shop, packed: str) -> None:
    run = label(shop, packed, FIRST, counted=False)
    with pytest.raises(Refused, match="does not name Camphor"):
        gift(shop.book, {packed: 1}, to="a neighbour", on=FIRST)
    count_run(shop.book, run, Counted(0, 0, specimen=0), on=FIRST)
    for leave in doors(shop, packed, FIRST):
        leave()


@pytest.mark.parametrize(("count", "spoiled", "open_"), [(9, 0, False), (10, 1, False), (10, 0, True)])
@pytest.mark.usefixtures("released")
def test_new_labels_open_the_door_when_they_are_enough_for_all_bars_here(
    shop: Shop, packed: str, count: int, spoiled: int, open_: bool
) -> None:
    run = label(shop, packed, FIRST, count=count, counted=False)
    count_run(shop.book, run, Counted(spoiled, 0, specimen=0), on=FIRST)
    if open_:
        gift(shop.book, {packed: 1}, to="a neighbour", on=FIRST)
    else:
        with pytest.raises(Refused, match="does not name Camphor"):
            gift(shop.book, {packed: 1}, to="a neighbour", on=FIRST)


def test_every_label_of_a_run_may_be_spoiled_and_no_more(shop: Shop, packed: str) -> None:
    run = label(shop, packed, LAST, counted=False)
    with pytest.raises(BadInput, match="are more than that"):
        count_run(shop.book, run, Counted(8, 3, specimen=0), on=LAST)
    assert count_run(shop.book, run, Counted(8, 2, specimen=0), on=LAST).used == 0


def test_the_count_that_a_release_went_by_is_not_taken_back(shop: Shop, packed: str) -> None:
    label(shop, packed, LAST)
    counted = entries(shop)
    release(shop, packed, LAST)
    with pytest.raises(Refused, match=rf"entry {counted + 1} \(Released batch {packed}"):
        undo(shop.book, counted)


def test_an_old_text_printed_again_is_an_old_label(shop: Shop, packed: str, released: int) -> None:
    reprint_labels(shop.book, released, 10, on=FIRST, start=1, draw=lambda *_: b"drawn")
    count_run(shop.book, released + 1, Counted(0, 0, specimen=0), on=FIRST)
    with pytest.raises(Refused, match=rf"run {released + 1} for eu, its text of 31 Jul 2026, does not name Camphor"):
        gift(shop.book, {packed: 1}, to="a neighbour", on=FIRST)
    with shop.book.look() as rows:
        due = labels_due(rows, today=FIRST, by=FIRST)
    assert [(one.batch_code, one.bars) for one in due] == [(packed, 10)]


def test_no_label_is_approved_or_printed_before_the_bars_were_passed(shop: Shop, packed: str) -> None:
    before = entries(shop)
    with pytest.raises(Refused, match=r"were not passed for packing on 2 Jun 2026; look at --on"):
        label(shop, packed, PASSED - timedelta(days=1))
    assert entries(shop) == before
    assert label(shop, packed, PASSED) == 1


@pytest.mark.usefixtures("released")
def test_what_is_due_is_here_or_at_a_shop_and_no_bar_that_is_gone(shop: Shop, packed: str) -> None:
    dispatch(shop.book, "heron", {packed: 4}, on=LAST, price_minor=400, note=None)
    take_back(shop.book, {packed: 1}, customer="heron", stall=None, on=LAST, reason="torn")
    waste_lot(shop.book, packed, 1, place="returns", on=LAST, reason="opened")
    with shop.book.look() as rows:
        due = {
            by: [(one.where, one.bars, one.until) for one in labels_due(rows, today=FIRST, by=by)]
            for by in (BEFORE, LAST, SOLD_ON, SOLD_ON + timedelta(days=1))
        }
        said = [one.partition(":")[0] for one in label_check(rows, packed, "eu", on=LAST).supplied]
    assert said == ["6 bars on hand", "3 bars dispatched on 31 Jul 2026"]  # no bar is counted below zero
    here = ("on hand", 6, LAST)
    assert due[BEFORE] == []
    assert due[LAST] == [here]
    # Annex III as amended by Regulation (EU) 2023/1545: bars supplied in time may be sold on until 31 July 2028
    assert (
        due[SOLD_ON] == due[SOLD_ON + timedelta(days=1)] == [here, ("dispatched", 3, SOLD_ON)]
    )  # four went there, one came back


@pytest.mark.parametrize(("gone", "words"), [(1, "1 bar"), (2, "2 bars")])
@pytest.mark.usefixtures("released")
def test_the_check_counts_one_bar_as_one(shop: Shop, packed: str, gone: int, words: str) -> None:
    dispatch(shop.book, "heron", {packed: gone}, on=LAST, price_minor=400, note=None)
    stall_out(shop.book, "Quay market", {packed: gone}, on=LAST)
    weigh_bars(shop.book, packed, dict(zip(["A", "B"][:gone], [131_000, 130_000], strict=False)), on=PASSED)
    with shop.book.look() as rows:
        found = label_check(rows, packed, "eu", on=LAST)
    said = (*found.supplied, *found.net)
    for start in (
        f"{words} dispatched on 31 Jul 2026: ",
        f"{words} at a stall: ",
        f"{words} weighed on 3 Jun 2026, ",
    ):
        assert [one for one in said if one.startswith(start)], said


def test_a_release_on_the_day_asks_and_no_reason_opens_it(shop: Shop, packed: str) -> None:
    """Regulation (EU) 2023/1545 counts each bar by its first supply: no reason of hers changes what its label lacks."""
    label(shop, packed, LAST)
    with pytest.raises(Refused, match=r"labels are not usable any more: .*Camphor"):
        assess_none(shop, packed)
    set_up(shop.book, SETUP)
    with pytest.raises(Refused, match=r"labels are not usable any more: .*Camphor"):
        release(shop, packed, FIRST, anyway="for the assessor")
    label(shop, packed, FIRST)
    assert release(shop, packed, FIRST) == 10


def assess_none(shop: Shop, code: str) -> None:
    """A release in the United States beside the EU's labels: no assessment is asked, so that nothing else refuses."""
    set_up(shop.book, replace(SETUP, addresses={"us": SETUP.addresses["eu"]}))
    release_bars(shop.book, code, Releasing(on=FIRST, by="Nuala", checks=LOOKED_GOOD))


@pytest.mark.usefixtures("released")
def test_bars_released_before_are_not_decided_about_after_the_day(shop: Shop, packed: str) -> None:
    with pytest.raises(Refused, match="released already"):
        release(shop, packed, FIRST, anyway="to one who knows")
    for leave in doors(shop, packed, FIRST):
        with pytest.raises(Refused, match="does not name Camphor"):
            leave()


def test_only_the_market_whose_list_changed_is_asked_about(shop: Shop, packed: str) -> None:
    label(shop, packed, LAST, market="gb")  # no instrument found that adds the long list there
    release(shop, packed, LAST)
    gift(shop.book, {packed: 1}, to="a neighbour", on=FIRST)
    label(shop, packed, LAST, market="eu")
    with pytest.raises(Refused) as refused:
        gift(shop.book, {packed: 1}, to="a neighbour", on=FIRST)
    assert "--market eu" in str(refused.value)
    assert "gb" not in str(refused.value)


def test_bars_in_which_the_new_list_names_nothing_more_leave(shop: Shop) -> None:
    code = cut(shop.book)
    pass_bars(shop.book, code, Passing(on=PASSED, by="Nuala"))
    label(shop, code, LAST)
    release(shop, code, FIRST)
    gift(shop.book, {code: 1}, to="a neighbour", on=FIRST)


@pytest.mark.parametrize(
    ("addresses", "says", "first"),
    [
        (("eu",), "European Union and Northern Ireland", "eu"),
        (("gb",), "Great Britain", "gb"),
        (("eu", "gb"), "European Union and Northern Ireland; Great Britain", "eu"),
        (("us",), "United States (as a cosmetic)", "us-cosmetic"),
        (("ca",), "Canada", "ca"),
    ],
)
def test_bars_with_no_label_printed_are_not_released(
    shop: Shop, packed: str, addresses: tuple[str, ...], says: str, first: str
) -> None:
    set_up(shop.book, replace(SETUP, addresses=dict.fromkeys(addresses, SETUP.addresses["eu"])))
    before = entries(shop)
    with pytest.raises(Refused) as refused:
        release(shop, packed, PASSED, bare=" ")
    assert f"no label was printed for it, and a bar carries one in: {says}. Print them" in str(refused.value)
    assert f"label approve {packed} --market {first}, then soapledger label print {packed}" in str(refused.value)
    assert entries(shop) == before
    assert release(shop, packed, PASSED, bare="sold by weight to a friend") == 10
    assert "released bare: sold by weight to a friend" in reasons(shop)


def test_labels_for_any_market_are_labels(shop: Shop, packed: str) -> None:
    label(shop, packed, PASSED, market="gb")
    assert release(shop, packed, PASSED) == 10


@pytest.mark.parametrize(("spoiled", "retain", "leaves"), [(0, 0, 10), (1, 0, None), (1, 1, 9), (2, 1, None)])
def test_no_more_bars_leave_than_labels_are_on_them(
    shop: Shop, packed: str, spoiled: int, retain: int, leaves: int | None
) -> None:
    """Ten printed; a retained sample does not leave and needs none."""
    run = label(shop, packed, PASSED, counted=False)
    count_run(shop.book, run, Counted(spoiled, 0, specimen=0), on=PASSED)
    if leaves is None:
        with pytest.raises(
            Refused, match=rf"has {10 - spoiled} labels on its bars, and {10 - retain} bars would leave"
        ):
            release(shop, packed, PASSED, retain=retain)
    else:
        assert release(shop, packed, PASSED, retain=retain) == leaves


def test_the_labelled_bars_leave_and_the_others_stay_until_they_have_one(shop: Shop, packed: str) -> None:
    """Ten bars, seven labels: seven leave by whatever door, and come back; then three more labels."""
    label(shop, packed, PASSED, count=7)
    assert release(shop, packed, PASSED, keep=True) == 7
    for leave in doors(shop, packed, PASSED):
        leave()
    gift(shop.book, {packed: 4}, to="a neighbour", on=PASSED)  # seven are gone, three are here
    for leave in doors(shop, packed, PASSED):
        with pytest.raises(Refused, match="0 bars in the workshop have a label, and 1 would leave; 3 without one stay"):
            leave()
    take_back(shop.book, {packed: 1}, customer="heron", stall=None, on=PASSED, reason="torn")
    with pytest.raises(Refused, match="3 without one stay"):
        gift(shop.book, {packed: 1}, to="a neighbour", on=PASSED)
    reprint_labels(shop.book, 1, 2, on=PASSED, start=1, draw=lambda *_: b"drawn")
    with pytest.raises(Refused, match="3 without one stay"):  # nobody counted them yet
        gift(shop.book, {packed: 1}, to="a neighbour", on=PASSED)
    count_run(shop.book, 2, Counted(0, 0, specimen=0), on=PASSED)
    with pytest.raises(Refused, match="2 bars in the workshop have a label, and 3 would leave; 1 without one stays"):
        gift(shop.book, {packed: 3}, to="a neighbour", on=PASSED)
    gift(shop.book, {packed: 2}, to="a neighbour", on=PASSED)
    waste_lot(shop.book, packed, 1, place="workshop", on=PASSED, reason="cracked")


def test_old_labels_do_not_count_beside_new_ones(shop: Shop, packed: str) -> None:
    label(shop, packed, LAST)
    label(shop, packed, FIRST, count=9)
    with pytest.raises(Refused, match="does not name Camphor"):
        release(shop, packed, FIRST)
    assert release(shop, packed, LAST) == 10  # the day before, both are usable


def test_bare_bars_by_the_command(packed: str, run: Any) -> None:
    with freeze_time("2026-06-10 09:00:00"):
        run("release", packed, "--anyway", "a trial", "--bare", "a trial", *CHECKED)
        assert "released bare: a trial" in " ".join(run("batch", "show", packed).stdout.split())


def stated_later(shop: Shop) -> None:
    """Geraniol, on the first list too, is stated of the oil after the labels were printed."""
    contents = {"linalool": 1_000, "Camphor": 1_000, "geraniol": 1_000}
    state_contents(shop.book, "olive oil", contents, source="a newer statement made up")


def test_what_is_stated_after_the_printing_closes_the_release(shop: Shop, packed: str) -> None:
    label(shop, packed, FIRST)
    stated_later(shop)
    with pytest.raises(Refused, match=r"labels are not usable any more: run 1 .* does not name Geraniol, which"):
        assess_none(shop, packed)
    set_up(shop.book, SETUP)
    label(shop, packed, FIRST)
    assess_none(shop, packed)
    for leave in doors(shop, packed, FIRST):
        leave()


def test_what_is_stated_after_the_release_closes_the_doors_until_new_labels_are_on(shop: Shop, packed: str) -> None:
    label(shop, packed, PASSED)
    release(shop, packed, PASSED)
    for leave in doors(shop, packed, PASSED):
        leave()
    stated_later(shop)
    for leave in doors(shop, packed, PASSED):
        with pytest.raises(Refused, match="does not name Geraniol"):
            leave()
    with shop.book.look() as rows:
        due = labels_due(rows, today=PASSED, by=BEFORE)
    assert due
    assert {(one.batch_code, one.until) for one in due} == {(packed, PASSED)}
    assert all("Geraniol is missing on run 1" in one.why for one in due)
    label(shop, packed, PASSED)
    for leave in doors(shop, packed, PASSED):
        leave()
    with shop.book.look() as rows:
        assert labels_due(rows, today=PASSED, by=BEFORE) == ()


def test_a_newer_statement_that_takes_nothing_more_in_leaves_the_doors_open(shop: Shop, packed: str) -> None:
    label(shop, packed, FIRST)
    state_contents(shop.book, "olive oil", {"linalool": 2_000, "Camphor": 900}, source="a newer statement made up")
    assess_none(shop, packed)
