"""soapledger cost."""

from typing import Annotated

import typer

from ledger.cli.kit.amounts import amount
from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count, say, table
from ledger.cli.kit.window import Every, Last, asked_for, latest, the_last
from ledger.rows.batch import batches
from ledger.units.money import show_money
from ledger.views.cost.cost import BatchCost, batch_cost, batch_costs


def command(
    ctx: typer.Context,
    code: Annotated[str | None, typer.Argument(help="The batch code; every batch when left out.")] = None,
    last: Last = None,
    every: Every = False,
    json: Json = False,
) -> None:
    """Show what a batch cost, lot by lot, and what each good bar cost."""
    number = asked_for(last, every)
    here = desk(ctx)
    if code is None:
        made, more = latest([one for one in batches(here.rows()) if one.made and one.soap], number)
        costs = batch_costs(here.rows(), made)
        words = Listed(
            f"{the_last(count(len(costs), 'batch', 'batches'), bool(more))} with bars.",
            ("batch", "product", "good bars", "cost", "per bar", "taken so far"),
            (
                (
                    one.batch_code,
                    one.product,
                    str(one.good_bars),
                    show_money(one.to_bars_minor, one.currency) + (" and more" if one.unknown else ""),
                    show_money(one.per_bar_minor[0], one.currency) if one.per_bar_minor else "",
                    show_money(one.taken_minor, one.currency) if one.taken_minor else "",
                )
                for one in costs
            ),
            right=(2, 3, 4, 5),
            earlier=here.typed("cost --all") if more else "",
        )
        answer(costs, json, words)
        return
    cost = batch_cost(here.rows(), code)
    if answer(cost, json):
        return
    money = cost.currency
    per_bar = sorted(set(cost.per_bar_minor))
    each = " or ".join(show_money(one, money) for one in per_bar)
    head = f"Batch {cost.batch_code}, {cost.product}: {show_money(cost.total_minor, money)}"
    say(f"{head}, {each} for {each_of(cost)}." if each else f"{head}.")
    body = [
        (
            line.material,
            line.lot_code,
            amount(line.quantity, line.counted, here.settings.units),
            "not known" if line.cost_minor is None else show_money(line.cost_minor, money),
        )
        for line in cost.lines
    ]
    labour = "no rate set" if cost.labour_minor is None else show_money(cost.labour_minor, money)
    body.append(("your work", "", f"{cost.labour_minutes} min", labour))
    table(("what", "lot", "used", "cost"), body, right=(2, 3))
    if cost.to_offcuts_minor:
        say(f"The offcuts carry {show_money(cost.to_offcuts_minor, money)} of it, by weight.")
    if cost.unknown:
        say(f"What {', '.join(cost.unknown)} cost is not known, so the true figure is higher.")


def each_of(cost: BatchCost) -> str:
    """The bars over which the cost is shared out: the good ones, and those reworked."""
    if not cost.good_bars:
        return f"each of {count(cost.reworked_bars, 'reworked bar')}"
    also = f" and {cost.reworked_bars} reworked" if cost.reworked_bars else ""
    return f"each of {count(cost.good_bars, 'good bar')}{also}"
