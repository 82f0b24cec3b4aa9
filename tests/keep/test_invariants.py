"""Every law of the ledger is broken once here, and only that law complains."""

import sqlite3
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from functools import cache
from typing import Any

import pytest

from ledger.domain.cost import flows
from ledger.domain.keep.finding import Finding
from ledger.rows import laws
from ledger.rows.laws import LAWS, breaches
from ledger.rows.sell import laws as sale_laws
from ledger.rows.sell import shop_laws
from ledger.storage.migrations import migrate


@dataclass(frozen=True)
class LotFact:
    """One lot that counts; its mass is what all its bars weighed at the cut."""

    code: str
    entry: int
    on: str
    counted: bool  # in pieces, else in mg
    soap: bool
    supplied: bool
    batch: str | None
    mass_mg: int | None
    cost_minor: int | None = None


@dataclass(frozen=True)
class MovementFact:
    """One movement; quantity in mg or pieces."""

    entry: int
    lot: str
    place: str
    on: str
    quantity: int
    kind: str
    batch: str | None
    customer: str | None


@dataclass(frozen=True)
class DecisionFact:
    """One decision about a lot, in the order they were taken."""

    entry: int
    lot: str
    verdict: str
    on: str


@dataclass(frozen=True)
class LineFact:
    """One line of a sale, return or credit, each a sale of its own but where `sale` says; amounts in minor units."""

    entry: int
    kind: str
    bars: int
    amount: int | None
    moved: int | None = None  # the place of its movement among those of the facts
    of: int | None = None  # the place of the line it takes from among those of the facts
    lot: str = "26-001-4"
    tax: int | None = None


@dataclass(frozen=True)
class Facts:
    """A small ledger, as far as the laws look at it."""

    lots: tuple[LotFact, ...]
    movements: tuple[MovementFact, ...]
    decisions: tuple[DecisionFact, ...]
    reverses: tuple[tuple[int, int], ...] = ()  # (the undo, the entry it took back)
    planned: tuple[tuple[int, int], ...] = ()  # (entry of a plan line, entry of the batch it is of)
    carriage_minor: int = 0  # of the delivery that brought what was supplied
    reworks: frozenset[str] = frozenset()  # the batches that book bars back in as mass
    lines: tuple[LineFact, ...] = ()
    invoices: tuple[tuple[int, int, int], ...] = ()  # (entry, number, the place of its sale among those of the lines)


KINDS = {"oil": "fat", "bar": "soap", "wrapper": "packaging"}
PLACES = {"workshop": "workshop", "quay": "stall", "returns": "returns"}


@cache
def unguarded() -> tuple[sqlite3.Connection, dict[str, list[str]]]:
    """Tables without guards to copy, and the columns of each that must be filled: laying them takes far longer."""
    raw = sqlite3.connect(":memory:", isolation_level=None)
    migrate(raw)
    for (name,) in raw.execute("SELECT name FROM sqlite_schema WHERE type = 'trigger'").fetchall():
        raw.execute(f"DROP TRIGGER {name}")
    tables = [row[0] for row in raw.execute("SELECT name FROM sqlite_schema WHERE type = 'table'")]
    needed = {
        one: [row[1] for row in raw.execute(f"PRAGMA table_info({one})") if row[3] and row[4] is None] for one in tables
    }
    return raw, needed


