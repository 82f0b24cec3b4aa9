"""soapledger label: what is printed on the bars."""

from dataclasses import replace
from pathlib import Path
from typing import Annotated

import typer

from ledger.cli.desk import desk
from ledger.cli.show import count, out_json, say
from ledger.errors import BadInput

app = typer.Typer(help="Labels: text (what would be printed), print (a sheet of them).")

Code = Annotated[str, typer.Argument(help="The batch code.")]
MarketOption = Annotated[str, typer.Option("--market", help="Where they are sold: eu, gb, us or ca.")]
Net = Annotated[str | None, typer.Option("--net", help="Net weight per bar (else the recipe's), e.g. 100 g.")]
Months = Annotated[
    str | None, typer.Option("--months", help="Best before, months from the making (else the recipe's).")
]


def _figures(net: str | None, months: str | None) -> tuple[int | None, int | None]:
    from ledger.domain.quantity import parse_mass, parse_pieces

    mass = parse_mass(net, what="the net weight") if net else None
    number = parse_pieces(months, what="the months") if months else None
    if number is not None and not 1 <= number <= 30:
        raise BadInput(
            "Best before lies 1 to 30 months after the making; above that a period after opening is printed."
        )
    return mass, number


@app.command("text")
def text(
    ctx: typer.Context,
    code: Code,
    market: MarketOption = "eu",
    net: Net = None,
    months: Months = None,
    json: Annotated[bool, typer.Option("--json", help="Answer as JSON.")] = False,
) -> None:
    """Show what a label of a batch would say, from the lots that really went in."""
    from ledger.domain.dates import show_date
    from ledger.domain.quantity import show_mass, show_share
    from ledger.views.label import label_text

    here = desk(ctx)
    mass, number = _figures(net, months)
    view = label_text(here.rows(), code, market, net_mg=mass, best_before_months=number)
    if json:
        out_json(view)
        return
    say(f"Batch {view.batch_code} for {market.upper()}, as of {show_date(here.today)}; its bars are {view.status}.")
    for label, value in (
        ("name", view.product),
        ("what it is", view.function),
        ("net quantity", f"{view.net_quantity}, figures at least {view.figure_height_mm:g} mm high"),
        ("best before", view.best_before or "not given"),
        ("responsible", f"{view.responsible_name}, {view.responsible_address}"),
        ("batch code", view.batch_code),
    ):
        say(f"  {label:13} {value}")
    say(f"  {view.ingredients_heading}, by weight as added:")
    for one in view.declared:
        mass_shown = show_mass(one.mass_mg, here.settings.units)
        say(f"    {one.inci}: {mass_shown}, {show_share(one.share_ppm, 2)}, from {', '.join(one.lots)}")
    say("Checked against:")
    for rule in view.rules:
        say(f"  {rule.particular}: {rule.says} [{rule.source}; {rule.status}]")
    say("What remains for you or a licensed assessor:")
    for one_left in view.remains:
        say(f"  {one_left}")


@app.command("print")
def print_(
    ctx: typer.Context,
    code: Code,
    output: Annotated[Path, typer.Option("-o", help="The PDF file.")],
    market: MarketOption = "eu",
    layout: Annotated[str, typer.Option("--layout", help="band, small, or a file of your own.")] = "band",
    sheet: Annotated[
        str | None, typer.Option("--sheet", help="a4-24, a4-6, letter-21, letter-5, or a file of your own.")
    ] = None,
    number: Annotated[str | None, typer.Option("--count", help="How many (one for each bar here).")] = None,
    start: Annotated[str, typer.Option("--start", help="The first free position of a used sheet.")] = "1",
    net: Net = None,
    months: Months = None,
    draft: Annotated[bool, typer.Option("--draft", help="Marked DRAFT and not booked; at any time.")] = False,
    on: Annotated[str | None, typer.Option("--on", help="The day (today).")] = None,
    force: Annotated[bool, typer.Option("--force", help="Overwrite an existing file.")] = False,
) -> None:
    """Print a sheet of labels, e.g. soapledger label print 26-118-0 --market eu -o labels.pdf."""
    from ledger.documents.files import check_free, write_file
    from ledger.documents.labels import draw_labels
    from ledger.documents.layout import label_layout, sheet_layout
    from ledger.domain.quantity import parse_pieces
    from ledger.operations.labels import LabelRequest, print_labels
    from ledger.views.batch import find_batch
    from ledger.views.label import LabelText, label_text
    from ledger.views.lots import lot_by_id

    here = desk(ctx)
    mass, months_number = _figures(net, months)
    form = label_layout(layout)
    letter = here.settings.country in ("US", "CA")
    fallback = {True: ("letter-21", "letter-5"), False: ("a4-24", "a4-6")}[letter][layout == "band"]
    page = sheet_layout(sheet or fallback)
    batch = find_batch(here.rows(), code)
    check_free(output, force)
    bars = lot_by_id(here.rows(), batch.yield_lot_id).on_hand if batch.yield_lot_id else 0
    many = parse_pieces(number, what="the number of labels") if number else max(bars, 1)
    first = parse_pieces(start, what="the position")

    def draw(view: LabelText) -> bytes:
        return draw_labels(view, form, page, count=many, start=first)

    if draft:
        view = label_text(here.rows(), code, market, net_mg=mass, best_before_months=months_number)
        data = draw(replace(view, draft=True))
    else:
        request = LabelRequest(
            batch=code,
            market=market,
            layout=form.name,
            count=many,
            on=here.day(on),
            net_mg=mass,
            best_before_months=months_number,
        )
        data = print_labels(here.book(), request, draw)
    write_file(output, data, force=True)
    say(
        f"{count(many, 'label')} for batch {batch.code} ({market.upper()}) {'as a draft ' if draft else ''}in {output}."
    )
    if not draft:
        say(f"Look at them, put them on, then: soapledger release {batch.code}")
        say(f"What a label does not settle by itself: soapledger label text {batch.code} --market {market}")
