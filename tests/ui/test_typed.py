"""What was typed on this laptop: last values and drafts, in a small file that nobody trusts."""

import json
from collections.abc import Callable, Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLineEdit, QPlainTextEdit, QWidget
from pytestqt.qtbot import QtBot

from studio_log.domain.journal import Act
from studio_log.services.commands import Mark
from studio_log.services.questions import MilkOffer
from studio_log.ui.ask import _ChangeBox
from studio_log.ui.lots.lot_fields import DRAFT
from studio_log.ui.lots.lot_form import LotForm
from studio_log.ui.lots.lot_sheet import LotSheetPage
from studio_log.ui.milk_box import MilkBox
from studio_log.ui.typed import (
    LARGEST_FILE,
    LONGEST_DRAFT,
    MOST_DRAFTS,
    MOST_LAST,
    NAME,
    Typed,
    remember_in,
    typed,
)
from studio_log.ui.widgets.last_values import LastValues
from studio_log.ui.widgets.lines_before import LinesBefore
from studio_log.ui.widgets.moment_line import MomentLine
from studio_log.ui.widgets.readers import days, volume, weight
from studio_log.ui.widgets.understood import Understood, UnderstoodLine
from tests.ui.fake_studio import FakeStudio, HandClock
from tests.ui.window_kit import WrittenAsk, bridge_over, settle

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints", "does not support")

NOON = datetime(2026, 6, 9, 11, 0, tzinfo=UTC)


Keep = Callable[[Any], Any]


@pytest.fixture
def keep(qtbot: QtBot) -> Iterator[Keep]:
    """Hold widgets to the end of the test: one that is only a ring of references may be collected
    while it is painted.
    """
    held: list[Any] = []

    def take(widget: Any) -> Any:
        qtbot.addWidget(widget)
        held.append(widget)
        return widget

    yield take
    for widget in held:
        widget.hide()


# -- what was understood -------------------------------------------------------------------


@pytest.mark.parametrize(
    ("read", "text", "value", "said"),
    [
        # NIST Handbook 44 (2024), appendix C: 1 oz = 28.349 523 125 g, 1 lb = 453.592 37 g,
        # 1 US gal = 3.785 412 L, 1 US cup = 236.588 2 mL.
        (weight, "14.5 oz", 411.068, "411.1 g = 14.5 oz"),
        (weight, "1 lb 3 oz", 538.641, "538.6 g = 1 lb 3 oz"),
        (weight, "412g", 412.0, "412 g = 14.5 oz"),
        (volume, "2.5 gal", 9.46353, "9.5 L = 2.5 US gal"),
        (volume, "1/4 cup", 0.0591471, "59 mL = 0.25 US cup"),
        (days, "90", 90, "90 days"),
        (days, "12 weeks", 84, "84 days"),
        (days, "3 months", 90, "90 days"),
        (days, "1 d", 1, "1 day"),
    ],
)
def test_a_figure_is_said_back_in_both_systems(
    read: Any, text: str, value: float, said: str
) -> None:
    understood = read(text)
    assert understood.value == pytest.approx(value, rel=1e-5)
    assert said in understood.words
    assert not understood.fault


@pytest.mark.parametrize(
    ("read", "text", "example"),
    [
        (weight, "heavy", "14.5 oz"),
        (weight, "412", "412 g"),
        (weight, "-3 g", "412 g"),
        (volume, "a bucket", "2.5 gal"),
        (volume, "10", "10 L"),
        (days, "long", "90"),
        (days, "9.5", "90"),
        (days, "9999 weeks", "90"),
        (days, "-3", "90"),
        (days, "٩٠", "90"),
    ],
)
def test_what_is_not_understood_is_said_with_an_example(read: Any, text: str, example: str) -> None:
    understood = read(text)
    assert understood.value is None
    assert example in understood.fault


def test_a_mistake_is_said_beneath_the_line_and_the_text_stays(qtbot: QtBot, keep: Keep) -> None:
    line = UnderstoodLine(weight, name="Weight", blank="off the scale")
    keep(line)
    line.show()
    assert line.understood.text() == "off the scale"
    entered: list[bool] = []
    line.entered.connect(lambda: entered.append(True))
    qtbot.keyClicks(line.line, "14 stones")
    assert "cannot be read" in line.understood.text()
    assert line.understood.property("tone") == "danger_ink"
    assert line.line.accessibleDescription() == line.understood.text()
    qtbot.keyClick(line.line, Qt.Key.Key_Return)
    assert (entered, line.text()) == ([], "14 stones")
    line.setText("14 oz")
    qtbot.keyClick(line.line, Qt.Key.Key_Return)
    assert entered == [True]
    assert line.understood.property("tone") == "good_ink"


