"""Who may import whom, held over the syntax tree of every module."""

import ast
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

import ledger

PACKAGE = Path(ledger.__file__).parent
# Top to bottom; a layer sees only what is below it, and parts of one layer do not see each other.
LAYERS = (
    ("cli",),
    ("operations", "documents"),
    ("storage", "views"),
    ("markets",),
    ("reference",),
    ("domain",),
    ("fileformat",),
    ("errors",),
)
DEPTH = {part: depth for depth, layer in enumerate(LAYERS) for part in layer}
# Where each library may be seen; any other that is not in the standard library, nowhere.
LIBRARIES = {
    "typer": {"cli"},
    "icalendar": ("documents",),
    "reportlab": {"documents"},
    "fontpkg_ibm_plex_sans_condensed": {"documents"},
    "sqlmodel": {"storage", "operations"},
    "sqlalchemy": {"storage", "operations"},
    "sqlite3": {"storage", "views"},
    "dateutil": {"domain", "reference", "markets"},
    "stdnum": {"domain", "reference", "markets"},
}
PARTS = {path.stem if path.is_file() else path.name for path in PACKAGE.iterdir()}


def imported(tree: ast.AST) -> Iterator[tuple[ast.AST, str]]:
    """Every module a file imports, wherever the import stands; relative ones begin with a dot."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from ((node, alias.name) for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            module = "." * node.level + (node.module or "")
            if module == "ledger":  # from ledger import storage
                yield from ((node, f"ledger.{a.name}" if a.name in PARTS else "ledger") for a in node.names)
            else:
                yield node, module
        elif isinstance(node, ast.Call):
            name = getattr(node.func, "attr", getattr(node.func, "id", ""))
            if name in ("import_module", "__import__") and isinstance(node.args[0], ast.Constant):
                yield node, str(node.args[0].value)


def part_of(module: str) -> str:
    """The part of the package that a dotted name lies in; empty for the package itself."""
    return [*module.split("."), ""][1]


def at_start(tree: ast.Module) -> set[int]:
    """The lines of what runs as soon as the module is imported, type checking apart."""
    lines: set[int] = set()
    waiting: list[ast.stmt] = list(tree.body)
    while waiting:
        node = waiting.pop()
        if isinstance(node, (ast.FunctionDef, ast.AsyncFunctionDef)):
            continue
        if isinstance(node, ast.If) and "TYPE_CHECKING" in ast.dump(node.test):
            waiting += node.orelse
            continue
        lines.add(node.lineno)
        waiting += [child for child in ast.iter_child_nodes(node) if isinstance(child, ast.stmt)]
    return lines


def breaches(source: str, *, part: str) -> list[str]:
    """What a file of one part imports and may not."""
    tree = ast.parse(source)
    early = at_start(tree)
    found = []
    for node, module in imported(tree):
        where = f"line {getattr(node, 'lineno', 0)} imports {module}"
        if module.startswith("."):
            found.append(f"{where}: write it out as ledger.…")
            continue
        top = module.split(".")[0]
        if top == "ledger":
            target = part_of(module)
            if target and target != part and (target not in DEPTH or DEPTH[target] <= DEPTH.get(part, len(LAYERS))):
                found.append(f"{where}: {target} is not below {part}")
            lazy = target in ("operations", "documents", "storage")
            if part == "cli" and lazy and getattr(node, "lineno", 0) in early:
                found.append(f"{where}: a command imports it inside its body, so that --help starts fast")
        elif top in LIBRARIES:
            if part not in LIBRARIES[top]:
                found.append(f"{where}: only {' and '.join(sorted(LIBRARIES[top]))} may")
        elif top not in sys.stdlib_module_names:
            found.append(f"{where}: not a library this project uses")
    return found


MODULES = sorted(PACKAGE.rglob("*.py"))


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_a_module_imports_only_what_is_below_it(path: Path) -> None:
    relative = path.relative_to(PACKAGE)
    part = relative.parts[0].removesuffix(".py")
    if part == "__init__":
        part = ""
    assert breaches(path.read_text(encoding="utf-8"), part=part) == []


def test_every_part_of_the_package_has_its_place_in_the_order() -> None:
    shipped = {"_shipped", "__init__", "__pycache__", "py"}
    assert {name for name in PARTS if not name.startswith(".")} - shipped == set(DEPTH)


@pytest.mark.parametrize(
    ("part", "source"),
    [
        ("domain", "from ledger.storage.book import Book"),
        ("domain", "from ledger import storage"),
        ("domain", "import ledger.views.stock.stock"),
        ("domain", "import sqlite3"),
        ("domain", "import typer"),
        ("views", "from ledger.storage.chain import GENESIS"),
        ("storage", "from ledger.rows.opened import day"),
        ("operations", "from ledger.documents.kit.page import Page"),
        ("documents", "from ledger.operations.keep.undo import undo"),
        ("operations", "from sqlite3 import Connection"),
        ("views", "import sqlmodel"),
        ("cli", "import sqlalchemy"),
        ("operations", "import reportlab.pdfgen"),
        ("errors", "from ledger.fileformat import APPLICATION_ID"),
        ("domain", "from . import quantity"),
        ("domain", "from .quantity import parse_mass"),
        ("domain", "def late():\n    from ledger.cli.main import app"),
        ("domain", "import importlib\nimportlib.import_module('ledger.storage.book')"),
        ("cli", "from ledger.operations.keep.undo import undo"),
        ("cli", "if True:\n    from ledger.storage.book import Book"),
        ("cli", "class Part:\n    from ledger.documents.kit.page import Page"),
        ("reference", "import numpy"),
    ],
)
def test_a_broken_rule_is_noticed(part: str, source: str) -> None:
    assert breaches(source, part=part) != []


@pytest.mark.parametrize(
    ("part", "source"),
    [
        ("cli", "def command():\n    from ledger.operations.keep.undo import undo"),
        ("cli", "from typing import TYPE_CHECKING\nif TYPE_CHECKING:\n    from ledger.storage.book import Book"),
        ("operations", "from ledger import __version__\nfrom ledger.storage.book import Book"),
        ("views", "import sqlite3\nfrom ledger.rows.lot import find_lot"),
        ("domain", "import decimal\nfrom dateutil.relativedelta import relativedelta"),
    ],
)
def test_what_the_rule_allows_passes(part: str, source: str) -> None:
    assert breaches(source, part=part) == []
