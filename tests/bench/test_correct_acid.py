"""A wrong weight in a batch with an acid: what is poured is a share of the whole jug, and is booked as it is.

Reckoned here by its own molar masses, in g/mol: NaOH 39.997, KOH 56.1056, acetic acid 60.052 (one proton), citric acid
192.123 (three). The fats take 600 x 190 + 400 x 257 = 216.8 g KOH, that is 216.8 / 56.1056 = 3.864142 mol.
"""

from fractions import Fraction
from typing import Any

import pytest
from making import MADE, batch_of, deliver, lines_of, planned
from once import once
from shop import PLAIN_BAR, Shop

from ledger.domain.lye.weighed import LyeCheck
from ledger.errors import Refused
from ledger.operations.bench.correct import correct_batch
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.keep.check import check
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.stock.receive import DeliveryLine
from ledger.views.bench.correction import correction
from ledger.views.record.record import batch_record

NAOH, KOH, ACETIC, CITRIC = 39.997, 56.1056, 60.052, 192.123
FATS_MOL = 216.8 / KOH


def superfat(soda: float, acids_mol: float, *, potash: float = 0.0, fats_mol: float = FATS_MOL) -> float:
    """In percent: the moles of alkali that acids leave, against those the fats take; masses in g of pure alkali."""
    return 100 * (1 - (soda / NAOH + potash / KOH - acids_mol) / fats_mol)


def acid_of(name: str, grams: float) -> float:
    """Moles of acid protons in vinegar of 5 %, or in citric acid."""
    return grams * 0.05 / ACETIC if name == "vinegar" else 3 * grams / CITRIC


@pytest.fixture
@once
def acids(shop: Shop) -> Shop:
    """The shop with vinegar of 5 % and citric acid in hand."""
    for name, koh, strength, code in (
        ("vinegar", 934_279, 50_000, "VG 1"),  # 56.1053 / 60.052 g KOH per g of acetic acid
        ("citric acid", 876_084, 1_000_000, "CA 1"),  # 3 x 56.1053 / 192.123
    ):
        facts = MaterialFacts(name, name, acid_koh_mg_per_kg=koh, purity_ppm=strength)
        add_material(shop.book, facts, kind="additive", code=None)
        deliver(shop.book, DeliveryLine(name, 2_000_000, code, 500))
    return shop


@once
def soap(
    shop: Shop, acid: str, grams: int, *, when: str = "with the lye", add_alkali: bool = True, more: str = "",
    text: str = PLAIN_BAR,
) -> str:  # fmt: skip
    """A batch of the plain bar with an acid, planned; returns its code."""
    part = f'\n[[additive]]\nmaterial = "{acid}"\ngrams = {grams}\nwhen = "{when}"\nadd_alkali = {add_alkali}\n'.lower()
    text = text.replace("plain-bar", "sour").replace("Plain Bar", "Sour")
    add_recipe(shop.book, text + part + more, file="sour.toml")
    return planned(shop.book, "sour")


def number(shop: Shop, code: str, material: str) -> int:
    return next(line.number for line in lines_of(shop.book, code) if line.material == material)


def used(shop: Shop, code: str) -> dict[str, float]:
    """Grams booked by material."""
    return {line.material: line.used / 1000 for line in lines_of(shop.book, code)}


def wasted(shop: Shop) -> dict[str, float]:
    """Grams left in the jug, by material."""
    query = (
        "SELECT m.code, -sum(v.quantity) FROM movement v JOIN lot l ON l.id = v.lot_id "
        "JOIN material m ON m.id = l.material_id WHERE v.kind = 'wasted' GROUP BY m.code"
    )
    return {row[0]: row[1] / 1000 for row in shop.rows().execute(query)}


@once
def log_all_but(shop: Shop, code: str, *materials: str) -> None:
    takes = {
        line.number: [Weighed(line.target)] for line in lines_of(shop.book, code) if line.material not in materials
    }
    weigh(shop.book, code, takes, on=MADE, by="Nuala")


