"""A run that cannot show its answer, or not write its paper, says which entry stands, and never that none does."""

import json
import os
import shutil
import sqlite3
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

ROOT = str(Path(__file__).parents[2])
PROGRAM = "from ledger.cli.main import run; run()"


def entries(path: Path) -> list[str]:
    """What every entry says."""
    raw = sqlite3.connect(path)
    found = [row[0] for row in raw.execute("SELECT said FROM entry ORDER BY id")]
    raw.close()
    return found


def shell(line: str, **env: str) -> "subprocess.CompletedProcess[bytes]":
    """A line as typed into a shell, where `soapledger` is this program."""
    words = f"soapledger() {{ '{sys.executable}' -c '{PROGRAM}' \"$@\"; }}; {line}"
    return subprocess.run(
        ["bash", "-c", words], env={**os.environ, "PYTHONPATH": ROOT, **env}, capture_output=True, check=False
    )


@pytest.fixture
def labelled(shop: Any, built: Any, run: Any, frozen: Any) -> Any:  # noqa: ARG001
    """The shop with its label approved and printed once."""

    def label(book: Any) -> None:
        run("--ledger", str(book.path), "label", "approve", shop.batch)
        run("--ledger", str(book.path), "label", "print", shop.batch, "-o", "first.pdf")

    path, _ = built("labelled to end badly", label, shop.book.path)
    shutil.copyfile(path, shop.book.path)
    return shop


def test_an_answer_that_has_nowhere_to_go_is_said_to_have_none(shop: Any) -> None:
    """Standard output closed by the caller, as `>&-` does."""
    before = entries(shop.book.path)
    done = shell("soapledger stall add 'Quay market' >&-")
    assert done.returncode == 5
    told = done.stderr.decode()
    assert "There is no output to show the answer on" in told
    now = entries(shop.book.path)
    assert len(now) == len(before) + 1
    assert f"Entry {len(now)} stands in soap.db: {now[-1]}" in told
    assert told.endswith("To see it again: soapledger history --last 1\n")
    done = shell("soapledger stock >&-")
    assert done.returncode == 5
    assert "nothing was written in the ledger" in done.stderr.decode()


def test_a_plan_shown_on_a_full_disk_names_its_entry_its_paper_and_the_command_that_shows_it(shop: Any) -> None:
    before = entries(shop.book.path)
    done = shell("soapledger batch plan plain-bar --on 2026-05-04 -o sheet.pdf > /dev/full")
    now = entries(shop.book.path)
    assert len(now) == len(before) + 1
    assert done.returncode == 5
    assert [line for line in done.stderr.decode().splitlines() if not line.startswith("  ")] == [
        "The answer could not be shown to its end (No space left on device).",
        f"Entry {len(now)} stands in soap.db: {now[-1]}",
        "What was drawn is in sheet.pdf.",
        "To see it again: soapledger batch show 26-002-2",
    ]
    assert Path("sheet.pdf").read_bytes().startswith(b"%PDF-")
    assert shop.rows().execute("SELECT count(*) FROM batch").fetchone()[0] == 2


@pytest.mark.usefixtures("frozen")
def test_a_worksheet_names_the_entry_it_is_drawn_with(shop: Any, run: Any) -> None:
    run("batch", "plan", "plain-bar", "-o", "sheet.pdf")
    text = PdfReader("sheet.pdf").pages[0].extract_text()
    assert f"entry {len(entries(shop.book.path))}" in text
    run("batch", "show", "26-002-2", "--worksheet", "-o", "again.pdf")
    assert PdfReader("again.pdf").pages[0].extract_text() == text


@pytest.mark.usefixtures("shop")
@pytest.mark.parametrize("words", ["stock", "stock --json", "history"])
def test_a_read_that_cannot_be_shown_is_five_and_names_no_entry(words: str) -> None:
    done = shell(f"soapledger {words} > /dev/full")
    assert done.returncode == 5
    assert done.stderr.decode() == (
        "The answer could not be shown to its end (No space left on device); nothing was written in the ledger.\n"
    )


@pytest.mark.usefixtures("shop")
def test_what_is_shown_before_it_is_done_and_cannot_be_is_not_done(run: Any) -> None:
    run("customer", "add", "Ida Marsh", "--person")
    done = shell("soapledger customer erase 'Ida Marsh' --reason asked --yes > /dev/full")
    assert done.returncode == 5
    assert done.stderr.decode().count("nothing was written in the ledger") == 1
    assert "Entry" not in done.stderr.decode()


