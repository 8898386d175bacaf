"""The new-lot form: it says what it understood, shows the amounts, and loses nothing typed."""

from datetime import UTC, datetime

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog
from pytestqt.qtbot import QtBot

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.journal import Act
from studio_log.services.commands import Mark, NewLot, Outcome
from studio_log.ui.lots.lot_form import LotForm
from studio_log.ui.lots.lot_reading import read_pieces
from tests.ui.fake_studio import FakeStudio
from tests.ui.window_kit import bridge_over, settle

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")

RUNNERS = "2 x linen runners 180x45cm 185g/m2"


class Kit:
    """The form over a fake studio."""

    def __init__(self, qtbot: QtBot) -> None:
        self.qtbot = qtbot
        self.studio = FakeStudio()
        self.form = LotForm(bridge_over(self.studio))
        qtbot.addWidget(self.form)
        self.form.show()
        settle()

    def fill(self, pieces: str = RUNNERS, name: str = "Linen runners") -> None:
        """Type name and pieces and wait for the amounts."""
        self.form.name.setText(name)
        self.form.pieces.setPlainText(pieces)
        self.qtbot.waitUntil(lambda: self.form.amounts.isVisible() or not pieces)

    def submit(self) -> None:
        """Press the button."""
        self.qtbot.mouseClick(self.form.make, Qt.MouseButton.LeftButton)
        settle()

    @property
    def sent(self) -> list[NewLot]:
        """Give the lots asked for."""
        return self.studio.sent(NewLot)


@pytest.fixture
def kit(qtbot: QtBot) -> Kit:
    """Give the form."""
    return Kit(qtbot)


def test_two_runners_show_their_amounts_at_once(kit: Kit) -> None:
    """2 × 1.80 m × 0.45 m × 185 g/m² = 299.7 g; 30 % of it 89.9 g; 100 g a litre; 1 : 5."""
    kit.fill()
    words = kit.form.amounts.words()
    assert "299.7 g" in kit.form.amounts_said.text()
    for amount in ("90 g dry soybeans", "½ US cup", "0.47 L or more", "0.9 L", "5.4 L"):
        assert amount in words, amount
    assert "The 10 L vessel holds 5.4 L bath" in kit.form.vessel_said.text()


def test_what_was_understood_of_each_line_stands_beneath(kit: Kit) -> None:
    kit.fill()
    assert "180 × 45 cm" in kit.form.fields["pieces"].said.text()
    assert kit.form.fields["pieces"].fault == ""


def test_a_bucket_too_small_is_said(kit: Kit) -> None:
    kit.fill()
    kit.form.vessel.setText("3 L")
    kit.qtbot.waitUntil(lambda: "too small" in kit.form.vessel_said.text())


def test_a_changed_figure_changes_the_amounts_and_is_sent(kit: Kit) -> None:
    """25 % of 299.7 g are 74.9 g."""
    kit.fill()
    kit.form.amounts.spin("beans").setValue(25.0)
    kit.qtbot.waitUntil(lambda: "75 g dry soybeans" in kit.form.amounts.words())
    kit.submit()
    assert kit.sent[0].amounts == {"beans": 25.0}


def test_the_lot_is_sent_as_typed(kit: Kit) -> None:
    kit.fill()
    kit.form.place.setText("line 2")
    kit.submit()
    (sent,) = kit.sent
    assert (sent.method, sent.name, sent.place) == (
        "soy-immersion-long", "Linen runners", "line 2",
    )  # fmt: skip
    assert [(piece.number, piece.length_m, piece.width_m) for piece in sent.pieces] == [
        (1, 1.8, 0.45), (2, 1.8, 0.45),
    ]  # fmt: skip
    assert (sent.cure_days, sent.vessel_litres, sent.grams) == (90, 10.0, None)
    assert kit.form.result() == int(QDialog.DialogCode.Accepted)


def test_beans_at_eight_last_night_are_marked_after_the_lot_is_made(kit: Kit) -> None:
    kit.fill()
    kit.studio.outcomes.append(Outcome(code="26-032", lots=frozenset({"26-032"})))
    kit.form.start.line.setText("at eight last night")
    assert "Mon 8 June 2026, 20:00" in kit.form.start.understood.text()
    made: list[str] = []
    kit.form.made.connect(made.append)
    kit.submit()
    at = datetime(2026, 6, 8, 18, 0, tzinfo=UTC)
    assert kit.studio.done[-1] == Mark("26-032", "bean-soak", Act.START, at)
    assert made == ["26-032"]


