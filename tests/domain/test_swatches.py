"""What is typed of swatches, and what a swatch's journal makes of it."""

from datetime import timedelta
from typing import Any

import pytest

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act, Entry
from studio_log.domain.swatch_text import read_grade, read_lab, whole_swatch_code
from studio_log.domain.swatches import GREY_STEPS, swatch_from
from studio_log.science.colour.lab import Lab
from tests.support.builders import HOUR, NINE
from tests.support.reference import rows


def test_the_grey_steps_are_those_of_the_standard() -> None:
    """ISO 105-A02: nine steps."""
    told = {row["grade"] for row in rows("iso105_grey_scales.csv")}
    assert set(GREY_STEPS) == told


@pytest.mark.parametrize(
    ("typed", "whole"), [("w26-1", "W26-001"), (" W26-1234 ", "W26-1234"), ("W26 - 7", "W26-007")]
)
def test_a_code_is_read_as_it_is_written(typed: str, whole: str) -> None:
    assert whole_swatch_code(typed) == whole


@pytest.mark.parametrize("typed", ["", "26-001", "W26", "W26-", "W26-1x", "B26-001", "W٢٦-1"])
def test_what_is_no_code_is_refused(typed: str) -> None:
    with pytest.raises(Refusal, match="no swatch"):
        whole_swatch_code(typed)


@pytest.mark.parametrize(
    "typed", ["52.1,31.8,-24", "52,1; 31,8; -24", "52.1 31.8 -24", "52,1 31,8 −24"]
)
def test_a_colour_is_read_with_points_and_commas(typed: str) -> None:
    assert read_lab(typed) == Lab(52.1, 31.8, -24.0)


@pytest.mark.parametrize(
    "typed", ["", "1,2", "1,2,3,4", "a,b,c", "150,0,0", "50,900,0", "nan,0,0", "1e3,0,0", "inf 0 0"]
)
def test_what_is_no_colour_is_refused(typed: str) -> None:
    with pytest.raises(Refusal):
        read_lab(typed)


@pytest.mark.parametrize(
    ("typed", "scale", "step"),
    [("4", "change", "4"), ("4-5", "change", "4-5"), ("5/4", "staining", "4-5"),
     ("3 to 4", "change", "3-4"), ("3.5", "change", "3-4"), ("2,5", "change", "2-3"),
     ("4.0", "change", "4"), ("7", "blue-wool", "7")],
)  # fmt: skip
def test_a_grade_is_read(typed: str, scale: str, step: str) -> None:
    assert read_grade(typed, scale) == step


@pytest.mark.parametrize(
    ("typed", "scale"),
    [("6", "change"), ("0", "change"), ("2-4", "change"), ("4-5", "blue-wool"), ("9", "blue-wool"),
     ("good", "change"), (".5", "change"), ("5.5", "change")],
)  # fmt: skip
def test_what_is_no_grade_is_refused(typed: str, scale: str) -> None:
    with pytest.raises(Refusal, match="no step"):
        read_grade(typed, scale)


class Diary:
    """The journal of a swatch, entry by entry."""

    def __init__(self) -> None:
        self.entries: list[Entry] = []
        self.add(Act.SWATCH_NEW, 0, {"lot": "26-001", "place": "box", "test_place": "window"})

    def add(self, act: Act, hours: float, data: dict[str, Any] | None = None, **more: Any) -> None:
        at = NINE + timedelta(hours=hours)
        number = len(self.entries) + 1
        self.entries.append(Entry("W26-001", act, at, at, "UTC", number, data=data or {}, **more))

    def read(self, hours: float, lightness: float, **data: Any) -> None:
        whole = {"source": "photo", **data}
        figures = {"L": lightness, "a": 10.0, "b": 5.0}
        self.add(Act.SWATCH_READ, hours, whole, readings=figures)


def test_its_colour_is_the_latest_of_the_master_half_that_is_not_only_relative() -> None:
    diary = Diary()
    assert swatch_from(diary.entries).reading is None
    diary.read(1, 40, source="relative")
    assert swatch_from(diary.entries).reading == swatch_from(diary.entries).readings[0]
    diary.read(2, 50)
    diary.read(3, 60, half="test")
    diary.read(4, 70, source="relative")
    diary.read(1.5, 80)
    found = swatch_from(diary.entries)
    assert found.reading is not None
    assert found.reading.lab.lightness == 50, "the later of two, by when it was read"
    assert found.tested is not None
    assert found.tested.lab.lightness == 60


def test_a_correction_changes_a_colour_and_an_undo_takes_it_back() -> None:
    diary = Diary()
    diary.read(1, 40)
    diary.add(Act.CORRECT, 2, target=2, readings={"L": 41.0})
    diary.add(Act.SWATCH_GRADE, 3, {"test": "light"}, readings={"grade": 4.0})
    found = swatch_from(diary.entries)
    assert found.reading is not None
    assert found.reading.lab == Lab(41, 10, 5)
    assert [one.grade for one in found.grades] == ["4"]
    diary.add(Act.UNDO, 4, target=2)
    assert swatch_from(diary.entries).reading is None


def test_nothing_was_read_before_it_was_cut() -> None:
    diary = Diary()
    diary.read(-1, 40)
    with pytest.raises(Refusal, match="cut later"):
        swatch_from(diary.entries)
    with pytest.raises(Refusal, match="no such swatch"):
        swatch_from([])
    assert timedelta(0) < HOUR


@pytest.mark.parametrize(
    ("act", "data", "readings"),
    [
        (Act.SWATCH_READ, {}, {"L": 50.0, "a": 1.0, "b": 1.0}),
        (Act.SWATCH_READ, {"source": "photo"}, {"L": 50.0}),
        (Act.SWATCH_READ, {"source": "photo", "spots": [[1.0]]}, {"L": 5.0, "a": 1.0, "b": 1.0}),
        (Act.SWATCH_READ, {"source": "photo", "spots": 3}, {"L": 5.0, "a": 1.0, "b": 1.0}),
        (Act.SWATCH_GRADE, {"test": "wash"}, {}),
        (Act.SWATCH_SET, {"nothing": 1}, {}),
        (Act.BATH_USE, {}, {}),
    ],
)
def test_a_journal_from_elsewhere_that_makes_no_sense_is_refused_in_words(
    act: Act, data: dict[str, Any], readings: dict[str, Any]
) -> None:
    diary = Diary()
    diary.add(act, 1, data, readings=readings)
    with pytest.raises(Refusal, match="does not read"):
        swatch_from(diary.entries)
