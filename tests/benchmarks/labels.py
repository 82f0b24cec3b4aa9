"""How long a full sheet of 24 labels takes, side by side with bare reportlab in one run.

    python tests/benchmarks/labels.py [ROUNDS]

Bare reportlab draws the same strings in the same type at the same places and fits nothing. Every round
draws each once, in turn, so that a slower minute of the machine touches both alike; medians are printed,
and the ratio the goal is stated in. Nothing that a command would have to work out anew is kept between rounds.
"""

import io
import statistics
import sys
import time
from collections.abc import Callable
from datetime import date

from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from ledger.documents.kit import lines as lines_module
from ledger.documents.kit.layout import label_layout, sheet_layout
from ledger.documents.label.labels import draw_labels, set_label
from ledger.views.label.label import LabelText

GOAL = 1.5
LAYOUT, SHEET = label_layout("small"), sheet_layout("a4-24")
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
Line = tuple[str, str, float, float, float]  # text, face, size, x, y


def lines() -> list[Line]:
    """Every string of the sheet with its place in points from the page's left and foot."""
    high = sheet_layout("a4-24").page_mm()[1]
    found = []
    for position in range(SHEET.places):
        left, top = SHEET.corner_mm(position, LAYOUT.width_mm, LAYOUT.height_mm)
        for panel, filled in zip(LAYOUT.panels, set_label(VIEW, LAYOUT), strict=True):
            for line in filled.lines:
                x = (left + panel.x_mm) * mm + line.x
                y = (high - top - panel.y_mm) * mm - line.base
                found.append((line.text, line.face, line.size, x, y))
    return found


def bare(strings: list[Line]) -> bytes:
    """The same strings, drawn one by one."""
    out = io.BytesIO()
    canvas = Canvas(out, pagesize=(210 * mm, 297 * mm), invariant=1)
    for text, face, size, x, y in strings:
        canvas.setFont(face, size)
        canvas.drawString(x, y, text)
    canvas.showPage()
    canvas.save()
    return out.getvalue()


def ours() -> bytes:
    """A sheet as a command draws it: nothing measured before."""
    lines_module.units.cache_clear()
    lines_module.reach.cache_clear()
    return draw_labels(VIEW, LAYOUT, SHEET, count=SHEET.places)


def timed(draw: Callable[[], bytes]) -> float:
    """Wall seconds of one drawing."""
    start = time.perf_counter()
    draw()
    return time.perf_counter() - start


def main(rounds: int) -> None:
    """Time both in turn and print the medians."""
    strings = lines()
    both: dict[str, Callable[[], bytes]] = {"bare reportlab": lambda: bare(strings), "soapledger": ours}
    timings: dict[str, list[float]] = {name: [] for name in both}
    for turn in range(rounds + 1):
        for name, draw in both.items():
            seconds = timed(draw)
            if turn:  # the first round only warms up
                timings[name].append(seconds)
    medians = {name: statistics.median(found) for name, found in timings.items()}
    print(f"{SHEET.places} labels, {len(strings)} strings, {rounds} rounds, medians")
    for name, seconds in medians.items():
        print(f"{name:16} {seconds * 1000:8.1f} ms   {len(both[name]()):7} bytes")
    ratio = medians["soapledger"] / medians["bare reportlab"]
    print(f"{'ratio':16} {ratio:8.2f}      goal {GOAL}")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 15)
