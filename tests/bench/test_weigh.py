"""Logging: actual grams from the lots really used, and the superfat they give."""

from datetime import date

import pytest
from making import MADE, POURED, batch_of, cut, deliver, lines_of, planned, weighed
from shop import PLAIN_BAR, Shop

from ledger.domain.bench.alkali import AlkaliWanted
from ledger.domain.lye.weighed import LyeCheck
from ledger.errors import BadInput, Refused
from ledger.operations.bench.discard import discard_batch
from ledger.operations.bench.readings import ReadingValue, log_readings, read_reading
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.keep.undo import undo
from ledger.operations.material.materials import MaterialFacts, add_material, edit_material
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.stock.receive import DeliveryLine
from ledger.storage.book import Book
from ledger.views.lye.lye_check import alkali_wanted, lye_check

# Lines of a plain bar: 1 olive oil 600 g, 2 coconut oil 400 g, 3 water 293.652 g, 4 sodium hydroxide 146.826 g.


def log(book: Book, code: str, grams: dict[int, str], **more: object) -> LyeCheck:
    """Weights in grams, as '600' or '500@L1-2,100@L3-4'."""
    takes = {}
    for number, text in grams.items():
        parts = [part.partition("@") for part in text.split(",")]
        takes[number] = [Weighed(round(float(mass) * 1000), lot or None) for mass, _, lot in parts]
    return weigh(book, code, takes, **{"on": MADE, "by": "Nuala", **more})  # type: ignore[arg-type]


def consumed(shop: Shop, code: str) -> list[tuple[int, int]]:
    """(line, quantity) of every movement into a batch, in the order they were booked."""
    query = """
        SELECT p.number, v.quantity FROM movement v JOIN plan_line p ON p.id = v.plan_line_id
        JOIN batch b ON b.id = v.batch_id WHERE b.code = ? ORDER BY v.id
    """
    return [tuple(row) for row in shop.rows().execute(query, (code,))]


def entries(shop: Shop) -> int:
    """How many entries the ledger has."""
    return int(shop.rows().execute("SELECT count(*) FROM entry").fetchone()[0])


def test_the_superfat_follows_from_what_was_weighed(shop: Shop) -> None:
    code = planned(shop.book)
    # 610 g x 190 + 400 g x 257 = 218.7 g KOH = 155.9085 g NaOH; 1 - 146.826 / 155.9085 = 5.8255 %
    check = log(shop.book, code, {1: "610", 2: "400", 3: "293.652", 4: "146.826"})
    assert check.superfat_ppm == 58_255
    assert (check.fats_mg, check.alkali_mg, check.water_mg) == (1_010_000, 146_826, 293_652)


def test_no_superfat_is_said_before_all_fats_and_the_alkali_are_in(shop: Shop) -> None:
    code = planned(shop.book)
    assert log(shop.book, code, {1: "600", 4: "146.8"}).superfat_ppm is None
    assert log(shop.book, code, {2: "400"}).superfat_ppm is not None


def test_the_alkali_is_reckoned_again_for_the_fats_as_weighed(shop: Shop) -> None:
    code = planned(shop.book)
    log(shop.book, code, {1: "610"})
    with shop.book.look() as rows:
        assert alkali_wanted(rows, batch_of(shop.book, code)) == ()  # the coconut oil is not weighed yet
    log(shop.book, code, {2: "400"})
    with shop.book.look() as rows:
        # 155.9085 g x 0.95 = 148.1131 g
        assert alkali_wanted(rows, batch_of(shop.book, code)) == (AlkaliWanted("sodium hydroxide", 146_826, 148_113),)
    log(shop.book, code, {4: "148.1"})
    with shop.book.look() as rows:
        assert alkali_wanted(rows, batch_of(shop.book, code)) == ()  # too late to say


def test_a_line_may_come_from_two_lots(shop: Shop) -> None:
    second = deliver(shop.book, DeliveryLine("olive oil", 1_000_000, "5200", 700))
    code = planned(shop.book)
    log(shop.book, code, {1: f"450@{shop.olive},150@{second}"})
    assert consumed(shop, code) == [(1, -450_000), (1, -150_000)]
    assert lines_of(shop.book, code)[0].used == 600_000


