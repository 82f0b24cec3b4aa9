"""Which names of a report mean an ingredient of a recipe."""

import pytest

from ledger.reference.inci_names import salt_of, same_as


@pytest.mark.parametrize(
    ("name", "report", "same"),
    [
        ("OLEA EUROPAEA FRUIT OIL", "SODIUM OLIVATE", True),
        ("OLEA EUROPAEA FRUIT OIL", "POTASSIUM OLIVATE", True),
        ("OLEA EUROPAEA FRUIT OIL", "SODIUM COCOATE", False),
        ("SODIUM OLIVATE", "OLEA EUROPAEA FRUIT OIL", True),
        ("COCOS NUCIFERA OIL", "Cocos Nucifera (Coconut) Oil", True),
        ("COCOS NUCIFERA OIL", "COCOS NUCIFERA FRUIT JUICE", False),
        ("OLEA EUROPAEA FRUIT OIL", "olive oil", True),
        ("ELAEIS GUINEENSIS OIL", "ELAEIS GUINEENSIS KERNEL OIL", False),  # palm, and palm kernel
        ("ELAEIS GUINEENSIS OIL", "SODIUM PALM KERNELATE", False),
        ("MEL", "Honey", True),
        ("SODIUM HYDROXIDE", "caustic soda", True),
        ("KAOLIN", "BENTONITE", False),
        ("LAVANDULA ANGUSTIFOLIA OIL", "Lavender Oil", True),
        ("LAVANDULA ANGUSTIFOLIA OIL", "LAVANDULA HYBRIDA OIL", False),
    ],
)
def test_one_ingredient_may_have_two_names(name: str, report: str, same: bool) -> None:
    assert same_as(name, [report, "AQUA"]) == (report if same else None)


def test_of_two_that_may_be_meant_none_is_taken() -> None:
    assert same_as("OLEA EUROPAEA FRUIT OIL", ["SODIUM OLIVATE", "OLIVE OIL"]) is None


def test_a_soap_named_holds_its_alkali() -> None:
    assert salt_of(["SODIUM OLIVATE"], "SODIUM HYDROXIDE")
    assert not salt_of(["SODIUM OLIVATE"], "POTASSIUM HYDROXIDE")
    assert not salt_of(["OLEA EUROPAEA FRUIT OIL"], "SODIUM HYDROXIDE")
