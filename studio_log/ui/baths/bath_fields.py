"""Fields of the forms about baths: how each kind is read, and what is said of it."""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any, Final

from studio_log.domain.bath_text import read_bath_celsius, read_ph
from studio_log.domain.errors import Refusal
from studio_log.domain.mass_text import read_grams, read_litres
from studio_log.domain.number_text import NUMBER, plain
from studio_log.domain.span_text import read_span
from studio_log.language.words import tr
from studio_log.present.words import litres, mass, span
from studio_log.ui.kept.readers import lot_code

LONGEST: Final = 200
_NUMBER: Final = re.compile(NUMBER)


@dataclass(frozen=True)
class Field:
    """One line of a form. `says` stands below it while it is blank."""

    slug: str
    label: str
    kind: str
    says: str = ""
    needed: bool = False


@dataclass(frozen=True)
class Heard:
    """What became of a typed line: its value (None where blank), its words, or a fault."""

    value: Any = None
    words: str = ""
    fault: bool = False


Names = Mapping[str, str]
"""Names of the lots by their codes, to say them back."""


def heard(field: Field, text: str, names: Names) -> Heard:
    """Read a line; never raises."""
    typed = text.strip()
    if not typed:
        fault = tr("This has to be filled in.") if field.needed else ""
        return Heard(None, fault, fault=bool(fault))
    try:
        value = _READ[field.kind](typed)
    except Refusal as refusal:
        return Heard(None, str(refusal), fault=True)
    return Heard(value, _said(field.kind, value, names))


def _said(kind: str, value: Any, names: Names) -> str:
    if kind == "lots":
        said = (tr("{code}, not in work", code=code) if code not in names
                else f"{code} {names[code]}" for code in value)  # fmt: skip
        return tr("Understood: {words}", words="; ".join(said))
    say = _SAY.get(kind)
    return tr("Understood: {words}", words=say(value)) if say is not None else ""


def read_lots(text: str) -> tuple[str, ...]:
    """Give the codes of "26-031, 26-30 Calico"; what follows a code is for the eye."""
    found = []
    for part in filter(str.strip, text.split(",")):
        code = lot_code(part)
        if not code:
            raise Refusal(tr("“{part}” is no lot’s code, such as 26-031.", part=part.strip()[:40]))
        found.append(code)
    return tuple(dict.fromkeys(found))


def _read_litres(text: str) -> float:
    return read_litres(f"{text} L" if _NUMBER.fullmatch(text) else text)


def _things(text: str) -> tuple[str, ...]:
    return tuple(filter(None, (part.strip() for part in text.split(";"))))


_READ: Final[Mapping[str, Callable[[str], Any]]] = {
    "text": str,
    "things": _things,
    "lots": read_lots,
    "grams": read_grams,
    "litres": _read_litres,
    "celsius": read_bath_celsius,
    "ph": read_ph,
    "span": read_span,
}
_SAY: Final[Mapping[str, Callable[[Any], str]]] = {
    "grams": mass,
    "litres": litres,
    "celsius": lambda value: f"{plain(value, 1)} °C",
    "ph": lambda value: f"pH {plain(value, 2)}",
    "span": span,
    "things": " · ".join,
}
