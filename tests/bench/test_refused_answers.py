"""Once an answer was refused at a prompt, Enter books nothing there any more."""

from typing import Any

import pytest
from making import MADE, lines_of, planned, weighed
from shop import Shop

from ledger.operations.bench.readings import ReadingValue, log_readings
from ledger.rows.reading import current_readings

# Lines of a plain bar: 1 olive oil 600 g, 2 coconut oil 400 g, 3 water, 4 sodium hydroxide; a clean, b scale test.


def typed(*answers: str) -> str:
    return "".join(f"{one}\n" for one in answers)


def booked(shop: Shop, code: str) -> list[int]:
    """What is booked of each line."""
    return [line.used for line in lines_of(shop.book, code)]


def at_the_lines(shop: Shop) -> str:
    """A batch whose bench was found clean and whose scale was tried, so that the first question is line 1."""
    code = planned(shop.book)
    log_readings(
        shop.book, code, (ReadingValue("clean", text="yes"), ReadingValue("scale test", 500_000, "mg")), on=MADE
    )
    return code


@pytest.mark.parametrize("refused", ["60O g", "600 gr.", "600 g@L999", "-", "-5", "1300\nno", "1300\n"])
def test_a_refused_weight_is_not_followed_by_the_target(shop: Shop, run: Any, refused: str) -> None:
    code = at_the_lines(shop)
    said = run("batch", "log", code, input=typed(refused, "", "", "q"))
    assert booked(shop, code) == [0, 0, 0, 0]
    asked_again = "Enter books nothing here now. Type the weight, or 0 where it is left out; s skips, b goes back"
    assert said.stderr.count(asked_again) == 2


@pytest.mark.parametrize(("then", "olive"), [("598", 598_000), ("0\nyes", 0), ("s", 0)])
def test_a_figure_or_a_word_goes_on_and_the_next_line_has_its_target(
    shop: Shop, run: Any, then: str, olive: int
) -> None:
    code = at_the_lines(shop)
    run("batch", "log", code, input=typed("60O g", "", then, "", "q"))
    assert booked(shop, code) == [olive, 400_000, 0, 0]
    assert lines_of(shop.book, code)[0].logged == (then != "s")


def test_going_back_and_skipping_do_not_bring_the_target_back(shop: Shop, run: Any) -> None:
    code = at_the_lines(shop)
    run("batch", "log", code, input=typed("60O g", "s", "b", "", "q"))
    assert booked(shop, code) == [0, 0, 0, 0]


def test_a_refused_reading_is_not_followed_by_what_was_expected(shop: Shop, run: Any) -> None:
    run("equipment", "add", "scale", "bench scale", "--against", "500 g", "--tolerance", "1 g", "--every", "30")
    code = planned(shop.book)
    for refused in ("5OO", "2500\nno"):
        said = run("batch", "log", code, input=typed("s", refused, "", "q"))
        assert [row.what for row in current_readings(shop.rows(), 2)] == []
        assert "Type it, or - where nobody read it" in said.stderr
        assert "(g; Enter: 500" in said.stderr  # said before the refusal, and not after it
        assert said.stderr.rstrip().endswith("(g):")
    run("batch", "log", code, input=typed("s", "5OO", "", "500", "q"))
    assert [row.value for row in current_readings(shop.rows(), 2)] == [500_000]


def cut_at_the_prompt(shop: Shop, run: Any, *answers: str, code: int = 0) -> tuple[Any, Any]:
    """What was said, and the bars of the batch with their day, once these were typed."""
    batch = weighed(shop.book, planned(shop.book))
    said = run("batch", "log", batch, "--on", "2026-05-06", input=typed("s", "s", *answers), code=code)
    found = shop.rows().execute(
        "SELECT l.'on', sum(v.quantity) FROM movement v JOIN lot l ON l.id = v.lot_id "
        "JOIN batch b ON b.id = v.batch_id WHERE b.code = ? AND v.kind = 'yielded' GROUP BY l.id ORDER BY l.id",
        (batch,),
    )
    return said, [tuple(row) for row in found]


def test_a_refused_day_of_the_cut_is_not_followed_by_today(shop: Shop, run: Any) -> None:
    said, bars = cut_at_the_prompt(shop, run, "10", "32 May 2026", "", "7 May 2026", "1300", "", "", "")
    assert bars == [("2026-05-07", 10)]
    assert said.stderr.count("Enter books nothing here now") == 1


def test_a_refused_weight_of_offcuts_is_not_followed_by_none(shop: Shop, run: Any) -> None:
    said, bars = cut_at_the_prompt(shop, run, "10", "7 May 2026", "1300", "7O g", "", "70 g", "", "")
    assert sorted(quantity for _, quantity in bars) == [10, 70_000]
    assert "Type it, or - for none" in said.stderr


def test_a_refused_cut_is_typed_again_or_said_to_be_none(shop: Shop, run: Any) -> None:
    # 1 440.5 g went in: 2 000 g of bars cannot have come out of it
    answers = ("10", "7 May 2026", "2000", "", "", "10", "", "7 May 2026", "", "1300", "-", "", "-", "")
    said, bars = cut_at_the_prompt(shop, run, *answers)
    assert bars == [("2026-05-07", 10)]
    assert said.stderr.count("Enter books nothing here now") == 3  # the day, the bars, what was thrown away


def test_a_refused_point_of_the_release_is_not_followed_by_good(shop: Shop, run: Any) -> None:
    code = weighed(shop.book, planned(shop.book))
    run("batch", "cut", code, "10", "--weight", "1300 g", "--on", "2026-05-06")
    run("pass", code, "--on", "2026-06-05", "--anyway", "a trial")
    before = shop.rows().execute("SELECT count(*) FROM entry").fetchone()[0]
    run("release", code, "--on", "2026-06-05", "--anyway", "a trial", input=typed("9.6; 1 % in water", "!", ""), code=1)
    assert shop.rows().execute("SELECT count(*) FROM entry").fetchone()[0] == before


def test_a_refused_word_does_not_accept_a_delivery(shop: Shop, run: Any) -> None:
    line = ("water", "2 kg", "W-9", "1", "", "")
    said = run("receive", "tarn", input=typed(*line, "line 1 is dented", "", "no", ""))
    assert "Write yes, or no" in said.stderr
    query = "SELECT count(*) FROM lot l JOIN decision d ON d.lot_id = l.id WHERE l.supplier_number = 'W-9'"
    assert shop.rows().execute(query).fetchone()[0] == 0
