"""Wax esters and sterols in cold process: they take anything between their acid value and all of their value.

Jojoba 90 to 96 mg KOH/g, beeswax 87 to 104 with an acid value of 17 at the least (NF Yellow Wax), olive 184 to 196,
coconut 248 to 265 (the tables' ranges); NaOH 39.99677 and KOH 56.1053 g/mol.
"""

from typing import Any

import pytest
from shop import Shop

from ledger.domain.lye.pot import Figures
from ledger.domain.lye.saponification import AlkaliCharge, FatCharge
from ledger.domain.lye.uncertainty import safer, superfat_range
from ledger.domain.recipe.hazards import InRecipe, Look, hazards_in
from ledger.reference.hazards import hazards
from ledger.reference.tables import acid_value, fats
from ledger.rows.material import material_by_code
from ledger.views.material.figures import figures_of

SODA = 39.99677 / 56.1053
JOJOBA = Figures("jojoba", 90_000, 96_000, acid_value_mg_per_kg=0)
RECIPE = """
name = "{code}"
code = "{code}"
process = "{process}"
superfat = 5
fats_total = "1000 g"
[alkali]
material = "sodium hydroxide"
kind = "NaOH"
[water]
material = "water"
per_alkali = 2.0
[[fat]]
material = "olive"
percent = 60
[[fat]]
material = "coconut"
percent = {coconut}
[[fat]]
material = "{wax}"
percent = {share}
[mould]
bars = 10
"""


@pytest.mark.parametrize(
    ("process", "figures", "low", "high"),
    [
        ("cold", JOJOBA, 0, 96_000),
        ("hot", JOJOBA, 90_000, 96_000),
        (None, JOJOBA, 90_000, 96_000),  # a blend of fats, where no lye is
        ("cold", JOJOBA._replace(sap_low_mg_per_kg=95_000, sap_high_mg_per_kg=95_000), 0, 95_000),  # its certificate
        ("cold", JOJOBA._replace(acid_value_mg_per_kg=17_000), 17_000, 96_000),
        ("cold", Figures("olive", 184_000, 196_000), 184_000, 196_000),
    ],
)
def test_only_in_cold_process_it_is_open_down_to_the_acid_value(
    process: Any, figures: Figures, low: int, high: int
) -> None:
    fat = figures.fat(100_000, process)
    assert (fat.sap_low_mg_per_kg, fat.sap_high_mg_per_kg) == (low, high)
    assert fat.slow == (process == "cold" and figures.acid_value_mg_per_kg is not None)


def test_how_it_is_counted_is_said_with_its_figure() -> None:
    lot = JOJOBA._replace(sap_low_mg_per_kg=94_000, sap_high_mg_per_kg=94_000, sap_of="lot L3-6: certificate")
    assert lot.stated("cold") == "jojoba, lot L3-6: certificate 94 ± 1, in cold process taken as 0 to 94"
    assert lot.stated("hot") == lot.stated() == "jojoba, lot L3-6: certificate 94 ± 1"
    assert JOJOBA.stated("cold") == "jojoba: 90 to 96, in cold process taken as 0 to 96"
    assert JOJOBA.stated("hot") is None


def test_every_published_fat_of_wax_esters_has_an_acid_value_and_no_other() -> None:
    found = {key for key in fats() if acid_value(key) is not None}
    assert found == {"jojoba", "beeswax", "lanolin", "candelilla", "carnauba"}
    assert acid_value("beeswax") == 17_000
    assert acid_value("jojoba") == 0
    assert acid_value(None) is acid_value("nothing of the kind") is None


