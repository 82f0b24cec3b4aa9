"""What is agreed with a customer, in words."""

from ledger.rows.sell.terms import Terms
from ledger.units.quantity import show_share
from ledger.units.wording import count


def terms_words(terms: Terms) -> str:
    """Sale or return or bought, and what is agreed beside that, in one line."""
    words = ["sale or return" if terms.consignment else "bought"]
    if terms.commission_ppm:
        words.append(f"the shop keeps {show_share(terms.commission_ppm)}")
    if terms.reduction_ppm:
        words.append(f"{show_share(terms.reduction_ppm)} off the price")
    if terms.pay_days is not None:
        words.append(f"pays in {count(terms.pay_days, 'day')}")
    if terms.country:
        words.append(f"goes to {terms.country}")
    return ", ".join(words)
