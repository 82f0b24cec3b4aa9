"""The finished views that tests draw, as fixtures; they and what draws them are imported when one is asked for."""

from typing import Any

import pytest


@pytest.fixture
def read() -> Any:
    """Read a drawn document back."""
    import drawn

    return drawn.read()


@pytest.fixture
def sheet() -> Any:
    """A cold process batch of 1 kg of fats in eight lines."""
    import drawn

    return drawn.sheet()


@pytest.fixture
def record() -> Any:
    """The record of that batch, released and mostly sold."""
    import drawn

    return drawn.record()


@pytest.fixture
def label() -> Any:
    """The EU label of a bar of 100 g with a list of ordinary length."""
    import drawn

    return drawn.label()


@pytest.fixture
def ticket() -> Any:
    """The price ticket of the same bars."""
    import drawn

    return drawn.ticket()


@pytest.fixture
def rack() -> Any:
    """The card of the same batch on the curing rack."""
    import drawn

    return drawn.rack()


@pytest.fixture
def jar() -> Any:
    """The label of a jar of lye."""
    import drawn

    return drawn.jar()


@pytest.fixture
def answer() -> Any:
    """The answer for one lot of olive oil that reached four batches, one of them through an infusion."""
    import drawn

    return drawn.answer()


@pytest.fixture
def recipe() -> Any:
    """A cold process recipe of 1 kg of fats in nine lines, with fifteen fatty acids."""
    import drawn

    return drawn.recipe()
