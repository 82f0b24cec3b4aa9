"""The cautions kept before her at the bench, from the templates she may edit."""

from typing import NamedTuple

from ledger.errors import BadInput
from ledger.reference.shipped import templates
from ledger.units.toml_reader import TomlFile, toml_text


class Cautions(NamedTuple):
    """The first sentence, and the cautions by the step of work they belong to."""

    first: str
    by_step: dict[str, tuple[str, ...]]


class _CautionFile(TomlFile):
    words = {"": ("first",), "caution": ("step", "text")}


def cautions() -> Cautions:
    """Read them. Raises BadInput naming the file when its wording was broken."""
    path = templates() / "cautions.toml"
    try:
        file = _CautionFile(toml_text(path), str(path))
        file.check()
        steps: dict[str, list[str]] = {}
        for one in file.parts("caution"):
            steps.setdefault(one.word("step"), []).append(one.word("text"))
        return Cautions(file.head.word("first"), {step: tuple(texts) for step, texts in steps.items()})
    except (UnicodeDecodeError, OSError) as error:
        raise BadInput(f"{path} cannot be read ({error}); put the shipped one back.") from None
