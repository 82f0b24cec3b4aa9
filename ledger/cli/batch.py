"""soapledger batch: from the plan to the cut."""

from pathlib import Path
from typing import Annotated

import typer

from ledger.cli.desk import desk
from ledger.cli.logging import parse_lines, prompt_lines, read_lines_csv, say_superfat
from ledger.cli.paper import PAPER, paper_size
from ledger.cli.show import amount, count, out_json, say, table
from ledger.errors import BadInput

app = typer.Typer(help="A batch: plan, log, cut or strain, note, discard, show, list.")

Code = Annotated[str, typer.Argument(help="The batch code, e.g. 26-118-0.")]
Json = Annotated[bool, typer.Option("--json", help="Answer as JSON.")]
On = Annotated[str | None, typer.Option("--on", help="The day (today).")]
Output = Annotated[Path | None, typer.Option("-o", help="Write it as a PDF file.")]
Force = Annotated[bool, typer.Option("--force", help="Overwrite an existing file.")]


@app.command("plan")
def plan(
    ctx: typer.Context,
    recipe: Annotated[str, typer.Argument(help="The recipe's short name or name.")],
    fats: Annotated[str | None, typer.Option("--fats", help="For so much fat, e.g. 1200 g.")] = None,
    on: On = None,
    using: Annotated[
        list[str] | None, typer.Option("--using", help="A lot of your choosing: 'olive oil=L41-5' (repeat).")
    ] = None,
    output: Output = None,
    paper: PAPER = "a4",
    force: Force = False,
    json: Json = False,
) -> None:
    """Plan a batch from the lots in hand and print its worksheet, e.g. batch plan calendula -o sheet.pdf."""
    from ledger import __version__
    from ledger.domain.dates import show_date
    from ledger.domain.quantity import parse_mass, show_mass, show_share
    from ledger.operations.plan import PlanRequest, plan_batch
    from ledger.reference.cautions import cautions
    from ledger.views.worksheet import worksheet

    here = desk(ctx)
    size = paper_size(paper)
    chosen = {}
    for text in using or ():
        material, separator, code = text.partition("=")
        if not separator:
            raise BadInput(f"'{text}' is not a choice of lot; write --using 'olive oil=L41-5'.")
        chosen[material.strip()] = code.strip()
    request = PlanRequest(
        recipe=recipe,
        on=here.day(on),
        fats_mg=parse_mass(fats, what="the fats") if fats else None,
        using=chosen,
    )
    if output:
        from ledger.documents.files import check_free

        check_free(output, force)
    code = plan_batch(here.book(), request)
    sheet = worksheet(here.rows(), code, program=__version__)
    if output:
        from ledger.documents.files import write_file
        from ledger.documents.worksheet import draw_worksheet

        write_file(output, draw_worksheet(sheet, cautions=cautions(), paper=size), force=True)
    if json:
        out_json(sheet)
        return
    units = here.settings.units
    care = cautions()
    say(care.first)
    for texts in care.by_step.values():
        for one in texts:
            say(f"  ! {one}")
    say()
    facts = f"{sheet.product}, version {sheet.recipe_version}, for {show_date(sheet.made_on)}"
    say(f"Batch {code} is planned: {facts}.")
    if sheet.superfat_ppm is not None and sheet.lye_concentration_ppm is not None:
        say(
            f"Superfat {show_share(sheet.superfat_ppm)}, lye concentration {show_share(sheet.lye_concentration_ppm)}, "
            f"{show_mass(sheet.dough_mg, units)} in the pot."
        )
    table(
        ("line", "when", "material", "lot", "amount", "OK from", "to"),
        [
            (
                str(line.number),
                line.stage,
                line.material,
                line.lot_code or "none yet",
                amount(line.target, line.pieces, units),
                "" if line.pieces else amount(line.low, False, units),
                "" if line.pieces else amount(line.high, False, units),
            )
            for line in sheet.lines
        ],
        right=(0, 4, 5, 6),
    )
    for note in sheet.notes:
        say(note)
    if output:
        say(f"The worksheet is {output}.")
    say(f"Next, at the bench: soapledger batch log {code}")


