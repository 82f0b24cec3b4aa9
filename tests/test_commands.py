"""Every command has a help of one sentence and stands in the README."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from typer.main import get_command

from ledger.cli.commands import EVERY, inside
from ledger.cli.kit.loading import loaded
from ledger.cli.main import app

README = Path(__file__).parents[1] / "README.md"
CLI = Path(__file__).parents[1] / "ledger" / "cli"


def commands(group: Any, name: str = "soapledger") -> Iterator[tuple[str, Any]]:
    """Every command with the words that call it, groups left out."""
    for word, command in group.commands.items():
        if hasattr(command, "commands"):
            yield from commands(command, f"{name} {word}")
        else:
            yield f"{name} {word}", command


COMMANDS = dict(commands(get_command(app)))


def test_a_command_has_help_in_whole_sentences_and_begins_with_its_line() -> None:
    for name, command in COMMANDS.items():
        text = (command.help or "").strip()
        assert re.match(r"[A-Z].{15,}", text), f"{name} has no help"
        assert text.endswith("."), f"{name}: {text}"
        line = EVERY[name.removeprefix("soapledger ")].line
        assert text.startswith(line), f"{line} / {text}"


def test_a_command_answers_to_help(run: Any) -> None:
    for name in COMMANDS:
        assert "Usage" in run(*name.split()[1:], "--help").stdout


def test_a_command_stands_in_the_readme() -> None:
    readme = README.read_text(encoding="utf-8")
    assert [name for name in COMMANDS if not re.search(rf"{re.escape(name)}\b", readme)] == []


GROUPS = [words for words in EVERY if inside(words)]


@pytest.mark.parametrize("group", ["", *GROUPS])
def test_help_lists_what_a_group_holds_each_on_one_whole_line(group: str, run: Any) -> None:
    shown = run(*group.split(), "--help").stdout
    assert all(len(line) <= 80 for line in shown.splitlines())
    listed = re.findall(r"^  (\S+) +(\S.*)$", shown, re.MULTILINE)
    for word in inside(group):
        assert (word, EVERY[f"{group} {word}".strip()].line) in listed


def test_help_stands_in_the_order_of_the_work_under_its_headings(run: Any) -> None:
    shown = run("-h").stdout
    order = ["Set up:", "  init ", "  material ", "Stock:", "  receive ", "Make:", "  batch ", "  release ", "Sell:"]
    places = [shown.index(f"\n{one}") for one in [*order, "Answer:", "  recall ", "Keep:", "  undo "]]
    assert places == sorted(places)


@pytest.mark.parametrize("group", ["", *GROUPS])
def test_a_group_called_alone_shows_its_help(group: str, run: Any) -> None:
    told = run(*group.split())
    assert told.stdout == run(*group.split(), "--help").stdout
    assert told.stderr == ""


def test_every_file_of_a_command_is_listed() -> None:
    files = {path for path in CLI.rglob("*.py") if re.search(r"^def command\(", path.read_text(encoding="utf-8"), re.M)}
    names = {(one.subject, words.replace(" ", "_").replace("-", "_")) for words, one in EVERY.items()}
    assert {(path.parent.name, path.stem.rstrip("_")) for path in files} <= names
    assert len(files) == len(COMMANDS)


def test_what_is_loaded_late_is_there() -> None:
    late = [
        found
        for path in CLI.rglob("*.py")
        for found in re.findall(r'loaded\("([\w.]+)"\)\.(\w+)', path.read_text(encoding="utf-8"))
    ]
    assert late
    assert [f"{module}.{name}" for module, name in late if not hasattr(loaded(module), name)] == []


def test_an_option_says_what_it_takes(run: Any) -> None:
    shown = run("batch", "cut", "--help").stdout
    assert "--on DATE" in shown
    assert "--weight WEIGHT" in shown
    assert "CODE" in shown
    assert "<str>" not in shown


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        (("recall", "4471/2"), "soapledger recall lot '4471/2'"),
        (("recall", "R1"), "soapledger recall show 'R1'"),
        (("batch", "26-118-0"), "soapledger batch show '26-118-0'"),
        (("label", "26-118-0"), "soapledger label check '26-118-0'"),
    ],
)
def test_a_code_in_the_place_of_a_command_is_told_what_to_write(typed: tuple[str, ...], meant: str, run: Any) -> None:
    said = run(*typed, code=2).stderr
    assert f"'{typed[1]}' is no command; write {meant}." in said
    assert said.count("\n") == 1
    assert "No such command '4471/2'" in run("upkeep", "4471/2", code=2).stderr


@pytest.mark.usefixtures("frozen", "shop")
@pytest.mark.parametrize(
    ("typed", "name"),
    [
        (("undo", "", "--yes"), "ENTRY"),
        (("history", "--last", " "), "--last"),
        (("batch", "plan", "plain-bar", "--on", ""), "--on"),
        (("lot", "waste", "L1-X", "1 g", "--reason", ""), "--reason"),
        (("backup", ""), "TARGET"),
    ],
)
def test_what_is_empty_is_refused_before_anything_is_done(typed: tuple[str, ...], name: str, run: Any) -> None:
    before = run("history", "--json").stdout
    told = run(*typed, code=2).stderr
    assert told.startswith(f"{name} is empty; write what it is")
    assert run("history", "--json").stdout == before


@pytest.mark.usefixtures("frozen")
def test_what_is_no_text_is_refused_and_a_line_break_is_a_space(shop: Any, run: Any) -> None:
    assert (
        "--reason holds a sign that is not UTF-8" in run("lot", "hold", shop.olive, "--reason", "\udcff", code=2).stderr
    )
    run("lot", "hold", shop.olive, "--reason", "cloudy\n\tand\rthick")
    assert run("history", "--last", "1", "--json").stdout.count("cloudy and thick") == 1
