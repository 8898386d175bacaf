"""Moving a planned moment: what is shown before letting go is what is shown afterwards."""

from datetime import timedelta
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.domain.windows import windows_of
from studio_log.present.timeline_move import moved, reach_of
from studio_log.present.timeline_story import step_story
from studio_log.services import questions as q
from studio_log.services.commands import Undo
from tests.support.builders import NINE
from tests.support.fixtures import open_workshop
from tests.support.hand_clock import HandClock

SNAP = timedelta(minutes=15)
HOUR = timedelta(hours=1)


@pytest.fixture
def code(shop):
    return shop.new()


def facts_of(shop, code):
    (lane,) = shop.studio.ask(q.TimelineFor((code,))).lanes
    assert lane.facts is not None
    return lane.facts


def movable(facts, now):
    return [step.number for step in facts.lot.steps if reach_of(facts, step.number, now)]


@settings(max_examples=12, deadline=None, phases=[Phase.generate])
@given(
    walked=st.sampled_from(["bean-soak", "first-soak", "dip-2"]),
    pick=st.integers(0, 50),
    by=st.integers(-4000, 4000),
)
def test_no_move_leaves_its_window_and_the_preview_comes_true(walked, pick, by):
    with TemporaryDirectory() as folder:
        shop = open_workshop(Path(folder) / "studio", HandClock(NINE))
        _move_and_look(shop, walked, pick, by)
        shop.studio.close()


def _move_and_look(shop, walked, pick, by):
    code = shop.new()
    shop.walk_to(code, walked)
    shop.mark(code, walked, Act.START)
    now = shop.clock.now()
    facts = facts_of(shop, code)
    steps = movable(facts, now)
    number = steps[pick % len(steps)]
    reach = reach_of(facts, number, now)
    move = moved(facts, number, reach.now_at + timedelta(minutes=by), now, SNAP)
    assert reach.since <= move.at
    assert reach.until is None or move.at <= reach.until
    shop.mark(code, str(number), Act.PLAN, at=move.at)  # refused if it had left the window
    after = windows_of(shop.lot(code), now, facts.quiet)
    for ghost in move.ghosts:
        told = after[ghost.step]
        assert (ghost.start, ghost.end) == (told.best_start, told.best_end)
    ghosts = {ghost.step for ghost in move.ghosts}
    before = windows_of(facts.lot, now, facts.quiet)
    for other, window in after.items():
        if other not in ghosts and facts.lot.taken(facts.lot.step(other)):
            assert window.best_end == before[other].best_end


def running_soak(shop, code):
    shop.walk_to(code, "first-soak")
    shop.mark(code, "first-soak", Act.START)
    facts = facts_of(shop, code)
    number = next(step.number for step in facts.lot.steps if step.slug == "first-soak")
    return facts, number


def test_a_move_beyond_the_window_stops_at_the_limit_and_names_it(shop, code):
    facts, number = running_soak(shop, code)
    now = shop.clock.now()
    window = windows_of(facts.lot, now, facts.quiet)[number]
    move = moved(facts, number, window.end.latest + 9 * HOUR, now, SNAP)
    assert move.at == window.end.latest
    assert "No later: First soak: no longer than 18 h." in move.words
    early = moved(facts, number, now - 9 * HOUR, now, SNAP)
    assert early.at == window.end.earliest
    assert "No earlier than " in early.words
    with pytest.raises(Refusal):
        shop.mark(code, str(number), Act.PLAN, at=window.end.latest + timedelta(minutes=1))


def test_the_words_say_by_how_much_and_what_moves_with_it(shop, code):
    facts, number = running_soak(shop, code)
    now = shop.clock.now()
    was = reach_of(facts, number, now).now_at
    move = moved(facts, number, was + HOUR, now, SNAP)
    minutes = round((move.at - was).total_seconds() / 60)
    assert f"First soak ends: {facts.at(move.at)}, " in move.words
    assert {True: "later", False: "earlier"}[minutes > 0] in move.words
    assert f"{len(move.ghosts) - 1} steps move with it" in move.words


