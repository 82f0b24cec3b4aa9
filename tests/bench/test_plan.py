"""Planning: which lots, how much of each, and the lye for exactly those."""

from datetime import date
from typing import Any

import pytest
from making import MADE, batch_of, deliver, lines_of, lots_of, planned
from once import once
from shop import PLAIN_BAR, Shop

from ledger.domain.lye.weighed import LyeCheck
from ledger.errors import BadInput, Refused
from ledger.operations.bench.discard import discard_batch
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.recipe.recipes import add_recipe, revise_recipe
from ledger.operations.stock.receive import DeliveryLine, DeliveryNote, receive
from ledger.storage.tables.material import Material, MaterialRevision

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
    late = rf"coconut oil: 0 g .* Lot {shop.coconut} is out of date \(best before end Mar 2027\)"
    with pytest.raises(Refused, match=late):
        planned(shop.book, on=date(2027, 4, 1))
    with pytest.raises(Refused, match=f"Lot {shop.coconut} was best before end Mar 2027"):
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


SHEA = PLAIN_BAR.replace("plain-bar", "shea").replace("Plain Bar", "Shea").replace(
    'material = "olive oil"\npercent = 60', 'material = "shea butter"\npercent = 60'
).replace('material = "coconut oil"', 'material = "olive oil"')  # fmt: skip


@pytest.fixture
@once
def shea(shop: Shop) -> Shop:
    """The worked shop with 2 kg of unrefined shea butter of no certificate, 160 to 195 mg KOH per g."""
    facts = MaterialFacts("shea butter", "Butyrospermum Parkii Butter", None, 160_000, 195_000, "published range")
    add_material(shop.book, facts, kind="fat", code=None)
    deliver(shop.book, DeliveryLine("shea butter", 2_000_000, "SB-1", 2400))
    add_recipe(shop.book, SHEA, file="shea.toml")
    return shop


def weighed_as_meant(shop: Shop, code: str, **more: Any) -> LyeCheck:
    takes = {line.number: [Weighed(line.target)] for line in lines_of(shop.book, code) if line.role != "packaging"}
    return weigh(shop.book, code, takes, on=MADE, by="Nuala", **more)


def decisions(shop: Shop, code: str) -> list[tuple[str, str]]:
    query = "SELECT verdict, reason FROM decision d JOIN batch b ON b.id = d.batch_id WHERE b.code = ?"
    return [tuple(row) for row in shop.rows().execute(query, (code,))]


# 600 g of shea at the middle, 177.5, and 400 g of olive at 190: 106.5 + 76 = 182.5 g KOH. Of it the shea leaves
# 600 x 17.5 / 1000 = 10.5 g open, 5.753 %; the olive, 3 % of one value for the material, 400 x 5.7 / 1000 = 2.28 g,
# 1.249 %; a scale of 0.1 g 0.081 % with the lye. The root of the squares is 5.888 %: likely low 1 - 0.95 x 1.05888 =
# -0.59 %.


def test_a_recipe_that_is_likely_to_burn_is_refused_with_what_would_make_it_safe(shea: Shop) -> None:
    with pytest.raises(Refused) as refused:
        planned(shea.book, "shea")
    said = str(refused.value)
    assert "with a superfat of 5.00 %" in said
    assert "likely to be as low as −0.59 %: lye may be left over and burn" in said
    assert "Reckoned with olive oil: 190 typed for the material, taken as 184.3 to 195.7." in said
    # 1 - 0.945 x 1.05888 = -0.06 %, 1 - 0.94 x 1.05888 = 0.47 %: the first above zero in steps of half a percent
    assert "write superfat = 6 in the recipe" in said
    # with a certificate the shea leaves 1 mg per g open: 0.329 %; likely low 1 - 0.95 x 1.01292 = 3.77 %
    assert "get the certificate of the lot of shea butter, which would do by itself (likely low 3.77 %" in said
    assert said.endswith("To plan it as it is, add --anyway REASON.")
    assert shea.rows().execute("SELECT count(*) FROM batch").fetchone()[0] == 1


