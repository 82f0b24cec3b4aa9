"""Builds the commands once, keeps which of them ran to their end, and fails a whole run that left one out."""

from collections.abc import Iterator, Sequence
from functools import cache
from typing import Any

import pytest
import typer.testing
from typer.main import get_command

# Building the commands takes longer than most of them run, and one set of them serves every run, as in the program.
built = cache(get_command)
typer.testing._get_command = built

RUN: set[str] = set()  # by this process
_FROM_WORKERS: set[str] = set()


def all_commands(group: Any, name: str = "") -> Iterator[str]:
    """Every command by the words that call it, groups left out."""
    for word, command in group.commands.items():
        if hasattr(command, "commands"):
            yield from all_commands(command, f"{name}{word} ")
        else:
            yield f"{name}{word}"


def note_run(app: Any, words: Sequence[str]) -> None:
    """Note the command that was run; asking for its help is not running it."""
    if "--help" in words:
        return
    group, path = built(app), []
    for word in words:
        if word in getattr(group, "commands", {}):
            path.append(word)
            group = group.commands[word]
            if not hasattr(group, "commands"):
                RUN.add(" ".join(path))
                return


@pytest.hookimpl(optionalhook=True)
def pytest_testnodedown(node: Any, error: object) -> None:  # noqa: ARG001
    """What a worker of a parallel run has noted."""
    _FROM_WORKERS.update(getattr(node, "workeroutput", {}).get("commands", ()))


def pytest_sessionfinish(session: pytest.Session) -> None:
    """A run of all tests that ran not every command fails."""
    config = session.config
    if hasattr(config, "workeroutput"):
        config.workeroutput["commands"] = sorted(RUN)
        return
    chosen = config.option.keyword or config.option.markexpr or config.option.collectonly
    whole = config.args == [str(one) for one in config.getini("testpaths")] or config.args_source.name == "TESTPATHS"
    if not whole or chosen or getattr(config.option, "lf", False) or session.shouldstop:
        return
    from ledger.cli.main import app

    if missing := sorted(set(all_commands(built(app))) - RUN - _FROM_WORKERS):
        session.exitstatus = pytest.ExitCode.TESTS_FAILED
        config._commands_missing = missing  # type: ignore[attr-defined]


def pytest_terminal_summary(terminalreporter: Any, config: pytest.Config) -> None:
    """Name the commands that no test ran."""
    for name in getattr(config, "_commands_missing", ()):
        terminalreporter.write_line(f"FAILED no test runs: soapledger {name}", red=True)
