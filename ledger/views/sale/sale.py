"""A sale in full: its lines, what was paid, what was taken from it again; and the list of sales."""

from dataclasses import dataclass
from datetime import date

from ledger.errors import BadInput
from ledger.rows.opened import Rows
from ledger.rows.sell.assumed import may_be
from ledger.rows.sell.back import left_of_sale, sale_of_lines
from ledger.rows.sell.paid import Balance, FeeRow, PaymentRow, against, balances, fees, payments_of
from ledger.rows.sell.sale import LineRow, SaleRow, lines_of, sales_by_id
from ledger.units.words import SaleKind
from ledger.views.sale.outlet import names_of


@dataclass(frozen=True)
class SaleListed:
    """One sale, return or credit as a list shows it; no amount where none was ever told."""

    sale: int
    entry: int
    on: date
    kind: SaleKind
    to: str
    bars: int
    amount_minor: int | None
    owed_minor: int | None  # of a sale, with its returns and credits; below zero: to be paid back
    untold: int  # lines whose amount was never told
    of: tuple[int, ...]  # the sale that a return or a credit takes from


def listed(rows: Rows, found: list[SaleRow]) -> list[SaleListed]:
    """Some sales as a list shows them."""
    numbers = [one.id for one in found]
    names, stand, lines = names_of(rows, found), balances(rows, numbers), lines_of(rows, numbers)
    of = _taken_from(rows, [line for one in numbers for line in lines[one]])
    return [
        SaleListed(
            sale=one.id,
            entry=one.entry,
            on=one.on,
            kind=one.kind,
            to=names[one.id],
            bars=stand[one.id].bars,
            amount_minor=stand[one.id].amount_minor if _told(lines[one.id]) else None,
            owed_minor=stand[one.id].owed_minor if one.kind == "sale" and _told(lines[one.id]) else None,
            untold=stand[one.id].untold,
            of=tuple(dict.fromkeys(of[line.of_line_id] for line in lines[one.id] if line.of_line_id is not None)),
        )
        for one in found
    ]


def _told(lines: list[LineRow]) -> bool:
    return any(line.gross_minor is not None for line in lines)


def _taken_from(rows: Rows, lines: list[LineRow]) -> dict[int, int]:
    """The sales whose lines some lines take from, by the line that is taken from."""
    return sale_of_lines(rows, {line.of_line_id for line in lines if line.of_line_id is not None})


@dataclass(frozen=True)
class LineShown:
    """One line with what returns and credits took from it."""

    line: LineRow
    amount_minor: int | None
    back: int  # bars
    taken_back_minor: int
    may_be: tuple[str, ...]  # where its batch was assumed: the others that its bars may be of


@dataclass(frozen=True)
class SaleShown:
    """One sale, return or credit in full."""

    sale: SaleRow
    to: str
    lines: tuple[LineShown, ...]
    payments: tuple[PaymentRow, ...]  # of the sale and of what took from it
    fees: tuple[FeeRow, ...]
    against: tuple[SaleListed, ...]  # the returns and credits
    of: tuple[int, ...]  # of a return or credit: the sale it takes from
    stands: Balance


def sale_shown(rows: Rows, number: int) -> SaleShown:
    """One sale by its number. Raises BadInput for one that is not there, or was taken back."""
    sale = sale_numbered(rows, number)
    takers = against(rows, [number])[number]
    lines = lines_of(rows, [number])[number]
    left = {one.id: one for one in left_of_sale(rows, number)}
    paid = payments_of(rows, [number, *takers])
    those = sales_by_id(rows, takers)
    others = may_be(rows, [one.movement_id for one in lines if one.movement_id is not None])
    of = _taken_from(rows, lines)
    return SaleShown(
        sale=sale,
        to=names_of(rows, [sale])[number],
        lines=tuple(
            LineShown(
                line,
                line.amount_minor,
                line.bars - left[line.id].left_bars if line.id in left else 0,
                (line.amount_minor or 0) - (left[line.id].left_minor or 0) if line.id in left else 0,
                others.get(line.movement_id or 0, ()),
            )
            for line in lines
        ),
        payments=tuple(sorted((one for ones in paid.values() for one in ones), key=lambda one: (one.on, one.id))),
        fees=tuple(fees(rows, [number])),
        against=tuple(listed(rows, [those[one] for one in takers])),
        of=tuple(dict.fromkeys(of.values())),
        stands=balances(rows, [number])[number],
    )


def sale_numbered(rows: Rows, number: int) -> SaleRow:
    """The sale, return or credit of a number. Raises BadInput for one that is not there, or was taken back."""
    found = sales_by_id(rows, [number]).get(number)
    if found is None:
        raise BadInput(f"There is no sale {number}, or it was taken back; see: soapledger sale list")
    return found
