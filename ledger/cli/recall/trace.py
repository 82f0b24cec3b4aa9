"""soapledger trace."""

from typing import Annotated

import typer

from ledger.cli.kit.amounts import amount
from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count, say, say_wrapped
from ledger.units.dates import show_date
from ledger.views.recall.trace import trace

_DEEPEST = 8  # steps that are set in; deeper ones are numbered, so that the words keep to the screen


def command(
    ctx: typer.Context,
    code: Annotated[str, typer.Argument(help="A batch code from a bar, or a lot: our code or their number.")],
    forward: Annotated[bool, typer.Option("--forward", help="On to the bars, not back to the drums.")] = False,
    json: Json = False,
) -> None:
    """Go back from the code on a bar to every supplier's lot, e.g. soapledger trace 26-118-0."""
    here = desk(ctx)
    found = trace(here.rows(), code, forward=forward)
    if answer(found, json):
        return
    if forward:
        others = len(set(found.batches) - {found.code})
        other = "other " if found.code in found.batches else ""
        into = count(others, f"{other}batch", f"{other}batches") if others else f"no {other}batch"
        say(f"{found.what}, {found.code}, went into {into}.")
    else:
        say(f"{found.what}, {found.code}, goes back to {count(len(found.supplier_lots), 'lot')} as received.")
    for step in found.steps:
        held = "" if step.quantity is None else amount(step.quantity, step.pieces, here.settings.units) + "  "
        origin = ""
        if step.supplier:
            origin = f" from {step.supplier}"
            if step.supplier_lot or step.number_unknown:
                origin += f", their number {step.supplier_lot or 'unknown'}"
        word = "received" if step.supplier else "made"
        more = " (see above)" if step.seen_before else ""
        say(
            f"{lead(step.depth)}{held}{step.what}, {step.kind} {step.code}{origin}, "
            f"{word} {show_date(step.on)}, {step.status}{more}"
        )
    for back in found.back_on_sale:
        say(f"Of batch {back.batch_code}, {back.words}.")
    for one in found.on_the_shelf:
        say(f"Of batch {one.batch_code}, {one.words}.")
    for bars in found.may_be:
        say_wrapped(f"Cannot be excluded: {bars.what}; {bars.why}.")


def lead(depth: int) -> str:
    """What stands before a step so many steps away from the start."""
    return "   " * min(depth, _DEEPEST) + (f"step {depth}: " if depth > _DEEPEST else "")
