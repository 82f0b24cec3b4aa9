"""One --anyway covers the doubts it was given for, and no later one; what was decided once is not asked again."""

import shutil
from collections.abc import Callable
from dataclasses import replace
from datetime import date, timedelta
from typing import Any

import pytest
from making import LOOKED_GOOD, MADE, cut, deliver, lines_of, planned
from once import once
from scented import with_camphor
from shop import NOW, SETUP, Shop, released_before, work_a_shop

from ledger.domain.bench.decision import Doubt
from ledger.domain.release.bars import Passing
from ledger.domain.release.releasing import Releasing
from ledger.domain.release.supply import Supply
from ledger.domain.tools.bar_checks import Check
from ledger.errors import Refused
from ledger.operations.bench.correct import correct_batch
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.house.setup import set_up
from ledger.operations.keep.check import check
from ledger.operations.keep.undo import undo
from ledger.operations.label.labels import Counted, LabelRequest, approve_label, count_run, print_labels, reprint_labels
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.material.skin import state_contents
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.release.assess import assess_recipe
from ledger.operations.release.facts import supply_of
from ledger.operations.release.release import pass_bars
from ledger.operations.sell.dispatch import dispatch
from ledger.operations.sell.gift import gift
from ledger.operations.sell.stall_out import stall_out
from ledger.operations.stock.lots import decide_lots
from ledger.operations.stock.receive import DeliveryLine
from ledger.rows.batch import find_batch
from ledger.rows.decision import decided
from ledger.rows.opened import OlderLedger, open_rows
from ledger.storage.book import Book

PASSED = date(2026, 6, 3)  # cut on 6 May, cured 28 days
NEXT = PASSED + timedelta(days=1)
LAST, FIRST = date(2026, 7, 31), date(2026, 8, 1)  # of the short list of allergens, and of the long one in the EU
# of 1440.478 g: olive 41.7 %, coconut 27.8 %
REPORT = """
assessor = "R. Lund"
reference = "QR-9"
on = 2026-01-05
process = ["cold"]
markets = ["eu", "gb"]
[[ingredient]]
inci = "OLEA EUROPAEA FRUIT OIL"
highest_percent = 45
[[ingredient]]
inci = "COCOS NUCIFERA OIL"
highest_percent = 30
[[ingredient]]
inci = "SODIUM HYDROXIDE"
highest_percent = 60
[[ingredient]]
inci = "AQUA"
highest_percent = 60
[[notification]]
market = "eu"
reference = "E-1"
on = 2026-01-06
[[notification]]
market = "gb"
reference = "G-1"
on = 2026-01-06
"""


@pytest.fixture
def packed(shop: Shop) -> str:
    return str(once(with_camphor)(shop))


def release(shop: Shop, code: str, on: date = PASSED, **more: Any) -> int:
    """Where bars are sold bare is none of the doubts asked about here, so they are released as before that."""
    return released_before(shop.book, code, Releasing(on=on, by="Nuala", **{"checks": LOOKED_GOOD, **more}))


def hold(shop: Shop, code: str, on: date = PASSED) -> None:
    decide_lots(shop.book, [code], verdict="on hold", on=on, by="Nuala", reason="looked at again")


def doors(shop: Shop, code: str, on: date = PASSED) -> list[Callable[[], object]]:
    """Every way by which a bar leaves."""
    return [
        lambda: stall_out(shop.book, "Quay market", {code: 1}, on=on),
        lambda: dispatch(shop.book, "heron", {code: 1}, on=on, price_minor=400, note=None),
        lambda: gift(shop.book, {code: 1}, to="a neighbour", on=on),
    ]


def leaves(shop: Shop, code: str, on: date = PASSED) -> None:
    for leave in doors(shop, code, on):
        leave()


def stays(shop: Shop, code: str, says: str, on: date = PASSED) -> str:
    """Refused at every door; returns what the last one said."""
    for leave in doors(shop, code, on):
        with pytest.raises(Refused, match=says) as refused:
            leave()
    return str(refused.value)


