"""A day at a stall by commands: by product and by batch, what is assumed, and the money."""

import json
import shutil
from datetime import date
from typing import Any

import pytest
from market import bake
from once import once
from shop import Shop, work_a_shop


@pytest.fixture
def codes(shop: Shop, built: Any, run: Any, frozen: Any) -> dict[str, list[str]]:
    """Three batches of Rosemary and one of Oat, ten bars each, on Saturday, 30 May 2026; a bar costs 6.50."""
    base = built("shop", work_a_shop)[0]
    path, made = built("four batches", lambda book: bake(book, {"Rosemary": 3, "Oat": 1}), base)
    shutil.copyfile(path, shop.book.path)
    frozen.move_to("2026-05-30 17:00:00")
    once(priced)(shop, run)
    return dict(made)


def priced(_: Shop, run: Any) -> None:
    run("price", "set", "all", "6.50")


@pytest.fixture
def out(shop: Shop, codes: dict[str, list[str]], run: Any) -> None:
    """Twelve of Rosemary are at the stall."""
    assert codes
    once(taken_out)(shop, run, "rosemary=12")


@pytest.fixture
def home(shop: Shop, out: None, built: Any, run: Any) -> None:  # noqa: ARG001
    """Five of the twelve came home."""
    once(brought_home)(shop, run)


@pytest.fixture
def six(shop: Shop, codes: dict[str, list[str]], run: Any) -> str:
    """Six of Oat are at the stall; the code of their batch."""
    oat = codes["Oat"][0]
    once(taken_out)(shop, run, f"{oat}=6")
    return oat


def taken_out(_: Shop, run: Any, what: str) -> None:
    run("stall", "out", "saturday", what)


def brought_home(_: Shop, run: Any) -> None:
    run("stall", "back", "saturday", "rosemary=5")


def asked(shop: Shop, sql: str) -> list[tuple[Any, ...]]:
    return [tuple(one) for one in shop.rows().execute(sql)]


ASSUMED = """
SELECT l.code, v.kind, v.quantity, group_concat(o.code) FROM live_assumed_batch a JOIN live_movement v
  ON v.id = a.movement_id JOIN lot l ON l.id = v.lot_id JOIN lot o ON o.id = a.lot_id
WHERE NOT EXISTS (SELECT 1 FROM live_assumed_ticked t WHERE t.movement_id = v.id) GROUP BY v.id ORDER BY v.id
"""
LINES = "SELECT kind, bars, gross_minor, reduction_minor FROM live_sale_line ORDER BY id"


def test_by_product_the_oldest_go_and_the_others_are_candidates(
    shop: Shop, codes: dict[str, list[str]], run: Any
) -> None:
    one, two, three = codes["Rosemary"]
    told = run("stall", "out", "saturday", "rosemary=12", f"{codes['Oat'][0]}=4").stdout
    assert told.startswith("16 bars taken to Saturday market.\nAssumed, the oldest first:\n")
    assert "soapledger stall ticked saturday-market" in told
    assert asked(shop, ASSUMED) == [(one, "moved", 10, f"{two},{three}"), (two, "moved", 2, f"{one},{three}")]


@pytest.mark.usefixtures("out")
def test_a_ticked_list_leaves_nothing_assumed(shop: Shop, codes: dict[str, list[str]], run: Any) -> None:
    one, two, _ = codes["Rosemary"]
    run("stall", "back", "saturday", f"{one}=1", f"{two}=0")
    assert len(asked(shop, ASSUMED)) == 4  # what went and what was sold, of both
    said = run("stall", "ticked", "saturday", "--by", "Orla").stdout
    assert said == "What went to Saturday market on 30 May 2026 is ticked: its batches are as\nbooked.\n"
    assert asked(shop, ASSUMED) == []
    assert {one for (one,) in asked(shop, "SELECT by FROM assumed_ticked")} == {"Orla"}
    assert "there is nothing to tick" in run("stall", "ticked", "saturday", code=1).stderr


