"""A wrong weight before lye and fats have met: what each way out books, and what is refused."""

import json
from datetime import date
from typing import Any

import pytest
from making import MADE, POURED, batch_of, deliver, lines_of, planned
from once import once
from shop import PLAIN_BAR, Shop

from ledger.domain.lye.weighed import LyeCheck
from ledger.errors import BadInput, Refused
from ledger.operations.bench.correct import correct_batch
from ledger.operations.bench.readings import ReadingValue, log_readings
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.keep.check import check
from ledger.operations.keep.undo import undo
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.stock.receive import DeliveryLine
from ledger.rows.decision import deviations
from ledger.rows.history import last_entry
from ledger.rows.lot import find_lot
from ledger.views.bench.correction import correction

# Lines of a plain bar: 1 olive oil 600 g, 2 coconut oil 400 g, 3 water 293.652 g, 4 sodium hydroxide 146.826 g.
# The fats take 600 x 190 + 400 x 257 = 216.8 g KOH; x 39.99677 / 56.1053 = 154.55402 g NaOH; x 0.95 = 146.82632 g.
OLIVE, COCONUT, WATER, LYE = 1, 2, 3, 4
MEANT = {OLIVE: 600_000, COCONUT: 400_000, WATER: 293_652, LYE: 146_826}


@once
def log(shop: Shop, code: str, *numbers: int, **more: Any) -> LyeCheck:
    """So many lines weighed as meant; other weights by line as `{number: mg}` under `masses`."""
    masses = {**{number: MEANT[number] for number in numbers}, **more.pop("masses", {})}
    takes = {number: [Weighed(mass)] for number, mass in masses.items()}
    return weigh(shop.book, code, takes, on=MADE, by="Nuala", **more)


def correct(shop: Shop, code: str, line: int, mg: int, take: str, anyway: str | None = None) -> LyeCheck:
    return correct_batch(shop.book, code, line, mg, take=take, on=MADE, by="Nuala", anyway=anyway)


def moved(shop: Shop, code: str) -> list[tuple[int, int]]:
    """(line, quantity) of what the last entry moved into or out of a batch, in order."""
    query = """
        SELECT p.number, v.quantity FROM movement v JOIN plan_line p ON p.id = v.plan_line_id
        JOIN batch b ON b.id = v.batch_id WHERE b.code = ? AND v.entry_id = ? ORDER BY v.id
    """
    return [tuple(row) for row in shop.rows().execute(query, (code, last_entry(shop.rows())))]


def wasted(shop: Shop) -> dict[str, int]:
    """What was thrown away, by lot."""
    query = "SELECT l.code, sum(v.quantity) FROM movement v JOIN lot l ON l.id = v.lot_id WHERE v.kind = 'wasted'"
    return {row[0]: row[1] for row in shop.rows().execute(f"{query} GROUP BY l.code")}


def on_hand(shop: Shop, *codes: str) -> list[int]:
    rows = shop.rows()
    return [find_lot(rows, code).on_hand for code in codes]


def used(shop: Shop, code: str) -> list[int]:
    return [line.used for line in lines_of(shop.book, code)]


def clean(shop: Shop) -> bool:
    return check(shop.rows()).findings == ()


def entries(shop: Shop) -> int:
    return int(shop.rows().execute("SELECT count(*) FROM entry").fetchone()[0])


def test_lye_too_strong_stays_in_the_jug_in_part_and_is_booked_as_waste(shop: Shop) -> None:
    code = planned(shop.book)
    log(shop, code, OLIVE, COCONUT, WATER)
    found = correct(shop, code, LYE, 160_000, "lye")
    # Of a solution of 160 g and 293.652 g the share 146.82632 / 160 = 0.9176645 is poured: 146.826 g of alkali and
    # 269.474 g of water; 13.174 g and 24.178 g stay in the jug.
    assert moved(shop, code) == [(LYE, -160_000), (WATER, 24_178), (LYE, 13_174)]
    assert used(shop, code) == [600_000, 400_000, 269_474, 146_826]
    assert wasted(shop) == {shop.water: -24_178, shop.lye: -13_174}
    # what really left the containers: 160 g after the 146.826 g of the first batch, and the water of both
    assert on_hand(shop, shop.lye, shop.water) == [1_000_000 - 146_826 - 160_000, 5_000_000 - 2 * 293_652]
    assert abs((found.superfat_ppm or 0) - 50_000) <= 100  # the 5 % of the recipe, to 0.01 %
    assert clean(shop)