@pytest.mark.usefixtures("shop")
def test_a_stream_for_warnings_that_is_full_changes_no_exit_code() -> None:
    assert shell("soapledger stock 2> /dev/full").returncode == 0
    assert shell("soapledger history --last x 2> /dev/full").returncode == 2
    assert shell("soapledger stock > /dev/full 2> /dev/full").returncode == 5


def test_what_starts_a_ledger_stands_though_it_was_not_shown(tmp_path: Path) -> None:
    done = shell(
        "soapledger init --business X --country IE --currency EUR --units metric --time-zone Europe/Dublin "
        "--maker X --market 'eu=X; Y' > /dev/full"
    )
    assert done.returncode == 5
    assert "Entry 1 stands in soap.db" in done.stderr.decode()
    assert len(entries(tmp_path / "soap.db")) == 1


@pytest.mark.parametrize(
    "words",
    [
        ("batch", "plan", "plain-bar", "-o"),
        ("label", "print", "BATCH", "-o"),
        ("recall", "lot", "4471/2", "--hold", "-o"),
        ("recall", "lot", "4471/2", "--hold", "--csv"),
    ],
    ids=" ".join,
)
def test_nothing_is_booked_for_a_paper_that_has_no_place(labelled: Any, run: Any, words: tuple[str, ...]) -> None:
    os.mkfifo("pipe")
    before = entries(labelled.book.path)
    for target in ("/proc/l.pdf", ".", "pipe", "no/where.pdf"):
        told = run(*(labelled.batch if word == "BATCH" else word for word in words), target, "--force", code=2).stderr
        assert Path(target).name in told or "There is no folder" in told
        assert entries(labelled.book.path) == before, target


@pytest.mark.usefixtures("frozen")
def test_the_report_and_the_list_to_call_are_two_files(shop: Any, run: Any, tmp_path: Path) -> None:
    before = entries(shop.book.path)
    told = run("recall", "lot", "4471/2", "--hold", "-o", "a.pdf", "--csv", str(tmp_path / "a.pdf"), code=2).stderr
    assert "name two files" in told
    assert entries(shop.book.path) == before


def test_labels_whose_paper_cannot_be_drawn_are_not_issued(labelled: Any, run: Any, monkeypatch: Any) -> None:
    before = entries(labelled.book.path)

    def full_disk(*_: Any, **__: Any) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full_disk)
    assert "cannot be written (No space left" in run("label", "print", labelled.batch, "-o", "l.pdf", code=2).stderr
    assert entries(labelled.book.path) == before
    assert not list(labelled.book.path.parent.glob(".soapledger*"))


@pytest.mark.parametrize(
    ("words", "again"),
    [
        (("batch", "plan", "plain-bar", "-o", "p.pdf"), "soapledger batch show 26-002-2 --worksheet -o p.pdf"),
        (("recall", "lot", "4471/2", "--hold", "-o", "p.pdf"), "soapledger recall lot L1-X -o p.pdf"),
        (("recall", "lot", "4471/2", "--hold", "--csv", "p.pdf"), "soapledger recall lot L1-X --csv p.pdf"),
        (("label", "print", "26-001-4", "-o", "p.pdf"), "soapledger label reprint 2 -o p.pdf"),
        (("label", "reprint", "1", "--count", "3", "-o", "p.pdf"), "soapledger label reprint 2 -o p.pdf"),
    ],
    ids=["plan", "recall", "contacts", "labels", "more labels"],
)
def test_a_paper_that_fails_after_the_entry_is_told_with_what_stands(
    labelled: Any, run: Any, monkeypatch: Any, tmp_path: Path, words: tuple[str, ...], again: str
) -> None:
    before = entries(labelled.book.path)

    def taken(*_: Any, **__: Any) -> None:
        raise PermissionError(13, "Permission denied")

    with monkeypatch.context() as context:
        context.setattr(os, "link", taken)
        context.setattr(os, "replace", taken)
        told = run(*words, code=5).stderr
    now = entries(labelled.book.path)
    assert len(now) == len(before) + 1
    assert "p.pdf cannot be written (Permission denied)" in told
    assert f"Entry {len(now)} stands in soap.db: {now[-1]}" in told
    assert f"To see it again: {again}\n" in told
    assert "othing was written" not in told
    kept = [one for one in tmp_path.iterdir() if one.name not in ("soap.db", "first.pdf")]
    if words[0] == "recall":  # drawn after it was booked, so that it can be drawn again
        assert kept == []
    else:
        assert f"what was drawn is in {kept[0].name}." in told
        assert kept[0].read_bytes().startswith(b"%PDF-")
    run(*again.split()[1:])
    assert entries(labelled.book.path) == now
    assert (tmp_path / "p.pdf").exists()


