"""An independent double-entry tally of a season: every amount leaves one account and enters another, as a fraction.

Nothing is rounded here. A whole figure of the program may lie so far from its fraction: each share is rounded to less
than one minor unit off, and inherits what was off in the cost of the lot it is a share of.
"""

from collections import defaultdict
from datetime import date
from fractions import Fraction

from cost.seasons import Batch, Lot, Moved, Season

STANDS = {
    "workshop": "bars here",
    "quay": "bars at stalls",
    "shop": "bars at shops",
    "retained": "retained samples",
    "returns": "returns shelf",
}
WENT = {
    "sold": "sold",
    "dispatched": "sold",
    "returned": "sold",
    "given": "given away",
    "wasted": "thrown away",
    "counted": "counted off",
}
BENCH = ("cold", "hot", "infusion", "blend", "rebatch")


class Tally:
    """The accounts of a season at the end of a day, of its goods or of its work."""

    def __init__(self, season: Season, on: date, *, work: bool = False) -> None:
        self.season, self.on, self.work = season, on, work
        self.accounts: dict[str, Fraction] = defaultdict(Fraction)
        self.slack: dict[str, Fraction] = defaultdict(Fraction)
        self.moves: dict[int, list[Moved]] = defaultdict(list)
        for one in season.moved:
            if season.stands(one) and one.on <= on:
                self.moves[one.lot].append(one)
        self.lots = [one for one in season.lots if season.stands(one) and one.on <= on]
        self.put_in = 0
        self.unknown: set[int] = set()
        self.spoilt: set[int] = set()  # batches with something of unknown cost
        for lot in self.lots:
            if lot.batch is None:
                self._bought(lot)
        for batch in season.batches:
            if season.stands(batch):
                self._batch(batch)

    def post(self, source: str, target: str, amount: Fraction, slack: Fraction) -> None:
        """Double entry: what one account gives the other gets."""
        self.accounts[source] -= amount
        self.accounts[target] += amount
        self.slack[target] += slack
        self.slack[source] += slack

    def _bought(self, lot: Lot) -> None:
        if self.work:
            paid = 0
        elif lot.goods is None:
            self.unknown.add(lot.id)
            return
        else:
            paid = lot.goods + lot.carriage
        self.put_in += paid
        self.post("paid", f"lot {lot.id}", Fraction(paid), Fraction(0))
        self._use(lot, Fraction(0))

    def _batch(self, batch: Batch) -> None:
        mine = f"batch {batch.id}"
        if self.work:
            own = self._own(batch)
            self.put_in += own
            self.post("paid", mine, Fraction(own), Fraction(0))
        used: dict[int, int] = defaultdict(int)
        for moves in self.moves.values():
            for one in moves:
                if one.batch == batch.id and one.way == "consumed":
                    used[one.lot] -= one.quantity
        if any(lot in self.unknown and quantity > 0 for lot, quantity in used.items()):
            self.spoilt.add(batch.id)
        gave = [one for one in self.lots if one.batch == batch.id]
        if batch.id in self.spoilt:
            self.unknown |= {one.id for one in gave}
            self.post(mine, "outside", self.accounts[mine], self.slack[mine])
        elif not gave:
            up = batch.given_up is not None and batch.given_up <= self.on
            self.post(mine, "given up" if up else "in work", self.accounts[mine], self.slack[mine])
        else:
            self._give(mine, gave)

    def _give(self, mine: str, gave: list[Lot]) -> None:
        """Over what came of it: by weight, but for the bands, which are on the bars."""
        main = next(one for one in gave if one.material != "offcuts" or len(gave) == 1)
        whole, slack = self.accounts[mine], self.slack[mine]
        beside = [one for one in gave if one is not main]
        to_beside = Fraction(0)
        for one in beside:
            if main.mass_mg:
                loose = sum(move.quantity for move in self.moves[one.id] if move.way == "yielded")
                to_beside = (whole - self.accounts[f"{mine} bands"]) * Fraction(loose, loose + main.mass_mg)
            self.post(mine, f"lot {one.id}", to_beside, slack + 1)
        self.post(mine, f"lot {main.id}", whole - to_beside, slack + 1)
        for one in gave:
            self._use(one, slack + 1)

    def _use(self, lot: Lot, slack: Fraction) -> None:
        """Follow the price of one piece or milligram through all that happened to a lot."""
        mine = f"lot {lot.id}"
        moves = [one for one in self.moves[lot.id] if one.way != "moved"]
        came = sum(one.quantity for one in moves if one.way in ("received", "yielded"))
        rejected = next((is_so for day, is_so in reversed(lot.rejected) if day <= self.on), False)
        held = sum(one.quantity for one in moves)
        nothing = self._bear_nothing(moves, came, held if rejected else 0) if lot.material == "soap" else 0
        each = self.accounts[mine] / (came - nothing)
        off_each = slack / (came - nothing)
        bearing, missing = came - nothing, 0
        for one in sorted(moves, key=lambda move: (move.on, 0 if move.quantity > 0 else 1)):  # sorted() keeps the rest
            quantity = one.quantity
            if one.way in ("received", "yielded") or (one.way == "wasted" and nothing):
                continue
            found = 0
            if one.way == "counted":
                found, missing = max(0, quantity - missing), max(0, missing - quantity)
            out = -(quantity - found)
            target = f"batch {one.batch}" if one.way == "consumed" else WENT[one.way]
            if one.way == "given" and "own use" in one.note:
                target = "own use"
            elif one.way == "wasted" and one.note.startswith("sent back") and lot.batch is None:
                target = "sent back"
            self.post(mine, target, out * each, abs(out) * off_each + 1)
            if one.way == "consumed" and lot.material == "band":
                self.accounts[f"{target} bands"] += out * each  # of it; no account of its own
            bearing -= out
            if found:
                off_each = (bearing * off_each + 1) / (bearing + found)
                each = each * bearing / (bearing + found)
                bearing += found
        left, slack = self.accounts[mine], bearing * off_each + 1
        if lot.material != "soap":
            where = "offcuts" if lot.material == "offcuts" else "materials" if lot.batch is None else "made ahead"
            self.post(mine, where, left, slack)
        elif rejected:
            self.post(mine, "bars rejected", left, slack)
        elif held:
            for place, account in STANDS.items():
                there = sum(one.quantity for one in self.moves[lot.id] if one.place == place)
                self.post(mine, account, left * Fraction(there, held), (slack if there else 0) + bool(there))
        assert self.accounts[mine] == 0

    def _bear_nothing(self, moves: list[Moved], came: int, rejected: int) -> int:
        """Bars thrown away, and bars rejected where there are good ones, are paid for by the others."""
        if self.season.written_off:
            return 0
        wasted = -sum(one.quantity for one in moves if one.way == "wasted")
        reworked = -sum(one.quantity for one in moves if one.way == "consumed")
        found = max(0, sum(one.quantity for one in moves if one.way == "counted"))
        good = came + found - wasted - reworked - rejected
        nothing = wasted + (rejected if good > 0 else 0)
        left = came - nothing
        if left <= 0:
            return 0
        for one in sorted(moves, key=lambda move: (move.on, 0 if move.quantity > 0 else 1)):
            if one.way not in ("received", "yielded", "wasted"):
                left += one.quantity
                if left < 0:  # more had gone than were left to pay: each pays for itself
                    return 0
        return nothing

    def _own(self, batch: Batch) -> int:
        """The work on a batch, and its part of the house, by the rates of the day it was begun."""
        season = self.season
        told = [one for one in season.told if one.batch == batch.id and one.on <= self.on and season.stands(one)]
        stages = [one.minutes for one in told if one.by_stage]
        minutes = sum(stages) if stages else sum(one.minutes for one in told)
        bands = {one.id for one in season.lots if one.material == "band"}
        begun = [
            one.on
            for lot, moves in self.moves.items()
            if lot not in bands
            for one in moves
            if one.batch == batch.id and one.way == "consumed"
        ]
        day = min(begun, default=batch.on)
        hour = self._rate("hour", day)
        hour = season.hour if hour is None else hour
        house = self._rate("batch", day) if begun and batch.process in BENCH else None
        exact = Fraction(minutes * (hour or 0), 60)
        whole = int(exact) + (1 if exact - int(exact) >= Fraction(1, 2) else 0)
        return whole + (house or 0)

    def _rate(self, kind: str, day: date) -> int | None:
        fit = [
            (on, place, minor)
            for place, (of, on, minor, entry) in enumerate(self.season.rates)
            if of == kind and on <= day and entry not in self.season.gone
        ]
        return max(fit)[2] if fit else None
