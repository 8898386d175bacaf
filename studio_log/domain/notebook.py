"""An old notebook's table: which column is what, and what one row says, by the house's readers."""

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date, datetime, time, timedelta
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.mass_text import read_grams
from studio_log.domain.number_text import read_number
from studio_log.domain.piece_text import read_piece
from studio_log.domain.pieces import Piece
from studio_log.domain.wall_clock import known_zone
from studio_log.language.calendar_words import MONTH_WORDS

NAME, BEGUN, DRY, USED, CLOTH, FIBRE = "name", "begun", "dry", "used", "cloth", "fibre"
COUNT, LENGTH, WIDTH, GSM, WEIGHT = "count", "length", "width", "gsm", "weight"
METHOD, PLACE, NOTE, READING = "method", "place", "note", "reading"
FIELDS: Final = (NAME, BEGUN, DRY, USED, CLOTH, FIBRE, COUNT, LENGTH, WIDTH, GSM, WEIGHT, METHOD,
                 PLACE, NOTE, READING)  # fmt: skip
SEVERAL: Final = frozenset({NOTE, READING})
"""Fields that more than one column may be."""
_WORDS: Final[tuple[tuple[str, str], ...]] = (
    (DRY, r"fully dry|dried|dry|trocken"),
    (USED, r"used|painted on|dyed on|verwendet|benutzt"),
    (BEGUN, r"begun|began|started?|date|day|datum|begonnen|tag"),
    (GSM, r"gsm|g/m|oz/yd|area weight|flächengewicht|grammatur"),
    (WEIGHT, r"weight|wof|grams?|mass|gewicht|gramm"),
    (LENGTH, r"length|long|länge"),
    (WIDTH, r"width|wide|breite"),
    (COUNT, r"count|pieces|pcs|number of|qty|anzahl|stück"),
    (METHOD, r"method|recipe|procedure|verfahren|rezept"),
    (FIBRE, r"fib(?:re|er)|faser"),
    (CLOTH, r"cloth|fabric|material|stoff|gewebe"),
    (PLACE, r"place|shelf|where|regal|ort|platz"),
    (READING, r"\bph\b|temp|humid|°c|reading|feuchte"),
    (NAME, r"name|title|lot|batch|what|project|bezeichnung|partie"),
    (NOTE, r"note|remark|comment|result|colour|color|notiz|bemerkung|farbe"),
)
"""What a head says of its column; the first that is found counts."""
_UNIT: Final = re.compile(r"[(\[]\s*([^)\]]{1,12}?)\s*[)\]]|\bin\s+(cm|mm|m|g|kg|oz|lb|yd|in)\b")
_BARE: Final = re.compile(r"[0-9][0-9.,  ]*")
_USUAL_UNIT: Final = {WEIGHT: "g", GSM: "g/m2", LENGTH: "cm", WIDTH: "cm"}
SERIAL: Final = (20_000, 80_000)
"""Days since 30 December 1899 that are taken for a date: 1954 to 2119."""
_DAYS: Final = (
    (re.compile(r"(?P<y>\d{4})[-/.](?P<m>\d{1,2})[-/.](?P<d>\d{1,2})"), ""),
    (re.compile(r"(?P<d>\d{1,2})\.\s?(?P<m>\d{1,2})\.\s?(?P<y>\d{4}|\d{2})"), ""),
    (re.compile(r"(?P<a>\d{1,2})[/-](?P<b>\d{1,2})[/-](?P<y>\d{4}|\d{2})"), "either"),
    (re.compile(r"(?P<d>\d{1,2})\.?\s+(?P<n>[^\W\d]{3,9})\.?,?\s+(?P<y>\d{4})"), ""),
    (re.compile(r"(?P<n>[^\W\d]{3,9})\.?\s+(?P<d>\d{1,2}),?\s+(?P<y>\d{4})"), ""),
)
_GERMAN: Final = {"jan": 1, "feb": 2, "mär": 3, "mae": 3, "apr": 4, "mai": 5, "jun": 6, "jul": 7,
                  "aug": 8, "sep": 9, "okt": 10, "nov": 11, "dez": 12}  # fmt: skip


@dataclass(frozen=True)
class Draft:
    """What a row says: ready to become a lot."""

    name: str
    pieces: tuple[Piece, ...]
    grams: float | None
    begun: datetime | None
    method: str = ""
    """As it was written; "" leaves the one chosen for all."""
    dry: datetime | None = None
    used: datetime | None = None
    place: str = ""
    note: str = ""
    readings: Mapping[str, float | str] = field(default_factory=dict)
    understood: str = ""
    """The cloth in words, as it was understood."""


@dataclass(frozen=True)
class Reading:
    """How days are written, and where: for telling the third of April from the fourth of March."""

    zone: str
    today: date
    month_first: bool = False


def guesses(heads: Sequence[str]) -> tuple[str, ...]:
    """Guess what each column is, "" where nothing speaks for anything."""
    found: list[str] = []
    for head in heads:
        said = head.casefold()
        hits = (what for what, words in _WORDS if re.search(words, said))
        fits = (what for what in hits if what in SEVERAL or what not in found)
        found.append(next(fits, NOTE if said.strip() else ""))
    return tuple(found)


def check_columns(columns: Sequence[str]) -> None:
    """Refuse a mapping that names no lot, or one field twice."""
    for what in FIELDS:
        if what not in SEVERAL and list(columns).count(what) > 1:
            raise Refusal(f"Two columns are “{what}”. Nothing was taken in; choose one of them.")
    if NAME not in columns:
        raise Refusal("No column is the name of the lot. Nothing was taken in; choose one.")


