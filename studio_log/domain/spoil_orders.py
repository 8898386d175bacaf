"""Orders that spoil work, before the pot is hot: rules over a lot, one of its steps and readings.

Pure: the same lot, step, moment, amounts and readings give the same warnings. What a step brings is
read from the short names of its amounts, so that a method of the dyer's own is seen as well.
"""

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import Final

from studio_log.domain.amounts import Amount
from studio_log.domain.lots import Cure, Lot, LotStep, cure_of
from studio_log.domain.methods import StepKind
from studio_log.domain.number_text import plain
from studio_log.domain.spoil_data import (
    ACETATE_DRIES,
    ACETATES,
    ALKALIS,
    FIXERS,
    HEAT_LIMITS,
    IRONS,
    MOST_IRON,
    MOST_IRON_PROTEIN,
    MOST_SODA_PROTEIN,
    PROTEIN_FIBRES,
    WASHED_FROM,
)
from studio_log.domain.spoiling import Warned
from studio_log.language.words import tr, tr_later

COMMON: Final = tr_later("common practice")
_WET: Final = frozenset({StepKind.SOAK, StepKind.DIP, StepKind.SCOUR, StepKind.RINSE})
_DAY: Final = timedelta(days=1)


@dataclass(frozen=True)
class Case:
    """One step of a lot at a moment, with its amounts and what was read in it."""

    lot: Lot
    step: LotStep
    at: datetime
    amounts: Sequence[Amount] = ()
    readings: Mapping[str, float | str] = field(default_factory=dict)


@dataclass(frozen=True)
class SpoilRule:
    """One order that spoils: `find` gives the values of `words` where it is broken, else None."""

    slug: str
    words: str
    source: str
    find: Callable[[Case], Mapping[str, str] | None]


def warnings_of(case: Case) -> tuple[Warned, ...]:
    """Give the warnings for beginning, or being in, a step; none where nothing spoils."""
    found = []
    for rule in RULES:
        values = rule.find(case)
        if values is not None:
            found.append(Warned(rule.slug, tr(rule.words, **values), tr(rule.source)))
    return tuple(found)


# -- what a step and a lot have in them ------------------------------------------------------


def _words(slug: str) -> set[str]:
    return set(re.split(r"[^a-z]+", slug))


def _brings(step: LotStep) -> set[str]:
    """Give the words in the short names of a step and of its amounts."""
    return _words(step.slug).union(*(_words(rule.slug) for rule in step.spec.amounts))


def _brought_so_far(case: Case) -> set[str]:
    """Give the words of all that this step's method brought up to it."""
    steps = case.lot.steps[: case.lot.place_of(case.step.number) + 1]
    return set().union(*(_brings(one) for one in steps if one.join == case.step.join))


def _earlier(case: Case) -> list[LotStep]:
    """Give the steps walked before this one that are not skipped, in order."""
    before = case.lot.steps[: case.lot.place_of(case.step.number)]
    return [step for step in before if step.skipped is None and case.lot.taken(step)]


def _is_alkaline(lot: Lot, step: LotStep) -> bool:
    """Say whether a step lays cloth into soda or lime; with alum they neutralise each other."""
    brought = _brings(step)
    if brought & ALKALIS:
        return "alum" not in brought
    by_method = "alkali" in lot.methods[step.join].brings
    return by_method and step.spec.kind in (StepKind.SCOUR, StepKind.DIP)


def _is_wet(step: LotStep) -> bool:
    return step.spec.kind in _WET or step.slug.startswith("wet-out")


def _is_wash(step: LotStep) -> bool:
    """Say whether a step takes loose colour with it: a rinse, a scour, a wash."""
    return step.spec.kind in (StepKind.RINSE, StepKind.SCOUR) or "wash" in _words(step.slug)


def _protein(lot: Lot) -> str:
    """Give the first protein fibre among the pieces, "" for none."""
    fibres = (word for piece in lot.pieces for word in piece.fibre.casefold().split())
    return next((word for word in fibres if word in PROTEIN_FIBRES), "")


def _cured_under(case: Case) -> tuple[LotStep, Cure | None] | None:
    """Give the cure of an earlier method that this step follows, None where there is none.

    The second is None where the cloth is not even dry. Steam sets soy instead of time: what comes
    with it or after it follows no cure any more.
    """
    cures = [
        one
        for one in _earlier(case)
        if one.spec.kind is StepKind.CURE and one.join < case.step.join
    ]
    if not cures:
        return None
    later = [*_earlier(case), case.step]
    if any("steam" in _words(one.slug) and one.join > cures[-1].join for one in later):
        return None
    cure = cure_of(case.lot)
    return cures[-1], cure if cure is not None and cure.step.number == cures[-1].number else None


# -- the rules -------------------------------------------------------------------------------


def _alkali_after_soy(case: Case) -> Mapping[str, str] | None:
    earlier = _earlier(case)
    if not _is_alkaline(case.lot, case.step) or not any(one.spec.uses_milk for one in earlier):
        return None
    own = [one for one in earlier if one.join == case.step.join]
    if any(_is_alkaline(case.lot, one) for one in own):
        return None  # told at the first of them
    return {"step": case.step.title}


def _uncured(case: Case) -> Mapping[str, str] | None:
    under = _cured_under(case) if _is_wet(case.step) else None
    if under is None:
        return None
    resting, cure = under
    if any(_is_wet(one) and one.join > resting.join for one in _earlier(case)):
        return None  # told at the first of them
    if cure is None:
        return {"age": tr("not dry yet"), "step": case.step.title}
    age = max(case.at - cure.fully_dry, timedelta(0)) / _DAY
    if age >= cure.days:
        return None
    told = tr("{age} of {days} days", age=plain(int(age), 0), days=cure.days)
    return {"age": told, "step": case.step.title}


