"""The tables as the writing side sees them; the migrations alone make them in the file."""

from datetime import date

from sqlalchemy import String
from sqlmodel import Field, SQLModel

from ledger.domain.words import (
    AlkaliKind,
    CustomerKind,
    DeviationVerdict,
    EquipmentKind,
    MaterialKind,
    PlaceKind,
    Process,
    ReadingUnit,
    Role,
    Stage,
    Subject,
    Units,
    UpkeepKind,
    Verdict,
    Way,
)


class Entry(SQLModel, table=True):
    """One operation: who wrote what and when, chained to the entry before by digest."""

    id: int | None = Field(default=None, primary_key=True)
    recorded_at: str
    who: str
    verb: str
    said: str
    reverses: int | None = None
    program: str
    previous: str
    digest: str


class Fact(SQLModel):
    """What every row of an entry carries."""

    id: int | None = Field(default=None, primary_key=True)
    entry_id: int = 0


class Personal(Fact, table=True):
    """Stands for one person's details; only their salted digest is in the chain."""

    salted_digest: str


class PersonalText(SQLModel, table=True):
    """The details themselves, the only rows that may be erased."""

    __tablename__ = "personal_text"
    personal_id: int = Field(primary_key=True)
    salt: str
    name: str | None = None
    phone: str | None = None
    email: str | None = None
    address: str | None = None
    health: str | None = None


class Erasure(Fact, table=True):
    """The decision to erase one person's details."""

    personal_id: int
    reason: str


class SettingsRevision(Fact, table=True):
    """Who she is and how the ledger speaks; the latest counts."""

    __tablename__ = "settings_revision"
    business: str
    country: str
    currency: str
    units: Units = Field(sa_type=String)
    time_zone: str
    phone: str | None = None
    labour_minor_per_hour: int | None = None
    scale_step_mg: int | None = None


class MarketAddress(Fact, table=True):
    """The responsible person and address for one market."""

    __tablename__ = "market_address"
    settings_revision_id: int
    market: str
    name: str
    address: str


class Supplier(Fact, table=True):
    """Who supplies; `own` is her own garden or kitchen."""

    code: str
    own: int


class SupplierRevision(Fact, table=True):
    """What is known of a supplier; the latest counts."""

    __tablename__ = "supplier_revision"
    supplier_id: int
    name: str
    personal_id: int | None = None
    note: str | None = None


class Customer(Fact, table=True):
    """A shop or a person her bars go to."""

    code: str
    kind: CustomerKind = Field(sa_type=String)


class CustomerRevision(Fact, table=True):
    """What is known of a customer; the latest counts."""

    __tablename__ = "customer_revision"
    customer_id: int
    name: str | None = None
    personal_id: int | None = None
    note: str | None = None


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


class Place(Fact, table=True):
    """Where lots are: the workshop, a stall, the retained samples, the returns."""

    code: str
    name: str
    kind: PlaceKind = Field(sa_type=String)


class Delivery(Fact, table=True):
    """One delivery, with its note and carriage."""

    supplier_id: int
    note_number: str | None = None
    on: date
    carriage_minor: int = 0


class Recipe(Fact, table=True):
    """A recipe, and the material it gives."""

    code: str
    material_id: int


class RecipeVersion(Fact, table=True):
    """One version of a recipe: its text as it was given."""

    __tablename__ = "recipe_version"
    recipe_id: int
    number: int
    name: str
    source: str


class RecipeFigures(Fact, table=True):
    """What a recipe version says, as it was understood when it was added."""

    __tablename__ = "recipe_figures"
    recipe_version_id: int
    process: Process = Field(sa_type=String)
    cure_days: int
    usable_from_days: int | None = None
    format: int
    figures: str


class Batch(Fact, table=True):
    """The work that turns lots into other lots."""

    code: str
    process: Process = Field(sa_type=String)
    recipe_version_id: int | None = None
    material_id: int
    on: date
    bars_planned: int | None = None
    part_of: int | None = None
    portion: str | None = None


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


class PlanLine(Fact, table=True):
    """One numbered line of a planned batch."""

    __tablename__ = "plan_line"
    batch_id: int
    number: int
    role: Role = Field(sa_type=String)
    material_id: int
    lot_id: int | None = None
    target: int
    low: int
    high: int
    stage: Stage = Field(sa_type=String)
    in_demand: int | None = None


