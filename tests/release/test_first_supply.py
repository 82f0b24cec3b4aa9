"""Bars under labels of an earlier list of allergens: by the day they were first supplied, at every door.

Regulation (EU) 2023/1545: placed on the market under the first list until 31 July 2026, made available until 31 July
2028 (read in a secondary text); in Canada SOR/2024-63 has the same two days. In Great Britain no list was found to end.
"""

from collections.abc import Callable
from contextlib import suppress
from dataclasses import replace
from datetime import date, timedelta
from typing import Any

import pytest
from freezegun import freeze_time
from making import LOOKED_GOOD, cut, deliver
from once import once
from scented import with_camphor
from shop import PLAIN_BAR, SETUP, Shop

from ledger.domain.release.bars import Passing
from ledger.domain.release.releasing import Releasing
from ledger.errors import BadInput, Refused
from ledger.operations.house.setup import set_up
from ledger.operations.label.labels import Counted, LabelRequest, approve_label, count_run, print_labels
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.release.first_supply import FirstSupplied
from ledger.operations.release.release import pass_bars, release_bars
from ledger.operations.sell.dispatch import dispatch
from ledger.operations.sell.gift import gift
from ledger.operations.sell.resell import resell
from ledger.operations.sell.stall_out import stall_out
from ledger.operations.sell.take_back import take_back
from ledger.operations.stock.lots import decide_lots
from ledger.operations.stock.receive import DeliveryLine
from ledger.rows.label import runs
from ledger.rows.lot import find_lot, on_hand_at, place_of_kind
from ledger.views.label.label_check import label_check
from ledger.views.label.label_due import labels_due

PASSED, SENT = date(2026, 6, 3), date(2026, 7, 20)
DAY = timedelta(days=1)
LAST, SOLD_ON = date(2026, 7, 31), date(2028, 7, 31)
DOORS = ("stall out", "dispatch", "gift", "resell", "release")
SAID = FirstSupplied(SENT, "The Heron", "Nuala")


@pytest.fixture
def packed(shop: Shop) -> str:
    return str(once(with_camphor)(shop))


def label(shop: Shop, code: str, on: date, *, market: str = "eu", count: int = 10) -> None:
    request = LabelRequest(code, market, "band", count, on, layout_source="layout", sheet_source="sheet")
    with suppress(Refused):  # a text that was approved before
        approve_label(shop.book, request, by="Nuala")
    print_labels(shop.book, request, lambda _: b"drawn")
    count_run(shop.book, runs(shop.rows())[-1].number, Counted(0, 0, specimen=0), on=on)


def release(shop: Shop, code: str, on: date, first: FirstSupplied | None = None, **more: Any) -> int:
    asked = Releasing(on=on, by="Nuala", checks=LOOKED_GOOD, anyway="a trial", **more)
    return release_bars(shop.book, code, asked, first)


@pytest.fixture
def sent(shop: Shop, packed: str) -> Callable[..., None]:
    """What sends bars of a market, three unless it is told how many."""
    return lambda market="eu", sends=3: once(send)(shop, packed, market, sends)


def send(shop: Shop, code: str, market: str, sends: int) -> None:
    """Labelled and released; so many bars went to a shop on 20 July, and all but one came back on the 25th."""
    set_up(shop.book, replace(SETUP, addresses={market: SETUP.addresses["eu"]}))
    label(shop, code, date(2026, 7, 1), market=market)
    release(shop, code, date(2026, 7, 1))
    dispatch(shop.book, "heron", {code: sends}, on=SENT, price_minor=None, note=None)
    take_back(shop.book, {code: sends - 1}, customer="heron", stall=None, on=date(2026, 7, 25), reason="too many")