def ledger_of(facts: Facts) -> sqlite3.Connection:
    """The facts as rows in tables without guards, so that any law may be broken."""
    raw = sqlite3.connect(":memory:", isolation_level=None)
    raw.row_factory = sqlite3.Row
    empty, needed = unguarded()
    empty.backup(raw)
    numbers: dict[tuple[str, str], int] = {}

    def put(table: str, **given: Any) -> None:
        filled: dict[str, Any] = dict.fromkeys(needed[table], "1") | {k: v for k, v in given.items() if v is not None}
        names = ", ".join(f'"{one}"' for one in filled)
        row = raw.execute(f"INSERT INTO {table} ({names}) VALUES ({', '.join('?' * len(filled))})", [*filled.values()])
        if "code" in given:
            numbers[table, given["code"]] = int(row.lastrowid or 0)

    undone = dict(facts.reverses)
    for entry in range(1, 31):
        put("entry", id=entry, reverses=undone.get(entry))
    for code, kind in KINDS.items():
        put("material", entry_id=1, code=code, kind=kind)
    for code, kind in PLACES.items():
        put("place", entry_id=1, code=code, name=code, kind=kind)
    put("customer", entry_id=1, code="ropewalk", kind="shop")
    batches = {one.batch for one in (*facts.movements, *facts.lots) if one.batch}
    for code in sorted(batches):
        put("batch", entry_id=1, code=code, process="rework" if code in facts.reworks else "cold", material_id=1,
            on="2026-03-02")  # fmt: skip
    told = {one.code for one in facts.lots}
    others = {one.lot: LotFact(one.lot, 1, "", False, False, True, None, None) for one in facts.movements}
    put("delivery", entry_id=1, supplier_id=1, on="2026-03-02", carriage_minor=facts.carriage_minor)
    for lot in (*facts.lots, *(one for code, one in others.items() if code not in told)):
        material = "bar" if lot.soap else "wrapper" if lot.counted else "oil"
        put("lot", entry_id=lot.entry, code=lot.code, on=lot.on, material_id=numbers["material", material],
            supplier_id=1 if lot.supplied else None, batch_id=numbers.get(("batch", lot.batch or "")),
            delivery_id=1 if lot.supplied else None, cost_minor=lot.cost_minor, mass_mg=lot.mass_mg)  # fmt: skip
    for one in facts.movements:
        put("movement", entry_id=one.entry, lot_id=numbers["lot", one.lot], place_id=numbers["place", one.place],
            on=one.on, quantity=one.quantity, kind=one.kind, batch_id=numbers.get(("batch", one.batch or "")),
            customer_id=numbers.get(("customer", one.customer or "")))  # fmt: skip
    for decision in facts.decisions:
        put("decision", entry_id=decision.entry, lot_id=numbers["lot", decision.lot], verdict=decision.verdict,
            on=decision.on)  # fmt: skip
    for line, batch in facts.planned:
        put("batch", entry_id=batch, code="planned", process="cold", material_id=1, on="2026-03-02")
        put("plan_line", entry_id=line, batch_id=numbers["batch", "planned"], material_id=1)
    for sold in facts.lines:
        put("sale", entry_id=sold.entry, kind=sold.kind)
        sale = raw.execute("SELECT max(id) FROM sale").fetchone()[0]
        put("sale_line", entry_id=sold.entry, sale_id=sale, kind="bars", lot_id=numbers["lot", sold.lot],
            movement_id=None if sold.moved is None else sold.moved + 1, bars=sold.bars, gross_minor=sold.amount,
            reduction_minor=0, of_line_id=None if sold.of is None else sold.of + 1, tax_minor=sold.tax,
            tax_ppm=None if sold.tax is None else 200_000)  # fmt: skip
    for made, number, over in facts.invoices:
        put("invoice", entry_id=made, number=number, kind="invoice", customer_id=1)
        invoice = raw.execute("SELECT max(id) FROM invoice").fetchone()[0]
        put("invoice_sale", entry_id=made, invoice_id=invoice, sale_id=over + 1)
    return raw


def findings(facts: Facts) -> tuple[Finding, ...]:
    """What the laws find in such a ledger."""
    return breaches(ledger_of(facts))


OIL = LotFact("L1-X", 2, "2026-03-02", counted=False, soap=False, supplied=True, batch=None, mass_mg=None)
BARS = LotFact("26-001-4", 5, "2026-04-02", counted=True, soap=True, supplied=False, batch="26-001-4", mass_mg=900)


