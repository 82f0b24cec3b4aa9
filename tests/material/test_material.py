"""material at the command line: published figures, strengths, doubts asked again, contents and limits."""

import json
from typing import Any

import pytest
from making import deliver, lines_of, planned
from shop import Shop

from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.stock.receive import DeliveryLine

pytestmark = pytest.mark.usefixtures("frozen", "book")


def card(run: Any, which: str) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(run("material", "show", which, "--json").stdout)
    return found


def one_line(run: Any, *words: str, code: int = 2) -> str:
    error: str = run(*words, code=code).stderr
    assert error.count("\n") == 1
    return error


def count(run: Any) -> int:
    return len(json.loads(run("material", "list", "--json").stdout))


def test_like_a_fat_starts_from_its_published_range(run: Any) -> None:
    said = run("material", "add", "olive oil", "--like", "olive").stdout
    assert "is added as 'olive-oil', of the kind fat" in said
    assert "Saponification value 184 to 196" in said
    found = card(run, "olive oil")
    assert (found["kind"], found["reference_key"]) == ("fat", "olive")
    assert (found["sap_low_mg_per_kg"], found["sap_high_mg_per_kg"]) == (184_000, 196_000)  # CXS 33-1981
    assert (found["inci"], found["inci_sodium"]) == ("OLEA EUROPAEA FRUIT OIL", "SODIUM OLIVATE")


def test_like_an_alkali_takes_its_kind_and_potash_its_purity_too(run: Any) -> None:
    run("material", "add", "lye", "--like", "sodium hydroxide")
    found = card(run, "lye")
    assert (found["kind"], found["alkali_kind"], found["purity_ppm"]) == ("alkali", "NaOH", None)
    assert "add --purity 90" in one_line(run, "material", "add", "potash", "--like", "potassium hydroxide")
    run("material", "add", "potash", "--like", "potassium hydroxide", "--purity", "89.5 %")
    found = card(run, "potash")
    assert (found["alkali_kind"], found["purity_ppm"], found["water_ppm"]) == ("KOH", 895_000, None)


def test_like_an_acid_knows_the_alkali_it_uses_up(run: Any) -> None:
    run("material", "add", "citric", "--like", "citric acid")
    found = card(run, "citric")
    # three protons: 3 x 56.1053 / 192.123 = 0.876084 g KOH per g
    assert (found["kind"], found["acid_koh_mg_per_kg"], found["purity_ppm"]) == ("additive", 876_084, 1_000_000)
    assert "0.8761 g KOH per g of pure acid" in run("material", "show", "citric").stdout
    error = one_line(run, "material", "add", "lactic", "--like", "lactic acid")
    assert "How strong is lactic? Add --strength 80" in error
    run("material", "add", "lactic", "--like", "lactic acid", "--strength", "80")
    # one proton: 56.1053 / 90.078 = 0.622852
    assert (card(run, "lactic")["acid_koh_mg_per_kg"], card(run, "lactic")["purity_ppm"]) == (622_852, 800_000)
    assert "cannot be; it lies above 0" in one_line(
        run, "material", "add", "vinegar", "--like", "acetic", "--strength", "101"
    )


def test_like_a_liquid_knows_its_water(run: Any) -> None:
    run("material", "add", "goat milk", "--like", "goat milk")
    found = card(run, "goat milk")
    assert (found["kind"], found["water_ppm"], found["density_mg_per_ml"]) == ("liquid", 870_000, 1030)
    assert "water                 87.0 %" in run("material", "show", "goat milk").stdout
    run("material", "edit", "goat milk", "--water", "88.5")
    assert card(run, "goat milk")["water_ppm"] == 885_000


def test_like_what_nobody_published_is_bad_input(run: Any) -> None:
    assert "No published material" in one_line(run, "material", "add", "x", "--like", "moon oil")
    assert "What kind of material is x?" in one_line(run, "material", "add", "x")
    assert "Did you mean fat?" in one_line(run, "material", "add", "x", "--kind", "fatt")
    assert count(run) == 1  # the offcuts that every ledger begins with


