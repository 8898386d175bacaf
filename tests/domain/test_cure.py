"""The cure, its marks and its age; coats taken, repeated and left; going on."""

from datetime import UTC, datetime, timedelta

import pytest

from studio_log.domain.errors import Question
from studio_log.domain.journal import Act, Entry
from studio_log.domain.lots import LotState, StepState, cure_of
from studio_log.domain.methods import Gap, StepKind
from tests.support.builders import (
    DAY,
    HOUR,
    LONG,
    MINUTE,
    SCOUR,
    Story,
    a_cure,
    a_method,
    a_step,
    coat,
)

PAINTED = a_method(
    a_step("bath", StepKind.SCOUR, gap=Gap()), a_step("rinse", StepKind.RINSE), slug="dye"
)


def cured() -> Story:
    """A lot whose third coat is dry; the fourth, optional, is open."""
    return Story().up_to("dip-4")


def test_the_cure_begins_after_the_third_coat_though_the_fourth_is_open():
    story = cured()
    cure = cure_of(story.lot)
    assert cure is not None
    assert cure.running
    assert cure.fully_dry == story.at == story.lot.step(story.number("dry-3")).end
    assert story.lot.state_of(story.lot.step(story.number("dip-4"))) is StepState.OPEN
    assert story.lot.state(story.at) is LotState.CURING
    assert story.lot.coats(0) == 3


def test_the_marks_of_a_cure_count_days_of_24_hours_from_fully_dry():
    """Common practice, no source: painting to day 14, an immersion bath from day 90."""
    story = cured()
    cure = cure_of(story.lot)
    assert cure is not None
    dry = cure.fully_dry
    found = {mark.kind: mark.at - dry for mark in cure.marks}
    assert found == {"paint": 14 * DAY, "resists": 14 * DAY, "ready": 90 * DAY}
    assert story.lot.state(dry + 90 * DAY - MINUTE) is LotState.CURING
    assert story.lot.state(dry + 90 * DAY) is LotState.READY


def test_taking_the_fourth_coat_voids_the_marks_and_starts_them_again():
    story = cured()
    first = cure_of(story.lot)
    assert first is not None
    lot = story.after(days=1).mark(Act.START, "dip-4")
    assert cure_of(lot) is None
    assert lot.step(story.number("cure")).start is None
    assert lot.state(story.at) is LotState.IN_WORK
    assert lot.coats(0) == 4
    story.after(minutes=1).mark(Act.END, "dip-4")
    story.after(minutes=5).mark(Act.END, "spin-4")
    lot = story.after(hours=9).mark(Act.DRY, "dry-4")
    again = cure_of(lot)
    assert again is not None
    assert again.fully_dry == story.at > first.fully_dry
    assert lot.step(story.number("cure")).start == story.at


def test_a_repeated_coat_gets_the_next_free_numbers_and_stands_before_the_cure():
    story = cured()
    numbers = [step.number for step in story.lot.steps]
    lot = story.mark(Act.REPEAT, "dip-3")
    new = [step for step in lot.steps if step.number not in numbers]
    top = max(numbers)
    assert [step.number for step in new] == [top + 1, top + 2, top + 3]
    assert [step.slug for step in new] == ["dip-5", "spin-5", "dry-5"]
    assert {step.coat for step in new} == {5}
    assert not any(step.optional for step in new)
    slugs = [step.slug for step in lot.steps]
    assert len(set(slugs)) == len(slugs)
    places = [lot.place_of(step.number) for step in new]
    assert places == [lot.place_of(story.number("dry-4")) + 1 + index for index in range(3)]
    assert lot.place_of(story.number("cure")) == places[-1] + 1
    assert [step.number for step in lot.steps if step.number in numbers] == numbers
    assert cure_of(lot) is None
    assert lot.state_of(new[0]) is StepState.OPEN


def test_a_coat_may_be_repeated_twice_and_by_any_of_its_steps():
    story = cured()
    story.mark(Act.REPEAT, "spin-3")
    lot = story.mark(Act.REPEAT, "dry-5")
    slugs = [step.slug for step in lot.steps]
    assert slugs[-4:] == ["dip-6", "spin-6", "dry-6", "cure"]
    assert len(set(slugs)) == len(slugs)


