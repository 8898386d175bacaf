"""Every word on the screen can be read, and every shape be seen.

Source of the limits and the formula: W3C, Web Content Accessibility Guidelines 2.2,
success criteria 1.4.3 (text, 4.5:1) and 1.4.11 (shapes, 3:1).
"""

import re
from dataclasses import fields

import pytest

from studio_log.domain.methods import StepKind
from studio_log.present.hues import (
    EDGE_GROUNDS,
    HUES,
    KIND_WORDS,
    PALETTES,
    SHAPE_PAIRS,
    TEXT_PAIRS,
    TEXT_RATIO,
    Hue,
    Palette,
    Scheme,
    contrast,
    luminance,
)

SCHEMES: tuple[Scheme, ...] = ("light", "dark", "strong-light", "strong-dark")


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        # The two ends follow from the definition; 4.54 for #767676 on white is the figure
        # commonly printed for the lightest grey that passes (from memory).
        ("#000000", "#ffffff", 21.0),
        ("#ffffff", "#ffffff", 1.0),
        ("#767676", "#ffffff", 4.54),
    ],
)
def test_contrast_follows_the_published_formula(one: str, other: str, ratio: float) -> None:
    assert contrast(one, other) == pytest.approx(ratio, abs=0.005)
    assert contrast(other, one) == contrast(one, other)


def test_pure_green_is_brighter_than_pure_red_and_blue() -> None:
    # The three weights of the definition: 0.2126, 0.7152, 0.0722.
    assert luminance("#ff0000") == pytest.approx(0.2126)
    assert luminance("#00ff00") == pytest.approx(0.7152)
    assert luminance("#0000ff") == pytest.approx(0.0722)


@pytest.mark.parametrize("scheme", SCHEMES)
@pytest.mark.parametrize(("text", "ground"), TEXT_PAIRS)
def test_text_reads_on_its_ground(scheme: Scheme, text: str, ground: str) -> None:
    palette = PALETTES[scheme]
    least = TEXT_RATIO[scheme]
    assert contrast(getattr(palette, text), getattr(palette, ground)) >= least


@pytest.mark.parametrize("scheme", SCHEMES)
@pytest.mark.parametrize(("shape", "ground"), SHAPE_PAIRS)
def test_shapes_stand_out_from_their_ground(scheme: Scheme, shape: str, ground: str) -> None:
    palette = PALETTES[scheme]
    assert contrast(getattr(palette, shape), getattr(palette, ground)) >= 3


@pytest.mark.parametrize("scheme", SCHEMES)
@pytest.mark.parametrize("kind", list(StepKind))
def test_words_on_a_bar_read_dyed_and_undyed(scheme: Scheme, kind: StepKind) -> None:
    hue, palette = HUES[scheme][kind], PALETTES[scheme]
    assert contrast(hue.on_fill, hue.fill) >= TEXT_RATIO[scheme]
    assert contrast(palette.ink, hue.tint) >= TEXT_RATIO[scheme]
    for ground in EDGE_GROUNDS:
        assert contrast(hue.edge, getattr(palette, ground)) >= 3, ground


@pytest.mark.parametrize("scheme", SCHEMES)
def test_no_two_kinds_share_a_hue_a_name_or_a_word(scheme: Scheme) -> None:
    hues = HUES[scheme]
    assert set(hues) == set(StepKind) == set(KIND_WORDS)
    assert len({hue.fill for hue in hues.values()}) == len(StepKind)
    assert len({hue.name for hue in hues.values()}) == len(StepKind)
    assert len(set(KIND_WORDS.values())) == len(StepKind)


def test_a_hue_keeps_its_name_in_every_scheme() -> None:
    for kind in StepKind:
        assert len({HUES[scheme][kind].name for scheme in SCHEMES}) == 1


def test_every_colour_is_written_in_full() -> None:
    written = [
        getattr(thing, field.name)
        for thing in (
            *PALETTES.values(),
            *(hue for scheme in SCHEMES for hue in HUES[scheme].values()),
        )
        for field in fields(thing)
        if not (isinstance(thing, Hue) and field.name == "name")
    ]
    assert len(written) == len(SCHEMES) * (len(fields(Palette)) + len(StepKind) * 4)
    for colour in written:
        assert re.fullmatch(r"#[0-9a-f]{6}", colour), colour
