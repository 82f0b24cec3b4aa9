"""In which country an address lies, as its last line says; names and postcodes are from memory, unverified."""

import re
from collections.abc import Mapping
from functools import cache

from ledger.reference.shipped import table_rows
from ledger.units.signs import folded

# What a country's postcode begins with, where the same form is that of several (from memory, unverified).
_POSTCODE = re.compile(r"\b([A-Z]{1,2})[0-9][0-9A-Z]? ?[0-9][A-Z]{2}$")
_POSTCODES = {"BT": "XI", "IM": "IM", "JE": "JE", "GY": "GG"}
_PARTS = frozenset(_POSTCODES.values())  # what stands before United Kingdom and is not Great Britain
_STATE_AND_ZIP = re.compile(r"\b[A-Z]{2} [0-9]{5}(?:-[0-9]{4})?$")
_CANADIAN = re.compile(r"\b[A-Z][0-9][A-Z] ?[0-9][A-Z][0-9]$")


@cache
def _countries() -> Mapping[str, str]:
    return {folded(name): row["code"] for row in table_rows("countries.csv") for name in row["names"].split(";")}


@cache
def country_named(code: str) -> str:
    """The English name of a country by its code."""
    return next(row["names"].partition(";")[0] for row in table_rows("countries.csv") if row["code"] == code)


def country_of(address: str) -> str | None:
    """The ISO 3166 code of the country that an address ends with; None where its last line names none known here.

    XI is Northern Ireland, whose rules are those of the Union. A code of two letters alone is not read, since those of
    countries are those of American states too; behind United Kingdom the line before may say which part.
    """
    lines = [" ".join(one.split()).rstrip(".") for one in re.split(r"[,;\n]", address)]
    lines = [one for one in lines if one]
    found = [_country_of_line(one) for one in lines[-3:]]
    if found and found[-1] == "GB":
        return next((one for one in reversed(found) if one in _PARTS), "GB")
    return found[-1] if found else None


def _country_of_line(line: str) -> str | None:
    if code := _countries().get(folded(line)) or _countries().get(folded(f"{line}.")):
        return code
    if found := _POSTCODE.search(line):
        return _POSTCODES.get(found[1], "GB")
    if _STATE_AND_ZIP.search(line):
        return "US"
    return "CA" if _CANADIAN.search(line) else None
