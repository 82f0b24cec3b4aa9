"""Bars without a label: asked about at the release, settled once for a product and an outlet.

What the law asks of a notice is not decided here; the days are those of the decisions, the day itself counting in.
"""

import json
from datetime import date, timedelta
from typing import Any

import pytest
from freezegun import freeze_time
from making import CHECKED, LOOKED_GOOD, cut
from once import once
from shop import Shop

from ledger.domain.release.bars import Passing
from ledger.domain.release.releasing import Releasing, TooFewLabels
from ledger.errors import BadInput, Refused
from ledger.operations.keep.undo import undo
from ledger.operations.label.bare import Bare, end_bare, settle_bare
from ledger.operations.label.labels import Counted, LabelRequest, approve_label, count_run, print_labels
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.release.release import pass_bars, release_bars
from ledger.operations.sell.add_stall import add_stall
from ledger.operations.sell.dispatch import dispatch
from ledger.operations.sell.gift import gift
from ledger.operations.sell.resell import resell
from ledger.operations.sell.stall_back import stall_back
from ledger.operations.sell.stall_out import stall_out
from ledger.operations.sell.take_back import take_back
from ledger.operations.stock.lots import waste_lot
from ledger.rows.batch import find_batch
from ledger.views.label.bare import bars_without

PASSED = date(2026, 6, 3)
DAY = timedelta(days=1)
REFUSED = "0 bars in the workshop have a label, and 1 would leave; 10 without one stay"


@pytest.fixture
def packed(shop: Shop) -> str:
    return str(once(pack)(shop))


def pack(shop: Shop) -> str:
    """Ten bars passed for packing; no label, one stall, one shop."""
    add_stall(shop.book, "Quay market")
    add_customer(shop.book, CustomerDetails("The Heron"), kind="shop", code="heron")
    return passed(shop)


def passed(shop: Shop) -> str:
    code = cut(shop.book)
    pass_bars(shop.book, code, Passing(on=PASSED, by="Nuala"))
    return code


def release(shop: Shop, code: str, **more: Any) -> int:
    return release_bars(shop.book, code, Releasing(on=PASSED, by="Nuala", anyway="a trial", checks=LOOKED_GOOD, **more))


@pytest.fixture
def released(shop: Shop, packed: str) -> None:
    once(release_bare)(shop, packed)


def release_bare(shop: Shop, code: str) -> None:
    release(shop, code, bare="sold from the tray")


@pytest.fixture
def seven(shop: Shop, packed: str) -> None:
    once(with_labels)(shop, packed, 7)


def bare(shop: Shop, on: date = PASSED, *, stall: str | None = "Quay market", customer: str | None = None) -> None:
    asked = Bare("plain-bar", stall, customer, on, "Nuala", "on the tray at the stall")
    settle_bare(shop.book, asked, notice="notice-shelf", code_on="tray")


def with_labels(shop: Shop, code: str, number: int) -> None:
    request = LabelRequest(code, "eu", "band", number, PASSED, layout_source="layout", sheet_source="sheet")
    approve_label(shop.book, request, by="Nuala")
    print_labels(shop.book, request, lambda _: b"drawn")
    count_run(shop.book, 1, Counted(0, 0, specimen=0), on=PASSED)


def to_stall(shop: Shop, code: str, number: int = 1, on: date = PASSED) -> None:
    stall_out(shop.book, "Quay market", {code: number}, on=on)


def to_heron(shop: Shop, code: str, number: int = 1, on: date = PASSED) -> None:
    dispatch(shop.book, "heron", {code: number}, on=on, price_minor=400, note=None)


def without(shop: Shop, code: str) -> int:
    with shop.book.look() as rows:
        return bars_without(rows, find_batch(rows, code))


@pytest.mark.usefixtures("released")
def test_bars_released_bare_leave_for_no_outlet_that_was_not_settled(shop: Shop, packed: str) -> None:
    way = rf"{REFUSED} until .*soapledger label bare plain-bar --{{}} --notice notice-shelf --code-on tray --reason WHY"
    with pytest.raises(Refused, match=way.format("stall quay-market")):
        to_stall(shop, packed)
    with pytest.raises(Refused, match=way.format("to heron")):
        to_heron(shop, packed)
    with pytest.raises(Refused, match=way.format("to heron")):
        gift(shop.book, {packed: 1}, to="The Heron", on=PASSED)
    with pytest.raises(Refused, match=rf"{REFUSED} until labels for them .* -o more.pdf$"):
        gift(shop.book, {packed: 1}, to="a neighbour", on=PASSED)


@pytest.mark.parametrize(("days", "open_"), [(-1, False), (0, True), (1, True)])
@pytest.mark.usefixtures("released")
def test_from_the_day_it_is_settled_they_leave_for_that_outlet_alone(
    shop: Shop, packed: str, days: int, open_: bool
) -> None:
    bare(shop, PASSED + 2 * DAY)
    on = PASSED + 2 * DAY + days * DAY
    if open_:
        to_stall(shop, packed, 10, on)
    else:
        with pytest.raises(Refused, match=REFUSED):
            to_stall(shop, packed, on=on)
    if not open_:
        return
    stall_back(shop.book, "Quay market", {packed: 10}, on=on)
    with pytest.raises(Refused, match=REFUSED):
        to_heron(shop, packed, on=on)


