"""Skin limits: constituents summed under every name they have, certificates of soap alone, and what nobody stated."""

import shutil
from datetime import date
from typing import Any

import pytest
from making import MADE, batch_of, cut, deliver, lines_of, planned, weighed
from scented import three_scents
from shop import PLAIN_BAR, Shop, work_a_shop

from ledger.domain.material.skin_limits import Limit
from ledger.errors import Refused
from ledger.operations.bench.cut import cut_batch
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.material.skin import state_contents, state_limit
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.release.release import reject_bars
from ledger.operations.release.rework import rework_bars
from ledger.operations.stock.combine import combine
from ledger.operations.stock.lots import decide_lots
from ledger.operations.stock.receive import DeliveryLine
from ledger.rows.batch import portions_of
from ledger.storage.tables.material import SkinLimit
from ledger.views.bench.worksheet import worksheet
from ledger.views.recipe.skin import SkinCheck, batch_skin_checks, stated
from ledger.views.record.record import batch_record

# A plain bar without its water: 600 + 400 + 146.826 = 1 146.826 g. With 48.732 g of scent 1 195.558 g, and with 8 % of
# water 1 299.520 g at its driest, of which the scent is 3.75 % exactly, and half of it, 24.366 g, 1.875 %.
SOURCE = "allergen statement of 2 Mar 2026"
WHOLE, HALF = "48.732", "24.366"


def scented(*fragrances: tuple[str, str], part: str = "fragrance") -> str:
    """The plain bar with fragrances by name and grams."""
    parts = [f'\n[[{part}]]\nmaterial = "{name}"\ngrams = {grams}\n' for name, grams in fragrances]
    return PLAIN_BAR.replace("plain-bar", "scented").replace("Plain Bar", "Scented") + "".join(parts)


@pytest.fixture
def scents(shop: Shop, built: Any) -> Shop:
    """The worked shop with 200 g each of three oils whose INCI names are in no table."""
    shutil.copyfile(built("three scents", three_scents, built("shop", work_a_shop)[0])[0], shop.book.path)
    return shop


def limit(
    shop: Shop, name: str, ppm: int, *, category: str = "9", constituent: bool = False, number: str = "C"
) -> None:
    facts = Limit(ppm, number, None, category, date(2026, 3, 2))
    state_limit(shop.book, facts, **{"constituent" if constituent else "material": name})


def checks(shop: Shop, code: str) -> dict[str, SkinCheck]:
    with shop.book.look() as rows:
        return {one.name: one for one in batch_skin_checks(rows, batch_of(shop.book, code))}


def said(shop: Shop, material: str) -> list[str]:
    """What `material show` says of contents and limits."""
    with shop.book.look() as rows:
        number = rows.execute("SELECT id FROM material WHERE code = ?", (material,)).fetchone()[0]
        return stated(rows, number)


# 30 % and 42 % of 3.75 % are 2.7 % of citral: however the two are named, and with the limit a grain to each side.
SPELLINGS = [
    ("neral", "geranial"),
    ("Neral", "GERANIAL"),
    ("106-26-3", "CAS 141-27-5"),
    ("citral", "5392-40-5"),
    ("3,7-Dimethylocta-2,6-dienal", "geranial"),
]


def test_members_and_synonyms_are_summed_under_the_limit_of_the_group(scents: Shop) -> None:
    add_recipe(scents.book, scented(("bay oil", WHOLE)), file="s.toml")
    limit(scents, "bay oil", 50_000)
    code = planned(scents.book, "scented")
    for names in SPELLINGS:
        state_contents(scents.book, "bay oil", dict(zip(names, (300_000, 420_000), strict=True)), source=SOURCE)
        limit(scents, "Citral", 26_999, constituent=True)
        with pytest.raises(
            Refused, match=r"Citral, just over 2\.6999 % of the bar at its driest, is over the 2\.6999 %"
        ):
            planned(scents.book, "scented")
        for ppm in (27_000, 27_001):
            limit(scents, "Citral", ppm, constituent=True)
            found = checks(scents, code)["Citral"]
            assert (found.share_ppm, found.verdict) == (27_000, "within")
    limit(scents, "Citral", 27_000, constituent=True)
    assert planned(scents.book, "scented")


