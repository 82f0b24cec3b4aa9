"""Once an answer was refused at a prompt, Enter books nothing there any more."""

from typing import Any

import pytest
from making import MADE, lines_of, planned, weighed
from once import once
from shop import Shop

from ledger.operations.bench.readings import ReadingValue, log_readings
from ledger.rows.reading import current_readings

# Lines of a plain bar: 1 olive oil 600 g, 2 coconut oil 400 g, 3 water, 4 sodium hydroxide; a clean, b scale test.


def typed(*answers: str) -> str:
    return "".join(f"{one}\n" for one in answers)


def booked(shop: Shop, code: str) -> list[int]:
    """What is booked of each line."""
    return [line.used for line in lines_of(shop.book, code)]


@once
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
    run(
        "release",
        code,
        "--on",
        "2026-06-05",
        "--anyway",
        "a trial",
        input=typed("x", "bare", "a trial", "9.6; 1 % in water", "!", ""),
        code=1,
    )
    assert shop.rows().execute("SELECT count(*) FROM entry").fetchone()[0] == before


def test_a_refused_word_does_not_accept_a_delivery(shop: Shop, run: Any) -> None:
    line = ("water", "2 kg", "W-9", "1", "", "")
    said = run("receive", "tarn", input=typed(*line, "line 1 is dented", "", "no", ""))
    assert "Write yes, or no" in said.stderr
    query = "SELECT count(*) FROM lot l JOIN decision d ON d.lot_id = l.id WHERE l.supplier_number = 'W-9'"
    assert shop.rows().execute(query).fetchone()[0] == 0


def notes(shop: Shop) -> list[str]:
    """What is noted of the batch."""
    query = "SELECT text FROM live_reading WHERE batch_id = 2 AND what = 'observation' ORDER BY id"
    return [row[0].replace("\u00a0", " ") for row in shop.rows().execute(query)]


def test_going_back_and_enter_leave_what_is_booked(shop: Shop, run: Any) -> None:
    code = at_the_lines(shop)
    said = run("batch", "log", code, input=typed("598", "b", "", "", "q"))
    assert booked(shop, code) == [598_000, 400_000, 0, 0]  # it was corrected to the target, 600 g
    assert "It stays as it is booked." in said.stderr


@pytest.mark.parametrize("first", [("60O g", "598"), ("1300", "no", "598")])
def test_after_a_refusal_there_is_no_target_any_more_even_when_she_comes_back(
    shop: Shop, run: Any, first: tuple[str, ...]
) -> None:
    code = at_the_lines(shop)
    run("batch", "log", code, input=typed(*first, "b", "", "b", "60O g", "", "q"))
    assert booked(shop, code) == [598_000, 0, 0, 0]


@pytest.mark.parametrize("answers", [("", "", "q"), ("b", "", "", "q"), ("s", "b", "", "q")])
def test_the_lye_is_never_taken_from_the_plan(shop: Shop, run: Any, answers: tuple[str, ...]) -> None:
    code = at_the_lines(shop)
    said = run("batch", "log", code, input=typed("", "", "", *answers))
    assert booked(shop, code) == [600_000, 400_000, 293_652, 0]
    assert "Enter books nothing here now. Type the weight" in said.stderr


def test_a_refused_weight_is_kept_as_a_note_and_leads_to_the_ways_out(shop: Shop, run: Any) -> None:
    code = at_the_lines(shop)
    # 165 g for 146.8 g: 165 / 0.71288755 = 231.45 g KOH for 216.8 g: 6.76 % too much
    answers = ("", "", "", "165", "yes", "drain", "lye", "q")
    said = run("batch", "log", code, input=typed(*answers))
    out = " ".join((said.stdout + said.stderr).replace("\u00a0", " ").split())
    assert "lye is left over and it would burn" in out
    assert notes(shop)[0] == "line 4, sodium hydroxide: 165 g was typed and refused"
    assert "of the lye solution in the jug" in out
    assert "Which way did you take: lye, fats or pour?" in out
    assert "'drain' is not a way out" in out
    # 146.826 / 165 of the jug is poured
    assert booked(shop, code) == pytest.approx([600_000, 400_000, 261_307, 146_826], abs=2)


def test_none_of_the_ways_asks_the_line_again_and_takes_no_target(shop: Shop, run: Any) -> None:
    code = at_the_lines(shop)
    run("batch", "log", code, input=typed("", "", "", "165", "yes", "", "", "146.8", "q"))
    assert booked(shop, code)[3] == 146_800
    assert len(notes(shop)) == 1


def test_a_weight_taken_back_at_the_question_is_kept_as_a_note(shop: Shop, run: Any) -> None:
    code = at_the_lines(shop)
    run("batch", "log", code, input=typed("1300", "no", "600", "q"))
    assert notes(shop) == ["line 1, olive oil: 1 300 g was typed and taken back"]


def test_a_way_taken_sets_the_targets_of_what_is_asked_next(shop: Shop, run: Any) -> None:
    code = at_the_lines(shop)
    # 231.45 g KOH are 231.45 / 0.95 = 243.63 g of demand, 1.12376 of 216.8: 449.5 g of coconut oil
    said = run("batch", "log", code, input=typed("", "", "", "165", "yes", "fats", "b", "b", "b", "q")).stderr
    assert booked(shop, code)[1] == pytest.approx(449_505, abs=10)
    assert "2. coconut oil, lot L2-8: 449.5 g" in said.replace("\u00a0", " ")
