"""What a lot went into and what it was made from, with the way there."""

from ledger.domain.stock.graph import Graph

# An oil (lot 1) went into an infusion (batch 10) that gave lot 2; lot 2 and a butter (lot 3) went into a soap
# (batch 11) that gave bars (lot 4) and offcuts (lot 5); the offcuts went into a rebatch (batch 12), which took
# some of the oil (lot 1) as well and gave bars (lot 6). Lot 7 stands by itself.
SHOP = Graph(
    consumed=[(1, 10), (2, 11), (3, 11), (5, 12), (1, 12)],
    yielded=[(10, 2), (11, 4), (11, 5), (12, 6)],
)


def test_downstream_goes_through_infusion_and_rebatch() -> None:
    found = SHOP.downstream([("lot", 2)])
    assert set(found.of_kind("batch")) == {11, 12}
    assert set(found.of_kind("lot")) == {2, 4, 5, 6}


def test_upstream_goes_back_to_every_lot() -> None:
    found = SHOP.upstream([("lot", 6)])
    assert set(found.of_kind("lot")) == {6, 5, 1, 2, 3}
    assert set(found.of_kind("batch")) == {12, 11, 10}


def test_the_nearest_is_found_first_and_by_the_shortest_way() -> None:
    # The oil reaches the rebatch straight, and through the infusion, the soap and its offcuts as well.
    found = SHOP.downstream([("lot", 1)])
    assert found.nodes[:3] == (("lot", 1), ("batch", 10), ("batch", 12))
    assert found.paths["batch", 12] == (("lot", 1), ("batch", 12))
    assert found.paths["lot", 4] == (("lot", 1), ("batch", 10), ("lot", 2), ("batch", 11), ("lot", 4))


def test_several_starts_give_one_answer() -> None:
    found = SHOP.downstream([("lot", 3), ("lot", 7)])
    assert found.nodes[:2] == (("lot", 3), ("lot", 7))
    assert set(found.nodes) == {*SHOP.downstream([("lot", 3)]).nodes, ("lot", 7)}
    assert found.paths["lot", 3] == (("lot", 3),)


def test_a_lot_that_went_into_nothing_is_reached_alone() -> None:
    assert SHOP.downstream([("lot", 7)]).nodes == (("lot", 7),)
    assert ("lot", 7) not in SHOP.downstream([("lot", 1)]).paths


def test_one_step_either_way() -> None:
    assert SHOP.parents(("batch", 11)) == (("lot", 2), ("lot", 3))
    assert SHOP.children(("batch", 11)) == (("lot", 4), ("lot", 5))
    assert SHOP.children(("lot", 6)) == ()


def test_a_ring_ends() -> None:
    ring = Graph(consumed=[(1, 10), (2, 11)], yielded=[(10, 2), (11, 1)])
    assert len(ring.downstream([("lot", 1)]).nodes) == 4


def test_a_chain_of_ten_thousand_drums_is_followed_to_its_end() -> None:
    # Each drum is topped up into the next: lot n into batch n, which gives lot n + 1.
    depth = 10_000  # ten times as deep as functions may call each other
    chain = Graph(consumed=((n, n) for n in range(depth)), yielded=((n, n + 1) for n in range(depth)))
    found = chain.downstream([("lot", 0)])
    assert len(found.nodes) == 2 * depth + 1
    assert len(found.paths["lot", depth]) == 2 * depth + 1
