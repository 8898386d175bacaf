"""The trials as they are used: planned with what it needs in sight, read blind, unveiled, saved."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox
from pytestqt.qtbot import QtBot

from studio_log.services.trials import NewTrial, ReadTag, TrialPlan, UnveilTrial
from studio_log.ui.bridge import Bridge
from studio_log.ui.trials.forms import BREAK, CHANGE, DONE, LOT, REMARK
from studio_log.ui.trials.readers import day_reader, reading_of
from studio_log.ui.trials.trial_box import TrialBox
from tests.support.builders import NINE
from tests.support.fixtures import Workshop
from tests.ui.window_kit import settle

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints|raise\\(|grabbing")
PLAN = TrialPlan((0.0, 3.0, 30.0), blocks=("1", "2"), replicates=1, seed=7)


@pytest.fixture
def box(qtbot: QtBot, bridge: Bridge) -> Iterator[TrialBox]:
    made = TrialBox(bridge)
    qtbot.addWidget(made)
    made.resize(1200, 800)
    made.show()
    settle()
    yield made
    made.close()


def planned(box: TrialBox, shop: Workshop) -> str:
    code = shop.do(NewTrial("Does a long cure deepen madder?", PLAN)).code
    box.refresh()
    settle()
    return code


def row(box: TrialBox, at: int) -> list[str]:
    table = box.view.units
    return [table.item(at, column).text() for column in range(table.columnCount())
            if not table.isColumnHidden(column)]  # fmt: skip


def test_the_form_says_what_it_needs_while_it_is_typed(box: TrialBox, qtbot: QtBot) -> None:
    assert box.page is None
    form = box.open_new()
    settle()
    assert form.needs.text().startswith("42 pieces, 3 soyings, 7 dye baths.")
    form.ages.setText("0, 30")
    form.way.setCurrentIndex(1)
    qtbot.waitUntil(lambda: form.needs.text().startswith("12 pieces, 6 soyings, 1 dye bath."))
    form.ages.setText("5")
    qtbot.waitUntil(lambda: "compares 2 to 20 arms" in form.fault.text())
    qtbot.mouseClick(form.keep, Qt.MouseButton.LeftButton)
    assert "Question" in form.message.words.text()
    form.question.setText("Does it?")
    form.ages.setText("0, 30")
    form.day.setText("1 September")
    form.submit()
    settle()
    assert box.page is not None
    assert box.page.line.question == "Does it?"
    assert box.page.trial.day.isoformat() == "2026-09-01"
    assert box.page.trial.way == "backwards"


def test_reading_goes_from_tag_to_tag_and_shows_nothing_else(
    box: TrialBox, shop: Workshop, qtbot: QtBot
) -> None:
    planned(box, shop)
    assert box.page is not None
    tags = [one.tag for one in box.page.units]
    assert len(row(box, 0)) == 7
    reading = box.open_reading()
    assert reading is not None
    for at, tag in enumerate(tags[:-1]):
        assert reading.tag.text() == tag
        reading.value.setText("nonsense" if at == 0 else str(20 + at))
        qtbot.mouseClick(reading.keep, Qt.MouseButton.LeftButton)
        if at == 0:
            assert reading.tag.text() == tag  # refused beneath the line; nothing is lost
            reading.value.setText("52.1, 31.8, 24.0")
            qtbot.keyClick(reading.value.line, Qt.Key.Key_Return)
        settle()
    assert row(box, 0) == [tags[0], "39.84"]  # C* of a* 31.8 and b* 24.0, by Pythagoras
    assert box.view.arms.isColumnHidden(5)
    assert box.report is None
    qtbot.mouseClick(reading.lost, Qt.MouseButton.LeftButton)
    settle()
    assert reading.tag.text() == "All are read"
    assert not reading.keep.isVisible()
    reading.reject()
    settle()
    qtbot.mouseClick(box.view.buttons["unveil"], Qt.MouseButton.LeftButton)
    settle()
    assert box.report is not None
    assert box.view.plot.isVisible()
    assert len(row(box, 0)) == 7
    assert box.view.answer.text()
    assert not box.undo.isEnabled()  # what was seen cannot be unseen


def test_before_all_is_read_unveiling_asks_why(box: TrialBox, shop: Workshop) -> None:
    planned(box, shop)
    reading = box.open_reading()
    assert reading is not None
    reading.value.setText("20")
    reading.submit()
    reading.reject()
    settle()
    box.view.buttons["unveil"].click()
    form = box.dialog
    assert form is not None
    assert form.form is BREAK  # type: ignore[attr-defined]
    form.submit()  # type: ignore[attr-defined]
    form.fields["note"].setText("the list lay open")  # type: ignore[attr-defined]
    form.submit()  # type: ignore[attr-defined]
    settle()
    assert box.page is not None
    assert box.page.trial.unveiling is not None
    assert box.page.trial.unveiling.note == "the list lay open"


def test_arms_lots_days_and_remarks(box: TrialBox, shop: Workshop) -> None:
    planned(box, shop)
    lot = shop.new()
    for form, typed in (
        (LOT, {"lot": f"{lot} runners", "batch": 2}),
        (DONE, {"arm": 1, "note": "at noon"}),
        (CHANGE, {"day": "2026-07-01"}),
        (REMARK, {"note": "rain water"}),
    ):
        dialog = box.open_form(form)
        assert dialog is not None
        for slug, value in typed.items():
            field = dialog.fields[slug]
            if isinstance(field, QComboBox):
                field.setCurrentIndex(field.findData(value))
            else:
                field.setText(str(value))
        dialog.submit()
        settle()
    assert box.page is not None
    trial = box.page.trial
    assert trial.lots == {(1, 2): lot, (2, 2): lot, (3, 2): lot}
    assert set(trial.dyed) == {(1, 1), (1, 2)}
    assert trial.day.isoformat() == "2026-07-01"
    assert "rain water" in box.view.diary.text()
    box.undo.click()
    settle()
    assert "rain water" not in box.view.diary.text()
    box.redo.click()
    settle()
    assert "rain water" in box.view.diary.text()


def test_the_report_is_saved_and_tags_are_wished_for(
    box: TrialBox, shop: Workshop, tmp_path: Path, qtbot: QtBot
) -> None:
    code = planned(box, shop)
    reading = box.open_reading()
    assert reading is not None
    for at in range(6):
        reading.value.setText(str(20 + at))
        reading.submit()
        settle()
    shop.do(UnveilTrial(code))
    box.refresh()
    settle()
    for kind in ("pdf", "csv"):
        box.save_report(str(tmp_path / f"r.{kind}"))
        assert (tmp_path / f"r.{kind}").stat().st_size > 100
    box.save_report(str(tmp_path / "r.doc"))
    assert ".pdf, .svg" in box.message.words.text()
    with qtbot.waitSignal(box.tags_wanted) as wished:
        box.view.buttons["tags"].click()
    assert len(wished.args[0]) == 6


@pytest.mark.parametrize(
    ("typed", "day"),
    [("9 July", "2026-07-09"), ("2026-07-09", "2026-07-09"), ("1 March", "2027-03-01")],
)
def test_a_day_is_the_next_one_of_its_name(typed: str, day: str) -> None:
    found = day_reader(NINE.date())(typed)
    assert found.value is not None
    assert found.value.isoformat() == day
    assert day_reader(NINE.date())("someday").fault


def test_a_figure_or_a_colour_is_understood() -> None:
    assert reading_of("chroma")("34,2").value == 34.2
    assert reading_of("chroma")("52,1;31,8;24").value.a == 31.8
    assert reading_of("chroma")("").value is None
    assert reading_of("eye")("52,31,24").fault
    assert reading_of("eye")("7").value == 7


def test_arms_with_names_are_planned_and_told_against_their_control(
    box: TrialBox, shop: Workshop, qtbot: QtBot
) -> None:
    form = box.open_new()
    settle()
    form.question.setText("Does soy deepen madder?")
    form.ages.setText("")
    form.others.setText("alum only, no soy, two coats")
    form.control.setText("all wet")
    qtbot.waitUntil(lambda: "none of the arms" in form.fault.text())
    form.control.setText("no soy")
    form.submit()
    settle()
    assert box.page is not None
    assert box.view.arms.item(1, 0).text() == "no soy (control)"
    trial = box.page.trial
    for unit in trial.units:
        rise = {1: 0.2, 2: 0.0, 3: 7.0}[unit.arm] + 0.3 * unit.block * unit.arm
        shop.do(ReadTag(trial.code, unit.tag, value=20 + rise))
    shop.do(UnveilTrial(trial.code))
    box.refresh()
    settle()
    assert box.view.answer.text().startswith("Clearly higher than the control, no soy: two coats.")
    says = [box.view.means.item(at, 6).text() for at in range(box.view.means.rowCount())]
    assert says == ["no clear difference", "control", "clear"]
    assert box.view.plot.plot is not None
    assert len(box.view.plot.plot.bars) == 2
