"""A lot's code, typed or scanned at the prompt, says what is in her hand; no scan ever books a target.

Lines of a plain bar: 1 olive oil 600 g, 2 coconut oil 400 g, 3 water, 4 sodium hydroxide; a clean, b scale test.
"""

from datetime import date
from typing import Any

import pytest
from making import MADE, batch_of, deliver, lines_of, planned
from once import once
from shop import Shop

from ledger.operations.bench.readings import ReadingValue, log_readings
from ledger.operations.stock.lots import decide_lots
from ledger.operations.stock.receive import DeliveryLine
from ledger.rows.reading import current_readings


def typed(*answers: str) -> str:
    return "".join(f"{one}\n" for one in answers)


def booked(shop: Shop, code: str) -> list[tuple[str, int]]:
    """Of which lots how much was booked, in the order it was."""
    query = (
        "SELECT l.code, -v.quantity FROM movement v JOIN lot l ON l.id = v.lot_id "
        "WHERE v.batch_id = ? AND v.kind = 'consumed' ORDER BY v.id"
    )
    return [tuple(row) for row in shop.rows().execute(query, (batch_of(shop.book, code).id,))]


@pytest.fixture
@once
def code(shop: Shop) -> str:
    """A batch whose bench was found clean and whose scale was tried, so that the first question is line 1."""
    code = planned(shop.book)
    log_readings(
        shop.book, code, (ReadingValue("clean", text="yes"), ReadingValue("scale test", 500_000, "mg")), on=MADE
    )
    return code


@pytest.fixture
@once
def second(shop: Shop) -> str:
    """A second drum of olive oil, accepted."""
    return deliver(shop.book, DeliveryLine("olive oil", 2_000_000, "5002", 900))


def log(run: Any, code: str, *answers: str) -> str:
    said: str = run("batch", "log", code, input=typed(*answers, "q")).stderr
    return said.replace("\u00a0", " ")


def test_the_right_lot_is_ticked_and_then_its_weight_is_asked(shop: Shop, run: Any, code: str) -> None:
    said = log(run, code, shop.olive, "598")
    assert f"✓ olive oil, lot {shop.olive}\n" in said
    assert f"1. olive oil, lot {shop.olive} in hand: 600 g (OK 594 g to 606 g)" in said
    assert booked(shop, code) == [(shop.olive, 598_000)]


@pytest.mark.parametrize("sent", ["{0} ", " {0}", "{0}\t", "{1}", "{1}  ", "{2}"])
def test_what_a_scanner_may_make_of_it_is_the_same(shop: Shop, run: Any, code: str, sent: str) -> None:
    scanned = sent.format(shop.olive, shop.olive.lower(), shop.olive.replace("-", ""))
    assert f"✓ olive oil, lot {shop.olive}" in log(run, code, scanned, "598")
    assert booked(shop, code) == [(shop.olive, 598_000)]


@pytest.mark.parametrize("enters", [1, 2, 5])
def test_a_doubled_enter_books_no_target(shop: Shop, run: Any, code: str, enters: int) -> None:
    said = log(run, code, shop.olive, *[""] * enters)
    assert booked(shop, code) == []
    assert said.count("Enter books nothing here now. Type the weight") == enters
    said = log(run, code, shop.olive, *[""] * enters, "601", "q")
    assert booked(shop, code) == [(shop.olive, 601_000)]


def test_another_lot_of_the_material_is_taken_as_that_lot(shop: Shop, run: Any, code: str, second: str) -> None:
    said = log(run, code, second, "600")
    assert f"✓ olive oil, lot {second}; the plan says {shop.olive}" in said
    assert booked(shop, code) == [(second, 600_000)]


def test_a_typing_slip_in_the_weight_leaves_the_lot_in_her_hand(shop: Shop, run: Any, code: str, second: str) -> None:
    log(run, code, second, "60O", "", "600")
    assert booked(shop, code) == [(second, 600_000)]


@pytest.mark.parametrize(
    ("verdict", "words"), [("on hold", "is on hold"), ("rejected", "is rejected"), (None, "is quarantine")]
)
def test_a_lot_that_may_not_go_in_is_refused_at_once(shop: Shop, run: Any, code: str, verdict: Any, words: str) -> None:
    bad = deliver(shop.book, DeliveryLine("olive oil", 2_000_000, "B 1", 900), accepted=verdict is not None)
    if verdict:
        decide_lots(shop.book, [bad], verdict=verdict, on=MADE, by="Nuala", reason="smells")
    said = log(run, code, bad, "", "")
    assert f"Lot {bad} (olive oil) {words}; only accepted lots go into a batch" in said
    assert "in hand" not in said.partition("Or type or scan")[2].partition("\n")[2]
    assert booked(shop, code) == []  # and the doubled Enter took no target


def test_the_planned_lot_put_on_hold_since_is_refused_too(shop: Shop, run: Any, code: str) -> None:
    decide_lots(shop.book, [shop.olive], verdict="on hold", on=MADE, by="Nuala", reason="the supplier rang")
    assert f"Lot {shop.olive} (olive oil) is on hold" in log(run, code, shop.olive, "")
    assert booked(shop, code) == []


