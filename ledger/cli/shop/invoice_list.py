"""soapledger invoice list."""

import typer

from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.window import Every, Last, asked_for, latest, the_last
from ledger.units.dates import show_date
from ledger.units.money import show_money
from ledger.units.wording import count
from ledger.views.shop.owed import invoices_listed


def command(ctx: typer.Context, last: Last = None, every: Every = False, json: Json = False) -> None:
    """List the invoices and credit notes, and what is still owed of each."""
    here = desk(ctx)
    found, more = latest(invoices_listed(here.rows(), here.today), asked_for(last, every), always=lambda one: one.late)
    currency = here.settings.currency
    words = Listed(
        f"{the_last(count(len(found), 'invoice'), more)}, "
        f"{show_money(sum(one.owed_minor for one in found if one.kind == 'invoice'), currency)} still owed.",
        ("number", "", "customer", "on", "total", "owed", "pay by", ""),
        (
            (
                str(one.number),
                f"credits {one.of_number}" if one.of_number else "",
                one.customer,
                show_date(one.on),
                show_money(one.total_minor, currency),
                show_money(one.owed_minor, currency) if one.owed_minor else "",
                show_date(one.pay_by) if one.pay_by else "",
                "late" if one.late else "",
            )
            for one in found
        ),
        right=(0, 4, 5),
        none="No invoice yet. Make one: soapledger invoice make CUSTOMER",
        earlier="soapledger invoice list --all" if more else "",
    )
    answer(found, json, words)
