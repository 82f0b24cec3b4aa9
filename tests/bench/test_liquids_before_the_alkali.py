"""Whatever is liquid or an acid stands before the alkali that goes into it: plan, recipe, sheets and prompt alike."""

from typing import Any

import pytest
from making import MADE, deliver, lines_of, planned
from once import once
from pypdf import PdfReader
from shop import PLAIN_BAR, Shop

from ledger.errors import Refused
from ledger.operations.bench import plan
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.stock.receive import DeliveryLine

SOUR = PLAIN_BAR.replace("plain-bar", "sour").replace("Plain Bar", "Sour")
MORE = """
[[additive]]
material = "sugar"
grams = 20
when = "with the lye"

[[additive]]
material = "vinegar"
grams = 200
when = "with the lye"
add_alkali = true

[[additive]]
material = "aloe juice"
grams = 5
when = "with the lye"

[[liquid]]
material = "goat milk"
grams = 50

[[additive]]
material = "citric acid"
grams = 5
when = "at trace"
add_alkali = true
"""
IN_ORDER = [
    "olive oil", "coconut oil", "water", "goat milk", "vinegar", "aloe juice", "sodium hydroxide", "sugar",
    "citric acid",
]  # fmt: skip
HEATS = "There is acid in the jug, and it heats more"


@pytest.fixture
@once
def sour(shop: Shop) -> Shop:
    """The shop with vinegar of 5 %, citric acid, sugar, aloe juice and milk, and a soap of them."""
    for name, kind, facts in (
        ("vinegar", "additive", {"acid_koh_mg_per_kg": 934_279, "purity_ppm": 50_000}),
        ("citric acid", "additive", {"acid_koh_mg_per_kg": 876_084, "purity_ppm": 1_000_000}),
        ("sugar", "additive", {}),
        ("aloe juice", "liquid", {}),
        ("goat milk", "liquid", {"water_ppm": 870_000}),
    ):
        add_material(shop.book, MaterialFacts(name, name, **facts), kind=kind, code=None)  # type: ignore[arg-type]
        deliver(shop.book, DeliveryLine(name, 2_000_000, f"{name} 1", 500))
    add_recipe(shop.book, SOUR + MORE, file="sour.toml")
    return shop


def in_this_order(said: str, names: list[str]) -> None:
    found = [said.index(name) for name in names]
    assert found == sorted(found), said


def test_a_new_plan_weighs_them_before_the_alkali(sour: Shop, run: Any) -> None:
    said = run("batch", "plan", "sour", "-o", "worksheet.pdf").stdout
    assert [line.material for line in lines_of(sour.book, "26-002-2")] == IN_ORDER
    assert [line.number for line in lines_of(sour.book, "26-002-2")] == list(range(1, 10))
    table = said[said.index("line  when") :]
    in_this_order(table, IN_ORDER)
    assert HEATS in " ".join(said.split())
    assert "alkali into liquid, never liquid onto alkali" in " ".join(said.split())
    sheet = " ".join(page.extract_text() for page in PdfReader("worksheet.pdf").pages)
    in_this_order(sheet[sheet.index("Weigh the fats") :], IN_ORDER)
    work = " ".join(sheet.split())
    in_this_order(work[work.index("Make the lye") :], ["Make the lye", "never liquid onto alkali", HEATS, "goat milk"])


@pytest.mark.usefixtures("sour")
def test_the_recipe_and_its_sheet_say_the_same_order(run: Any) -> None:
    shown = run("recipe", "show", "sour").stdout
    in_this_order(shown, IN_ORDER)
    assert HEATS in " ".join(shown.split())
    run("recipe", "print", "sour", "-o", "sheet.pdf")
    sheet = " ".join(" ".join(page.extract_text() for page in PdfReader("sheet.pdf").pages).split())
    in_this_order(sheet[sheet.index("in the fats olive oil") :], IN_ORDER[:2] + IN_ORDER[3:])
    in_this_order(sheet, ["with the lye water", "goat milk"])
    in_this_order(sheet, ["never liquid onto alkali", HEATS, "goat milk"])


def test_the_prompt_asks_them_first_and_warns_at_the_alkali(sour: Shop, run: Any) -> None:
    code = planned(sour.book, "sour")
    said = run("batch", "log", code, input="\n" * 4 + "\n" * 4 + "q\n").stderr  # clean, the scale left; six lines
    in_this_order(said, ["3. water", "4. goat milk", "5. vinegar", "never liquid onto alkali", HEATS, "7. sodium"])
    assert said.count(HEATS) == 1


def test_without_an_acid_in_the_jug_nothing_is_said_of_one(sour: Shop, run: Any) -> None:
    late = MORE.replace('200\nwhen = "with the lye"', '20\nwhen = "at trace"')
    add_recipe(sour.book, (SOUR + late).replace("sour", "late").replace("Sour", "Late"), file="late.toml")
    for words in (("batch", "plan", "late", "-o", "w.pdf"), ("recipe", "show", "late")):
        assert "acid in the jug" not in " ".join(run(*words).stdout.split())
    assert "acid in the jug" not in "".join(page.extract_text() for page in PdfReader("w.pdf").pages)
    said = run("batch", "log", "26-002-2", input="\n" * 9 + "q\n").stderr
    assert "never liquid onto alkali" in said
    assert "acid in the jug" not in said


