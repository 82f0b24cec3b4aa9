"""How a message opens with the thing it is about."""


def opening(what: str) -> str:
    """The thing at the start of a sentence: 'the pH' becomes 'The pH', with its other letters as they were."""
    return what[:1].upper() + what[1:]