def test_a_correction_is_a_difference_and_both_stay(shop: Shop) -> None:
    code = planned(shop.book)
    log(shop.book, code, {1: "610"})
    with pytest.raises(Refused, match=r"Line 1 \(olive oil\) was weighed already: 610 g. To correct it, add --correct"):
        log(shop.book, code, {1: "601"})
    log(shop.book, code, {1: "601"}, correct=True)
    assert consumed(shop, code) == [(1, -610_000), (1, 9_000)]
    with pytest.raises(Refused, match="was not weighed yet; leave out --correct"):
        log(shop.book, code, {2: "400"}, correct=True)


def test_a_correction_may_change_the_lot(shop: Shop) -> None:
    second = deliver(shop.book, DeliveryLine("olive oil", 1_000_000, "5200", 700))
    code = planned(shop.book)
    log(shop.book, code, {1: "600"})
    log(shop.book, code, {1: f"600@{second}"}, correct=True)
    assert sorted(quantity for _, quantity in consumed(shop, code)) == [-600_000, -600_000, 600_000]
    assert lines_of(shop.book, code)[0].used == 600_000


def test_what_a_correction_mended_is_not_taken_back_under_it(shop: Shop) -> None:
    code = planned(shop.book)
    log(shop.book, code, {1: "610"})
    first = entries(shop)
    log(shop.book, code, {1: "601"}, correct=True)
    with pytest.raises(Refused, match=rf"the correction of line 1 \(entry {first + 1}\) depend on it"):
        undo(shop.book, first)


@pytest.mark.parametrize(
    ("grams", "message"),
    [
        ("600@{lye}", "Line 1 asks for olive oil, and lot {lye} is sodium hydroxide"),
        ("4500", "holds 4.?400 g, and 4.?500 g was asked for"),
        ("600@{waiting}", "{waiting} .* is quarantine; only accepted lots go into a batch: soapledger lot accept"),
        ("600@{late}", "{late} .* was best before end Apr 2026"),
    ],
)
def test_what_a_line_may_not_take(shop: Shop, grams: str, message: str) -> None:
    codes = {
        "lye": shop.lye,
        "waiting": deliver(shop.book, DeliveryLine("olive oil", 1_000_000, "5300", 700), accepted=False),
        "late": deliver(shop.book, DeliveryLine("olive oil", 1_000_000, "5301", 700, best_before=date(2026, 4, 30))),
    }
    code = planned(shop.book)
    with pytest.raises(Refused, match=message.format(**codes)):
        log(shop.book, code, {1: grams.format(**codes)})
    assert consumed(shop, code) == []


def test_lye_left_over_is_refused_unless_she_gives_a_reason_that_is_kept(shop: Shop) -> None:
    code = planned(shop.book)
    # the fats take 154.554 g NaOH: 155 g leaves 0.29 % over
    too_much = {1: "600", 2: "400", 4: "155"}
    with pytest.raises(Refused, match=r"superfat of [-−]0\.29 %: lye is left over and it would burn"):
        log(shop.book, code, too_much)
    assert consumed(shop, code) == []
    log(shop.book, code, too_much, anyway="for washing powder")
    reasons = "SELECT reason FROM decision d JOIN batch b ON b.id = d.batch_id WHERE b.code = ?"
    assert [row[0] for row in shop.rows().execute(reasons, (code,))] == ["for washing powder"]
    log(shop.book, code, {3: "293.6"})  # decided once, not asked again for the water
    assert len(shop.rows().execute(reasons, (code,)).fetchall()) == 1


def test_an_additive_may_be_left_out_but_not_the_lye(shop: Shop) -> None:
    add_material(shop.book, MaterialFacts("pink clay", "Kaolin"), kind="additive", code=None)
    clay = '\n[[additive]]\nmaterial = "pink clay"\ngrams = 20\n'
    add_recipe(shop.book, PLAIN_BAR.replace("plain-bar", "pink").replace("Plain Bar", "Pink") + clay, file="pink.toml")
    lot = deliver(shop.book, DeliveryLine("pink clay", 20_000, "K1", 300))
    code = planned(shop.book, "pink")
    with pytest.raises(Refused, match="cannot be left out of a soap"):
        log(shop.book, code, {4: "0"})
    log(shop.book, code, {1: "600", 2: "400", 3: "293.6", 4: "146.8", 5: "0"})
    assert batch_of(shop.book, code).open_lines == 0
    assert lines_of(shop.book, code)[4].left_out
    said = shop.rows().execute("SELECT text FROM reading WHERE what = 'left out'").fetchone()[0]
    assert said == "line 5, pink clay"
    # what was left out is free again for the next batch
    assert lines_of(shop.book, planned(shop.book, "pink"))[4].lot_id == lines_of(shop.book, code)[4].lot_id
    log(shop.book, code, {5: f"20@{lot}"}, correct=True)
    assert lines_of(shop.book, code)[4].used == 20_000