@pytest.mark.usefixtures("home")
def test_a_ticked_list_does_not_say_which_batch_was_counted_by_product(
    shop: Shop, codes: dict[str, list[str]], run: Any
) -> None:
    said = " ".join(run("stall", "ticked", "saturday").stdout.split())
    assert "Of 7 bars counted by product in the evening the batch stays assumed; when you have looked" in said
    one, two, three = codes["Rosemary"]
    assert asked(shop, ASSUMED) == [(one, "sold", -7, f"{two},{three}")]
    said = " ".join(run("stall", "ticked", "saturday", "--home").stdout.split())
    assert said == "What went to Saturday market on 30 May 2026 is ticked: its batches are as booked."
    assert asked(shop, ASSUMED) == []


def test_a_saturday_is_ticked_by_its_day_and_the_next_one_stays(
    shop: Shop, codes: dict[str, list[str]], run: Any, frozen: Any
) -> None:
    assert codes
    for day in (6, 13):
        frozen.move_to(f"2026-06-{day:02} 17:00:00")
        run("stall", "out", "saturday", "rosemary=8")
        run("stall", "back", "saturday", "rosemary=3")
    run("stall", "ticked", "saturday", "--on", "2026-06-06", "--home")
    left = asked(shop, ASSUMED.replace("GROUP BY", "AND v.\"on\" = '2026-06-06' GROUP BY"))
    assert left == []
    assert asked(shop, ASSUMED) != []
    assert "nothing to tick" in run("stall", "ticked", "saturday", "--on", "2026-06-06", code=1).stderr


@pytest.mark.usefixtures("shop")
def test_a_sale_says_which_of_its_batches_was_assumed(codes: dict[str, list[str]], run: Any) -> None:
    one, two, _ = codes["Rosemary"]
    run("stall", "out", "saturday", "rosemary=12", "--ticked")
    run("stall", "back", "saturday", "rosemary=5")
    said = " ".join(run("sale", "show", "1").stdout.split())
    assert f"Of line 1 the batch is assumed; the bars may be of {two}." in said
    run("undo", "--yes")
    run("stall", "back", "saturday", f"{one}=5", f"{two}=0")
    assert "assumed" not in run("sale", "show", "2").stdout


def test_out_and_ticked_at_once(shop: Shop, codes: dict[str, list[str]], run: Any) -> None:
    assert codes
    run("stall", "out", "saturday", "rosemary=12", "--ticked")
    assert asked(shop, ASSUMED) == []


def test_all_of_a_product_are_not_assumed(shop: Shop, codes: dict[str, list[str]], run: Any) -> None:
    assert codes
    run("stall", "out", "saturday", "--each", "30", "rosemary")
    assert asked(shop, ASSUMED) == []


@pytest.mark.usefixtures("out")
def test_bars_that_came_home_of_a_batch_that_may_have_gone_are_taken(
    shop: Shop, codes: dict[str, list[str]], run: Any
) -> None:
    """By the books 12 of the first two went; 3 of the third came home, so 3 of the booked ones never left."""
    one, two, three = codes["Rosemary"]
    run("stall", "back", "saturday", f"{three}=3", f"{one}=1")
    held = dict(
        asked(
            shop,
            "SELECT l.code, sum(v.quantity) FROM movement v JOIN lot l ON l.id = v.lot_id JOIN place p ON p.id = "
            "v.place_id WHERE p.kind = 'workshop' AND l.code IN ("
            + ", ".join(f"'{code}'" for code in (one, two, three))
            + ") GROUP BY l.code",
        )
    )
    assert sum(held.values()) == 30 - 8  # eight were sold
    assert held[three] == 10


