"""soapledger recipe scale."""

from typing import Annotated

import typer

from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json, Recipe
from ledger.cli.recipe.pages import Version, read_version, worked_out
from ledger.cli.recipe.scaling import say_scaled, scaled_fats
from ledger.domain.recipe.mould import parse_mould
from ledger.units.quantity import parse_pieces


def command(
    ctx: typer.Context,
    which: Recipe,
    mould: Annotated[
        str | None,
        typer.Option("--mould", help="To a mould: '21 x 7 x 6.5 cm', 'cylinder 7.5 x 25 cm', '6 of 90 mL'."),
    ] = None,
    bars: Annotated[str | None, typer.Option("--bars", help="To so many bars, with --size or --net-weight.")] = None,
    size: Annotated[str | None, typer.Option("--size", help="The size of a bar: '80 x 55 x 25 mm'.")] = None,
    net_weight: Annotated[str | None, typer.Option("--net-weight", help="What a bar weighs after the cure.")] = None,
    stock: Annotated[str | None, typer.Option("--stock", help="To all that is free of one of its fats.")] = None,
    version: Version = None,
    json: Json = False,
) -> None:
    """Scale a recipe to a mould, to so many bars, or to the stock of one fat."""
    here = desk(ctx)
    number = read_version(version)
    fats_mg = scaled_fats(here, which, number, mould=mould, bars=bars, size=size, net_weight=net_weight, stock=stock)
    pieces = parse_pieces(bars, what="the number of bars") if bars else None
    into = parse_mould(mould) if mould else None
    if into and into.cavities > 1:
        pieces = into.cavities
    page = worked_out(ctx, which, version, None, fats_mg=fats_mg, mould=into, bars=pieces)
    answer(page, json, lambda: say_scaled(here, page))
