"""What is wished of a plan, on its page and its forms; what following it writes down."""

import json

import pytest
from PySide6.QtCore import QDate, Qt
from PySide6.QtWidgets import QAbstractButton, QLabel, QWidget

from studio_log.domain.plan_wishes import SharedMilk
from studio_log.language.catalogue import catalogue_of
from studio_log.language.words import ENGLISH, speak
from studio_log.services.commands import ChangeSettings
from studio_log.ui.plan.accept_form import AcceptForm
from studio_log.ui.plan.milk_form import MilkForm
from studio_log.ui.plan.plan_box import PlanBox
from studio_log.ui.plan.what_if import DayBox, closed
from studio_log.ui.plan.wish_forms import GoalForm, WantedForm
from studio_log.ui.theme.look import theme
from studio_log.ui.widgets import style
from studio_log.ui.widgets.parts import Words
from tests.support.fixtures import Workshop
from tests.support.tree import TREE
from tests.ui.plan_kit import Sheet, box, settle, shown

__all__ = ["box"]
pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")


def test_only_the_lots_that_are_ticked_follow(box: PlanBox, shop: Workshop) -> None:
    one, other = shop.new("first"), shop.new("second")
    shown(box)
    box.open_accept()
    form = box.form
    row = next(form.list.item(n) for n in range(2) if one in form.list.item(n).text())  # type: ignore[union-attr]
    row.setCheckState(Qt.CheckState.Unchecked)
    form.accept()  # type: ignore[union-attr]
    settle(box)
    assert (shop.lot(one).planned, shop.lot(other).planned) == (False, True)


def test_a_goal_is_typed_and_taken_out(box: PlanBox, shop: Workshop) -> None:
    shop.new()
    shown(box)
    box.open_goal(-1)
    goal = box.form
    assert isinstance(goal, GoalForm)
    goal.submit()
    assert "Give it a name" in goal.fault.text()
    goal.name.setText("Spring class")
    goal.pieces.setValue(4)
    goal.day.setDate(QDate(2026, 12, 1))
    goal.submit()
    settle(box)
    assert box.setup is not None
    assert [(one.name, one.pieces) for one in box.setup.goals] == [("Spring class", 4)]
    box.pane.goals.removed.emit(0)
    settle(box)
    assert box.setup.goals == ()


def test_a_wanted_lot_is_typed_planned_and_taken_out(box: PlanBox, shop: Workshop) -> None:
    shop.new()
    shown(box)
    box.open_wanted()
    wanted = box.form
    assert isinstance(wanted, WantedForm)
    wanted.name.setText("Napkins")
    wanted.pieces.setPlainText("six nice ones")
    wanted.submit()
    assert wanted.isVisible()
    assert wanted.understood.text()
    wanted.pieces.setPlainText("6 x linen 45 x 45 cm 200 g/m2")
    wanted.submit()
    settle(box)
    assert box.setup is not None
    assert [one.name for one in box.setup.wanted] == ["Napkins"]
    assert "Napkins" in box.visits.text()
    box.pane.lots.removed.emit(0)
    settle(box)
    assert box.setup.wanted == ()


def test_what_a_plan_counts_on_is_written_into_the_studio_when_it_is_followed(
    box: PlanBox, shop: Workshop
) -> None:
    shop.new()
    shown(box)
    box.what_if.take(closed(QDate(2026, 6, 12)))
    settle(box)
    box.open_accept()
    form = box.form
    assert isinstance(form, AcceptForm)
    assert form.keep.isVisible()
    form.keep.setChecked(False)
    assert form.changes == ()
    form.keep.setChecked(True)
    form.accept()
    settle(box)
    assert shop.studio.settings.single_days == "2026-06-12 closed"
    assert box.what_if.tried == [], "the studio has it now: it is not tried a second time"
    box.open_accept()
    assert isinstance(box.form, AcceptForm)
    assert not box.form.keep.isVisible()


def test_one_milk_is_shared_on_a_form_and_taken_out_again(box: PlanBox, shop: Workshop) -> None:
    maker = shop.new("first")
    shown(box)
    assert not box.pane.milks.isVisible(), "one lot alone shares with nobody"
    other, third = (shop.new(name) for name in ("second", "third"))
    box.refresh()
    settle(box)
    box.pane.milks.add.click()
    form = box.pane.milk_form
    assert form is not None
    assert [form.maker.itemData(n) for n in range(3)] == [maker, other, third]
    form.submit()
    assert "Tick at least one lot" in form.fault.text()
    items = [form.others.item(n) for n in range(form.others.count())]
    assert [one.text() for one in items] == [f"{other} second", f"{third} third"]
    items[1].setCheckState(Qt.CheckState.Checked)
    form.maker.setCurrentIndex(1)
    assert form.shared == SharedMilk(other, (third,)), "what was ticked stays ticked"
    form.submit()
    settle(box)
    assert box.setup is not None
    assert box.setup.shared == (SharedMilk(other, (third,)),)
    assert f"train the milk, for {third} too" in box.visits.text()
    assert not box.pane.milks.add.isEnabled(), "one lot is left, and nobody to share with"
    row = box.pane.milks.findChildren(Words)
    assert f"{other} second, for {third} third too" in [one.text() for one in row]
    box.pane.milks.removed.emit(0)
    settle(box)
    assert box.setup.shared == ()


