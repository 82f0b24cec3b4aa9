"""Command lines made at random: none ends in a fault of ours, and one that is refused has changed nothing.

Two hundred by default, ten thousand with --slow; a line that fails is told with its seed.
"""

import random
import sqlite3
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest
from shop import PLAIN_BAR
from typer.testing import CliRunner

from ledger.cli.commands import EVERY, inside
from ledger.cli.kit.tree import _built
from ledger.cli.main import app

pytestmark = pytest.mark.usefixtures("frozen")

CHUNK, SHORT, LONG = 25, 8, 400  # lines of one ledger; ledgers by default and with --slow
COMMANDS = [words for words in EVERY if not inside(words) and words != "demo"]  # the demo plays a season each time
ANY = [
    *("L1-X", "L2-8", "L3-6", "L4-4", "L9-9", "26-001-4", "26-001-5", "26-999-9", "plain-bar", "Plain Bar", "tarnlow"),
    *(
        "olive oil",
        "olive",
        "water",
        "sodium hydroxide",
        "workshop",
        "band",
        "a4",
        "eu",
        "gb",
        "us-soap",
        "xx",
        "scale",
    ),
    *("1", "0", "-1", "7", "1.5", "1,5", "1e9", "9" * 40, "9" * 400, "01", "½", "١٢", "NaN", "inf", "0x10", "1_000"),
    *("1 kg", "0 g", "-5 g", "100 g", "3 lb 2 oz", "1 g 1 g", "1e400 kg", "5 kg of", "10 %", "200 %", "0 %", "12 EUR"),
    *(
        "2026-06-01",
        "2026-05-31",
        "2026-06-02",
        "1 June",
        "31.2.2026",
        "0001-01-01",
        "9999-12-31",
        "today",
        "yesterday",
    ),
    *("a=b", "=", "1=", "=1", "1=100 g", "2=1 g@L2-8", "26-001-4=1", "26-001-4=0", "26-001-4=-1", "look=good; x"),
    *("pH=9", "pH=99999", "lye temperature=48 C", "poured=14:05", "poured=25:99", "A=100 g", "linalool=33", "eu=A; B"),
    *("olive oil; 5 kg; lot 1; 3", "olive oil; 5 kg", ";;", "olive oil; x; lot", "1 g; 1 g; lot unknown; -1"),
    *(
        "é" * 2000,
        "e\u0301",
        "🧼",
        "水",
        "\u202e",
        "\x1b[2J",
        "'",
        '"',
        "\\",
        "%s",
        "{}",
        "<b>",
        "--",
        "-",
        "--help",
        "",
    ),
    *("r.toml", "soap.db", ".", "/dev/null", "nope/x.pdf", "out.pdf", "d.csv", "x" * 300, "/proc", "a\nb", " ", "\t"),
]
ANSWERS = ["", "\n", "y\n", "q\n", "1\nx\n\n", "\n" * 40, "yes\n" * 40, "100 g\n" * 40, "9\n" * 40]


def line_of(dice: random.Random) -> tuple[list[str], str]:
    """A command, some of what it takes with any values at all, and what is typed at its questions."""
    words = dice.choice(COMMANDS)
    line = words.split()
    for one in _built(words).params:
        wanted = one.required or dice.random() < 0.25
        if not wanted or dice.random() < 0.05:
            continue
        for _ in range(dice.choice((1, 1, 1, 2)) if one.multiple or one.nargs == -1 else 1):
            if not one.opts[0].startswith("-"):
                line.append(dice.choice(ANY))
            elif getattr(one, "is_flag", False):
                line.append(one.opts[0])
            else:
                line += [one.opts[0], dice.choice(ANY)]
    if dice.random() < 0.1:
        line.insert(dice.randrange(len(line) + 1), dice.choice(ANY))
    return line, dice.choice(ANSWERS)


def head(raw: sqlite3.Connection, path: Path) -> Any:
    """The digest of the last entry, which stands for all that is written, and that it is the same file still."""
    return path.stat().st_ino, raw.execute("SELECT id, digest FROM entry ORDER BY id DESC LIMIT 1").fetchone()


def run_lines(path: Path, seed: int) -> None:
    dice = random.Random(seed)
    with closing(sqlite3.connect(path)) as raw:
        run_each(raw, path, seed, dice)


def run_each(raw: sqlite3.Connection, path: Path, seed: int, dice: random.Random) -> None:
    now = head(raw, path)
    for number in range(CHUNK):
        line, answers = line_of(dice)
        done = CliRunner().invoke(app, line, input=answers)
        told = f"seed {seed}, line {number}: {line}\n{done.output[-2000:]}"
        assert done.exit_code in (0, 1, 2), told
        assert "Traceback" not in done.output, told
        assert "A fault in soapledger" not in done.output, told
        before, now = now, head(raw, path)
        if done.exit_code:
            assert now == before, told
            assert done.stderr.strip(), told


def lay_out(folder: Path, seed: int) -> None:
    """What the lines may read, beside the ledger."""
    (folder / "r.toml").write_text(PLAIN_BAR.replace("plain-bar", f"bar-{seed}"), encoding="utf-8")
    (folder / "d.csv").write_text("material,quantity,lot\nolive oil,1 kg,7\n", encoding="utf-8")


@pytest.mark.parametrize("seed", range(SHORT))
def test_no_line_ends_in_a_fault_or_half_written(shop: Any, tmp_path: Path, seed: int) -> None:
    lay_out(tmp_path, seed)
    shop.book.close()
    run_lines(shop.book.path, seed)


@pytest.mark.slow
def test_no_line_of_ten_thousand_does(shop: Any, tmp_path: Path) -> None:
    shop.book.close()
    whole = shop.book.path.read_bytes()
    for seed in range(LONG):
        shop.book.path.write_bytes(whole)
        lay_out(tmp_path, seed)
        run_lines(shop.book.path, seed)


@pytest.mark.parametrize("line", [("backup", "/proc"), ("label", "try-sheet", "9" * 300)], ids=("backup", "sheet"))
def test_a_line_that_failed_once_does_not_again(shop: Any, run: Any, line: tuple[str, ...]) -> None:  # noqa: ARG001
    assert run(*line, code=2).stderr.count("\n") == 1
