"""The recall report, read back."""

from dataclasses import replace
from datetime import date

import pytest
from drawn import Read
from drawn import answer as recalled

from ledger.documents.recall.recall_report import draw_recall
from ledger.views.recall.recall import RecallAnswer


@pytest.fixture(scope="module")
def plain() -> Read:
    """The answer as it is, drawn once and read back."""
    return Read(draw_recall(recalled()))


def test_the_first_page_alone_does_for_the_telephone(plain) -> None:
    first = plain.text(0)
    for words in ("4471/2", "26-112-X, 26-118-0, 26-121-4", "020 910 0177", "orders@ternhall.example", "put on hold"):
        assert words in first
    # made 29 = on hand 14 + stall 0 + retained 1 + returned 0 + sold 11 + dispatched 3 + given 0 + wasted 0 + 0
    assert "29 = 14 + 0 + 1 + 0 + 11 + 3 + 0 + 0 + 0" in first


def test_what_cannot_be_excluded_stands_apart_on_the_first_page(plain) -> None:
    first = plain.text(0)
    assert first.index("Where every bar is") < first.index("Cannot be excluded") < first.index("L39-9")
    assert "more cannot be excluded" not in first


@pytest.mark.parametrize(("doubts", "more"), [(5, 0), (6, 1)])
def test_five_of_them_are_on_the_first_page_and_the_rest_is_announced(answer, read, doubts: int, more: int) -> None:
    one = answer.cannot_exclude[0]
    many = tuple(one._replace(what=f"lot L9{number}-9, olive oil") for number in range(doubts))
    drawn = read(draw_recall(replace(answer, cannot_exclude=many)))
    assert drawn.text(0).count("-9, olive oil") == 5
    assert ("1 more cannot be excluded" in drawn.text(0)) is bool(more)
    assert drawn.text().count("-9, olive oil") == doubts


def test_a_way_through_an_infusion_and_offcuts_is_said_by_its_ends(plain) -> None:
    assert "5 steps from L41-5, the last from L61-8" in plain.text()


def test_an_exercise_is_marked_on_every_page(answer, read, plain) -> None:
    drawn = read(draw_recall(replace(answer, exercise=True)))
    assert all("EXERCISE" in drawn.text(page) for page in range(len(drawn.pages)))
    assert "EXERCISE" not in plain.text()


def test_a_hundred_customers_run_on_with_the_heads_repeated(answer, read) -> None:
    drawn = read(draw_recall(replace(answer, call=answer.call * 100)))
    assert drawn.text().count("orders@ternhall.example 12 Mill Street") == 100
    assert "called at, answer" in drawn.text(1)


def test_letters_stand_within_the_margins_in_three_sizes_and_bytes_are_equal(answer, read) -> None:
    data = draw_recall(answer, paper="Letter")
    assert data == draw_recall(answer, paper="Letter")
    drawn = read(data)
    glyphs = [one for page in range(len(drawn.pages)) for one in drawn.glyphs(page)]
    assert {one.size for one in glyphs} == {9.5, 12.5, 22}
    assert all(14.5 < one.left < one.right < 215.9 - 14.5 for one in glyphs)


def of_unknown_number(answer: RecallAnswer) -> RecallAnswer:
    """A notice that could name no number: the lot came without one, and nothing else is in doubt."""
    return replace(answer, lots=(answer.lots[0]._replace(supplier_lot=None),), cannot_exclude=())


def test_of_a_lot_without_a_number_it_is_never_said_that_every_lot_has_one(answer, read) -> None:
    said = read(draw_recall(of_unknown_number(answer))).text()
    assert "has a number" not in said
    assert "no doubtful" not in said
    assert "Nothing beside these: no other lot of olive oil is without a number, no bar of it was missed at a" in said


def test_of_bars_asked_for_by_their_code_no_word_is_said_of_lots(answer, read) -> None:
    said = read(
        draw_recall(replace(answer, lots=(), bars_of=(answer.batches[1].batch_code,), cannot_exclude=()))
    ).text()
    assert "without a number" not in said
    assert "Nothing beside these: no bar of it was missed at a count" in said


def test_where_no_bar_was_made_nothing_is_said_of_bars_and_complaints(answer, read) -> None:
    said = read(draw_recall(replace(answer, batches=(), bars=(), call=(), cannot_exclude=()))).text()
    assert "Nothing beside these: no other lot of olive oil is without a number." in said


def test_a_customer_with_sixty_batches_runs_over_the_page(answer, read) -> None:
    """Sixty codes in one row; each is printed, whole and once more than the head names them."""
    codes = tuple(f"26-{number:03d}-Q" for number in range(200, 260))
    far = answer.call[0]._replace(batches=codes)
    said = read(draw_recall(replace(answer, call=(far, answer.call[0])))).text()
    assert all(said.count(code) == 1 for code in codes)
    more = far._replace(batches=(*codes, "26-1000-Q"))
    said = " ".join(read(draw_recall(replace(answer, call=(more,)))).text(0).split())
    assert "61 batches, each further on" in said


