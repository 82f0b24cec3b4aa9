"""The folder of an archive, read without the program: a recall answered from its pages, and the pages themselves."""

import json
import re
import shutil
import subprocess
from collections.abc import Callable
from dataclasses import dataclass, field
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import pytest
from commands_run import note_run
from typer.testing import CliRunner

from ledger.cli.main import app

VOID = {"meta", "br", "input", "link", "img", "hr"}
DAY = "2026-11-25"  # which another story plays as well


@dataclass
class Read(HTMLParser):
    """One page as any program reads it: its links, its tables, and tags that do not fit together."""

    open: list[str] = field(default_factory=list)
    wrong: list[str] = field(default_factory=list)
    links: list[str] = field(default_factory=list)
    outside: list[str] = field(default_factory=list)
    ids: list[str] = field(default_factory=list)
    scripts: int = 0
    rows: list[tuple[str, dict[str, str]]] = field(default_factory=list)  # (section, cell by head)
    facts: dict[str, str] = field(default_factory=dict)
    words: str = ""
    _section: str = ""
    _text: str = ""
    _head: str = ""
    _label: str = ""

    def __post_init__(self) -> None:
        super().__init__(convert_charrefs=True)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {name: value or "" for name, value in attrs}
        if tag not in VOID:
            self.open.append(tag)
        if tag in ("h2", "td", "dt", "dd", "title"):
            self._text = ""
        if tag == "td":
            self._head = given["data-head"]
        if tag == "tr":
            self.rows.append((self._section, {}))
        self.scripts += tag == "script"
        if "id" in given:
            self.ids.append(given["id"])
        for name, value in given.items():
            if name == "href" and tag == "a":
                self.links.append(value)
            elif name in ("src", "href", "action", "srcset", "data", "poster") or name.startswith("on"):
                self.outside.append(f"{tag} {name}={value}")

    def handle_endtag(self, tag: str) -> None:
        if not self.open or self.open.pop() != tag:
            self.wrong.append(tag)
        if tag == "h2":
            self._section = self._text
        elif tag == "td":
            self.rows[-1][1][self._head] = self._text.replace("\u00a0", " ")
        elif tag == "dt":
            self._label = self._text
        elif tag == "dd":
            self.facts[self._label] = self._text.replace("\u00a0", " ")

    def handle_data(self, data: str) -> None:
        self._text += data
        self.words += data

    def of(self, section: str) -> list[dict[str, str]]:
        """The rows of one section's tables."""
        return [cells for title, cells in self.rows if title == section and cells]


def read(path: Path) -> Read:
    """One page, and what is wrong with it."""
    found = Read()
    found.feed(path.read_text(encoding="utf-8"))
    found.close()
    return found


@pytest.fixture(scope="module")
def kept(play: Callable[[str], Any], tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Path]:
    """The season's ledger, and its archive."""
    folder = tmp_path_factory.mktemp("kept")
    ledger = folder / "soap.db"
    shutil.copyfile(play(DAY).folder / "soap.db", ledger)
    result = CliRunner().invoke(app, ["--ledger", str(ledger), "archive", str(folder / "whole")])
    assert result.exit_code == 0, result.output
    note_run(app, ["archive"])
    return ledger, folder / "whole"


@pytest.fixture(scope="module")
def pages(kept: tuple[Path, Path]) -> dict[str, Read]:
    """Every page, by the name of its file."""
    return {path.name: read(path) for path in sorted((kept[1] / "pages").iterdir())}


def test_every_page_is_sound_and_leads_only_to_pages_that_are_there(pages: dict[str, Read]) -> None:
    assert len(pages) > 80
    for name, page in pages.items():
        assert (page.wrong, page.open, page.outside) == ([], [], []), name
        assert page.scripts == (name == "index.html"), name
        for link in page.links:
            file, _, place = link.partition("#")
            assert (file or name) in pages, f"{name} leads to {link}"
            assert not place or place in pages[file or name].ids, f"{name} leads to {link}"


def test_nothing_is_loaded_from_elsewhere(kept: tuple[Path, Path]) -> None:
    for path in (kept[1] / "pages").iterdir():
        text = path.read_text(encoding="utf-8")
        assert not re.search(r"(https?:)?//[a-z]|url\(|@import", text, re.IGNORECASE), path
        assert "default-src 'none'" in text


def test_every_page_is_reached_from_the_index(pages: dict[str, Read]) -> None:
    assert {"index.html", *(link for link in pages["index.html"].links if not link.startswith("#"))} == set(pages)


def answer(ledger: Path, *words: str) -> Any:
    result = CliRunner().invoke(app, ["--ledger", str(ledger), *words, "--json"])
    assert result.exit_code == 0, result.output
    return json.loads(result.stdout)


