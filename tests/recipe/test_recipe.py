"""recipe at the command line: shown, scaled and revised, in grams and in ounces."""

import json
from pathlib import Path
from typing import Any

import pytest
from making import deliver, lines_of, planned
from shop import PLAIN_BAR, Shop

from ledger.operations.keep.check import check
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.stock.receive import DeliveryLine

pytestmark = pytest.mark.usefixtures("frozen")

# The plain bar: 600 g of olive oil, 400 g of coconut oil, 293.652 g of water, 146.826 g of sodium hydroxide.
INFUSION = """
name = "Marigold oil"
code = "marigold"
process = "infusion"
[infusion]
yields = "marigold oil"
[[part]]
material = "olive oil"
grams = 500
"""


def flat(text: str) -> str:
    """The text as words, however it was wrapped, with plain spaces."""
    return " ".join(text.replace("\u00a0", " ").split())


def in_ounces(run: Any) -> None:
    run("init", "--units", "us")


def write(text: str, name: str = "plain-bar.toml") -> str:
    Path(name).write_text(text, encoding="utf-8")
    return name


@pytest.mark.usefixtures("shop")
def test_a_recipe_is_shown_worked_out(run: Any) -> None:
    said = flat(run("recipe", "show", "plain").stdout)
    assert said.startswith("Plain Bar, version 1: cold process, superfat 5.0 % of the alkali withheld.")
    for words in (
        "in the fats olive oil 600 g 60.0 %",
        "in the fats coconut oil 400 g 40.0 %",
        "with the lye water 293.7 g 29.4 %",
        "with the lye sodium hydroxide 146.8 g 14.7 %",
        "Lye concentration 33.3 %; water to alkali 2.00 : 1; water 29.4 % of the fats",
        "Superfat of all the fats: 5.0 %, likely ",
        "1 440.5 g in the pot",
        "10 bars",
        "Cure 28 days",
    ):
        assert words in said


@pytest.mark.usefixtures("shop")
def test_json_has_stable_keys_that_name_their_units(run: Any) -> None:
    page = json.loads(run("recipe", "show", "plain", "--json").stdout)
    assert set(page) == {
        "business", "units", "name", "code", "version", "process", "superfat_meant_ppm", "fats_mg", "lines", "lye",
        "dough_mg", "dough_ul", "density_mg_per_ml", "mould", "mould_ul", "bars", "net_weight_mg", "cure_days",
        "usable_from_days", "stages", "profile", "no_profile", "skin", "warnings", "printed_from",
        "stated", "steps",
    }  # fmt: skip
    assert (page["superfat_meant_ppm"], page["fats_mg"], page["dough_mg"]) == (50_000, 1_000_000, 1_440_478)
    # 1000 / 0.942 + 146.826 x 0.21 + 293.652 = 1061.571 + 30.833 + 293.652 = 1386.057 mL
    assert page["dough_ul"] == 1_386_057
    assert (page["bars"], page["net_weight_mg"], page["cure_days"]) == (10, 100_000, 28)
    assert [(one["material"], one["quantity"], one["of_fats_ppm"]) for one in page["lines"]] == [
        ("olive oil", 600_000, 600_000),
        ("coconut oil", 400_000, 400_000),
        ("water", 293_652, 293_652),
        ("sodium hydroxide", 146_826, 146_826),
    ]
    assert set(page["lines"][0]) == {
        "when", "role", "material", "quantity", "counted", "of_fats_ppm", "portion", "note", "figure", "caustic",
        "acid_in_jug",
    }  # fmt: skip
    lye = page["lye"]
    assert set(lye) == {
        "alkali_mg", "water_mg", "concentration_ppm", "water_per_alkali_thousandths", "water_of_fats_ppm", "superfat",
        "before_addition", "fat_left_mg",
    }  # fmt: skip
    # 146.826 / 440.478 = 33.3333 %
    assert (lye["alkali_mg"], lye["water_mg"], lye["concentration_ppm"]) == (146_826, 293_652, 333_333)
    assert (lye["water_per_alkali_thousandths"], lye["water_of_fats_ppm"]) == (2000, 293_652)
    assert set(lye["superfat"]) == {"nominal_ppm", "likely_low_ppm", "all_low_ppm", "spreads", "likely_high_ppm"}
    assert lye["superfat"]["nominal_ppm"] == 50_002  # 1 - 146.826 / 154.55402
    stages = page["stages"]
    for stage in ("before", "cut", "cured", "driest"):
        assert all(set(part) == {"what", "name", "mass_mg"} for part in stages[stage]["parts"])
    # 1 146.826 g without water; 10 % of water after the cure, 8 % at its driest
    assert sum(part["mass_mg"] for part in stages["cured"]["parts"]) == 1_274_251
    assert sum(part["mass_mg"] for part in stages["driest"]["parts"]) == 1_246_550


