"""Bars at a shop on sale or return: hers until its count, guarded as stalls are, and known wherever bars are."""

import json
from collections.abc import Callable
from datetime import date
from typing import Any

import pytest
from making import LOOKED_GOOD, planned, weighed
from once import once
from shop import Shop, released_before

from ledger.domain.release.bars import Passing
from ledger.domain.release.releasing import Releasing
from ledger.domain.shop.counting import Gone, Lying, counted
from ledger.errors import BadInput, Refused
from ledger.operations.bench.cut import cut_batch
from ledger.operations.keep.check import check
from ledger.operations.keep.undo import undo
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.release.release import pass_bars
from ledger.operations.sell.dispatch import dispatch
from ledger.operations.sell.take_back import take_back
from ledger.operations.shop.back import back_from_shop
from ledger.operations.shop.count import count_shop
from ledger.operations.shop.orders import add_order, change_order
from ledger.operations.shop.terms import Agreed, agree
from ledger.operations.stock.lots import decide_lots
from ledger.rows.bars import bars_with
from ledger.rows.history import last_entry
from ledger.rows.lot import find_lot, whereabouts
from ledger.rows.lot import places as known_places
from ledger.rows.sell.sale import lines_of, sales
from ledger.storage.personal import PersonDetails
from ledger.storage.tables.sale import Price, TaxRate
from ledger.views.shop.consignment import at_shops
from ledger.views.shop.orders import order_view

pytestmark = pytest.mark.usefixtures("frozen")
OUT, COUNT = date(2026, 5, 12), date(2026, 5, 26)
OLD, NEW = 11, 12


@pytest.fixture
def hall(shop: Shop) -> Shop:
    once(agreed)(shop)
    return shop


def agreed(shop: Shop) -> None:
    """A shop on sale or return that keeps 30 % and pays in 14 days."""
    details = CustomerDetails("Tern Hall", PersonDetails(phone="020 910 0177", address="1 Weir Row, Port Emmer"))
    add_customer(shop.book, details, kind="shop", code="tern-hall")
    agree(shop.book, "tern-hall", Agreed(True, 300_000, None, 14), on=date(2026, 5, 4))


@pytest.fixture
def six(hall: Shop) -> Shop:
    """Six of the ten bars stand there."""
    once(bring_six)(hall)
    return hall


def bring_six(shop: Shop) -> None:
    bring(shop, {shop.batch: 6})


def second(shop: Shop) -> str:
    """Ten more bars, of a batch made later; released."""
    code = weighed(shop.book, planned(shop.book, on=date(2026, 4, 3)), on=date(2026, 4, 3))
    cut_batch(shop.book, code, bars=10, on=date(2026, 4, 4), by="Nuala", bars_mg=1_320_000)
    packed = date(2026, 5, 4)
    pass_bars(shop.book, code, Passing(on=packed, by="Nuala"))
    released_before(
        shop.book, code, Releasing(on=packed, by="Nuala", anyway="a trial", bare="a trial", checks=LOOKED_GOOD)
    )
    return code


def bring(shop: Shop, bars: dict[str, int], on: date = OUT, **more: Any) -> None:
    dispatch(shop.book, "tern-hall", bars, **{"on": on, "price_minor": None, "note": None} | more)


def here(shop: Shop, code: str = "") -> dict[str, int]:
    rows = shop.rows()
    return {place.kind: held for place, held in whereabouts(rows, find_lot(rows, code or shop.batch).id)}


# By hand: six of the old lot and four of the new stood there.
@pytest.mark.parametrize(
    ("still", "missing", "sold", "lost"),
    [
        (10, 0, [], []),
        (7, 0, [Gone(OLD, 3, (NEW,))], []),
        (2, 0, [Gone(OLD, 6, (NEW,)), Gone(NEW, 2, (OLD,))], []),
        (2, 3, [Gone(OLD, 5, (NEW,))], [Gone(OLD, 1, (NEW,)), Gone(NEW, 2, (OLD,))]),
        (0, 0, [Gone(OLD, 6), Gone(NEW, 4)], []),
        (0, 10, [], [Gone(OLD, 6), Gone(NEW, 4)]),
        (0, 4, [Gone(OLD, 6, (NEW,))], [Gone(NEW, 4, (OLD,))]),
    ],
)
def test_the_oldest_are_taken_to_be_sold_first(still: int, missing: int, sold: list[Gone], lost: list[Gone]) -> None:
    found = counted([Lying(OLD, 6), Lying(NEW, 4)], still=still, missing=missing)
    assert (list(found.sold), list(found.missing)) == (sold, lost)


