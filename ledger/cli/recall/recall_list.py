"""soapledger recall list."""

import typer

from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count
from ledger.cli.kit.window import Every, Last, asked_for, latest
from ledger.domain.recall.question import question_from
from ledger.rows.decision import RecallCard, recalls
from ledger.units.dates import add_months, show_date
from ledger.views.recall import recall_life

_YEARLY = 12  # months between two exercises: common practice, no source


def command(ctx: typer.Context, last: Last = None, every: Every = False, json: Json = False) -> None:
    """List the recalls, open, closed and rehearsed: every open one, and the last fifty of the others."""
    number = asked_for(last, every)
    here = desk(ctx)
    found = recalls(here.rows())
    shown, more = latest(found, number, always=lambda one: one.closed is None)
    rehearsed = [one for one in found if one.exercise]
    if rehearsed:
        again = add_months(rehearsed[-1].on, _YEARLY)
        last_on = show_date(rehearsed[-1].on)
        then = f"Last rehearsed on {last_on} ({rehearsed[-1].name}); once a year would be by {show_date(again)}."
        then += f" That is {'over' if again < here.today else 'to come'}."
    else:
        then = "None was rehearsed yet: soapledger recall rehearse"
    words = Listed(
        f"{count(len(found), 'recall')}, {sum(not one.closed for one in found) or 'none'} open.",
        ("recall", "on", "state", "of", "why", "steps"),
        (
            (
                one.name,
                show_date(one.on),
                _state(one),
                recall_life.asked_for(question_from(one.question)),
                one.reason,
                str(len(one.steps)),
            )
            for one in shown
        ),
        right=(5,),
        none="No recall was opened, and none rehearsed yet: soapledger recall rehearse",
        then=then,
        earlier=here.typed("recall list --all") if more else "",
    )
    answer(shown, json, words)


def _state(one: RecallCard) -> str:
    if one.exercise:
        return "exercise"
    return f"closed {show_date(one.closed.on)}" if one.closed else "open"