def correct(shop: Shop, code: str, material: str, mg: int, take: str, anyway: str | None = None) -> LyeCheck:
    line = number(shop, code, material)
    return correct_batch(shop.book, code, line, mg, take=take, on=MADE, by="Nuala", anyway=anyway)


def percent(found: LyeCheck) -> float:
    return (found.superfat_ppm or 0) / 10_000


def as_booked(shop: Shop, code: str, acid: str) -> float:
    """The superfat of what is booked, by this file's own molar masses."""
    there = used(shop, code)
    return superfat(there["sodium hydroxide"], acid_of(acid, there[acid]))


@pytest.mark.parametrize(("acid", "grams"), [("vinegar", 200), ("citric acid", 20)])
def test_a_short_fat_leaves_its_share_of_the_whole_jug(acids: Shop, acid: str, grams: int) -> None:
    code = soap(acids, acid, grams)
    log_all_but(acids, code, "olive oil")
    before = used(acids, code)
    # 400 g in place of 600 g: 400 x 190 + 400 x 257 = 178.8 g KOH. Net of its acid the jug holds 0.95 x 216.8 and
    # 0.95 x 178.8 is wanted: 178.8 / 216.8 = 0.824723 of the whole jug is poured, the acid in it too.
    found = correct(acids, code, "olive oil", 400_000, "lye")
    share = 178.8 / 216.8
    for material in ("water", "sodium hydroxide", acid):
        assert used(acids, code)[material] == pytest.approx(before[material] * share, abs=0.002), material
        left = wasted(acids)[material.replace(" ", "-")]
        assert left == pytest.approx(before[material] * (1 - share), abs=0.002), material
    fats = 178.8 / KOH
    there = used(acids, code)
    by_hand = superfat(there["sodium hydroxide"], acid_of(acid, there[acid]), fats_mol=fats)
    assert by_hand == pytest.approx(5, abs=0.01)
    assert percent(found) == pytest.approx(by_hand, abs=0.01)
    assert check(acids.rows()).findings == ()


@pytest.mark.parametrize(("acid", "grams"), [("vinegar", 200), ("citric acid", 20)])
def test_too_much_alkali_with_an_acid_in_the_jug(acids: Shop, acid: str, grams: int) -> None:
    code = soap(acids, acid, grams)
    log_all_but(acids, code, "sodium hydroxide")
    mol = acid_of(acid, grams)
    # net of the acid 3.864142 x 0.95 = 3.670935 mol are wanted; the jug holds 165 / 39.997 = 4.125309 mol less the acid
    share = 0.95 * FATS_MOL / (165 / NAOH - mol)
    before = used(acids, code)
    found = correct(acids, code, "sodium hydroxide", 165_000, "lye")
    there = used(acids, code)
    assert there["sodium hydroxide"] == pytest.approx(165 * share, abs=0.01)
    assert there[acid] == pytest.approx(grams * share, abs=0.01)
    assert there["water"] == pytest.approx(before["water"] * share, abs=0.01)
    assert as_booked(acids, code, acid) == pytest.approx(5, abs=0.01)
    assert percent(found) == pytest.approx(5, abs=0.01)


def test_the_share_without_the_acid_would_have_burnt(acids: Shop) -> None:
    # What was advised once: so much of water and alkali that the alkali is that of the plan, and only a share of the
    # acid comes with it when the jug is poured. 10 g acetic acid take 0.166522 mol; soda 0.95 x 154.55 + 6.6604.
    code = soap(acids, "vinegar", 200)
    log_all_but(acids, code, "olive oil")
    acid, soda = (
        acid_of("vinegar", 200),
        next(line.target / 1000 for line in lines_of(acids.book, code) if line.material == "sodium hydroxide"),
    )
    # 200 g of 600 g of olive oil are in: 200 x 190 + 400 x 257 = 140.8 g KOH are 2.509553 mol
    fats = 140.8 / KOH
    poured = (0.95 * fats + acid) / (soda / NAOH)  # a share of water and alkali that leaves all the acid its alkali
    assert superfat(soda * poured, acid * poured, fats_mol=fats) < 5 - 2
    found = correct(acids, code, "olive oil", 200_000, "lye")
    there = used(acids, code)
    right = superfat(there["sodium hydroxide"], acid_of("vinegar", there["vinegar"]), fats_mol=fats)
    assert right == pytest.approx(5, abs=0.01)
    assert percent(found) == pytest.approx(right, abs=0.01)