def test_a_doubt_is_asked_beneath_and_holds_nothing_up(keep: Keep) -> None:
    line = UnderstoodLine(lambda _text: Understood(1, "one", doubt="Only one?"), name="Count")
    keep(line)
    line.show()
    line.setText("1")
    assert line.ok
    assert line.doubt.text() == "? Only one?"
    assert "Only one?" in line.line.accessibleDescription()


# -- last values ---------------------------------------------------------------------------


def test_the_last_values_are_few_newest_first_and_not_twice() -> None:
    kept = Typed()
    kept.note("place", *(f"shelf {number}" for number in range(20)))
    assert len(kept.last("place")) == MOST_LAST
    assert kept.last("place")[0] == "shelf 19"
    kept.note("place", "SHELF 15", "  ", "x" * 500)
    assert kept.last("place")[:2] == ("SHELF 15", "shelf 19")
    assert len(kept.last("place")) == MOST_LAST


def test_down_offers_what_was_typed_before_and_enter_takes_it(qtbot: QtBot, keep: Keep) -> None:
    line = QLineEdit()
    keep(line)
    line.show()
    line.setFocus()
    last = LastValues(line, "place")
    qtbot.keyClick(line, Qt.Key.Key_Down)
    assert not last.menu.isVisible(), "nothing was typed yet"
    for text in ("line 2", "R&D shelf"):
        line.setText(text)
        last.remember()
    line.clear()
    qtbot.keyClick(line, Qt.Key.Key_Down)
    assert last.menu.isVisible()
    assert [act.data() for act in last.menu.actions()] == ["R&D shelf", "line 2"]
    qtbot.keyClick(last.menu, Qt.Key.Key_Down)
    qtbot.keyClick(last.menu, Qt.Key.Key_Return)
    assert line.text() == "line 2"


def test_the_mark_at_the_end_of_a_line_offers_too(qtbot: QtBot, keep: Keep) -> None:
    typed().note("place", "R&D shelf")
    line = QLineEdit()
    keep(line)
    line.show()
    last = LastValues(line, "place")
    assert last.mark.isVisible()
    assert line.rect().contains(last.mark.geometry())
    assert "Down" in last.mark.accessibleName()
    qtbot.mouseClick(last.mark, Qt.MouseButton.LeftButton)
    assert last.menu.isVisible()
    last.menu.actions()[0].trigger()
    assert line.text() == "R&D shelf"
    last.menu.hide()


@pytest.mark.parametrize(
    ("text", "offered"),
    [("at eight last night", ("at eight last night",)), ("-3h", ("-3h",)), ("13:08", ())],
)
def test_a_time_in_words_is_offered_again_and_a_bare_one_is_not(
    keep: Keep, text: str, offered: tuple[str, ...]
) -> None:
    line = keep(MomentLine(HandClock(), name="When"))
    line.setText(text)
    assert line.ok
    line.remember()
    assert line.last.values == offered


def test_a_line_typed_before_is_added_to_the_pieces(keep: Keep) -> None:
    field = QPlainTextEdit()
    keep(field)
    before = LinesBefore(field, "pieces")
    keep(before)
    assert before.isHidden()
    field.setPlainText("linen 1 m & more\n\n2 x hemp 90x90cm")
    before.remember()
    field.setPlainText("cotton 3 m")
    again = LinesBefore(field, "pieces")
    keep(again)
    assert not again.isHidden()
    again.menu_of_lines.aboutToShow.emit()
    acts = again.menu_of_lines.actions()
    assert [act.data() for act in acts] == ["linen 1 m & more", "2 x hemp 90x90cm"]
    acts[0].trigger()
    assert field.toPlainText() == "cotton 3 m\nlinen 1 m & more"


# -- drafts --------------------------------------------------------------------------------


class FormKit:
    """The new-lot form, opened again and again as after a crash."""

    def __init__(self, keep: Keep) -> None:
        self.keep = keep
        self.studio, self.clock = FakeStudio(), HandClock()

    def open(self) -> LotForm:
        form = LotForm(bridge_over(self.studio, self.clock))
        self.keep(form)
        form.show()
        settle()
        return form


