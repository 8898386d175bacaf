"""Every method that ships is walked from its first step to its last, each at its best moment."""

from datetime import timedelta

import pytest

from studio_log.domain.amounts import Amount, work_out
from studio_log.domain.due import reminders_of
from studio_log.domain.errors import Question
from studio_log.domain.journal import Act
from studio_log.domain.lots import LotState, StepState, cure_of
from studio_log.domain.methods import Method, MethodStep, StepKind
from studio_log.domain.quiet import QuietHours
from studio_log.domain.spoil_orders import Case, warnings_of
from studio_log.domain.windows import StepWindow, windows_of
from tests.support.builders import LONDON, NO_QUIET, Story, shipped

SLUGS = sorted(slug for slug, _ in shipped())
CLOTH_GRAMS = 350.0
"""What the two pieces of a `Story` weigh together."""


def method_of(slug: str) -> Method:
    return shipped()[(slug, 1)]


def amounts_of(step: MethodStep) -> list[Amount]:
    """The amounts of one step, for the cloth of a `Story`; they follow those of the method."""
    method = next(one for one in shipped().values() if step in one.steps)
    whole = work_out([rule for one in method.steps for rule in one.amounts], grams=CLOTH_GRAMS)
    mine = {rule.slug for rule in step.amounts}
    return [one for one in whole if one.slug in mine]


def in_order(window: StepWindow) -> bool:
    """Whether start and end stand in order and the best moments inside them."""
    spans = (window.start, window.end)
    rising = all(
        one.earliest <= one.aim and (one.latest is None or one.aim <= one.latest) for one in spans
    )
    return rising and window.start.holds(window.best_start) and window.end.holds(window.best_end)


@pytest.mark.parametrize("quiet", [NO_QUIET, LONDON], ids=["by day and night", "with quiet hours"])
@pytest.mark.parametrize("slug", SLUGS)
def test_a_lot_walks_a_method_at_its_best_moments_and_breaks_no_limit(
    slug: str, quiet: QuietHours
) -> None:
    story = Story(slug)
    ahead = [step for step in story.lot.steps if not step.optional]
    for step in ahead:
        window = windows_of(story.lot, story.at, quiet)[step.number]
        assert in_order(window), step.slug
        if step.spec.kind is StepKind.CURE:
            break
        if not story.lot.step(step.number).running:
            story.mark(Act.START, step.number, at=window.best_start)
        window = windows_of(story.lot, story.at, quiet)[step.number]
        assert in_order(window), step.slug
        assert warnings_of(Case(story.lot, step, story.at, amounts_of(step.spec))) == (), step.slug
        found = reminders_of(story.lot, story.at, quiet)
        assert any(one.step == step.number for one in found), step.slug
        act = Act.DRY if step.spec.kind is StepKind.DRY else Act.END
        story.mark(act, step.number, at=window.best_end)
        later = windows_of(story.lot, story.at, quiet).values()
        assert [one.broken for one in later if one.broken] == [], step.slug
    cure = cure_of(story.lot)
    assert (cure is not None) == (story.lot.method.cure is not None)
    state = story.lot.state(story.at + timedelta(days=cure.days if cure else 0))
    assert state is LotState.READY


@pytest.mark.parametrize("slug", SLUGS)
def test_a_lot_kept_waiting_past_a_step_hears_what_that_means(slug: str) -> None:
    story = Story(slug)
    first = story.lot.steps[0]
    assert first.spec.lasts is not None
    story.mark(Act.START, first.number)
    story.at += first.spec.lasts.latest + timedelta(minutes=1)
    told = {
        one.if_late for one in reminders_of(story.lot, story.at, NO_QUIET) if one.due <= story.at
    }
    assert first.spec.if_late in told
    broken = windows_of(story.lot, story.at, NO_QUIET)[first.number].broken
    assert broken is not None
    assert broken.by == timedelta(minutes=1)


@pytest.mark.parametrize("slug", SLUGS)
@pytest.mark.parametrize("grams", [15.0, CLOTH_GRAMS, 20_000.0])
def test_its_amounts_can_be_worked_out_for_a_swatch_and_for_a_bale(slug: str, grams: float) -> None:
    rules = [rule for step in method_of(slug).steps for rule in step.amounts]
    amounts = work_out(rules, grams=grams)
    assert [one.slug for one in amounts] == [rule.slug for rule in rules]
    assert all(one.value > 0 and one.shown and one.how for one in amounts)


