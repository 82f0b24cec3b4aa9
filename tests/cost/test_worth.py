"""What all of it is worth on a day: each account by hand, and what is not known outside."""

from collections.abc import Callable
from datetime import date

import pytest
from bare_ledger import BareLedger

from ledger.rows.batch import batches
from ledger.rows.laws import what_was_paid_is_somewhere
from ledger.units.money import show_money
from ledger.views.cost.cost import batch_cost, batch_costs
from ledger.views.cost.worth import Worth, worth

OWN = {"business": "Bare", "country": "IE", "currency": "EUR", "units": "metric", "time_zone": "UTC"}


def on(ledger: BareLedger, day: int = 30) -> Worth:
    found = worth(ledger.rows, date(2026, 3, day))
    assert found.differs_minor == 0
    assert not list(what_was_paid_is_somewhere(ledger.rows))
    return found


def test_each_thing_is_where_it_went_on_its_day() -> None:
    """A kilogram of oil for 1000; 600 g in a soap of 12 bars, 50 a bar; 100 g spilt; 50 g missing at a count."""
    ledger = BareLedger()
    oil = ledger.buy("A", cost_minor=1000, on="2026-03-02")
    batch = ledger.add("batch", code="26-001-4", process="cold", material_id=3, on="2026-03-03")
    ledger.move(oil, -600_000, "consumed", batch_id=batch, on="2026-03-03")
    ledger.move(oil, -100_000, "wasted", on="2026-03-04")
    ledger.move(oil, -50_000, "counted", on="2026-03-05")
    bars = ledger._lot("soap", batch_id=batch, on="2026-03-06")
    ledger.move(bars, 12, "yielded", batch_id=batch, on="2026-03-06")
    shop = ledger.add("place", code="shop", name="shop", kind="consignment")
    for place, many in ((4, 4), (2, 1), (shop, 2)):  # the stall, the retained samples, the shop
        for where, quantity in ((1, -many), (place, many)):
            values = {"lot_id": bars, "place_id": where, "quantity": quantity, "kind": "moved"}
            ledger.add("movement", on="2026-03-08", **values)
    ledger.move(bars, -3, "sold", place="quay", on="2026-03-09")
    ledger.move(bars, -1, "given", on="2026-03-09")
    ledger.move(bars, -2, "dispatched", on="2026-03-09")
    ledger.move(bars, 1, "returned", place="returns", on="2026-03-10")
    assert on(ledger, 1).goods == {}
    assert on(ledger, 2).goods == {"materials": 1000}
    assert on(ledger, 3).goods == {"materials": 400, "in work": 600}
    assert on(ledger, 5).goods == {"materials": 250, "in work": 600, "thrown away": 100, "counted off": 50}
    assert on(ledger, 6).goods == {"materials": 250, "bars here": 600, "thrown away": 100, "counted off": 50}
    assert on(ledger, 10).goods == {
        "materials": 250,
        "bars here": 100,  # 12 - 7 - 1 - 2
        "retained samples": 50,
        "returns shelf": 50,
        "bars at stalls": 50,
        "bars at shops": 100,
        "sold": 200,  # 3 + 2 - 1
        "given away": 50,
        "thrown away": 100,
        "counted off": 50,
    }


def test_what_holds_something_of_unknown_cost_is_outside_and_named() -> None:
    """400 of known oil went into a soap with oil of which nobody knows what it cost; the soap goes no further."""
    ledger = BareLedger()
    known, unknown = ledger.buy("A", cost_minor=1000), ledger.buy("B")
    batch, (bars,) = ledger.make("cold", [])
    ledger.move(known, -400_000, "consumed", batch_id=batch)
    ledger.move(unknown, -1000, "consumed", batch_id=batch)
    ledger.move(bars, -3, "dispatched")
    found = on(ledger)
    assert found.goods == {"materials": 600, "outside": 400}
    assert [(one.code, one.came, one.on_hand) for one in found.unknown] == [
        (ledger.code("lot", unknown), 1_000_000, 999_000)
    ]
    assert found.unknown_in == (ledger.code("batch", batch),)
    ledger.move(unknown, 1000, "consumed", batch_id=batch)  # it was another batch after all
    found = on(ledger)
    assert found.goods == {"materials": 600, "bars here": 340, "sold": 60}
    assert found.unknown_in == ()