def test_a_refusal_keeps_every_field_and_the_form_can_be_sent_again(kit: Kit) -> None:
    kit.fill()
    kit.form.place.setText("line 2")
    kit.studio.refusals.append(Refusal("The disk is full. Nothing was changed."))
    kit.submit()
    assert kit.form.isVisible()
    assert kit.form.message.words.text() == "The disk is full. Nothing was changed."
    assert kit.form.name.text() == "Linen runners"
    assert kit.form.pieces.toPlainText() == RUNNERS
    assert kit.form.place.text() == "line 2"
    kit.submit()
    assert len(kit.sent) == 2


def test_yes_take_it_makes_the_doubted_lot(kit: Kit) -> None:
    kit.fill()
    kit.studio.refusals.append(Question("30 kg is a lot of cloth. Take it?"))
    kit.submit()
    kit.qtbot.mouseClick(kit.form.message.yes, Qt.MouseButton.LeftButton)
    settle()
    assert [sent.sure for sent in kit.sent] == [False, True]
    assert not kit.form.isVisible()


@pytest.mark.parametrize(
    ("field", "typed"),
    [
        ("pieces", "hemp 90x"),
        ("pieces", "\x00\x07"),
        ("pieces", "9" * 5000),
        ("weight", "-3 kg"),
        ("weight", "412"),
        ("weight", "heavy"),
        ("vessel", "1e400 L"),
        ("vessel", "bucket"),
        ("start", "someday"),
        ("name", "   "),
    ],
)
def test_nonsense_is_said_beside_its_field_and_nothing_is_sent(
    kit: Kit, field: str, typed: str
) -> None:
    kit.fill()
    if field == "pieces":
        kit.form.pieces.setPlainText(typed)
    elif field == "start":
        kit.form.start.line.setText(typed)
    else:
        getattr(kit.form, field).setText(typed)
    kit.submit()
    assert kit.sent == []
    assert kit.form.isVisible()
    said = kit.form.start.fault if field == "start" else kit.form.fields[field].wrong.text()
    assert said


def test_a_method_without_a_cure_asks_for_none(kit: Kit) -> None:
    kit.form.method_box.setCurrentIndex(kit.form.method_box.findData("scour-cellulose"))
    kit.fill()
    assert not kit.form.fields["cure"].isVisible()
    kit.submit()
    assert kit.sent[0].cure_days is None


def test_every_view_of_the_cure_is_offered_with_its_source(kit: Kit) -> None:
    method = kit.form.method
    assert method is not None
    assert method.cure is not None
    offered = [kit.form.cure.itemData(at) for at in range(kit.form.cure.count())]
    assert offered == [view.days for view in method.cure.views]
    assert kit.form.cure.currentData() == method.cure.default_days
    assert "common practice" in kit.form.fields["cure"].said.text()


def test_lines_are_numbered_through_and_good_ones_stay_beside_a_fault() -> None:
    reading = read_pieces(f"{RUNNERS}\n\nhemp 90x\ncotton 50x50cm 100g/m2")
    assert [piece.number for piece in reading.pieces] == [1, 2, 3]
    assert "hemp 90x" in reading.fault
    assert reading.grams == pytest.approx(2 * 1.8 * 0.45 * 185 + 0.25 * 100)


def test_the_method_of_the_form_leads_to_its_page_and_comes_back_from_it(
    kit: Kit, qtbot: QtBot
) -> None:
    form = kit.form
    with qtbot.waitSignal(form.method_wanted) as said:
        form.summary.linkActivated.emit("scour-cellulose")
    assert said.args == ["scour-cellulose"]
    form.take_method("scour-cellulose")
    assert form.method is not None
    assert form.method.slug == "scour-cellulose"
    assert 'href="scour-cellulose"' in form.summary.text()
    form.take_method("no-such-method")
    assert form.method.slug == "scour-cellulose"
