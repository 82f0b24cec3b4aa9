"""The sample season, played once a day for all stories that only read it, whichever worker they run on."""

import os
import shutil
import time
from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path
from pkgutil import iter_modules
from typing import Any

import pytest
from commands_run import note_run
from freezegun import freeze_time
from scented import bars
from shop import Shop, work_a_shop
from typer.testing import CliRunner

from ledger.cli.kit.loading import loaded
from ledger.cli.main import app
from ledger.storage import tables

PATIENCE = 300  # seconds that a worker waits for another one that plays


@dataclass(frozen=True)
class Season:
    """Where the demo played the season, and what it said."""

    folder: Path
    shown: str


@pytest.fixture(scope="session")
def play(tmp_path_factory: pytest.TempPathFactory) -> Callable[[str], Season]:
    """The season as the demo plays it at noon of a day; only to be read."""
    base = tmp_path_factory.getbasetemp()
    shared = base.parent if "PYTEST_XDIST_WORKER" in os.environ else base

    @cache
    def played(day: str) -> Season:
        room = shared / f"season-{day}"
        said = room / "said"
        try:
            room.mkdir()
        except FileExistsError:  # another worker plays it
            until = time.monotonic() + PATIENCE
            while not said.exists() and time.monotonic() < until:
                time.sleep(0.1)
            return Season(room / "season", said.read_text(encoding="utf-8"))
        for module in iter_modules(tables.__path__):  # under the true clock, for the tests that come after
            loaded(f"storage.tables.{module.name}")
        with freeze_time(f"{day} 12:00:00"):
            result = CliRunner().invoke(app, ["demo", str(room / "season")])
        assert result.exit_code == 0, result.output
        note_run(app, ["demo"])
        (room / "writing").write_text(result.stdout, encoding="utf-8")
        (room / "writing").rename(said)
        return Season(room / "season", result.stdout)

    return played


@pytest.fixture
def ready(shop: Shop, built: Any, frozen: Any) -> Any:  # noqa: ARG001
    """Bars with 20 g of a fragrance, the day after they were passed."""
    path, code = built(
        "scented bars", lambda new: bars(replace(shop, book=new), "PARFUM"), built("shop", work_a_shop)[0]
    )
    shutil.copyfile(path, shop.book.path)
    with freeze_time("2026-06-04 09:00:00"):
        yield code