@pytest.mark.parametrize("days", [150, pytest.param(10_000, marks=pytest.mark.slow)])
def test_each_of_thousands_of_bars_sold_on_its_own_day_is_printed(answer, read, days: int) -> None:
    """One bar sold on each day, so one row each, over as many pages as it takes."""
    one = answer.bars[1]
    bars = tuple(replace(one, count=1, on=date.fromordinal(730_000 + number)) for number in range(days))
    drawn = read(draw_recall(replace(answer, bars=bars)))
    assert sum(drawn.text(page).count("Saturday market") for page in range(len(drawn.pages))) == days


def test_a_sum_of_ten_thousand_bars_keeps_each_number_on_one_line(answer, read) -> None:
    """10000 = 9000 + 900 + 100 + 0, with a reworked column too."""
    many = answer.totals._replace(made=10_000, on_hand=9_000, retained=0, sold=900, dispatched=100)
    for totals, end in ((many, ""), (many._replace(sold=800, reworked=100), " + 100")):
        said = read(draw_recall(replace(answer, totals=totals))).text(0)
        assert f"10000 = 9000 + 0 + 0 + 0 + {totals.sold} + 100 + 0 + 0{end} + 0" in said


def test_a_name_the_face_lacks_is_printed_by_its_code_points_and_said_to_be(answer, read, plain) -> None:
    """Water is U+6C34, which the second face has, a bar of soap U+1F9FC (The Unicode Standard)."""
    named = answer.call[0]._replace(name="\u6c34 & Sons \U0001f9fc")
    drawn = read(draw_recall(replace(answer, call=(named,), asked=("\U0001f9fc-7",), business="Tidewrack \u6c34")))
    assert "\u6c34 & Sons [U+1F9FC]" in drawn.text(0)
    assert "[U+1F9FC]-7" in drawn.text(0)
    assert "Tidewrack \u6c34" in drawn.text(1)
    for page in range(len(drawn.pages)):
        assert "[U+…] stands for a character that no typeface here has" in drawn.text(page)
    assert "[U+" not in plain.text()


def test_the_first_page_does_for_the_telephone_however_many_batches_there_are(answer, read) -> None:
    """A hundred batches asked for by their product; each stands once further on."""
    first = answer.batches[0]
    codes = [f"26-{number:03}-9" for number in range(100, 200)]
    many = tuple(first._replace(batch_code=code, yields_bars=True, steps=0) for code in codes)
    told = replace(answer, batches=many, bars_of=tuple(codes), lots=())
    drawn = read(draw_recall(told))
    page = drawn.text(0)
    for words in ("100 batches of soap", "100 batch codes, 26-100-9 to 26-199-9", "Where every bar is", "Whom to call"):
        assert words in page
    assert page.index("Where every bar is") < page.index("Whom to call")
    assert drawn.text().count("26-150-9") == 1


@pytest.mark.parametrize(("lots", "apart"), [(10, False), (11, True)])
def test_of_more_than_ten_lots_the_table_stands_overleaf(answer, read, lots: int, apart: bool) -> None:
    many = tuple(answer.lots[0]._replace(lot_code=f"L{number}-1") for number in range(20, 20 + lots))
    drawn = read(draw_recall(replace(answer, lots=many)))
    assert ("11 lots, L20-1 to L30-1" in drawn.text(0)) is apart
    assert ("Lots it is about" in drawn.text()) is apart
    assert drawn.text().count("L25-1 ") >= 1
    assert "Whom to call" in drawn.text(0)


def test_a_long_name_of_what_is_recalled_ends_before_the_rest_of_the_foot(answer, read) -> None:
    asked = ("Hearth Oat of the long name, made from 1 Jan 2024 up to 15 Aug 2025",)
    drawn = read(draw_recall(replace(answer, asked=asked)))
    assert "…" in drawn.text(1)
    assert "15 Aug 2025" not in drawn.text(1)
    assert "15 Aug 2025" in drawn.text(0)


def test_labels_alone_are_named_and_no_empty_table_of_lots_is_drawn(answer, read) -> None:
    asked = replace(answer, asked=("the labels of run 18",), lots=(), labels_of=("26-118-0",), cannot_exclude=())
    first = read(draw_recall(asked)).text(0)
    product = next(one.product for one in answer.batches if one.batch_code == "26-118-0")
    assert f"labels of {product}: 3 batches of soap" in " ".join(first.split())
    assert "their number" not in first
    assert first.count("26-118-0") >= 2  # among what was asked for, and among the codes


def test_lots_and_bars_asked_for_at_once_have_a_table_each(answer, read) -> None:
    first = read(draw_recall(replace(answer, bars_of=("26-118-0",)))).text(0)
    assert "their number" in first
    assert first.index(answer.lots[0].lot_code) < first.index("26-118-0")
    assert first.index("26-118-0") < first.index("Batch codes on the bars")
