"""Recipes, their versions and assessments."""

from sqlalchemy import String
from sqlmodel import Field

from ledger.storage.tables.entry import Fact
from ledger.units.words import (
    Process,
)


class Recipe(Fact, table=True):
    """A recipe, and the material it gives."""

    code: str
    material_id: int


class RecipeVersion(Fact, table=True):
    """One version of a recipe: its text as it was given."""

    __tablename__ = "recipe_version"
    recipe_id: int
    number: int
    name: str
    source: str


class RecipeFigures(Fact, table=True):
    """What a recipe version says, as it was understood when it was added."""

    __tablename__ = "recipe_figures"
    recipe_version_id: int
    process: Process = Field(sa_type=String)
    cure_days: int
    usable_from_days: int | None = None
    format: int
    figures: str


class Assessment(Fact, table=True):
    """The safety assessment of a product, as its text was given; the latest counts."""

    recipe_id: int
    source: str
