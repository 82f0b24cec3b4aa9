"""soapledger cure weigh."""

from datetime import date
from fractions import Fraction
from typing import Annotated

import typer

from ledger.cli.cure.words import say_drying
from ledger.cli.kit.desk import Desk, desk
from ledger.cli.kit.options import Batch, On
from ledger.cli.kit.show import confirm, count, say
from ledger.errors import BadInput
from ledger.operations.cure.weighing import Together, on_the_rack, weigh_bars
from ledger.rows.batch import BatchRow, find_batch
from ledger.rows.lot import lot_by_id
from ledger.units.quantity import parse_mass, parse_pieces, show_mass, with_scale_unit
from ledger.views.cure.weighed import weighings


def command(
    ctx: typer.Context,
    code: Batch,
    marked: Annotated[
        list[str] | None, typer.Argument(help="Each marked bar with its weight: A=101.2g B=99.8g.", metavar="BARS")
    ] = None,
    total: Annotated[str | None, typer.Option("--total", help="What several bars weigh together.")] = None,
    bars: Annotated[str | None, typer.Option("--bars", help="How many were weighed together.")] = None,
    on: On = None,
    yes: Annotated[bool, typer.Option("--yes", help="Do not ask again about unlikely weights.")] = False,
) -> None:
    """Book what marked bars weigh, e.g. soapledger cure weigh 26-118-0 A=101.2g, or --total 1042g --bars 10."""
    here = desk(ctx)
    batch = find_batch(here.rows(), code)
    weights: dict[str, int] = {}
    for text in marked or ():
        mark, separator, typed = (part.strip() for part in text.partition("="))
        if not separator or not mark or not typed or mark in weights:
            raise BadInput(f"'{text}' is not a marked bar with its weight, once; write A=101.2g.")
        weights[mark] = parse_mass(with_scale_unit(typed, here.settings.units), what=f"the weight of {mark}")
    together = _together(here, total, bars)
    on_the_rack(batch, here.day(on))
    each = dict(weights)
    if together:
        each[f"{together.bars} together"] = round(Fraction(together.mass_mg, max(together.bars, 1)))
    for doubt in _doubts(here, batch, each, here.day(on)):
        confirm(f"{doubt}. Is it right?", yes)
    weigh_bars(here.book(), batch.code, weights, on=here.day(on), together=together)
    say(f"{count(len(weights) + (together.bars if together else 0), 'bar')} of batch {batch.code} weighed.")
    say_drying(here, find_batch(here.rows(), batch.code), here.day(on))


def _together(here: Desk, total: str | None, bars: str | None) -> Together | None:
    if total is None and bars is None:
        return None
    if total is None or bars is None:
        raise BadInput("Write both what the bars weigh together and how many they are: --total 1042g --bars 10.")
    mass = parse_mass(with_scale_unit(total, here.settings.units), what="what they weigh together")
    return Together(parse_pieces(bars, what="the number of bars"), mass)


def _doubts(here: Desk, batch: BatchRow, weights: dict[str, int], on: date) -> list[str]:
    """Weights to ask about: far from the last of that bar or from the bars at the cut, and heavier than the last."""
    units = here.settings.units
    last = {one.mark: one.mass_mg for one in weighings(here.rows(), batch, on=on)}
    cut = lot_by_id(here.rows(), batch.yield_lot_id).mass_mg if batch.yield_lot_id else None
    found = []
    for mark, mass in weights.items():
        before = last.get(mark) or (cut // batch.made if cut and batch.made else None)
        if before and not before <= 2 * mass <= 4 * before:
            found.append(f"{mark} weighs {show_mass(mass, units)}, and {show_mass(before, units)} before")
        elif mark in last and mass > last[mark]:
            heavier = f"{show_mass(mass, units)} is more than the {show_mass(last[mark], units)} before"
            found.append(f"{mark}: {heavier} (damp weather does that)")
    return found
