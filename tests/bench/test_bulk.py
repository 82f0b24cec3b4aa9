"""Oil strained off, a blend of fats and a stock lye: what the lot filled off carries, and its use in a soap."""

from datetime import date
from typing import Any

import pytest
from making import MADE, batch_of, deliver, lines_of, lots_of, planned
from once import once
from shop import PLAIN_BAR, Shop

from ledger.errors import BadInput, Refused
from ledger.operations.bench.bulk import fill_batch, strain_batch
from ledger.operations.bench.cut import cut_batch
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.keep.check import check
from ledger.operations.keep.undo import undo
from ledger.operations.material.materials import MaterialFacts, add_material, edit_material
from ledger.operations.recipe.recipes import add_recipe, revise_recipe
from ledger.operations.stock.receive import DeliveryLine
from ledger.rows.history import last_entry
from ledger.rows.lot import LotRow, find_lot
from ledger.views.bench.worksheet import worksheet
from ledger.views.label.lot_label import lot_label
from ledger.views.lye.lye_check import lye_check
from ledger.views.recall.trace import trace
from ledger.views.recipe.ingredients import parts_of_batch

STOCK_LYE = """
name = "Stock lye, half and half"
code = "stock-lye-50"
process = "blend"
[blend]
yields = "stock lye"
[[part]]
material = "sodium hydroxide"
grams = 500
[[part]]
material = "water"
grams = 500
"""
BLEND = """
name = "House blend"
code = "house-blend-500"
process = "blend"
[blend]
yields = "house blend"
[[part]]
material = "olive oil"
grams = 300
[[part]]
material = "coconut oil"
grams = 200
"""
INFUSION = """
name = "Marigold oil"
code = "marigold"
process = "infusion"
[infusion]
yields = "marigold oil"
days = 28
[[part]]
material = "olive oil"
grams = 500
[[part]]
material = "marigold petals"
grams = 20
"""
BLEND_BAR = """
name = "Blend Bar"
code = "blend-bar"
process = "cold"
superfat = 5
fats_total = "480 g"
[alkali]
material = "sodium hydroxide"
kind = "NaOH"
[water]
material = "water"
per_alkali = 2.0
[[fat]]
material = "house blend"
percent = 100
[mould]
bars = 5
"""


@pytest.fixture
@once
def bulk(shop: Shop) -> Shop:
    """The worked shop with the materials and recipes of this file, and flakes of 98 %."""
    for facts, kind in (
        (MaterialFacts("stock lye", "Sodium Hydroxide", None, None, None, None, "NaOH", 500_000, water_ppm=500_000),
         "alkali"),
        (MaterialFacts("house blend", None, None, 200_000, 230_000, "her own entry"), "fat"),
        (MaterialFacts("marigold oil", None), "intermediate"),
        (MaterialFacts("marigold petals", "Calendula Officinalis Flower"), "botanical"),
    ):  # fmt: skip
        add_material(shop.book, facts, kind=kind, code=None)
    for text in (STOCK_LYE, BLEND, INFUSION, BLEND_BAR):
        add_recipe(shop.book, text, file="r.toml")
    deliver(shop.book, DeliveryLine("marigold petals", 100_000, "MP-1", 300))
    return shop


@once
def flakes(shop: Shop) -> str:
    line = DeliveryLine("sodium hydroxide", 600_000, "SH 98", 500, purity_ppm=980_000)
    return deliver(shop.book, line)


@once
def made(shop: Shop, recipe: str, **more: Any) -> str:
    """A batch planned and weighed at its targets; returns its code."""
    code = planned(shop.book, recipe, **more)
    takes = {line.number: [Weighed(line.target)] for line in lines_of(shop.book, code)}
    weigh(shop.book, code, takes, on=MADE, by="Nuala")
    return code


def filled(shop: Shop, code: str, mg: int) -> LotRow:
    lot = fill_batch(shop.book, code, mass_mg=mg, on=MADE, by="Nuala")
    return find_lot(shop.rows(), lot)


def clean(shop: Shop) -> bool:
    return check(shop.rows()).findings == ()


