"""What is typed on the stock's forms: a quantity, a price, a date."""

import re
from datetime import date
from typing import NamedTuple

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.mass_text import read_grams, read_litres
from studio_log.domain.number_text import NUMBER, plain, read_number
from studio_log.language.calendar_words import date_words
from studio_log.language.words import tr
from studio_log.present.words import litres, mass
from studio_log.ui.widgets.understood import Understood


class Quantity(NamedTuple):
    """So much, in "g" or "L"."""

    value: float
    unit: str


def quantity(text: str) -> Understood[Quantity]:
    """Read a weight or a volume: "1 kg", "1/4 cup"."""
    if re.fullmatch(NUMBER, text):
        return Understood(fault=tr("Of what? Say a unit, as in 500 g or 0.5 L."))
    try:
        grams = read_grams(text)
        said = tr("Understood: {metric} = {us}", metric=mass(grams), us=mass(grams, "us"))
        return Understood(Quantity(grams, "g"), said)
    except (Refusal, Question):
        pass
    try:
        volume = read_litres(text)
    except (Refusal, Question):
        return Understood(fault=tr("No weight and no volume, such as 500 g, 1 lb 3 oz or 0.5 L."))
    said = tr("Understood: {metric} = {us}", metric=litres(volume), us=litres(volume, "us"))
    return Understood(Quantity(volume, "L"), said)


def price(text: str) -> Understood[float]:
    """Read what all of it cost, in the studio's own money."""
    if not re.fullmatch(NUMBER, text):
        return Understood(fault=tr("A price is a figure, such as 12.50."))
    try:
        value = read_number(text)
    except (Refusal, Question) as refusal:
        return Understood(fault=str(refusal))
    return Understood(value, tr("Understood: {price} for all of it", price=plain(value, 2)))


def day(text: str) -> Understood[date]:
    """Read a date, "2027-03-31"."""
    try:
        found = date.fromisoformat(text)
    except ValueError:
        return Understood(fault=tr("A date is year, month and day, as in 2027-03-31."))
    return Understood(found, tr("Understood: {day}", day=date_words(found, year=True)))
