"""A dough divided at trace: each portion is a batch of its own, and everything goes through the dough."""

import json
from collections import defaultdict
from datetime import date
from typing import Any

import pytest
from making import MADE, POURED, batch_of, deliver, lines_of, planned
from once import once
from shop import PLAIN_BAR, Shop

from ledger.domain.release.bars import Passing
from ledger.errors import BadInput, Refused
from ledger.operations.bench.cut import cut_batch
from ledger.operations.bench.discard import discard_batch
from ledger.operations.bench.portions import divide_batch
from ledger.operations.bench.readings import log_readings
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.keep.check import check
from ledger.operations.keep.undo import undo
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.recipe.recipes import add_recipe, revise_recipe
from ledger.operations.release.release import pass_bars
from ledger.operations.stock.lots import decide_lots
from ledger.operations.stock.receive import DeliveryLine
from ledger.rows.batch import portions_of
from ledger.rows.history import last_entry
from ledger.rows.lot import find_lot
from ledger.views.cost.cost import batch_cost
from ledger.views.recall.trace import trace
from ledger.views.recipe.ingredients import parts_of_batch
from ledger.views.record.record import batch_record
from ledger.views.stock.stock import stock

CUT = date(2026, 5, 7)
TIDE = (
    PLAIN_BAR.replace("plain-bar", "tide").replace("Plain Bar", "Tide")
    + """
[[portion]]
name = "plain"
percent = 60

[[portion]]
name = "slate"
percent = 40

[[additive]]
material = "slate clay"
grams = 12
portion = "slate"

[[fragrance]]
material = "bay oil"
grams = 10
portion = "plain"

[work]
minutes = 60

[[packaging]]
material = "band"
"""
)
# The dough: 600 + 400 + 293.652 + 146.826 = 1 440.478 g; 60 % of it 864.287 g, the rest 576.191 g.
PLAIN, SLATE = 864_287, 576_191


@pytest.fixture
@once
def tide(shop: Shop) -> Shop:
    """The worked shop with a recipe that divides, and what its portions take."""
    for name, inci, kind in (
        ("slate clay", "Illite", "additive"),
        ("bay oil", "Pimenta Acris Leaf Oil", "fragrance"),
        ("band", None, "packaging"),
    ):
        add_material(shop.book, MaterialFacts(name, inci), kind=kind, code=None)
    deliver(shop.book, DeliveryLine("slate clay", 50_000, "SC-1", 300))
    deliver(shop.book, DeliveryLine("bay oil", 100_000, "BO-7", 2000))
    deliver(shop.book, DeliveryLine("band", 100, "W-3", 5000))
    add_recipe(shop.book, TIDE, file="tide.toml")
    return shop


def portions(shop: Shop, code: str) -> list[str]:
    """The batch codes of the portions, in the order of the recipe."""
    with shop.book.look() as rows:
        return [child.code for child in portions_of(rows, batch_of(shop.book, code).id)]


@once
def dough_weighed(shop: Shop, code: str) -> str:
    """Every line of the dough weighed at its target."""
    takes = {line.number: [Weighed(line.target)] for line in lines_of(shop.book, code)}
    weigh(shop.book, code, takes, on=MADE, by="Nuala")
    return code


@once
def divided(shop: Shop, masses: dict[str, int] | None = None) -> tuple[str, str, str]:
    """A batch planned, weighed and divided; the codes of the dough, the plain and the slate portion."""
    code = dough_weighed(shop, planned(shop.book, "tide"))
    divide_batch(shop.book, code, masses or {}, on=MADE, by="Nuala")
    plain, slate = portions(shop, code)
    return code, plain, slate


@once
def poured_and_cut(shop: Shop, code: str, bars: int, **more: int) -> None:
    """A portion with its own additives weighed in, poured and cut."""
    takes = {
        line.number: [Weighed(line.target)]
        for line in lines_of(shop.book, code)
        if line.role not in ("dough", "packaging")
    }
    weigh(shop.book, code, takes, on=MADE, by="Nuala", readings=POURED)
    cut_batch(shop.book, code, bars=bars, on=CUT, by="Nuala", **more)


def clean(shop: Shop) -> bool:
    return check(shop.rows()).findings == ()


def dough_lot(shop: Shop, code: str) -> str:
    query = "SELECT l.code FROM live_lot l JOIN batch b ON b.id = l.batch_id WHERE b.code = ?"
    return str(shop.rows().execute(query, (code,)).fetchone()[0])


