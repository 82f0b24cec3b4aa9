"""Reading an assessor's figures, and what a file may not say."""

from datetime import date

import pytest

from ledger.domain.release.assessment import Bounds, Notification, read_assessment
from ledger.errors import BadInput

WHOLE = """
assessor = "R. Lund"
reference = "QR-114"
on = 2026-03-03
until = 2029-03-02
process = ["cold", "Hot"]
markets = ["eu", "gb"]
superfat = [3, 8.5]
durability_months = 24

[[ingredient]]
inci = "Olea  europaea Fruit Oil"
lowest_percent = 30
highest_percent = 60.1234

[[ingredient]]
inci = "Water"
highest_percent = 25

[[fragrance]]
inci = "LAVANDULA ANGUSTIFOLIA OIL"
highest_percent = 1.12

[[notification]]
market = "EU"
reference = "N-7"
on = 2026-03-10
"""


def test_the_file_is_read_with_shares_in_ppm_exactly() -> None:
    read = read_assessment(WHOLE, file="bar.toml")
    assert (read.assessor, read.reference, read.on, read.until) == (
        "R. Lund", "QR-114", date(2026, 3, 3), date(2029, 3, 2),
    )  # fmt: skip
    assert (read.process, read.markets) == (("cold", "hot"), ("eu", "gb"))
    assert read.superfat_ppm == (30_000, 85_000)  # 3 % and 8.5 %
    assert read.durability_months == 24
    # 60.1234 % is 601 234 ppm; 1.12 % is 11 200 ppm, though as floating point 1.12 * 10 000 is above 11 200
    assert read.ingredients == (
        Bounds("OLEA EUROPAEA FRUIT OIL", 300_000, 601_234), Bounds("AQUA", 0, 250_000),
    )  # fmt: skip
    assert read.fragrances == (Bounds("LAVANDULA ANGUSTIFOLIA OIL", 0, 11_200),)
    assert read.notifications == (Notification("eu", "N-7", date(2026, 3, 10)),)


def test_the_same_name_may_stand_as_an_ingredient_and_as_a_fragrance() -> None:
    text = WHOLE.replace('inci = "Water"', 'inci = "Lavandula angustifolia oil"')
    read = read_assessment(text, file="bar.toml")
    assert read.ingredients[1].inci == read.fragrances[0].inci


def test_what_need_not_be_said_may_be_left_out() -> None:
    keys = ("until", "superfat", "durability")
    kept = [line for line in WHOLE.split("[[fragrance]]")[0].splitlines() if not line.startswith(keys)]
    read = read_assessment("\n".join(kept), file="bar.toml")
    assert (read.until, read.superfat_ppm, read.durability_months) == (None, None, None)
    assert (read.fragrances, read.notifications) == ((), ())


LUND, ON, HIGHEST = 'assessor = "R. Lund"', "on = 2026-03-03", "highest_percent = 25"


# line 1 of the file is empty: the assessor stands on line 2, the superfat on line 8, the ingredients from line 11
@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        (LUND, "", 'bar.toml: assessor is missing; write assessor = "…".'),
        (LUND, "assessor = 7", 'line 2: assessor is a word, in quotes; write assessor = "…".'),
        (LUND, "asessor = 'R. Lund'", "line 2: 'asessor' is not known here; did you mean assessor?"),
        (LUND, 'assessor = "R. Lund', "line 2"),
        ('reference = "QR-114"\n', "", 'reference is missing; write reference = "…".'),
        (f"{ON}\n", "", "on is missing; write on = 2026-03-03"),
        (ON, 'on = "3 Mar 2026"', "line 4: on is a day, without quotes or time; write on = 2026-03-03."),
        (ON, "on = 2026-03-03T10:00:00", "line 4: on is a day, without quotes or time"),
        ("until = 2029", "until = 2025", "line 5: until lies before on"),
        ('process = ["cold", "Hot"]\n', "", 'process is missing; write process = ["cold"].'),
        ('["cold", "Hot"]', '"cold"', 'line 6: process is a list of words in quotes; write process = ["cold"].'),
        ('["cold", "Hot"]', "[]", "line 6: process is a list"),
        ('["cold", "Hot"]', '["warm"]', "line 6: process 'warm' is not known here; write one or more of cold, hot"),
        ('["eu", "gb"]', '["eu", 4]', 'line 7: markets is a list of words in quotes; write markets = ["eu", "gb"].'),
        ("[3, 8.5]", "5", "line 8: superfat is a range, from and to; write superfat = [3, 8]."),
        ("[3, 8.5]", "[8, 3]", "line 8: superfat runs from the lower to the higher"),
        ("[3, 8.5]", '[3, "8"]', "line 8: superfat is a number; write it without quotes or unit."),
        ("superfat = [3", "supefat = [3", "line 8: 'supefat' is not known here; did you mean superfat?"),
        ("durability_months = 24", "durability_months = 24.5", "line 9: durability_months is a whole number."),
        ("lowest_percent = 30", "lowest_percent = 61", "line 11 [ingredient]: lowest_percent of OLEA EUROPAEA"),
        ("60.1234", "60.12345", "line 14 [ingredient]: highest_percent = 60.12345 is too fine; write four decimals"),
        ("60.1234", "101", "highest_percent = 101 cannot be; write a number above 0 up to 100."),
        ("60.1234", "nan", "highest_percent = nan cannot be"),
        (HIGHEST, "", "line 16 [ingredient]: highest_percent is missing for AQUA; write highest_percent = 60."),
        (HIGHEST, "durability_months = 24", "line 18 [ingredient]: 'durability_months' is not known here; it belongs"),
        (HIGHEST, "highest_percent = true", "highest_percent is a number"),
        ('inci = "Water"\n', "", 'line 16 [ingredient]: inci is missing; write inci = "…".'),
        ('"Water"', '"olea europaea fruit oil"', "line 17 [ingredient]: OLEA EUROPAEA FRUIT OIL stands here a second"),
        ("[[fragrance]]", "[[fragance]]", "[fragance]: 'fragance' is not known here; did you mean fragrance?"),
        ('market = "EU"', 'market = "us"', "line 25 [notification]: market 'us' is not among the markets assessed"),
        ("on = 2026-03-10", "", "[notification]: on is missing; write on = 2026-03-03"),
        ("24", "9" * 5000, "the file cannot be read; a number in it is too long"),
    ],
)  # fmt: skip
def test_a_bad_file_is_named_in_one_line_with_what_to_write(old: str, new: str, said: str) -> None:
    assert old in WHOLE
    with pytest.raises(BadInput) as caught:
        read_assessment(WHOLE.replace(old, new, 1), file="bar.toml")
    message = str(caught.value)
    assert message.startswith("bar.toml")
    assert said in message
    assert len(message.splitlines()) == 1


def test_a_market_is_notified_once_and_some_ingredient_is_named() -> None:
    with pytest.raises(BadInput, match="'eu' stands here a second time"):
        read_assessment(f"{WHOLE}[[notification]]{WHOLE.split('[[notification]]')[1]}", file="bar.toml")
    with pytest.raises(BadInput, match=r"write an \[\[ingredient\]\] part for each"):
        read_assessment(WHOLE.split("[[ingredient]]")[0], file="bar.toml")
