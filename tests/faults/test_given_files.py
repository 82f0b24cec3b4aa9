"""Every file she hands over is a plain one, of a size it should have, with every sign seen; else one line says so."""

import os
import socket
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from shop import PLAIN_BAR

from ledger.units.given import MOST_PAPER, MOST_TEXT

pytestmark = pytest.mark.usefixtures("frozen")

# Each command that reads a file of hers, with FILE where the file goes.
READERS = {
    "attach": ("attach", "FILE", "--to", "L1-X"),
    "recipe add": ("recipe", "add", "FILE"),
    "recipe revise": ("recipe", "revise", "plain-bar", "FILE"),
    "recipe assess": ("recipe", "assess", "plain-bar", "FILE"),
    "receive": ("receive", "tarnlow", "--csv", "FILE"),
    "batch log": ("batch", "log", "26-001-4", "--csv", "FILE"),
    "label print": ("label", "print", "26-001-4", "--market", "eu", "--layout", "FILE.toml", "-o", "labels.pdf"),
    "label sheet": ("label", "print", "26-001-4", "--market", "eu", "--sheet", "FILE.toml", "-o", "labels.pdf"),
}
TEXTS = [name for name in READERS if name != "attach"]


def words(name: str, file: Path | str) -> list[str]:
    """The command with the file; a layout of her own is known by its ending."""
    path = Path(file)
    if any("FILE.toml" in word for word in READERS[name]) and not path.name.endswith(".toml"):
        linked = Path.cwd() / "odd.toml"
        linked.unlink(missing_ok=True)
        linked.symlink_to(path)
        path = linked
    return [word.replace("FILE.toml", str(path)).replace("FILE", str(path)) for word in READERS[name]]


@pytest.fixture(scope="module")
def odd(tmp_path_factory: pytest.TempPathFactory) -> Iterator[dict[str, Path]]:
    """A folder, a pipe nobody fills, a socket, a device without an end, and a file too large, full of nothing."""
    folder = tmp_path_factory.mktemp("odd")
    os.mkfifo(folder / "pipe")
    listening = socket.socket(socket.AF_UNIX)
    listening.bind(str(folder / "socket"))
    with (folder / "large").open("wb") as file:
        file.truncate(MOST_PAPER + 1)
    yield {"folder": folder, "device": Path("/dev/zero"), **{one: folder / one for one in ("pipe", "socket", "large")}}
    listening.close()


def test_only_a_plain_file_of_some_size_is_read(shop: Any, run: Any, odd: dict[str, Path]) -> None:
    before = shop.book.path.read_bytes()
    told = {"folder": "is a folder", "large": "is larger than"}
    for name in READERS:
        for kind, path in odd.items():
            done = run(*words(name, path), code=2)
            assert told.get(kind, "no plain file") in done.stderr, name
            assert done.stderr.count("\n") == 1, name
        assert shop.book.path.read_bytes() == before, name


def test_the_most_is_taken_and_a_byte_more_is_not(shop: Any, run: Any, tmp_path: Path) -> None:
    (tmp_path / "paper.pdf").write_bytes(b"x" * MOST_PAPER)
    run("attach", "paper.pdf", "--to", shop.olive)
    (tmp_path / "paper.pdf").write_bytes(b"y" * (MOST_PAPER + 1))
    assert "paper.pdf is larger than 25 MB" in run("attach", "paper.pdf", "--to", shop.olive, code=2).stderr
    assert "up to 25 MB" in run("attach", "--help").stdout
    recipe = PLAIN_BAR.replace("plain-bar", "other").replace("Plain Bar", "Other")
    (tmp_path / "r.toml").write_text(recipe + "#" * (MOST_TEXT - len(recipe.encode())))
    run("recipe", "add", "r.toml")
    (tmp_path / "r.toml").write_text(recipe + "#" * (MOST_TEXT - len(recipe.encode()) + 1))
    assert "r.toml is larger than 1 MB" in run("recipe", "add", "r.toml", code=2).stderr


def test_a_sign_that_nobody_sees_is_refused_in_every_text(shop: Any, run: Any, tmp_path: Path) -> None:
    before = shop.book.path.read_bytes()
    for name in TEXTS:
        path = tmp_path / ("odd.toml" if "csv" not in " ".join(READERS[name]) else "odd.csv")
        path.write_text("# first\n# soap\u202e of mine\n", encoding="utf-8")
        told = run(*words(name, path), code=2).stderr
        assert "odd." in told
        assert "line 2, sign 7: after 'first # soap' stands U+202E, a sign that turns the direction" in told, name
        assert told.count("\n") == 1
        assert shop.book.path.read_bytes() == before, name


def test_a_sign_written_by_its_number_is_refused_as_well(shop: Any, run: Any, tmp_path: Path) -> None:  # noqa: ARG001
    (tmp_path / "odd.toml").write_text(PLAIN_BAR.replace("Plain Bar", "Plain \\u202eBar"))
    told = "odd.toml, name, sign 7: after 'Plain' stands U+202E"
    assert told in run("recipe", "add", "odd.toml", code=2).stderr
    (tmp_path / "odd.toml").write_text(PLAIN_BAR.replace('"loaf"', '"lo\\baf"'))
    assert "odd.toml, mould, name, sign 3" in run("recipe", "add", "odd.toml", code=2).stderr


def test_windows_line_ends_and_a_byte_order_mark_make_no_difference(shop: Any, run: Any, tmp_path: Path) -> None:
    text = PLAIN_BAR.replace("plain-bar", "other").replace("Plain Bar", "Other")
    (tmp_path / "r.toml").write_bytes(b"\xef\xbb\xbf" + text.replace("\n", "\r\n").encode())
    run("recipe", "add", "r.toml")
    kept = shop.rows().execute("SELECT source FROM recipe_version ORDER BY id DESC").fetchone()[0]
    assert kept == text


LONG = "a" * 300  # a name on most disks has 255 bytes at most


@pytest.mark.usefixtures("shop")
def test_a_name_longer_than_a_disk_takes_is_one_line(run: Any) -> None:
    """One line that says what to do; `--ledger` of no file has always been said to be none."""
    for words in (
        ("check", "--against", LONG),
        ("backup", LONG),
        ("restore", LONG, "new.db"),
        ("archive", LONG),
        ("--ledger", LONG, "stock"),
        ("recipe", "add", LONG),
        ("receive", "tarn", "--csv", LONG),
        ("label", "check", "26-001-4", "--market", "eu", "--language", LONG),
        ("batch", "show", "26-001-4", "-o", LONG),
        ("attach", "26-001-4", LONG),
    ):
        told = run(*words, code=2).stderr
        assert told.count("\n") == 1, told
