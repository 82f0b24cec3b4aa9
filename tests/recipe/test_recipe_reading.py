"""A recipe file is read as written, and what is wrong in it is answered with file, line and what to write instead."""

import re

import pytest

from ledger.domain.recipe.reader import read_recipe
from ledger.errors import BadInput, LedgerError, Refused

GOOD = """name = "Plain"
code = "plain"
process = "cold"
superfat = 5
fats_total = "1000 g"

[alkali]
material = "soda"
kind = "NaOH"

[water]
material = "water"
per_alkali = 2.0

[[fat]]
material = "olive"
percent = 70

[[fat]]
material = "coconut"
percent = 30

[[additive]]
material = "clay"
percent_of_fats = 1

[cure]
days = 28

[mould]
size = "25 x 8 x 7 cm"
"""
SODA, FAT_2, CLAY = 'material = "soda"', 'material = "coconut"', 'material = "clay"'
POTASH = '[[alkali]]\nmaterial = "potash"\nkind = "KOH"\n'
TWO = (("[alkali]\n", f"{POTASH}percent_of_demand = 5\n\n[[alkali]]\n"), ('"NaOH"', '"NaOH"\npercent_of_demand = 90'))
PARTS = "[[portion]]\nname = 'one'\npercent = 60\n\n[[portion]]\nname = 'two'\npercent = 40\n\n"
REBATCH = 'name = "Again"\ncode = "again"\nprocess = "rebatch"\n\n[[rework]]\nmaterial = "offcuts"\ngrams = 400\n'
INFUSION = 'name = "Oil"\ncode = "oil"\nprocess = "infusion"\n\n[infusion]\nyields = "petal oil"\n'


def refused(text: str, kind: type[LedgerError], line: str, says: str) -> None:
    """The message names the file, the line that reads so (the first such), and says what to do, on one line."""
    with pytest.raises(kind) as caught:
        read_recipe(text, file="plain.toml")
    message = str(caught.value)
    assert type(caught.value) is kind
    assert says in message
    assert "\n" not in message
    where = f", line {text.splitlines().index(line) + 1}" if line else ""
    assert re.match(rf"plain\.toml{where}( \[\w+\])?(,|:)", message), message


def changed(*edits: tuple[str, str]) -> str:
    """The good recipe with some words replaced where they first stand."""
    text = GOOD
    for old, new in edits:
        assert old in text
        text = text.replace(old, new, 1)
    return text


def test_the_good_recipe_is_good() -> None:
    recipe = read_recipe(GOOD, file="plain.toml")
    assert (recipe.superfat_ppm, recipe.fats_total_mg, recipe.alkali_shares_ppm) == (50_000, 1_000_000, {"NaOH": 10**6})
    assert [(one.role, one.material, one.stage) for one in recipe.lines] == [
        ("fat", "olive", "in the fats"),
        ("fat", "coconut", "in the fats"),
        ("liquid", "water", "with the lye"),  # before the alkali that goes into it
        ("alkali", "soda", "with the lye"),
        ("additive", "clay", "at trace"),
    ]
    both = read_recipe(changed(TWO[0], ("= 5\n\n[[", "= 10\n\n[["), TWO[1]), file="plain.toml")
    assert both.alkali_shares_ppm == {"KOH": 100_000, "NaOH": 900_000}


@pytest.mark.parametrize(
    ("edits", "line", "says"),
    [
        ([("= 30", "= 20")], "[[fat]]", "the fats add up to 90 %, not 100 %; 10 % is missing"),
        ([("= 30", "= 30.5")], "[[fat]]", "the fats add up to 100.5 %, not 100 %; 0.5 % is too much"),
        ([*TWO], "[[alkali]]", "the alkalis meet 95 % of the demand, not 100 %"),
        ([(SODA, f"{SODA}\npercent_of_demand = 90")], "[alkali]", "the alkalis meet 90 % of the demand, not 100 %"),
        ([("= 2.0", "= 0.9")], "per_alkali = 0.9", "write per_alkali = 1.0 or lye_concentration = 50 at the least"),
        ([("per_alkali = 2.0", "lye_concentration = 51")], "lye_concentration = 51", "lye_concentration = 50 at the"),
        ([("[cure]", PARTS.replace("60", "50") + "[cure]")], "[[portion]]", "the portions add up to 90 %, not 100 %"),
    ],
)
def test_a_rule_of_the_trade_says_no(edits: list[tuple[str, str]], line: str, says: str) -> None:
    refused(changed(*edits), Refused, line, says)