def subjects(shop: Shop) -> list[tuple[str, str]]:
    """What the last decision was about."""
    last = "(SELECT max(id) FROM decision)"
    query = f"SELECT subject, doubt FROM decision_doubt WHERE decision_id = {last} ORDER BY subject, id"
    return [tuple(row) for row in shop.rows().execute(query)]


def reason(shop: Shop) -> str:
    return str(shop.rows().execute("SELECT reason FROM decision ORDER BY id DESC").fetchone()[0])


def test_a_decision_says_what_it_was_about(shop: Shop, packed: str) -> None:
    release(shop, packed, anyway="a trial", bare="a trial")
    markets = "European Union and Northern Ireland; Great Britain"
    bare = f"no label was printed for it, and a bar carries one in: {markets}"
    assert subjects(shop) == [("assessment", "none for eu"), ("assessment", "none for gb"), ("bare", bare)]


def test_a_decision_that_nothing_was_doubted_for_says_nothing(shop: Shop, packed: str) -> None:
    assess_recipe(shop.book, "plain-bar", REPORT, file="report.toml")
    label(shop, packed, PASSED)
    release(shop, packed, anyway="to be sure", bare="to be sure")
    assert subjects(shop) == []


def test_the_same_doubts_are_not_asked_twice_after_a_hold(shop: Shop, packed: str) -> None:
    release(shop, packed, anyway="a trial", bare="a trial")
    hold(shop, packed)
    with pytest.raises(Refused, match="say why: --reason"):
        release(shop, packed)
    assert release(shop, packed, reason="it is sound") == 10
    assert (subjects(shop), reason(shop)) == ([], "it is sound")
    leaves(shop, packed)


def test_a_doubt_that_reads_the_same_the_next_day_is_decided(shop: Shop, packed: str) -> None:
    until = REPORT.replace("on = 2026-01-05", "on = 2026-01-05\nuntil = 2026-06-01")
    assess_recipe(shop.book, "plain-bar", until, file="report.toml")
    release(shop, packed, anyway="the new report is on its way", bare="a trial")
    leaves(shop, packed)
    leaves(shop, packed, NEXT)
    assess_recipe(shop.book, "plain-bar", until.replace("2026-06-01", "2026-06-02"), file="report.toml")
    stays(shop, packed, "date is 4 Jun 2026, assessed until 2 Jun 2026", NEXT)


def test_a_second_market_is_a_doubt_of_its_own(shop: Shop, packed: str) -> None:
    set_up(shop.book, replace(SETUP, addresses={"eu": SETUP.addresses["eu"]}))
    release(shop, packed, anyway="a trial", bare="a trial")
    leaves(shop, packed)
    set_up(shop.book, SETUP)
    stays(shop, packed, "no safety assessment of Plain Bar, which the markets eu, gb ask for")
    with pytest.raises(Refused, match="released already"):
        release(shop, packed)
    release(shop, packed, anyway="to Great Britain too")
    leaves(shop, packed)
    set_up(shop.book, replace(SETUP, addresses={"gb": SETUP.addresses["gb"]}))  # of what was decided, less
    leaves(shop, packed)


def test_a_notification_is_asked_for_each_market(shop: Shop, packed: str) -> None:
    eu, gb = (f'[[notification]]\nmarket = "{one}"' for one in ("eu", "gb"))
    without = REPORT[: REPORT.index(gb)]
    assess_recipe(shop.book, "plain-bar", without, file="report.toml")
    release(shop, packed, anyway="a trial", bare="a trial")
    assert subjects(shop)[1:] == [("notification", "there is no notification for GB")]
    leaves(shop, packed)
    assess_recipe(shop.book, "plain-bar", without[: without.index(eu)], file="report.toml")
    said = stays(shop, packed, "there is no notification for EU")
    assert "for GB" not in said


def test_another_ingredient_outside_is_asked_again_and_the_first_is_not(shop: Shop, packed: str) -> None:
    outside = REPORT.replace("= 45", "= 41")
    assess_recipe(shop.book, "plain-bar", outside, file="report.toml")
    release(shop, packed, anyway="a trial", bare="a trial")
    leaves(shop, packed)
    assess_recipe(shop.book, "plain-bar", outside.replace("= 30", "= 27"), file="report.toml")
    assert "OLEA" not in stays(shop, packed, "COCOS NUCIFERA OIL is 27.77 %, assessed at most 27 %")
    release(shop, packed, anyway="the coconut too")
    assert "OLEA" not in reason(shop)
    leaves(shop, packed)
    assess_recipe(shop.book, "plain-bar", outside.replace("= 41", "= 40"), file="report.toml")
    stays(shop, packed, "OLEA EUROPAEA FRUIT OIL is 41.65 %, assessed at most 40 %")


