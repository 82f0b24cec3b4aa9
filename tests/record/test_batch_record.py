"""The batch record, read back."""

from dataclasses import replace

import drawn as views
import pytest
import zxingcpp

from ledger.documents.record.batch_record import draw_batch_record
from ledger.views.record.decided import Decided
from ledger.views.record.went_in import WentIn
from ledger.views.record.worked import Worked


@pytest.fixture(scope="module")
def data() -> bytes:
    """The record as it is, drawn once for all that is asked of it."""
    return draw_batch_record(views.record())


@pytest.fixture(scope="module")
def page(data) -> views.Read:
    return views.Read(data)


def test_a_lot_is_found_beside_its_supplier_number(page) -> None:
    assert "coconut oil Cocos Nucifera Oil L42-5 CN-0919 Tarnlow Oils 300 g" in page.text()


def test_an_unknown_supplier_number_is_called_unknown_and_stands_first(page) -> None:
    said = page.text(0)
    assert "number unknown Tarnlow Oils" in said
    assert said.index("Look at this first") < said.index("What went in")


def test_the_work_booked_stands_by_stage_with_its_sum(record, read, page) -> None:
    assert "Work booked: making 90 min, wrapping 45 min; 135 min in all." in page.text()
    one = read(draw_batch_record(replace(record, worked=Worked({"wrapping": 20})))).text()
    assert "Work booked: wrapping 20 min. " in " ".join(one.split())
    unbooked = read(draw_batch_record(replace(record, worked=Worked({})))).text()
    assert "Work" not in unbooked


def test_what_went_in_less_what_came_out_is_what_was_lost(page) -> None:
    # 1462.2 g in, 1354 g of bars and 64 g of offcuts: 44.2 g or 3.0 % lost
    said = page.text()
    assert "not accounted for 44.2 g" in said
    assert "3.0 % of what went in, limit 10.0 %" in said


def test_nothing_is_below_eight_and_a_half_points_and_there_are_three_sizes(page) -> None:
    assert {one.size for number in range(len(page.pages)) for one in page.glyphs(number)} == {8.5, 12, 26}


def test_no_heading_stands_alone_at_the_foot_of_a_page(record, read) -> None:
    """Whatever the number of readings, the lowest head-sized letters have body text under them."""
    for many in range(1, 30, 4):
        observed = replace(record.observed, readings=record.observed.readings[:1] * many)
        drawn = read(draw_batch_record(replace(record, observed=observed)))
        for page in range(len(drawn.pages)):
            glyphs = [one for one in drawn.glyphs(page) if 22 < one.top < 279]  # between head and foot
            heads = [one.bottom for one in glyphs if one.size == 12]
            bodies = [one.top for one in glyphs if one.size == 8.5]
            assert not heads or max(heads) < max(bodies)


def test_only_an_undecided_batch_is_marked_a_draft_on_every_page(record, read, page) -> None:
    drawn = read(draw_batch_record(replace(record, head=replace(record.head, draft=True))))
    assert all("DRAFT" in drawn.text(number) for number in range(len(drawn.pages)))
    assert "DRAFT" not in page.text()


def test_all_letters_stand_within_the_margins(record, read) -> None:
    for paper in ("A4", "Letter"):
        drawn = read(draw_batch_record(record, paper=paper))
        wide, high = drawn.size_mm()
        for page in range(len(drawn.pages)):
            for one in drawn.glyphs(page):
                assert 14.5 < one.left < one.right < wide - 14.5, one
                assert 8 < one.top < one.bottom < high - 5, one


def test_polish_czech_turkish_and_nordic_names_are_read_back(record, read) -> None:
    names = "Łucja Żółć, Přemysl Říha, Işıl Güneş, Åse Bjørk Þór"
    decision = record.decided.decisions[0]._replace(by=names)
    assert names in read(draw_batch_record(replace(record, decided=Decided((decision,))))).text()


def test_the_code_is_read_and_equal_views_give_equal_bytes(record, data, page) -> None:
    assert data == draw_batch_record(record)
    head = page.part((0, 0, 2380, 800), scale=4)  # 70 mm of the page
    assert [code.text for code in zxingcpp.read_barcodes(head)] == ["26-118-0"]


def test_a_name_the_face_lacks_is_printed_by_its_code_point_and_said_to_be(record, read) -> None:
    """Water is U+6C34, which the second face has, a bar of soap U+1F9FC (The Unicode Standard)."""
    first = record.went_in.materials[0]._replace(material="\u6c34 oil", supplier="\u6c34")
    head, inputs = replace(record.head, product="\U0001f9fc bar"), WentIn((first,), ())
    drawn = read(draw_batch_record(replace(record, head=head, went_in=inputs)))
    said = drawn.text(0)
    for words in ("[U+1F9FC] bar", "\u6c34 oil", "[U+…] stands for a character that no typeface here has"):
        assert words in said
