"""The closure of lots and batches against networkx, on random ledgers of any depth."""

import networkx
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.stock.graph import Graph

edges = st.lists(st.tuples(st.integers(1, 12), st.integers(1, 12)), max_size=40)


@given(consumed=edges, yielded=edges, start=st.integers(1, 12))
def test_downstream_and_upstream_are_descendants_and_ancestors(
    consumed: list[tuple[int, int]], yielded: list[tuple[int, int]], start: int
) -> None:
    reference = networkx.DiGraph()
    reference.add_node(("lot", start))
    reference.add_edges_from((("lot", lot), ("batch", batch)) for lot, batch in consumed)
    reference.add_edges_from((("batch", batch), ("lot", lot)) for batch, lot in yielded)
    graph, node = Graph(consumed, yielded), ("lot", start)
    down, up = graph.downstream([node]), graph.upstream([node])
    assert set(down.nodes) == networkx.descendants(reference, node) | {node}
    assert set(up.nodes) == networkx.ancestors(reference, node) | {node}
    for end, path in down.paths.items():
        assert path[0] == node
        assert path[-1] == end
        assert networkx.is_path(reference, list(path))
