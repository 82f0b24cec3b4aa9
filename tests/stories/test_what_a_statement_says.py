"""What entries limit and ask beside a line on the label, and what a person says that a name is."""

import json
from datetime import date
from typing import Any

import pytest
from making import CHECKED
from scented import CANADA, SOURCE, bars, told
from shop import Shop

from ledger.operations.keep.undo import undo
from ledger.operations.material.materials import MaterialFacts, edit_material
from ledger.operations.material.meant import Meaning, say_what_it_is, state_peroxide
from ledger.operations.material.skin import state_contents
from ledger.storage.tables.material import NameMeant

pytestmark = pytest.mark.usefixtures("frozen")
ON = date(2026, 6, 4)


def holds(shop: Shop, **contains: int) -> None:
    """The statement of the scent, in ppm by name; an underscore for a space."""
    state_contents(shop.book, "sea scent", {one.replace("_", " "): ppm for one, ppm in contains.items()}, source=SOURCE)


def allergens(run: Any, code: str, *words: str) -> Any:
    return json.loads(run("label", "check", code, *words, "--json").stdout)["label"]["allergens"]


# 20 g of scent in (1 146.826 + 20) / 0.92 = 1 268.289 g at the driest. The maxima of the entries (consolidated Annex
# III, read in a secondary text): isoeugenol 0.02 % is 0.253 658 g of it, 12 682.9 ppm of the scent; hydroxycitronellal
# 1.0 % is 12.682 89 g, 634 144.5 ppm; rose ketones 0.02 %, methyl 2-octynoate and 3-propylidenephthalide 0.01 %
# (0.126 829 g, 6 341.4 ppm); verbena absolute 0.2 % (126 828.9 ppm) and Peru balsam extract 0.4 % (253 657.8 ppm).
MAXIMA = [
    ("isoeugenol", "Isoeugenol", 12_682, "0.02 %", "III/73"),
    ("107-75-5", "Hydroxycitronellal", 634_144, "1 %", "III/72"),
    ("damascenone", "Rose Ketones", 12_682, "0.02 %", "III/157"),
    ("methyl heptine carbonate", "Methyl 2-Octynoate", 6_341, "0.01 %", "III/89"),
    ("17369-59-4", "3-Propylidenephthalide", 6_341, "0.01 %", "III/175"),
    ("verbena absolute", "Lippia Citriodora Absolute", 126_828, "0.2 %", "III/196"),
    ("peru balsam oil", "Myroxylon Pereirae Oil/Extract", 253_657, "0.4 %", "III/154"),
]


@pytest.mark.parametrize("market", ["eu", "gb"])
@pytest.mark.parametrize(("written", "name", "most", "percent", "entry"), MAXIMA)
def test_more_than_the_maximum_of_an_entry_is_not_allowed(
    shop: Shop, ready: str, run: Any, market: str, written: str, name: str, most: int, percent: str, entry: str
) -> None:
    state_contents(shop.book, "sea scent", {written: most}, source=SOURCE)
    assert "NOT ALLOWED" not in told(run, "label", "check", ready, "--market", market)
    state_contents(shop.book, "sea scent", {written: most + 1}, source=SOURCE)
    said = told(run, "label", "check", ready, "--market", market)
    assert f"NOT ALLOWED, so it gets no label and is not released: {name}, from lot L" in said
    assert f"of the bar at its driest: at most {percent}" in said
    assert f"{entry}; consolidated Annex III" in said
    assert ("Annex III as retained; from memory, unverified" in said) == (market == "gb")
    assert allergens(run, ready, "--market", market)["declared"] == []


@pytest.mark.parametrize("market", ["eu", "gb"])
def test_what_is_over_a_maximum_gets_no_label(shop: Shop, ready: str, run: Any, market: str) -> None:
    holds(shop, isoeugenol=12_683)
    for words in (("approve", ready), ("print", ready, "-o", "l.pdf"), ("print", ready, "--draft", "-o", "l.pdf")):
        refused = told(run, "label", *words, "--market", market, code=1)
        assert f"gets no label: it is not allowed in {'Great' if market == 'gb' else 'European'}" in refused


def test_bars_over_a_maximum_are_not_released_whatever_the_reason(shop: Shop, ready: str, run: Any) -> None:
    holds(shop, isoeugenol=12_683)
    refused = told(run, "release", ready, "--anyway", "a trial", *CHECKED, code=1)
    assert f"The bars of batch {ready} may not be supplied: it is not allowed in European Union" in refused


def test_the_members_of_a_group_are_held_to_its_maximum_together(shop: Shop, ready: str, run: Any) -> None:
    holds(shop, **{"alpha-damascone": 6_341, "23726-91-2": 6_341})
    assert "NOT ALLOWED" not in told(run, "label", "check", ready)  # 12 682 ppm in all
    holds(shop, **{"alpha-damascone": 6_341, "23726-91-2": 6_342})
    assert "NOT ALLOWED" in told(run, "label", "check", ready)


