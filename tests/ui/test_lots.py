"""The lot list and the lot sheet: found, chosen, opened, and what happened is marked."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication, QMenu
from pytestqt.qtbot import QtBot

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.journal import Act
from studio_log.domain.spoiling import Warned
from studio_log.services.commands import ChangeSettings, Correct, Mark, Outcome, SetLot, Undo
from studio_log.services.questions import LotLine, LotSheetFor
from studio_log.services.search import FindLots, LotRowsFor
from studio_log.ui.lots.kept_searches import EMPTY, KEEP
from studio_log.ui.lots.lot_delegate import places
from studio_log.ui.lots.lot_list import LotList
from studio_log.ui.lots.lot_model import LINE_ROLE
from studio_log.ui.lots.lot_sheet import LotSheetPage
from studio_log.ui.lots.step_row import StepRow
from tests.ui.fake_studio import NOW, FakeStudio, lines
from tests.ui.window_kit import WrittenAsk, bridge_over, settle

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")
"""The off-screen platform says this of every window that it shows."""

LAST_EIGHT = datetime(2026, 6, 8, 18, 0, tzinfo=UTC)
"""20:00 on 8 June in Paris, where the clocks stand at UTC+2 in summer."""


class Kit:
    """List and sheet over one fake studio."""

    def __init__(self, qtbot: QtBot) -> None:
        self.studio = FakeStudio()
        self.bridge = bridge_over(self.studio)
        self.ask = WrittenAsk()
        self.list = LotList(self.bridge)
        self.sheet = LotSheetPage(self.bridge, self.ask)
        for widget in (self.list, self.sheet):
            qtbot.addWidget(widget)
            widget.resize(700, 600)
            widget.show()
        self.list.refresh()
        self.sheet.choose("26-031")
        settle()

    @property
    def marks(self) -> list[Mark]:
        """Give the marks sent."""
        return self.studio.sent(Mark)


@pytest.fixture
def kit(qtbot: QtBot) -> Kit:
    """Give list and sheet."""
    return Kit(qtbot)


def test_typing_filters_as_it_is_typed(kit: Kit, qtbot: QtBot) -> None:
    qtbot.keyClicks(kit.list.search, "hemp")
    qtbot.waitUntil(lambda: len(kit.list.model.lines) == 1)
    assert kit.list.model.lines[0].code == "26-029"


def test_a_search_is_kept_taken_again_and_forgotten(kit: Kit, qtbot: QtBot) -> None:
    kept = kit.list.kept
    kept.fill()
    assert [one.text() for one in kept.menu().actions() if one.text()] == [EMPTY, KEEP]
    assert not kept.menu().actions()[-1].isEnabled(), "nothing is typed"
    qtbot.keyClicks(kit.list.search, "cotton,  over 400 g")
    kept.fill()
    kept.menu().actions()[-1].trigger()
    settle()
    (command,) = kit.studio.sent(ChangeSettings)
    assert command.values == {"searches": "cotton, over 400 g"}
    kit.studio.settings = replace(kit.studio.settings, searches="hemp & silk\ncotton, over 400 g")
    kit.bridge.changed.emit(Outcome(settings=True))
    settle()
    kept.fill()
    first, second = kept.menu().actions()[:2]
    assert first.text() == "hemp && silk"
    second.trigger()
    assert kit.list.search.text() == "cotton, over 400 g"
    forget = kept.menu().actions()[-1].menu()
    assert isinstance(forget, QMenu)
    forget.actions()[0].trigger()
    settle()
    assert kit.studio.sent(ChangeSettings)[-1].values == {"searches": "cotton, over 400 g"}


def test_a_scanned_code_opens_its_lot_whatever_the_filter(kit: Kit, qtbot: QtBot) -> None:
    opened: list[str] = []
    kit.list.lot_opened.connect(opened.append)
    kit.list.chips.button(2).click()  # Curing
    settle()
    qtbot.keyClicks(kit.list.search, "26-030")
    qtbot.keyClick(kit.list.search, Qt.Key.Key_Return)
    settle()
    assert opened == ["26-030"]
    assert kit.list.search.text() == ""


def test_the_code_of_a_swatch_card_leads_to_the_swatches(kit: Kit, qtbot: QtBot) -> None:
    opened: list[str] = []
    kit.list.other_opened.connect(opened.append)
    qtbot.keyClicks(kit.list.search, "w26-14")
    qtbot.keyClick(kit.list.search, Qt.Key.Key_Return)
    settle()
    assert opened == ["W26-014"]
    assert kit.list.search.text() == ""


def test_a_code_that_is_not_there_is_said_and_kept(kit: Kit, qtbot: QtBot) -> None:
    qtbot.keyClicks(kit.list.search, "26-999")
    qtbot.keyClick(kit.list.search, Qt.Key.Key_Return)
    settle()
    assert kit.list.said.text() == "There is no lot 26-999 in this studio."
    assert kit.list.search.text() == "26-999"


def test_chips_show_counts_and_ask_for_their_state(kit: Kit) -> None:
    texts = [chip.text() for chip in kit.list.chips.buttons()]
    assert texts == ["Live 8", "In work 5", "Curing 2", "Ready 0", "Planned 1", "All 214"]
    kit.list.chips.button(4).click()
    settle()
    assert kit.studio.asked[-1] == FindLots("", "planned")
    assert [line.code for line in kit.list.model.lines] == ["26-014"]


def test_what_was_understood_stands_under_the_field(kit: Kit, qtbot: QtBot) -> None:
    qtbot.keyClicks(kit.list.search, "hemp")
    qtbot.waitUntil(lambda: kit.list.understood.parts == ("“hemp”",))
    assert kit.list.understood.isVisible()
    qtbot.keyClick(kit.list.search, Qt.Key.Key_Escape)
    qtbot.waitUntil(kit.list.understood.isHidden)
    assert kit.list.search.text() == ""


def test_down_goes_from_the_field_into_the_rows(kit: Kit, qtbot: QtBot) -> None:
    kit.list.search.setFocus()
    qtbot.keyClick(kit.list.search, Qt.Key.Key_Down)
    assert kit.list.focusWidget() is kit.list.view
    assert kit.list.view.currentIndex().row() == 0


def test_of_thousands_only_the_rows_in_sight_are_asked_for(kit: Kit, qtbot: QtBot) -> None:
    one = kit.studio.lines[0]
    kit.studio.lines = tuple(replace(one, code=f"25-{at:03d}") for at in range(1, 5001))
    kit.list.refresh()
    qtbot.waitUntil(lambda: kit.list.model.rowCount() == 5000)
    kit.list.view.scrollToBottom()

    def last() -> LotLine:
        line: LotLine = kit.list.model.index(4999).data(LINE_ROLE)
        return line

    kit.list.view.viewport().repaint()
    qtbot.waitUntil(lambda: last().name == one.name)
    asked = [of for of in kit.studio.asked if isinstance(of, LotRowsFor)]
    assert 0 < sum(len(of.codes) for of in asked) < 100
    assert len(kit.list.model.lines) < 200


def test_arrow_keys_choose_and_enter_opens(kit: Kit, qtbot: QtBot) -> None:
    chosen: list[str] = []
    opened: list[str] = []
    kit.list.lot_chosen.connect(chosen.append)
    kit.list.lot_opened.connect(opened.append)
    kit.list.choose("26-031")
    qtbot.keyClick(kit.list.view, Qt.Key.Key_Down)
    qtbot.keyClick(kit.list.view, Qt.Key.Key_Return)
    assert (chosen, opened) == (["26-030"], ["26-030"])


def test_no_lots_is_a_friendly_page_with_the_way_on(kit: Kit, qtbot: QtBot) -> None:
    wanted: list[bool] = []
    kit.list.new_wanted.connect(lambda: wanted.append(True))
    kit.studio.lines = ()
    kit.list.refresh()
    settle()
    assert "Make the first one" in kit.list.empty_words.text()
    qtbot.mouseClick(kit.list.empty_new, Qt.MouseButton.LeftButton)
    assert wanted == [True]


def test_a_row_is_read_out_whole_and_a_hostile_name_stays_plain(kit: Kit) -> None:
    index = kit.list.model.index(kit.list.model.row_of("26-014"))
    said = kit.list.model.data(index, int(Qt.ItemDataRole.AccessibleTextRole))
    assert said == "26-014 -h & <b>bold</b>, Not begun, 0 of 13 steps done"
    assert index.data(LINE_ROLE).need == ""


def test_a_narrow_row_grows_instead_of_cutting_words(kit: Kit) -> None:
    line = lines()[1]
    wide = places(line, kit.list.font(), 400)
    narrow = places(line, kit.list.font(), 150)
    assert wide.need.top() == wide.doing.top()
    assert narrow.need.top() >= narrow.doing.bottom()
    assert narrow.height > wide.height


def test_a_change_elsewhere_does_not_ask_for_the_sheet_again(kit: Kit) -> None:
    kit.studio.asked.clear()
    kit.sheet.on_changed(Outcome(lots=frozenset({"26-030"})))
    assert kit.studio.asked == []
    kit.sheet.on_changed(Outcome(lots=frozenset({"26-031"})))
    assert kit.studio.asked == [LotSheetFor("26-031")]


def test_the_running_step_stands_open_with_its_acts(kit: Kit) -> None:
    assert kit.sheet.steps.chosen == 4
    assert kit.sheet.detail.isVisible()
    assert [button.text() for button in kit.sheet.detail.act_buttons.values()] == [
        "Stirred", kit.sheet.sheet.steps[3].acts[1][1], "Note only",  # type: ignore[union-attr]
    ]  # fmt: skip
    marks = [row.mark.text() for row in kit.sheet.steps.rows[:5]]
    assert marks == ["✓", "✓", "✓", "●", "○"]


def test_at_eight_last_night_is_understood_before_it_is_sent(kit: Kit, qtbot: QtBot) -> None:
    detail = kit.sheet.detail
    qtbot.keyClicks(detail.moment.line, "at eight last night")
    assert "Mon 8 June 2026, 20:00" in detail.moment.understood.text()
    qtbot.keyClicks(detail.note, "with the long spoon")
    qtbot.keyClick(detail.moment.line, Qt.Key.Key_Return)
    assert kit.marks == [Mark("26-031", "4", Act.TEND, LAST_EIGHT, "with the long spoon")]
    settle()
    assert detail.moment.line.text() == ""
    assert detail.note.text() == ""


def test_a_blank_line_means_now(kit: Kit, qtbot: QtBot) -> None:
    qtbot.mouseClick(kit.sheet.detail.act_buttons["end"], Qt.MouseButton.LeftButton)
    assert kit.marks == [Mark("26-031", "4", Act.END, None)]


@pytest.mark.parametrize("typed", ["soonish", "25:71", "<b>now</b>", "9" * 300])
def test_what_cannot_be_read_is_said_and_not_sent(kit: Kit, qtbot: QtBot, typed: str) -> None:
    detail = kit.sheet.detail
    detail.moment.line.setText(typed)
    qtbot.mouseClick(detail.act_buttons["end"], Qt.MouseButton.LeftButton)
    assert kit.marks == []
    assert "Nothing was changed" in detail.moment.understood.text()


def test_a_refusal_keeps_what_was_typed(kit: Kit, qtbot: QtBot) -> None:
    detail = kit.sheet.detail
    kit.studio.refusals.append(Refusal("The soak began later than that. Nothing was changed."))
    detail.moment.line.setText("yesterday 20:00")
    detail.note.setText("turned twice")
    qtbot.mouseClick(detail.act_buttons["tend"], Qt.MouseButton.LeftButton)
    settle()
    assert kit.sheet.said.words.text().startswith("The soak began later")
    assert detail.moment.line.text() == "yesterday 20:00"
    assert detail.note.text() == "turned twice"


def test_yes_take_it_sends_the_doubted_mark_again_sure(kit: Kit, qtbot: QtBot) -> None:
    kit.studio.refusals.append(Question("Only 10 min after the start. Take it?"))
    qtbot.mouseClick(kit.sheet.detail.act_buttons["end"], Qt.MouseButton.LeftButton)
    settle()
    assert kit.sheet.said.words.text() == "Only 10 min after the start. Take it?"
    qtbot.mouseClick(kit.sheet.said.yes, Qt.MouseButton.LeftButton)
    settle()
    assert [mark.sure for mark in kit.marks] == [False, True]
    assert not kit.sheet.said.isVisible()


def test_no_leaves_a_doubted_mark_unsent(kit: Kit, qtbot: QtBot) -> None:
    kit.studio.refusals.append(Question("Take it?"))
    qtbot.mouseClick(kit.sheet.detail.act_buttons["end"], Qt.MouseButton.LeftButton)
    settle()
    qtbot.mouseClick(kit.sheet.said.no, Qt.MouseButton.LeftButton)
    assert len(kit.marks) == 1
    assert not kit.sheet.said.isVisible()


def test_a_skip_asks_for_a_reason_where_no_note_stands(kit: Kit, qtbot: QtBot) -> None:
    kit.sheet.choose_step(5)
    skip = kit.sheet.detail.act_buttons["skip"]
    qtbot.mouseClick(skip, Qt.MouseButton.LeftButton)
    assert kit.marks == []
    kit.ask.answers["reason"] = "wrung by hand"
    qtbot.mouseClick(skip, Qt.MouseButton.LeftButton)
    assert kit.marks == [Mark("26-031", "5", Act.SKIP, None, "wrung by hand")]


def test_a_changed_figure_is_sent_for_the_lot(kit: Kit, qtbot: QtBot) -> None:
    kit.sheet.choose_step(1)
    kit.sheet.detail.amounts.spin("beans").setValue(25.0)
    qtbot.waitUntil(lambda: bool(kit.studio.sent(SetLot)))
    assert kit.studio.sent(SetLot) == [SetLot("26-031", amounts={"beans": 25.0})]


def test_the_wheel_passing_over_a_figure_leaves_it_alone(kit: Kit) -> None:
    kit.sheet.choose_step(1)
    spin = kit.sheet.detail.amounts.spin("beans")
    turn = QWheelEvent(
        QPointF(5, 5), QPointF(5, 5), QPoint(0, 120), QPoint(0, 120),
        Qt.MouseButton.NoButton, Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(spin, turn)
    assert spin.value() == 30.0


def test_when_the_open_step_ends_the_next_one_opens(kit: Kit) -> None:
    steps = tuple(
        replace(step, state={4: "done", 5: "running"}.get(step.number, step.state))
        for step in kit.studio.sheet.steps
    )
    kit.studio.sheet = replace(kit.studio.sheet, steps=steps)
    kit.sheet.refresh()
    settle()
    assert kit.sheet.steps.chosen == 5


def test_an_optional_coat_is_offered_as_wanted(kit: Kit) -> None:
    steps = tuple(
        replace(step, state="open") if step.optional else step for step in kit.studio.sheet.steps
    )
    kit.studio.sheet = replace(kit.studio.sheet, steps=steps)
    kit.sheet.refresh()
    settle()
    offered = [row.title.text() for row in kit.sheet.steps.rows if row.step.optional]
    assert offered
    assert all(title.endswith("another coat, if wanted") for title in offered)


def test_an_entry_is_taken_back_or_corrected_from_the_journal(kit: Kit) -> None:
    journal = kit.sheet.journal
    assert journal.list.item(0).text() == "Tue 9 June", "lines of a day stand under it"
    assert not journal.list.item(0).flags() & Qt.ItemFlag.ItemIsSelectable
    assert "(taken back)" in journal.list.item(1).text()
    journal.list.setCurrentRow(1)
    settle()
    assert journal.tools is not None
    assert not journal.tools.back.isEnabled()
    journal.list.setCurrentRow(3)
    settle()
    journal.tools.back.click()
    assert kit.studio.sent(Undo) == [Undo("26-031", 4)]
    journal.tools.correct.click()
    assert journal.tools.form is not None
    journal.tools.form.moment.line.setText("9:08")
    journal.tools.form.act.click()
    wanted = Correct("26-031", 4, NOW - timedelta(hours=4), seen=4)
    assert kit.studio.sent(Correct) == [wanted]


def test_arrows_walk_the_steps_and_enter_opens_one(kit: Kit, qtbot: QtBot) -> None:
    kit.sheet.activateWindow()
    kit.sheet.steps.focus_current()
    qtbot.keyClick(kit.sheet.steps.rows[3], Qt.Key.Key_Up)
    assert kit.sheet.steps.rows[2].hasFocus()
    qtbot.keyClick(kit.sheet.steps.rows[2], Qt.Key.Key_Return)
    assert kit.sheet.steps.chosen == 3


def test_the_method_under_the_name_of_a_lot_leads_to_its_page(kit: Kit) -> None:
    wanted: list[str] = []
    kit.sheet.method_wanted.connect(wanted.append)
    told = {"slug": "soy-immersion-long", "title": "soy binder for immersion"}
    kit.studio.sheet = replace(kit.studio.sheet, data={"methods": [told]})
    kit.sheet.refresh()
    settle()
    heading = kit.sheet.heading
    assert heading.accessibleName().startswith("soy binder for immersion · 299.7 g")
    assert 'href="soy-immersion-long"' in heading.text()
    heading.linkActivated.emit("soy-immersion-long")
    assert wanted == ["soy-immersion-long"]
    assert heading.focusPolicy() & Qt.FocusPolicy.TabFocus, "the keyboard reaches it"


def test_a_row_says_what_would_spoil(qtbot: QtBot) -> None:
    warned = (Warned("too-hot", "80 °C: above 72 °C madder spoils.", "common practice"),)
    sheet = FakeStudio().ask(LotSheetFor(lines()[0].code))
    row = StepRow(replace(sheet.steps[0], warned=warned, broken=""))
    qtbot.addWidget(row)
    assert "madder spoils" in row.broken.text()
    assert "madder spoils" in row.accessibleName()