@pytest.mark.parametrize("acid", ["vinegar", "citric acid"])
def test_an_acid_without_added_alkali_is_poured_with_its_share_too(acids: Shop, acid: str) -> None:
    grams = {"vinegar": 200, "citric acid": 10}[acid]
    code = soap(acids, acid, grams, add_alkali=False)
    planned_at = superfat(216.8 / KOH * 0.95 * NAOH, acid_of(acid, grams))  # 5 % and what the acid takes
    log_all_but(acids, code, "sodium hydroxide")
    found = correct(acids, code, "sodium hydroxide", 165_000, "lye")
    there = used(acids, code)
    assert there[acid] / grams == pytest.approx(there["sodium hydroxide"] / 165, abs=0.0001)
    assert as_booked(acids, code, acid) == pytest.approx(planned_at, abs=0.01)  # what the plan meant, the rise and all
    assert percent(found) == pytest.approx(planned_at, abs=0.01)


@pytest.mark.parametrize(("when", "acid"), [("in the fats", "citric acid"), ("at trace", "vinegar")])
def test_an_acid_of_another_stage_stays_whole(acids: Shop, when: str, acid: str) -> None:
    grams = {"vinegar": 40, "citric acid": 20}[acid]
    code = soap(acids, acid, grams, when=when)
    log_all_but(acids, code, "sodium hydroxide")
    found = correct(acids, code, "sodium hydroxide", 165_000, "lye")
    there = used(acids, code)
    assert there[acid] == grams
    assert acid.replace(" ", "-") not in wasted(acids)
    # the alkali for the fats and for all of the acid
    assert there["sodium hydroxide"] == pytest.approx((0.95 * FATS_MOL + acid_of(acid, grams)) * NAOH, abs=0.02)
    assert percent(found) == pytest.approx(as_booked(acids, code, acid), abs=0.01) == pytest.approx(5, abs=0.02)


def test_salt_sugar_and_milk_of_the_lye_are_left_with_their_share(acids: Shop) -> None:
    add_material(acids.book, MaterialFacts("sugar", "Sucrose"), kind="additive", code=None)
    add_material(acids.book, MaterialFacts("milk", "Caprae Lac", water_ppm=870_000), kind="liquid", code=None)
    for name in ("sugar", "milk"):
        deliver(acids.book, DeliveryLine(name, 500_000, f"{name} 1", 500))
    more = '\n[[additive]]\nmaterial = "sugar"\ngrams = 20\nwhen = "with the lye"\n'
    more += '\n[[liquid]]\nmaterial = "milk"\ngrams = 60\n'
    code = soap(acids, "vinegar", 100, more=more)
    log_all_but(acids, code, "olive oil")
    with acids.book.look() as rows:
        line = number(acids, code, "olive oil")
        advice = correction(rows, batch_of(acids.book, code), line, 400_000).advice[1]
    share, before = Fraction(1788, 2168), used(acids, code)
    jug = before["water"] + before["sodium hydroxide"] + 100 + 20 + 60
    assert advice.solution_mg / 1000 == pytest.approx(-jug * float(1 - share), abs=0.01)
    correct(acids, code, "olive oil", 400_000, "lye")
    assert wasted(acids)["sugar"] == pytest.approx(20 * float(1 - share), abs=0.001)
    assert wasted(acids)["milk"] == pytest.approx(60 * float(1 - share), abs=0.001)


