"""A delivery becomes lots: codes, carriage, acceptance, and what is refused."""

from datetime import date
from typing import Any

import pytest

from ledger.errors import BadInput
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.people.suppliers import SupplierDetails, add_supplier
from ledger.operations.stock.receive import DeliveryLine, DeliveryNote, ReceivedLot, doubts, receive
from ledger.rows.lot import find_lot
from ledger.storage.personal import PersonDetails
from ledger.units.quantity import WHOLE_PPM

ON = date(2026, 5, 20)


def came(shop: Any, *lines: DeliveryLine, **note: Any) -> tuple[ReceivedLot, ...]:
    return receive(shop.book, DeliveryNote("tarnlow", ON, lines, **note))


def costs(shop: Any, lots: tuple[ReceivedLot, ...]) -> list[int | None]:
    return [find_lot(shop.rows(), one.code).cost_minor for one in lots]


def test_carriage_is_shared_by_what_the_lines_cost_and_nothing_is_lost(shop: Any) -> None:
    # 10.00 over 1.00, 1.00 and 1.00: a third each, 3.33 + 3.34 + 3.33 by running totals 333.3, 666.7, 1000
    lines = [DeliveryLine("olive oil", 1_000_000, f"A{n}", 100) for n in range(3)]
    assert costs(shop, came(shop, *lines, carriage_minor=1000)) == [433, 434, 433]


def test_a_line_of_unknown_cost_bears_no_carriage_and_stays_unknown(shop: Any) -> None:
    lots = came(
        shop,
        DeliveryLine("olive oil", 1_000_000, "A1", None),
        DeliveryLine("coconut oil", 1_000_000, "B1", 0),
        DeliveryLine("water", 1_000_000, "C1", 0),
        carriage_minor=500,
    )
    assert costs(shop, lots) == [None, 250, 250]  # both free lines alike, as neither cost anything


@pytest.mark.parametrize(
    ("by", "shares"),
    [
        # 12.00 over 30.00, 60.00 and 10.00: 3.60, 7.20 and 1.20
        ("value", [3360, 6720, 1120]),
        # over 5, 1 and 3 kg: 6.667, 1.333 and 4.00, by running totals 666.7, 800, 1200
        ("mass", [3667, 6133, 1400]),
    ],
)
def test_carriage_by_value_or_by_mass(shop: Any, by: Any, shares: list[int]) -> None:
    lines = (
        DeliveryLine("olive oil", 5_000_000, "A1", 3000),
        DeliveryLine("coconut oil", 1_000_000, "B1", 6000),
        DeliveryLine("water", 3_000_000, "C1", 1000),
    )
    lots = came(shop, *lines, carriage_minor=1200, carriage_by=by)
    assert costs(shop, lots) == shares == [one.cost_minor for one in lots]
    assert sum(one.carriage_minor for one in lots) == 1200
    stored = shop.rows().execute("SELECT carriage_minor, carriage_by FROM delivery ORDER BY id DESC LIMIT 1").fetchone()
    assert tuple(stored) == (1200, by)


def test_by_mass_a_line_of_unknown_cost_bears_none_either(shop: Any) -> None:
    lines = (DeliveryLine("olive oil", 5_000_000, "A1", None), DeliveryLine("water", 1_000, "C1", 1000))
    assert costs(shop, came(shop, *lines, carriage_minor=1200, carriage_by="mass")) == [None, 2200]


def test_what_is_counted_in_pieces_has_no_mass_to_share_by(shop: Any) -> None:
    add_material(shop.book, MaterialFacts("paper band"), kind="packaging", code=None)
    lines = (DeliveryLine("olive oil", 5_000_000, "A1", 100), DeliveryLine("paper band", 100, "W", 1400))
    with pytest.raises(BadInput, match="paper band is counted in pieces and not weighed"):
        came(shop, *lines, carriage_minor=1200, carriage_by="mass")
    assert costs(shop, came(shop, *lines, carriage_by="mass")) == [100, 1400]  # nothing is shared


def test_her_own_harvest_was_free_and_bears_what_its_way_here_cost(shop: Any) -> None:
    add_supplier(shop.book, SupplierDetails("The garden", PersonDetails()), own=True, code="garden")
    lines = tuple(DeliveryLine("olive oil", 1_000_000, None, None) for _ in range(2))
    lots = receive(shop.book, DeliveryNote("garden", ON, lines, carriage_minor=101))
    assert costs(shop, lots) == [51, 50]  # a half of 1.01 is 50.5, and half up


