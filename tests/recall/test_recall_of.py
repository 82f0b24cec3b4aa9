"""recall of: from whatever is bad to the bars, several at once; what matches nothing is one clear line."""

import json
from collections.abc import Callable
from datetime import date
from typing import Any

import pytest
from bare_ledger import DAY, BareLedger
from making import POURED, cut, deliver, lines_of, planned, weighed

from ledger.domain.recall.question import Question, Start, question_from
from ledger.errors import BadInput
from ledger.operations.bench.cut import cut_batch
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.stock.receive import DeliveryLine
from ledger.rows.bars import in_the_order_made
from ledger.views.recall.recall_answer import recall_answer
from ledger.views.recall.recall_life import asked_for
from ledger.views.recall.recall_starts import asked_about

pytestmark = pytest.mark.usefixtures("frozen")


def bars(run: Callable[..., Any], *words: str) -> list[str]:
    """The batches of bars in the answer."""
    found = json.loads(run("recall", "of", *words, "--json").stdout)
    return [one["batch_code"] for one in found["batches"] if one["yields_bars"]]


def test_a_question_is_kept_as_json_and_is_the_same_again() -> None:
    asked = Question(
        (Start("tool", "bench-scale"), Start("number", "4471/2")), "tarnlow", "olive oil", date(2026, 3, 1), None, True
    )
    assert question_from(asked.kept) == asked
    assert question_from(Question().kept) == Question()
    with pytest.raises(BadInput, match="a start"):
        question_from('{"starts": [["weather", "rain"]]}')


@pytest.mark.parametrize(
    ("first", "last", "found"),
    [
        ("2026-05-06", "2026-05-06", True),  # the day it was made
        ("2026-05-07", "2026-05-07", True),  # the day it was cut
        ("2026-05-08", "2026-05-31", False),  # the day after
        ("2026-05-01", "2026-05-05", False),  # the day before
    ],
)
def test_a_product_between_days_counts_the_days_at_the_edge_in(
    shop: Any, run: Callable[..., Any], first: str, last: str, found: bool
) -> None:
    code = weighed(shop.book, planned(shop.book))  # on 6 May; the shop's own batch was cut on 2 Apr
    cut_batch(shop.book, code, bars=10, on=date(2026, 5, 7), by="Nuala", bars_mg=1_320_000)
    words = ("--product", "plain bar", "--from", first, "--to", last)
    if found:
        assert bars(run, *words) == [code]
    else:
        assert "No bars of Plain Bar were made" in run("recall", "of", *words, code=2).stderr


@pytest.mark.parametrize(("first", "last", "found"), [("2026-03-02", "2026-03-02", True), ("2026-03-03", None, False)])
def test_a_delivery_on_the_first_and_last_day_of_a_notice_is_meant(
    shop: Any, run: Callable[..., Any], first: str, last: str | None, found: bool
) -> None:
    words = ("--supplier", "tarnlow", "--material", "olive oil", "--from", first, *(("--to", last) if last else ()))
    if found:
        assert bars(run, *words) == [shop.batch]
    else:
        assert "widen" in run("recall", "of", *words, code=2).stderr


def test_a_misprint_is_on_the_bars_of_its_run_alone() -> None:
    """Labels for 20 bars; the offcuts of the batch, and a second batch of the same oil, never had one."""
    ledger = BareLedger()
    oil = ledger.buy("A")
    batch, lots = ledger.make("cold", [oil], offcuts=True)
    ledger.make("cold", [oil])
    ledger.make("rebatch", [lots[1]])
    ledger.add("label_run", lot_id=lots[0], on=DAY, layout="band", market="eu", count=20, text="x", text_digest="x")
    ledger.close()
    asked = asked_about(ledger.rows, Question((Start("labels", "1"),)), on=date(2026, 6, 1))
    assert asked.words == ("the labels of run 1",)
    found = recall_answer(ledger.rows, (), labelled=asked.starts.labelled, asked=asked.words, program="test")
    assert [one.batch_code for one in found.batches] == [ledger.code("batch", batch)] == list(found.labels_of)
    assert (found.totals.made, found.bulk, found.look_next) == (20, (), ())
    assert [one.code for one in found.stoppable] == [ledger.code("batch", batch)]
    with pytest.raises(BadInput, match="There is no print run 9"):
        asked_about(ledger.rows, Question((Start("labels", "9"),)), on=date(2026, 6, 1))


def test_all_that_a_failed_scale_weighed_is_one_answer(shop: Any, run: Callable[..., Any]) -> None:
    run("equipment", "add", "scale", "bench scale", "--against", "500 g", "--tolerance", "1 g")
    assert "failed no check" in run("recall", "of", "--tool", "bench-scale", code=1).stderr
    other = cut(shop.book)
    shown = run("equipment", "check", "bench-scale", "503 g").stdout
    assert "soapledger recall of --tool bench-scale" in shown
    assert bars(run, "--tool", "bench-scale") == [shop.batch, other]