@pytest.mark.usefixtures("shop")
def test_a_recipe_is_shown_for_so_much_fat_and_as_it_was(run: Any) -> None:
    page = json.loads(run("recipe", "show", "plain", "--fats", "500 g", "--json").stdout)
    assert [one["quantity"] for one in page["lines"]] == [300_000, 200_000, 146_826, 73_413]
    assert page["bars"] == 5
    run("recipe", "revise", "plain", write(PLAIN_BAR.replace("superfat = 5", "superfat = 8")))
    assert json.loads(run("recipe", "show", "plain", "--json").stdout)["superfat_meant_ppm"] == 80_000
    old = json.loads(run("recipe", "show", "plain", "--version", "1", "--json").stdout)
    assert (old["version"], old["superfat_meant_ppm"]) == (1, 50_000)


NOT_SHOWN: list[tuple[tuple[str, ...], str]] = [
    (("--version", "3"), "has no version 3; its latest is 1"),
    (("--version", "0"), "has no version 0"),
    (("--version", "first"), "is a whole number"),
    (("--fats", "500"), "500 of what?"),
    (("--fats", "5 g"), "between 10 g and 100 kg"),
    (("--fats", "1 L"), "is a volume"),
    (("--fats", "-500 g"), "cannot be below zero"),
]


@pytest.mark.usefixtures("shop")
def test_a_size_or_version_that_cannot_be_is_one_line(run: Any) -> None:
    for words, says in NOT_SHOWN:
        error = run("recipe", "show", "plain", *words, code=2).stderr
        assert says in error
        assert error.count("\n") == 1


SCALED: list[tuple[tuple[str, ...], int]] = [
    # 21 x 7 x 6.5 cm are 955.5 mL: 1000 g x 955.5 / 1386.057
    (("--mould", "21 x 7 x 6.5 cm"), 689_366),
    # 12 of 110 mL: 1000 g x 1320 / 1386.057
    (("--bars", "12", "--size", "80 x 55 x 25 mm"), 952_342),
    (("--mould", "12 of 80 x 55 x 25 mm"), 952_342),
    # the plain bar weighs 1 274.251 g after the cure: 1000 g x 1200 / 1274.251
    (("--bars", "12", "--net-weight", "100 g"), 941_730),
    # 5 kg of olive oil came and 600 g went into the first batch: 1000 g x 4400 / 600, downwards
    (("--stock", "olive oil"), 7_333_333),
    # 3 kg less 400 g: 1000 g x 2600 / 400
    (("--stock", "coconut"), 6_500_000),
]


@pytest.mark.usefixtures("shop")
def test_each_way_of_scaling(run: Any) -> None:
    for words, fats in SCALED:
        assert json.loads(run("recipe", "scale", "plain", *words, "--json").stdout)["fats_mg"] == fats
        said = flat(run("recipe", "scale", "plain", *words).stdout)
        exact = f"{fats / 1000:.3f}".rstrip("0").rstrip(".")
        assert f"Next: soapledger batch plan plain-bar --fats '{exact} g'" in said


