"""soapledger label print."""

from dataclasses import replace
from datetime import date
from typing import Annotated

import typer

from ledger.cli.kit.answer import paper_of_entry
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Batch, Force, On
from ledger.cli.kit.show import count, say, say_marked, say_wrapped
from ledger.cli.label.figures import (
    Language,
    Layout,
    MarketOption,
    Pack,
    figures,
    front_of,
    say_front,
    say_words,
    sold_in,
    words_of,
)
from ledger.cli.label.sheets import Black, Nudge, Output, Sheet, Start, draw_run, in_black, read_nudge, usual_sheet_of
from ledger.documents.kit.files import check_free, write_file
from ledger.documents.kit.layout import label_layout, sheet_layout
from ledger.documents.kit.layout_file import FileKind, layout_path
from ledger.documents.label.doubts import check_placed, look_doubts
from ledger.domain.label.net_quantity import read_net
from ledger.operations.label.labels import LabelRequest, approved_label, print_labels
from ledger.rows.batch import BatchRow, find_batch
from ledger.rows.lot import on_hand_at, place_of_kind
from ledger.rows.opened import Rows
from ledger.units.money import parse_money
from ledger.units.prices import show_price
from ledger.units.quantity import parse_pieces
from ledger.units.toml_reader import toml_text
from ledger.views.label.label import LabelText, label_text
from ledger.views.label.net import net_doubts


def command(
    ctx: typer.Context,
    code: Batch,
    output: Output,
    market: MarketOption = None,
    layout: Layout = "band",
    pack: Pack = None,
    language: Language = None,
    sheet: Sheet = None,
    number: Annotated[
        str | None, typer.Option("--count", help="How many (one for each bar here, and the specimen).")
    ] = None,
    start: Start = "1",
    net: Annotated[str | None, typer.Option("--net", help="Net weight per bar (else the recipe's).")] = None,
    months: Annotated[str | None, typer.Option("--months", help="Best before, months (else the recipe's).")] = None,
    own_weights: Annotated[
        str | None, typer.Option("--own-weights", help="Each bar with its own weight: '98.2 g; 97.5 g; 99.1 g'.")
    ] = None,
    nudge: Nudge = None,
    black: Black = False,
    price: Annotated[str | None, typer.Option("--price", help="For a layout with a place for it.")] = None,
    draft: Annotated[bool, typer.Option("--draft", help="Marked DRAFT and not booked; at any time.")] = False,
    on: On = None,
    force: Force = False,
) -> None:
    """Print a sheet of labels, e.g. soapledger label print 26-118-0 --market eu -o labels.pdf."""
    here = desk(ctx)
    market = sold_in(here, market)
    mass, months_number = figures(net, months)
    paper = sheet or usual_sheet_of(layout, here.settings.country)
    form, page = _source("label", layout), _source("sheet", paper)
    front, words = front_of(pack, layout, market), words_of(here, market, language)
    form = in_black(form) if black else form
    own = here.settings
    amount = parse_money(price, own.currency, what="the price") if price else None
    priced = show_price(amount, own.currency, own.country) if amount is not None else None
    batch = find_batch(here.rows(), code)
    bars = _bars_here(here.rows(), batch)
    weights = tuple(read_net(one, what="the weight") for one in (own_weights or "").split(";") if one.strip())
    purpose = label_layout(layout).purpose
    usual = 1 if purpose == "notice" else bars + 1
    many = len(weights) or (parse_pieces(number, what="the number of labels") if number else usual)
    first = parse_pieces(start, what="the position")
    shift = read_nudge(nudge)

    def drawn(view: LabelText) -> bytes:
        check_placed(view, label_layout(layout))
        files = (layout_path(layout, "label").name, layout_path(paper, "sheet").name)
        return draw_run(view, form, page, many, first, shift, weights, business=here.settings.business, files=files)

    def shown(day: date) -> LabelText:
        rows, kept = here.rows(), months_number
        return label_text(rows, code, market, on=day, net=mass, best_before_months=kept, front=front, words=words)

    request = LabelRequest(
        batch=code,
        market=market,
        layout=layout,
        count=many,
        on=here.day(on),
        net=mass,
        front=front,
        words=words,
        best_before_months=months_number,
        layout_source=form,
        sheet_source=page,
        start=first,
        price=priced,
        own_weights=weights,
        sticker=purpose == "sticker",
    )
    if draft:
        check_free(output, force)
        write_file(output, drawn(replace(shown(here.today), draft=True, price=priced)), force=force)
        say(f"{count(many, 'label')} for batch {batch.code} ({market}) as a draft in {output}.")
        say_words(words)
        say_front(market, layout, pack, front)
        return
    if purpose == "notice":
        check_free(output, force)
        write_file(output, drawn(approved_label(here.rows(), request)[0]), force=force)
        say(f"{count(many, 'notice')} for batch {batch.code} ({market}) in {output}.")
        say_wrapped(
            "A notice is on no bar, so no label is counted for it. Where it stands beside bars without one, that is "
            f"settled once: soapledger label bare {batch.recipe_code} --stall STALL --notice {layout}"
        )
        return
    with paper_of_entry(here, output, force=force) as put:
        run = print_labels(here.book(), request, lambda view: put(drawn(view)))
        here.again = here.typed(f"label reprint {run}", output)
    here.again = here.typed("label runs")
    say(f"{count(many, 'label')} for batch {batch.code} ({market}) in {output}.")
    printed = shown(request.on)
    looks = replace(label_layout(layout), ink="black") if black else label_layout(layout)
    for doubt in look_doubts(printed, looks) if looks.purpose == "bar" else ():
        say_marked(doubt)
    for doubt in () if weights else net_doubts(here.rows(), printed):
        say_marked(doubt)
    say_words(words)
    say_front(market, layout, pack, front)
    say_wrapped(f"Keep one with the record, put the others on, then count them: soapledger label count {run}")


def _bars_here(rows: Rows, batch: BatchRow) -> int:
    """How many bars stand in the workshop; retained samples and what is at a stall want no label."""
    return on_hand_at(rows, batch.yield_lot_id, place_of_kind(rows, "workshop").id) if batch.yield_lot_id else 0


def _source(kind: FileKind, name: str) -> str:
    """The text of a layout or sheet as its file stands, once it has been read whole. Raises BadInput."""
    (label_layout if kind == "label" else sheet_layout)(name)
    return toml_text(layout_path(name, kind))
