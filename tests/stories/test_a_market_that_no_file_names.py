"""A market built here, whose every rule differs from those of the files: no answer about it is another country's."""

import json
import shutil
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from fractions import Fraction
from functools import partial
from typing import Any

import pytest
from freezegun import freeze_time
from making import CHECKED, cut
from pypdf import PdfReader
from shop import ADDRESS, SETUP, Shop, work_a_shop

from ledger import markets
from ledger.documents.kit.layout import label_layout, sheet_layout
from ledger.documents.label.labels import draw_labels
from ledger.domain.label.market import AllergenList, Duty, FigureHeight, Market, Rule, UnitPrice
from ledger.domain.label.packers import System, minimum_system
from ledger.domain.label.unit_price import per_kilogram
from ledger.domain.release.bars import Passing
from ledger.operations.bench.readings import ReadingValue, log_readings
from ledger.operations.house.setup import set_up
from ledger.operations.material.skin import state_contents
from ledger.operations.release.release import pass_bars
from ledger.storage.book import Book
from ledger.views.label.label import label_text

pytestmark = pytest.mark.usefixtures("frozen")
# What the files of other markets name, and no answer about this one may.
OTHERS = (
    "76/211", "1223/2009", "98/6", "2006/659", "Handbook", "CFR", "701", "Annex", "Art 1", "Great Britain", "European",
    "United States", "Canada", "Northern Ireland",
)  # fmt: skip
LIST = AllergenList("the list of Utter Cay", "long", 5_000, "Cay Gazette 9", "made up", since=date(2026, 7, 1))
FIRST = LIST._replace(name="the first list of Utter Cay", names="first", since=None, until=date(2026, 6, 30))
XX = Market(
    code="xx",
    address="xx",
    name="Utter Cay",
    countries="XX",
    seats="XX",
    paper="Letter",
    declares_ingredients=True,
    ingredients_heading="Made of",
    aqua="EAU",
    fragrance_word="SCENT",
    floats="none",
    net_words=lambda net: f"{net.mg} mg net",
    packing=(System(partial(minimum_system, source="Cay Gazette 4", status="made up")),),
    packing_of={},
    dated_months=None,
    figure_heights=(FigureHeight(None, 2.5),),
    heights_by="panel",
    allergens=(FIRST, LIST),
    colours=None,
    rules=(
        Rule("net quantity", "in milligrams", "Cay Gazette 4", "made up"),
        Rule("figure height", "2.5 mm", "Cay Gazette 4", "made up"),
        Rule("allergens", "over 0.5 %", "Cay Gazette 9", "made up"),
        Rule("assessment", "one before a bar is supplied", "Cay Gazette 5", "made up"),
    ),
    elsewhere={"ingredients": "The list may hang on a string: Cay Gazette 6."},
    unit_prices=(UnitPrice(lambda price, net, said: f"{said(per_kilogram(price, net))} a kilo", ("Ask the Cay.",)),),
    serious_effect=Duty("tell them the same day", "the Cay Office", "Cay Gazette 7", "made up"),
    remains=("The stamp of the Cay.",),
)  # fmt: skip
NOTHING = XX._replace(
    packing=(), figure_heights=(), allergens=(), rules=(), elsewhere={}, unit_prices=(), remains=(), paper="A4"
)
REPORT = """
assessor = "R. Lund"
reference = "QR-9"
on = 2026-01-05
process = ["cold"]
markets = ["xx"]
[[ingredient]]
inci = "OLEA EUROPAEA FRUIT OIL"
highest_percent = 45
[[ingredient]]
inci = "COCOS NUCIFERA OIL"
highest_percent = 60
[[ingredient]]
inci = "SODIUM HYDROXIDE"
highest_percent = 60
[[ingredient]]
inci = "AQUA"
highest_percent = 60
"""


@pytest.fixture
def known(monkeypatch: pytest.MonkeyPatch) -> Callable[[Market], None]:
    """Put a market beside those of the files."""
    filed = markets.laws()

    def put(law: Market) -> None:
        monkeypatch.setattr(markets, "laws", lambda: (*filed, law))

    return put


def passed_there(book: Book) -> str:
    """Ten bars of a maker at home in that market alone, weighed and passed."""
    set_up(book, replace(SETUP, country="XX", addresses={"xx": ADDRESS}))
    state_contents(book, "olive oil", {"linalool": 20_000, "camphor": 20_000}, source="a statement made up")
    code = cut(book)
    weights = [ReadingValue("bar weight", mg, "mg") for mg in (130_000, 99_500)]
    log_readings(book, code, weights, on=date(2026, 6, 3))
    pass_bars(book, code, Passing(on=date(2026, 6, 3), by="Nuala"))
    return code


