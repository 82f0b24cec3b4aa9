"""Taxes are set by name, for a product and an outlet, and kept with the settings."""

import json
from datetime import date
from typing import Any

import pytest
from shop import Shop

from ledger.rows.sell.sale import lines_of
from ledger.storage.tables.sale import CustomerTerms

ONE = "26-001-4"


def booked(shop: Shop, sale: int) -> list[tuple[int | None, int | None]]:
    return [(one.tax_ppm, one.tax_minor) for one in lines_of(shop.rows(), [sale])[sale]]


def test_a_rate_holds_from_its_day_and_is_kept_with_each_line(selling: Shop, run: Any) -> None:
    said = run("tax", "set", "20%", "--name", "VAT", "--from", "2026-05-20").stdout
    assert said == "From 20 May 2026: VAT 20.0 %.\nSee: soapledger tax list\n"
    run("dispatch", "tern", f"{ONE}=1", "--price", "6", "--on", "2026-05-19")
    run("dispatch", "tern", f"{ONE}=1", "--price", "6", "--on", "2026-05-20")
    run("tax", "set", "5%", "--from", "2026-05-20", "--product", "plain", "--to", "ida")
    run("dispatch", "ida", f"{ONE}=1", "--price", "1.05", "--yes")
    run("tax", "set", "none", "--to", "ida", "--product", "plain")
    run("dispatch", "ida", f"{ONE}=2", "--price", "6", "--yes")
    assert [booked(selling, number)[0] for number in (1, 2, 3, 4)] == [
        (None, None),
        (200_000, 100),
        (50_000, 5),
        (None, None),
    ]


def test_the_country_of_a_customer_counts(selling: Shop, run: Any) -> None:
    run("tax", "set", "20%")
    run("tax", "set", "19%", "--country", "de", "--name", "USt")
    with selling.book.write("customer terms") as tx:
        tx.add(CustomerTerms(customer_id=1, on=date(2026, 5, 1), country="DE"))
        tx.say("Terms.")
    run("dispatch", "tern", f"{ONE}=1", "--price", "11.90")
    run("dispatch", "ida", f"{ONE}=1", "--price", "12")
    assert (booked(selling, 1), booked(selling, 2)) == ([(190_000, 190)], [(200_000, 200)])


def test_the_list_and_the_number(selling: Shop, run: Any) -> None:
    assert run("tax", "list").stdout.startswith("No tax is booked.")
    run("tax", "set", "23%", "--name", "VAT", "--stall", "quay", "--number", "IE 1234567T")
    said = run("history", "--last", "1").stdout
    assert (
        "Registered for a tax on sales under IE 1234567T. From 1 Jun 2026: VAT 23.0 %, at Quay market, as Nuala" in said
    )
    run("tax", "set", "none", "--product", "plain")
    found = json.loads(run("tax", "list", "--json").stdout)
    assert found["number"] == "IE 1234567T"
    assert [(one["rate_ppm"], one["product"], one["stall"], one["name"]) for one in found["rates"]] == [
        (230_000, None, "Quay market", "VAT"),
        (None, "Plain Bar", None, "VAT"),
    ]
    said = run("tax", "list").stdout
    assert "registered under IE 1234567T" in said
    assert max(map(len, said.splitlines())) <= 80 + 20
    run("init", "--phone", "020 910 0100")  # what is not asked about stays
    assert json.loads(run("tax", "list", "--json").stdout)["number"] == "IE 1234567T"
    assert selling.batch == ONE


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        ((), 2, "Give a rate, such as 20%, or the number you are registered under"),
        (("100%",), 2, "A rate of 100.0 % cannot be meant"),
        (("-5%",), 2, "No such option"),
        (("twenty",), 2, "rate"),
        (("20%", "--country", "France"), 2, "'France' is not a country's two letters"),
        (("20%", "--country", "FR", "--to", "ida"), 2, "not two of them"),
        (("20%", "--product", "plum"), 2, "No product is called 'plum'"),
        (("20%", "--stall", "quey"), 2, "Did you mean"),
        (("20%", "--number", "IE 1", "--stall", "quey"), 2, "Did you mean"),  # not the number alone either
        (("100%", "--number", "IE 1"), 2, "cannot be meant"),
    ],
)
def test_what_cannot_be_is_one_line_and_nothing_is_written(
    selling: Shop, run: Any, words: tuple[str, ...], code: int, said: str
) -> None:
    before = selling.rows().execute("SELECT count(*) FROM entry").fetchone()[0]
    assert said in " ".join(run("tax", "set", *words, code=code).stderr.split())
    assert selling.rows().execute("SELECT count(*) FROM entry").fetchone()[0] == before
