"""The calculator as it is used: typed into, chosen from, copied, at any size of text."""

from collections.abc import Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QComboBox, QLineEdit
from pytestqt.qtbot import QtBot

from studio_log.present.calculator.table import CALCULATIONS
from studio_log.ui.calculator.calculator_box import CalculatorBox
from studio_log.ui.calculator.curve_view import round_step
from studio_log.ui.widgets.parts import em

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")


@pytest.fixture
def box(qtbot: QtBot) -> Iterator[CalculatorBox]:
    made = CalculatorBox(slug="share")
    qtbot.addWidget(made)
    made.resize(1400, 800)
    made.show()
    yield made
    made.close()


def field(box: CalculatorBox, slug: str) -> QLineEdit | QComboBox:
    return next(row.field for row in box.page.rows if row.of.slug == slug)


def test_a_figure_follows_what_is_typed(box: CalculatorBox, qtbot: QtBot) -> None:
    cloth = field(box, "cloth")
    assert box.page.figure.text() == "36 g"
    cloth.selectAll()  # type: ignore[union-attr]
    qtbot.keyClicks(cloth, "1 lb")
    assert box.page.figure.text() == "54 g"  # 453.6 g at 12 %


def test_a_mistake_is_said_beside_its_field_and_nowhere_else(
    box: CalculatorBox, qtbot: QtBot
) -> None:
    cloth = field(box, "cloth")
    cloth.selectAll()  # type: ignore[union-attr]
    qtbot.keyClicks(cloth, "some")
    row = box.page.rows[0]
    assert row.heard.isVisible()
    assert "some" in row.heard.text()
    assert row.heard.text() in cloth.accessibleDescription()
    assert box.page.figure.text() == "—"
    assert box.page.rows[1].heard.text() == "12 %"


def test_each_page_keeps_what_was_typed(box: CalculatorBox, qtbot: QtBot) -> None:
    cloth = field(box, "cloth")
    cloth.selectAll()  # type: ignore[union-attr]
    qtbot.keyClicks(cloth, "500 g")
    box.list.setFocus()
    qtbot.keyClick(box.list, Qt.Key.Key_Down)
    assert box.page.of.slug == "bath"
    qtbot.keyClick(box.list, Qt.Key.Key_Up)
    assert box.page.figure.text() == "60 g"


def test_a_choice_is_worked_with(box: CalculatorBox) -> None:
    box.choose("salt")
    shelf = field(box, "other")
    assert isinstance(shelf, QComboBox)
    before = box.page.figure.text()
    shelf.setCurrentIndex(shelf.findData("soda-ash"))
    assert before != box.page.figure.text() == "100 g"


def test_the_sum_is_copied_as_text(box: CalculatorBox, qtbot: QtBot) -> None:
    qtbot.mouseClick(box.copy, Qt.MouseButton.LeftButton)
    text = QGuiApplication.clipboard().text()
    assert "Share of the cloth’s weight" in text
    assert "36 g" in text
    assert "Copied" in box.said.text()


def test_a_drawing_stands_where_there_is_one(box: CalculatorBox) -> None:
    assert not box.page.curve.isVisible()
    box.choose("dry")
    assert box.page.curve.isVisible()
    assert "humidity" in box.page.curve.accessibleName()
    picture = box.page.curve.grab().toImage()
    shades = {
        picture.pixelColor(x, y).name()
        for x in range(0, picture.width(), 3)
        for y in range(0, picture.height(), 3)
    }
    assert len(shades) > 4
    humidity = field(box, "humidity")
    humidity.setText("99 %")  # type: ignore[union-attr]
    assert not box.page.curve.isVisible()  # nothing dries: words stand there
    assert "full" in box.page.lines.text()


@pytest.mark.parametrize("wide", [1400, 900, 560])
def test_nothing_is_cut_at_any_width(box: CalculatorBox, wide: int) -> None:
    for one in CALCULATIONS:
        box.choose(one.slug)
        box.resize(wide, 700)
        QApplication.sendPostedEvents()
        for row in box.page.rows:
            right = row.field.mapTo(box.page, row.field.rect().topRight()).x()
            assert right <= box.page.width()
            assert row.field.width() >= em(box, 3)


@pytest.mark.parametrize(("span", "step"), [(24, 5), (1.5, 0.5), (8, 2), (70, 20), (0.4, 0.1)])
def test_the_grid_has_round_steps(span: float, step: float) -> None:
    assert round_step(span) == step