@pytest.mark.parametrize("number", ["OT/4471-2", "QM 24 0091"])
def test_a_recall_is_answered_by_hand_from_the_pages(
    kept: tuple[Path, Path], pages: dict[str, Read], number: str
) -> None:
    """From their number on the index to the lot, to its batches, to their bars and to whom to call."""
    recall = answer(kept[0], "recall", "lot", number)
    lots = [row["lot"] for row in pages["index.html"].of("Lots") if row["their number"] == number]
    assert lots == [one["lot_code"] for one in recall["lots"]]
    reached = [
        row["batch"]
        for lot in lots
        for section in ("Batches it went into", "Batches made from those")
        for row in pages[f"lot-{lot}.html"].of(section)
    ]
    assert sorted(reached) == sorted(one["batch_code"] for one in recall["batches"])
    bars, call = 0, set()
    for code in reached:
        page = pages[f"batch-{code}.html"]
        bars += sum(int(row["bars"]) for row in page.of("Where the bars are, and where they went"))
        call |= {(row["name"], row["telephone"]) for row in page.of("Whom to call")}
    assert bars == recall["totals"]["made"] - recall["totals"]["unexplained"]
    assert call == {(one["name"], one["phone"] or "not known here") for one in recall["call"]}
    assert any("complaint" in name for name, _ in call) or number != "OT/4471-2"


def test_each_customer_has_on_her_page_what_the_ledger_says_she_has(
    kept: tuple[Path, Path], pages: dict[str, Read]
) -> None:
    for card in answer(kept[0], "customer", "list"):
        page = pages[f"customer-{card['code']}.html"]
        rows = page.of("What went there, and what came back")
        assert sum(int(row["bars"]) * (-1 if row["what"] == "came back" else 1) for row in rows) == card["bars"]
        assert page.facts["telephone"] == card["phone"]


def test_each_lot_came_from_where_its_page_says(kept: tuple[Path, Path], pages: dict[str, Read]) -> None:
    for material in answer(kept[0], "stock", "--all"):
        for line in material["lots"]:
            lot = line["lot"]
            if lot["kind"] != "soap":
                facts = pages[f"lot-{lot['code']}.html"].facts
                assert facts.get("supplier", "") == (lot["supplier"] or "")
                assert facts.get("from batch", "") == (lot["batch_code"] or "")


def test_the_readme_tells_of_every_part(kept: tuple[Path, Path]) -> None:
    words = (kept[1] / "README.txt").read_text(encoding="utf-8")
    assert {path.name for path in kept[1].iterdir()} == {"README.txt", "SHA256SUMS", "data", "pages", "sheets"}
    for part in ("data/", "pages/", "sheets/", "SHA256SUMS", "Which bars have something of lot X?"):
        assert part in words
    assert all(len(line) <= 90 for line in words.splitlines())


BROWSER = shutil.which("chromium") or shutil.which("chromium-browser")


@pytest.fixture(scope="module")
def seen(kept: tuple[Path, Path], tmp_path_factory: pytest.TempPathFactory) -> Callable[[str], str]:
    """A page as a browser lays it out 400 px wide: what a script in it reads off."""
    room = tmp_path_factory.mktemp("browser")
    whole = (kept[1] / "pages").resolve()

    def look(script: str) -> str:
        frame = f"""<iframe id="page" src="file://{whole}/index.html" style="width:400px;height:900px"></iframe>
<script>page.onload = function () {{ {script} }};</script>"""
        (room / "frame.html").write_text(frame, encoding="utf-8")
        command = [
            *(BROWSER or "", "--headless=new", "--no-sandbox", "--disable-gpu", "--allow-file-access-from-files"),
            *(f"--user-data-dir={room / 'profile'}", "--virtual-time-budget=4000", "--dump-dom"),
            f"file://{room / 'frame.html'}",
        ]
        return subprocess.run(command, capture_output=True, text=True, timeout=120, check=False).stdout

    return look


@pytest.mark.skipif(BROWSER is None, reason="no chromium here; apt-get install chromium")
def test_a_phone_shows_the_pages_whole_and_finds_in_the_index(seen: Callable[[str], str]) -> None:
    """Four pages 400 px wide: nothing is wider than the screen, no cell lies on another; the search leaves one lot."""
    script = """
      var told = [], names = ["index.html", "batch-26-009-X.html", "lot-L1-X.html", "customer-heron-tearoom.html"];
      function next() {
        var inner = page.contentDocument, root = inner.documentElement;
        if (told.length < names.length) {
          var crossed = 0;
          inner.querySelectorAll("tr").forEach(function (row) {
            var boxes = Array.from(row.children).map(function (cell) { return cell.getBoundingClientRect(); });
            boxes.forEach(function (a, i) { boxes.slice(i + 1).forEach(function (b) {
              if (a.width && b.width && a.left < b.right - 1 && b.left < a.right - 1 && a.top < b.bottom - 1 &&
                  b.top < a.bottom - 1) crossed += 1; }); });
          });
          var over = root.scrollWidth - root.clientWidth;
          inner.querySelectorAll("section").forEach(function (one) { over += one.scrollWidth - one.clientWidth; });
          told.push(over + "/" + crossed);
        }
        if (told.length < names.length) { page.src = page.src.replace(/[^/]+$/, names[told.length]); return; }
        if (told.length === names.length && !/index/.test(page.src)) {
          told.push("then"); page.src = page.src.replace(/[^/]+$/, names[0]); return; }
        var field = inner.getElementById("words");
        field.value = "ot/4471-2";
        field.dispatchEvent(new page.contentWindow.Event("input"));
        var left = inner.querySelectorAll("tbody tr:not([hidden])");
        told.push(left.length + " " + left[0].children[0].textContent);
        document.title = told.join(" ");
      }
      page.onload = next; next();
    """
    told = re.search(r"<title>(.*?)</title>", seen(script))
    assert told is not None
    assert told[1] == "0/0 0/0 0/0 0/0 then 1 L1-X"
