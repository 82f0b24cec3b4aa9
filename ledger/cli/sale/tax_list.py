"""soapledger tax list."""

import typer

from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count
from ledger.rows.lot import places
from ledger.rows.people import contacts
from ledger.rows.sell.product import products
from ledger.rows.sell.tax import tax_rates
from ledger.units.dates import show_date
from ledger.units.quantity import show_share


def command(ctx: typer.Context, json: Json = False) -> None:
    """List every rate that was set, by its day, and the number you are registered under."""
    here = desk(ctx)
    rows, number = here.rows(), here.settings.tax_number
    rates = sorted(tax_rates(rows), key=lambda one: (one.on, one.id))
    stalls = {one.id: one.name for one in places(rows)}
    known = contacts(rows, sorted({one.customer_id for one in rates if one.customer_id is not None}))
    names = {one.recipe_id: one.name for one in products(rows)}
    found = [
        {
            "from": one.on,
            "name": one.name,
            "rate_ppm": one.rate_ppm,
            "product": names.get(one.recipe_id or 0),
            "stall": stalls.get(one.place_id or 0),
            "customer": known[one.customer_id].name if one.customer_id in known else None,
            "country": one.country,
        }
        for one in rates
    ]
    words = Listed(
        f"{count(len(rates), 'rate')} of tax{f', registered under {number}' if number else ''}.",
        ("from", "tax", "rate", "product", "where"),
        (
            (
                show_date(rate.on),
                rate.name,
                "none" if rate.rate_ppm is None else show_share(rate.rate_ppm, 2),
                str(one["product"] or "every product"),
                str(one["stall"] or one["customer"] or one["country"] or "everywhere"),
            )
            for rate, one in zip(rates, found, strict=True)
        ),
        right=(2,),
        then="The latest of each kind holds; an outlet's goes before a country's, that before everywhere.",
        none=f"No tax is booked{f'; registered under {number}' if number else ''}. To set it: soapledger tax set RATE",
    )
    answer({"number": number, "rates": found} if json else found, json, words)