@pytest.mark.parametrize(("days", "open_"), [(-1, True), (0, False), (1, False)])
@pytest.mark.usefixtures("released")
def test_it_is_taken_back_from_a_day_on(shop: Shop, packed: str, days: int, open_: bool) -> None:
    bare(shop, stall=None, customer="heron")
    end = PASSED + 5 * DAY
    end_bare(shop.book, Bare("plain-bar", None, "heron", end, "Nuala", "they want bands"))
    if open_:
        to_heron(shop, packed, on=end + days * DAY)
    else:
        with pytest.raises(Refused, match=REFUSED):
            to_heron(shop, packed, on=end + days * DAY)


def test_a_product_that_is_settled_somewhere_is_not_asked_about_again(shop: Shop, packed: str) -> None:
    bare(shop)
    assert release(shop, packed) == 10
    to_stall(shop, packed, 4)
    with pytest.raises(Refused, match="6 without one stay"):
        to_heron(shop, packed)
    row = shop.rows().execute("SELECT reason FROM decision WHERE verdict = 'released' ORDER BY id DESC").fetchone()
    assert "released bare: for Quay market alone, as settled before" in row[0]


def test_one_that_is_taken_back_everywhere_is_asked_about(shop: Shop, packed: str) -> None:
    bare(shop, PASSED - DAY)
    end_bare(shop.book, Bare("plain-bar", "Quay market", None, PASSED, "Nuala", "no tray any more"))
    with pytest.raises(TooFewLabels, match="no label was printed for it"):
        release(shop, packed)


@pytest.mark.usefixtures("seven")
def test_of_bars_that_went_where_they_are_sold_bare_those_without_a_label_are_taken_first(
    shop: Shop, packed: str
) -> None:
    """Ten bars, seven labels, three without: two and then two go to the stall; six with a label stay."""
    bare(shop)
    release(shop, packed)
    assert without(shop, packed) == 3
    to_stall(shop, packed, 2)
    assert without(shop, packed) == 1
    with pytest.raises(Refused, match="7 bars in the workshop have a label, and 8 would leave; 1 without one stays"):
        to_heron(shop, packed, 8)
    to_stall(shop, packed, 2)
    assert without(shop, packed) == 0
    stall_back(shop.book, "Quay market", {packed: 3}, on=PASSED)  # one was sold, three are home
    assert without(shop, packed) == 2
    to_heron(shop, packed, 7)
    with pytest.raises(Refused, match="0 bars in the workshop have a label, and 1 would leave; 2 without one stay"):
        to_heron(shop, packed)


@pytest.mark.usefixtures("seven")
def test_of_bars_back_on_sale_nobody_knows_whether_they_have_a_label(shop: Shop, packed: str) -> None:
    bare(shop, stall=None, customer="heron")
    release(shop, packed)
    to_heron(shop, packed, 3)
    assert without(shop, packed) == 0
    take_back(shop.book, {packed: 1}, customer="heron", stall=None, on=PASSED, reason="too many")
    assert without(shop, packed) == 0
    resell(shop.book, {packed: 1}, on=PASSED, by="Nuala", reason="as good as new")
    assert without(shop, packed) == 1


@pytest.mark.usefixtures("seven")
def test_a_tester_or_one_for_herself_needs_no_label(shop: Shop, packed: str) -> None:
    release(shop, packed, keep=True)
    waste_lot(shop.book, packed, 3, place="workshop", on=PASSED, reason="testers")
    to_heron(shop, packed, 7)


@pytest.mark.usefixtures("seven")
def test_bars_that_were_kept_may_go_where_it_is_settled_later(shop: Shop, packed: str) -> None:
    assert release(shop, packed, keep=True) == 7
    to_heron(shop, packed, 7)
    with pytest.raises(Refused, match="3 without one stay"):
        to_stall(shop, packed)
    bare(shop)
    to_stall(shop, packed, 3)


def test_what_an_earlier_program_decided_of_a_batch_holds_wherever_its_bars_go(shop: Shop) -> None:
    """The shop's batch was released so, with no label and no outlet."""
    add_stall(shop.book, "Quay market")
    add_customer(shop.book, CustomerDetails("The Heron"), kind="shop", code="heron")
    to_stall(shop, shop.batch)
    to_heron(shop, shop.batch)
    gift(shop.book, {shop.batch: 1}, to="a neighbour", on=PASSED)


@pytest.mark.usefixtures("released")
def test_what_bars_went_by_is_not_taken_back_as_an_entry(shop: Shop, packed: str) -> None:
    bare(shop)
    entry = int(shop.rows().execute("SELECT max(id) FROM entry").fetchone()[0])
    to_stall(shop, packed)
    with pytest.raises(Refused, match=rf"entry {entry + 1} \(Took 1 bar of .* to Quay market\)"):
        undo(shop.book, entry)