def _washed_early(case: Case) -> Mapping[str, str] | None:
    use = case.lot.use
    under = _cured_under(case) if _is_wash(case.step) else None
    if use is None or under is None or "paint" not in _ready_for(case, under[0]):
        return None
    if any(_is_wash(one) and one.join > under[0].join for one in _earlier(case)):
        return None  # told at the first of them
    since = case.at - use.at
    if not timedelta(0) <= since < WASHED_FROM:
        return None
    return {"days": plain(int(since / _DAY), 0), "least": plain(WASHED_FROM / _DAY, 0)}


def _ready_for(case: Case, cure: LotStep) -> str:
    plan = case.lot.methods[cure.join].cure
    return "" if plan is None else plan.ready_title.casefold()


def _chalked_early(case: Case) -> Mapping[str, str] | None:
    dried = _dried_since_acetate(case) if _brings(case.step) & FIXERS else []
    if not dried:
        return None
    ends = [one.end for one in dried if one.end is not None]
    if not ends:
        return {"since": tr("not dry yet")}
    since = case.at - max(ends)
    if since >= ACETATE_DRIES:
        return None
    hours = plain(int(max(since, timedelta(0)) / timedelta(hours=1)), 0)
    return {"since": tr("dry for {hours} h", hours=hours)}


def _dried_since_acetate(case: Case) -> list[LotStep]:
    """Give the dryings since the last acetate; none where it was brought for another purpose."""
    earlier = _earlier(case)
    acid = [n for n, one in enumerate(earlier) if _brings(one) & ACETATES]
    since = earlier[acid[-1] :] if acid else []
    return [one for one in since if one.spec.kind is StepKind.DRY]


def _too_much(case: Case, words: frozenset[str], most: float) -> Mapping[str, str] | None:
    """Give the first amount of such a material above its most, in per cent of the cloth."""
    grams = case.lot.grams
    for one in case.amounts:
        if not grams or one.unit != "g" or not _words(one.slug) & words:
            continue
        percent = one.value / grams * 100
        if percent > most * (1 + 1e-9):
            return {"percent": plain(percent, 1), "most": plain(most, 1), "title": one.title}
    return None


def _too_much_iron(case: Case) -> Mapping[str, str] | None:
    if "indigo" in _brought_so_far(case):
        return None  # in a vat iron goes by the indigo, and the cloth takes none
    most = MOST_IRON_PROTEIN if _protein(case.lot) else MOST_IRON
    return _too_much(case, IRONS, most)


def _soda_on_protein(case: Case) -> Mapping[str, str] | None:
    fibre = _protein(case.lot)
    if not fibre or case.step.spec.kind is not StepKind.SCOUR:
        return None
    found = _too_much(case, frozenset({"soda"}), MOST_SODA_PROTEIN)
    return None if found is None else {**found, "fibre": fibre}


def _too_hot(case: Case) -> Mapping[str, str] | None:
    """Give the material that the latest heat read in the step is too much for, or nearly."""
    heats = [
        value
        for name, value in case.readings.items()
        if "temperature" in name and "room" not in name and isinstance(value, int | float)
    ]
    if not heats:
        return None
    words = _brought_so_far(case)
    if "indigo" in words:  # a vat is begun hot and worked cool
        return None
    if case.step.spec.kind is not StepKind.BEANS:
        words.discard("beans")
    limits = [HEAT_LIMITS[word] for word in words & set(HEAT_LIMITS)]
    passed = [one for one in limits if heats[-1] > one.near]
    if not passed:
        return None
    limit = min(passed, key=lambda one: (one.most, one.title))
    return {
        "heat": plain(heats[-1], 1),
        "title": tr(limit.title),
        "most": plain(limit.most, 0),
        "reason": tr(limit.reason),
    }


RULES: Final = (
    SpoilRule(
        "alkali-after-soy",
        tr_later(
            "{step} lays soyed cloth into alkali, and alkali takes the soy off. Do it before the "
            "soy, or with a neutral soap."
        ),
        COMMON,
        _alkali_after_soy,
    ),
    SpoilRule(
        "uncured-to-bath",
        tr_later(
            "The soy has not cured ({age}): in {step} it washes off into the bath, and the cloth "
            "takes colour unevenly. Let it rest, or set it with steam."
        ),
        COMMON,
        _uncured,
    ),
    SpoilRule(
        "early-wash",
        tr_later(
            "Painted {days} days ago: before {least} days a wash takes colour with it. Wait, or "
            "set it with steam."
        ),
        COMMON,
        _washed_early,
    ),
    SpoilRule(
        "chalk-too-early",
        tr_later(
            "The mordant with acetate is {since}: chalk or bran washes it off while it smells of "
            "vinegar. Let it hang half a day from dry, until nothing smells."
        ),
        COMMON,
        _chalked_early,
    ),
    SpoilRule(
        "too-much-iron",
        tr_later(
            "{percent} % of {title} on the weight of the cloth is more than {most} %: iron makes "
            "cloth tender and goes on doing so. Take less."
        ),
        COMMON,
        _too_much_iron,
    ),
    SpoilRule(
        "soda-on-protein",
        tr_later(
            "{percent} % of {title} is more than {most} % on {fibre}: hot soda harms it. Use a "
            "neutral soap."
        ),
        COMMON,
        _soda_on_protein,
    ),
    SpoilRule(
        "too-hot",
        tr_later(
            "{heat} °C: above {most} °C {title} spoils, {reason}. Take the heat off now, or cool "
            "the bath."
        ),
        COMMON,
        _too_hot,
    ),
)
"""In the order in which they are told."""
