"""The window “What rang”: rows, search, days, words, keys, export."""

import csv
import io
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QFont, QFontMetrics
from PySide6.QtWidgets import QFileDialog
from pytestqt.qtbot import QtBot

from studio_log.domain.errors import Refusal
from studio_log.services.commands import Outcome
from studio_log.services.ports import NoticeText
from studio_log.services.questions import SettingsFor
from studio_log.services.rang import Rang, Try, WhatRangFor
from studio_log.services.settings import Settings
from studio_log.services.worker import InlineWorker
from studio_log.ui.bridge import FOREIGN, Bridge
from studio_log.ui.rang.rang_box import FAILED, NOTHING, RangBox
from studio_log.ui.rang.rang_delegate import wrapped
from studio_log.ui.rang.rang_model import ANSWER, COLUMNS, DUE, HOW, LOT, RANG, WHAT
from studio_log.ui.rang.rang_view import NOTHING_CHOSEN
from studio_log.ui.theme.look import theme
from studio_log.ui.widgets.parts import BREAK
from tests.ui.fake_studio import HandClock
from tests.ui.window_kit import settle

# Qt's screenless platform says so of every window it shows.
pytestmark = pytest.mark.qt_log_ignore(r"does not support propagateSizeHints\(\)")

NOW = datetime(2026, 6, 9, 12, 8, tzinfo=UTC)
"""13:08 in London on a Tuesday."""
MINUTE, HOUR, DAY = timedelta(minutes=1), timedelta(hours=1), timedelta(days=1)
DUE_AT = NOW - 2 * HOUR
ANSWERED = Rang(
    key="26-031/4/tend/1", lot="26-031", name="Runners", step="First soak",
    title="Stir 26-031 Runners", kind="tending", urgency="now", due=DUE_AT,
    rings=(DUE_AT, DUE_AT + 10 * MINUTE), times=2, late=timedelta(0), quiet_until=None,
    channels=("desktop",), answer="tended", answered_at=DUE_AT + 12 * MINUTE, void_at=None,
    void_why="", state="answered", rings_at=None,
    tries=(Try(DUE_AT, "desktop", True, "shown, receipt 4"),), told=False, zone="Europe/London",
)  # fmt: skip
OPEN = ANSWERED._replace(
    key="26-028/5/past", lot="26-028", name="Silk", title="Too long: lift the cloth 26-028 Silk",
    step="Dip", urgency="spoiling", kind="past its limit", rings=(DUE_AT + 40 * MINUTE,), times=1,
    late=40 * MINUTE, answer="", answered_at=None, state="open",
)  # fmt: skip
VOID = ANSWERED._replace(
    key="26-014/9/use_by", lot="26-014", name="-h & <b>bold</b>", rings=(), times=0, late=None,
    title="Soak beans 26-014 -h & <b>bold</b>", channels=(), answer="", answered_at=None,
    tries=(), state="no longer needed", void_at=DUE_AT, void_why="used",
)  # fmt: skip
ROWS = (ANSWERED, OPEN, VOID)


@dataclass
class RangStudio:
    """Answers with written rows, or refuses; remembers what it was asked."""

    rows: tuple[Rang, ...] = ROWS
    settings: Settings = field(default_factory=Settings)
    trouble: Exception | None = None
    asked: list[WhatRangFor] = field(default_factory=list)

    def do(self, _command: Any) -> Outcome:
        return Outcome(reminders=True)

    def ask(self, question: Any) -> Any:
        if isinstance(question, SettingsFor):
            return self.settings
        self.asked.append(question)
        if self.trouble is not None:
            raise self.trouble
        return self.rows


@pytest.fixture
def studio() -> RangStudio:
    return RangStudio()


@pytest.fixture
def bridge(studio: RangStudio) -> Bridge:
    return Bridge(InlineWorker(), studio, HandClock(NOW, "Europe/London"))


@pytest.fixture
def box(qtbot: QtBot, bridge: Bridge) -> RangBox:
    made = RangBox(bridge)
    qtbot.addWidget(made)
    made.resize(1440, 900)
    made.show()
    qtbot.waitExposed(made)
    settle()
    return made


def cell(box: RangBox, row: int, column: int) -> str:
    return str(box.model.index(row, column).data())


def soon(qtbot: QtBot, studio: RangStudio, count: int) -> None:
    """Let it ask so many times in all."""
    qtbot.waitUntil(lambda: len(studio.asked) >= count)
    settle()


def pick_path(monkeypatch: pytest.MonkeyPatch, path: str) -> None:
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (path, ""))


def test_a_row_says_when_due_what_rang_how_and_the_answer(box: RangBox) -> None:
    assert [cell(box, 0, at) for at in range(len(COLUMNS))] == [
        "Tue 9 June, 11:08",
        "26-031 Runners",
        "Stir · First soak",
        "11:08:00, 2 times",
        "desktop",
        "tended, 11:20, after 12 min",
    ]
    assert cell(box, 1, RANG) == "11:48:00, told 40 min late"
    assert cell(box, 1, ANSWER) == "open: no answer yet"
    assert cell(box, 2, RANG) == "did not ring: no longer needed"
    assert cell(box, 2, LOT) == "26-014 -h & <b>bold</b>"
    assert box.said.text() == "3 reminders, the latest due first. 1 waits for an answer."


