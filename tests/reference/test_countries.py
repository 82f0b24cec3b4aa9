"""In which country an address lies, by its last line as she gave it."""

import pytest

from ledger.reference.countries import country_named, country_of


@pytest.mark.parametrize(
    ("address", "code"),
    [
        ("3 Slip Lane, Port Emmer, Ireland", "IE"),
        ("3 Slip Lane; Port Emmer; IRELAND.", "IE"),
        ("3 Slip Lane, Port Emmer", None),  # a town alone says no country
        ("Ireland House, 4 Mill Row, Leeds", None),  # a country in the middle is part of a name
        ("3 Rue de France, Lyon", None),
        ("Lyon, France", "FR"),
        ("Gasse 2, 1010 Wien, Österreich", "AT"),
        ("Gasse 2, 1010 Wien, ÖSTERREICH", "AT"),
        ("4 Mill Row, Leeds LS1 4AB", "GB"),
        ("4 Mill Row, Leeds, United Kingdom", "GB"),
        ("4 Mill Row, Leeds, U.K.", "GB"),
        ("2 Quay, Belfast, Northern Ireland", "XI"),
        ("2 Quay, Belfast, Northern Ireland, UK", "XI"),
        ("2 Quay, Belfast BT1 1AA, UK", "XI"),
        ("5 Parade, Douglas, Isle of Man", "IM"),
        ("5 Parade, Douglas, IM1 2AB, United Kingdom", "IM"),
        ("1 Pier, St Helier, Jersey", "JE"),
        ("9 Elm St, Trenton, New Jersey", None),
        ("9 Elm St, Portland, OR 97201", "US"),
        ("9 Elm St, Portland, OR 97201-1234, USA", "US"),
        ("9 Elm St, Wilmington, DE", None),  # Delaware, or Germany
        ("7 Rue, Québec QC G1R 4P5", "CA"),
        ("", None),
        (" , ;", None),
    ],
)
def test_the_country_an_address_ends_with(address: str, code: str | None) -> None:
    assert country_of(address) == code


def test_a_country_has_an_english_name() -> None:
    assert [country_named(one) for one in ("IM", "XI", "US")] == ["Isle of Man", "Northern Ireland", "United States"]
