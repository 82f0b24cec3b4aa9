"""What a look-up says beside its tables keeps to the screen; a command to copy stays on one line."""

import shutil
from collections.abc import Callable
from typing import Any

import pytest
from making import deliver, planned, weighed
from once import once

from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.stock.receive import DeliveryLine

pytestmark = pytest.mark.usefixtures("frozen")
LONG = "oil of olives pressed twice in the cold of a long October by three neighbours"  # 77 signs


@pytest.fixture
def busy(shop: Any, run: Callable[..., Any]) -> Any:
    once(recalled)(shop, run)
    return shop


def recalled(shop: Any, run: Callable[..., Any]) -> None:
    """The worked shop with a material of a long name, and two recalls that have long reasons."""
    weighed(shop.book, planned(shop.book))
    add_material(shop.book, MaterialFacts(LONG, "Olea Europaea Fruit Oil", None, 190_000, 190_000, "certificate"),
                 kind="fat", code="long")  # fmt: skip
    deliver(shop.book, DeliveryLine("long", 1_000_000, "a number that is rather long, with many words in it", 900))
    run("recall", "rehearse", "4471/2")
    run("recall", "open", "4471/2", "--reason", "rancid, said the supplier in a letter of two pages, and in a call")
    run("recall", "open", "--material", "long", "--supplier", "tarnlow", "--reason", "the same")


@pytest.mark.parametrize(
    "words",
    [
        ("recall", "lot", "4471/2"),
        ("recall", "lot", "4471/2", "--hold", "-n"),
        ("recall", "bar", "26-001-4"),
        ("recall", "of", "4471/2", "26-001-4", "--product", "plain bar"),
        ("recall", "of", "--supplier", "tarnlow", "--material", "long"),
        ("recall", "list"),
        ("recall", "show", "R1"),
        ("recall", "show", "R2"),
        ("recall", "show", "R3"),
        ("recall", "note", "R2", "x", "--returned", "1"),
        ("stock",),
        ("stock", "long"),
        ("trace", "26-001-4"),
        ("trace", "long-lot", "--forward"),
        ("trace", "4471/2", "--forward"),
    ],
)
@pytest.mark.parametrize("wide", [80, 60])
def test_every_sentence_fits_the_screen(
    busy: Any, run: Callable[..., Any], monkeypatch: pytest.MonkeyPatch, words: tuple[str, ...], wide: int
) -> None:
    monkeypatch.setenv("COLUMNS", str(wide))
    assert shutil.get_terminal_size().columns == wide
    lot = busy.rows().execute("SELECT max(code) FROM lot WHERE supplier_number LIKE 'a number%'").fetchone()[0]
    lines = run(*(lot if one == "long-lot" else one for one in words)).stdout.splitlines()
    long = [one for one in lines if len(one) > wide and not _row_of_a_table(one)]
    assert [one for one in long if not one.startswith("  soapledger ")] == []
    assert lines


def _row_of_a_table(line: str) -> bool:
    """Two spaces, a first column, and two spaces or more before the next."""
    return line.startswith("  ") and "  " in line[2:].strip()
