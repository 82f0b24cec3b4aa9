"""A notice is drafted with what the law asks, from words she may change, and is never sent."""

import json
import shutil
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

import pypdf
import pytest
from once import once

from ledger.domain.recall.dulling import dulling
from ledger.operations.sell.add_stall import add_stall
from ledger.operations.sell.stall_back import stall_back
from ledger.operations.sell.stall_out import stall_out
from ledger.reference.shipped import templates

pytestmark = pytest.mark.usefixtures("frozen")
Run = Callable[..., Any]


@pytest.fixture
def opened(shop: Any, run: Run) -> Any:
    once(sold_and_opened)(shop, run)
    return shop


def sold_and_opened(shop: Any, run: Run) -> None:
    """Three bars were sold at the quay on 9 May; the recall is open."""
    day = date(2026, 5, 9)
    add_stall(shop.book, "the quay")
    stall_out(shop.book, "the quay", {shop.batch: 4}, on=day)
    stall_back(shop.book, "the quay", {shop.batch: 1}, on=day, takings_minor=1350)
    run("recall", "open", "4471/2", "--reason", "rancid", "--hazard", "irritates the skin")


@pytest.mark.parametrize(
    ("whom", "says"),
    [
        (
            "customer",
            ("PRODUCT SAFETY RECALL", "Stop using it at once", "Tell us whether you have", "pass this on"),
        ),
        ("shop", ("URGENT: PRODUCT SAFETY RECALL", "off the shelf today", "Tell your customers", "customers told")),
        ("stall", ("PRODUCT SAFETY RECALL", "Stop using it at once", "bring it back here", "pass this on")),
    ],
)
def test_a_notice_says_what_the_law_asks(opened: Any, run: Run, whom: str, says: tuple[str, ...]) -> None:
    """Art 36(2): headline, product, codes, where and when sold, hazard, what to do, remedy, contact; 21 CFR 7.49(c)."""
    said = " ".join(run("recall", "notice", "R1", whom).stdout.split())
    particulars = (
        "Plain Bar, 100 g",
        opened.batch,
        "the quay, 9 May 2026",
        "1 June 2026",
        "Irritates the skin.",
        "money back",
        "telephone",
    )
    for words in (*says, *particulars, "A draft; nothing was sent."):
        assert words in said
    assert dulling(said) == ()
    assert "{" not in said


def test_her_own_words_beside_the_ledger_go_before_ours(opened: Any, run: Run) -> None:
    own = opened.book.path.parent / "recall-stall.toml"
    shutil.copy(templates() / own.name, own)
    own.write_text(
        own.read_text(encoding="utf-8").replace("bring it back here", "bring it to the dairy"), encoding="utf-8"
    )
    assert "bring it to the dairy" in " ".join(run("recall", "notice", "R1", "stall").stdout.split())
    own.write_text(
        'what = "recall notice"\nfor = "stall"\nheadline = "Recall"\n[[part]]\nheading = "a"\ntext = "{lot}"\n'
    )
    said = run("recall", "notice", "R1", "stall", code=2).stderr
    assert said.startswith("recall-stall.toml, line 6 [part]: '{lot}' is not known here; known: {business}")


def largest(page: pypdf.PageObject) -> float:
    """The largest type on a page, in points."""
    found: list[float] = []

    def note(text: str, _cm: Any, _tm: Any, _font: Any, size: float) -> None:
        if text.strip():
            found.append(size)

    page.extract_text(visitor_text=note)
    return max(found)


def test_a_notice_is_one_page_and_the_one_to_hang_is_larger(opened: Any, run: Run, tmp_path: Path) -> None:
    sizes = {}
    for whom in ("customer", "shop", "stall"):
        path = tmp_path / f"{whom}.pdf"
        said = run("recall", "notice", "R1", whom, "-o", str(path)).stdout
        assert "a draft; nothing was sent" in said
        [page] = pypdf.PdfReader(path).pages
        assert opened.batch in page.extract_text()
        found: list[float] = []
        page.extract_text(
            visitor_text=lambda text, _cm, _tm, _font, size, found=found: found.append(size) if text else None
        )
        sizes[whom] = max(found)
    assert sizes["stall"] > sizes["customer"] == sizes["shop"]


