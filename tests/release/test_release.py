"""Passed, released, rejected: who may decide what, when, and with what reason."""

from datetime import date

import pytest
from making import DELIVERED, LOOKED_GOOD, batch_of, cut, deliver, lots_of, planned
from shop import PLAIN_BAR, Shop

from ledger.domain.release.bars import Passing
from ledger.domain.release.releasing import Releasing
from ledger.errors import BadInput, Refused
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.release.release import Passed, pass_bars, reject_bars, release_bars
from ledger.operations.stock.lots import decide_lots
from ledger.operations.stock.receive import DeliveryLine
from ledger.rows.lot import find_lot, on_hand_at, place_of_kind

READY = date(2026, 6, 3)  # cut on 6 May, 28 days
LATER = date(2026, 6, 10)


def pass_it(shop: Shop, code: str, **more: object) -> Passed:
    return pass_bars(shop.book, code, Passing(**{"on": READY, "by": "Nuala", **more}))  # type: ignore[arg-type]


def release_it(shop: Shop, code: str, **more: object) -> int:
    return release_bars(
        shop.book,
        code,
        Releasing(**{"on": READY, "by": "Nuala", "anyway": "a trial", "bare": "a trial", **more}, checks=LOOKED_GOOD),
    )  # type: ignore[arg-type]


def hold(shop: Shop, code: str, on: date = READY) -> None:
    decide_lots(shop.book, [code], verdict="on hold", on=on, by="Nuala", reason="a notice from the supplier")


def status(shop: Shop, code: str) -> str:
    with shop.book.look() as rows:
        return find_lot(rows, code).status


def at(shop: Shop, code: str, place: str) -> int:
    with shop.book.look() as rows:
        return on_hand_at(rows, find_lot(rows, code).id, place_of_kind(rows, place).id)


def reason(shop: Shop, verdict: str) -> str | None:
    row = (
        shop.rows()
        .execute("SELECT reason FROM decision WHERE verdict = ? ORDER BY id DESC LIMIT 1", (verdict,))
        .fetchone()
    )
    return row[0]  # type: ignore[no-any-return]


def test_bars_are_passed_on_the_day_the_cure_ends_and_not_before(shop: Shop) -> None:
    code = cut(shop.book)
    with pytest.raises(Refused, match="cures until 3 Jun 2026, 1 day more"):
        pass_it(shop, code, on=date(2026, 6, 2))
    assert pass_it(shop, code) == Passed(10, ())
    assert batch_of(shop.book, code).status == "passed for packing"


def test_bars_passed_early_keep_the_reason(shop: Shop) -> None:
    code = cut(shop.book)
    pass_it(shop, code, on=date(2026, 5, 20), anyway="a test for a friend")
    assert reason(shop, "passed") == "it cures until 3 Jun 2026, 14 days more; passed all the same: a test for a friend"


def test_bars_that_are_no_good_are_wasted_with_a_reason(shop: Shop) -> None:
    code = cut(shop.book)
    with pytest.raises(BadInput, match="Say what was wrong"):
        pass_it(shop, code, wasted=2)
    with pytest.raises(Refused, match="has 10 bars in the workshop; 11 cannot be thrown away"):
        pass_it(shop, code, wasted=11, reason="cracked")
    with pytest.raises(Refused, match=r"No bar .* reject it"):
        pass_it(shop, code, wasted=10, reason="cracked")
    assert pass_it(shop, code, wasted=2, reason="cracked").good == 8
    assert at(shop, code, "workshop") == 8


def test_only_passed_bars_are_released_and_only_once(shop: Shop) -> None:
    code = cut(shop.book)
    with pytest.raises(Refused, match=f"not passed for packing yet: soapledger pass {code}"):
        release_it(shop, code)
    pass_it(shop, code)
    with pytest.raises(Refused, match=f"passed already. Next: soapledger release {code}"):
        pass_it(shop, code)
    assert release_it(shop, code, retain=1) == 9
    assert (at(shop, code, "workshop"), at(shop, code, "retained")) == (9, 1)
    with pytest.raises(Refused, match="released already"):
        release_it(shop, code)
    with pytest.raises(Refused, match="released already"):
        pass_it(shop, code)


def test_no_more_samples_than_bars(shop: Shop) -> None:
    code = cut(shop.book)
    pass_it(shop, code)
    with pytest.raises(Refused, match="has 10 bars in the workshop; 11 cannot be set aside"):
        release_it(shop, code, retain=11)
    assert status(shop, code) == "passed"


