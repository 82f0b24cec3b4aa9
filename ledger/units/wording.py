"""How a message opens with the thing it is about, and a number with its noun."""


def opening(what: str) -> str:
    """The thing at the start of a sentence: 'the pH' becomes 'The pH', with its other letters as they were."""
    return what[:1].upper() + what[1:]


def count(number: int, one: str, many: str | None = None) -> str:
    """A number with its noun: 1 bar, 2 bars."""
    return f"{number} {one if number == 1 else many or one + 's'}"