def test_the_superfat_that_was_named_makes_it_plan(shea: Shop) -> None:
    revise_recipe(shea.book, "shea", SHEA.replace("superfat = 5", "superfat = 5.5"), file="shea.toml")
    with pytest.raises(Refused, match=r"write superfat = 6 in the recipe"):
        planned(shea.book, "shea")
    revise_recipe(shea.book, "shea", SHEA.replace("superfat = 5", "superfat = 6"), file="shea.toml")
    # 182.5 x 0.71288755 x 0.94 = 122.296 g
    assert lots_of(shea.book, planned(shea.book, "shea"))[-1] == ("sodium hydroxide", shea.lye, 122_296)


def test_the_certificate_that_was_named_narrows_it(shea: Shop) -> None:
    line = DeliveryLine("shea butter", 1_000_000, "SB-2", 1300, best_before=SOON, sap_mg_per_kg=(177_500, 177_500))
    lot = deliver(shea.book, line)
    code = planned(shea.book, "shea")
    assert lots_of(shea.book, code)[0] == ("shea butter", lot, 600_000)
    found = weighed_as_meant(shea, code)
    assert found.superfat is not None
    assert round(found.superfat.likely_low_ppm / 100) == 377  # 3.77 %, as the refusal said


def test_a_reason_to_plan_it_all_the_same_is_a_decision_and_not_asked_again(shea: Shop) -> None:
    with pytest.raises(Refused, match="likely to be as low as"):
        planned(shea.book, "shea", anyway="  ")
    code = planned(shea.book, "shea", anyway="a test loaf for myself")
    assert decisions(shea, code) == [("accepted", "superfat likely nothing: a test loaf for myself")]
    weighed_as_meant(shea, code)
    assert len(decisions(shea, code)) == 1


def test_lye_that_is_left_over_for_certain_is_asked_about_all_the_same(shea: Shop) -> None:
    code = planned(shea.book, "shea", anyway="a test loaf for myself")
    takes = {line.number: [Weighed(line.target)] for line in lines_of(shea.book, code)}
    takes[4] = [Weighed(131_000)]  # the fats take 182.5 x 0.71288755 = 130.102 g
    with pytest.raises(Refused, match=r"superfat of [-−]0\.69 %: lye is left over"):
        weigh(shea.book, code, takes, on=MADE, by="Nuala")


def test_what_became_likely_only_at_the_scale_is_asked_about(shea: Shop) -> None:
    revise_recipe(shea.book, "shea", SHEA.replace("superfat = 5", "superfat = 6"), file="shea.toml")
    code = planned(shea.book, "shea")
    takes = {line.number: [Weighed(line.target)] for line in lines_of(shea.book, code)}
    takes[4] = [Weighed(123_296)]  # a gram too much: 1 - 123.296 / 130.102 = 5.23 %
    with pytest.raises(Refused, match=r"superfat of 5\.23 %, likely as low as [-−]0\.3"):
        weigh(shea.book, code, takes, on=MADE, by="Nuala")
    weigh(shea.book, code, takes, on=MADE, by="Nuala", anyway="for the floor")
    assert decisions(shea, code) == [("accepted", "for the floor")]


POTASH = PLAIN_BAR.replace("plain-bar", "soft").replace("Plain Bar", "Soft").replace(
    'material = "sodium hydroxide"\nkind = "NaOH"', 'material = "potash"\nkind = "KOH"'
)  # fmt: skip


