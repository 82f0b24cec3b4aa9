"""What became of the labels of a run adds up to those that were issued, one of them kept with the record."""

import shutil
from datetime import date
from typing import Any

import pytest
from freezegun import freeze_time
from making import CHECKED, cut
from pypdf import PdfReader
from shop import Shop, work_a_shop

from ledger.domain.label.run import specimens, used_of
from ledger.domain.release.bars import Passing
from ledger.errors import BadInput
from ledger.operations.release.release import pass_bars
from ledger.rows.label import runs
from ledger.storage.book import Book

PASSED = date(2026, 6, 3)


# of 12 issued, 1 spoiled and 1 returned, 10 are left: one over for nine bars, none for ten
@pytest.mark.parametrize(("wanting", "kept"), [(0, 1), (9, 1), (10, 0), (11, 0)])
def test_one_is_kept_as_a_specimen_where_the_bars_leave_it(wanting: int, kept: int) -> None:
    assert specimens(12, spoiled=1, returned=1, wanting=wanting) == kept


@pytest.mark.parametrize(("specimen", "used"), [(0, 2), (1, 1), (2, 0), (3, None)])
def test_no_more_are_kept_than_were_issued(specimen: int, used: int | None) -> None:
    facts = {"printed_on": PASSED, "on": PASSED, "spoiled": 4, "returned": 4, "specimen": specimen}
    if used is None:
        with pytest.raises(BadInput, match="Run 2 issued 10 labels; 4, 4 and 3 as a specimen are more than that"):
            used_of(2, 10, **facts)
    else:
        assert used_of(2, 10, **facts) == used


@pytest.mark.parametrize(("destroyed", "refused"), [(3, False), (4, False), (5, True)])
def test_no_more_are_destroyed_than_came_back(destroyed: int, refused: bool) -> None:
    facts = {"printed_on": PASSED, "on": PASSED, "spoiled": 0, "returned": 4, "destroyed": destroyed}
    if refused:
        with pytest.raises(BadInput, match="4 labels of run 2 came back unused; 5 of them cannot be destroyed"):
            used_of(2, 10, **facts)
    else:
        assert used_of(2, 10, **facts) == 6


@pytest.fixture
def ready(shop: Shop, run: Any, built: Any) -> Any:
    """Ten bars passed for packing, and labels printed the day after: one for each, and the specimen."""

    def print_them(book: Book) -> str:
        code = cut(book)
        pass_bars(book, code, Passing(on=PASSED, by="Nuala"))
        here = ("--ledger", str(book.path), "label")
        run(*here, "approve", code)
        assert "11 labels for batch" in run(*here, "print", code, "-o", "l.pdf").stdout
        return code

    with freeze_time("2026-06-04 09:00:00"):
        path, code = built("labels printed", print_them, built("shop", work_a_shop)[0])
        shutil.copyfile(path, shop.book.path)
        yield code


def test_the_plain_path_counts_in_one_word_and_adds_up(shop: Shop, ready: str, run: Any) -> None:
    assert "11 issued = 10 used + 1 specimen + 0 spoiled + 0 returned." in run("label", "count", "1").stdout
    run("release", ready, "--anyway", "a trial", *CHECKED)
    shown = " ".join(run("batch", "show", ready).stdout.split())
    assert "labels, run 1 for eu, 4 Jun 2026: 11 issued = 10 used + 1 specimen + 0 spoiled" in shown
    (found,) = runs(shop.rows())
    assert (found.used, found.specimen, found.count) == (10, 1, 11)


def test_spare_ones_are_destroyed_or_kept_and_it_is_written_down(ready: str, run: Any) -> None:
    run("label", "reprint", "1", "--count", "5", "-o", "m.pdf")
    run("label", "count", "1")
    said = run("label", "count", "2", "--returned", "5", "--destroyed", "3").stdout
    assert "5 issued = 0 used + 0 spoiled + 5 returned (3 destroyed, 2 kept)." in said
    shown = " ".join(run("batch", "show", ready).stdout.split())
    assert "5 issued = 0 used + 0 spoiled + 5 returned (3 destroyed, 2 kept)." in shown
    run("batch", "show", ready, "-o", "r.pdf")
    assert "5, 3 destroyed" in " ".join(" ".join(one.extract_text() for one in PdfReader("r.pdf").pages).split())


def test_what_was_not_counted_is_asked_for_at_the_release(shop: Shop, ready: str, run: Any) -> None:
    given = ("release", ready, "--anyway", "a trial", *CHECKED)
    assert "Run 1 of labels for batch" in run(*given, code=1).stderr  # nobody answers
    assert runs(shop.rows())[0].counted is None
    asked = run(*given, input="0\n\n")
    assert "Run 1: 11 issued = 10 used + 1 specimen + 0 spoiled + 0 returned." in asked.stdout


@pytest.mark.parametrize(("spoiled", "code"), [("0", 0), ("1", 0), ("2", 1)])
def test_or_said_by_a_flag(shop: Shop, ready: str, run: Any, spoiled: str, code: int) -> None:
    """With one spoiled of eleven no specimen is left, with two nine bars of ten have a label."""
    run("release", ready, "--anyway", "a trial", "--spoiled", spoiled, "--returned", "0", *CHECKED, code=code)
    (found,) = runs(shop.rows())
    assert (found.used, found.specimen) == {"0": (10, 1), "1": (10, 0), "2": (9, 0)}[spoiled]


def test_nothing_is_counted_where_the_release_is_refused_anyway(shop: Shop, ready: str, run: Any) -> None:
    refused = run("release", ready, "--spoiled", "0", *CHECKED, code=1).stderr
    assert "there is no safety assessment" in refused
    assert runs(shop.rows())[0].counted is None


def test_what_was_counted_is_not_counted_anew_without_a_word(shop: Shop, ready: str, run: Any) -> None:
    assert f"soapledger release {ready}" in run("label", "count", "1", "--spoiled", "1").stdout
    before = shop.rows().execute("SELECT count(*) FROM entry").fetchone()[0]
    refused = run("label", "count", "1", code=1).stderr
    assert "Run 1 was counted already: 11 issued = 10 used + 1 spoiled + 0 returned" in refused
    assert shop.rows().execute("SELECT count(*) FROM entry").fetchone()[0] == before
    run("release", ready, "--anyway", "a trial", *CHECKED)
    again = run("label", "count", "1", "--spoiled", "0").stdout
    assert "11 issued = 10 used + 1 specimen" in again
    assert "soapledger release" not in again  # they are released
