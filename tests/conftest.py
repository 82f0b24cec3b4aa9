"""What every test may ask for: an empty book, a small worked shop, and a way to run commands.

What of the program a test does not need is not imported for it.
"""

import gc
import os
import shutil
import tempfile
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

import freezegun
import pytest
from freezegun import freeze_time
from hypothesis import settings
from typer.testing import CliRunner

# Freezing the clock would look through every module for a clock that it imported by name; the program has one, the
# desk's, and asks it by its module (tests/test_import_rule.py holds that there is no other).
freezegun.configure(default_ignore_list=[""])
if TYPE_CHECKING:
    from shop import Shop

    from ledger.storage.book import Book

    Build = Callable[..., tuple[Path, Any]]

pytest_plugins = ["commands_run", "papers"]


def pytest_addoption(parser: pytest.Parser) -> None:
    """--slow also runs what takes too long for every run; --examples asks every property so often."""
    parser.addoption("--slow", action="store_true", help="also the long fault runs")
    parser.addoption("--examples", type=int, metavar="N", help="so many examples of each property")


def pytest_configure(config: pytest.Config) -> None:
    """Ledgers of tests are kept in memory where there is room for three runs: a disk is waited for at every entry."""
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)  # else each process that a test starts compiles the program anew
    gc.set_threshold(100_000)  # as the console command does: looking for waste took an eighth of a run
    settings.register_profile("each run", max_examples=40, deadline=None)
    settings.register_profile("slow", max_examples=400, deadline=None)
    settings.register_profile("as asked", max_examples=config.getoption("--examples") or 400, deadline=None)
    usual = "slow" if config.getoption("--slow") else "each run"
    settings.load_profile("as asked" if config.getoption("--examples") else usual)
    memory = Path("/dev/shm")
    if os.access(memory, os.W_OK) and shutil.disk_usage(memory).free > 2 * 1024**3:
        os.environ.setdefault("PYTEST_DEBUG_TEMPROOT", str(memory))
        tempfile.tempdir = str(memory)


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Leave the long runs out unless they are asked for."""
    if not config.getoption("--slow"):
        for item in items:
            if "slow" in item.keywords:
                item.add_marker(pytest.mark.skip(reason="a long run; choose it with --slow"))


@pytest.fixture(autouse=True)
def clean_desk(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """No variable and no folder of whoever runs the tests reaches them."""
    for name in ("SOAPLEDGER", "NO_COLOR", "COLUMNS"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setenv("USER", "Nuala")
    monkeypatch.chdir(tmp_path)


@pytest.fixture
def frozen() -> Iterator[Any]:
    """The clock stands at NOW; `frozen.tick(days)` and `frozen.move_to(...)` move it."""
    from shop import NOW

    with freeze_time(NOW) as clock:
        yield clock


@pytest.fixture(scope="session")
def built(tmp_path_factory: pytest.TempPathFactory) -> "Build":
    """Build a ledger once: the file under a name, and what its builder returned; tests take copies of it."""
    from shop import NOW

    from ledger.storage.book import Book

    folder, known = tmp_path_factory.mktemp("built"), {}

    def build(name: str, builder: "Callable[[Book], Any]", base: Path | None = None) -> tuple[Path, Any]:
        if name not in known:
            path = folder / f"{name}.db"
            if base is None:
                opened = Book.create(path, who="Nuala", now=lambda: NOW)
            else:
                shutil.copyfile(base, path)
                opened = Book(path, who="Nuala", now=lambda: NOW, just_laid=True)
            known[name] = (path, builder(opened))
            opened.close()
        return known[name]

    return build


@pytest.fixture
def book(tmp_path: Path, built: "Build") -> "Iterator[Book]":
    """A new ledger with only its settings, in the file that commands find by themselves."""
    from shop import NOW, SETUP

    from ledger.operations.house.setup import set_up
    from ledger.storage.book import Book

    shutil.copyfile(built("book", lambda new: set_up(new, SETUP))[0], tmp_path / "soap.db")
    opened = Book(tmp_path / "soap.db", who="Nuala", now=lambda: NOW, just_laid=True)
    yield opened
    opened.close()


@pytest.fixture
def shop(book: "Book", built: "Build") -> "Shop":
    """The worked shop, written through the same operations that commands call."""
    from shop import SETUP, work_a_shop

    from ledger.operations.house.setup import set_up

    path, made = built("shop", work_a_shop, built("book", lambda new: set_up(new, SETUP))[0])
    shutil.copyfile(path, book.path)
    return replace(made, book=book)


@pytest.fixture
def run() -> Callable[..., Any]:
    """Run a command as typed and assert its exit code; the result has .stdout and .stderr."""
    from commands_run import note_run

    from ledger.cli.main import app

    def command(*words: str, input: str | None = None, code: int = 0) -> Any:
        result = CliRunner().invoke(app, list(words), input=input)
        shown = f"soapledger {' '.join(words)}\n{result.stdout}\n{result.stderr}"
        assert result.exit_code == code, shown
        assert "Traceback" not in result.output, shown
        if code == 0:
            note_run(app, words)
        return result

    return command


@pytest.fixture
def full(shop: "Shop", built: "Build") -> "Shop":
    """The worked shop with at least one row in every table, for tests that must leave none out."""
    from shop import fill, work_a_shop

    path, _ = built("full", lambda book: fill(book, shop), built("shop", work_a_shop)[0])
    shutil.copyfile(path, shop.book.path)
    return shop
