"""What every page of the archive is made from, read once for all of them."""

from collections import defaultdict
from collections.abc import Iterable
from functools import cached_property

from ledger.domain.stock.graph import Graph, Node
from ledger.rows.bars import BarCount, bar_counts
from ledger.rows.batch import BatchRow, batches
from ledger.rows.complaint import complaints
from ledger.rows.lot import LotRow, PlaceRow, all_lots, where_lots_are
from ledger.rows.movement import graph_from, taken_into
from ledger.rows.opened import Rows
from ledger.rows.people import CustomerCard, Had, SupplierCard, customer_list, had_by_customers, supplier_list
from ledger.rows.recipe import ListedRecipe, recipe_list
from ledger.rows.sell.sale import sales
from ledger.rows.settings import PrintedFrom, Settings, printed_from, settings
from ledger.units.money import show_money
from ledger.units.quantity import show_mass, whole
from ledger.views.recall.recall import ToCall
from ledger.views.recall.recall_complaints import complainants
from ledger.views.sale.sale import SaleListed, listed


class Everything:
    """The whole ledger as it stands, by row numbers."""

    def __init__(self, rows: Rows, *, program: str) -> None:
        """Read what all pages ask for; raises BadInput for a ledger that was never set up."""
        self.rows, self.program = rows, program
        self.own: Settings = settings(rows)
        self.printed: PrintedFrom = printed_from(rows, program)
        self.lots: dict[int, LotRow] = {lot.id: lot for lot in all_lots(rows)}
        self.batches: dict[int, BatchRow] = {batch.id: batch for batch in batches(rows)}
        self.recipes: tuple[ListedRecipe, ...] = recipe_list(rows)
        self.customers: dict[int, CustomerCard] = {card.id: card for card in customer_list(rows)}
        self.suppliers: tuple[SupplierCard, ...] = supplier_list(rows)
        self.had: tuple[Had, ...] = had_by_customers(rows)

    @cached_property
    def sales(self) -> dict[int, list[SaleListed]]:
        """The sales to each customer, with their returns and credits, by the days."""
        found: dict[int, list[SaleListed]] = defaultdict(list)
        every = sales(self.rows)
        for sale, told in zip(every, listed(self.rows, every), strict=True):
            if sale.customer_id is not None:
                found[sale.customer_id].append(told)
        return found

    @cached_property
    def graph(self) -> Graph:
        """Every lot and batch with what went into it and what came of it."""
        starts: list[Node] = [("lot", number) for number in self.lots]
        return graph_from(self.rows, starts, "down")

    @cached_property
    def counts(self) -> dict[int, list[BarCount]]:
        """Where the bars of every lot are, or which way they went."""
        found: dict[int, list[BarCount]] = defaultdict(list)
        for one in bar_counts(self.rows, [lot.id for lot in self.lots.values() if lot.kind == "soap"]):
            found[one.lot_id].append(one)
        return found

    @cached_property
    def used(self) -> dict[tuple[int, int], int]:
        """How much of a lot is in a batch, by (lot, batch), in mg or pieces."""
        found: dict[tuple[int, int], int] = defaultdict(int)
        for one in taken_into(self.rows, self.batches.keys()):
            found[one.lot_id, one.batch_id] += one.quantity
        return found

    @cached_property
    def lying(self) -> dict[int, tuple[tuple[PlaceRow, int], ...]]:
        """Where something of a lot is now."""
        return where_lots_are(self.rows)

    @cached_property
    def complained(self) -> tuple[dict[str, list[ToCall]], dict[str, list[ToCall]]]:
        """Who complained, by the batch code: with health or decided serious, and the others."""
        grave: dict[str, list[ToCall]] = defaultdict(list)
        others: dict[str, list[ToCall]] = defaultdict(list)
        codes = {batch.code for batch in self.batches.values()}
        told_of = [one for one in complaints(self.rows) if one.batch_code]
        for found, told in zip((grave, others), complainants(told_of, codes), strict=True):
            for one in told:
                found[one.batches[0]].append(one)
        return grave, others

    def downstream(self, start: Node) -> tuple[tuple[BatchRow, tuple[str, ...]], ...]:
        """The batches that something went into, nearest first, each with the codes on the way to it."""
        closure = self.graph.downstream([start])
        found = []
        for number in closure.of_kind("batch"):
            if number in self.batches and ("batch", number) != start:
                found.append((self.batches[number], self.codes(closure.paths["batch", number][1:-1])))
        return tuple(found)

    def codes(self, nodes: Iterable[Node]) -> tuple[str, ...]:
        """The codes of lots and batches, each once."""
        named = (self.lots[number].code if kind == "lot" else self.batches[number].code for kind, number in nodes)
        return tuple(dict.fromkeys(named))

    def amount(self, quantity: int, lot: LotRow) -> str:
        """A quantity of a lot as it is read."""
        return whole(f"{quantity} pcs" if lot.counted else show_mass(quantity, self.own.units))

    def money(self, minor: int | None) -> str:
        """An amount of money; nothing where none was booked."""
        return "" if minor is None else whole(show_money(minor, self.own.currency))

    def bars_here(self, batch: BatchRow) -> int:
        """How many bars of a batch are in our hands."""
        return sum(one.count for one in self.counts.get(batch.yield_lot_id or 0, ()) if not one.left)