def test_steps_of_one_kind_in_a_coat_keep_names_of_their_own():
    twice = a_method(
        *(a_step(slug, StepKind.HAND, coat=1) for slug in ("left", "right")),
        a_step("dry-1", StepKind.DRY, coat=1),
    )
    story = Story(twice)
    lot = story.mark(Act.REPEAT, "left")
    slugs = [step.slug for step in lot.steps]
    assert len(slugs) == 6
    assert len(set(slugs)) == 6


def test_a_repeated_step_that_is_no_coat_stands_right_behind_itself():
    story = Story().up_to("first-soak")
    lot = story.mark(Act.REPEAT, "blend")
    again = lot.steps[lot.place_of(2) + 1]
    assert (again.slug, again.number) == ("blend-again-2", max(s.number for s in lot.steps))
    lot = story.mark(Act.REPEAT, "blend")
    assert len({step.slug for step in lot.steps}) == len(lot.steps)


def test_use_freezes_the_age_and_ends_the_cure():
    story = cured()
    dry = story.at
    lot = story.after(days=10).mark(Act.USE, note="painted")
    cure = cure_of(lot)
    assert cure is not None
    assert not cure.running
    assert cure.age(dry + 200 * DAY) == 10 * DAY
    assert lot.use is not None
    assert (lot.use.at, lot.use.note) == (dry + 10 * DAY, "painted")
    assert lot.step(story.number("dip-4")).skipped is not None
    assert lot.state(dry + 200 * DAY) is LotState.USED


@pytest.mark.parametrize("act", [Act.START, Act.END])
def test_going_on_to_a_later_method_ends_the_cure_with_its_age_frozen(act):
    story = cured()
    dry = story.at
    lot = story.after(days=91).go_on(PAINTED)
    cure = cure_of(lot)
    assert cure is not None
    assert cure.running, "joining alone ends nothing"
    assert lot.state(story.at) is LotState.READY
    lot = story.after(days=1).mark(act, "bath")
    cure = cure_of(lot)
    assert cure is not None
    assert cure.ended == dry + 92 * DAY
    assert cure.age(dry + 500 * DAY) == 92 * DAY


def test_step_numbers_run_on_over_methods_and_versions_are_kept():
    story = Story(SCOUR)
    first = len(story.lot.steps)
    lot = story.go_on(LONG)
    assert [step.number for step in lot.steps] == list(range(1, len(lot.steps) + 1))
    assert [method.key for method in lot.methods] == [(SCOUR, 1), (LONG, 1)]
    assert {step.join for step in lot.steps[first:]} == {1}


def test_alkali_after_soy_is_asked_about():
    """Common practice, no source: alkali undoes the binder."""
    alkali = a_method(a_step("wash"), slug="alkaline-wash", brings=("alkali",))
    story = cured()
    story.book[alkali.key] = alkali
    asked = story.refusal(Act.GO_ON, data={"method": list(alkali.key)})
    assert len(story.lot.methods) == 1
    assert isinstance(asked, Question)
    assert "alkali" in str(asked)
    assert len(story.go_on(alkali, sure=True).methods) == 2


def test_the_age_of_a_cure_across_clock_changes_is_days_of_24_hours():
    """From 20 October to 20 November London's clock falls back; ten days are 240 hours."""
    begun = datetime(2026, 10, 20, 8, tzinfo=UTC)
    one = a_method(*coat(1), a_step("cure", StepKind.CURE), cure=a_cure(default_days=10))
    story = Story(one, at=begun).up_to("cure")
    cure = cure_of(story.lot)
    assert cure is not None
    assert cure.ready_at - cure.fully_dry == 240 * HOUR
    assert cure.age(cure.fully_dry + 30 * DAY) == timedelta(hours=720)


def test_correcting_when_the_cloth_was_dry_moves_the_cure():
    story = cured()
    last = max(entry.number for entry in story.entries if entry.act is Act.DRY)
    earlier = story.at - 2 * HOUR
    story._add(Entry("26-001", Act.CORRECT, earlier, story.at, "Europe/London",
                     data={"at": True}, target=last))  # fmt: skip
    cure = cure_of(story.lot)
    assert cure is not None
    assert cure.fully_dry == earlier
    assert story.lot.step(story.number("cure")).start == earlier