def test_scaling_to_the_stock_leaves_out_what_a_batch_means_to_take(shop: Shop, run: Any) -> None:
    deliver(shop.book, DeliveryLine("sodium hydroxide", 2_000_000, "SH 93", 500))
    planned(shop.book)  # 400 g of the 2 600 g of coconut oil: 1000 g x 2 200 / 400
    page = json.loads(run("recipe", "scale", "plain", "--stock", "coconut oil", "--json").stdout)
    assert page["fats_mg"] == 5_500_000
    assert planned(shop.book, fats_mg=page["fats_mg"])  # and so it can be planned
    assert "Nothing of coconut oil is free" in run("recipe", "scale", "plain", "--stock", "coconut oil", code=1).stderr


@pytest.mark.usefixtures("shop")
def test_the_dough_measured_once_gives_the_density_for_the_next_mould(shop: Shop, run: Any) -> None:
    run("batch", "log", shop.batch, "--reading", "dough volume=1400 mL")
    page = json.loads(run("recipe", "scale", "plain", "--mould", "2 of 700 mL", "--json").stdout)
    assert page["density_mg_per_ml"] == 1029  # 1440.478 g / 1400 mL
    # 1440.478 g at 1.029 g per mL are 1399.881 mL: 1000 g x 1400 / 1399.881
    assert page["fats_mg"] == 1_000_085


NOT_ONE_THING: list[tuple[str, ...]] = [
    (),
    ("--bars", "12"),
    ("--size", "80 x 55 x 25 mm"),
    ("--net-weight", "100 g"),
    ("--size", "80 x 55 x 25 mm", "--net-weight", "100 g"),
    ("--bars", "12", "--size", "80 x 55 x 25 mm", "--net-weight", "100 g"),
    ("--mould", "2 of 700 mL", "--bars", "12"),
    ("--mould", "2 of 700 mL", "--bars", "12", "--net-weight", "100 g"),
    ("--mould", "2 of 700 mL", "--stock", "olive oil"),
    ("--stock", "olive oil", "--net-weight", "100 g"),
    ("--stock", "olive oil", "--bars", "12", "--size", "80 x 55 x 25 mm"),
]


@pytest.mark.usefixtures("shop")
def test_scaling_to_nothing_or_to_two_things_is_one_line(run: Any) -> None:
    for words in NOT_ONE_THING:
        error = run("recipe", "scale", "plain", *words, code=2).stderr
        assert "Scale it to one thing: --mould" in error
        assert error.count("\n") == 1


NOT_SCALED: list[tuple[tuple[str, ...], str]] = [
    (("--bars", "0", "--size", "80 x 55 x 25 mm"), "How many bars?"),
    (("--bars", "0", "--net-weight", "100 g"), "How many bars"),
    (("--bars", "12", "--net-weight", "0 g"), "How many bars, and of what weight"),
    (("--bars", "a dozen", "--net-weight", "100 g"), "is a whole number"),
    (("--bars", "12", "--net-weight", "100"), "100 of what?"),
    (("--bars", "12", "--size", "80 x 55"), "cannot be read"),
    (("--mould", "a box"), "cannot be read"),
    (("--mould", "1 x 1 x 1 mm"), "would hold 0.001 mL"),
    (("--stock", "water"), "water is no fat of Plain Bar; its fats are olive oil, coconut oil"),
    (("--stock", "tallow"), "No material is called 'tallow'"),
]


@pytest.mark.usefixtures("shop")
def test_what_a_recipe_cannot_be_scaled_to_is_one_line(run: Any) -> None:
    for words, says in NOT_SCALED:
        error = run("recipe", "scale", "plain", *words, code=2).stderr
        assert says in error
        assert error.count("\n") == 1


def test_an_infusion_has_no_fats_to_scale_by(shop: Shop, run: Any) -> None:
    add_material(shop.book, MaterialFacts("marigold oil"), kind="intermediate", code=None)
    add_recipe(shop.book, INFUSION, file="m.toml")
    for words in (("scale", "marigold", "--mould", "500 mL"), ("show", "marigold", "--fats", "500 g")):
        assert "has no fats to scale by" in run("recipe", *words, code=2).stderr
    page = json.loads(run("recipe", "show", "marigold", "--json").stdout)
    assert (page["lye"], page["stages"], page["superfat_meant_ppm"], page["dough_ul"]) == (None, None, None, None)
    assert page["dough_mg"] == 500_000


