"""A step moved by hand, asked as the window asks it."""

from typing import Any

from studio_log.planning.answer import answer
from studio_log.planning.effort import Effort
from studio_log.planning.moves import windows
from studio_log.planning.read_plan import read_plan
from tests.planning.kit import instance, read
from tests.planning.test_why_act import asked


def changed(fields: Any) -> set[str]:
    """The lots of which something is otherwise."""
    return {lot for one in fields["differences"] if one["kind"] != "stays" for lot in one["lots"]}


def test_a_second_move_tells_the_first_on_where_it_is_asked_against_the_plan_before() -> None:
    whole = instance("studio-four-lots-two-running")
    problem = read(whole)
    kept = answer(problem, Effort(tries=2)).fields
    plan = read_plan(problem, kept)
    later: dict[str, tuple[str, int]] = {}
    for lot, own in plan.spans.items():
        for step, span in own.items():
            last = max((one[1] for one in windows(problem, plan, lot, step)), default=0)
            if last > span.start:
                later[lot] = (step, last)
    first, second = list(later)[:2]

    def moved(fields: Any, lot: str, **more: Any) -> Any:
        step, minute = later[lot]
        told = {"lot": lot, "step": step, "at": problem.clock.utc(minute).isoformat(), **more}
        return asked(whole, "move", keep=fields, more=told)[-1][1]

    once = moved(kept, first)
    assert changed(once) == {first}
    assert changed(moved(once, second)) == {second}
    assert changed(moved(once, second, before=kept)) == {first, second}
