"""soapledger seal."""

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import out_json, say
from ledger.errors import Refused
from ledger.rows.history import history
from ledger.units.seals import seal_of


def command(ctx: typer.Context, json: Json = False) -> None:
    """Print a few signs that prove later what the ledger held, the seal of its last entry."""
    here = desk(ctx)
    last = next(iter(history(here.rows(), last=1)), None)
    if last is None:
        raise Refused("Nothing was written yet, so there is nothing to seal.")
    seal = seal_of(last.entry, last.digest)
    if json:
        out_json({"seal": seal.text, "entry": last.entry, "recorded_at": last.recorded_at})
        return
    say(seal.text)
    say(f"It stands for all up to entry {last.entry}, written {here.clock(last.recorded_at)}.")
    say("Keep it apart from the ledger, on paper or with someone. To prove later that")
    say("all this still stands:")
    say(f"  {here.typed(f'check --seal {seal.text}')}")
