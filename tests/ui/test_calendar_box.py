"""The calendar's window: saved once, a file that follows, and what is said of both."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from studio_log.domain.journal import Act
from studio_log.services.places import Places, read_places
from studio_log.ui.bridge import Bridge
from studio_log.ui.keeping.calendar_box import CalendarBox
from tests.support.fixtures import Workshop
from tests.ui.window_kit import press, settle

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")


@pytest.fixture
def box(qtbot: QtBot, bridge: Bridge) -> Iterator[CalendarBox]:
    made = CalendarBox(bridge)
    qtbot.addWidget(made)
    made.show()
    settle()
    yield made
    made.close()


def test_the_plan_is_saved_where_the_dyer_says(
    box: CalendarBox, shop: Workshop, qtbot: QtBot, tmp_path: Path
):
    code = shop.new()
    shop.mark(code, "1", Act.START)
    box.pick_file = lambda _parent: str(tmp_path / "plan.ics")
    press(qtbot, box.save)
    assert code.encode() in (tmp_path / "plan.ics").read_bytes()
    assert "plan.ics" in box.said.text().replace("\u200b", "")
    assert box.follows.where.text() == "Nothing is chosen yet."


def test_leaving_the_question_for_a_file_changes_nothing(
    box: CalendarBox, qtbot: QtBot, shop: Workshop
):
    box.pick_file = lambda _parent: ""
    press(qtbot, box.save)
    press(qtbot, box.follows.choose[0])
    assert box.said.isHidden()
    assert read_places(shop.studio.folder) == Places()


def test_a_place_that_cannot_be_written_is_said_in_the_window(
    box: CalendarBox, qtbot: QtBot, tmp_path: Path
):
    box.pick_file = lambda _parent: str(tmp_path / "gone" / "plan.ics")
    press(qtbot, box.save)
    assert "could not be written" in box.said.text()
    press(qtbot, box.follows.choose[0])
    assert "Nothing was changed" in box.follows.fault.text()
    assert box.follows.drop.isHidden()


def test_a_file_that_follows_is_chosen_shown_and_given_up(
    box: CalendarBox, qtbot: QtBot, shop: Workshop, tmp_path: Path
):
    box.pick_file = lambda _parent: str(tmp_path / "plan.ics")
    press(qtbot, box.follows.choose[0])
    assert read_places(shop.studio.folder) == Places(calendar=str(tmp_path / "plan.ics"))
    assert box.follows.where.text().replace("\u200b", "").endswith("plan.ics")
    shop.studio.upkeep.say("calendar", "The folder is not there.")
    box.refresh()
    settle()
    assert box.follows.fault.text() == "The folder is not there."
    press(qtbot, box.follows.drop)
    assert read_places(shop.studio.folder) == Places()
    assert box.follows.fault.isHidden()
