"""Names in other scripts, pictures and signs of programs go through every paper and file, and are told at the input."""

import csv
import json
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any
from unicodedata import normalize

import icalendar
import pytest
from shop import PLAIN_BAR

from ledger.documents.cure.calendar import cure_calendar
from ledger.documents.kit.csv_cells import plain_text
from ledger.documents.recall.contact_list import _phone
from ledger.views.cure.cure import RackDay

pytestmark = pytest.mark.usefixtures("frozen")


def test_what_will_not_print_is_told_in_one_line_when_it_is_booked(shop: Any, run: Any) -> None:
    told = (
        "No typeface here has 🧼 as [U+1F9FC], א as [U+05D0]: so it stands on papers, and a label with it is refused.\n"
    )
    assert run("supplier", "add", "🧼 א水 Oils", "--code", "odd").stderr == told
    assert run("customer", "add", "水谷 Москва Ωμέγα", "--shop", "--code", "mizu").stderr == ""
    for words in (
        ("customer", "add", "Ida", "--person", "--address", "🧼 Row"),
        ("material", "add", "🧼 oil", "--like", "olive", "--code", "soap-oil"),
        ("receive", "tarnlow", "--line", "olive oil; 1 kg; lot 🧼1; 2"),
        ("stall", "add", "Fair 🧼"),
        ("batch", "note", shop.batch, "smells of 🧼"),
    ):
        assert "has 🧼 as [U+1F9FC]" in run(*words).stderr
    assert run("supplier", "show", "odd").stderr == ""


def test_the_files_she_gives_are_told_of_too(shop: Any, run: Any, tmp_path: Path) -> None:  # noqa: ARG001
    text = PLAIN_BAR.replace("plain-bar", "picture").replace("Plain Bar", "Bar 🧼")
    (tmp_path / "r.toml").write_text(text, encoding="utf-8")
    assert "has 🧼 as" in run("recipe", "add", "r.toml").stderr
    (tmp_path / "d.csv").write_text("material,quantity,lot\nolive oil,1 kg,🧼7\n", encoding="utf-8")
    assert "has 🧼 as" in run("receive", "tarnlow", "--csv", "d.csv").stderr


def test_a_long_note_without_a_space_fits_on_its_pages(shop: Any, run: Any, read: Any, tmp_path: Path) -> None:
    """A page holds some 60 lines of 40 ideographs; this takes more than one."""
    note = "".join(map(chr, range(0x4E00, 0x4E00 + 4000)))
    run("batch", "note", shop.batch, note)
    run("batch", "note", shop.batch, "x" * 4000)
    run("batch", "note", shop.batch, "🧼" * 2000)
    run("batch", "show", shop.batch, "-o", "record.pdf")
    drawn = read((tmp_path / "record.pdf").read_bytes())
    said = "".join(drawn.text(page) for page in range(len(drawn.pages)))
    found = [sign for sign in said if "\u4e00" <= sign <= "\u9fff"]
    assert found == list(note)
    assert said.count("[U+1F9FC]") == 2000


@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠"])
def test_no_text_of_a_list_starts_as_a_formula(start: str) -> None:
    """The signs that OWASP names under "CSV Injection"; a tab and a line end are let stand by nothing she types."""
    assert plain_text(f"{start}1+1")[0] not in "=+-@\t\r\n＝＋－＠"
    assert plain_text(f"a{start}") == f"a{start}" or start == "\r"


@pytest.mark.parametrize(
    ("typed", "listed"),
    [
        ("+353 1 555 0100", "tel:+353-1-555-0100"),
        ("0205550100", "tel:0205550100"),
        ("(020) 555-0100", "tel:020-555-0100"),
        ("+1.555.0100", "tel:+1-555-0100"),
        ("020 555 0100 ext 3", "020 555 0100 ext 3"),
        ("+353 1 555 0100 or 0101", "'+353 1 555 0100 or 0101"),
        ("=1+1", "'=1+1"),
        ("-", "'-"),
        ("+", "'+"),
        ("", ""),
    ],
)
def test_a_telephone_number_stays_one(typed: str, listed: str) -> None:
    """A tel: URI by RFC 3966, whose visual separators are - . ( ); what is no number alone stays a text."""
    assert _phone(typed) == listed