def test_a_stock_lye_carries_its_strength_and_its_water(bulk: Shop) -> None:
    lot = filled(bulk, made(bulk, "stock-lye-50", using={"sodium hydroxide": flakes(bulk)}), 990_000)
    # 500 g at 98 % is 490 g of NaOH in 1000 g; 500 g of that is water; 10 g stayed in the jug
    assert (lot.material, lot.purity_ppm, lot.water_ppm) == ("stock lye", 490_000, 500_000)
    assert (lot.on_hand, lot.status, lot.sap_low_mg_per_kg) == (990_000, "accepted", None)
    jar = lot_label(bulk.rows(), lot.code, MADE)
    assert jar.came_from == f"From batch {lot.batch_code}, 49.0 % alkali"
    assert (jar.received, jar.caution) == (False, "LYE burns skin and blinds eyes. The safety sheet comes first.")
    assert clean(bulk)


def test_flakes_without_a_certificate_are_reckoned_as_pure(bulk: Shop) -> None:
    lot = filled(bulk, made(bulk, "stock-lye-50"), 1_000_000)
    assert (lot.purity_ppm, lot.water_ppm) == (500_000, 500_000)


def test_water_stands_before_the_alkali_with_the_cautions_for_lye(bulk: Shop) -> None:
    code = planned(bulk.book, "stock-lye-50")
    sheet = worksheet(bulk.rows(), code, program="1")
    # written alkali first in the recipe: alkali goes into water, never the other way
    assert [(line.material, line.target, line.stage) for line in sheet.lines] == [
        ("water", 500_000, "with the lye"),
        ("sodium hydroxide", 500_000, "with the lye"),
    ]
    assert (sheet.superfat_ppm, sheet.superfat) == (None, None)
    # the alkali is weighed to half a percent below, and no more than a step of the scale above
    assert (sheet.lines[1].low, sheet.lines[1].high) == (497_500, 500_100)


def test_a_stock_lye_with_too_little_water_is_not_planned(bulk: Shop) -> None:
    revise_recipe(
        bulk.book, "stock-lye-50", STOCK_LYE.replace('"water"\ngrams = 500', '"water"\ngrams = 499'), file="s"
    )
    with pytest.raises(Refused, match="less water than its own weight"):
        planned(bulk.book, "stock-lye-50")


def test_a_soap_is_made_with_a_stock_lye_and_less_water(bulk: Shop) -> None:
    lot = filled(bulk, made(bulk, "stock-lye-50", using={"sodium hydroxide": flakes(bulk)}), 990_000)
    code = planned(bulk.book, using={"sodium hydroxide": lot.code})
    # 146.82632 g of NaOH / 0.49 = 299.646 g of solution, of which half is water: 149.823 g. Two to one of the dry
    # 149.823 g is 299.646 g of water, so 149.823 g are still to be added.
    assert lots_of(bulk.book, code) == [
        ("olive oil", bulk.olive, 600_000),
        ("coconut oil", bulk.coconut, 400_000),
        ("water", bulk.water, 149_823),
        ("stock lye", lot.code, 299_646),
    ]
    sheet = worksheet(bulk.rows(), code, program="1")
    assert (sheet.alkali_mg, sheet.water_mg, sheet.water_per_alkali_thousandths) == (149_823, 299_646, 2000)
    weigh(bulk.book, code, {n: [Weighed(line.target)] for n, line in enumerate(lines_of(bulk.book, code), 1)},
          on=MADE, by="Nuala")  # fmt: skip
    with bulk.book.look() as rows:
        found = lye_check(rows, batch_of(bulk.book, code).id)
    # 299.646 x 0.49 = 146.82654 g; 1 - 146.82654 / 154.55402 = 4.9999 %
    assert (found.superfat_ppm, found.purity_ppm, found.alkali_mg) == (49_999, 490_000, 149_823)
    assert found.figures[lot.id] == "strength 49 % ± 0.5 (worked out from what went in)"
    assert {"SH 98", "4471/2"} <= {step.supplier_lot for step in trace(bulk.rows(), code).steps}
    with bulk.book.look() as rows:
        parts = parts_of_batch(rows, batch_of(bulk.book, code).id)
    # declared as what the stock lye was made of: half alkali, half water
    sodium = sum(part.mass_mg for part in parts if part.inci == "SODIUM HYDROXIDE")
    aqua = sum(part.mass_mg for part in parts if part.inci == "AQUA")
    assert (sodium, aqua) == (149_823, 149_823 + 149_823)
    assert clean(bulk)


