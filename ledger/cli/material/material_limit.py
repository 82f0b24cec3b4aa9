"""soapledger material limit."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.show import confirm, say
from ledger.domain.material.skin_limits import SOAP_CATEGORY, Limit, is_for_soap
from ledger.operations.material.skin import state_limit
from ledger.units.quantity import parse_share
from ledger.views.recipe.skin import constituent_doubt


def command(
    ctx: typer.Context,
    which: Annotated[str, typer.Argument(help="The fragrance; or a constituent, with --constituent.", metavar="NAME")],
    percent: Annotated[str, typer.Argument(help="The highest share in the finished bar, percent.")],
    certificate: Annotated[str, typer.Option("--certificate", help="The certificate's number.")],
    category: Annotated[str, typer.Option("--category", help="The kind of product it is for; soap is 9.")] = "",
    amendment: Annotated[str | None, typer.Option("--amendment", help="The amendment it goes by.")] = None,
    dated: Annotated[str | None, typer.Option("--dated", help="Its date (today).")] = None,
    constituent: Annotated[
        bool, typer.Option("--constituent", help="It is a constituent, summed over all oils.")
    ] = False,
    yes: Annotated[bool, typer.Option("--yes", help="Do not ask again about a name not known here.")] = False,
) -> None:
    """State how much a certificate allows on the skin, of a fragrance or of a constituent."""
    here = desk(ctx)
    if constituent and (words := constituent_doubt(here.rows(), which)):
        confirm(f"{words} Is it right?", yes)
    facts = Limit(
        parse_share(percent, what="the limit"),
        certificate,
        amendment,
        category,
        here.day(dated, what="the date of the certificate"),
    )
    name = state_limit(
        here.book(), facts, material=None if constituent else which, constituent=which if constituent else None
    )
    say(f"{name}: at most {facts.most} of the bar, by certificate {certificate}, category {category}.")
    if not is_for_soap(category):
        say(f"It is kept and not counted: soap is category {SOAP_CATEGORY}. Ask for that line of the certificate.")