def moved(entry: int, lot: str, on: str, quantity: int, kind: str, **more: str) -> MovementFact:
    """A movement at the workshop, unless told otherwise."""
    place = more.get("place", "workshop")
    return MovementFact(
        entry=entry,
        lot=lot,
        place=place,
        on=on,
        quantity=quantity,
        kind=kind,
        batch=more.get("batch"),
        customer=more.get("customer"),
    )


# 1 000 mg of oil came, were accepted and went into a batch; 10 bars of 900 mg together came out and were
# released; 4 went to the quay and were sold there, 2 to a shop, which brought 1 back.
CAME = moved(2, "L1-X", "2026-03-02", 1000, "received")
USED = moved(4, "L1-X", "2026-04-01", -1000, "consumed", batch="26-001-4")
CUT = moved(5, "26-001-4", "2026-04-02", 10, "yielded", batch="26-001-4")
OUT = moved(7, "26-001-4", "2026-05-09", -4, "moved")
IN = moved(7, "26-001-4", "2026-05-09", 4, "moved", place="quay")
SOLD = moved(8, "26-001-4", "2026-05-09", -4, "sold", place="quay")
SENT = moved(9, "26-001-4", "2026-05-10", -2, "dispatched", customer="ropewalk")
BACK = moved(10, "26-001-4", "2026-05-20", 1, "returned", place="returns", customer="ropewalk")
ACCEPTED = DecisionFact(3, "L1-X", "accepted", "2026-03-02")
RELEASED = DecisionFact(6, "26-001-4", "released", "2026-05-04")
# 4 were sold at the quay for 24.00, 2 to the shop for 9.00 with 1.50 of tax; one came back, 2.00 more was taken off.
LINES = (
    LineFact(8, "sale", 4, 2400, moved=5),
    LineFact(9, "sale", 2, 900, moved=6, tax=150),
    LineFact(10, "return", -1, -450, moved=7, of=1, tax=-75),
    LineFact(11, "credit", 0, -200, of=1, tax=-33),
)
SOUND = Facts(
    lots=(OIL, BARS),
    movements=(CAME, USED, CUT, OUT, IN, SOLD, SENT, BACK),
    decisions=(ACCEPTED, RELEASED),
    lines=LINES,
    invoices=((12, 7, 0), (13, 8, 1)),
)


def booked(number: int, **change: object) -> Facts:
    """The sound ledger with one line of a sale changed."""
    changed = replace(LINES[number], **change)  # type: ignore[arg-type]
    return replace(SOUND, lines=(*LINES[:number], changed, *LINES[number + 1 :]))


def swapped(old: MovementFact, **change: object) -> Facts:
    """The sound ledger with one movement changed."""
    changed = replace(old, **change)  # type: ignore[arg-type]
    return replace(SOUND, movements=tuple(changed if one is old else one for one in SOUND.movements))


