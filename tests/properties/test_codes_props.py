"""Every slip of one figure and every swap of two neighbours in a code is caught."""

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.errors import BadInput, Refused
from ledger.units.codes import batch_code, lot_code, read_batch_code, read_lot_code, supplier_number_key

BATCH = st.builds(batch_code, st.integers(2000, 2099), st.integers(1, 9_999))
LOT = st.builds(lot_code, st.integers(1, 99_999))


def slips(code: str) -> list[str]:
    """Every code with one figure changed for another (or X at the end), and with two unlike neighbours swapped."""
    found = []
    for place, sign in enumerate(code):
        signs = "0123456789X" if place == len(code) - 1 else "0123456789"
        found += [code[:place] + other + code[place + 1 :] for other in signs if other != sign]
        if place and code[place - 1] != sign:
            found.append(code[: place - 1] + sign + code[place - 1] + code[place + 1 :])
    return found


@given(code=BATCH)
def test_a_batch_code_reads_back_and_every_slip_is_caught(code: str) -> None:
    assert read_batch_code(code) == code
    assert read_batch_code(code.replace("-", "").lower()) == code
    for slip in slips(code.replace("-", "")):
        # An X that left its place at the end is no code at all; any other slip still looks like one.
        with pytest.raises(BadInput if "X" in slip[:-1] else Refused):
            read_batch_code(slip)


@given(code=LOT)
def test_a_lot_code_reads_back_and_every_slip_is_caught(code: str) -> None:
    assert read_lot_code(code) == code
    for slip in slips(code.removeprefix("L").replace("-", "")):
        with pytest.raises(BadInput if "X" in slip[:-1] else Refused):
            read_lot_code(f"L{slip}")


# A figure doubled or a nought put in is the slip a check character alone need not catch.
@given(code=BATCH, data=st.data())
def test_a_code_with_a_nought_put_in_is_never_the_same_batch(code: str, data: st.DataObject) -> None:
    plain = code.replace("-", "")
    place = data.draw(st.integers(0, len(plain) - 1))
    with suppress(Refused, BadInput):
        assert read_batch_code(plain[:place] + "0" + plain[place:]) != code


@given(
    number=st.text("0123456789", min_size=1, max_size=10),
    prefix=st.sampled_from(["LOT", "LOT NO", "LOT NUMBER", "BN", "BATCH", "BATCH NO", "B/N", "LOTE", "CHARGE", "L/N"]),
    between=st.sampled_from(["", " ", ": ", "-", ". ", " #", "/"]),
)
def test_a_prefix_never_changes_which_lot_is_meant(number: str, prefix: str, between: str) -> None:
    assert supplier_number_key(f"{prefix}{between}{number}") == supplier_number_key(number) == number
