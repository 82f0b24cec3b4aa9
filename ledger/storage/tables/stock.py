"""Deliveries, lots, places and movements."""

from datetime import date

from sqlalchemy import String
from sqlmodel import Field

from ledger.storage.tables.entry import Fact
from ledger.units.words import (
    CarriageBy,
    PlaceKind,
    Way,
)


class Place(Fact, table=True):
    """Where lots are: the workshop, a stall, the retained samples, the returns."""

    code: str
    name: str
    kind: PlaceKind = Field(sa_type=String)
    customer_id: int | None = None  # of a consignment: at whose shop


class Delivery(Fact, table=True):
    """One delivery, with its note and carriage."""

    supplier_id: int
    note_number: str | None = None
    on: date
    carriage_minor: int = 0
    carriage_by: CarriageBy | None = Field(default=None, sa_type=String)  # None: by value


class Lot(Fact, table=True):
    """One traceable quantity of a material, from a supplier or from a batch."""

    code: str
    material_id: int
    on: date
    delivery_id: int | None = None
    supplier_id: int | None = None
    supplier_number: str | None = None
    supplier_number_key: str | None = None
    batch_id: int | None = None
    best_before: date | None = None
    cost_minor: int | None = None
    sap_low_mg_per_kg: int | None = None
    sap_high_mg_per_kg: int | None = None
    purity_ppm: int | None = None
    certificate: str | None = None
    mass_mg: int | None = None
    purity_high_ppm: int | None = None
    water_ppm: int | None = None


class Movement(Fact, table=True):
    """A signed quantity of a lot, at a place, on a date."""

    lot_id: int
    place_id: int
    on: date
    quantity: int
    kind: Way = Field(sa_type=String)
    batch_id: int | None = None
    plan_line_id: int | None = None
    customer_id: int | None = None
    money_minor: int | None = None
    note: str | None = None


class AssumedBatch(Fact, table=True):
    """A movement whose batch was assumed: its bars may as well be of this lot."""

    __tablename__ = "assumed_batch"
    movement_id: int
    lot_id: int


class AssumedTicked(Fact, table=True):
    """Somebody looked: the batch of that movement is as booked."""

    __tablename__ = "assumed_ticked"
    movement_id: int
    on: date
    by: str