def test_two_oils_with_two_spellings_are_one_sum(scents: Shop) -> None:
    # alpha-pinene 20 % of 1.875 % and beta-pinene 30 % of 1.875 %: 0.375 + 0.5625 = 0.9375 %, over 0.9 %
    add_recipe(scents.book, scented(("bay oil", HALF), ("rosewood oil", HALF)), file="s.toml")
    state_contents(scents.book, "bay oil", {"α-Pinene": 200_000}, source=SOURCE)
    state_contents(scents.book, "rosewood oil", {"Beta Pinene": 300_000}, source=SOURCE)
    limit(scents, "pinene", 9_000, constituent=True)
    with pytest.raises(Refused, match=r"pinene, 0\.938 % of the bar at its driest, is over the 0\.900 %"):
        planned(scents.book, "scented")


def test_a_limit_of_a_member_is_held_against_the_group_and_says_so(scents: Shop) -> None:
    # the tighter limit of the member is not lifted by the wider one of the group
    add_recipe(scents.book, scented(("bay oil", WHOLE)), file="s.toml")
    state_contents(scents.book, "bay oil", {"citral": 720_000}, source=SOURCE)
    limit(scents, "geranial", 20_000, constituent=True)
    limit(scents, "citral", 30_000, constituent=True)
    with pytest.raises(Refused, match=r"geranial \(counted as Citral\), 2\.700 % of the bar .* over the 2\.000 %"):
        planned(scents.book, "scented")


def test_what_is_itself_a_constituent_counts_with_all_its_mass_once(scents: Shop) -> None:
    add_material(scents.book, MaterialFacts("menthol crystals", "MENTHOL"), kind="additive", code=None)
    deliver(scents.book, DeliveryLine("menthol crystals", 200_000, "MC", 2000))
    add_recipe(scents.book, scented(("menthol crystals", WHOLE), part="additive"), file="s.toml")
    state_contents(scents.book, "menthol crystals", {"l-menthol": 990_000}, source=SOURCE)
    limit(scents, "menthol", 37_499, constituent=True)
    with pytest.raises(Refused, match=r"menthol, just over 3\.7499 % of the bar at its driest, is over"):
        planned(scents.book, "scented")
    limit(scents, "menthol", 37_500, constituent=True)
    found = checks(scents, planned(scents.book, "scented"))
    assert {name: one.verdict for name, one in found.items()} == {"menthol": "within"}


def test_an_essential_oil_booked_as_an_additive_is_asked_for_its_papers(scents: Shop) -> None:
    facts = MaterialFacts("lavender oil", "Lavandula angustifolia oil")
    add_material(scents.book, facts, kind="additive", code=None)
    deliver(scents.book, DeliveryLine("lavender oil", 200_000, "LV", 2000))
    add_recipe(scents.book, scented(("lavender oil", WHOLE), part="additive"), file="s.toml")
    limit(scents, "citral", 30_000, constituent=True)
    found = checks(scents, planned(scents.book, "scented"))
    assert {name: one.verdict for name, one in found.items()} == {
        "lavender oil": "no certificate",
        "citral": "not known",
    }
    limit(scents, "lavender oil", 37_499)
    with pytest.raises(Refused, match=r"lavender oil, just over 3\.7499 %"):
        planned(scents.book, "scented")


# 49.6 % of 1.875 % is 0.93 %.
def test_an_oil_without_a_statement_makes_it_at_least_and_is_named(scents: Shop) -> None:
    add_recipe(scents.book, scented(("bay oil", HALF), ("rosewood oil", HALF)), file="s.toml")
    for name in ("bay oil", "rosewood oil"):
        limit(scents, name, 50_000)
    state_contents(scents.book, "bay oil", {"citral": 496_000}, source=SOURCE)
    limit(scents, "citral", 9_300, constituent=True)
    code = planned(scents.book, "scented")
    found = checks(scents, code)
    assert {name: one.verdict for name, one in found.items()} == {
        "bay oil": "within",
        "rosewood oil": "within",
        "citral": "not known",
    }
    words = (
        "citral, at least 0.930 % of the bar at its driest, against the 0.930 % of certificate C, category 9, 2 Mar "
    )
    words += "2026: nobody stated what rosewood oil contains, so it may be more"
    assert found["citral"].words.startswith(words)
    assert any(one.startswith(words) for one in worksheet(scents.rows(), code, program="1").notes)
    weighed(scents.book, code)
    assert any(one.startswith(words) for one in batch_record(scents.rows(), code, program="1").look_first.warnings)
    limit(scents, "citral", 9_299, constituent=True)
    with pytest.raises(
        Refused,
        match=r"citral, more than 0\.9299 % .*, is over the 0\.9299 % .*; nobody stated what rosewood oil contains\.",
    ):
        planned(scents.book, "scented")
    limit(scents, "citral", 9_300, constituent=True)
    state_contents(scents.book, "rosewood oil", {"linalool": 900_000}, source=SOURCE)
    assert checks(scents, code)["citral"].words.startswith("citral, 0.930 % of the bar at its driest, is within")


