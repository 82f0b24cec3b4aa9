"""The cure as a calendar file for her phone (RFC 5545)."""

from collections.abc import Sequence
from datetime import datetime, timedelta

from icalendar import Calendar, Event

from ledger.units.signs import masked
from ledger.views.cure.cure import RackDay


def cure_calendar(days: Sequence[RackDay], *, business: str, stamp: datetime) -> bytes:
    """All-day events that block no time; an identifier stays the same, so that a second export moves what moved.

    `stamp` is the UTC time of the ledger's last entry: equal ledgers give equal files.
    """
    calendar = Calendar()
    calendar.add("prodid", "-//soapledger//cure//EN")
    calendar.add("version", "2.0")
    calendar.add("x-wr-calname", f"{masked(business)}, the rack")
    for one in days:
        event = Event()
        event.add("uid", f"{one.batch_code}-{one.kind.replace(' ', '-')}@soapledger.invalid")
        event.add("dtstamp", stamp)
        event.add("dtstart", one.on)
        event.add("dtend", one.on + timedelta(days=1))
        event.add("summary", masked(one.words))
        event.add("transp", "TRANSPARENT")
        calendar.add_component(event)
    return bytes(calendar.to_ical())
