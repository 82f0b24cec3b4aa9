"""What stands in each field of a label, ticket or card, in which type, and what is done when it does not fit."""

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from fractions import Fraction
from functools import partial

from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from ledger.documents.kit import jar_marks, marks
from ledger.documents.kit.fitting import Picture, Wanted
from ledger.documents.kit.fonts import BOLD, MEDIUM, REGULAR, in_one_form, size_for_figures, size_for_x_height
from ledger.documents.kit.layout import KINDS, LabelLayout, Panel
from ledger.documents.kit.printed_code import symbol
from ledger.documents.label.face import draw_place, looks_of
from ledger.errors import Refused
from ledger.markets import known_market
from ledger.units.dates import show_date
from ledger.views.label.label import LabelText
from ledger.views.label.lot_label import LotLabel


@dataclass(frozen=True)
class TicketText:
    """What a price ticket says; prices as they are printed, such as "€6.50" and "€6.50 per 100 g"."""

    product: str
    net_quantity: str
    price: str
    unit_price: str
    function: str = ""
    origin: str | None = None
    batch_code: str = ""
    code_text: str = ""
    figure_height_mm: float = 0.0


@dataclass(frozen=True)
class RackText:
    """What a card on the curing rack says."""

    product: str
    batch_code: str
    made_on: date
    ready_on: date
    code_text: str


Printed = LabelText | TicketText | RackText | LotLabel
Field = tuple[Wanted | Picture, ...]
_TAKES = {"bar": LabelText, "notice": LabelText, "ticket": TicketText, "rack": RackText, "lot": LotLabel}


def fields_of(view: Printed, layout: LabelLayout) -> dict[str, Field]:
    """Every field the layout places; one that has nothing to say is empty.

    Raises Refused for a layout of another purpose, or a printed code that cannot hold its text.
    """
    if not isinstance(view, _TAKES[layout.purpose]):
        meant = next(purpose for purpose, kind in _TAKES.items() if isinstance(view, kind))
        raise Refused(f'The layout \'{layout.name}\' is for = "{layout.purpose}"; take one for = "{meant}" here.')
    view = in_one_form(view)
    if isinstance(view, LotLabel):
        found, code = _lot(view, layout), view.code
    else:
        found = _bar(view, layout) if isinstance(view, LabelText) else _own(view, layout)
        code = view.code_text or view.batch_code
    if layout.code:
        found["code"] = _code(code, layout)
    return {field: found.get(field, ()) for field in layout.placed}


def _small(layout: LabelLayout, field: str, text: str, face: str = REGULAR, *, names: bool = False) -> Field:
    """A field of the law's text."""
    law = size_for_x_height(layout.law_min_x_height_mm)
    return (Wanted(field, text, face, max(layout.law_max_pt, law), law, names),) if text else ()


def _splitting(field: Field) -> Field:
    """A long text of the law's, which may go on in the next panel."""
    return tuple(replace(one, splits=True) if isinstance(one, Wanted) else one for one in field)


def _shown(layout: LabelLayout, field: str, text: str, face: str, figures_mm: float = 0.0) -> Field:
    """What it is, what it weighs: the middle of three levels, its figures no lower than the law asks."""
    figures = size_for_figures(figures_mm)
    law = size_for_x_height(layout.law_min_x_height_mm)
    clear = layout.clear_space and field == "net_quantity"
    least = max(law, figures)
    return (Wanted(field, text, face, max(layout.what_pt, least), least, clear=clear),) if text else ()


def _what(text: str, layout: LabelLayout, figures_mm: float) -> Field:
    """What it is: as large as what it weighs, and on a face no law asks more of it than of other small letters."""
    (shown,) = _shown(layout, "function", text, REGULAR, figures_mm) or (None,)
    if not isinstance(shown, Wanted):
        return ()
    return (replace(shown, smallest=size_for_x_height(layout.law_min_x_height_mm)) if layout.parted else shown,)


def _large(layout: LabelLayout, field: str, text: str, largest: float) -> Field:
    return (Wanted(field, text, BOLD, largest, min(layout.product_min_pt, largest), yields=True),)


