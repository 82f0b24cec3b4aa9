"""soapledger complaint show."""

import typer

from ledger.cli.complaint.words import WORDS, Number, read_number, say_candidates
from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import plain, say, table
from ledger.rows.complaint import complaint
from ledger.units.dates import show_date
from ledger.views.complaint.complaint_candidates import candidate_batches


def command(ctx: typer.Context, number: Number, json: Json = False) -> None:
    """Show one complaint with who reported it, what was done, and the batches it may be about."""
    here = desk(ctx)
    card = complaint(here.rows(), read_number(number))
    candidates = candidate_batches(here.rows(), card) if json or not card.batch_code else ()
    if answer({**plain(card), "candidates": candidates}, json):
        return
    state = f"closed on {show_date(card.closed_on)}" if card.closed_on else "open"
    say(f"Complaint {card.number} of {show_date(card.on)}, {state}: {card.what}")
    for label, value in (
        ("batch", f"{card.batch_code}, {card.product}" if card.batch_code else "not known"),
        ("bought", card.where),
        ("seriousness", WORDS[card.serious] + (f", decided by {card.decided_by}" if card.decided_by else "")),
        ("reported by", ", ".join(word for word in (card.person, card.phone, card.email) if word)),
        ("health", card.health),
    ):
        if value:
            say(f"  {label:12} {value}")
    if card.steps:
        table(
            ("on", "by", "done", "decided", "batch"),
            [
                (
                    show_date(one.on),
                    one.by,
                    f"closed: {one.action}" if one.closes else one.action,
                    f"{WORDS[one.serious]}, {one.decided_by}" if one.serious is not None else "",
                    one.batch_code or "",
                )
                for one in card.steps
            ],
        )
    if not card.batch_code:
        say_candidates(candidates, card)