def test_takings_by_way_with_a_float_other_goods_and_a_fee(shop: Shop, six: str, run: Any) -> None:
    """Four at 6.50 are 26.00; taken 60 - 40 + 9.50 = 29.50, 5.00 of it for other goods: 1.50 less."""
    words = f"{six}=1 --stolen oat=1 --cash 60 --float 40 --card 9.50 --other-goods 5 --pitch 25".split()
    said = run("stall", "back", "saturday", *words).stdout
    assert "Saturday market: 4 bars sold, 1 came home, 1 stolen or broken." in said
    assert "By their prices they bring 26.00 EUR" in said
    assert "Taken 29.50 EUR (20.00 EUR in cash, 9.50 EUR by card, without a float of" in said
    assert "That is 1.50 EUR less than it should be, and is booked so." in said
    assert asked(shop, LINES) == [("bars", 4, 2600, 0), ("other", 0, 500, 0), ("difference", 0, -150, 0)]
    assert asked(shop, "SELECT way, amount_minor, float_minor FROM payment") == [
        ("cash", 2000, 4000),
        ("card", 950, None),
    ]
    assert asked(shop, "SELECT kind, amount_minor FROM fee") == [("pitch", 2500)]
    assert asked(shop, "SELECT quantity, note FROM movement WHERE kind = 'wasted'") == [
        (-1, "stolen at Saturday market")
    ]


def test_a_card_total_that_comes_later_ends_the_day(shop: Shop, six: str, run: Any) -> None:
    said = " ".join(run("stall", "back", "saturday", f"{six}=2", "--cash", "20").stdout.split())
    assert "soapledger stall takings saturday-market --card AMOUNT" in said
    assert asked(shop, LINES) == [("bars", 4, 2600, 0)]
    assert "Takings not told yet: " in run("sale", "show", "1").stdout
    assert "Owed" not in run("sale", "show", "1").stdout
    said = run("stall", "takings", "saturday", "--card", "5").stdout
    assert ", 5.00 EUR by card." in " ".join(run("history", "--last", "1").stdout.split())
    assert said.startswith("Saturday market on 30 May 2026:\n")
    assert "That is 1.00 EUR less than it should be" in said
    assert asked(shop, LINES) == [("bars", 4, 2600, 0), ("difference", 0, -100, 0)]
    told = run("stall", "takings", "saturday", "--card", "5", "--yes", code=2).stderr
    assert "What was taken by card on 30 May 2026 is booked already (sale 1)" in told
    told = run("stall", "takings", "saturday", "--takings", "5", "--yes", code=2).stderr
    assert "is booked already (sale 1)" in told


def test_an_offer_that_does_not_divide_is_shared_by_the_bars(shop: Shop, codes: dict[str, list[str]], run: Any) -> None:
    """Three for 10.00, mixed of two products: 6.67 for two of one, 3.33 for the other."""
    run("price", "set", "all", "--offer", "3 for 10")
    one, oat = codes["Rosemary"][0], codes["Oat"][0]
    run("stall", "out", "saturday", f"{one}=2", f"{oat}=1")
    run("stall", "back", "saturday", f"{one}=0", f"{oat}=0")
    assert asked(shop, LINES) == [("bars", 2, 1300, 633), ("bars", 1, 650, 317)]


def test_takings_far_off_are_asked_about(shop: Shop, codes: dict[str, list[str]], run: Any) -> None:
    oat = codes["Oat"][0]
    run("stall", "out", "saturday", f"{oat}=2")
    for typed, doubted in (("64.99", False), ("65", True), ("2.61", False), ("2.60", True)):
        told = run("stall", "back", "saturday", f"{oat}=0", "--takings", typed, input="n\n", code=1 if doubted else 0)
        assert ("they usually bring 6.50 EUR" in told.stderr) is doubted
        if not doubted:
            run("undo", "--yes")
    run("stall", "back", "saturday", f"{oat}=0", "--takings", "65", "--yes")
    assert asked(shop, LINES) == [("bars", 2, 1300, 0), ("difference", 0, 5200, 0)]


