"""soapledger stall pack."""

from collections.abc import Iterator
from functools import partial
from pathlib import Path
from typing import Annotated

import typer

from ledger import __version__
from ledger.cli.kit.answer import Listed, Paper, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.loading import loaded
from ledger.cli.kit.options import Force, Json
from ledger.cli.kit.paper import PAPER, paper_size
from ledger.cli.kit.show import count
from ledger.cli.sell.stalls import Name
from ledger.units.dates import parse_date, show_date
from ledger.views.sell.pack import PackList, pack_list


def command(
    ctx: typer.Context,
    name: Name,
    on: Annotated[str | None, typer.Option("--on", help="The day of the stall, also one to come (today).")] = None,
    output: Annotated[Path | None, typer.Option("-o", help="Print it to tick, as a PDF file.")] = None,
    paper: PAPER = "a4",
    force: Force = False,
    json: Json = False,
) -> None:
    """List what to pack for a stall, to print and tick: what sold there, what is ready, what is promised."""
    here = desk(ctx)
    day = parse_date(on, today=here.today, what="the day") if on else here.today
    size = paper_size(paper)
    found = pack_list(here.rows(), name, on=day, program=__version__)
    words = Listed(
        f"{found.stall} on {show_date(found.on)}: take {count(sum(one.take for one in found.products), 'bar')}.",
        ("product", "sold there", "ready", "promised", "take", "of batch"),
        _rows(found),
        right=(1, 2, 3, 4),
        then=f"Print it to tick: {here.typed(f'stall pack {found.code}', Path('pack.pdf'))}",
    )
    draw = partial(_draw, found, size)
    said = f"{count(len(found.products), 'product')} in {output}."
    answer(found, json, words, paper=Paper(said, draw, output, force))


def _draw(found: PackList, size: str) -> bytes:
    drawn: bytes = loaded("documents.sell.pack_list").draw_pack_list(found, paper=size)
    return drawn


def _rows(found: PackList) -> Iterator[tuple[str, ...]]:
    for one in found.products:
        taken = [f"{batch.code} {batch.take}" for batch in one.batches if batch.take]
        sold = " ".join(map(str, one.sold))
        yield one.product, sold, str(one.ready), str(one.promised or ""), str(one.take or ""), ", ".join(taken)
