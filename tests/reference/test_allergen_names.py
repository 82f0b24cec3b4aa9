"""The names of the allergens, held against figures of hand and published numbers."""

import csv
from pathlib import Path

import pytest

from ledger.reference import allergens as table
from ledger.reference.allergens import allergen_named, counted_as, essential_oil, names_to_propose, plain, remark_on
from ledger.units.names import near

HERE = Path(table.__file__).parent


def rows(name: str) -> list[dict[str, str]]:
    with (HERE / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def read(name: str) -> str | None:
    found = allergen_named(name)
    return found.name if found else None


# Numbers and names as Annex III has them (transcription of Regulation (EU) 2023/1545, read in a secondary text).
@pytest.mark.parametrize(
    ("written", "label_name"),
    [
        ("Linalool", "Linalool"),
        ("LINALOOL", "Linalool"),
        (" linalol ", "Linalool"),
        ("78-70-6", "Linalool"),
        ("CAS 78-70-6", "Linalool"),
        ("CAS No. 78-70-6", "Linalool"),
        ("CAS-Nr. 78-70-6", "Linalool"),
        ("CAS n° 78-70-6", "Linalool"),
        ("Coriander alcohol x, 78-70-6", "Linalool"),
        ("Linalool (CAS-Nr.: 78‑70‑6)", "Linalool"),
        ("Linalool (80-54-6)", None),  # which of the two it is, a person says
        ("Linalool 80-54-6", None),
        ("Lilial, 78-70-6", None),
        ("Linalool (Lilial)", None),
        ("Linalool, 126-90-9", "Linalool"),  # a number of an isomer, in no table here, says nothing against it
        ("Something, 126-90-9", None),
        ("cinnamon leaf oil, 84649-98-9", None),  # a number of bark and leaf
        ("Lyral / HICC", "Hydroxyisohexyl 3-Cyclohexene Carboxaldehyde"),
        ("Lyral / Linalool", None),
        ("Linalool / something else", None),
        ("LYRAL®", "Hydroxyisohexyl 3-Cyclohexene Carboxaldehyde"),
        ("Lilial™", "Butylphenyl Methylpropional"),
        ("peru balsam", "Myroxylon Pereirae Oil/Extract"),
        ("78‑70‑6", "Linalool"),
        ("cassia oil", "Cinnamomum Cassia Leaf Oil"),  # begins with the letters of CAS
        ("isoeugenol", "Isoeugenol"),
        ("eugenol", "Eugenol"),
        ("α-pinene", "Pinene"),
        ("alpha pinene", "Pinene"),
        ("Alpha-Pinene", "Pinene"),
        ("β-Caryophyllene", "Beta-Caryophyllene"),
        ("betacaryophyllene", "Beta-Caryophyllene"),
        ("dipentene", "Limonene"),
        ("5989-27-5", "Limonene"),
        ("HHCB", "Hexamethylindanopyran"),
        ("1222-05-5", "Hexamethylindanopyran"),
        ("OTNE", "Tetramethyl Acetyloctahydronaphthalenes"),
        ("methyl heptine carbonate", "Methyl 2-Octynoate"),
        ("mousse de chêne", "Evernia Prunastri Extract"),
        ("Lavandula angustifolia oil", "Lavandula Oil/Extract"),
        ("8000-28-0", "Lavandula Oil/Extract"),
        ("BMHCA", "Butylphenyl Methylpropional"),
        ("80-54-6", "Butylphenyl Methylpropional"),
        ("31906-04-4", "Hydroxyisohexyl 3-Cyclohexene Carboxaldehyde"),
        ("amylcinnamaldehyde", "Amyl Cinnamal"),  # a name known here before the long table was
        ("citronellol (d/l)", "Citronellol"),
        ("eucalyptol", None),
        ("methyl eugenol", None),
        ("93-15-2", None),
        ("", None),
    ],
)
def test_a_name_is_known_however_it_is_written(written: str, label_name: str | None) -> None:
    assert read(written) == label_name


# Two orange entries share these two, and the inventory gives the last two for another plant or part as well (read).
@pytest.mark.parametrize("number", ["72968-50-4", "8028-48-6", "84649-98-9", "8000-48-4"])
def test_a_number_of_more_than_one_oil_is_not_known(number: str) -> None:
    assert read(number) is None


# Names that stand in the regulation as transcribed and were missed before, one of each entry; by their INCI names.
@pytest.mark.parametrize(
    ("inci", "label_name"),
    [
        ("ROSA DAMASCENA FLOWER OIL", "Rose Flower Oil/Extract"),
        ("JASMINUM OFFICINALE OIL", "Jasmine Oil/Extract"),
        ("SANTALUM ALBUM OIL", "Santalum Album Oil"),
        ("CITRUS AURANTIUM AMARA FLOWER OIL", "Citrus Aurantium Flower Oil"),
        ("CITRUS SINENSIS PEEL OIL", "Citrus Aurantium Peel Oil"),
        ("LAURUS NOBILIS LEAF OIL", "Laurus Nobilis Leaf Oil"),
        ("CINNAMOMUM CASSIA LEAF OIL", "Cinnamomum Cassia Leaf Oil"),
        ("NARCISSUS POETICUS EXTRACT", "Narcissus Extract"),
        ("TURPENTINE", "Turpentine"),
        ("LIPPIA CITRIODORA ABSOLUTE", "Lippia Citriodora Absolute"),
        ("MYROXYLON PEREIRAE OIL", "Myroxylon Pereirae Oil/Extract"),
        ("PINUS MUGO TWIG OIL", "Pinus Mugo"),
        ("PINUS PUMILA TWIG LEAF OIL", "Pinus Pumila"),
        ("EVERNIA PRUNASTRI EXTRACT", "Evernia Prunastri Extract"),
        ("EVERNIA FURFURACEA EXTRACT", "Evernia Furfuracea Extract"),
        ("Pogostemon Cablin Oil", "Pogostemon Cablin Oil"),
        ("Lavandula angustifolia flower/leaf/stem extract", "Lavandula Oil/Extract"),
        ("LIPPIA CITRIODORA LEAF OIL", "Verbena Oil"),
        ("LAURUS NOBILIS SEED OIL", "Laurel Seed Oil"),
    ],
)
def test_a_natural_oil_is_known_by_its_inci_name(inci: str, label_name: str) -> None:
    assert read(inci) == label_name
    assert essential_oil(inci)


# Plants and parts beside those of the entries: leaf and bark, other species (the facts list them as not covered).
@pytest.mark.parametrize(
    "inci",
    [
        "CINNAMOMUM ZEYLANICUM LEAF OIL",
        "CINNAMOMUM CASSIA BARK OIL",
        "LAVANDULA LATIFOLIA OIL",
        "EUCALYPTUS CITRIODORA OIL",
        "LAURUS NOBILIS FRUIT OIL",
        "MELALEUCA ALTERNIFOLIA LEAF OIL",
        "OLEA EUROPAEA FRUIT OIL",
        "LAVANDULA ANGUSTIFOLIA FLOWER",
    ],
)
def test_a_plant_or_part_of_no_entry_is_none(inci: str) -> None:
    assert read(inci) is None


def test_every_row_is_found_under_its_own_entry_and_has_a_source() -> None:
    synonyms, oils = rows("allergen_synonyms.csv"), rows("allergen_oils.csv")
    assert [row for row in synonyms if read(row["synonym"]) != row["name"]] == []
    assert [row for row in oils if read(row["inci"]) != row["name"]] == []
    assert all(row["source"] and row["status"] for row in (*synonyms, *oils))
    assert {row["status"] for row in (*synonyms, *oils)} == {"read in a secondary text", "from memory, unverified"}


def test_the_numbers_carry_their_check_digit() -> None:
    """CAS registry numbers: the digits before the last, weighted 1, 2, 3 … from the right, sum to it modulo 10."""
    numbers = [row["synonym"] for row in rows("allergen_synonyms.csv") if plain(row["synonym"]).isdigit()]
    numbers += [one.strip() for row in rows("allergens.csv") for one in row["cas"].split(";") if one.strip()]
    assert len(set(numbers)) > 100
    for number in numbers:
        *digits, check = [int(sign) for sign in plain(number)]
        assert sum(place * digit for place, digit in enumerate(reversed(digits), start=1)) % 10 == check, number


def test_a_group_is_counted_as_one_and_what_is_not_known_as_itself() -> None:
    assert counted_as("neral") == counted_as("Geranial") == counted_as("5392-40-5") == counted_as("CITRAL")
    assert counted_as("alpha-pinene") != counted_as("alpha-terpineol")
    assert counted_as("Methyl Eugenol") == counted_as("methyl-eugenol") != counted_as("eugenol")


def test_a_name_that_leaves_a_question_says_which() -> None:
    assert remark_on("rhodinol") == "a mixture; ask the supplier"
    assert remark_on("balsam of Peru").startswith("crude balsam is prohibited")
    assert remark_on("linalool") == ""


@pytest.mark.parametrize(("typed", "meant"), [("linalol", "linalol"), ("limonen", "Limonene"), ("cumarine", "cumarin")])
def test_label_names_and_synonyms_are_proposed_and_no_numbers(typed: str, meant: str) -> None:
    assert near(typed, names_to_propose(), 1, cutoff=0.85) == [meant]
    assert near("78-70-7", names_to_propose(), 1, cutoff=0.85) == []


def test_every_name_of_the_sample_season_is_known() -> None:
    with (Path(__file__).parents[2] / "sample_data" / "contents.csv").open(encoding="utf-8", newline="") as file:
        names = {row["name"] for row in csv.DictReader(file)}
    assert len(names) > 5
    assert [name for name in names if read(name) is None] == []


def test_a_common_name_in_brackets_or_a_sign_behind_does_not_hide_an_oil() -> None:
    for inci in ("LAVANDULA ANGUSTIFOLIA (LAVENDER) OIL", "Lavandula Angustifolia Oil*", "Lavandula Angustifolia Oil."):
        found = allergen_named(inci)
        assert found is not None
        assert found == allergen_named("LAVANDULA ANGUSTIFOLIA OIL"), inci
        assert essential_oil(inci)
    assert not essential_oil("OLEA EUROPAEA (OLIVE) FRUIT OIL")
