"""One reader for recipes, assessments, labels and sheets: the same odd file gets the same answer from each."""

from collections.abc import Callable
from pathlib import Path

import pytest

from ledger.documents.kit.layout import label_layout, sheet_layout
from ledger.domain.recipe.reader import read_recipe
from ledger.domain.release.assessment import read_assessment
from ledger.errors import BadInput
from ledger.units.toml_reader import TomlFile

# Each kind of file with its first line, a number of it and the most that number may be.
RECIPE = """name = "Plain"
code = "plain"
process = "cold"
superfat = 5
fats_total = "1000 g"
best_before_months = 24
alkali = {material = "soda", kind = "NaOH"}
water = {material = "water", per_alkali = 2}

[[fat]]
material = "olive"
percent = 100

[[additive]]
material = "clay"
grams = 5
"""
ASSESSMENT = """assessor = "R. Lund"
reference = "QR-114"
on = 2026-03-03
process = ["cold"]
markets = ["eu"]
durability_months = 24

[[ingredient]]
inci = "AQUA"
highest_percent = 60
"""
SHEET = """what = "sheet"
paper = "A4"
columns = 2
rows = 3
left_mm = 5
top_mm = 5
pitch_x_mm = 100
pitch_y_mm = 90
width_mm = 90
height_mm = 80
cut_marks = true
"""
LABEL = """what = "label"
for = "rack"
code = "qr"
width_mm = 100
height_mm = 60
law_min_x_height_mm = 1.2
law_max_pt = 10
product_pt = 14
product_min_pt = 8
what_pt = 8

[[panel]]
name = "all"
x_mm = 5
y_mm = 5
width_mm = 90
height_mm = 50
fields = ["product", "batch_code", "made_on", "ready_on", "code"]
"""
# kind: its text, a number in it as it stands, what that number may be at the most, and a word near one it knows
KINDS = {
    "recipe": (RECIPE, "best_before_months = 24", "above 0 up to 600", ("superfat", "superfatt")),
    "assessment": (ASSESSMENT, "durability_months = 24", "above 0 up to 100000", ("assessor", "asessor")),
    "label": (LABEL, "law_max_pt = 10", "from 4 up to 30", ("what_pt", "wat_pt")),
    "sheet": (SHEET, "pitch_x_mm = 100", "from 0 up to 300", ("columns", "colums")),
}


@pytest.fixture(params=KINDS)
def kind(request: pytest.FixtureRequest) -> str:
    return str(request.param)


@pytest.fixture
def read(kind: str, tmp_path: Path) -> Callable[[str], object]:
    """Reads a text of that kind; every answer calls the file mine.toml."""

    def of_a_layout(text: str) -> object:
        path = tmp_path / "mine.toml"
        path.write_text(text, encoding="utf-8")
        return (label_layout if kind == "label" else sheet_layout)(str(path))

    if kind == "recipe":
        return lambda text: read_recipe(text, file="mine.toml")
    if kind == "assessment":
        return lambda text: read_assessment(text, file="mine.toml")
    return of_a_layout


def said(read: Callable[[str], object], text: str) -> str:
    with pytest.raises(BadInput) as caught:
        read(text)
    assert len(str(caught.value)) < 500  # one line, and not the thousand digits again
    return str(caught.value)


def line_of(text: str, start: str) -> int:
    return next(number for number, line in enumerate(text.splitlines(), 1) if line.startswith(start))


def test_each_is_read_and_a_byte_order_mark_is_passed_over(kind: str, read: Callable[[str], object]) -> None:
    text = KINDS[kind][0]
    assert read("\ufeff" + text) == read(text)


def test_a_fault_behind_a_byte_order_mark_stands_on_its_line(kind: str, read: Callable[[str], object]) -> None:
    found = said(read, "\ufeffqqq = 1\n" + KINDS[kind][0])
    assert found.startswith("mine.toml, line 1: 'qqq' is not known here; known: ")


def test_what_is_no_toml_is_named_by_line_and_column(kind: str, read: Callable[[str], object]) -> None:
    text, number, *_ = KINDS[kind]
    key = number.split(" = ")[0]
    line, column = line_of(text, key), len(key) + 4  # the second = stands two behind the first, which is key + 2
    odd = text.replace(f"{key} = ", f"{key} = = ")
    assert said(read, odd).startswith(f"mine.toml, line {line}, column {column}: the file cannot be read")
    cut = text + "name = "
    assert said(read, cut).startswith(f"mine.toml, line {len(cut.splitlines())}, the end: the file cannot be read")


