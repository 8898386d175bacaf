"""What cannot be helped is left out of a plan of the log, and the others are planned."""

from studio_log.planning.effort import Effort
from studio_log.planning.plan_studio import plan_studio
from studio_log.planning.what_fits import what_fits
from tests.planning.kit import read, studio


def test_a_lot_without_a_place_is_left_out_and_the_others_are_planned() -> None:
    """A soak that must end at midnight has no hours; the goal then wants what is left."""
    step = {"id": "soak", "min": 60, "max": 60}
    night = {"id": "night", "steps": [{"id": "begin", "hands": 10}, {"id": "rest", "min": 840,
             "max": 840}, {"id": "lift", "hands": 10}], "pieces": 2}  # fmt: skip
    day = {"id": "day", "steps": [{"id": "begin", "hands": 10}, step, {"id": "lift", "hands": 10}],
           "pieces": 3}  # fmt: skip
    problem = read(studio(lots=[night, day]))
    assert plan_studio(problem, Effort(tries=0)).status == "infeasible"
    rest, left = what_fits(problem, Effort(tries=0))
    assert [one.lot for one in left] == ["night"]
    assert "night" in left[0].words
    found = plan_studio(rest, Effort(tries=0))
    assert found.plan is not None
    assert set(found.plan.spans) == {"day"}


def test_a_problem_that_fits_stays_as_it_is() -> None:
    problem = read(studio(lots=[{"id": "day", "steps": [{"id": "begin", "hands": 10}]}]))
    assert what_fits(problem, Effort(tries=0)) == (problem, ())


def test_where_nothing_fits_all_is_left_out() -> None:
    long = {"id": "long", "steps": [{"id": "begin", "hands": 1200}]}
    rest, left = what_fits(read(studio(lots=[long])), Effort(tries=0))
    assert (rest.lots, [one.lot for one in left]) == ((), ["long"])
