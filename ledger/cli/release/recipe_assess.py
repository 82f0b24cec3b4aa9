"""soapledger recipe assess."""

from collections.abc import Sequence
from pathlib import Path
from typing import Annotated

import typer

from ledger.cli.kit.desk import Desk, desk
from ledger.cli.kit.heard import hear
from ledger.cli.kit.options import Recipe
from ledger.cli.kit.show import ask, can_answer, say, say_marked, warn
from ledger.domain.release.assessment import Assessment, inci_key
from ledger.errors import BadInput
from ledger.operations.release.assess import assess_recipe, named_there, read_report, recipes_covered
from ledger.units.dates import show_date
from ledger.units.toml_reader import toml_text
from ledger.views.release.assessment import not_named


def command(
    ctx: typer.Context,
    which: Recipe,
    file: Annotated[Path, typer.Argument(help="The assessment as a small file (TOML).")],
    same: Annotated[
        list[str] | None,
        typer.Option("--same", help="An ingredient and its name in the report: 'KAOLIN=WHITE CLAY' (repeat)."),
    ] = None,
) -> None:
    """Book the safety assessment of a product, e.g. soapledger recipe assess calendula assessment.toml."""
    here = desk(ctx)
    text = hear(toml_text(file))
    report = read_report(text, file=file.name)
    names = _same(same or (), report)
    _ask_for(here, which, report, names, asked=same is None)
    card, booked = assess_recipe(here.book(), which, text, file=file.name, same=names)
    say(f"Assessment {booked.reference} of {booked.assessor}, {show_date(booked.on)}, is booked for {card.name}.")
    for one in recipes_covered(here.rows(), which, report):
        if one != card:
            say(f"It covers {one.name} ({one.code}) too.")
        for inci in not_named(here.rows(), one, report._replace(also=tuple(names.items()))):
            say_marked(
                f"{inci} in {one.name} is not named in it, so bars with it lie outside. Where it stands there by "
                f"another name, book it again with --same '{inci}=NAME'; else only the assessor's word lifts that: "
                f"soapledger recipe word {one.code} '{inci}' --up-to PERCENT --by '{booked.assessor}' --on DAY "
                "--text WORDS"
            )
    say(f"Lay the recipe beside it: soapledger recipe assessment {card.code}")


def _same(texts: Sequence[str], report: Assessment) -> dict[str, str]:
    """The --same options. Raises BadInput for one that cannot be read, or names nothing in the report."""
    found = {}
    for text in texts:
        inci, separator, name = (part.strip() for part in text.partition("="))
        if not (inci and separator and name):
            raise BadInput(f"'{text}' is not an ingredient and its name; write --same 'KAOLIN=WHITE CLAY'.")
        found[inci_key(inci)] = named_there(report, name)
    return found


def _ask_for(here: Desk, which: str, report: Assessment, names: dict[str, str], *, asked: bool) -> None:
    """Ask of each ingredient that is not named whether it is, by another name; only where someone can answer."""
    if not (asked and can_answer()):
        return
    try:
        _ask_each(here, which, report, names)
    except typer.Abort as stopped:
        if not isinstance(stopped.__context__, EOFError):  # no more answers: the rest is said as not named
            raise


def _ask_each(here: Desk, which: str, report: Assessment, names: dict[str, str]) -> None:
    for one in recipes_covered(here.rows(), which, report):
        for inci in not_named(here.rows(), one, report._replace(also=tuple(names.items()))):
            while typed := ask(f"{inci} in {one.name}: its name in the report (Enter: it is not in it)", default=""):
                try:
                    names[inci] = named_there(report, typed)
                    break
                except BadInput as error:
                    warn(f"  {error}")
