"""soapledger recall: the answer to a supplier's call."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from ledger.cli.desk import desk
from ledger.cli.paper import PAPER, paper_size
from ledger.cli.show import amount, count, out_json, say, table
from ledger.errors import BadInput

if TYPE_CHECKING:
    from ledger.views.recall import RecallAnswer

app = typer.Typer(help="A supplier's lot is bad: which batches, which bars, where, whom to call.")


@app.callback()
def group() -> None:
    """A supplier's lot is bad: which batches, which bars, where, whom to call."""


@app.command("lot")
def lot(
    ctx: typer.Context,
    numbers: Annotated[list[str] | None, typer.Argument(help="Their lot numbers, as the notice quotes them.")] = None,
    supplier: Annotated[str | None, typer.Option("--supplier", help="Only from this supplier.")] = None,
    material: Annotated[str | None, typer.Option("--material", help="Only this material.")] = None,
    from_: Annotated[str | None, typer.Option("--from", help="Received on this day or later.")] = None,
    to: Annotated[str | None, typer.Option("--to", help="Received on this day or earlier.")] = None,
    every: Annotated[bool, typer.Option("--all", help="All lots that fit, where several do.")] = False,
    hold: Annotated[bool, typer.Option("--hold", help="Put all that is here on hold at once.")] = False,
    reason: Annotated[str, typer.Option("--reason", help="Why, for the hold.")] = "supplier's recall",
    exercise: Annotated[bool, typer.Option("--exercise", help="This is only an exercise.")] = False,
    output: Annotated[Path | None, typer.Option("-o", help="Write the report as a PDF file.")] = None,
    csv_file: Annotated[Path | None, typer.Option("--csv", help="Write whom to call as a CSV file.")] = None,
    paper: PAPER = "a4",
    force: Annotated[bool, typer.Option("--force", help="Overwrite existing files.")] = False,
    json: Annotated[bool, typer.Option("--json", help="Answer as JSON.")] = False,
) -> None:
    """Answer for one or several lot numbers, e.g. soapledger recall lot "4471/2" --hold -o recall.pdf."""
    from ledger import __version__
    from ledger.domain.dates import parse_date
    from ledger.views.material import material_by_code
    from ledger.views.recall_answer import recall_answer
    from ledger.views.recall_search import Notice, lots_meant
    from ledger.views.supplier import supplier_by_code

    if hold and exercise:
        raise BadInput("An exercise holds nothing back; leave out --hold, or --exercise if this is no exercise.")
    here = desk(ctx)
    size = paper_size(paper)
    asked = tuple(numbers or ())
    if not asked and not (supplier and material):
        raise BadInput("Give their lot number, or both --supplier and --material (and --from and --to).")
    vendor = supplier_by_code(here.rows(), supplier) if supplier else None
    card = material_by_code(here.rows(), material) if material else None
    notice = Notice(
        numbers=asked,
        supplier_id=vendor.id if vendor else None,
        material_id=card.id if card else None,
        received_from=parse_date(from_, today=here.today, what="the day of --from") if from_ else None,
        received_to=parse_date(to, today=here.today, what="the day of --to") if to else None,
    )
    found = lots_meant(here.rows(), notice, every=every)
    asked = asked or tuple(word for word in (vendor and vendor.name, card and card.name) if word)
    for path in (output, csv_file):
        if path is not None:
            from ledger.documents.files import check_free

            check_free(path, force)
    if output and csv_file and output.absolute() == csv_file.absolute():
        raise BadInput(f"The report and the list of whom to call cannot both be {output}; name two files.")
    if hold:
        from ledger.operations.hold_reached import hold_reached

        answer = hold_reached(here.book(), found, asked=asked, on=here.today, by=here.who, reason=reason)
        here.again = here.typed(f"recall lot {' '.join(one.code for one in found)}", output)
    else:
        answer = recall_answer(here.rows(), found, asked=asked, program=__version__, exercise=exercise)
    here.let_go()  # a long report is drawn without keeping a writer out
    if output:
        from ledger.documents.files import write_file
        from ledger.documents.recall_report import draw_recall

        write_file(output, draw_recall(answer, paper=size), force=force)
    if csv_file:
        from ledger.documents.contact_list import contact_list
        from ledger.documents.files import write_file

        write_file(csv_file, contact_list(answer), force=force)
    if json:
        out_json(answer)
        return
    say_answer(answer)
    if output:
        say(f"The report is {output}.")
    if csv_file:
        say(f"Whom to call is in {csv_file}.")
    if not answer.held and (answer.totals.on_hand or answer.totals.at_stall or answer.bulk):
        say(f"Next, to stop all that is here: soapledger recall lot {' '.join(one.code for one in found)} --hold")


