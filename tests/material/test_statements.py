"""A supplier's statement as it is typed and as the file the supplier sends."""

from pathlib import Path
from typing import Any

import pytest
from shop import Shop

from ledger.cli.material.statement import read_share, read_statement, read_typed
from ledger.errors import BadInput
from ledger.operations.material.materials import MaterialFacts, add_material


# 1 % is 10 000 parts per million.
@pytest.mark.parametrize(
    ("text", "unit", "ppm", "written"),
    [
        ("32", "percent", 320_000, None),
        ("0,25 %", "percent", 2_500, None),
        ("0.25", "ppm", 1, "0.25 ppm"),
        ("120 ppm", "percent", 120, "120 ppm"),
        ("120", "ppm", 120, "120 ppm"),
        ("120 mg/kg", None, 120, "120 mg/kg"),
        ("0.5 %", "ppm", 5_000, None),
        ("0.5% w/w", None, 5_000, None),
        ("<0.01", "percent", 100, "<0.01 %"),
        ("< 0.01 %", None, 100, "< 0.01 %"),
        ("\u2264 0.01", "percent", 100, "\u2264 0.01 %"),
        ("max. 3", "percent", 30_000, "max. 3 %"),
        ("0.1-0.5", "percent", 5_000, "0.1-0.5 %"),
        ("0,1 \u2013 0,5 %", None, 5_000, "0,1 \u2013 0,5 %"),
        ("0.00001", "percent", 1, "0.00001 %"),  # what is not nothing is never none
        ("0", "percent", 0, None),
        ("none", None, 0, None),
        ("Not detected", "ppm", 0, None),
    ],
)
def test_a_share_is_read_with_its_unit(text: str, unit: str | None, ppm: int, written: str | None) -> None:
    assert read_share(text, what="it", unit=unit) == (ppm, written)


@pytest.mark.parametrize("text", ["traces", "", "-1", "<", "> 5", "1-2-3", "0.5-0.1", "5 g"])
def test_a_share_that_cannot_be_read_is_refused(text: str) -> None:
    with pytest.raises(BadInput):
        read_share(text, what="it")


def test_a_share_without_a_unit_is_asked_for_it() -> None:
    with pytest.raises(BadInput, match="'5': percent or ppm\\? Write the unit, or add --unit percent"):
        read_share("5", what="it", unit=None)


def test_a_bound_may_be_typed() -> None:
    found = read_typed(["linalool=<0.01", "limonene=<=0.5", "87-44-5=3"]).lines
    assert [(one.name, one.share_ppm) for one in found] == [
        ("linalool", 100),
        ("limonene", 5_000),
        ("87-44-5", 30_000),
    ]


def sheet(tmp_path: Path, text: str, unit: str | None = None) -> Any:
    file = tmp_path / "statement.csv"
    file.write_text(text, encoding="utf-8")
    return read_statement(file, unit)


@pytest.mark.parametrize(
    "text",
    [
        "name,percent\nLinalool,33.2\nCitral,0.5\n",
        "Name;Percent\nLinalool;33,2\nCitral;0,5\n",
        "Allergen\t%\nLinalool\t33.2\nCitral\t0.5\n",
        "\ufeffINCI name;CAS no.;ppm\r\nLinalool;78-70-6;332000\r\nCitral;5392-40-5;5000\r\n",
        "CAS-Nr.;Stoff;Gehalt (%);Bemerkung\n78-70-6;Linalool;33,2;\n5392-40-5;Citral;0,5;ja\n",
        "Northfen Essences\nDeclaration LV-9; of 2 Mar\n\nName;Min %;Max %\nLinalool;30;33,2\nCitral;;0,5\n;;\n",
        'name,percent\n"Linalool","33,2"\n"Citral","0,5"\n',
        "Constituant;Teneur %\nLinalool;33,2 %\nCitral;0,5\n",
    ],
)
def test_a_file_is_read_whatever_separates_and_heads_its_columns(tmp_path: Path, text: str) -> None:
    found = [(one.name, one.share_ppm) for one in sheet(tmp_path, text).lines]
    assert found == [("Linalool", 332_000), ("Citral", 5_000)]


