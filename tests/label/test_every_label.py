"""Every layout of a bar under every market's law, for short and long lists and names: measured, or refused with a way.

`--slow` runs all of them, each run a diagonal. What is drawn is read back by another library, letter by letter.
"""

import io
from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import cache
from itertools import product
from typing import Any

import pytest
from drawn import Read
from pypdf import PdfReader

from ledger.documents.kit.layout import shipped
from ledger.documents.kit.sheets import SheetLayout
from ledger.documents.label.choosing import shipped_layout
from ledger.documents.label.labels import draw_labels, set_label
from ledger.domain.label.net_quantity import Net
from ledger.domain.label.panel import read_front
from ledger.domain.label.words import batch_word, said, until
from ledger.errors import Refused
from ledger.markets import market
from ledger.reference.label_words import label_words
from ledger.views.label.label import LabelText

BARS = tuple(name for name in shipped("label") if shipped_layout(name).purpose == "bar")
MARKETS = {"gb": "GB", "eu": "DE", "us-soap": "US", "us-cosmetic": "US", "ca": "CA"}
MANY = (3, 12, 25, 40)
NAMES = {
    "short": "Sea",
    "long": "Calendula, Honey & Oat Bar for the Kitchen Gardener",
    "accented": "Źdźbło Žluťoučké Gülağacı Blåbærgrød",
}
TAG = "48 x 65 mm"  # the side of the bar that a tag hangs on
LISTED = (
    "OLEA EUROPAEA FRUIT OIL", "COCOS NUCIFERA OIL", "AQUA", "SODIUM HYDROXIDE", "BUTYROSPERMUM PARKII BUTTER",
    "RICINUS COMMUNIS SEED OIL", "PARFUM", "CALENDULA OFFICINALIS FLOWER", "AVENA SATIVA KERNEL FLOUR", "MEL", "KAOLIN",
    "THEOBROMA CACAO SEED BUTTER", "PERSEA GRATISSIMA OIL", "HELIANTHUS ANNUUS SEED OIL", "PRUNUS AMYGDALUS DULCIS OIL",
    "CANNABIS SATIVA SEED OIL", "TOCOPHEROL", "LINALOOL", "LIMONENE", "CITRAL", "GERANIOL", "CITRONELLOL", "EUGENOL",
    "COUMARIN", "BENZYL ALCOHOL", "BENZYL BENZOATE", "BENZYL SALICYLATE", "CINNAMAL", "CINNAMYL ALCOHOL", "FARNESOL",
    "HEXYL CINNAMAL", "ALPHA-ISOMETHYL IONONE", "HYDROXYCITRONELLAL", "ANISE ALCOHOL", "ISOEUGENOL", "AMYL CINNAMAL",
    "METHYL 2-OCTYNOATE", "CI 77491", "CI 77492", "CI 77891",
)  # fmt: skip
MM = 72 / 25.4
SIDE = 0.25  # mm that the side of a letter may stand over the edge of its panel
DIAGONAL = [
    (layout, code, MANY[(row + column) % 4], tuple(NAMES)[(row + column) % 3])
    for row, layout in enumerate(BARS)
    for column, code in enumerate(MARKETS)
]


def view_of(label: LabelText, layout: str, code: str, many: int, name: str) -> LabelText:
    """A label of 99 g with its date, origin and a caution, as its market words it."""
    law, front = market(code), shipped_layout(layout).pack or read_front(TAG)
    words, net = label_words(law.languages_in(MARKETS[code])), Net(99_000)
    date_, hourglass = until(words, 4, 2028)
    return replace(
        label,
        market=code,
        product=NAMES[name],
        function=said(words, "Soap"),
        net_quantity=law.net_words(net),
        net_mg=net.mg,
        figure_height_mm=law.figure_height(net.mg, front.cm2),
        lettering=law.lettering.on(front.cm2),
        ingredients_heading=law.ingredients_heading,
        ingredients=", ".join(LISTED[:many]),
        best_before=date_,
        hourglass=hourglass,
        origin=said(words, "Made in Ireland"),
        precautions=(said(words, "Keep out of eyes."),),
        batch_word=batch_word(words),
        languages=" ".join(one.language for one in words),
        business="Tidewrack Soaps",
    )


@cache
def alone(layout: str) -> SheetLayout:
    """A page as large as one label."""
    form = shipped_layout(layout)
    wide, high = form.width_mm, form.height_mm
    return SheetLayout("alone", "roll", 1, 1, 0, 0, wide, high, wide, high, cut_marks=False)


def over_another(glyphs: Sequence[Any]) -> list[Any]:
    """Letters that lie over another; neighbours such as ť and o stand that close by design of the face."""
    found, ordered = [], sorted(glyphs, key=lambda one: one.left)
    for index, one in enumerate(ordered):
        for other in ordered[index + 1 :]:
            if other.left >= one.right:
                break
            wide = min(one.right, other.right) - other.left
            high = min(one.bottom, other.bottom) - max(one.top, other.top)
            if min(wide, high) >= 0.03 * max(one.size, other.size) / MM:
                found.append((one, other))
    return found