def test_a_market_whose_maxima_are_not_known_asks_a_person_and_declares(shop: Shop, ready: str, run: Any) -> None:
    holds(shop, isoeugenol=12_683)
    run("init", "--market", CANADA)
    said = told(run, "label", "check", ready, "--market", "ca")
    assert "NOT ALLOWED" not in said
    assert "at most 0.02 % in the EU (III/73;" in said
    assert "the rule of this market is not known here" in said
    assert allergens(run, ready, "--market", "ca")["declared"] == ["Isoeugenol"]
    run("label", "approve", ready, "--market", "ca")


# 0.06 % of 1 268.289 g is 0.760 973 g, 38 048.7 ppm; that figure is from memory, so it refuses nothing.
def test_a_maximum_from_memory_is_asked_and_refuses_nothing(shop: Shop, ready: str, run: Any) -> None:
    holds(shop, wintergreen_oil=38_048)
    assert "by a figure that nobody looked up" not in told(run, "label", "check", ready)
    holds(shop, wintergreen_oil=38_049)
    said = told(run, "label", "check", ready, "--on", "2026-08-01")
    assert "NOT ALLOWED" not in said
    assert "by a figure that nobody looked up (III/324;" in said
    assert "from memory, unverified): a person decides" in said
    assert "not in products for children under 6" in said
    assert "Methyl Salicylate" in allergens(run, ready, "--on", "2026-08-01")["declared"]


# Entries 88 and 371 (read in a secondary text): limonene below 20 mmol/L of peroxides, pinene below 10.
def test_a_peroxide_value_that_nobody_stated_is_asked(shop: Shop, ready: str, run: Any) -> None:
    holds(shop, limonene=300_000)
    asked = "The peroxide value of sea scent, lot L"
    said = told(run, "label", "check", ready)
    assert asked in said
    assert "it is to be below 20 mmol/L for Limonene (III/88;" in said
    assert asked in told(run, "label", "approve", ready)
    other = told(run, "material", "peroxide", "sea scent", "10 meq/kg", "--source", "c 1", code=2)
    assert "'10 meq/kg' is in another measure; ask the supplier for mmol/L" in other
    assert "sea scent: peroxide value 19.999 mmol/L (c 1)." in told(
        run, "material", "peroxide", "sea scent", "19.999", "--source", "c 1"
    )
    said = told(run, "label", "check", ready)
    assert asked not in said
    assert "NOT ALLOWED" not in said
    holds(shop, limonene=300_000, **{"alpha-pinene": 1})
    said = told(run, "label", "check", ready)
    assert "has a peroxide value of 19.999 mmol/L, and it is to be below 10 for Pinene" in said
    assert "NOT ALLOWED" in said


@pytest.mark.parametrize(("umol", "allowed"), [(19_999, True), (20_000, False), (20_001, False)])
def test_a_peroxide_value_is_to_be_below_the_figure(shop: Shop, ready: str, run: Any, umol: int, allowed: bool) -> None:
    holds(shop, limonene=300_000)
    state_peroxide(shop.book, "sea scent", umol, source="certificate 1")
    assert ("NOT ALLOWED" in told(run, "label", "check", ready)) is not allowed


def test_the_lot_of_its_own_certificate_stands_before_the_material(shop: Shop, ready: str, run: Any) -> None:
    holds(shop, limonene=300_000)
    (lot,) = allergens(run, ready)["lines"][0]["lots"]
    state_peroxide(shop.book, "sea scent", 8_000, source="certificate 1", lot=lot)
    state_peroxide(shop.book, "sea scent", 30_000, source="certificate 2")
    assert "NOT ALLOWED" not in told(run, "label", "check", ready)
    shown = told(run, "material", "show", "sea scent")
    assert f"peroxide value 8 mmol/L, lot {lot} [certificate 1]" in shown
    assert "peroxide value 30 mmol/L [certificate 2]" in shown
    olive = shop.olive
    words = ("material", "peroxide", "sea scent", "8", "--source", "c", "--lot", olive)
    assert f"Lot {olive} is olive oil, not sea scent; look at --lot." in told(run, *words, code=2)
    assert "cannot be; look at the certificate" in told(
        run, "material", "peroxide", "sea scent", "10001", "--source", "c", code=2
    )


# Entry 91: atranol and chloroatranol are prohibited in it (read in a secondary text).
def test_oakmoss_is_asked_for_its_atranols_until_both_are_stated(shop: Shop, ready: str, run: Any) -> None:
    asked = "is free of Atranol and Chloroatranol, which are prohibited, is not stated (III/91;"
    holds(shop, oakmoss=50_000, atranol=0)
    assert asked in told(run, "label", "check", ready)
    holds(shop, oakmoss=50_000, atranol=0, chloroatranol=0)
    said = told(run, "label", "check", ready)
    assert asked not in said
    assert "PROHIBITED" not in said
    holds(shop, oakmoss=50_000, atranol=0, chloroatranol=1)
    assert "PROHIBITED, so it gets no label and is not released: Chloroatranol" in told(run, "label", "check", ready)