Law = Callable[[sqlite3.Connection], Iterator[Finding]]
BROKEN: list[tuple[Law, Facts]] = [
    (laws.never_below_zero, swapped(SOLD, quantity=-5)),
    (laws.never_below_zero, swapped(USED, on="2026-03-01")),  # used the day before it came
    (laws.nothing_happens_before_a_lot_is_there, swapped(CAME, on="2026-02-01")),
    (laws.every_lot_comes_from_somewhere, swapped(CAME, kind="counted")),
    (laws.every_lot_comes_from_somewhere, swapped(CUT, batch="26-002-2")),
    (laws.what_leaves_one_place_arrives_at_another, swapped(OUT, quantity=-3)),
    (laws.only_accepted_lots_were_used, replace(SOUND, decisions=(RELEASED,))),
    (laws.only_accepted_lots_were_used, swapped(USED, on="2026-03-01")),
    (
        laws.only_accepted_lots_were_used,
        replace(SOUND, decisions=(ACCEPTED, DecisionFact(3, "L1-X", "on hold", "2026-03-03"), RELEASED)),
    ),
    (laws.only_released_bars_left, replace(SOUND, decisions=(ACCEPTED,))),
    (laws.only_released_bars_left, swapped(SENT, on="2026-05-03")),
    (laws.nobody_returns_more_than_they_got, swapped(BACK, quantity=3)),
    (laws.no_more_comes_out_than_went_in, replace(SOUND, lots=(OIL, replace(BARS, mass_mg=1001)))),
    (
        laws.no_lot_is_made_of_itself,
        replace(SOUND, movements=(*SOUND.movements, replace(USED, entry=11, quantity=2000, kind="yielded"))),
    ),
    (laws.no_lot_is_made_of_itself, replace(SOUND, movements=(
        moved(3, "A", "2026-03-01", -1, "consumed", batch="P"), moved(3, "B", "2026-03-01", 1, "yielded", batch="P"),
        moved(4, "B", "2026-03-01", -1, "consumed", batch="Q"), moved(4, "A", "2026-03-01", 1, "yielded", batch="Q"),
    ))),
    (laws.an_undo_mirrors_what_it_takes_back, replace(SOUND, reverses=((10, 9),))),
    (laws.what_counts_stands_on_what_counts, replace(SOUND, planned=((9, 4),), reverses=((30, 4),))),
    (sale_laws.a_sale_goes_with_its_movements, booked(0, bars=3)),
    (sale_laws.a_sale_goes_with_its_movements, booked(0, lot="L1-X")),
    (sale_laws.a_sale_goes_with_its_movements, booked(2, bars=-2)),
    (sale_laws.a_sale_goes_with_its_movements, booked(3, moved=7)),  # no bars come with a credit
    (sale_laws.a_sale_goes_with_its_movements, swapped(SENT, kind="given")),
    (sale_laws.a_sale_goes_with_its_movements, swapped(BACK, kind="counted")),
    (sale_laws.nothing_is_taken_back_twice, booked(2, bars=-3)),
    (sale_laws.nothing_is_taken_back_twice, booked(3, amount=-451)),
    (sale_laws.nothing_is_taken_back_twice, booked(3, tax=-76)),
    (sale_laws.nothing_is_taken_back_twice, booked(3, lot="L1-X")),
    (sale_laws.nothing_is_taken_back_twice, booked(3, amount=1)),
    (sale_laws.nothing_is_taken_back_twice, booked(1, amount=None, tax=None)),
    (sale_laws.a_return_has_something_to_take_from, booked(1, of=0)),
    (sale_laws.a_return_has_something_to_take_from, booked(3, of=None)),
    (sale_laws.a_return_has_something_to_take_from, booked(3, of=2)),
    (laws.what_was_paid_is_somewhere, replace(SOUND, lots=(replace(OIL, cost_minor=99), BARS), carriage_minor=100)),
    (shop_laws.invoices_follow_each_other, replace(SOUND, invoices=((12, 7, 0), (13, 9, 1)))),
    (shop_laws.invoices_follow_each_other, replace(SOUND, invoices=((12, 8, 0), (13, 7, 1)))),
    (shop_laws.invoices_follow_each_other, replace(SOUND, reverses=((14, 13),))),
    (shop_laws.a_sale_is_invoiced_once, replace(SOUND, invoices=((12, 7, 0), (13, 8, 0)))),
    (shop_laws.a_sale_is_invoiced_once, replace(SOUND, reverses=((14, 9),))),
]  # fmt: skip


def test_a_sound_ledger_has_no_finding() -> None:
    assert findings(SOUND) == ()


@pytest.mark.parametrize(("law", "facts"), BROKEN, ids=lambda one: getattr(one, "__name__", ""))
def test_a_broken_law_is_found(law: Law, facts: Facts) -> None:
    assert [one.what for one in law(ledger_of(facts))] != []


@pytest.mark.parametrize("facts", [booked(3, amount=-450), booked(3, tax=-75), booked(2, of=None)])
def test_all_that_a_line_had_may_be_taken_back(facts: Facts) -> None:
    assert findings(facts) == ()


def test_every_law_is_broken_here() -> None:
    assert {law for law, _ in BROKEN} == set(LAWS)