@app.command("log")
def log(
    ctx: typer.Context,
    code: Code,
    line: Annotated[
        list[str] | None,
        typer.Option(
            "--line",
            help="One line: '3=182.4 g', from another lot '3=182.4 g@L41-5', from two '3=120 g@L7-2,62.4 g@L9-3'.",
        ),
    ] = None,
    reading: Annotated[
        list[str] | None,
        typer.Option("--reading", help="E.g. 'lye temperature=49 C', 'trace=8 min' (repeat)."),
    ] = None,
    csv_file: Annotated[
        Path | None,
        typer.Option("--csv", help="A CSV file with the columns line, weight and, if needed, lot."),
    ] = None,
    as_planned: Annotated[
        bool, typer.Option("--as-planned", help="Every line still open was weighed at its target.")
    ] = False,
    correct: Annotated[bool, typer.Option("--correct", help="These lines were logged wrongly before.")] = False,
    anyway: Annotated[
        str | None, typer.Option("--anyway", help="Keep a superfat at or below zero, with the reason.")
    ] = None,
    on: On = None,
    yes: Annotated[bool, typer.Option("--yes", help="Do not ask again about unlikely weights.")] = False,
    json: Json = False,
) -> None:
    """Log what was weighed and read, line by line; asks for what is still open."""
    from ledger.operations.readings import log_readings, read_reading
    from ledger.operations.weigh import Weighed, weigh
    from ledger.views.batch import find_batch, plan_lines
    from ledger.views.lye_check import lye_check

    here = desk(ctx)
    batch = find_batch(here.rows(), code)
    made = here.day(on) if on else min(max(batch.planned_on, batch.made_on or batch.planned_on), here.today)
    lines = {one.number: one for one in plan_lines(here.rows(), batch.id) if one.role != "packaging"}
    readings = tuple(read_reading(text) for text in reading or ())
    weighed: dict[int, list[Weighed]] = {}
    if csv_file:
        weighed.update(read_lines_csv(csv_file, lines, yes=yes))
    weighed.update(parse_lines(line or [], lines, yes=yes))
    if as_planned:
        for number, one in lines.items():
            if not one.logged and number not in weighed:
                weighed[number] = [Weighed(one.target)]
    prompted = not (line or reading or csv_file or as_planned)
    if prompted:
        prompt_lines(here, batch, made, anyway=anyway)
    if weighed:
        weigh(here.book(), batch.code, weighed, on=made, by=here.who, correct=correct, anyway=anyway)
    if readings:
        log_readings(here.book(), batch.code, readings, on=made)
    check = lye_check(here.rows(), batch.id)
    if json:
        out_json({"batch": find_batch(here.rows(), batch.code), "lye": check})
        return
    now = find_batch(here.rows(), batch.code)
    if now.open_lines:
        say(f"Batch {batch.code}: {count(now.open_lines, 'line')} still to be weighed.")
    else:
        say(f"Batch {batch.code}: everything is weighed.")
    say_superfat(check)
    if now.open_lines:
        say(f"Next: soapledger batch log {batch.code}")
    elif now.process == "infusion":
        say(f"Next, when it has drawn: soapledger batch strain {batch.code} WEIGHT")
    elif now.poured or now.process == "rebatch":
        say(f"Next: soapledger batch cut {batch.code} BARS --weight WEIGHT")
    else:
        say(f"Next: soapledger batch log {batch.code} --reading poured=14:05")


@app.command("cut")
def cut(
    ctx: typer.Context,
    code: Code,
    bars: Annotated[str, typer.Argument(help="How many bars.")],
    weight: Annotated[str | None, typer.Option("--weight", help="What all the bars weigh together.")] = None,
    offcuts: Annotated[str | None, typer.Option("--offcuts", help="What end slices and offcuts weigh.")] = None,
    on: On = None,
) -> None:
    """Book the bars cut from a loaf, e.g. soapledger batch cut 26-118-0 10 --weight "1310 g"."""
    from ledger.domain.dates import show_date
    from ledger.domain.quantity import parse_mass, parse_pieces, show_mass
    from ledger.operations.cut import cut_batch
    from ledger.views.batch import find_batch

    here = desk(ctx)
    units = here.settings.units
    number = parse_pieces(bars, what="the number of bars")
    mass = parse_mass(weight, what="the weight of the bars") if weight else None
    rest = parse_mass(offcuts, what="the weight of the offcuts") if offcuts else 0
    put_in = cut_batch(here.book(), code, bars=number, on=here.day(on), by=here.who, bars_mg=mass, offcuts_mg=rest)
    batch = find_batch(here.rows(), code)
    assert batch.ready_on is not None
    say(f"{count(number, 'bar')} of batch {batch.code} are on the rack; ready on {show_date(batch.ready_on)}.")
    if mass is not None:
        say(f"{show_mass(put_in, units)} went in; {show_mass(put_in - mass - rest, units)} lost to pot and air.")
    if batch.usable_from:
        say(f"Usable from {show_date(batch.usable_from)}, though not yet steady in weight (common practice).")