def test_the_command_takes_a_stock_lye_in_place_of_flakes(bulk: Shop, run: Any) -> None:
    code = made(bulk, "stock-lye-50", using={"sodium hydroxide": flakes(bulk)})
    done = run("batch", "fill", code, "990 g", "--on", "2026-05-06").stdout
    assert "990 g filled off as lot" in done
    assert "49.00 % alkali" in done
    lot = next(step.code for step in trace(bulk.rows(), code, forward=True).steps if step.depth == 1)
    choice = f"sodium hydroxide={lot}"
    said = run("batch", "plan", "plain-bar", "--using", choice, "--on", "2026-05-07").stdout
    assert "149.8 g" in said
    assert "299.6 g" in said
    assert "nothing is wrong" in run("check").stdout


def test_a_stock_lye_is_no_choice_where_it_is_too_little_or_another_alkali(bulk: Shop) -> None:
    lot = filled(bulk, made(bulk, "stock-lye-50", using={"sodium hydroxide": flakes(bulk)}), 280_000)
    with pytest.raises(Refused, match=r"stock lye: 280 g of accepted stock is free, and 299\.6 g is needed"):
        planned(bulk.book, using={"sodium hydroxide": lot.code})
    potash = MaterialFacts("potash lye", None, None, None, None, None, "KOH", 500_000, water_ppm=500_000)
    add_material(bulk.book, potash, kind="alkali", code=None)
    other = deliver(bulk.book, DeliveryLine("potash lye", 900_000, "PL 1", 500))
    with pytest.raises(BadInput, match=f"Lot {other} is KOH, and the recipe reckons with NaOH"):
        planned(bulk.book, using={"sodium hydroxide": other})


def test_a_blend_carries_the_value_of_its_fats_by_mass(bulk: Shop) -> None:
    sap, late = (186_000, 190_000), date(2026, 12, 31)
    deliver(bulk.book, DeliveryLine("olive oil", 300_000, "5101", 400, best_before=late, sap_mg_per_kg=sap))
    lot = filled(bulk, made(bulk, "house-blend-500"), 495_000)
    # the coconut's 257 is the material's, give or take 7.71: low (300 x 186 + 200 x 249.29) / 500 = 211.316; high
    # (300 x 190 + 200 x 264.71) / 500 = 219.884 mg KOH per g, and 215.6 between them
    assert (lot.sap_low_mg_per_kg, lot.sap_high_mg_per_kg) == (211_316, 219_884)
    assert (lot.best_before, lot.certificate) == (late, "worked out from what went in")
    code = planned(bulk.book, "blend-bar")
    # 480 g x 215.6 = 103.488 g KOH; x 0.71288755 x 0.95 = 70.0865 g NaOH; twice as much water
    assert lots_of(bulk.book, code) == [
        ("house blend", lot.code, 480_000),
        ("water", bulk.water, 140_174),
        ("sodium hydroxide", bulk.lye, 70_087),
    ]
    assert "5101" in {step.supplier_lot for step in trace(bulk.rows(), lot.code).steps}
    assert clean(bulk)


def test_a_soap_of_a_blend_is_traced_and_declared_as_its_oils(bulk: Shop) -> None:
    filled(bulk, made(bulk, "house-blend-500"), 500_000)
    code = made(bulk, "blend-bar")
    assert {"4471/2", "CN-0919"} <= {step.supplier_lot for step in trace(bulk.rows(), code).steps}
    with bulk.book.look() as rows:
        parts = parts_of_batch(rows, batch_of(bulk.book, code).id)
    masses = {part.inci: part.mass_mg for part in parts}
    # 480 g at 300 : 200
    assert (masses["OLEA EUROPAEA FRUIT OIL"], masses["COCOS NUCIFERA OIL"]) == (288_000, 192_000)


