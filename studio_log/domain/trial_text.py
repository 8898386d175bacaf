"""Reading what is typed about a trial: its code, its ages, its other arms, a reading."""

import re
from collections.abc import Sequence
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.number_text import clean, quoted
from studio_log.domain.trial_design import MOST_ARMS
from studio_log.domain.trials import MEASURES, Arm
from studio_log.language.words import tr

TRIAL_CODE: Final = re.compile(r"\s*[Tt](\d{2})\s*-\s*(\d{1,5})\s*\Z", re.ASCII)
MOST_AGE_D: Final = 3_650.0
LONGEST: Final = 400
_AGE: Final = re.compile(r"([0-9]{1,4}(?:\.[0-9]{1,2})?)\s*(d|days?|w|weeks?)?", re.ASCII)
_FIGURE: Final = re.compile(r"-?[0-9]{1,4}(?:[.,][0-9]{1,6})?", re.ASCII)


def whole_trial_code(text: str) -> str:
    """Give a trial's code as it is written ("t26-1" is T26-001); Refusal where it is none."""
    found = TRIAL_CODE.match(text)
    if found is None:
        raise Refusal(
            tr("{typed} is no trial’s code, such as T26-001. Nothing was changed.",
               typed=quoted(text.strip()[:40]))
        )  # fmt: skip
    return f"T{found[1]}-{int(found[2]):03d}"


def read_ages(typed: str) -> tuple[float, ...]:
    """Give ages in days of "0, 3, 7 d, 2 w", the youngest first, each once."""
    plain = clean(typed, tr("the ages"), longest=LONGEST).casefold()
    found = [_AGE.fullmatch(part.strip()) for part in re.split(r"[,;]|\s+(?=[0-9])", plain) if part]
    ages = {
        float(one[1]) * (7 if (one[2] or "").startswith("w") else 1) for one in found if one
    }  # fmt: skip
    if not found or None in found or max(ages) > MOST_AGE_D:
        raise Refusal(
            tr("{typed} are no ages in days, such as 0, 3, 7, 14, 30, 60, 90. Nothing was changed.",
               typed=quoted(plain))
        )  # fmt: skip
    return tuple(sorted(ages))


def arms_of(ages: Sequence[float], others: Sequence[str] = ()) -> tuple[Arm, ...]:
    """Give the arms: the ages, then what has a name; each name once."""
    names = [clean(one, tr("the arm"), longest=60) for one in others]
    if len({one.casefold() for one in names}) < len(names):
        raise Refusal(tr("Two arms have one name. Nothing was changed."))
    made = [(age, "") for age in ages] + [(None, name) for name in names]
    if not 2 <= len(made) <= MOST_ARMS:
        raise Refusal(
            tr("A trial compares 2 to {most} arms, not {count}. Nothing was changed; give more "
               "ages, or an arm with a name such as “no soy”.", most=MOST_ARMS, count=len(made))
        )  # fmt: skip
    return tuple(Arm(number, age, name) for number, (age, name) in enumerate(made, 1))


def named_arm(typed: str, arms: Sequence[Arm]) -> Arm:
    """Give the arm of a name or an age: "no soy", "0", "0 d"; Refusal where there is none."""
    plain = clean(typed, tr("the arm"), longest=60).casefold()
    ages = _AGE.fullmatch(plain)
    days = float(ages[1]) * (7 if (ages[2] or "").startswith("w") else 1) if ages else None
    for arm in arms:
        if plain in {arm.name.casefold(), arm.words.casefold()} or (
            days is not None and arm.age_d == days
        ):
            return arm
    raise Refusal(
        tr("{typed} is none of the arms: {arms}. Nothing was changed.", typed=quoted(typed),
           arms=", ".join(arm.words for arm in arms))
    )  # fmt: skip


def read_figure(typed: str, measure: str) -> float:
    """Give what was read of one piece, within what its measure can be."""
    plain = clean(typed, tr("the reading"), longest=40)
    kind = MEASURES[measure]
    value = float(plain.replace(",", ".")) if _FIGURE.fullmatch(plain) else None
    if value is None or not kind.low <= value <= kind.high:
        raise Refusal(
            tr("{typed} is no reading of {measure}: a figure from {low} to {high}. Nothing was "
               "changed.", typed=quoted(plain), measure=tr(kind.words),
               low=f"{kind.low:g}", high=f"{kind.high:g}")
        )  # fmt: skip
    return value
