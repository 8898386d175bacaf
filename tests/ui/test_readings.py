"""Readings: read as typed, doubted beside the field, written with the act."""

from dataclasses import replace

import pytest
from pytestqt.qtbot import QtBot

from studio_log.services.commands import Mark
from studio_log.ui.lots.lot_sheet import LotSheetPage
from studio_log.ui.lots.readings_text import read_readings
from tests.ui.fake_studio import FakeStudio
from tests.ui.window_kit import WrittenAsk, bridge_over, settle

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")


@pytest.mark.parametrize(
    ("typed", "kept"),
    [
        ("71 F", {"temperature": "71 °F"}),
        ("71F,160 g", {"temperature": "71 °F", "weight": "160 g"}),
        ("pH 6,8; 1 1/2 lb", {"pH": 6.8, "weight": "1.5 lb"}),
        ("6.8 pH\n", {"pH": 6.8}),
        ("temp=21", {"temperature": "21 °C"}),
        ("smell: sweet, soy strength = 4", {"smell": "sweet", "soy strength": 4.0}),
        ("rinse water 30 L", {"rinse water": "30 L"}),
        ("looked at: 3:30", {"looked at": "3:30"}),
        ("  ", {}),
    ],
)
def test_readings_are_kept_in_the_units_typed(typed: str, kept: dict[str, object]) -> None:
    read = read_readings(typed)
    assert (read.values, read.fault, read.doubt) == (kept, "", "")


@pytest.mark.parametrize(
    ("typed", "said"),
    [("71 F", "21.7 °C"), ("100 C", "212 °F"), ("1 lb", "454 g")],
)
def test_a_figure_is_said_in_the_other_unit_too(typed: str, said: str) -> None:
    """(71 - 32) × 5/9 = 21.67, water boils at 212 °F, a pound is 453.59 g (NIST SP 811)."""
    assert said in read_readings(typed).understood


@pytest.mark.parametrize("typed", ["171 C", "213 F", "pH 15", "0 g", "600 kg", "-40 C"])
def test_what_no_bath_scale_or_strip_gives_is_asked_about(typed: str) -> None:
    """Water boils at 100 °C, 212 °F; the pH scale is 0 to 14 (common practice)."""
    read = read_readings(typed)
    assert "?" in read.doubt
    assert read.fault == ""
    assert read.values


@pytest.mark.parametrize(
    "typed", ["171", "foo", "12 3", "1,800 g", "pH 6, pH 7", "1/0 g", "x" * 700]
)
def test_what_cannot_be_read_is_a_sentence(typed: str) -> None:
    assert read_readings(typed).fault[-1] in ".?"


class Kit:
    """A sheet over the fake studio."""

    def __init__(self, qtbot: QtBot) -> None:
        self.studio = FakeStudio()
        self.sheet = LotSheetPage(bridge_over(self.studio), WrittenAsk())
        qtbot.addWidget(self.sheet)
        self.sheet.resize(700, 600)
        self.sheet.show()
        self.sheet.choose("26-031")
        settle()


@pytest.fixture
def kit(qtbot: QtBot) -> Kit:
    return Kit(qtbot)


def test_readings_go_with_the_act_and_the_field_is_empty_after(kit: Kit, qtbot: QtBot) -> None:
    line = kit.sheet.detail.readings
    qtbot.keyClicks(line.line, "71 F, pH 6.8")
    assert "21.7 °C" in line.understood.text()
    kit.sheet.detail.act_buttons["tend"].click()
    settle()
    assert kit.studio.sent(Mark)[0].readings == {"temperature": "71 °F", "pH": 6.8}
    assert line.line.text() == ""


def test_a_line_that_cannot_be_read_holds_the_act_back_and_stays(kit: Kit, qtbot: QtBot) -> None:
    line = kit.sheet.detail.readings
    qtbot.keyClicks(line.line, "171")
    kit.sheet.detail.act_buttons["tend"].click()
    settle()
    assert kit.studio.sent(Mark) == []
    assert line.line.text() == "171"


def test_a_doubt_stands_beside_the_field_and_holds_nothing_up(kit: Kit, qtbot: QtBot) -> None:
    line = kit.sheet.detail.readings
    qtbot.keyClicks(line.line, "171 C")
    assert "A bath of 171 °C?" in line.doubt.text()
    assert line.doubt.isVisible()
    kit.sheet.detail.act_buttons["tend"].click()
    settle()
    assert kit.studio.sent(Mark)[0].readings == {"temperature": "171 °C"}


def test_codes_of_the_lineage_are_drawn_and_open_their_lots(kit: Kit) -> None:
    wanted: list[str] = []
    kit.sheet.lot_wanted.connect(wanted.append)
    assert not kit.sheet.lineage.isVisible()
    family = {"parents": ["26-020"], "children": ["26-040", "26-041"]}
    kit.studio.sheet = replace(kit.studio.sheet, data=family)
    kit.sheet.refresh()
    settle()
    settle()
    left, *right = kit.sheet.lineage.buttons
    own = kit.sheet.lineage.own
    assert left.geometry().right() < own.x() < min(one.x() for one in right)
    for one in list(kit.sheet.lineage.buttons):
        one.click()
    assert kit.sheet.code == "26-041"
    assert wanted == ["26-020", "26-040", "26-041"]