def test_a_form_half_filled_is_there_again_after_a_crash(
    qtbot: QtBot, tmp_path: Path, keep: Keep
) -> None:
    remember_in(tmp_path)
    kit = FormKit(keep)
    form = kit.open()
    assert form.typed.left.isHidden()
    form.method_box.setCurrentIndex(form.method_box.findData("soy-painting-short"))
    form.name.setText("Linen runners")
    form.pieces.setPlainText("2 x linen 180x45cm\nhalf a li")
    form.start.line.setText("at eight")
    qtbot.waitUntil(lambda: typed().draft(DRAFT) is not None)  # waits for the typing to stop
    # Nothing is closed in order: the file alone is what a crash leaves.
    remember_in(tmp_path)
    kit.clock.at += timedelta(hours=3)
    again = kit.open()
    assert again.name.text() == "Linen runners"
    assert again.pieces.toPlainText() == "2 x linen 180x45cm\nhalf a li"
    assert again.start.line.text() == "at eight"
    assert again.method is not None
    assert again.method.slug == "soy-painting-short"
    assert "today 13:08" in again.typed.left.text()
    assert again.vessel.text() == "10 L"


def test_leaving_the_form_keeps_it_and_starting_afresh_empties_it(qtbot: QtBot, keep: Keep) -> None:
    kit = FormKit(keep)
    form = kit.open()
    form.name.setText("Cotton")
    form.vessel.setText("3 L")
    form.reject()
    again = kit.open()
    assert (again.name.text(), again.vessel.text()) == ("Cotton", "3 L")
    qtbot.mouseClick(again.typed.afresh, Qt.MouseButton.LeftButton)
    assert (again.name.text(), again.vessel.text()) == ("", "10 L")
    assert again.typed.left.isHidden()
    again.reject()
    assert kit.open().name.text() == ""


def test_a_form_in_which_nothing_was_typed_leaves_no_draft(keep: Keep) -> None:
    form = FormKit(keep).open()
    form.vessel.setText("3 L")
    form.reject()
    assert typed().draft(DRAFT) is None


def test_a_lot_that_was_made_leaves_its_values_and_no_draft(keep: Keep) -> None:
    kit = FormKit(keep)
    form = kit.open()
    form.name.setText("Cotton")
    form.pieces.setPlainText("cotton 3 m\nhemp 2 m")
    form.weight.setText("412 g")
    form.place.setText("line 2")
    form.submit()
    settle()
    assert typed().draft(DRAFT) is None
    assert typed().last("pieces") == ("cotton 3 m", "hemp 2 m")
    assert typed().last("weight") == ("412 g",)
    assert typed().last("place") == ("line 2",)


def test_a_note_half_typed_waits_at_its_step(qtbot: QtBot, keep: Keep) -> None:
    studio = FakeStudio()
    page = LotSheetPage(bridge_over(studio), WrittenAsk())  # type: ignore[arg-type]
    keep(page)
    page.show()
    page.choose("26-031")
    settle()
    page.choose_step(4)
    page.detail.note.setText("frothy at the rim")
    page.choose_step(5)
    assert page.detail.note.text() == "", "it is no note of the next step"
    page.choose_step(4)
    assert page.detail.note.text() == "frothy at the rim"
    assert "not written down yet" in page.detail.left.text()
    page.choose("26-030")
    settle()
    page.choose("26-031")
    settle()
    page.choose_step(4)
    assert page.detail.note.text() == "frothy at the rim"
    qtbot.mouseClick(page.detail.act_buttons["tend"], Qt.MouseButton.LeftButton)
    settle()
    sent = studio.sent(Mark)
    assert (sent[0].act, sent[0].note) == (Act.TEND, "frothy at the rim")
    assert page.detail.note.text() == ""
    assert page.detail.left.isHidden()
    assert typed().draft("entry/26-031/4") is None
    assert typed().last("note") == ("frothy at the rim",)


# -- the file ------------------------------------------------------------------------------