def test_a_decision_taken_later_does_not_make_an_earlier_use_wrong() -> None:
    later = DecisionFact(20, "L1-X", "rejected", "2026-03-03")  # dated back, but known only from entry 20
    assert findings(replace(SOUND, decisions=(ACCEPTED, RELEASED, later))) == ()


def test_a_decision_of_the_very_entry_counts_for_what_the_entry_moved() -> None:
    def accepted(entry: int) -> tuple[Finding, ...]:
        return findings(replace(SOUND, decisions=(replace(ACCEPTED, entry=entry), RELEASED)))

    assert accepted(USED.entry) == ()
    assert len(accepted(USED.entry + 1)) == 1


def test_a_sale_at_a_stall_of_bars_put_on_hold_meanwhile_is_no_breach() -> None:
    hold = DecisionFact(7, "26-001-4", "on hold", "2026-05-09")
    before_the_shop = replace(SOUND, movements=(CAME, USED, CUT, OUT, IN, SOLD))
    held = replace(before_the_shop, decisions=(ACCEPTED, RELEASED, replace(hold, entry=8)))
    assert findings(held) == ()


def test_an_undo_that_mirrors_exactly_is_no_breach() -> None:
    mirror = replace(SENT, entry=10, quantity=2)
    undone = replace(
        SOUND, lines=LINES[:1], movements=(CAME, USED, CUT, OUT, IN, SOLD, SENT, mirror), reverses=((10, 9),)
    )
    assert findings(undone) == ()


# Of the bars left at the workshop four are rejected and go into a rework.
REJECTED = DecisionFact(11, "26-001-4", "rejected", "2026-06-01")
MASS = LotFact("L2-8", 12, "2026-06-01", counted=False, soap=False, supplied=False, batch="26-002-2", mass_mg=None)
TAKEN = moved(12, "26-001-4", "2026-06-01", -4, "consumed", batch="26-002-2")


def reworked(mass_mg: int, *, batches: frozenset[str] = frozenset({"26-002-2"})) -> Facts:
    """The sound ledger with four of its bars rejected and reworked."""
    gives = moved(12, "L2-8", "2026-06-01", mass_mg, "yielded", batch="26-002-2")
    return replace(
        SOUND,
        lots=(*SOUND.lots, MASS),
        movements=(*SOUND.movements, TAKEN, gives),
        decisions=(*SOUND.decisions, REJECTED),
        reworks=batches,
    )


def test_a_rework_takes_bars_that_may_not_leave_and_gives_no_more_than_they_weighed() -> None:
    """10 bars weighed 900 mg, so four give at most 360."""
    assert findings(reworked(360)) == ()
    assert [one.what for one in findings(reworked(361))] == ["batch 26-002-2 gave 1 mg more than went into it"]


def test_any_other_batch_does_not_take_them() -> None:
    assert [one.what for one in findings(reworked(360, batches=frozenset()))] == [
        "lot 26-001-4 went into batch 26-002-2 and was not accepted on 2026-06-01"
    ]


@pytest.mark.parametrize(("cost", "carriage"), [(100, 100), (None, 100), (0, 0)])
def test_carriage_that_is_in_its_lot_or_of_which_no_cost_is_known_is_no_breach(cost: int | None, carriage: int) -> None:
    assert findings(replace(SOUND, lots=(replace(OIL, cost_minor=cost), BARS), carriage_minor=carriage)) == ()


def test_a_share_that_went_nowhere_is_found(monkeypatch: pytest.MonkeyPatch) -> None:
    """Whatever is shared out and whatever is left come to the whole; a program that loses some is told."""
    costly = replace(SOUND, lots=(replace(OIL, cost_minor=101), BARS))
    assert findings(costly) == ()
    monkeypatch.setattr(flows, "_up_to", lambda cost, whole, used: cost * used // whole - 1 if used == whole else 0)
    found = [one.what for one in findings(costly)]
    assert found == [f"lot {OIL.code} is used up and 1 of its cost went nowhere (goods)"]
