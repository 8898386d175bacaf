"""Windows: their laws for any method, any night and any clock change."""

from datetime import UTC, datetime, time

from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.journal import Act
from studio_log.domain.methods import Gap, Spread, StepKind
from studio_log.domain.quiet import QuietHours
from studio_log.domain.windows import windows_of
from tests.support.builders import (
    MINUTE,
    Story,
    a_cure,
    a_method,
    a_step,
)

ZONES = ("Europe/London", "America/New_York", "America/Santiago", "Australia/Lord_Howe", "UTC")
NEAR_CHANGES = (
    datetime(2025, 3, 29, 12, tzinfo=UTC),  # London springs forward, Santiago falls back in a week
    datetime(2025, 4, 5, 6, tzinfo=UTC),  # Santiago and Lord Howe
    datetime(2025, 9, 6, 12, tzinfo=UTC),  # Santiago
    datetime(2025, 10, 25, 18, tzinfo=UTC),  # London falls back
    datetime(2025, 11, 1, 20, tzinfo=UTC),  # New York falls back
    datetime(2026, 6, 9, 8, tzinfo=UTC),
)


# -- the laws ------------------------------------------------------------------------------

WALL = st.builds(time, st.integers(0, 23), st.sampled_from([0, 20, 30, 45]))


def _minutes_of(start: time, end: time) -> int:
    return ((end.hour - start.hour) * 60 + end.minute - start.minute) % 1440


QUIET = st.builds(QuietHours, WALL, WALL, st.sampled_from(ZONES)).filter(
    # Wrapping midnight or not, or none at all; four hours awake, or nobody could work.
    lambda quiet: _minutes_of(quiet.start, quiet.end) <= 1200
)


@st.composite
def spreads(draw, most=3 * 1440):
    ends = sorted(draw(st.lists(st.integers(1, most), min_size=3, max_size=3)))
    return Spread(*(one * MINUTE for one in ends))


@st.composite
def gaps(draw):
    least = draw(st.integers(0, 600))
    aim = least + draw(st.integers(0, 600))
    most = draw(st.none() | st.integers(0, 2000).map(lambda more: (aim + more) * MINUTE))
    if draw(st.integers(0, 3)) == 0:
        return Gap(at_once=True, most=most)
    return Gap(least=least * MINUTE, aim=aim * MINUTE, most=most)


@st.composite
def methods(draw):
    count = draw(st.integers(2, 6))
    steps = [
        a_step(
            f"s{number}",
            draw(st.sampled_from([StepKind.SOAK, StepKind.DRY, StepKind.DIP, StepKind.HAND])),
            lasts=draw(spreads() | spreads(most=40)),
            gap=draw(gaps()),
            hands_on=draw(st.integers(0, 60)) * MINUTE,
        )
        for number in range(1, count + 1)
    ]
    if draw(st.booleans()):
        steps.append(a_step("cure", StepKind.CURE, gap=Gap(at_once=True)))
        return a_method(*steps, cure=a_cure(default_days=draw(st.integers(0, 90))))
    return a_method(*steps)


BEGUN = st.sampled_from(NEAR_CHANGES).flatmap(
    lambda near: st.integers(-2880, 2880).map(lambda minutes: near + minutes * MINUTE)
)


@st.composite
def scenes(draw):
    """A lot some steps on its way, the present, and quiet hours."""
    method = draw(methods())
    begun = draw(BEGUN)
    story = Story(method, at=begun)
    for step in method.steps[: draw(st.integers(0, len(method.steps)))]:
        if step.kind is StepKind.CURE:
            break
        story.at += draw(st.integers(0, 900)) * MINUTE
        number = story.number(step.slug)
        if not story.lot.step(number).running:
            story.mark(Act.START, number, sure=True)
        if draw(st.integers(0, 3)) == 0:
            break
        story.at += draw(st.integers(0, 4000)) * MINUTE
        story.mark(Act.END, number, sure=True)
    now = story.at + draw(st.integers(0, 6000)) * MINUTE
    return story, now, draw(QUIET)


