"""soapledger batch correct."""

from typing import Annotated

import typer

from ledger.cli.bench.superfat import say_superfat
from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.loading import loaded
from ledger.cli.kit.options import Batch, Json, Yes
from ledger.cli.kit.show import say, say_marked, say_wrapped, warn_of
from ledger.errors import BadInput, Refused
from ledger.reference.cautions import cautions
from ledger.rows.batch import find_batch, plan_lines
from ledger.units.quantity import parse_mass, show_mass, show_share, show_volume, thousandfold, with_scale_unit
from ledger.units.words import Units
from ledger.views.bench.correction import Advice, Correction, correction

_UNKNOWN = ("unknown", "?", "none", "dunno")


def command(
    ctx: typer.Context,
    code: Batch,
    wrong: Annotated[str, typer.Argument(help="The line and what is really in, e.g. '5=160 g'; or unknown.")],
    take: Annotated[str | None, typer.Option("--take", help="Book the way you took: pour, lye or fats.")] = None,
    anyway: Annotated[
        str | None, typer.Option("--anyway", help="Keep a superfat that may be nothing, with the reason.")
    ] = None,
    on: Annotated[str | None, typer.Option("--on", help="The day (that of the batch).")] = None,
    yes: Yes = False,
    json: Json = False,
) -> None:
    """Say what can be done about a wrong weight, e.g. batch correct 26-118-0 '5=160 g'; --take books what you did."""
    here = desk(ctx)
    batch = find_batch(here.rows(), code)
    if wrong.strip().casefold() in _UNKNOWN:
        how = " ".join(cautions().by_step.get("discard", ()))
        raise Refused(
            f"Without knowing which line is wrong the lye of batch {batch.code} cannot be trusted; give it up: "
            f"soapledger batch discard {batch.code} --reason 'a weight in doubt'. {how}"
        )
    line, mass = _read(wrong, here.settings.units)
    units = here.settings.units
    meant = next((one for one in plan_lines(here.rows(), batch.id) if one.number == line), None)
    if meant and (slip := thousandfold(mass, meant.target, units)):
        asked, typed = (show_mass(one, units) for one in (meant.target, mass))
        warn_of([f"Line {line} asks for {asked} of {meant.material}, not {typed}{slip}."], yes)
    made = here.day(on) if on else min(max(batch.planned_on, batch.made_on or batch.planned_on), here.today)
    if take is None:
        found = correction(here.rows(), batch, line, mass)
        answer(found, json, lambda: say_correction(found, here.settings.units))
        return

    check = loaded("operations.bench.correct").correct_batch(
        here.book(), batch.code, line, mass, take=take.casefold(), on=made, by=here.who, anyway=anyway
    )
    if answer({"batch": find_batch(here.rows(), batch.code), "lye": check}, json):
        return
    say(f"Batch {batch.code}: line {line} is booked as it was, and what was done about it; both stay to be read.")
    say_superfat(check)
    say(f"Next: soapledger batch log {batch.code}")


def _read(text: str, units: Units) -> tuple[int, int]:
    number, separator, weight = text.partition("=")
    if not separator or not number.strip().isdecimal():
        raise BadInput(f"'{text}' is not a line with its weight; write it like '5=160 g', or unknown.")
    return int(number), parse_mass(with_scale_unit(weight.strip(), units), what="what is really in")


def say_correction(found: Correction, units: Units) -> None:
    """The ways out in their order, what is none and why, and how to book the one taken."""
    able = [one for one in found.advice if one.possible]
    ways = "there are these ways, in this order" if able else "there is no way out"
    ways = "there is this way" if len(able) == 1 else ways
    others = " and ".join(f"{show_mass(mass, units)} of {material}" for material, mass in found.beside)
    beside = f", with {others} on that line as well" if others else ""
    say_wrapped(
        f"Batch {found.batch_code}, line {found.line}: {show_mass(found.actual_mg, units)} of {found.material} "
        f"in place of {show_mass(found.meant_mg, units)}{beside}. If lye and fats have not met yet, {ways} "
        f"(meant: superfat {show_share(found.superfat_meant_ppm)}){':' if able else '.'}"
    )
    for place, one in enumerate(able, 1):
        say_wrapped(_words(one, units), first=f"  {place}. ", indent="     ")
    for one in found.advice:
        if not one.possible:
            say_marked(f"{one.way} is {one.words}.")
    say_wrapped("If they have met, or you are not sure which line is wrong, stop:")
    say(f"  soapledger batch correct {found.batch_code} unknown")
    best = _nearest(found)
    if best:
        say_wrapped("Do it at the bench, then book the way you took, for example:")
        wrong = f"'{found.line}={found.actual_mg / 1000:g} g'"
        say(f"  soapledger batch correct {found.batch_code} {wrong} --take {best}")


def _nearest(found: Correction) -> str | None:
    """Pouring it as it is where that gives an ordinary bar, else the way that comes nearest to what was meant."""
    able = [one for one in found.advice if one.possible and one.becomes_ppm is not None]
    for one in able:
        if one.way == "pour" and abs((one.becomes_ppm or 0) - found.becomes_meant_ppm) <= 10_000:
            return one.way
    best = min(able, key=lambda one: abs((one.becomes_ppm or 0) - found.becomes_meant_ppm), default=None)
    return best.way if best else None


def _words(one: Advice, units: Units) -> str:
    text = one.words[0].upper() + one.words[1:]
    if one.nominal_ppm is None or one.likely_low_ppm is None or one.all_low_ppm is None:
        return f"{one.way}: {text}."
    pot = (
        ""
        if one.becomes_ppm == one.nominal_ppm
        else f" over all the fats {show_share(one.becomes_ppm or 0, 2)}, in the pot"
    )
    text += (
        f"; superfat{pot} {show_share(one.nominal_ppm, 2)}, likely low {show_share(one.likely_low_ppm, 2)}, "
        f"all low {show_share(one.all_low_ppm, 2)}; {show_mass(one.dough_mg, units)} in the pot"
    )
    if one.bars:
        text += f", about {one.bars} bars"
    if one.overfull_ul:
        text += f"; {show_volume(one.overfull_ul, units)} more than the mould holds"
    return f"{one.way}: {text}."