@pytest.fixture
def ready(shop: Shop, built: Any, known: Callable[[Market], None]) -> Any:
    """Such bars, the day after."""
    known(XX)
    path, code = built("bars of Utter Cay", passed_there, built("shop", work_a_shop)[0])
    shutil.copyfile(path, shop.book.path)
    with freeze_time("2026-06-04 09:00:00"):
        yield code


def told(run: Any, *words: str, **more: Any) -> str:
    """What a command says, on one line; nothing in it is the law of another market."""
    done = run(*words, **more)
    said = " ".join((done.stdout + done.stderr).split())
    assert [other for other in OTHERS if other in said] == []
    return said


def test_the_check_knows_its_rules_alone(ready: str, run: Any) -> None:
    said = told(run, "label", "check", ready, "--on", "2026-06-30", "--pack", "2 x 3 in")
    assert "for xx, first supplied on 30 Jun 2026" in said  # her own market, without --market
    assert (
        "net quantity: 100000 mg net; no packers' rule held, see the net quantity as weighed below in milligrams"
        in said
    )
    assert "2.5 mm at least" in said
    assert "Made of, as added, by weight:" in said
    assert "EAU" in said
    # of 130 and 99.5 g one lies below 100 g; the mean, 114.75 g, hides that from no minimum system
    assert "1 of 2 bars lies below 100 g, where none may (the lightest is 99.5 g)." in said
    assert "minimum system of Cay Gazette 4 for 100 g" in said
    assert "The stamp of the Cay." in said
    assert "assessment: none booked for Plain Bar" in said
    assert "notification" not in said


def test_its_lists_of_allergens_hold_on_their_days(ready: str, run: Any) -> None:
    """2 % of 600 g of olive oil are 12 g each, some 1 % of the bars: over 0.5 %. Camphor is on the long list alone."""
    for on, name, declared in (
        ("2026-06-30", "the first list of Utter Cay", ["Linalool"]),
        ("2026-07-01", "the list of Utter Cay", ["Camphor", "Linalool"]),
    ):
        found = json.loads(run("label", "check", ready, "--on", on, "--json").stdout)["label"]["allergens"]
        assert (found["list_name"], found["threshold_ppm"], found["declared"]) == (name, 5_000, declared)


def test_labels_are_approved_printed_and_due_by_its_dates(ready: str, run: Any) -> None:
    assert f"label print {ready} --market xx" in told(run, "label", "approve", ready)
    said = told(run, "label", "print", ready, "-o", "l.pdf")
    assert f"11 labels for batch {ready} (xx) in l.pdf." in said
    assert [float(one) for one in PdfReader("l.pdf").pages[0].mediabox[2:]] == [612, 792]  # Letter, 8.5 x 11 in
    assert "100 g is declared: 99 g is the highest" in said
    run("label", "count", "1")
    due = json.loads(run("label", "due", "--json").stdout)
    assert [(one["market"], one["until"], one["bars"]) for one in due] == [("xx", "2026-06-30", 10)]
    assert "the list of Utter Cay names Camphor too" in due[0]["why"]


def test_the_doors_ask_what_it_asks(ready: str, run: Any, tmp_path: Any) -> None:
    refused = told(run, "release", ready, *CHECKED, code=1)
    assert "there is no safety assessment of Plain Bar, which the market xx asks for" in refused
    (tmp_path / "r.toml").write_text(REPORT)
    run("recipe", "assess", "plain-bar", "r.toml")
    shown = told(run, "recipe", "assessment", "plain-bar")
    assert "market XX asked for XX inside" in shown
    assert "notification" not in shown  # it asks for none
    refused = told(run, "release", ready, *CHECKED, code=1)
    assert "no label was printed for it, and a bar carries one in: Utter Cay" in refused
    assert f"soapledger label print {ready} --market xx" in refused
    run("label", "approve", ready)
    run("label", "print", ready, "-o", "l.pdf")
    run("label", "count", "1")
    run("release", ready, *CHECKED)
    with freeze_time("2026-07-01 09:00:00"):
        refused = told(run, "gift", f"{ready}=1", "--to", "a neighbour", code=1)
    assert "does not name Camphor, which the list of Utter Cay asks for" in refused


def test_a_ticket_has_its_unit_price_and_a_complaint_its_duty(ready: str, run: Any) -> None:
    said = told(run, "label", "ticket", ready, "--price", "6.50", "-o", "t.pdf")
    assert said == "1 card in t.pdf. They are for Utter Cay (xx); for another market add --market. Ask the Cay."
    page = PdfReader("t.pdf").pages[0]
    assert "65,00 € a kilo" in page.extract_text().replace("\xa0", " ")  # 6.50 for 0.1 kg
    assert float(page.mediabox[3]) == 792  # Letter
    run("label", "rack", ready, "-o", "rack.pdf")
    assert float(PdfReader("rack.pdf").pages[0].mediabox[3]) == 792
    refused = run("label", "ticket", ready, "--price", "6.50", "--northern-ireland", "-o", "n.pdf", code=2).stderr
    assert refused.splitlines() == [
        "Utter Cay (xx) has no rule for Northern Ireland; leave that out, or add --market eu."
    ]
    said = told(run, "complaint", "add", "rash", "--batch", ready, "--serious", "yes", "--decided-by", "Nuala")
    assert "Utter Cay: tell them the same day, to the Cay Office (Cay Gazette 7; made up)." in said