def test_an_oil_without_a_value_is_not_blended_away(bulk: Shop) -> None:
    revise_recipe(bulk.book, "house-blend-500", BLEND.replace('"coconut oil"', '"marigold oil"'), file="b.toml")
    deliver(bulk.book, DeliveryLine("marigold oil", 300_000, "MO 1", 500))
    code = made(bulk, "house-blend-500")
    with pytest.raises(BadInput, match="marigold oil has no saponification value"):
        fill_batch(bulk.book, code, mass_mg=500_000, on=MADE, by="Nuala")


def test_a_strained_oil_carries_the_value_of_the_oil_and_its_date(bulk: Shop) -> None:
    sap, soon = (188_000, 191_000), date(2026, 12, 31)
    deliver(bulk.book, DeliveryLine("olive oil", 500_000, "5102", 400, best_before=soon, sap_mg_per_kg=sap))
    code = made(bulk, "marigold")
    assert batch_of(bulk.book, code).status == "infusing"
    lot = find_lot(bulk.rows(), strain_batch(bulk.book, code, mass_mg=470_000, on=MADE, by="Nuala"))
    assert (lot.material, lot.on_hand, lot.status) == ("marigold oil", 470_000, "accepted")
    assert (lot.sap_low_mg_per_kg, lot.sap_high_mg_per_kg, lot.best_before) == (188_000, 191_000, soon)
    assert batch_of(bulk.book, code).status == "strained"
    assert clean(bulk)


def test_an_oil_strained_without_a_certificate_has_no_value_of_its_own(bulk: Shop) -> None:
    code = made(bulk, "marigold")
    lot = find_lot(bulk.rows(), strain_batch(bulk.book, code, mass_mg=470_000, on=MADE, by="Nuala"))
    assert lot.sap_low_mg_per_kg is None
    text = BLEND_BAR.replace("blend-bar", "gold-bar").replace("Blend Bar", "Gold Bar").replace("480", "400")
    add_recipe(bulk.book, text.replace('"house blend"', '"marigold oil"'), file="g.toml")
    with pytest.raises(BadInput, match="marigold oil has no saponification value"):
        planned(bulk.book, "gold-bar")


def test_what_is_not_filled_off_or_strained(bulk: Shop) -> None:
    blend = planned(bulk.book, "house-blend-500")
    with pytest.raises(Refused, match="has 2 lines still to be weighed"):
        fill_batch(bulk.book, blend, mass_mg=400_000, on=MADE, by="Nuala")
    weigh(bulk.book, blend, {1: [Weighed(300_000)], 2: [Weighed(200_000)]}, on=MADE, by="Nuala")
    with pytest.raises(Refused, match=r"501 g came out and only 500 g went in"):
        fill_batch(bulk.book, blend, mass_mg=501_000, on=MADE, by="Nuala")
    with pytest.raises(BadInput, match="How much came of it"):
        fill_batch(bulk.book, blend, mass_mg=0, on=MADE, by="Nuala")
    with pytest.raises(BadInput, match="was still being made on 6 May 2026"):
        fill_batch(bulk.book, blend, mass_mg=400_000, on=date(2026, 5, 5), by="Nuala")
    with pytest.raises(Refused, match=f"is blend; it is filled off: soapledger batch fill {blend}"):
        strain_batch(bulk.book, blend, mass_mg=400_000, on=MADE, by="Nuala")
    with pytest.raises(Refused, match=f"gives no bars; fill it off: soapledger batch fill {blend}"):
        cut_batch(bulk.book, blend, bars=4, on=MADE, by="Nuala")
    infusion = made(bulk, "marigold")
    with pytest.raises(Refused, match=f"is infusion; it is strained: soapledger batch strain {infusion}"):
        fill_batch(bulk.book, infusion, mass_mg=400_000, on=MADE, by="Nuala")
    with pytest.raises(Refused, match=f"is soap; it is cut: soapledger batch cut {bulk.batch}"):
        fill_batch(bulk.book, bulk.batch, mass_mg=400_000, on=MADE, by="Nuala")
    fill_batch(bulk.book, blend, mass_mg=400_000, on=MADE, by="Nuala")
    with pytest.raises(Refused, match="is blended already"):
        fill_batch(bulk.book, blend, mass_mg=50_000, on=MADE, by="Nuala")
    assert clean(bulk)