@pytest.mark.usefixtures("packed")
@pytest.mark.parametrize(
    ("stall", "customer", "reason", "notice", "error", "says"),
    [
        ("Quay market", "heron", "so", "x", BadInput, "Name one outlet"),
        (None, None, "so", "x", BadInput, "Name one outlet"),
        ("Quay market", None, " ", "x", BadInput, "Say why"),
        ("Quay market", None, "so", " ", BadInput, "Which notice stands beside the bars"),
        ("Fair", None, "so", "x", BadInput, "Fair"),
    ],
)
def test_what_is_no_answer_is_not_booked(
    shop: Shop, stall: str | None, customer: str | None, reason: str, notice: str, error: Any, says: str
) -> None:
    before = shop.rows().execute("SELECT count(*) FROM entry").fetchone()[0]
    with pytest.raises(error, match=says):
        settle_bare(
            shop.book, Bare("plain-bar", stall, customer, PASSED, "Nuala", reason), notice=notice, code_on="bar"
        )
    assert shop.rows().execute("SELECT count(*) FROM entry").fetchone()[0] == before


@pytest.mark.usefixtures("packed")
def test_nothing_is_settled_twice_nor_before_what_was_settled_last(shop: Shop) -> None:
    asked = Bare("plain-bar", "Quay market", None, PASSED, "Nuala", "so")
    with pytest.raises(Refused, match="not settled that Plain Bar is sold without a label at Quay market"):
        end_bare(shop.book, asked)
    bare(shop)
    with pytest.raises(Refused, match="settled already"):
        bare(shop)
    with pytest.raises(Refused, match="was settled from 3 Jun 2026 on"):
        bare(shop, PASSED - DAY)


def test_the_release_asks_what_becomes_of_them(packed: str, run: Any) -> None:
    words = ("release", packed, "--anyway", "a trial", *CHECKED)
    with freeze_time("2026-06-10 09:00:00"):
        for answer in ("label\n", ""):
            refused = run(*words, code=1, input=answer).stderr
            assert f"Print them: soapledger label approve {packed}" in " ".join(refused.split())
        assert "is not what becomes of them" in run(*words, code=1, input="keep\n").stderr  # none has a label
        said = " ".join(run(*words, input="bare\nfrom the tray\n").stdout.split())
        assert "10 bars here without a label may leave once they have one, or" in said
        assert "soapledger label bare plain-bar --stall STALL (or --to CUSTOMER)" in said


@pytest.mark.usefixtures("seven")
def test_the_release_offers_to_keep_them_where_some_have_a_label(packed: str, run: Any) -> None:
    with freeze_time("2026-06-10 09:00:00"):
        said = run("release", packed, "--anyway", "a trial", *CHECKED, input="keep\n").stdout
    assert "7 bars may leave" in said


def test_it_is_settled_by_the_command_and_shown(packed: str, run: Any) -> None:
    with freeze_time("2026-06-10 09:00:00"):
        run("release", packed, "--anyway", "a trial", "--bare", "from the tray", *CHECKED)
        said = run(
            "label", "bare", "plain-bar", "--stall", "quay", input="notice-shelf\ntray\nsold by the piece\n"
        ).stdout
        words = " ".join(said.split())
        assert "Plain Bar is sold without a label at Quay market from 10 Jun 2026" in words
        assert "the list of ingredients alone (Art 19(3)" in words
        assert "is the rule of that country, and for a person" in words
        (row,) = json.loads(run("label", "bare", "--json").stdout)
        assert (row["outlet"], row["notice"], row["code_on"], row["bare"]) == (
            "Quay market",
            "notice-shelf",
            "tray",
            True,
        )
        for shown in (("batch", "show", packed), ("label", "check", packed)):
            text = " ".join(run(*shown).stdout.split())
            assert "10 bars here without a label may leave for Quay market alone." in text
            assert (
                "without a label from 10 Jun 2026, as Nuala decided: sold by the piece. Notice: notice-shelf; " in text
            )
        run("label", "bare", "plain-bar", "--stall", "quay", "--end", "--reason", "no tray")
        assert "again" in run("label", "bare").stdout
        wrong = run(
            "label", "bare", "plain-bar", "--stall", "quay", "--code-on", "floor", "--notice", "x", code=2
        ).stderr
        assert "write bar or tray" in wrong


def test_a_notice_is_on_no_bar_and_counts_for_none(shop: Shop, packed: str, run: Any, tmp_path: Any) -> None:
    with freeze_time("2026-06-10 09:00:00"):
        words = ("label", "print", packed, "--market", "eu", "--layout", "notice-shelf", "-o", "n.pdf")
        assert "Nobody approved" in run(*words, code=1).stderr
        run("label", "approve", packed, "--market", "eu")
        before = shop.rows().execute("SELECT count(*) FROM entry").fetchone()[0]
        assert f"1 notice for batch {packed} (eu) in n.pdf" in run(*words).stdout
        assert (tmp_path / "n.pdf").read_bytes().startswith(b"%PDF")
        assert json.loads(run("label", "runs", packed, "--json").stdout) == []
    assert shop.rows().execute("SELECT count(*) FROM entry").fetchone()[0] == before