def test_the_file_brings_back_what_was_kept(tmp_path: Path) -> None:
    kept = remember_in(tmp_path)
    kept.note("place", "line 2")
    kept.keep_draft("new lot", {"name": "Runners, “ten”", "weight": ""}, NOON)
    again = remember_in(tmp_path)
    assert again.last("place") == ("line 2",)
    draft = again.draft("new lot")
    assert draft is not None
    assert (draft.at, dict(draft.values)) == (NOON, {"name": "Runners, “ten”"})
    again.drop_draft("new lot")
    assert remember_in(tmp_path).draft("new lot") is None
    assert [path.name for path in tmp_path.iterdir()] == [NAME]


HOSTILE = [
    b"",
    b"\xff\xfe\x00",
    b"[]",
    b"null",
    b'"text"',
    b"{" * 100_000,
    b'{"last": 3, "drafts": []}',
    b'{"last": {"place": "line 2"}, "drafts": {"new lot": "x"}}',
    b'{"last": {"place": [1, null, {}, "", "a\\u0007b"]}}',
    b'{"drafts": {"new lot": {"at": "yesterday", "values": {"name": "x"}}}}',
    b'{"drafts": {"new lot": {"at": "2026-06-09T13:00:00", "values": {"name": "x"}}}}',
    b'{"drafts": {"new lot": {"at": 3, "values": {"name": "x"}}}}',
    b'{"drafts": {"new lot": {"at": "2026-06-09T13:00:00+00:00", "values": {"name": 3}}}}',
    json.dumps(
        {"drafts": {"new lot": {"at": NOON.isoformat(), "values": {"name": "x" * 30_000}}}}
    ).encode(),
    b" " * (LARGEST_FILE + 1),
]


@pytest.mark.parametrize("content", HOSTILE, ids=range(len(HOSTILE)))
def test_a_broken_file_is_passed_over_and_written_anew(tmp_path: Path, content: bytes) -> None:
    (tmp_path / NAME).write_bytes(content)
    kept = remember_in(tmp_path)
    assert kept.last("place") == ()
    assert kept.draft("new lot") is None
    kept.note("place", "line 2")
    assert remember_in(tmp_path).last("place") == ("line 2",)


def test_a_file_that_cannot_be_written_is_no_trouble(tmp_path: Path) -> None:
    kept = remember_in(tmp_path / "nowhere")
    kept.note("place", "line 2")
    assert kept.last("place") == ("line 2",)


def test_drafts_are_bounded_and_the_oldest_gives_way(tmp_path: Path) -> None:
    kept = remember_in(tmp_path)
    for number in range(MOST_DRAFTS + 5):
        kept.keep_draft(f"entry/26-{number:03d}/1", {"note": "x" * 40_000}, NOON)
    assert kept.draft("entry/26-004/1") is None
    latest = kept.draft(f"entry/26-{MOST_DRAFTS + 4:03d}/1")
    assert latest is not None
    assert len(latest.values["note"]) == LONGEST_DRAFT
    assert (tmp_path / NAME).stat().st_size <= LARGEST_FILE
    again = remember_in(tmp_path)
    assert again.draft("entry/26-005/1") is not None


# -- the boxes -----------------------------------------------------------------------------


def test_the_change_box_says_what_it_understood_and_keeps_what_it_did_not(keep: Keep) -> None:
    parent = QWidget()
    keep(parent)
    box = _ChangeBox(parent, "Runners", "line 2", "")
    keep(box)
    box.show()
    box.weight.setText("14.5 oz")
    assert "411.1 g" in box.weight.understood.text()
    box.cure.setText("ninety")
    box.take()
    assert box.isVisible()
    assert "as in 90" in box.cure.understood.text()
    assert box.cure.text() == "ninety"
    box.cure.setText("90 d")
    box.take()
    assert not box.isVisible()
    change = box.change
    assert change.grams == pytest.approx(411.068, rel=1e-5)
    assert (change.cure_days, change.vessel_litres, change.name) == (90, None, None)
    assert typed().last("weight") == ("14.5 oz",)


def test_the_milk_box_says_how_strong_the_milk_is(keep: Keep) -> None:
    """180 g in 1.8 L are 100 g a litre."""
    box = MilkBox(bridge_over(FakeStudio()), MilkOffer((), 100.0))
    keep(box)
    box.show()
    box.beans.setText("180 g")
    box.litres.setText("1.8 L")
    assert "100 g of dry beans a litre" in box.strength.text()
    box.litres.setText("plenty")
    assert box.strength.isHidden()
    box.submit()
    assert box.isVisible()
    assert "cannot be read" in box.litres.understood.text()