def through(shop: Shop, code: str, door: str, on: date, first: FirstSupplied | None = None, bars: int = 1) -> object:
    """Bars go through one of the doors; through that of a release those that were held before."""
    if door == "release":
        lot = find_lot(shop.rows(), code)
        if lot.status != "on hold":
            decide_lots(shop.book, [code], verdict="on hold", on=on, by="Nuala", reason="asked about")
        here = on_hand_at(shop.rows(), lot.id, place_of_kind(shop.rows(), "workshop").id)
        return release(shop, code, on, first, reason="answered", retain=here - bars)
    go: dict[str, Callable[[], object]] = {
        "stall out": lambda: stall_out(shop.book, "Quay market", {code: bars}, on=on, first=first),
        "dispatch": lambda: dispatch(shop.book, "heron", {code: bars}, on=on, price_minor=1, note=None, first=first),
        "gift": lambda: gift(shop.book, {code: bars}, to="a neighbour", on=on, first=first),
        "resell": lambda: resell(shop.book, {code: bars}, on=on, by="Nuala", reason="seal unbroken", first=first),
    }
    return go[door]()


def entries(shop: Shop) -> int:
    return int(shop.rows().execute("SELECT count(*) FROM entry").fetchone()[0])


@pytest.mark.parametrize(("door", "market"), [*((door, "eu") for door in DOORS), ("stall out", "ca"), ("resell", "ca")])
def test_every_door_on_both_days_of_a_market_that_has_them(
    shop: Shop, packed: str, sent: Any, door: str, market: str
) -> None:
    sent(market, 6 if door == "resell" else 3)
    for on in (LAST - DAY, LAST):
        through(shop, packed, door, on)
    for on, first, ended in (
        (LAST + DAY, None, False),
        (LAST + 4 * DAY, None, False),
        (SOLD_ON, None, False),
        (SOLD_ON + DAY, None, True),
        (SOLD_ON + DAY, SAID, True),
    ):
        with pytest.raises(Refused, match="does not name Camphor, which the long list") as refused:
            through(shop, packed, door, on, first)
        assert ("could be sold on up to 31 Jul 2028 alone" in str(refused.value)) is (first is SAID)
        assert ("add --first-supplied" not in str(refused.value)) is ended
    for on in (LAST + DAY, SOLD_ON - DAY, SOLD_ON):
        through(shop, packed, door, on, SAID)


@pytest.mark.parametrize("door", DOORS)
def test_a_market_whose_list_has_no_end_asks_for_nothing(shop: Shop, packed: str, sent: Any, door: str) -> None:
    sent("gb", 4)
    for on in (LAST, LAST + DAY, SOLD_ON + DAY):
        through(shop, packed, door, on)


@pytest.mark.parametrize("door", ["stall out", "dispatch", "gift"])
def test_what_is_said_holds_for_so_many_bars_as_were_supplied_that_day(
    shop: Shop, packed: str, sent: Any, door: str
) -> None:
    """Three went on 20 July; the day after none did, and on 1 August the list had ended."""
    sent()
    on, before = LAST + DAY, entries(shop)
    for said, bars, why in (
        (SAID, 4, "3 bars of batch"),
        (replace(SAID, on=SENT + DAY), 1, "0 bars of batch"),
        (replace(SAID, on=on), 1, "were so after 31 Jul 2026"),
    ):
        with pytest.raises(Refused, match=why):
            through(shop, packed, door, on, said, bars)
    assert entries(shop) == before
    through(shop, packed, door, on, SAID, 2)
    with pytest.raises(Refused, match="1 bar of batch"):  # of the third alone nobody said so yet
        through(shop, packed, door, on, SAID, 2)
    through(shop, packed, door, on, SAID, 1)


def test_bars_first_supplied_on_the_last_day_of_the_list_were_so_in_time(shop: Shop, packed: str, sent: Any) -> None:
    sent()
    dispatch(shop.book, "heron", {packed: 1}, on=LAST, price_minor=1, note=None)
    through(shop, packed, "gift", LAST + DAY, replace(SAID, on=LAST))


def test_it_is_to_somebody() -> None:
    with pytest.raises(BadInput, match="To whom"):
        FirstSupplied(SENT, " ", "Nuala")