def test_the_form_of_a_wanted_lot_has_room_for_its_lines_and_its_methods_title(
    box: PlanBox,
) -> None:
    box.setStyleSheet(style.sheet(theme()))  # which sets heights of its own
    shown(box)
    box.open_wanted()
    form = box.form
    assert isinstance(form, WantedForm)
    settle(box)
    letters = form.pieces.fontMetrics()
    assert form.pieces.height() >= 3 * letters.height()
    title = form.method.fontMetrics().horizontalAdvance(form.method.currentText())
    assert form.method.width() > title
    label = form.form.labelForField(form.method)
    apart = label.geometry().center().y() - form.method.geometry().center().y()
    assert abs(apart) < letters.height(), "it stands beside its name, and takes no line away"


def test_a_name_is_given_once(box: PlanBox, shop: Workshop) -> None:
    shop.do(ChangeSettings({"plan_goals": json.dumps([
        {"name": "class", "at": "2026-12-01T09:00", "pieces": 1, "cured_days": 30}
    ])}))  # fmt: skip
    shown(box)
    box.open_goal(-1)
    box.form.name.setText("class")  # type: ignore[union-attr]
    box.form.submit()  # type: ignore[union-attr]
    assert "is there already" in box.form.fault.text()  # type: ignore[union-attr]


def test_vessels_are_read_while_they_are_typed_and_kept(box: PlanBox, shop: Workshop) -> None:
    shop.new()
    shown(box)
    field = box.pane.vessels
    field.setText("3 buckets and a bathtub")
    assert "is no vessel" in field.understood.text()
    field.line.editingFinished.emit()
    settle(box)
    assert shop.studio.settings.vessels == "2 buckets of 20 L"
    box.refresh()
    settle(box)
    assert field.text() == "3 buckets and a bathtub", "what was typed is not lost"
    field.setText("bucket 20 L; pot 40 L")
    field.line.editingFinished.emit()
    settle(box)
    assert shop.studio.settings.vessels == "bucket 20 L; pot 40 L"


def test_days_of_slow_drying_count(box: PlanBox, shop: Workshop) -> None:
    shop.new()
    shown(box)
    box.pane.slow.setText("tomorrow 40 h")
    box.pane.slow.line.editingFinished.emit()
    settle(box)
    assert box.setup is not None
    assert box.setup.problem["dry_min_by_date"] == {"2026-06-10": 2400}


def test_two_pairs_of_hands_are_counted_with(box: PlanBox, shop: Workshop) -> None:
    shop.new()
    shown(box)
    box.pane.hands.setValue(2)
    settle(box)
    assert shop.studio.settings.hands == 2
    assert box.setup is not None
    assert box.setup.problem["resources"]["hands"] == 2
    assert box.fields is not None
    assert box.fields["starts"]


def test_the_slider_is_kept(box: PlanBox, shop: Workshop) -> None:
    shop.new()
    shown(box)
    box.pane.slider.setValue(box.pane.slider.maximum())
    settle(box)
    assert shop.studio.settings.plan_visit_hours == 0
    assert box.setup is not None
    assert box.setup.problem["session_worth"] == 0
    box.pane.slider.setValue(0)
    settle(box)
    assert "session_worth" not in box.setup.problem


def letters(box: QWidget) -> list[str]:
    """The letters by which parts of a box are reached."""
    bar = getattr(box, "message", None)
    apart = (bar.yes, bar.no, bar.copy) if bar is not None else ()
    parts = box.findChildren(QAbstractButton) + box.findChildren(QLabel)
    texts = [one.text() for one in parts if one not in apart]
    return [one[one.index("&") + 1].lower() for one in texts if "&" in one.replace("&&", "")]


@pytest.mark.parametrize("language", ["en", "de"])
def test_no_two_parts_of_a_form_share_a_letter(box: PlanBox, shop: Workshop, language: str) -> None:
    shop.new("first")
    shop.new("second")
    shown(box)
    assert box.setup is not None
    if language == "de":
        speak(catalogue_of("de", TREE / "resources" / "translations"))
    try:
        forms = (
            GoalForm(QDate(2026, 6, 9), ()), WantedForm((), ()), MilkForm(box.setup),
            AcceptForm([], [closed(QDate(2026, 6, 12))]),
        )  # fmt: skip
    finally:
        speak(ENGLISH)
    for form in forms:
        found = letters(form)
        assert len(found) > 2
        assert sorted(found) == sorted(set(found)), type(form).__name__
        form.deleteLater()


@pytest.mark.parametrize("language", ["en", "de"])
def test_no_two_acts_of_the_window_share_a_letter(box: PlanBox, language: str) -> None:
    if language == "de":
        speak(catalogue_of("de", TREE / "resources" / "translations"))
    try:
        made = PlanBox(box._bridge, Sheet)  # type: ignore[arg-type]
    finally:
        speak(ENGLISH)
    assert len(letters(made)) > 10
    assert sorted(letters(made)) == sorted(set(letters(made)))
    made.deleteLater()


def test_a_day_is_chosen_in_a_month_with_room(box: PlanBox) -> None:
    day = DayBox("Close a day", QDate(2026, 6, 9), box)
    form = GoalForm(QDate(2026, 6, 9), (), None, box)
    for month in (day.calendar, form.day.calendarWidget()):
        cell = month.minimumWidth() / 7
        assert cell > month.fontMetrics().horizontalAdvance("28") * 2.5
        assert month.minimumDate() == QDate(2026, 6, 9)


def test_hours_and_days_are_told_in_the_language_spoken(box: PlanBox) -> None:
    speak(catalogue_of("de", TREE / "resources" / "translations"))
    try:
        shown(box)
        form = GoalForm(QDate(2026, 6, 9), (), None, box)
        assert box.pane.hours.text() == "Geöffnet: Mo–Sa 08:00–19:00."
        assert form.day.text() == "Mi. 7. Oktober 2026"
    finally:
        speak(ENGLISH)
