"""Amounts as they are said: rounded to what a kitchen scale and a jug can measure."""

from typing import Literal

from studio_log.domain.number_text import plain


def shown(value: float, unit: Literal["g", "L"], *, at_least: bool = False) -> str:
    """Say an amount as it is measured: "90 g", "5.4 L", "0.47 L or more".

    What is a least amount is rounded up, so that what is shown is never too little.
    """
    words = grams_shown(value, up=at_least) if unit == "g" else litres_shown(value, up=at_least)
    return f"{words} or more" if at_least else words


def grams_shown(grams: float, *, up: bool = False) -> str:
    """Round to what a kitchen scale shows: 1 g from 10 g on, 0.1 g below."""
    if grams < 0.05 and not up:
        return "less than 0.1 g"
    if grams < 9.95:
        return f"{plain(grams, 1, up=up)} g"
    if grams < 999.5:
        return f"{plain(grams, 0, up=up)} g"
    return f"{plain(grams / 1000, 3, up=up)} kg"


def litres_shown(litres: float, *, up: bool = False) -> str:
    """Round to two figures, from 10 L on to the litre; below 0.1 L in millilitres."""
    if litres < 0.000_5 and not up:
        return "less than 1 mL"
    if litres < 0.0995:
        return f"{plain(litres * 1000, 0, up=up)} mL"
    places = 2 if litres < 0.995 else 1 if litres < 9.95 else 0
    return f"{plain(litres, places, up=up)} L"
