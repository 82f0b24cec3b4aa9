"""What an invoice must bear, by country: a file in templates/, and her own beside her ledger, which goes before it."""

from pathlib import Path
from typing import NamedTuple

from ledger.reference.shipped import templates
from ledger.units.toml_reader import TomlFile, toml_text

FIELDS = (
    "number", "date", "supply date", "seller", "seller address", "seller tax number", "customer", "customer address",
    "what", "unit price", "net by rate", "tax by rate", "total",
)  # fmt: skip
NAME = "invoice-fields.toml"


class InvoiceFields(NamedTuple):
    """What an invoice of one country must bear; what is left to ask, and the words printed at its foot."""

    needs: tuple[str, ...]
    ask: str
    source: str
    words: str


class _FieldsFile(TomlFile):
    words = {"": ("what",), "country": ("codes", "registered", "needs", "ask", "source", "words")}
    noun = "invoice fields"


def invoice_fields(country: str, *, registered: bool, folder: Path | None = None) -> InvoiceFields:
    """The first part of the file that fits a country; one without codes fits every other.

    Raises BadInput with file and line for a file that is not whole, or has no part that fits.
    """
    places = [place / NAME for place in (folder, templates()) if place is not None]
    path = next((one for one in places if one.exists()), places[-1])
    file = _FieldsFile(toml_text(path), path.name)
    if file.data.get("what") != "invoice fields":
        raise file.head.bad('this file is none of invoice fields; write what = "invoice fields" in it.', "what")
    file.check()
    found = None
    for part in file.parts("country"):
        codes = part.listed("codes", '["IE"]') or ()
        needs = part.listed("needs", '["number", "date"]', needed=True) or ()
        for one in needs:
            if one not in FIELDS:
                raise part.bad(f"'{one}' is not known here; known are {', '.join(FIELDS)}.", "needs")
        said = part.flag("registered")
        if found is None and (not codes or country in codes) and said in (None, registered):
            found = InvoiceFields(
                needs, part.maybe_word("ask") or "", part.word("source"), part.maybe_word("words") or ""
            )
    if found is None:
        raise file.head.bad(f"no part of it is for {country}; write one more [[country]] with codes = [].")
    return found