def test_both_alkalis_and_an_acid(acids: Shop) -> None:
    facts = MaterialFacts("potash", "Potassium Hydroxide", alkali_kind="KOH", purity_ppm=900_000)
    add_material(acids.book, facts, kind="alkali", code=None)
    deliver(acids.book, DeliveryLine("potash", 500_000, "PH 1", 500))
    text = PLAIN_BAR.replace(
        '[alkali]\nmaterial = "sodium hydroxide"\nkind = "NaOH"',
        '[[alkali]]\nmaterial = "sodium hydroxide"\nkind = "NaOH"\npercent_of_demand = 60\n'
        '[[alkali]]\nmaterial = "potash"\nkind = "KOH"\npercent_of_demand = 40',
    )
    code = soap(acids, "citric acid", 20, text=text)
    log_all_but(acids, code, "potash")
    # the potash is 20 g over; net of the acid 0.95 x 3.864142 mol are poured of what is in the jug
    before = used(acids, code)
    target = next(line.target / 1000 for line in lines_of(acids.book, code) if line.material == "potash")
    found = correct(acids, code, "potash", round(target * 1000) + 20_000, "lye")
    acid = acid_of("citric acid", 20)
    share = 0.95 * FATS_MOL / (before["sodium hydroxide"] / NAOH + (target + 20) * 0.9 / KOH - acid)
    there = used(acids, code)
    assert there["potash"] == pytest.approx((target + 20) * share, abs=0.01)
    assert there["sodium hydroxide"] == pytest.approx(before["sodium hydroxide"] * share, abs=0.01)
    by_hand = superfat(
        there["sodium hydroxide"], acid_of("citric acid", there["citric acid"]), potash=there["potash"] * 0.9
    )
    assert by_hand == pytest.approx(5, abs=0.01)
    assert percent(found) == pytest.approx(by_hand, abs=0.01)


def test_more_lye_is_mixed_at_the_strength_meant_and_says_the_alkali_last(acids: Shop) -> None:
    code = soap(acids, "vinegar", 200)
    meant = {line.material: line.target / 1000 for line in lines_of(acids.book, code)}
    log_all_but(acids, code, "sodium hydroxide")
    with acids.book.look() as rows:
        found = correction(rows, batch_of(acids.book, code), number(acids, code, "sodium hydroxide"), 140_000).advice[1]
    # net of the acid the jug lacks (soda meant - 140) / 39.997 of 3.670935 mol; so much more of the lye as meant
    more = (meant["sodium hydroxide"] - 140) / NAOH / (0.95 * FATS_MOL)
    assert {name: mass / 1000 for _, name, mass in found.changes} == pytest.approx(
        {name: meant[name] * more for name in ("water", "vinegar", "sodium hydroxide")}, abs=0.01
    )
    assert found.words.startswith("mix ")
    assert found.words.index("vinegar") < found.words.index("sodium hydroxide")
    after = correct(acids, code, "sodium hydroxide", 140_000, "lye")
    assert percent(after) == pytest.approx(as_booked(acids, code, "vinegar"), abs=0.01) == pytest.approx(5, abs=0.01)


def test_what_is_in_the_jug_is_logged_before_a_share_of_it_is_booked(acids: Shop) -> None:
    code = soap(acids, "vinegar", 200)
    log_all_but(acids, code, "sodium hydroxide", "vinegar")
    line = number(acids, code, "vinegar")
    with pytest.raises(Refused, match=rf"log what is in the jug first: line {line} \(vinegar\)"):
        correct(acids, code, "sodium hydroxide", 165_000, "lye")


def test_the_record_shows_the_lye_as_it_was_poured(acids: Shop) -> None:
    code = soap(acids, "vinegar", 200)
    log_all_but(acids, code, "olive oil")
    correct(acids, code, "olive oil", 400_000, "lye")
    there = used(acids, code)
    record = batch_record(acids.rows(), code, program="test")
    # vinegar of 5 % is 95 % water
    water = there["water"] + 0.95 * there["vinegar"]
    assert record.lye.water_mg / 1000 == pytest.approx(water, abs=0.01)
    strength = there["sodium hydroxide"] / (there["sodium hydroxide"] + water)
    assert (record.lye.lye_concentration_ppm or 0) / 1_000_000 == pytest.approx(strength, abs=0.0001)
    assert strength == pytest.approx(1 / 3, abs=0.001)  # the 2 : 1 of the recipe


