"""What the sample season's diary tells of money: prices, terms, promises, payments, invoices, costs."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import date, timedelta
from typing import Any, get_args

from ledger.domain.sale.pricing import Outlet
from ledger.domain.sell.takings import Takings
from ledger.operations.cost.rates import set_rate
from ledger.operations.cost.work import book_work
from ledger.operations.sale.pay import pay
from ledger.operations.sale.set_price import PriceFor, set_price
from ledger.operations.shop.count import count_shop
from ledger.operations.shop.invoices import make_invoice
from ledger.operations.shop.orders import add_order
from ledger.operations.shop.terms import Agreed, agree
from ledger.rows.opened import Rows, let_go
from ledger.rows.people import customer_by_code
from ledger.storage.book import Book
from ledger.units.money import parse_money
from ledger.units.quantity import parse_share
from ledger.units.words import CostRateKind, PaidBy, WorkStage, checked


class Selling:
    """The part of the diary that is about money; the rest of it gives the book, the batches and who it is of."""

    book: Book
    scenario: dict[str, Any]
    batches: dict[str, str]
    rows: Callable[[], Rows]

    @contextmanager
    def look(self) -> Iterator[Rows]:
        """What was booked so far, on one connection for all of it: to open one costs more than what is asked on it."""
        rows = self.rows()
        try:
            yield rows
        finally:
            let_go(rows)

    @property
    def _currency(self) -> str:
        return str(self.scenario["currency"])

    def _money(self, event: dict[str, Any], name: str) -> int | None:
        return parse_money(event[name], self._currency) if name in event else None

    def _takings(self, event: dict[str, Any]) -> Takings | None:
        """What was in the box and what went by card; None where the diary has one sum, or none."""
        if not event.keys() & {"cash", "card"}:
            return None
        return Takings(self._money(event, "cash"), self._money(event, "float"), self._money(event, "card"))

    def _do_price(self, event: dict[str, Any], on: date) -> None:
        outlet, words = Outlet(), "everything"
        if "customer" in event:
            with self.look() as rows:
                card = customer_by_code(rows, event["customer"])
            outlet, words = Outlet(customer_id=card.id), f"everything for {card.name}"
        price, bars = parse_money(event["price"], self._currency), event.get("bars", 1)
        set_price(self.book, PriceFor(None, outlet, words), price, on=on, bars=bars, currency=self._currency)

    def _do_terms(self, event: dict[str, Any], on: date) -> None:
        commission = parse_share(event["commission"]) if "commission" in event else None
        change = Agreed(event.get("sale_or_return"), commission, None, event.get("pay_in"), event.get("country"))
        agree(self.book, event["customer"], change, on=on)

    def _do_order(self, event: dict[str, Any], on: date) -> None:
        bars = {self.batches.get(name, name): number for name, number in event["bars"].items()}
        due_on = on + timedelta(days=event["due_in"])
        add_order(self.book, event["customer"], bars, on=on, due_on=due_on, note=event.get("note"))

    def _do_pay(self, event: dict[str, Any], on: date) -> None:
        way = checked(event["by"], get_args(PaidBy), what="a way to pay")
        pay(self.book, event["sale"], parse_money(event["amount"], self._currency), way, on=on)

    def _do_invoice(self, event: dict[str, Any], on: date) -> None:
        make_invoice(self.book, event["customer"], on=on)

    def _do_count_shop(self, event: dict[str, Any], on: date) -> None:
        still = {self.batches[name]: number for name, number in event["bars"].items()}
        count_shop(self.book, event["customer"], still, on=on)

    def _do_rate(self, event: dict[str, Any], on: date) -> None:
        kind = checked(event["of"], get_args(CostRateKind), what="what a rate is of")
        set_rate(self.book, kind, parse_money(event["amount"], self._currency), on=on)

    def _do_work(self, event: dict[str, Any], on: date) -> None:
        stage = checked(event["stage"], get_args(WorkStage), what="a kind of work")
        code, by = self.batches[event["batch"]], str(self.scenario["maker"])
        book_work(self.book, code, event["minutes"], stage=stage, on=on, by=by)
