"""soapledger worth."""

from collections.abc import Iterable, Sequence
from typing import Annotated

import typer

from ledger.cli.kit.amounts import amount
from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import Desk, desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count, say, say_wrapped, table
from ledger.domain.cost.worth import Account
from ledger.units.dates import show_date
from ledger.units.money import show_money
from ledger.views.cost.worth import Worth, worth

SAID: dict[Account, str] = {
    "materials": "oils, lye, wrappers on hand",
    "made ahead": "infused, combined and blended, on hand",
    "offcuts": "offcuts, on hand",
    "in work": "in work: weighed, not yet cut or filled",
    "bars here": "bars in the workshop",
    "bars rejected": "bars rejected, still here",
    "retained samples": "retained samples",
    "returns shelf": "bars on the returns shelf",
    "bars at stalls": "bars at stalls",
    "bars at shops": "bars at shops, still yours",
    "sold": "sold, less what came back",
    "own use": "your own use",
    "given away": "given away",
    "thrown away": "thrown away",
    "sent back": "sent back to suppliers",
    "counted off": "missing at counts, less what was found",
    "given up": "in batches given up",
    "outside": "in what holds something of unknown cost",
}
NAMED = 4  # batches by their codes; JSON has them all
STILL: tuple[Account, ...] = (
    "materials", "made ahead", "offcuts", "in work", "bars here", "bars rejected", "retained samples", "returns shelf",
    "bars at stalls", "bars at shops",
)  # fmt: skip


def command(
    ctx: typer.Context,
    on: Annotated[str | None, typer.Option("--on", help="At the end of that day (today).")] = None,
    json: Json = False,
) -> None:
    """Show what all of it cost and where that is: on hand, in work, in bars, sold, given, thrown away."""
    here = desk(ctx)
    found = worth(here.rows(), here.day(on))
    answer(found, json, lambda: _said(here, found))


def _said(here: Desk, found: Worth) -> None:
    money, paid = found.currency, found.goods_minor + found.carriage_minor
    kept = sum(found.goods.get(one, 0) for one in STILL)
    work = found.work_minor + found.house_minor
    say_wrapped(
        f"By {show_date(found.on)} you had paid {show_money(paid, money)} for goods; {show_money(kept, money)} of it "
        "is still with you."
    )
    heads = ("where it is", "goods", "work and house") if work else ("where it is", "goods")
    lines = [
        (SAID[one], _shown(found.goods.get(one), money), _shown(found.work.get(one), money))[: len(heads)]
        for one in SAID
        if one in found.goods or one in found.work
    ]
    lines.append(("together", show_money(paid, money), show_money(work, money))[: len(heads)])
    table(heads, lines, right=(1, 2))
    for words in _notes(found):
        say_wrapped(words)
    if found.unknown:
        say("Of unknown cost, and in none of these figures:")
        units = here.settings.units
        table(
            ("lot", "material", "came", "on hand"),
            [
                (one.code, one.material, amount(one.came, one.counted, units), amount(one.on_hand, one.counted, units))
                for one in found.unknown
            ],
            right=(2, 3),
        )


def _shown(minor: int | None, money: str) -> str:
    return "" if minor is None else show_money(minor, money)


def _notes(found: Worth) -> Iterable[str]:
    money = found.currency
    if found.differs_minor:
        yield f"{show_money(found.differs_minor, money)} of it is nowhere, which cannot be: soapledger check"
    if found.carriage_minor:
        yield f"Of the goods {show_money(found.carriage_minor, money)} is carriage."
    if found.house_minor:
        yield (
            f"Work is {show_money(found.work_minor, money)}, and what each batch bears of the house "
            f"{show_money(found.house_minor, money)}."
        )
    yield (
        "Bars thrown away or rejected load the good ones."
        if found.load_the_good
        else "Bars thrown away or rejected are written off, and load no others."
    )
    if found.carriage_outside_minor:
        yield (
            f"Carriage of {show_money(found.carriage_outside_minor, money)}, of deliveries of which no cost is known, "
            "is in none of this."
        )
    if found.without_work:
        yield (
            f"Of {_batches(found.without_work)} no work was told, by the recipe or the batch: "
            "soapledger batch work CODE MINUTES --stage making"
        )
    if found.without_rate:
        yield f"The work on {_batches(found.without_rate)} has no rate: soapledger rates set hour AMOUNT --from DAY"
    if found.unknown_in:
        yield f"Something of unknown cost went into {_batches(found.unknown_in)}."


def _batches(codes: Sequence[str]) -> str:
    """So many batches, the last of them by their codes."""
    others = "…, " if len(codes) > NAMED else ""
    return f"{count(len(codes), 'batch', 'batches')} ({others}{', '.join(codes[-NAMED:])})"