class Letters:
    """The letters of a label, and those of some words in it, wherever lines break."""

    def __init__(self, glyphs: Sequence[Any]) -> None:
        self.glyphs, self.joined = glyphs, "".join(one.sign for one in glyphs)

    def of(self, words: str) -> list[Any]:
        plain = "".join(words.split())
        assert plain in self.joined, words
        at = self.joined.index(plain)
        return list(self.glyphs[at : at + len(plain)])


def printed(view: LabelText, layout: str) -> bytes | str:
    """The printed label, or why it is not printed."""
    try:
        return draw_labels(view, shipped_layout(layout), alone(layout), count=1)
    except Refused as error:
        return str(error)


def measure(data: bytes | str, view: LabelText, layout: str) -> None:
    """Everything that a printed label must hold to."""
    assert isinstance(data, bytes), data
    form = view.lettering
    for page in PdfReader(io.BytesIO(data)).pages:
        for font in page_fonts(page["/Resources"]):
            assert "/FontFile2" in font["/FontDescriptor"]
    glyphs = Read(data).glyphs()
    settled, _ = set_label(view, shipped_layout(layout))
    edges = [panel.edges_mm for panel in settled.panels]
    for one in glyphs:
        assert any(
            left - SIDE <= one.left
            and one.right <= right + SIDE
            and top - SIDE <= one.top
            and one.bottom <= foot + SIDE
            for left, right, top, foot in edges
        ), one
    assert over_another(glyphs) == []
    letters, names = Letters(glyphs), view.ingredients.split(", ")
    for text in (view.product, view.best_before, view.responsible_name, view.responsible_address, view.batch_code):
        assert letters.of(text or "")
    net = letters.of(view.net_quantity)
    least = view.figure_height_mm or 0.0
    for one in net:
        if (one.sign == "o" and form.measured == "letters") or one.sign in "0123456789":
            assert one.bottom - one.top >= least, one
    measured = [(text, max(form.others_mm, form.ingredients_mm)) for text in names]
    measured += [(text, form.others_mm) for text in (view.function, view.origin or "", view.precautions[0])]
    for text, asked in measured:
        for one in letters.of(text):
            if one.sign == "o" or (one.sign.isascii() and one.sign.isupper() and text.isupper()):
                assert one.bottom - one.top >= max(asked, 1.15), (text, one)
    if form.lowest:
        low_and_clear(layout, glyphs, net)


def low_and_clear(layout: str, glyphs: Sequence[Any], net: Sequence[Any]) -> None:
    """In the lowest 30 % of the piece the face is on, and clear of all other letters."""
    form = shipped_layout(layout)
    begins, ends = (form.folds_y_mm[0], form.folds_y_mm[1]) if form.folds_y_mm else (0.0, form.height_mm)
    ends = min(ends, *form.cuts_y_mm, form.height_mm)
    (capital,) = [one for one in net if one.sign == "N"]
    assert min(one.top for one in net if one.sign not in "()") >= ends - 0.3 * (ends - begins) - 0.02
    letter, side = capital.bottom - capital.top, 2 * (capital.right - capital.left)
    top, foot = (
        min(one.top for one in net if one.sign not in "()"),
        max(one.bottom for one in net if one.sign not in "g()"),
    )
    left, right = min(one.left for one in net), max(one.right for one in net)
    for one in glyphs:
        assert (
            one in net
            or one.bottom <= top - letter + 0.02
            or one.top >= foot + letter - 0.02
            or one.right <= left - side
            or one.left >= right + side
        ), one


def page_fonts(resources: Any) -> Iterator[Any]:
    """Every font that a page declares, and every form in it."""
    for one in resources.get("/Font", {}).values():
        yield one.get_object()
    for one in resources.get("/XObject", {}).values():
        yield from page_fonts(one.get_object().get("/Resources", {}))


def check_printed_or_refused(label: LabelText, layout: str, code: str, many: int, name: str) -> None:
    """It prints as the law asks, or is refused with a layout that takes it."""
    view = view_of(label, layout, code, many, name)
    data = printed(view, layout)
    if isinstance(data, bytes):
        measure(data, view, layout)
        return
    assert " even at the smallest type allowed. " in data or "above the lowest 30% of the front" in data
    _, _, after = data.partition("Take a larger layout (--layout ")
    taken = after.partition(")")[0].split(" or ")
    assert taken != [""], data
    view = view_of(label, taken[-1], code, many, name)
    measure(printed(view, taken[-1]), view, taken[-1])


@pytest.mark.parametrize(("layout", "code", "many", "name"), DIAGONAL)
def test_it_prints_as_the_law_asks_or_is_refused_with_a_layout_that_takes_it(
    label: LabelText, layout: str, code: str, many: int, name: str
) -> None:
    check_printed_or_refused(label, layout, code, many, name)


@pytest.mark.slow
@pytest.mark.parametrize("code", MARKETS)
@pytest.mark.parametrize("layout", BARS)
def test_so_it_does_with_every_list_and_name(label: LabelText, layout: str, code: str) -> None:
    for many, name in product(MANY, NAMES):
        try:
            check_printed_or_refused(label, layout, code, many, name)
        except AssertionError as error:
            error.add_note(f"{many} ingredients, a name that is {name}")
            raise
