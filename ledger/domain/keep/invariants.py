"""What must hold in every ledger: pure checks from facts to findings, run by `check` and by the tests."""

from collections import Counter, defaultdict
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import NamedTuple

from ledger.domain.stock.graph import Graph
from ledger.units.words import PlaceKind, Verdict, Way

RESTORE = "keep this file as it is, and go back to your last backup whose check is clean"


class Finding(NamedTuple):
    """Something that does not hold, in words: in which entry, table and row, what was expected, what to do."""

    what: str
    entry: int | None = None
    table: str | None = None
    row: str | None = None  # by its trade name where it has one
    expected: str | None = None
    do: str = RESTORE


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


@dataclass(frozen=True)
class MovementFact:
    """One movement; quantity in mg or pieces; `counts` is False for what was taken back, and its mirror."""

    entry: int
    lot: str
    place: str
    place_kind: PlaceKind
    on: str
    quantity: int
    kind: Way
    batch: str | None
    customer: str | None
    counts: bool


@dataclass(frozen=True)
class DecisionFact:
    """One decision about a lot that counts, in the order they were taken."""

    entry: int
    lot: str
    verdict: Verdict
    on: str


@dataclass(frozen=True)
class Facts:
    """What the checks look at."""

    lots: tuple[LotFact, ...]
    movements: tuple[MovementFact, ...]
    decisions: tuple[DecisionFact, ...]
    reverses: tuple[tuple[int, int], ...]  # (the undo, the entry it took back)
    hanging: tuple[tuple[int, str, int], ...]  # (entry, table, the entry taken back that its row stands on)
    reworks: frozenset[str] = frozenset()  # the batches that book bars back in as mass


def never_below_zero(facts: Facts) -> Iterator[Finding]:
    """No place ever held less than nothing of a lot, on any day."""
    by_day: dict[tuple[str, str], Counter[str]] = defaultdict(Counter)
    entries: dict[tuple[str, str, str], int] = {}
    for one in facts.movements:
        by_day[one.lot, one.place][one.on] += one.quantity
        if one.quantity < 0:
            entries[one.lot, one.place, one.on] = one.entry
    for (lot, place), days in by_day.items():
        held = 0
        for on in sorted(days):
            held += days[on]
            if held < 0:
                yield Finding(f"lot {lot}: {place} held {held} on {on}", entries.get((lot, place, on)))
                break


def nothing_happens_before_a_lot_is_there(facts: Facts) -> Iterator[Finding]:
    """No movement of a lot is dated before the lot."""
    since = {lot.code: lot.on for lot in facts.lots}
    for one in facts.movements:
        if one.counts and one.on < since.get(one.lot, ""):
            yield Finding(f"lot {one.lot} moved on {one.on}, before it was there", one.entry)


def every_lot_comes_from_somewhere(facts: Facts) -> Iterator[Finding]:
    """A lot came from a supplier or from the batch it names, in the entry that made it, and once."""
    origins: Counter[tuple[str, int, str | None]] = Counter()
    for one in facts.movements:
        if one.counts and one.kind in ("received", "yielded") and one.quantity > 0:
            origins[one.lot, one.entry, one.batch] += 1
    total = Counter(lot for lot, _, _ in origins.elements())
    for lot in facts.lots:
        if origins[lot.code, lot.entry, None if lot.supplied else lot.batch] != 1 or total[lot.code] != 1:
            yield Finding(f"lot {lot.code} does not come from where its papers say", lot.entry)


def what_leaves_one_place_arrives_at_another(facts: Facts) -> Iterator[Finding]:
    """A move makes nothing and loses nothing."""
    sums: Counter[tuple[int, str]] = Counter()
    for one in facts.movements:
        if one.kind == "moved":
            sums[one.entry, one.lot] += one.quantity
    for (entry, lot), total in sums.items():
        if total:
            yield Finding(f"lot {lot}: a move leaves {total:+d} too many or too few", entry)


def only_accepted_lots_were_used(facts: Facts) -> Iterator[Finding]:
    """Whatever went into a batch was accepted on that date, as known then; a rework takes bars that may not leave."""
    soap = {lot.code for lot in facts.lots if lot.soap}
    for one, status in _with_status(facts):
        if one.batch in facts.reworks and one.lot in soap and status in ("rejected", "on hold"):
            continue
        if one.kind == "consumed" and one.quantity < 0 and status != "accepted":
            yield Finding(f"lot {one.lot} went into batch {one.batch} and was not accepted on {one.on}", one.entry)


def only_released_bars_left(facts: Facts) -> Iterator[Finding]:
    """Bars that left for a shop, a person or a stall were released on that date, as known then."""
    soap = {lot.code for lot in facts.lots if lot.soap}
    for one, status in _with_status(facts):
        gone = one.quantity < 0 and (
            one.kind in ("dispatched", "given") or (one.kind == "sold" and one.place_kind != "stall")
        )
        out = one.quantity > 0 and one.kind == "moved" and one.place_kind == "stall"
        if one.lot in soap and (gone or out) and status != "released":
            yield Finding(f"bars of batch {one.lot} left on {one.on} and were not released", one.entry)


