"""Fragrances against what their certificates allow on the skin, from the plan to the scale."""

import shutil
from datetime import date
from typing import Any

import pytest
from making import MADE, batch_of, deliver, lines_of, planned
from scented import three_scents
from shop import PLAIN_BAR, Shop, work_a_shop

from ledger.domain.material.skin_limits import Limit
from ledger.errors import BadInput, Refused
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.keep.check import check
from ledger.operations.keep.undo import undo
from ledger.operations.material.materials import MaterialFacts, add_material, edit_material
from ledger.operations.material.skin import state_contents, state_limit
from ledger.operations.recipe.recipes import add_recipe, revise_recipe
from ledger.operations.stock.receive import DeliveryLine
from ledger.rows.batch import portions_of
from ledger.rows.history import last_entry
from ledger.rows.material import contents_of
from ledger.views.bench.worksheet import worksheet
from ledger.views.recipe.skin import SkinCheck, batch_skin_checks
from ledger.views.record.record import batch_record

# A plain bar without its water: 600 + 400 + 146.826 = 1 146.826 g. At its driest 8 % of the bar is water, so with
# m g of fragrance it weighs (1 146.826 + m) / 0.92.
SOURCE = "allergen statement of 2 Mar 2026"


def scented(*fragrances: tuple[str, str]) -> str:
    """The plain bar with fragrances by name and grams."""
    parts = [f'\n[[fragrance]]\nmaterial = "{name}"\ngrams = {grams}\n' for name, grams in fragrances]
    return PLAIN_BAR.replace("plain-bar", "scented").replace("Plain Bar", "Scented") + "".join(parts)


@pytest.fixture
def scents(shop: Shop, built: Any) -> Shop:
    """The worked shop with two essential oils and a fragrance, of each 200 g."""
    shutil.copyfile(built("three scents", three_scents, built("shop", work_a_shop)[0])[0], shop.book.path)
    return shop


def limit(shop: Shop, name: str, percent: str, *, constituent: bool = False) -> None:
    facts = Limit(round(float(percent) * 10_000), "C-77", "51", "9", date(2026, 3, 2))
    state_limit(shop.book, facts, **{"constituent" if constituent else "material": name})


def checks(shop: Shop, code: str) -> list[SkinCheck]:
    with shop.book.look() as rows:
        return list(batch_skin_checks(rows, batch_of(shop.book, code)))


def clean(shop: Shop) -> bool:
    return check(shop.rows()).findings == ()


def test_over_the_limit_is_not_planned_and_both_figures_are_said(scents: Shop) -> None:
    add_recipe(scents.book, scented(("bay oil", "30")), file="s.toml")
    limit(scents, "bay oil", "2")
    # 30 g of (1 146.826 + 30) / 0.92 = 1 279.159 g is 2.345 %
    says = r"Scented is not planned: bay oil, 2\.345 % of the bar at its driest, is over the 2\.000 % of certificate "
    with pytest.raises(Refused, match=says + r"C-77, amendment 51, category 9, 2 Mar 2026\. Use less of it\."):
        planned(scents.book, "scented")
    assert scents.rows().execute("SELECT count(*) FROM batch").fetchone()[0] == 1
    with pytest.raises(Refused, match="is not planned"):  # --anyway is about the lye
        planned(scents.book, "scented", anyway="it will be strong")


def test_exactly_at_the_limit_is_allowed(scents: Shop) -> None:
    # 1 146.826 + 48.732 = 1 195.558 g; with 8 % of water 1 299.520 g, of which 48.732 g is 3.75 % exactly
    add_recipe(scents.book, scented(("bay oil", "48.732")), file="s.toml")
    limit(scents, "bay oil", "3.7499")
    with pytest.raises(Refused, match=r"just over 3\.7499 % of the bar at its driest, is over the 3\.7499 % of"):
        planned(scents.book, "scented")
    limit(scents, "bay oil", "3.75")  # a later certificate stands in its place
    (found,) = checks(scents, planned(scents.book, "scented"))
    assert (found.share_ppm, found.limit_ppm, found.verdict) == (37_500, 37_500, "within")