def test_one_batch_alone_is_not_assumed_unless_an_earlier_count_left_it_open() -> None:
    assert counted([Lying(OLD, 6)], still=2).sold == (Gone(OLD, 4),)
    assert counted([Lying(NEW, 6)], still=0, also=[OLD, NEW]).sold == (Gone(NEW, 6, (OLD,)),)


def test_a_dispatch_moves_them_there_and_sells_nothing(six: Shop) -> None:
    assert here(six) == {"workshop": 4, "consignment": 6}
    assert sales(six.rows()) == []
    with pytest.raises(BadInput, match="priced and paid at the shop's count"):
        bring(six, {six.batch: 1}, price_minor=450)
    with pytest.raises(Refused, match="4 bars in the workshop; 5 cannot leave"):
        bring(six, {six.batch: 5})
    assert check(six.rows()).findings == ()


@pytest.mark.parametrize(("day", "there"), [(3, False), (4, True), (5, True)])
def test_terms_hold_from_their_day_on(hall: Shop, day: int, there: bool) -> None:
    """Agreed on 4 May, the day the bars were released."""
    if not there:
        agree(hall.book, "tern-hall", Agreed(reduction_ppm=0), on=date(2026, 5, 20))
        with pytest.raises(Refused, match="only released bars leave"):
            bring(hall, {hall.batch: 1}, on=date(2026, 5, day))
        return
    bring(hall, {hall.batch: 1}, on=date(2026, 5, day))
    assert here(hall)["consignment"] == 1


def test_bars_on_hold_do_not_go_there_and_the_file_holds_it(hall: Shop) -> None:
    decide_lots(hall.book, [hall.batch], verdict="on hold", on=date(2026, 5, 10), by="Nuala", reason="a doubt")
    with pytest.raises(Refused, match="only released bars leave"):
        bring(hall, {hall.batch: 1})
    lot, places = find_lot(hall.rows(), hall.batch).id, {one.kind: one.id for one in known_places(hall.rows())}
    with pytest.raises(Refused, match="only released bars leave"), hall.book.write("dispatch") as tx:
        tx.transfer([(lot, 1)], source_id=places["workshop"], target_id=places["consignment"], on=OUT)


def test_a_count_sells_what_is_gone_less_commission(hall: Shop) -> None:
    """Four of six sold at 6.50: 26.00, of which the shop keeps 30 %, 7.80; VAT of 23 % within 26.00 is 4.86."""
    with hall.book.write("price set") as tx:
        tx.add(Price(on=date(2026, 5, 1), price_minor=650))
        tx.add(TaxRate(on=date(2026, 5, 1), rate_ppm=230_000, name="VAT"))
        tx.say("Set.")
    bring(hall, {hall.batch: 6})
    done = count_shop(hall.book, "tern-hall", {"plain-bar": 2}, on=COUNT)
    assert (done.amount_minor, done.commission_minor, done.still, done.missing) == (2600, 780, 2, 0)
    (sale,) = sales(hall.rows())
    assert (sale.pay_by, sale.terms) == (date(2026, 6, 9), "sale or return, 30.0 % commission")
    (line,) = lines_of(hall.rows(), [sale.id])[sale.id]
    assert (line.bars, line.gross_minor, line.tax_minor) == (4, 2600, 486)
    assert hall.rows().execute("SELECT count(*) FROM assumed_batch").fetchone()[0] == 0
    assert here(hall) == {"workshop": 4, "consignment": 2}
    assert check(hall.rows()).findings == ()


def test_batches_are_assumed_oldest_first_and_every_other_is_marked(hall: Shop) -> None:
    new = once(second)(hall)
    bring(hall, {hall.batch: 3, new: 3})
    done = count_shop(hall.book, "tern-hall", {"plain-bar": 2}, on=COUNT, price_minor=600)
    assert [(one.batch, one.bars, one.assumed) for one in done.sold] == [(hall.batch, 3, True), (new, 1, True)]
    pairs = hall.rows().execute(
        "SELECT l.code, o.code FROM assumed_batch a JOIN movement v ON v.id = a.movement_id "
        "JOIN lot l ON l.id = v.lot_id JOIN lot o ON o.id = a.lot_id ORDER BY a.id"
    )
    assert [tuple(row) for row in pairs] == [(hall.batch, new), (new, hall.batch)]
    undo(hall.book, last_entry(hall.rows()))
    assert sales(hall.rows()) == []
    exact = count_shop(hall.book, "tern-hall", {hall.batch: 3, new: 1}, on=COUNT, price_minor=600)
    assert [(one.batch, one.bars, one.assumed) for one in exact.sold] == [(new, 2, False)]
    assert check(hall.rows()).findings == ()


