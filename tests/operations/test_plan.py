"""Planning: which lots, how much of each, and the lye for exactly those."""

from datetime import date

import pytest
from conftest import PLAIN_BAR, Shop
from making import MADE, batch_of, deliver, lines_of, lots_of, planned

from ledger.errors import BadInput, Refused
from ledger.operations.materials import MaterialFacts, add_material
from ledger.operations.readings import discard_batch
from ledger.operations.receive import DeliveryLine
from ledger.operations.recipes import add_recipe

SOON = date(2026, 12, 31)  # before the 31 Aug 2027 of the shop's own olive oil


def test_the_lye_follows_from_fats_lots_and_superfat(shop: Shop) -> None:
    # 600 g x 190 + 400 g x 257 = 114.0 + 102.8 = 216.8 g KOH; x 39.99677 / 56.1053 = 154.554 g NaOH;
    # x 0.95 = 146.826 g; water twice as much, 293.652 g.
    assert lots_of(shop.book, planned(shop.book)) == [
        ("olive oil", shop.olive, 600_000),
        ("coconut oil", shop.coconut, 400_000),
        ("water", shop.water, 293_652),
        ("sodium hydroxide", shop.lye, 146_826),
    ]


def test_the_first_to_expire_goes_first_and_the_next_fills_up(shop: Shop) -> None:
    first = deliver(shop.book, DeliveryLine("olive oil", 500_000, "5101", 400, best_before=SOON))
    assert lots_of(shop.book, planned(shop.book))[:2] == [
        ("olive oil", first, 500_000),
        ("olive oil", shop.olive, 100_000),
    ]


def test_a_certificate_of_the_lot_goes_before_the_material(shop: Shop) -> None:
    line = DeliveryLine("olive oil", 500_000, "5101", 400, best_before=SOON, sap_mg_per_kg=(200_000, 200_000))
    deliver(shop.book, line)
    # 500 g x 200 + 100 g x 190 + 400 g x 257 = 221.8 g KOH; x 0.7128876 x 0.95 = 150.2125 g NaOH
    assert lots_of(shop.book, planned(shop.book))[-1] == ("sodium hydroxide", shop.lye, 150_213)


def test_the_alkali_is_weighed_at_the_purity_of_the_lot_chosen(shop: Shop) -> None:
    weak = deliver(shop.book, DeliveryLine("sodium hydroxide", 400_000, "SH 90", 500, purity_ppm=980_000))
    code = planned(shop.book, using={"sodium hydroxide": weak})
    assert lots_of(shop.book, code)[-1] == ("sodium hydroxide", weak, 149_823)  # 146.8263 / 0.98


def test_an_alkali_lot_too_small_for_the_line_is_left_for_another_day(shop: Shop) -> None:
    deliver(shop.book, DeliveryLine("sodium hydroxide", 100_000, "SH 91", 200, best_before=SOON))
    assert lots_of(shop.book, planned(shop.book))[-1] == ("sodium hydroxide", shop.lye, 146_826)


def test_a_gram_is_promised_to_one_line_only(shop: Shop) -> None:
    add_material(shop.book, MaterialFacts("pink clay", "Kaolin"), kind="additive", code=None)
    twice = '\n[[additive]]\nmaterial = "pink clay"\ngrams = 20\nwhen = "in the fats"\n'
    twice += '[[additive]]\nmaterial = "pink clay"\ngrams = 20\n'
    add_recipe(shop.book, PLAIN_BAR.replace("plain-bar", "pink").replace("Plain Bar", "Pink") + twice, file="pink.toml")
    first = deliver(shop.book, DeliveryLine("pink clay", 30_000, "K1", 300))
    with pytest.raises(Refused, match=r"pink clay: 10 g of accepted stock is free, and 20 g is needed"):
        planned(shop.book, "pink")
    second = deliver(shop.book, DeliveryLine("pink clay", 15_000, "K2", 150))
    clay = [line for line in lots_of(shop.book, planned(shop.book, "pink")) if line[0] == "pink clay"]
    assert clay == [("pink clay", first, 20_000), ("pink clay", first, 10_000), ("pink clay", second, 10_000)]


