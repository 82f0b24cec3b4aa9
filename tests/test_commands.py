"""Every command has a help of one sentence and stands in the README."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from typer.main import get_command

from ledger.cli.main import NOUNS, app

README = Path(__file__).parents[1] / "README.md"


def commands(group: Any, name: str = "soapledger") -> Iterator[tuple[str, Any]]:
    """Every command with the words that call it, groups left out."""
    for word, command in group.commands.items():
        if hasattr(command, "commands"):
            yield from commands(command, f"{name} {word}")
        else:
            yield f"{name} {word}", command


COMMANDS = dict(commands(get_command(app)))


@pytest.mark.parametrize("name", COMMANDS)
def test_a_command_has_help_in_whole_sentences(name: str) -> None:
    text = (COMMANDS[name].help or "").strip()
    assert re.match(r"[A-Z].{15,}", text), f"{name} has no help"
    assert text.endswith("."), f"{name}: {text}"


@pytest.mark.parametrize("name", COMMANDS)
def test_a_command_answers_to_help(name: str, run: Any) -> None:
    assert "Usage" in run(*name.split()[1:], "--help").stdout


@pytest.mark.parametrize("name", COMMANDS)
def test_a_command_stands_in_the_readme(name: str) -> None:
    assert re.search(rf"{re.escape(name)}\b", README.read_text(encoding="utf-8")), f"README.md does not name {name}"


def test_help_lists_the_commands_in_the_order_of_the_work(run: Any) -> None:
    shown = run("--help").stdout.split("Commands:")[1]
    listed = re.findall(r"^  (\w+)", shown, flags=re.MULTILINE)
    assert listed == list(NOUNS)
    order = ["init", "supplier", "material", "receive", "lot", "batch", "cure", "pass", "release", "trace", "recall"]
    assert [name for name in listed if name in order] == order