def label(shop: Shop, code: str, on: date, *, count: int = 10) -> int:
    """Labels approved, printed and counted on a day; returns the number of the run."""
    request = LabelRequest(code, "eu", "band", count, on, layout_source="layout", sheet_source="sheet")
    approve_label(shop.book, request, by="Nuala")
    print_labels(shop.book, request, lambda _: b"drawn")
    with shop.book.look() as rows:
        run = int(rows.execute("SELECT max(id) FROM label_run").fetchone()[0])
    count_run(shop.book, run, Counted(0, 0, specimen=0), on=on)
    return run


def test_a_label_that_the_next_day_changes_is_a_doubt_that_no_reason_decides(shop: Shop, packed: str) -> None:
    label(shop, packed, LAST)
    release(shop, packed, LAST, anyway="a trial")  # no assessment
    leaves(shop, packed, LAST)
    stays(shop, packed, "does not name Camphor", FIRST)
    with pytest.raises(Refused, match="released already"):
        release(shop, packed, FIRST, anyway="to one who knows")
    stays(shop, packed, "does not name Camphor", FIRST)


def test_a_label_that_a_later_statement_makes_wrong_is_a_later_doubt(shop: Shop, packed: str) -> None:
    run = label(shop, packed, PASSED)
    release(shop, packed, anyway="a trial")  # no assessment
    leaves(shop, packed)
    state_contents(shop.book, "olive oil", {"limonene": 2_000}, source="another statement made up")
    stays(shop, packed, "imonene")
    release(shop, packed, anyway="to one who knows")
    assert [subject for subject, _ in subjects(shop)] == ["labels"]
    leaves(shop, packed)
    reprint_labels(shop.book, run, 10, on=PASSED, start=1, draw=lambda *_: b"drawn")
    count_run(shop.book, run + 1, Counted(0, 0, specimen=0), on=PASSED)
    stays(shop, packed, rf"run {run + 1} for eu")


def test_bare_is_asked_again_once_it_reads_otherwise(shop: Shop, packed: str) -> None:
    release(shop, packed, anyway="a trial", bare="a trial")
    label(shop, packed, PASSED, count=3)
    hold(shop, packed)
    with pytest.raises(Refused, match="has 3 labels on its bars, and 10 bars would leave"):
        release(shop, packed, reason="it is sound")
    release(shop, packed, reason="it is sound", bare="the rest go to a friend")
    hold(shop, packed)
    with pytest.raises(Refused, match="has 3 labels on its bars, and 9 bars would leave"):
        release(shop, packed, reason="it is sound", retain=1)
    assert release(shop, packed, reason="it is sound") == 10


def test_what_was_not_good_is_decided_as_it_was_found(shop: Shop, packed: str) -> None:
    def smelling(of: str) -> list[Check]:
        return [one._replace(found=of, good=False) if one.what == "smell" else one for one in LOOKED_GOOD]

    release(shop, packed, anyway="sold as seconds", bare="a trial", checks=smelling("rancid"))
    assert ("check", "smell: rancid") in subjects(shop)
    hold(shop, packed)
    with pytest.raises(Refused, match="not good in smell: of paint"):
        release(shop, packed, reason="it is sound", checks=smelling("of paint"))
    assert release(shop, packed, reason="it is sound", checks=smelling("rancid")) == 10


def test_bars_passed_before_their_time_say_so(shop: Shop) -> None:
    code = cut(shop.book)
    pass_bars(shop.book, code, Passing(on=PASSED - timedelta(days=1), by="Nuala", anyway="a test for a friend"))
    assert subjects(shop) == [("cure", "it cures until 3 Jun 2026")]