def _with_status(facts: Facts) -> Iterator[tuple[MovementFact, str | None]]:
    """Each movement that counts, with the status its lot had on that date as known in that entry."""
    decided: dict[str, list[DecisionFact]] = defaultdict(list)
    for decision in facts.decisions:
        decided[decision.lot].append(decision)
    for one in facts.movements:
        if one.counts:
            known = [d.verdict for d in decided[one.lot] if d.entry <= one.entry and d.on <= one.on]
            yield one, known[-1] if known else None


def nobody_returns_more_than_they_got(facts: Facts) -> Iterator[Finding]:
    """No customer brought back more bars of a batch than went there."""
    there: Counter[tuple[str, str]] = Counter()
    for one in facts.movements:
        if one.customer:
            there[one.customer, one.lot] -= one.quantity
    for (customer, lot), bars in there.items():
        if bars < 0:
            yield Finding(f"customer {customer} brought back {-bars} more bars of batch {lot} than went there")


def no_more_comes_out_than_went_in(facts: Facts) -> Iterator[Finding]:
    """What a batch gave weighs no more than what went into it, wrapping apart; bars weigh what they did at the cut."""
    lots = {lot.code: lot for lot in facts.lots}
    made: Counter[str] = Counter()
    masses: dict[str, Fraction] = defaultdict(Fraction)
    not_weighed: set[str] = set()
    for one in facts.movements:
        if one.kind == "yielded":
            made[one.lot] += one.quantity
    for one in facts.movements:
        lot = lots.get(one.lot)
        if lot is None or not one.batch or one.kind not in ("consumed", "yielded"):
            continue
        if not lot.counted:
            masses[one.batch] -= one.quantity
        elif lot.soap and one.kind == "consumed":
            if lot.mass_mg and made[lot.code]:
                masses[one.batch] -= Fraction(one.quantity * lot.mass_mg, made[lot.code])
            else:
                not_weighed.add(one.batch)
    for lot in facts.lots:
        if lot.batch and lot.mass_mg:
            masses[lot.batch] -= lot.mass_mg
    for batch, left in masses.items():
        if left < 0 and batch not in not_weighed:
            yield Finding(f"batch {batch} gave {-left} mg more than went into it")


def no_lot_is_made_of_itself(facts: Facts) -> Iterator[Finding]:
    """Going back from a lot never leads to the lot itself."""
    numbers = {code: number for number, code in enumerate(sorted({one.lot for one in facts.movements}))}
    batches = {code: number for number, code in enumerate(sorted({one.batch or "" for one in facts.movements}))}
    used: Counter[tuple[str, str]] = Counter()
    given: Counter[tuple[str, str]] = Counter()
    for one in facts.movements:
        if one.batch and one.kind in ("consumed", "yielded"):
            (used if one.kind == "consumed" else given)[one.lot, one.batch] += one.quantity
    made = [key for key, total in given.items() if total > 0]
    graph = Graph(
        consumed=((numbers[lot], batches[batch]) for (lot, batch), total in used.items() if total < 0),
        yielded=((batches[batch], numbers[lot]) for lot, batch in made),
    )
    for lot, batch in made:
        if ("lot", numbers[lot]) in graph.upstream([("batch", batches[batch])]).paths:
            yield Finding(f"lot {lot} is made of itself, by way of batch {batch}")


def an_undo_mirrors_what_it_takes_back(facts: Facts) -> Iterator[Finding]:
    """An undo moves back exactly what the entry it names had moved."""
    moved: dict[int, Counter[tuple[str, str, str, str]]] = defaultdict(Counter)
    for one in facts.movements:
        moved[one.entry][one.lot, one.place, one.on, one.kind] += one.quantity
    for undo, entry in facts.reverses:
        if {key: -sum_ for key, sum_ in moved[entry].items()} != dict(moved[undo]):
            yield Finding(f"entry {undo} does not take back exactly what entry {entry} moved", undo)


def what_counts_stands_on_what_counts(facts: Facts) -> Iterator[Finding]:
    """Nothing that counts stands on something that was taken back."""
    for entry, table, taken_back in facts.hanging:
        yield Finding(f"a {table.replace('_', ' ')} of entry {entry} stands on entry {taken_back}, taken back", entry)


INVARIANTS: tuple[Callable[[Facts], Iterator[Finding]], ...] = (
    never_below_zero,
    nothing_happens_before_a_lot_is_there,
    every_lot_comes_from_somewhere,
    what_leaves_one_place_arrives_at_another,
    only_accepted_lots_were_used,
    only_released_bars_left,
    nobody_returns_more_than_they_got,
    no_more_comes_out_than_went_in,
    no_lot_is_made_of_itself,
    an_undo_mirrors_what_it_takes_back,
    what_counts_stands_on_what_counts,
)


def findings(facts: Facts) -> tuple[Finding, ...]:
    """Everything that does not hold, not only the first."""
    return tuple(one for check in INVARIANTS for one in check(facts))
