"""A shop on sale or return counts what is still there: the rest was sold, but for what it lost."""

from collections.abc import Collection, Mapping, Sequence
from datetime import date, timedelta
from fractions import Fraction
from typing import NamedTuple

from ledger.domain.shop.counting import Gone, Lying, counted
from ledger.errors import BadInput, Refused
from ledger.operations.sale.agreed import agreed_price
from ledger.operations.sale.booked import Charged, Outlets, book_sale
from ledger.operations.sale.priced import Asked
from ledger.operations.sale.priced import Gone as Went
from ledger.operations.sell.dispatch import moved_of
from ledger.rows.opened import Rows
from ledger.rows.sell.tax import recipes_of
from ledger.rows.sell.terms import assumed_at, terms_on
from ledger.rows.settings import settings
from ledger.storage.book import Book
from ledger.storage.transaction import Transaction
from ledger.storage.verbs import Moved
from ledger.units.dates import show_date
from ledger.units.money import half_up
from ledger.units.quantity import WHOLE_PPM, show_share
from ledger.units.wording import count
from ledger.views.sale.words import in_full, whom_kept
from ledger.views.shop.consignment import AtShop, Group, at_shops, group_meant, shop_meant


class SoldThere(NamedTuple):
    """Bars of one batch that a shop sold, and what they brought before its commission; None: no price is known."""

    batch: str
    product: str
    bars: int
    amount_minor: int | None
    assumed: bool


class ShopCount(NamedTuple):
    """What a count came to."""

    shop: str
    sale: int | None  # None: nothing was sold
    sold: tuple[SoldThere, ...]
    missing: int
    still: int
    amount_minor: int
    commission_minor: int
    held: tuple[str, ...]  # batches on hold of which bars were sold all the same


def count_shop(
    book: Book,
    customer: str,
    still: Mapping[str, int],
    *,
    on: date,
    missing: Mapping[str, int] | None = None,
    price_minor: int | None = None,
) -> ShopCount:
    """Book what a shop sold since the last count, by product or by batch.

    Raises Refused for more than stood there, BadInput for what does not stand there, what was left out, or an earlier
    day than it was brought. Nothing is written where all is still there.
    """
    with book.write("consignment count") as tx:
        card, place = shop_meant(tx.rows, customer)
        standing = at_shops(tx.rows, card.id)
        if not standing:
            raise Refused(f"Nothing of yours stands at {card.name}; bars go there with: soapledger dispatch")
        unsure = assumed_at(tx.rows, place)
        groups = _groups(tx.rows, [*still], standing, card.name, unsure)
        lost = _missing(tx.rows, missing or {}, groups, standing, card.name)
        sold: list[Gone] = []
        gone: list[Gone] = []
        recipes = recipes_of(tx.rows, unsure)
        for group in groups:
            left, away = still[group.word], lost.get(group.word, 0)
            _possible(group, left, away, card.name, on)
            lying = [Lying(one.lot_id, one.bars) for one in group.lots]
            of = {one.recipe_id for one in group.lots} if not group.exact else set()
            also = [lot for lot in sorted(unsure) if recipes.get(lot) in of]
            found = counted(lying, still=left, missing=away, also=also)
            sold += found.sold
            gone += found.missing
        if not sold and not gone:
            raise Refused(f"All of it is still at {card.name}, so there is nothing to book.")
        terms = terms_on(tx.rows, on, [card.id]).get(card.id)
        moved = tx.move(
            [Moved(one.lot_id, -one.bars, customer_id=card.id) for one in sold], "sold", place_id=place, on=on
        )
        at = Outlets(place_id=place, customer_id=card.id)
        lines = agreed_price(
            tx.rows,
            [Went(one.lot_id, one.bars, movement) for one, movement in zip(sold, moved, strict=True)],
            Outlets(customer_id=card.id),
            on=on,
            asked=Asked(price_minor),
            terms=terms,
        )
        net = sum((one.gross_minor or 0) - one.reduction_minor for one in lines)
        share = terms.commission_ppm if terms else None
        commission = half_up(Fraction(net * share, WHOLE_PPM)) if share else 0
        sale = None
        if lines:
            days = terms.pay_days if terms else None
            sale = book_sale(
                tx,
                at,
                lines,
                on=on,
                charged=[Charged("commission", commission)] if commission else [],
                terms="sale or return" + (f", {show_share(share)} commission" if share else ""),
                pay_by=None if days is None else on + timedelta(days),
            )
        _assume(tx, sold, moved)
        lacking = [Moved(one.lot_id, -one.bars, note="missing at the shop's count") for one in gone]
        away_ids = tx.move(lacking, "counted", place_id=place, on=on)
        _assume(tx, gone, away_ids)
        short = sum(one.bars for one in gone)
        told = in_full(tx.rows, [moved_of(line) for line in lines], settings(tx.rows).currency)
        head = f"Sale {sale}: {told} sold" if sale else "Nothing sold"
        words = f", {count(short, 'bar')} missing" if short else ""
        tx.say(f"{head} at customer {whom_kept(card)} by a count{words}, {sum(still.values())} still there.")
        named = {one.lot_id: one for one in standing}
        return ShopCount(
            card.name,
            sale,
            tuple(
                SoldThere(
                    named[one.lot_id].batch,
                    named[one.lot_id].product,
                    one.bars,
                    None if line.gross_minor is None else line.gross_minor - line.reduction_minor,
                    bool(one.others),
                )
                for one, line in zip(sold, lines, strict=True)
            ),
            short,
            sum(still.values()),
            net,
            commission,
            tuple(named[one.lot_id].batch for one in sold if named[one.lot_id].status == "on hold"),
        )