def test_without_acceptance_everything_waits_in_quarantine(shop: Any) -> None:
    (lot,) = came(shop, DeliveryLine("olive oil", 1_000_000, "A1", 700))
    assert lot.status == find_lot(shop.rows(), lot.code).status == "quarantine"


def test_one_acceptance_leaves_out_the_line_with_a_reason(shop: Any) -> None:
    good, dented = came(
        shop,
        DeliveryLine("olive oil", 1_000_000, "A1", 700),
        DeliveryLine("coconut oil", 1_000_000, "B1", 600, hold_back="drum dented"),
        accepted_by="Nuala",
    )
    rows = shop.rows()
    assert (find_lot(rows, good.code).status, find_lot(rows, dented.code).status) == ("accepted", "on hold")
    found = rows.execute("SELECT reason, by FROM decision WHERE verdict = 'on hold'").fetchone()
    assert tuple(found) == ("drum dented", "Nuala")


def test_an_unknown_number_is_kept_as_unknown_and_never_made_up(shop: Any) -> None:
    (lot,) = came(shop, DeliveryLine("olive oil", 1_000_000, None, 700))
    row = find_lot(shop.rows(), lot.code)
    assert row.supplier_number is None
    assert row.number_unknown


def test_her_own_growing_has_no_number_to_be_unknown_and_costs_nothing(shop: Any) -> None:
    add_supplier(shop.book, SupplierDetails("Own garden", PersonDetails()), own=True, code="garden")
    (lot,) = receive(shop.book, DeliveryNote("garden", ON, (DeliveryLine("water", 1_000_000, None, None),)))
    row = find_lot(shop.rows(), lot.code)
    assert not row.number_unknown
    assert row.cost_minor == 0


def test_a_delivery_is_one_entry_or_nothing(shop: Any) -> None:
    before = shop.rows().execute("SELECT count(*), (SELECT count(*) FROM lot) FROM entry").fetchone()
    with pytest.raises(BadInput, match="No material is called 'olve'"):
        came(shop, DeliveryLine("coconut oil", 1_000_000, "B1", 600), DeliveryLine("olve", 1_000_000, "A1", 700))
    assert shop.rows().execute("SELECT count(*), (SELECT count(*) FROM lot) FROM entry").fetchone() == before
    came(shop, DeliveryLine("coconut oil", 1_000_000, "B1", 600), DeliveryLine("olive oil", 1_000_000, "A1", 700))
    after = shop.rows().execute("SELECT count(*), (SELECT count(*) FROM lot) FROM entry").fetchone()
    assert tuple(after) == (before[0] + 1, before[1] + 2)


@pytest.mark.parametrize(
    ("line", "says"),
    [
        (DeliveryLine("olive oil", 0, "A1", 700), "nothing was received"),
        (DeliveryLine("plain-bar", 10, "A1", 700), "from your own batches"),
        (DeliveryLine("water", 1000, "A1", 700, sap_mg_per_kg=(190_000, 190_000)), "not a fat"),
        # 0.134 g NaOH per g, typed where mg KOH per g is meant
        (DeliveryLine("olive oil", 1000, "A1", 700, sap_mg_per_kg=(134, 134)), "given for NaOH"),
        (DeliveryLine("olive oil", 1000, "A1", 700, sap_mg_per_kg=(196_000, 184_000)), "lower figure first"),
        (DeliveryLine("olive oil", 1000, "A1", 700, purity_ppm=990_000), "neither an alkali nor an acid"),
        (DeliveryLine("sodium hydroxide", 1000, "A1", 700, purity_ppm=1_010_000), "between 50 and 100 %"),
        (DeliveryLine("sodium hydroxide", 1000, "A1", 700, purity_ppm=9_900), "write 99 for 99 %"),
    ],
)
def test_figures_that_cannot_be_are_bad_input(shop: Any, line: DeliveryLine, says: str) -> None:
    with pytest.raises(BadInput, match=says):
        came(shop, line)
    with pytest.raises(BadInput, match=says):  # before any question is asked
        doubts(shop.rows(), DeliveryNote("tarnlow", ON, (line,)))