@pytest.mark.usefixtures("shop")
def test_a_revision_shows_what_changed_in_grams_and_percent(run: Any) -> None:
    text = PLAIN_BAR.replace("percent = 60", "percent = 70").replace("percent = 40", "percent = 30")
    done = flat(run("recipe", "revise", "plain", write(text.replace("superfat = 5", "superfat = 8"))).stdout)
    assert done.startswith("Plain Bar has version 2 now. What changed:")
    # 100 of 600 g more, 100 of 400 g less
    assert "olive oil 600 g 60.0 % 700 g 70.0 % +16.7 %" in done
    assert "coconut oil 400 g 40.0 % 300 g 30.0 % −25.0 %" in done
    # 700 x 190 + 300 x 257 = 210.1 g KOH; x 0.71288755 x 0.92 = 137.795 g, 6.15 % less than 146.826 g
    assert "sodium hydroxide 146.8 g 14.7 % 137.8 g 13.8 % −6.2 %" in done
    assert "superfat: 5.0 % → 8.0 %" in done
    assert "cure" not in done
    assert "bars" not in done


@pytest.mark.usefixtures("shop")
def test_a_revision_names_what_is_new_and_what_is_gone(run: Any, shop: Shop) -> None:
    add_material(shop.book, MaterialFacts("pink clay", "Kaolin"), kind="additive", code=None)
    clay = '\n[[additive]]\nmaterial = "pink clay"\ngrams = 20\n'
    done = flat(run("recipe", "revise", "plain", write(PLAIN_BAR + clay)).stdout)
    assert "pink clay – 20 g 2.0 % new" in done
    assert "olive oil" not in done
    back = PLAIN_BAR.replace("[mould]", "[cure]\ndays = 35\n\n[mould]").replace("bars = 10", "bars = 12")
    done = flat(run("recipe", "revise", "plain", write(back)).stdout)
    assert "pink clay 20 g 2.0 % – gone" in done
    assert "cure: 28 days → 35 days" in done
    assert "bars: 10 → 12" in done


def test_a_change_in_one_of_two_lines_of_a_material_is_seen(shop: Shop, run: Any) -> None:
    add_material(shop.book, MaterialFacts("pink clay", "Kaolin"), kind="additive", code=None)
    two = '\n[[additive]]\nmaterial = "pink clay"\ngrams = {}\nnote = "swirl"\n'
    two += '[[additive]]\nmaterial = "pink clay"\ngrams = 10\nnote = "body"\n'
    run("recipe", "revise", "plain", write(PLAIN_BAR + two.format(10)))
    done = flat(run("recipe", "revise", "plain", write(PLAIN_BAR + two.format(30))).stdout)
    assert "pink clay 20 g 2.0 % 40 g 4.0 % +100.0 %" in done


TWICE: list[tuple[str, str]] = [
    ('[[additive]]\nmaterial = "pink clay"\ngrams = 10\n', "pink clay stands twice under [[additive]]"),
    ('[[fragrance]]\nmaterial = "bay oil"\ngrams = 10\n', "bay oil stands twice under [[fragrance]]"),
    ('[[liquid]]\nmaterial = "water"\ngrams = 10\n', "water stands twice under [[liquid]]"),
    ('[[packaging]]\nmaterial = "band"\n', "band stands twice under [[packaging]]"),
]


def test_the_same_line_twice_is_asked_to_be_one(shop: Shop, run: Any) -> None:
    for name, kind in (("pink clay", "additive"), ("bay oil", "fragrance"), ("band", "packaging")):
        add_material(shop.book, MaterialFacts(name), kind=kind, code=None)
    for part, says in TWICE:
        error = run("recipe", "revise", "plain", write(PLAIN_BAR + part + part), code=2).stderr
        assert f"{says}, word for word; write it once, with all of it." in error
        run("recipe", "revise", "plain", write(PLAIN_BAR + part))


