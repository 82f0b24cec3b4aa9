"""soapledger lot show."""

import typer

from ledger.cli.kit.amounts import amount
from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import say, table
from ledger.cli.stock.options import Code
from ledger.units.dates import show_best_before, show_date
from ledger.units.money import show_money
from ledger.views.stock.lot_card import LotCard, lot_card


def command(
    ctx: typer.Context,
    code: Code,
    json: Json = False,
) -> None:
    """Show one lot: where it came from, what was decided, where it went."""
    here = desk(ctx)
    card = lot_card(here.rows(), code)
    if answer(card, json):
        return
    lot, units = card.lot, here.settings.units
    say(f"{lot.material}, lot {lot.code}: {amount(lot.on_hand, lot.counted, units)} on hand, {lot.status}.")
    number = lot.supplier_number or ("own growing" if lot.supplier_own else "unknown")
    figures = card.figures
    certificate = []
    if lot.sap_low_mg_per_kg is not None:
        certificate.append(f"saponification value {figures.sap_words()}")
    if lot.purity_ppm:
        certificate.append(f"purity {figures.purity_words()}")
    if lot.certificate:
        certificate.append(lot.certificate)
    for label, value in (
        ("from", f"{lot.supplier}, their number {number}" if lot.supplier else f"batch {lot.batch_code}"),
        ("delivery note", card.note_number or ""),
        ("came" if lot.supplier else "made", show_date(lot.on)),
        ("best before", show_best_before(lot.best_before) if lot.best_before else ""),
        ("cost", _cost(card, here.settings.currency)),
        ("certificate", "; ".join(certificate)),
        ("no certificate", "" if certificate else figures.stated() or ""),
        ("where", ", ".join(f"{place} {amount(held, lot.counted, units)}" for place, held in card.here)),
        ("set aside for", ", ".join(f"batch {b} {amount(held, lot.counted, units)}" for b, held in card.planned)),
        ("papers", ", ".join(f"{paper.name} ({paper.kind})" for paper in card.papers)),
    ):
        if value:
            say(f"  {label:14} {value}")
    if card.decisions:
        say()
        table(
            ("decided", "", "by", "why"),
            [(show_date(d.on), d.verdict, d.by, d.reason or "") for d in card.decisions],
        )
    say()
    table(
        ("on", "what", "quantity", "place", "batch", "customer", "note"),
        [
            (
                show_date(m.on),
                m.what,
                amount(m.quantity, lot.counted, units),
                m.place,
                m.batch or "",
                m.customer or "",
                m.note or "",
            )
            for m in card.movements
        ],
        right=(2,),
    )


def _cost(card: LotCard, currency: str) -> str:
    """What the whole lot cost, and by what its carriage was shared; one that a batch gave says so in `cost`."""
    if card.lot.cost_minor is None:
        return "not known" if card.lot.supplier else ""
    cost = show_money(card.lot.cost_minor, currency)
    if card.carriage is None:
        return cost
    return (
        f"{cost}, with its share by {card.carriage.by} of {show_money(card.carriage.carriage_minor, currency)} carriage"
    )
