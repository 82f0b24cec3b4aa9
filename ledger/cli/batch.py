"""soapledger batch: from the plan to the cut."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from ledger.cli.bench import log
from ledger.cli.correct import correct
from ledger.cli.desk import Desk, desk
from ledger.cli.deviation import decide, note, say_open
from ledger.cli.paper import PAPER, paper_size
from ledger.cli.planning import plan
from ledger.cli.show import count, out_json, say, table
from ledger.errors import BadInput

if TYPE_CHECKING:
    from ledger.domain.mass_balance import MassBalance
    from ledger.views.batch import BatchRow

app = typer.Typer(help="A batch: plan, log, correct, divide, cut, strain or fill, note, decide, discard, show, list.")

Code = Annotated[str, typer.Argument(help="The batch code, e.g. 26-118-0.")]
Json = Annotated[bool, typer.Option("--json", help="Answer as JSON.")]
On = Annotated[str | None, typer.Option("--on", help="The day (today).")]
Output = Annotated[Path | None, typer.Option("-o", help="Write it as a PDF file.")]
Force = Annotated[bool, typer.Option("--force", help="Overwrite an existing file.")]


app.command("plan")(plan)
app.command("log")(log)
app.command("correct")(correct)


@app.command("divide")
def divide(
    ctx: typer.Context,
    code: Code,
    portions: Annotated[
        list[str] | None, typer.Argument(help="What went into each, e.g. plain='700 g' slate='450 g'; else as planned.")
    ] = None,
    on: On = None,
    json: Json = False,
) -> None:
    """Divide the dough at trace into its portions, each a batch with a code and bars of its own."""
    from ledger.domain.quantity import parse_mass, show_mass
    from ledger.operations.portions import divide_batch
    from ledger.views.batch import find_batch

    here = desk(ctx)
    masses: dict[str, int] = {}
    for text in portions or ():
        name, separator, weight = (part.strip() for part in text.partition("="))
        if not separator or name in masses:
            raise BadInput(f"'{text}' is not a portion with its weight, once; write plain='700 g'.")
        masses[name] = parse_mass(weight, what=f"the weight of {name}")
    batch = find_batch(here.rows(), code)
    day = here.day(on) if on else min(batch.on, here.today)
    done = divide_batch(here.book(), code, masses, on=day, by=here.who)
    if json:
        out_json([{"portion": name, "batch": one, "dough_mg": mass} for name, one, mass in done])
        return
    say(f"Batch {batch.code} is divided into {count(len(done), 'portion')}.")
    table(
        ("portion", "batch", "dough"),
        [(name, one, show_mass(mass, here.settings.units)) for name, one, mass in done],
        right=(2,),
    )
    say(f"Next, for each: soapledger batch log {done[0][1]}")


@app.command("cut")
def cut(
    ctx: typer.Context,
    code: Code,
    bars: Annotated[str, typer.Argument(help="How many bars.")],
    weight: Annotated[str | None, typer.Option("--weight", help="What all the bars weigh together.")] = None,
    offcuts: Annotated[str | None, typer.Option("--offcuts", help="What end slices and offcuts weigh.")] = None,
    waste: Annotated[str | None, typer.Option("--waste", help="What was thrown away at the cut.")] = None,
    weights: Annotated[
        str | None, typer.Option("--each", help="Bars weighed one by one, all or a sample: '131 g; 128.5 g; 130 g'.")
    ] = None,
    on: On = None,
) -> None:
    """Book the bars cut from a loaf, e.g. soapledger batch cut 26-118-0 10 --weight "1310 g"."""
    from ledger.domain.quantity import parse_mass, parse_pieces
    from ledger.operations.cut import cut_batch
    from ledger.views.batch import find_batch

    here = desk(ctx)
    number = parse_pieces(bars, what="the number of bars")
    balance = cut_batch(
        here.book(),
        code,
        bars=number,
        on=here.day(on),
        by=here.who,
        bars_mg=parse_mass(weight, what="the weight of the bars") if weight else None,
        offcuts_mg=parse_mass(offcuts, what="the weight of the offcuts") if offcuts else 0,
        waste_mg=parse_mass(waste, what="the weight of the waste") if waste else 0,
        weights_mg=[parse_mass(one, what="the weight of a bar") for one in weights.split(";")] if weights else (),
    )
    say_cut(here, find_batch(here.rows(), code), balance)


def say_cut(here: Desk, batch: "BatchRow", balance: "MassBalance") -> None:
    """The bars on the rack, what is not accounted for, and what lies outside a limit."""
    from ledger.domain.dates import show_date
    from ledger.domain.quantity import show_mass, show_share

    units = here.settings.units
    assert batch.ready_on is not None
    say(f"{count(batch.made, 'bar')} of batch {batch.code} are on the rack; ready on {show_date(batch.ready_on)}.")
    if balance.loss_mg is not None and balance.loss_ppm is not None:
        cooked = f", {show_mass(balance.cooked_off_mg, units)} cooked off" if balance.cooked_off_mg else ""
        say(
            f"{show_mass(balance.put_in_mg, units)} went in{cooked}; {show_mass(balance.loss_mg, units)} "
            f"({show_share(balance.loss_ppm)}) lost to pot and air."
        )
    if batch.usable_from:
        say(f"Usable from {show_date(batch.usable_from)}, though not yet steady in weight (common practice).")
    say_open(here, batch)


@app.command("strain")
def strain(
    ctx: typer.Context,
    code: Code,
    weight: Annotated[str, typer.Argument(help="What was strained off, e.g. 480 g.")],
    spent: Annotated[str | None, typer.Option("--spent", help="What stayed in the cloth, thrown away.")] = None,
    on: On = None,
) -> None:
    """End an infusion: book the oil strained off as a lot of its own."""
    from ledger.domain.quantity import parse_mass, show_mass
    from ledger.operations.bulk import strain_batch

    here = desk(ctx)
    mass = parse_mass(weight, what="the weight strained off")
    waste = parse_mass(spent, what="the weight of the spent solids") if spent else 0
    lot = strain_batch(here.book(), code, mass_mg=mass, on=here.day(on), by=here.who, spent_mg=waste)
    say(f"{show_mass(mass, here.settings.units)} strained off as lot {lot}. Write the code on the jar.")


@app.command("fill")
def fill(
    ctx: typer.Context,
    code: Code,
    weight: Annotated[str, typer.Argument(help="What came of it, e.g. 980 g.")],
    on: On = None,
) -> None:
    """End a blend of fats or a stock lye: book it, filled off, as a lot of its own."""
    from ledger.domain.quantity import parse_mass, show_mass, show_share
    from ledger.operations.bulk import fill_batch
    from ledger.views.figures import figures_of
    from ledger.views.lots import find_lot
    from ledger.views.material import material_by_id

    here = desk(ctx)
    mass = parse_mass(weight, what="what came of it")
    code_of_lot = fill_batch(here.book(), code, mass_mg=mass, on=here.day(on), by=here.who)
    lot = find_lot(here.rows(), code_of_lot)
    card = material_by_id(here.rows(), lot.material_id)
    strength = round(figures_of(card, lot).alkali(0).purity_ppm) if lot.purity_ppm is not None else None
    what = f", {show_share(strength, 2)} alkali" if strength is not None else ""
    say(f"{show_mass(mass, here.settings.units)} filled off as lot {lot.code}{what}. Write the code on the container.")
    if strength is not None and card.purity_ppm is not None and abs(strength - card.purity_ppm) > 10_000:
        say(
            f"{lot.material} is meant to hold {show_share(card.purity_ppm)}; soap is reckoned with the "
            f"{show_share(strength, 2)} of this lot, so write that on the container too."
        )


app.command("note")(note)
app.command("decide")(decide)


@app.command("discard")
def discard(
    ctx: typer.Context,
    code: Code,
    reason: Annotated[str, typer.Option("--reason", help="Why.")],
    on: On = None,
) -> None:
    """Give up a batch before it is cut; what went in stays booked."""
    from ledger.domain.codes import read_batch_code
    from ledger.operations.readings import discard_batch

    here = desk(ctx)
    discard_batch(here.book(), code, on=here.day(on), by=here.who, reason=reason)
    say(f"Batch {read_batch_code(code)} is discarded: {reason}. What went in stays booked as used.")


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
    as_of: Annotated[
        str | None, typer.Option("--as-of", help="As it was known at an entry's number, or on a day.")
    ] = None,
    worksheet_: Annotated[bool, typer.Option("--worksheet", help="The worksheet in place of the record.")] = False,
    force: Force = False,
    json: Json = False,
) -> None:
    """Show the record of a batch, or print it, e.g. batch show 26-118-0 -o record.pdf."""
    from ledger import __version__
    from ledger.cli.record import say_record
    from ledger.views.batch import find_batch, was_known
    from ledger.views.record import batch_record
    from ledger.views.worksheet import worksheet

    here = desk(ctx)
    size = paper_size(paper)
    rows = here.rows_as_of(as_of) if as_of else here.rows()
    if as_of and not was_known(rows, batch := find_batch(here.rows(), code)):
        raise BadInput(f"Batch {batch.code} was not planned yet then; give a later --as-of.")
    if worksheet_:
        sheet = worksheet(rows, code, program=__version__)
        if json or not output:
            out_json(sheet)
            return
        from ledger.documents.files import write_file
        from ledger.documents.worksheet import draw_worksheet
        from ledger.reference.cautions import cautions

        write_file(output, draw_worksheet(sheet, cautions=cautions(), paper=size), force=force)
        say(f"The worksheet of batch {sheet.batch_code} is {output}.")
        return
    record = batch_record(rows, code, program=__version__, as_known=as_of is not None)
    if output:
        from ledger.documents.batch_record import draw_batch_record
        from ledger.documents.files import write_file

        write_file(output, draw_batch_record(record, paper=size), force=force)
        say(f"The record of batch {record.batch_code} is {output}{' (a draft)' if record.draft else ''}.")
    elif json:
        out_json(record)
    else:
        say_record(record)