def test_without_prices_takings_are_shared_by_bars_and_later_ones_too(
    shop: Shop, codes: dict[str, list[str]], run: Any
) -> None:
    """Three bars, 10.00 in cash: 3.33 and 6.67 (half up at the running total); 5.00 by card later: 1.67 and 3.33."""
    run("price", "end", "all")
    one, oat = codes["Rosemary"][0], codes["Oat"][0]
    run("stall", "out", "saturday", f"{one}=1", f"{oat}=2")
    run("stall", "back", "saturday", f"{one}=0", f"{oat}=0", "--cash", "10")
    run("stall", "takings", "saturday", "--card", "5")
    assert asked(shop, LINES) == [("bars", 1, 333, 0), ("bars", 2, 667, 0), ("bars", 0, 167, 0), ("bars", 0, 333, 0)]
    assert run("check").stdout


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        ("OAT=7", 1, "6 bars of batch OAT went out, so 7 cannot have come back."),
        ("oat=7", 1, "6 bars of Oat went out, so 7 cannot have come back."),
        ("rosemary=1", 2, "No bars of Rosemary went to Saturday market; there are OAT."),
        ("wool=1", 2, "No product is called 'wool'."),
        ("OAT=1 --takings 10 --cash 5", 2, "Give --takings in all, or --cash and --card, not both."),
        ("OAT=1 --float 5", 2, "Of which cash is that the float?"),
        ("OAT=1 --cash 5 --float 6", 2, "The box held less than its float"),
        ("OAT=1 --stolen OAT=6", 1, "6 bars of batch OAT went out, and 1 of them are told already"),
        ("OAT=6 --cash 5 --card 0", 2, "Nothing was sold, so there are no takings to share"),
        ("OAT=1 --cash 5x", 2, "The cash cannot be read from '5x'"),
    ],
)
def test_what_cannot_be_is_one_line_and_nothing_is_written(
    shop: Shop, six: str, run: Any, words: str, code: int, said: str
) -> None:
    before = asked(shop, "SELECT count(*) FROM entry")
    told = run("stall", "back", "saturday", *words.replace("OAT", six).split(), code=code).stderr
    assert said.replace("OAT", six) in told
    assert told.count("\n") == 1
    assert asked(shop, "SELECT count(*) FROM entry") == before


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        ("rosemary=31", 1, "Of Rosemary 30 released bars stand in the workshop on 30 May 2026; 31 cannot leave."),
        ("rosemary=0", 2, "How many bars of Rosemary? Write a number above zero."),
        ("rosemary", 2, "How many of 'rosemary'?"),
        ("--each 0", 2, "How many of each? Write --each with a number above zero."),
        ("--each 2 OAT", 2, "--each is for products; of a batch write OAT=2."),
        ("26-9999=1", 1, "is not a code of ours"),
    ],
)
def test_what_cannot_leave_is_one_line(
    shop: Shop, codes: dict[str, list[str]], run: Any, words: str, code: int, said: str
) -> None:
    assert shop
    oat = codes["Oat"][0]
    told = run("stall", "out", "saturday", *words.replace("OAT", oat).split(), code=code).stderr
    assert said.replace("OAT", oat) in told
    assert told.count("\n") == 1


@pytest.mark.parametrize("typed", ["--cash=-5", "--pitch=-5", "--card=5 USD", "--other-goods=$5"])
def test_money_below_nothing_or_of_another_currency_is_one_line(shop: Shop, six: str, run: Any, typed: str) -> None:
    told = run("stall", "back", "saturday", f"{six}=1", typed, code=2).stderr
    assert told.count("\n") == 1
    assert asked(shop, "SELECT count(*) FROM sale") == [(0,)]