def test_a_plan_makes_a_batch_of_each_portion_with_its_own_lines(tide: Shop) -> None:
    code = planned(tide.book, "tide")
    assert [line.material for line in lines_of(tide.book, code)] == [
        "olive oil", "coconut oil", "water", "sodium hydroxide",
    ]  # fmt: skip
    plain, slate = portions(tide, code)
    own = [batch_of(tide.book, one) for one in (plain, slate)]
    assert [(one.part_of, one.portion, one.product, one.bars_planned) for one in own] == [
        (code, "plain", "Tide, plain", 6),  # 60 % of ten bars
        (code, "slate", "Tide, slate", 4),
    ]
    assert [(one.role, one.material, one.target) for one in lines_of(tide.book, plain)] == [
        ("dough", "Tide, dough", PLAIN),
        ("fragrance", "bay oil", 10_000),
        ("packaging", "band", 6),
    ]
    assert [(one.role, one.material, one.target) for one in lines_of(tide.book, slate)] == [
        ("dough", "Tide, dough", SLATE),
        ("additive", "slate clay", 12_000),
        ("packaging", "band", 4),
    ]
    assert [one.number for one in lines_of(tide.book, slate)] == [1, 2, 3]
    assert clean(tide)


def test_what_the_portions_mean_to_take_is_not_free_for_another_batch(tide: Shop) -> None:
    for _ in range(4):  # 12 g of 50 g each
        planned(tide.book, "tide", fats_mg=1_000_000)
    with pytest.raises(Refused, match="slate clay: 2 g of accepted stock is free, and 12 g is needed"):
        planned(tide.book, "tide")


def test_a_share_of_the_fats_in_a_portion_is_of_its_part_of_the_dough(tide: Shop) -> None:
    share = TIDE.replace("grams = 12", "percent_of_fats = 3")
    revise_recipe(tide.book, "tide", share, file="tide.toml")
    _, slate = portions(tide, planned(tide.book, "tide"))
    assert lines_of(tide.book, slate)[1].target == 12_000  # 3 % of 40 % of 1000 g


def test_bars_written_for_each_portion_grow_with_the_batch(tide: Shop) -> None:
    text = TIDE.replace("percent = 60\n\n[[portion]]", "percent = 60\nbars = 7\n\n[[portion]]")
    text = text.replace('name = "slate"\npercent = 40', 'name = "slate"\npercent = 40\nbars = 3')
    revise_recipe(tide.book, "tide", text, file="tide.toml")
    code = planned(tide.book, "tide", fats_mg=2_000_000)
    assert [batch_of(tide.book, one).bars_planned for one in portions(tide, code)] == [14, 6]
    assert [lines_of(tide.book, one)[-1].target for one in portions(tide, code)] == [14, 6]


def test_a_portion_without_its_number_of_bars_takes_the_rest(tide: Shop) -> None:
    text = TIDE.replace("percent = 60\n\n[[portion]]", "percent = 60\nbars = 7\n\n[[portion]]")
    revise_recipe(tide.book, "tide", text, file="tide.toml")
    code = planned(tide.book, "tide")
    assert [batch_of(tide.book, one).bars_planned for one in portions(tide, code)] == [7, 3]


def test_bars_of_the_portions_alone_are_wrapped_too(tide: Shop) -> None:
    text = TIDE.replace("percent = 60\n\n[[portion]]", "percent = 60\nbars = 7\n\n[[portion]]").replace("bars = 10", "")
    text = text.replace('name = "slate"\npercent = 40', 'name = "slate"\npercent = 40\nbars = 3')
    revise_recipe(tide.book, "tide", text, file="tide.toml")
    plain, slate = portions(tide, planned(tide.book, "tide"))
    assert [(one.material, one.target) for one in lines_of(tide.book, plain)][2:] == [("band", 7)]
    assert [(one.material, one.target) for one in lines_of(tide.book, slate)][2:] == [("band", 3)]


def test_divided_by_its_shares_all_that_went_in_is_shared_out(tide: Shop) -> None:
    code = planned(tide.book, "tide")
    masses = {1: 610_000, 2: 400_000, 3: 293_652, 4: 146_826}  # 10 g more of olive oil: 1 450.478 g
    weigh(tide.book, code, {n: [Weighed(mass)] for n, mass in masses.items()}, on=MADE, by="Nuala")
    plain, slate = portions(tide, code)
    # 60 % of it, 870.287 g; the rest 580.191 g
    assert divide_batch(tide.book, code, {}, on=MADE, by="Nuala") == (
        ("plain", plain, 870_287),
        ("slate", slate, 580_191),
    )
    assert batch_of(tide.book, code).status == "divided"
    assert [lines_of(tide.book, one)[0].used for one in (plain, slate)] == [870_287, 580_191]
    lot = find_lot(tide.rows(), dough_lot(tide, code))
    assert (lot.material, lot.status, lot.on_hand) == ("Tide, dough", "accepted", 0)
    assert clean(tide)


