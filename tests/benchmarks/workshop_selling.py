"""What leaves the invented workshop: stalls on Saturdays, shops on Mondays, and what comes of it."""

from datetime import timedelta

from benchmarks.workshop_setup import MAKER, SHOPS, STALLS
from benchmarks.workshop_stores import TURN, Bars
from benchmarks.workshop_weeks import MONDAY, SATURDAY, Weeks

from ledger.operations.complaint.complaints import (
    Noted,
    Report,
    book_complaint,
    close_complaint,
    note_complaint,
)
from ledger.operations.keep.undo import undo
from ledger.operations.sell.dispatch import dispatch
from ledger.operations.sell.gift import gift
from ledger.operations.sell.stall_back import stall_back
from ledger.operations.sell.stall_out import stall_out
from ledger.operations.sell.take_back import take_back
from ledger.operations.stock.lots import waste_lot
from ledger.operations.tools.checks import check_equipment
from ledger.operations.tools.upkeep import UpkeepNote, add_upkeep
from ledger.rows.history import last_entry
from ledger.storage.personal import PersonDetails
from ledger.units.shortcode import short_code

PRICE, SHOP_PRICE = 650, 430  # minor units a bar


def sell(weeks: Weeks) -> None:
    """What the weekday asks for."""
    if weeks.day % 7 == SATURDAY:
        for place in range(weeks.scale.stalls):
            _stall(weeks, place)
    if weeks.day % 7 == MONDAY:
        _shops(weeks)
        check_equipment(weeks.book, "bench-scale", 500_100, on=weeks.on, by=MAKER)
    if weeks.day % TURN == 9:
        add_upkeep(weeks.book, UpkeepNote("cleaning", "shelves and moulds", weeks.on, MAKER))
        check_equipment(weeks.book, "ph-pen", 7_020, on=weeks.on, by=MAKER)
    if weeks.day % TURN == 16 and weeks.on_sale:
        _come_back(weeks, weeks.on_sale[0])


def _stall(weeks: Weeks, place: int) -> None:
    """Bars of every batch on sale at this stall go out, and some come home; the third Saturday takes all."""
    mine = [one for one in weeks.on_sale if one.number % weeks.scale.stalls == place and one.left]
    if not mine:
        return
    out = {one.code: one.left if one.saturdays == 2 else min(one.left, 9) for one in mine}
    stall_out(weeks.book, STALLS[place], out, on=weeks.on)
    back = {code: min(number, weeks.chance.randint(0, 3)) for code, number in out.items()}
    sold = sum(out.values()) - sum(back.values())
    stall_back(weeks.book, STALLS[place], back, on=weeks.on, takings_minor=sold * PRICE or None)
    for one in mine:
        one.left -= out[one.code] - back[one.code]
        one.saturdays += 1


def _shops(weeks: Weeks) -> None:
    """Each shop has bars of the batches it takes; what is left after three Saturdays is given away."""
    for place in range(weeks.scale.shops):
        mine = [
            one
            for one in weeks.on_sale
            if one.number % weeks.scale.shops == place and one.saturdays in (1, 2) and one.left >= 5
        ]
        if mine:
            shop = short_code(SHOPS[place], set())
            bars = {one.code: 5 for one in mine}
            dispatch(weeks.book, shop, bars, on=weeks.on, price_minor=SHOP_PRICE, note=None)
            if place == 0 and weeks.day % TURN == 7:  # the wrong shop, taken back and sent again
                with weeks.book.look() as rows:
                    wrong = last_entry(rows)
                undo(weeks.book, wrong)
                dispatch(weeks.book, shop, bars, on=weeks.on, price_minor=SHOP_PRICE, note="second parcel")
            for one in mine:
                one.left -= 5
    over = [one for one in weeks.on_sale if one.saturdays >= 3 or not one.left]
    if given := {one.code: one.left for one in over if one.left}:
        gift(weeks.book, given, to="the school fair", on=weeks.on)
    weeks.on_sale = [one for one in weeks.on_sale if one not in over]


def _come_back(weeks: Weeks, bars: Bars) -> None:
    """A complaint, with the bar that came back, and how it ended."""
    stall = STALLS[bars.number % weeks.scale.stalls]
    person = PersonDetails(name="Wilmot Sedge", phone="020 910 0399", health="dry hands")
    report = Report(
        weeks.on, "dry skin after washing", person, bars.code, bought_on=weeks.on - timedelta(days=2), at=stall
    )
    number = book_complaint(weeks.book, report)
    if bars.saturdays:
        take_back(weeks.book, {bars.code: 1}, customer=None, stall=stall, on=weeks.on, reason="dry skin")
        waste_lot(weeks.book, bars.code, 1, place="returns", on=weeks.on, reason="opened")
    note_complaint(weeks.book, number, Noted(weeks.on, MAKER, "rang and asked", serious=False, decided_by=MAKER))
    close_complaint(weeks.book, number, Noted(weeks.on, MAKER, "sent another bar"))
