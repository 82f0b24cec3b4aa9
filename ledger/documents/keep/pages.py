"""The ledger as pages of HTML that any browser opens, each whole in itself: nothing is loaded, no script is needed."""

import re
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup, escape

from ledger.units.dates import show_date, show_moment
from ledger.units.quantity import show_mass
from ledger.units.words import Units
from ledger.views.keep.batch_pages import batch_pages
from ledger.views.keep.everything import Everything
from ledger.views.keep.lot_pages import lot_pages
from ledger.views.keep.other_pages import customer_pages, index_page, product_pages, supplier_pages
from ledger.views.keep.page import Page, Part, Text, page_file
from ledger.views.record.pieces import Chart, Column, Facts, Grid, Words, grid

# The codes of lots and batches, as units/codes makes them.
_CODE = re.compile(r"(?<![\w-])(?:L\d+-[\dX]|\d\d-\d+-[\dX])(?![\w-])")
_NAME, _LINK = Markup('<a href="{}">{}</a>'), Markup('<a class="code" href="{}">{}</a>')


def write_pages(known: Everything, beside: Path, *, papers: bool) -> None:
    """README.txt, the index and every page it leads to, in one folder: each link is the name of a file beside it."""
    folder = beside / "pages"
    folder.mkdir()
    template = _templates(known)
    moment = f"recorded {show_moment(known.printed.recorded_at)}" if known.printed.recorded_at else ""
    shared = {"business": known.own.business, "printed": known.printed, "moment": moment}
    _write(beside / "README.txt", template.get_template("README.txt").render(shared, papers=papers))
    index = template.get_template("index.html")
    _write(folder / "index.html", index.render(shared, shown=list(_shown(index_page(known).parts, known.own.units))))
    single = template.get_template("page.html")
    for make in (batch_pages, lot_pages, product_pages, customer_pages, supplier_pages):
        for page in make(known):
            _write(folder / page.file, single.render(shared, **_told(page, known.own.units)))


def _write(path: Path, text: str) -> None:
    path.write_text(text, encoding="utf-8", newline="\n")


def _templates(known: Everything) -> Environment:
    found = Environment(
        loader=FileSystemLoader(Path(__file__).parent / "templates"),
        autoescape=lambda name: name is None or not name.endswith(".txt"),
        keep_trailing_newline=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    found.filters["linked"] = _Links(known)
    return found


class _Links:
    """Text with every code and name that has a page made a link to it, and all else escaped."""

    def __init__(self, known: Everything) -> None:
        """`known` says which pages there are."""
        self._codes = {batch.code: page_file("batch", batch.code) for batch in known.batches.values()}
        self._codes |= {lot.code: page_file("lot", lot.code) for lot in known.lots.values() if lot.kind != "soap"}
        self._names = {card.name: page_file("product", card.code) for card in known.recipes}
        self._names |= {card.name: page_file("supplier", card.code) for card in known.suppliers}
        for card in known.customers.values():
            named = (card.name, f"{card.name} ({card.person})")  # as a recall names a shop
            self._names |= dict.fromkeys(named, page_file("customer", card.code))

        self._known: dict[str, Markup] = {}  # most cells stand on many pages

    def __call__(self, text: str) -> Markup:
        """A cell that is a name as a whole, or any text with codes in it."""
        if text not in self._known:
            self._known[text] = self._drawn(text)
        return self._known[text]

    def _drawn(self, text: str) -> Markup:
        if text in self._names:
            return _NAME.format(self._names[text], text)
        parts, end = [], 0
        for code in _CODE.finditer(text):
            if code[0] in self._codes:
                parts += [escape(text[end : code.start()]), _LINK.format(self._codes[code[0]], code[0])]
                end = code.end()
        return Markup("").join([*parts, escape(text[end:])])


def _told(page: Page, units: Units) -> dict[str, Any]:
    """What the template of a page asks for: a code stands large, a name likewise where it says more than its code."""
    coded = page.kind in ("batch", "lot")
    heading = f"{page.kind.capitalize()} {page.code}" if coded else page.name
    below = page.name if coded else f"{page.kind} {page.code}"
    return {"page": page, "heading": heading, "below": below, "shown": list(_shown(page.parts, units))}


def _shown(parts: Iterable[Part], units: Units) -> Iterator[dict[str, Any]]:
    for part in parts:
        if part.pieces or part.nothing:
            pieces = [drawn for one in part.pieces for drawn in _piece(one, units)]
            yield {"title": part.title, "pieces": pieces, "nothing": part.nothing}


def _piece(one: Facts | Grid | Words | Chart | Text, units: Units) -> Iterator[dict[str, Any]]:
    if isinstance(one, Facts):
        yield {"kind": "facts", "pairs": one.pairs}
    elif isinstance(one, Grid):
        yield _grid(one)
    elif isinstance(one, Text):
        yield {"kind": "text", "text": one.text}
    elif not isinstance(one, Chart):
        yield {"kind": "words", "text": one.text, "bold": one.bold}
    elif one.weighings:
        yield _grid(
            grid(
                one.weighings,
                Column("weighed on", lambda seen: show_date(seen.on)),
                Column("bar", lambda seen: seen.mark),
                Column("weight", lambda seen: show_mass(seen.mass_mg, units), right=True),
            )
        )


def _grid(table: Grid) -> dict[str, Any]:
    """A table without its empty columns; each cell knows its head, which stands before it on a narrow screen."""
    kept = [i for i in range(len(table.columns)) if any(row[i] for row in table.rows)]

    def style(i: int) -> Markup:
        named = {"first": i == kept[0], "right": table.columns[i].right, "bold": table.columns[i].bold}
        words = " ".join(name for name, so in named.items() if so)
        return Markup(' class="{}"').format(words) if words else Markup("")

    heads = [{"head": table.heads[i], "style": style(i)} for i in kept]
    rows = [[{**heads[place], "text": row[i]} for place, i in enumerate(kept)] for row in table.rows]
    return {"kind": "grid", "heads": heads, "rows": rows}