def test_many_oils_without_a_statement_are_named_beside_every_limit(scents: Shop) -> None:
    add_recipe(scents.book, scented(("bay oil", HALF), ("sea scent", HALF)), file="s.toml")
    code = planned(scents.book, "scented")
    assert set(checks(scents, code)) == {"bay oil", "sea scent"}  # no limit of a constituent, so none to say it of
    for name in ("citral", "coumarin"):
        limit(scents, name, 10_000, constituent=True)
        words = checks(scents, code)[name].words
        assert words.startswith(f"{name}, at least 0.000 % of the bar at its driest, against the 1.000 %")
        assert "nobody stated what bay oil and sea scent contain," in words


def test_a_certificate_of_soap_counts_however_it_is_written(scents: Shop) -> None:
    add_recipe(scents.book, scented(("bay oil", WHOLE)), file="s.toml")
    for category in ("9", " 9 ", "category 9", "Cat. 9", "CAT 9"):
        limit(scents, "bay oil", 90_000)  # so that what comes next is what refuses it
        limit(scents, "bay oil", 37_499, category=category)
        with pytest.raises(Refused, match="is over"):
            planned(scents.book, "scented")


def test_a_certificate_of_another_product_is_none_for_soap(scents: Shop) -> None:
    add_recipe(scents.book, scented(("bay oil", WHOLE)), file="s.toml")
    lines, code = [], ""
    for category in ("4", "8", "10A", "11", "90", "9 and 4", "leave-on"):
        limit(scents, "bay oil", 90_000, category=category)
        code = code or planned(scents.book, "scented")
        found = checks(scents, code)["bay oil"]
        assert (found.verdict, found.limit_ppm) == ("no certificate", None)
        assert f"certificate C, category {category}, is not one for soap, which is category 9" in found.words
        lines.append(
            f"on the skin at most 9.000 % [certificate C, category {category}, 2 Mar 2026]; not counted: soap is "
            "category 9"
        )
        assert set(said(scents, "bay-oil")) == set(lines)
    assert any("is not one for soap" in one for one in worksheet(scents.rows(), code, program="1").notes)


@pytest.mark.parametrize(
    ("booked_last", "most_ppm"),
    [(date(2026, 3, 1), 10_000), (date(2026, 3, 2), 90_000), (date(2026, 3, 3), 90_000)],
)
def test_the_latest_certificate_by_its_date_counts(scents: Shop, booked_last: date, most_ppm: int) -> None:
    """1 % by a paper of 2 March; 9 % booked after it counts unless that paper is older."""
    state_contents(scents.book, "bay oil", {"linalool": 500_000}, source="a statement")
    for which in ({"material": "bay oil"}, {"constituent": "linalool"}):
        state_limit(scents.book, Limit(10_000, "NEW", None, "9", date(2026, 3, 2)), **which)
        state_limit(scents.book, Limit(90_000, "OTHER", None, "9", booked_last), **which)
    add_recipe(scents.book, scented(("bay oil", "5")), file="s.toml")
    found = checks(scents, planned(scents.book, "scented"))
    assert {name: one.limit_ppm for name, one in found.items()} == {"bay oil": most_ppm, "linalool": most_ppm}