NOT_RECKONED_WITH: list[tuple[tuple[str, ...], str]] = [
    (("--alkali", "NaOH", "--strength", "70"), "A strength of 70 % cannot be"),
    (("--alkali", "NaOH", "--strength", "4"), "A strength of 4 % cannot be"),
    (("--alkali", "NaOH", "--strength", "100"), "A strength of 100 % cannot be"),
    (("--alkali", "NaOH", "--purity", "98", "--strength", "50"), "give one of them"),
    (("--alkali", "NaOH", "--purity", "0.98"), "write 99 for 99 %"),
    (("--alkali", "soda"), "write NaOH or KOH"),
    (("--alkali", "KOH"), "KOH is sold at 85 to 95 %"),
    (("--kind", "liquid", "--water", "101"), "is a share above 0, at most 100 %"),
    (("--kind", "liquid", "--water", "0"), "is a share above 0, at most 100 %"),
    (("--kind", "liquid", "--water", "much"), "cannot be read"),
    (("--kind", "liquid", "--strength", "50"), "is neither an alkali nor an acid"),
    (("--kind", "fat", "--sap", "190", "--water", "5"), "of a liquid; look at --water"),
    (("--kind", "fat"), "is a fat without a saponification value"),
    (("--kind", "fat", "--sap", "190-180"), "the lower figure first"),
    (("--kind", "fat", "--sap", "0"), "cannot be"),
    (("--kind", "fat", "--sap", "1-2-3"), "is not a saponification value"),
    (("--kind", "liquid", "--sap", "190"), "Only a fat, or an oil of your own making"),
    (("--kind", "liquid", "--density", "10"), "cannot be; oils lie near 0.92"),
    (("--like", "citric acid", "--kind", "liquid"), "is an additive; write --kind additive"),
]


def test_what_the_lye_cannot_be_reckoned_with_is_one_line(run: Any) -> None:
    for words, says in NOT_RECKONED_WITH:
        assert says in one_line(run, "material", "add", "x", *words)
    assert count(run) == 1


def test_a_stock_lye_has_a_strength_and_the_rest_is_water(run: Any) -> None:
    run("material", "add", "stock lye", "--alkali", "naoh", "--strength", "50")
    found = card(run, "stock lye")
    assert (found["alkali_kind"], found["purity_ppm"], found["water_ppm"]) == ("NaOH", 500_000, 500_000)
    words = "strength              50 % typed for the material, taken as up to 51.5 %"  # 3 % of 50 is 1.5
    assert words in run("material", "show", "stock lye").stdout
    run("material", "edit", "stock lye", "--strength", "33.3")
    found = card(run, "stock lye")
    assert (found["purity_ppm"], found["water_ppm"]) == (333_000, 667_000)
    assert "cannot be" in one_line(run, "material", "edit", "stock lye", "--purity", "98")


def test_the_names_of_both_soaps_are_kept(run: Any) -> None:
    run("material", "add", "plum oil", "--kind", "fat", "--sap", "188-194", "--salts",
        "sodium plumate ; potassium plumate")  # fmt: skip
    found = card(run, "plum oil")
    assert (found["inci_sodium"], found["inci_potassium"]) == ("SODIUM PLUMATE", "POTASSIUM PLUMATE")
    assert "SODIUM PLUMATE; POTASSIUM PLUMATE" in run("material", "show", "plum oil").stdout
    run("material", "edit", "plum oil", "--salts", "SODIUM PLUM KERNELATE")
    found = card(run, "plum oil")
    assert (found["inci_sodium"], found["inci_potassium"]) == ("SODIUM PLUM KERNELATE", None)