def test_potash_without_a_purity_is_not_reckoned_with(shop: Shop) -> None:
    with pytest.raises(BadInput, match="KOH is sold at 85 to 95 %"):
        add_material(shop.book, MaterialFacts("potash", alkali_kind="KOH"), kind="alkali", code=None)
    with shop.book.write("material add") as tx:  # as a ledger of before the rule may hold it
        material = tx.add(Material(code="potash", kind="alkali"))
        assert material.id is not None
        tx.add(MaterialRevision(material_id=material.id, name="potash", alkali_kind="KOH"))
        tx.say("Added potash.")
    add_recipe(shop.book, POTASH, file="soft.toml")
    deliver(shop.book, DeliveryLine("potash", 500_000, "PH 1", 500))
    with pytest.raises(BadInput, match="potash needs its purity, which its certificate states"):
        planned(shop.book, "soft")
    sure = deliver(shop.book, DeliveryLine("potash", 500_000, "PH 2", 500, best_before=SOON, purity_ppm=900_000))
    # 216.8 x 0.95 / 0.9 = 228.844 g KOH as sold
    assert lots_of(shop.book, planned(shop.book, "soft", using={"potash": sure}))[-1] == ("potash", sure, 228_844)


def test_two_alkalis_meet_their_shares_of_the_demand(shop: Shop) -> None:
    facts = MaterialFacts("potash", alkali_kind="KOH", purity_ppm=900_000)
    add_material(shop.book, facts, kind="alkali", code=None)
    potash = deliver(shop.book, DeliveryLine("potash", 500_000, "PH 1", 500))
    both = PLAIN_BAR.replace("plain-bar", "dual").replace("Plain Bar", "Dual").replace(
        '[alkali]\nmaterial = "sodium hydroxide"\nkind = "NaOH"',
        '[[alkali]]\nmaterial = "sodium hydroxide"\nkind = "NaOH"\npercent_of_demand = 90\n'
        '[[alkali]]\nmaterial = "potash"\nkind = "KOH"\npercent_of_demand = 10',
    )  # fmt: skip
    add_recipe(shop.book, both, file="dual.toml")
    code = planned(shop.book, "dual")
    # soda 216.8 x 0.9 x 0.71288755 x 0.95 = 132.144 g; potash 216.8 x 0.1 x 0.95 / 0.9 = 22.884 g; water twice both
    assert lots_of(shop.book, code)[2:] == [
        ("water", shop.water, 310_056),
        ("sodium hydroxide", shop.lye, 132_144),
        ("potash", potash, 22_884),
    ]
    found = weighed_as_meant(shop, code)
    assert abs((found.superfat_ppm or 0) - 50_000) <= 10
    assert found.alkali_kind == "NaOH and KOH"


def milky(grams: int, when: str = "with the lye") -> str:
    text = PLAIN_BAR.replace("plain-bar", "milky").replace("Plain Bar", "Milky")
    return text + f'\n[[liquid]]\nmaterial = "goat milk"\ngrams = {grams}\nwhen = "{when}"\n'


@pytest.fixture
@once
def milk(shop: Shop) -> str:
    """A kilogram of goat milk, 87 % water; its lot."""
    add_material(shop.book, MaterialFacts("goat milk", "Caprae Lac", water_ppm=870_000), kind="liquid", code=None)
    return deliver(shop.book, DeliveryLine("goat milk", 1_000_000, "GM 1", 500))


def test_other_liquids_bring_their_water(shop: Shop, milk: str) -> None:
    add_recipe(shop.book, milky(100), file="milky.toml")
    code = planned(shop.book, "milky")
    # 293.652 g of water, of which the milk brings 87 g: 206.652 g are still to be added
    assert lots_of(shop.book, code)[2:] == [
        ("water", shop.water, 206_652),
        ("goat milk", milk, 100_000),
        ("sodium hydroxide", shop.lye, 146_826),
    ]
    found = weighed_as_meant(shop, code)
    assert (found.superfat_ppm, found.water_mg) == (50_002, 293_652)


@pytest.mark.parametrize(
    ("grams", "when", "message"),
    [
        (400, "with the lye", "bring 54 g more water than the recipe asks for"),  # 348 g less 293.652 g
        (200, "at trace", "less water than its own weight"),  # 293.652 less 174 leaves 119.652 g for 146.826 g
    ],
)
def test_liquids_that_leave_too_much_or_too_little_water_are_refused(
    shop: Shop, milk: str, grams: int, when: str, message: str
) -> None:
    add_recipe(shop.book, milky(grams, when), file="milky.toml")
    with pytest.raises(Refused, match=message):
        planned(shop.book, "milky")
    assert milk


