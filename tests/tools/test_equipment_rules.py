"""What a scale, a thermometer or a pH meter should show, as typed and as shown."""

import pytest

from ledger.domain.tools.equipment import READ_WITH, parse_tolerance, parse_value, passes, show_difference, show_value
from ledger.errors import BadInput
from ledger.units.names import kind_meant


def test_each_kind_has_its_unit() -> None:
    assert parse_value("scale", "500 g", what="it") == 500_000
    assert parse_value("thermometer", "-0.3 C", what="it") == -300
    assert parse_value("thermometer", "32 F", what="it") == 0
    assert parse_value("pH meter", "7.00", what="it") == 7000


def test_a_tolerance_in_fahrenheit_is_a_difference() -> None:
    assert parse_tolerance("thermometer", "0.5 C") == 500
    assert parse_tolerance("thermometer", "1.8 F") == 1000  # 1.8 x 5/9 = 1
    assert parse_tolerance("scale", "1 g") == 1000
    with pytest.raises(BadInput, match="cannot be"):
        parse_tolerance("thermometer", "-1 C")


def test_just_at_the_tolerance_passes() -> None:
    assert passes(expected=7000, found=7050, tolerance=50)
    assert not passes(expected=7000, found=6949, tolerance=50)


def test_it_is_shown_in_the_unit_of_the_ledger() -> None:
    assert (show_value("scale", 500_000), show_difference("scale", 1000)) == ("500 g", "1 g")
    assert (show_value("thermometer", 0, "us"), show_difference("thermometer", 1000, "us")) == ("32.0 °F", "1.8 °F")
    assert (show_value("pH meter", 7000), show_difference("pH meter", 50)) == ("pH 7.00", "0.05")


def test_a_kind_is_known_by_its_start() -> None:
    assert kind_meant("PH", READ_WITH, noun="equipment") == "pH meter"
    with pytest.raises(BadInput, match="Did you mean scale"):
        kind_meant("scales", READ_WITH, noun="equipment")
    with pytest.raises(BadInput, match="not a kind"):
        kind_meant("", READ_WITH, noun="equipment")
    with pytest.raises(BadInput, match="between 0 and 14"):
        parse_value("pH meter", "70", what="it")
