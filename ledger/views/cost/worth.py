"""What all of it is worth on a day: what was paid, and where that is."""

from dataclasses import dataclass
from datetime import date
from typing import get_args

from ledger.domain.cost.working import AT_THE_BENCH
from ledger.domain.cost.worth import Account, CostFacts, Costs, Statement, costs, statement
from ledger.rows.opened import Rows
from ledger.rows.sell.cost import Bought, bought, cost_facts
from ledger.rows.settings import settings
from ledger.units.words import MaterialKind, in_pieces

ACCOUNTS: tuple[Account, ...] = get_args(Account)


@dataclass(frozen=True)
class UnknownLot:
    """A lot from a supplier of which nobody knows what it cost; mg or pieces."""

    code: str
    material: str
    counted: bool
    came: int
    on_hand: int


@dataclass(frozen=True)
class Worth:
    """What was paid for goods, and what work and the house cost; and where all of it is, to the minor unit."""

    on: date
    currency: str
    goods_minor: int
    carriage_minor: int
    goods: dict[Account, int]  # they add up to goods and carriage
    work_minor: int
    house_minor: int
    work: dict[Account, int]  # they add up to work and house
    differs_minor: int  # what is nowhere; always nothing, and `check` proves it
    load_the_good: bool
    unknown: tuple[UnknownLot, ...]
    unknown_in: tuple[str, ...]  # batches into which something of them went
    carriage_outside_minor: int  # of deliveries of which no cost is known
    without_work: tuple[str, ...]  # batches of which no work was told
    without_rate: tuple[str, ...]  # batches whose work has no rate


def worth(rows: Rows, on: date) -> Worth:
    """What was put in by the end of a day, and where it is then."""
    facts, paid = cost_facts(rows, on=on), bought(rows, on=on)
    found = costs(facts)
    goods, work = statements(facts, found, paid)
    own = found.by_batch
    benched = [one for one in facts.batches.values() if one.id in found.begun and one.process in AT_THE_BENCH]
    return Worth(
        on=on,
        currency=settings(rows).currency,
        goods_minor=paid.goods_minor,
        carriage_minor=paid.carriage_minor,
        goods=_in_order(goods),
        work_minor=sum(one.work_minor or 0 for one in own.values()),
        house_minor=sum(one.house_minor or 0 for one in own.values()),
        work=_in_order(work),
        differs_minor=abs(goods.differs_minor) + abs(work.differs_minor),
        load_the_good=facts.load_the_good,
        unknown=_unknown(facts),
        unknown_in=tuple(sorted(facts.batches[one].code for one in found.materials.tainted if one in facts.batches)),
        carriage_outside_minor=paid.carriage_outside_minor,
        without_work=tuple(one.code for one in benched if found.worked[one.id].source == "none"),
        without_rate=tuple(
            one.code
            for one in facts.batches.values()
            if own[one.id].work_minor is None and found.worked[one.id].minutes
        ),
    )


def statements(facts: CostFacts, found: Costs, paid: Bought) -> tuple[Statement, Statement]:
    """Goods, and work with what each batch bears of the house."""
    own = sum(one.total_minor for one in found.by_batch.values())
    return statement(facts, found.materials, paid.total_minor), statement(facts, found.own, own)


def _in_order(found: Statement) -> dict[Account, int]:
    return {one: found.accounts[one] for one in ACCOUNTS if found.accounts.get(one)}


def _unknown(facts: CostFacts) -> tuple[UnknownLot, ...]:
    lots = []
    for lot in facts.lots.values():
        if lot.batch_id is None and lot.cost_minor is None:
            moves = facts.moves.get(lot.id, ())
            came = sum(one.quantity for one in moves if one.way == "received")
            kind: MaterialKind = lot.kind
            lots.append(UnknownLot(lot.code, lot.material, in_pieces(kind), came, sum(one.quantity for one in moves)))
    return tuple(lots)