def test_a_later_certificate_of_another_product_does_not_stand_in_place_of_that_of_soap(scents: Shop) -> None:
    add_recipe(scents.book, scented(("bay oil", WHOLE)), file="s.toml")
    state_contents(scents.book, "bay oil", {"citral": 720_000}, source=SOURCE)
    limit(scents, "bay oil", 37_499, number="S-1")
    limit(scents, "bay oil", 90_000, category="4", number="L-2")
    with pytest.raises(Refused, match=r"bay oil, just over 3\.7499 % .* is over the 3\.7499 % of certificate S-1"):
        planned(scents.book, "scented")
    assert said(scents, "bay-oil")[1:] == [
        "on the skin at most 3.7499 % [certificate S-1, category 9, 2 Mar 2026]",
        "on the skin at most 9.000 % [certificate L-2, category 4, 2 Mar 2026]; not counted: soap is category 9",
    ]
    limit(scents, "bay oil", 40_000, number="S-3")
    limit(scents, "Citral", 26_999, constituent=True, number="S-4")
    limit(scents, "citral", 90_000, constituent=True, category="4", number="L-5")
    with pytest.raises(Refused, match=r"Citral, just over 2\.6999 % .* of certificate S-4"):
        planned(scents.book, "scented")


def test_an_old_row_without_a_category_is_shown_and_not_counted(scents: Shop) -> None:
    add_recipe(scents.book, scented(("bay oil", WHOLE)), file="s.toml")
    with scents.book.write("material limit") as tx:
        number = tx.rows.execute("SELECT id FROM material WHERE code = 'bay-oil'").fetchone()[0]
        tx.add(SkinLimit(material_id=number, limit_ppm=90_000, certificate="Q", category=" ", dated=date(2026, 3, 2)))
        tx.say("A paper of old.")
    found = checks(scents, planned(scents.book, "scented"))["bay oil"]
    assert found.verdict == "no certificate"
    assert "certificate Q, no category, is not one for soap" in found.words
    assert said(scents, "bay-oil")[0].endswith(
        "[certificate Q, no category, 2 Mar 2026]; not counted: soap is category 9"
    )


@pytest.mark.usefixtures("scents", "frozen")
def test_a_category_left_out_is_asked_for_and_another_is_said_to_be_none(run: Any) -> None:
    asked = run("material", "limit", "bay oil", "2", "--certificate", "C-1", code=2).stderr
    assert "For which kind of product does certificate C-1 allow 2.000 %?" in asked
    assert "not counted" not in run("material", "show", "bay oil").stdout
    kept = run("material", "limit", "bay oil", "2", "--certificate", "C-1", "--category", "4").stdout
    assert "It is kept and not counted: soap is category 9." in kept
    assert "not counted" not in run("material", "limit", "bay oil", "2", "--certificate", "C", "--category", "9").stdout


def test_portions_sum_their_own_and_name_what_nobody_stated(scents: Shop) -> None:
    text = scented(("bay oil", "20"), ("sea scent", "10")) + 'portion = "loud"\n'
    text += '[[portion]]\nname = "loud"\npercent = 60\n[[portion]]\nname = "still"\npercent = 40\n'
    add_recipe(scents.book, text, file="s.toml")
    state_contents(scents.book, "bay oil", {"neral": 300_000, "geranial": 420_000}, source=SOURCE)
    limit(scents, "citral", 20_000, constituent=True)
    code = planned(scents.book, "scented")
    with scents.book.look() as rows:
        loud, still = (child.code for child in portions_of(rows, batch_of(scents.book, code).id))
    # the dough at its driest (1 146.826 + 20) / 0.92 = 1 268.289 g holds 14.4 g of citral: 1.135 %, as in the portion
    # left plain; 60 % of it with 10 g of sea scent, 770.973 g, holds 8.64 g: 1.121 %
    assert checks(scents, still)["citral"].words.startswith("citral, 1.135 % of the bar at its driest, is within")
    assert checks(scents, loud)["citral"].words.startswith("citral, at least 1.121 % of the bar at its driest, against")


def test_a_drum_poured_together_keeps_the_statements_of_its_lots(scents: Shop) -> None:
    first, second = (deliver(scents.book, DeliveryLine("bay oil", 100_000, f"B{n}", 900)) for n in (1, 2))
    state_contents(scents.book, "bay oil", {"citral": 800_000}, source=SOURCE, lot=first)
    state_contents(scents.book, "bay oil", {"citral": 640_000}, source=SOURCE, lot=second)
    drum = combine(scents.book, [first, second], on=MADE, by="Nuala").code
    add_recipe(scents.book, scented(("bay oil", WHOLE)), file="s.toml")
    limit(scents, "citral", 27_000, constituent=True)
    code = planned(scents.book, "scented", using={"bay oil": drum})
    assert checks(scents, code)["citral"].share_ppm == 27_000  # half of each: 72 % of 3.75 %


