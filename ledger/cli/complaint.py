"""soapledger complaint: what customers report."""

from typing import TYPE_CHECKING, Annotated

import typer

from ledger.cli.desk import Desk, desk
from ledger.cli.show import confirm, count, out_json, plain, say, say_wrapped, table
from ledger.errors import BadInput

if TYPE_CHECKING:
    from ledger.views.complaint import ComplaintCard
    from ledger.views.complaint_candidates import CandidateBatch

app = typer.Typer(help="What customers report: add, note, close, list, show, erase.")

Json = Annotated[bool, typer.Option("--json", help="Answer as JSON.")]

Number = Annotated[str, typer.Argument(help="Its number.")]
Batch = Annotated[str | None, typer.Option("--batch", help="The code on the bar, if known.")]
Serious = Annotated[str | None, typer.Option("--serious", help="yes or no, as a person decided.")]
DecidedBy = Annotated[str | None, typer.Option("--decided-by", help="Who decided that.")]
On = Annotated[str | None, typer.Option("--on", help="The day (today).")]
_WORDS = {None: "not decided", True: "serious", False: "not serious"}


@app.command("add")
def add(
    ctx: typer.Context,
    what: Annotated[str, typer.Argument(help="What happened, in quotes; no names.")],
    batch: Batch = None,
    bought: Annotated[str | None, typer.Option("--bought", help="Where and when it was bought, in words.")] = None,
    bought_on: Annotated[str | None, typer.Option("--bought-on", help="The day it was bought.")] = None,
    at: Annotated[str | None, typer.Option("--at", help="The stall or customer it was bought at.")] = None,
    serious: Serious = None,
    decided_by: DecidedBy = None,
    name: Annotated[str | None, typer.Option("--name", help="Who reported it (can be erased).")] = None,
    phone: Annotated[str | None, typer.Option("--phone")] = None,
    email: Annotated[str | None, typer.Option("--email")] = None,
    health: Annotated[str | None, typer.Option("--health", help="What it did to them (can be erased).")] = None,
    on: On = None,
) -> None:
    """Book a complaint, e.g. complaint add "rash on both hands" --batch 26-118-0 --bought "Saturday market"."""
    from ledger.operations.complaints import Report, book_complaint
    from ledger.storage.personal import PersonDetails
    from ledger.views.complaint import complaint
    from ledger.views.complaint_candidates import candidate_batches

    here = desk(ctx)
    grave = _grave(serious)
    number = book_complaint(
        here.book(),
        Report(
            on=here.day(on),
            what=what,
            person=PersonDetails(name=name, phone=phone, email=email, health=health),
            batch=batch,
            bought=bought,
            serious=grave,
            decided_by=decided_by,
            bought_on=here.day(bought_on, what="the day it was bought") if bought_on else None,
            at=at,
        ),
    )
    say(f"Complaint {number} is booked.")
    if grave:
        _say_duties(here)
    if batch:
        code = complaint(here.rows(), number).batch_code
        say(f"To stop these bars: soapledger lot hold {code} --reason 'complaint {number}'")
        say(f"Where all its bars are, and whom to call: soapledger recall bar {code}")
    else:
        say_wrapped("Its batch is not known, so a recall will name it among what cannot be excluded.")
        card = complaint(here.rows(), number)
        _say_candidates(candidate_batches(here.rows(), card), card)


@app.command("note")
def note(
    ctx: typer.Context,
    number: Number,
    action: Annotated[str, typer.Argument(help="What was done, in quotes; no names, no health.")],
    serious: Serious = None,
    decided_by: DecidedBy = None,
    batch: Batch = None,
    on: On = None,
) -> None:
    """Note what was done about a complaint, e.g. complaint note 3 "rang, asked for the bar"."""
    from ledger.operations.complaints import Step, note_complaint
    from ledger.views.complaint import complaint

    here = desk(ctx)
    which, grave = _number(number), _grave(serious)
    was_closed = complaint(here.rows(), which).closed_on
    note_complaint(here.book(), which, Step(here.day(on), here.who, action, grave, decided_by, batch))
    card = complaint(here.rows(), which)
    opened = " and is open again" if was_closed and not card.closed_on else ""
    say(f"Complaint {which} has the note{opened}.")
    say_wrapped("A note stays for good: names and health go to --name and --health of complaint add.")
    if grave:
        _say_duties(here)
    if batch:
        say(f"To stop these bars: soapledger lot hold {card.batch_code} --reason 'complaint {which}'")
        say(f"Where all its bars are, and whom to call: soapledger recall bar {card.batch_code}")


@app.command("close")
def close(
    ctx: typer.Context,
    number: Number,
    ending: Annotated[str, typer.Argument(help="How it ended, in quotes; no names, no health.")],
    on: On = None,
) -> None:
    """Close a complaint, e.g. complaint close 3 "bar replaced, formula kept"; a note opens it again."""
    from ledger.operations.complaints import Step, close_complaint
    from ledger.views.complaint import complaint

    here = desk(ctx)
    which = _number(number)
    close_complaint(here.book(), which, Step(here.day(on), here.who, ending))
    say(f"Complaint {which} is closed; a note would open it again.")
    if complaint(here.rows(), which).serious is None:
        say_wrapped(
            f"Nobody decided how serious it is: soapledger complaint note {which} WORDS --serious no --decided-by NAME"
        )