@app.command("strain")
def strain(
    ctx: typer.Context,
    code: Code,
    weight: Annotated[str, typer.Argument(help="What was strained off, e.g. 480 g.")],
    on: On = None,
) -> None:
    """End an infusion: book the oil strained off as a lot of its own."""
    from ledger.domain.quantity import parse_mass, show_mass
    from ledger.operations.cut import strain_batch

    here = desk(ctx)
    mass = parse_mass(weight, what="the weight strained off")
    lot = strain_batch(here.book(), code, mass_mg=mass, on=here.day(on), by=here.who)
    say(f"{show_mass(mass, here.settings.units)} strained off as lot {lot}. Write the code on the jar.")


@app.command("note")
def note(
    ctx: typer.Context,
    code: Code,
    words: Annotated[str, typer.Argument(help="What you saw, or what went wrong and what you did.")],
    on: On = None,
) -> None:
    """Note what was seen, went wrong or was decided, e.g. batch note 26-118-0 "seized at trace"."""
    from ledger.operations.readings import ReadingValue, log_readings

    here = desk(ctx)
    if not words.strip():
        raise BadInput("Write what you saw, in quotes.")
    log_readings(here.book(), code, (ReadingValue("observation", text=words.strip()),), on=here.day(on))
    say("Noted.")


@app.command("discard")
def discard(
    ctx: typer.Context,
    code: Code,
    reason: Annotated[str, typer.Option("--reason", help="Why.")],
    on: On = None,
) -> None:
    """Give up a batch before it is cut; what went in stays booked."""
    from ledger.operations.readings import discard_batch

    here = desk(ctx)
    discard_batch(here.book(), code, on=here.day(on), by=here.who, reason=reason)
    say(f"Batch {code} is discarded: {reason}. What went in stays booked as used.")


@app.command("list")
def list_(ctx: typer.Context, json: Json = False) -> None:
    """List the batches, the latest last."""
    from ledger.domain.dates import show_date
    from ledger.views.batch import batches

    here = desk(ctx)
    found = batches(here.rows())
    if json:
        out_json([{"status": one.status, "batch": one} for one in found])
        return
    if not found:
        say("No batch yet. Plan one: soapledger batch plan RECIPE")
        return
    say(f"{count(len(found), 'batch', 'batches')}.")
    table(
        ("code", "product", "made", "status", "bars"),
        [(b.code, b.product, show_date(b.on), b.status, str(b.made) if b.soap and b.made else "") for b in found],
        right=(4,),
    )


@app.command("show")
def show(
    ctx: typer.Context,
    code: Code,
    output: Output = None,
    paper: PAPER = "a4",
    worksheet_: Annotated[bool, typer.Option("--worksheet", help="The worksheet in place of the record.")] = False,
    force: Force = False,
    json: Json = False,
) -> None:
    """Show the record of a batch, or print it, e.g. batch show 26-118-0 -o record.pdf."""
    from ledger import __version__
    from ledger.cli.record import say_record
    from ledger.views.record import batch_record
    from ledger.views.worksheet import worksheet

    here = desk(ctx)
    size = paper_size(paper)
    if worksheet_:
        sheet = worksheet(here.rows(), code, program=__version__)
        if json or not output:
            out_json(sheet)
            return
        from ledger.documents.files import write_file
        from ledger.documents.worksheet import draw_worksheet
        from ledger.reference.cautions import cautions

        write_file(output, draw_worksheet(sheet, cautions=cautions(), paper=size), force=force)
        say(f"The worksheet of batch {sheet.batch_code} is {output}.")
        return
    record = batch_record(here.rows(), code, program=__version__)
    if output:
        from ledger.documents.batch_record import draw_batch_record
        from ledger.documents.files import write_file

        write_file(output, draw_batch_record(record, paper=size), force=force)
        say(f"The record of batch {record.batch_code} is {output}{' (a draft)' if record.draft else ''}.")
    elif json:
        out_json(record)
    else:
        say_record(record)