@pytest.mark.parametrize(
    ("edits", "line", "says"),
    [
        ([('code = "plain"', 'code = "Plain bar"')], 'code = "Plain bar"', "small letters, digits and dashes only"),
        ([('"cold"', '"tepid"')], 'process = "tepid"', "write one of cold, hot, infusion, blend, rebatch"),
        ([("superfat = 5\n", "")], "", "superfat is missing; write superfat = 5"),
        ([("superfat", "superfatt")], "superfatt = 5", "did you mean superfat?"),
        ([("= 5\n", "= -1\n")], "superfat = -1", "write a number from 0 up to 49"),
        ([("= 5\n", "= 50\n")], "superfat = 50", "write a number from 0 up to 49"),
        ([("= 5\n", "= nan\n")], "superfat = nan", "write a number from 0 up to 49"),
        ([("= 5\n", '= "5 %"\n')], 'superfat = "5 %"', "write it without quotes or unit"),
        ([("= 5\n", "= true\n")], "superfat = true", "superfat is a number"),
        ([('fats_total = "1000 g"', "")], "", 'fats are by percent, so write fats_total = "1000 g" as well'),
        ([('"1000 g"', "1000")], "fats_total = 1000", 'such as fats_total = "1000 g"'),
        ([('"1000 g"', '"1000"')], 'fats_total = "1000"', "1000 of what?"),
        ([('"1000 g"', '"1 L"')], 'fats_total = "1 L"', "is a volume; weigh it"),
        ([('"1000 g"', '"0 g"')], 'fats_total = "0 g"', "fats_total is nothing; write it above 0 g"),
        ([("percent = 70", "grams = 700"), ("percent = 30", "grams = 200")], 'fats_total = "1000 g"', "up to 900 g"),
        ([("percent = 30", "grams = 300")], "[[fat]]", "some fats are by percent and some by grams"),
        ([("percent = 70", "")], "[[fat]]", "olive needs either percent = 40 or grams = 400"),
        ([("= 70", "= 70\ngrams = 700")], "[[fat]]", "olive needs either percent = 40 or grams = 400"),
        ([("= 70", "= 101")], "percent = 101", "write a number above 0 up to 100"),
        ([("= 70", "= 0")], "percent = 0", "write a number above 0 up to 100"),
        ([("percent = 70", "grams = 1000001")], "grams = 1000001", "write a number above 0 up to 1000000"),
        ([("percent = 70", 'grams = "2 tsp"')], 'grams = "2 tsp"', "2 tsp is a volume; weigh it"),
        ([("percent = 70", 'grams = "700"')], 'grams = "700"', "700 of what?"),
        ([("percent = 70", 'grams = "0 oz"')], 'grams = "0 oz"', "grams is nothing"),
        ([("percent = 70", 'grams = "1000.001 kg"')], 'grams = "1000.001 kg"', "write a weight up to 1000 kg"),
        ([("percent = 70", "grams = inf")], "grams = inf", "write a number above 0 up to 1000000"),
        ([("_fats = 1", "_fats = 0.00001")], "percent_of_fats = 0.00001", "too little to be weighed or reckoned"),
        ([('"NaOH"', '"LiOH"')], 'kind = "LiOH"', "is not an alkali known here; write NaOH or KOH"),
        ([(SODA, "")], "[alkali]", 'material is missing; write material = "…"'),
        ([("[alkali]", f"{POTASH}\n[[alkali]]")], "[[alkali]]", "mole for mole; write percent_of_demand = 90"),
        ([("per_alkali = 2.0", "")], "[water]", "write one of per_alkali = 2.0, lye_concentration = 33 or of_fats"),
        ([("= 2.0", "= 2.0\nof_fats = 38")], "[water]", "write one of per_alkali = 2.0"),
        ([("per_alkali = 2.0", "grams = 300")], "[water]", "write one of per_alkali = 2.0"),
        ([("= 2.0", "= 21")], "per_alkali = 21", "write a number above 0 up to 20"),
        ([(FAT_2, 'when = "with the lye"\n' + FAT_2)], 'when = "with the lye"', 'held back until "at trace", not'),
        ([(FAT_2, 'in_demand = true\n' + FAT_2)], "in_demand = true", "add when, or take it out"),
        ([(CLAY, 'when = "after the cook"\n' + CLAY)], 'when = "after the cook"', 'write "in the fats" or "with'),
        ([("percent_of_fats = 1", "")], "[[additive]]", "clay needs either percent_of_fats = 2 or grams = 20"),
        ([(CLAY, "add_alkali = 'yes'\n" + CLAY)], "add_alkali = 'yes'", "write add_alkali = true or add"),
        ([(CLAY, "portion = 'one'\n" + CLAY)], "portion = 'one'", "no portion 'one'; known: this recipe has none"),
        ([(CLAY, f"portion = 'six'\n{CLAY}"), ("[cure]", PARTS + "[cure]")], "portion = 'six'", "known: one, two"),
        ([("days = 28", "days = 2.5")], "days = 2.5", "days is a whole number"),
        ([("= 28", "= 28\nusable_from_days = 29")], "usable_from_days = 29", "after its cure of 28 days; look at both"),
        ([("= 28", "= 28\nwater_left = 50")], "[cure]", "the water left lies below 50 %"),
        ([("= 28", "= 28\nwater_left = 7\ndriest_water = 8")], "[cure]", "driest_water is no more than water_left"),
        ([("25 x 8 x 7 cm", "25 x 8 cm")], 'size = "25 x 8 cm"', "'21 x 7 x 6.5 cm' for a box"),
        ([("[cure]", "[infusion]\n[cure]")], "[infusion]", "infusion has no place in the cold process; take it out"),
        ([("percent = 70", "percent = = 70")], "percent = = 70", "the file cannot be read"),
    ],
)  # fmt: skip
def test_what_cannot_be_read_is_answered_where_it_stands(edits: list[tuple[str, str]], line: str, says: str) -> None:
    refused(changed(*edits), BadInput, line, says)


