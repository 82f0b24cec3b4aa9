"""soapledger stock."""

from collections.abc import Sequence
from typing import Annotated, get_args

import typer

from ledger.cli.kit.amounts import amount
from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count, say, say_next, say_wrapped, table
from ledger.errors import BadInput
from ledger.rows.material import material_by_code
from ledger.rows.sell.assumed import taken_for_each_other
from ledger.units.dates import show_best_before
from ledger.units.names import near
from ledger.units.words import MaterialKind, Units, known
from ledger.views.stock.stock import MaterialStock, stock

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
        say_wrapped(
            f"{one.name}: {amount(one.on_hand, one.counted, units)} on hand in {count(lots, 'lot')}, "
            f"{amount(one.free, one.counted, units)} of it free{promised}."
        )
    else:
        say_wrapped(f"{count(len(found), 'material')} on hand in {count(lots, 'lot')}; {count(bars, 'bar')} of soap.")
    body = []
    for one in found:
        for index, line in enumerate(one.lots):
            body.append(
                (
                    one.name if index == 0 else "",
                    line.lot.code,
                    amount(line.lot.on_hand, line.counted, units),
                    amount(line.free, line.counted, units) if line.free != line.lot.on_hand else "",
                    "out of date" if line.lot.out_of_date(here.today) else line.lot.status,
                    show_best_before(line.lot.best_before) if line.lot.best_before else "",
                )
            )
    table(("material", "lot", "on hand", "free", "status", "best before"), body, right=(2, 3), wraps=(0,))
    _say_promised(found)
    _say_elsewhere(found, units)
    if late := [
        line.lot.code for one in found for line in one.lots if line.lot.on_hand and line.lot.out_of_date(here.today)
    ]:
        say_next(
            f"{count(len(late), 'lot')} {'is' if len(late) == 1 else 'are'} out of date: use none of it. "
            f"Next, once looked at: soapledger lot reject {' '.join(late)} --reason REASON"
        )
    shown = {line.lot.code for one in found for line in one.lots}
    for codes in taken_for_each_other(here.rows()):
        if shown & {*codes}:
            say_wrapped(f"Taken for one another at a stall and not looked at since: {', '.join(codes)}.")


def _say_promised(found: Sequence[MaterialStock]) -> None:
    promised = [
        f"{count(one.promised, 'bar')} of {one.name} ({one.free or 'none'} still free)" for one in found if one.promised
    ]
    if promised:
        say_next(f"Promised: {', '.join(promised)}. See: soapledger order list")


def _say_elsewhere(found: Sequence[MaterialStock], units: Units) -> None:
    """Where what does not stand in the workshop alone is; a column of it would be wider than any screen."""
    elsewhere = [line for one in found for line in one.lots if line.elsewhere]
    if not elsewhere:
        return
    say("Not in the workshop alone:")
    for line in elsewhere:
        places = ", ".join(f"{place} {amount(held, line.counted, units)}" for place, held in line.here)
        say_wrapped(f"{line.lot.code}: {places}", first="  ", indent="    ")
