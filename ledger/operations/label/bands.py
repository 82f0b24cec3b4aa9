"""Bands that a printer made: their text approved once for each lot of them."""

from datetime import date

from ledger.domain.label.band import check_band
from ledger.errors import Refused
from ledger.markets import market
from ledger.rows.label import band_approved
from ledger.rows.lot import LotRow, find_lot
from ledger.storage.book import Book
from ledger.storage.tables.label import LabelApproval
from ledger.units.dates import show_date
from ledger.views.label.label import digest_of


def approve_band(book: Book, lot: str, market_code: str, text: str, *, file: str, on: date, by: str) -> LotRow:
    """Book a named person's approval of what stands on a lot of bands, for one market; returns the lot.

    Raises BadInput for a text that is empty or lacks its list of ingredients, Refused for what is no packaging, a day
    before it came, and a text that was approved already.
    """
    law = market(market_code)
    kept = check_band(text, law.ingredients_heading if law.declares_ingredients else None, file=file)
    with book.write("label band") as tx:
        found = find_lot(tx.rows, lot)
        if found.kind != "packaging":
            raise Refused(f"Lot {found.code} is {found.material}, no packaging; a band is received like any wrapping.")
        if on < found.on:
            raise Refused(f"Lot {found.code} came on {show_date(found.on)}; look at --on.")
        known = band_approved(tx.rows, found.id, law.code)
        if known and known[0] == kept:
            raise Refused(f"That text was approved already, by {known[1]} on {show_date(known[2])}.")
        tx.add(LabelApproval(lot_id=found.id, market=law.code, on=on, by=by, text=kept, text_digest=digest_of(kept)))
        tx.say(f"Approved what stands on the bands of lot {found.code} for {law.code}.")
    return found
