"""What must hold in every ledger: pure checks from facts to findings, run by `check` and by the tests."""

from collections import defaultdict
from collections.abc import Callable, Iterable
from dataclasses import dataclass


@dataclass(frozen=True)
class MovementFact:
    """One movement as the checks need it; quantity in mg or pieces."""

    entry: int
    lot: str
    place: str
    on: str
    quantity: int
    kind: str


@dataclass(frozen=True)
class Facts:
    """What the checks look at."""

    movements: tuple[MovementFact, ...]
    moved_by_entry: tuple[tuple[int, str, int], ...]  # (entry, lot, sum of 'moved' quantities)
    dispatched_by_customer: tuple[tuple[str, str, int], ...]  # (customer, lot, bars there)
    bars_without_release: tuple[str, ...]  # lots of bars that left and were never released


@dataclass(frozen=True)
class Finding:
    """Something that does not hold, in words."""

    what: str
    entry: int | None = None


def never_below_zero(facts: Facts) -> Iterable[Finding]:
    """No place ever held less than nothing of a lot, on any day."""
    days: dict[tuple[str, str], list[MovementFact]] = defaultdict(list)
    for one in facts.movements:
        days[one.lot, one.place].append(one)
    for (lot, place), moves in days.items():
        by_day: dict[str, int] = defaultdict(int)
        for move in moves:
            by_day[move.on] += move.quantity
        held = 0
        for on in sorted(by_day):
            held += by_day[on]
            if held < 0:
                yield Finding(f"lot {lot}: {place} held {held} on {on}", moves[-1].entry)
                break


def transfers_balance(facts: Facts) -> Iterable[Finding]:
    """What is moved from one place arrives at another."""
    for entry, lot, total in facts.moved_by_entry:
        if total:
            yield Finding(f"lot {lot}: a move of entry {entry} loses or makes {total}", entry)


def nobody_returns_more_than_they_got(facts: Facts) -> Iterable[Finding]:
    """No customer brought back more bars of a batch than went there."""
    for customer, lot, bars in facts.dispatched_by_customer:
        if bars < 0:
            yield Finding(f"customer {customer} brought back {-bars} more of batch {lot} than went there")


def only_released_bars_left(facts: Facts) -> Iterable[Finding]:
    """Bars that were sold, dispatched or given away were released at some time."""
    for lot in facts.bars_without_release:
        yield Finding(f"bars of batch {lot} left and were never released")


INVARIANTS: tuple[Callable[[Facts], Iterable[Finding]], ...] = (
    never_below_zero,
    transfers_balance,
    nobody_returns_more_than_they_got,
    only_released_bars_left,
)


def findings(facts: Facts) -> tuple[Finding, ...]:
    """Everything that does not hold, not only the first."""
    return tuple(one for check in INVARIANTS for one in check(facts))
