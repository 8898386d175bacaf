"""Reading what is typed to find lots: "cotton, over 400 g, soyed twice, cured over 30 days".

What is not understood is looked for as words; nothing typed is ever refused.
"""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from typing import Final

from studio_log.domain.day_text import take_day
from studio_log.domain.errors import Question, Refusal
from studio_log.domain.lots import LotState
from studio_log.domain.mass_text import MASS_WORDS, read_grams, units_pattern
from studio_log.domain.number_text import NUMBER, NUMBER_WORDS, plain
from studio_log.domain.piece_text import FIBRES
from studio_log.domain.span_text import read_span
from studio_log.language.calendar_words import MONTH_WORDS, MONTHS


@dataclass(frozen=True)
class LotSearch:
    """What lots are wanted: grams, whole days of 24 h, local days; what is unset asks nothing."""

    fibres: tuple[str, ...] = ()
    over_grams: float | None = None
    under_grams: float | None = None
    coats: int | None = None
    coats_exact: bool = False
    """Whether no more coats are wanted either."""
    cured_over: float | None = None
    cured_under: float | None = None
    state: str = ""
    begun_from: date | None = None
    begun_before: date | None = None
    place: str = ""
    sort: str = ""
    """One of SORTS."""
    backwards: bool = False
    """Whether that order runs the other way."""
    words: str = ""
    """All else: looked for as words."""


LONGEST: Final = 200
SORTS: Final = (
    "need", "newest", "code", "name", "weight", "begun", "ready", "age", "fibre", "shelf", "coats",
)  # fmt: skip
"""Orders of the list: what needs hands, latest code, earliest code, name, heaviest, latest begun,
soonest ready, oldest cure, fibre, shelf, most coats."""
YEARS: Final = range(1970, 2101)
_OVER: Final = r"(?:over|above|more than|heavier than|longer than|>)"
_UNDER: Final = r"(?:under|below|less than|lighter than|shorter than|<)"
_COUNT: Final = rf"(?P<count>[1-9][0-9]?|{'|'.join(NUMBER_WORDS)})"
_TIMES: Final[Mapping[str, int]] = {"once": 1, "twice": 2, "thrice": 3}
_STATES: Final[Mapping[str, str]] = {state.value.replace("-", " "): state for state in LotState}
_BOLD_STATES: Final = r"(?P<state>in[ -]work|curing)"
"""States that are meant wherever they stand; "used" and "ready" stand in many notes."""
_NO_FIBRE: Final = frozenset({"cloth", "paper", "soy", "wood"})
"""Words that stand in notes for other things."""

Reader = Callable[[LotSearch, re.Match[str], date], LotSearch | None]


def read_search(text: str, today: date) -> LotSearch:
    """Give what a person looks for; any text is a search."""
    found = LotSearch()
    rest: list[str] = []
    for place, piece in enumerate(re.split(r"[\"“”„]", text[:LONGEST])):
        if place % 2:  # what stands in quotation marks is meant to the letter
            rest.append(piece)
            continue
        for part in re.split(r"[;·\n]|,(?![0-9])", piece):
            found, left = _read_part(found, " ".join(part.split()), today)
            rest.append(left)
    return replace(found, words=" ".join(" ".join(rest).split()))


def search_words(search: LotSearch) -> tuple[str, ...]:
    """Say what was understood, part by part; typed again, they mean the same."""
    coats = f"{search.coats} coat{'' if search.coats == 1 else 's'}"
    parts = (
        *search.fibres,
        _figure("over", search.over_grams, "g"),
        _figure("under", search.under_grams, "g"),
        "" if search.coats is None
        else f"exactly {coats}" if search.coats_exact else f"{coats} or more",
        _figure("cured over", search.cured_over, "days"),
        _figure("cured under", search.cured_under, "days"),
        search.state.replace("-", " "),
        *_begun_words(search.begun_from, search.begun_before),
        sort_words(search.sort, backwards=search.backwards) if search.sort else "",
        f"at {search.place}" if search.place else "",
        f"“{search.words}”" if search.words else "",
    )  # fmt: skip
    return tuple(part for part in parts if part)


def with_part(text: str, part: str, today: date) -> str:
    """Give a search with one part more, "over 400 g"; it takes the place of one that it unsays."""
    return ", ".join(search_words(read_search(f"{text}, {part}", today)))


def without_part(text: str, part: str, today: date) -> str:
    """Give a search without one of the parts that `search_words` tells of it."""
    return ", ".join(one for one in search_words(read_search(text, today)) if one != part)


def sort_words(sort: str, *, backwards: bool = False) -> str:
    """Say an order as it is typed: "by weight", "by name backwards"."""
    return f"by {sort}{' backwards' if backwards else ''}"


def _figure(what: str, value: float | None, unit: str) -> str:
    return "" if value is None else f"{what} {plain(value, 2)} {unit}"


def _begun_words(first: date | None, before: date | None) -> tuple[str, ...]:
    if first and before and first == date(first.year, 1, 1) and before == _new_year(first):
        return (f"begun in {first.year}",)
    since = f"since {_day(first)}" if first else ""
    return since, f"before {_day(before)}" if before else ""


def _new_year(day: date) -> date:
    return date(day.year + 1, 1, 1)


def _day(day: date) -> str:
    return f"{day.day} {MONTHS[day.month - 1]} {day.year}"


