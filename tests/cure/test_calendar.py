"""The calendar file, read back with icalendar, its dates against dateutil (RFC 5545)."""

from datetime import UTC, date, datetime

import pytest
from dateutil.relativedelta import relativedelta
from icalendar import Calendar

from ledger.documents.cure.calendar import cure_calendar
from ledger.views.cure.cure import OnTheRack, rack_days

STAMP = datetime(2026, 11, 25, 9, 30, tzinfo=UTC)


def rack(cut: date, *, process: str = "cold") -> OnTheRack:
    usable = cut + relativedelta(days=7) if process == "hot" else None
    return OnTheRack(
        "26-118-0", "Plain Bar", process, cut, cut + relativedelta(days=28), usable, 28, 10, "curing",
        cut + relativedelta(days=7), None,
    )  # fmt: skip


def events(*racks: OnTheRack) -> dict[str, tuple[date, date]]:
    file = cure_calendar(rack_days(racks), business="Tidewrack Soaps", stamp=STAMP)
    assert b"\r\n" in file
    assert all(len(line) <= 75 for line in file.split(b"\r\n"))
    found = Calendar.from_ical(file)
    assert (found["VERSION"], str(found["PRODID"])[:13]) == ("2.0", "-//soapledger")
    shown = {}
    for event in found.walk("VEVENT"):
        assert event["TRANSP"] == "TRANSPARENT"
        assert event["DTSTART"].params["VALUE"] == "DATE"
        assert event.decoded("DTSTAMP") == STAMP
        shown[str(event["UID"])] = (event.decoded("DTSTART"), event.decoded("DTEND"))
    return shown


@pytest.mark.parametrize(
    ("cut", "ready", "after"),
    [
        (date(2026, 11, 25), date(2026, 12, 23), date(2026, 12, 24)),
        (date(2028, 2, 1), date(2028, 2, 29), date(2028, 3, 1)),  # a leap day
        (date(2026, 10, 3), date(2026, 10, 31), date(2026, 11, 1)),  # over the end of summer time and of the month
    ],
)
def test_the_cure_ends_on_an_all_day_event_whose_end_is_the_next_day(cut: date, ready: date, after: date) -> None:
    assert events(rack(cut))["26-118-0-ready@soapledger.invalid"] == (ready, after)


def test_a_second_export_keeps_its_identifiers_and_moves_what_moved() -> None:
    first, second = events(rack(date(2026, 11, 25), process="hot")), events(rack(date(2026, 11, 30), process="hot"))
    assert set(first) == set(second) == {f"26-118-0-{kind}@soapledger.invalid" for kind in ("ready", "usable", "weigh")}
    assert second["26-118-0-weigh@soapledger.invalid"][0] == date(2026, 12, 7)
    assert cure_calendar(rack_days([rack(date(2026, 11, 25))]), business="T", stamp=STAMP) == cure_calendar(
        rack_days([rack(date(2026, 11, 25))]), business="T", stamp=STAMP
    )
