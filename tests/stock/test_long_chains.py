"""A drum topped up for twenty-five years is a chain of 300 batches, and no question about it fails."""

from functools import cache

from bare_ledger import BareLedger

from ledger.views.cost.cost import batch_cost
from ledger.views.recipe.ingredients import bases_of_batch
from ledger.views.stock.made_of import Compositions

TIMES = 300


@cache
def topped_up() -> tuple[BareLedger, int, list[int]]:
    """A drum of which each filling is half the one before and half a new lot; a soap from the last; the lots bought."""
    house = BareLedger()
    bought = [house.buy("N-0")]
    drum = bought[0]
    for number in range(1, TIMES + 1):
        bought.append(house.buy(f"N-{number}"))
        _, (drum,) = house.make("combine", [drum, bought[-1]])
    soap, _ = house.make("cold", [drum])
    return house, soap, bought


def test_what_it_is_made_of_halves_with_each_filling() -> None:
    house, soap, bought = topped_up()
    found = {one.lot.id: one.mass_mg for one in bases_of_batch(house.rows, soap)}
    # the soap took 1 g: half of it the last lot bought, a quarter the one before, and so on
    for halvings, lot in enumerate(bought[:0:-1], 1):
        assert abs(found.get(lot, 0) - 1000 / 2**halvings) <= 1, lot  # whole milligrams, and not one of them lost
    assert sum(found.values()) == 1000
    assert found.keys() <= set(bought)


def test_its_shares_are_exact() -> None:
    house, soap, bought = topped_up()
    made = Compositions(house.rows)
    (taken,) = made.taken_by(soap)
    shares = made.shares(taken.lot)
    assert sum(shares.values()) == 1
    assert shares[bought[-1], False, None].as_integer_ratio() == (1, 2)
    assert shares[bought[0], False, None].as_integer_ratio() == (1, 2**TIMES)


def test_it_costs_what_its_lots_cost() -> None:
    house, soap, _ = topped_up()
    cost = batch_cost(house.rows, house.code("batch", soap))
    assert cost.unknown  # no lot here has a price, and the answer says of which lot it is not known
    assert cost.total_minor == 0
