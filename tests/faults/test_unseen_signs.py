"""No command takes a sign that nobody sees; what an older ledger holds of them is shown by its number."""

import json
from datetime import date
from typing import Any

import pytest

from ledger.cli.commands import EVERY
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.people.suppliers import SupplierDetails, add_supplier
from ledger.operations.stock.receive import DeliveryLine, DeliveryNote, receive
from ledger.storage import verbs
from ledger.units import codes

pytestmark = pytest.mark.usefixtures("frozen")
ODD = "Ever\u202egreen"


def test_every_command_refuses_such_a_sign(shop: Any, run: Any) -> None:
    before = shop.book.path.read_bytes()
    for words in EVERY:
        done = run("--as", ODD, *words.split(), code=2)
        assert "stands U+202E" in done.stderr, words
        done = run(*words.split(), ODD, code=2)
        assert done.stderr.count("\n") == 1, words
        assert done.stderr.isprintable() or done.stderr[:-1].isprintable(), words
        assert shop.book.path.read_bytes() == before, words


def test_the_line_says_which_sign_where_and_what_to_do(shop: Any, run: Any) -> None:  # noqa: ARG001
    done = run("customer", "add", ODD, "--shop", code=2)
    assert done.stderr == (
        "NAME, sign 5: after 'Ever' stands U+202E, a sign that turns the direction of writing, which nobody sees; "
        "type it again without it.\n"
    )
    assert "--phone, sign 1: at the beginning" in run("supplier", "add", "X", "--phone", "\u200e020", code=2).stderr
    assert "give the file another name" in run("attach", "a\u200e.pdf", "--to", "L1-X", code=2).stderr


def test_at_a_prompt_it_is_asked_again(shop: Any, run: Any) -> None:
    olive, again = "olive\u200b oil", "olive oil"
    done = run("receive", "tarnlow", input=f"{olive}\n{again}\n2 kg\nK-9\n12\n\n\n\nyes\n", code=0)
    assert "U+200B" in done.stderr
    assert shop.rows().execute("SELECT count(*) FROM live_lot WHERE supplier_number = 'K-9'").fetchone()[0] == 1


def test_what_an_older_ledger_holds_is_shown_by_its_number(shop: Any, run: Any) -> None:
    add_customer(shop.book, CustomerDetails(ODD), kind="shop", code="odd")
    add_supplier(shop.book, SupplierDetails("E\u0301va\x9b Oils"), own=False, code="eva")
    assert "Ever[U+202E]green" in run("customer", "list").stdout
    assert "[U+009B]" in run("supplier", "show", "eva").stdout
    assert "Ever[U+202E]green" in run("history").stdout or "odd" in run("history").stdout
    shown = run("customer", "list", "--json").stdout
    assert "\\u202e" in shown
    assert "\u202e" not in shown
    assert ODD in {one["name"] for one in json.loads(shown)}


def test_a_name_typed_either_way_is_one(shop: Any, run: Any) -> None:
    composed, two = "Éva Oils", "E\u0301va Oils"
    run("supplier", "add", two)
    assert "already" in run("supplier", "add", composed, code=2).stderr
    assert composed in run("supplier", "show", two).stdout
    add_supplier(shop.book, SupplierDetails("Zoe\u0301 Oils"), own=False, code="z")  # as an earlier program kept it
    assert "already" in run("supplier", "add", "ZOÉ OILS", code=2).stderr
    for name in ("Zoé Oils", "Zoe\u0301 Oils", "zoé"):
        assert run("supplier", "show", name).stdout


def test_a_lot_number_with_an_accent_is_found_either_way(shop: Any, run: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    line = DeliveryLine("olive oil", 1_000_000, "E\u0301-77", 100)
    with monkeypatch.context() as earlier:  # as an earlier program kept it
        earlier.setattr(verbs, "supplier_number_key", codes._key)
        (lot,) = receive(shop.book, DeliveryNote("tarnlow", date(2026, 3, 3), (line,)))
    for typed in ("É-77", "E\u0301 77", "lot é77"):
        assert lot.code in run("recall", "lot", typed).stdout
    run("recall", "lot", "E-77", code=2)
    done = run("receive", "tarnlow", "--line", "olive oil; 1 kg; lot É-77; 1", code=1)
    assert lot.code in done.stderr  # it came before under this number
