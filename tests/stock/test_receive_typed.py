"""receive at the command line: flags, a CSV file, prompts, and what bad input gets."""

import json
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from ledger.operations.people.suppliers import SupplierDetails, add_supplier
from ledger.rows.lot import find_lot
from ledger.storage.personal import PersonDetails

pytestmark = pytest.mark.usefixtures("frozen")

OLIVE = "olive oil; 5 kg; lot 9902; 32.50; best before 2027-08-31; sap 186-190; certificate CoA 77"
LYE = "sodium; 1 kg; lot unknown; 8; purity 99.2"


def lots(shop: Any) -> list[Any]:
    rows = shop.rows()
    codes = [row[0] for row in rows.execute("SELECT code FROM lot WHERE code LIKE 'L%' ORDER BY id")]
    return [find_lot(rows, code) for code in codes][4:]  # the shop's own delivery has four


def test_a_delivery_by_flags(shop: Any, run: Any) -> None:
    done = run(
        "receive", "tarn", "--line", OLIVE, "--line", LYE, "--note", "D-9", "--carriage", "4.05", "--accept",
        "--on", "2026-05-20",
    )  # fmt: skip
    assert done.stdout.startswith("2 lots from Tarnlow Oils. Write these codes on the containers:")
    olive, lye = lots(shop)
    assert (olive.supplier_number, olive.best_before, olive.certificate) == ("9902", date(2027, 8, 31), "CoA 77")
    assert (olive.sap_low_mg_per_kg, olive.sap_high_mg_per_kg) == (186_000, 190_000)
    assert (lye.supplier_number, lye.purity_ppm, lye.status) == (None, 992_000, "accepted")
    # 4.05 over 32.50 and 8.00: a tenth of a tenth each, 3.25 and 0.80
    assert [one.cost_minor for one in (olive, lye)] == [3575, 880]
    assert olive.code in done.stdout
    assert "unknown" in done.stdout


def test_a_line_that_waits_is_named_by_number_or_by_material(shop: Any, run: Any) -> None:
    run("receive", "tarn", "--line", OLIVE, "--line", LYE, "--accept", "--except", "2=drum dented")
    done = run("receive", "tarn", "--line", LYE, "--accept", "--except", "sodium=damp")
    assert [one.status for one in lots(shop)] == ["accepted", "on hold", "on hold"]
    assert "lot accept L7-9 --reason" in done.stdout  # the seventh lot: 7 x 2 = 14, 14 mod 11 = 3, 12 - 3 = 9


@pytest.mark.parametrize("text", ["3=dented", "dented", "2=", "0=dented"])
@pytest.mark.usefixtures("shop")
def test_an_exception_that_fits_no_line_is_bad_input(run: Any, text: str) -> None:
    assert (
        f"--except '{text}'" in run("receive", "tarn", "--line", OLIVE, "--line", LYE, "--except", text, code=2).stderr
    )