def test_the_chosen_row_is_told_whole(box: RangBox) -> None:
    told = box.words.toPlainText()
    assert told.splitlines()[0] == "Stir 26-031 Runners"
    assert "Rang 11:08:00, 11:18, by desktop." in told
    assert "• 11:08:00 desktop: shown, receipt 4" in told
    box.view.setCurrentIndex(box.model.index(2, DUE))
    assert "No longer needed, 11:08 (used)." in box.words.toPlainText()
    assert "<b>bold</b>" in box.words.toPlainText()


def test_the_keyboard_does_it_all(qtbot: QtBot, box: RangBox) -> None:
    box.activateWindow()
    assert box.focusWidget() is box.search
    qtbot.keyClick(box.search, Qt.Key.Key_Down)
    assert box.focusWidget() is box.view
    qtbot.keyClick(box.view, Qt.Key.Key_Down)
    assert box.view.currentIndex().row() == 1
    assert box.words.toPlainText().startswith("Too long")
    qtbot.keyClick(box.view, Qt.Key.Key_Tab)
    assert box.focusWidget() is box.words
    qtbot.keyClick(box, Qt.Key.Key_F, Qt.KeyboardModifier.ControlModifier)
    assert box.focusWidget() is box.search
    qtbot.keyClick(box.search, Qt.Key.Key_Escape)
    assert not box.isVisible()


def test_ninety_days_are_asked_for_and_others_may_be_chosen(
    qtbot: QtBot, box: RangBox, studio: RangStudio
) -> None:
    # Midnight of British summer time is 23:00 UTC of the day before.
    midnight = datetime(2026, 6, 8, 23, tzinfo=UTC)
    assert studio.asked[-1].until == NOW
    # 90 days before 9 June is 11 March, before the clocks went forward: midnight is 00:00 UTC.
    assert studio.asked[-1].since == datetime(2026, 3, 11, tzinfo=UTC)
    for days, chip in ((0, "Today"), (7, "7 days"), (30, "30 days")):
        (found,) = [one for one in box.spans.buttons() if chip in one.text().replace("&", "")]
        qtbot.mouseClick(found, Qt.MouseButton.LeftButton)
        settle()
        assert studio.asked[-1].since == midnight - days * DAY


def test_a_day_begins_in_the_studios_own_zone(
    qtbot: QtBot, box: RangBox, studio: RangStudio
) -> None:
    studio.settings = Settings(zone="Asia/Tokyo")
    qtbot.mouseClick(box.spans.button(0), Qt.MouseButton.LeftButton)
    settle()
    assert studio.asked[-1].since == datetime(2026, 6, 8, 15, tzinfo=UTC)


def test_what_is_typed_is_looked_for(qtbot: QtBot, box: RangBox, studio: RangStudio) -> None:
    studio.rows = ()
    qtbot.keyClicks(box.search, "tray")
    soon(qtbot, studio, 2)
    assert studio.asked[-1].find == "tray"
    assert box.empty.isVisible()
    assert box.empty.text().startswith("Nothing found for “tray”")
    assert not box.export.isEnabled()
    assert box.words.toPlainText() == NOTHING_CHOSEN


def test_where_nothing_rang_it_says_so(qtbot: QtBot, studio: RangStudio, bridge: Bridge) -> None:
    studio.rows = ()
    box = RangBox(bridge)
    qtbot.addWidget(box)
    box.show()
    settle()
    assert (box.empty.text(), box.empty.isVisible()) == (NOTHING, True)


def test_what_cannot_be_read_is_said_and_mends_itself(box: RangBox, studio: RangStudio) -> None:
    studio.trouble = Refusal("The studio cannot be read. Nothing was changed.")
    box.refresh()
    settle()
    assert box.empty.text() == "The studio cannot be read. Nothing was changed."
    studio.trouble = ZeroDivisionError()
    box.refresh()
    settle()
    assert box.empty.text() == FAILED
    studio.trouble = None
    box.refresh()
    settle()
    assert not box.empty.isVisible()
    assert box.model.rowCount() == 3


def test_news_is_asked_for_only_while_somebody_looks(
    qtbot: QtBot, box: RangBox, bridge: Bridge, studio: RangStudio
) -> None:
    box.view.choose(VOID.key)
    studio.rows = (OPEN._replace(key="new"), *ROWS)
    bridge.tell_raised(NoticeText("Stir", "", "now", ("new",)))
    soon(qtbot, studio, 2)
    assert box.model.rowCount() == 4
    assert box.view.currentIndex().row() == 3, "the chosen one stays chosen"
    box.hide()
    bridge.tell_changed(FOREIGN)
    settle()
    assert not box._soon.isActive(), "nobody looks"
    box.show()
    settle()
    assert len(studio.asked) == 3