def test_a_batch_planned_before_keeps_its_numbers_and_is_warned_at_its_acid(
    sour: Shop, run: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    with monkeypatch.context() as once:
        once.setattr(plan, "order_of_work", lambda recipe, _: recipe.lines)
        code = planned(sour.book, "sour")
    old = [line.material for line in lines_of(sour.book, code)]
    assert old.index("sodium hydroxide") < old.index("vinegar")
    masses = {line.number: [Weighed(line.target)] for line in lines_of(sour.book, code)[:4]}
    weigh(sour.book, code, masses, on=MADE, by="Nuala")
    said = run("batch", "log", code, input="\n" * 8 + "q\n").stderr
    number = old.index("vinegar") + 1
    in_this_order(said, [HEATS, f"{number}. vinegar"])
    assert [line.number for line in lines_of(sour.book, code)] == list(range(1, 10))


def test_an_acid_that_goes_in_at_trace_is_counted_with_its_target_until_then(sour: Shop) -> None:
    # 20 g of citric acid take 20 x 0.876084 = 17.522 g KOH, 8.1 % of the 216.8 g of the fats: the lye, which has that
    # alkali in it, would leave -3.1 % if the acid did not count before it goes in
    text = SOUR + '\n[[additive]]\nmaterial = "citric acid"\ngrams = 20\nwhen = "at trace"\nadd_alkali = '
    for code, added in (("with", "true"), ("without", "false")):
        add_recipe(sour.book, (text + added).replace("sour", code).replace("Sour", code), file="a.toml")
    code = planned(sour.book, "with")
    lines = lines_of(sour.book, code)
    takes = {line.number: [Weighed(line.target)] for line in lines[:4]}
    found = weigh(sour.book, code, takes, on=MADE, by="Nuala")
    assert (found.superfat_ppm or 0) == pytest.approx(50_000, abs=10)
    with pytest.raises(Refused, match=r"superfat of [-−]3\.08 %: lye is left over"):
        weigh(sour.book, code, {5: [Weighed(0)]}, on=MADE, by="Nuala")
    # one without added alkali does not count before it is in: 5 %, and then 5 + 8.08 %
    code = planned(sour.book, "without")
    takes = {line.number: [Weighed(line.target)] for line in lines_of(sour.book, code)}
    late = {5: takes.pop(5)}
    assert (weigh(sour.book, code, takes, on=MADE, by="Nuala").superfat_ppm or 0) == pytest.approx(50_000, abs=10)
    assert (weigh(sour.book, code, late, on=MADE, by="Nuala").superfat_ppm or 0) == pytest.approx(130_820, abs=10)


@pytest.mark.parametrize(("milk", "planned_"), [(0, True), (1, False)])
def test_whether_the_alkali_dissolves_is_asked_of_the_water_before_it(sour: Shop, milk: int, planned_: bool) -> None:
    # 100 g of vinegar take 5 x 39.99677 / 60.052 = 3.330 g NaOH: 150.157 g with the 146.826 g of the fats. The water is
    # 33.3 % of the fats, 333 g, of which milk at trace takes its 87 % away: 210 g of it leave 150.30 g, 211 g 149.43 g.
    text = SOUR.replace("per_alkali = 2.0", "of_fats = 33.3")
    text += (
        '\n[[additive]]\nmaterial = "vinegar"\ngrams = 100\nwhen = "with the lye"\nadd_alkali = true\n'
        f'\n[[liquid]]\nmaterial = "goat milk"\ngrams = {210 + milk}\nwhen = "at trace"\n'
    )
    add_recipe(sour.book, text.replace('"sour"', '"edge"').replace('"Sour"', '"Edge"'), file="edge.toml")
    if planned_:
        lines = {line.material: line.target for line in lines_of(sour.book, planned(sour.book, "edge"))}
        # 150.30 g less the 95 g of the vinegar
        assert lines["water"] == pytest.approx(55_300, abs=2)
        assert lines["sodium hydroxide"] == pytest.approx(150_157, abs=2)
    else:
        with pytest.raises(Refused, match="less water than its own weight"):
            planned(sour.book, "edge")


def test_stock_lye_of_milk_asks_for_the_water_in_it(sour: Shop) -> None:
    # 110 g of milk hold 95.7 g of water, for 100 g of alkali; 115 g hold 100.05 g
    add_material(
        sour.book, MaterialFacts("milk lye", "Sodium Hydroxide", alkali_kind="NaOH", purity_ppm=480_000,
                                 water_ppm=520_000), kind="alkali", code=None,
    )  # fmt: skip
    for code, grams in (("thin", 110), ("thick", 115)):
        text = (
            f'name = "{code}"\ncode = "{code}"\nprocess = "blend"\n[blend]\nyields = "milk lye"\n'
            f'[[part]]\nmaterial = "sodium hydroxide"\ngrams = 100\n[[part]]\nmaterial = "goat milk"\ngrams = {grams}\n'
        )
        add_recipe(sour.book, text, file=f"{code}.toml")
    with pytest.raises(Refused, match="less water than its own weight"):
        planned(sour.book, "thin")
    assert [line.material for line in lines_of(sour.book, planned(sour.book, "thick"))] == [
        "goat milk", "sodium hydroxide",
    ]  # fmt: skip
