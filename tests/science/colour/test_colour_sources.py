"""The figures of colours and trials stand in resources/help/sources.md as they are in the code."""

import re

import pytest

from studio_log.cli import colour_measure
from studio_log.domain import (
    instrument_table,
    light_test,
    swatches,
    trial_design,
    trial_fit,
)
from studio_log.science import statistics_robust
from studio_log.science.colour import (
    correction,
    evenness,
    grades,
    guess,
    lab,
    photo_checks,
    photo_sure,
    regions,
)
from tests.support.tree import TREE

PAGE = TREE / "resources" / "help" / "sources.md"
SECTION = "Colour and trials"


def g(*figures: float) -> str:
    return ", ".join(f"{one:g}" for one in figures)


def white(of: lab.White) -> str:
    return ", ".join(f"{one:.4f}".rstrip("0").rstrip(".") for one in of)


FIGURES = {
    "steps of blue wool": f"{swatches.BLUE_STEPS[-1]} to {swatches.BLUE_STEPS[0]}",
    "reflectance is per cent when any exceeds": g(instrument_table.PERCENT_FROM),
    "a target is seen when its colours go with the published ones by": (
        f"{guess.ALIKE:g}, correlation"
    ),
    "white D65, 2 degree": white(lab.D65_2),
    "white D50, of charts": white(lab.D50_2),
    "grade of change below ΔE_F": g(*(limit for limit, _ in grades.CHANGE_LIMITS)),
    "grade of staining from SSR": g(*(limit for limit, _ in grades.STAINING_LIMITS)),
    "a grade is unsure within": f"{grades.UNSURE_WITHIN:g} ΔE_F of a limit",
    "unlevelness RUI: excellent, good, poor up to": g(*(m for m, _ in evenness.RUI_BANDS[:-1])),
    "evenness from colours: even, slight, visible up to": (
        f"{g(*(most for most, _ in evenness.SPREAD_BANDS[:-1]))} CIEDE2000"
    ),
    "a pixel is clipped at codes": (
        f"{regions.BRIGHTEST_CODE} and up, {regions.DARKEST_CODE} and below"
    ),
    "clipped pixels that a region may have": f"{100 * regions.MOST_CLIPPED:g} %",
    "a patch shines when its brightest twentieth is above its median by": (
        f"{100 * photo_checks.MOST_GLARE:g} %"
    ),
    "light may differ between two cards by": f"{100 * photo_checks.MOST_FALLOFF:g} %",
    "light may differ across the target by": f"{100 * photo_checks.MOST_TARGET_FALLOFF:g} %",
    "a swatch is uneven in light above": f"{100 * photo_checks.MOST_UNEVEN:g} %",
    "read of a patch": f"the middle {100 * regions.MIDDLE:g} % of its width and height",
    "left off a region's values at either end": f"{100 * regions.TRIMMED:g} %",
    "patches that a correction needs": (
        f"{correction.LEAST_PATCHES}; {correction.LEAST_FOR_ROOTS} for the root polynomial"
    ),
    "a fit is poor, refused above": (
        f"{photo_checks.POOR_FIT:g}, {photo_checks.WORST_FIT:g} CIEDE2000"
    ),
    "u of repeated photos": f"{photo_sure.U_REPEAT:g} CIEDE2000",
    "a grey card reflects": f"{colour_measure.GREY_CARD:g} %",
    "a line does not fit when p is below": f"{trial_fit.LACKS_BELOW_P:g}",
    "a swatch is far off beyond": f"{statistics_robust.FAR_OFF:g} robust deviations",
    "swatches that a fit needs": f"{trial_fit.LEAST_SWATCHES:g}",
    "ages of a trial unless said": f"{g(*trial_design.DEFAULT_AGES)} d",
    "a light test is read after": f"{g(*light_test.READING_WEEKS)} weeks",
}
LAWS = {
    "an instrument's text",
    "sRGB to linear light and XYZ", "CIELAB, C* and h", "CIEDE2000", "CMC", "reflectance to XYZ",
    "K/S", "the eye's sensitivity", "t, F", "line in log age", "interval of a trial's slope",
    "colours of the 24 patches", "correction", "curve with a level", "robust slope",
    "curve that only rises", "randomised blocks", "least effect that a trial shows",
    "arms against one control",
    "2u in C* or L*",
}  # fmt: skip
"""Rows that hold a law or a table instead of a figure; each has a test of its own."""


def written() -> dict[str, tuple[str, str, str]]:
    section = PAGE.read_text("utf-8").split(f"\n## {SECTION}\n")[1].split("\n## ")[0]
    rows = [[cell.strip() for cell in line.strip("|").split("|")] for line in section.splitlines()]
    return {row[0]: (row[1], row[2], row[3]) for row in rows if len(row) == 4}


@pytest.mark.parametrize("row", FIGURES)
def test_a_figure_stands_there_as_it_is_in_the_code(row: str) -> None:
    assert written()[row][0] == FIGURES[row]


def test_no_row_tells_of_what_the_code_does_not_have() -> None:
    told = {row for row in written() if not re.fullmatch(r"figure|-+", row)}
    assert told == set(FIGURES) | LAWS


def test_every_row_has_a_source_and_says_how_sure_it_is() -> None:
    for row, (_, source, sure) in written().items():
        if row in FIGURES or row in LAWS:
            assert sure in {"H", "M", "L"}, row
            assert len(source) > 7, row
            assert sure == "L" or not source.startswith("proposal"), row
