"""The sample season, played once a day for all stories that only read it."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import pytest
from commands_run import note_run
from freezegun import freeze_time
from typer.testing import CliRunner

from ledger.cli.main import app


@dataclass(frozen=True)
class Season:
    """Where the demo played the season, and what it said."""

    folder: Path
    shown: str


@pytest.fixture(scope="session")
def play(tmp_path_factory: pytest.TempPathFactory) -> Callable[[str], Season]:
    """The season as the demo plays it at noon of a day; only to be read."""

    @cache
    def played(day: str) -> Season:
        folder = tmp_path_factory.mktemp("played") / "season"
        with freeze_time(f"{day} 12:00:00"):
            result = CliRunner().invoke(app, ["demo", str(folder)])
        assert result.exit_code == 0, result.output
        note_run(app, ["demo"])
        return Season(folder, result.stdout)

    return played
