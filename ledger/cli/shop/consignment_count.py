"""soapledger consignment count."""

from datetime import date
from typing import Annotated

import typer

from ledger.cli.kit.desk import Desk, desk
from ledger.cli.kit.options import On, Yes
from ledger.cli.kit.show import ask, can_answer, count, say, table, warn, warn_of
from ledger.cli.shop.words import Shop
from ledger.cli.stock.bars import read_bars
from ledger.domain.sale.pricing import Outlet
from ledger.operations.shop.count import ShopCount, count_shop
from ledger.units.money import parse_money, show_money
from ledger.units.quantity import parse_pieces
from ledger.views.sale.doubts import Taken, unlikely
from ledger.views.shop.consignment import at_shops, group_meant, shop_meant


def command(
    ctx: typer.Context,
    customer: Shop,
    still: Annotated[
        list[str] | None,
        typer.Argument(help="What is still there, e.g. rosemary=7; asks for the rest.", metavar="WHAT=N"),
    ] = None,
    missing: Annotated[
        list[str] | None,
        typer.Option("--missing", help="What the shop neither has nor sold, e.g. rosemary=1.", metavar="WHAT=N"),
    ] = None,
    price: Annotated[str | None, typer.Option("--price", help="What one bar was sold for there.")] = None,
    yes: Yes = False,
    on: On = None,
) -> None:
    """Book a shop's count: what is still there; the rest was sold, e.g. consignment count tern-hall rosemary=7."""
    here = desk(ctx)
    day = here.day(on)
    card, _ = shop_meant(here.rows(), customer)
    each = None
    if price:
        each = parse_money(price, here.settings.currency, what="the price")
        warn_of(price_doubts(here, card.id, each, day), yes)
    wanted = _asked(here, card.id, card.name, read_bars(still or []))
    done = count_shop(here.book(), card.code, wanted, on=day, missing=read_bars(missing or []), price_minor=each)
    _say(here, done)


def price_doubts(here: Desk, customer_id: int, each: int, on: date) -> list[str]:
    """A sentence where the price of one bar is far from what it usually is there."""
    standing = at_shops(here.rows(), customer_id)
    taken = [Taken(one.lot_id, one.bars, each * one.bars) for one in standing]
    slip = unlikely(here.rows(), taken, Outlet(customer_id=customer_id), on, here.settings.currency)
    return [slip] if slip else []


def _asked(here: Desk, customer_id: int, shop: str, wanted: dict[str, int]) -> dict[str, int]:
    """What is still there of each product, asked for what was not told where somebody can be asked."""
    standing = at_shops(here.rows(), customer_id)
    told = {one.lot_id for word in wanted for one in group_meant(here.rows(), word, standing, shop).lots}
    if not can_answer():
        return wanted
    names: dict[str, str] = {}
    for one in standing:
        if one.lot_id not in told:
            mixed = any(other.lot_id in told for other in standing if other.recipe_id == one.recipe_id)
            by_product = one.recipe_id is not None and not mixed
            names.setdefault(one.product if by_product else one.batch, one.product)
    for word, product in names.items():
        bars = sum(one.bars for one in standing if word in (one.product, one.batch))
        what = product if word == product else f"{product} {word}"
        wanted[word] = parse_pieces(ask(f"{what}: {bars} stood there; how many are still there"))
    return wanted


def _say(here: Desk, done: ShopCount) -> None:
    currency, sold = here.settings.currency, sum(one.bars for one in done.sold)
    lost = f", {count(done.missing, 'bar')} missing" if done.missing else ""
    name = f" (sale {done.sale})" if done.sale else ""
    say(f"{done.shop}: {count(sold, 'bar')} sold{name}{lost}, {done.still} still there.")
    if done.sold:
        table(
            ("product", "batch", "sold", "amount", ""),
            [
                (
                    one.product,
                    one.batch,
                    str(one.bars),
                    "" if one.amount_minor is None else show_money(one.amount_minor, currency),
                    "assumed" if one.assumed else "",
                )
                for one in done.sold
            ],
            right=(2, 3),
        )
    if any(one.assumed for one in done.sold):
        say("Assumed: of which batch they were nobody noted; the oldest were taken to be sold first.")
    if done.commission_minor:
        net = done.amount_minor - done.commission_minor
        say(
            f"{show_money(done.amount_minor, currency)} less {show_money(done.commission_minor, currency)} commission: "
            f"{show_money(net, currency)} for you."
        )
    unknown = dict.fromkeys(one.product for one in done.sold if one.amount_minor is None)
    if unknown:
        warn(f"No price is known for {', '.join(unknown)} there, so no amount was booked for it.")
    for code in done.held:
        warn(f"Bars of batch {code}, which is on hold, were sold; see: soapledger lot show {code}")