def test_the_commission_of_bars_that_come_back_is_given_back(hall: Shop, run: Callable[..., Any]) -> None:
    """By hand: 3 at 5.50 are 16.50, 30 % of it 4.95. One back is 5.50 less 1.65."""
    bring(hall, {hall.batch: 3})
    count_shop(hall.book, "tern-hall", {"plain-bar": 0}, on=COUNT, price_minor=550)

    def owed() -> int:
        return int(json.loads(run("sale", "show", "1", "--json").stdout)["owed_minor"])

    assert owed() == 1155
    run("invoice", "make", "tern-hall", "--yes")
    said = run("return", f"{hall.batch}=1", "--from", "tern-hall").stdout
    assert "5.50 EUR is taken back, less 1.65 EUR commission that the shop gives back." in said
    assert owed() == 770
    run("sale", "pay", "1", "7.70", "--bank")
    said = run("return", f"{hall.batch}=1", "--from", "tern-hall", "--bank").stdout
    assert "less 1.65 EUR commission that the shop gives back, 3.85 EUR paid back." in " ".join(said.split())
    assert owed() == 0
    said = run("sale", "credit", "1", "--reason", "the last one broke").stdout
    assert "Credit 4 of sale 1: 5.50 EUR, less 1.65 EUR commission that the shop gives back." in said
    assert "3.85 EUR is still to be paid back of sale 1. When it is:\n  soapledger sale pay 1 3.85 --back" in said
    note = run("invoice", "credit", "1").stdout
    assert "Credit note 2 for invoice 1 to Tern Hall: -11.55 EUR" in " ".join(note.split())
    assert "4.95 EUR commission is given back by the shop, and off already." in note
    shown = run("sale", "show", "2").stdout
    assert "1.65 EUR of the commission is given back." in shown
    assert "commission given back, 1.65 EUR" in shown
    assert "1 and 1 credit note, the last 2 of" in run("customer", "show", "tern-hall").stdout
    taken = json.loads(run("cost", hall.batch, "--json").stdout)["by_outlet"]
    assert [(one["taken_minor"], one["returned_minor"], one["fees_minor"]) for one in taken] == [(1650, 1650, 0)]
    assert check(hall.rows()).findings == ()


def test_what_the_shop_lost_is_not_sold(six: Shop) -> None:
    done = count_shop(six.book, "tern-hall", {"plain-bar": 2}, on=COUNT, missing={"plain": 1}, price_minor=600)
    assert (done.missing, [one.bars for one in done.sold]) == (1, [3])
    assert "missing at a count" in json.dumps(
        [tuple(row) for row in six.rows().execute("SELECT kind, note FROM movement")]
    ).replace("missing at the shop's count", "missing at a count")
    assert check(six.rows()).findings == ()


def test_what_a_count_refuses_in_one_line(hall: Shop) -> None:
    with pytest.raises(Refused, match="Nothing of yours stands at Tern Hall"):
        count_shop(hall.book, "tern-hall", {"plain-bar": 0}, on=COUNT)
    bring(hall, {hall.batch: 6})
    entry = last_entry(hall.rows())
    with pytest.raises(Refused, match=r"6 bars of Plain Bar stand at Tern Hall; 7 still there is more"):
        count_shop(hall.book, "tern-hall", {"plain-bar": 7}, on=COUNT)
    with pytest.raises(Refused, match=r"6 still there and 1 missing is more"):
        count_shop(hall.book, "tern-hall", {"plain-bar": 6}, on=COUNT, missing={"plain-bar": 1})
    with pytest.raises(Refused, match="All of it is still at Tern Hall"):
        count_shop(hall.book, "tern-hall", {"plain-bar": 6}, on=COUNT)
    with pytest.raises(BadInput, match="How many bars of Plain Bar"):
        count_shop(hall.book, "tern-hall", {}, on=COUNT)
    with pytest.raises(BadInput, match="counted twice"):
        count_shop(hall.book, "tern-hall", {"plain-bar": 1, hall.batch: 1}, on=COUNT)
    with pytest.raises(BadInput, match="brought to Tern Hall on 12 May 2026"):
        count_shop(hall.book, "tern-hall", {"plain-bar": 1}, on=date(2026, 5, 11))
    add_customer(hall.book, CustomerDetails("Gull Row", PersonDetails()), kind="shop", code="gull-row")
    with pytest.raises(Refused, match="takes nothing on sale or return"):
        count_shop(hall.book, "gull-row", {"plain-bar": 0}, on=COUNT)
    assert last_entry(hall.rows()) == entry + 1
    count_shop(hall.book, "tern-hall", {"plain-bar": 5}, on=OUT)


