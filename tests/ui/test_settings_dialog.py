"""The settings page: what was changed is sent, what is wrong is said beside it, all is reached."""

import re
from collections.abc import Callable
from dataclasses import dataclass, field, replace

import pytest
from PySide6.QtCore import QTime
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractSpinBox,
    QApplication,
    QComboBox,
    QLabel,
    QLineEdit,
    QSlider,
    QWidget,
)
from pytestqt.qtbot import QtBot

from studio_log.domain.errors import Refusal
from studio_log.services.commands import ChangeSettings, Outcome
from studio_log.services.settings import Settings
from studio_log.services.settings_check import read_settings
from studio_log.ui.chime import Chime
from studio_log.ui.settings_dialog import SettingsDialog
from studio_log.ui.theme.look import apply_theme, theme
from studio_log.ui.widgets.parts import Words
from studio_log.ui.widgets.style import sheet
from tests.ui.fake_studio import FakeStudio
from tests.ui.window_kit import bridge_over, settle

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")
"""The off-screen platform says this of every window that it shows."""

STUDIO = Settings(studio="Harbour Lane Cloth Studio", welcomed=True)
DAYS = replace(STUDIO, quiet_days="fri 23:30-09:00; sat 00:30-09:00; sun off")


@dataclass
class Start:
    """Starts at login or not, as the test says."""

    on: bool = False
    words: str = ""
    refuses: str = ""
    heard: list[bool] = field(default_factory=list)

    def state(self) -> tuple[bool, str]:
        """Give the truth."""
        return self.on, self.words or ("on: starts minimised at login" if self.on else "off")

    def switch(self, on: bool) -> str:
        """Switch, or refuse."""
        self.heard.append(on)
        if self.refuses:
            raise Refusal(self.refuses)
        self.on = on
        return self.state()[1]


class ListedChime(Chime):
    """Notes what it sounds and how loud."""

    def __init__(self) -> None:
        super().__init__()
        self.heard: list[tuple[str, bool, int]] = []

    def sound(self, sound: str = "rings") -> None:
        """Note it."""
        self.heard.append((sound, self.on, self.volume))


Open = Callable[..., SettingsDialog]


@pytest.fixture
def studio() -> FakeStudio:
    return FakeStudio()


@pytest.fixture
def opened(qtbot: QtBot, studio: FakeStudio) -> Open:
    def make(settings: Settings = STUDIO, **rest: object) -> SettingsDialog:
        box = SettingsDialog(bridge_over(studio), settings, **rest)  # type: ignore[arg-type]
        qtbot.addWidget(box)
        box.show()
        settle()
        return box

    return make


def sent(box: SettingsDialog, studio: FakeStudio) -> dict[str, object]:
    """Keep the page and give what was sent; all of it passes the check of the services."""
    box.keep.click()
    settle()
    commands = studio.sent(ChangeSettings)
    values = dict(commands[-1].values) if commands else {}
    read_settings(values, strict=True)
    return values


def set_time(field: object, text: str) -> None:
    field.setTime(QTime.fromString(text, "HH:mm"))  # type: ignore[attr-defined]


# -- what is sent --------------------------------------------------------------------------


@pytest.mark.parametrize("settings", [STUDIO, DAYS, replace(STUDIO, look_ahead="", chime=False)])
def test_a_page_kept_as_it_was_sends_nothing(
    opened: Open, studio: FakeStudio, settings: Settings
) -> None:
    box = opened(settings)
    assert sent(box, studio) == {}
    assert not box.isVisible()


def test_only_what_was_changed_is_sent(opened: Open, studio: FakeStudio) -> None:
    box = opened()
    box.reminders.spoiling.setChecked(True)
    set_time(box.reminders.look[1], "06:45")
    box.reminders.evening[0].setChecked(False)
    box.reminders.volume.setValue(35)
    box.vessel.setText("2.5 gal")
    values = sent(box, studio)
    # 1 US gallon = 3.785411784 L exactly (NIST Handbook 44, appendix C).
    assert values.pop("vessel_litres") == pytest.approx(2.5 * 3.785411784)
    assert values == {
        "spoiling_at_night": True, "look_ahead": "06:45", "evening_look": "", "chime_volume": 35,
    }  # fmt: skip


def test_the_workshop_is_sent_as_it_is_kept(opened: Open, studio: FakeStudio) -> None:
    box = opened(replace(STUDIO, units="us"))
    assert box.room.line.text() == box.room.burners.text() == "not said"
    box.room.line.setValue(20)
    box.room.burners.setValue(2)
    values = sent(box, studio)
    assert values.pop("line_metres") == pytest.approx(18.288)  # 1 yd = 0.9144 m exactly
    assert values == {"burners": 2}


