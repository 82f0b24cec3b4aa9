"""What a batch gave and what was lost on the way, as its record shows it."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from typing import NamedTuple

from ledger.domain.bench.mass_balance import MassBalance
from ledger.domain.bench.status import in_words
from ledger.rows.lot import where_lots_are
from ledger.units.dates import show_date
from ledger.units.quantity import show_mass, show_share, whole
from ledger.views.bench.bench import mass_balance
from ledger.views.record.head import Head, Section
from ledger.views.record.pieces import Column, Facts, Pieces, grid
from ledger.views.record.sources import Sources


class Yielded(NamedTuple):
    """One lot the batch gave: bars (pieces) or a mass."""

    lot_code: str
    material: str
    quantity: int
    pieces: bool
    mass_mg: int | None
    place: str
    on: date
    status: str


@dataclass(frozen=True)
class CameOut(Section):
    """Mass in against mass out, and the lots the batch gave."""

    title = "Yield"
    mass_in_mg: int
    mass_out_mg: int | None  # None until the cut
    net_weight_mg: int | None
    balance: MassBalance
    loss_limit_ppm: int | None
    yields: tuple[Yielded, ...]

    @property
    def bars_cut(self) -> int | None:
        """How many bars it gave."""
        return next((one.quantity for one in self.yields if one.pieces), None)

    def paper(self, head: Head) -> Pieces:
        """Each mass from the pot to the rack, then the lots."""
        units, net = head.units, self.net_weight_mg
        facts = Facts(
            (
                *(
                    (name, show_mass(mg, units) if mg is not None else "not weighed")
                    for name, mg in self.balance.lines()
                ),
                ("that is", self._loss()),
                ("bars planned", str(head.bars_planned or "")),
                ("bars cut", str(head.bars_cut) if head.bars_cut else "none yet" if head.bars_planned else ""),
                ("declared weight, each", show_mass(net, units) if net else ""),
            )
        )
        table = grid(
            self.yields,
            Column("lot", lambda one: one.lot_code, 0.09, bold=True),
            Column("what", lambda one: one.material, 0.23),
            Column(
                "how much",
                lambda one: whole(f"{one.quantity} pcs" if one.pieces else show_mass(one.quantity, units)),
                0.1,
                right=True,
            ),
            Column(
                "weight",
                lambda one: show_mass(one.mass_mg, units) if one.mass_mg is not None else "not weighed",
                0.1,
                right=True,
            ),
            Column("on", lambda one: show_date(one.on), 0.12),
            Column("status", lambda one: in_words(one.status), 0.14),
            Column("here now", lambda one: one.place, 0.22),
        )
        return (facts, table) if self.yields else (facts,)

    def _loss(self) -> str:
        """The loss as a share of what went in, with its limit."""
        if self.balance.loss_ppm is None:
            return ""
        limit = f", limit {show_share(self.loss_limit_ppm)}" if self.loss_limit_ppm is not None else ""
        return f"{show_share(self.balance.loss_ppm)} of what went in{limit}"

    def screen(self, head: Head) -> Pieces:
        """What went in and what came out."""
        put_in, out, units = self.mass_in_mg, self.mass_out_mg, head.units
        came = show_mass(out, units) if out is not None else ""
        return (Facts((("went in", show_mass(put_in, units) if put_in else ""), ("came out", came))),)


def came_out(read: Sources) -> CameOut:
    """The balance of the masses, and what the batch gave."""
    recipe, balance, yields = read.recipe, mass_balance(read.rows, read.batch), tuple(_yields(read))
    masses = [one.mass_mg for one in yields if one.mass_mg is not None]
    return CameOut(
        mass_in_mg=balance.put_in_mg,
        mass_out_mg=sum(masses) if yields and len(masses) == len(yields) else None,
        net_weight_mg=recipe.net_weight_mg if recipe else None,
        balance=balance,
        loss_limit_ppm=recipe.limits.loss_ppm if recipe and read.batch.soap else None,
        yields=yields,
    )


def _yields(read: Sources) -> Iterator[Yielded]:
    where = where_lots_are(read.rows, read.came_out)
    for number, made in read.came_out.items():
        lot = read.lots[number]
        here = ", ".join(
            f"{place.name} {held if lot.counted else show_mass(held, read.own.units)}"
            for place, held in where.get(number, ())
        )
        yield Yielded(
            lot_code=lot.code,
            material=lot.material,
            quantity=made,
            pieces=lot.counted,
            mass_mg=lot.mass_mg if lot.counted else made,
            place=here or "none left here",
            on=lot.on,
            status=lot.status,
        )
