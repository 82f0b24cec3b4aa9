"""Reads the steps of a recipe in its maker's own words, under [[step]]."""

from collections.abc import Iterator

from ledger.domain.recipe.file import RecipeFile
from ledger.domain.recipe.recipe import STAGES, STEP_TIMES, OwnStep
from ledger.domain.tools.readings import COOK, MIX, READINGS, START, STEP, Figure
from ledger.errors import BadInput
from ledger.units.names import near
from ledger.units.toml_reader import TomlPart
from ledger.units.words import Process, known

LONGEST = 200  # letters of a step: more does not stand beside its box on the worksheet


def read_steps(source: RecipeFile, process: Process) -> tuple[OwnStep, ...]:
    """The steps in the order they are written. Raises BadInput with the place for what no step can be."""
    return tuple(_steps(source, process))


def _steps(source: RecipeFile, process: Process) -> Iterator[OwnStep]:
    stages = (*STAGES.get(process, ("in the pot",)), *_times(process))
    read: set[str] = set()
    for number, part in enumerate(source.parts("step"), 1):
        text, when = part.word("text"), part.word("when")
        if len(text) > LONGEST:
            raise part.bad(f"this step has {len(text)} letters; write two of {LONGEST} at the most.", "text")
        stage = known(when, stages)
        if stage is None:
            times = ", ".join(f'"{one}"' for one in stages)
            raise part.bad(f"when = '{when}' is no time in the {process} process; write one of {times}.", "when")
        reading = _reading(part, read)
        least, most = (_limit(part, key, reading) for key in ("from", "to"))
        if least is not None and most is not None and least > most:
            raise part.bad("from is the lower limit and to the higher; look at both.", "from")
        yield OwnStep(number, text, STEP_TIMES.get(stage, stage), reading, least, most)


def _times(process: Process) -> Iterator[str]:
    """The times of a process at which nothing is weighed."""
    mixes, cooks = process in ("cold", "hot"), process in ("hot", "rebatch")
    there = {START: True, MIX: mixes, COOK: cooks}
    yield from (word for word, when in STEP_TIMES.items() if there.get(when, mixes or cooks))


def _reading(part: TomlPart, read: set[str]) -> str | None:
    """What is read at a step, by its name in the table; once in a recipe, unless it is read more than once."""
    written = part.maybe_word("reading")
    if written is None:
        return None
    usable = [one.what for one in READINGS.values() if one.of not in ("bars", "any") and one.what != STEP]
    name = known(written, tuple(usable))
    if name is None:
        close = near(written, usable, 1)
        hint = f"did you mean {close[0]}?" if close else f"known: {', '.join(usable)}."
        raise part.bad(f"'{written}' is nothing read at a step; {hint}", "reading")
    if name in read and not READINGS[name].again:
        raise part.bad(f"the {name} is read once in a batch, and stands here a second time.", "reading")
    read.add(name)
    return name


def _limit(part: TomlPart, key: str, reading: str | None) -> int | None:
    """A limit of the reading, with its unit where it has one."""
    value = part.data.get(key)
    if value is None:
        return None
    answer = READINGS[reading].answer if reading else None
    if not isinstance(answer, Figure):
        raise part.bad(f"{key} is a limit of a reading that is a figure; name it, or take {key} out.", key)
    try:
        found = answer.parse(str(value), what=key)
    except BadInput as error:
        raise part.bad(str(error), key) from None
    if answer.between and not answer.between[0] <= found <= answer.between[1]:
        raise part.bad(f"{key} = {value} cannot be; look at the number and the unit.", key)
    return found
