"""The command that measures a swatch in a photo; numpy and Pillow come when it runs."""

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, Final

from studio_log.cli import values
from studio_log.cli.colour_text import read_corners, read_rect
from studio_log.cli.form import JSON, Form, Option, UsageError, Word
from studio_log.cli.turn import Turn
from studio_log.domain.errors import Refusal
from studio_log.domain.number_text import quoted
from studio_log.services.method_file import small_file

if TYPE_CHECKING:
    from studio_log.science.colour.measure import Measured

GREY_CARD: Final = 18.0
"""Per cent: the usual grey card, a trade value from memory."""
MOST_CARDS: Final = 12
LARGEST: Final = 100_000_000
"""Bytes of a photo."""


def _measure(turn: Turn) -> int:
    found = measured(turn.values)
    if turn.values["json"]:
        turn.say_json(_fields(found))
    else:
        turn.say("\n".join(_lines(found)))
    return 0


def measured(given: Mapping[str, Any]) -> "Measured":
    """Measure the swatch of a photo as `colour measure` words it; Refusal where that fails."""
    cards = [read_rect(one, "a card") for one in given["card"]]
    if given["target"] is None and not cards:
        raise UsageError("Name the corners of a --target, or a --card")
    if len(cards) > MOST_CARDS:
        raise Refusal(f"More than {MOST_CARDS} cards were named. {values.NOTHING}")
    swatch = read_rect(given["swatch"], "the swatch")
    target = None if given["target"] is None else read_corners(given["target"])
    reflectance = _reflectance(given["reflectance"])
    path = values.file_path(given["photo"], "The name of the photo")
    data = small_file(path, LARGEST)
    from studio_log.science.colour.measure import (  # noqa: PLC0415 - brings numpy and Pillow
        measure_with_card,
        measure_with_target,
    )
    from studio_log.science.colour.picture import PhotoError, open_picture  # noqa: PLC0415

    try:
        picture = open_picture(data, path.name)
        if target is not None:
            return measure_with_target(picture, target, swatch, cards)
        return measure_with_card(picture, swatch, cards, reflectance)
    except PhotoError as error:
        raise Refusal(f"{error} {values.NOTHING}") from None


def _reflectance(typed: str | None) -> float:
    if typed is None:
        return GREY_CARD / 100
    try:
        percent = float(typed.replace("%", "").replace(",", ".").strip())
    except ValueError:
        percent = 0.0
    if not 1 <= percent <= 100:
        shown = quoted(values.shown(typed[:40]))
        raise Refusal(f"{shown} is no reflectance of a card: 1 to 100 %. {values.NOTHING}")
    return percent / 100


def _fields(found: "Measured") -> dict[str, Any]:
    lab, sure = found.lab, found.two_u
    return {
        "L": round(lab.lightness, 4),
        "a": round(lab.a, 4),
        "b": round(lab.b, 4),
        "C": round(lab.chroma, 4),
        "h": None if lab.hue is None else round(lab.hue, 4),
        "two_u": None if sure is None else {
            "ciede2000": round(sure.ciede2000, 4), "L": round(sure.lightness, 4),
            "a": round(sure.a, 4), "b": round(sure.b, 4), "C": round(sure.chroma, 4),
            "h": None if sure.hue is None else round(sure.hue, 4),
        },
        "relative": found.relative,
        "method": found.method,
        "tone_undone": found.tone_undone,
        "fit_rms": None if found.fit_rms is None else round(found.fit_rms, 4),
        "patches": found.patches,
        "rejected": found.rejected,
        "pixels": found.pixels,
        "shown": found.shown,
        "white": "D65, 2 degree",
        "warnings": found.warnings,
    }  # fmt: skip


def _lines(found: "Measured") -> list[str]:
    lab, sure = found.lab, found.two_u
    hue = "no hue" if lab.hue is None else f"h {lab.hue:.0f}°"
    figures = f"L* {lab.lightness:.1f}, a* {lab.a:.1f}, b* {lab.b:.1f}; C* {lab.chroma:.1f}, {hue}"
    said = [f"{figures} (D65, 2 degree), shown as {found.shown}."]
    if sure is not None:
        turn = "" if sure.hue is None else f", h {sure.hue:.0f}°"
        said.append(
            f"2u: {sure.ciede2000:.1f} CIEDE2000; L* {sure.lightness:.1f}, a* {sure.a:.1f}, "
            f"b* {sure.b:.1f}, C* {sure.chroma:.1f}{turn}."
        )
        said.append(
            f"By a {found.method} on {found.patches} patches, each foretold to "
            f"{found.fit_rms:.1f} CIEDE2000 from the others."
        )
    return [*said, *found.warnings]


RECT: Final = "left, top, width, height in pixels: 400,700,120,90"
TARGET: Final = (
    Option("--target", "its outer corners, clockwise from dark skin: "
           "“120,80 980,90 970,650 115,640”", "CORNERS"),
    Option("--card", "a neutral card, as the swatch; twice to check the light", "RECT",
           repeats=True),
    Option("--reflectance", "of the card without a target: 18 unless said", "PERCENT"),
)  # fmt: skip

FORMS: Final = (
    Form(
        ("colour", "measure"),
        "Measure the colour of a swatch in a photo with a 24-patch target.",
        _measure,
        words=(Word("PHOTO", "a photo: JPEG, PNG, TIFF or WebP"),),
        options=(
            Option("--swatch", RECT, "RECT", required=True),
            *TARGET,
            JSON,
        ),
    ),
)  # fmt: skip