def test_a_length_of_line_left_alone_is_not_sent_rounded(opened: Open, studio: FakeStudio) -> None:
    box = opened(replace(STUDIO, units="us", line_metres=16.03))
    assert sent(box, studio) == {}


def test_a_look_that_is_off_keeps_its_time_in_view_and_comes_back(
    opened: Open, studio: FakeStudio
) -> None:
    box = opened(replace(STUDIO, look_ahead=""))
    look, at, _ = box.reminders.look
    assert not look.isChecked()
    assert not at.isEnabled()
    look.setChecked(True)
    assert at.isEnabled()
    assert sent(box, studio) == {"look_ahead": "08:00"}


def test_a_refusal_of_the_studio_keeps_the_page_and_what_was_typed(
    opened: Open, studio: FakeStudio, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(_command: object) -> Outcome:
        raise Refusal("The disk is full. Nothing was changed; make room and try again.")

    monkeypatch.setattr(studio, "do", refuse)
    box = opened()
    box.studio.setText("Harbour Lane")
    box.keep.click()
    settle()
    assert box.isVisible()
    assert "disk is full" in box.message.words.text()
    assert box.studio.text() == "Harbour Lane"


# -- hours -----------------------------------------------------------------------------------


def test_the_hours_are_told_and_changed_in_their_own_window(
    opened: Open, studio: FakeStudio
) -> None:
    """The fake studio's clock stands at 13:08 on Tuesday 9 June 2026, in Paris."""
    box = opened(DAYS)
    assert "Quiet: Mon–Thu 22:00–07:00; Fri 23:30–09:00" in box.hours.told.text()
    assert box.hours.next_quiet.text() == "Next quiet: tonight 22:00 to 07:00."
    inner = box.hours.open_hours()
    settle()
    inner.week.lines[0].setText("9-12")
    inner.week.lines[0].textEdited.emit("9-12")
    inner.submit()
    settle()
    assert studio.sent(ChangeSettings)[-1].values == {"open_hours": "mon 09:00-12:00"}
    assert box.isVisible(), "the settings stay open"
    assert sent(box, studio) == {"open_hours": "mon 09:00-12:00"}, "nothing more was sent"


# -- what is wrong -------------------------------------------------------------------------


def test_each_mistake_is_said_beside_its_field_and_nothing_is_sent(
    opened: Open, studio: FakeStudio
) -> None:
    box = opened(DAYS)
    box.vessel.setText("ten buckets")
    box.zone.setText("Nowhere/Land")
    assert sent(box, studio) == {}
    assert box.isVisible()
    said = {one.field: one.text() for one in box.findChildren(Words) if hasattr(one, "field")}
    said = {one: words for one, words in said.items() if words}
    assert set(said) == {box.vessel, box.zone}
    assert "10 L" in said[box.vessel]
    assert "Nowhere/Land" in said[box.zone]
    assert all(one.accessibleDescription() == words for one, words in said.items())
    assert not [one for one in QApplication.topLevelWidgets() if one.isVisible() and one is not box]
    assert box.focusWidget() is box.vessel
    box.vessel.setText("10 L")
    box.zone.clear()
    assert sent(box, studio) == {}
    assert not box.isVisible(), "all is as it was before"


# -- the chime -----------------------------------------------------------------------------


def test_each_sound_is_tried_as_loud_as_the_slider_stands(opened: Open) -> None:
    chime = ListedChime()
    chime.on, chime.volume = False, 70
    box = opened(replace(STUDIO, chime_volume=80), chime=chime)
    box.reminders.volume.setValue(25)
    for button in box.reminders.tries:
        button.click()
    assert chime.heard == [("rings", True, 25), ("ends", True, 25), ("spoils", True, 25)]
    assert (chime.on, chime.volume) == (False, 70), "trying changes nothing"


def test_a_silent_chime_says_so_and_cannot_be_tried(opened: Open) -> None:
    box = opened(chime=ListedChime())
    assert box.reminders.loud.text() == "80 %"
    box.reminders.volume.setValue(0)
    assert box.reminders.loud.text() == "0 %, silent"
    assert not any(button.isEnabled() for button in box.reminders.tries)
    box.reminders.volume.setValue(5)
    assert all(button.isEnabled() for button in box.reminders.tries)
    box.reminders.chime.setChecked(False)
    assert not box.reminders.volume.isEnabled()


# -- start at login ------------------------------------------------------------------------


def test_without_anyone_to_switch_it_the_start_at_login_is_not_shown(opened: Open) -> None:
    assert opened().login.isHidden()


def test_the_start_at_login_is_switched_when_the_page_is_kept(
    opened: Open, studio: FakeStudio
) -> None:
    start = Start()
    box = opened(login_start=start)
    assert box.login.words.text() == "Off."
    box.login.login.setChecked(True)
    assert start.heard == []
    assert sent(box, studio) == {}
    assert start.heard == [True]
    assert not box.isVisible()
    again = opened(login_start=start)
    assert again.login.login.isChecked()
    assert again.login.words.text() == "On: starts minimised at login."
    assert sent(again, studio) == {}
    assert start.heard == [True], "nothing to switch"


def test_a_switch_that_is_refused_is_said_and_the_truth_shown(
    opened: Open, studio: FakeStudio
) -> None:
    start = Start(refuses="The entry cannot be written: the disk is full. Nothing was changed.")
    box = opened(login_start=start)
    box.login.login.setChecked(True)
    box.look.text.setValue(120)
    assert sent(box, studio) == {}
    assert box.isVisible()
    assert box.login.fault.text() == start.refuses
    assert not box.login.login.isChecked()
    assert box.login.words.text() == "Off."
    assert sent(box, studio) == {"text_percent": 120}, "what else was changed is still there"
    assert start.heard == [True]


def test_what_cannot_be_switched_here_says_why(opened: Open, studio: FakeStudio) -> None:
    start = Start(words="cannot be switched here: the system keeps no list of what starts")
    box = opened(login_start=start)
    assert not box.login.login.isEnabled()
    assert box.login.words.text().startswith("Cannot be switched here: the system")
    assert sent(box, studio) == {}
    assert start.heard == []


# -- reached and seen ----------------------------------------------------------------------

FIELDS = (QLineEdit, QAbstractSpinBox, QComboBox, QAbstractButton, QSlider)


def fields_of(box: SettingsDialog) -> list[QWidget]:
    found: list[QWidget] = [
        one for kind in FIELDS for one in box.findChildren(kind)
        if one.isVisible() and not isinstance(one.parent(), QAbstractSpinBox | QComboBox)
    ]  # fmt: skip
    return found


def letters(box: SettingsDialog) -> dict[str, list[QWidget]]:
    """Give the letters that lead somewhere, and where to."""
    found: dict[str, list[QWidget]] = {}
    for one in [*box.findChildren(QLabel), *box.findChildren(QAbstractButton)]:
        # A label that shows its letter literally has nobody to lead to.
        to = one.buddy() if isinstance(one, QLabel) else one
        letter = re.search(r"&(\w)", one.text())
        if letter and to is not None:
            found.setdefault(letter[1].casefold(), []).append(to)
    return found


def test_every_field_has_a_name_and_no_letter_leads_to_two(opened: Open) -> None:
    box = opened(DAYS, login_start=Start())
    found = fields_of(box)
    assert len(found) > 15
    for one in found:
        name = one.accessibleName() or (one.text() if isinstance(one, QAbstractButton) else "")
        assert name.strip(), one
    box.message.refuse("Refused.")
    reached = letters(box)
    hidden = {box.message.yes, box.message.no, box.message.copy}
    clashes = {
        letter: targets for letter, targets in reached.items()
        if len([one for one in targets if one not in hidden]) > 1
    }  # fmt: skip
    assert clashes == {}
    rows = {box.room.line, box.room.burners}  # right below the hours; no letter is left
    led = {one for targets in reached.values() for one in targets}
    assert [one.accessibleName() for one in found if one not in led | rows] == []


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize(("size", "percent"), [((1440, 900), 100), ((1024, 700), 200)])
def test_nothing_is_cut(
    qtbot: QtBot, studio: FakeStudio, scheme: str, size: tuple[int, int], percent: int
) -> None:
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    apply_theme(app, scheme, percent)  # type: ignore[arg-type]
    try:
        window = QWidget()
        window.setStyleSheet(sheet(theme()))
        qtbot.addWidget(window)
        box = SettingsDialog(bridge_over(studio), DAYS, window, login_start=Start())
        box.zone.setText("Nowhere/Land")
        box.resize(min(box.width(), size[0] - 40), min(box.height(), size[1] - 60))
        box.show()
        box.submit()
        settle()
        page, view = box._area.widget(), box._area.viewport()
        assert page.width() <= view.width()
        for one in fields_of(box):
            within = one.mapTo(box, one.rect().bottomRight()).x()
            assert within < box.width(), one
            if isinstance(one, QAbstractSpinBox):
                # The figures are what counts; a time field is asked for narrower than it likes.
                words = one.fontMetrics().horizontalAdvance(one.text())
                assert one.lineEdit().contentsRect().width() >= words + 6, one.text()
            else:
                assert one.width() >= one.minimumSizeHint().width(), one
            assert one.height() >= one.minimumSizeHint().height(), one
        for label in box.findChildren(QLabel):
            if label.isVisible() and label.text():
                needed = label.heightForWidth(label.width())
                assert label.height() >= max(needed, label.fontMetrics().height()), label.text()
    finally:
        apply_theme(app, "light", 100)