# Python reads 4300 decimal digits and no more; hexadecimal ones without end, but cannot show them in decimal.
@pytest.mark.parametrize(
    ("number", "says"),
    [
        ("9" * 4301, ": the file cannot be read; a number in it is too long, or its brackets too deep."),
        ("9" * 4300, "{at}: {key} cannot be as large as that; write a number {bounds}."),
        ("0x" + "f" * 5000, "{at}: {key} cannot be as large as that; write a number {bounds}."),
        (str(2**128), "{at}: {key} cannot be as large as that; write a number {bounds}."),
        (str(2**128 - 1), "{at}: {key} = 340282366920938463463374607431768211455 cannot be; write a number {bounds}."),
        ("1e400", "{at}: {key} = inf cannot be; write a number {bounds}."),
        ("nan", "{at}: {key} = nan cannot be; write a number {bounds}."),
        ("-1", "{at}: {key} = -1 cannot be; write a number {bounds}."),
        ("[" * 20000, ": the file cannot be read; a number in it is too long, or its brackets too deep."),
        ('"5"', "{at}: {key} is a number; write it without quotes or unit."),
        ("true", "{at}: {key} is a number; write it without quotes or unit."),
        ("2026-03-03", "{at}: {key} is a number; write it without quotes or unit."),
        ("[5]", "{at}: {key} is a number; write it without quotes or unit."),
        ("{a = 5}", "{at}: {key} is a number; write it without quotes or unit."),
    ],
    ids=lambda value: str(value)[:12],
)
def test_an_odd_number_gets_the_same_answer_in_each(
    kind: str, read: Callable[[str], object], number: str, says: str
) -> None:
    text, written, bounds, _ = KINDS[kind]
    key = written.split(" = ")[0]
    at = f", line {line_of(text, key)}"
    assert said(read, text.replace(written, f"{key} = {number}")) == "mine.toml" + says.format(
        at=at, key=key, bounds=bounds
    )


def test_an_unknown_word_gets_a_near_guess_in_each(kind: str, read: Callable[[str], object]) -> None:
    text, _, _, (known, typed) = KINDS[kind]
    found = said(read, text.replace(f"{known} =", f"{typed} =", 1))
    assert found == f"mine.toml, line {line_of(text, known)}: '{typed}' is not known here; did you mean {known}?"


@pytest.mark.parametrize(
    ("kind", "table", "word"),
    [("recipe", "fat", "superfat = 5"), ("assessment", "ingredient", "until = 2029-01-01"),
     ("label", "panel", "law_max_pt = 10")],
    indirect=["kind"],
)  # fmt: skip
def test_a_word_of_the_head_below_a_part_is_sent_there(
    kind: str, read: Callable[[str], object], table: str, word: str
) -> None:
    text = KINDS[kind][0].replace(f"[[{table}]]\n", f"[[{table}]]\n{word}\n", 1)
    line, key = text.splitlines().index(f"[[{table}]]") + 2, word.split(" = ")[0]
    assert said(read, text) == (
        f"mine.toml, line {line} [{table}]: '{key}' is not known here; it belongs at the head of the file, above the "
        "first line in brackets."
    )


@pytest.mark.parametrize(
    ("kind", "table", "written"),
    [("recipe", "additive", "[[additive]]"), ("recipe", "mould", "[mould]"),
     ("assessment", "notification", "[[notification]]"), ("label", "panel", "[[panel]]")],
    indirect=["kind"],
)  # fmt: skip
def test_a_part_written_as_a_word_is_told_how_it_is_written(
    kind: str, read: Callable[[str], object], table: str, written: str
) -> None:
    text = f"{table} = 5\n" + KINDS[kind][0].split(f"[[{table}]]", 1)[0]
    assert said(read, text) == f"mine.toml, line 1: '{table}' is a part of its own; write it as {written}."


def test_a_part_that_stands_twice_is_named_where_it_does() -> None:
    text = RECIPE + "\n[[cure]]\ndays = 28\n\n[[cure]]\ndays = 30\n"
    with pytest.raises(BadInput) as caught:
        read_recipe(text, file="mine.toml")
    last = len(text.splitlines()) - 1
    assert str(caught.value) == f"mine.toml, line {last} [cure]: cure stands here a second time; a recipe has one."


def test_a_list_and_a_range_of_wrong_things() -> None:
    head = TomlFile('some = ["a", 5]\nnone = []\nup = [3, 2]\nlong = [1, 2, 3]\nodd = ["1", 2]\n', "f.toml").head
    for key in ("some", "none", "up", "long", "odd"):
        with pytest.raises(BadInput, match=rf"f\.toml, line \d: {key} is a "):
            head.listed(key, '["a"]', needed=True) if key in ("some", "none") else head.pair(
                key, "[2, 3]", lambda one, key=key: one.word(key) and None
            )
    assert head.listed("none", '["a"]') == ()  # said, and nothing in it
    assert (head.listed("left", '["a"]'), head.pair("left", "[2, 3]", lambda one: one.whole("left"))) == (None, None)
    with pytest.raises(BadInput, match=r"f\.toml, line 3: up runs from the lower to the higher; write up = \[2, 3\]\."):
        head.pair("up", "[2, 3]", lambda one: one.whole("up"))


def test_a_cook_takes_no_yes_for_a_number_and_its_range_may_be_one_time() -> None:
    with pytest.raises(BadInput, match=r"\[limits\]: cook_minutes is a number; write it without quotes or unit\."):
        read_recipe(RECIPE + "[limits]\ncook_minutes = [true, 120]\n", file="mine.toml")
    assert read_recipe(RECIPE + "[limits]\ncook_minutes = [45, 45]\n", file="m.toml").limits.cook_minutes == (45, 45)


def test_nothing_else_reads_toml() -> None:
    ledger = Path(__file__).parents[2] / "ledger"
    reading = [path.name for path in ledger.rglob("*.py") if "import tomllib" in path.read_text(encoding="utf-8")]
    assert reading == ["toml_reader.py"]
