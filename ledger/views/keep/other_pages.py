"""The pages of customers, suppliers and products, and the index that leads to every page."""

from collections.abc import Iterator

from ledger.domain.bench.status import in_words
from ledger.rows.batch import BatchRow
from ledger.rows.lot import LotRow
from ledger.rows.people import CustomerCard, Had, SupplierCard
from ledger.rows.recipe import ListedRecipe, kept_versions, recipe_source
from ledger.units.dates import show_date
from ledger.views.keep.everything import Everything
from ledger.views.keep.page import Index, Page, Part, Text
from ledger.views.keep.shop_parts import ShopParts
from ledger.views.record.pieces import Column, Facts, Grid, grid
from ledger.views.sale.sale import SaleListed

_WAYS = {"dispatched": "sent", "sold": "sold there", "given": "given", "returned": "came back"}


def customer_pages(known: Everything) -> Iterator[Page]:
    """One page for each customer: how to reach her, what she had, and what is agreed, promised and owed."""
    shop = ShopParts(known.rows)
    for card in known.customers.values():
        had = [one for one in known.had if one.customer_id == card.id]
        sold = known.sales.get(card.id, [])
        parts = (
            Part("What went there, and what came back", (_had(known, had),) if had else (), "Nothing yet."),
            Part("Sales, returns and credits", (_sold(known, sold),) if sold else (), "None yet."),
        )
        yield Page("customer", card.code, card.name, card.kind, _reach(card), (*shop.of(card.id), *parts))


def _had(known: Everything, had: list[Had]) -> Grid:
    products = {batch.code: batch.product for batch in known.batches.values()}
    return grid(
        had,
        Column("on", lambda one: show_date(one.on)),
        Column("what", lambda one: _WAYS.get(one.what, one.what)),
        Column("bars", lambda one: str(abs(one.bars)), right=True, bold=True),
        Column("batch", lambda one: one.batch),
        Column("product", lambda one: products.get(one.batch, "")),
        Column("money", lambda one: known.money(one.money_minor), right=True),
        Column("entry", lambda one: str(one.entry), right=True),
    )


def _sold(known: Everything, sold: list[SaleListed]) -> Grid:
    return grid(
        sold,
        Column("sale", lambda one: str(one.sale), right=True, bold=True),
        Column("on", lambda one: show_date(one.on)),
        Column("what", lambda one: f"{one.kind} of {one.of[0]}" if one.of else one.kind),
        Column("bars", lambda one: str(one.bars) if one.bars else "", right=True),
        Column("money", lambda one: known.money(one.amount_minor), right=True),
        Column("owed", lambda one: known.money(one.owed_minor) if one.owed_minor else "", right=True),
        Column("entry", lambda one: str(one.entry), right=True),
    )


def _reach(card: CustomerCard | SupplierCard) -> Facts:
    return Facts(
        (
            ("telephone", card.phone or "not known here"),
            ("person", card.person or ""),
            ("email", card.email or ""),
            ("address", card.address or ""),
            ("note", card.note or ""),
            ("bars", str(card.bars) if isinstance(card, CustomerCard) else ""),
        )
    )


def supplier_pages(known: Everything) -> Iterator[Page]:
    """One page for each supplier: how to reach it, and the lots that came from there."""
    for card in known.suppliers:
        lots = [lot for lot in known.lots.values() if lot.supplier_id == card.id]
        own = "own garden" if card.own else "supplier"
        parts = (Part("Lots from there", (_lots(known, lots),) if lots else (), "None yet."),)
        yield Page("supplier", card.code, card.name, own, _reach(card), parts)


def product_pages(known: Everything) -> Iterator[Page]:
    """One page for each recipe: its batches, and every version as it was written."""
    for card in known.recipes:
        versions = kept_versions(known.rows, card.id)
        made = [batch for batch in known.batches.values() if batch.recipe_code == card.code]
        texts = [
            Part(f"Version {number} as it was written", (Text(recipe_source(known.rows, version_id)),))
            for number, (version_id, _) in sorted(versions.items(), reverse=True)
        ]
        facts = Facts((("process", card.process), ("versions", str(len(versions))), ("batches", str(len(made)))))
        parts = (Part("Its batches", (_batches(known, made),) if made else (), "None yet."), *texts)
        yield Page("product", card.code, card.name, "recipe", facts, parts)


def index_page(known: Everything) -> Index:
    """Everything that has a page, and what stands at the stalls."""
    batches = sorted(known.batches.values(), key=lambda one: (one.on, one.id), reverse=True)
    lots = [lot for lot in known.lots.values() if lot.kind != "soap"]
    stalls = [
        (place.name, known.lots[lot_id], held)
        for lot_id, where in known.lying.items()
        for place, held in where
        if place.kind not in ("workshop", "retained", "returns") and lot_id in known.lots
    ]
    standing = grid(
        stalls,
        Column("place", lambda one: one[0]),
        Column("batch", lambda one: one[1].code, bold=True),
        Column("product", lambda one: one[1].material),
        Column("there now", lambda one: known.amount(one[2], one[1]), right=True),
    )
    return Index(
        (
            Part("Batches", (_batches(known, batches),) if batches else (), "None yet."),
            Part("Lots", (_lots(known, lots),) if lots else (), "None yet."),
            Part("Products", (_products(known.recipes),) if known.recipes else (), "None yet."),
            Part("Customers", (_people(tuple(known.customers.values())),) if known.customers else (), "None yet."),
            Part("Suppliers", (_people(known.suppliers),) if known.suppliers else (), "None yet."),
            Part("Stalls and shops", (standing,) if stalls else (), "Nothing stands at a stall or a shop."),
        )
    )


def _batches(known: Everything, made: list[BatchRow]) -> Grid:
    return grid(
        made,
        Column("batch", lambda one: one.code, bold=True),
        Column("product", lambda one: one.product),
        Column("on", lambda one: show_date(one.on)),
        Column("status", lambda one: one.status),
        Column("bars", lambda one: str(one.made) if one.soap and one.yield_lot_id else "", right=True),
        Column("here", lambda one: str(known.bars_here(one)) if one.soap and one.yield_lot_id else "", right=True),
    )


def _lots(known: Everything, lots: list[LotRow]) -> Grid:
    return grid(
        lots,
        Column("lot", lambda lot: lot.code, bold=True),
        Column("material", lambda lot: lot.material),
        Column("their number", lambda lot: lot.supplier_number or ("unknown" if lot.number_unknown else "")),
        Column("from", lambda lot: lot.supplier or lot.batch_code or ""),
        Column("on", lambda lot: show_date(lot.on)),
        Column("status", lambda lot: in_words(lot.status)),
        Column("here", lambda lot: known.amount(lot.on_hand, lot) if lot.on_hand else "", right=True),
    )


def _products(recipes: tuple[ListedRecipe, ...]) -> Grid:
    return grid(
        recipes,
        Column("product", lambda one: one.name, bold=True),
        Column("short name", lambda one: one.code),
        Column("process", lambda one: one.process),
        Column("batches", lambda one: str(one.batches), right=True),
    )


def _people(cards: tuple[CustomerCard | SupplierCard, ...]) -> Grid:
    return grid(
        cards,
        Column("name", lambda one: one.name, bold=True),
        Column("telephone", lambda one: one.phone or "not known here"),
        Column("person", lambda one: one.person or ""),
        Column("email", lambda one: one.email or ""),
    )