def test_bars_that_come_home_go_to_the_returns_shelf(six: Shop) -> None:
    with pytest.raises(Refused, match=r"6 bars of batch .* stand at Tern Hall by 26 May 2026; 7 cannot come back"):
        back_from_shop(six.book, "tern-hall", {six.batch: 7}, on=COUNT)
    with pytest.raises(Refused, match=r"0 bars of batch .* What was not sold there: soapledger consignment back tern"):
        take_back(six.book, {six.batch: 1}, customer="tern-hall", stall=None, on=COUNT, reason=None)
    with pytest.raises(Refused, match="0 bars"):
        back_from_shop(six.book, "tern-hall", {"plain-bar": 1}, on=date(2026, 5, 11))
    back_from_shop(six.book, "tern-hall", {"plain-bar": 6}, on=COUNT)
    assert here(six) == {"workshop": 4, "returns": 6}
    assert at_shops(six.rows()) == ()
    undo(six.book, last_entry(six.rows()))
    assert here(six) == {"workshop": 4, "consignment": 6}
    assert check(six.rows()).findings == ()


def test_a_batch_that_was_taken_to_be_gone_and_is_there_is_told_what_to_do(hall: Shop) -> None:
    """Three of each; two are sold and taken to be of the old one, then all three of the old one come home."""
    new = once(second)(hall)
    bring(hall, {hall.batch: 2, new: 3})
    count_shop(hall.book, "tern-hall", {"plain-bar": 3}, on=COUNT, price_minor=600)
    counted_in = last_entry(hall.rows())
    with pytest.raises(Refused, match=f"taken to be gone, the oldest first.*count by batch.*book them as {new}"):
        back_from_shop(hall.book, "tern-hall", {hall.batch: 2}, on=COUNT)
    undo(hall.book, counted_in)
    count_shop(hall.book, "tern-hall", {hall.batch: 2, new: 1}, on=COUNT, price_minor=600)
    back_from_shop(hall.book, "tern-hall", {hall.batch: 2}, on=COUNT)
    with pytest.raises(BadInput, match=f"No bars of batch {hall.batch} stand at Tern Hall"):
        back_from_shop(hall.book, "tern-hall", {hall.batch: 1}, on=COUNT)


def test_what_was_assumed_is_settled_once_nothing_of_the_product_is_left(hall: Shop) -> None:
    new = once(second)(hall)
    bring(hall, {hall.batch: 2, new: 3})
    assert count_shop(hall.book, "tern-hall", {"plain-bar": 3}, on=COUNT, price_minor=600).sold[0].assumed
    bring(hall, {new: 2}, on=COUNT)
    assert count_shop(hall.book, "tern-hall", {"plain-bar": 1}, on=COUNT, price_minor=600).sold[0].assumed
    assert count_shop(hall.book, "tern-hall", {"plain-bar": 0}, on=COUNT, price_minor=600).sold[0].assumed
    bring(hall, {new: 2}, on=COUNT)
    assert not count_shop(hall.book, "tern-hall", {"plain-bar": 1}, on=COUNT, price_minor=600).sold[0].assumed


def test_which_of_two_batches_came_home_is_read_from_the_bars(hall: Shop) -> None:
    new = once(second)(hall)
    bring(hall, {hall.batch: 3, new: 3})
    with pytest.raises(BadInput, match=f"Read the code on them: {hall.batch} or {new}"):
        back_from_shop(hall.book, "tern-hall", {"plain-bar": 1}, on=COUNT)


def test_a_recall_calls_the_shop_and_finds_them_there(six: Shop, run: Callable[..., Any]) -> None:
    lot = find_lot(six.rows(), six.batch).id
    assert [one.bars for one in bars_with(six.rows(), [lot])] == [6]
    found = json.loads(run("recall", "bar", six.batch, "--json").stdout)
    assert found["totals"]["at_shop"] == 6
    assert found["totals"]["unexplained"] == 0
    assert [(one["name"], one["bars"], one["phone"]) for one in found["call"]] == [("Tern Hall", 6, "020 910 0177")]
    assert "6 at a shop" in run("recall", "bar", six.batch).stdout
    count_shop(six.book, "tern-hall", {"plain-bar": 2}, on=COUNT, missing={"plain-bar": 1})
    again = json.loads(run("recall", "bar", six.batch, "--json").stdout)
    assert (again["totals"]["at_shop"], again["totals"]["sold"], again["totals"]["unexplained"]) == (2, 3, 1)
    assert [(one["name"], one["bars"]) for one in again["call"]] == [("Tern Hall", 5)]


