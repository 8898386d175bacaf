"""Colours across the room: those of the theme by day, dimmer ones in quiet hours."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from studio_log.present.hues import Palette


@dataclass(frozen=True)
class Look:
    """Every colour as "#rrggbb"; urgencies are calm, soon, now and spoiling."""

    ground: str
    ink: str
    soft: str
    good: str
    line: str
    inks: Mapping[str, str]
    """Words by urgency, on the ground."""
    fills: Mapping[str, tuple[str, str]]
    """The big answer by urgency: its ground and its words."""
    held: tuple[str, str]
    """The big answer while it takes no key."""

    def pairs(self) -> tuple[tuple[str, str], ...]:
        """Give every (words, ground) that meets."""
        plain = (self.ink, self.soft, self.good, *self.inks.values())
        grounds = [(ink, self.ground) for ink in plain]
        return (*grounds, *((on, fill) for fill, on in (*self.fills.values(), self.held)))


NIGHT: Final = Look(
    ground="#0a0908",
    ink="#a99a83",
    soft="#8d806c",
    good="#7f9a68",
    line="#2a2620",
    inks={"calm": "#7d95b6", "soon": "#a88b42", "now": "#c27568", "spoiling": "#c27568"},
    fills={
        "calm": ("#141b25", "#8ba3c4"),
        "soon": ("#241d0b", "#b3964d"),
        "now": ("#2c110d", "#cf8579"),
        "spoiling": ("#2c110d", "#cf8579"),
    },
    held=("#15130f", "#8d806c"),
)
"""Dark and dim, so that it lights no bedroom; its words are read at 4.5:1 all the same."""


def look_of(palette: Palette, *, night: bool) -> Look:
    """Give the colours that fit the theme in force and the hour."""
    if night:
        return NIGHT
    red = (palette.danger, palette.on_danger)
    return Look(
        ground=palette.ground,
        ink=palette.ink,
        soft=palette.soft,
        good=palette.good_ink,
        line=palette.line,
        inks={
            "calm": palette.accent_ink,
            "soon": palette.ochre_ink,
            "now": palette.danger_ink,
            "spoiling": palette.danger_ink,
        },
        fills={
            "calm": (palette.accent, palette.on_accent),
            "soon": (palette.ochre, palette.on_ochre),
            "now": red,
            "spoiling": red,
        },
        held=(palette.night, palette.soft),
    )