def test_where_no_lot_of_alkali_is_enough_the_purest_is_reckoned_with(shop: Shop) -> None:
    # 6.4 kg of fats take 146.82632 x 6.4 = 939.688 g of pure NaOH; the shop has 853.174 g, reckoned as pure
    weak = deliver(shop.book, DeliveryLine("sodium hydroxide", 500_000, "SH 98", 500, purity_ppm=980_000))
    code = planned(shop.book, fats_mg=6_400_000)
    assert lots_of(shop.book, code)[3:] == [
        ("sodium hydroxide", shop.lye, 853_174),
        ("sodium hydroxide", weak, 86_514),
    ]
    # 853.174 + 86.514 x 0.98 = 937.95772 g of the 154.55402 x 6.4 = 989.14574 g that the fats take: 5.1750 %
    found = weighed_as_meant(shop, code)
    assert found.superfat_ppm == 51_750


def test_one_lot_that_is_enough_is_taken_alone_at_its_own_purity(shop: Shop) -> None:
    weak = deliver(shop.book, DeliveryLine("sodium hydroxide", 2_000_000, "SH 98", 500, purity_ppm=980_000))
    # 939.688 / 0.98 = 958.866 g
    assert lots_of(shop.book, planned(shop.book, fats_mg=6_400_000))[3:] == [("sodium hydroxide", weak, 958_866)]


def test_an_earlier_version_is_made_as_it_was(shop: Shop) -> None:
    revise_recipe(shop.book, "plain-bar", PLAIN_BAR.replace("superfat = 5", "superfat = 8"), file="plain-bar.toml")
    # 154.55402 x 0.92 = 142.190 g
    assert lots_of(shop.book, planned(shop.book))[-1] == ("sodium hydroxide", shop.lye, 142_190)
    old = planned(shop.book, version=1)
    assert lots_of(shop.book, old)[-1] == ("sodium hydroxide", shop.lye, 146_826)
    assert batch_of(shop.book, old).recipe_version == 1
    with pytest.raises(BadInput, match="Plain Bar has no version 3; its latest is 2"):
        planned(shop.book, version=3)


def held(process: str, when: str, in_demand: str) -> str:
    text = PLAIN_BAR.replace("plain-bar", f"held-{process}").replace("Plain Bar", f"Held {process}")
    text = text.replace('"cold"', f'"{process}"').replace("percent = 40", "percent = 20")
    part = f'[[fat]]\nmaterial = "shea butter"\npercent = 20\nwhen = "{when}"\nin_demand = {in_demand}\n'
    return text.replace("[mould]", f"{part}\n[mould]")


def test_a_pot_that_burns_before_the_fat_held_back_goes_in_is_refused(shea: Shop) -> None:
    line = DeliveryLine("shea butter", 1_000_000, "SB-2", 1300, best_before=SOON, sap_mg_per_kg=(180_000, 180_000))
    deliver(shea.book, line)
    add_recipe(shea.book, held("hot", "after the cook", "true"), file="h.toml")
    # 600 x 190 + 200 x 257 + 200 x 180 = 201.4 g KOH; 95 % of it, 191.33 g, cooks with 165.4 g of demand: -15.68 %
    with pytest.raises(Refused, match=r"in the pot, before the fat held back goes in, with a superfat of [-−]15\.68 %"):
        planned(shea.book, "held-hot")


