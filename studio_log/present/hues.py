"""The studio's colours as data: one hue per kind of step, and a light and a dark palette.

Names come from dye plants and minerals. Every colour is "#rrggbb". `TEXT_PAIRS` and
`SHAPE_PAIRS` declare which colours meet on screen; the tests hold each pair to its ratio.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final, Literal

from studio_log.domain.methods import StepKind
from studio_log.language.words import tr_later

Scheme = Literal["light", "dark", "strong-light", "strong-dark"]
"""The strong ones are the high contrast: text at 7 to 1, black and white for ground and ink."""


@dataclass(frozen=True)
class Hue:
    """How one kind of step is coloured: dyed for what is done, a pale tint for what is ahead."""

    name: str
    """The plant or mineral it is called after."""
    fill: str
    on_fill: str
    """Text on `fill`."""
    tint: str
    """Ground of work ahead, under `Palette.ink`."""
    edge: str
    """Outlines, hatches and small shapes on the sheet."""


@dataclass(frozen=True)
class Palette:
    """Every colour of the window but the hues of the steps."""

    ground: str
    """Under everything: the sides, the bars above and below."""
    panel: str
    """The sheet in the middle."""
    raised: str
    """Fields, cards and quiet buttons."""
    night: str
    """Quiet hours on the sheet."""
    line: str
    """Hairlines that only divide."""
    outline: str
    """Edges of fields and buttons, seen at 3:1."""
    ink: str
    soft: str
    """Secondary text."""
    accent: str
    """Indigo: primary buttons, what is chosen."""
    on_accent: str
    accent_ink: str
    """Indigo as text."""
    chosen: str
    """Ground of the chosen row."""
    danger: str
    """Madder red: what spoils, and now."""
    on_danger: str
    danger_ink: str
    danger_ground: str
    ochre: str
    on_ochre: str
    ochre_ink: str
    ochre_ground: str
    indigo_ground: str
    good_ink: str
    """Green text for what is ready."""
    focus: str
    """Ring around what has the keyboard."""


KIND_WORDS: Final[Mapping[StepKind, str]] = {
    StepKind.BEANS: tr_later("Beans"),
    StepKind.MILK: tr_later("Milk"),
    StepKind.SOAK: tr_later("Soak"),
    StepKind.SPIN: tr_later("Spin"),
    StepKind.DRY: tr_later("Dry"),
    StepKind.DIP: tr_later("Dip"),
    StepKind.CURE: tr_later("Cure"),
    StepKind.SCOUR: tr_later("Scour"),
    StepKind.RINSE: tr_later("Rinse"),
    StepKind.HAND: tr_later("By hand"),
}
"""The word that stands beside each hue."""

_LIGHT_HUES: Final[Mapping[StepKind, Hue]] = {
    StepKind.BEANS: Hue("walnut", "#5b4636", "#fdf9f1", "#eae0d2", "#5b4636"),
    StepKind.MILK: Hue("chalk", "#e6dcc6", "#26221d", "#f6f0e2", "#857a64"),
    StepKind.SOAK: Hue("indigo", "#25466e", "#ffffff", "#dae3ee", "#25466e"),
    StepKind.SPIN: Hue("slate", "#44555e", "#ffffff", "#e0e4e6", "#44555e"),
    StepKind.DRY: Hue("weld", "#d9b03a", "#26221d", "#f6eac4", "#8a6a0c"),
    StepKind.DIP: Hue("woad", "#356a93", "#ffffff", "#d6e5ef", "#356a93"),
    StepKind.CURE: Hue("buckthorn", "#4d6a3a", "#ffffff", "#dfe8d5", "#4d6a3a"),
    StepKind.SCOUR: Hue("alkanet", "#6c4a72", "#ffffff", "#e8deea", "#6c4a72"),
    StepKind.RINSE: Hue("verdigris", "#265e53", "#ffffff", "#d5e7e3", "#265e53"),
    StepKind.HAND: Hue("sienna", "#a5572a", "#ffffff", "#f2e1d4", "#a5572a"),
}

_DARK_HUES: Final[Mapping[StepKind, Hue]] = {
    StepKind.BEANS: Hue("walnut", "#a8876c", "#16110d", "#3a3029", "#b8977b"),
    StepKind.MILK: Hue("chalk", "#d6ccb6", "#1c1916", "#3b372f", "#d6ccb6"),
    StepKind.SOAK: Hue("indigo", "#6f95c6", "#0e141d", "#26313f", "#84a7d4"),
    StepKind.SPIN: Hue("slate", "#94a1af", "#14171a", "#31363a", "#a5afb9"),
    StepKind.DRY: Hue("weld", "#d6b04a", "#1c1708", "#3c3522", "#d6b04a"),
    StepKind.DIP: Hue("woad", "#5cb0cf", "#0d1820", "#243640", "#86b8d8"),
    StepKind.CURE: Hue("buckthorn", "#8fae77", "#12180d", "#2d3727", "#9bb984"),
    StepKind.SCOUR: Hue("alkanet", "#b68fbd", "#1a121c", "#392f3b", "#c09cc7"),
    StepKind.RINSE: Hue("verdigris", "#73bcb2", "#0c1a18", "#233935", "#7bbdb2"),
    StepKind.HAND: Hue("sienna", "#cf8c62", "#1f1209", "#3f2f24", "#d89a73"),
}

_STRONG_LIGHT_HUES: Final[Mapping[StepKind, Hue]] = {
    StepKind.BEANS: Hue("walnut", "#4a3626", "#ffffff", "#f3ebe2", "#4a3626"),
    StepKind.MILK: Hue("chalk", "#ece2cb", "#000000", "#fbf7ed", "#4f4633"),
    StepKind.SOAK: Hue("indigo", "#1f3b63", "#ffffff", "#e6eef8", "#1f3b63"),
    StepKind.SPIN: Hue("slate", "#444e5a", "#ffffff", "#eceff1", "#444e5a"),
    StepKind.DRY: Hue("weld", "#f2c838", "#000000", "#fdf4d3", "#5c4600"),
    StepKind.DIP: Hue("woad", "#27577d", "#ffffff", "#e2eff8", "#27577d"),
    StepKind.CURE: Hue("buckthorn", "#314c22", "#ffffff", "#eaf3e1", "#314c22"),
    StepKind.SCOUR: Hue("alkanet", "#45274b", "#ffffff", "#f3eaf5", "#45274b"),
    StepKind.RINSE: Hue("verdigris", "#0d4d45", "#ffffff", "#e0f2ee", "#0d4d45"),
    StepKind.HAND: Hue("sienna", "#6b3210", "#ffffff", "#f9eadf", "#6b3210"),
}

_STRONG_DARK_HUES: Final[Mapping[StepKind, Hue]] = {
    StepKind.BEANS: Hue("walnut", "#cfae90", "#000000", "#2b221b", "#cfae90"),
    StepKind.MILK: Hue("chalk", "#ece2cb", "#000000", "#2c2922", "#ece2cb"),
    StepKind.SOAK: Hue("indigo", "#94bbef", "#000000", "#14233a", "#94bbef"),
    StepKind.SPIN: Hue("slate", "#b8c5d2", "#000000", "#22282e", "#b8c5d2"),
    StepKind.DRY: Hue("weld", "#f0cc5c", "#000000", "#2f270c", "#f0cc5c"),
    StepKind.DIP: Hue("woad", "#7ad0ef", "#000000", "#102836", "#7ad0ef"),
    StepKind.CURE: Hue("buckthorn", "#b4d99a", "#000000", "#1c2a14", "#b4d99a"),
    StepKind.SCOUR: Hue("alkanet", "#cea5d3", "#000000", "#2b1f2e", "#cea5d3"),
    StepKind.RINSE: Hue("verdigris", "#88d4c2", "#000000", "#102b27", "#88d4c2"),
    StepKind.HAND: Hue("sienna", "#efae84", "#000000", "#33200f", "#efae84"),
}

HUES: Final[Mapping[Scheme, Mapping[StepKind, Hue]]] = {
    "light": _LIGHT_HUES,
    "dark": _DARK_HUES,
    "strong-light": _STRONG_LIGHT_HUES,
    "strong-dark": _STRONG_DARK_HUES,
}

PALETTES: Final[Mapping[Scheme, Palette]] = {
    "light": Palette(
        ground="#f2ebdd",
        panel="#fcf9f1",
        raised="#fffefa",
        night="#ece5d6",
        line="#dcd2bd",
        outline="#8f8470",
        ink="#26221d",
        soft="#645b4e",
        accent="#25466e",
        on_accent="#ffffff",
        accent_ink="#25466e",
        chosen="#dfe7f0",
        danger="#a3362a",
        on_danger="#ffffff",
        danger_ink="#96301f",
        danger_ground="#f4dfd8",
        ochre="#e0b23c",
        on_ochre="#26221d",
        ochre_ink="#6e6200",
        ochre_ground="#f5e8c4",
        indigo_ground="#dde5ee",
        good_ink="#42602f",
        focus="#b3560f",
    ),
    "dark": Palette(
        ground="#1c1916",
        panel="#252119",
        raised="#312c25",
        night="#1d1a15",
        line="#443d33",
        outline="#8d8270",
        ink="#f0e8da",
        soft="#d0c6b2",
        accent="#9dbce2",
        on_accent="#101a27",
        accent_ink="#a9c5e8",
        chosen="#2f3946",
        danger="#e8897a",
        on_danger="#210b07",
        danger_ink="#f09c8e",
        danger_ground="#45271f",
        ochre="#dcb454",
        on_ochre="#1c1708",
        ochre_ink="#e5c46f",
        ochre_ground="#40361d",
        indigo_ground="#28323f",
        good_ink="#91c773",
        focus="#f2a65a",
    ),
    "strong-light": Palette(
        ground="#ffffff",
        panel="#ffffff",
        raised="#ffffff",
        night="#ececec",
        line="#767676",
        outline="#000000",
        ink="#000000",
        soft="#2b2b2b",
        accent="#00245c",
        on_accent="#ffffff",
        accent_ink="#00245c",
        chosen="#dde9ff",
        danger="#8a0000",
        on_danger="#ffffff",
        danger_ink="#810101",
        danger_ground="#ffecec",
        ochre="#f2c838",
        on_ochre="#000000",
        ochre_ink="#4a3500",
        ochre_ground="#fff4cc",
        indigo_ground="#e4edff",
        good_ink="#072201",
        focus="#a33c00",
    ),
    "strong-dark": Palette(
        ground="#000000",
        panel="#000000",
        raised="#0d0d0d",
        night="#202020",
        line="#8a8a8a",
        outline="#ffffff",
        ink="#ffffff",
        soft="#e0e0e0",
        accent="#9ecbff",
        on_accent="#000000",
        accent_ink="#9ecbff",
        chosen="#0a2a4a",
        danger="#ff9d92",
        on_danger="#000000",
        danger_ink="#ffb0a6",
        danger_ground="#3a0000",
        ochre="#ffd65a",
        on_ochre="#000000",
        ochre_ink="#ffe08a",
        ochre_ground="#332600",
        indigo_ground="#06203d",
        good_ink="#cbedab",
        focus="#ffb347",
    ),
}

TEXT_RATIO: Final[Mapping[Scheme, float]] = {
    "light": 4.5, "dark": 4.5, "strong-light": 7.0, "strong-dark": 7.0,
}  # fmt: skip
"""Least contrast of text: levels AA and AAA of the Web Content Accessibility Guidelines 2.2."""

_GROUNDS: Final = ("ground", "panel", "raised", "night", "chosen")
_CARDS: Final = ("danger_ground", "ochre_ground", "indigo_ground")
_INKS: Final = ("ink", "soft", "accent_ink", "danger_ink", "ochre_ink", "good_ink")

TEXT_PAIRS: Final[tuple[tuple[str, str], ...]] = (
    *((ink, ground) for ink in _INKS for ground in _GROUNDS),
    *((ink, card) for ink in ("ink", "soft") for card in _CARDS),
    ("danger_ink", "danger_ground"),
    ("ochre_ink", "ochre_ground"),
    ("accent_ink", "indigo_ground"),
    ("on_accent", "accent"),
    ("on_danger", "danger"),
    ("on_ochre", "ochre"),
)
"""(text, ground) by field of `Palette`; each at least `TEXT_RATIO` in every scheme."""

SHAPE_PAIRS: Final[tuple[tuple[str, str], ...]] = (
    *(("focus", ground) for ground in (*_GROUNDS, *_CARDS)),
    *(("danger", ground) for ground in _GROUNDS),
    *(("accent", ground) for ground in _GROUNDS),
    *(("outline", ground) for ground in ("ground", "panel", "raised")),
)
"""(shape, ground) by field of `Palette`; each at least 3:1 in every scheme."""

EDGE_GROUNDS: Final = ("panel", "night", "chosen")
"""Grounds on which the edge of every hue is seen at 3:1."""


def luminance(colour: str) -> float:
    """Relative luminance, 0 for black to 1 for white.

    Source: W3C, Web Content Accessibility Guidelines 2.2, definition of relative luminance
    (with the threshold 0.04045 of IEC 61966-2-1, as its erratum has it).
    """
    channels = (int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5))
    red, green, blue = (
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in channels
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio, 1 to 21, of two colours in either order.

    Source: W3C, Web Content Accessibility Guidelines 2.2, definition of contrast ratio.
    """
    dark, bright = sorted((luminance(one), luminance(other)))
    return (bright + 0.05) / (dark + 0.05)