def test_an_unlikely_value_is_asked_about_again(run: Any) -> None:
    # 5 % above the 196 published for olive oil is 205.8; 5 % below the 184 is 174.8
    add = ("material", "add", "olive oil", "--like", "olive", "--sap")
    no = run(*add, "205.9", input="n\n", code=1)
    assert "the saponification value 205.9 lies far from the 184.0 to 196.0 published for olive" in no.stderr
    assert "nothing written" in no.stderr
    assert count(run) == 1
    run(*add, "205.9", "--yes")
    assert card(run, "olive oil")["sap_high_mg_per_kg"] == 205_900
    run("material", "edit", "olive oil", "--sap", "174.7", input="n\n", code=1)
    assert card(run, "olive oil")["sap_high_mg_per_kg"] == 205_900
    run("material", "edit", "olive oil", "--sap", "174.7", input="y\n")
    assert card(run, "olive oil")["sap_low_mg_per_kg"] == 174_700
    run("material", "edit", "olive oil", "--sap", "190")  # nothing to ask
    assert card(run, "olive oil")["sap_source"] == "your own entry"


def test_a_value_within_a_twentieth_is_not_asked_about(run: Any) -> None:
    assert "lies" not in run("material", "add", "olive oil", "--like", "olive", "--sap", "174.8-205.8").stderr
    run("material", "add", "plum oil", "--kind", "fat", "--sap", "140")  # like nothing that was published
    assert count(run) == 3


@pytest.fixture
def bay(frozen: Any, book: Any, run: Any) -> None:  # noqa: ARG001
    """An essential oil of which nothing is stated yet."""
    assert book.path.exists()
    run("material", "add", "bay oil", "--kind", "fragrance", "--inci", "Pimenta Acris Leaf Oil")


CONTAINS = ("material", "contains", "bay oil", "--source", "statement of 2 Mar 2026")
LIMIT = ("material", "limit", "--certificate", "C-77", "--category", "9")


@pytest.mark.usefixtures("bay")
def test_contents_are_stated_with_or_without_a_percent_sign(run: Any, book: Any) -> None:
    said = run(*CONTAINS, "linalool=32", "beta caryophyllene = 0.8 %", "limonene=0,25%").stdout
    listed = "bay oil contains linalool, beta caryophyllene, limonene as stated (statement of 2 Mar 2026)"
    assert listed in " ".join(said.split())
    with book.look() as rows:
        found = rows.execute("SELECT name, share_ppm, source FROM constituent ORDER BY id").fetchall()
    assert [tuple(row) for row in found] == [
        ("linalool", 320_000, "statement of 2 Mar 2026"),
        ("beta caryophyllene", 8_000, "statement of 2 Mar 2026"),
        ("limonene", 2_500, "statement of 2 Mar 2026"),
    ]


NO_CONTENTS: list[tuple[tuple[str, ...], str]] = [
    (("linalool=60", "eugenol=41"), "add up to 101.0 %"),
    (("linalool=101",), "add up to 101.0 %"),
    (("linalool=5", "linalool=6"), "'linalool=6' is not a constituent with its percent, once"),
    (("linalool=5", "Linalool=6"), "'Linalool=6' is not a constituent with its percent, once"),
    (("linalool",), "'linalool' is not a constituent with its percent"),
    (("=5",), "'=5' is not a constituent"),
    (("linalool=",), "cannot be read"),
    (("linalool=some",), "is said as 'some', which is no figure"),
    (("linalool=1-2-3",), "write 0.5, <0.01, or 0.1-0.5 with the lower one first"),
    (("linalool=0.5-0.1",), "write 0.5, <0.01, or 0.1-0.5 with the lower one first"),
    (("linalool=<",), "cannot be read"),
    (("linalool=traces",), "is said as 'traces', which is no figure"),
    (("linalool=-1",), "cannot be below zero"),
]


@pytest.mark.usefixtures("bay")
def test_contents_that_cannot_be_are_one_line(run: Any, book: Any) -> None:
    for shares, says in NO_CONTENTS:
        assert says in one_line(run, *CONTAINS, *shares)
    with book.look() as rows:
        assert rows.execute("SELECT count(*) FROM constituent").fetchone()[0] == 0


@pytest.mark.usefixtures("bay")
def test_contents_are_of_a_material_that_is_known(run: Any) -> None:
    words = ("material", "contains", "nutmeg oil", "linalool=3", "--source", "a letter")
    assert "No material is called 'nutmeg oil'" in one_line(run, *words)
    run("material", "contains", "bay oil", "linalool=3", code=2)  # without --source


