"""The law's text of a label as one block of outlines, as SVG or PDF, to be set into artwork of her own at true size."""

import io
from dataclasses import dataclass
from html import escape
from math import ceil

from reportlab.lib.colors import black
from reportlab.lib.units import mm

from ledger.documents.kit.fitting import Filled, Room, Wanted
from ledger.documents.kit.fonts import BOLD, HEAVY, MEDIUM, REGULAR, in_one_form, size_for_figures, size_for_x_height
from ledger.documents.kit.pdf import LANGUAGE, About, new_canvas
from ledger.documents.label.flowing import fit
from ledger.documents.label.levels import size_for_letters
from ledger.documents.label.outlines import Step, advance, outline
from ledger.domain.label.market import OVER
from ledger.views.label.label import LabelText

HOUSE_X_HEIGHT_MM = 1.2  # of the small letters; a house rule, drawn a twentieth over it like a height of the law
_GAP = 1.2 * mm
_ENDLESS = 2000 * mm


@dataclass(frozen=True)
class Block:
    """The block as it is set: its lines, its size in points, and what its file says of it."""

    filled: Filled
    wide: float
    high: float
    about: About
    words: str  # all that stands in it
    says: str  # its digest and approval, or that it is a draft


def set_block(view: LabelText, *, width_mm: float, says: str, business: str, bands: bool = False) -> Block:
    """Set the law's text in a width; for `bands`, without what changes with every batch.

    Raises Refused for a word wider than that, or a character that cannot be printed.
    """
    view = in_one_form(view)
    wanted = tuple(one for one in _wanted(view, bands) if one.text)
    room = Room("block", width_mm * mm, _ENDLESS, wanted, ())
    (filled,) = fit([room], gap=_GAP, remedies=lambda: {"": "Take a wider block (--width)."})
    high = max(line.base + 0.3 * line.size for line in filled.lines)
    words = "\n".join(one.text for one in wanted).replace("\u00a0", " ")
    about = About(
        f"Text of the label {view.batch_code} {view.market}", business, says, view.languages.split(" ")[0] or LANGUAGE
    )
    return Block(filled, width_mm * mm, ceil(high / mm * 10) / 10 * mm, about, words, says)


def _wanted(view: LabelText, bands: bool) -> tuple[Wanted, ...]:
    house, form = size_for_x_height(HOUSE_X_HEIGHT_MM * OVER), view.lettering
    asked = (view.figure_height_mm or 0.0) * form.drawn
    least = size_for_letters(view.net_quantity, asked) if form.measured == "letters" else size_for_figures(asked)
    others = form.others_mm * form.drawn

    def law(field: str, text: str | None, face: str = REGULAR, *, names: bool = False) -> Wanted:
        asked = max(others, form.ingredients_mm * form.drawn) if names else others
        small = max(house, size_for_letters(text or "", asked))
        return Wanted(field, text or "", face, small, small, names)

    heading = f"{view.ingredients_heading}: {view.ingredients}" if view.ingredients else ""
    net = max(house, least, size_for_letters(view.net_quantity, others))
    each_batch = (
        Wanted("net_quantity", view.net_quantity, HEAVY if form.bold else MEDIUM, net, net, clear=form.clear),
        law("best_before", view.best_before),
        law("batch_code", f"{view.batch_word}\u00a0{view.batch_code}".strip("\u00a0"), BOLD),
    )
    return (
        law("draft", "DRAFT, not for sale" if view.draft else "", BOLD),
        law("function", view.function),
        law("ingredients", heading, names=True),
        law("precautions", " ".join(view.precautions)),
        law("responsible", f"{view.responsible_name}, {view.responsible_address}"),
        law("origin", view.origin),
        *(() if bands else each_batch),
    )


def block_svg(block: Block) -> bytes:
    """The block as SVG, in mm at true size: one path a line, and no text that would need a face."""
    wide, high = block.wide / mm, block.high / mm
    paths = "\n".join(
        f'<path d="{"".join(_svg_step(step) for step in _placed(block, index, 1 / mm, 0.0, -1.0))}"/>'
        for index in range(len(block.filled.lines))
    )
    return (
        '<?xml version="1.0" encoding="UTF-8"?>\n'
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide:g}mm" height="{high:g}mm" '
        f'viewBox="0 0 {wide:g} {high:g}" lang="{block.about.language}">\n'
        f"<title>{escape(block.about.title)}</title>\n"
        f"<desc>{escape(block.says)}\n{escape(block.words)}</desc>\n"
        f'<g fill="#000">\n{paths}\n</g>\n</svg>\n'
    ).encode()


def block_pdf(block: Block) -> bytes:
    """The block as a PDF of its own size, in outlines."""
    out = io.BytesIO()
    canvas = new_canvas(out, (block.wide, block.high), block.about)
    canvas.setFillColor(black)
    for index in range(len(block.filled.lines)):
        path, here = canvas.beginPath(), (0.0, 0.0)
        for kind, points in _placed(block, index, 1.0, block.high, 1.0):
            if kind == "M":
                path.moveTo(*points[0])
            elif kind == "L":
                path.lineTo(*points[0])
            elif kind == "Q":  # as a cubic curve: two thirds of the way to its point off the line
                (x0, y0), (x, y), (x1, y1) = here, *points
                path.curveTo(x0 + (x - x0) / 1.5, y0 + (y - y0) / 1.5, x1 + (x - x1) / 1.5, y1 + (y - y1) / 1.5, x1, y1)
            else:
                path.close()
            here = points[-1] if points else here
        canvas.drawPath(path, stroke=0, fill=1, fillMode=1)
    canvas.showPage()
    canvas.save()
    return out.getvalue()


def _placed(block: Block, index: int, scale: float, top: float, up: float) -> list[Step]:
    """The outlines of one line at its place; `up` is -1 where the page counts downwards from its top."""
    line = block.filled.lines[index]
    found, x = [], line.x
    for sign in line.text:
        for kind, points in outline(sign, line.face):
            placed = (
                (
                    scale * (x + px * line.size / 1000),
                    top + up * scale * (py * line.size / 1000 - line.base),
                )
                for px, py in points
            )
            found.append(Step(kind, tuple(placed)))
        x += advance(sign, line.face) * line.size / 1000
    return found


def _svg_step(step: Step) -> str:
    return step.kind + " ".join(f"{x:.4f} {y:.4f}" for x, y in step.points)