def test_without_a_hazard_there_is_no_notice_and_it_may_be_said_later(shop: Any, run: Run) -> None:
    run("recall", "open", shop.olive, "--reason", "rancid", "--found-by", "them")
    said = run("recall", "notice", "R1", "stall", code=1).stderr
    assert "soapledger recall note R1 --hazard WORDS" in said
    run("recall", "note", "R1", "--hazard", "as a precaution, irritates")
    drafted = run("recall", "notice", "R1", "stall")
    assert "precaution" in drafted.stderr
    run("recall", "note", "R1", "--hazard", "irritates the skin")
    assert run("recall", "notice", "R1", "stall").stderr == ""
    assert "hazard: irritates the skin" in run("recall", "show", "R1").stdout


def test_for_whom_it_is_is_one_of_three(opened: Any, run: Run) -> None:
    assert "write customer or shop or stall" in run("recall", "notice", "R1", "market", code=2).stderr
    run("recall", "rehearse", opened.water)
    assert "what the hazard is" in run("recall", "notice", "R2", "stall", code=1).stderr


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("A Voluntary  recall", ("voluntary",)),
        ("in rare\nsituations it stings", ("in rare situations",)),
        ("involuntary", ()),
        ("as a precautionary measure; no accidents were reported", ("precautionary", "no accidents")),
        ("stop using it", ()),
    ],
)
def test_words_that_lower_the_sense_of_risk_are_named(text: str, found: tuple[str, ...]) -> None:
    assert dulling(text) == found


GERMAN = {
    'headline = "Product safety recall"': 'language = "de"\nheadline = "Produktsicherheitsrückruf"',
    'batch = "batch"': 'batch = "Charge"',
    'telephone = "telephone"': 'telephone = "Telefon"',
    'date = "{day} {month} {year}"': 'date = "{day}. {month} {year}"',
    'span = "{first} to {last}"': 'span = "{first} bis {last}"',
    'through = "through {number} of our customers, {days}"': 'through = "über {number} unserer Kunden, {days}"',
    'given = "given away, {days}"': 'given = "verschenkt, {days}"',
    'unsold = "Not yet, as far as is known."': 'unsold = "Noch nicht, soviel wir wissen."',
    'class = "Class {class}, set by {whom}."': 'class = "Klasse {class}, festgesetzt von {whom}."',
    '"October"': '"Oktober"', '"June"': '"Juni"', '"May"': '"Mai"',
}  # fmt: skip


def in_german(opened: Any, whom: str) -> None:
    """Ours copied beside her ledger, with the words that the program puts in."""
    text = (templates() / f"recall-{whom}.toml").read_text(encoding="utf-8")
    for ours, theirs in GERMAN.items():
        assert ours in text or "headline" in ours
        text = text.replace(ours, theirs)
    text = text.replace('headline = "Urgent: product', 'language = "de"\nheadline = "Eilig: product')
    (Path(opened.book.path).parent / f"recall-{whom}-de.toml").write_text(text, encoding="utf-8")


def test_a_language_is_added_by_copying_a_file(opened: Any, run: Run) -> None:
    """Three bars sold on 9 May; the notice is of 1 June. What was noted of the recall stands as she wrote it."""
    in_german(opened, "stall")
    shown = run("recall", "notice", "R1", "stall", "--language", "de", "-o", "de.pdf")
    assert "looked for in English alone" in shown.stderr
    text = " ".join(run("recall", "notice", "R1", "stall", "--language", "de").stdout.split())
    for words in ("PRODUKTSICHERHEITSRÜCKRUF", f"Charge {opened.batch}", "9. Mai 2026", "1. Juni 2026", "Telefon"):
        assert words in text
    for ours in ("batch 26", "May", "June", ", telephone"):
        assert ours not in text
    pdf = pypdf.PdfReader("de.pdf")
    assert "Produktsicherheitsrückruf" in pdf.pages[0].extract_text()
    assert pdf.trailer["/Root"]["/Lang"] == "de"
    english = run("recall", "notice", "R1", "stall")
    assert "PRODUCT SAFETY RECALL" in english.stdout
    assert english.stderr == ""