def test_a_file_without_a_unit_takes_it_from_the_command(tmp_path: Path) -> None:
    text = "name;content\nLinalool;120\n"
    with pytest.raises(BadInput, match="line 2: the share of Linalool, '120': percent or ppm"):
        sheet(tmp_path, text)
    assert sheet(tmp_path, text, "ppm").lines[0].share_ppm == 120
    assert sheet(tmp_path, text.replace("content", "content %"), "ppm").lines[0].share_ppm == 1_200_000


def test_of_name_and_number_the_one_that_is_known_is_kept(tmp_path: Path) -> None:
    text = "name;cas;%\nCoriander alcohol x;78-70-6;3\nCitral;1-23-4;1\nTerpene x;5989-27-5 / 138-86-3;2\n"
    with pytest.raises(BadInput, match="line 3: 1-23-4 is no CAS number, its last digit does not fit"):
        sheet(tmp_path, text)
    found = sheet(tmp_path, text.replace("1-23-4", "470-82-6")).lines
    assert [one.name for one in found] == ["78-70-6", "Citral", "5989-27-5"]
    assert found[0].called == "Coriander alcohol x, 78-70-6"


@pytest.mark.parametrize(
    ("row", "says"),
    [
        (
            "Linalool;78-70-6;traces",
            "the share of Linalool, 78-70-6 is said as 'traces', which is no figure. Ask the supplier for the most "
            "there may be and write that, as <0.01; write none where there is none.",
        ),
        ("Linalool;78-70-6;tr.", "the share of Linalool, 78-70-6 is said as 'tr.', which is no figure."),
        ("Linalool;78-70-6;< LOQ", "the share of Linalool, 78-70-6 is said as '< LOQ', which is no figure."),
        ("Linalool;78-70-6;+", "the share of Linalool, 78-70-6 is said as '+', which is no figure."),
        ("Linalool;78-70-6;>0,1", "the share of Linalool, 78-70-6 is said as '>0,1', which leaves open how much"),
        ("Linalool;78-70-6;ca. 3", "the share of Linalool, 78-70-6 is said as 'ca. 3', which leaves open how much"),
        ("Linalool;78-70-6;3;2", "it has more cells than there are headings, 'Linalool, 78-70-6, 3, 2'; a figure with"),
        ('"Linalool;78-70-6;3', "a quotation mark is not closed, or more follows a closed one"),
        ('"Lina"lool;78-70-6;3', "a quotation mark is not closed, or more follows a closed one"),
        ("Linalool;78-70-6;3..2", "the share of Linalool, 78-70-6 cannot be read from '3..2'"),
        (
            "Linalool;5989-27-5;3",
            "name and number are not of the same entry: 5989-27-5 is Limonene and Linalool is Linalool. Ask the ",
        ),
        ("Linalool;78-70-7;3", "78-70-7 is no CAS number"),
        (";;3", "it names nothing"),
        ("CITRAL;;3", "CITRAL stands on line 2 already"),
        ("Linalool;;-3", "the share of Linalool cannot be below zero"),
    ],
)
def test_a_line_that_cannot_be_read_is_refused_with_its_number(tmp_path: Path, row: str, says: str) -> None:
    with pytest.raises(BadInput) as error:
        sheet(tmp_path, f"name;cas;%\nCitral;;1\n\n{row}\n")
    assert f"statement.csv, line 4: {says}" in str(error.value).replace("The share", "the share")
    assert "Nothing of the file was booked." in str(error.value)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "has no line of headings"),
        ("Linalool;3\n", "has no line of headings"),
        ("name;%\n", "states no share of anything"),
        ("name;% typical;ppm\nLinalool;1;2\n", "line 1: which column is the share? '% typical', 'ppm' could be"),
    ],
)
def test_a_file_that_is_no_statement_is_refused(tmp_path: Path, text: str, says: str) -> None:
    with pytest.raises(BadInput) as error:
        sheet(tmp_path, text)
    assert says in str(error.value)


