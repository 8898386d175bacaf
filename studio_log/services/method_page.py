"""A method as a page to work from, and two methods side by side, in words."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import timedelta

from studio_log.domain.amount_bases import BASES
from studio_log.domain.amounts import Amount
from studio_log.domain.cautions import Caution
from studio_log.domain.methods import Gap, Method, MethodStep, StepKind
from studio_log.domain.number_text import plain
from studio_log.language.words import counted, tr, tr_later
from studio_log.present import words
from studio_log.present.method_drawing import DrawnStep, drawn_steps

WHOLE = tr_later("{whole} from the first step to the last, {hands} by hand")
WITH_OPTIONAL = tr_later(
    "{whole} from the first step to the last, {hands} by hand, what may be left out with it"
)
CURE = (tr_later("then {n} day of cure"), tr_later("then {n} days of cure"))
EVERY, THEN_EVERY = tr_later("every {span}"), tr_later("then every {span}")
PAGE_GRAMS = 100.0
"""The weight of cloth that a page is made for unless another is asked for."""


@dataclass(frozen=True)
class MethodPageFor:
    """One method, its latest version, with the amounts for so many grams of cloth."""

    slug: str
    grams: float = PAGE_GRAMS


@dataclass(frozen=True)
class CautionsFor:
    """Every caution that a step may name, in the order of their file."""


@dataclass(frozen=True)
class PageStep:
    """One step, in words ready to show; empty words are left out."""

    title: str
    kind: StepKind
    do: str
    facts: tuple[tuple[str, str], ...]
    """Heading and words: "How long", "10–18 h, aim 12 h"."""
    amounts: tuple[str, ...]
    cautions: tuple[str, ...]


@dataclass(frozen=True)
class MethodPage:
    """A page that can be worked from with no other book."""

    slug: str
    version: int
    title: str
    school: str
    summary: str
    time_words: str
    grams: float
    grams_words: str
    steps: tuple[PageStep, ...]
    drawn: tuple[DrawnStep, ...]
    views: tuple[str, ...]
    """Views of the cure, each with its source."""
    cautions: tuple[tuple[str, str], ...]
    """Title and full words of each, in the order in which the steps need them."""
    sources: tuple[str, ...]
    text: str
    """The method's file."""
    method: Method = field(repr=False)


def make_page(
    method: Method,
    grams: float,
    amounts: Mapping[str, Amount],
    cautions: Mapping[str, Caution],
    units: words.Units,
) -> MethodPage:
    """Give the page of a method for a weight of cloth in grams; amounts by their slug."""
    named = dict.fromkeys(slug for step in method.steps for slug in step.cautions)
    known = [cautions[slug] for slug in named if slug in cautions]
    return MethodPage(
        slug=method.slug,
        version=method.version,
        title=method.title,
        school=method.school,
        summary=method.summary,
        time_words=time_words(method),
        grams=grams,
        grams_words=words.mass(grams, units),
        steps=tuple(_step(step, amounts, cautions, units) for step in method.steps),
        drawn=drawn_steps(method),
        views=tuple(_views(method)),
        cautions=tuple((one.title, one.text) for one in known),
        sources=tuple(sources_of(method)),
        text=method.text,
        method=method,
    )


def time_words(method: Method) -> str:
    """Say how long it takes by its aims and how much of that is work of the hands."""
    whole = sum((step.gap.aim + step.lasts.aim for step in method.steps if step.lasts), timedelta())
    hands = sum((step.hands_on for step in method.steps), timedelta())
    said = WITH_OPTIONAL if any(step.optional for step in method.steps) else WHOLE
    parts = [tr(said, whole=words.span(whole), hands=words.span(hands))]
    if method.cure is not None:
        parts.append(counted(method.cure.default_days, *CURE))
    return f"{'; '.join(parts)}."


def gap_words(gap: Gap) -> str:
    """Say how soon after the step before: "at once", "within 2 h of draining"."""
    if gap.at_once:
        return tr("at once")
    after = gap.after or tr("the step before")
    if gap.most is not None:
        return tr("within {span} of {step}", span=words.span(gap.most), step=after)
    if not gap.least:
        return ""
    return tr("not before {span} of {step}", span=words.span(gap.least), step=after)