@app.command("list")
def list_(
    ctx: typer.Context,
    batch: Annotated[str | None, typer.Option("--batch", help="Of one batch.")] = None,
    json: Json = False,
) -> None:
    """List the complaints, open and closed."""
    from ledger.domain.dates import show_date
    from ledger.views.complaint import complaints
    from ledger.views.lots import find_lot

    here = desk(ctx)
    code = find_lot(here.rows(), batch).code if batch else None
    found = complaints(here.rows(), batch_code=code)
    if json:
        out_json(found)
        return
    if not found:
        say("No complaint was booked.")
        return
    say(f"{count(len(found), 'complaint')}, {sum(not c.closed_on for c in found) or 'none'} open.")
    table(
        ("number", "on", "state", "batch", "seriousness", "what"),
        [
            (
                str(c.number),
                show_date(c.on),
                f"closed {show_date(c.closed_on)}" if c.closed_on else "open",
                c.batch_code or "unknown",
                _WORDS[c.serious],
                c.what,
            )
            for c in found
        ],
        right=(0,),
    )


@app.command("show")
def show(ctx: typer.Context, number: Number, json: Json = False) -> None:
    """Show one complaint with who reported it, what was done, and the batches it may be about."""
    from ledger.domain.dates import show_date
    from ledger.views.complaint import complaint
    from ledger.views.complaint_candidates import candidate_batches

    here = desk(ctx)
    card = complaint(here.rows(), _number(number))
    candidates = candidate_batches(here.rows(), card) if json or not card.batch_code else ()
    if json:
        out_json({**plain(card), "candidates": candidates})
        return
    state = f"closed on {show_date(card.closed_on)}" if card.closed_on else "open"
    say(f"Complaint {card.number} of {show_date(card.on)}, {state}: {card.what}")
    for label, value in (
        ("batch", f"{card.batch_code}, {card.product}" if card.batch_code else "not known"),
        ("bought", card.where),
        ("seriousness", _WORDS[card.serious] + (f", decided by {card.decided_by}" if card.decided_by else "")),
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
                    f"{_WORDS[one.serious]}, {one.decided_by}" if one.serious is not None else "",
                    one.batch_code or "",
                )
                for one in card.steps
            ],
        )
    if not card.batch_code:
        _say_candidates(candidates, card)


@app.command("erase")
def erase(
    ctx: typer.Context,
    number: Number,
    reason: Annotated[str, typer.Option("--reason", help="Why, e.g. asked to be forgotten.")],
    yes: Annotated[bool, typer.Option("--yes", help="Do not ask again.")] = False,
) -> None:
    """Erase who reported it and what it did to them, e.g. complaint erase 3 --reason "asked by letter"."""
    from ledger.operations.complaints import erase_complaint

    which = _number(number)
    confirm(f"Erase the personal details of complaint {which} for good?", yes)
    erase_complaint(desk(ctx).book(), which, reason=reason)
    say(f"The personal details of complaint {which} are erased; what happened stays.")


def _number(text: str) -> int:
    from ledger.domain.quantity import parse_pieces

    return parse_pieces(text, what="the number of the complaint")


def _grave(serious: str | None) -> bool | None:
    if serious is not None and serious.casefold() not in ("yes", "no"):
        raise BadInput("Is it serious? Write --serious yes or --serious no.")
    return None if serious is None else serious.casefold() == "yes"


def _say_duties(here: Desk) -> None:
    """The duty to report in each market she names a responsible person for; in all, where she names none."""
    from ledger.markets import laws, laws_at

    say("A reminder, not legal advice:")
    for one in laws_at(here.settings.addresses) or laws():
        duty = one.serious_effect
        say_wrapped(f"{one.name}: {duty.says}, to {duty.to} ({duty.source}; {duty.status}).", first="  ", indent="    ")


def _say_candidates(found: "tuple[CandidateBatch, ...]", card: "ComplaintCard") -> None:
    from ledger.domain.dates import show_date

    where = f"at {card.bought_at}" if card.bought_at else "anywhere"
    until = show_date(card.bought_on or card.on)
    if not found:
        say_wrapped(f"No bars could have been bought {where} up to {until}; look at where and when.")
        return
    say_wrapped(f"{count(len(found), 'batch', 'batches')} could have been bought {where} up to {until}:")
    table(
        ("batch", "product", "bars left", "from", "to", "standing there"),
        [
            (
                one.code,
                one.product,
                str(one.bars),
                show_date(one.first_on) if one.first_on else "",
                show_date(one.last_on) if one.last_on else "",
                str(one.standing) if one.standing else "",
            )
            for one in found
        ],
        right=(2, 5),
    )
    say(f"When the code is known: soapledger complaint note {card.number} WORDS --batch CODE")