def read_row(
    heads: Sequence[str], columns: Sequence[str], row: Sequence[str], how: Reading
) -> Draft:
    """Read one row; Refusal, in words for the person, where part of it cannot be understood."""
    cells = [cell.strip() for cell in row]
    told = {what: (heads[n], cells[n]) for n, what in enumerate(columns)
            if what and what not in SEVERAL and n < len(cells) and cells[n]}  # fmt: skip
    if NAME not in told:
        raise Refusal("it has no name")
    pieces, grams, understood = _cloth(told)
    notes = [f"{heads[n]}: {cells[n]}" for n, what in enumerate(columns)
             if what == NOTE and n < len(cells) and cells[n]]  # fmt: skip
    readings = {heads[n].strip()[:60] or f"column {n + 1}": _reading(cells[n])
                for n, what in enumerate(columns)
                if what == READING and n < len(cells) and cells[n]}  # fmt: skip
    days = {what: _moment(told[what][1], how) if what in told else None
            for what in (BEGUN, DRY, USED)}  # fmt: skip
    _in_order(days)
    return Draft(
        name=told[NAME][1],
        pieces=pieces,
        grams=grams,
        begun=days[BEGUN],
        method=told.get(METHOD, ("", ""))[1],
        dry=days[DRY],
        used=days[USED],
        place=told.get(PLACE, ("", ""))[1],
        note="\n".join(notes),
        readings=readings,
        understood=understood,
    )


def _in_order(days: Mapping[str, datetime | None]) -> None:
    known = [at for at in (days[BEGUN], days[DRY], days[USED]) if at is not None]
    if known != sorted(known):
        raise Refusal("its days are out of order: begun, dry, used")


def _reading(text: str) -> float | str:
    return read_number(text) if _BARE.fullmatch(text) else text


def _cloth(told: Mapping[str, tuple[str, str]]) -> tuple[tuple[Piece, ...], float | None, str]:
    """Put the cloth's words together and read them as if they had been typed."""
    parts = []
    if COUNT in told:
        parts.append(f"{_count(told[COUNT][1])} x")
    parts += [told[what][1] for what in (CLOTH, FIBRE) if what in told] or ["cloth"]
    long, wide = (_with_unit(told, what) for what in (LENGTH, WIDTH))
    if long and wide:
        parts.append(f"{long} x {wide}")
    if GSM in told:
        parts.append(_with_unit(told, GSM))
    try:
        reading = read_piece(" ".join(parts))
        grams = read_grams(_with_unit(told, WEIGHT)) if WEIGHT in told else None
    except Refusal as refusal:
        raise Refusal(f"its cloth cannot be read: {refusal}") from refusal
    pieces = reading.pieces
    if grams is None and any(piece.grams is None for piece in pieces):
        raise Refusal("its weight is not known: it needs a weight, or size and g/m²")
    understood = reading.understood
    if grams is not None and any(piece.grams is None for piece in pieces):
        understood = understood.split(":")[0]  # what follows asks for the weight
    return pieces, grams, understood


def _count(text: str) -> int:
    count = read_number(text) if _BARE.fullmatch(text) else 0
    if count != int(count) or not 1 <= count <= 500:
        raise Refusal(f"“{text[:20]}” is no number of pieces")
    return int(count)


def _with_unit(told: Mapping[str, tuple[str, str]], what: str) -> str:
    """Give a figure with the unit that the head names where the cell has none."""
    if what not in told:
        return ""
    head, cell = told[what]
    if not _BARE.fullmatch(cell):
        return cell
    named = _UNIT.search(head.casefold())
    unit = (named[1] or named[2]) if named else _USUAL_UNIT[what]
    return f"{cell} {unit.replace('²', '2')}"


def _moment(text: str, how: Reading) -> datetime:
    """Read a day, with a time where there is one; without it noon is taken."""
    day, rest = _day(text, how)
    clock = re.search(r"\b([01]?\d|2[0-3]):([0-5]\d)", rest)
    at = time(int(clock[1]), int(clock[2])) if clock else time(12)
    if day > how.today or day.year < 1950:
        raise Refusal(f"“{text[:30]}” is no day of the past")
    return datetime.combine(day, at, known_zone(how.zone))


def _day(text: str, how: Reading) -> tuple[date, str]:
    for form, order in _DAYS:
        found = form.match(text)
        if found:
            return _date(found, how, text, either=bool(order)), text[found.end() :]
    if re.fullmatch(r"\d{5}(?:\.\d+)?", text) and SERIAL[0] <= float(text) <= SERIAL[1]:
        return date(1899, 12, 30) + timedelta(days=int(float(text))), ""
    raise Refusal(f"“{text[:30]}” is no day; write it as 2024-06-09")


def _date(found: "re.Match[str]", how: Reading, text: str, *, either: bool) -> date:
    parts = found.groupdict()
    year = int(parts["y"])
    year += 2000 if year < 100 else 0
    if either:
        one, other = int(parts["a"]), int(parts["b"])
        month_first = how.month_first if max(one, other) <= 12 else other > 12
        month, day = (one, other) if month_first else (other, one)
    else:
        month = int(parts["m"]) if parts.get("m") else _month(parts["n"], text)
        day = int(parts["d"])
    try:
        return date(year, month, day)
    except ValueError as error:
        raise Refusal(f"“{text[:30]}” is no day of the calendar") from error


def _month(word: str, text: str) -> int:
    said = word.casefold()
    known: Callable[[str], int | None] = MONTH_WORDS.get
    number = known(said) or known(said[:3]) or _GERMAN.get(said[:3])
    if number is None:
        raise Refusal(f"“{text[:30]}” is no day; write it as 2024-06-09")
    return number
