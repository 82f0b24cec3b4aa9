"""What every command finds on the desk: the ledger, who is at it, and what day it is."""

import datetime as clock
import os
import shlex
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, time, timedelta
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

import typer

from ledger.cli.kit.show import warn
from ledger.cli.kit.waiting import held
from ledger.errors import Refused

if TYPE_CHECKING:
    from ledger.rows.opened import Rows
    from ledger.rows.settings import Settings
    from ledger.storage.book import Book

DEFAULT_FILE = "soap.db"


@dataclass
class Desk:
    """One run of the program; the only place that knows the clock."""

    path: Path
    who_given: str | None = None
    debug: bool = False
    again: str | None = None  # the command that shows once more what this run booked, as soon as it is all booked
    paper: Path | None = None  # the file that was drawn of it, as soon as it has its name
    books: list["Book"] = field(default_factory=list, repr=False)  # every one that this run wrote in
    _rows: "Rows | None" = field(default=None, repr=False)
    _earlier: "Rows | None" = field(default=None, repr=False)

    def rows(self) -> "Rows":
        """A connection that can only read; an older file is brought up to date first.

        All that is read belongs to one state of the ledger, until she is asked, something is written or the answer
        is shown: `let_go`.
        """
        from ledger.rows.opened import hold_still

        if self._rows is None:
            from ledger.rows.opened import OlderLedger, back_from_wal, open_rows

            if back_from_wal(self.path):
                warn(
                    "Another program had put the ledger into a mode (WAL) that lets nothing be booked; it was set back."
                )
            try:
                self._rows = open_rows(self.path)
            except OlderLedger:
                from ledger.storage.book import Book

                book = self.writing_in(Book(self.path, who=self.who_given or _user(), now=now))
                book.close()
                if book.old_copy:  # else another program did it meanwhile, and said so
                    warn(f"The ledger was brought up to date; a copy of the old one is {book.old_copy}.")
                self._rows = open_rows(self.path)
        hold_still(self._rows)
        return self._rows

    def let_go(self) -> None:
        """End what is being read, so that others may write."""
        from ledger.rows.opened import let_go

        for rows in (self._rows, self._earlier):
            if rows is not None:
                let_go(rows)

    def lay(self) -> None:
        """Make this the desk of the run, until `leave`."""
        held.append(self.let_go)

    def leave(self) -> None:
        """Close what was opened for reading."""
        held.remove(self.let_go)
        for rows in (self._rows, self._earlier):
            if rows is not None:
                rows.close()
        self._rows = self._earlier = None

    def rows_as_of(self, text: str) -> "Rows":
        """What the ledger knew at an entry's number, or at the end of a day. Raises BadInput for neither."""
        from zoneinfo import ZoneInfo

        from ledger.rows.history import last_entry_before
        from ledger.rows.opened import as_known, hold_still, open_rows
        from ledger.units.dates import not_future, parse_date

        self.rows()
        rows = self._earlier = open_rows(self.path)
        if text.strip().isdecimal() and len(text.strip()) < 8:
            as_known(rows, int(text))
            hold_still(rows)
            return rows
        day = not_future(parse_date(text, today=self.today, what="the day"), today=self.today, what="the day")
        midnight = datetime.combine(day + timedelta(days=1), time(), ZoneInfo(self.settings.time_zone))
        as_known(rows, last_entry_before(rows, f"{midnight.astimezone(UTC):%Y-%m-%dT%H:%M:%SZ}"))
        hold_still(rows)
        return rows

    def book(self) -> "Book":
        """The ledger opened for writing."""
        from ledger.storage.book import Book

        self._look_at_the_clock()
        who = self.who
        self.let_go()  # our views and guards may have to be laid anew first
        return self.writing_in(Book(self.path, who=who, now=now, let_go=self.let_go))

    def _look_at_the_clock(self) -> None:
        """Say so where the clock stands before the last entry; what is booked then is in its order all the same."""
        from ledger.rows.settings import printed_from

        last = printed_from(self.rows(), "").recorded_at
        if not self.books and last > f"{now():%Y-%m-%dT%H:%M:%SZ}":
            warn(
                f"The clock of this computer stands at {self.clock(now().isoformat())}, before the last entry "
                f"({self.clock(last)}); set it right."
            )

    def typed(self, command: str, output: Path | None = None) -> str:
        """A command on this ledger as she types it, with the file it writes."""
        ledger = "" if str(self.path) == DEFAULT_FILE else f"--ledger {shlex.quote(str(self.path))} "
        return f"soapledger {ledger}{command}{f' -o {shlex.quote(str(output))}' if output else ''}"

    def writing_in(self, book: "Book") -> "Book":
        """Remember a ledger opened for writing, so that a run that goes wrong can ask it what stands."""
        self.books.append(book)
        return book

    @cached_property
    def settings(self) -> "Settings":
        """Who she is and how the ledger speaks."""
        from ledger.rows.settings import settings

        return settings(self.rows())

    @cached_property
    def maker(self) -> str | None:
        """Who is at the bench by name: --as NAME, else the maker of the ledger; None where neither is known."""
        from ledger.rows.settings import settings_if_any

        known = None if self.who_given or not self.path.exists() else settings_if_any(self.rows())
        return self.who_given or (known.maker if known else None)

    @property
    def who(self) -> str:
        """Who writes: one with a name, or the name of the computer's user."""
        return self.maker or _user()

    @property
    def decider(self) -> str:
        """Who decides, by name: nobody does so for the user of a computer. Raises Refused where no name is known."""
        if self.maker is None:
            raise Refused(
                "A decision is booked by name, and this ledger does not know yours yet. Give it once: "
                "soapledger init --maker NAME. Or name whoever decides this time: soapledger --as NAME and the command."
            )
        return self.maker

    @property
    def today(self) -> date:
        """Today in the ledger's own time zone."""
        from zoneinfo import ZoneInfo

        return now().astimezone(ZoneInfo(self.settings.time_zone)).date()

    @property
    def clock_now(self) -> str:
        """The time of day by the ledger's own clock: 14:05."""
        from zoneinfo import ZoneInfo

        return f"{now().astimezone(ZoneInfo(self.settings.time_zone)):%H:%M}"

    def clock(self, recorded_at: str) -> str:
        """A stored moment as her own clock showed it: 25 Nov 2026 14:05."""
        from zoneinfo import ZoneInfo

        from ledger.units.dates import show_date

        there = datetime.fromisoformat(recorded_at).astimezone(ZoneInfo(self.settings.time_zone))
        return f"{show_date(there.date())} {there:%H:%M}"

    def day(self, text: str | None, *, what: str = "the date") -> date:
        """The business date of a command: --on, or today. Raises BadInput for one that has not come."""
        if text is None:
            return self.today
        from ledger.units.dates import not_future, parse_date

        return not_future(parse_date(text, today=self.today, what=what), today=self.today, what=what)


def _user() -> str:
    return os.environ.get("USER") or os.environ.get("USERNAME") or "the maker"


def now() -> datetime:
    """This moment, in UTC."""
    return clock.datetime.now(UTC)


def desk(ctx: typer.Context) -> Desk:
    """The desk that the root command laid out."""
    found = ctx.find_object(Desk)
    assert found is not None
    return found