@pytest.mark.parametrize(("until", "in_hand"), [(date(2026, 5, 5), False), (MADE, True), (date(2026, 5, 7), True)])
def test_a_lot_may_go_in_on_the_day_it_is_best_before_and_not_the_day_after(
    shop: Shop, run: Any, code: str, until: date, in_hand: bool
) -> None:
    old = deliver(shop.book, DeliveryLine("olive oil", 2_000_000, "B 1", 900, best_before=until))
    said = log(run, code, old)
    assert (f"✓ olive oil, lot {old}" in said) == in_hand
    assert ("was best before 5 May 2026; use another" in said) != in_hand


@pytest.mark.parametrize(
    ("answers", "expected"),
    [
        (("pot", "600"), "coconut"),
        (("pot", "", "", "600"), "coconut"),
        (("", "", "pot", "600"), "coconut"),
        (("code", "", "600"), "olive"),
        (("code", "{olive}", "", "600"), "olive"),
        (("{olive}", "", "600"), "olive"),  # the right one scanned in reply
        (("pot", "{olive}", "600"), "olive"),  # and one scanned after the other
        (("code", "", ""), None),
        (("pot", "", ""), None),
        (("", "", "", "q"), None),
    ],
)
def test_another_material_is_said_at_once_with_what_the_line_wants(
    shop: Shop, run: Any, code: str, answers: tuple[str, ...], expected: str | None
) -> None:
    said = log(run, code, shop.coconut, *(one.format(olive=shop.olive) for one in answers))
    assert "Line 1 asks for olive oil, and that lot is coconut oil." in said
    assert said.count("or the wrong code? Write pot or code") == sum(one == "" for one in _first(answers)) + 1
    assert booked(shop, code) == ([(getattr(shop, expected), 600_000)] if expected else [])


def _first(answers: tuple[str, ...]) -> list[str]:
    """The answers given before the question is answered."""
    return list(answers[: next(i for i, one in enumerate(answers) if one)])


@pytest.mark.parametrize("wrong", ["L99-9", "L9", "26-001-4", "https://example.org"])
def test_a_code_that_is_none_of_hers_books_nothing(shop: Shop, run: Any, code: str, wrong: str) -> None:
    log(run, code, wrong, "", "")
    assert booked(shop, code) == []


def test_what_was_put_down_again_is_not_taken_at_another_line(shop: Shop, run: Any, code: str, second: str) -> None:
    log(run, code, second, "s", "400")  # line 2 has its own lot
    assert booked(shop, code) == [(shop.coconut, 400_000)]
    log(run, code, "600", "b", "b", "601")  # back at line 1, a correction
    log(run, code, shop.water, "b", "401")  # back from line 3 at line 2, booked above
    assert booked(shop, code)[1:] == [(shop.olive, 600_000), (shop.olive, 1_000), (shop.coconut, 1_000)]


def test_nothing_of_what_is_in_her_hand_went_in(shop: Shop, run: Any, code: str) -> None:
    log(run, code, shop.olive, "0", "yes")
    assert booked(shop, code) == []
    assert lines_of(shop.book, code)[0].logged


def test_a_line_booked_already_is_not_passed_by_a_doubled_enter(shop: Shop, run: Any, code: str, second: str) -> None:
    log(run, code, "600", "b", second, "", "602")
    assert booked(shop, code) == [(shop.olive, 600_000), (shop.olive, -600_000), (second, 602_000)]


def test_the_lye_is_scanned_and_weighed(shop: Shop, run: Any, code: str) -> None:
    log(run, code, "", "", "", shop.lye, "", "146.8")
    assert booked(shop, code)[3:] == [(shop.lye, 146_800)]


def test_a_way_out_takes_what_was_in_her_hand(shop: Shop, run: Any, code: str) -> None:
    other = deliver(shop.book, DeliveryLine("sodium hydroxide", 1_000_000, "SH 89", 900))
    # 165 g for 146.8 g is refused; less of the lye is poured, and what is left in the jug is waste of the same drum
    log(run, code, "", "", "", other, "165", "yes", "lye")
    taken = {lot for lot, quantity in booked(shop, code)[3:]}
    assert taken == {other, shop.water}  # the water left in the jug too
    query = (
        "SELECT l.code, sum(v.quantity) FROM movement v JOIN lot l ON l.id = v.lot_id WHERE l.code IN (?, ?) GROUP BY 1"
    )
    assert dict(shop.rows().execute(query, (other, shop.lye)).fetchall())[other] == 1_000_000 - 165_000


def test_a_scan_where_no_lot_is_asked_for_is_no_answer(shop: Shop, run: Any) -> None:
    code = planned(shop.book)
    said = log(run, code, shop.olive, "", "")
    assert f"'{shop.olive}' is the code of a lot, and here is asked: " in said
    assert current_readings(shop.rows(), batch_of(shop.book, code).id) == []
    log(run, code, "yes", "s", "600", "400", "293.6", "146.8", shop.olive, "", "s", "s", "s", "14:05", "s", shop.olive)
    noted = [row[0] for row in shop.rows().execute("SELECT text FROM live_reading WHERE batch_id = 2")]
    assert "yes" in noted
    assert shop.olive not in noted
