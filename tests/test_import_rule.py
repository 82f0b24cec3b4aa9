"""Who may import whom, held over the syntax tree of every module."""

import ast
import sys
from collections.abc import Iterator, Sequence
from functools import cache
from pathlib import Path

import pytest

import ledger

PACKAGE = Path(ledger.__file__).parent
# Top to bottom; a layer sees only what is below it, and parts of one layer do not see each other.
LAYERS = (
    ("cli",),
    ("operations", "documents"),
    ("views",),
    ("rows", "storage"),
    ("markets",),
    ("reference",),
    ("domain",),
    ("units",),
    ("fileformat",),
    ("errors",),
)
DEPTH = {part: depth for depth, layer in enumerate(LAYERS) for part in layer}
# Inside a layer a subject sees only subjects before it; the order of the work, what all are made with first.
SUBJECTS = (
    *("kit", "house", "people", "material", "tools", "stock", "lye", "recipe", "bench", "cure", "release", "label"),
    *("sale", "sell", "shop", "cost", "complaint", "recall", "record", "keep", "season"),
)
TURN = {subject: turn for turn, subject in enumerate(SUBJECTS)}
# Where each library may be seen; any other that is not in the standard library, nowhere.
LIBRARIES = {
    "typer": {"cli"},
    "icalendar": {"documents"},
    "jinja2": {"documents"},
    "markupsafe": {"documents"},
    "PIL": {"documents"},
    "reportlab": {"documents"},
    "fontpkg_ibm_plex_sans_condensed": {"documents"},
    "sqlmodel": {"storage", "operations"},
    "sqlalchemy": {"storage", "operations"},
    "sqlite3": {"storage", "rows"},
    "dateutil": {"units", "domain", "reference", "markets"},
    "stdnum": {"units", "domain", "reference", "markets"},
}
# Who asks the ledger in SQL; everyone else takes the rows that these give.
ASKING = ("storage", "rows")
CLOCKS = ("datetime", "date", "time")
CLOCK = "cli/kit/desk.py"  # the one file that knows what time it is
# Who imports inside a function, and why.
LATE = {
    "cli/kit/loading.py": "the one door through which commands and papers are loaded",
    "cli/kit/desk.py": "the help and the version open no ledger",
    "storage/book.py": "what an older ledger lacks is read with the whole recipe reader: 40 ms of every write",
    "units/codes.py": "stdnum loads ssl: 35 ms that a mere look at the stock need not wait for",
    "units/gs1.py": "likewise",
    "units/dates.py": "dateutil: 9 ms, for adding months alone",
}
PARTS = {path.stem if path.is_file() else path.name for path in PACKAGE.iterdir()}


Nodes = Sequence[tuple[ast.AST, bool]]
TOLD = (ast.Import, ast.ImportFrom, ast.Call, ast.Attribute)


def parsed(source: str) -> Nodes:
    """Every import, call and attribute of a file, and whether it stands inside a function."""
    found: list[tuple[ast.AST, bool]] = [(ast.parse(source), False)]
    for node, late in found:
        inside = late or isinstance(node, (ast.FunctionDef, ast.AsyncFunctionDef))
        found += [(inner, inside) for inner in ast.iter_child_nodes(node)]
    return tuple(one for one in found if isinstance(one[0], TOLD))