@pytest.mark.usefixtures("shop")
def test_a_file_that_is_no_new_version_is_refused(run: Any) -> None:
    same = run("recipe", "revise", "plain", write(PLAIN_BAR), code=1).stderr
    assert "is the same as version 1 of Plain Bar; nothing to book" in same
    hot = run("recipe", "revise", "plain", write(PLAIN_BAR.replace('"cold"', '"hot"')), code=1).stderr
    assert "another process is another recipe" in hot
    other = run("recipe", "revise", "plain", write(PLAIN_BAR.replace('"plain-bar"', '"other"')), code=2).stderr
    assert "its code is 'other', but this recipe is 'plain-bar'" in other
    odd = run("recipe", "revise", "plain", write(PLAIN_BAR.replace("percent = 40", "percent = 41")), code=1).stderr
    assert "the fats add up to 101 %, not 100 %" in odd
    for error in (same, hot, other, odd):
        assert error.count("\n") == 1
    assert json.loads(run("recipe", "list", "--json").stdout)[0]["version"] == 1


@pytest.mark.usefixtures("shop")
def test_a_file_that_cannot_be_read_is_one_line(run: Any) -> None:
    assert "none.toml cannot be read" in run("recipe", "add", "none.toml", code=2).stderr
    Path("latin.toml").write_bytes('name = "Été"'.encode("latin-1"))
    assert "is not in UTF-8" in run("recipe", "add", "latin.toml", code=2).stderr
    error = run("recipe", "add", write("name = \n", "bad.toml"), code=2).stderr
    assert error.startswith("bad.toml, line 1, column 8")
    taken = run("recipe", "add", write(PLAIN_BAR), code=2).stderr
    assert "recipe revise plain-bar plain-bar.toml" in taken


def test_a_recipe_is_shown_and_scaled_in_ounces(shop: Shop, run: Any) -> None:
    in_ounces(run)
    said = flat(run("recipe", "show", "plain").stdout)
    # 600, 400, 293.652 and 146.826 g of 28.349523 g to the ounce
    for words in ("olive oil 21.16 oz", "coconut oil 14.11 oz", "water 10.36 oz", "sodium hydroxide 5.18 oz"):
        assert words in said
    assert "50.81 oz in the pot" in said  # 1 440.478 g
    assert "46.9 fl oz" in said  # 1 386.057 mL of 29.5735 mL to the fluid ounce
    said = flat(run("recipe", "scale", "plain", "--bars", "10", "--net-weight", "4 oz").stdout)
    # 1000 g x 10 x 113.398 / 1274.251 = 889.919 g, 31.39 oz
    assert "For 31.39 oz of fats" in said
    text = PLAIN_BAR.replace("percent = 60", "percent = 70").replace("percent = 40", "percent = 30")
    said = flat(run("recipe", "revise", "plain", write(text)).stdout)
    assert "olive oil 21.16 oz 60.0 % 24.69 oz 70.0 % +16.7 %" in said  # 700 g
    assert check(shop.rows()).findings == ()


def test_the_bench_works_in_ounces(shop: Shop, run: Any) -> None:
    in_ounces(run)
    said = run("batch", "plan", "plain", "--fats", "2 lb").stdout
    # 907.18474 g of fats: 544.311 and 362.874 g, 19.20 and 12.80 oz
    assert "19.20 oz" in said
    code = shop.rows().execute("SELECT max(code) FROM batch").fetchone()[0]
    assert [line.target for line in lines_of(shop.book, code)[:2]] == [544_311, 362_874]
    run("batch", "log", code, "--line", "1=19.2", "--line", "2=12.8 oz", "--line", "3=9.4")
    # a number alone is in ounces: 19.2 x 28.349523125 = 544.311 g; 12.8: 362.874 g; 9.4: 266.486 g
    assert [line.used for line in lines_of(shop.book, code)[:3]] == [544_311, 362_874, 266_486]
    said = flat(run("batch", "correct", code, "4=5").stdout)
    # 5 oz are 141.748 g of alkali: of it 133.201 g is wanted, 146.82632 x 0.90718474
    assert "5.00 oz of sodium hydroxide in place of 4.70 oz" in said
    run("batch", "correct", code, "4=5", "--take", "lye")
    assert [line.used for line in lines_of(shop.book, code)[3:]] == [133_199]
    assert "Scale reads the test weight (oz;" in run("batch", "log", code, input="\nq\n").stderr  # as it is read
    assert check(shop.rows()).findings == ()