HELD = 'when = "at trace"\nin_demand = true\n'
PLAIN_CLAY = "[[additive]]\n" + CLAY


@pytest.mark.parametrize(
    ("text", "line", "says"),
    [
        (changed((FAT_2, 'when = "at trace"\n' + FAT_2)).replace("[[fat]]\nwhen", "[[ fat ]]\nwhen"), "[[ fat ]]",
         "say whether the lye is reckoned for it too: in_demand = true, or in_demand = false"),
        (changed((FAT_2, 'material = "olive" # twice')).replace("[[fat]]", "[[fat]] # first", 1), "[[fat]]",
         "olive stands here a second time; write one [[fat]] for it"),
        (changed(("[[fat]]\n", f"[[fat]]\n{HELD}"), (FAT_2, HELD + FAT_2)), "[[fat]]", "every fat is held back"),
        (GOOD.replace("[[fat]]", "[[additive]]").replace("percent =", "percent_of_fats ="), "", "a soap needs fats"),
        (changed(('[alkali]\nmaterial = "soda"\nkind = "NaOH"\n', "")), "", "alkali is missing; write [alkali]"),
        (changed(("[alkali]", f"{POTASH}percent_of_demand = 9\n\n[[alkali]] # 2"), ('"NaOH"', '"KOH"')),
         "[[alkali]] # 2", "KOH stands here a second time; write one [[alkali]] for it"),
        (changed(("[cure]", PARTS.split("\n\n")[0] + "\n[cure]")), "[[portion]]", "one portion is the whole dough"),
        (changed(("[cure]", PARTS.replace("two", "one") + "[cure]")), "[[portion]]", "two portions have the same name"),
        (changed(("[cure]", PARTS.replace("two", "No. 2") + "[cure]")), "name = 'No. 2'", "small letters, digits and"),
        (changed(("[cure]", PARTS.replace("percent = 60\n", "") + "[cure]")), "[[portion]]", "dough, percent = 60"),
        (changed(("[cure]", PARTS + "[cure]"), (CLAY, CLAY + "\nwhen = 'in the fats'\nportion = 'one'")),
         "portion = 'one'", "a portion is divided off at trace, after 'in the fats'; look at when"),
        (REBATCH + PLAIN_CLAY + "\npercent_of_fats = 1", "percent_of_fats = 1", "write grams = 5 in place of percent"),
        (REBATCH + PLAIN_CLAY, "[[additive]]", "grams is missing; write grams = 5"),
        (REBATCH.split("\n\n")[0], "", "write a [[rework]] part for each thing that goes in"),
        (INFUSION, "", "write a [[part]] part for each thing that goes in"),
        (INFUSION + "[[part]]\nmaterial = 'olive'", "[[part]]", "grams is missing; write grams = 500"),
        (INFUSION.replace('yields = "petal oil"', "days = 28"), "", "write a [[part]] part"),
        (INFUSION.replace('yields = "petal oil"', "") + "[[part]]\nmaterial = 'olive'\ngrams = 5", "[infusion]",
         'yields is missing; write yields = "…"'),
    ],
)  # fmt: skip
def test_what_does_not_belong_together_is_answered_where_it_stands(text: str, line: str, says: str) -> None:
    refused(text, BadInput, line, says)


def test_grams_may_be_a_weight_in_another_unit() -> None:
    # NIST SP 811, appendix B: 1 oz is 28.349 523 125 g, so 24.5 oz are 694.563 g and 1/4 oz is 7.087 g
    text = changed(
        ('fats_total = "1000 g"\n', ""), ("percent = 70", 'grams = "1 lb 8 1/2 oz"'),
        ("percent = 30", 'grams = "300 g"'),
        ("percent_of_fats = 1", 'grams = "1/4 oz"'),
    )  # fmt: skip
    masses = {one.material: one.mass_mg for one in read_recipe(text, file="plain.toml").lines}
    assert (masses["olive"], masses["coconut"], masses["clay"]) == (694_563, 300_000, 7_087)
