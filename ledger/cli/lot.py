"""soapledger lot: one lot, what is decided of it, and pouring lots together."""

from typing import Annotated

import typer

from ledger.cli.desk import Desk, desk
from ledger.cli.show import amount, confirm, count, out_json, say, table, warn
from ledger.domain.words import Verdict

app = typer.Typer(help="One lot: show, accept, reject, hold, count, waste, combine.")

Codes = Annotated[list[str], typer.Argument(help="Lot codes, e.g. L41-5; for bars the batch code.")]
Code = Annotated[str, typer.Argument(help="The lot code, e.g. L41-5; for bars the batch code.")]
On = Annotated[str | None, typer.Option("--on", help="The day (today).")]
Reason = Annotated[str | None, typer.Option("--reason", help="Why.")]
At = Annotated[str | None, typer.Option("--at", help="The place (the workshop).")]


@app.command("show")
def show(
    ctx: typer.Context,
    code: Code,
    json: Annotated[bool, typer.Option("--json", help="Answer as JSON.")] = False,
) -> None:
    """Show one lot: where it came from, what was decided, where it went."""
    from ledger.domain.dates import show_date
    from ledger.domain.money import show_money
    from ledger.views.lot_card import lot_card

    here = desk(ctx)
    card = lot_card(here.rows(), code)
    if json:
        out_json(card)
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
        ("best before", show_date(lot.best_before) if lot.best_before else ""),
        ("cost", show_money(lot.cost_minor, here.settings.currency) if lot.cost_minor is not None else ""),
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


def _decide(here: Desk, codes: list[str], verdict: Verdict, on: str | None, reason: str | None) -> None:
    from ledger.operations.lots import decide_lots

    day = here.day(on)
    lots = decide_lots(here.book(), codes, verdict=verdict, on=day, by=here.who, reason=reason)
    if not lots:
        say(f"{'That lot is' if len(codes) == 1 else 'Those lots are'} accepted already; nothing to do.")
    for lot in lots:
        held = amount(lot.on_hand, lot.counted, here.settings.units)
        say(f"Lot {lot.code} ({lot.material}, {held} on hand) is {verdict}.")


@app.command("accept")
def accept(ctx: typer.Context, codes: Codes, on: On = None, reason: Reason = None) -> None:
    """Accept lots that were looked at, so that they may go into a batch, e.g. soapledger lot accept L41-5."""
    _decide(desk(ctx), codes, "accepted", on, reason)


@app.command("reject")
def reject(ctx: typer.Context, codes: Codes, on: On = None, reason: Reason = None) -> None:
    """Reject lots: they are kept apart and go nowhere but back or away."""
    _decide(desk(ctx), codes, "rejected", on, reason)


@app.command("hold")
def hold(ctx: typer.Context, codes: Codes, on: On = None, reason: Reason = None) -> None:
    """Put lots, or the bars of a batch, on hold: nothing more is used or leaves until decided."""
    _decide(desk(ctx), codes, "on hold", on, reason)


def _quantity(here: Desk, code: str, text: str) -> int:
    from ledger.domain.quantity import parse_amount, parse_pieces
    from ledger.views.lots import find_lot
    from ledger.views.material import material_by_code

    lot = find_lot(here.rows(), code)
    if lot.counted:
        return parse_pieces(text)
    density = material_by_code(here.rows(), lot.material_code).density_mg_per_ml
    return parse_amount(text, density_mg_per_ml=density)


@app.command("count")
def count_(
    ctx: typer.Context,
    code: Code,
    found: Annotated[str, typer.Argument(help="What is there, e.g. 182 g or 12.")],
    at: At = None,
    on: On = None,
    note: Annotated[str | None, typer.Option("--note")] = None,
) -> None:
    """Book what a count or a weighing of the container found, e.g. soapledger lot count L41-5 "182 g"."""
    from ledger.operations.lots import count_lot
    from ledger.views.lots import find_lot

    here = desk(ctx)
    lot = find_lot(here.rows(), code)
    counted = _quantity(here, code, found)
    off = count_lot(here.book(), lot.code, counted, place=at, on=here.day(on), note=note)
    if off == 0:
        say(f"Lot {lot.code} is as the ledger says: {amount(counted, lot.counted, here.settings.units)}.")
        return
    size = amount(abs(off), lot.counted, here.settings.units)
    say(f"Lot {lot.code}: {size} {'missing' if off < 0 else 'more than expected'}, now booked as counted.")


@app.command("waste")
def waste(
    ctx: typer.Context,
    code: Code,
    quantity: Annotated[str, typer.Argument(help="How much was thrown away.")],
    reason: Annotated[str, typer.Option("--reason", help="Why.")],
    at: At = None,
    on: On = None,
) -> None:
    """Book what was spilt, spoilt or thrown away."""
    from ledger.operations.lots import waste_lot

    here = desk(ctx)
    gone = _quantity(here, code, quantity)
    lot = waste_lot(here.book(), code, gone, place=at, on=here.day(on), reason=reason)
    left = amount(lot.on_hand, lot.counted, here.settings.units)
    say(
        f"{amount(gone, lot.counted, here.settings.units)} of lot {lot.code} is booked as waste: {reason}. "
        f"{left} is left in all."
    )


@app.command("combine")
def combine_(
    ctx: typer.Context,
    codes: Codes,
    into: Annotated[str | None, typer.Option("--into", help="What you call the drum.")] = None,
    on: On = None,
    yes: Annotated[bool, typer.Option("--yes", help="Do not ask again.")] = False,
) -> None:
    """Pour lots of one material together, as when a drum is topped up; a recall follows both."""
    from ledger.operations.combine import combine
    from ledger.views.lot_card import lot_card

    here = desk(ctx)
    for card in [lot_card(here.rows(), code) for code in codes]:
        if card.planned:
            batches = ", ".join(batch for batch, _ in card.planned)
            warn(f"Lot {card.lot.code} is set aside for batch {batches}, which will have to take the new one.")
    confirm(f"Pour {', '.join(codes)} together into one new lot?", yes)
    lot = combine(here.book(), codes, on=here.day(on), by=here.who, into=into)
    say(
        f"{count(len(codes), 'lot')} poured together: lot {lot.code}, {lot.material}, "
        f"{amount(lot.on_hand, lot.counted, here.settings.units)}. Write the new code on the drum."
    )