def test_the_pass_leads_to_its_label(shop: Shop, known: Callable[[Market], None], run: Any) -> None:
    known(XX)
    set_up(shop.book, replace(SETUP, country="XX", addresses={"xx": ADDRESS}))
    code = cut(shop.book)
    said = told(run, "pass", code, "--anyway", "a trial")
    assert f"Next: soapledger label check {code} --market xx" in said


def test_what_does_not_fit_and_how_long_it_keeps_are_its_own(shop: Shop, ready: str, run: Any) -> None:
    assert "Good to" not in told(run, "label", "check", ready, "--months", "36")  # no rule asks for durability
    with shop.book.look() as rows:
        view = label_text(rows, ready, "xx", on=date(2026, 6, 4), best_before_months=36)
    assert (view.best_before, view.after_opening_months) == ("04/2029", None)  # made on 6 May 2026
    with pytest.raises(Exception, match="The list may hang on a string: Cay Gazette 6") as caught:
        draw_labels(
            replace(view, ingredients=", ".join([view.ingredients] * 9)),
            label_layout("small"), sheet_layout("letter-21"), count=1,
        )  # fmt: skip
    assert [other for other in OTHERS if other in str(caught.value)] == []


def test_a_market_with_no_rule_but_its_words_is_answered_in_plain_lines(
    ready: str, run: Any, known: Callable[[Market], None]
) -> None:
    known(NOTHING)
    said = told(run, "label", "check", ready, "--pack", "2 x 3 in")
    assert "0 particulars looked at" in said
    assert "The packers' rules of Utter Cay are not known here; whether 100 g holds is for a person." in said
    assert "The packers' rules of Utter Cay are not known here" in told(run, "label", "approve", ready)
    run("label", "print", ready, "-o", "l.pdf")
    assert round(float(PdfReader("l.pdf").pages[0].mediabox[3])) == 842  # A4, 297 mm
    run("label", "count", "1")
    assert told(run, "label", "due").startswith("No printed label stops being usable")
    said = told(run, "label", "ticket", ready, "--price", "6.50", "-o", "t.pdf")
    assert said.endswith("No rule on the price of a kilogram is known here for Utter Cay.")
    assert "coins" not in PdfReader("t.pdf").pages[0].extract_text()
    run("release", ready, *CHECKED)  # no assessment is asked for


@pytest.mark.parametrize(
    ("country", "codes", "answer"),
    [
        ("IE", ("eu", "gb"), "for eu,"),
        ("GB", ("eu", "gb"), "for gb,"),
        ("IE", ("gb",), "for gb,"),
        ("US", ("eu",), "for eu,"),
        ("XX", ("eu", "xx"), "for xx,"),
        ("NO", ("eu", "gb"), "--market eu (European Union and Northern Ireland) or --market gb (Great Britain)"),
        ("US", ("us", "eu"), "say which, with --market us-cosmetic (United States (as a cosmetic)) or --market"),
        ("IE", (), "no responsible person for any market yet"),
    ],
)  # fmt: skip
def test_without_a_market_hers_is_taken_or_asked_for(
    shop: Shop, known: Callable[[Market], None], run: Any, country: str, codes: tuple[str, ...], answer: str
) -> None:
    known(XX)
    set_up(shop.book, replace(SETUP, country=country, addresses=dict.fromkeys(codes, ADDRESS)))
    done = run("label", "check", shop.batch, code=0 if answer.endswith(",") else 2)
    assert answer in " ".join((done.stdout + done.stderr).split())
    assert answer.endswith(",") or len(done.stderr.splitlines()) == 1


def test_each_part_of_the_law_is_written_in_the_files_alone(known: Callable[[Market], None]) -> None:
    """The packer's country decides in the EU; in Great Britain the packer may choose; Canada's rules are not known."""
    known(XX)
    few = [one.judge(110_000, [104_900] + [112_000] * 39).holds for one in markets.market("eu").packers_rules("DE")]
    assert few == [False]  # 2.5 % lie below 105 g, where 2 % may
    assert [
        one.judge(110_000, [104_900] + [112_000] * 39).holds for one in markets.market("eu").packers_rules("IE")
    ] == [True]
    assert len(markets.market("gb").packers_rules("DE")) == 2
    assert markets.market("ca").packers_rules("CA") == ()
    assert markets.market("us-soap").figure_height(0, Fraction(40)) == 3.175