def test_several_batches_of_a_product_are_asked_together_and_answered_either_way(
    shop: Shop, codes: dict[str, list[str]], run: Any
) -> None:
    one, two, _ = codes["Rosemary"]
    run("stall", "out", "saturday", f"{one}=5", f"{two}=5")
    told = run("stall", "back", "saturday", input=f"{one}=2 {two}=1\n\n\n\n\n")
    assert f"Rosemary: 10 went out ({one}=5, {two}=5); how many came back [0]:" in told.stderr
    assert asked(shop, ASSUMED) == []  # each was read from its bars
    assert asked(shop, LINES) == [("bars", 3, 1950, 0), ("bars", 4, 2600, 0)]


@pytest.mark.usefixtures("out")
def test_what_is_taken_back_is_assumed_no_more(shop: Shop, run: Any) -> None:
    run("stall", "back", "saturday", "rosemary=5", "--cash", "45.50", "--float", "0")
    run("stall", "takings", "saturday", "--card", "5")
    run("undo", "--yes")
    run("undo", "--yes")
    assert [kind for _, kind, _, _ in asked(shop, ASSUMED)] == ["moved", "moved"]
    assert run("check").stdout


def test_the_list_keeps_what_is_promised_back(shop: Shop, codes: dict[str, list[str]], run: Any) -> None:
    """Ten of Oat sold in two days, best 8: 8 + 2 = 10 are proposed of 10 ready; three of them are promised, so 7."""
    oat = codes["Oat"][0]
    run("stall", "out", "saturday", f"{oat}=8")
    run("stall", "back", "saturday", f"{oat}=0")
    run("return", f"{oat}=8", "--stall", "saturday", "--reason", "put by")
    run("resell", f"{oat}=8", "--by", "Nuala", "--reason", "unopened")
    assert "take 10 bars" in run("stall", "pack", "saturday", "--on", "2026-06-06").stdout
    run("customer", "add", "Tern Hall", "--shop")
    with shop.book.write("order") as tx:
        recipe = tx.rows.execute("SELECT id FROM recipe WHERE code = 'oat'").fetchone()[0]
        on, due = date(2026, 5, 30), date(2026, 6, 9)
        (order,) = tx.add_rows("customer_order", [{"customer_id": 1, "on": on, "due_on": due}])
        tx.add_rows("order_line", [{"order_id": order, "recipe_id": recipe, "bars": 5}])
        tx.add_rows("order_line", [{"order_id": order, "recipe_id": recipe, "bars": -2}])
        tx.say("Promised.")
    assert "take 7 bars" in run("stall", "pack", "saturday", "--on", "2026-06-06").stdout
    with shop.book.write("order end") as tx:
        tx.add_rows("order_end", [{"order_id": order, "on": on, "by": "Nuala", "reason": "she changed her mind"}])
        tx.say("Ended.")
    assert "take 10 bars" in run("stall", "pack", "saturday", "--on", "2026-06-06").stdout


def test_without_prices_other_goods_are_no_takings_of_bars(shop: Shop, codes: dict[str, list[str]], run: Any) -> None:
    """15.00 less 3.00 for a soap dish are 12.00 for three bars."""
    run("price", "end", "all")
    one, oat = codes["Rosemary"][0], codes["Oat"][0]
    run("stall", "out", "saturday", f"{one}=1", f"{oat}=2")
    words = ("stall", "back", "saturday", f"{one}=0", f"{oat}=0", "--takings", "15", "--other-goods")
    assert "The other goods come to more than what was taken" in run(*words, "15.01", code=2).stderr
    run(*words, "3")
    assert asked(shop, LINES) == [("bars", 1, 400, 0), ("bars", 2, 800, 0), ("other", 0, 300, 0)]


@pytest.mark.usefixtures("home")
def test_a_bar_that_comes_back_of_a_batch_that_by_the_books_never_went_is_told_what_it_went_as(
    shop: Shop, codes: dict[str, list[str]], run: Any
) -> None:
    assert shop
    one, two, three = codes["Rosemary"]
    told = run("return", f"{three}=1", "--stall", "saturday", code=1).stderr
    assert f"by the books it went as {one} or {two}; book it as that." in told
    told = run("return", f"{codes['Oat'][0]}=1", "--stall", "saturday", code=1).stderr
    assert "by the books" not in told