STATEMENT = (
    "name;cas;percent\nLinalool;78-70-6;33,2\nd-Limonene;;<0,6\neucalyptol;;1\nLilial;;0\nHICC;;0,0001\nCitral;;-\n"
)


@pytest.fixture
def scent(frozen: Any, shop: Shop) -> Shop:  # noqa: ARG001
    add_material(shop.book, MaterialFacts("sea scent", "PARFUM"), kind="fragrance", code=None)
    return shop


def stated(shop: Shop) -> list[tuple[str, int, str | None]]:
    return [tuple(row) for row in shop.rows().execute("SELECT name, share_ppm, stated FROM constituent ORDER BY id")]


def test_what_was_understood_is_shown_before_it_is_booked(scent: Shop, run: Any, tmp_path: Path) -> None:
    file = tmp_path / "s.csv"
    file.write_text(STATEMENT, encoding="utf-8")
    words = ("material", "contains", "sea scent", "--csv", str(file), "--source", "LV-9")
    done = run(*words, input="n\n", code=1)
    shown = " ".join(done.stdout.split())
    assert "read as name, cas, percent in percent: 5 lines with a share." in shown
    assert "2 Linalool, 78-70-6 33.20 % Linalool" in shown
    assert "3 d-Limonene 0.60 % (stated as <0,6 %) Limonene" in shown
    assert "4 eucalyptol 1.00 % not known here" in shown
    assert "5 Lilial none Butylphenyl Methylpropional" in shown
    assert "6 HICC 0.0001 % PROHIBITED: Hydroxyisohexyl 3-Cyclohexene Carboxaldehyde" in shown
    assert "Neither how much nor that there is none is said of Citral" in shown
    assert stated(scent) == []
    said = " ".join(run(*words, "--yes").stdout.split())
    assert "sea scent contains Linalool, d-Limonene, eucalyptol, HICC as stated (LV-9)." in said
    assert "None of: Lilial." in said
    assert "Prohibited in the EU: HICC is Hydroxyisohexyl 3-Cyclohexene Carboxaldehyde (II/1380" in said
    assert 'soapledger material means "eucalyptol" --is ENTRY --reason WHY, or --no-entry.' in said
    assert stated(scent) == [
        ("Linalool", 332_000, None),
        ("d-Limonene", 6_000, "<0,6 %"),
        ("eucalyptol", 10_000, None),
        ("Lilial", 0, None),
        ("HICC", 1, None),
    ]
    shown = " ".join(run("material", "show", "sea scent").stdout.split())
    assert "contains d-Limonene (counted as Limonene) 0.60 % (stated as <0,6 %) [LV-9]" in shown
    assert "contains no Lilial (counted as Butylphenyl Methylpropional) [LV-9]" in shown


@pytest.mark.usefixtures("scent")
def test_a_line_amiss_books_nothing_of_the_file(scent: Shop, run: Any, tmp_path: Path) -> None:
    file = tmp_path / "s.csv"
    file.write_text(STATEMENT + "Geraniol;;some\n", encoding="utf-8")
    words = ("material", "contains", "sea scent", "--source", "LV-9", "--yes")
    assert "line 8: " in run(*words, "--csv", str(file), code=2).stderr
    assert "in one way" in run(*words, "--csv", str(file), "linalool=3", code=2).stderr
    assert "in one way" in run(*words, code=2).stderr
    file.write_text(STATEMENT.replace("33,2", "99,9"), encoding="utf-8")
    assert "add up to 101.5 %" in run(*words, "--csv", str(file), code=2).stderr
    assert stated(scent) == []


def test_a_figure_with_a_comma_between_commas_is_never_cut_off(tmp_path: Path) -> None:
    """0,4 would be read as none, and a prohibited name with it."""
    with pytest.raises(BadInput, match="line 3: it has more cells than there are headings"):
        sheet(tmp_path, "name,CAS,percent\nLinalool,78-70-6,35\nBMHCA,80-54-6,0,4\n")
    found = sheet(tmp_path, 'name,CAS,percent\nLinalool,78-70-6,"35,2",\n')
    assert [one.share_ppm for one in found.lines] == [352_000]