def test_a_delivery_from_a_spreadsheet(shop: Any, run: Any, tmp_path: Path) -> None:
    # semicolons and a comma before the decimals, as a European spreadsheet saves it, with its mark at the start
    text = "Material;Quantity;Lot;Cost;Hold\r\nolive oil;5 kg;9902;32,50;\r\n;;;;\r\nwater;2 kg;unknown;1;cloudy\r\n"
    (tmp_path / "d.csv").write_bytes(b"\xef\xbb\xbf" + text.encode())
    run("receive", "tarn", "--csv", "d.csv", "--accept")
    olive, water = lots(shop)
    assert (olive.supplier_number, olive.cost_minor, olive.status) == ("9902", 3250, "accepted")
    assert (water.supplier_number, water.status) == (None, "on hold")


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("material,quantity,lott\n", "d.csv, line 1, column 3: 'lott' is not known"),
        ("material,lot\nwater,1\n", "d.csv, line 1: the column 'quantity' is missing"),
        ("material,quantity,lot,lot\n", "d.csv, line 1, column 4: 'lot' stands there twice"),
        ("material,quantity,lot\nwater,1 kg,A\nwatr,1 kg,A\n", "d.csv, line 3, column 1 (material): "),
        ("material,quantity,lot\nwater,1 kgs,A\n", "d.csv, line 2, column 2 (quantity): "),
        ("material,quantity,lot\nwater,1,284,A\n", "d.csv, line 2: there are more values than columns"),
        ("material,quantity,lot,cost\nwater,1 kg,A,1.234\n", "d.csv, line 2, column 4 (cost): "),
        ("material,quantity,lot,best_before\nwater,1 kg,A,soon\n", "d.csv, line 2, column 4 (best_before): "),
        ("material,quantity,lot\nwater,1 kg,\n", "d.csv, line 2, column 3 (lot): water has no lot number"),
        ("material,quantity\nwater,1 kg\n", "d.csv, line 2: water has no lot number"),
        ('material,quantity,lot\n"wat\ner",1 kg,A\n', "d.csv, line 3, column 1 (material): "),
        ("material,quantity,lot\nwater\n", "d.csv, line 2, column 2 (quantity): "),
        ("material,quantity,lot\n", "at least one line"),
        ("", "at least one line"),
    ],
)
def test_a_faulty_file_is_named_with_line_and_column(shop: Any, run: Any, tmp_path: Path, text: str, says: str) -> None:
    (tmp_path / "d.csv").write_text(text, encoding="utf-8")
    error = run("receive", "tarn", "--csv", "d.csv", code=2).stderr
    assert says in error
    assert error.count("\n") == 1  # one clear line
    assert lots(shop) == []


@pytest.mark.usefixtures("shop")
def test_a_file_that_cannot_be_read_is_bad_input(run: Any, tmp_path: Path) -> None:
    assert "cannot be read" in run("receive", "tarn", "--csv", "none.csv", code=2).stderr
    (tmp_path / "d.csv").write_bytes("material,quantity\nhuile d'été,1 kg".encode("latin-1"))
    assert "CSV UTF-8" in run("receive", "tarn", "--csv", "d.csv", code=2).stderr
    (tmp_path / "d.csv").write_text("material,quantity\n" + "x" * 200_000 + ",1 kg\n", encoding="utf-8")
    assert "cannot be read as CSV" in run("receive", "tarn", "--csv", "d.csv", code=2).stderr


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("olive oil", "write it as"),
        ("olive oil; 5 kg; 30", "olive oil has no lot number"),
        ("olive oil; 5 kg; lot; 30", "olive oil has no lot number"),
        ("olive oil; 5 kg; lot 1; 30; 31", "'31' is a second cost"),
        ("olive oil; 5 kg; lot 1; lot 2", "'lot 2' is a second lot"),
        ("olive oil; 5; lot 1", "5 of what?"),
        ("sodium; 1 L; lot 1", "sodium hydroxide is weighed, never measured by volume"),
        ("olive oil; 5 kg; lot 1; sap x", "saponification value"),
        ("sodium; 1 kg; lot 1; purity x", "purity"),
        ("olve oil; 5 kg; lot 1", "Did you mean"),
    ],
)
def test_a_faulty_line_is_quoted(shop: Any, run: Any, line: str, says: str) -> None:
    error = run("receive", "tarn", "--line", line, code=2).stderr
    assert error.startswith(f"--line '{line}': ")
    assert says in error
    assert lots(shop) == []


@pytest.mark.usefixtures("shop")
def test_a_delivery_has_come_and_stands_in_one_place(run: Any) -> None:
    assert "has not come yet" in run("receive", "tarn", "--line", OLIVE, "--on", "2026-06-02", code=2).stderr
    assert "not both" in run("receive", "tarn", "--line", OLIVE, "--csv", "d.csv", code=2).stderr
    assert "supplier add" in run("receive", "Brackwater", "--line", OLIVE, code=2).stderr


