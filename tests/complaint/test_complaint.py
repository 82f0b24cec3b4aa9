"""complaint at the command line."""

import json
from collections.abc import Callable
from typing import Any

import pytest

pytestmark = pytest.mark.usefixtures("frozen")


def test_a_serious_one_brings_the_duties_to_mind_and_leaves_the_rest_to_her(shop: Any, run: Callable[..., Any]) -> None:
    words = ("complaint", "add", "blisters", "--batch", shop.batch, "--serious", "yes", "--decided-by", "Nuala")
    shown = run(*words).stdout
    assert shown.startswith("Complaint 1 is booked.")
    for duty in ("1223/2009, Art 23", "without delay", "OPSS", "A reminder, not legal advice"):
        assert duty in shown
    assert "15 business days" not in shown  # she names no responsible person in the United States
    assert f"soapledger lot hold {shop.batch}" in shown


@pytest.mark.usefixtures("shop")
def test_one_that_nobody_judged_brings_no_duty(run: Callable[..., Any]) -> None:
    shown = run("complaint", "add", "too soft").stdout
    assert "reminder" not in shown
    assert "cannot be excluded" in shown


def test_it_is_listed_shown_and_forgotten(shop: Any, run: Callable[..., Any]) -> None:
    run(
        *("complaint", "add", "itched", "--batch", shop.batch, "--on", "2026-05-20", "--name", "Ida Marsh"),
        *("--phone", "020 910 0190", "--health", "a rash on both hands", "--bought", "quay, 9 May"),
    )
    assert "20 May 2026" in run("complaint", "list").stdout
    assert len(json.loads(run("complaint", "list", "--batch", shop.batch, "--json").stdout)) == 1
    shown = run("complaint", "show", "1").stdout
    for words in ("itched", f"{shop.batch}, Plain Bar", "quay, 9 May", "not decided", "Ida Marsh", "both hands"):
        assert words in shown
    run("complaint", "erase", "1", "--reason", "asked by letter", input="n\n", code=1)
    assert "Ida Marsh" in run("complaint", "show", "1").stdout
    run("complaint", "erase", "1", "--reason", "asked by letter", "--yes")
    shown = run("complaint", "show", "1").stdout
    assert f"{shop.batch}, Plain Bar" in shown
    assert "[erased, entry 16]" in shown
    for words in ("itched", "Ida Marsh", "quay, 9 May", "both hands"):
        assert words not in shown


@pytest.mark.usefixtures("shop")
@pytest.mark.parametrize(
    ("words", "message", "code"),
    [
        (("add", "itched", "--serious", "maybe"), "--serious yes or --serious no", 2),
        (("add", "itched", "--serious", "yes"), "--decided-by NAME", 2),
        (("add", "itched", "--on", "2026-06-02"), "2 Jun 2026", 2),
        (("add", "itched", "--batch", "26-777-1"), "26-777", 1),
        (("show", "7"), "no complaint 7", 2),
        (("show", "first"), "number of the complaint", 2),
    ],
)
def test_what_cannot_be_is_said_in_one_line(
    run: Callable[..., Any], words: tuple[str, ...], message: str, code: int
) -> None:
    said = run("complaint", *words, code=code).stderr
    assert message in said
    assert len(said.splitlines()) == 1


def test_without_a_code_the_batches_it_may_be_about_are_listed(shop: Any, run: Callable[..., Any]) -> None:
    run("stall", "add", "Quay market")
    run("stall", "out", "quay", f"{shop.batch}=4", "--on", "2026-05-09")
    run("stall", "back", "quay", f"{shop.batch}=1", "--on", "2026-05-09", "--takings", "15")
    shown = run("complaint", "add", "itched", "--at", "quay", "--bought-on", "2026-05-09").stdout
    assert "1 batch could have been bought at Quay market up to 9 May 2026:" in shown
    assert f"{shop.batch}  Plain Bar          3  9 May 2026" in shown
    assert shop.batch in run("complaint", "show", "1").stdout
    (one,) = json.loads(run("complaint", "show", "1", "--json").stdout)["candidates"]
    assert (one["code"], one["bars"]) == (shop.batch, 3)
    assert "No bars could have been bought" in run("complaint", "add", "x", "--bought-on", "2026-05-08").stdout


@pytest.mark.usefixtures("shop")
def test_notes_and_closing_are_shown_and_a_serious_verdict_brings_the_duties(run: Callable[..., Any]) -> None:
    run("complaint", "add", "itched")
    noted = run("complaint", "note", "1", "rang", "--serious", "yes", "--decided-by", "Nuala").stdout
    for words in ("names and health go to", "Great Britain", "not legal advice"):
        assert words in noted
    assert "a note would open it again" in run("complaint", "close", "1", "bar replaced").stdout
    assert "closed 1 Jun 2026" in run("complaint", "list").stdout
    shown = run("complaint", "show", "1").stdout
    for words in ("closed on 1 Jun 2026", "serious, Nuala", "closed: bar replaced"):
        assert words in shown
    assert "is open again" in run("complaint", "note", "1", "rang again").stdout
    assert "1 complaint, 1 open." in run("complaint", "list").stdout


def test_one_closed_without_a_verdict_says_so(shop: Any, run: Callable[..., Any]) -> None:
    run("complaint", "add", "itched", "--batch", shop.batch)
    assert "Nobody decided how serious" in run("complaint", "close", "1", "bar replaced").stdout


def test_a_batch_named_later_by_a_note_is_out_of_the_doubts_of_a_recall(shop: Any, run: Callable[..., Any]) -> None:
    run("complaint", "add", "itched", "--on", "2026-05-20")
    assert "complaint 1" in run("recall", "lot", "4471/2", "--json").stdout
    run("complaint", "note", "1", "code read", "--batch", shop.batch)
    answer = json.loads(run("recall", "lot", "4471/2", "--json").stdout)
    assert answer["cannot_exclude"] == []
    assert [one["complaint"] for one in answer["call"]] == [1]


def test_a_complaint_of_a_known_batch_names_how_to_ask_for_all_its_bars(shop: Any, run: Callable[..., Any]) -> None:
    ask = "Where all its bars are, and whom to call: soapledger recall of --complaint"
    typed = shop.batch.replace("-", "")
    assert f"{ask} 1" in run("complaint", "add", "itched", "--batch", typed).stdout
    run("complaint", "add", "too soft")
    assert f"{ask} 2" in run("complaint", "note", "2", "code read", "--batch", typed).stdout