class PlanTarget(Fact, table=True):
    """A new target for a line, after a mis-weighing was corrected; the latest counts."""

    __tablename__ = "plan_target"
    plan_line_id: int
    target: int
    low: int
    high: int


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


class Reading(Fact, table=True):
    """Something measured or seen while a batch was made or cured."""

    batch_id: int
    on: date
    at: str | None = None
    what: str
    value: int | None = None
    unit: ReadingUnit | None = Field(default=None, sa_type=String)
    text: str | None = None
    plan_line_id: int | None = None
    corrects: int | None = None
    mark: str | None = None
    method: str | None = None
    equipment_id: int | None = None


class Deviation(Fact, table=True):
    """Something outside a limit, or gone wrong; open until a person decides."""

    batch_id: int
    on: date
    subject: str
    found: str
    done: str | None = None


class DeviationDecision(Fact, table=True):
    """What a named person decided about a deviation; the latest counts."""

    __tablename__ = "deviation_decision"
    deviation_id: int
    verdict: DeviationVerdict = Field(sa_type=String)
    on: date
    by: str
    reason: str
    done: str | None = None


class Equipment(Fact, table=True):
    """A scale, a thermometer, a pH meter."""

    code: str
    kind: EquipmentKind = Field(sa_type=String)


class EquipmentRevision(Fact, table=True):
    """What is known of a piece of equipment; the latest counts."""

    __tablename__ = "equipment_revision"
    equipment_id: int
    name: str
    every_days: int | None = None
    expected: int | None = None
    tolerance: int | None = None
    retired: int = 0
    note: str | None = None


class EquipmentCheck(Fact, table=True):
    """One try of a piece of equipment against something known."""

    __tablename__ = "equipment_check"
    equipment_id: int
    on: date
    by: str
    expected: int
    found: int
    tolerance: int
    passed: int
    note: str | None = None


class Upkeep(Fact, table=True):
    """A dated note of cleaning, training, a supplier's approval, or a self-inspection."""

    kind: UpkeepKind = Field(sa_type=String)
    on: date
    by: str
    what: str
    next_on: date | None = None
    supplier_id: int | None = None


class FinishedCheck(Fact, table=True):
    """One point looked at before the bars of a lot were released."""

    __tablename__ = "finished_check"
    lot_id: int
    on: date
    by: str
    what: str
    found: str
    good: int


class RetainedSample(Fact, table=True):
    """Bars set aside as samples: where they are kept, and until when."""

    __tablename__ = "retained_sample"
    lot_id: int
    on: date
    bars: int
    kept_at: str
    keep_until: date


class Decision(Fact, table=True):
    """What a named person decided about a lot or a batch."""

    lot_id: int | None = None
    batch_id: int | None = None
    verdict: Verdict = Field(sa_type=String)
    on: date
    by: str
    reason: str | None = None


class DecisionDoubt(Fact, table=True):
    """One doubt that a decision was given for."""

    __tablename__ = "decision_doubt"
    decision_id: int
    subject: Subject = Field(sa_type=String)
    doubt: str


class AttachedContent(SQLModel, table=True):
    """The bytes of a paper or picture, by SHA-256."""

    __tablename__ = "attached_content"
    digest: str = Field(primary_key=True)
    content: bytes


class Attachment(Fact, table=True):
    """A paper or picture attached to what it vouches for."""

    digest: str
    name: str
    kind: str
    lot_id: int | None = None
    batch_id: int | None = None
    recipe_id: int | None = None
    material_id: int | None = None


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


class Complaint(Fact, table=True):
    """What a customer reported."""

    on: date
    lot_id: int | None = None
    bought: str | None = None
    what: str
    serious: int | None = None
    decided_by: str | None = None
    personal_id: int | None = None
    bought_on: date | None = None
    place_id: int | None = None
    customer_id: int | None = None


class ComplaintStep(Fact, table=True):
    """What was done about a complaint; the latest word on seriousness and batch counts."""

    __tablename__ = "complaint_step"
    complaint_id: int
    on: date
    by: str
    action: str
    serious: int | None = None
    decided_by: str | None = None
    lot_id: int | None = None
    closes: int = 0


class Constituent(Fact, table=True):
    """What an oil or a fragrance contains, as its supplier states it for a lot or in general."""

    material_id: int
    lot_id: int | None = None
    name: str
    share_ppm: int
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


class Assessment(Fact, table=True):
    """The safety assessment of a product, as its text was given; the latest counts."""

    recipe_id: int
    source: str