def test_a_constituent_of_two_oils_is_added_up(scents: Shop) -> None:
    add_recipe(scents.book, scented(("bay oil", "20"), ("rosewood oil", "10")), file="s.toml")
    for name in ("bay oil", "rosewood oil"):
        limit(scents, name, "5")
    state_contents(scents.book, "bay oil", {"Linalool": 320_000}, source=SOURCE)
    state_contents(scents.book, "rosewood oil", {"Linalool": 200_000, "Geraniol": 10_000}, source=SOURCE)
    limit(scents, "Linalool", "0.6", constituent=True)
    # 6.4 g and 2 g of 1 279.159 g: 0.500 % and 0.156 % alone, 0.657 % together; geraniol has no limit and is not asked
    with pytest.raises(Refused, match=r"Linalool, 0\.657 % of the bar at its driest, is over the 0\.600 %"):
        planned(scents.book, "scented")
    limit(scents, "Linalool", "0.66", constituent=True)
    code = planned(scents.book, "scented")
    assert [(one.name, one.share_ppm, one.verdict) for one in checks(scents, code)] == [
        ("bay oil", 15_635, "within"),  # 20 / 1 279.159
        ("rosewood oil", 7_818, "within"),
        ("Linalool", 6_567, "within"),
    ]


def test_a_constituent_is_one_however_it_is_written(scents: Shop) -> None:
    add_recipe(scents.book, scented(("bay oil", "20"), ("rosewood oil", "10")), file="s.toml")
    for name in ("bay oil", "rosewood oil"):
        limit(scents, name, "5")
    state_contents(scents.book, "bay oil", {"Linalool": 320_000}, source=SOURCE)
    state_contents(scents.book, "rosewood oil", {"LINALOOL": 200_000}, source=SOURCE)
    limit(scents, "linalool", "0.6", constituent=True)
    with pytest.raises(Refused, match=r"linalool, 0\.657 % of the bar at its driest, is over the 0\.600 %"):
        planned(scents.book, "scented")


def test_the_latest_limit_counts_however_it_is_written(scents: Shop) -> None:
    add_recipe(scents.book, scented(("bay oil", "20")), file="s.toml")
    limit(scents, "bay oil", "5")
    state_contents(scents.book, "bay oil", {"linalool": 320_000}, source=SOURCE)
    for name, percent in (("Linalool", "2"), ("linalool", "0.4"), ("Linalool", "0.6")):
        limit(scents, name, percent, constituent=True)
    # 6.4 g of (1 146.826 + 20) / 0.92 = 1 268.289 g is 0.505 %
    found = checks(scents, planned(scents.book, "scented"))
    assert [(one.share_ppm, one.limit_ppm) for one in found if one.name != "bay oil"] == [(5_046, 6_000)]


def test_the_statement_of_a_lot_goes_before_that_of_its_material(scents: Shop) -> None:
    add_recipe(scents.book, scented(("bay oil", "20")), file="s.toml")
    limit(scents, "bay oil", "5")
    limit(scents, "linalool", "0.5", constituent=True)
    state_contents(scents.book, "bay oil", {"linalool": 320_000}, source=SOURCE)
    with pytest.raises(Refused, match=r"linalool, 0\.505 %"):  # 6.4 of 1 268.289 g
        planned(scents.book, "scented")
    soon = date(2026, 12, 31)  # it expires first, so it is taken
    lot = deliver(scents.book, DeliveryLine("bay oil", 100_000, "F-2", 2000, best_before=soon))
    state_contents(scents.book, "bay oil", {"linalool": 300_000}, source="statement of the lot", lot=lot)
    found = checks(scents, planned(scents.book, "scented"))
    assert [(one.name, one.share_ppm) for one in found] == [("bay oil", 15_769), ("linalool", 4_731)]  # 6 of 1 268.289