def test_an_order_of_theirs_is_filled_without_a_sale(hall: Shop) -> None:
    order = add_order(hall.book, "tern-hall", {"plain-bar": 6}, on=OUT, due_on=date(2026, 6, 5))
    bring(hall, {hall.batch: 4}, order_id=order)
    found = order_view(hall.rows(), order, OUT)
    assert (found.bars, found.gone, found.still) == (6, 4, 2)
    change_order(hall.book, order, {"plain-bar": -1})
    found = order_view(hall.rows(), order, OUT)
    assert (found.bars, found.gone, found.still) == (5, 4, 1)
    undo(hall.book, last_entry(hall.rows()))
    undo(hall.book, last_entry(hall.rows()))
    assert order_view(hall.rows(), order, OUT).still == 6


def test_terms_that_bars_stand_on_are_not_taken_back_and_may_end(hall: Shop) -> None:
    entry = last_entry(hall.rows())
    bring(hall, {hall.batch: 6})
    with pytest.raises(Refused, match="depends on it"):
        undo(hall.book, entry)
    agree(hall.book, "tern-hall", Agreed(False, 0), on=COUNT)
    bring(hall, {hall.batch: 1}, on=COUNT, price_minor=450)
    assert len(sales(hall.rows())) == 1
    assert count_shop(hall.book, "tern-hall", {"plain-bar": 5}, on=COUNT, price_minor=600).commission_minor == 0
    agree(hall.book, "tern-hall", Agreed(True), on=COUNT)
    assert hall.rows().execute("SELECT count(*) FROM place WHERE kind = 'consignment'").fetchone()[0] == 1


def test_the_commands(hall: Shop, run: Callable[..., Any]) -> None:
    assert "Nothing of yours stands at a shop" in run("consignment", "list").stdout
    agreed = run("customer", "terms", "tern-hall", "--commission", "35%", "--pay-in", "30", "--country", "ie").stdout
    assert "sale or return, the shop keeps 35.0 %, pays in 30 days, goes to IE" in " ".join(agreed.split())
    assert "delivery-note --entry" in run("dispatch", "tern-hall", f"{hall.batch}=6").stdout
    assert "6 bars of yours at 1 shop" in run("consignment", "list").stdout
    assert json.loads(run("consignment", "list", "--json").stdout)[0]["batch"] == hall.batch
    assert "Tern Hall" in run("stock", "--kind", "soap").stdout
    assert "at a shop" in run("batch", "show", hall.batch).stdout
    told = run("consignment", "count", "tern-hall", "--price", "6.50", input="2\n")
    assert "4 bars sold (sale 1), 2 still there" in told.stdout
    assert "26.00 EUR less 9.10 EUR commission: 16.90 EUR for you" in told.stdout
    assert "No price is known" in run("consignment", "count", "tern-hall", "plain=1", "--missing", "plain=0").stderr
    assert "resell" in run("consignment", "back", "tern-hall", "plain=1").stdout
    assert "say different things" in run("customer", "terms", "tern", "--sale-or-return", "--bought", code=2).stderr
    assert "What is agreed" in run("customer", "terms", "tern", code=2).stderr
    assert "its two letters" in run("customer", "terms", "tern", "--country", "Eire", code=2).stderr
    run("customer", "terms", "tern", "--bought")
    assert "them. Write --reduction" in run("customer", "terms", "tern", "--commission", "30%", code=2).stderr
    assert check(hall.rows()).findings == ()


def test_the_same_bars_twice_and_a_price_ten_times_off_are_asked_about(hall: Shop, run: Callable[..., Any]) -> None:
    with hall.book.write("price set") as tx:
        tx.add(Price(on=date(2026, 5, 1), price_minor=650))
        tx.say("Set.")
    run("dispatch", "tern", f"{hall.batch}=3")
    again = run("dispatch", "tern", f"{hall.batch}=3", input="n\n", code=1)
    assert "took the same bars there already" in again.stderr
    run("dispatch", "tern", f"{hall.batch}=2")
    slip = run("consignment", "count", "tern", "plain=2", "--price", "65", input="n\n", code=1)
    assert "That is 65.00 EUR a bar; they usually bring 6.50 EUR." in slip.stderr
    told = run("consignment", "count", "tern", "plain=4", "--missing", "plain=1")
    assert "0 bars sold, 1 bar missing, 4 still there" in told.stdout
    assert "amount" not in told.stdout
    run("consignment", "count", "tern", "plain=2", "--price", "65", "--yes")
