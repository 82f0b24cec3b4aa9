"""Business dates: local calendar days as she writes them."""

import re
from datetime import date, datetime, timedelta

from ledger.errors import BadInput
from ledger.units.wording import opening

MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip
_DAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")


def parse_date(text: str, *, today: date, what: str = "the date") -> date:
    """A day: 2026-11-25, 25 Nov 2026, today, yesterday, or the last such weekday. Raises BadInput."""
    plain = text.strip().casefold()
    if plain in ("today", "yesterday"):
        return today - timedelta(days=plain == "yesterday")
    if len(plain) >= 3 and any(day.startswith(plain) for day in _DAYS):
        index = next(i for i, day in enumerate(_DAYS) if day.startswith(plain))
        return today - timedelta(days=(today.weekday() - index) % 7)
    if match := re.fullmatch(r"(\d{4})-(\d{1,2})-(\d{1,2})", plain):
        return _day(int(match[1]), int(match[2]), int(match[3]), text, what)
    if match := re.fullmatch(r"(\d{1,2})\.? ([a-z]{3,9})\.? (\d{4})", plain):
        for number, month in enumerate(MONTHS, 1):
            if month.casefold().startswith(match[2]):
                return _day(int(match[3]), number, int(match[1]), text, what)
    if match := re.fullmatch(r"(\d{1,2})[/.](\d{1,2})[/.](\d{4}|\d{2})", plain):
        year = int(match[3]) + (2000 if len(match[3]) == 2 else 0)
        raise _two_ways(text, _readings(year, int(match[1]), int(match[2])), what)
    raise BadInput(
        f"{opening(what)} cannot be read from '{text.strip()}'; "
        f"write it like {today.isoformat()} or {show_date(today)}."
    )


def _readings(year: int, first: int, second: int) -> list[date]:
    days = []
    for day, month in dict.fromkeys([(first, second), (second, first)]):
        try:
            days.append(date(year, month, day))
        except ValueError:
            continue
    return days


def _two_ways(text: str, days: list[date], what: str) -> BadInput:
    if not days:
        return BadInput(f"There is no such day as '{text.strip()}'; look again at {what}.")
    how = "can be read two ways" if len(days) == 2 else "is not written as dates are here"
    return BadInput(
        f"{opening(what)} '{text.strip()}' {how}; write "
        + " or ".join(f"{day.isoformat()} for {show_date(day)}" for day in days)
        + "."
    )


def _day(year: int, month: int, day: int, text: str, what: str) -> date:
    if not 1990 <= year <= 2100:
        raise BadInput(f"{opening(what)} '{text.strip()}' lies outside the years 1990 to 2100.")
    try:
        return date(year, month, day)
    except ValueError:
        raise BadInput(f"There is no such day as '{text.strip()}'; look again at {what}.") from None


def not_future(day: date, *, today: date, what: str = "the date") -> date:
    """The day, unless it has not come yet. Raises BadInput."""
    if day > today:
        raise BadInput(f"{opening(what)} {show_date(day)} has not come yet; today is {show_date(today)}.")
    return day


def show_date(day: date) -> str:
    """A day as it is printed: 25 Nov 2026."""
    return f"{day.day} {MONTHS[day.month - 1][:3]} {day.year}"


def show_moment(recorded_at: str) -> str:
    """A stored UTC moment as it is read: 1 Jun 2026, 09:30 UTC."""
    moment = datetime.fromisoformat(recorded_at)
    return f"{show_date(moment.date())}, {moment:%H:%M} UTC"


def parse_best_before(text: str, *, today: date) -> date:
    """A last day of use: a month with its year, 2027-03, 03/2027 or Mar 2027, means its last day; else as a day.

    Raises BadInput.
    """
    plain, what = text.strip().casefold(), "the best-before date"
    if match := re.fullmatch(r"(?P<year>\d{4})-(?P<month>\d{1,2})|(?P<first>\d{1,2})[/.-](?P<last>\d{4})", plain):
        year, month = int(match["year"] or match["last"]), int(match["month"] or match["first"])
        if not 1 <= month <= 12:
            raise BadInput(f"There is no such month as '{text.strip()}'; look again at {what}.")
        return _month_end(year, month, text, what)
    if match := re.fullmatch(
        r"(?P<name>[a-z]{3,9})\.? (?P<year>\d{4})", plain.removeprefix("end ").removeprefix("of ")
    ):
        for number, name in enumerate(MONTHS, 1):
            if name.casefold().startswith(match["name"]):
                return _month_end(int(match["year"]), number, text, what)
    return parse_date(text, today=today, what=what)


def _month_end(year: int, month: int, text: str, what: str) -> date:
    first = _day(year, month, 1, text, what)
    return date(first.year + month // 12, month % 12 + 1, 1) - timedelta(days=1)


def show_best_before(day: date) -> str:
    """A last day of use: end Aug 2027 where it is that of its month, else the day."""
    last = (day + timedelta(days=1)).day == 1
    return f"end {show_date(day).partition(' ')[2]}" if last else show_date(day)


def add_months(day: date, months: int) -> date:
    """So many months later; a day the month lacks becomes its last."""
    from dateutil.relativedelta import relativedelta

    later: date = day + relativedelta(months=months)
    return later


def parse_clock(text: str) -> str:
    """A local clock time as 14:05. Raises BadInput."""
    match = re.fullmatch(r"([01]?\d|2[0-3])[:.]([0-5]\d)", text.strip())
    if not match:
        raise BadInput(f"'{text.strip()}' is not a clock time; write it like 14:05.")
    return f"{int(match[1]):02d}:{match[2]}"
