"""soapledger cost."""

from collections.abc import Iterable
from typing import Annotated

import typer

from ledger.cli.kit.amounts import amount
from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import Desk, desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count, say_wrapped, table
from ledger.cli.kit.window import Every, Last, asked_for, latest, one_more, the_last
from ledger.rows.batch import batches_by_id
from ledger.rows.sell.cost import with_bars
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
        numbers, more = latest(with_bars(here.rows(), last=one_more(number)), number)
        made = batches_by_id(here.rows(), numbers)
        costs = batch_costs(here.rows(), [made[one] for one in numbers])
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
    answer(cost, json, lambda: _said(here, cost))


def _said(here: Desk, cost: BatchCost) -> None:
    money = cost.currency
    each = " or ".join(show_money(one, money) for one in sorted(set(cost.per_bar_minor)))
    head = f"Batch {cost.batch_code}, {cost.product}: {show_money(cost.total_minor, money)}"
    say_wrapped(f"{head}, {each} for {each_of(cost)}." if each else f"{head}.")
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
    told = cost.work.source not in ("none", "whole")
    body.append(("your work", "", f"{cost.labour_minutes} min" if told else "none told", labour if told else ""))
    if cost.overhead_minor is not None:
        body.append(("the house", "", "1 batch", show_money(cost.overhead_minor, money)))
    table(("what", "lot", "used", "cost"), body, right=(2, 3))
    for words in (_work(cost), *_notes(cost)):
        say_wrapped(words)
    if cost.by_outlet:
        table(
            ("taken at", "bars", "taken", "given back", "tax", "fees"),
            [
                (
                    one.outlet,
                    str(one.bars),
                    *(
                        show_money(minor, money) if minor else ""
                        for minor in (one.taken_minor, one.returned_minor, one.tax_minor, one.fees_minor)
                    ),
                )
                for one in cost.by_outlet
            ],
            right=(1, 2, 3, 4, 5),
        )
    for words in _gain(cost):
        say_wrapped(words)


def _work(cost: BatchCost) -> str:
    """Where the minutes come from; those by stage and those read at the bench are never both counted."""
    work = cost.work
    if work.source == "stages":
        stages = ", ".join(f"{stage} {minutes} min" for stage, minutes in work.stages if minutes)
        others = ((work.read_too, "read at the bench"), (work.recipe_too, "of the recipe"))
        too = " and ".join(f"the {minutes} min {whose}" for minutes, whose in others if minutes)
        return f"Your work as booked by stage: {stages}{f'; {too} do not count beside it' if too else ''}."
    return {
        "readings": "Your work as read at the bench.",
        "recipe": "Your work as the recipe says; none was booked for the batch.",
        "whole": "Your work is in the batch it was divided from.",
        "none": "Neither the recipe ([work]) nor the batch says how long you worked: "
        f"soapledger batch work {cost.batch_code} MINUTES --stage making",
    }[work.source]


def _notes(cost: BatchCost) -> Iterable[str]:
    money = cost.currency
    for by in ("value", "mass"):
        if codes := [code for code, shared in cost.carriage if shared == by]:
            yield f"Carriage is within, shared by {by}: {', '.join(codes)}."
    if cost.to_offcuts_minor:
        yield f"The offcuts carry {show_money(cost.to_offcuts_minor, money)} of it, by weight."
    bars = [(cost.wasted_bars, "thrown away"), (cost.rejected_bars, "rejected and still here")]
    if lost := ", ".join(f"{count(many, 'bar')} {how}" for many, how in bars if many):
        bear = "the others bear their cost"
        if cost.written_off_minor:
            bear = f"they bear {show_money(cost.written_off_minor, money)} of it"
        yield f"{lost}; {bear}.{'' if cost.good_bars or cost.reworked_bars else ' None is good.'}"
    if cost.unknown:
        yield f"What {', '.join(cost.unknown)} cost is not known, so the true figure is higher."


def _gain(cost: BatchCost) -> Iterable[str]:
    if cost.unpriced_bars:
        yield f"What {count(cost.unpriced_bars, 'sold bar')} brought was never told."
    if cost.gain_per_bar_minor is not None:
        work = cost.work.source != "none" and (cost.labour_minor is not None or not cost.labour_minutes)
        before = "" if work else ", before your work"
        gain = cost.gain_per_bar_minor
        word = "gained" if gain >= 0 else "lost"
        yield (
            f"{show_money(abs(gain), cost.currency)} is {word} on each of {count(cost.sold_bars, 'bar')} sold{before}."
        )


def each_of(cost: BatchCost) -> str:
    """The bars over which the cost is shared out: the good ones, and those reworked."""
    if not cost.good_bars:
        return f"each of {count(cost.reworked_bars, 'reworked bar')}"
    also = f" and {cost.reworked_bars} reworked" if cost.reworked_bars else ""
    return f"each of {count(cost.good_bars, 'good bar')}{also}"
