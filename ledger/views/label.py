"""What is printed on the bars of one batch for one market."""

from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True)
class LabelText:
    """The particulars of one label, ready to be set; nothing here is a claim of compliance."""

    market: str  # "eu", "gb", "us", "ca"
    product: str
    function: str  # what it is: "Soap"
    net_quantity: str  # as it is printed, e.g. "100 g" or "Net Wt 3.5 oz (99 g)"
    net_mg: int
    ingredients_heading: str
    ingredients: str  # one line, comma-separated
    batch_code: str
    best_before: str | None  # as printed
    responsible_name: str
    responsible_address: str
    precautions: tuple[str, ...]
    made_on: date
    draft: bool  # not passed for packing: marked DRAFT
    remains: tuple[str, ...]  # what a person or a licensed assessor still has to decide