def test_curing_bars_on_hold_are_passed_only_with_a_reason(shop: Shop) -> None:
    code = cut(shop.book)
    hold(shop, code, on=date(2026, 5, 20))
    for words in ({}, {"anyway": "a reason for something else"}, {"lift": " "}):
        with pytest.raises(Refused, match="are on hold; to lift the hold, add --lift REASON"):
            pass_it(shop, code, **words)
    pass_it(shop, code, lift="another lot was meant")
    assert reason(shop, "passed") == "hold lifted: another lot was meant"


def test_passed_bars_on_hold_are_released_only_with_a_reason(shop: Shop) -> None:
    code = cut(shop.book)
    pass_it(shop, code)
    hold(shop, code)
    with pytest.raises(Refused, match="on hold; to release them all the same, say why"):
        release_it(shop, code, reason=" ")
    with pytest.raises(Refused, match="were passed and are on hold now"):
        pass_it(shop, code)
    release_it(shop, code, reason="another lot was meant")
    assert status(shop, code) == "released"


def test_a_decision_dated_before_a_hold_does_not_lift_it(shop: Shop) -> None:
    code = cut(shop.book)
    pass_it(shop, code)
    hold(shop, code, on=LATER)
    for decide in (release_it, pass_it):
        with pytest.raises(Refused, match="have been on hold since 10 Jun 2026"):
            decide(shop, code)
    with pytest.raises(Refused, match="have been on hold since 10 Jun 2026"):
        reject_bars(shop.book, code, on=READY, by="Nuala", reason="smells")
    assert status(shop, code) == "on hold"


def test_rejected_bars_stay_here_and_are_not_packed(shop: Shop) -> None:
    code = cut(shop.book)
    with pytest.raises(BadInput, match="Say why"):
        reject_bars(shop.book, code, on=READY, by="Nuala", reason="")
    assert reject_bars(shop.book, code, on=READY, by="Nuala", reason="orange spots") == 10
    assert (status(shop, code), at(shop, code, "workshop")) == ("rejected", 10)
    with pytest.raises(Refused, match="are rejected and are not packed"):
        pass_it(shop, code)
    with pytest.raises(Refused, match="rejected already"):
        reject_bars(shop.book, code, on=READY, by="Nuala", reason="again")


def test_nothing_is_decided_about_bars_that_are_not_there(shop: Shop) -> None:
    code = planned(shop.book)
    with pytest.raises(Refused, match="is planned; it has no bars yet"):
        pass_it(shop, code)
    with pytest.raises(BadInput, match="was cut on 6 May 2026; look at --on"):
        pass_it(shop, cut(shop.book), on=date(2026, 5, 5))


@pytest.fixture
def wrapped(shop: Shop) -> Shop:
    """The shop with a recipe that wraps each bar once, and exactly ten wrappers."""
    add_material(shop.book, MaterialFacts("wrapper"), kind="packaging", code=None)
    text = PLAIN_BAR.replace("plain-bar", "wrapped").replace("Plain Bar", "Wrapped")
    add_recipe(shop.book, text + '\n[[packaging]]\nmaterial = "wrapper"\n', file="wrapped.toml")
    deliver(shop.book, DeliveryLine("wrapper", 10, "W-1", 200))
    return shop


def wrappers(shop: Shop) -> int:
    row = shop.rows().execute(
        "SELECT coalesce(sum(v.quantity), 0) FROM movement v JOIN lot l ON l.id = v.lot_id "
        "JOIN material m ON m.id = l.material_id WHERE m.code = 'wrapper'"
    )
    return int(row.fetchone()[0])


def test_wrapping_set_aside_for_a_batch_is_its_own_to_use(wrapped: Shop) -> None:
    code = cut(wrapped.book, "wrapped")
    assert pass_it(wrapped, code, wasted=1, reason="cracked").wrapping == (("wrapper", 9),)
    assert wrappers(wrapped) == 1


def test_too_little_wrapping_is_refused_or_left_off(wrapped: Shop) -> None:
    code = cut(wrapped.book, "wrapped", bars=12)
    with pytest.raises(Refused, match="2 more of wrapper are needed to wrap 12 bars"):
        pass_it(wrapped, code)
    assert (wrappers(wrapped), status(wrapped, code)) == (10, "curing")
    pass_it(wrapped, code, unwrapped=True)
    # passed bare: the wrappers are free for the next batch
    assert lots_of(wrapped.book, planned(wrapped.book, "wrapped"))[-1][1] is not None


def test_wrappers_are_taken_from_the_lot_set_aside(wrapped: Shop) -> None:
    code = cut(wrapped.book, "wrapped")
    first = lots_of(wrapped.book, code)[-1][1]
    soon = deliver(wrapped.book, DeliveryLine("wrapper", 10, "W-2", 200, best_before=LATER), on=DELIVERED)
    pass_it(wrapped, code)
    with wrapped.book.look() as rows:
        assert find_lot(rows, first or "").on_hand == 0
        assert find_lot(rows, soon).on_hand == 10
