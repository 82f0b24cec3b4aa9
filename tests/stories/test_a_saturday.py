"""A Saturday of twelve batches: packed by a list, out and back in two commands, by flags and by prompt."""

import json
from typing import Any

import pytest
from market import bake
from shop import Shop

from ledger.views.stock.stall import stall_by_name

# Nine products, of two of which two batches are ready, beside the plain bars of the shop; ten bars each.
BAKED = {
    "Rosemary": 2, "Oat": 2, "Calendula": 1, "Fennel": 1, "Hemp": 1, "Juniper": 1, "Kelp": 1, "Mint": 1, "Tar": 1,
}  # fmt: skip


@pytest.fixture
def market(shop: Shop, built: Any, run: Any, frozen: Any) -> dict[str, list[str]]:
    """Twelve batches, ready on Saturday, 30 May 2026; every bar costs 6.50, three together 18.00."""
    import shutil

    from shop import work_a_shop

    path, codes = built("twelve batches", lambda book: bake(book, BAKED), built("shop", work_a_shop)[0])
    shutil.copyfile(path, shop.book.path)
    frozen.move_to("2026-05-30 17:00:00")
    run("price", "set", "all", "6.50")
    run("price", "set", "all", "--offer", "3 for 18")
    return codes


def lines(shop: Shop) -> dict[str, int]:
    """The amounts on the lines of the one sale, by their kind."""
    found = shop.rows().execute("SELECT kind, sum(gross_minor - reduction_minor) FROM sale_line GROUP BY kind")
    return dict(found.fetchall())


def test_two_commands_and_under_two_hundred_characters(shop: Shop, market: dict[str, list[str]], run: Any) -> None:
    """Twelve of each of two products, and all ten of each of eight: 104 go out.

    21 come home, one is stolen and one broken: 81 sold, 27 times three for 18.00, 486.00. Taken are 455.50 - 50.00 +
    84.50 = 490.00, so 4.00 more.
    """
    assert market
    out = "stall out saturday --each 12"
    back = (
        "stall back sat ro=3 oa=2 ca=2 fe=2 he=2 ju=2 ke=2 mi=2 tar=2 pl=2 --stolen ro=1 --broken oa=1 "
        "--cash 455.5 --float 50 --card 84.5"
    )
    typed = [f"soapledger {one}" for one in (out, back)]
    assert len(typed) == 2
    assert sum(map(len, typed)) < 200
    said = run(*out.split()).stdout
    assert said.startswith("104 bars taken to Saturday market.\n")
    said = run(*back.split()).stdout
    assert said.startswith("Saturday market: 81 bars sold, 21 came home, 2 stolen or broken.\n")
    assert lines(shop) == {"bars": 48_600, "difference": 400}
    rows = shop.rows()
    assert stall_by_name(rows, "saturday").code
    paid = rows.execute("SELECT way, amount_minor, float_minor FROM payment ORDER BY id").fetchall()
    assert [tuple(one) for one in paid] == [("cash", 40_550, 5000), ("card", 8450, None)]
    assert json.loads(run("stall", "list", "--json").stdout)[0]["bars"] == []
    assert run("check").stdout


def test_the_same_by_prompt(shop: Shop, market: dict[str, list[str]], run: Any) -> None:
    """Ten numbers, what was lost, and the money; Enter where nothing was."""
    assert market
    commands = ("stall out saturday", "stall back saturday")
    run(*commands[0].split(), input="12\n")
    products = "3\n2\n2\n2\n2\n2\n2\n2\n2\n2\n"  # in the order of their age, the oldest batch first
    answered = products + "rosemary=1\noat=1\n455.50\n50\n84.50\n"
    told = run(*commands[1].split(), input=answered)
    assert sum(len(f"soapledger {one}") for one in commands) + len("12\n") + len(answered) < 200
    assert "Saturday market: 81 bars sold, 21 came home, 2 stolen or broken." in told.stdout
    assert lines(shop) == {"bars": 48_600, "difference": 400}


def test_the_list_to_pack_from(shop: Shop, market: dict[str, list[str]], run: Any, read: Any) -> None:
    """Of Mint 8 of 10 sold: 8 and a quarter are 10, all that are ready; the first time nothing is proposed."""
    first = json.loads(run("stall", "pack", "saturday", "--json").stdout)
    assert {one["take"] for one in first["products"]} == {0}
    run("stall", "out", "saturday", "mint=10", "rosemary=12")
    run("stall", "back", "saturday", "mint=2", "rosemary=4")
    shown = run("stall", "pack", "saturday", "--on", "2026-06-06").stdout
    assert shown.startswith("Saturday market on 6 Jun 2026: take 12 bars.\n")  # mint 2, rosemary 8 + 2 = 10
    old, new = market["Rosemary"]
    assert f"{old} 2, {new} 8" in shown
    for paper in ("a4", "letter"):
        run("stall", "pack", "saturday", "--on", "2026-06-06", "--paper", paper, "-o", f"{paper}.pdf")
        text = read(shop.book.path.with_name(f"{paper}.pdf").read_bytes()).text()
        for words in (
            "Saturday market",
            "6 Jun 2026",
            f"Rosemary {old}",
            f"Rosemary {new}",
            "2 of 2",
            "8 of 10",
            "sold 8",
        ):
            assert words in text
