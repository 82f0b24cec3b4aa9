"""Print runs, approvals and counts of labels."""

from datetime import date

from sqlalchemy import String
from sqlmodel import Field

from ledger.storage.tables.entry import Fact
from ledger.units.words import CodeOn


class LabelRun(Fact, table=True):
    """Labels printed for one lot of bars."""

    __tablename__ = "label_run"
    lot_id: int
    on: date
    layout: str
    market: str
    count: int
    text: str
    text_digest: str
    view: str | None = None
    layout_source: str | None = None
    sheet_source: str | None = None
    start: int | None = None
    reprint_of: int | None = None
    view_format: int | None = None


class LabelApproval(Fact, table=True):
    """A named person approved what a label says, for one lot and market."""

    __tablename__ = "label_approval"
    lot_id: int
    market: str
    on: date
    by: str
    text: str
    text_digest: str


class LabelCount(Fact, table=True):
    """What became of the labels of one run; the latest counts."""

    __tablename__ = "label_count"
    label_run_id: int
    on: date
    used: int
    spoiled: int
    returned: int
    specimen: int | None = None  # kept with the record of the batch
    destroyed: int | None = None  # of the returned


class LabelWords(Fact, table=True):
    """Questioned words that a named person let stand for a market, by the digest of what was read."""

    __tablename__ = "label_words"
    market: str
    digest: str
    questioned: str
    reason: str
    by: str
    on: date


class FirstSupply(Fact, table=True):
    """When and to whom bars under an earlier list of allergens were first supplied, as a person said."""

    __tablename__ = "first_supply"
    lot_id: int
    on: date
    bars: int
    back: int  # 1: they stand here again, put back on sale; 0: they left
    supplied_on: date
    whom: str
    by: str


class SoldBare(Fact, table=True):
    """That bars of a product are sold without a label at an outlet, or from a day on no more; the latest counts."""

    __tablename__ = "sold_bare"
    recipe_id: int
    place_id: int | None = None  # a stall; else who buys them
    customer_id: int | None = None
    on: date
    bare: int  # 1: without; 0: with a label again
    notice: str | None = None  # which stands there
    code_on: CodeOn | None = Field(default=None, sa_type=String)  # where the batch code is
    reason: str
    by: str