def _whole(text: str) -> str:
    """A date, code or price that no line tears apart."""
    return text.replace(" ", "\u00a0")


def _bound(text: str) -> str:
    """A name in which no line ends with a single letter or an &; they go with the next word."""
    return re.sub(r"(?<=\s)(\w|&) ", "\\1\u00a0", text)


def _quantity(text: str) -> str:
    """A figure is not torn from its unit; words before it and brackets behind it may stand on lines of their own."""
    return re.sub(r"(?<=\d) (?!\(|per\b)", "\u00a0", text)


def _bar(view: LabelText, layout: LabelLayout) -> dict[str, Field]:
    """The fields of a bar label or a notice."""
    heading = f"{view.ingredients_heading}: {view.ingredients}" if view.ingredients else ""
    until = "\u00a0".join((view.best_before or "").rsplit(" ", 1))
    jar = _jar(view.after_opening_months, layout) if view.after_opening_months else ()
    before = _small(layout, "best_before", until)
    if before and layout.best_before_mark:
        glass = Picture("best_before", marks.HOURGLASS_WIDE * layout.mark_mm * mm, layout.mark_mm * mm, marks.hourglass)
        (text,) = before
        assert isinstance(text, Wanted)
        before = (Wanted(text.field, text.text, text.face, text.largest, text.smallest, mark=glass),)
    elif not before and "after_opening" not in layout.placed:
        before = jar
    draft = _small(layout, "draft", "DRAFT, not for sale" if view.draft else "", BOLD)
    law, panel = known_market(view.market), Fraction(layout.display_panel_cm2)
    figures = view.figure_height_mm or (law and law.figure_height(view.net_mg, panel)) or 0.0
    book = layout.mark_mm * mm
    name = _bound(view.product) if layout.parted else view.product
    hers = {"business": max(layout.business_pt, 6.0), "line": 0.85 * layout.what_pt, "use": 0.85 * layout.what_pt}
    law_pt = size_for_x_height(layout.law_min_x_height_mm)
    return {
        **{
            field: (Wanted(field, text, MEDIUM if field == "business" else REGULAR, max(pt, law_pt), law_pt),)
            for field, pt in hers.items()
            if (text := getattr(view, field))
        },
        "price": _shown(layout, "price", _whole(view.price or ""), BOLD),
        "web": _web(view.web, layout),
        "picture": _place(view, layout),
        "product": (*draft, *_large(layout, "product", name, layout.product_pt)),
        "function": _what(view.function, layout, figures),
        "net_quantity": _shown(layout, "net_quantity", _quantity(view.net_quantity), MEDIUM, figures),
        "ingredients": _splitting(_small(layout, "ingredients", heading, names=True)),
        "precautions": _splitting(_small(layout, "precautions", " ".join(view.precautions))),
        "best_before": before,
        "after_opening": jar,
        "origin": _small(layout, "origin", view.origin or ""),
        "responsible": _small(layout, "responsible", f"{view.responsible_name}, {view.responsible_address}"),
        "batch_code": _small(layout, "batch_code", f"Batch\u00a0{view.batch_code}", BOLD),
        "leaflet": (Picture("leaflet", marks.BOOK_WIDE * book, book, marks.hand_with_book),),
    }


def _own(view: TicketText | RackText, layout: LabelLayout) -> dict[str, Field]:
    """The fields of a price ticket or a rack card."""
    if isinstance(view, RackText):
        return {
            "product": _large(layout, "product", view.product, layout.what_pt),
            "batch_code": _large(layout, "batch_code", _whole(view.batch_code), layout.product_pt),
            "made_on": _shown(layout, "made_on", _whole(f"Made {show_date(view.made_on)}"), REGULAR),
            "ready_on": _shown(layout, "ready_on", _whole(f"Ready {show_date(view.ready_on)}"), BOLD),
        }
    figures = view.figure_height_mm
    return {
        "product": _large(layout, "product", view.product, layout.product_pt),
        "price": _large(layout, "price", _whole(view.price), layout.price_pt),
        "unit_price": _shown(layout, "unit_price", _quantity(view.unit_price), REGULAR),
        "net_quantity": _shown(layout, "net_quantity", _quantity(view.net_quantity), MEDIUM, figures),
        "function": _shown(layout, "function", view.function, REGULAR),
        "origin": _small(layout, "origin", view.origin or ""),
        "batch_code": _small(layout, "batch_code", f"Batch\u00a0{view.batch_code}" if view.batch_code else "", BOLD),
    }


