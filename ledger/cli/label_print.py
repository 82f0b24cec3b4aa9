"""soapledger label print and reprint: labels on paper, each sheet a run."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from ledger.cli.desk import Desk, desk
from ledger.cli.show import count, say, say_wrapped
from ledger.errors import BadInput

if TYPE_CHECKING:
    from ledger.documents.layout_file import FileKind
    from ledger.views.label import LabelText

Output = Annotated[Path, typer.Option("-o", help="The PDF file.")]
Start = Annotated[str, typer.Option("--start", help="The first free position of a used sheet.")]
Nudge = Annotated[
    str | None, typer.Option("--nudge", help="For a printer that feeds askew: right and down, e.g. '0.5,-1' mm.")
]
Force = Annotated[bool, typer.Option("--force", help="Overwrite an existing file.")]
MarketOption = Annotated[str | None, typer.Option("--market", help="Where they are sold (else your own market).")]
Sheet = Annotated[str | None, typer.Option("--sheet", help="A sheet that is shipped, or a file of your own.")]


def print_(
    ctx: typer.Context,
    code: Annotated[str, typer.Argument(help="The batch code.")],
    output: Output,
    market: MarketOption = None,
    layout: Annotated[str, typer.Option("--layout", help="A layout that is shipped, or a file of your own.")] = "band",
    sheet: Sheet = None,
    number: Annotated[str | None, typer.Option("--count", help="How many (one for each bar here).")] = None,
    start: Start = "1",
    net: Annotated[str | None, typer.Option("--net", help="Net weight per bar (else the recipe's).")] = None,
    months: Annotated[str | None, typer.Option("--months", help="Best before, months (else the recipe's).")] = None,
    own_weights: Annotated[
        str | None, typer.Option("--own-weights", help="Each bar with its own weight: '98.2 g; 97.5 g; 99.1 g'.")
    ] = None,
    nudge: Nudge = None,
    draft: Annotated[bool, typer.Option("--draft", help="Marked DRAFT and not booked; at any time.")] = False,
    on: Annotated[str | None, typer.Option("--on", help="The day (today).")] = None,
    force: Force = False,
) -> None:
    """Print a sheet of labels, e.g. soapledger label print 26-118-0 --market eu -o labels.pdf."""
    from dataclasses import replace

    from ledger.cli.label import figures
    from ledger.documents.files import fill, written_beside
    from ledger.documents.layout_file import layout_path
    from ledger.domain.quantity import parse_mass, parse_pieces
    from ledger.operations.labels import LabelRequest, print_labels
    from ledger.views.batch import find_batch
    from ledger.views.label import label_text
    from ledger.views.lots import lot_by_id

    here = desk(ctx)
    market = sold_in(here, market)
    mass, months_number = figures(net, months)
    paper = sheet or usual_sheet_of(layout, here.settings.country)
    form, page = _source("label", layout), _source("sheet", paper)
    batch = find_batch(here.rows(), code)
    bars = lot_by_id(here.rows(), batch.yield_lot_id).on_hand if batch.yield_lot_id else 0
    weights = tuple(parse_mass(one, what="the weight") for one in (own_weights or "").split(";") if one.strip())
    many = len(weights) or (parse_pieces(number, what="the number of labels") if number else max(bars, 1))
    first = parse_pieces(start, what="the position")
    shift = read_nudge(nudge)

    def draw(view: "LabelText") -> bytes:
        files = (layout_path(layout, "label").name, layout_path(paper, "sheet").name)
        data = _draw(view, form, page, many, first, shift, weights, files=files)
        fill(beside, data)  # on the disk before the run is booked
        return data

    with written_beside(output, force=force) as beside:
        if draft:
            view = label_text(here.rows(), code, market, on=here.today, net_mg=mass, best_before_months=months_number)
            draw(replace(view, draft=True))
        else:
            request = LabelRequest(
                batch=code,
                market=market,
                layout=layout,
                count=many,
                on=here.day(on),
                net_mg=mass,
                best_before_months=months_number,
                layout_source=form,
                sheet_source=page,
                start=first,
                own_weights_mg=weights,
            )
            print_labels(here.book(), request, draw)
            here.again = here.typed("label runs")
    say(f"{count(many, 'label')} for batch {batch.code} ({market}) {'as a draft ' if draft else ''}in {output}.")
    if not draft:
        from ledger.views.label_check import net_doubts
        from ledger.views.label_runs import runs

        run = runs(here.rows(), batch.yield_lot_id)[-1]
        view = label_text(here.rows(), code, market, on=request.on, net_mg=mass, best_before_months=months_number)
        for words in () if weights else net_doubts(here.rows(), view):
            say_wrapped(words, first="  ! ", indent="    ")
        say(f"Put them on, then count them: soapledger label count {run.number} --spoiled 0 --returned 0")


def reprint(
    ctx: typer.Context,
    run: Annotated[str, typer.Argument(help="The number of the run; see label runs.")],
    output: Output,
    number: Annotated[str, typer.Option("--count", help="How many more.")],
    start: Start = "1",
    nudge: Nudge = None,
    on: Annotated[str | None, typer.Option("--on", help="The day (today).")] = None,
    force: Force = False,
) -> None:
    """Print more labels of an earlier run: the same text, the same layout."""
    from ledger.documents.files import fill, written_beside
    from ledger.domain.quantity import parse_pieces
    from ledger.operations.labels import reprint_labels

    here = desk(ctx)
    many, first = parse_pieces(number, what="the number of labels"), parse_pieces(start, what="the position")
    shift = read_nudge(nudge)
    place = parse_pieces(run, what="the run")

    def draw(view: "LabelText", form: str, page: str) -> bytes:
        data = _draw(view, form, page, many, first, shift)
        fill(beside, data)
        return data

    with written_beside(output, force=force) as beside:
        reprint_labels(here.book(), place, many, on=here.day(on), start=first, draw=draw)
        here.again = here.typed("label runs")
    say(f"{count(many, 'label')} more of run {place} in {output}.")


def sold_in(here: Desk, market: str | None) -> str:
    """The market as typed, else the code of her own; every answer names it. Raises BadInput for several."""
    from ledger.markets import own_market

    return own_market(here.settings.addresses, here.settings.country).code if market is None else market


def usual_sheet_of(layout: str, country: str) -> str:
    """The sheet a shipped layout goes on, by the paper of the country."""
    from ledger.documents.layout import usual_sheet
    from ledger.markets import paper_in

    return usual_sheet(layout, paper=paper_in(country))


def _source(kind: "FileKind", name: str) -> str:
    """The text of a layout or sheet as its file stands, once it has been read whole. Raises BadInput."""
    from ledger.documents.layout import label_layout, sheet_layout
    from ledger.documents.layout_file import layout_path

    (label_layout if kind == "label" else sheet_layout)(name)
    return layout_path(name, kind).read_text(encoding="utf-8")


def _draw(
    view: "LabelText",
    form: str,
    page: str,
    many: int,
    first: int,
    shift: tuple[float, float],
    weights: tuple[int, ...] = (),
    *,
    files: tuple[str, str] = ("label of the run.toml", "sheet of the run.toml"),
) -> bytes:
    """Draw from the texts of a layout and a sheet, which may be those of an earlier run."""
    import tempfile
    from dataclasses import replace

    from ledger.documents.labels import draw_labels
    from ledger.documents.layout import label_layout, sheet_layout
    from ledger.domain.net_quantity import metric, own_weights
    from ledger.markets import known_market

    with tempfile.TemporaryDirectory() as folder:
        for name, text in zip(files, (form, page), strict=True):
            (Path(folder) / name).write_text(text, encoding="utf-8")
        label, sheet = label_layout(f"{folder}/{files[0]}"), sheet_layout(f"{folder}/{files[1]}")
        law = known_market(view.market)
        said = own_weights(weights, law.net_words if law else metric)
        each = tuple(replace(view, net_quantity=one) for one in said)
        return draw_labels(view, label, sheet, count=many, start=first, nudge_mm=shift, each=each)


def read_nudge(text: str | None) -> tuple[float, float]:
    """How far to shift the print, in mm to the right and down. Raises BadInput."""
    if text is None:
        return 0.0, 0.0
    parts = text.removesuffix("mm").split(",")
    try:
        right, down = (float(part) for part in parts)
    except ValueError:
        raise BadInput(f"'{text}' is not a nudge; write how far right and down, such as --nudge '0.5,-1'.") from None
    if max(abs(right), abs(down)) > 5:
        raise BadInput("A nudge is at most 5 mm each way; a printer further off needs new paper.")
    return right, down