def test_a_lot_that_was_free_is_known_and_one_of_unknown_cost_is_not() -> None:
    ledger = BareLedger()
    ledger.buy("A", cost_minor=0)
    found = on(ledger)
    assert (found.goods, found.unknown) == ({}, ())


def test_a_batch_given_up_keeps_what_went_in_from_its_day_on() -> None:
    ledger = BareLedger()
    oil = ledger.buy("A", cost_minor=1000)
    batch = ledger.add("batch", code="26-001-4", process="cold", material_id=3, on="2026-03-02")
    ledger.move(oil, -250_000, "consumed", batch_id=batch, on="2026-03-02")
    ledger.add("decision", batch_id=batch, verdict="discarded", on="2026-03-05", by="Nuala")
    assert on(ledger, 4).goods == {"materials": 750, "in work": 250}
    assert on(ledger, 5).goods == {"materials": 750, "given up": 250}


def test_carriage_is_told_apart_and_that_of_unknown_goods_is_outside() -> None:
    ledger = BareLedger()
    first, second = (
        ledger.add("delivery", supplier_id=1, on="2026-03-02", carriage_minor=minor) for minor in (120, 77)
    )
    ledger.buy("A", cost_minor=1120, delivery_id=first)
    ledger.buy("B", delivery_id=second)
    found = on(ledger)
    assert (found.goods_minor, found.carriage_minor, found.carriage_outside_minor) == (1000, 120, 77)


def test_work_and_the_house_go_with_the_bars_apart_from_the_goods() -> None:
    """90 minutes at 14.00 are 21.00 and a batch bears 3.00 of the house: 24.00 over 20 bars, of which 5 were sold."""
    ledger = BareLedger()
    ledger.add("settings_revision", labour_minor_per_hour=1400, **OWN)
    ledger.add("cost_rate", on="2026-03-01", kind="batch", minor=300)
    batch, (bars,) = ledger.make("cold", [ledger.buy("A", cost_minor=1000)])
    ledger.add("work", batch_id=batch, on="2026-03-02", stage="making", minutes=60, by="Nuala")
    ledger.add("work", batch_id=batch, on="2026-03-20", stage="wrapping", minutes=30, by="Nuala")
    ledger.move(bars, -5, "dispatched")
    found = on(ledger)
    assert (found.work_minor, found.house_minor) == (2100, 300)
    assert found.work == {"bars here": 1800, "sold": 600}
    assert on(ledger, 19).work == {"bars here": 1275, "sold": 425}  # an hour and the house: 17.00
    cost = batch_cost(ledger.rows, ledger.code("batch", batch))
    assert (cost.labour_minor, cost.overhead_minor, cost.total_minor) == (2100, 300, 2401)


def test_a_new_rate_leaves_an_old_batch_as_it_was() -> None:
    ledger = BareLedger()
    ledger.add("settings_revision", labour_minor_per_hour=1400, **OWN)
    batch, _ = ledger.make("cold", [ledger.buy("A", cost_minor=1000)])
    ledger.add("work", batch_id=batch, on="2026-03-02", stage="making", minutes=60, by="Nuala")
    before = batch_cost(ledger.rows, ledger.code("batch", batch))
    ledger.add("cost_rate", on="2026-03-03", kind="hour", minor=9900)
    ledger.add("cost_rate", on="2026-03-03", kind="batch", minor=500)
    assert batch_cost(ledger.rows, ledger.code("batch", batch)) == before
    ledger.add("cost_rate", on="2026-03-02", kind="hour", minor=1500)
    assert batch_cost(ledger.rows, ledger.code("batch", batch)).labour_minor == 1500