def tending_words(step: MethodStep) -> str:
    """Say how often it is tended: "turn the cloth: after 5 min, then every 5 min"."""
    tending = step.tending
    if tending is None:
        return ""
    parts = [tr("after {span}", span=words.span(at)) for at in tending.offsets]
    if tending.every is not None:
        each = THEN_EVERY if parts else EVERY
        parts.append(tr(each, span=words.span(tending.every)))
    return f"{tending.act}: {', '.join(parts)}" if parts else tending.act


def _step(
    step: MethodStep,
    amounts: Mapping[str, Amount],
    cautions: Mapping[str, Caution],
    units: words.Units,
) -> PageStep:
    readings = ", ".join(f"{one.title} ({one.unit})" if one.unit else one.title
                         for one in step.readings)  # fmt: skip
    by_view = tr("by the view of the cure")
    facts = (
        (tr("How soon"), gap_words(step.gap)),
        (tr("How long"), words.window_words(step.lasts) if step.lasts else by_view),
        (tr("By hand"), words.span(step.hands_on)),
        (tr("Tend"), tending_words(step)),
        (tr("Measure"), readings),
        (tr("If it waits"), step.if_late),
    )
    title = tr("{step} (may be left out)", step=step.title) if step.optional else step.title
    return PageStep(
        title=title,
        kind=step.kind,
        do=step.do,
        facts=tuple((head, said) for head, said in facts if said),
        amounts=tuple(_amount_words(step, amounts, units)),
        cautions=tuple(cautions[slug].title for slug in step.cautions if slug in cautions),
    )


def _amount_words(
    step: MethodStep, amounts: Mapping[str, Amount], units: words.Units
) -> Iterator[str]:
    for rule in step.amounts:
        one = amounts.get(rule.slug)
        if one is None:  # it goes by the size of the cloth, and a page knows only its weight
            figure = f"{plain(rule.value, 2)} {BASES[rule.basis].rule_unit}"
            by_size = tr("{figure}, by the size of the cloth", figure=figure)
            yield f"{rule.title}: {by_size}. {rule.note}"
        else:
            yield f"{one.title}: {words.amount_with_kitchen(one, units)} — {one.how}. {rule.note}"


def _views(method: Method) -> Iterator[str]:
    for view in method.cure.views if method.cure else ():
        yield f"{view.days} d: {view.title} ({view.source})"


def sources_of(method: Method) -> Iterator[str]:
    """Give where the figures of a method come from, each once."""
    views = method.cure.views if method.cure else ()
    amounts = (rule.source for step in method.steps for rule in step.amounts)
    yield from dict.fromkeys((method.source, *amounts, *(view.source for view in views)))


def differences(one: Method, other: Method) -> tuple[str, ...]:
    """Say where two methods part, step by step, each in one sentence."""
    mine = {step.slug: step for step in one.steps}
    theirs = {step.slug: step for step in other.steps}
    said = [*_only(one, theirs), *_only(other, mine)]
    for slug, step in mine.items():
        if slug in theirs:
            said += _parted(step, theirs[slug])
    return tuple(said)


def _only(method: Method, others: Mapping[str, MethodStep]) -> Iterator[str]:
    titles = [step.title for step in method.steps if step.slug not in others]
    if titles:
        yield tr("Only in {method}: {steps}.", method=method.title, steps="; ".join(titles))


def _parted(one: MethodStep, other: MethodStep) -> Iterator[str]:
    pairs = (
        (
            tr_later("{step} lasts: {here} | {there}."),
            *(words.window_words(step.lasts) if step.lasts else "" for step in (one, other)),
        ),
        (
            tr_later("{step} comes: {here} | {there}."),
            *(gap_words(step.gap) for step in (one, other)),
        ),
        (
            tr_later("{step} is tended: {here} | {there}."),
            *(tending_words(step) for step in (one, other)),
        ),
        (
            tr_later("{step} takes: {here} | {there}."),
            *(_rules_words(step) for step in (one, other)),
        ),
    )
    nothing = tr("nothing said")
    for said, here, there in pairs:
        if here != there:
            yield tr(said, step=one.title, here=here or nothing, there=there or nothing)


def _rules_words(step: MethodStep) -> str:
    return ", ".join(
        f"{rule.title} {rule.value:g} ({rule.basis.value.replace('_', ' ')})"
        for rule in step.amounts
    )