def test_divided_by_weights_the_rest_is_lost_to_the_pot(tide: Shop) -> None:
    code, plain, slate = divided(tide, {"slate": 560_000, "plain": 850_000})
    assert [lines_of(tide.book, one)[0].used for one in (plain, slate)] == [850_000, 560_000]
    lot = find_lot(tide.rows(), dough_lot(tide, code))
    yielded = "SELECT sum(quantity) FROM movement WHERE lot_id = ? AND kind = 'yielded'"
    assert tide.rows().execute(yielded, (lot.id,)).fetchone()[0] == 1_410_000
    assert lot.on_hand == 0
    assert clean(tide)


def test_what_is_not_divided(tide: Shop) -> None:
    code = planned(tide.book, "tide")
    with pytest.raises(Refused, match="has lines still to be weighed before it is divided"):
        divide_batch(tide.book, code, {}, on=MADE, by="Nuala")
    dough_weighed(tide, code)
    for masses, message in (
        ({"plain": 900_000}, "How much dough went into slate"),
        ({"plain": 900_000, "slte": 500_000}, "no portion 'slte'; did you mean slate"),
        ({"plain": 900_000, "slate": 0}, "Portion slate takes more than nothing"),
        # 900 + 540.479 g is a milligram more than the 1 440.478 g that went in
        ({"plain": 900_000, "slate": 540_479}, "only 1.?440.5 g went in; weigh again"),
    ):
        with pytest.raises(BadInput, match=message):
            divide_batch(tide.book, code, masses, on=MADE, by="Nuala")
    with pytest.raises(BadInput, match="was still being made on 6 May 2026"):
        divide_batch(tide.book, code, {}, on=date(2026, 5, 5), by="Nuala")
    assert batch_of(tide.book, code).status == "weighed"
    divide_batch(tide.book, code, {"plain": 900_000, "slate": 540_478}, on=MADE, by="Nuala")
    with pytest.raises(Refused, match="is divided; it cannot be divided"):
        divide_batch(tide.book, code, {}, on=MADE, by="Nuala")
    with pytest.raises(Refused, match="has no portions"):
        divide_batch(tide.book, tide.batch, {}, on=MADE, by="Nuala")
    assert clean(tide)


def test_dough_does_not_go_into_a_portion_that_was_given_up(tide: Shop) -> None:
    code = dough_weighed(tide, planned(tide.book, "tide"))
    slate = portions(tide, code)[1]
    discard_batch(tide.book, slate, on=MADE, by="Nuala", reason="the small mould is broken")
    with pytest.raises(Refused, match=f"Batch {slate}, a portion of it, was discarded"):
        divide_batch(tide.book, code, {}, on=MADE, by="Nuala")


def test_dough_that_is_given_up_takes_its_portions_with_it(tide: Shop) -> None:
    code = dough_weighed(tide, planned(tide.book, "tide"))
    plain, slate = portions(tide, code)
    discard_batch(tide.book, slate, on=MADE, by="Nuala", reason="the small mould is broken")
    discard_batch(tide.book, code, on=MADE, by="Nuala", reason="seized in the pot")
    assert [batch_of(tide.book, one).status for one in (code, plain, slate)] == ["discarded"] * 3
    query = "SELECT b.code, d.reason FROM decision d JOIN batch b ON b.id = d.batch_id WHERE d.verdict = 'discarded'"
    assert [tuple(row) for row in tide.rows().execute(f"{query} ORDER BY d.id")] == [
        (slate, "the small mould is broken"),
        (code, "seized in the pot"),
        (plain, "seized in the pot"),
    ]
    held = [one for one in stock(tide.rows(), kind="fragrance") if one.name == "bay oil"]
    assert [(one.on_hand, one.free) for one in held] == [(100_000, 100_000)]  # what it meant to take is free again
    assert clean(tide)


