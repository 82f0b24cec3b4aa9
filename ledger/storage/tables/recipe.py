"""Recipes, their versions and assessments."""

from datetime import date

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


class AssessmentCovers(Fact, table=True):
    """One ingredient in a report: under another name, or by the assessor's written word."""

    __tablename__ = "assessment_covers"
    assessment_id: int
    inci: str
    named: str | None = None
    word: str | None = None
    highest_ppm: int | None = None
    by: str | None = None
    on: date | None = None