def _lot(view: LotLabel, layout: LabelLayout) -> dict[str, Field]:
    """The fields of the label of a jar or a drum."""
    small = size_for_x_height(layout.law_min_x_height_mm)
    until = f"Best before {show_date(view.best_before)}" if view.best_before else ""
    day = show_date(view.as_of)
    words = (view.status.upper(), f"as of {day}" if view.usable else f"{day}: do not use")

    def filling(field: str, draw: Callable[..., None], **more: object) -> Field:
        """A mark as large as its panel."""
        panel: Panel = next(one for one in layout.panels if field in one.placed)
        wide, high = panel.width_mm * mm, panel.height_mm * mm
        return (Picture(field, wide, high, partial(draw, wide=wide, small=small, **more)),)

    return {
        "lot_code": _large(layout, "lot_code", _whole(view.code), layout.product_pt),
        "material": _large(layout, "material", view.material, layout.what_pt),
        "came_from": _small(layout, "came_from", view.came_from),
        "came_on": _small(layout, "came_on", _whole(f"{'Received' if view.received else 'Made'} {show_date(view.on)}")),
        "best_before": _small(layout, "best_before", _whole(until)),
        "caution": _small(layout, "caution", view.caution, BOLD),
        "status": filling("status", jar_marks.status, words=words, good=view.usable),
        "opened_on": filling("opened_on", jar_marks.opened),
    }


def _jar(months: int, layout: LabelLayout) -> Field:
    high = layout.mark_mm * mm

    def draw(canvas: Canvas, left: float, bottom: float, tall: float) -> None:
        marks.open_jar(canvas, left, bottom, tall, months)

    return (Picture("after_opening", marks.jar_wide(months, high), high, draw),)


def _place(view: LabelText, layout: LabelLayout) -> Field:
    """Her picture or the ornament, as large as its panel."""
    panel = next((one for one in layout.panels if "picture" in one.placed), None)
    if panel is None or (layout.family == "plain" and view.picture is None):
        return ()
    wide, high, looks = panel.width_mm * mm, panel.height_mm * mm, looks_of(view, layout)

    def draw(canvas: Canvas, left: float, bottom: float, tall: float) -> None:
        draw_place(canvas, view, looks, panel, left, bottom, wide, tall)

    return (Picture("picture", wide, high, draw),)


def _web(text: str | None, layout: LabelLayout) -> Field:
    """A web address as a code."""
    if not text:
        return ()
    one, x = symbol("qr", text), layout.module_mm if layout.code == "qr" else KINDS["qr"].usual_mm
    return (Picture("web", one.wide * x * mm, one.high * x * mm, one.draw, KINDS["qr"].least_mm / x),)


def _code(text: str, layout: LabelLayout) -> Field:
    """The printed code, from its usual size down to the least its kind allows."""
    if not text:
        return ()
    assert layout.code is not None
    one, x = symbol(layout.code, text), layout.module_mm
    return (Picture("code", one.wide * x * mm, one.high * x * mm, one.draw, KINDS[layout.code].least_mm / x),)


def remedies(view: Printed, layout: LabelLayout, takers: Sequence[str]) -> Mapping[str, str]:
    """What to do when a field does not fit: under "" for every field, by name what the law allows beside that.

    `takers` are the shipped layouts that have the room.
    """
    rest = (
        f"Take a larger layout (--layout {' or '.join(takers)})."
        if takers
        else "No shipped layout has the room; make a larger layout of your own (copy a file and widen the panel)."
    )
    law = known_market(view.market) if isinstance(view, LabelText) and layout.purpose == "bar" else None
    return {"": rest, **(law.elsewhere if law else {})}
