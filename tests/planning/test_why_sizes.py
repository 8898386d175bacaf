"""Why not, first layer: what is too small, with the way out that is just large enough."""

from typing import Any

import pytest

from studio_log.planning.change_kinds import (
    AddHours,
    AddVessel,
    LeaveOut,
    MoreBurners,
    MoreLine,
)
from studio_log.planning.effort import Effort
from studio_log.planning.plan_studio import plan_studio
from studio_log.planning.why import explain
from studio_log.planning.why_sizes import misfits
from tests.planning.kit import read, studio

FEW = Effort(tries=5)


def too_small(step: int, key: str, value: Any, count: int = 2, **more: Any) -> dict[str, Any]:
    """Two lots, of which the first has one step changed."""
    whole = studio(count, **more)
    whole["lots"][0]["steps"][step][key] = value
    return whole


SMALL: list[tuple[int, str, Any, str, Any]] = [
    # 7.5 m of cloth on 6 m of line: 1.5 m miss, and line is hung by the metre: 2.
    (3, "use", {"line": 7.5}, "L1 does not fit on the line: dry takes 7.5 m, and there are 6 m.",
     MoreLine(2_000)),
    (1, "use", {"tub": 25.5}, "L1 fits no tub: soak takes 25.5 L, and the largest holds 20 L.",
     AddVessel("tub", 26_000)),
    (0, "use", {"burner": 1, "tub": 10},
     "L1 needs one burner for load; the studio has no burners.", MoreBurners(1)),
    # 200 minutes in hours of 180: the afternoon of one day has to be 20 minutes longer.
    (0, "hands", 200,
     "Load of L1 takes 3 h 20 min of hands in one go; the longest hours of a day are 3 h.",
     AddHours((0,), 840, 1040)),
]  # fmt: skip


@pytest.mark.parametrize(("step", "key", "value", "words", "change"), SMALL)
def test_what_is_too_small_is_told_and_mended(
    step: int, key: str, value: Any, words: str, change: Any
) -> None:
    problem = read(too_small(step, key, value))
    outcome = plan_studio(problem, FEW)
    assert (outcome.status, outcome.plan, outcome.why) == ("infeasible", None, (words,))
    found = explain(problem, None, FEW)
    assert [(one.kind, one.lots, one.sentence) for one in found.reasons] == [
        ("sizes", ("L1",), words)
    ]
    assert found.ways[0].changes == (change,)
    assert found.ways[-1].changes == (LeaveOut("L1"),)
    assert found.ways[-1].price_words == "L1 is not done, with two pieces"


def test_it_is_said_that_there_is_nothing_of_a_kind_at_all() -> None:
    whole = studio()
    whole["resources"]["line_m"] = 0
    (found,) = misfits(read(whole))
    assert found.sentence == "L1 does not fit on the line: dry takes 5 m, and there is none."
    assert found.mends == ((MoreLine(5_000),),)


def test_a_block_is_all_that_is_done_without_a_wait() -> None:
    # load 20 and a second filling of 170: 190 minutes in one go, in hours of 180.
    whole = studio()
    whole["lots"][0]["steps"].insert(1, {"id": "fill up", "hands": 170, "use": {"tub": 10}})
    (found,) = misfits(read(whole))
    assert found.steps == ("load", "fill up")
    assert found.sentence.startswith("Load and fill up of L1 take 3 h 10 min of hands in one go;")
    whole["lots"][0]["steps"][0]["then_within"] = 600
    assert misfits(read(whole)) == ()


def test_longer_hours_are_never_asked_for_in_quiet_hours() -> None:
    # Awake from 09:00 to 17:00 only, as the hours are: nothing can be made longer.
    waking = {day: [["09:00", "12:00"], ["14:00", "17:00"]] for day in
              ("mon", "tue", "wed", "thu", "fri", "sat", "sun")}  # fmt: skip
    whole = too_small(0, "hands", 200)
    whole["calendar"]["waking"] = waking
    ways = explain(read(whole), None, FEW).ways
    assert [one.changes for one in ways] == [(LeaveOut("L1"),)]
    whole["calendar"]["quiet"] = "advice"
    ways = explain(read(whole), None, FEW).ways
    assert any(isinstance(one.changes[0], AddHours) for one in ways)


def test_one_larger_tub_serves_all_that_fit_no_tub() -> None:
    whole = too_small(1, "use", {"tub": 25}, count=3)
    whole["lots"][1]["steps"][1]["use"] = {"tub": 30}
    found = explain(read(whole), None, FEW)
    assert [one.lots for one in found.reasons] == [("L1",), ("L2",)]
    assert found.ways[0].changes == (AddVessel("tub", 30_000),)
    assert found.ways[-1].changes == (LeaveOut("L1"), LeaveOut("L2"))
    assert found.ways[-1].words == "L1 left out and L2 left out"


def test_what_is_over_is_not_looked_at() -> None:
    whole = too_small(0, "use", {"tub": 90})
    whole["lots"][0]["actual"] = {
        "load": {"start": "2027-02-28T20:00", "end": "2027-02-28T20:20"},
    }
    assert misfits(read(whole)) == ()
