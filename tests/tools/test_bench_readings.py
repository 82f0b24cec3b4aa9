"""The table of what can be read at the bench: which batch is asked what, in what order, and in what it is kept."""

import pytest

from ledger.domain.bench.steps import steps
from ledger.domain.tools.readings import FIGURES, READINGS, Figure

BEGIN = ["clean", "scale test"]
MET = ["lye temperature", "fats temperature", "emulsion", "trace"]
COOKED = [
    "pot before cook", "cook start", "cook temperature", "cook end", "pot after cook", "fragrance temperature",
]  # fmt: skip
MOULD = ["poured", "poured weight", "unmoulded", "unmoulded weight"]


@pytest.mark.parametrize(
    ("process", "makes_lye", "gives_bars", "asked"),
    [
        ("cold", True, True, BEGIN + MET + MOULD),
        ("hot", True, True, [*BEGIN, "pot tare", *MET, *COOKED, *MOULD]),
        ("hot", True, False, [*BEGIN, "pot tare", *MET, *COOKED]),  # a dough that is divided
        ("portion", False, True, BEGIN + MOULD),
        ("rebatch", True, True, [*BEGIN, "poured", "unmoulded", "unmoulded weight"]),
        ("infusion", True, False, BEGIN),
    ],
)
def test_what_a_worksheet_asks_in_the_order_of_work(
    process: str, makes_lye: bool, gives_bars: bool, asked: list[str]
) -> None:
    found = steps(process, makes_lye=makes_lye, gives_bars=gives_bars)
    assert [one.what for one in found] == asked
    assert "".join(one.letter for one in found) == "abcdefghijklmnopq"[: len(asked)]


# What stands in ledgers already: a name that changed its unit would be read wrongly there.
KEPT = {
    "mg": {
        "scale test", "pot tare", "pot before cook", "pot after cook", "pot weight", "poured weight",
        "unmoulded weight", "bar weight", "waste at the cut", "spent solids",
    },
    "uL": {"dough volume"},
    "milli-C": {"lye temperature", "fats temperature", "fragrance temperature", "cook temperature",
                "moulding temperature"},
    "milli-pH": {"pH"},
    "ppm": {"free alkali"},
    "min": {"emulsion", "trace", "labour"},
}  # fmt: skip


def test_every_reading_is_kept_in_the_unit_it_always_was() -> None:
    for unit in FIGURES:
        held = {one.what for one in READINGS.values() if isinstance(one.answer, Figure) and one.answer.unit == unit}
        assert held == KEPT[unit]
    assert {one.what for one in READINGS.values() if not isinstance(one.answer, Figure)} == {
        "clean", "mixed", "cook start", "cook end", "poured", "unmoulded", "observation", "step", "trace thickness",
        "second cook start", "second cook end",
    }  # fmt: skip
    assert all(name == one.what for name, one in READINGS.items())


@pytest.mark.parametrize(
    ("unit", "value", "metric", "us"),
    [
        ("mg", 1_320_000, "1 320 g", "46.56 oz"),  # 1 320 / 28.349 523 125 = 46.562
        ("uL", 1_080_000, "1 080 mL", "36.5 fl oz"),  # 1 080 / 29.573 529 562 5 = 36.519
        ("milli-C", 49_000, "49.0 °C", "120.2 °F"),  # 49 x 9 / 5 + 32
        ("milli-pH", 9_600, "9.6", "9.6"),
        ("ppm", 300, "0.030 % as NaOH", "0.030 % as NaOH"),
        ("min", 12, "12 min", "12 min"),
    ],
)
def test_the_example_of_a_unit_is_read_and_shown(unit: str, value: int, metric: str, us: str) -> None:
    one = FIGURES[unit]
    assert one.parse(one.example, what="it") == value
    assert [one.show(value, units).replace("\u00a0", " ") for units in ("metric", "us")] == [metric, us]
