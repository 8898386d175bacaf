"""The figures of colours and trials stand in resources/help/sources.md as they are in the code."""

import re

import pytest

from studio_log.domain import trial_fit
from studio_log.science import statistics_robust
from studio_log.science.colour import evenness, grades, lab
from tests.support.tree import TREE

PAGE = TREE / "resources" / "help" / "sources.md"
SECTION = "Colour and trials"


def g(*figures: float) -> str:
    return ", ".join(f"{one:g}" for one in figures)


def white(of: lab.White) -> str:
    return ", ".join(f"{one:.4f}".rstrip("0").rstrip(".") for one in of)


FIGURES = {
    "white D65, 2 degree": white(lab.D65_2),
    "white D50, of charts": white(lab.D50_2),
    "grade of change below ΔE_F": g(*(limit for limit, _ in grades.CHANGE_LIMITS)),
    "grade of staining from SSR": g(*(limit for limit, _ in grades.STAINING_LIMITS)),
    "a grade is unsure within": f"{grades.UNSURE_WITHIN:g} ΔE_F of a limit",
    "unlevelness RUI: excellent, good, poor up to": g(*(m for m, _ in evenness.RUI_BANDS[:-1])),
    "evenness from colours: even, slight, visible up to": (
        f"{g(*(most for most, _ in evenness.SPREAD_BANDS[:-1]))} CIEDE2000"
    ),
    "a line does not fit when p is below": f"{trial_fit.LACKS_BELOW_P:g}",
    "a swatch is far off beyond": f"{statistics_robust.FAR_OFF:g} robust deviations",
    "swatches that a fit needs": f"{trial_fit.LEAST_SWATCHES:g}",
}
LAWS = {
    "sRGB to linear light and XYZ", "CIELAB, C* and h", "CIEDE2000", "CMC", "reflectance to XYZ",
    "K/S", "the eye's sensitivity", "t, F", "line in log age", "interval of a trial's slope",
    "curve with a level", "robust slope", "curve that only rises",
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
