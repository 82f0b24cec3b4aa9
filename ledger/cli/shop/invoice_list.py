"""soapledger invoice list."""

from collections.abc import Sequence

import typer

from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.window import Every, Last, asked_for, latest
from ledger.units.dates import show_date
from ledger.units.money import figure, show_money
from ledger.units.wording import count
from ledger.views.shop.owed import InvoiceListed, invoices_listed


def command(ctx: typer.Context, last: Last = None, every: Every = False, json: Json = False) -> None:
    """List the invoices and credit notes, and what is still owed of each."""
    here = desk(ctx)
    known = invoices_listed(here.rows(), here.today)
    found, more = latest(known, asked_for(last, every), always=lambda one: one.late)
    currency = here.settings.currency
    words = Listed(
        f"{_counted(known)}, {_owed(known, currency)}.",
        ("number", "customer", "on", currency, "owed", "pay by", ""),
        (
            (
                str(one.number),
                one.customer,
                show_date(one.on),
                figure(one.total_minor, currency),
                figure(one.owed_minor, currency) if one.owed_minor else "",
                show_date(one.pay_by) if one.pay_by else "",
                f"credits {one.of_number}" if one.of_number else "late" if one.late else "",
            )
            for one in found
        ),
        right=(0, 3, 4),
        wraps=(1,),
        none="No invoice yet. Make one: soapledger invoice make CUSTOMER",
        earlier="soapledger invoice list --all" if more else "",
    )
    answer(found, json, words)


def _counted(found: Sequence[InvoiceListed]) -> str:
    """How many invoices, and how many credit notes where there are any."""
    notes = sum(one.kind == "credit note" for one in found)
    invoices = count(len(found) - notes, "invoice")
    if not notes:
        return invoices
    return f"{invoices} and {count(notes, 'credit note')}" if notes < len(found) else count(notes, "credit note")


def _owed(known: Sequence[InvoiceListed], currency: str) -> str:
    """What is owed of all of them, and apart from it what is to be paid back: not to those who owe."""
    owed = sum(one.owed_minor for one in known if one.owed_minor > 0)
    back = -sum(one.owed_minor for one in known if one.owed_minor < 0)
    paid_back = f", {show_money(back, currency)} to be paid back" if back else ""
    return f"{show_money(owed, currency)} still owed{paid_back}"
