"""The words a ledger stores, each list once; the guards of the file and every signature take them from here."""

from collections.abc import Iterable
from typing import Literal, TypeVar, get_args

from ledger.errors import BadInput

# Grams or ounces, with their own degrees unless another is said: metric F weighs in grams and reads in Fahrenheit.
Units = Literal["metric", "us", "metric F", "us C"]
CustomerKind = Literal["shop", "person"]
MaterialKind = Literal[
    "fat", "alkali", "liquid", "additive", "fragrance", "botanical", "colourant", "packaging", "intermediate", "rework",
    "soap",
]  # fmt: skip
AlkaliKind = Literal["NaOH", "KOH"]
PlaceKind = Literal["workshop", "stall", "retained", "returns", "consignment"]  # consignment: hers, at a shop
Process = Literal["cold", "hot", "infusion", "blend", "rebatch", "portion", "combine", "rework"]
Way = Literal[
    "received", "consumed", "yielded", "moved", "sold", "dispatched", "given", "returned", "counted", "wasted"
]  # how a lot moves
Verdict = Literal["accepted", "rejected", "on hold", "passed", "released", "discarded"]
DeviationVerdict = Literal["accepted", "rework", "reject", "corrected"]  # corrected: the reading was
# Of a line: what it is in the recipe; a thing weighed into an infusion or a blend goes by its own kind.
Role = Literal[
    "fat", "alkali", "liquid", "additive", "fragrance", "botanical", "colourant", "intermediate", "part", "rework",
    "packaging", "dough",
]  # fmt: skip
UsedAs = Role | MaterialKind  # of a lot that was used: what it was in the recipe or, on no line of it, its kind
Stage = Literal["in the fats", "with the lye", "at trace", "after the cook", "in the pot", "packing"]
EquipmentKind = Literal["scale", "thermometer", "pH meter"]
UpkeepKind = Literal["cleaning", "training", "supplier approval", "self-inspection"]
ReadingUnit = Literal["mg", "uL", "milli-C", "milli-pH", "min", "ppm"]
SaleKind = Literal["sale", "return", "credit"]
LineKind = Literal["bars", "other", "difference", "carriage"]  # other: goods that are not in the ledger
PaidBy = Literal["cash", "card", "bank", "other"]
FeeKind = Literal["pitch", "card", "post", "commission", "other"]
InvoiceKind = Literal["invoice", "credit note"]
CarriageBy = Literal["value", "mass"]
RejectedBars = Literal["load the good", "written off"]
WorkStage = Literal["making", "cutting", "finishing", "wrapping", "other"]
CostRateKind = Literal["hour", "batch"]
CodeOn = Literal["bar", "tray"]  # where the batch code of bars without a label is
# What a decision by name can be about; no guard holds these, since a row of it only says what it says.
Subject = Literal[
    "superfat", "skin", "cure", "drying", "check", "prohibited", "assessment", "notification", "labels", "bare"
]  # fmt: skip
RecallStepKind = Literal[
    "told", "answered", "returned", "destroyed", "notice", "insurer", "authority", "class", "level", "hazard", "note"
]
Word = TypeVar("Word", bound=str)
LIKELY_NOTHING = "likely nothing"  # of a superfat that is above zero as reckoned
# Notes of a weight that nobody read from the scale: taken from the plan, what a way out comes to, or a volume.
NOT_READ = "not read"
AS_PLANNED, AS_RECKONED = f"as planned, {NOT_READ}", f"as reckoned, {NOT_READ}"
MEASURED = f"measured as {{}}, {NOT_READ}"
READ_AS = "read as "  # and behind it the weight as it was typed, in another unit than the ledger shows
EVERY = "every"  # what a decision of format 5 or earlier covers of a subject: it did not say which doubts it was for

# The columns that hold nothing but such words, by table; the guards refuse any other.
COLUMNS: dict[tuple[str, str], tuple[str, ...]] = {
    ("settings_revision", "units"): get_args(Units),
    ("customer", "kind"): get_args(CustomerKind),
    ("material", "kind"): get_args(MaterialKind),
    ("material_revision", "alkali_kind"): get_args(AlkaliKind),
    ("place", "kind"): get_args(PlaceKind),
    ("batch", "process"): get_args(Process),
    ("movement", "kind"): get_args(Way),
    ("decision", "verdict"): get_args(Verdict),
    ("deviation_decision", "verdict"): get_args(DeviationVerdict),
    ("equipment", "kind"): get_args(EquipmentKind),
    ("upkeep", "kind"): get_args(UpkeepKind),
    ("plan_line", "role"): get_args(Role),
    ("plan_line", "stage"): get_args(Stage),
    ("recipe_figures", "process"): get_args(Process),
    ("sold_bare", "code_on"): get_args(CodeOn),
    ("sale", "kind"): get_args(SaleKind),
    ("sale_line", "kind"): get_args(LineKind),
    ("payment", "way"): get_args(PaidBy),
    ("fee", "kind"): get_args(FeeKind),
    ("invoice", "kind"): get_args(InvoiceKind),
    ("delivery", "carriage_by"): get_args(CarriageBy),
    ("settings_revision", "rejected_bars"): get_args(RejectedBars),
    ("work", "stage"): get_args(WorkStage),
    ("cost_rate", "kind"): get_args(CostRateKind),
    ("recall_step", "kind"): get_args(RecallStepKind),
}