NAMES = [
    '=HYPERLINK(1);x,"y"\\n',
    "+353 1 555 0100",
    "-2+3|cmd",
    "@SUM(1)",
    "a;b,c:d\\e\nf".replace("\n", "\\n"),
    "<b>&amp;</b> <font size=99>",
    "%s {0} {name} $HOME `id` '; DROP TABLE lot; --",
    "水谷 🧼 א Москва ℞",
    "👩‍🌾 E\u0301va",
    "é" * 300,
    "--json",
    "null",
    "0",
    "[U+1F9FC]",
    "BEGIN:VEVENT",
]


def test_hostile_names_go_through_every_list_and_paper(
    shop: Any, run: Any, read: Any, tmp_path: Path, frozen: Any, request: pytest.FixtureRequest
) -> None:
    """Each as a shop, its address, a supplier, a material, a lot number, a note, a stall, a recipe and the business."""
    names = NAMES if request.config.getoption("--slow") else NAMES[:5] + NAMES[7:10]
    codes = []
    for number, name in enumerate(names):
        typed = ["--", name]
        code = f"n{number}"
        told = (f"--address={name}", f"--phone={name}", f"--email={name}")
        run("customer", "add", "--shop", "--code", code, *told, *typed)
        run("supplier", "add", "--code", code, f"--phone={name}", f"--contact={name}", *typed)
        run("material", "add", "--like", "olive", "--code", code, *typed)
        run("receive", code, f"--line={code}; 1 kg; lot x{number}; 3", "--accept", f"--note={name}")
        codes.append(code)
    run("init", f"--business={names[0]}")
    for code in codes[:2]:
        run("dispatch", code, f"{shop.batch}=1")
    run("recall", "lot", "4471/2", "--csv", "c.csv", "-o", "r.pdf")
    with (tmp_path / "c.csv").open(encoding="utf-8", newline="") as file:
        cells = [cell for line in csv.reader(file) for cell in line]
    assert not [cell for cell in cells if cell.startswith(("=", "+", "-", "@"))]
    assert {names[0], names[1]} <= {cell.removeprefix("'") for cell in cells}
    assert read((tmp_path / "r.pdf").read_bytes()).pages
    listed = json.loads(run("customer", "list", "--json").stdout)
    assert {one["name"] for one in listed} >= {normalize("NFC", name) for name in names}
    for words in (("supplier", "list"), ("material", "list"), ("stock",), ("history", "--all"), ("customer", "list")):
        assert "\x1b" not in run(*words).stdout
        json.loads(run(*words, "--json").stdout)
    for number, _ in enumerate(names):
        run("batch", "note", shop.batch, f"--on={date(2026, 6, 1)}", "--", names[number])
    run("batch", "show", shop.batch, "-o", "b.pdf")
    assert read((tmp_path / "b.pdf").read_bytes()).pages
    frozen.tick(86_400)
    assert "nothing is wrong" in run("check").stdout


@pytest.mark.parametrize("name", NAMES)
def test_the_calendar_is_read_back_as_it_was_written(name: str) -> None:
    """RFC 5545: commas, semicolons, backslashes and line ends escaped (3.3.11), no line over 75 octets (3.1)."""
    day = RackDay(batch_code="26-001-4", kind="ready", on=date(2026, 6, 3), words=f"{name} is ready")
    data = cure_calendar([day], business=name, stamp=datetime(2026, 6, 1, 9, 30, tzinfo=UTC))
    assert all(len(line) <= 75 for line in data.split(b"\r\n"))
    assert b"\n" not in data.replace(b"\r\n", b"")
    calendar = icalendar.Calendar.from_ical(data)
    (event,) = calendar.walk("VEVENT")
    assert str(event["summary"]) == f"{name} is ready"
    assert str(calendar["x-wr-calname"]) == f"{name}, the rack"


def test_whom_to_call_is_on_the_disk_before_the_report_is_drawn(
    shop: Any, run: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fails(*_: Any, **__: Any) -> bytes:
        assert (tmp_path / "c.csv").exists()
        raise RuntimeError

    monkeypatch.setattr("ledger.documents.recall.recall_report.draw_recall", fails)
    run("recall", "bar", shop.batch, "--csv", "c.csv", "-o", "r.pdf", code=4)
    assert (tmp_path / "c.csv").exists()