# The fats of the plain bar take 154.554 g NaOH: 155 g is a superfat of -0.29 %, 154.4 g of 0.10 %.


def log(shop: Shop, code: str, line: int, mg: int, *, anyway: str | None = None, correct: bool = False) -> None:
    weigh(shop.book, code, {line: [Weighed(mg)]}, on=MADE, by="Nuala", anyway=anyway, correct=correct)


def test_a_superfat_of_nothing_is_decided_for_its_figure(shop: Shop) -> None:
    code = planned(shop.book)
    log(shop, code, 1, 600_000)
    log(shop, code, 2, 400_000)
    log(shop, code, 4, 155_000, anyway="for washing powder")
    assert subjects(shop) == [("superfat", "likely nothing"), ("superfat", "−0.29 %")]
    log(shop, code, 2, 400_010, correct=True)  # 155 / 154.556 is 0.29 % over too, so it reads the same
    log(shop, code, 2, 400_000, correct=True)
    with pytest.raises(Refused, match=r"superfat of −0\.35 %"):
        log(shop, code, 4, 155_100, correct=True)  # 1 - 155.1 / 154.554
    log(shop, code, 4, 154_400, correct=True)  # above nothing: less than what was decided
    log(shop, code, 4, 155_000, correct=True)  # as it was decided
    correct_batch(shop.book, code, 3, 293_700, take="pour", on=MADE, by="Nuala")
    assert len(decided_of(shop, code)) == 1


def decided_of(shop: Shop, code: str) -> list[str]:
    query = "SELECT reason FROM decision d JOIN batch b ON b.id = d.batch_id WHERE b.code = ?"
    return [row[0] for row in shop.rows().execute(query, (code,))]


def test_what_is_likely_is_decided_at_the_scale_once_for_the_batch(shop: Shop) -> None:
    code = planned(shop.book)
    log(shop, code, 1, 600_000)
    log(shop, code, 2, 400_000)
    log(shop, code, 4, 154_400, anyway="for the floor")
    assert subjects(shop) == [("superfat", "likely nothing")]
    log(shop, code, 4, 154_450, correct=True)
    with pytest.raises(Refused, match=r"superfat of −0\.29 %: lye is left over"):
        log(shop, code, 4, 155_000, correct=True)
    other = planned(shop.book)
    log(shop, other, 1, 600_000)
    log(shop, other, 2, 400_000)
    with pytest.raises(Refused, match="lye may be left over"):
        log(shop, other, 4, 154_400)


SHEA = """
name = "Shea"
code = "shea"
process = "cold"
superfat = 5
fats_total = "1000 g"
[alkali]
material = "sodium hydroxide"
kind = "NaOH"
[water]
material = "water"
per_alkali = 2.0
[[fat]]
material = "shea butter"
percent = 60
[[fat]]
material = "olive oil"
percent = 40
[mould]
name = "loaf"
bars = 10
net_weight = "100 g"
"""


def shea(shop: Shop) -> None:
    """A recipe likely to burn: shea of no certificate, 160 to 195 mg KOH per g, likely low -0.59 % (see test_plan)."""
    facts = MaterialFacts("shea butter", "Butyrospermum Parkii Butter", None, 160_000, 195_000, "published range")
    add_material(shop.book, facts, kind="fat", code=None)
    deliver(shop.book, DeliveryLine("shea butter", 2_000_000, "SB-1", 2400))
    add_recipe(shop.book, SHEA, file="shea.toml")


def last_entry(shop: Shop, said: str = "") -> int:
    """The number of the last entry whose words begin so."""
    with shop.book.look() as rows:
        found = rows.execute("SELECT max(id) FROM entry WHERE instr(said, ?) = 1", (said,)) if said else None
        return int((found or rows.execute("SELECT max(id) FROM entry")).fetchone()[0])


def test_a_plan_taken_back_takes_its_decision_with_it(shop: Shop) -> None:
    shea(shop)
    planned(shop.book, "shea", anyway="a test loaf")
    assert subjects(shop) == [("superfat", "likely nothing")]
    undo(shop.book, last_entry(shop))
    with pytest.raises(Refused, match="likely to be as low as"):
        planned(shop.book, "shea")
    again = planned(shop.book, "shea", anyway="another")
    with shop.book.look() as rows:
        number = find_batch(rows, again).id
        assert decided(rows, batch_id=number) == {("superfat", "likely nothing")}
        assert decided(rows, batch_id=number - 1) == frozenset()