def test_dough_is_not_cut_and_a_portion_not_before_it_is_divided_off(tide: Shop) -> None:
    code = dough_weighed(tide, planned(tide.book, "tide"))
    plain = portions(tide, code)[0]
    with pytest.raises(Refused, match=f"gives no bars; .*batch divide {code}"):
        cut_batch(tide.book, code, bars=10, on=CUT, by="Nuala")
    weigh(tide.book, plain, {2: [Weighed(10_000)]}, on=MADE, by="Nuala")
    with pytest.raises(Refused, match="has 1 line still to be weighed"):
        cut_batch(tide.book, plain, bars=6, on=CUT, by="Nuala")
    with pytest.raises(Refused, match="lines still to be weighed, so it cannot be poured yet"):
        log_readings(tide.book, plain, POURED, on=MADE)


def test_the_bars_of_each_portion_are_a_lot_of_its_own_code(tide: Shop) -> None:
    _, plain, slate = divided(tide)
    poured_and_cut(tide, plain, 6, bars_mg=800_000)
    poured_and_cut(tide, slate, 4, bars_mg=500_000, offcuts_mg=40_000)
    rows = tide.rows()
    assert [(lot.code, lot.material, lot.on_hand) for lot in (find_lot(rows, plain), find_lot(rows, slate))] == [
        (plain, "Tide, plain", 6),
        (slate, "Tide, slate", 4),
    ]
    assert [batch_of(tide.book, one).status for one in (plain, slate)] == ["curing", "curing"]
    assert batch_of(tide.book, plain).ready_on == date(2026, 6, 4)  # the cut of 7 May and 28 days
    # 576.191 g of dough and 12 g of clay: no more than 588.191 g can come out
    assert clean(tide)


def test_no_more_comes_out_of_a_portion_than_went_into_it(tide: Shop) -> None:
    _, _, slate = divided(tide)
    with pytest.raises(Refused, match=r"588\.3 g came out and only 588\.2 g went in"):
        poured_and_cut(tide, slate, 4, bars_mg=588_300)


def test_a_trace_goes_back_through_the_dough_and_on_to_both_portions(tide: Shop) -> None:
    code, plain, slate = divided(tide)
    poured_and_cut(tide, plain, 6)
    poured_and_cut(tide, slate, 4)
    back = trace(tide.rows(), slate)
    assert code in back.batches
    assert plain not in back.batches
    lots = {tide.olive, tide.coconut, tide.water, tide.lye}
    assert lots < set(back.supplier_lots)
    assert len(back.supplier_lots) == 5  # the four of the dough and the clay; no bay oil
    assert {code, plain, slate} < set(trace(tide.rows(), tide.olive, forward=True).batches)


@pytest.mark.usefixtures("frozen")
def test_a_recall_reaches_both_portions_through_the_dough_and_one_through_its_own(tide: Shop, run: Any) -> None:
    code, plain, slate = divided(tide)
    poured_and_cut(tide, plain, 6)
    poured_and_cut(tide, slate, 4)
    oil = json.loads(run("recall", "lot", "4471/2", "-o", "oil.pdf", "--json").stdout)
    assert {one["batch_code"] for one in oil["batches"]} == {tide.batch, code, plain, slate}
    by_code = {one["batch_code"]: one for one in oil["batches"]}
    way = [by_code[slate][key] for key in ("first", "after", "last", "steps")]
    assert way == [tide.olive, code, dough_lot(tide, code), 3]
    assert oil["totals"]["made"] == 20  # ten of the shop's own batch, six and four
    assert oil["totals"]["unexplained"] == 0
    clay = json.loads(run("recall", "lot", "SC-1", "-o", "clay.pdf", "--json").stdout)
    assert [one["batch_code"] for one in clay["batches"]] == [slate]
    assert clay["totals"]["made"] == 4


def test_each_portion_declares_its_own_additives_and_adds_up_to_its_mass(tide: Shop) -> None:
    code, plain, slate = divided(tide)
    poured_and_cut(tide, plain, 6)
    poured_and_cut(tide, slate, 4)
    with tide.book.look() as rows:
        found = {one: parts_of_batch(rows, batch_of(tide.book, one).id) for one in (code, plain, slate)}
    masses: dict[str, dict[str, int]] = {}
    for one, parts in found.items():
        sums: dict[str, int] = defaultdict(int)
        for part in parts:
            sums[part.inci] += part.mass_mg
        masses[one] = dict(sums)
    # of the 1 440.478 g of dough 576.191 g: 40 % of each to the milligram it is rounded to
    assert masses[slate] == {
        "OLEA EUROPAEA FRUIT OIL": 240_000,
        "COCOS NUCIFERA OIL": 160_000,
        "AQUA": 117_461,  # 293.652 x 0.4 = 117.4608
        "SODIUM HYDROXIDE": 58_730,  # 146.826 x 0.4 = 58.7304
        "ILLITE": 12_000,
    }
    assert sum(masses[slate].values()) == SLATE + 12_000
    assert sum(masses[plain].values()) == PLAIN + 10_000
    assert masses[plain]["PIMENTA ACRIS LEAF OIL"] == 10_000
    assert "ILLITE" not in masses[plain]
    assert not {"ILLITE", "PIMENTA ACRIS LEAF OIL"} & set(masses[code])


