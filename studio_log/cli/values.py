"""Reading what was typed for an option; a Refusal with words where it makes no sense."""

import math
import re
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from typing import Final, TypeVar

from studio_log.domain.bath_text import BATH_CODE, whole_bath_code
from studio_log.domain.errors import Refusal
from studio_log.domain.mass_text import read_grams, read_litres
from studio_log.domain.number_text import NUMBER, clean, quoted, read_number
from studio_log.domain.piece_text import read_piece
from studio_log.domain.pieces import Piece
from studio_log.domain.swatch_text import SWATCH_CODE, whole_swatch_code
from studio_log.domain.trial_text import TRIAL_CODE, whole_trial_code
from studio_log.services import limits
from studio_log.services.limits import check_cure_days, check_grams, check_litres

_Value = TypeVar("_Value")

NOTHING: Final = "Nothing was changed."
MOST_READING: Final = 1e9
MOST_ENTRY: Final = 1_000_000
_LOT: Final = re.compile(r"\s*[0-9]{2}\s*-\s*[0-9]{1,5}\s*")
_MILK: Final = re.compile(r"\s*[Mm][0-9]{2}-[0-9]{1,5}\s*")
_OTHER: Final = re.compile(r"\s*[A-Za-z][0-9]{2}-[0-9]{1,5}\s*")
_SLUG: Final = re.compile(r"[a-z0-9][a-z0-9-]{0,79}")
_WHOLE: Final = re.compile(r"[0-9]{1,9}")
_PER_LITRE: Final = r"(?:g ?(?:/|per|to the) ?(?:l|litre|liter))?"
_NUMBER: Final = re.compile(rf"(?P<sign>[-−+]?)\s*(?P<figure>{NUMBER})")


def text(typed: str, what: str, *, longest: int = limits.LONGEST_NAME, empty: bool = False) -> str:
    """Give a name or note as typed, without blanks around; Refusal where it cannot be kept."""
    kept = typed.strip()
    if not kept and not empty:
        raise Refusal(f"{what} is empty. {NOTHING}")
    return limits.clean(kept, what, longest)


def note(typed: str | None) -> str:
    """Give a note; "" for none."""
    return "" if typed is None else text(typed, "The note", longest=limits.LONGEST_NOTE, empty=True)


def lot_code(typed: str) -> str:
    """Give a lot's code as typed, if it looks like one."""
    if not _LOT.fullmatch(typed):
        raise Refusal(f"{quoted(shown(typed))} is no lot's code, such as 26-031. {NOTHING}")
    return typed.strip()


_CODES: Final = (
    (BATH_CODE, whole_bath_code),
    (TRIAL_CODE, whole_trial_code),
    (SWATCH_CODE, whole_swatch_code),
)


def any_code(typed: str) -> str:
    """Give the code of whatever has a journal: lot, milk, material, bath, swatch or trial."""
    for pattern, whole in _CODES:
        if pattern.match(typed):
            return whole(typed)
    return typed.strip().upper() if _OTHER.fullmatch(typed) else lot_code(typed)


def lot_codes(typed: Iterable[str]) -> tuple[str, ...]:
    """Give lot codes; commas between them are as good as blanks."""
    codes = [part for one in typed for part in one.split(",")]
    return tuple(lot_code(code) for code in codes)


def milk_code(typed: str) -> str:
    """Give a milk's code as typed, if it looks like one."""
    if not _MILK.fullmatch(typed):
        raise Refusal(f"{quoted(shown(typed))} is no milk's code, such as M26-004. {NOTHING}")
    return typed.strip().upper()


def slug(typed: str, what: str) -> str:
    """Give a short name such as "soy-immersion-long"."""
    if not _SLUG.fullmatch(typed.strip()):
        raise Refusal(
            f"{quoted(shown(typed))} is no {what}: small letters, figures and hyphens. {NOTHING}"
        )
    return typed.strip()


def grams(typed: str | None) -> float | None:
    """Give the grams of "412g" or "1 lb 3 oz"."""
    return None if typed is None else check_grams(read_grams(typed))


def litres(typed: str | None) -> float | None:
    """Give the litres of "10 L", "2.5 gal" or of a bare number, which means litres."""
    if typed is None:
        return None
    bare = re.fullmatch(NUMBER, typed.strip())
    return check_litres(read_number(bare[0]) if bare else read_litres(typed))