def test_a_delivery_without_lines_is_bad_input(shop: Any) -> None:
    with pytest.raises(BadInput, match="at least one line"):
        came(shop)


@pytest.mark.parametrize(
    ("line", "says"),
    [
        # 4471/2 came on 2 Mar; other capitals, dashes and a prefix make it no other number
        (DeliveryLine("olive oil", 1000, "LOT 4471-2", 700), "came before under their number LOT 4471-2, as L1-X"),
        (DeliveryLine("olive oil", 1000, "N1", 700, best_before=date(2026, 5, 19)), "best before 19 May 2026"),
        # the shop's olive oil has 190.0; 200 is more than a twentieth above it (199.5), 199 is not
        (DeliveryLine("olive oil", 1000, "N1", 700, sap_mg_per_kg=(200_000, 200_000)), "far from the 190.0"),
    ],
)
def test_what_to_look_at_twice_is_said(shop: Any, line: DeliveryLine, says: str) -> None:
    (sentence,) = doubts(shop.rows(), DeliveryNote("tarnlow", ON, (line,)))
    assert says in sentence


@pytest.mark.parametrize(
    ("low", "high", "doubted"),
    [(180_500, 199_500, False), (180_499, 190_000, True), (190_000, 199_501, True)],
)
def test_a_twentieth_to_each_side_of_the_known_value_is_near_enough(
    shop: Any, low: int, high: int, doubted: bool
) -> None:
    """The shop's olive oil has 190: 180.5 to 199.5 (common practice, no source)."""
    line = DeliveryLine("olive oil", 1000, "N1", 700, sap_mg_per_kg=(low, high))
    assert bool(doubts(shop.rows(), DeliveryNote("tarnlow", ON, (line,)))) is doubted


@pytest.mark.parametrize(("ppm", "can_be"), [(0, False), (1, True), (1_000_000, True), (1_000_001, False)])
def test_an_acid_is_of_more_than_nothing_and_at_most_pure(shop: Any, ppm: int, can_be: bool) -> None:
    facts = MaterialFacts("sour salt", "Citric Acid", acid_koh_mg_per_kg=876_000, purity_ppm=WHOLE_PPM)
    add_material(shop.book, facts, kind="additive", code=None)
    line = DeliveryLine("sour salt", 1000, "C1", 700, purity_ppm=ppm)
    if can_be:
        assert came(shop, line)
    else:
        with pytest.raises(BadInput, match="above 0, up to 100 %"):
            came(shop, line)


@pytest.mark.parametrize(
    "line",
    [
        DeliveryLine("coconut oil", 1000, "4471/2", 700),  # their number for another material
        DeliveryLine("olive oil", 1000, "4471/3", 700, best_before=ON),
        DeliveryLine("olive oil", 1000, None, 700, sap_mg_per_kg=(181_000, 199_000)),
    ],
)
def test_a_plain_line_raises_no_doubt(shop: Any, line: DeliveryLine) -> None:
    assert doubts(shop.rows(), DeliveryNote("tarnlow", ON, (line,))) == ()


def test_the_same_harvest_twice_is_asked_about(shop: Any, run: Any) -> None:
    """As much of the same, of the same day, without a number: a gram or a day beside it is another harvest."""
    add_supplier(shop.book, SupplierDetails("the garden"), own=True, code="garden")
    add_material(shop.book, MaterialFacts("petals"), kind="botanical", code=None)
    first = receive(shop.book, DeliveryNote("garden", ON, (DeliveryLine("petals", 80_000, None, None),)))[0].code

    def asked(mg: int, on: date) -> tuple[str, ...]:
        return doubts(shop.rows(), DeliveryNote("garden", on, (DeliveryLine("petals", mg, None, None),)))

    assert asked(80_000, ON) == (f"As much petals came from there on that day already, as {first}.",)
    for mg, on in ((80_001, ON), (79_999, ON), (80_000, date(2026, 5, 19)), (80_000, date(2026, 5, 21))):
        assert asked(mg, on) == ()
    words = ("receive", "garden", "--line", "petals; 80 g", "--on", "2026-05-20")
    assert "already" in run(*words, input="n\n", code=1).stderr
    run(*words, "--yes")