def test_6_methyl_coumarin_is_a_question_and_no_line_of_the_label(shop: Shop, ready: str, run: Any) -> None:
    holds(shop, **{"6-methyl coumarin": 100_000, "91-64-5": 100_000})
    said = told(run, "label", "check", ready, "--on", "2026-08-01")
    assert "What 6-Methyl Coumarin, from lot L" in said
    assert "oral products alone (0.003 %)" in said
    assert allergens(run, ready, "--on", "2026-08-01")["declared"] == ["Coumarin"]


@pytest.mark.parametrize(("kind", "asked"), [("additive", True), ("fragrance", False)])
def test_benzyl_alcohol_put_in_as_itself_stands_once_and_is_asked_about(
    shop: Shop, run: Any, kind: str, asked: bool
) -> None:
    code = bars(shop, "BENZYL ALCOHOL", kind=kind, part=kind)
    said = told(run, "label", "check", code)
    assert ("is put in as itself: used to preserve, it is an ordinary ingredient" in said) is asked
    listed = json.loads(run("label", "check", code, "--json").stdout)["label"]["ingredients"]
    assert listed.count("BENZYL ALCOHOL") == 1


def test_what_a_person_says_that_a_name_is_counts_and_is_not_asked_again(shop: Shop, ready: str, run: Any) -> None:
    holds(shop, eucalyptol=300_000, linalole=200_000)
    assert len(allergens(run, ready)["unknown"]) == 2
    means = ("material", "means")
    said = told(run, *means, "Eucalyptol", "--no-entry", "--reason", "1,8-cineole")
    assert "'Eucalyptol' is the name of no entry, and no label counts it, as Nuala said (1,8-cineole)." in said
    run("--as", "Wren Ash", *means, "LINALOLE", "--is", "78-70-6", "--reason", "their letter", "--on", "2026-06-03")
    found = allergens(run, ready)
    assert found["unknown"] == []
    assert found["declared"] == ["Linalool"]  # 4 g of 1.27 kg
    checked = told(run, "label", "check", ready)
    assert "'eucalyptol' is the name of no entry, as Nuala said on 4 Jun 2026 (1,8-cineole)" in checked
    assert "'linalole' is Linalool, as Wren Ash said on 3 Jun 2026 (their letter)" in checked
    shown = told(run, "material", "show", "sea scent")
    assert "contains linalole 20.00 % [allergen statement of 2 Mar 2026]; 'linalole' is Linalool, as Wren Ash" in shown
    again = told(run, "material", "contains", "sea scent", "linalole=1", "--source", "a letter")
    assert "did you mean" not in again
    assert "Not known here" not in again
    number = shop.rows().execute("SELECT max(entry_id) FROM name_meant").fetchone()[0]
    undo(shop.book, number)
    assert [one.split(",")[0] for one in allergens(run, ready)["unknown"]] == ["'linalole'"]
    assert "so not looked up in any list: 'linalole'" in told(run, "label", "approve", ready)


def test_a_name_that_is_said_to_be_prohibited_refuses_the_market(shop: Shop, ready: str, run: Any) -> None:
    holds(shop, lilly_aldehyd=1)
    say_what_it_is(shop.book, Meaning("lilly aldehyd", "BMHCA", ON, "Nuala", "their letter"))
    assert "it holds what is prohibited in European Union" in told(run, "label", "approve", ready, code=1)


def test_a_word_for_one_material_holds_for_no_other_and_before_one_for_all(shop: Shop, ready: str, run: Any) -> None:
    # 8028-48-6 stands in entries 350 and 351 (read), so it tells neither
    said = told(run, "material", "contains", "sea scent", "8028-48-6=10", "--source", SOURCE)
    assert "8028-48-6 is a number of Citrus Aurantium Flower Oil and of Citrus Aurantium Peel Oil" in said
    assert "8028-48-6 is a number of Citrus Aurantium Flower Oil and of" in told(run, "label", "check", ready)
    say_what_it_is(shop.book, Meaning("8028-48-6", "neroli oil", ON, "Nuala", "r", material="olive oil"))
    assert len(allergens(run, ready, "--on", "2026-08-01")["unknown"]) == 1
    say_what_it_is(shop.book, Meaning("8028-48-6", "CITRUS SINENSIS PEEL OIL", ON, "Nuala", "r", material="sea scent"))
    say_what_it_is(shop.book, Meaning("8028-48-6", None, ON, "Nuala", "r"))
    assert allergens(run, ready, "--on", "2026-08-01")["declared"] == ["Citrus Aurantium Peel Oil"]


