"""What bars of a batch brought by outlet, less returns, tax and fees, and what is gained on each."""

import pytest
from bare_ledger import BareLedger

from ledger.domain.cost.gained import Brought, Charge, OutletSum, by_outlet, fee_share, gain_each
from ledger.views.cost.cost import TakenAt, batch_cost

QUAY, ROPEWALK = (4, None), (None, 1)


def test_a_fee_is_shared_by_what_the_lines_of_its_sale_brought() -> None:
    """7.00 over lines of 20.00, 10.00 and 5.00 of other goods: 4.00, 2.00 and 1.00."""
    lines = [(8, 4, 2000), (9, 2, 1000), (None, 0, 500)]
    assert [fee_share(Charge(QUAY, 700, lines), lot) for lot in (8, 9, 10)] == [400, 200, 0]


@pytest.mark.parametrize(
    ("lines", "share"),
    [
        ([(8, 3, 0), (9, 1, 0)], 75),  # nobody told a price: by the bars
        ([(8, 0, 0)], 0),  # neither bars nor money
        ([(8, 1, 100), (8, 1, 100), (9, 2, 200)], 50),  # two lines of one lot
        ([(8, -1, -100), (9, 2, 200)], 0),  # a line that takes back bears none
    ],
)
def test_where_there_is_no_amount_bars_bear_it(lines: list[tuple[int, int, int]], share: int) -> None:
    assert fee_share(Charge(QUAY, 100, lines), 8) == share


def test_outlets_stand_in_the_order_of_their_first_sale() -> None:
    brought = [
        Brought(ROPEWALK, 4, 2000, 0),
        Brought(QUAY, 2, 1300, 217),
        Brought(QUAY, -1, -650, -108),
        Brought(ROPEWALK, 0, -100, 0),  # a credit, without bars
    ]
    found = by_outlet(brought, [Charge(QUAY, 300, [(8, 2, 1300)])], 8)
    assert found == (OutletSum(ROPEWALK, 4, 2000, 100, 0, 0), OutletSum(QUAY, 1, 1300, 650, 109, 300))
    assert [one.left_minor for one in found] == [1900, 241]


@pytest.mark.parametrize(
    ("left", "cost", "bars", "each"), [(1000, 400, 4, 150), (1, 0, 2, 1), (-1, 0, 2, 0), (0, 5, 0, None)]
)
def test_what_is_gained_on_each(left: int, cost: int, bars: int, each: int | None) -> None:
    """Half a minor unit goes up."""
    assert gain_each(left, cost, bars) == each


def sold() -> tuple[BareLedger, int, int]:
    """20 bars that cost 1000; 4 sold at the quay for 26.00 with a pitch of 3.00, of which a bar came back for 6.50."""
    ledger = BareLedger()
    oil = ledger.buy("A", cost_minor=1000)
    batch, (bars,) = ledger.make("cold", [])
    ledger.move(oil, -1_000_000, "consumed", batch_id=batch)
    for place, many in (("workshop", -6), ("quay", 6)):
        ledger.move(bars, many, "moved", place=place)
    ledger.move(bars, -4, "sold", place="quay")
    went = ledger.rows.execute("SELECT max(id) FROM movement").fetchone()[0]
    sale = ledger.add("sale", on="2026-03-02", kind="sale", place_id=4)
    line = {"kind": "bars", "lot_id": bars, "reduction_minor": 0, "tax_ppm": 230_000}
    first = ledger.add("sale_line", sale_id=sale, movement_id=went, bars=4, gross_minor=2600, tax_minor=486, **line)
    ledger.add("fee", sale_id=sale, place_id=4, on="2026-03-02", kind="pitch", amount_minor=300)
    ledger.move(bars, 1, "returned", place="returns")
    came = ledger.rows.execute("SELECT max(id) FROM movement").fetchone()[0]
    back = ledger.add("sale", on="2026-03-03", kind="return", place_id=4)
    less = {"movement_id": came, "of_line_id": first, "bars": -1, "gross_minor": -650, "tax_minor": -122}
    ledger.add("sale_line", sale_id=back, **line, **less)
    return ledger, batch, bars


def test_a_batch_says_what_was_taken_by_outlet_and_gained_on_each_bar() -> None:
    """19.50 less 3.64 tax and 3.00 for the pitch is 12.86; three bars cost 1.50, so 11.36, 3.787 each."""
    ledger, batch, _ = sold()
    found = batch_cost(ledger.rows, ledger.code("batch", batch))
    assert found.by_outlet == (TakenAt("quay", 3, 2600, 650, 364, 300),)
    assert (found.taken_minor, found.sold_bars, found.unpriced_bars, found.gain_per_bar_minor) == (1950, 3, 0, 379)


def test_where_a_price_was_never_told_no_gain_is() -> None:
    ledger, batch, bars = sold()
    ledger.move(bars, -2, "dispatched")
    found = batch_cost(ledger.rows, ledger.code("batch", batch))
    assert (found.sold_bars, found.unpriced_bars, found.gain_per_bar_minor) == (5, 2, None)


def test_takings_that_are_told_later_are_told() -> None:
    """Two bars were sold at the quay for nobody knew what; later 9.00 is told for them, without bars of its own."""
    ledger, batch, bars = sold()
    ledger.move(bars, -2, "sold", place="quay")
    went = ledger.rows.execute("SELECT max(id) FROM movement").fetchone()[0]
    sale = ledger.add("sale", on="2026-03-04", kind="sale", place_id=4)
    line = {"sale_id": sale, "kind": "bars", "lot_id": bars, "reduction_minor": 0}
    ledger.add("sale_line", movement_id=went, bars=2, **line)
    found = batch_cost(ledger.rows, ledger.code("batch", batch))
    assert (found.unpriced_bars, found.gain_per_bar_minor) == (2, None)
    ledger.add("sale_line", bars=0, gross_minor=900, **line)
    found = batch_cost(ledger.rows, ledger.code("batch", batch))
    # 12.86 and 9.00 are 21.86; five bars cost 2.50, so 19.36, 3.872 each
    assert (found.unpriced_bars, found.sold_bars, found.gain_per_bar_minor) == (0, 5, 387)


def test_where_a_cost_was_never_told_no_gain_is() -> None:
    ledger, batch, _ = sold()
    ledger.move(ledger.buy("B"), -1000, "consumed", batch_id=batch)
    assert batch_cost(ledger.rows, ledger.code("batch", batch)).gain_per_bar_minor is None


def test_what_earlier_programs_booked_on_the_movement_is_taken_too() -> None:
    ledger, batch, bars = sold()
    ledger.add("customer", code="ropewalk", kind="shop")
    ledger.add("customer_revision", customer_id=1, name="The Ropewalk")
    ledger.move(bars, -2, "dispatched", customer_id=1, money_minor=900)
    found = batch_cost(ledger.rows, ledger.code("batch", batch))
    assert TakenAt("The Ropewalk", 2, 900, 0, 0, 0) in found.by_outlet
    assert found.taken_minor == 2850