def test_the_costs_of_the_portions_add_up_to_the_whole(tide: Shop) -> None:
    code, plain, slate = divided(tide)
    poured_and_cut(tide, plain, 6)
    poured_and_cut(tide, slate, 4)
    whole, six, four = (batch_cost(tide.rows(), one) for one in (code, plain, slate))
    # The second 600 g of 5 kg of olive oil for 32.50: 3.90. The second 400 g of 3 kg for 18.00: 2.40. Water 293.652 g
    # of 5 kg for 1.00: 0.06. Lye 146.826 g of 1 kg for 9.00: 2 x 132.14 = 264.29, less the 132 of the first: 1.32.
    assert [line.cost_minor for line in whole.lines] == [390, 240, 6, 132]
    assert (whole.labour_minor, whole.total_minor) == (1500, 2268)  # an hour at 15.00
    # 2268 x 864 287 / 1 440 478 = 1360.8 and the rest; 10 of 100 g of bay oil for 20.00; 12 of 50 g of clay for 3.00
    assert [line.cost_minor for line in six.lines] == [1361, 200]
    assert [line.cost_minor for line in four.lines] == [907, 72]
    assert (six.labour_minor, four.labour_minor) == (0, 0)  # the hour is counted once
    assert six.total_minor + four.total_minor == whole.total_minor + 272
    assert sum(six.per_bar_minor) == 1561
    assert len(four.per_bar_minor) == 4


def test_a_division_is_taken_back_until_something_came_of_it(tide: Shop) -> None:
    code, plain, _ = divided(tide)
    division = last_entry(tide.rows())
    lot = dough_lot(tide, code)
    undo(tide.book, division)
    assert batch_of(tide.book, code).status == "weighed"
    assert [lines_of(tide.book, one)[0].logged for one in portions(tide, code)] == [False, False]
    with pytest.raises(BadInput, match=f"no lot {lot}"):
        find_lot(tide.rows(), lot)
    assert clean(tide)
    divide_batch(tide.book, code, {}, on=MADE, by="Nuala")
    division = last_entry(tide.rows())
    poured_and_cut(tide, plain, 6)
    with pytest.raises(Refused, match=f"lot {plain}"):
        undo(tide.book, division)
    undo(tide.book, last_entry(tide.rows()))  # the cut
    with pytest.raises(Refused, match=f"the pouring of batch {plain}"):
        undo(tide.book, division)
    undo(tide.book, last_entry(tide.rows()))  # the pouring, with what was weighed
    undo(tide.book, division)
    assert clean(tide)


def test_dough_weights_are_not_undone_under_a_division(tide: Shop) -> None:
    code = dough_weighed(tide, planned(tide.book, "tide"))
    weighing = last_entry(tide.rows())
    divide_batch(tide.book, code, {}, on=MADE, by="Nuala")
    with pytest.raises(Refused, match=f"lot {dough_lot(tide, code)}"):
        undo(tide.book, weighing)
    with pytest.raises(Refused, match=r"only .* would have gone in"):
        weigh(tide.book, code, {1: [Weighed(590_000)]}, on=MADE, by="Nuala", correct=True)


def test_a_portion_is_passed_in_its_own_wrapping(tide: Shop) -> None:
    _, plain, slate = divided(tide)
    poured_and_cut(tide, plain, 6)
    poured_and_cut(tide, slate, 4)
    pass_bars(tide.book, plain, Passing(on=date(2026, 6, 4), by="Nuala"))
    assert [line.used for line in lines_of(tide.book, plain) if line.role == "packaging"] == [6]
    assert [line.used for line in lines_of(tide.book, slate) if line.role == "packaging"] == [0]
    assert clean(tide)