def test_an_answer_that_is_overtaken_is_not_shown(box: RangBox, studio: RangStudio) -> None:
    studio.rows = (OPEN,)
    box.refresh()
    studio.rows = (VOID,)
    box.refresh()
    settle()
    assert [row.key for row in box.model.rows] == [VOID.key]


def test_the_rows_shown_are_written_to_a_file(
    qtbot: QtBot, box: RangBox, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "rang.csv"
    pick_path(monkeypatch, str(path))
    qtbot.mouseClick(box.export, Qt.MouseButton.LeftButton)
    rows = list(csv.DictReader(io.StringIO(path.read_bytes().decode("utf-8"), newline="")))
    assert [row["lot"] for row in rows] == [row.lot for row in ROWS]
    assert rows[2]["name"] == "'-h & <b>bold</b>"
    assert f"Written to {path}" in box.said.text().replace(BREAK, "")


def test_a_file_that_cannot_be_written_is_said(
    qtbot: QtBot, box: RangBox, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    pick_path(monkeypatch, "")
    qtbot.mouseClick(box.export, Qt.MouseButton.LeftButton)
    assert box.said.text().startswith("3 reminders")
    pick_path(monkeypatch, str(tmp_path / "missing" / "rang.csv"))
    qtbot.mouseClick(box.export, Qt.MouseButton.LeftButton)
    assert "could not be written" in box.said.text()
    assert list(tmp_path.iterdir()) == []


def test_where_there_is_little_room_the_lot_stands_with_the_act(box: RangBox) -> None:
    high = box.view.rowHeight(0)
    box.resize(500, 500)
    settle()
    assert box.view.isColumnHidden(LOT)
    assert box.view.isColumnHidden(HOW)
    assert cell(box, 0, WHAT) == "Stir 26-031 Runners"
    assert box.view.rowHeight(0) > high
    wide = sum(box.view.columnWidth(at) for at in range(len(COLUMNS)))
    assert wide <= box.view.viewport().width()
    box.resize(1440, 900)
    settle()
    assert not box.view.isColumnHidden(LOT)
    assert cell(box, 0, WHAT) == "Stir · First soak"


@pytest.mark.usefixtures("qtbot")
def test_words_wrap_and_what_does_not_fit_ends_in_an_ellipsis() -> None:
    font = QFont()
    room = QFontMetrics(font).horizontalAdvance("lift the cloth ")
    assert wrapped("lift", font, room, 2) == ["lift"]
    assert [line.strip() for line in wrapped("lift the cloth and spin", font, room, 2)] == [
        "lift the cloth",
        "and spin",
    ]
    first, second = wrapped("lift the cloth and spin " * 9, font, room, 2)
    assert first.strip() == "lift the cloth"
    assert second.endswith("…")
    assert QFontMetrics(font).horizontalAdvance(second) <= room


@pytest.mark.parametrize("name", ["W" * 200, "שלום עולם", "a\nb\tc", "\a\x1b[0m", ""])
def test_any_name_is_shown(box: RangBox, studio: RangStudio, name: str) -> None:
    studio.rows = (ANSWERED._replace(name=name, title=f"Stir 26-031 {name}"),)
    box.refresh()
    settle()
    shown = cell(box, 0, LOT)
    assert shown.startswith("26-031")
    assert "\n" not in shown
    assert not box.grab().isNull()
    assert box.words.toPlainText().startswith("Stir 26-031")
    assert box.minimumSizeHint().width() < 800


def test_screen_readers_hear_every_part(box: RangBox) -> None:
    index = box.model.index(0, RANG)
    assert index.data(Qt.ItemDataRole.AccessibleTextRole) == "Rang: 11:08:00, 2 times"
    parts = (box.search, box.view, box.words, box.export, *box.spans.buttons())
    names = [part.accessibleName() for part in parts]
    assert all(names)
    assert len(set(names)) == len(names)
    heads = [
        box.model.headerData(at, Qt.Orientation.Horizontal, Qt.ItemDataRole.DisplayRole)
        for at in range(len(COLUMNS))
    ]
    assert heads == ["Due", "Lot", "What", "Rang", "How", "Answer"]


def test_five_thousand_rows_ask_only_for_what_is_seen(
    box: RangBox, studio: RangStudio, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: set[int] = set()
    real = type(box.model)._words

    def counted(model: Any, row: Rang, column: int) -> str:
        asked.add(int(row.key))
        return real(model, row, column)

    monkeypatch.setattr(type(box.model), "_words", counted)
    studio.rows = tuple(ANSWERED._replace(key=str(number)) for number in range(5000))
    box.refresh()
    settle()
    box.grab()
    assert box.view.indexAt(QPoint(5, 5)).row() == 0
    assert 0 < len(asked) < 100


def test_an_open_one_is_as_loud_as_it_is_urgent(box: RangBox, studio: RangStudio) -> None:
    studio.rows = (OPEN, OPEN._replace(key="mark", urgency="calm"))
    box.refresh()
    settle()
    inks = [
        box.model.index(row, ANSWER).data(Qt.ItemDataRole.ForegroundRole).name() for row in (0, 1)
    ]
    colours = theme().colours
    assert inks == [colours.danger_ink.name(), colours.accent_ink.name()]
