"""What a recall is asked about: a value that can be kept as JSON and asked again."""

import json
from datetime import date
from typing import Literal, NamedTuple, get_args

from ledger.errors import BadInput
from ledger.units.words import checked

Kind = Literal["number", "bar", "product", "labels", "tool", "instead", "recipe", "complaint"]
_FORMAT = 1


class Start(NamedTuple):
    """One thing it begins with, in the words it was asked in.

    number: a lot, by the supplier's number as quoted or by our own code; bar: a batch code; product: what the bars are;
    labels: a print run; tool: an instrument that failed its check; instead: a material that was weighed for another;
    recipe: a recipe, or NAME@2 for one version of it; complaint: its number.
    """

    kind: Kind
    what: str


class Question(NamedTuple):
    """One or several starts; supplier and material alone ask for all that was delivered between the days.

    The days narrow lots by when they were received and products by when they were made; both count in.
    """

    starts: tuple[Start, ...] = ()
    supplier: str | None = None
    material: str | None = None
    first: date | None = None
    last: date | None = None
    every: bool = False  # all lots that fit a number, where several do

    def of(self, kind: Kind) -> tuple[str, ...]:
        """The starts of one kind, each once."""
        return tuple(dict.fromkeys(start.what for start in self.starts if start.kind == kind))

    @property
    def of_a_delivery(self) -> bool:
        """Whether supplier and material themselves are asked about, and narrow nothing."""
        return bool(self.supplier and self.material) and not self.of("number")

    def check(self) -> None:
        """Raise BadInput where nothing is asked, or the days are the wrong way round."""
        if not self.starts and not self.of_a_delivery:
            raise BadInput("Give their lot number, or both --supplier and --material (and --from and --to).")
        if self.first and self.last and self.last < self.first:
            raise BadInput("--to is before --from; both days count in.")

    @property
    def kept(self) -> str:
        """As JSON, to be kept and asked again."""
        values = {**self._asdict(), "starts": [list(start) for start in self.starts], "format": _FORMAT}
        values["first"], values["last"] = (day and day.isoformat() for day in (self.first, self.last))
        return json.dumps(values, ensure_ascii=False, sort_keys=True)


def question_from(kept: str) -> Question:
    """A question as it was kept; what a later format adds is left out."""
    found = json.loads(kept)
    return Question(
        starts=tuple(Start(checked(kind, get_args(Kind), what="a start"), what) for kind, what in found["starts"]),
        supplier=found.get("supplier"),
        material=found.get("material"),
        first=date.fromisoformat(found["first"]) if found.get("first") else None,
        last=date.fromisoformat(found["last"]) if found.get("last") else None,
        every=bool(found.get("every")),
    )
