"""Simple temporal networks against the printed answer of Dechter, Meiri and Pearl (1991).

Temporal constraint networks, Artificial Intelligence 49, 61-95, example 1.1, as a simple
temporal problem; the table stands in tests/reference/planner/stn-commuters.json.
"""

from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.planning.chain import chain_of, windows_of_chain
from studio_log.planning.stn import LoopError, Network
from tests.planning.kit import instance, read, studio

PRINTED = instance("stn-commuters")


def network(constraints: list[dict[str, Any]]) -> Network[str]:
    found: Network[str] = Network()
    for one in constraints:
        found.limit(one["from"], one["to"], one["min"], one["max"])
    return found


def test_the_minimal_network_is_the_printed_one() -> None:
    commuters = network(PRINTED["constraints"])
    assert len(PRINTED["minimal"]) == 10
    for row in PRINTED["minimal"]:
        found = commuters.windows(row["from"])[row["to"]]
        assert found == (row["min"], row["max"]), row


def test_who_goes_by_bus_breaks_a_rule_and_the_cycle_is_named() -> None:
    other = PRINTED["inconsistent_variant"]
    bus = other["replace"]
    kept = [one for one in PRINTED["constraints"] if (one["from"], one["to"]) != ("x1", "x2")]
    with pytest.raises(LoopError) as raised:
        network([*kept, bus]).windows("x0")
    edges = {(one["from"], one["to"]) for one in other["cycle"]}
    assert set(pairwise(raised.value.points)) == edges
    assert raised.value.excess == -sum(one["weight"] for one in other["cycle"]) == 20


def test_a_loop_that_the_origin_does_not_reach_is_found() -> None:
    lonely: Network[str] = Network()
    lonely.limit("a", "b", 1, 2)
    lonely.limit("c", "d", 5, None)
    lonely.limit("c", "d", None, 4)
    with pytest.raises(LoopError):
        lonely.check()


@given(st.lists(st.tuples(st.integers(0, 5), st.integers(0, 5), st.integers(-20, 20)), max_size=14))
def test_windows_agree_with_all_shortest_paths(edges: list[tuple[int, int, int]]) -> None:
    """Against Floyd and Warshall's algorithm (1962, from memory), written out here."""
    far = {(a, b): 0 if a == b else 10**6 for a in range(6) for b in range(6)}
    found: Network[int] = Network()
    for point in range(6):
        found.limit(point, point, None, 0)
    for a, b, most in edges:
        far[a, b] = min(far[a, b], most)
        found.limit(a, b, None, most)
    for k in range(6):
        for a in range(6):
            for b in range(6):
                far[a, b] = min(far[a, b], far[a, k] + far[k, b])
    if any(far[n, n] < 0 for n in range(6)):
        with pytest.raises(LoopError):
            found.windows(0)
        return
    for point, (earliest, latest) in found.windows(0).items():
        assert latest == (far[0, point] if far[0, point] < 10**5 else None)
        assert earliest == (-far[point, 0] if far[point, 0] < 10**5 else None)


def test_the_windows_of_a_chain_by_hand() -> None:
    """Load 20, soak 600 to 1080, lift 10, dry 240 to 2880, take down 10, on a grid of 10."""
    problem = read(studio(horizon_days=2))
    chain = chain_of(problem, problem.lots[0])
    assert chain is not None
    last = 2 * 144 - 1  # take down lasts one slot
    assert windows_of_chain(chain, problem) == [
        (0, last - 25 - 62), (62, last - 25), (62 + 25, last)
    ]  # fmt: skip
