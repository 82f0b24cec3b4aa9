"""What starts fast stays fast: --help and the answers load none of the heavy libraries."""

import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from ledger.cli.commands import EVERY

HEAVY = ("sqlmodel", "sqlalchemy", "reportlab", "rich", "numpy", "stdnum")
PROBE = """
import sys
from ledger.cli.main import run
for words in {commands}:
    sys.argv = ["soapledger", *words]
    try:
        run()
    except SystemExit as end:
        assert end.code == 0, (words, end.code)
    print("LOADED", *[name for name in {heavy} if name in sys.modules])
"""

DEFINED = """
ours = [module for name, module in sys.modules.items() if name.startswith("ledger.")]
kinds = {one for module in ours for one in vars(module).values() if isinstance(one, type)}
made = [one for one in kinds if one.__module__.startswith("ledger.") and hasattr(one, "__dataclass_fields__")]
print("DEFINED", *(one.__name__ for one in made))
"""


def loaded(folder: Path, *commands: str) -> list[list[str]]:
    """Which heavy libraries are loaded after each of some commands, one after another in an interpreter of their own.

    What one loads the next has: where the last finds none, none of them loads any.
    """
    probe = PROBE.format(commands=[words.split(" ") for words in commands], heavy=HEAVY)
    done = subprocess.run([sys.executable, "-c", probe], cwd=folder, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    told = [line.split()[1:] for line in done.stdout.splitlines() if line.startswith("LOADED")]
    assert len(told) == len(commands)
    return told


def test_help_and_version_load_no_heavy_library(tmp_path: Path) -> None:
    assert loaded(tmp_path, "--help", "--version", "batch --help") == [[], [], []]


def test_an_answer_loads_no_heavy_library(tmp_path: Path, shop: Any) -> None:
    looks = ("stock", "stock --json", "batch list", "cure list", "supplier list", "history")
    asked = (*looks, "recall lot 4471/2", f"trace {shop.batch}", f"batch show {shop.batch}")
    assert loaded(tmp_path, *asked) == [[]] * len(asked)


# What only shows: none of it loads the writing side or what draws, before it is told to write a file.
SHOWING = """
supplier list, supplier show, customer list, customer show, material list, material show, equipment list,
equipment show, recipe list, recipe show, recipe scale, recipe assessment, stock, lot show, batch list, batch show,
batch correct, cure list, cure show, samples, label check, label runs, label due, stall list, cost, trace, recall lot,
recall bar, complaint list, complaint show, attachments, attachment save, upkeep list, check, history,
order list, order show, consignment list, invoice list, invoice show, sale list, sale show, tax list, price list,
rates list, worth, shelf list, stall pack, recall of, recall show, recall list
"""


def test_no_command_that_shows_imports_what_writes_or_draws() -> None:
    """Each is imported in one interpreter: what any of them loads, all would have loaded."""
    words = [" ".join(one.split()) for one in SHOWING.split(",")]
    names = [f"ledger.cli.{EVERY[one].subject}.{one.replace(' ', '_')}" for one in words]
    code = (
        f"import importlib, sys\nfor name in {names}:\n    importlib.import_module(name)\n"
        f"    assert not [one for one in {HEAVY} if one in sys.modules], name"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr


def test_a_batch_named_as_it_is_written_is_shown_without_working_out_its_check_character(
    tmp_path: Path, shop: Any
) -> None:
    plain = shop.batch.replace("-", "")
    assert loaded(tmp_path, f"batch show {shop.batch}", f"batch show {plain}") == [[], ["stdnum"]]


@pytest.mark.parametrize(("words", "most"), [(["batch", "show"], 30), (["label", "check"], 12)])
def test_an_answer_about_a_batch_loads_no_openssl_and_defines_few_dataclasses(
    tmp_path: Path, shop: Any, words: list[str], most: int
) -> None:
    """A tuple with names costs an eighth of a dataclass to define, and an answer of many parts defines them all."""
    probe = PROBE.format(commands=[[*words, shop.batch]], heavy=("_hashlib", "ssl", *HEAVY)) + DEFINED
    done = subprocess.run([sys.executable, "-c", probe], cwd=tmp_path, capture_output=True, text=True, check=True)
    heavy, _, defined = done.stdout.rpartition("LOADED")[2].partition("DEFINED")
    assert heavy.split() == []
    assert 0 < len(defined.split()) <= most, defined


def test_the_end_of_a_run_looks_for_no_waste(tmp_path: Path) -> None:
    """Python would look through all that was loaded once more: a quarter of a label check."""
    probe = "import gc\ngc.freeze = lambda: print('FROZEN')" + PROBE.format(commands=[["--version"]], heavy=HEAVY)
    done = subprocess.run([sys.executable, "-c", probe], cwd=tmp_path, capture_output=True, text=True, check=True)
    assert done.stdout.splitlines()[-1] == "FROZEN"


@pytest.mark.usefixtures("shop")
def test_a_write_maps_no_table_but_those_of_its_topic(tmp_path: Path) -> None:
    probe = PROBE.format(commands=[["supplier", "add", "Quayside Oils"]], heavy=HEAVY)
    probe += "from sqlmodel import SQLModel\nprint(*sorted(SQLModel.metadata.tables))"
    done = subprocess.run([sys.executable, "-c", probe], cwd=tmp_path, capture_output=True, text=True, check=True)
    mapped = done.stdout.splitlines()[-1].split()
    assert mapped == ["entry", "erasure", "personal", "personal_text", "supplier", "supplier_revision"]
