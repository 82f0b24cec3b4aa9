"""soapledger sale show."""

from typing import NamedTuple

import typer

from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count, plain, say, say_wrapped, table
from ledger.cli.sale.options import Number, read_number
from ledger.units.dates import show_date
from ledger.units.money import figure, show_money
from ledger.units.quantity import show_share
from ledger.units.wording import opening
from ledger.views.sale.sale import SaleShown, sale_shown
from ledger.views.sale.words import by_way


def command(ctx: typer.Context, which: Number, json: Json = False) -> None:
    """Show one sale: its lines, the tax apart, what was paid, what came back, e.g. soapledger sale show 12."""
    here = desk(ctx)
    found = sale_shown(here.rows(), read_number(which))
    owed = found.stands.owed_minor if found.sale.kind == "sale" else None
    facts = plain(found) | {"owed_minor": owed, "tax_minor": found.stands.tax_minor}
    if not answer(facts, json):
        Words(found, here.settings.currency).say()


class Words(NamedTuple):
    """A sale in words."""

    found: SaleShown
    currency: str

    def money(self, minor: int) -> str:
        """An amount with its currency."""
        return show_money(minor, self.currency)

    def say(self) -> None:
        """All of it."""
        self._head()
        self._lines()
        self._stands()
        self._rest()

    def _head(self) -> None:
        sale, of = self.found.sale, self.found.of
        what = f"{opening(sale.kind)} {sale.id}{f' of sale {of[0]}' if of else ''}"
        place = f" at {sale.place}" if sale.place and self.found.to != sale.place else ""
        say_wrapped(f"{what}: {self.found.to}{place}, {show_date(sale.on)} (entry {sale.entry}).")
        if sale.order_id is not None:
            say(f"  It fills order {sale.order_id}.")
        if sale.terms:
            say_wrapped(f"Terms: {sale.terms}", indent="    ", first="  ")
        if sale.pay_by:
            say(f"  To be paid by {show_date(sale.pay_by)}.")

    def _lines(self) -> None:
        cells = []
        for number, shown in enumerate(self.found.lines, start=1):
            line = shown.line
            what = f"{line.product} {line.batch}" if line.batch else line.words or line.kind
            each = ""
            if line.gross_minor is not None and line.bars and line.gross_minor % line.bars == 0:
                each = self._figure(line.gross_minor // line.bars)
            cells.append(
                (
                    str(number),
                    what,
                    str(line.bars) if line.bars else "",
                    each,
                    self._figure(line.reduction_minor) if line.reduction_minor else "",
                    self._figure(shown.amount_minor),
                    "" if line.tax_minor is None else self._figure(line.tax_minor),
                    "" if line.tax_ppm is None else show_share(line.tax_ppm),
                )
            )
        heads = ("line", "what", "bars", "each", "off", self.currency, "tax in it", "rate")
        table(heads, cells, right=(0, 2, 3, 4, 5, 6, 7))
        for number, shown in enumerate(self.found.lines, start=1):
            if shown.line.batch and shown.line.words:
                say_wrapped(f"Line {number}: {shown.line.words}", indent="    ", first="  ")
            if shown.may_be:
                others = ", ".join(shown.may_be)
                say_wrapped(
                    f"Of line {number} the batch is assumed; the bars may be of {others}.", indent="    ", first="  "
                )
            if shown.back or shown.taken_back_minor:
                bars = f"{count(shown.back, 'bar')} came back, " if shown.back else ""
                say(f"  Of line {number} {bars}{self.money(shown.taken_back_minor)} was taken back.")

    def _stands(self) -> None:
        stands, kind = self.found.stands, self.found.sale.kind
        if stands.untold == len(self.found.lines):
            say("  What it brought was never told.")
            return
        more = f" and {count(stands.untold, 'line')} without a price" if stands.untold else ""
        taken = f", {self.money(stands.taken_back_minor)} taken back" if stands.taken_back_minor else ""
        say(f"  Together {self.money(stands.amount_minor)}{more}{taken}.")
        if stands.kept_minor < 0:
            say(f"  {self.money(-stands.kept_minor)} of the commission is given back.")
        elif stands.kept_minor:
            say(f"  {self.money(stands.kept_minor)} of it is kept as commission.")
        if any(one.line.tax_minor is not None for one in self.found.lines):
            net = stands.amount_minor - stands.taken_back_minor - stands.tax_minor
            say(f"  Tax in it {self.money(stands.tax_minor)}, without tax {self.money(net)}.")
        for one in self.found.payments:
            said = "paid back" if one.amount_minor < 0 else "paid"
            of = f" on {self._taker(one.sale_id)}" if one.sale_id != self.found.sale.id else ""
            note = f": {one.note}" if one.note else ""
            say_wrapped(
                f"{self.money(abs(one.amount_minor))} {said} {by_way(one.way)}, {show_date(one.on)}{of}{note}",
                indent="    ",
                first="  ",
            )
        if kind == "sale":
            owed, sale = stands.owed_minor, self.found.sale
            at_stall = sale.place_id is not None and sale.customer_id is None
            left = "Takings not told yet" if at_stall and owed > 0 else "Owed"  # nobody owes what stands in a box
            say(f"  {left}: {self.money(owed)}" if owed >= 0 else f"  Still to be paid back: {self.money(-owed)}")

    def _taker(self, number: int) -> str:
        return next((f"{one.kind} {number}" for one in self.found.against if one.sale == number), f"sale {number}")

    def _rest(self) -> None:
        for one in self.found.against:
            bars = f"{count(-one.bars, 'bar')}, " if one.bars else ""
            money = self.money(-one.amount_minor) if one.amount_minor is not None else "no price"
            say(f"  {opening(one.kind)} {one.sale}, {show_date(one.on)}: {bars}{money}")
        for fee in self.found.fees:
            note = f" ({fee.note})" if fee.note else ""
            back = " given back" if fee.amount_minor < 0 else ""
            say(f"  Fee, {show_date(fee.on)}: {fee.kind}{back}, {self.money(abs(fee.amount_minor))}{note}")

    def _figure(self, minor: int | None) -> str:
        return "–" if minor is None else figure(minor, self.currency)