def test_more_fats_meet_lye_that_is_too_strong(shop: Shop) -> None:
    code = planned(shop.book)
    log(shop, code, OLIVE, COCONUT, WATER)
    found = correct(shop, code, LYE, 160_000, "fats")
    # 160 / 146.82632 = 1.0897229 times the fats: 653.834 g and 435.889 g
    assert moved(shop, code) == [(LYE, -160_000), (OLIVE, -53_834), (COCONUT, -35_889)]
    assert used(shop, code) == [653_834, 435_889, 293_652, 160_000]
    assert wasted(shop) == {}
    assert on_hand(shop, shop.olive, shop.coconut) == [5_000_000 - 600_000 - 653_834, 3_000_000 - 400_000 - 435_889]
    assert abs((found.superfat_ppm or 0) - 50_000) <= 100
    assert clean(shop)


def test_pouring_it_as_it_is_books_the_weight_and_nothing_else(shop: Shop) -> None:
    code = planned(shop.book)
    log(shop, code, OLIVE, COCONUT, WATER)
    found = correct(shop, code, LYE, 150_000, "pour")
    assert moved(shop, code) == [(LYE, -150_000)]
    assert found.superfat_ppm == 29_466  # 1 - 150 / 154.55402 = 2.9466 %
    assert on_hand(shop, shop.lye) == [1_000_000 - 146_826 - 150_000]
    said = shop.rows().execute("SELECT text FROM reading WHERE what = 'correction'").fetchone()[0]
    assert said == "line 4 was 150 g; way taken: pour"
    assert clean(shop)


def test_fats_wrong_before_the_lye_is_weighed_give_its_line_a_new_target(shop: Shop) -> None:
    code = planned(shop.book)
    log(shop, code, OLIVE, COCONUT)
    correct(shop, code, OLIVE, 610_000, "lye")
    assert moved(shop, code) == [(OLIVE, -10_000)]  # the difference; both weights stay
    lye = lines_of(shop.book, code)[3]
    # 610 x 190 + 400 x 257 = 218.7 g KOH; x 0.71288755 x 0.95 = 148.113 g NaOH; OK from half a percent less
    # (0.740 g) to one step of the scale more, as far as a scale of 0.1 g reads it
    assert (lye.target, lye.low, lye.high, lye.logged) == (148_113, 147_400, 148_200, False)
    assert wasted(shop) == {}
    found = log(shop, code, WATER, masses={LYE: 148_113})
    assert abs((found.superfat_ppm or 0) - 50_000) <= 100
    assert clean(shop)


def test_a_fat_that_is_short_is_made_up(shop: Shop) -> None:
    code = planned(shop.book)
    log(shop, code, OLIVE, COCONUT, WATER, LYE)
    found = correct(shop, code, OLIVE, 550_000, "fats")
    assert moved(shop, code) == [(OLIVE, 50_000), (OLIVE, -50_000)]  # 50 g were never in; then they were added
    assert used(shop, code) == [600_000, 400_000, 293_652, 146_826]
    assert abs((found.superfat_ppm or 0) - 50_000) <= 100
    assert clean(shop)


def test_less_of_the_lye_meets_a_fat_that_is_short(shop: Shop) -> None:
    code = planned(shop.book)
    log(shop, code, OLIVE, COCONUT, WATER, LYE)
    found = correct(shop, code, OLIVE, 550_000, "lye")
    # 550 x 190 + 102.8 = 207.3 g KOH take 140.393 g NaOH at 5 %: 6.433 g less of it; and of the water
    # 293.652 x 140.39274 / 146.826 = 280.785 g, 12.867 g less
    assert moved(shop, code) == [(OLIVE, 50_000), (WATER, 12_867), (LYE, 6_433)]
    assert wasted(shop) == {shop.water: -12_867, shop.lye: -6_433}
    assert abs((found.superfat_ppm or 0) - 50_000) <= 100
    assert clean(shop)


def test_lye_left_in_the_jug_is_booked_to_the_lots_it_came_from(shop: Shop) -> None:
    second = deliver(shop.book, DeliveryLine("sodium hydroxide", 500_000, "SH 92", 500))
    code = planned(shop.book)
    log(shop, code, OLIVE, COCONUT, WATER)
    takes = [Weighed(100_000, shop.lye), Weighed(46_826, second)]
    weigh(shop.book, code, {LYE: takes}, on=MADE, by="Nuala")
    before = on_hand(shop, shop.lye, second)
    correct(shop, code, OLIVE, 550_000, "lye")
    # nothing more leaves either container: the 6.433 g are of what was weighed already
    assert on_hand(shop, shop.lye, second) == before == [1_000_000 - 146_826 - 100_000, 500_000 - 46_826]
    assert wasted(shop) == {shop.water: -12_867, second: -6_433}
    assert used(shop, code)[3] == 140_393
    assert clean(shop)