def test_a_decision_at_the_scale_is_not_taken_back(shop: Shop) -> None:
    code = planned(shop.book)
    takes = {line.number: [Weighed(line.target)] for line in lines_of(shop.book, code)}
    weigh(shop.book, code, {**takes, 4: [Weighed(155_000)]}, on=MADE, by="Nuala", anyway="for washing powder")
    with pytest.raises(Refused, match="is a decision; it is not taken back"):
        undo(shop.book, last_entry(shop))


def supply_before(rows: Any, batch: Any, on: date) -> Supply:
    """What spoke against supplying bars to programs for which a reason lifted the end of a list of allergens too."""
    found = supply_of(rows, batch, on)
    ended = {market: Doubt("labels", one.words) for market, one in found.changed.items()}
    return found._replace(stale={**found.stale, **ended}, changed={})


@pytest.fixture
def older(book: Book, built: Any) -> tuple[Shop, str, str]:
    path, (shop, code, plan) = built("decided by reasons alone", decided_by_reasons_alone, book.path)
    shutil.copyfile(path, book.path)
    return replace(shop, book=book), code, plan


def decided_by_reasons_alone(book: Book) -> tuple[Shop, str, str]:
    """A shop whose decisions stand in their reasons alone: bars released under old labels, and a plan of shea."""
    with pytest.MonkeyPatch.context() as before:
        for module in ("release.release", "bench.superfat_guard"):
            before.setattr(f"ledger.operations.{module}.decide", lambda tx, decision, _: tx.add(decision))
        before.setattr("ledger.operations.release.release.supply_of", supply_before)
        shop = work_a_shop(book)
        code = with_camphor(shop)
        label(shop, code, LAST)
        release(shop, code, FIRST, reason="tried; it is sound", anyway="to one who knows")
        shea(shop)
        plan = planned(shop.book, "shea", anyway="a test loaf")
    return shop, code, plan


def reopen(shop: Shop) -> Shop:
    shop.book.close()
    return replace(shop, book=Book(shop.book.path, who="Nuala", now=lambda: NOW))


def test_decisions_of_an_older_ledger_go_on_counting(older: tuple[Shop, str, str]) -> None:
    shop, code, plan = older
    with pytest.raises(OlderLedger):
        open_rows(shop.book.path)
    shop = reopen(shop)
    entry = last_entry(shop)
    assert shop.rows().execute("SELECT verb, said FROM entry WHERE id = ?", (entry,)).fetchone()["verb"] == "upgrade"
    leaves(shop, code, FIRST)
    hold(shop, code, FIRST)
    release(shop, code, FIRST, reason="it is sound")
    assess_recipe(shop.book, "plain-bar", REPORT.replace("= 45", "= 41"), file="report.toml")
    leaves(shop, code, FIRST)  # whatever an assessment does not cover was decided at once then
    for line in lines_of(shop.book, plan):
        log(shop, plan, line.number, line.target)
    assert check(shop.rows()).findings == ()
    last = last_entry(shop)
    assert last_entry(reopen(shop)) == last  # read once


def test_labels_printed_after_an_older_decision_are_asked_about(older: tuple[Shop, str, str]) -> None:
    shop, code, _ = older
    shop = reopen(shop)
    reprint_labels(shop.book, 1, 10, on=FIRST, start=1, draw=lambda *_: b"drawn")
    count_run(shop.book, 2, Counted(0, 0, specimen=0), on=FIRST)
    stays(shop, code, "run 2 for eu", FIRST)


def test_what_an_upgrade_wrote_binds_nothing_and_is_not_lost(older: tuple[Shop, str, str]) -> None:
    shop, code, plan = older
    planning = last_entry(shop, f"Planned batch {plan}")
    shop = reopen(shop)
    undo(shop.book, last_entry(shop))
    leaves(shop, code, FIRST)
    undo(shop.book, planning)
    assert check(shop.rows()).findings == ()