def test_the_sheet_of_a_run_that_was_lost_is_drawn_again_and_not_booked(labelled: Any, run: Any) -> None:
    run("label", "print", labelled.batch, "--count", "3", "--start", "4", "-o", "second.pdf")
    run("label", "print", labelled.batch, "--own-weights", "98 g; 99 g", "-o", "own.pdf")
    before = entries(labelled.book.path)
    said = run("label", "reprint", "2", "-o", "again.pdf").stdout
    assert said == "3 labels of run 2 once more in again.pdf; nothing more was booked.\n"
    first, again = (PdfReader(name).pages[0] for name in ("second.pdf", "again.pdf"))
    assert again.get_contents().get_data() == first.get_contents().get_data()  # three labels, from the fourth place on
    assert "leave out --start" in run("label", "reprint", "2", "--start", "2", "-o", "x.pdf", code=2).stderr
    assert "a weight of its own" in run("label", "reprint", "3", "-o", "x.pdf", code=1).stderr
    assert entries(labelled.book.path) == before


@pytest.mark.usefixtures("labelled")
@pytest.mark.parametrize("words", [("label", "print", "26-001-4"), ("batch", "plan", "plain-bar")], ids=" ".join)
def test_a_name_that_is_taken_meanwhile_is_not_taken_from_her(
    run: Any, monkeypatch: Any, tmp_path: Path, words: tuple[str, ...]
) -> None:
    from ledger.storage.transaction import Transaction

    close = Transaction.close

    def meanwhile(*args: Any, **more: Any) -> str:
        (tmp_path / "p.pdf").write_bytes(b"hers")
        return close(*args, **more)

    monkeypatch.setattr(Transaction, "close", meanwhile)
    told = run(*words, "-o", "p.pdf", code=5).stderr
    (like,) = tmp_path.glob("p-??????.pdf")
    assert f"p.pdf exists by now; what was drawn is in {like.name}.\nEntry" in told
    assert (tmp_path / "p.pdf").read_bytes() == b"hers"
    assert like.read_bytes().startswith(b"%PDF-")


@pytest.mark.usefixtures("frozen", "shop")
def test_a_fault_of_ours_after_the_entry_does_not_ask_for_it_again(run: Any, monkeypatch: Any) -> None:
    from ledger.cli.sell import stall_add as stall

    def broken(*_: Any) -> None:
        raise ZeroDivisionError("by a cake of soap")

    monkeypatch.setattr(stall, "say_next", broken)
    told = run("stall", "add", "Quay market", code=5).stderr
    assert "A fault in soapledger (ZeroDivisionError: by a cake of soap).\nEntry" in told
    assert "--debug" not in told


@pytest.mark.usefixtures("frozen")
def test_a_ledger_that_cannot_be_asked_is_not_spoken_for(shop: Any, run: Any, monkeypatch: Any) -> None:
    from ledger.cli.sell import stall_add as stall

    def gone(*_: Any) -> None:
        shop.book.path.rename("away.db")
        raise ZeroDivisionError("by a cake of soap")

    monkeypatch.setattr(stall, "say_next", gone)
    number = len(entries(shop.book.path)) + 1
    told = run("stall", "add", "Quay market", code=4).stderr
    assert f"Whether entry {number} was booked is not known" in told
    assert "stands" not in told
    assert "othing was written" not in told


@pytest.mark.usefixtures("frozen")
def test_an_entry_that_was_not_committed_is_not_said_to_stand(shop: Any, run: Any, monkeypatch: Any) -> None:
    from sqlalchemy.orm import SessionTransaction

    def lost(*_: Any, **__: Any) -> None:
        raise ZeroDivisionError("by a cake of soap")

    before = entries(shop.book.path)
    monkeypatch.setattr(SessionTransaction, "commit", lost)
    assert "nothing was written in the ledger" in run("stall", "add", "Quay market", code=4).stderr
    assert entries(shop.book.path) == before


@pytest.mark.usefixtures("frozen")
def test_stopping_at_a_prompt_says_what_was_stored(shop: Any, run: Any) -> None:
    run("batch", "plan", "plain-bar")
    before = entries(shop.book.path)
    told = run("batch", "log", "26-002-2", input="y\n", code=5).stderr  # the first is booked, at the next input ends
    now = entries(shop.book.path)
    assert len(now) == len(before) + 1
    assert f"Stopped.\nEntry {len(now)} stands in soap.db: {now[-1]}" in told
    assert "Stopped; nothing written." in run("batch", "log", "26-002-2", input="", code=1).stderr
    assert entries(shop.book.path) == now


