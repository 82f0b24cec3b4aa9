"""What was read and seen while a batch was made and cured, as its record shows it."""

from dataclasses import dataclass
from datetime import date
from textwrap import shorten
from typing import NamedTuple

from ledger.domain.bench.steps import step_limit
from ledger.domain.recipe.recipe import OwnStep, Recipe
from ledger.domain.tools.limits import limit_of
from ledger.domain.tools.readings import ACIDITY, FIGURES, READINGS, STEP
from ledger.domain.tools.titre import measured
from ledger.rows.reading import Observation, observations
from ledger.units.dates import show_date
from ledger.units.quantity import whole
from ledger.units.words import Units
from ledger.views.bench.bench import steps_of
from ledger.views.record.head import Head, Section
from ledger.views.record.pieces import GAP, Column, Pieces, Words, grid
from ledger.views.record.sources import Sources

_LONG = 34  # letters of what is read: more is a step in her own words, which a screen shortens


class RecordedReading(NamedTuple):
    """One thing observed or measured while making or curing."""

    on: date
    at: str | None
    what: str
    value: str  # with its unit, as it is printed
    by: str
    entry: int
    limit: str | None = None
    method: str | None = None  # of a pH: method, dilution, calibration
    tool: str | None = None  # what it was read with, where that is known
    corrected: bool = False  # a later reading stands in for it
    way: str | None = None  # of a pH: meter or strip, as far as was said
    dilution_ppm: int | None = None  # and how much soap was in the water
    typed: str | None = None  # as it was typed, where that was in other units

    @property
    def as_typed(self) -> str:
        """The value, with how it was typed where that was in other units."""
        return f"{self.value} (typed {self.typed})" if self.typed else self.value

    @property
    def in_full(self) -> str:
        """The value with how and with what it was read."""
        parts = (self.as_typed, self.method, self.tool, "corrected below" if self.corrected else None)
        return "; ".join(word for word in parts if word)


@dataclass(frozen=True)
class Observed(Section):
    """Everything read, those corrected too, with the limits they are held against."""

    title = "Readings and observations"
    readings: tuple[RecordedReading, ...]
    not_logged: tuple[str, ...]  # steps of the worksheet that nobody booked

    def paper(self, head: Head) -> Pieces:
        """With its limit and its entry, and what was not logged, so that no blank is left unexplained."""
        room = 0.11 if any(len(one.what) > _LONG for one in self.readings) else 0.0  # for steps in her own words
        table = grid(
            self.readings,
            Column("on", lambda one: whole(show_date(one.on)), 0.12),
            Column("at", lambda one: one.at or "", 0.07),
            Column("what", lambda one: one.what, 0.17 + room),
            Column("value", lambda one: one.in_full, 0.25 - room, bold=True),
            Column("limit", lambda one: one.limit or "", 0.2),
            Column("by", lambda one: one.by, 0.12),
            Column("entry", lambda one: str(one.entry), 0.07, right=True),
        )
        missing = (Words(f"Not logged: {'; '.join(self.not_logged)}."),) if self.not_logged and head.made_on else ()
        return (table if self.readings else Words("None logged."), *missing)

    def screen(self, _: Head) -> Pieces:
        """What was read, and by whom."""
        table = grid(
            self.readings,
            Column("on", lambda one: show_date(one.on)),
            Column("read", lambda one: shorten(one.what, _LONG, placeholder=" …")),
            Column("", lambda one: f"{one.as_typed} (corrected below)" if one.corrected else one.as_typed),
            Column("by", lambda one: one.by),
        )
        return (GAP, table) if self.readings else ()


def observed(read: Sources) -> Observed:
    """What was read, and the steps of the worksheet that nobody booked."""
    recipe, units = read.recipe, read.own.units
    known = {(one.what, one.mark) for one in read.readings}
    asked = steps_of(read.rows, read.batch)
    own = {(one.what, one.mark): one for one in (recipe.steps if recipe else ())}
    return Observed(
        tuple(
            RecordedReading(
                on=one.on,
                at=one.at,
                what=_what(one, own.get((one.what, one.mark))),
                value=_value(one, units),
                by=one.by,
                entry=one.entry,
                limit=_limit(one, recipe, own.get((one.what, one.mark)), units),
                method=_method(one),
                tool=one.tool,
                corrected=one.corrected,
                way=measured(one.method).way if _is_ph(one) else None,
                dilution_ppm=measured(one.method).dilution_ppm if _is_ph(one) else None,
                typed=one.text if one.value is not None else None,
            )
            for one in observations(read.rows, read.batch.id)
        ),
        tuple(step.label for step in asked if (step.what, step.mark) not in known) if read.batch.recipe_code else (),
    )


def _what(one: Observation, step: OwnStep | None) -> str:
    if step:
        return f"{step.text} ({step.reading})" if step.reading else step.text
    if one.bars:
        return f"{one.what}, {one.bars} together"
    return f"{one.what} {one.mark}" if one.mark else one.what


def _limit(one: Observation, recipe: Recipe | None, step: OwnStep | None, units: Units) -> str | None:
    """What it is held against: the limit of its step, and that of the recipe, which is for none of marked bars."""
    own = step_limit(step, units) if step else None
    usual = limit_of(recipe.limits, one.what, units) if recipe and not one.bars and (step or not one.mark) else None
    return "; ".join(word for word in (own, usual) if word) or None


def _method(one: Observation) -> str | None:
    return one.method or ("method not stated" if _is_ph(one) else None)


def _is_ph(one: Observation) -> bool:
    row = READINGS.get(one.what)
    return row is not None and row.answer is ACIDITY


def _value(one: Observation, units: Units) -> str:
    if one.what == STEP:
        return {"yes": "done", "no": "not done"}.get(one.text or "", one.text or "")
    if one.value is None or one.unit is None:
        return one.text or one.at or ""
    return FIGURES[one.unit].show(one.value, units)