def _read_part(found: LotSearch, part: str, today: date) -> tuple[LotSearch, str]:
    """Take out of one part all that is understood."""
    if part.lower() in _STATES:
        return replace(found, state=_STATES[part.lower()]), ""
    for pattern, reader in _PATTERNS:
        at = 0
        while (match := pattern.search(part, at)) is not None:
            read = reader(found, match, today)
            if read is None:
                at = match.end()
                continue
            found, at = read, 0
            # What stood on its two sides never belonged together.
            part = f"{part[: match.start()]} · {part[match.end() :]}"
    left = []
    for piece in part.split("·"):
        at_place = re.fullmatch(r"\s*(?:kept )?at (?P<place>.*\S)\s*", piece, re.IGNORECASE)
        if at_place:
            found = replace(found, place=at_place["place"].lower())
        else:
            left.append(piece)
    return found, " ".join(left)


def _weight(field: str) -> Reader:
    def read(found: LotSearch, match: re.Match[str], _today: date) -> LotSearch | None:
        try:
            grams = round(read_grams(match["figure"]), 2)
        except (Refusal, Question):
            return None
        return replace(found, **{field: grams}) if grams else None  # type: ignore[arg-type]

    return read


def _cured(field: str) -> Reader:
    def read(found: LotSearch, match: re.Match[str], _today: date) -> LotSearch | None:
        try:
            days = round(read_span(match["figure"]).total_seconds() / 86_400, 2)
        except (Refusal, Question):
            return None
        return replace(found, **{field: days}) if days else None  # type: ignore[arg-type]

    return read


def _coats(found: LotSearch, match: re.Match[str], _today: date) -> LotSearch:
    count = match["count"].lower()
    number = _TIMES.get(count) or NUMBER_WORDS.get(count) or int(count)
    return replace(found, coats=number, coats_exact=bool(match["exactly"]))


def _fibre(found: LotSearch, match: re.Match[str], _today: date) -> LotSearch:
    return replace(found, fibres=tuple(sorted({*found.fibres, match[0].lower()})))


def _state(found: LotSearch, match: re.Match[str], _today: date) -> LotSearch:
    return replace(found, state=_STATES[match["state"].lower().replace("-", " ")])


def _sort(found: LotSearch, match: re.Match[str], _today: date) -> LotSearch:
    return replace(found, sort=match["sort"].lower(), backwards=bool(match["back"]))


def _in_year(found: LotSearch, match: re.Match[str], _today: date) -> LotSearch | None:
    first = _year(match["year"])
    if first is None:
        return None
    return replace(found, begun_from=first, begun_before=_new_year(first))


def _begun(found: LotSearch, match: re.Match[str], today: date) -> LotSearch | None:
    day = _year(match["day"]) or _first_of_month(match["day"], today) or _named(match["day"], today)
    if day is None or day.year not in YEARS:
        return None
    field = "begun_before" if match["which"].lower() == "before" else "begun_from"
    return replace(found, **{field: day})  # type: ignore[arg-type]


def _year(text: str) -> date | None:
    year = int(text) if re.fullmatch("[0-9]{4}", text) else 0
    return date(year, 1, 1) if year in YEARS else None


def _first_of_month(text: str, today: date) -> date | None:
    """Give the first of the latest such month; "June 2025" is meant of that year."""
    name, _, year = text.lower().partition(" ")
    month = MONTH_WORDS.get(name)
    if month is None or (year and _year(year) is None):
        return None
    if year:
        return date(int(year), month, 1)
    return date(today.year if month <= today.month else today.year - 1, month, 1)


def _named(text: str, today: date) -> date | None:
    try:
        taken = take_day(text.lower(), today)
    except Refusal:
        return None
    return taken[0].day if taken is not None and not taken[1].strip() else None


def _of(pattern: str) -> re.Pattern[str]:
    return re.compile(rf"(?<!\S){pattern}(?!\S)", re.IGNORECASE)


_MASS: Final = (
    rf"(?P<figure>{NUMBER}\s?{units_pattern(MASS_WORDS)}"
    rf"(?:\s{NUMBER}\s?{units_pattern(MASS_WORDS)})?)"
)
_SPAN: Final = (
    rf"(?P<figure>(?:{NUMBER}\s?|[a-z]+ )"
    r"(?:hours?|h|days?|d|weeks?|wks?|w))"
)
_EXACTLY: Final = r"(?P<exactly>exactly )?"
_PATTERNS: Final[tuple[tuple[re.Pattern[str], Reader], ...]] = (
    (_of(rf"cured (?:for )?(?:{_OVER} ?)?{_SPAN}(?: or more)?"), _cured("cured_over")),
    (_of(rf"cured (?:for )?{_UNDER} ?{_SPAN}"), _cured("cured_under")),
    (_of(rf"{_OVER} ?{_MASS}"), _weight("over_grams")),
    (_of(rf"{_UNDER} ?{_MASS}"), _weight("under_grams")),
    (_of(rf"{_EXACTLY}{_COUNT} coats?(?: or more)?"), _coats),
    (_of(rf"{_EXACTLY}(?:soyed|dipped|coated) {_COUNT} times"), _coats),
    (_of(rf"{_EXACTLY}(?:soyed|dipped|coated) (?P<count>once|twice|thrice)"), _coats),
    (_of(r"(?:begun )?in (?P<year>[0-9]{4})"), _in_year),
    *(
        (_of(rf"(?:begun )?(?P<which>since|before) (?P<day>\S+(?: \S+){{{more}}})"), _begun)
        for more in (3, 2, 1, 0)
    ),
    (_of(rf"(?:sort(?:ed)? )?by (?P<sort>{'|'.join(SORTS)})(?P<back> backwards)?"), _sort),
    (_of(_BOLD_STATES), _state),
    (_of(rf"(?:{'|'.join(sorted(FIBRES - _NO_FIBRE, key=len, reverse=True))})"), _fibre),
)
"""In this order: what needs more words comes first."""
