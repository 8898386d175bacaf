"""The studio's colours as eyes with two kinds of cones see them: nothing meets or melts away.

The simulation is that of G. M. Machado, M. M. Oliveira and L. A. F. Fernandes, "A Physiologically-
based Model for Simulation of Color Vision Deficiency", IEEE Transactions on Visualization and
Computer Graphics 15 (2009), its matrices for full severity (from memory; they are tried on the
white that has to stay white). Distances are those of CIE 1976 L*a*b* (ISO/CIE 11664-4).
"""

from itertools import combinations

import pytest

from studio_log.domain.methods import StepKind
from studio_log.present.hues import (
    EDGE_GROUNDS,
    HUES,
    PALETTES,
    SHAPE_PAIRS,
    TEXT_PAIRS,
    Scheme,
)

Row = tuple[float, float, float]
EYES: dict[str, tuple[Row, Row, Row]] = {
    "protanopia": (
        (0.152286, 1.052583, -0.204868),
        (0.114503, 0.786281, 0.099216),
        (-0.003882, -0.048116, 1.051998),
    ),
    "deuteranopia": (
        (0.367322, 0.860646, -0.227968),
        (0.280085, 0.672501, 0.047413),
        (-0.011820, 0.042940, 0.968881),
    ),
    "tritanopia": (
        (1.255528, -0.076749, -0.178779),
        (-0.078411, 0.930809, 0.147602),
        (0.004733, 0.691367, 0.303900),
    ),
}
SCHEMES: tuple[Scheme, ...] = ("light", "dark", "strong-light", "strong-dark")
STATE_INKS = ("danger_ink", "ochre_ink", "accent_ink", "good_ink", "soft")
STATE_GROUNDS = ("danger_ground", "ochre_ground", "indigo_ground", "raised")
APART = 6.0
"""Of CIE L*a*b*; about 2.3 is the least that is seen at all (from memory)."""
GROUNDS_APART = 3.0
"""Grounds carry words and a bar at their edge besides."""

each = pytest.mark.parametrize(
    ("scheme", "eyes"), [(scheme, eyes) for scheme in SCHEMES for eyes in EYES]
)


def linear(colour: str) -> list[float]:
    """Light of an sRGB colour (IEC 61966-2-1)."""
    parts = (int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5))
    return [v / 12.92 if v <= 0.04045 else ((v + 0.055) / 1.055) ** 2.4 for v in parts]


def seen(colour: str, eyes: str) -> list[float]:
    """The light as it is seen by some eyes."""
    light = linear(colour)
    mixed = (sum(a * b for a, b in zip(row, light, strict=True)) for row in EYES[eyes])
    return [min(1.0, max(0.0, value)) for value in mixed]


def brightness(light: list[float]) -> float:
    return 0.2126 * light[0] + 0.7152 * light[1] + 0.0722 * light[2]


def ratio(one: str, other: str, eyes: str) -> float:
    dark, bright = sorted(brightness(seen(colour, eyes)) for colour in (one, other))
    return (bright + 0.05) / (dark + 0.05)


def lab(light: list[float]) -> tuple[float, float, float]:
    """CIE L*a*b* under D65."""
    red, green, blue = light
    x = (0.4124564 * red + 0.3575761 * green + 0.1804375 * blue) / 0.95047
    y = 0.2126729 * red + 0.7151522 * green + 0.0721750 * blue
    z = (0.0193339 * red + 0.1191920 * green + 0.9503041 * blue) / 1.08883
    fx, fy, fz = (
        v ** (1 / 3) if v > (6 / 29) ** 3 else v / (3 * (6 / 29) ** 2) + 4 / 29 for v in (x, y, z)
    )
    return 116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)


def apart(one: str, other: str, eyes: str) -> float:
    pairs = zip(lab(seen(one, eyes)), lab(seen(other, eyes)), strict=True)
    return sum((a - b) ** 2 for a, b in pairs) ** 0.5


@pytest.mark.parametrize("eyes", EYES)
def test_white_stays_white_and_black_black(eyes: str) -> None:
    assert seen("#ffffff", eyes) == pytest.approx([1, 1, 1], abs=1e-4)
    assert seen("#000000", eyes) == [0, 0, 0]


def test_red_and_green_meet_only_where_they_should() -> None:
    # A pair that is told apart by hue alone: the classic trap, and what this test is able to see.
    red, green = "#b05a3c", "#6f7d3a"
    assert apart(red, green, "tritanopia") > 30
    assert apart(red, green, "deuteranopia") < 15


@each
def test_text_reads_for_all_eyes(scheme: Scheme, eyes: str) -> None:
    palette = PALETTES[scheme]
    for text, ground in TEXT_PAIRS:  # WCAG 2.2, 1.4.3
        assert ratio(getattr(palette, text), getattr(palette, ground), eyes) >= 4.5, (text, ground)


@each
def test_shapes_stand_out_for_all_eyes(scheme: Scheme, eyes: str) -> None:
    palette = PALETTES[scheme]
    for shape, ground in SHAPE_PAIRS:  # WCAG 2.2, 1.4.11
        assert ratio(getattr(palette, shape), getattr(palette, ground), eyes) >= 3, (shape, ground)
    for hue in HUES[scheme].values():
        for ground in EDGE_GROUNDS:
            assert ratio(hue.edge, getattr(palette, ground), eyes) >= 3, (hue.name, ground)


@each
def test_no_two_kinds_of_step_look_alike(scheme: Scheme, eyes: str) -> None:
    for one, other in combinations(StepKind, 2):
        hues = HUES[scheme]
        assert apart(hues[one].fill, hues[other].fill, eyes) >= APART, (one, other)


@each
def test_what_is_done_differs_from_what_is_ahead(scheme: Scheme, eyes: str) -> None:
    for hue in HUES[scheme].values():
        assert apart(hue.fill, hue.tint, eyes) >= APART, hue.name


@each
def test_no_two_states_look_alike(scheme: Scheme, eyes: str) -> None:
    palette = PALETTES[scheme]
    for names, least in ((STATE_INKS, APART), (STATE_GROUNDS, GROUNDS_APART)):
        for one, other in combinations(names, 2):
            distance = apart(getattr(palette, one), getattr(palette, other), eyes)
            assert distance >= least, (one, other)
