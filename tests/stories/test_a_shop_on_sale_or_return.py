"""A week of orders, and a shop that takes bars on sale or return: every command typed, and its characters counted."""

import json
import shutil
from collections.abc import Callable
from typing import Any

import pytest
from market import bake
from pypdf import PdfReader
from shop import Shop, work_a_shop

BAKED = {"Rosemary": 2, "Oat": 2, "Mint": 1, "Tar": 1}
SHOPS = {"Gull Row": 12, "Heron & Daughter": 8, "Port Pantry": 6, "Slip Chandler": 10}


class Typed:
    """Runs commands as they are typed, and counts them and their characters."""

    def __init__(self, run: Callable[..., Any]) -> None:
        self.run, self.commands, self.characters = run, 0, 0

    def __call__(self, text: str, *more: str) -> Any:
        """One command; `more` are words with blanks in them."""
        words = [*text.split(), *more]
        self.commands += 1
        self.characters += len("soapledger ") + len(text) + sum(len(one) + 3 for one in more)
        return self.run(*words)


@pytest.fixture
def town(shop: Shop, built: Any, run: Callable[..., Any], frozen: Any) -> dict[str, list[str]]:
    """Six batches of ten beside the plain bars, ready on Monday, 1 June 2026; four shops that buy, and one more."""
    path, codes = built("six batches", lambda book: bake(book, BAKED), built("shop", work_a_shop)[0])
    shutil.copyfile(path, shop.book.path)
    frozen.move_to("2026-06-01 09:00:00")
    for name in (*SHOPS, "Tern Hall"):
        run("customer", "add", name, "--shop", "--address", f"{name}, 1 Quay, Port Emmer")
    run("price", "set", "all", "6.50")
    found: dict[str, list[str]] = codes
    return found


def test_a_week_of_orders(shop: Shop, town: dict[str, list[str]], run: Callable[..., Any], frozen: Any) -> None:
    """Four orders on Monday for Friday, 36 bars; one grows, one ends; three go on Thursday, with note and invoice."""
    assert town
    typed = Typed(run)
    for name in ("gull", "heron", "port", "slip"):
        run("customer", "terms", name, "--reduction", "20%", "--pay-in", "14")
    typed("order add gull rosemary=12 --due fri")
    typed("order add heron oat=4 mint=4 --due fri")
    late = typed("order add port tar=6 --due fri")
    assert late.stderr == ""
    few = typed("order add slip tar=10 --due fri")
    assert "6 bars of Tar are too few" in few.stderr
    assert "36 bars still to go" in typed("order list").stdout
    typed("order change 1 rosemary=+4")
    typed("order end 4 --by Orla", "--reason", "too few")
    frozen.move_to("2026-06-04 09:00:00")
    for order in (1, 2, 3):
        typed(f"dispatch --order {order} --yes")
        typed(f"delivery-note {order} -o n{order}.pdf")
    for name in ("gull", "heron", "port"):
        typed(f"invoice make {name} --yes")
    # Sixteen, eight and six bars at 6.50 less a fifth are 83.20, 41.60 and 31.20.
    owed = {one["number"]: one["total_minor"] for one in json.loads(run("invoice", "list", "--json").stdout)}
    assert owed == {1: 8320, 2: 4160, 3: 3120}
    assert "0 open orders" in run("order", "list").stdout
    assert "nothing is wrong" in run("check").stdout
    rosemary = PdfReader("n1.pdf").pages[0].extract_text()
    assert all(code in rosemary for code in town["Rosemary"])
    assert (typed.commands, typed.characters) == (16, 606)
    assert shop.book.path.exists()


def test_a_shop_on_sale_or_return(shop: Shop, town: dict[str, list[str]], run: Callable[..., Any], frozen: Any) -> None:
    """Thirty bars go there, the shop counts twice, two come home and are sold on; one invoice for a month.

    First count: 20 of 30 still there, 9 sold, 1 missing: 9 x 6.50 = 58.50, less 30 % (17.55) 40.95. Second: 8 still
    there, 12 sold: 78.00 less 23.40 is 54.60. Together 95.55.
    """
    typed = Typed(run)
    typed("customer terms tern --sale-or-return --commission 30% --pay-in 30")
    old, new = town["Rosemary"]
    typed(f"dispatch tern {old}=5 {new}=5 {town['Oat'][0]}=10 {town['Mint'][0]}=10")
    typed("delivery-note --entry " + str(shop.rows().execute("SELECT max(id) FROM entry").fetchone()[0]) + " -o n.pdf")
    frozen.move_to("2026-06-15 18:00:00")
    first = typed("consignment count tern ro=7 oa=7 mi=6 --missing mi=1")
    assert "9 bars sold (sale 1), 1 bar missing, 20 still there" in first.stdout
    assert "40.95 EUR for you" in first.stdout
    found = json.loads(run("recall", "bar", new, "--json").stdout)
    assert any(old in one["what"] for one in found["cannot_exclude"])
    frozen.move_to("2026-06-30 18:00:00")
    second = typed("consignment count tern ro=2 oa=3 mi=3")
    assert "54.60 EUR for you" in second.stdout
    typed(f"consignment back tern {new}=2")
    typed(f"resell {new}=2 --by Orla", "--reason", "seal unbroken")
    typed("invoice make tern --yes")
    typed("invoice show 1 -o i.pdf")
    assert "€95.55" in PdfReader("i.pdf").pages[0].extract_text()
    assert json.loads(run("customer", "show", "tern", "--json").stdout)["owed_minor"] == 9555
    assert "nothing is wrong" in run("check").stdout
    assert (typed.commands, typed.characters) == (9, 477)