def test_the_latest_statement_counts_whole(scents: Shop) -> None:
    state_contents(scents.book, "bay oil", {"linalool": 320_000, "eugenol": 400_000}, source=SOURCE)
    state_contents(scents.book, "bay oil", {"linalool": 300_000}, source="statement of 1 May 2026")
    card = scents.rows().execute("SELECT id FROM material WHERE code = 'bay-oil'").fetchone()[0]
    assert contents_of(scents.rows(), [(card, None)])[card, None] == {"linalool": 300_000}
    undo(scents.book, last_entry(scents.rows()))
    assert contents_of(scents.rows(), [(card, None)])[card, None] == {"linalool": 320_000, "eugenol": 400_000}


def test_a_missing_certificate_is_a_warning_on_worksheet_and_record(scents: Shop) -> None:
    add_recipe(scents.book, scented(("bay oil", "30")), file="s.toml")
    code = planned(scents.book, "scented")
    says = "bay oil, 2.345 % of the bar at its driest: no certificate says how much may be on the skin"
    assert any(one.startswith(says) for one in worksheet(scents.rows(), code, program="1").notes)
    takes = {line.number: [Weighed(line.target)] for line in lines_of(scents.book, code)}
    weigh(scents.book, code, takes, on=MADE, by="Nuala")
    assert any(one.startswith(says) for one in batch_record(scents.rows(), code, program="1").look_first.warnings)
    limit(scents, "bay oil", "3")
    assert not any("bay oil" in one for one in batch_record(scents.rows(), code, program="1").look_first.warnings)


def test_over_the_limit_at_the_scale_is_booked_only_with_a_reason(scents: Shop) -> None:
    add_recipe(scents.book, scented(("bay oil", "20")), file="s.toml")
    limit(scents, "bay oil", "2")
    code = planned(scents.book, "scented")  # 20 of 1 268.289 g is 1.577 %
    takes = {line.number: [Weighed(line.target)] for line in lines_of(scents.book, code)[:4]}
    weigh(scents.book, code, takes, on=MADE, by="Nuala")
    # 40 g of (1 146.826 + 40) / 0.92 = 1 290.028 g is 3.101 %
    says = r"bay oil, 3\.101 % of the bar at its driest, is over the 2\.000 % .* book it with --anyway REASON"
    with pytest.raises(Refused, match=says):
        weigh(scents.book, code, {5: [Weighed(40_000)]}, on=MADE, by="Nuala")
    assert not lines_of(scents.book, code)[4].logged
    weigh(scents.book, code, {5: [Weighed(40_000)]}, on=MADE, by="Nuala", anyway="it is in; for the drawers")
    query = "SELECT verdict, reason FROM decision d JOIN batch b ON b.id = d.batch_id WHERE b.code = ?"
    assert [tuple(row) for row in scents.rows().execute(query, (code,))] == [("accepted", "it is in; for the drawers")]
    record = batch_record(scents.rows(), code, program="1")
    assert any("is over the 2.000 %" in one for one in record.look_first.warnings)
    assert clean(scents)


def test_what_was_decided_of_a_fragrance_is_not_asked_again_for_a_clay(scents: Shop) -> None:
    add_material(scents.book, MaterialFacts("pink clay", "Kaolin"), kind="additive", code=None)
    deliver(scents.book, DeliveryLine("pink clay", 50_000, "K1", 300))
    text = scented(("bay oil", "20")) + '\n[[additive]]\nmaterial = "pink clay"\ngrams = 20\n'
    add_recipe(scents.book, text, file="s.toml")
    limit(scents, "bay oil", "2")
    code = planned(scents.book, "scented")
    lines = {line.material: line for line in lines_of(scents.book, code)}
    for name, line in lines.items():
        if name not in ("bay oil", "pink clay"):
            weigh(scents.book, code, {line.number: [Weighed(line.target)]}, on=MADE, by="Nuala")
    weigh(scents.book, code, {lines["bay oil"].number: [Weighed(40_000)]}, on=MADE, by="Nuala", anyway="it is in")
    weigh(scents.book, code, {lines["pink clay"].number: [Weighed(20_000)]}, on=MADE, by="Nuala")
    assert batch_of(scents.book, code).open_lines == 0