def test_bars_put_back_on_sale_so_need_no_new_labels_and_the_others_do(shop: Shop, packed: str, sent: Any) -> None:
    """Two come back beside seven; seven new labels are enough for the seven."""
    sent()
    on = LAST + DAY
    through(shop, packed, "resell", on, SAID, 2)
    label(shop, packed, on, count=6)
    with pytest.raises(Refused, match="does not name Camphor"):
        through(shop, packed, "gift", on)
    label(shop, packed, on, count=1)
    through(shop, packed, "gift", on)


def test_what_went_so_is_named_by_the_check_and_by_what_is_due(shop: Shop, packed: str, sent: Any) -> None:
    sent()
    through(shop, packed, "stall out", LAST + DAY, SAID, 2)
    with shop.book.look() as rows:
        said = label_check(rows, packed, "eu", on=LAST + DAY).supplied
        due = {by: labels_due(rows, today=LAST + DAY, by=by) for by in (SOLD_ON - DAY, SOLD_ON)}
        over = labels_due(rows, today=SOLD_ON + DAY, by=SOLD_ON + DAY)
    words = "2 bars left on 1 Aug 2026 under a label of the first list (24 names), first supplied on 20 Jul 2026 to "
    assert any(one.startswith(f"{words}The Heron, as Nuala said; to be sold by 31 Jul 2028") for one in said)
    assert [(one.bars, one.where) for one in due[SOLD_ON] if one.where == "left"] == [(2, "left")]
    assert not [one for one in due[SOLD_ON - DAY] if one.where == "left"]
    assert not [one for one in over if one.where == "left"]


def test_where_nobody_stated_what_an_oil_contains_a_list_that_changed_is_asked_about(shop: Shop) -> None:
    """The long list may name what is in it, and the text approved under the first is no answer to that."""
    add_material(shop.book, MaterialFacts("sea scent", "PARFUM"), kind="fragrance", code=None)
    deliver(shop.book, DeliveryLine("sea scent", 200_000, "S-1", 2000))
    text = PLAIN_BAR.replace("plain-bar", "scented").replace("Plain Bar", "Scented")
    add_recipe(shop.book, f'{text}\n[[fragrance]]\nmaterial = "sea scent"\ngrams = 5\n', file="s.toml")
    code = cut(shop.book, "scented")
    pass_bars(shop.book, code, Passing(on=PASSED, by="Nuala"))
    label(shop, code, LAST)
    release(shop, code, LAST)
    gift(shop.book, {code: 1}, to="a neighbour", on=LAST)
    with pytest.raises(Refused, match=r"run 1 for eu.*nobody stated what sea scent, lot \S+ contains"):
        gift(shop.book, {code: 1}, to="a neighbour", on=LAST + DAY)
    with shop.book.look() as rows:
        (due,) = labels_due(rows, today=LAST, by=LAST)
    assert "nobody stated what sea scent, lot" in due.why
    release(shop, code, LAST + DAY)  # by name and with a reason, since no word is known to be missing
    gift(shop.book, {code: 1}, to="a neighbour", on=LAST + DAY)


@pytest.mark.parametrize(
    ("words", "code"),
    [(("--first-supplied", "2026-07-20"), 2), ((), 1), (("--first-supplied", "2026-07-20; Heron"), 0)],
)
def test_as_it_is_typed_at_each_door(packed: str, sent: Any, run: Any, words: tuple[str, ...], code: int) -> None:
    sent()
    with freeze_time("2026-08-03 09:00:00"):
        for door in (
            ("resell", f"{packed}=1", "--by", "Nuala", "--reason", "seal unbroken"),
            ("stall", "out", "quay market", f"{packed}=1"),
            ("dispatch", "heron", f"{packed}=1"),
            ("gift", f"{packed}=1", "--to", "a neighbour"),
        ):
            said = run(*door, *words, code=code)
            assert code != 1 or "does not name Camphor" in said.stderr