def test_lye_left_over_in_the_dough_is_asked_about_at_each_portion(tide: Shop) -> None:
    code = planned(tide.book, "tide")
    masses = {1: 600_000, 2: 400_000, 3: 293_652, 4: 155_000}  # 1 - 155 / 154.55402: below zero
    takes = {n: [Weighed(mass)] for n, mass in masses.items()}
    weigh(tide.book, code, takes, on=MADE, by="Nuala", anyway="to see")
    divide_batch(tide.book, code, {}, on=MADE, by="Nuala")
    for portion, bars in zip(portions(tide, code), (6, 4), strict=True):
        poured_and_cut(tide, portion, bars)
        with pytest.raises(Refused, match="lye is left over"):
            pass_bars(tide.book, portion, Passing(on=date(2026, 6, 4), by="Nuala"))
        record = batch_record(tide.rows(), portion, program="1")
        assert any("LYE IS LEFT OVER" in one for one in record.look_first.warnings)


def test_a_code_of_a_portion_that_is_taken_is_refused(tide: Shop) -> None:
    # the soap of the portion 'bar' of a recipe 'plain' would be called plain-bar, as another soap is
    taken = TIDE.replace('code = "tide"', 'code = "plain"').replace('name = "Tide"', 'name = "Plain"')
    taken = taken.replace('name = "slate"', 'name = "bar"').replace('portion = "slate"', 'portion = "bar"')
    with pytest.raises(BadInput, match="a material is called 'plain-bar' already"):
        add_recipe(tide.book, taken, file="plain.toml")
    add_recipe(tide.book, PLAIN_BAR.replace('"plain-bar"', '"tide-dark"').replace("Plain Bar", "Dark"), file="d.toml")
    dark = TIDE.replace('name = "slate"', 'name = "dark"').replace('portion = "slate"', 'portion = "dark"')
    with pytest.raises(BadInput, match="a material is called 'tide-dark' already"):
        revise_recipe(tide.book, "tide", dark, file="tide.toml")


def test_a_portion_left_out_of_one_version_may_come_back(tide: Shop) -> None:
    chalk = TIDE.replace('name = "slate"', 'name = "chalk"').replace('portion = "slate"', 'portion = "chalk"')
    revise_recipe(tide.book, "tide", chalk, file="tide.toml")
    revise_recipe(tide.book, "tide", TIDE, file="tide.toml")
    slate = portions(tide, planned(tide.book, "tide"))[1]
    assert batch_of(tide.book, slate).product == "Tide, slate"


def test_a_hold_on_the_bars_of_one_portion_leaves_the_other_alone(tide: Shop) -> None:
    _, plain, slate = divided(tide)
    poured_and_cut(tide, plain, 6)
    poured_and_cut(tide, slate, 4)
    decide_lots(tide.book, [plain], verdict="on hold", on=CUT, by="Nuala", reason="smells of fish")
    with pytest.raises(Refused, match="on hold"):
        pass_bars(tide.book, plain, Passing(on=date(2026, 6, 4), by="Nuala", anyway="fine"))
    assert pass_bars(tide.book, slate, Passing(on=date(2026, 6, 4), by="Nuala")).good == 4


@pytest.mark.usefixtures("frozen")
def test_the_command_divides_by_shares_or_by_weights(tide: Shop, run: Any) -> None:
    code = dough_weighed(tide, planned(tide.book, "tide"))
    plain, slate = portions(tide, code)
    for words, says in (
        (("plain=900 g", "slate"), "'slate' is not a portion with its weight"),
        (("plain=900 g", "plain=90 g"), "'plain=90 g' is not a portion with its weight, once"),
        (("plain=900", "slate=500 g"), "900 of what?"),
        (("plain=900 g",), "How much dough went into slate"),
    ):
        error = run("batch", "divide", code, *words, code=2).stderr
        assert says in error
        assert error.count("\n") == 1
    found = json.loads(run("batch", "divide", code, "plain=0.88 kg", "slate=550 g", "--json").stdout)
    assert found == [
        {"portion": "plain", "batch": plain, "dough_mg": 880_000},
        {"portion": "slate", "batch": slate, "dough_mg": 550_000},
    ]
    assert "is divided; it cannot be divided" in run("batch", "divide", code, code=1).stderr
    shown = run("batch", "log", slate, "--as-planned", "--reading", "poured=14:20").stdout
    assert f"Next: soapledger batch cut {slate}" in shown
    run("batch", "cut", slate, "4", "--on", "2026-05-08")
    assert slate in run("batch", "list").stdout
    assert "slate clay" in run("batch", "show", slate).stdout
    assert "nothing is wrong" in run("check").stdout
