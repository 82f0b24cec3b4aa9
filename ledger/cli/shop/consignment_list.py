"""soapledger consignment list."""

import typer

from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count
from ledger.units.dates import show_best_before, show_date
from ledger.views.shop.consignment import at_shops


def command(ctx: typer.Context, json: Json = False) -> None:
    """List the bars that are yours at shops on sale or return."""
    found = at_shops(desk(ctx).rows())
    shops = dict.fromkeys(one.customer for one in found)
    lines, before = [], ""
    for one in found:
        shop = one.customer if one.customer != before else ""
        until = show_best_before(one.best_before) if one.best_before else ""
        status = "" if one.status == "released" else one.status
        lines.append((shop, one.product, one.batch, str(one.bars), show_date(one.brought_on), until, status))
        before = one.customer
    words = Listed(
        f"{count(sum(one.bars for one in found), 'bar')} of yours at {count(len(shops), 'shop')}.",
        ("shop", "product", "batch", "bars", "brought", "best before", "status"),
        lines,
        right=(3,),
        none="Nothing of yours stands at a shop. To agree it: soapledger customer terms SHOP --sale-or-return",
        then="When a shop has counted: soapledger consignment count SHOP PRODUCT=NUMBER",
    )
    answer(found, json, words)