def test_water_that_was_short_is_made_up_and_too_much_stays(shop: Shop) -> None:
    code = planned(shop.book)
    log(shop, code, OLIVE, COCONUT, LYE)
    with pytest.raises(Refused, match="'lye' is not a way out here: water cannot be taken out of the lye"):
        correct(shop, code, WATER, 350_000, "lye")
    correct(shop, code, WATER, 250_000, "lye")
    assert moved(shop, code) == [(WATER, -250_000), (WATER, -43_652)]  # up to 293.652 g
    assert used(shop, code)[2] == 293_652
    assert clean(shop)


def test_lye_that_would_not_dissolve_is_not_poured(shop: Shop) -> None:
    code = planned(shop.book)
    log(shop, code, OLIVE, COCONUT, LYE)
    with pytest.raises(Refused, match="less water than alkali, and it does not dissolve"):
        correct(shop, code, WATER, 140_000, "pour")
    assert moved(shop, code) == [(OLIVE, -600_000), (COCONUT, -400_000), (LYE, -146_826)]


def test_an_undo_takes_the_whole_correction_back(shop: Shop) -> None:
    code = planned(shop.book)
    log(shop, code, OLIVE, COCONUT, WATER)
    before = on_hand(shop, shop.olive, shop.coconut, shop.water, shop.lye)
    for take in ("lye", "fats"):
        correct(shop, code, LYE, 160_000, take)
        undo(shop.book, last_entry(shop.rows()))
        assert on_hand(shop, shop.olive, shop.coconut, shop.water, shop.lye) == before
        assert used(shop, code) == [600_000, 400_000, 293_652, 0]
        lines = lines_of(shop.book, code)
        assert [line.target for line in lines] == list(MEANT.values())
        assert [line.logged for line in lines] == [True, True, True, False]
        assert sum(wasted(shop).values()) == 0
        assert clean(shop)
    assert shop.rows().execute("SELECT count(*) FROM live_reading WHERE what = 'correction'").fetchone()[0] == 0


@pytest.mark.parametrize("met", ["mixed", "trace", "cook start", "poured"])
def test_once_lye_and_fats_have_met_no_weight_is_put_right(shop: Shop, met: str) -> None:
    code = planned(shop.book)
    log(shop, code, OLIVE, COCONUT, WATER, LYE)
    reading = ReadingValue(met, 8, "min") if met == "trace" else ReadingValue(met, at="14:05")
    log_readings(shop.book, code, (reading,), on=MADE)
    before = entries(shop)
    for take in ("pour", "lye", "fats"):
        with pytest.raises(Refused, match=rf"have met \('{met}' is logged\)"):
            correct(shop, code, LYE, 160_000, take)
    assert entries(shop) == before
    undo(shop.book, last_entry(shop.rows()))  # the reading was a slip
    correct(shop, code, LYE, 150_000, "pour")
    assert used(shop, code)[3] == 150_000


def test_a_batch_that_was_cut_or_given_up_is_past_correcting(shop: Shop) -> None:
    with pytest.raises(Refused, match="its weights are mended with: batch log --correct"):
        correct(shop, shop.batch, LYE, 160_000, "pour")


def test_a_line_that_does_not_bear_on_the_lye_is_logged_as_it_was(shop: Shop) -> None:
    add_material(shop.book, MaterialFacts("pink clay", "Kaolin"), kind="additive", code=None)
    deliver(shop.book, DeliveryLine("pink clay", 50_000, "K1", 300))
    clay = '\n[[additive]]\nmaterial = "pink clay"\ngrams = 20\n'
    add_recipe(shop.book, PLAIN_BAR.replace("plain-bar", "pink").replace("Plain Bar", "Pink") + clay, file="pink.toml")
    code = planned(shop.book, "pink")
    with pytest.raises(
        BadInput, match=rf"Line 5 \(pink clay\) does not bear on the lye.*batch log {code} --line '5=25"
    ):
        correct(shop, code, 5, 25_000, "pour")
    with pytest.raises(BadInput, match="has no line 6; its lines are 1 to 5"):
        correct(shop, code, 6, 25_000, "pour")
    with pytest.raises(BadInput, match="How much olive oil is really in"):
        correct(shop, code, OLIVE, 0, "pour")


