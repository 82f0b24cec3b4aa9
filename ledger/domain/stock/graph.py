"""The graph of lots and batches: what a lot went into, and what a lot was made from, at any depth."""

from collections import defaultdict, deque
from collections.abc import Iterable, Iterator, Mapping
from typing import Literal, NamedTuple

NodeKind = Literal["lot", "batch"]
Node = tuple[NodeKind, int]  # with its row number


class Paths(Mapping[Node, tuple[Node, ...]]):
    """The way to each node reached, start and node included, put together only when it is asked for.

    A ledger of many years can be thousands of drums deep; every way written out would grow with the square.
    """

    def __init__(self, came_from: dict[Node, Node | None]) -> None:
        """`came_from` holds the node before each, None before a start, in the order they were reached."""
        self._came_from = came_from

    def __getitem__(self, node: Node) -> tuple[Node, ...]:
        before, way = self._came_from[node], [node]
        while before is not None:
            way.append(before)
            before = self._came_from[before]
        return tuple(reversed(way))

    def before(self, node: Node) -> Node | None:
        """The node before one on the way to it; None for a start."""
        return self._came_from[node]

    def __contains__(self, node: object) -> bool:
        return node in self._came_from

    def __iter__(self) -> Iterator[Node]:
        return iter(self._came_from)

    def __len__(self) -> int:
        return len(self._came_from)


class Closure(NamedTuple):
    """Everything reached, nearest first, with the shortest way to each."""

    nodes: tuple[Node, ...]
    paths: Paths

    def of_kind(self, kind: NodeKind) -> tuple[int, ...]:
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


def _closure(edges: Mapping[Node, list[Node]], starts: Iterable[Node]) -> Closure:
    came_from: dict[Node, Node | None] = dict.fromkeys(starts)
    waiting = deque(came_from)
    while waiting:
        node = waiting.popleft()
        for following in edges.get(node, ()):
            if following not in came_from:
                came_from[following] = node
                waiting.append(following)
    return Closure(tuple(came_from), Paths(came_from))
