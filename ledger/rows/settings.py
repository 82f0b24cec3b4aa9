"""Who she is, and how the ledger speaks."""

import sqlite3
from collections.abc import Mapping
from typing import NamedTuple

from ledger.errors import BadInput
from ledger.units.quantity import SCALE_STEP_MG
from ledger.units.scale import Scale
from ledger.units.seals import seal_of
from ledger.units.words import RejectedBars, Units


class PrintedFrom(NamedTuple):
    """What a page was printed from: the last entry of the ledger, its UTC time, the program, the entry's seal."""

    entry: int
    recorded_at: str
    program: str
    seal: str  # empty for a ledger without an entry


class Responsible(NamedTuple):
    """The responsible person for one market, with the address a label prints."""

    name: str
    address: str


class Settings(NamedTuple):
    """The latest settings; `addresses` by market code."""

    business: str
    country: str
    currency: str
    units: Units
    time_zone: str
    phone: str | None
    labour_minor_per_hour: int | None
    scale_step_mg: int  # the smallest step her scale shows
    addresses: Mapping[str, Responsible]
    tax_number: str | None = None  # under which she is registered for a tax on sales
    maker: str | None = None  # who decides where nobody else is named
    web: str | None = None  # her address there
    line: str | None = None  # of her own, on labels
    rejected_bars: RejectedBars | None = None  # None: they load the good ones

    @property
    def scale(self) -> Scale:
        """Her scale, and the units it is read in."""
        return Scale(self.scale_step_mg, self.units)


def settings(rows: sqlite3.Connection) -> Settings:
    """The settings as they stand. Raises BadInput for a ledger that was never set up."""
    found = settings_if_any(rows)
    if found is None:
        raise BadInput("This ledger was not set up yet; do it with: soapledger init")
    return found


def settings_if_any(rows: sqlite3.Connection) -> Settings | None:
    """The settings as they stand; None for a ledger that was started and never set up."""
    row = rows.execute("SELECT * FROM live_settings_revision ORDER BY id DESC LIMIT 1").fetchone()
    if row is None:
        return None
    addresses = {
        one["market"]: Responsible(one["name"], one["address"])
        for one in rows.execute(
            "SELECT market, name, address FROM live_market_address WHERE settings_revision_id = ?",
            (row["id"],),
        )
    }
    return Settings(
        business=row["business"],
        country=row["country"],
        currency=row["currency"],
        units=row["units"],
        time_zone=row["time_zone"],
        phone=row["phone"],
        labour_minor_per_hour=row["labour_minor_per_hour"],
        scale_step_mg=row["scale_step_mg"] or SCALE_STEP_MG,
        addresses=addresses,
        tax_number=row["tax_number"],
        maker=row["maker"],
        web=row["web"],
        line=row["line"],
        rejected_bars=row["rejected_bars"],
    )


def printed_from(rows: sqlite3.Connection, program: str, *, entry: int | None = None) -> PrintedFrom:
    """The last entry of the ledger, or the one told, which a page names as what it was printed from."""
    query = "SELECT id, recorded_at, digest FROM entry WHERE id = coalesce(?, id) ORDER BY id DESC LIMIT 1"
    row = rows.execute(query, (entry,)).fetchone()
    if row is None:
        return PrintedFrom(0, "", program, "")
    return PrintedFrom(row["id"], row["recorded_at"], program, seal_of(row["id"], row["digest"]).text)
