"""The graph of lots and batches: what a lot went into, and what a lot was made from, at any depth."""

from collections import defaultdict, deque
from collections.abc import Iterable
from dataclasses import dataclass

Node = tuple[str, int]  # ("lot", number) or ("batch", number)


@dataclass(frozen=True)
class Closure:
    """Everything reached, nearest first, with the way it was reached (from the start, itself included)."""

    nodes: tuple[Node, ...]
    paths: dict[Node, tuple[Node, ...]]

    def of_kind(self, kind: str) -> tuple[int, ...]:
        """The row numbers of the lots, or of the batches, that were reached."""
        return tuple(number for found, number in self.nodes if found == kind)


class Graph:
    """Lots consumed by batches and batches yielding lots."""

    def __init__(self, consumed: Iterable[tuple[int, int]], yielded: Iterable[tuple[int, int]]) -> None:
        """`consumed` holds (lot, batch) pairs, `yielded` (batch, lot) pairs."""
        self._down: dict[Node, list[Node]] = defaultdict(list)
        self._up: dict[Node, list[Node]] = defaultdict(list)
        for lot, batch in consumed:
            self._edge(("lot", lot), ("batch", batch))
        for batch, lot in yielded:
            self._edge(("batch", batch), ("lot", lot))

    def _edge(self, source: Node, target: Node) -> None:
        self._down[source].append(target)
        self._up[target].append(source)

    def downstream(self, starts: Iterable[Node]) -> Closure:
        """Everything that anything in `starts` went into, the starts included."""
        return _closure(self._down, starts)

    def upstream(self, starts: Iterable[Node]) -> Closure:
        """Everything that `starts` were made from, the starts included."""
        return _closure(self._up, starts)

    def parents(self, node: Node) -> tuple[Node, ...]:
        """What a lot or batch was made from, one step back."""
        return tuple(self._up.get(node, ()))

    def children(self, node: Node) -> tuple[Node, ...]:
        """What a lot or batch went into, one step on."""
        return tuple(self._down.get(node, ()))


def _closure(edges: dict[Node, list[Node]], starts: Iterable[Node]) -> Closure:
    paths: dict[Node, tuple[Node, ...]] = {start: (start,) for start in starts}
    waiting = deque(paths)
    while waiting:
        node = waiting.popleft()
        for following in edges.get(node, ()):
            if following not in paths:
                paths[following] = (*paths[node], following)
                waiting.append(following)
    return Closure(tuple(paths), paths)