def test_a_way_that_is_none_is_refused_with_its_reason(shop: Shop) -> None:
    code = planned(shop.book)
    log(shop, code, OLIVE, COCONUT, WATER)
    before = entries(shop)
    with pytest.raises(Refused, match="'fats' is not a way out here: more fat would only raise the superfat further"):
        correct(shop, code, LYE, 130_000, "fats")
    with pytest.raises(Refused, match="'lye' is not a way out here: the lye fits as it is"):
        correct(shop, code, LYE, 146_850, "lye")  # 0.024 g off, within a step of the scale
    with pytest.raises(BadInput, match="did you mean fats"):
        correct(shop, code, LYE, 160_000, "fat")
    with pytest.raises(BadInput, match="write pour, lye or fats"):
        correct(shop, code, LYE, 160_000, "give up")
    assert entries(shop) == before


def test_more_lye_of_the_strength_meant_meets_lye_that_is_too_weak(shop: Shop) -> None:
    code = planned(shop.book)
    log(shop, code, OLIVE, COCONUT, WATER)
    found = correct(shop, code, LYE, 140_000, "lye")
    # 6.826 g are missing, and are mixed with twice their water: 13.653 g
    assert moved(shop, code) == [(LYE, -140_000), (WATER, -13_653), (LYE, -6_826)]
    assert wasted(shop) == {}
    assert abs((found.superfat_ppm or 0) - 50_000) <= 100
    assert clean(shop)


def test_more_fat_than_is_free_is_no_way_out(shop: Shop) -> None:
    # 6 400 g of fats take 3 840 of the 4 400 g of olive oil and 2 560 of the 2 600 g of coconut oil that are left;
    # the lye for them is 146.82632 x 6.4 = 939.688 g, more than the 853.174 g of the shop
    deliver(shop.book, DeliveryLine("sodium hydroxide", 2_000_000, "SH 93", 500))
    code = planned(shop.book, fats_mg=6_400_000)
    lines = lines_of(shop.book, code)
    weigh(shop.book, code, {one.number: [Weighed(one.target)] for one in lines[:3]}, on=MADE, by="Nuala")
    # 1 000 / 939.688 = 1.064183 times the fats: 164.3 g more of coconut oil, and 40 g are free
    with pytest.raises(Refused, match=r"it takes 164\.3 g more of coconut oil, and 40 g is free"):
        correct(shop, code, LYE, 1_000_000, "fats")
    assert used(shop, code)[3] == 0


def test_a_fat_of_two_lots_is_short_where_both_together_are(shop: Shop) -> None:
    # 6 900 g of fats: 2 760 g of coconut oil, 200 g of the lot that expires first and 2 560 g of the other, so 40 g
    # are free; lye of 1.015 x 6.9 x 146.82632 = 1 028.298 g takes 3.0 g and 38.4 g more of them, 41.4 g together
    deliver(shop.book, DeliveryLine("sodium hydroxide", 2_000_000, "SH 93", 500))
    deliver(shop.book, DeliveryLine("coconut oil", 200_000, "CN-1", 500, best_before=date(2026, 12, 31)))
    code = planned(shop.book, fats_mg=6_900_000)
    with pytest.raises(Refused, match=r"it takes 41\.4 g more of coconut oil, and 40 g is free"):
        correct(shop, code, 5, 1_028_298, "fats")


def test_what_the_wrong_line_did_not_take_is_free_to_make_it_up(shop: Shop) -> None:
    # 6 500 g of fats take all of the 2 600 g of coconut oil that is left; 2 500 g went in, so 100 g are still there
    deliver(shop.book, DeliveryLine("sodium hydroxide", 2_000_000, "SH 93", 500))
    code = planned(shop.book, fats_mg=6_500_000)
    lines = lines_of(shop.book, code)
    assert lines[1].target == 2_600_000
    weigh(shop.book, code, {one.number: [Weighed(one.target)] for one in lines}, on=MADE, by="Nuala")
    correct(shop, code, COCONUT, 2_500_000, "fats")
    assert moved(shop, code) == [(COCONUT, 100_000), (COCONUT, -100_000)]
    assert on_hand(shop, shop.coconut) == [0]
    assert clean(shop)