def test_a_material_weighed_for_another_is_found_by_its_name(shop: Any, run: Callable[..., Any]) -> None:
    """600 g of olive were asked for; the coconut went in on that line. The shop's own batch is none of it."""
    code = planned(shop.book)
    lines = {line.number: [Weighed(line.target)] for line in lines_of(shop.book, code)}
    olive = next(line for line in lines_of(shop.book, code) if line.material == "olive oil")
    lines[olive.number] = [Weighed(olive.target, shop.coconut)]
    weigh(shop.book, code, lines, on=date(2026, 5, 6), by="Nuala", instead=True, readings=POURED)
    cut_batch(shop.book, code, bars=10, on=date(2026, 5, 6), by="Nuala", bars_mg=1_320_000)
    assert bars(run, "--instead", "coconut oil") == [code]
    said = run("recall", "of", "--instead", "olive oil", code=2).stderr
    assert said == "olive oil was weighed for no other material.\n"


def test_a_version_of_a_recipe_and_a_complaint_at_once_are_one_answer(shop: Any, run: Callable[..., Any]) -> None:
    other = cut(shop.book)
    run("complaint", "add", "too soft", "--batch", other, "--on", "2026-05-24")
    run("complaint", "add", "itched", "--on", "2026-05-25")
    assert bars(run, "--recipe", "plain-bar@1") == [shop.batch, other]
    assert bars(run, "--complaint", "1") == [other]
    assert bars(run, "--complaint", "1", shop.batch) == [shop.batch, other]
    shown = run("recall", "of", "--complaint", "1", "4471/2").stdout
    assert "2 batches, 20 bars" in " ".join(shown.split("\n\n")[0].split())
    assert f"soapledger recall of {shop.olive} --complaint 1 --hold" in shown
    assert "does not say which batch" in run("recall", "of", "--complaint", "2", code=1).stderr
    assert "There is no complaint 3" in run("recall", "of", "--complaint", "3", code=2).stderr
    assert "versions 1 to 1" in run("recall", "of", "--recipe", "plain-bar@2", code=2).stderr


def test_what_is_not_cut_yet_is_named_and_in_no_figure(shop: Any, run: Callable[..., Any]) -> None:
    code = weighed(shop.book, planned(shop.book))
    found = json.loads(run("recall", "of", "--recipe", "plain-bar", "--json").stdout)
    assert found["totals"]["made"] == 10
    doubt = {"what": f"batch {code}, Plain Bar", "why": "poured, and nothing came of it yet"}
    assert doubt in found["cannot_exclude"]


def test_what_would_be_held_is_said_before_and_that_all_is_held_after(shop: Any, run: Callable[..., Any]) -> None:
    """Ten bars and 4.4 kg of the drum are here."""
    shown = run("recall", "lot", "4471/2", "--hold", "-n").stdout
    assert shown.splitlines()[0] == "--hold would hold 10 bars and 1 lot; nothing is held yet."
    assert shop.batch in shown
    assert "on hold" not in run("lot", "show", shop.olive).stdout
    run("recall", "lot", "4471/2", "--hold")
    last = shop.rows().execute("SELECT max(id) FROM entry").fetchone()[0]
    assert run("recall", "lot", "4471/2", "--hold", "-n").stdout == "All of it that is here is on hold already.\n"
    assert "All of it that is here is on hold already." in run("recall", "lot", "4471/2", "--hold").stdout
    assert shop.rows().execute("SELECT max(id) FROM entry").fetchone()[0] == last


@pytest.mark.usefixtures("shop")
@pytest.mark.parametrize(
    ("words", "message"),
    [
        ((), "Give their lot number"),
        (("4471/2", "-n"), "-n says what --hold would hold; add --hold"),
        (("4471/2", "--hold", "--as-of", "3"), "leave out --as-of, or --hold"),
        (("4471/2", "--from", "2026-04-02", "--to", "2026-04-01"), "--to is before --from"),
        (("--product", "green soap"), "green soap"),
        (("--labels", "few"), "The number of the print run"),
        (("--complaint", "soft"), "The number of the complaint"),
    ],
)
def test_bad_input_is_one_line(run: Callable[..., Any], words: tuple[str, ...], message: str) -> None:
    said = run("recall", "of", *words, code=2).stderr
    assert message in said
    assert len(said.splitlines()) == 1