@pytest.mark.usefixtures("home")
def test_more_bars_at_hand_than_by_the_books_may_be_booked_as_another_batch(
    shop: Shop, codes: dict[str, list[str]], run: Any
) -> None:
    """Ten of the first were booked out, three home by the books; she holds five of it in her hands."""
    assert shop
    one, two, three = codes["Rosemary"]
    told = run("gift", f"{one}=5", "--to", "the fair", code=1).stderr
    assert f"Batch {one} has 3 bars in the workshop; 5 cannot leave. Nothing was written." in told
    assert f"some may be booked as {two} or {three}: count them with soapledger lot count." in told


def test_a_card_total_far_off_is_asked_about(shop: Shop, codes: dict[str, list[str]], run: Any) -> None:
    """Two bars usually bring 13.00: 5.00 in cash and 60.00 by card make five times that, 59.99 do not."""
    oat = codes["Oat"][0]
    run("stall", "out", "saturday", f"{oat}=2")
    run("stall", "back", "saturday", f"{oat}=0", "--cash", "5")
    told = run("stall", "takings", "saturday", "--card", "60", input="n\n", code=1).stderr
    assert "they usually bring 6.50 EUR" in told
    run("stall", "takings", "saturday", "--card", "59.99")
    assert asked(shop, LINES)[1] == ("difference", 0, 6499 - 1300, 0)


def test_where_nothing_was_sold_there_is_a_fee_and_no_sale(shop: Shop, codes: dict[str, list[str]], run: Any) -> None:
    oat = codes["Oat"][0]
    run("stall", "out", "saturday", f"{oat}=2")
    run("stall", "back", "saturday", f"{oat}=2", "--cash", "50", "--float", "50", "--pitch", "25")
    assert asked(shop, "SELECT sale_id, kind, amount_minor FROM fee") == [(None, "pitch", 2500)]
    assert asked(shop, "SELECT count(*) FROM sale") == [(0,)]
    assert (
        "Nothing was sold at Saturday market yet" in run("stall", "takings", "saturday", "--card", "5", code=1).stderr
    )


def test_what_a_batch_was_named_for_is_not_taken_for_its_product_again(codes: dict[str, list[str]], run: Any) -> None:
    """Four of the first by its code, and twelve of the product: its other six, and six of the second."""
    one, two, _ = codes["Rosemary"]
    run("stall", "out", "saturday", f"{one}=4", "rosemary=12")
    standing = run("stall", "list", "--json").stdout
    assert {each["code"]: each["bars"] for each in json.loads(standing)[0]["bars"]} == {one: 10, two: 6}


def test_of_each_there_goes_what_there_is(codes: dict[str, list[str]], run: Any) -> None:
    said = run("stall", "out", "saturday", "--each", "12", "oat", "rosemary").stdout
    assert said.startswith("22 bars taken to Saturday market.\nAll there was of Oat (10).\n")
    assert codes["Oat"][0] not in said  # all of it went, so nothing is assumed


def test_no_difference_is_booked_before_all_is_told(shop: Shop, codes: dict[str, list[str]], run: Any) -> None:
    """Cash and then card, both after the evening: 26.00 for four bars, 20.00 and 7.00 taken."""
    oat = codes["Oat"][0]
    run("stall", "out", "saturday", f"{oat}=4")
    said = run("stall", "back", "saturday", f"{oat}=0").stdout
    assert "Next, what was taken:\n  soapledger stall takings saturday-market --cash AMOUNT --card AMOUNT\n" in said
    run("stall", "takings", "saturday", "--cash", "20")
    assert asked(shop, LINES) == [("bars", 4, 2600, 0)]
    run("stall", "takings", "saturday", "--card", "7")
    assert asked(shop, LINES) == [("bars", 4, 2600, 0), ("difference", 0, 100, 0)]