def test_a_delivery_by_prompts_with_one_line_that_waits(shop: Any, run: Any) -> None:
    typed = [
        "olive oil", "5 kgs", "9902", "32.50", "", "",  # a unit nobody knows: the line is asked for again
        "olive oil", "5 kg", "9902", "32.50", "31 Aug 2027", "186-190",
        "sodium", "1 kg", "unknown", "8", "", "99.2",
        "water", "2 kg", "W-1", "", "",
        "",
        "n", "2 3", "not as ordered",
    ]  # fmt: skip
    done = run("receive", "tarn", input="\n".join(typed) + "\n")
    assert "write 5 kg" in done.stderr
    found = [(one.material, one.supplier_number, one.cost_minor, one.status) for one in lots(shop)]
    assert found == [
        ("olive oil", "9902", 3250, "accepted"),
        ("sodium hydroxide", None, 800, "on hold"),
        ("water", "W-1", None, "on hold"),
    ]


@pytest.mark.parametrize(("answers", "status"), [(("y",), "accepted"), (("n", ""), "quarantine")])
def test_one_question_accepts_all_or_none(shop: Any, run: Any, answers: tuple[str, ...], status: str) -> None:
    run("receive", "tarn", input="\n".join(["water", "2 kg", "W-1", "1", "", "", *answers]) + "\n")
    assert [one.status for one in lots(shop)] == [status]


def test_her_own_growing_needs_no_number_and_no_cost(shop: Any, run: Any) -> None:
    add_supplier(shop.book, SupplierDetails("Own garden", PersonDetails()), own=True, code="garden")
    done = run("receive", "garden", input="water\n2 kg\n\n\n\n\ny\n")
    assert " own " in done.stdout
    (lot,) = lots(shop)
    assert (lot.supplier_number, lot.number_unknown, lot.cost_minor) == (None, False, 0)


def test_a_number_that_came_before_is_asked_about_and_kept_apart(shop: Any, run: Any) -> None:
    again = ("receive", "tarn", "--line", "olive oil; 5 kg; lot LOT 4471-2; 30")
    run(*again, input="n\n", code=1)
    assert lots(shop) == []
    assert f"as {shop.olive}" in run(*again, "--yes").stderr
    assert [one.supplier_number for one in lots(shop)] == ["LOT 4471-2"]


def test_json_tells_codes_and_quantities(shop: Any, run: Any) -> None:
    (one,) = json.loads(run("receive", "tarn", "--line", LYE, "--json").stdout)
    assert one == {
        "code": lots(shop)[0].code, "material": "sodium hydroxide", "quantity": 1_000_000, "counted": False,
        "supplier_number": None, "status": "quarantine", "cost_minor": 800, "carriage_minor": 0,
    }  # fmt: skip


@pytest.mark.parametrize(
    ("quantity", "mg", "said"),
    [
        # the middle of 0.910 to 0.916 g/mL is 0.913
        (
            "1 L",
            913_000,
            "1 L of olive oil is 913 g, at 0.913 g/mL, the middle of 0.910 to 0.916, at 20 °C (olive: CXS",
        ),
        ("750 mL", 684_750, "is 684.8 g"),
        ("1 cup", 216_005, "is 216 g"),  # 236.588 236 5 x 0.913 = 216.005 06
        ("1 metric cup", 228_250, "is 228.3 g"),
        ("1 lb 12 oz", 793_787, ""),  # 28 x 28.349 523 125 g
    ],
)
def test_a_volume_is_reckoned_by_the_published_density_and_says_so(
    shop: Any, run: Any, quantity: str, mg: int, said: str
) -> None:
    told = run("receive", "tarn", "--line", f"olive oil; {quantity}; lot 1", "--accept").stderr
    assert said in told
    assert bool(said) == bool(told)
    assert [one.on_hand for one in lots(shop)] == [mg]


def test_its_own_density_goes_before_the_published_one(shop: Any, run: Any) -> None:
    run("material", "edit", "olive", "--density", "0.92")
    told = run("receive", "tarn", "--line", "olive oil; 500 mL; lot 1", "--accept").stderr
    assert told == "500 mL of olive oil is 460 g, at 0.920 g/mL, its own density.\n"
    assert [one.on_hand for one in lots(shop)] == [460_000]


