"""soapledger label block."""

from dataclasses import replace
from pathlib import Path
from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Batch, Force, On
from ledger.cli.kit.show import say_wrapped
from ledger.cli.label.figures import Language, MarketOption, Months, Net, Pack, figures, front_of, sold_in, words_of
from ledger.documents.kit.files import check_free, write_file
from ledger.documents.label.block import block_pdf, block_svg, set_block
from ledger.errors import BadInput
from ledger.markets import market as law_of
from ledger.operations.label.labels import LabelRequest, approved_label
from ledger.units.dates import show_date
from ledger.units.quantity import parse_length
from ledger.views.label.label import digest_of, label_text, run_text

_DRAWN = {".svg": block_svg, ".pdf": block_pdf}


def command(
    ctx: typer.Context,
    code: Batch,
    output: Annotated[Path, typer.Option("-o", help="The file: .svg or .pdf.")],
    market: MarketOption = None,
    width: Annotated[str, typer.Option("--width", help="How wide the block is.")] = "60 mm",
    net: Net = None,
    months: Months = None,
    pack: Pack = None,
    language: Language = None,
    bands: Annotated[
        bool, typer.Option("--bands", help="For a printer of bands: without weight, date and batch code.")
    ] = False,
    draft: Annotated[bool, typer.Option("--draft", help="Marked DRAFT; before it is approved.")] = False,
    on: On = None,
    force: Force = False,
) -> None:
    """Write the law's text of an approved label as outlines, at true size, to set into artwork of your own."""
    here = desk(ctx)
    draw = _DRAWN.get(output.suffix.lower())
    if draw is None:
        raise BadInput(f"{output} is neither .svg nor .pdf; name the block so: -o block.svg")
    check_free(output, force)
    law = law_of(sold_in(here, market))
    mass, number = figures(net, months)
    wide = parse_length(width, what="the width") / 1000
    if not 20 <= wide <= 300:
        raise BadInput(f"A block of {wide:g} mm cannot be set; write --width from 20 mm to 300 mm.")
    if law.heights_by == "panel" and not pack and not bands:
        raise BadInput("How high the weight stands goes by the side of the pack; add --pack '2 x 3 in'.")
    front = front_of(pack, "band", law.code) if pack else None
    words, day = words_of(here, law.code, language), here.day(on)
    if draft:
        view = label_text(
            here.rows(), code, law.code, on=day, net=mass, best_before_months=number, front=front, words=words
        )
        view, says = replace(view, draft=True), "DRAFT, not for sale: nobody approved it"
    else:
        request = LabelRequest(code, law.code, "", 0, day, mass, number, front=front, words=words)
        view, (by, then) = approved_label(here.rows(), request)
        says = f"Text {digest_of(run_text(view))}, approved by {by} on {show_date(then)} for {law.code}"
    block = set_block(view, width_mm=wide, says=says, business=here.settings.business, bands=bands)
    write_file(output, draw(block), force=force)
    high = block.high * 25.4 / 72
    say_wrapped(
        f"The text of batch {view.batch_code} for {law.code} is {output}, {wide:g} × {high:.1f} mm; do not scale it."
    )
    say_wrapped(f"{says}.")
    if view.hourglass and view.best_before and not bands:
        say_wrapped(f"Set the hourglass before {view.best_before}; the block holds words alone.")
    if not bands and (low := view.lettering.lowest):
        say_wrapped(
            f"In {law.name} the net quantity stands in the lowest {100 * low:g} % of the front, level with its foot, "
            "and keeps a letter's height above and below and two widths of N at its sides free: set it apart for that."
        )
    if view.after_opening_months and not bands:
        say_wrapped(f"Set the open jar with {view.after_opening_months}M beside it; the block holds words alone.")
