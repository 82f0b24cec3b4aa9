"""A message opens with a capital and leaves the other letters alone."""

from ledger.units.wording import opening


def test_only_the_first_letter_is_raised() -> None:
    assert opening("the pH") == "The pH"
    assert opening("the weight of NaOH") == "The weight of NaOH"
    assert opening("") == ""