def test_no_density_is_borrowed_from_another_thing(shop: Any, run: Any) -> None:
    for name, kind in (("almond milk", "liquid"), ("rose geranium oil", "fragrance"), ("kaolin", "colourant")):
        run("material", "add", name, "--kind", kind)
        error = run("receive", "tarn", "--line", f"{name}; 2 tsp; lot 1", code=2).stderr
        assert f"the density of {name} is not known" in error
    assert lots(shop) == []


@pytest.mark.parametrize("typed", ["2027-02", "Feb 2027"])
def test_a_best_before_of_a_month_is_typed_and_shown_as_one(shop: Any, run: Any, tmp_path: Path, typed: str) -> None:
    run("receive", "tarn", "--line", f"olive oil; 5 kg; lot 1; best before {typed}", "--accept")
    (tmp_path / "d.csv").write_text(f"material,quantity,lot,best_before\nolive,5 kg,2,{typed}\n")
    run("receive", "tarn", "--csv", "d.csv", "--accept")
    found = lots(shop)
    assert [one.best_before for one in found] == [date(2027, 2, 28)] * 2
    assert run("stock", "olive").stdout.count("end Feb 2027") == 2
    assert "end Feb 2027" in run("lot", "show", found[0].code).stdout


@pytest.mark.parametrize(("density", "mg"), [("0.2", 1_972), ("0.199", None)])  # 9.857 843 mL of loose mica
def test_a_powder_goes_by_the_spoon_once_its_own_density_is_known(
    shop: Any, run: Any, density: str, mg: int | None
) -> None:
    run("material", "add", "mica", "--kind", "colourant")
    if mg is None:
        assert "cannot be" in run("material", "edit", "mica", "--density", density, code=2).stderr
        return
    run("material", "edit", "mica", "--density", density)
    assert (
        "2 tsp of mica is 1.97 g, at 0.200 g/mL, its own density."
        in run("receive", "tarn", "--line", "mica; 2 tsp; lot 1", "--accept").stderr
    )
    # 2 x 4.928 92 mL x 0.2 g/mL = 1.971 568 g
    assert [one.on_hand for one in lots(shop)] == [mg]


def test_the_answer_and_the_lot_say_by_what_the_carriage_was_shared(shop: Any, run: Any) -> None:
    words = ("--line", "olive oil; 5 kg; lot 9; 30", "--line", "coconut oil; 1 kg; lot 8; 6", "--accept")
    done = run("receive", "tarn", *words, "--carriage", "12", "--carriage-by", "mass")
    olive, coconut = lots(shop)
    # 12.00 over 5 and 1 kg
    shared = f"The carriage, 12.00 EUR, is shared by mass: {olive.code} 10.00 EUR, {coconut.code} 2.00 EUR."
    assert shared in " ".join(done.stdout.split())
    shown = run("lot", "show", olive.code).stdout
    assert "cost           40.00 EUR, with its share by mass of 12.00 EUR carriage" in shown
    done = run("receive", "tarn", "--line", "olive oil; 1 kg; lot 7", "--carriage", "5")
    assert "is in no lot, since no line says what it cost" in " ".join(done.stdout.split())
    assert "cost           not known" in run("lot", "show", lots(shop)[2].code).stdout


@pytest.mark.usefixtures("shop")
@pytest.mark.parametrize(
    ("words", "error"),
    [
        (
            ("--carriage", "12", "--carriage-by", "weight"),
            "'weight' is not a way to share the carriage; write value or",
        ),
        (("--carriage-by", "mass"), "give the carriage too"),
    ],
)
def test_carriage_shared_by_what_there_is_not(run: Any, words: tuple[str, ...], error: str) -> None:
    assert error in run("receive", "tarn", "--line", OLIVE, *words, code=2).stderr