def test_on_the_day_of_a_count_what_was_found_stands_before_what_left() -> None:
    """A kilogram for 1000, used up in the morning; in the evening 250 g more are found to have been there."""
    ledger = BareLedger()
    oil = ledger.buy("A", cost_minor=1000)
    batch, _ = ledger.make("cold", [])
    ledger.move(oil, -1_000_000, "consumed", batch_id=batch, on="2026-03-05")
    ledger.move(oil, 250_000, "counted", on="2026-03-05")
    assert on(ledger).goods == {"materials": 200, "bars here": 800}


@pytest.mark.parametrize(("currency", "paid", "shown"), [("JPY", 1000, "1000 JPY"), ("KWD", 1_000_001, "1000.001 KWD")])
def test_money_has_the_places_of_its_currency(currency: str, paid: int, shown: str) -> None:
    """ISO 4217: none for the yen, three for the Kuwaiti dinar; whole units are shared whichever they are."""
    ledger = BareLedger()
    ledger.add("settings_revision", **(OWN | {"currency": currency}))
    oil = ledger.buy("A", cost_minor=paid)
    batch, (bars,) = ledger.make("cold", [], bars=3)
    ledger.move(oil, -1_000_000, "consumed", batch_id=batch)
    ledger.move(bars, -1, "dispatched")
    found, each = on(ledger), batch_cost(ledger.rows, ledger.code("batch", batch)).per_bar_minor
    assert found.goods == {"bars here": paid - each[0], "sold": each[0]}
    assert sum(each) == paid
    assert found.currency == currency
    assert show_money(paid, currency) == shown


def test_it_takes_as_many_statements_for_many_batches_as_for_one() -> None:
    """Of the whole ledger, of a batch, and of several batches together."""
    ledger = BareLedger()
    oil = ledger.buy("A", cost_minor=1000)

    def taken() -> list[int]:
        made = [one for one in batches(ledger.rows) if one.made]
        asked: list[Callable[[], object]] = [
            lambda: worth(ledger.rows, date(2026, 3, 30)),
            lambda: batch_costs(ledger.rows, made),
            lambda: list(what_was_paid_is_somewhere(ledger.rows)),
        ]
        counts = []
        for ask in asked:
            run: list[str] = []
            ledger.rows.set_trace_callback(run.append)
            ask()
            ledger.rows.set_trace_callback(None)
            counts.append(len(run))
        return counts

    drum = oil
    for _ in range(2):
        _, (drum,) = ledger.make("combine", [oil, drum])
    ledger.make("cold", [drum])
    before = taken()
    for _ in range(5):
        _, (drum,) = ledger.make("combine", [oil, drum])
        _, (bars,) = ledger.make("cold", [drum])
        ledger.move(bars, -3, "dispatched")
    assert taken() == before
    assert max(before) < 25


def test_her_own_use_and_what_went_back_to_a_supplier_stand_apart() -> None:
    """As their notes say: 2 bars of 20 that cost 1000 she used herself; 100 g of another lot went back."""
    ledger = BareLedger()
    oil, bad = ledger.buy("A", cost_minor=1000), ledger.buy("B", cost_minor=500)
    batch, (bars,) = ledger.make("cold", [])
    ledger.move(oil, -1_000_000, "consumed", batch_id=batch)
    ledger.move(bars, -2, "given", note="own use")
    ledger.move(bars, -1, "given", note="Ida Marsh (tester)")
    ledger.move(bad, -100_000, "wasted", note="Sent back, rancid")
    ledger.move(bad, -200_000, "wasted", note="spilt")
    assert on(ledger).goods == {
        "materials": 350,
        "bars here": 850,
        "own use": 100,
        "given away": 50,
        "thrown away": 100,
        "sent back": 50,
    }
