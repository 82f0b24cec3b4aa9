"""Drawing a run of labels on its sheets."""

import re
import tempfile
from dataclasses import replace
from pathlib import Path
from typing import Annotated

import typer

from ledger.documents.kit.layout import label_layout, sheet_layout
from ledger.documents.label.choosing import usual_sheet
from ledger.documents.label.labels import draw_labels
from ledger.domain.label.net_quantity import Net, metric, own_weights
from ledger.errors import BadInput
from ledger.markets import known_market, paper_in
from ledger.views.label.label import LabelText

Output = Annotated[Path, typer.Option("-o", help="The PDF file.")]
Start = Annotated[str, typer.Option("--start", help="The first free position of a used sheet.")]
Nudge = Annotated[
    str | None, typer.Option("--nudge", help="For a printer that feeds askew: right and down, e.g. '0.5,-1' mm.")
]
Black = Annotated[bool, typer.Option("--black", help="For brown board: black alone, heavy rules.")]
Sheet = Annotated[str | None, typer.Option("--sheet", help="A sheet that is shipped, or a file of your own.")]


def usual_sheet_of(layout: str, country: str) -> str:
    """The sheet a shipped layout goes on, by the paper of the country."""
    return usual_sheet(layout, paper=paper_in(country))


def in_black(form: str) -> str:
    """The text of a layout for black ink alone."""
    return 'ink = "black"\n' + re.sub(r"(?m)^ink *=.*$", "# in black", form)


def draw_run(
    view: LabelText,
    form: str,
    page: str,
    many: int,
    first: int,
    shift: tuple[float, float],
    weights: tuple[Net, ...] = (),
    *,
    business: str,
    files: tuple[str, str] = ("label of the run.toml", "sheet of the run.toml"),
) -> bytes:
    """Draw from the texts of a layout and a sheet, which may be those of an earlier run."""
    with tempfile.TemporaryDirectory() as folder:
        for name, text in zip(files, (form, page), strict=True):
            (Path(folder) / name).write_text(text, encoding="utf-8")
        label, sheet = label_layout(f"{folder}/{files[0]}"), sheet_layout(f"{folder}/{files[1]}")
        law = known_market(view.market)
        said = own_weights(weights, law.net_words if law else metric)
        each = tuple(replace(view, net_quantity=one) for one in said)
        return draw_labels(view, label, sheet, count=many, start=first, nudge_mm=shift, each=each, business=business)


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
