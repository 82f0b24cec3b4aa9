"""Words that lower the sense of risk, which a recall notice has none of."""

import re

# Regulation (EU) 2023/988, Art 36(2)(c), read in a secondary text; the law says "such as".
DULLING = (
    "voluntary", "voluntarily", "precaution", "precautionary", "discretion", "discretionary", "in rare situations",
    "in specific situations", "no accident", "no accidents",
)  # fmt: skip


def dulling(text: str) -> tuple[str, ...]:
    """Which of them a text holds, in the order of the list."""
    plain = " ".join(text.lower().split())
    return tuple(word for word in DULLING if re.search(rf"(?<!\w){re.escape(word)}(?!\w)", plain))
