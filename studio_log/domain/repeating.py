"""Repeating a step or a coat: new numbers, own names, in the right place."""

from dataclasses import replace

from studio_log.domain.errors import Refusal
from studio_log.domain.lots import Lot, LotStep
from studio_log.domain.methods import StepKind

COAT_WORDS = {
    StepKind.DIP: "Dip",
    StepKind.SOAK: "Dip",
    StepKind.SPIN: "Spin out",
    StepKind.DRY: "Dry",
}


def repeated(lot: Lot, step: LotStep) -> Lot:
    """Give the lot with the step (of a coat: the whole coat) once more, after the last of it.

    A fresh copy takes the next free numbers and slugs of its own; Refusal where a later
    method has begun or the step is a cure.
    """
    if step.spec.kind is StepKind.CURE:
        raise Refusal("A cure is not repeated: another coat starts it again. Nothing was changed.")
    if any(other.start or other.closed for other in lot.steps if other.join > step.join):
        raise Refusal(
            f"{lot.code} has begun {lot.method.title}; steps of the method before it can no "
            "longer be repeated. Nothing was changed."
        )
    if step.coat is not None and any(
        one.spec.kind is StepKind.CURE and one.join == step.join and one.end for one in lot.steps
    ):
        raise Refusal(
            f"The cure of {lot.code} has ended, so no further coat can be taken. "
            "Nothing was changed; take back the end of the cure first."
        )
    copies = _coat_again(lot, step) if step.coat is not None else (_step_again(lot, step),)
    after = _last_place(lot, step) + 1
    return replace(lot, steps=(*lot.steps[:after], *copies, *lot.steps[after:]))


def _last_place(lot: Lot, step: LotStep) -> int:
    """Place after which the copies stand: behind the last coat, or behind the step itself."""
    if step.coat is None:
        return lot.place_of(step.number)
    coats = [
        place
        for place, one in enumerate(lot.steps)
        if one.join == step.join and one.coat is not None
    ]
    return coats[-1]


def _fresh(step: LotStep, number: int, slug: str, title: str) -> LotStep:
    spec = replace(step.spec, optional=False)
    return LotStep(number, slug, title, spec, step.join, coat=step.coat)


def _step_again(lot: Lot, step: LotStep) -> LotStep:
    number = max(one.number for one in lot.steps) + 1
    times = sum(1 for one in lot.steps if one.spec.slug == step.spec.slug) + 1
    return _fresh(step, number, f"{step.spec.slug}-again-{times}", f"{step.spec.title}, once more")


def _coat_again(lot: Lot, step: LotStep) -> tuple[LotStep, ...]:
    coat = max(one.coat for one in lot.steps if one.join == step.join and one.coat) + 1
    group = [one for one in lot.steps if one.coat == step.coat and one.join == step.join]
    first = max(one.number for one in lot.steps) + 1
    kinds = [one.spec.kind for one in group]
    slugs = [
        f"{kind.value}-{coat}"
        + (f"-{kinds[:place].count(kind) + 1}" if kind in kinds[:place] else "")
        for place, kind in enumerate(kinds)
    ]
    return tuple(
        replace(
            _fresh(
                one,
                first + index,
                slugs[index],
                f"{COAT_WORDS.get(one.spec.kind, one.title)}, coat {coat}",
            ),
            coat=coat,
        )
        for index, one in enumerate(group)
    )
