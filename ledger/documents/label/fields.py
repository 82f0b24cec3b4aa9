"""What stands in each field of a label, ticket or card, in which type, and what is done when it does not fit."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from fractions import Fraction
from functools import partial

from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from ledger.documents.kit import jar_marks, marks
from ledger.documents.kit.fitting import Picture, Wanted
from ledger.documents.kit.fonts import BOLD, HEAVY, MEDIUM, REGULAR, in_one_form, size_for_figures, size_for_x_height
from ledger.documents.kit.layout import KINDS, LabelLayout, Panel
from ledger.documents.kit.printed_code import symbol
from ledger.documents.label.face import draw_place, looks_of
from ledger.documents.label.levels import (
    Field,
    bound,
    large,
    quantity,
    shown,
    size_for_letters,
    small,
    splitting,
    whole,
)
from ledger.domain.label.market import OVER
from ledger.errors import Refused
from ledger.markets import known_market
from ledger.units.dates import show_date
from ledger.views.label.label import LabelText
from ledger.views.label.lot_label import LotLabel
from ledger.views.label.parcel import ParcelText


@dataclass(frozen=True)
class TicketText:
    """What a price ticket says; prices as they are printed, such as "€6.50" and "€6.50 per 100 g"."""

    product: str
    net_quantity: str
    price: str
    unit_price: str
    function: str = ""
    business: str = ""
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


Printed = LabelText | TicketText | RackText | LotLabel | ParcelText
_TAKES = {
    "bar": LabelText,
    "notice": LabelText,
    "sticker": LabelText,
    "ticket": TicketText,
    "rack": RackText,
    "lot": LotLabel,
    "parcel": ParcelText,
}


# What it is stays readable beside a large net quantity: "reasonably related to the most prominent printed matter"
# (16 CFR 500.4, from memory, unverified). This share of its usual size is a house rule.
_NEAR = 0.75


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
    elif isinstance(view, ParcelText):
        found, code = _parcel(view, layout), ""
    else:
        found = _bar(view, layout) if isinstance(view, LabelText) else _own(view, layout)
        code = view.code_text or view.batch_code
    if layout.code:
        found["code"] = _code(code, layout)
    return {field: found.get(field, ()) for field in layout.placed}


def _net(view: LabelText, layout: LabelLayout) -> tuple[Field, float]:
    """The net quantity as its law wants it set, and the least size for what stands beside it."""
    law, form, text = known_market(view.market), view.lettering, quantity(view.net_quantity)
    least_mm = view.figure_height_mm or (law and law.figure_height(view.net_mg, Fraction(layout.display_panel_cm2)))
    asked = (least_mm or 0.0) * form.drawn
    least = size_for_letters(text, asked) if form.measured == "letters" else size_for_figures(asked)
    least = max(least, size_for_letters(text, form.others_mm * form.drawn))
    clear = layout.clear_space or form.clear
    found = shown(layout, "net_quantity", text, HEAVY if form.bold else MEDIUM, least, clear=clear)
    if form.lowest:  # larger, it would reach above its place
        found = tuple(replace(one, largest=one.smallest) for one in found)
    return found, least


def _what(view: LabelText, layout: LabelLayout, figures_pt: float) -> Field:
    """What it is: as large as what it weighs, and on a face no law asks more of it than of other small letters."""
    form = view.lettering
    letters = size_for_letters(view.function, form.others_mm * form.drawn)
    beside = max(min(figures_pt, layout.what_pt) if form.lowest else figures_pt, letters)
    least = max(size_for_x_height(layout.law_min_x_height_mm), letters, _NEAR * layout.what_pt if form.clear else 0.0)
    return tuple(
        replace(
            one,
            largest=max(one.largest, beside if form.lowest else figures_pt),
            smallest=min(one.smallest, least) if layout.parted else one.smallest,
        )
        for one in shown(layout, "function", view.function, least_pt=beside)
    )


def _bar(view: LabelText, layout: LabelLayout) -> dict[str, Field]:
    """The fields of a bar label or a notice."""
    form = view.lettering
    letters = form.others_mm * form.drawn
    lawful = partial(small, layout, least_mm=letters)
    heading = f"{view.ingredients_heading}: {view.ingredients}" if view.ingredients else ""
    until = "\u00a0".join((view.best_before or "").rsplit(" ", 1))
    jar = _jar(view.after_opening_months, layout) if view.after_opening_months else ()
    before = small(layout, "best_before", until)
    if before and (layout.best_before_mark or view.hourglass):
        glass = Picture("best_before", marks.HOURGLASS_WIDE * layout.mark_mm * mm, layout.mark_mm * mm, marks.hourglass)
        (text,) = before
        assert isinstance(text, Wanted)
        before = (Wanted(text.field, text.text, text.face, text.largest, text.smallest, mark=glass),)
    elif not before and "after_opening" not in layout.placed:
        before = jar
    draft = small(layout, "draft", "DRAFT, not for sale" if view.draft else "", BOLD)
    no_head = " DRAFT" if view.draft and "product" not in layout.placed else ""  # a sticker has no other place for it
    net, figures = _net(view, layout)
    listed = max(letters, form.ingredients_mm * form.drawn)
    batch = f"{view.batch_word}\u00a0{view.batch_code}{no_head}".strip("\u00a0")
    book = layout.mark_mm * mm
    name = bound(view.product) if layout.parted else view.product
    hers = {"business": max(layout.business_pt, 6.0), "line": 0.85 * layout.what_pt, "use": 0.85 * layout.what_pt}
    law_pt = size_for_x_height(layout.law_min_x_height_mm)
    return {
        **{
            field: (Wanted(field, text, MEDIUM if field == "business" else REGULAR, max(pt, law_pt), law_pt),)
            for field, pt in hers.items()
            if (text := getattr(view, field))
        },
        "price": shown(layout, "price", whole(view.price or ""), BOLD),
        "web": _web(view.web, layout),
        "picture": _place(view, layout),
        "product": (*draft, *large(layout, "product", name, layout.product_pt)),
        "function": _what(view, layout, figures),
        "net_quantity": net,
        "ingredients": splitting(lawful("ingredients", heading, names=True, least_mm=listed)),
        "precautions": splitting(lawful("precautions", " ".join(view.precautions))),
        "best_before": before,
        "after_opening": jar,
        "origin": lawful("origin", view.origin or ""),
        "responsible": lawful("responsible", f"{view.responsible_name}, {view.responsible_address}"),
        "batch_code": small(layout, "batch_code", batch, BOLD),
        "leaflet": (Picture("leaflet", marks.BOOK_WIDE * book, book, marks.hand_with_book),),
    }


def _own(view: TicketText | RackText, layout: LabelLayout) -> dict[str, Field]:
    """The fields of a price ticket or a rack card."""
    if isinstance(view, RackText):
        return {
            "product": large(layout, "product", view.product, layout.what_pt),
            "batch_code": large(layout, "batch_code", whole(view.batch_code), layout.product_pt),
            "made_on": shown(layout, "made_on", whole(f"Made {show_date(view.made_on)}")),
            "ready_on": shown(layout, "ready_on", whole(f"Ready {show_date(view.ready_on)}"), BOLD),
        }
    figures, net = view.figure_height_mm, quantity(view.net_quantity)
    return {
        "product": large(layout, "product", view.product, layout.product_pt),
        "price": large(layout, "price", whole(view.price), layout.price_pt) if view.price else (),
        "unit_price": shown(layout, "unit_price", quantity(view.unit_price)),
        "net_quantity": shown(
            layout, "net_quantity", net, MEDIUM, size_for_figures(OVER * figures), clear=layout.clear_space
        ),
        "function": shown(layout, "function", view.function),
        "business": shown(layout, "business", view.business),
        "origin": small(layout, "origin", view.origin or ""),
        "batch_code": small(layout, "batch_code", f"Batch\u00a0{view.batch_code}" if view.batch_code else "", BOLD),
    }


def _lot(view: LotLabel, layout: LabelLayout) -> dict[str, Field]:
    """The fields of the label of a jar or a drum."""
    size = size_for_x_height(layout.law_min_x_height_mm)
    until = f"Best before {show_date(view.best_before)}" if view.best_before else ""
    day = show_date(view.as_of)
    words = (view.status.upper(), f"as of {day}" if view.usable else f"{day}: do not use")

    def filling(field: str, draw: Callable[..., None], **more: object) -> Field:
        """A mark as large as its panel."""
        panel: Panel = next(one for one in layout.panels if field in one.placed)
        wide, high = panel.width_mm * mm, panel.height_mm * mm
        return (Picture(field, wide, high, partial(draw, wide=wide, small=size, **more)),)

    return {
        "lot_code": large(layout, "lot_code", whole(view.code), layout.product_pt),
        "material": large(layout, "material", view.material, layout.what_pt),
        "came_from": small(layout, "came_from", view.came_from),
        "came_on": small(layout, "came_on", whole(f"{'Received' if view.received else 'Made'} {show_date(view.on)}")),
        "best_before": small(layout, "best_before", whole(until)),
        "caution": small(layout, "caution", view.caution, BOLD),
        "status": filling("status", jar_marks.status, words=words, good=view.usable),
        "opened_on": filling("opened_on", jar_marks.opened),
    }


def _parcel(view: ParcelText, layout: LabelLayout) -> dict[str, Field]:
    """The fields of a parcel's label: an address is a line for each of its parts."""
    to = [large(layout, "to", one, layout.product_pt) for one in view.to]
    sender = [small(layout, "sender", one, BOLD if not i else REGULAR) for i, one in enumerate(view.sender)]
    return {
        "to": tuple(one for field in to for one in field),
        "sender": tuple(one for field in sender for one in field),
        "delivery": small(layout, "delivery", whole(view.name.capitalize())),
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