@pytest.mark.usefixtures("frozen", "shop")
def test_stopping_outside_a_prompt_is_said_too(run: Any, monkeypatch: Any) -> None:
    from ledger.cli.kit import answer
    from ledger.cli.sell import stall_add

    def stopped(*_: Any) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(stall_add, "say_next", stopped)
    monkeypatch.setattr(answer, "say_next", stopped)
    assert "Stopped.\nEntry" in run("stall", "add", "Quay market", code=5).stderr
    assert "Stopped; nothing written." in run("stall", "list", code=1).stderr


@pytest.mark.usefixtures("frozen")
def test_a_refusal_after_an_entry_of_the_same_command_keeps_its_code_and_names_the_entry(shop: Any, run: Any) -> None:
    run("batch", "plan", "plain-bar")
    run("batch", "log", "26-002-2", "--as-planned", "--line", "4=146.8 g", "--reading", "poured=14:05")
    run("batch", "cut", "26-002-2", "10", "--on", "2026-06-01")
    run("pass", "26-002-2", "--anyway", "a trial")
    told = run(
        "release", "26-002-2", "--check", "pH=11.9; strip", "--check", "look=good",
        "--check", "smell=good", "--check", "weight=130 g", code=1,
    ).stderr  # fmt: skip
    now = entries(shop.book.path)
    assert f"Entry {len(now)} stands in soap.db: {now[-1]}" in told


def named_abroad(run: Any) -> None:
    run("supplier", "add", "Źródło Oleje")  # the Polish letters stand in neither cp1252 nor ASCII


@pytest.mark.usefixtures("shop")
@pytest.mark.parametrize("coding", ["cp1252", "latin-1"])
def test_no_answer_ends_at_a_sign_the_screen_lacks(run: Any, coding: str) -> None:
    named_abroad(run)
    named_signs(shell("soapledger supplier list", PYTHONIOENCODING=coding))


def test_nor_does_one_that_booked_on_a_screen_that_has_ascii_alone(shop: Any, run: Any) -> None:
    named_abroad(run)
    before = entries(shop.book.path)
    named_signs(
        shell("soapledger recall lot 4471/2 --hold > r.txt; soapledger supplier list", PYTHONIOENCODING="ascii")
    )
    assert b"Everything of it that is here is on hold." in Path("r.txt").read_bytes()
    assert len(entries(shop.book.path)) == len(before) + 1


def named_signs(done: "subprocess.CompletedProcess[bytes]") -> None:
    assert done.returncode == 0
    assert done.stderr == b"This screen lacks some signs; each stands by its number in Unicode, as [U+0179].\n"
    assert b"[U+0179]" in done.stdout  # a Z with an acute
    assert b"leje" in done.stdout
    assert b"?" not in done.stdout


@pytest.mark.usefixtures("shop")
def test_json_loses_no_sign(run: Any) -> None:
    named_abroad(run)
    done = shell("soapledger supplier list --json", PYTHONIOENCODING="cp1252")
    assert "Źródło Oleje" in [one["name"] for one in json.loads(done.stdout)]


@pytest.mark.usefixtures("shop")
def test_a_plain_sign_stands_for_an_arrow() -> None:
    words = "from ledger.cli.kit.show import say, show_plainly; show_plainly(); say('1\\u00a0284 g → 3 × −2 ł ✓')"
    env = {**os.environ, "PYTHONPATH": ROOT, "PYTHONIOENCODING": "cp437"}
    done = subprocess.run([sys.executable, "-c", words], env=env, capture_output=True, check=True)
    assert done.stdout.decode("cp437").strip() == "1\u00a0284 g -> 3 x -2 [U+0142] OK"


def test_a_reader_that_has_seen_enough_stops_no_work(shop: Any) -> None:
    line = "set -o pipefail; soapledger recall lot 4471/2 --hold -o r.pdf --csv c.csv | true"
    before = entries(shop.book.path)
    done = shell(line)
    assert (done.returncode, done.stderr) == (0, b"")
    assert Path("r.pdf").exists()
    assert Path("c.csv").exists()
    assert len(entries(shop.book.path)) == len(before) + 1


@pytest.mark.parametrize("where", ["/proc/demo", "notes"])
def test_a_demo_that_has_no_place_is_one_line(run: Any, tmp_path: Path, where: str) -> None:
    (tmp_path / "notes").write_text("hers", encoding="utf-8")
    assert run("demo", where, code=2).stderr.count("\n") == 1
    assert run("--ledger", "/proc/soap.db", "init", "--business", "X", input="Nuala\nIE\n\n\n\n\n\n", code=2).stderr
