"""Bars go to a stall, by batch or by product."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from functools import cached_property

from ledger.domain.sell.assumed import candidates, first_out
from ledger.errors import BadInput, Refused
from ledger.operations.release.first_supply import FirstSupplied
from ledger.operations.sell.assuming import write_assumed, write_ticked
from ledger.operations.sell.leaving import may_go
from ledger.rows.lot import LotRow, PlaceRow, lots_by_id, place_of_kind
from ledger.rows.sell.assumed import open_pairs
from ledger.rows.sell.product import Product, products
from ledger.rows.settings import settings
from ledger.storage.book import Book
from ledger.storage.transaction import Transaction
from ledger.units.dates import show_date
from ledger.units.wording import count
from ledger.views.sale.words import BarsMoved, in_full
from ledger.views.sell.ready import Ready, lot_or_product, ready
from ledger.views.stock.stall import stall_by_name


@dataclass(frozen=True)
class Out:
    """Bars of one batch that were taken, and which batches they may as well be of."""

    code: str
    product: str
    bars: int
    may_be: tuple[str, ...] = ()


@dataclass(frozen=True)
class TakenOut:
    """What was taken to a stall."""

    stall: str
    taken: tuple[Out, ...]
    short: tuple[tuple[str, int], ...]  # products of which there were fewer than "so many of each", with how many

    @property
    def bars(self) -> int:
        """All of them."""
        return sum(one.bars for one in self.taken)


def stall_out(
    book: Book,
    stall: str,
    bars: Mapping[str, int],
    *,
    on: date,
    first: FirstSupplied | None = None,
    each: int | None = None,
    of: Sequence[str] = (),
    ticked_by: str | None = None,
) -> TakenOut:
    """Take so many of each batch or product to a stall, and `each` so many of the products `of`, or of all.

    Of a product the oldest batch goes first; where bars of another could have been taken, that is written beside the
    movement, until somebody ticks the list, which `ticked_by` did already. Raises Refused for bars that may not leave.
    """
    with book.write("stall out") as tx:
        place = stall_by_name(tx.rows, stall)
        picked = _Picking(tx, on)
        for text, number in bars.items():
            picked.take(text, number)
        if each is not None:
            picked.take_each(each, of)
        parts = picked.parts()
        if not parts:
            raise BadInput("What goes to the stall? Write batches or products with numbers, such as rosemary=12.")
        out = _move(tx, place, parts, on, first, ticked_by)
        moved = [BarsMoved(one.lot_id, one.bars) for one in parts]
        tx.say(f"Took {in_full(tx.rows, moved, settings(tx.rows).currency)} to {place.name}.")
    return TakenOut(place.name, tuple(out), tuple(picked.short))


@dataclass(frozen=True)
class _Part:
    lot_id: int
    code: str
    product: str
    bars: int
    may_be: frozenset[int] = frozenset()


class _Picking:
    """Which lots bars are taken from; what a batch was named for is not taken for its product again."""

    def __init__(self, tx: Transaction, on: date) -> None:
        self.on = on
        self._rows = tx.rows
        self._by_product: list[tuple[Product, int]] = []
        self._parts: list[_Part] = []
        self.short: list[tuple[str, int]] = []

    @cached_property
    def _known(self) -> list[Product]:
        return products(self._rows)

    @cached_property
    def _ready(self) -> dict[int, list[Ready]]:
        return ready(self._rows, self.on)

    def take(self, text: str, number: int) -> None:
        """So many of what a batch code or the name of a product means."""
        meant = lot_or_product(self._rows, text)
        if isinstance(meant, LotRow):
            self._parts.append(_Part(meant.id, meant.code, meant.material, number))
        elif number <= 0:
            raise BadInput(f"How many bars of {meant.name}? Write a number above zero.")
        else:
            self._by_product.append((meant, number))

    def take_each(self, each: int, of: Sequence[str]) -> None:
        """So many of each product named, or of every one that is ready; of one with fewer, all of them."""
        named = [lot_or_product(self._rows, text, self._known) for text in of]
        if lots := [one.code for one in named if isinstance(one, LotRow)]:
            raise BadInput(f"--each is for products; of a batch write {lots[0]}={each}.")
        told = {one.material_id for one, _ in self._by_product}
        chosen = [one for one in named if isinstance(one, Product)] or [
            one for one in self._known if one.material_id in self._ready and one.material_id not in told
        ]
        if not chosen:
            raise Refused("No released bars stand in the workshop; see: soapledger stock --kind soap")
        for one in chosen:
            here = self._here(one)
            if here < each:
                self.short.append((one.name, here))
            if here:
                self._by_product.append((one, min(each, here)))

    def _here(self, product: Product) -> int:
        return sum(self._left(product).values())

    def _left(self, product: Product) -> dict[int, int]:
        named = {one.lot_id: one.bars for one in self._parts}
        return {one.lot_id: max(0, one.bars - named.get(one.lot_id, 0)) for one in self._of(product)}

    def _of(self, product: Product) -> list[Ready]:
        return self._ready.get(product.material_id, [])

    def parts(self) -> list[_Part]:
        """What is taken of each lot: as it was named, then of each product the oldest first."""
        found = list(self._parts)
        pairs = open_pairs(self._rows) if self._by_product else set()
        by_product: dict[Product, int] = {}
        for product, number in self._by_product:
            by_product[product] = by_product.get(product, 0) + number
        for product, number in by_product.items():
            standing, codes = self._left(product), {one.lot_id: one.code for one in self._of(product)}
            if number > sum(standing.values()):
                raise Refused(
                    f"Of {product.name} {count(sum(standing.values()), 'released bar')} stand in the workshop on "
                    f"{show_date(self.on)}; {number} cannot leave. Nothing was written."
                )
            taken = first_out(number, standing)
            may_be = candidates(taken, standing, pairs, any_of_them=number < sum(standing.values()))
            found += [_Part(lot, codes[lot], product.name, bars, may_be[lot]) for lot, bars in taken.items()]
        return found


def _move(
    tx: Transaction,
    place: PlaceRow,
    parts: Sequence[_Part],
    on: date,
    first: FirstSupplied | None,
    ticked_by: str | None,
) -> list[Out]:
    leaving: dict[str, int] = {}
    for one in parts:
        if one.bars <= 0:
            raise BadInput(f"How many bars of batch {one.code}? Write a number above zero.")
        leaving[one.code] = leaving.get(one.code, 0) + one.bars
    for code, number in leaving.items():
        may_go(tx, code, number, on, first, place)
    workshop = place_of_kind(tx.rows, "workshop")
    moved = tx.transfer([(one.lot_id, one.bars) for one in parts], source_id=workshop.id, target_id=place.id, on=on)
    marked = write_assumed(tx, [(number, one.may_be) for number, one in zip(moved, parts, strict=True)])
    if ticked_by and marked:
        write_ticked(tx, marked, on=on, by=ticked_by)
    others = lots_by_id(tx.rows, {lot for one in parts for lot in one.may_be})
    return [
        Out(one.code, one.product, one.bars, () if ticked_by else tuple(others[lot].code for lot in sorted(one.may_be)))
        for one in parts
    ]
