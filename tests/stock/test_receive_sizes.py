"""A delivery that is ten times what ever came, or at ten times the price, is asked about; one beside it is not."""

from datetime import date
from typing import Any

import pytest

from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.stock.receive import DeliveryLine, DeliveryNote, doubts, receive

ON = date(2026, 5, 20)
KG = 1_000_000


def asked(shop: Any, *lines: DeliveryLine) -> tuple[str, ...]:
    return doubts(shop.rows(), DeliveryNote("tarnlow", ON, lines))


@pytest.fixture
def butter(shop: Any) -> Any:
    """Two deliveries of a butter: 2 kg for 20.00 and 3 kg for 33.00, so 10 to 11 a kilogram."""
    add_material(shop.book, MaterialFacts("cocoa butter", "Theobroma Cacao Seed Butter"), kind="additive", code=None)
    for number, (mg, cost) in enumerate(((2 * KG, 2000), (3 * KG, 3300))):
        receive(shop.book, DeliveryNote("tarnlow", ON, (DeliveryLine("cocoa butter", mg, f"B{number}", cost),)))
    return shop


@pytest.mark.parametrize(("mg", "doubted"), [(30 * KG - 1, False), (30 * KG, True), (5000 * KG, True)])
def test_ten_times_the_most_that_ever_came_is_asked_about(butter: Any, mg: int, doubted: bool) -> None:
    found = asked(butter, DeliveryLine("cocoa butter", mg, "B9", None))
    assert bool(found) is doubted
    if mg == 5000 * KG:
        words = "5 000.00 kg of cocoa butter are 10 times or more the most that ever came at once, 3 000 g."
        assert [one.replace("\u00a0", " ") for one in found] == [words]


@pytest.mark.parametrize(
    ("cost", "doubted"), [(100, True), (101, False), (2200 - 1, False), (11_000 - 1, False), (11_000, True)]
)
def test_a_tenth_or_ten_times_of_every_price_so_far_is_asked_about(butter: Any, cost: int, doubted: bool) -> None:
    """A kilogram cost 10.00 and 11.00: a tenth of the lower is 1.00, ten times the higher 110.00."""
    assert bool(asked(butter, DeliveryLine("cocoa butter", KG, "B9", cost))) is doubted


def test_a_free_line_and_one_of_unknown_cost_have_no_price(butter: Any) -> None:
    assert asked(butter, DeliveryLine("cocoa butter", KG, "B8", 0), DeliveryLine("cocoa butter", KG, "B9", None)) == ()


@pytest.mark.parametrize(("mg", "doubted"), [(200 * KG, False), (200 * KG + 1, True)])
def test_of_what_never_came_more_than_a_small_workshop_takes_is_asked_about(shop: Any, mg: int, doubted: bool) -> None:
    add_material(shop.book, MaterialFacts("cocoa butter", "Theobroma Cacao Seed Butter"), kind="additive", code=None)
    assert bool(asked(shop, DeliveryLine("cocoa butter", mg, "B9", None))) is doubted


@pytest.mark.usefixtures("butter")
def test_it_is_booked_once_she_says_so(run: Any) -> None:
    words = ("receive", "tarnlow", "--line", "cocoa butter; 5000 kg; lot B9; 30.00", "--on", "2026-05-20")
    refused = run(*words, input="n\n", code=1)
    assert "the most that ever came at once, 3 000 g." in " ".join(refused.stderr.split())
    run(*words, "--yes")