def say_answer(answer: "RecallAnswer") -> None:
    """The answer on the screen: the sentence for the telephone, then the tables."""
    from ledger.domain.dates import show_date

    totals = answer.totals
    first = answer.lots[0]
    what = f"{first.material}, lot {first.lot_code} (their number {first.supplier_lot or 'unknown'})"
    if len(answer.lots) > 1:
        materials = " and ".join(dict.fromkeys(one.material for one in answer.lots))
        what = f"{count(len(answer.lots), 'lot')} of {materials}"
    with_bars = [one for one in answer.batches if one.yields_bars]
    say(
        f"{'EXERCISE. ' if answer.exercise else ''}{what}: {count(len(with_bars), 'batch', 'batches')}, "
        f"{count(totals.made, 'bar')}. {totals.on_hand} here, {totals.at_stall} at a stall, "
        f"{totals.retained} retained, {totals.returned} returned, {totals.sold} sold, "
        f"{totals.dispatched} dispatched, {totals.given} given away, {totals.wasted} thrown away, "
        f"{f'{totals.reworked} reworked, ' if totals.reworked else ''}{totals.unexplained} unexplained."
    )
    units = answer.units
    say()
    table(
        ("lot", "their number", "supplier", "received", "quantity", "left", "status"),
        [
            (
                one.lot_code,
                one.supplier_lot or "unknown",
                one.supplier or "",
                show_date(one.received_on),
                amount(one.received, one.pieces, units),
                amount(one.on_hand, one.pieces, units),
                one.status,
            )
            for one in answer.lots
        ],
        right=(4, 5),
    )
    if answer.batches:
        say()
        table(
            ("batch", "what", "made", "took", "bars", "status", "through"),
            [
                (
                    one.batch_code,
                    one.product,
                    show_date(one.made_on),
                    amount(one.used, one.pieces, units),
                    str(one.bars_made) if one.yields_bars else "",
                    one.status,
                    " → ".join(one.through[1:-1]),
                )
                for one in answer.batches
            ],
            right=(3, 4),
        )
    if answer.bars:
        say()
        table(
            ("batch", "bars", "where", "", "on"),
            [
                (one.batch_code, str(one.count), one.where, one.detail, show_date(one.on) if one.on else "")
                for one in answer.bars
            ],
            right=(1,),
        )
    if answer.bulk:
        say()
        say("Loose material made from it that is still here:")
        table(
            ("lot", "material", "where", "quantity", "status"),
            [(b.lot_code, b.material, b.place, amount(b.on_hand, b.pieces, units), b.status) for b in answer.bulk],
            right=(3,),
        )
    if answer.call:
        say()
        say("To call:")
        table(
            ("name", "phone", "email", "bars", "batches"),
            [(c.name, c.phone or "no number", c.email or "", str(c.bars), ", ".join(c.batches)) for c in answer.call],
            right=(3,),
        )
    if answer.cannot_exclude:
        say()
        say("Cannot be excluded:")
        for one in answer.cannot_exclude:
            say(f"  {one.what}: {one.why}.")
    if answer.held:
        say()
        say("Everything of it that is here is on hold.")