def test_the_same_before_the_wrong_line_was_logged(shop: Shop) -> None:
    deliver(shop.book, DeliveryLine("sodium hydroxide", 2_000_000, "SH 93", 500))
    code = planned(shop.book, fats_mg=6_500_000)
    lines = lines_of(shop.book, code)
    others = {one.number: [Weighed(one.target)] for one in lines if one.number != COCONUT}
    weigh(shop.book, code, others, on=MADE, by="Nuala")
    correct(shop, code, COCONUT, 2_500_000, "fats")
    assert moved(shop, code) == [(COCONUT, -2_500_000), (COCONUT, -100_000)]
    assert clean(shop)


def test_lye_left_over_is_kept_only_with_a_reason(shop: Shop) -> None:
    code = planned(shop.book)
    log(shop, code, OLIVE, COCONUT, WATER)
    before = entries(shop)
    # 1 - 155 / 154.55402 = -0.29 %
    with pytest.raises(Refused, match=r"superfat of [-−]0\.29 %: lye is left over and it would burn"):
        correct(shop, code, LYE, 155_000, "pour")
    assert (entries(shop), used(shop, code)[3]) == (before, 0)
    found = correct(shop, code, LYE, 155_000, "pour", anyway="for the drains")
    assert found.superfat_ppm == -2_886
    query = "SELECT verdict, reason FROM decision d JOIN batch b ON b.id = d.batch_id WHERE b.code = ?"
    assert [tuple(row) for row in shop.rows().execute(query, (code,))] == [("accepted", "for the drains")]
    assert clean(shop)


TWO_ALKALIS = PLAIN_BAR.replace("plain-bar", "dual").replace("Plain Bar", "Dual").replace(
    '[alkali]\nmaterial = "sodium hydroxide"\nkind = "NaOH"',
    '[[alkali]]\nmaterial = "sodium hydroxide"\nkind = "NaOH"\npercent_of_demand = 90\n'
    '[[alkali]]\nmaterial = "potash"\nkind = "KOH"\npercent_of_demand = 10',
)  # fmt: skip


@pytest.fixture
@once
def dual(shop: Shop) -> str:
    """A batch with soda for 90 % and potash of 90 % for 10 % of the demand; the fats and the water are weighed.

    Lines: 4 soda 216.8 x 0.9 x 0.71288755 x 0.95 = 132.144 g; 5 potash 216.8 x 0.1 x 0.95 / 0.9 = 22.884 g.
    """
    add_material(
        shop.book,
        MaterialFacts("potash", "Potassium Hydroxide", alkali_kind="KOH", purity_ppm=900_000),
        kind="alkali",
        code=None,
    )
    deliver(shop.book, DeliveryLine("potash", 500_000, "PH 1", 500))
    add_recipe(shop.book, TWO_ALKALIS, file="dual.toml")
    code = planned(shop.book, "dual")
    lines = lines_of(shop.book, code)
    assert [line.target for line in lines[3:]] == [132_144, 22_884]
    weigh(shop.book, code, {one.number: [Weighed(one.target)] for one in lines[:3]}, on=MADE, by="Nuala")
    return code


def test_the_alkali_still_to_be_weighed_makes_up_for_the_one_that_is_in(shop: Shop, dual: str) -> None:
    correct(shop, dual, 4, 140_000, "lye")
    lines = lines_of(shop.book, dual)
    assert (lines[3].used, wasted(shop)) == (140_000, {})  # what is in the jug stays in it
    # wanted 216.8 x 0.95 = 205.96 g KOH; 140 g soda are worth 196.3844 g; 9.5756 g pure potash, 10.640 g at 90 %
    assert lines[4].target == 10_640
    found = weigh(shop.book, dual, {5: [Weighed(10_640)]}, on=MADE, by="Nuala")
    assert abs((found.superfat_ppm or 0) - 50_000) <= 100
    assert clean(shop)


def test_a_short_fat_is_met_by_the_alkali_still_to_be_weighed(shop: Shop, dual: str) -> None:
    weigh(shop.book, dual, {4: [Weighed(132_144)]}, on=MADE, by="Nuala")
    correct(shop, dual, OLIVE, 580_000, "lye")
    # 580 x 190 + 102.8 = 213.0 g KOH x 0.95 = 202.35 g wanted; 132.144 g soda are worth 185.3644 g;
    # 16.9856 g pure potash, 18.873 g at 90 %
    assert lines_of(shop.book, dual)[4].target == 18_873
    found = weigh(shop.book, dual, {5: [Weighed(18_873)]}, on=MADE, by="Nuala")
    assert abs((found.superfat_ppm or 0) - 50_000) <= 100


