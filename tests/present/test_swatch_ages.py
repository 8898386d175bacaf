"""Swatches by the age of their cure: true places on a log scale, and what has no place on it."""

import math
import xml.etree.ElementTree as ET
from itertools import pairwise

import pytest

from studio_log.present.swatch_ages import lay_out_ages
from studio_log.present.swatch_files import svg_of
from studio_log.present.swatch_plot import Coloured, Dot, Panel
from studio_log.science.colour.lab import Lab
from studio_log.science.colour.shown import shown_as

SIZE, LINE = (1000.0, 1000.0), 18.0


def swatch(code: str, lab: Lab, age_d: float | None) -> Coloured:
    return Coloured(code, "26-001", "Runners", lab, shown_as(lab)[0], False, f"{code} told", age_d)


def dots(panel: Panel) -> dict[str, Dot]:
    return {dot.code: dot for dot in panel.dots}


def test_ages_stand_on_a_log_scale_and_figures_on_a_straight_one() -> None:
    """By the definition of a logarithm: 1 to 10 days is as far as 10 to 100."""
    found = lay_out_ages(
        [
            swatch("W26-001", Lab(50, 0, 10), 1),
            swatch("W26-002", Lab(60, 0, 20), 10),
            swatch("W26-003", Lab(70, 0, 30), 100),
        ],
        SIZE, LINE,
    )  # fmt: skip
    chroma, light = map(dots, found.panels)
    first, second, third = (chroma[code].x for code in sorted(chroma))
    assert third - second == pytest.approx(second - first)
    ups = [chroma[code].y for code in sorted(chroma)]
    assert ups[0] - ups[1] == pytest.approx(ups[1] - ups[2])
    assert ups[0] > ups[1], "more is higher"
    panel = found.panels[1]
    share = (panel.top + panel.side - light["W26-001"].y) / panel.side
    assert share == pytest.approx(0.5), "L* 50 of 100"


def test_what_is_not_cured_stands_in_a_column_at_the_left() -> None:
    found = lay_out_ages(
        [swatch("W26-001", Lab(50, 0, 10), None), swatch("W26-002", Lab(50, 0, 10), 0.4),
         swatch("W26-003", Lab(50, 0, 10), 30)],
        SIZE, LINE,
    )  # fmt: skip
    for panel in found.panels:
        place = dots(panel)
        assert place["W26-001"].x == place["W26-002"].x < place["W26-003"].x
        assert "not cured" in [label.text for label in panel.labels]
    none = lay_out_ages([swatch("W26-001", Lab(50, 0, 10), 30)], SIZE, LINE)
    assert "not cured" not in [label.text for label in none.panels[0].labels]


@pytest.mark.parametrize("size", [(300.0, 300.0), (1400.0, 400.0), (400.0, 1400.0)])
def test_everything_stays_in_its_square_and_days_do_not_run_into_each_other(
    size: tuple[float, float],
) -> None:
    swatches = [
        swatch(f"W26-{n:03d}", Lab(n % 100, n % 90, 5), math.exp(n / 12)) for n in range(100)
    ]
    for panel in lay_out_ages(swatches, size, LINE).panels:
        for dot in panel.dots:
            assert panel.left <= dot.x <= panel.left + panel.side
            assert panel.top - 1e-6 <= dot.y <= panel.top + panel.side + 1e-6
        named = [label.x for label in panel.labels if label.y > panel.top + panel.side + LINE]
        gaps = [b - a for a, b in pairwise(named)]
        assert not gaps or min(gaps) > LINE


def test_it_is_written_as_svg_and_empty_axes_too() -> None:
    for swatches in ([], [swatch("W26-001", Lab(50, 0, 10), 30)]):
        root = ET.fromstring(svg_of(lay_out_ages(swatches, SIZE, LINE), "By age"))
        assert len(root.findall(".//{*}circle")) == 2 * len(swatches)
