"""Public holidays of a country or a part of it, by name, from the `holidays` library.

The library is imported when a place is first asked about and never before; its data are on this
laptop. A place is kept as "GB-ENG" or "DE": the codes of ISO 3166, or the library's own for a part
that has none.
"""

import importlib
import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from functools import lru_cache
from typing import Any, Final

from studio_log.domain.errors import Refusal
from studio_log.language.words import tr, tr_later

PLACE: Final = re.compile(r"[A-Z]{2}(?:-[^\W_][\w .'’-]{0,34})?")
SPOKEN: Final = tr_later("en_US")
"""In which language holidays are named; each catalogue gives its own code for it, as "de"."""
_HOW: Final = "Write a country, or a country and its part, as GB, GB-ENG or DE-BY."
_LEAST_LETTERS: Final = 3
"""Shorter names of a part are its abbreviations."""


@dataclass(frozen=True)
class Place:
    """A country or a part of it; `name` as the library has it, `parts` code and name in order."""

    code: str
    name: str
    parts: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True)
class HolidaysKnown:
    """Names by date, and in words what is not known of the span; "" where all of it is."""

    names: Mapping[date, str]
    doubt: str = ""


def check_form(text: str) -> str:
    """Give a place as it is kept; Refusal where it has not the form of one. Imports nothing."""
    if text and not PLACE.fullmatch(text):
        raise Refusal(f"{text[:40]!r} names no place with holidays. {_HOW}")
    return text


def check_place(text: str) -> str:
    """Give a place that holidays are known of, or "" for none; else a Refusal."""
    if check_form(text) and _holidays_class(text) is None:
        raise Refusal(f"No holidays are known of {text[:40]!r}. Nothing was changed. {_HOW}")
    return text


def holidays_between(place: str, first: date, last: date) -> HolidaysKnown:
    """Give the public holidays from one day to another, both ends with them."""
    if not place:
        return HolidaysKnown({})
    known = _holidays_class(place)
    if known is None:
        doubt = tr("No holidays are known of “{place}”; none is counted.", place=place)
        return HolidaysKnown({}, doubt)
    since, until = known.start_year, known.end_year
    names = {
        day: name
        for year in range(max(first.year, since), min(last.year, until) + 1)
        for day, name in _names(place, year, tr(SPOKEN))
        if first <= day <= last
    }
    doubt = ""
    if first.year < since or last.year > until:
        doubt = tr(
            "Holidays of {place} are known from {since} to {until}; outside it none is counted.",
            place=place,
            since=since,
            until=until,
        )
    return HolidaysKnown(names, doubt)


@lru_cache(maxsize=1)
def places() -> tuple[Place, ...]:
    """Give every country that holidays are known of, by its English name, without its parts.

    None at all where the library cannot be imported: the log goes on without it.
    """
    try:
        registry = importlib.import_module("holidays.registry")
    except ImportError:
        return ()
    found = [Place(codes[1], _spaced(codes[0])) for codes in registry.COUNTRIES.values()]
    return tuple(sorted(found, key=lambda one: one.name))


def place_of(code: str) -> Place | None:
    """Give a country with its parts, named where the library names them; None if not known."""
    country = code[:2]
    known = _holidays_class(country)
    found = next((one for one in places() if one.code == country), None)
    if known is None or found is None:
        return None
    parts = [(part, _part_name(known, part)) for part in known.subdivisions]
    return Place(country, found.name, tuple(sorted(parts, key=lambda one: one[1].casefold())))


def _part_name(known: Any, part: str) -> str:
    """Name a part: the first of its names that is no abbreviation."""
    aliases = getattr(known, "subdivisions_aliases", {})
    named: list[str] = [name for name, code in aliases.items() if code == part]
    return next((name for name in named if len(name) > _LEAST_LETTERS), [*named, part][0])


def _spaced(name: str) -> str:
    """Part the words of a name: "UnitedKingdom" is "United Kingdom"."""
    parted = re.sub(r"(?<=[a-z])(?=[A-Z])|(?<=[A-Z])(?=[A-Z][a-z])", " ", name)
    return re.sub(r"\b(And|Of|The)\b", lambda found: found[0].lower(), parted)


@lru_cache(maxsize=32)
def _holidays_class(place: str) -> Any | None:
    """Give the library's class of a place, importing it; None where it knows no such place."""
    country, _, part = place.partition("-")
    if not PLACE.fullmatch(place) or country not in {one.code for one in places()}:
        return None
    known = getattr(importlib.import_module("holidays"), country)
    return known if not part or part in known.subdivisions else None


@lru_cache(maxsize=256)
def _names(place: str, year: int, spoken: str) -> tuple[tuple[date, str], ...]:
    """Give the holidays of a year in order; a day of two is named by both."""
    known = _holidays_class(place)
    if known is None:
        return ()
    part = place.partition("-")[2]
    found = known(subdiv=part or None, years=year, language=_language(known, spoken))
    return tuple(sorted((day, name.replace("; ", ", ")) for day, name in found.items()))


def _language(known: Any, spoken: str) -> str | None:
    """Choose the language spoken here, where the library has it; else the country's own."""
    own: str | None = known.default_language
    if own is None or own.startswith(spoken[:2]):
        return own
    supported: tuple[str, ...] = known.supported_languages
    return next((one for one in supported if one.startswith(spoken[:2])), own)
