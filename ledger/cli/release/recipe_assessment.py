"""soapledger recipe assessment."""

from typing import Annotated

import typer

from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json, On, Recipe
from ledger.cli.kit.show import say, say_wrapped, table
from ledger.errors import BadInput
from ledger.rows.recipe import recipe_by_code
from ledger.units.dates import show_date
from ledger.units.quantity import parse_pieces, show_share
from ledger.views.release.assessment import AssessmentView, batch_beside, recipe_beside


def command(
    ctx: typer.Context,
    which: Recipe,
    version: Annotated[str | None, typer.Option("--version", help="An earlier version.")] = None,
    batch: Annotated[str | None, typer.Option("--batch", help="A batch as weighed, in place of the recipe.")] = None,
    markets: Annotated[
        list[str] | None, typer.Option("--market", help="Where it is to be sold (else where you have an address).")
    ] = None,
    on: On = None,
    json: Json = False,
) -> None:
    """Lay a recipe or a batch beside its safety assessment: as written, or as weighed."""
    here = desk(ctx)
    card = recipe_by_code(here.rows(), which)
    number = parse_pieces(version, what="the version") if version else None
    if batch is None:
        view = recipe_beside(here.rows(), card, version=number, markets=markets or (), on=here.day(on))
    elif number is None:
        view = batch_beside(here.rows(), card, batch, markets=markets or (), on=here.day(on))
    else:
        raise BadInput("A batch keeps the version it was planned from; leave out --version.")
    if answer(view, json):
        return
    if view is None:
        say(f"No assessment of {card.name} is booked, so there is nothing to compare it with.")
        say("Write the figures of the assessor's report into a small file, then:")
        say(f"  soapledger recipe assess {card.code} FILE.toml")
    else:
        _show(view)


def _show(view: AssessmentView) -> None:
    given, many = view.assessment, len(view.compared)
    outside = f"{view.outside or 'none'} of {many} particulars {'lie' if view.outside > 1 else 'lies'} outside it"
    say_wrapped(
        f"Compared with assessment {given.reference} of {given.assessor}, {show_date(given.on)}: {outside}, "
        f"and it is silent on {view.silent or 'none'}."
    )
    as_made = f"batch {view.batch} as weighed" if view.batch else "as written"
    say(f"{view.product}, version {view.version}, {as_made}; as of {show_date(view.on)}.")
    order = ("outside", "silent", "inside")
    rows = sorted(view.compared, key=lambda one: order.index(one.verdict))
    table(
        ("particular", "found", "assessed", "lies"),
        [(one.what, one.found, one.assessed, one.verdict) for one in rows],
    )
    for one in view.words:
        when = f"{show_share(one.highest_ppm or 0, 2)} at most, by the word of {one.by}"
        say_wrapped(f"{one.inci}: {when}{f', {show_date(one.on)}' if one.on else ''}: {one.word}")
    say("Shares are of everything weighed in, wrapping apart, as added.")
    if view.without_inci:
        say_wrapped(f"Without an INCI name, and so compared under their own: {', '.join(view.without_inci)}.")
    say("This compares figures; what they mean for the product, the assessor decides.")
    if not view.batch:
        say(f"A batch as weighed: soapledger recipe assessment {view.recipe} --batch CODE")