def test_a_way_that_burns_is_listed_as_none_and_not_taken(acids: Shop, run: Any) -> None:
    code = soap(acids, "vinegar", 200)
    log_all_but(acids, code, "olive oil")
    # net of its acid the jug holds 0.95 x 216.8 g KOH, for fats that take 178.8 g: 1 - 205.96 / 178.8 = -15.19 %
    said = run("batch", "correct", code, f"{number(acids, code, 'olive oil')}=400 g").stdout
    said = " ".join(said.replace("\u00a0", " ").replace("−", "-").split())
    assert "1. lye: Leave" in said
    assert "2. fats: Add 200 g of olive oil" in said
    assert "! pour is not a way out: with a superfat of -15.19 %, lye is left over" in said
    before = used(acids, code)
    with pytest.raises(Refused, match="'pour' is not a way out here: it leaves batch"):
        correct(acids, code, "olive oil", 400_000, "pour")
    assert used(acids, code) == before
    correct(acids, code, "olive oil", 400_000, "pour", anyway="it was poured, for the drains")  # what was done is kept
    assert used(acids, code)["olive oil"] == 400


@pytest.mark.parametrize(("soda", "way"), [(149_900, True), (155_000, False)])
def test_the_edge_is_where_no_plan_would_be_made(acids: Shop, soda: int, way: bool) -> None:
    # of the plain bar, whose certificates leave 1 mg KOH/g open: 1 - 149.9 / 154.554 = 3.01 %; 155 g leave -0.29 %
    code = planned(acids.book)
    log_all_but(acids, code, "sodium hydroxide")
    with acids.book.look() as rows:
        line = number(acids, code, "sodium hydroxide")
        pour = correction(rows, batch_of(acids.book, code), line, soda).advice[0]
    assert pour.possible == way
    assert ((pour.likely_low_ppm or 0) > 0) == way


def test_a_fat_held_back_does_not_protect_the_pot(acids: Shop) -> None:
    text = PLAIN_BAR.replace('"cold"', '"hot"').replace("percent = 40", 'percent = 30').replace(
        "[mould]",
        '[[fat]]\nmaterial = "coconut oil two"\npercent = 10\nwhen = "after the cook"\nin_demand = false\n\n[mould]',
    )  # fmt: skip
    facts = MaterialFacts("coconut oil two", "C", sap_low_mg_per_kg=257_000, sap_high_mg_per_kg=257_000)
    add_material(acids.book, facts, kind="fat", code=None)
    deliver(acids.book, DeliveryLine("coconut oil two", 1_000_000, "C2", 500))
    code = soap(acids, "citric acid", 10, text=text)
    log_all_but(acids, code, "sodium hydroxide", "coconut oil two")
    # the pot cooks 600 x 190 + 300 x 257 = 191.1 g KOH; 100 x 257 more come after the cook
    pot = 191.1 / KOH
    soda = (1.01 * pot + acid_of("citric acid", 10)) * NAOH  # 1 % too much in the pot, 10.9 % superfat over all
    with pytest.raises(Refused, match=r"'pour' is not a way out here.*superfat of [-−]1\.0"):
        correct(acids, code, "sodium hydroxide", round(soda * 1000), "pour")
    found = correct(acids, code, "sodium hydroxide", round(soda * 1000), "lye")
    assert found.before_addition is not None
    assert found.before_addition.nominal_ppm == pytest.approx(50_000, abs=100)


@pytest.mark.parametrize(("soda", "pours"), [(5, False), (12, False), (14, True)])
def test_acid_that_takes_all_the_lye_leaves_nothing_to_pour(acids: Shop, soda: int, pours: bool) -> None:
    """20 g of citric acid take 12.49 g of NaOH: 3 x 39.997 x 20 / 192.123."""
    code = soap(acids, "citric acid", 20)
    batch, line = batch_of(acids.book, code), number(acids, code, "sodium hydroxide")
    weigh(
        acids.book,
        code,
        {one.number: [Weighed(one.target)] for one in lines_of(acids.book, code) if one.role == "fat"},
        on=MADE,
        by="Nuala",
    )
    with acids.book.look() as rows:
        pour = correction(rows, batch, line, soda * 1000).advice[0]
    assert pour.possible is pours
    assert ("the acids take all of the lye" in pour.words) is not pours
