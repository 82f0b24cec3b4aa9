"""Where the words of the trade stand in a signature, their list is named; held over the syntax tree of every module."""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

import ledger

PACKAGE = Path(ledger.__file__).parent
NAMES = {"units", "unit", "process", "role", "stage", "kind", "place_kind", "verdict", "alkali_kind"}
# Where such a name stands for something else, or for text that is only about to be read.
OTHERS = {
    "cli/record/attach.py command.kind": "typed",
    "cli/bench/batch_decide.py command.verdict": "typed",
    "cli/tools/equipment_add.py command.kind": "typed",
    "cli/house/init.py command.units": "typed",
    "cli/material/material_add.py command.kind": "typed",
    "cli/material/material_list.py command.kind": "typed",
    "cli/material/material_contains.py command.unit": "typed",
    "cli/stock/stock.py command.kind": "typed",
    "cli/cost/batch_work.py command.stage": "typed",
    "cli/cost/rates_set.py command.kind": "typed",
    "cli/tools/upkeep_add.py command.kind": "typed",
    "cli/tools/upkeep_list.py command.kind": "typed",
    "units/measures.py norm.unit": "typed",
    "units/measures.py unit_error.unit": "typed",
    "operations/record/attach.py attach.kind": "typed",
    "operations/record/attach.py keep_paper.kind": "typed",
    "operations/bench/deviations.py decide_deviation.verdict": "typed: accept, rework or reject",
    "storage/tables/record.py Attachment.kind": "of a paper; earlier programs took it in any words",
    "rows/kept.py KeptPaper.kind": "likewise",
    "rows/kept.py Attached.kind": "likewise",
    "rows/kept.py LotPaper.kind": "likewise",
    "views/record/lye.py Lye.alkali_kind": "both alkalis in one phrase",
    "domain/lye/weighed.py LyeCheck.alkali_kind": "likewise",
    "documents/kit/layout.py Panel.role": "of a panel on a label: face, back, side, tag",
    "documents/kit/boxes.py __init__.unit": "as it is printed in a box",
    "documents/kit/page.py Sheet.kind": "the title of a paper",
    "documents/kit/printed_code.py symbol.kind": "of a printed code",
    "domain/release/assessed.py _shares.kind": "what is printed behind a share",
    "operations/season/play.py SeasonStep.stage": "a heading of the sample season",
    "storage/migrations/__init__.py _by_name.kind": "trigger or index",
}


def statements(tree: ast.AST) -> list[ast.AST]:
    """Every statement, however deep; what is in an expression has no annotation."""
    found = [tree]
    for node in found:
        found += [one for one in ast.iter_child_nodes(node) if isinstance(one, (ast.stmt, ast.excepthandler))]
    return found


def annotated(tree: ast.AST) -> Iterator[tuple[str, str, ast.expr | None]]:
    """Every parameter and every field with whose it is, and its annotation."""
    for node in statements(tree):
        if isinstance(node, ast.FunctionDef):
            given = node.args
            parts = [*given.posonlyargs, *given.args, *given.kwonlyargs, given.vararg]
            yield from ((node.name, one.arg, one.annotation) for one in parts if one)
        elif isinstance(node, ast.ClassDef):
            fields = [one for one in node.body if isinstance(one, ast.AnnAssign)]
            yield from ((node.name, ast.unparse(one.target), one.annotation) for one in fields)


def bare(source: str) -> list[str]:
    """Where a file takes any text for one of the trade's words."""
    return [
        f"{owner}.{name}"
        for owner, name, annotation in annotated(ast.parse(source))
        if name.lstrip("_") in NAMES
        and annotation
        and any(isinstance(node, ast.Name) and node.id == "str" for node in ast.walk(annotation))
    ]


def test_no_signature_takes_any_text_for_a_word_of_the_trade() -> None:
    found = {
        f"{path.relative_to(PACKAGE).as_posix()} {one}"
        for path in PACKAGE.rglob("*.py")
        for one in bare(path.read_text(encoding="utf-8"))
    }
    assert found == set(OTHERS)


@pytest.mark.parametrize(
    "source",
    [
        "def show(mg: int, units: str = 'metric') -> str: ...",
        "def show(mg: int, *, units: str | None) -> str: ...",
        "class Row:\n    process: tuple[str, ...]",
        "class Row:\n    def of(self, role: str) -> int: ...",
    ],
)
def test_any_text_for_a_word_is_noticed(source: str) -> None:
    assert bare(source) != []


@pytest.mark.parametrize(
    "source",
    [
        "def show(mg: int, units: Units = 'metric') -> str: ...",
        "def show(text: str, units: Units) -> str: ...",
        "class Row:\n    kind: AlkaliKind | None\n    name: str",
    ],
)
def test_a_word_by_its_list_passes(source: str) -> None:
    assert bare(source) == []
