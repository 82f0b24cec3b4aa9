"""Which batches a failed check throws doubt on; the shop's batch was weighed on 1 Apr 2026 on five lines."""

from contextlib import closing
from datetime import UTC, date, datetime
from typing import Any

from making import cut, planned, weighed
from once import once

from ledger.operations.tools.checks import check_equipment
from ledger.operations.tools.equipment import EquipmentDetails, add_equipment
from ledger.rows.equipment import checks_of, equipment_by_code
from ledger.storage.book import Book
from ledger.storage.tables.reading import Reading
from ledger.views.tools.equipment_doubts import Touched, touched_since_last_good

FAILED = date(2026, 5, 10)
MADE = date(2026, 4, 1)
# The day it was weighed, when it was planned, and when the weighing was written down.
DAYS = {
    "before the good check": (date(2026, 5, 4), date(2026, 5, 4), date(2026, 5, 6)),
    "planned before the good check": (date(2026, 5, 8), date(2026, 5, 2), date(2026, 5, 8)),
    "weighed before the check was written": (date(2026, 5, 6), date(2026, 5, 3), date(2026, 5, 6)),
    "weighed on the day of the failed one": (date(2026, 5, 10), date(2026, 5, 9), date(2026, 5, 11)),
    "written late": (date(2026, 5, 9), date(2026, 5, 1), date(2026, 5, 25)),
    "after the failed one": (date(2026, 5, 11), date(2026, 5, 9), date(2026, 5, 11)),
}


@once
def item(shop: Any, name: str, kind: str = "scale", expected: int = 500_000, tolerance: int = 1000) -> str:
    return add_equipment(shop.book, kind, EquipmentDetails(name, None, expected, tolerance), on=FAILED)


@once
def check(shop: Any, code: str, found: int, on: date) -> None:
    check_equipment(shop.book, code, found, on=on, by="Nuala")


@once
def failed(shop: Any, code: str, found: int = 450_000, on: date = FAILED) -> Touched:
    check(shop, code, found, on)
    rows = shop.rows()
    card = equipment_by_code(rows, code, on)
    return touched_since_last_good(rows, card, max(checks_of(rows, card.id), key=lambda one: one.id))


@once
def read(shop: Any, what: str, value: int, unit: str, equipment: int | None = None, on: date = MADE) -> int:
    with shop.book.write("batch log") as tx:
        row = tx.add(Reading(batch_id=1, on=on, what=what, value=value, unit=unit, equipment_id=equipment))
        tx.say("Read.")
    assert row.id is not None
    return row.id


def codes(found: Any) -> list[str]:
    return [one.code for one in found]


def test_the_only_scale_weighed_every_line(shop: Any) -> None:
    touched = failed(shop, item(shop, "bench scale"))
    (one,) = touched.batches
    assert (one.code, one.product, one.lines) == (shop.batch, "Plain Bar", (1, 2, 3, 4))  # two oils, lye, water
    assert (one.first_on, one.last_on, touched.since, touched.unsaid) == (MADE, MADE, None, ())


def test_only_what_came_after_the_last_good_check_is_listed(shop: Any) -> None:
    scale = item(shop, "bench scale")
    later = cut(shop.book, on=date(2026, 5, 6))
    check(shop, scale, 500_000, date(2026, 4, 15))
    touched = failed(shop, scale)
    assert (touched.since, codes(touched.batches)) == (date(2026, 4, 15), [later])
    check(shop, scale, 500_000, date(2026, 5, 11))  # good again afterwards: changes nothing of that
    assert codes(failed(shop, scale, on=date(2026, 5, 12)).batches) == []


def test_on_the_day_of_the_good_check_what_was_written_after_it_counts(shop: Any) -> None:
    scale = item(shop, "bench scale")
    cut(shop.book, on=date(2026, 5, 6))
    check(shop, scale, 500_000, date(2026, 5, 6))
    later = cut(shop.book, on=date(2026, 5, 6))
    assert codes(failed(shop, scale).batches) == [later]


def test_what_was_weighed_after_the_day_of_the_failed_check_is_not_listed(shop: Any) -> None:
    scale = item(shop, "bench scale")
    assert failed(shop, scale, on=date(2026, 3, 31)).batches == ()
    assert codes(failed(shop, scale, on=MADE).batches) == [shop.batch]


def test_with_two_scales_none_can_be_excluded_unless_one_was_named(shop: Any) -> None:
    bench = item(shop, "bench scale")
    item(shop, "pocket scale")
    touched = failed(shop, bench)
    assert (touched.batches, codes(touched.unsaid)) == ((), [shop.batch])
    read(shop, "scale test", 500_000, "mg", equipment=1)  # the bench tried this one while the batch was made
    touched = failed(shop, bench)
    assert (codes(touched.batches), touched.unsaid) == ([shop.batch], ())


def test_a_thermometer_has_the_readings_that_name_it(shop: Any) -> None:
    dial = item(shop, "dial", "thermometer", 0, 500)
    item(shop, "probe", "thermometer", 0, 500)
    read(shop, "lye temperature", 49_000, "milli-C", equipment=1)
    touched = failed(shop, dial, 900)
    assert [(one.code, one.lines, one.readings) for one in touched.batches] == [(shop.batch, (), ("lye temperature",))]
    touched = failed(shop, "probe", 900)
    assert (touched.batches, touched.unsaid) == ((), ())  # named another


def test_a_ph_that_names_no_meter_is_the_only_meters_or_cannot_be_excluded(shop: Any) -> None:
    meter = item(shop, "pocket meter", "pH meter", 7000, 50)
    read(shop, "pH", 9600, "milli-pH")
    read(shop, "lye temperature", 49_000, "milli-C")
    assert [one.readings for one in failed(shop, meter, 7100).batches] == [("pH",)]
    item(shop, "old meter", "pH meter", 7000, 50)
    touched = failed(shop, meter, 7100)
    assert (touched.batches, [one.readings for one in touched.unsaid]) == ((), [("pH",)])


def test_a_batch_counts_by_the_day_of_its_weighing_whenever_it_was_planned_or_written_down(shop: Any) -> None:
    """The scale was good on 5 May and failed on 10 May; each batch is planned, weighed and written on days of its own.

    The good check itself was written on 7 May, two days late.
    """
    item(shop, "bench scale")
    made = {}
    steps = [(each[place], kind, one) for one, each in DAYS.items() for place, kind in ((1, "plan"), (2, "weigh"))]
    steps += [(date(2026, 5, 7), "good", ""), (date(2026, 5, 10), "bad", "")]
    for day, kind, one in sorted(steps):
        with closing(written_on(shop, day)) as book:
            if kind == "plan":
                made[one] = planned(book, on=day, fats_mg=500_000)
            elif kind == "weigh":
                weighed(book, made[one], on=DAYS[one][0])
            else:
                found, on = (500_000, date(2026, 5, 5)) if kind == "good" else (450_000, day)
                check_equipment(book, "bench-scale", found, on=on, by="Nuala")
    rows = shop.rows()
    card = equipment_by_code(rows, "bench-scale", FAILED)
    touched = touched_since_last_good(rows, card, checks_of(rows, card.id)[-1])
    names = {code: one for one, code in made.items()}
    assert sorted(names[code] for code in codes(touched.batches)) == [
        "planned before the good check",
        "weighed before the check was written",
        "weighed on the day of the failed one",
        "written late",
    ]


def written_on(shop: Any, day: date) -> Book:
    """The ledger on a day, at noon."""
    return Book(shop.book.path, who="Nuala", now=lambda: datetime(day.year, day.month, day.day, 12, tzinfo=UTC))