def test_a_number_nobody_knows_brings_the_nearest_and_those_of_the_same_supplier(
    shop: Any, run: Callable[..., Any]
) -> None:
    """4471/3 is one slip from 4471/2, and three from CN-0919 are more than a third of it."""
    deliver(shop.book, DeliveryLine("olive oil", 500_000, "5520/1", 400))
    said = run("recall", "of", "4471/3", "--supplier", "tarnlow", code=2).stderr
    assert "Near it: 4471/2. The last from that supplier: 5520/1, SH 88 A, CN-0919." in said
    assert f"{shop.water} water" in said
    assert len(said.splitlines()) == 1


def test_the_whole_way_is_shown_when_asked(shop: Any, run: Callable[..., Any]) -> None:
    shown = run("recall", "lot", "4471/2", "--way", shop.batch).stdout
    assert shown.splitlines()[0] == "1 step, the shortest way:"
    assert shop.olive in shown
    other = cut(shop.book)
    said = run("recall", "bar", shop.batch, "--way", other, code=1).stderr
    assert said == f"Batch {other} (Plain Bar) is not reached; nothing of it went in at any depth.\n"


def test_as_of_an_entry_before_the_batch_the_lot_went_into_nothing(shop: Any, run: Callable[..., Any]) -> None:
    entry = shop.rows().execute("SELECT entry_id FROM lot WHERE code = ?", (shop.olive,)).fetchone()[0]
    shown = run("recall", "lot", "4471/2", "--as-of", str(entry)).stdout
    assert shown.startswith(f"This is what was known at entry {entry}, written 1 Jun 2026")
    assert "0 batches, 0 bars" in shown.splitlines()[1]
    assert "--hold" not in shown


def test_every_line_of_the_tree_fits_eighty_columns(shop: Any, run: Callable[..., Any]) -> None:
    """600 g of 1000 g of fats, 146.83 g of lye and 293.66 g of water: 600 / 1440.49 = 41.65 %."""
    shown = run("recall", "lot", "4471/2").stdout
    tree = shown.split(f"From lot {shop.olive}:")[1].split("\n\n")[0].splitlines()[1:]
    assert " ".join(" ".join(tree).split()) == (
        f"{shop.batch} Plain Bar, 1 Apr 2026: 600 g (41.7 %), 60 g in a bar; 10 bars, released"
    )
    assert max(map(len, tree)) <= 80


@pytest.mark.parametrize(("used", "doubt"), [(9, True), (10, False)])
def test_where_fewer_labels_of_a_run_are_on_bars_it_is_not_known_on_which(
    shop: Any, run: Callable[..., Any], used: int, doubt: bool
) -> None:
    """Ten bars: with nine labels of the run on them, one bar has none of it, and nobody knows which."""
    run("label", "approve", shop.batch, "--market", "eu", "--stand", "plain words")
    run("label", "print", shop.batch, "--market", "eu", "--count", "11", "--layout", "band", "-o", "labels.pdf")
    run("label", "count", "1", "--spoiled", str(11 - used), "--specimen", "0", "--returned", "0")
    found = json.loads(run("recall", "of", "--labels", "1", "--json").stdout)
    why = "9 labels of run 1 are on bars; on which of the 10 is not known, so all of them are in the answer"
    assert found["totals"]["made"] == 10
    assert ({"what": f"batch {shop.batch}, Plain Bar", "why": why} in found["cannot_exclude"]) is doubt


def test_what_a_count_missed_is_not_said_to_be_found(shop: Any, run: Callable[..., Any]) -> None:
    run("lot", "count", shop.batch, "9")
    shown = run("recall", "bar", shop.batch).stdout
    assert "found at a count" not in shown
    assert "1  missing at a count" in shown


@pytest.mark.parametrize(
    ("question", "words"),
    [
        (Question((Start("number", "4471/2"), Start("bar", "26-001-4"))), "4471/2 and bar 26-001-4"),
        (
            Question((Start("product", "Plain Bar"),), first=date(2026, 5, 1), last=date(2026, 5, 31)),
            "product Plain Bar, from 1 May 2026 to 31 May 2026",
        ),
        (Question((Start("number", "1"),), "tarnlow", "olive oil"), "1, only olive oil from tarnlow"),
        (Question((), "tarnlow", "olive oil", last=date(2026, 5, 1)), "olive oil from tarnlow, to 1 May 2026"),
    ],
)
def test_what_was_asked_is_said_with_what_narrows_it(question: Question, words: str) -> None:
    assert asked_for(question) == words


def test_codes_stand_in_the_order_the_batches_were_made() -> None:
    """From the thousandth batch of a year on the code is one sign longer."""
    codes = ("25-1000-0", "26-001-4", "25-999-7")
    assert sorted(codes, key=in_the_order_made) == ["25-999-7", "25-1000-0", "26-001-4"]
