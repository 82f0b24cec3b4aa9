"""soapledger label bare."""

from typing import Annotated, get_args

import typer

from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import Desk, desk
from ledger.cli.kit.options import Json, On
from ledger.cli.kit.show import ask, can_answer, count, say_wrapped
from ledger.errors import BadInput
from ledger.markets import laws_at
from ledger.operations.label.bare import Bare, end_bare, settle_bare
from ledger.rows.label import sold_bare
from ledger.rows.recipe import recipe_by_code
from ledger.units.dates import show_date
from ledger.units.words import CodeOn, checked


def command(
    ctx: typer.Context,
    recipe: Annotated[str | None, typer.Argument(help="The recipe; without an outlet, what is settled.")] = None,
    stall: Annotated[str | None, typer.Option("--stall", help="The stall they are sold at.")] = None,
    to: Annotated[str | None, typer.Option("--to", help="The customer who gets them.")] = None,
    notice: Annotated[
        str | None, typer.Option("--notice", help="The notice beside them: notice-shelf, or in your words.")
    ] = None,
    code_on: Annotated[str | None, typer.Option("--code-on", help="Where the batch code is: bar or tray.")] = None,
    end: Annotated[bool, typer.Option("--end", help="From that day on with a label again.")] = False,
    reason: Annotated[str | None, typer.Option("--reason", help="Why.")] = None,
    on: On = None,
    json: Json = False,
) -> None:
    """Settle once, by name, that a product is sold without a label at an outlet; alone, list what is settled."""
    here = desk(ctx)
    if stall is None and to is None:
        if recipe and (notice or code_on or end or reason):
            raise BadInput("Where are they sold? Name one outlet: --stall STALL, or --to CUSTOMER.")
        _listed(here, recipe, json)
        return
    if recipe is None:
        raise BadInput("Which product? Write its recipe first: soapledger label bare RECIPE --stall STALL")
    by, day = here.decider, here.day(on)
    name = recipe_by_code(here.rows(), recipe).name
    if end:
        why = _given("why", reason, "--reason WHY")
        where = end_bare(here.book(), Bare(recipe, stall, to, day, by, why))
        say_wrapped(f"{name} goes to {where} with a label again from {show_date(day)}, as {by} decided.")
        return
    said = _given("which notice stands beside them (notice-shelf, or in your words)", notice, "--notice WHICH")
    code = _given("where the batch code is (bar or tray)", code_on, "--code-on bar, or --code-on tray")
    place = checked(code, get_args(CodeOn), what="where a batch code is")
    why = _given("why", reason, "--reason WHY")
    where = settle_bare(here.book(), Bare(recipe, stall, to, day, by, why), notice=said, code_on=place)
    say_wrapped(
        f"{name} is sold without a label at {where} from {show_date(day)}, as {by} decided; it is not asked again."
    )
    say_wrapped(f"Notice: {said}. The batch code is on the {place}.")
    say_wrapped(
        "Of a batch that has bars with a label and bars without, those without are taken to be the first to go there; "
        "so take those."
    )
    for law in laws_at(here.settings.addresses):
        if law.declares_ingredients:
            say_wrapped(f"{law.name}: {law.without_label}.", first="  ? ", indent="    ")
    say_wrapped("What a notice may stand for where they are sold is the rule of that country, and for a person.")
    say_wrapped("To take it back from a day on, add --end, --reason and --on to the same recipe and outlet.")


def _given(what: str, typed: str | None, option: str) -> str:
    """An option, else what is answered. Raises BadInput where nobody can be asked."""
    if typed is not None:
        return typed
    if not can_answer():
        raise BadInput(f"It is not said {what}; add {option}.")
    return ask(what)


def _listed(here: Desk, recipe: str | None, json: bool) -> None:
    rows = here.rows()
    found = sold_bare(rows, recipe_by_code(rows, recipe).code if recipe else None)
    words = Listed(
        f"{count(len(found), 'decision')} on bars without a label; the last for each outlet counts.",
        ("product", "outlet", "from", "label", "notice", "code on"),
        (
            (
                one.product,
                one.outlet,
                show_date(one.on),
                "none" if one.bare else "again",
                one.notice or "",
                one.code_on or "",
            )
            for one in found
        ),
        none="Every bar leaves with a label: nothing else is settled.",
        then="Who decided and why: soapledger label bare --json, or batch show of such a batch",
    )
    answer(found, json, words)
