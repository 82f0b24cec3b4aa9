"""The cautions kept before her at the bench, from the templates she may edit."""

import tomllib
from dataclasses import dataclass

from ledger.errors import BadInput
from ledger.reference.shipped import templates


@dataclass(frozen=True)
class Cautions:
    """The first sentence, and the cautions by the step of work they belong to."""

    first: str
    by_step: dict[str, tuple[str, ...]]


def cautions() -> Cautions:
    """Read them. Raises BadInput naming the file when its wording was broken."""
    path = templates() / "cautions.toml"
    try:
        data = tomllib.loads(path.read_text(encoding="utf-8"))
        steps: dict[str, list[str]] = {}
        for one in data["caution"]:
            steps.setdefault(one["step"], []).append(one["text"])
        return Cautions(data["first"], {step: tuple(texts) for step, texts in steps.items()})
    except (tomllib.TOMLDecodeError, KeyError, TypeError, OSError) as error:
        raise BadInput(f"{path} cannot be read ({error}); put the shipped one back.") from None
