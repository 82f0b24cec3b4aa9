"""How long a bar keeps: a date, or a period after opening."""

from datetime import date, timedelta
from typing import NamedTuple

from ledger.errors import BadInput, Refused
from ledger.units.dates import MONTHS, add_months
from ledger.units.wording import opening


class Durability(NamedTuple):
    """What stands on the bar: the last month that ends by a last day, or months after opening."""

    best_before: date | None
    after_opening_months: int | None

    @property
    def month_and_year(self) -> str | None:
        """The last month that ends by the last day, behind "best used before the end of": October 2028.

        The month named is included (Regulation (EC) 1223/2009, Art 19(1)(c), read), so the month of the last day itself
        would claim up to 30 days more than was assessed, unless that day is its last.
        """
        if self.best_before is None:
            return None
        ended = last_day_printed(self.best_before)
        return f"{MONTHS[ended.month - 1]} {ended.year}"


def last_day_printed(best_before: date) -> date:
    """The end of the last month that has ended by a day, that day included."""
    return (best_before + timedelta(days=1)).replace(day=1) - timedelta(days=1)


def durability(
    made_on: date,
    months: int,
    *,
    dated_months: int | None,
    after_opening_months: int | None = None,
    opening_matters: bool | None = None,
    assessed_months: int | None = None,
) -> Durability:
    """The durability of bars from their making, never beyond what was assessed (None: nothing was).

    Up to `dated_months` a date (None: always a date); above, the period after opening alone, or nothing where she says
    that opening does not matter: which of the two is a person's decision. Raises BadInput where that was not said, or
    for a period that has no place; Refused for more months than were assessed.
    """
    for what, number in (("the durability", months), ("the period after opening", after_opening_months)):
        if number is not None and number < 1:
            raise BadInput(f"{opening(what)} is a number of months from 1 up, not {number}.")
    if assessed_months is not None and months > assessed_months:
        raise Refused(
            f"{months} months are claimed, and the stability was assessed for {assessed_months}; "
            f"claim at most {assessed_months}."
        )
    if dated_months is None or months <= dated_months:
        if after_opening_months is not None:
            raise BadInput(
                f"Up to {dated_months} months a date stands on the bar; a period after opening takes its place only "
                f"above. Leave it out, with {months} months."
            )
        return Durability(add_months(made_on, months), None)
    if after_opening_months is None:
        if opening_matters is False:
            return Durability(None, None)
        raise BadInput(
            f"Above {dated_months} months no date stands on the bar, but a period after opening unless opening does "
            "not matter. Decide which: write after_opening_months = 12 or opening_matters = false under [label] in the "
            f"recipe, or a durability of at most {dated_months} months."
        )
    if after_opening_months > months:
        raise BadInput(
            f"An opened bar cannot outlast a closed one: {after_opening_months} months after opening, "
            f"and {months} from the making."
        )
    return Durability(None, after_opening_months)