def test_less_fat_at_the_scale_makes_the_same_fragrance_more(scents: Shop) -> None:
    add_recipe(scents.book, scented(("bay oil", "25.5")), file="s.toml")
    limit(scents, "bay oil", "2.1")
    code = planned(scents.book, "scented")  # 25.5 of 1 172.326 / 0.92 = 1 274.267 g is 2.001 %
    masses = {1: 550_000, 2: 350_000, 3: 293_652, 4: 130_000}
    weigh(scents.book, code, {n: [Weighed(mass)] for n, mass in masses.items()}, on=MADE, by="Nuala")
    # 25.5 of (550 + 350 + 130 + 25.5) / 0.92 = 1 147.283 g is 2.223 %
    with pytest.raises(Refused, match=r"bay oil, 2\.223 % of the bar"):
        weigh(scents.book, code, {5: [Weighed(25_500)]}, on=MADE, by="Nuala")


def test_a_portion_of_scent_is_reckoned_on_the_portion(scents: Shop) -> None:
    text = scented(("bay oil", "10")) + 'portion = "loud"\n'
    text += '[[portion]]\nname = "loud"\npercent = 60\n[[portion]]\nname = "still"\npercent = 40\n'
    add_recipe(scents.book, text, file="s.toml")
    limit(scents, "bay oil", "1.3")
    # the dough at its driest is 1 146.826 / 0.92 = 1 246.550 g; 60 % of it and the oil 757.930 g: 1.319 %
    with pytest.raises(Refused, match=r"bay oil, 1\.319 % of the bar at its driest, is over the 1\.300 %"):
        planned(scents.book, "scented")
    limit(scents, "bay oil", "1.32")
    code = planned(scents.book, "scented")
    with scents.book.look() as rows:
        loud, still = (child.code for child in portions_of(rows, batch_of(scents.book, code).id))
    assert [(one.name, one.share_ppm) for one in checks(scents, loud)] == [("bay oil", 13_194)]
    assert checks(scents, still) == []
    assert checks(scents, code) == []


def test_scent_in_the_dough_counts_in_every_portion_with_its_own(scents: Shop) -> None:
    text = scented(("sea scent", "20"), ("bay oil", "10")) + 'portion = "loud"\n'
    text += '[[portion]]\nname = "loud"\npercent = 60\n[[portion]]\nname = "still"\npercent = 40\n'
    add_recipe(scents.book, text, file="s.toml")
    for name in ("sea scent", "bay oil"):
        limit(scents, name, "5")
        state_contents(scents.book, name, {"linalool": 100_000}, source=SOURCE)
    limit(scents, "linalool", "0.5", constituent=True)
    code = planned(scents.book, "scented")
    with scents.book.look() as rows:
        loud, still = (child.code for child in portions_of(rows, batch_of(scents.book, code).id))
    # the dough at its driest (1 146.826 + 20) / 0.92 = 1 268.289 g; loud: 760.973 g of it with 12 g of sea scent, and
    # 10 g of bay oil in 770.973 g; linalool 2.2 g of it. still: 8 g of sea scent in 507.316 g.
    assert [(one.name, one.share_ppm) for one in checks(scents, loud)] == [
        ("bay oil", 12_971),
        ("sea scent", 15_565),
        ("linalool", 2_854),
    ]
    assert [(one.name, one.share_ppm) for one in checks(scents, still)] == [("sea scent", 15_769), ("linalool", 1_577)]


def test_an_oil_renamed_at_the_bench_is_still_reckoned_with(scents: Shop) -> None:
    add_recipe(scents.book, scented(("bay oil", "30")), file="s.toml")
    code = planned(scents.book, "scented")
    takes = {line.number: [Weighed(line.target)] for line in lines_of(scents.book, code)}
    weigh(scents.book, code, takes, on=MADE, by="Nuala")
    edit_material(scents.book, "bay-oil", MaterialFacts("West Indian bay", "PIMENTA ACRIS LEAF OIL"))
    edit_material(
        scents.book,
        "olive-oil",
        MaterialFacts("olive oil, extra virgin", "OLEA EUROPAEA FRUIT OIL", None, 190_000, 190_000, "certificate"),
    )
    (found,) = checks(scents, code)
    assert (found.name, found.share_ppm, found.verdict) == ("West Indian bay", 23_453, "no certificate")
    record = batch_record(scents.rows(), code, program="1")
    assert any("West Indian bay, 2.345 %" in one for one in record.look_first.warnings)