def test_what_an_additive_is_stated_to_contain_counts_at_the_scale_too(scents: Shop) -> None:
    add_material(scents.book, MaterialFacts("herb tincture", "HERB EXTRACT"), kind="additive", code=None)
    deliver(scents.book, DeliveryLine("herb tincture", 200_000, "HT", 900))
    add_recipe(scents.book, scented(("herb tincture", HALF), part="additive"), file="s.toml")
    state_contents(scents.book, "herb tincture", {"geranial": 720_000}, source=SOURCE)
    limit(scents, "citral", 20_000, constituent=True)
    code = planned(scents.book, "scented")
    open_ = {line.material: line for line in lines_of(scents.book, code)}
    for name, line in open_.items():
        if name != "herb tincture":
            weigh(scents.book, code, {line.number: [Weighed(line.target)]}, on=MADE, by="Nuala")
    with pytest.raises(Refused, match=r"citral, 2\.700 % of the bar at its driest, is over the 2\.000 %"):
        weigh(scents.book, code, {open_["herb tincture"].number: [Weighed(48_732)]}, on=MADE, by="Nuala")


REBATCH = """
name = "Twice Round"
code = "second"
process = "rebatch"
[[rework]]
material = "offcuts"
grams = 400
[water]
material = "water"
grams = 60
[mould]
bars = 4
net_weight = "100 g"
"""


@pytest.mark.usefixtures("frozen")
def test_of_soap_melted_again_it_is_said_that_it_is_not_known(scents: Shop, run: Any) -> None:
    for code, recipe in (("scented", scented(("bay oil", HALF))), ("second", REBATCH)):
        add_recipe(scents.book, recipe, file=f"{code}.toml")
    limit(scents, "bay oil", 90_000)
    shown = " ".join(run("recipe", "show", "second").stdout.split())
    assert "the scent of the soap melted again: how much of it is in the bar at its driest is not known here" in shown
    lots = []
    for recipe in ("scented", "plain-bar"):
        code = cut(scents.book, recipe)
        reject_bars(scents.book, code, on=date(2026, 6, 1), by="Nuala", reason="spots")
        lots.append(rework_bars(scents.book, code, 820_000, on=date(2026, 6, 1), by="Nuala").lot)
    decide_lots(scents.book, lots, verdict="accepted", on=date(2026, 6, 1), by="Nuala", reason="sound")
    again, plain = (planned(scents.book, "second", on=date(2026, 6, 1), using={"offcuts": lot}) for lot in lots)
    words = (
        "bay oil: how much of it is in the bar at its driest is not known here, for soap melted again is not reckoned"
    )
    assert [one.words[: len(words)] for one in checks(scents, again).values()] == [words]
    assert any(one.startswith(words) for one in worksheet(scents.rows(), again, program="1").notes)
    assert checks(scents, plain) == {}  # unscented bars melted again hold none
    weighed(scents.book, again, on=date(2026, 6, 1))
    cut_batch(scents.book, again, bars=4, on=date(2026, 6, 1), by="Nuala", bars_mg=420_000)
    assert any(one.startswith(words) for one in batch_record(scents.rows(), again, program="1").look_first.warnings)


@pytest.mark.usefixtures("frozen")
def test_the_recipe_page_says_at_least_and_that_a_paper_is_of_another_product(scents: Shop, run: Any) -> None:
    add_recipe(scents.book, scented(("bay oil", WHOLE)), file="s.toml")
    limit(scents, "bay oil", 90_000, category="4")
    limit(scents, "citral", 10_000, constituent=True)
    shown = " ".join(run("recipe", "show", "scented").stdout.split())
    assert "bay oil, 3.750 % of the bar at its driest: certificate C, category 4, is not one for soap" in shown
    assert "citral, at least 0.000 % of the bar at its driest, against the 1.000 %" in shown