def imported(nodes: Nodes) -> Iterator[tuple[ast.AST, str, bool]]:
    """Every module a file imports, wherever the import stands; relative ones begin with a dot."""
    for node, late in nodes:
        if isinstance(node, ast.Import):
            yield from ((node, alias.name, late) for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            module = "." * node.level + (node.module or "")
            if module == "ledger":  # from ledger import storage
                yield from ((node, f"ledger.{a.name}" if a.name in PARTS else "ledger", late) for a in node.names)
            else:
                yield from (
                    (node, f"{module}.{a.name}" if _is_module(f"{module}.{a.name}") else module, late)
                    for a in node.names
                )
        elif isinstance(node, ast.Call):
            name = getattr(node.func, "attr", getattr(node.func, "id", ""))
            if name in ("import_module", "__import__", "loaded") and isinstance(node.args[0], ast.Constant):
                yield node, f"{'ledger.' if name == 'loaded' else ''}{node.args[0].value}", False


@cache
def _is_module(dotted: str) -> bool:
    place = PACKAGE.parent.joinpath(*dotted.split("."))
    return dotted.startswith("ledger.") and (place.with_suffix(".py").exists() or place.is_dir())


def asked(nodes: Nodes) -> list[int]:
    """The lines on which a file hands SQL to the ledger."""
    return [
        node.lineno
        for node, _ in nodes
        if isinstance(node, ast.Attribute) and node.attr in ("execute", "executemany", "executescript")
    ]


def looks_at_the_clock(nodes: Nodes) -> list[int]:
    """The lines on which a file asks what day or time it is."""
    return [
        node.lineno
        for node, _ in nodes
        if isinstance(node, ast.Attribute) and node.attr in ("now", "today", "utcnow", "time", "localtime")
        if (node.value.id if isinstance(node.value, ast.Name) else getattr(node.value, "attr", "")) in CLOCKS
    ]


def breaches(nodes: Nodes, *, file: str) -> list[str]:
    """What a file (its path below `ledger/`) imports and may not."""
    part, *rest = file.removesuffix(".py").split("/")
    subject = rest[0] if len(rest) > 1 else None
    asks = part in ASKING
    found = [f"line {line} asks the ledger itself: SQL stands in rows/" for line in asked(nodes) if not asks]
    if file != CLOCK:
        found += [
            f"line {line} looks at the clock: the day is handed down from {CLOCK}" for line in looks_at_the_clock(nodes)
        ]
    for node, module, late in imported(nodes):
        line = getattr(node, "lineno", 0)
        where = f"line {line} imports {module}"
        if late and file not in LATE:
            found.append(f"{where}: imports stand at the top of a file")
        if module.startswith("."):
            found.append(f"{where}: write it out as ledger.…")
            continue
        top, target, *below = [*module.split("."), ""]
        if top == "ledger":
            if target and target != part and (target not in DEPTH or DEPTH[target] <= DEPTH.get(part, len(LAYERS))):
                found.append(f"{where}: {target} is not below {part}")
            turn = TURN.get(below[0]) if target == part and subject in TURN and below[0] != subject else None
            if turn is not None and subject is not None and turn > TURN[subject]:
                found.append(f"{where}: {below[0]} comes after {subject}")
        elif top in LIBRARIES:
            if part not in LIBRARIES[top] and not (top == "sqlite3" and asks):
                found.append(f"{where}: only {' and '.join(sorted(LIBRARIES[top]))} may")
        elif top not in sys.stdlib_module_names:
            found.append(f"{where}: not a library this project uses")
    return found


MODULES = sorted(path for path in PACKAGE.rglob("*.py") if "_shipped" not in path.parts)


@cache
def all_nodes() -> Sequence[tuple[Path, Nodes]]:
    """Parsed once for all that is asked."""
    return [(path, parsed(path.read_text(encoding="utf-8"))) for path in MODULES]


def test_a_module_imports_only_what_is_below_it() -> None:
    assert len(MODULES) > 700
    found = []
    for path, nodes in all_nodes():
        file = path.relative_to(PACKAGE).as_posix()
        found += [f"{file} {one}" for one in breaches(nodes, file=file)]
    assert not found, "\n".join(found)


def test_every_part_of_the_package_has_its_place_in_the_order() -> None:
    shipped = {"_shipped", "__init__", "__pycache__", "py"}
    assert {name for name in PARTS if not name.startswith(".")} - shipped == set(DEPTH)


@pytest.mark.parametrize("layer", ["cli", "operations", "documents", "views", "domain"])
def test_every_subject_has_its_turn(layer: str) -> None:
    rooms = {path.name for path in (PACKAGE / layer).iterdir() if path.is_dir() and path.name != "__pycache__"}
    assert rooms <= set(SUBJECTS)


def test_no_folder_holds_more_than_twenty_modules_and_no_file_more_than_three_hundred_lines() -> None:
    folders = {path.parent for path in MODULES}
    assert [one for one in folders if len(list(one.glob("*.py"))) > 21] == []  # with its __init__
    assert [path for path in MODULES if path.read_text(encoding="utf-8").count("\n") > 300] == []


def test_no_circle_among_the_modules() -> None:
    names = {path: ".".join(path.relative_to(PACKAGE.parent).with_suffix("").parts) for path in MODULES}
    needs = {
        names[path]: {module for _, module, _ in imported(nodes) if module != names[path]}
        for path, nodes in all_nodes()
    }
    while leaves := {name for name, wanted in needs.items() if not wanted & set(needs)}:
        needs = {name: wanted for name, wanted in needs.items() if name not in leaves}
    assert sorted(needs) == []


@pytest.mark.parametrize(
    ("file", "source"),
    [
        ("domain/lye/pot.py", "from ledger.storage.book import Book"),
        ("domain/lye/pot.py", "from ledger import storage"),
        ("domain/lye/pot.py", "import ledger.views.stock"),
        ("domain/lye/pot.py", "import sqlite3"),
        ("domain/lye/pot.py", "import typer"),
        ("units/dates.py", "from ledger.domain.lye.pot import Pot"),
        ("views/stock/stock.py", "from ledger.operations.keep.undo import undo"),
        ("storage/book.py", "from ledger.rows.opened import day"),
        ("rows/opened.py", "from ledger.storage.chain import GENESIS"),
        ("operations/keep/undo.py", "from ledger.documents.kit.page import Page"),
        ("documents/kit/page.py", "from ledger.operations.keep.undo import undo"),
        ("operations/keep/undo.py", "from sqlite3 import Connection"),
        ("views/stock/stock.py", "import sqlite3"),
        ("views/stock/stock.py", "rows.execute('SELECT 1 FROM lot')"),
        ("operations/keep/undo.py", "tx.rows.execute('SELECT 1 FROM lot')"),
        ("cli/keep/undo.py", "here.rows().execute('SELECT 1 FROM lot')"),
        ("views/stock/stock.py", "import sqlmodel"),
        ("cli/keep/undo.py", "import sqlalchemy"),
        ("operations/keep/undo.py", "import reportlab.pdfgen"),
        ("errors.py", "from ledger.fileformat import APPLICATION_ID"),
        ("domain/lye/pot.py", "from . import quantity"),
        ("domain/lye/pot.py", "from .quantity import parse_mass"),
        ("domain/lye/pot.py", "def late():\n    from ledger.cli.main import app"),
        ("domain/lye/pot.py", "import importlib\nimportlib.import_module('ledger.storage.book')"),
        ("views/stock/stock.py", "loaded('documents.kit.page')"),
        ("cli/keep/undo.py", "def command():\n    from ledger.operations.keep.undo import undo"),
        ("cli/stock/stock.py", "from ledger.cli.sell.stalls import Name"),
        ("domain/material/roles.py", "from ledger.domain.lye import pot"),
        ("reference/tables.py", "import numpy"),
        ("views/stock/stock.py", "def today():\n    return date.today()"),
        ("storage/book.py", "stamp = datetime.now(UTC)"),
        ("storage/book.py", "import datetime as clock\nstamp = clock.datetime.now(UTC)"),
    ],
)
def test_a_broken_rule_is_noticed(file: str, source: str) -> None:
    assert breaches(parsed(source), file=file) != []


@pytest.mark.parametrize(
    ("file", "source"),
    [
        ("cli/keep/undo.py", "from ledger.operations.keep.undo import undo"),
        ("cli/sell/gift.py", "from ledger.cli.stock.bars import read_bars"),
        ("cli/kit/desk.py", "import datetime as clock\nnow = clock.datetime.now(UTC)"),
        ("cli/kit/desk.py", "def rows():\n    from ledger.rows.opened import open_rows"),
        ("operations/keep/undo.py", "from ledger import __version__\nfrom ledger.storage.book import Book"),
        ("rows/lot.py", "import sqlite3\nfrom ledger.rows.opened import day\nrows.execute('SELECT 1 FROM lot')"),
        ("domain/lye/pot.py", "import decimal\nfrom dateutil.relativedelta import relativedelta"),
    ],
)
def test_what_the_rule_allows_passes(file: str, source: str) -> None:
    assert breaches(parsed(source), file=file) == []