# The columns in which she writes what she likes, by table: an erasure may blank them, and the guards let it. A code is
# made from a name. What she writes elsewhere stays, in STAYS, though it may name a person: who did and decided what is
# what a record is for, a recall asks by the number on a drum, and the law asks for the name on a label.
FREE_TEXT: dict[str, tuple[str, ...]] = {
    "entry": ("said",),
    "erasure": ("reason",),
    "supplier": ("code",),
    "supplier_revision": ("name", "note"),
    "customer": ("code",),
    "customer_revision": ("name", "note"),
    "material": ("code",),
    "material_revision": ("name", "inci", "sap_source", "note", "inci_sodium", "inci_potassium"),
    "place": ("code", "name"),
    "delivery": ("note_number",),
    "recipe": ("code",),
    "recipe_version": ("name", "source"),
    "recipe_figures": ("figures",),
    "assessment": ("source",),
    "assessment_covers": ("inci", "named", "word"),
    "batch": ("portion",),
    "lot": ("certificate",),
    "movement": ("note",),
    "reading": ("what", "text", "mark", "method"),
    "decision": ("reason",),
    "decision_doubt": ("doubt",),
    "deviation": ("subject", "found", "done"),
    "deviation_decision": ("reason", "done"),
    "finished_check": ("what", "found"),
    "retained_sample": ("kept_at",),
    "attachment": ("name",),
    "label_run": ("layout", "text", "view", "layout_source", "sheet_source"),
    "label_approval": ("text",),
    "label_words": ("questioned", "reason"),
    "first_supply": ("whom",),
    "sold_bare": ("notice", "reason"),
    "constituent": ("name", "source"),
    "name_meant": ("name", "reason"),
    "peroxide": ("source",),
    "skin_limit": ("constituent", "certificate", "amendment"),
    "equipment": ("code",),
    "equipment_revision": ("name", "note"),
    "equipment_check": ("note",),
    "upkeep": ("what",),
    "complaint": ("bought", "what"),
    "complaint_step": ("action",),
    "tax_rate": ("name",),
    "customer_order": ("note",),
    "order_end": ("reason",),
    "sale": ("whom", "terms"),
    "sale_line": ("words",),
    "payment": ("note",),
    "fee": ("note",),
    "recall": ("reason", "hazard", "found_by"),
    "recall_step": ("whom", "how", "words"),
    "recall_close": ("conclusion", "reason"),
}
STAYS: dict[str, tuple[str, ...]] = {
    "entry": ("who",),
    "decision": ("by",),
    "deviation_decision": ("by",),
    "name_meant": ("by",),
    "finished_check": ("by",),
    "equipment_check": ("by",),
    "upkeep": ("by",),
    "label_approval": ("by",),
    "label_words": ("by",),
    "assessment_covers": ("by",),
    "first_supply": ("by",),
    "sold_bare": ("by",),
    "complaint": ("decided_by",),
    "complaint_step": ("by", "decided_by"),
    "recall": ("by", "question"),
    "recall_step": ("by",),
    "recall_close": ("by",),
    "order_end": ("by",),
    "assumed_ticked": ("by",),
    "work": ("by",),
    "lot": ("supplier_number",),
    "settings_revision": ("business", "phone", "maker", "web", "line", "tax_number"),
    "market_address": ("name", "address"),
}


def known(text: str, words: Iterable[Word]) -> Word | None:
    """Which of a list of words a text from outside is, letter by letter; None for any other."""
    return next((word for word in words if word == text), None)


def checked(text: str, words: Iterable[Word], *, what: str) -> Word:
    """The same; raises BadInput for a text that is not what it should be."""
    word = known(text, words)
    if word is None:
        raise BadInput(f"'{text}' is not {what}; write {' or '.join(words)}.")
    return word


_IN_PIECES: tuple[MaterialKind, ...] = ("packaging", "soap")


def in_pieces(kind: MaterialKind) -> bool:
    """Whether a kind of material is counted in pieces; all others are weighed, in mg."""
    return kind in _IN_PIECES
