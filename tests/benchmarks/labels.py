"""How long 24 labels take, without and with a picture, side by side with bare reportlab in one run.

    python tests/benchmarks/labels.py [ROUNDS]

Bare reportlab draws the same strings in the same type at the same places, and the same shapes of the picture, and fits
and reads nothing. Every round draws each once, in turn, so that a slower minute of the machine touches both alike;
medians are printed, and the ratio the goal is stated in. Nothing that a command would have to work out anew is kept
between rounds: neither widths nor the shapes of the picture.
"""

import hashlib
import io
import statistics
import sys
import time
from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import date
from functools import partial
from math import ceil
from typing import Any, NamedTuple

from reportlab.lib.colors import HexColor
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from ledger.documents.kit import lines as lines_module
from ledger.documents.kit.layout import LabelLayout, SheetLayout, label_layout, sheet_layout
from ledger.documents.label.labels import draw_labels, set_label
from ledger.documents.label.picture import read_picture
from ledger.documents.label.svg import Drawing
from ledger.views.label.label import LabelText
from ledger.views.label.picture import LabelPicture

GOAL = 1.5
COUNT = 24
VIEW = LabelText(
    market="eu",
    product="Calendula & Lavender",
    function="Soap",
    net_quantity="100 g",
    net_mg=100_000,
    figure_height_mm=3,
    ingredients_heading="Ingredients",
    ingredients="OLEA EUROPAEA FRUIT OIL, COCOS NUCIFERA OIL, AQUA, SODIUM HYDROXIDE, BUTYROSPERMUM PARKII BUTTER, "
    "LAVANDULA ANGUSTIFOLIA OIL, CALENDULA OFFICINALIS FLOWER",
    batch_code="26-118-0",
    best_before="Best used before the end of April 2028",
    after_opening_months=None,
    origin=None,
    code_text="26-118-0",
    responsible_name="Nuala Quill",
    responsible_address="Tidewrack Soaps, 3 Slip Lane, Port Emmer",
    precautions=(),
    made_on=date(2026, 4, 1),
    status="passed for packing",
    draft=False,
    policy="as added",
    allergens=None,
    declared=(),
    rules=(),
    remains=(),
)
LEAF = "M 50 95 C 20 75 15 35 50 5 C 85 35 80 75 50 95 Z"
CONTENT = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100">'
    + "".join(
        f'<path d="{LEAF}" fill="#5b6f4e" transform="rotate({turn} 50 50) scale(0.9)"/>' for turn in range(0, 360, 9)
    )
    + "</svg>"
).encode()
PICTURE = LabelPicture("leaves.svg", hashlib.sha256(CONTENT).hexdigest(), CONTENT)
Line = tuple[str, str, float, float, float]  # text, face, size, x, y
Shown = tuple[float, float, float, float]  # of the picture: left, foot, width, height


class Job(NamedTuple):
    """What is drawn: labels of a layout on a sheet."""

    name: str
    view: LabelText
    layout: LabelLayout
    sheet: SheetLayout


JOBS = (
    Job("without a picture, a4-24", VIEW, label_layout("small"), sheet_layout("a4-24")),
    Job("with a picture, a4-8", replace(VIEW, picture=PICTURE), label_layout("box"), sheet_layout("a4-8")),
)


def pages(job: Job) -> list[tuple[list[Line], list[Shown]]]:
    """Every string and picture of every page with its place in points from the page's left and foot."""
    sheet, high = job.sheet, job.sheet.page_mm()[1]
    layout, filled = set_label(job.view, job.layout)
    found: list[tuple[list[Line], list[Shown]]] = [([], []) for _ in range(ceil(COUNT / sheet.places))]
    for index in range(COUNT):
        strings, pictures = found[index // sheet.places]
        left, top = sheet.corner_mm(index % sheet.places, layout.width_mm, layout.height_mm)
        for panel, print_ in zip(layout.panels, filled, strict=True):
            x, y = (left + panel.x_mm) * mm, (high - top - panel.y_mm) * mm
            strings += [(line.text, line.face, line.size, x + line.x, y - line.base) for line in print_.lines]
            if "picture" in panel.placed and job.view.picture:
                wide, tall = panel.width_mm * mm, panel.height_mm * mm
                pictures.append((x, y - tall, wide, tall))
    return found


def bare(found: list[tuple[list[Line], list[Shown]]], shapes: Sequence[Any]) -> bytes:
    """The same strings and shapes, drawn one by one."""
    out = io.BytesIO()
    canvas = Canvas(out, pagesize=(210 * mm, 297 * mm), invariant=1)
    for strings, pictures in found:
        for text, face, size, x, y in strings:
            canvas.setFont(face, size)
            canvas.drawString(x, y, text)
        for left, foot, wide, tall in pictures:
            side = min(wide, tall)
            canvas.saveState()
            canvas.transform(side / 100, 0, 0, -side / 100, left + (wide - side) / 2, foot + side)
            canvas.setFillColor(HexColor("#5b6f4e"))
            for shape in shapes:
                path = canvas.beginPath()
                for kind, points in shape.steps:
                    if kind == "Z":
                        path.close()
                    else:
                        draw = {"M": path.moveTo, "L": path.lineTo, "C": path.curveTo}[kind]
                        draw(*(n for point in points for n in point))
                canvas.drawPath(path, stroke=0, fill=1)
            canvas.restoreState()
        canvas.showPage()
    canvas.save()
    return out.getvalue()


def ours(job: Job) -> bytes:
    """The sheets as a command draws them: nothing measured or read before."""
    lines_module.units.cache_clear()
    lines_module.reach.cache_clear()
    read_picture.cache_clear()
    return draw_labels(job.view, job.layout, job.sheet, count=COUNT)


def timed(draw: Callable[[], bytes]) -> float:
    """Wall seconds of one drawing."""
    start = time.perf_counter()
    draw()
    return time.perf_counter() - start


def main(rounds: int) -> None:
    """Time both in turn and print the medians."""
    for job in JOBS:
        found = pages(job)
        shown = read_picture(PICTURE) if job.view.picture else None
        shapes = shown.shapes if isinstance(shown, Drawing) else ()
        both: dict[str, Callable[[], bytes]] = {
            "bare reportlab": partial(bare, found, shapes),
            "soapledger": partial(ours, job),
        }
        timings: dict[str, list[float]] = {name: [] for name in both}
        for turn in range(rounds + 1):
            for name, draw in both.items():
                seconds = timed(draw)
                if turn:  # the first round only warms up
                    timings[name].append(seconds)
        medians = {name: statistics.median(each) for name, each in timings.items()}
        strings = sum(len(page) for page, _ in found)
        print(f"{COUNT} labels {job.name}: {strings} strings, {rounds} rounds, medians")
        for name, seconds in medians.items():
            print(f"{name:16} {seconds * 1000:8.1f} ms   {len(both[name]()):7} bytes")
        print(f"{'ratio':16} {medians['soapledger'] / medians['bare reportlab']:8.2f}      goal {GOAL}")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 15)
