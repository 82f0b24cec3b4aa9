"""soapledger label: what is printed on the bars, in its order: check, approve, print, count."""

from typing import TYPE_CHECKING, Annotated

import typer

from ledger.cli.desk import desk
from ledger.cli.label_cards import rack, ticket, try_sheet
from ledger.cli.label_print import MarketOption, print_, reprint, sold_in
from ledger.cli.show import count, out_json, say, say_wrapped, table
from ledger.errors import BadInput

if TYPE_CHECKING:
    from datetime import date
    from fractions import Fraction

    from ledger.cli.desk import Desk

app = typer.Typer(help="Labels: check, approve, print, reprint, runs, count, due, ticket, rack, try-sheet.")

Code = Annotated[str, typer.Argument(help="The batch code.")]
Net = Annotated[str | None, typer.Option("--net", help="Net weight per bar (else the recipe's), e.g. 100 g.")]
Months = Annotated[
    str | None, typer.Option("--months", help="Best before, months from the making (else the recipe's).")
]
On = Annotated[str | None, typer.Option("--on", help="The day they are first supplied (today).")]
Json = Annotated[bool, typer.Option("--json", help="Answer as JSON.")]

app.command("print")(print_)
app.command("reprint")(reprint)
app.command("try-sheet")(try_sheet)
app.command("ticket")(ticket)
app.command("rack")(rack)


def figures(net: str | None, months: str | None) -> tuple[int | None, int | None]:
    """The net weight in mg and the months, as typed. Raises BadInput."""
    from ledger.domain.quantity import parse_mass, parse_pieces

    mass = parse_mass(net, what="the net weight") if net else None
    number = parse_pieces(months, what="the months") if months else None
    if number == 0:
        raise BadInput("Best before lies at least one month after the making.")
    return mass, number


@app.command("check")
def check(
    ctx: typer.Context,
    code: Code,
    market: MarketOption = None,
    on: On = None,
    net: Net = None,
    months: Months = None,
    panel: Annotated[
        str | None, typer.Option("--panel", help="The front of the pack, for the US: '2 x 3 in', 'cylinder 3 x 8 in'.")
    ] = None,
    json: Json = False,
) -> None:
    """Check what a label says, particular by particular, against the rules of a market on a day."""
    from ledger.cli.label_check import say_check
    from ledger.views.label_check import label_check

    here = desk(ctx)
    market = sold_in(here, market)
    mass, number = figures(net, months)
    day = _supply_day(here, on)
    area = panel_area(panel) if panel else None
    found = label_check(here.rows(), code, market, on=day, net_mg=mass, best_before_months=number, panel_cm2=area)
    if json:
        out_json(found)
        return
    say_check(found, here.settings.units)


def panel_area(text: str) -> "Fraction":
    """The area of the principal display panel in cm2: height x width, or cylinder height x circumference."""
    from ledger.domain.panel import panel_area_cm2
    from ledger.domain.quantity import parse_length

    plain = text.removeprefix("cylinder ")
    sizes = [one.strip() for one in plain.replace("×", "x").split("x")]
    if len(sizes) != 2 or not sizes[1][-1:].isalpha():
        raise BadInput(f"'{text}' is not a panel; write its height and width, '2 x 3 in', or 'cylinder 3 x 8 in'.")
    unit = "".join(sign for sign in sizes[1] if sign.isalpha())
    high, across = (parse_length(one if one[-1:].isalpha() else f"{one} {unit}", what="the panel") for one in sizes)
    if text.startswith("cylinder"):
        return panel_area_cm2("cylinder", height_um=high, across_um=across)
    return panel_area_cm2("rectangle", height_um=high, across_um=across)


def _supply_day(here: "Desk", on: str | None) -> "date":
    """The day bars are first supplied: a day to come is meant too, for what will change."""
    from ledger.domain.dates import parse_date

    return parse_date(on, today=here.today, what="the day") if on else here.today


