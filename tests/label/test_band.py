"""What stands on a band that a printer made, held against the label of a batch."""

import pytest

from ledger.domain.label.band import Declared, band_differences, check_band
from ledger.errors import BadInput

BAND = """Plain Bar
Soap
Ingredients: Olea Europaea Fruit Oil, Cocos Nucifera Oil, Aqua, Sodium Hydroxide, Zea Mays Starch, Linalool.
Nuala Quill, Tidewrack Soaps,
3 Slip Lane, Port Emmer
Best used before the end of:"""
SAYS = Declared(
    heading="Ingredients",
    ingredients=(
        *("OLEA EUROPAEA FRUIT OIL", "COCOS NUCIFERA OIL", "AQUA", "SODIUM HYDROXIDE", "ZEA MAYS STARCH", "LINALOOL"),
    ),
    any_order=frozenset({"ZEA MAYS STARCH", "LINALOOL"}),
    said=(("product", "Plain Bar"), ("responsible person", "Nuala Quill, Tidewrack Soaps, 3 Slip Lane, Port Emmer")),
    durability=("Best used before the end of",),
    net_quantity="100 g",
)


def test_breaks_commas_and_capitals_make_no_difference() -> None:
    assert band_differences(BAND, SAYS) == ()


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        (", Linalool", "", "LINALOOL is in the batch and not on it"),
        (", Linalool", ", Linalool, Limonene", "Limonene is on it and not in the batch"),
        (
            "Olea Europaea Fruit Oil, Cocos Nucifera Oil",
            "Cocos Nucifera Oil, Olea Europaea Fruit Oil",
            "Cocos Nucifera Oil stands on it where the batch has OLEA EUROPAEA FRUIT OIL: the order is by weight",
        ),
        (
            "Sodium Hydroxide, Zea Mays Starch",
            "Zea Mays Starch, Sodium Hydroxide",
            "Zea Mays Starch stands on it where",
        ),
        ("Ingredients:", "Contains:", "it has no list that begins 'Ingredients:'"),
        (
            "3 Slip Lane",
            "4 Slip Lane",
            "the responsible person is not on it: Nuala Quill, Tidewrack Soaps, 3 Slip Lane",
        ),
        ("Plain Bar", "Oat Bar", "the product is not on it: Plain Bar"),
        ("Best used before the end of", "Best before", "and the date of the batch stands after 'Best used before"),
        ("Soap\n", "Soap 95 g\n", "it says 95 g, and the bars are declared at 100 g"),
    ],
)
def test_a_band_that_says_otherwise_is_told_with_the_difference(old: str, new: str, said: str) -> None:
    (found,) = band_differences(BAND.replace(old, new), SAYS)
    assert said in found


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("Zea Mays Starch, Linalool", "Linalool, Zea Mays Starch"),  # both may follow in any order
        ("Soap\n", "Soap 100g\n"),
        ("\nBest used before the end of:", ""),  # the sticker carries it whole
    ],
)
def test_what_a_band_may_do_otherwise_is_no_difference(old: str, new: str) -> None:
    assert old in BAND
    assert band_differences(BAND.replace(old, new), SAYS) == ()


def test_a_date_on_the_band_of_a_bar_with_a_period_after_opening_is_a_difference() -> None:
    (found,) = band_differences(BAND, SAYS._replace(durability=None))
    assert found.endswith("the batch has a period after opening, not a date")
    undated = BAND.replace("\nBest used before the end of:", "")
    assert band_differences(undated, SAYS._replace(durability=None)) == ()


def test_a_name_with_a_figure_after_its_comma_is_one_name() -> None:
    band = BAND.replace("Linalool.", "1,2-Hexanediol")
    names = (*SAYS.ingredients[:-1], "1,2-HEXANEDIOL")
    assert band_differences(band, SAYS._replace(ingredients=names, any_order=frozenset(names[-2:]))) == ()


def test_a_text_is_kept_a_particular_a_line_and_an_empty_one_is_refused() -> None:
    assert check_band("  Soap \n\n Ingredients:  Aqua\n", "Ingredients", file="band.txt") == "Soap\nIngredients: Aqua"
    with pytest.raises(BadInput, match=r"band.txt is empty"):
        check_band(" \n", None, file="band.txt")
    with pytest.raises(BadInput, match=r"has no line 'Ingredients: …'"):
        check_band("Soap", "Ingredients", file="band.txt")
    assert check_band("Soap", None, file="band.txt") == "Soap"
