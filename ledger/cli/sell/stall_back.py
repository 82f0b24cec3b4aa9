"""soapledger stall back."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import Desk, desk
from ledger.cli.kit.options import On, Yes
from ledger.cli.kit.show import ask, count, say, say_wrapped, warn, warn_of
from ledger.cli.sell.day_money import say_money
from ledger.cli.sell.stalls import Card, Cash, Complete, Float, Name, OtherGoods, Reason, Whole, read_takings
from ledger.cli.stock.bars import read_bars, say_presumed_bare, without_a_label
from ledger.domain.sell.evening import Fate
from ledger.domain.sell.takings import Takings
from ledger.operations.sell.stall_back import StallDay, stall_back
from ledger.rows.lot import PlaceRow
from ledger.rows.sell.product import products
from ledger.units.money import parse_money
from ledger.units.quantity import parse_pieces
from ledger.units.wording import opening
from ledger.views.sell.evening import evening_at, told_at
from ledger.views.sell.takings import takings_doubt
from ledger.views.stock.stall import at_stall, stall_by_name


def command(
    ctx: typer.Context,
    name: Name,
    bars: Annotated[
        list[str] | None,
        typer.Argument(help="What came back of each batch or product, e.g. rosemary=2; asks for the others."),
    ] = None,
    stolen: Annotated[
        list[str] | None, typer.Option("--stolen", help="What was stolen.", metavar="WHAT=NUMBER")
    ] = None,
    broken: Annotated[
        list[str] | None, typer.Option("--broken", help="What was broken or spoilt.", metavar="WHAT=NUMBER")
    ] = None,
    cash: Cash = None,
    float_: Float = None,
    card: Card = None,
    takings: Whole = None,
    other_goods: OtherGoods = None,
    complete: Complete = False,
    reason: Reason = None,
    pitch: Annotated[str | None, typer.Option("--pitch", help="What the pitch cost.", metavar="MONEY")] = None,
    on: On = None,
    yes: Yes = False,
) -> None:
    """Close a stall day: say what came back of each batch or product, what was lost, what was taken."""
    here = desk(ctx)
    day, place = here.day(on), stall_by_name(here.rows(), name)
    currency = here.settings.currency
    told: dict[Fate, dict[str, int]] = {
        "home": read_bars(bars or []),
        "stolen": read_bars(stolen or []),
        "broken": read_bars(broken or []),
    }
    money = read_takings(
        here, cash=cash, float_=float_, card=card, whole=takings, other=other_goods, complete=complete, reason=reason
    )
    fee = parse_money(pitch, currency, what="the pitch fee") if pitch else None
    if _ask_home(here, place, told) and not (bars or money.told or stolen or broken):
        money = _ask_rest(here, told, money)
    _, ended = evening_at(here.rows(), place, told)
    sold = {one.lot_id: one.sold for one in ended}
    doubt = takings_doubt(here.rows(), place, sold, money, on=day, currency=currency)
    warn_of([doubt] if doubt else [], yes)
    bare = without_a_label(here, [one.code for one in at_stall(here.rows(), place.id)])
    ended_day = stall_back(
        here.book(),
        place.code,
        told["home"],
        on=day,
        stolen=told["stolen"],
        broken=told["broken"],
        takings=money,
        pitch_minor=fee,
    )
    _say(ended_day)
    say_presumed_bare(here, bare)
    say_money(ended_day.money, currency, place.code)


def _ask_home(here: Desk, place: PlaceRow, numbers: dict[Fate, dict[str, int]]) -> bool:
    """Ask what came home of every batch of which it was not typed, of several of a product together."""
    stood, told, _ = told_at(here.rows(), place, numbers)
    home = numbers["home"]
    lots = {one.lot_id for one in told if one.fate == "home"}
    known = {one.product_id for one in told if one.fate == "home"}
    asked = False
    for product in dict.fromkeys(one.product_id for one in stood):
        open_ = [one for one in stood if one.product_id == product and one.lot_id not in lots]
        if product in known or not open_:
            continue
        asked = True
        alone = len([one for one in stood if one.product_id == product]) == len(open_)
        if len(open_) == 1 or not alone:
            for one in open_:
                typed = ask(f"{one.product} {one.code}: {one.bars} went out; how many came back", default="0")
                home[one.code] = parse_pieces(typed)
            continue
        batches = ", ".join(f"{one.code}={one.bars}" for one in open_)
        total = sum(one.bars for one in open_)
        typed = ask(f"{open_[0].product}: {total} went out ({batches}); how many came back", default="0")
        if "=" in typed:
            home |= read_bars(typed.split())
        else:
            code = next(one.code for one in products(here.rows()) if one.material_id == product)
            home[code] = parse_pieces(typed)
    return asked


def _ask_rest(here: Desk, told: dict[Fate, dict[str, int]], money: Takings) -> Takings:
    """Ask what was lost and what was taken; Enter where nothing was, or nothing is known yet."""
    told["stolen"] |= read_bars(ask("Stolen, e.g. rosemary=1 (Enter: none)", default="").split())
    told["broken"] |= read_bars(ask("Broken, e.g. rosemary=1 (Enter: none)", default="").split())
    cash = ask("Cash in the box, its float with it (Enter: not known yet)", default="") or None
    float_ = (ask("Of that, the float of the morning (Enter: none)", default="") or None) if cash else None
    card = ask("By card (Enter: not known yet)", default="") or None
    asked = read_takings(here, cash=cash, float_=float_, card=card)
    return asked._replace(other_minor=money.other_minor, complete=money.complete, reason=money.reason)


def _say(ended: StallDay) -> None:
    sold = sum(number for _, number in ended.sold)
    lost = f", {ended.lost} stolen or broken" if ended.lost else ""
    say(f"{ended.stall}: {count(sold, 'bar')} sold, {ended.back} came home{lost}.")
    say_wrapped(f"{opening(ended.told)}.", indent="    ", first="  ")
    if ended.assumed:
        say_wrapped(
            f"Which batch they were of is assumed, the oldest first, for {', '.join(ended.assumed)}; a "
            "recall names the others they may be of."
        )
    for code in ended.held:
        warn(f"Bars of batch {code}, which is on hold, were sold; see: soapledger lot show {code}")
