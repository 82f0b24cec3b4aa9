"""soapledger shelf list."""

import typer

from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count, say, say_wrapped, table
from ledger.rows.bars import back_on_sale, decided_on_the_shelf, standing_at
from ledger.rows.lot import lots_by_id, place_of_kind
from ledger.units.dates import show_date


def command(ctx: typer.Context, json: Json = False) -> None:
    """List what stands on the returns shelf, and what was decided of those batches so far."""
    rows = desk(ctx).rows()
    standing = standing_at(rows, place_of_kind(rows, "returns").id)
    lots = lots_by_id(rows, {one.lot_id for one in standing})
    decided = [(one.batch_code, one.on, one.words) for one in back_on_sale(rows, sorted(lots))]
    decided += [(one.batch_code, one.on, one.words) for one in decided_on_the_shelf(rows, sorted(lots))]
    decided.sort(key=lambda one: one[:2])
    found = [
        {
            "batch": lots[one.lot_id].code,
            "product": lots[one.lot_id].material,
            "bars": one.bars,
            "last_on": one.out_on,
            "decided": [words for code, _, words in decided if code == lots[one.lot_id].code],
        }
        for one in standing
    ]

    def words() -> None:
        if not standing:
            say("Nothing stands on the returns shelf.")
            return
        say(f"{count(sum(one.bars for one in standing), 'bar')} on the returns shelf.")
        cells = [
            (lots[one.lot_id].code, lots[one.lot_id].material, str(one.bars), show_date(one.out_on)) for one in standing
        ]
        table(("batch", "product", "bars", "last came"), cells, right=(2,))
        for code, _, told in decided:
            say_wrapped(f"Of batch {code}, {told}.")
        say('Next: soapledger resell CODE=N --by NAME --reason "…", shelf keep or shelf waste')

    answer(found, json, words)
