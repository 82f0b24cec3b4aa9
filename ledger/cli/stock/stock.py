"""soapledger stock."""

from typing import Annotated, get_args

import typer

from ledger.cli.kit.amounts import amount
from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count, say, say_wrapped, table
from ledger.errors import BadInput
from ledger.rows.material import material_by_code
from ledger.rows.sell.assumed import taken_for_each_other
from ledger.units.dates import show_best_before
from ledger.units.names import near
from ledger.units.words import MaterialKind, known
from ledger.views.stock.stock import stock

HELD: tuple[MaterialKind, ...] = get_args(MaterialKind)


def command(
    ctx: typer.Context,
    what: Annotated[str | None, typer.Argument(help="One material only.")] = None,
    kind: Annotated[str | None, typer.Option("--kind", help="One kind only, e.g. fat or soap.")] = None,
    empty: Annotated[bool, typer.Option("--all", help="Used-up lots too.")] = False,
    json: Json = False,
) -> None:
    """Show what is on hand, first to expire first, and what of it is neither planned for nor promised."""
    here = desk(ctx)
    held_kind = None if kind is None else known(kind, HELD)
    if kind is not None and held_kind is None:
        close = near(kind, HELD)
        hint = f" Did you mean {close[0]}?" if close else ""
        raise BadInput(f"There is no kind '{kind}'.{hint} The kinds are {', '.join(HELD)}.")
    material = material_by_code(here.rows(), what).id if what else None
    found = stock(here.rows(), material_id=material, kind=held_kind, empty=empty)
    if answer(found, json):
        return
    units = here.settings.units
    if not found:
        say("Nothing of that is on hand." if what or kind else "Nothing is on hand yet.")
        say("Next: soapledger receive SUPPLIER")
        return
    lots = sum(len(one.lots) for one in found)
    bars = sum(one.on_hand for one in found if one.kind == "soap")
    if what:
        one = found[0]
        promised = f", {count(one.promised, 'bar')} promised" if one.promised else ""
        say(
            f"{one.name}: {amount(one.on_hand, one.counted, units)} on hand in {count(lots, 'lot')}, "
            f"{amount(one.free, one.counted, units)} of it free{promised}."
        )
    else:
        say(f"{count(len(found), 'material')} on hand in {count(lots, 'lot')}; {count(bars, 'bar')} of soap.")
    body = []
    for one in found:
        for index, line in enumerate(one.lots):
            places = ", ".join(
                place if len(line.here) == 1 else f"{place} {amount(held, line.counted, units)}"
                for place, held in line.here
            )
            body.append(
                (
                    one.name if index == 0 else "",
                    line.lot.code,
                    amount(line.lot.on_hand, line.counted, units),
                    str(one.promised) if one.promised and index == 0 else "",
                    amount(line.free, line.counted, units) if line.free != line.lot.on_hand else "",
                    line.lot.status,
                    show_best_before(line.lot.best_before) if line.lot.best_before else "",
                    places,
                )
            )
    table(("material", "lot", "on hand", "promised", "free", "status", "best before", "where"), body, right=(2, 3, 4))
    shown = {line.lot.code for one in found for line in one.lots}
    for codes in taken_for_each_other(here.rows()):
        if shown & {*codes}:
            say_wrapped(f"Taken for one another at a stall and not looked at since: {', '.join(codes)}.")