def _groups(
    rows: Rows, words: list[str], standing: tuple[AtShop, ...], shop: str, unsure: Collection[int]
) -> list[Group]:
    """What each word means; every batch there is meant by one of them."""
    groups = [group_meant(rows, word, standing, shop, unsure) for word in words]
    seen: dict[int, str] = {}
    for group in groups:
        for one in group.lots:
            if one.lot_id in seen:
                raise BadInput(f"Batch {one.batch} is counted twice, as '{seen[one.lot_id]}' and as '{group.word}'.")
            seen[one.lot_id] = group.word
    left = [one for one in standing if one.lot_id not in seen]
    if left:
        raise BadInput(
            f"How many bars of {left[0].product} ({left[0].batch}) are still at {shop}? "
            f"Write {left[0].batch}=0 if none are."
        )
    return groups


def _missing(
    rows: Rows, missing: Mapping[str, int], groups: list[Group], standing: tuple[AtShop, ...], shop: str
) -> dict[str, int]:
    """How many the shop lost, by the word under which they are counted."""
    found: dict[str, int] = {}
    for word, number in missing.items():
        lots = group_meant(rows, word, standing, shop).lots
        group = next((one for one in groups if one.lots == lots), None)
        if group is None:
            raise BadInput(f"'{word}' is counted otherwise; say what is missing by the same product or batch.")
        found[group.word] = number
    return found


def _possible(group: Group, left: int, away: int, shop: str, on: date) -> None:
    if left + away > group.bars:
        what = f"{left} still there and {away} missing" if away else f"{left} still there"
        stands = "stands" if group.bars == 1 else "stand"
        raise Refused(
            f"{count(group.bars, 'bar')} of {group.name} {stands} at {shop}; {what} is more. Nothing was written."
        )
    late = max(one.brought_on for one in group.lots)
    if on < late:
        raise BadInput(f"Bars of {group.name} were brought to {shop} on {show_date(late)}; look at --on.")


def _assume(tx: Transaction, gone: list[Gone], moved: Sequence[int]) -> None:
    """Mark the movements whose batch was taken for the oldest, with each other it may be."""
    rows = [
        {"movement_id": movement, "lot_id": lot}
        for one, movement in zip(gone, moved, strict=True)
        for lot in one.others
    ]
    tx.add_rows("assumed_batch", rows)
