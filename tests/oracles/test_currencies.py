"""The currencies against ISO 4217 as the iso-codes project publishes it (pycountry)."""

import pycountry

from ledger.units.currencies import DECIMALS

# ISO 4217 lists these too, but nobody is paid in them: units of account, funds, and one too new for a known minor unit.
NOT_MONEY = {"BOV", "CHE", "CHW", "CLF", "COU", "MXV", "USN", "UYI", "UYW", "XAD"}
# Metals, bond units, the drawing right, the test code: ISO 4217 gives them no minor unit ("N.A.").
WITHOUT_MINOR_UNIT = {
    "XAG", "XAU", "XBA", "XBB", "XBC", "XBD", "XDR", "XPD", "XPT", "XSU", "XTS", "XUA", "XXX",
}  # fmt: skip


def test_every_currency_of_the_standard_is_known_and_no_other_but_the_withdrawn() -> None:
    listed = {one.alpha_3 for one in pycountry.currencies} - NOT_MONEY - WITHOUT_MINOR_UNIT
    assert DECIMALS.keys() - listed <= {"BGN"}  # withdrawn with the euro in Bulgaria
    assert listed <= DECIMALS.keys()


def test_decimals_of_those_that_are_not_hundredths() -> None:
    # ISO 4217 list one, column "Mnr unt": thousandths, and none at all
    assert {code for code, digits in DECIMALS.items() if digits == 3} == {
        "BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND",
    }  # fmt: skip
    assert {code for code, digits in DECIMALS.items() if digits == 0} == {
        "BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW", "PYG", "RWF", "UGX", "VND", "VUV", "XAF", "XOF", "XPF",
    }  # fmt: skip
