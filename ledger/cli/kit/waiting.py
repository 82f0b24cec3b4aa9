"""What is let go of before a person is waited for or a long answer is shown: a reader keeps writers out."""

from collections.abc import Callable

held: list[Callable[[], None]] = []  # how each desk of this run ends what it reads


def let_go() -> None:
    """End what is being read."""
    for end in held:
        end()