def test_a_fat_held_back_on_top_of_the_lye_leaves_the_pot_its_superfat(shea: Shop) -> None:
    line = DeliveryLine("shea butter", 1_000_000, "SB-2", 1300, best_before=SOON, sap_mg_per_kg=(180_000, 180_000))
    deliver(shea.book, line)
    add_recipe(shea.book, held("hot", "after the cook", "false"), file="h.toml")
    code = planned(shea.book, "held-hot")
    # 165.4 x 0.71288755 x 0.95 = 112.016 g
    assert [line.target for line in lines_of(shea.book, code) if line.role == "alkali"] == [112_016]
    found = weighed_as_meant(shea, code)
    assert found.before_addition is not None
    assert abs(found.before_addition.nominal_ppm - 50_000) <= 10
    # over all the fats 1 - 157.13 / 201.4 = 21.98 %
    assert round((found.superfat_ppm or 0) / 100) == 2198


def test_in_cold_process_free_lye_meets_a_fat_held_back_as_any_other(shea: Shop) -> None:
    line = DeliveryLine("shea butter", 1_000_000, "SB-2", 1300, best_before=SOON, sap_mg_per_kg=(180_000, 180_000))
    deliver(shea.book, line)
    add_recipe(shea.book, held("cold", "at trace", "true"), file="h.toml")
    code = planned(shea.book, "held-cold")
    # 201.4 x 0.71288755 x 0.95 = 136.397 g
    assert [line.target for line in lines_of(shea.book, code) if line.role == "alkali"] == [136_397]
    assert abs((weighed_as_meant(shea, code).superfat_ppm or 0) - 50_000) <= 10


@pytest.mark.parametrize(("there", "taken"), [(146_825, False), (146_826, True), (146_827, True)])
def test_a_lot_that_holds_just_the_lye_is_taken_alone(shop: Shop, there: int, taken: bool) -> None:
    """146.826 g are asked for, worked out above."""
    just = deliver(shop.book, DeliveryLine("sodium hydroxide", there, "SH 91", 200, best_before=SOON))
    assert lots_of(shop.book, planned(shop.book))[-1] == ("sodium hydroxide", just if taken else shop.lye, 146_826)


@pytest.mark.parametrize("day", [1, 2, 3])
def test_a_lot_is_chosen_from_the_day_it_came_to_its_last_good_day(shop: Shop, day: int) -> None:
    """It came on 2 March, and is best before the 2nd too."""
    came = date(2026, 3, 2)
    line = DeliveryLine("olive oil", 700_000, "5101", 400, best_before=came)
    (lot,) = receive(shop.book, DeliveryNote("tarnlow", came, (line,), accepted_by="Nuala"))
    using, on = {"olive oil": lot.code}, date(2026, 3, day)
    if day == 2:
        assert lots_of(shop.book, planned(shop.book, on=on, using=using))[0] == ("olive oil", lot.code, 600_000)
    else:
        with pytest.raises(Refused, match="after the day of the batch" if day == 1 else "was best before 2 Mar 2026"):
            planned(shop.book, on=on, using=using)


@pytest.mark.parametrize(("second", "named"), [(9, None), (10, "second"), (11, "second")])
def test_wrapping_comes_from_a_lot_that_holds_all_of_it(shop: Shop, second: int, named: str | None) -> None:
    """Ten bars; the first lot has 9 bands."""
    add_material(shop.book, MaterialFacts("paper band"), kind="packaging", code=None)
    wrapped = PLAIN_BAR.replace('"plain-bar"', '"wrapped"').replace('"Plain Bar"', '"Wrapped"')
    add_recipe(shop.book, f'{wrapped}\n[[packaging]]\nmaterial = "paper band"\n', file="wrapped.toml")
    deliver(shop.book, DeliveryLine("paper band", 9, "W1", 100))
    other = deliver(shop.book, DeliveryLine("paper band", second, "W2", 100))
    code = planned(shop.book, "wrapped")
    with shop.book.look() as rows:
        found = rows.execute(
            "SELECT p.target, l.code FROM live_plan_line p JOIN batch b ON b.id = p.batch_id "
            "LEFT JOIN lot l ON l.id = p.lot_id WHERE p.role = 'packaging' AND b.code = ?",
            (code,),
        ).fetchall()
    assert [tuple(row) for row in found] == [(10, other if named else None)]
