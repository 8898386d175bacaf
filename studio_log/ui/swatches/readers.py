"""What is typed on the forms of swatches: a piece, a colour, how sure it is, a grade."""

import re
from typing import Final

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.number_text import NUMBER, plain, read_number
from studio_log.domain.swatch_text import MOST_2U, read_grade, read_lab
from studio_log.domain.swatches import GREY_STEPS
from studio_log.language.words import tr
from studio_log.science.colour.lab import Lab
from studio_log.ui.widgets.understood import Understood

MOST_PIECE: Final = 10_000


def whole(text: str) -> Understood[int]:
    """Read the number of a piece."""
    if not re.fullmatch(r"[0-9]{1,5}", text) or not 0 < int(text) <= MOST_PIECE:
        return Understood(fault=tr("A whole number, such as 1."))
    return Understood(int(text))


def colour(text: str) -> Understood[Lab]:
    """Read L*, a* and b*."""
    try:
        found = read_lab(text)
    except Refusal as refusal:
        return Understood(fault=str(refusal))
    hue = "" if found.hue is None else f", h {plain(found.hue, 0)}°"
    said = tr("Understood: {words}", words=f"C* {plain(found.chroma, 1)}{hue}")
    return Understood(found, said)


def two_u(text: str) -> Understood[float]:
    """Read an uncertainty in CIEDE2000."""
    try:
        value = read_number(text) if re.fullmatch(NUMBER, text) else -1.0
    except (Refusal, Question) as refusal:
        return Understood(fault=str(refusal))
    if not 0 <= value <= MOST_2U:
        return Understood(fault=tr("A figure from 0 to 50, such as 0.8."))
    return Understood(value)


def grade(text: str) -> Understood[str]:
    """Read a step of the grey scale, or of blue wool: which one is chosen beside it."""
    for scale in ("change", "blue-wool"):
        try:
            step = read_grade(text, scale)
        except Refusal:
            continue
        return Understood(step, tr("Understood: {words}", words=step))
    steps = ", ".join(reversed(GREY_STEPS))
    return Understood(fault=tr("No step of the scale: {steps}; blue wool 1 to 8.", steps=steps))
