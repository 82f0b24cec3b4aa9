"""What is known here of colours: their number, their American name, and which list has them; all from memory."""

import re
from collections.abc import Mapping
from functools import cache
from typing import NamedTuple

from ledger.reference.shipped import table_rows

_PLAIN = re.compile(r" \(NANO\)$")


class Colour(NamedTuple):
    """One thing that colours, by its INCI name; None is what is not known here."""

    number: str | None  # of the Colour Index
    american: str | None  # the name the United States list it under
    listed: Mapping[str, bool | None]  # by list: annex_iv, us
    nano: bool  # sold as a nanomaterial too
    status: str


@cache
def colours() -> Mapping[str, Colour]:
    """Every colour known here, and what is sold as a nanomaterial, by INCI name."""
    known = {"yes": True, "no": False}
    return {
        row["inci"]: Colour(
            row["ci"] or None,
            row["american"] or None,
            {one: known.get(row[one]) for one in ("annex_iv", "us")},
            row["nano"] == "yes",
            row["status"],
        )
        for row in table_rows("colours.csv")
    }


def colour_of(inci: str) -> Colour | None:
    """What is known of one ingredient as a colour, marked (NANO) or not."""
    return colours().get(_PLAIN.sub("", inci))