def test_weights_and_readings_typed_together_are_one_entry_or_none(shop: Shop) -> None:
    code = planned(shop.book)
    before = entries(shop)
    with pytest.raises(Refused, match="cannot be poured yet"):
        log(shop.book, code, {1: "600"}, readings=POURED)
    assert (entries(shop), consumed(shop, code)) == (before, [])
    weighed(shop.book, code)
    assert entries(shop) == before + 1
    assert batch_of(shop.book, code).status == "poured"


def test_nothing_goes_in_before_the_plan_or_after_the_cut(shop: Shop) -> None:
    with pytest.raises(BadInput, match="was planned for 6 May 2026"):
        log(shop.book, planned(shop.book), {1: "600"}, on=date(2026, 5, 5))
    with pytest.raises(Refused, match="is curing; nothing more goes in"):
        log(shop.book, cut(shop.book), {1: "600"})
    with pytest.raises(BadInput, match="has no line 9; its lines are 1 to 4"):
        log(shop.book, planned(shop.book), {9: "600"})


def test_the_record_keeps_the_figures_known_at_the_bench(shop: Shop) -> None:
    code = cut(shop.book)
    edit_material(shop.book, "olive-oil", MaterialFacts("olive oil", None, None, 180_000, 180_000, "a later figure"))
    with shop.book.look() as rows:
        check = lye_check(rows, batch_of(shop.book, code).id)
    # 146.826 g of the 154.55402 g that 190 and 257 ask for: 1 - 0.949998 (a lower value would give less)
    assert check.superfat_ppm == 50_002
    words = "190 typed for the material, taken as 184.3 to 195.7 mg KOH/g (certificate)"  # 3 % of 190 is 5.7
    assert any(words in figure for figure in check.figures.values())


def test_readings_are_kept_in_whole_units() -> None:
    assert read_reading("Lye temperature = 120.2 F") == ReadingValue("lye temperature", 49_000, "milli-C")
    assert read_reading("trace=8 min") == ReadingValue("trace", 8, "min")
    assert read_reading("pH=9.65") == ReadingValue("pH", 9_650, "milli-pH")
    assert read_reading("pot weight=1 540 g") == ReadingValue("pot weight", 1_540_000, "mg")
    assert read_reading("poured=14:05") == ReadingValue("poured", at="14:05")
    assert read_reading("observation=ash on top") == ReadingValue("observation", text="ash on top")


@pytest.mark.parametrize(
    ("typed", "message"),
    [
        ("lye temprature=49 C", "'lye temprature' is not something read at the bench; did you mean lye temperature"),
        ("lye temperature", "What was the lye temperature"),
        ("lye temperature=49", "Write 49 C or 49 F"),
        ("lye temperature=490 C", "cannot be"),
        ("pH=15", "between 0 and 14"),
        ("poured=25:05", "25:05"),
    ],
)
def test_a_reading_that_cannot_be_is_bad_input(typed: str, message: str) -> None:
    with pytest.raises(BadInput, match=message):
        read_reading(typed)


def test_a_discarded_batch_takes_no_readings(shop: Shop) -> None:
    code = planned(shop.book)
    with pytest.raises(BadInput, match="Say why"):
        discard_batch(shop.book, code, on=MADE, by="Nuala", reason=" ")
    discard_batch(shop.book, code, on=MADE, by="Nuala", reason="seized in the pot")
    assert batch_of(shop.book, code).status == "discarded"
    with pytest.raises(Refused, match="was discarded; nothing more is read of it"):
        log_readings(shop.book, code, POURED, on=MADE)
    with pytest.raises(Refused, match="was discarded; nothing more goes in"):
        log(shop.book, code, {1: "600"})
    with pytest.raises(Refused, match="was discarded already"):
        discard_batch(shop.book, code, on=MADE, by="Nuala", reason="again")