def test_steps_that_nobody_could_meet_in_time_are_not_asked_for() -> None:
    """A limit after the step before leaves time to take the cloth from one place to the other."""
    for (slug, _), method in shipped().items():
        for step in method.steps:
            least = timedelta(minutes=5)
            assert step.gap.most is None or step.gap.most >= least, (slug, step.slug)
            assert step.lasts is None or step.lasts.latest > step.lasts.earliest, (slug, step.slug)
            assert step.hands_on <= timedelta(hours=1), (slug, step.slug)


def walk_what_is_left(story: Story) -> None:
    """End every step that is not closed, each after its aim."""
    for step in story.lot.steps:
        if not step.closed and step.spec.lasts is not None:
            story.at += step.spec.lasts.aim
            act = Act.DRY if step.spec.kind is StepKind.DRY else Act.END
            story.mark(act, step.number)


def test_cloth_goes_from_scour_to_mordant_to_dye_to_its_wash_in_one_lot() -> None:
    story = Story("scour-cellulose")
    for number, slug in enumerate(
        ("mordant-tannin-alum", "dye-madder", "after-iron", "finish-wash")
    ):
        walk_what_is_left(story)
        story.after(hours=2).go_on(slug)
        assert story.lot.method.slug == slug
        assert len(story.lot.methods) == number + 2
    numbers = [step.number for step in story.lot.steps]
    assert numbers == list(range(1, len(numbers) + 1)), "step numbers run on"
    walk_what_is_left(story)
    assert {story.lot.state_of(step) for step in story.lot.steps} == {StepState.DONE}


@pytest.mark.parametrize(
    ("soy", "alkali"),
    [
        ("soy-immersion-long", "indigo-fructose-vat"),
        ("soy-pigment-milk", "after-alkali"),
        ("soy-size-brushed", "scour-cellulose-strong"),
        ("soy-post-size", "indigo-iron-vat"),
        ("soy-steam-set", "indigo-dips"),
    ],
)
def test_alkali_after_soy_is_asked_about_before_the_pot_is_hot(soy: str, alkali: str) -> None:
    story = Story(soy).up_to("cure")
    story.after(days=100)
    asked = story.refusal(Act.GO_ON, data={"method": [alkali, 1]})
    assert isinstance(asked, Question)
    assert "brings alkali, which undoes what" in str(asked)
    story.go_on("after-acid")  # acid does soy no harm: iroai.jp names alkali only
    assert story.lot.method.slug == "after-acid"


@pytest.mark.parametrize(
    ("first", "then"),
    [
        ("scour-cellulose-strong", "dye-madder"),
        ("soy-immersion-long", "mordant-tannin-alum"),
        ("soy-painting-short", "soy-pigment-milk"),
        ("soy-pigment-milk", "finish-wash"),
        ("mordant-acetate-chalk", "dye-madder"),
        ("dye-immersion", "after-iron"),
    ],
)
def test_methods_that_follow_each_other_well_are_not_warned_of(first: str, then: str) -> None:
    story = Story(first).up_to("cure")
    story.after(days=120).go_on(then)
    told = [
        warned
        for step in story.lot.steps
        if not step.closed and story.lot.taken(step)
        for warned in warnings_of(Case(story.lot, step, story.at, amounts_of(step.spec)))
    ]
    assert told == []


POURED_AWAY = {"soda-ash", "alum", "acetate", "triformate", "iron", "lime", "citric", "leaf"}
OLDER = {"scour-cellulose"}
"""Kept at the version that studios have; its pages on safety say where a bath may go."""


@pytest.mark.parametrize("slug", [slug for slug in SLUGS if slug not in OLDER])
def test_a_method_with_chemicals_says_where_its_baths_may_go(slug: str) -> None:
    steps = method_of(slug).steps
    amounts = {rule.slug.rstrip("-123") for step in steps for rule in step.amounts}
    if amounts & POURED_AWAY:
        assert any("spent-baths" in step.cautions for step in steps)


@pytest.mark.parametrize("slug", SLUGS)
def test_what_is_hot_or_burns_is_kept_from_children_while_it_stands(slug: str) -> None:
    dangers = {"hot-alkali", "lime", "iron-salt"}
    steps = method_of(slug).steps
    if any(dangers & set(step.cautions) for step in steps):
        assert any("children-pets" in step.cautions for step in steps)