def test_what_is_done_and_a_cure_cannot_be_moved(shop, code):
    shop.walk_to(code, "cure")
    facts = facts_of(shop, code)
    now = shop.clock.now()
    shut = [s.number for s in facts.lot.steps if s.closed or s.slug == "cure"]
    assert shut
    assert all(reach_of(facts, number, now) is None for number in shut)


def test_a_moved_moment_is_said_and_undone(shop, code):
    facts, number = running_soak(shop, code)
    now = shop.clock.now()
    before = windows_of(shop.lot(code), now, facts.quiet)[number].best_end
    move = moved(facts, number, before + HOUR, now, SNAP)
    said = shop.mark(code, str(number), Act.PLAN, at=move.at)
    assert f"planned for {facts.at(move.at)}" in said.words
    shop.do(Undo(code))
    assert windows_of(shop.lot(code), now, facts.quiet)[number].best_end == before


def test_what_was_planned_stays_under_what_happened(shop, code):
    """A step ended late tells it itself; the steps after it count from what happened."""
    facts, number = running_soak(shop, code)
    planned = facts.planned[number]
    shop.clock.set(planned[1] + 2 * HOUR)
    shop.mark(code, str(number), Act.END, sure=True)
    late = facts_of(shop, code)
    assert late.planned[number] == planned
    (lane,) = shop.studio.ask(q.TimelineFor((code,))).lanes
    bar = next(bar for bar in lane.bars if bar.step == number)
    assert bar.planned == planned
    assert bar.end - bar.planned[1] == 2 * HOUR
    assert "; ended 2 h late." in step_story(late, number)


def test_a_moment_set_by_hand_is_what_was_planned(shop, code):
    facts, number = running_soak(shop, code)
    at = moved(facts, number, facts.now + 20 * HOUR, facts.now, SNAP).at
    shop.mark(code, str(number), Act.PLAN, at=at)
    shop.clock.set(at)
    shop.mark(code, str(number), Act.END, sure=True)
    assert facts_of(shop, code).planned[number][1] == at


def test_the_story_tells_all_there_is(shop, code):
    facts, number = running_soak(shop, code)
    told = step_story(facts, number)
    step = facts.lot.step(number)
    for part in (
        code, "First soak", ": running.", "Since ", "Planned ", "End it ", "best ended",
        step.spec.tending.done, f"If it waits: {step.spec.if_late}", "Next: Spin",
    ):  # fmt: skip
        assert part in told


def test_all_three_marks_of_the_cure_are_shown_with_words(shop, code):
    shop.walk_to(code, "cure")
    (lane,) = shop.studio.ask(q.TimelineFor((code,))).lanes
    assert {mark.kind for mark in lane.marks} == {"paint", "resists", "ready"}
    assert all(code in mark.story and " day " in mark.story for mark in lane.marks)


def test_no_act_leaks_its_inner_name():
    assert Act.PUTOFF.words == "put off"
    assert all("_" not in act.words and "putoff" not in act.words for act in Act)


def test_a_step_behind_one_that_waits_can_be_let_go_a_minute_later(shop, code):
    facts, number = running_soak(shop, code)
    shop.clock.at += timedelta(hours=16)  # past its aim: what comes next is pushed on by the clock
    facts = facts_of(shop, code)
    dip = next(step.number for step in facts.lot.steps if step.slug == "dip-2")
    now = shop.clock.now()
    move = moved(facts, dip, now - HOUR, now, SNAP)
    assert "No earlier than " in move.words
    assert move.at.second == move.at.microsecond == 0
    shop.clock.at += timedelta(seconds=100)
    shop.mark(code, str(dip), Act.PLAN, at=move.at)
    assert shop.lot(code).step(dip).plan == move.at
    assert number != dip
