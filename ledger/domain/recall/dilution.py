"""How much of what is suspect is in each thing that was made of it, if every pot was well mixed."""

from collections.abc import Collection, Iterator, Mapping
from typing import NamedTuple

FINE = 10**12  # parts of a milligram; each pot rounds down by one at most, so a thousand pots lose 1e-9 mg


class Came(NamedTuple):
    """One lot that came of a pot: its quantity in mg or pieces, and what it weighs, where that is known."""

    quantity: int
    mass_mg: int | None


class Pot(NamedTuple):
    """One batch: what it took of lots that are reached, all that it took, in mg, and what came of it, by the lot."""

    took: Mapping[int, int]
    whole_mg: int
    gave: Mapping[int, Came]
    strained: bool  # what is steeped may all pass into the oil, or none of it


class Held(NamedTuple):
    """So many fine parts of a milligram of the suspect lots; at most so many behind an infusion."""

    fine: int
    at_most: bool

    @property
    def mg(self) -> int:
        """In whole milligrams, a half rounded up."""
        return (self.fine + FINE // 2) // FINE

    def ppm(self, whole_mg: int) -> int:
        """In parts per million of a whole in mg, a half rounded up, never more than all of it."""
        return min(1_000_000, (2 * self.fine * 1_000_000 + whole_mg * FINE) // (2 * whole_mg * FINE))

    def micrograms(self, pieces: int) -> int:
        """In micrograms for each of so many pieces, a half rounded up."""
        return (2 * self.fine * 1000 + pieces * FINE) // (2 * pieces * FINE)


class Diluted(NamedTuple):
    """What of the suspect lots is in each batch, by its number, and in each lot that came of one."""

    pots: Mapping[int, Held]
    lots: Mapping[int, Held]


def diluted(pots: Mapping[int, Pot], suspect: Collection[int], wholly: Collection[int] = ()) -> Diluted:
    """Follow suspect lots, by weight, through every pot in the order it was filled.

    The average if each pot was well mixed: all of what went in is in what came out, shared by weight. It is never
    a ground to leave anything out. `wholly` are pots of which everything that came is suspect itself.
    """
    made = {lot: came.quantity for pot in pots.values() for lot, came in pot.gave.items()}
    lots: dict[int, Held] = {}
    inside: dict[int, Held] = {}
    for number in _in_order(pots):
        pot = pots[number]
        fine, at_most = 0, False
        for lot, quantity in pot.took.items():
            if lot in suspect:
                fine += quantity * FINE
            elif lot in lots and made[lot]:
                fine += lots[lot].fine * quantity // made[lot]
                at_most |= lots[lot].at_most
        weights = _weights(pot)
        if number in wholly:
            fine, at_most = max(pot.whole_mg, sum(weights.values())) * FINE, False
        inside[number] = Held(fine, at_most)
        total = sum(weights.values())
        for lot, weight in weights.items():
            if number in wholly:
                lots[lot] = Held(weight * FINE, False)
            elif pot.strained:
                lots[lot] = Held(min(fine, weight * FINE), True)
            else:
                lots[lot] = Held(fine * weight // total if total else 0, at_most)
    return Diluted(inside, lots)


def _weights(pot: Pot) -> dict[int, int]:
    """What each lot that came of a pot weighs; of what was not weighed, an equal part of the rest of what went in."""
    known = {lot: came.mass_mg for lot, came in pot.gave.items() if came.mass_mg is not None}
    open_ = [lot for lot in pot.gave if lot not in known]
    rest = max(pot.whole_mg - sum(known.values()), len(open_))
    return {**known, **{lot: rest // len(open_) for lot in open_}}


def _in_order(pots: Mapping[int, Pot]) -> Iterator[int]:
    """Every pot after those of which it took something; in a damaged ledger those that go round in a ring last."""
    source = {lot: number for number, pot in pots.items() for lot in pot.gave}
    after: dict[int, list[int]] = {number: [] for number in pots}
    waits = dict.fromkeys(pots, 0)
    for number, pot in pots.items():
        for lot in pot.took:
            if lot in source:
                after[source[lot]].append(number)
                waits[number] += 1
    ready = [number for number, many in waits.items() if not many]
    done = set[int]()
    while ready:
        number = ready.pop()
        done.add(number)
        yield number
        for following in after[number]:
            waits[following] -= 1
            if not waits[following]:
                ready.append(following)
    yield from (number for number in pots if number not in done)