def test_no_alkali_is_left_to_weigh_less_of_where_too_much_is_in(shop: Shop, dual: str) -> None:
    # 150 g soda alone are worth 210.41 g KOH, more than the 205.96 g wanted
    with pytest.raises(Refused, match="'lye' is not a way out here"):
        correct(shop, dual, 4, 150_000, "lye")
    assert batch_of(shop.book, dual).open_lines == 2


def test_the_command_says_the_ways_in_their_order_and_writes_nothing(shop: Shop, run: Any) -> None:
    code = planned(shop.book)
    log(shop, code, OLIVE, COCONUT, WATER)
    before = entries(shop)
    said = run("batch", "correct", code, "4=160 g").stdout
    assert said.index("1. lye:") < said.index("2. fats:") < said.index("pour is not a way out:")
    assert "lye is left over and the bars would burn" in " ".join(said.split())
    found = json.loads(run("batch", "correct", code, "4=160", "--json").stdout)
    assert (found["line"], found["meant_mg"], found["actual_mg"]) == (4, 146_826, 160_000)
    assert found["superfat_meant_ppm"] == 50_000
    ways = {one["way"]: one for one in found["advice"]}
    assert list(ways) == ["pour", "lye", "fats"]
    assert ways["pour"]["nominal_ppm"] == -35_237  # 1 - 160 / 154.55402
    assert ways["lye"]["solution_mg"] == -37_352  # 13.174 g of alkali and 24.178 g of water
    assert ways["fats"]["changes"] == [[1, "olive oil", 53_834], [2, "coconut oil", 35_889]]
    # all that went in: 653.834 + 435.889 + 293.652 + 160 g
    assert ways["fats"]["dough_mg"] == 1_543_375
    assert entries(shop) == before


def test_the_command_books_the_way_taken(shop: Shop, run: Any) -> None:
    code = planned(shop.book)
    log(shop, code, OLIVE, COCONUT, WATER)
    assert "is not a way out" in run("batch", "correct", code, "4=130 g", "--take", "fats", code=1).stderr
    assert "did you mean lye" in run("batch", "correct", code, "4=160 g", "--take", "lie", code=2).stderr
    done = run("batch", "correct", code, "4=160 g", "--take", "lye").stdout
    assert "5.00 %" in done
    assert f"Next: soapledger batch log {code}" in done
    run("batch", "log", code, "--reading", "poured=14:05")
    assert "have met" in run("batch", "correct", code, "4=160 g", code=1).stderr
    assert "nothing is wrong" in run("check").stdout


@pytest.mark.parametrize("wrong", ["160 g", "=160 g", "x=160 g", "4="])
def test_a_line_without_its_weight_is_bad_input(shop: Shop, run: Any, wrong: str) -> None:
    error = run("batch", "correct", planned(shop.book), wrong, code=2).stderr
    assert error.count("\n") == 1


def test_whoever_does_not_know_which_line_is_wrong_gives_the_lye_up(shop: Shop, run: Any) -> None:
    code = planned(shop.book)
    log(shop, code, OLIVE, COCONUT, WATER, LYE)
    error = run("batch", "correct", code, "unknown", code=1).stderr
    assert f"soapledger batch discard {code}" in error
    with shop.book.look() as rows:
        found = correction(rows, batch_of(shop.book, code), LYE, 146_826)
    assert found.advice[1].words == "not a way out: the lye fits as it is"
    weigh(shop.book, code, {}, on=MADE, by="Nuala", readings=POURED)


def test_a_deviation_that_a_way_out_ends_says_so(shop: Shop) -> None:
    """Water 140 g over; the way out by lye gives its line another target, and nothing was weighed again."""
    code = planned(shop.book)
    for number, mass in ((1, 600_000), (2, 400_000), (3, 433_652), (4, 170_000)):
        weigh(shop.book, code, {number: [Weighed(mass)]}, on=MADE, by="Nuala", anyway="to see")
    correct_batch(shop.book, code, 4, 170_000, take="lye", on=MADE, by="Nuala")
    with shop.book.look() as rows:
        ended = [one for one in deviations(rows, batch_of(shop.book, code).id) if one.verdict == "corrected"]
    assert ended
    assert all(one.reason and one.reason.startswith("not weighed again: the way out") for one in ended)