@pytest.mark.usefixtures("shop")
def test_recipes_are_listed(run: Any) -> None:
    (one,) = json.loads(run("recipe", "list", "--json").stdout)
    assert (one["code"], one["process"], one["version"], one["batches"]) == ("plain-bar", "cold", 1, 1)
    assert "plain-bar" in run("recipe", "list").stdout


@pytest.mark.parametrize(
    ("words", "bars"),
    [
        (("--bars", "24", "--net-weight", "100 g"), 24),
        (("--bars", "7", "--size", "80 x 55 x 25 mm"), 7),
        (("--mould", "6 of 90 mL"), 6),  # by the fats it would be four: 540 mL of the 1400 mL of ten bars
    ],
)
def test_wrappers_are_counted_by_the_bars_it_is_scaled_to(
    shop: Shop, run: Any, words: tuple[str, ...], bars: int
) -> None:
    for name in ("paper band", "string"):
        add_material(shop.book, MaterialFacts(name), kind="packaging", code=None)
    wrapped = '[[packaging]]\nmaterial = "paper band"\n\n[[packaging]]\nmaterial = "string"\nper_bar = 2\n'
    add_recipe(shop.book, PLAIN_BAR.replace("plain-bar", "wrapped") + wrapped, file="w.toml")
    page = json.loads(run("recipe", "scale", "wrapped", *words, "--json").stdout)
    assert page["bars"] == bars
    assert [one["quantity"] for one in page["lines"] if one["counted"]] == [bars, 2 * bars]


LIQUID = '\n[[liquid]]\nmaterial = "goat milk"\npercent_of_fats = 60\nwhen = "with the lye"\n'


NOT_WORKED_OUT = [
    ("1000 g", "100001 g", 2, "The fats of a batch lie between 10 g and 100 kg"),
    ("1000 g", "9.9 g", 2, "The fats of a batch lie between 10 g and 100 kg"),
    # 600 g of milk, 87 % water, are 522 g of the 293.652 g that twice the alkali asks for
    ("[mould]", f"{LIQUID}\n[mould]", 1, "more water than the recipe asks for"),
]


def test_a_revision_that_cannot_be_worked_out_writes_nothing(shop: Shop, run: Any) -> None:
    """It was booked first and refused when what changed was shown."""
    run("material", "add", "goat milk", "--like", "goat milk")
    entries = shop.rows().execute("SELECT count(*) FROM entry").fetchone()[0]
    for was, now, code, says in NOT_WORKED_OUT:
        error = run("recipe", "revise", "plain", write(PLAIN_BAR.replace(was, now)), code=code).stderr
        assert error.startswith("plain-bar.toml: ")
        assert says in error
        assert error.count("\n") == 1
    assert shop.rows().execute("SELECT count(*) FROM entry").fetchone()[0] == entries
    assert json.loads(run("recipe", "list", "--json").stdout)[0]["version"] == 1


@pytest.mark.usefixtures("shop")
def test_a_recipe_of_a_size_that_nobody_makes_is_not_added(run: Any) -> None:
    for code, size, taken in (("a", "9.9 g", 0), ("b", "10 g", 1), ("c", "100 kg", 1), ("d", "100001 g", 0)):
        text = PLAIN_BAR.replace("plain-bar", code).replace("Plain Bar", f"Bar {code}").replace("1000 g", size)
        run("recipe", "add", write(text), code=0 if taken else 2)
    assert [one["code"] for one in json.loads(run("recipe", "list", "--json").stdout)] == ["b", "c", "plain-bar"]
