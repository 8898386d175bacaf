"""Repeating steps and coats, whatever was repeated before."""

from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.journal import Act
from studio_log.domain.methods import StepKind
from tests.support.builders import Story


@given(st.lists(st.integers(0, 40), max_size=6))
def test_numbers_and_slugs_are_unique_and_old_steps_stay(picks):
    story = Story()
    for pick in picks:
        before = story.lot
        able = [step for step in before.steps if step.spec.kind is not StepKind.CURE]
        chosen = able[pick % len(able)]
        after = story.mark(Act.REPEAT, chosen.number)
        old = [step for step in after.steps if step.number <= len(before.steps)]
        assert tuple(old) == before.steps
        new = [step for step in after.steps if step.number > len(before.steps)]
        assert [step.number for step in new] == sorted(step.number for step in new)
        coat = [s for s in before.steps if s.coat is not None and s.coat == chosen.coat]
        wanted = [step.spec.kind for step in coat] or [chosen.spec.kind]
        assert [step.spec.kind for step in new] == wanted
        assert not any(step.start or step.closed for step in new)
        assert len({step.slug for step in after.steps}) == len(after.steps)
        assert after.steps[-1].spec.kind is StepKind.CURE


def test_a_repeated_step_is_walked_with_the_times_of_the_first():
    story = Story()
    story.mark(Act.REPEAT, "blend")
    blend, again = (story.lot.step(story.number(slug)) for slug in ("blend", "blend-again-2"))
    assert again.spec.lasts == blend.spec.lasts
    assert again.spec.gap == blend.spec.gap
    assert again.title == "Blend, once more"


def test_a_repeated_optional_coat_is_asked_for_and_so_not_optional():
    story = Story().up_to("dip-4")
    lot = story.mark(Act.REPEAT, "dip-4")
    assert lot.taken(lot.step(story.number("dip-5")))
    assert not lot.taken(lot.step(story.number("dip-4")))