def strength(typed: str | None) -> float | None:
    """Give grams a litre of "100" or "100 g/L"."""
    if typed is None:
        return None
    plain = clean(typed, "the strength", longest=40)
    found = re.fullmatch(rf"({NUMBER}) ?{_PER_LITRE}", plain.casefold())
    value = read_number(found[1]) if found else 0.0
    if not 0 < value <= 1_000:
        raise Refusal(
            f"{quoted(plain)} is no strength of milk: grams of beans to the litre, up to 1,000, "
            f"such as 100. {NOTHING}"
        )
    return value


def days(typed: str | None) -> int | None:
    """Give whole days of a cure."""
    if typed is None:
        return None
    plain = re.sub(r"\s*(d|days?)$", "", typed.strip())
    return check_cure_days(whole(plain, "a number of days", most=10**9, least=0))


def whole(typed: str, what: str, *, most: int, least: int = 1) -> int:
    """Give a whole number within bounds."""
    plain = typed.strip()
    value = int(plain) if _WHOLE.fullmatch(plain) else -1
    if not least <= value <= most:
        raise Refusal(f"{quoted(shown(typed))} is not {what}. {NOTHING}")
    return value


def numbers(typed: str, what: str) -> tuple[int, ...]:
    """Give the whole numbers of "1,3" or "1 3"."""
    parts = [part for part in re.split(r"[,\s]+", typed.strip()) if part]
    if not parts or len(parts) > 500:
        raise Refusal(f"{quoted(shown(typed))} names no {what}, as in 1,3. {NOTHING}")
    return tuple(whole(part, f"the number of one of the {what}", most=100_000) for part in parts)


def pieces(typed: Sequence[str]) -> tuple[tuple[Piece, ...], list[str]]:
    """Give the pieces of several lines, numbered through, and what was understood of each."""
    found: list[Piece] = []
    understood = []
    for line in typed:
        reading = read_piece(line, first_number=len(found) + 1)
        found.extend(reading.pieces)
        understood.append(reading.understood)
    return tuple(found), understood


def readings(typed: Sequence[str]) -> dict[str, float | str]:
    """Give the readings of "temperature=21", "colour=pale": a number where it is one."""
    return _pairs(typed, "A reading", "temperature=21", _reading)


def amounts(typed: Sequence[str]) -> dict[str, float]:
    """Give the dyer's own figures of "beans=35", by the amount's slug."""
    return _pairs(typed, "An amount", "beans=35", _amount)


def _pairs(
    typed: Sequence[str], what: str, example: str, read: Callable[[str, str], _Value]
) -> dict[str, _Value]:
    found: dict[str, _Value] = {}
    for one in typed:
        name, mark, value = one.partition("=")
        if not mark or not name.strip() or not value.strip():
            raise Refusal(
                f"{what} is a name and a value, as in {example}; not {quoted(shown(one))}. "
                f"{NOTHING}"
            )
        label = text(name, f"{what}'s name", longest=60)
        if label in found:
            raise Refusal(f"{label} was given twice. {NOTHING}")
        found[label] = read(value.strip(), label)
    return found


def _reading(value: str, label: str) -> float | str:
    number = _signed(value)
    if number is None:
        return text(value, label, longest=240)
    if not abs(number) < MOST_READING:
        raise Refusal(f"{label}: {quoted(shown(value))} is no reading. {NOTHING}")
    return number


def _amount(value: str, label: str) -> float:
    number = _signed(value)
    if number is None or not 0 < number < MOST_READING:
        raise Refusal(f"{label}: {quoted(shown(value))} is no figure of an amount. {NOTHING}")
    return number


def _signed(value: str) -> float | None:
    """Give a number with or without a sign; NaN for what only a computer calls a number."""
    found = _NUMBER.fullmatch(value)
    if found is not None:
        number = read_number(found["figure"])
        return -number if found["sign"] in {"-", "−"} else number
    try:
        number = float(value)
    except (ValueError, OverflowError):
        return None
    return number if math.isfinite(number) else math.nan


def file_path(typed: str, what: str) -> Path:
    """Give the path of a file to write or read; whether it can be is found out then."""
    plain = text(typed, what, longest=4_000)
    return Path(plain).expanduser()


def shown(typed: str) -> str:
    """Give a text that can be said back whatever it holds."""
    return "".join(sign if sign.isprintable() else "�" for sign in typed)