@app.command("approve")
def approve(
    ctx: typer.Context, code: Code, market: MarketOption = None, net: Net = None, months: Months = None, on: On = None
) -> None:
    """Approve, by name, what the label of a batch says for a market: soapledger --as NAME label approve CODE."""
    from ledger.operations.labels import LabelRequest, approve_label
    from ledger.views.label import label_text
    from ledger.views.label_check import net_doubts

    here = desk(ctx)
    market = sold_in(here, market)
    mass, number = figures(net, months)
    request = LabelRequest(code, market, "", 0, here.day(on), mass, number)
    text = approve_label(here.book(), request, by=here.who)
    say("Approved, word for word:")
    for line in text.splitlines():
        if line:
            say_wrapped(line, first="  ", indent="  ")
    view = label_text(here.rows(), code, market, on=request.on, net_mg=mass, best_before_months=number)
    for one in view.allergens.no_statement if view.allergens else ():
        say_wrapped(
            f"Nobody stated what {one} holds, so its allergens are not on the label.", first="  ! ", indent="    "
        )
    for words in net_doubts(here.rows(), view):
        say_wrapped(words, first="  ! ", indent="    ")
    for one in view.allergens.unknown if view.allergens else ():
        say_wrapped(f"Not known here, so not looked up in any list: {one}.", first="  ! ", indent="    ")
    say(f"Next: soapledger label print {code} --market {market} -o labels.pdf")


@app.command("runs")
def runs_(
    ctx: typer.Context,
    code: Annotated[str | None, typer.Argument(help="The batch code (else all).")] = None,
    json: Json = False,
) -> None:
    """List the print runs, and what became of their labels."""
    from ledger.domain.dates import show_date
    from ledger.views.batch import find_batch
    from ledger.views.label_runs import runs

    here = desk(ctx)
    lot = find_batch(here.rows(), code).yield_lot_id if code else None
    found = runs(here.rows(), lot) if not code or lot else ()
    if json:
        out_json(found)
        return
    if not found:
        say("No labels were printed yet. Print some: soapledger label print CODE -o labels.pdf")
        return
    open_ = sum(one.counted is None for one in found)
    say(f"{count(len(found), 'run')}, {open_} still to be counted.")
    table(
        ("run", "batch", "market", "layout", "on", "issued", "used", "spoiled", "returned", "by"),
        [
            (
                str(one.number),
                one.batch_code,
                one.market,
                one.layout,
                show_date(one.on),
                str(one.count),
                *(("–",) * 3 if one.counted is None else (str(one.used), str(one.spoiled), str(one.returned))),
                one.by,
            )
            for one in found
        ],
        right=(0, 5, 6, 7, 8),
    )


@app.command("count")
def count_(
    ctx: typer.Context,
    run: Annotated[str, typer.Argument(help="The number of the run; see label runs.")],
    spoiled: Annotated[str, typer.Option("--spoiled", help="How many were spoiled.")] = "0",
    returned: Annotated[str, typer.Option("--returned", help="How many came back unused.")] = "0",
    on: Annotated[str | None, typer.Option("--on", help="The day (today).")] = None,
) -> None:
    """Book back the labels spoiled and unused; the rest of the run is on the bars."""
    from ledger.domain.quantity import parse_pieces
    from ledger.operations.labels import count_labels

    here = desk(ctx)
    done = count_labels(
        here.book(),
        parse_pieces(run, what="the run"),
        spoiled=parse_pieces(spoiled, what="the number spoiled"),
        returned=parse_pieces(returned, what="the number returned"),
        on=here.day(on),
    )
    say(
        f"Run {done.number}: {done.count} issued = {done.used} used + {done.spoiled} spoiled + "
        f"{done.returned} returned."
    )
    say(f"Next, once every run is counted: soapledger release {done.batch_code}")


@app.command("due")
def due(
    ctx: typer.Context,
    by: Annotated[str | None, typer.Option("--by", help="Up to which day (a year from today).")] = None,
    json: Json = False,
) -> None:
    """List stock whose printed label stops being usable at a coming date: bars, where they are, and why."""
    from datetime import timedelta

    from ledger.domain.dates import parse_date, show_date
    from ledger.views.label_due import labels_due

    here = desk(ctx)
    until = parse_date(by, today=here.today, what="the day") if by else here.today + timedelta(days=365)
    found = labels_due(here.rows(), today=here.today, by=until)
    if json:
        out_json(found)
        return
    if not found:
        say(f"No printed label stops being usable up to {show_date(until)}, as far as the rules here go.")
        return
    say(f"{count(len(found), 'batch', 'batches')} with labels that stop being usable up to {show_date(until)}:")
    table(
        ("batch", "market", "bars", "where", "until", "why"),
        [(one.batch_code, one.market, str(one.bars), one.where, show_date(one.until), one.why) for one in found],
        right=(2,),
    )
