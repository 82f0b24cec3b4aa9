"""A short name is made of the name, or checked as typed."""

import pytest

from ledger.errors import BadInput
from ledger.units.shortcode import check_code, short_code


def test_a_short_name_is_the_name_in_small_letters() -> None:
    assert short_code("Tarnlow Oils & Co.", ()) == "tarnlow-oils-co"
    assert short_code("Crème Brûlée", ()) == "creme-brulee"
    assert short_code("Ægir Øl & Straßner", ()) == "aegir-ol-strassner"  # it was gir-l-strassner


def test_a_taken_short_name_gets_a_number() -> None:
    assert short_code("Oak", ["oak"]) == "oak-2"
    assert short_code("Oak", ["oak", "oak-2"]) == "oak-3"


def test_a_name_without_letters_needs_a_short_name_typed() -> None:
    with pytest.raises(BadInput, match="add --code NAME"):
        short_code("!!!", ())


def test_a_typed_short_name_is_checked() -> None:
    assert check_code("oak-2", ["oak"], noun="supplier") == "oak-2"
    for code in ("", "Oak", "oak 2", "-oak", "oak-"):
        with pytest.raises(BadInput, match="cannot be a short name"):
            check_code(code, (), noun="supplier")
    with pytest.raises(BadInput, match="There is a supplier 'oak' already"):
        check_code("oak", ["oak"], noun="supplier")