def test_what_one_batch_means_to_take_is_not_free_for_the_next(shop: Shop) -> None:
    # 4 400 g of olive oil are left: 5 000 g of fats take 3 000 of them, and 1 400 are not the 1 800 of 3 000 g.
    first = planned(shop.book, fats_mg=5_000_000)
    with pytest.raises(Refused, match=r"olive oil: 1.?400 g of accepted stock is free, and 1.?800 g is needed"):
        planned(shop.book, fats_mg=3_000_000)
    discard_batch(shop.book, first, on=MADE, by="Nuala", reason="the mould is broken")
    assert lots_of(shop.book, planned(shop.book, fats_mg=3_000_000))[0] == ("olive oil", shop.olive, 1_800_000)


def test_another_size_scales_the_bars(shop: Shop) -> None:
    assert batch_of(shop.book, planned(shop.book, fats_mg=2_000_000)).bars_planned == 20


def test_a_lot_out_of_date_is_named_and_not_taken(shop: Shop) -> None:
    late = rf"coconut oil: 0 g .* Lot {shop.coconut} is out of date \(best before 31 Mar 2027\)"
    with pytest.raises(Refused, match=late):
        planned(shop.book, on=date(2027, 4, 1))
    with pytest.raises(Refused, match=f"Lot {shop.coconut} was best before 31 Mar 2027"):
        planned(shop.book, on=date(2027, 4, 1), using={"coconut oil": shop.coconut})


def test_a_lot_in_quarantine_is_named_and_not_taken(shop: Shop) -> None:
    waiting = deliver(shop.book, DeliveryLine("olive oil", 9_000_000, "5102", 4000), accepted=False)
    with pytest.raises(Refused, match=f"Lot {waiting} waits in quarantine"):
        planned(shop.book, fats_mg=8_000_000)
    with pytest.raises(Refused, match=f"accept it first: soapledger lot accept {waiting}"):
        planned(shop.book, using={"olive oil": waiting})


def test_a_choice_of_lot_is_never_passed_over_in_silence(shop: Shop) -> None:
    small = deliver(shop.book, DeliveryLine("olive oil", 600_000, "5103", 400))
    planned(shop.book, using={"olive oil": small})
    with pytest.raises(Refused, match=rf"Lot {small} \(olive oil\) has nothing free"):
        planned(shop.book, using={"olive oil": small})
    with pytest.raises(BadInput, match=f"Lot {shop.lye} is sodium hydroxide, not olive oil"):
        planned(shop.book, using={"olive oil": shop.lye})
    with pytest.raises(BadInput, match="takes no offcuts; it takes olive oil, coconut oil, water, sodium hydroxide"):
        planned(shop.book, using={"offcuts": shop.olive})


def test_potash_in_the_jar_of_soda_is_refused(shop: Shop) -> None:
    add_material(shop.book, MaterialFacts("potash", alkali_kind="KOH", purity_ppm=900_000), kind="alkali", code=None)
    wrong = (
        PLAIN_BAR.replace("plain-bar", "wrong").replace("Plain Bar", "Wrong").replace('"sodium hydroxide"', '"potash"')
    )
    with pytest.raises(BadInput, match="reckons with NaOH, but potash is KOH"):
        add_recipe(shop.book, wrong, file="wrong.toml")


def test_a_plan_refused_leaves_nothing(shop: Shop) -> None:
    before = shop.rows().execute("SELECT count(*) FROM batch").fetchone()[0]
    with pytest.raises(Refused):
        planned(shop.book, fats_mg=90_000_000)
    assert shop.rows().execute("SELECT count(*) FROM batch").fetchone()[0] == before


def test_lines_are_numbered_in_the_order_of_work(shop: Shop) -> None:
    assert [line.number for line in lines_of(shop.book, planned(shop.book))] == [1, 2, 3, 4]
