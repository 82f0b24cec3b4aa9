"""Of what is written again the latest counts, and what was taken back does not."""

from datetime import date

import pytest
from bare_ledger import BareLedger

from ledger.errors import BadInput, DamagedLedger
from ledger.rows.batch import batch_by_id, plan_lines
from ledger.rows.complaint import complaint
from ledger.rows.decision import deviations
from ledger.rows.history import last_entry_before
from ledger.rows.kept import content_of
from ledger.rows.material import contents_of
from ledger.rows.reading import mass_in, read_of_the_bars
from ledger.rows.settings import settings
from ledger.views.complaint.complaint_candidates import candidate_batches


def test_the_latest_target_of_a_line_counts() -> None:
    ledger = BareLedger()
    batch, _ = ledger.make("cold", [])
    plan = {"number": 1, "role": "fat", "material_id": 1, "stage": "in the fats"}
    ledger.add("plan_line", batch_id=batch, target=400, low=396, high=404, **plan)
    assert [(one.target, one.low, one.high) for one in plan_lines(ledger.rows, batch)] == [(400, 396, 404)]
    for target in (410, 420):
        ledger.add("plan_target", plan_line_id=1, target=target, low=target - 4, high=target + 4)
    assert [(one.target, one.low, one.high) for one in plan_lines(ledger.rows, batch)] == [(420, 416, 424)]


def test_the_latest_decision_about_a_deviation_counts() -> None:
    ledger = BareLedger()
    ledger.make("cold", [])
    ledger.add("deviation", batch_id=1, on="2026-03-02", subject="seen", found="soda ash")
    for verdict in ("rework", "accepted"):
        ledger.add("deviation_decision", deviation_id=1, verdict=verdict, on="2026-03-03", by="Nuala", reason="looks")
    assert [one.verdict for one in deviations(ledger.rows, 1)] == ["accepted"]


def test_the_latest_settings_and_the_latest_statement_count() -> None:
    ledger = BareLedger()
    ledger.add("constituent", material_id=1, name="Linalool", share_ppm=1000, source="of March")
    ledger.close()
    own = {"country": "IE", "currency": "EUR", "units": "metric", "time_zone": "UTC"}
    ledger.add("settings_revision", business="Barer", **own)
    ledger.add("constituent", material_id=1, name="Limonene", share_ppm=2000, source="of April")
    ledger.close()
    assert settings(ledger.rows).business == "Barer"
    assert contents_of(ledger.rows, [(1, None)])[1, None] == {"Limonene": 2000}


@pytest.mark.parametrize(("moment", "entry"), [("10:00:02", 1), ("10:00:03", 2)])
def test_what_was_written_at_a_moment_is_not_before_it(moment: str, entry: int) -> None:
    """Entries 1 and 2 were written at 10:00:01 and 10:00:02."""
    ledger = BareLedger()
    ledger.close()
    ledger.close()
    assert last_entry_before(ledger.rows, f"2026-03-02T{moment}Z") == entry
    with pytest.raises(BadInput, match="Nothing was written"):
        last_entry_before(ledger.rows, "2026-03-02T10:00:01Z")


def test_wrapping_is_no_mass_that_went_in() -> None:
    """A gram of oil, and 20 bands."""
    ledger = BareLedger()
    batch, _ = ledger.make("cold", [ledger.buy("A")])
    ledger.move(ledger.buy("W", material="band", quantity=100), -20, "consumed", batch_id=batch)
    assert mass_in(ledger.rows, batch) == 1000


def test_what_was_booked_with_the_cut_was_not_read_of_the_bars() -> None:
    """On the day of the cut the order of the entries decides."""
    ledger = BareLedger()
    ledger.make("cold", [ledger.buy("A")])
    acid = {"batch_id": 1, "what": "pH", "unit": "milli-pH"}
    ledger.add("reading", value=10_000, on="2026-03-02", **acid)
    ledger.close()
    for on, value in (("2026-03-02", 9600), ("2026-03-01", 9700)):
        ledger.add("reading", value=value, on=on, **acid)
    found = read_of_the_bars(ledger.rows, batch_by_id(ledger.rows, 1), "pH")
    assert [row.value for row in found] == [9600]


def test_the_bars_that_went_last_are_asked_about_first_and_what_was_taken_back_never_went() -> None:
    ledger = BareLedger()
    oil = ledger.buy("A")
    first, second = (ledger.make("cold", [oil])[1][0] for _ in range(2))
    ledger.add("complaint", on="2026-03-20", what="a rash")
    ledger.move(first, -1, "given", on="2026-03-05", note="a neighbour")
    ledger.close()
    ledger.move(second, -2, "given", on="2026-03-09", note="a neighbour")
    ledger.move(first, -1, "given", on="2026-03-08", note="a neighbour")
    codes = [ledger.code("lot", second), ledger.code("lot", first)]
    assert [one.code for one in candidate_batches(ledger.rows, complaint(ledger.rows, 1))] == codes
    ledger.undo()
    (left,) = candidate_batches(ledger.rows, complaint(ledger.rows, 1))
    assert (left.code, left.bars, left.last_on) == (codes[1], 1, date(2026, 3, 5))


@pytest.mark.parametrize(
    ("typed", "says"), [("abcde", "too short"), ("abcdef", None), ("abcdef0", None), ("abcdee", "No paper kept")]
)
def test_a_paper_is_known_by_six_characters_of_its_digest(typed: str, says: str | None) -> None:
    """The content is not of that digest: so one that is found is said to be changed."""
    ledger = BareLedger()
    ledger.rows.execute("INSERT INTO attached_content (digest, content) VALUES (?, ?)", ("abcdef" + "0" * 58, b"paper"))
    ledger.buy("A")
    ledger.add("attachment", digest="abcdef" + "0" * 58, name="a.txt", kind="CoA", lot_id=1)
    with pytest.raises((BadInput, DamagedLedger), match=says or "was changed since it was kept"):
        content_of(ledger.rows, typed)