def test_a_filling_is_taken_back_until_some_of_it_is_used(bulk: Shop) -> None:
    code = made(bulk, "house-blend-500")
    lot = filled(bulk, code, 500_000)
    filling = last_entry(bulk.rows())
    undo(bulk.book, filling)
    assert batch_of(bulk.book, code).status == "weighed"
    assert clean(bulk)
    lot = filled(bulk, code, 500_000)
    filling = last_entry(bulk.rows())
    soap = made(bulk, "blend-bar")
    assert lots_of(bulk.book, soap)[0][1] == lot.code
    with pytest.raises(Refused, match=f"batch {soap} depends on it"):
        undo(bulk.book, filling)


@pytest.mark.parametrize(
    ("text", "message"),
    [
        (STOCK_LYE.replace('"stock lye"', '"house blend"'), "gives a material that is dissolved"),
        (STOCK_LYE.replace('"stock lye"', '"sodium hydroxide"'), "gives a material that is dissolved"),
        (STOCK_LYE + '[[part]]\nmaterial = "olive oil"\ngrams = 5\n', "holds an alkali and water, nothing else"),
        (
            BLEND.replace('yields = "house blend"', 'yields = "water"'),
            "gives a fat or an intermediate; water is liquid",
        ),
        (BLEND.replace('yields = "house blend"', 'yields = "stock lye"'), "gives a fat or an intermediate"),
        (INFUSION.replace('yields = "marigold oil"', 'yields = "water"'), "gives an oil"),
        (INFUSION.replace('"marigold petals"', '"sodium hydroxide"'), "an alkali stands in"),
    ],
)
def test_a_blend_that_is_neither_fat_nor_lye_is_bad_input(bulk: Shop, text: str, message: str) -> None:
    code = text.split('code = "')[1].split('"')[0]
    fresh = text.replace(f'code = "{code}"', 'code = "fresh"')
    with pytest.raises(BadInput, match=message):
        add_recipe(bulk.book, fresh, file="f.toml")
    with pytest.raises(BadInput, match=message):
        revise_recipe(bulk.book, code, text, file="f.toml")


def test_a_version_gives_what_the_first_one_gave(bulk: Shop) -> None:
    other = MaterialFacts("winter blend", None, None, 200_000, 230_000, "her own entry")
    add_material(bulk.book, other, kind="fat", code=None)
    with pytest.raises(Refused, match="gives house blend; what gives winter blend is another recipe"):
        revise_recipe(bulk.book, "house-blend-500", BLEND.replace('"house blend"', '"winter blend"'), file="b.toml")


def test_a_plain_bar_still_takes_flakes_where_none_is_chosen(bulk: Shop) -> None:
    filled(bulk, made(bulk, "stock-lye-50"), 1_000_000)
    assert PLAIN_BAR.count("sodium hydroxide") == 1
    assert lots_of(bulk.book, planned(bulk.book))[-1] == ("sodium hydroxide", bulk.lye, 146_826)


def test_a_stock_lye_of_flakes_with_a_purity_typed_for_the_material_carries_what_that_leaves_open(bulk: Shop) -> None:
    facts = MaterialFacts("sodium hydroxide", "Sodium Hydroxide", alkali_kind="NaOH", purity_ppm=980_000)
    edit_material(bulk.book, "sodium-hydroxide", facts)
    lot = filled(bulk, made(bulk, "stock-lye-50"), 990_000)
    # 98 typed leaves 2.94 open, and no alkali is purer than pure: 96 to 100 %, and half of it in as much water
    assert (lot.purity_ppm, lot.purity_high_ppm) == (480_000, 500_000)