NO_STATEMENTS: list[tuple[str, dict[str, int], str, str]] = [
    ("sodium hydroxide", {"linalool": 1}, SOURCE, "is of the kind alkali; contents are stated for oils"),
    ("bay oil", {"linalool": 700_000, "eugenol": 300_001}, SOURCE, "add up to 100.0 %; look at the statement"),
    ("bay oil", {"linalool": -1}, SOURCE, "linalool is stated as less than nothing"),
    ("bay oil", {}, SOURCE, "Name what it contains"),
    ("bay oil", {"linalool": 1}, " ", "Where does it stand"),
    ("nutmeg oil", {"linalool": 1}, SOURCE, "No material is called 'nutmeg oil'"),
]


def test_a_statement_that_cannot_be_is_bad_input(scents: Shop) -> None:
    for material, shares, source, message in NO_STATEMENTS:
        with pytest.raises(BadInput, match=message):
            state_contents(scents.book, material, shares, source=source)
    assert scents.rows().execute("SELECT count(*) FROM constituent").fetchone()[0] == 0


def test_contents_of_the_whole_are_allowed_and_a_lot_of_another_oil_is_not(scents: Shop) -> None:
    state_contents(scents.book, "bay oil", {"linalool": 700_000, "eugenol": 300_000}, source=SOURCE)
    with pytest.raises(BadInput, match=f"Lot {scents.olive} is olive oil, not bay oil; look at --lot"):
        state_contents(scents.book, "bay oil", {"linalool": 1}, source=SOURCE, lot=scents.olive)


def test_a_limit_that_cannot_be_is_bad_input(scents: Shop) -> None:
    good = Limit(10_000, "C-1", None, "9", date(2026, 3, 2))
    for facts, material, message in (
        (good._replace(limit_ppm=0), "bay oil", "above 0, up to 100 %"),
        (good._replace(limit_ppm=1_000_001), "bay oil", "above 0, up to 100 %"),
        (good._replace(certificate=" "), "bay oil", "Name the certificate"),
        (good._replace(category=""), "bay oil", "For which kind of product .* soap is category 9: add --category 9"),
        (good, "olive oil", "is of the kind fat; such limits are for fragrances"),
    ):
        with pytest.raises(BadInput, match=message):
            state_limit(scents.book, facts, material=material)
    assert scents.rows().execute("SELECT count(*) FROM skin_limit").fetchone()[0] == 0


def test_an_essential_oil_written_as_an_additive_is_reckoned_all_the_same(scents: Shop) -> None:
    text = scented().rstrip() + '\n[[additive]]\nmaterial = "bay oil"\ngrams = 30\n'
    add_recipe(scents.book, text, file="s.toml")
    limit(scents, "bay oil", "2")
    with pytest.raises(Refused, match=r"bay oil, 2\.345 %"):
        planned(scents.book, "scented")


@pytest.mark.usefixtures("frozen")
def test_the_recipe_page_says_the_same_before_anything_is_planned(scents: Shop, run: Any) -> None:
    add_recipe(scents.book, scented(("bay oil", "30")), file="s.toml")
    assert "no certificate says how much may be" in " ".join(run("recipe", "show", "scented").stdout.split())
    run("material", "limit", "bay oil", "2.5", "--certificate", "C-77", "--category", "9")
    said = " ".join(run("recipe", "show", "scented").stdout.split())
    assert "bay oil, 2.345 % of the bar at its driest, is within the 2.500 % of certificate C-77, category 9" in said
    revise_recipe(scents.book, "scented", scented(("bay oil", "33")), file="s.toml")
    # 33 g of (1 146.826 + 33) / 0.92 = 1 282.420 g is 2.573 %
    said = " ".join(run("recipe", "show", "scented").stdout.split())
    assert "bay oil, 2.573 % of the bar at its driest, is over the 2.500 %" in said
    assert "Use less of it." in run("batch", "plan", "scented", code=1).stderr