@pytest.mark.usefixtures("ready")
@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("linalool", "--no-entry"), "'linalool' is known here: it is Linalool (III/84), and nobody says otherwise."),
        (("BMHCA", "--no-entry"), "it is Butylphenyl Methylpropional (II/1666"),
        (("eucalyptole", "--no-entry"), "'eucalyptole' stands in no statement here. Did you mean eucalyptol?"),
        (("eucalyptol", "--is", "linalooll"), "'linalooll' is no entry known here. Did you mean Linalool?"),
        (("eucalyptol",), "What is 'eucalyptol'? Say one of the two: --is ENTRY, or --no-entry."),
        (("eucalyptol", "--is", "citral", "--no-entry"), "Say one of the two"),
    ],
)
def test_what_cannot_be_said_of_a_name_is_one_line(shop: Shop, run: Any, words: tuple[str, ...], says: str) -> None:
    holds(shop, eucalyptol=300_000)
    before = shop.rows().execute("SELECT count(*) FROM entry").fetchone()[0]
    assert says in told(run, "material", "means", *words, "--reason", "r", code=2)
    assert shop.rows().execute("SELECT count(*) FROM entry").fetchone()[0] == before


def test_the_undoing_of_a_word_names_the_labels_that_rest_on_it(shop: Shop, ready: str, run: Any) -> None:
    holds(shop, linalole=200_000)
    say_what_it_is(shop.book, Meaning("linalole", "linalool", ON, "Nuala", "their letter"))
    number = shop.rows().execute("SELECT max(id) FROM entry").fetchone()[0]
    run("label", "approve", ready)
    refused = told(run, "undo", str(number), "--yes", code=1)
    assert f"(Approved the label of batch {ready} for eu) depends on it" in refused


def test_a_scent_called_as_an_entry_with_another_inci_name_is_asked_about(shop: Shop, ready: str, run: Any) -> None:
    holds(shop, linalool=1)
    for name, what in (("verbena oil", "prohibited (II/450)"), ("rose otto", "the entry Rose Flower Oil/Extract")):
        edit_material(shop.book, "sea-scent", MaterialFacts(name, "PARFUM"))
        said = told(run, "label", "check", ready)
        assert f"by its name it would be {what}" in said
        assert "its INCI name, PARFUM, is not one of it" in said
    edit_material(shop.book, "sea-scent", MaterialFacts("rose otto", "ROSA DAMASCENA FLOWER OIL"))
    assert "by its name it would be" not in told(run, "label", "check", ready)


# "BMHCA" is from memory; "78-70-6" and "Citral" were read, and so was the first INCI name and not the second.
def test_what_is_read_from_memory_alone_is_said(shop: Shop, ready: str, run: Any) -> None:
    holds(shop, BMHCA=1, Citral=1, **{"78-70-6": 1})
    said = told(run, "label", "check", ready)
    assert "read from memory, unverified: BMHCA as Butylphenyl Methylpropional." in said
    assert "Of sea scent, lot L" in said
    assert "prohibited in the EU (II/1666" in told(run, "material", "show", "sea scent")
    holds(shop, BMHCA=0, Citral=1)
    assert "read from memory, unverified: BMHCA" not in told(run, "label", "check", ready)
    for inci, memory in (("CITRUS SINENSIS PEEL OIL", False), ("CITRUS SINENSIS OIL", True)):
        edit_material(shop.book, "sea-scent", MaterialFacts("sea scent", inci))
        said = told(run, "label", "check", ready)
        assert ("is Citrus Aurantium Peel Oil is from memory, unverified." in said) is memory


def test_the_question_of_a_name_is_a_command_to_copy(shop: Shop, ready: str, run: Any) -> None:
    holds(shop, **{"1,8-cineole": 10})
    assert 'soapledger material means "1,8-cineole" --is ENTRY' in told(run, "label", "check", ready)


# The inventory gives 84649-98-9 for cinnamon leaf as well as bark (read).
def test_a_number_of_two_parts_of_a_plant_says_so(shop: Shop, ready: str, run: Any) -> None:
    holds(shop, **{"84649-98-9": 10})
    said = told(run, "label", "check", ready)
    assert "84649-98-9 is a number of Cinnamomum Zeylanicum Bark Oil, and of another plant or part as well" in said


def test_a_word_of_before_a_name_was_known_counts_no_more(shop: Shop, ready: str, run: Any) -> None:
    holds(shop, linalool=200_000)
    with shop.book.write("material means") as tx:
        tx.add(NameMeant(name="linalool", on=ON, by="Nuala", reason="not known then"))
        tx.say("Said that linalool is no entry.")
    assert allergens(run, ready)["declared"] == ["Linalool"]
