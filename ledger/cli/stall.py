"""soapledger stall: a market day."""

from typing import Annotated

import typer

from ledger.cli.bars import BARS, read_bars, warn_of_holds
from ledger.cli.desk import desk
from ledger.cli.show import ask, count, out_json, say, table, warn

app = typer.Typer(help="A market stall: add, out, back, list.")

Name = Annotated[str, typer.Argument(help="The stall's name.")]
On = Annotated[str | None, typer.Option("--on", help="The day (today).")]


@app.command("add")
def add(ctx: typer.Context, name: Name) -> None:
    """Add a stall, e.g. soapledger stall add "Saturday market"."""
    from ledger.operations.sell import add_stall

    code = add_stall(desk(ctx).book(), name)
    say(f"{name} is added as '{code}'. Next: soapledger stall out {code} BATCH=NUMBER")


@app.command("out")
def out(ctx: typer.Context, name: Name, bars: BARS, on: On = None) -> None:
    """Take released bars to a stall, e.g. soapledger stall out saturday 26-118-0=6 26-117-2=4."""
    from ledger.operations.sell import stall_out

    here = desk(ctx)
    wanted = read_bars(bars)
    place = stall_out(here.book(), name, wanted, on=here.day(on))
    say(f"{count(sum(wanted.values()), 'bar')} taken to {place}.")
    warn_of_holds(here, wanted)
    say(f'Next, when you are home: soapledger stall back "{place}"')


@app.command("back")
def back(
    ctx: typer.Context,
    name: Name,
    bars: Annotated[
        list[str] | None, typer.Argument(help="What came back of each batch, e.g. 26-118-0=2; asks for the others.")
    ] = None,
    takings: Annotated[str | None, typer.Option("--takings", help="What you took that day.")] = None,
    on: On = None,
) -> None:
    """Close a stall day: say what came back of each batch, the rest was sold."""
    from ledger.domain.money import parse_money
    from ledger.domain.quantity import parse_pieces
    from ledger.operations.sell import stall_back
    from ledger.views.lots import find_lot
    from ledger.views.stall import at_stall, stall_by_name

    here = desk(ctx)
    place = stall_by_name(here.rows(), name)
    wanted = {find_lot(here.rows(), code).code: number for code, number in read_bars(bars or []).items()}
    for one in at_stall(here.rows(), place.id):
        if one.code not in wanted:
            typed = ask(f"{one.product} {one.code}: {one.bars} went out; how many came back", default="0")
            wanted[one.code] = parse_pieces(typed)
    money = parse_money(takings, here.settings.currency, what="the takings") if takings else None
    ended = stall_back(here.book(), place.code, wanted, on=here.day(on), takings_minor=money)
    sold = sum(number for _, number in ended.sold)
    say(f"{ended.stall}: {count(sold, 'bar')} sold, {ended.back} came home.")
    for code in ended.held:
        warn(f"Bars of batch {code}, which is on hold, were sold; see: soapledger lot show {code}")


@app.command("list")
def list_(ctx: typer.Context, json: Annotated[bool, typer.Option("--json", help="Answer as JSON.")] = False) -> None:
    """List the stalls and what stands at each."""
    from ledger.views.lots import places
    from ledger.views.stall import at_stall

    rows = desk(ctx).rows()
    stalls = [(one, at_stall(rows, one.id)) for one in places(rows) if one.kind == "stall"]
    if json:
        out_json([{"stall": place, "bars": standing} for place, standing in stalls])
        return
    if not stalls:
        say('No stall yet. Add one: soapledger stall add "Saturday market"')
        return
    say(f"{count(len(stalls), 'stall')}.")
    table(
        ("stall", "bars", "batches"),
        [(p.name, str(sum(s.bars for s in standing)), ", ".join(s.code for s in standing)) for p, standing in stalls],
        right=(1,),
    )