@given(scenes())
def test_no_window_is_inverted_and_the_best_lies_inside(scene):
    story, now, quiet = scene
    lot = story.lot
    for number, found in windows_of(lot, now, quiet).items():
        for window, best in ((found.start, found.best_start), (found.end, found.best_end)):
            assert window.earliest <= window.aim
            assert window.latest is None or window.aim <= window.latest
            assert window.holds(best), (number, window, best)
        assert found.best_start <= found.best_end


@given(scenes())
def test_nothing_ahead_lies_before_now(scene):
    story, now, quiet = scene
    lot = story.lot
    for number, found in windows_of(lot, now, quiet).items():
        if not lot.step(number).running:
            moments = (found.start.earliest, found.best_start, found.end.earliest, found.best_end)
            assert min(moments) >= now


@given(scenes())
def test_the_same_journal_clock_and_night_give_the_same_answer(scene):
    story, now, quiet = scene
    again = QuietHours(quiet.start, quiet.end, quiet.zone)
    assert windows_of(story.lot, now, quiet) == windows_of(story.lot, now, again)


def not_earlier(late, on_time) -> None:
    for number, after in late.items():
        before = on_time.get(number)
        if before is None:
            continue
        for one, other in ((before.start, after.start), (before.end, after.end)):
            assert other.earliest >= one.earliest
            assert other.aim >= one.aim
            if one.latest is not None:
                assert other.latest is None or other.latest >= one.latest
        assert after.best_start >= before.best_start, number
        assert after.best_end >= before.best_end, number


@given(methods(), BEGUN, QUIET, st.integers(0, 4000), st.integers(0, 4000), st.data())
def test_a_step_done_late_makes_no_later_one_earlier(method, begun, quiet, took, late, data):
    """Two lots, alike but that the second ended (or began) one step later."""
    last = data.draw(st.integers(1, len(method.steps)), label="steps done")
    by_start = data.draw(st.booleans(), label="late at its start")
    stories = []
    for delay in (0, late):
        story = Story(method, at=begun)
        for place, step in enumerate(method.steps[:last], 1):
            if step.kind is StepKind.CURE:
                break
            number = story.number(step.slug)
            final = place == last
            if not story.lot.step(number).running:
                story.at += (delay if final and by_start else 0) * MINUTE
                story.mark(Act.START, number, sure=True)
            if final and by_start:
                break
            story.at += (took + (delay if final else 0)) * MINUTE
            story.mark(Act.END, number, sure=True)
        stories.append(story)
    now = max(story.at for story in stories)
    on_time, behind = (windows_of(story.lot, now, quiet) for story in stories)
    not_earlier(behind, on_time)


@given(scenes(), st.integers(0, 6000))
def test_time_passing_makes_nothing_ahead_earlier(scene, more):
    story, now, quiet = scene
    lot = story.lot
    before, after = (windows_of(lot, one, quiet) for one in (now, now + more * MINUTE))
    not_earlier(after, before)


@given(methods(), BEGUN, st.sampled_from(ZONES))
def test_without_a_night_lengths_are_true_elapsed_time(method, begun, zone):
    """Earliest follows from earliest, aim from aim, latest from latest, in UTC throughout."""
    story = Story(method, at=begun)
    story.mark(Act.START, 1)
    quiet = QuietHours(time(0), time(0), zone)
    found = windows_of(story.lot, begun, quiet)
    first = method.steps[0].lasts
    assert first is not None
    earliest, aim, latest = begun + first.earliest, begun + first.aim, begun + first.latest
    assert found[1].best_end == aim
    for number, step in enumerate(method.steps[1:], 2):
        if step.kind is StepKind.CURE or step.gap.most is None or step.lasts is None:
            break
        earliest += step.gap.least + step.lasts.earliest
        latest += step.gap.most + step.lasts.latest
        aim += step.gap.aim + step.lasts.aim
        assert found[number].end.earliest == earliest
        assert found[number].end.aim == aim
        assert found[number].end.latest == latest