def test_no_certificate_is_advised_for_what_none_can_narrow() -> None:
    wax, olive = FatCharge("jojoba", 300_000, 0, 96_000, slow=True), FatCharge("olive", 700_000, 184_000, 196_000)
    # 300 x 48 + 700 x 190 = 147.4 g KOH; at 5 % 140.03 g, as NaOH 99.826 g
    found = superfat_range([wax, olive], [AlkaliCharge("lye", "NaOH", 99_826, 1_000_000, 1_000_000)], scale_step_mg=0)
    assert found.nominal_ppm == pytest.approx(50_000, abs=10)
    # 14.4 / 147.4 = 9.769 %; olive 700 x 6 / 147.4 = 2.849 %; together 10.176 %; 0.95 x 1.10176 = 1.04667
    assert found.likely_low_ppm == pytest.approx(-46_670, abs=30)
    # all low: 700 x 184 = 128.8 g KOH alone is sure: 140.03 / 128.8 = 1.08719
    assert found.all_low_ppm == pytest.approx(-87_190, abs=30)
    assert found.spreads[0][:2] == ("jojoba", "slow fat")
    assert safer(lambda _: found, 50_000, found, lambda _: found).certificate_of == "olive"


@pytest.fixture
def waxes(shop: Shop, run: Any) -> Any:
    """Olive, coconut, jojoba and beeswax by the published figures, and recipes with so much of a wax."""
    assert shop.lye  # sodium hydroxide and water are in hand
    for name in ("olive", "coconut", "jojoba", "beeswax"):
        run("material", "add", name, "--code", f"my-{name}", "--like", name)

    def show(code: str, process: str, wax: str, share: float) -> str:
        text = RECIPE.format(code=code, process=process, wax=wax, share=share, coconut=40 - share)
        with open(f"{code}.toml", "w", encoding="utf-8") as file:
            file.write(text.replace('"olive"', '"my-olive"').replace('"coconut"', '"my-coconut"'))
        run("recipe", "add", f"{code}.toml")
        return " ".join(run("recipe", "show", code).stdout.replace("\u00a0", " ").split())

    return show


def test_the_lye_counts_on_half_of_it_in_cold_process_and_on_all_in_hot(waxes: Any) -> None:
    cold, hot = waxes("jc", "cold", "jojoba", 10), waxes("jh", "hot", "jojoba", 10)
    # cold 600 x 190 + 300 x 256.5 + 100 x 48 = 195.75 g KOH; hot with 100 x 93: 200.25 g
    assert f"sodium hydroxide {195.75 * 0.95 * SODA:.1f} g" in cold  # 132.6
    assert f"sodium hydroxide {200.25 * 0.95 * SODA:.1f} g" in hot  # 135.6
    assert "over 5 %: wax esters and sterols" in cold
    assert "common practice, no source" in cold
    assert "wax esters" not in hot


@pytest.mark.parametrize(("share", "said"), [(5, False), (5.1, True)])
def test_more_than_a_twentieth_is_said(waxes: Any, share: float, said: bool) -> None:
    assert ("over 5 %: wax esters and sterols" in waxes("bw", "cold", "beeswax", share)) == said


@pytest.mark.parametrize(
    ("names", "process", "said"),
    [
        ({"jojoba": 5}, "cold", False),
        ({"jojoba": 5.0001}, "cold", True),
        ({"jojoba": 3, "beeswax": 2.0001}, "cold", True),  # together
        ({"jojoba": 3, "beeswax": 2}, "cold", False),
        ({"lanolin": 50}, "hot", False),
        ({"SIMMONDSIA CHINENSIS SEED OIL": 6}, "cold", True),
        ({"soy wax": 60}, "cold", False),  # hydrogenated soya, a glyceride
    ],
)
def test_they_are_counted_together_by_any_name(names: dict[str, float], process: Any, said: bool) -> None:
    put_in = [InRecipe(name, name, False, "in the fats", round(share * 10_000)) for name, share in names.items()]
    assert (
        any("wax esters" in one for one in hazards_in(Look(process, put_in, 50_000, 333_333, None), hazards())) == said
    )


def test_a_material_of_hers_says_so_by_what_it_is_like(shop: Shop, run: Any) -> None:
    run("material", "add", "desert wax", "--kind", "fat", "--sap", "92-94")
    with shop.book.look() as rows:
        before = figures_of(material_by_code(rows, "desert wax"))
    run("material", "edit", "desert wax", "--like", "jojoba", "--sap", "92-94")
    with shop.book.look() as rows:
        after = figures_of(material_by_code(rows, "desert wax"))
    assert before.fat(1_000, "cold")[2:] == (92_000, 94_000, False)
    assert after.fat(1_000, "cold")[2:] == (0, 94_000, True)
