"""The one door through which something is loaded late: the command that is named, and what few answers need."""

from importlib import import_module
from types import ModuleType


def loaded(module: str) -> ModuleType:
    """A module of this program, by its name below `ledger`, loaded only now, since most runs do without it."""
    return import_module(f"ledger.{module}")