def test_bars_sent_and_the_class_are_told_in_her_language_too(opened: Any, run: Run) -> None:
    """One bar went to one shop on 12 May, one to another on 20 May, and one as a gift to nobody on the books."""
    run("undo", "--yes")
    for name, day in (("Tern Hall", "2026-05-12"), ("Quay Gifts", "2026-05-20")):
        run("customer", "add", name, "--shop")
        run("dispatch", name, f"{opened.batch}=1", "--price", "4", "--on", day)
    run("gift", f"{opened.batch}=1", "--to", "the ferryman", "--on", "2026-05-21")
    run("recall", "open", "4471/2", "--reason", "rancid", "--hazard", "irritates the skin")
    run("recall", "note", "R2", "--authority", "das Amt", "--class", "II")
    in_german(opened, "shop")
    text = " ".join(run("recall", "notice", "R2", "shop", "--language", "DE").stdout.split())
    assert "über 2 unserer Kunden, 12. Mai 2026 bis 20. Mai 2026" in text
    assert "verschenkt, 21. Mai 2026" in text
    assert "Klasse II, festgesetzt von das Amt." in text
    ours = " ".join(run("recall", "notice", "R2", "shop").stdout.split())
    assert "through 2 of our customers, 12 May 2026 to 20 May 2026" in ours
    assert "given away, 21 May 2026" in ours
    assert "ferryman" not in ours
    assert "Class II, set by das Amt." in ours


@pytest.mark.parametrize(
    ("ours", "theirs", "said"),
    [
        ('language = "de"', 'language = "nl"', "language is de, as in its name, not 'nl'"),
        ('batch = "Charge"', "", "[words]: batch is missing"),
        ('"Oktober", ', "", "months are the twelve names in their order; here are 11"),
        ("{first} bis {last}", "{first} bis", "span says {first} and {last}"),
        ("{day}. {month} {year}", "{day}. {month}", "date says {day} and {month} and {year}"),
    ],
)
def test_a_file_of_another_language_is_whole(opened: Any, run: Run, ours: str, theirs: str, said: str) -> None:
    in_german(opened, "customer")
    path = Path(opened.book.path).parent / "recall-customer-de.toml"
    text = path.read_text(encoding="utf-8")
    assert ours in text
    path.write_text(text.replace(ours, theirs), encoding="utf-8")
    told = run("recall", "notice", "R1", "customer", "--language", "de", code=2).stderr
    assert said in told
    assert told.startswith("recall-customer-de.toml, line")


@pytest.mark.usefixtures("opened")
def test_a_language_without_a_file_says_what_to_copy(run: Run) -> None:
    said = run("recall", "notice", "R1", "stall", "--language", "nl", code=2).stderr
    assert said == (
        "There is no recall-stall-nl.toml; copy templates/recall-stall.toml beside your ledger under that name, write "
        'language = "nl" in it, and put its words into that language.\n'
    )
    assert "two letters" in run("recall", "notice", "R1", "stall", "--language", "dutch", code=2).stderr
    assert "PRODUCT SAFETY RECALL" in run("recall", "notice", "R1", "stall", "--language", "en").stdout


def forms(page: pypdf.PageObject) -> list[str]:
    """The pictures on a page that are drawn as one and placed."""
    return [str(name) for name in page["/Resources"].get("/XObject", {})]


def test_the_label_that_was_printed_last_is_shown_and_without_one_there_is_no_frame(opened: Any, run: Run) -> None:
    run("recall", "notice", "R1", "stall", "-o", "bare.pdf")
    [bare] = pypdf.PdfReader("bare.pdf").pages
    assert "picture of the bar" not in bare.extract_text()
    assert forms(bare) == []
    run("undo", "--yes")  # nothing on hold is labelled
    run("label", "approve", opened.batch, "--market", "eu", "--stand", "plain words")
    run("label", "print", opened.batch, "--market", "eu", "--layout", "band", "-o", "labels.pdf")
    run("recall", "open", "4471/2", "--reason", "rancid", "--hazard", "irritates the skin")
    run("recall", "notice", "R2", "stall", "-o", "shown.pdf")
    run("recall", "show", "R2", "-o", "R2.pdf")
    [page] = pypdf.PdfReader("shown.pdf").pages
    [name] = forms(page)
    drawn = page["/Resources"]["/XObject"][name]
    assert (float(drawn["/BBox"][2]), float(drawn["/BBox"][3])) == pytest.approx((190 * 72 / 25.4, 46 * 72 / 25.4))
    report = pypdf.PdfReader("R2.pdf").pages
    assert forms(report[0]) == forms(report[2]) == [name]
    assert "labels" not in json.loads(run("recall", "notice", "R2", "stall", "--json").stdout)