@pytest.mark.usefixtures("bay")
def test_limits_are_stated_with_or_without_a_percent_sign(run: Any, book: Any) -> None:
    assert "bay oil: at most 2.500 % of the bar, by certificate C-77" in run(*LIMIT, "bay oil", "2.5").stdout
    run(*LIMIT, "bay oil", "2.4 %", "--dated", "2026-03-02", "--amendment", "51")
    run(*LIMIT, "linalool", "0.6", "--constituent")
    query = "SELECT constituent, limit_ppm, amendment, category, dated FROM skin_limit ORDER BY id"
    with book.look() as rows:
        found = [tuple(row) for row in rows.execute(query)]
    assert found == [
        (None, 25_000, None, "9", "2026-06-01"),  # today, where no date is given
        (None, 24_000, "51", "9", "2026-03-02"),
        ("linalool", 6_000, None, "9", "2026-06-01"),
    ]


NO_LIMITS: list[tuple[str, str, str]] = [
    ("bay oil", "101", "above 0, up to 100 %"),
    ("bay oil", "0", "above 0, up to 100 %"),
    ("bay oil", "some", "The limit cannot be read from 'some'"),
    ("nutmeg oil", "3", "No material is called 'nutmeg oil'"),
    ("offcuts", "3", "is of the kind rework"),
    ("linalool", "3", "No material is called 'linalool'"),
]


@pytest.mark.usefixtures("bay")
def test_limits_that_cannot_be_are_one_line(run: Any, book: Any) -> None:
    for which, percent, says in NO_LIMITS:
        assert says in one_line(run, *LIMIT, which, percent)
    with book.look() as rows:
        assert rows.execute("SELECT count(*) FROM skin_limit").fetchone()[0] == 0


@pytest.mark.usefixtures("bay")
def test_a_limit_without_a_name_is_bad_input(run: Any) -> None:
    assert "NAME is empty" in one_line(run, *LIMIT, " ", "3", "--constituent")


NO_SCALES: list[tuple[str, str]] = [
    ("20 g", "between 0.001 g and 10 g"),
    ("0 g", "between 0.001 g and 10 g"),
    ("1", "1 of what?"),
    ("1 mL", "is a volume"),
    ("fine", "cannot be read"),
]


def test_a_scale_that_cannot_be_is_one_line(run: Any) -> None:
    for typed, says in NO_SCALES:
        assert says in one_line(run, "init", "--scale-step", typed)


def test_a_coarse_scale_widens_what_is_ok(shop: Shop, run: Any) -> None:
    run("init", "--scale-step", "2 g")
    lines = lines_of(shop.book, planned(shop.book))
    # the alkali, 146.826 g: half a percent is 0.734 g, less than the 2 g the scale can show, which reads 146 and 148 g
    # of 144.826 to 148.826 g; 600 g of oil: 1 % is 6 g
    assert (lines[3].low, lines[3].high) == (146_000, 148_000)
    assert (lines[0].low, lines[0].high) == (594_000, 606_000)
    run("init", "--scale-step", "0.01 oz")
    lines = lines_of(shop.book, planned(shop.book))
    # 0.01 oz is 0.283 g: of 146.092 to 147.109 g such a scale reads 517 to 519 of them
    assert (lines[3].low, lines[3].high) == (517 * 283, 519 * 283)


def test_a_material_is_shown_in_ounces(shop: Shop, run: Any) -> None:
    add_material(shop.book, MaterialFacts("bay oil"), kind="fragrance", code=None)
    deliver(shop.book, DeliveryLine("bay oil", 200_000, "BO-1", 900))
    run("init", "--units", "us")
    said = run("material", "show", "bay oil").stdout
    assert "7.05 oz on hand" in said  # 200 / 28.349523
    # 4.4 kg are 9.70 lb of 453.59237 g
    assert "9.70 lb on hand" in run("material", "show", "olive oil").stdout
