"""Materials, and what is stated of them."""

from datetime import date

from sqlalchemy import String
from sqlmodel import Field

from ledger.storage.tables.entry import Fact
from ledger.units.words import (
    AlkaliKind,
    MaterialKind,
)


class Material(Fact, table=True):
    """A kind of thing: an oil, a lye, a wrapper, a soap."""

    code: str
    kind: MaterialKind = Field(sa_type=String)


class MaterialRevision(Fact, table=True):
    """What is known of a material; the latest counts."""

    __tablename__ = "material_revision"
    material_id: int
    name: str
    inci: str | None = None
    reference_key: str | None = None
    sap_low_mg_per_kg: int | None = None
    sap_high_mg_per_kg: int | None = None
    sap_source: str | None = None
    alkali_kind: AlkaliKind | None = Field(default=None, sa_type=String)
    purity_ppm: int | None = None
    density_mg_per_ml: int | None = None
    note: str | None = None
    inci_sodium: str | None = None
    inci_potassium: str | None = None
    acid_koh_mg_per_kg: int | None = None
    water_ppm: int | None = None


class Constituent(Fact, table=True):
    """What an oil or a fragrance contains, as its supplier states it for a lot or in general."""

    material_id: int
    lot_id: int | None = None
    name: str
    share_ppm: int
    source: str
    stated: str | None = None


class NameMeant(Fact, table=True):
    """What a person says that a name in statements is, which is not known here; no `meant`: no entry's."""

    __tablename__ = "name_meant"
    material_id: int | None = None
    name: str
    meant: str | None = None
    on: date
    by: str
    reason: str


class Peroxide(Fact, table=True):
    """The peroxide value of a material or of one lot of it; the latest counts."""

    material_id: int
    lot_id: int | None = None
    umol_per_l: int
    source: str


class SkinLimit(Fact, table=True):
    """The highest share in the finished product that a certificate allows."""

    __tablename__ = "skin_limit"
    material_id: int | None = None
    constituent: str | None = None
    limit_ppm: int
    certificate: str
    amendment: str | None = None
    category: str
    dated: date
