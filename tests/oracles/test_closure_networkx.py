"""Recall and trace against networkx, on random ledgers read through the views."""

from dataclasses import dataclass

import networkx as nx
from bare_ledger import BareLedger
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.stock.graph import Node
from ledger.rows.batch import batch_by_id
from ledger.rows.lot import lot_by_id
from ledger.rows.movement import graph_from
from ledger.views.recall.reach import Starts
from ledger.views.recall.recall_answer import recall_answer
from ledger.views.recall.recall_way import way_to
from ledger.views.recall.trace import trace


@dataclass
class Season:
    """A ledger, and the same story as a networkx graph drawn while it was written."""

    ledger: BareLedger
    graph: "nx.DiGraph[Node]"

    def code(self, node: Node) -> str:
        return self.ledger.code(*node)

    def codes(self, nodes: set[Node], kind: str) -> set[str]:
        return {self.code(node) for node in nodes if node[0] == kind}


@st.composite
def seasons(draw: st.DrawFn) -> Season:
    """Up to four bought lots and ten batches, each of whatever was there before; some uses are taken back."""
    ledger, graph = BareLedger(in_turn=True), nx.DiGraph()
    stock = [ledger.buy(f"N{n}") for n in range(draw(st.integers(1, 4)))]
    graph.add_nodes_from(("lot", lot) for lot in stock)
    for _ in range(draw(st.integers(0, 10))):
        used = draw(st.lists(st.sampled_from(stock), min_size=1, max_size=3, unique=True))
        process = draw(st.sampled_from(["cold", "rebatch", "infusion", "combine"]))
        soap = process in ("cold", "rebatch")
        batch, given_lots = ledger.make(process, used, offcuts=soap and draw(st.booleans()))
        graph.add_edges_from((("lot", lot), ("batch", batch)) for lot in used)
        graph.add_edges_from((("batch", batch), ("lot", lot)) for lot in given_lots)
        taken_back = draw(st.sampled_from(stock))
        if taken_back not in used and draw(st.booleans()):
            ledger.take_back(taken_back, batch)  # no edge: nothing is left of it
        stock += given_lots[1:] if soap else given_lots
    return Season(ledger, graph)


@given(season=seasons())
def test_the_closures_are_the_descendants_and_the_ancestors(season: Season) -> None:
    rows = season.ledger.rows
    for node in season.graph:
        below, above = graph_from(rows, [node], "down"), graph_from(rows, [node], "up")
        assert set(below.downstream([node]).nodes) == nx.descendants(season.graph, node) | {node}
        assert set(above.upstream([node]).nodes) == nx.ancestors(season.graph, node) | {node}


@given(season=seasons(), which=st.sets(st.integers(0, 3), min_size=1, max_size=2))
def test_a_recall_names_every_batch_and_every_bar_downstream_and_no_other(season: Season, which: set[int]) -> None:
    rows = season.ledger.rows
    bought = [node for node in season.graph if season.graph.in_degree(node) == 0]
    named = sorted({bought[n % len(bought)] for n in which})
    answer = recall_answer(rows, [lot_by_id(rows, number) for _, number in named], asked=["N"], program="test")
    below = set().union(*(nx.descendants(season.graph, node) for node in named))
    assert {one.batch_code for one in answer.batches} == season.codes(below, "batch")
    soap = {one.batch_code for one in answer.batches if one.yields_bars}
    assert {one.batch_code for one in answer.bars} == soap
    assert answer.totals.made == answer.totals.on_hand == 20 * len(soap)  # every soap batch here is cut into 20
    bulk = {code for code in season.codes(below, "lot") if code.startswith("L")}
    assert {one.lot_code for one in answer.bulk} == bulk  # 100 g was made of each, and little was used


@given(season=seasons())
def test_the_way_shown_to_a_batch_is_a_real_way_and_none_is_shorter(season: Season) -> None:
    rows = season.ledger.rows
    node = next(iter(season.graph))
    answer = recall_answer(rows, [lot_by_id(rows, node[1])], asked=["N"], program="test")
    by_code = {season.code(one): one for one in season.graph if one[0] == "batch"}
    by_code |= {code: one for one in season.graph if (code := season.code(one)).startswith("L")}
    for batch in answer.batches:
        steps = way_to(rows, Starts((lot_by_id(rows, node[1]),)), batch_by_id(rows, by_code[batch.batch_code][1]))
        way = [by_code[step.code] for step in steps]
        assert (batch.first, batch.last, batch.steps) == (steps[0].code, steps[-2].code, len(steps) - 1)
        assert way[0] == node
        assert way[-1] == by_code[batch.batch_code]
        assert nx.is_path(season.graph, way)
        assert len(way) - 1 == nx.shortest_path_length(season.graph, node, way[-1])


@given(season=seasons())
def test_a_trace_goes_back_to_every_ancestor_and_forward_to_every_descendant(season: Season) -> None:
    for node in season.graph:
        if node[0] == "lot" and not season.code(node).startswith("L"):
            continue  # bars are traced by the batch's code, and lead to the batch
        for forward, others in ((False, nx.ancestors), (True, nx.descendants)):
            reached = others(season.graph, node) | {node}
            found = trace(season.ledger.rows, season.code(node), forward=forward)
            assert {(s.kind, s.code) for s in found.steps} == {(kind, season.code((kind, n))) for kind, n in reached}
            assert set(found.batches) == season.codes(reached, "batch")
            bought = {one for one in reached if season.graph.in_degree(one) == 0}
            assert set(found.supplier_lots) == season.codes(bought, "lot")
            # every step hangs on the one above it by a real edge
            above: dict[int, Node] = {}
            nodes = {(kind, season.code((kind, n))): (kind, n) for kind, n in reached}
            for step in found.steps:
                here = nodes[step.kind, step.code]
                if step.depth:
                    edge = (above[step.depth - 1], here) if forward else (here, above[step.depth - 1])
                    assert season.graph.has_edge(*edge)
                above[step.depth] = here


@given(season=seasons())
def test_a_recall_of_a_bar_names_its_batch_and_what_came_of_it_and_no_other(season: Season) -> None:
    rows = season.ledger.rows
    for node in season.graph:
        if node[0] != "batch" or batch_by_id(rows, node[1]).kind != "soap":
            continue
        answer = recall_answer(rows, [], bars_of=[batch_by_id(rows, node[1])], asked=["N"], program="test")
        below = nx.descendants(season.graph, node) | {node}
        assert {one.batch_code for one in answer.batches} == season.codes(below, "batch")
        assert answer.totals.made == 20 * sum(one.yields_bars for one in answer.batches)
