"""The whole program in light and dark, with text from 80 to 200 per cent."""

import re
from collections.abc import Iterator
from xml.etree import ElementTree as ET

import pytest
from PySide6.QtCore import QSize
from PySide6.QtGui import QColor, QIcon, QPalette
from PySide6.QtWidgets import QApplication, QLabel, QLineEdit, QPushButton, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from studio_log.domain.methods import StepKind
from studio_log.present.hues import PALETTES, contrast
from studio_log.ui.theme import (
    apply_theme,
    dress_button,
    dress_label,
    icon,
    icon_folder,
    program_icon,
    theme,
)
from studio_log.ui.theme.look import Wish, _dresser
from studio_log.ui.theme.style import style_sheet

# The off-screen platform says that it has no window manager to hand sizes to.
pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")

OUR_ICONS = ("milk", "bell", "undo", "print", "room", "plus")


@pytest.fixture(autouse=True)
def _plain_again(qapp: QApplication) -> Iterator[None]:
    yield
    apply_theme(qapp, "light", family="DejaVu Sans")


def pixels(button: QWidget) -> set[str]:
    picture = button.grab().toImage()
    return {
        picture.pixelColor(x, y).name()
        for x in range(picture.width())
        for y in range(picture.height())
    }


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_palette_and_painters_get_the_same_colours(qapp: QApplication, scheme: str) -> None:
    apply_theme(qapp, scheme, family="DejaVu Sans")  # type: ignore[arg-type]
    palette = PALETTES[scheme]  # type: ignore[index]
    assert qapp.palette().color(QPalette.ColorRole.Window) == QColor(palette.ground)
    assert theme().colours.ink == qapp.palette().color(QPalette.ColorRole.WindowText)
    assert theme().is_dark == (scheme == "dark")


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_text_in_qt_s_own_roles_reads(qapp: QApplication, scheme: str) -> None:
    apply_theme(qapp, scheme, family="DejaVu Sans")  # type: ignore[arg-type]
    role, palette = QPalette.ColorRole, qapp.palette()
    for text, ground in (
        (role.WindowText, role.Window),
        (role.Text, role.Base),
        (role.Text, role.AlternateBase),
        (role.ButtonText, role.Button),
        (role.HighlightedText, role.Highlight),
        (role.PlaceholderText, role.Base),
        (role.ToolTipText, role.ToolTipBase),
        (role.Link, role.Base),
    ):
        # WCAG 2.2, success criterion 1.4.3.
        assert contrast(palette.color(text).name(), palette.color(ground).name()) >= 4.5


def test_text_grows_and_rows_with_it(qapp: QApplication) -> None:
    apply_theme(qapp, "light", 100, family="DejaVu Sans")
    small = theme().metrics
    points = qapp.font().pointSizeF()
    apply_theme(qapp, "light", 200, family="DejaVu Sans")
    assert qapp.font().pointSizeF() == pytest.approx(2 * points)
    assert theme().metrics.row > 1.5 * small.row
    assert theme().metrics.answer > small.answer >= 72


@pytest.mark.parametrize(("asked", "given"), [(5, 80), (900, 200)])
def test_text_size_is_held_between_80_and_200_per_cent(
    qapp: QApplication, asked: int, given: int
) -> None:
    apply_theme(qapp, "light", given, family="DejaVu Sans")
    wanted = qapp.font().pointSizeF()
    apply_theme(qapp, "light", asked, family="DejaVu Sans")
    assert qapp.font().pointSizeF() == pytest.approx(wanted)


def test_the_system_s_wish_is_followed_only_while_asked_for(
    qapp: QApplication, monkeypatch: pytest.MonkeyPatch
) -> None:
    dresser = _dresser(qapp)
    apply_theme(qapp, "system", family="DejaVu Sans")
    assert theme().scheme == "light"  # the off-screen platform has no wish
    monkeypatch.setattr(dresser, "_system_wish", lambda: (True, False))
    dresser._follow()
    assert theme().scheme == "dark"
    apply_theme(qapp, "light", family="DejaVu Sans")
    dresser._follow()
    assert theme().scheme == "light"


@pytest.mark.parametrize(
    ("wish", "system", "scheme"),
    [
        ("system", (False, True), "strong-light"),
        ("system", (True, True), "strong-dark"),
        ("strong", (True, False), "strong-dark"),
        ("strong", (False, False), "strong-light"),
        ("dark", (False, True), "dark"),
    ],
)
def test_high_contrast_follows_the_system_or_the_choice(
    qapp: QApplication, monkeypatch: pytest.MonkeyPatch, wish: Wish, system: object, scheme: str
) -> None:
    monkeypatch.setattr(_dresser(qapp), "_system_wish", lambda: system)
    apply_theme(qapp, wish, family="DejaVu Sans")
    assert theme().scheme == scheme
    monkeypatch.undo()
    apply_theme(qapp, "light", family="DejaVu Sans")


def test_the_sheet_names_no_colour_of_its_own(qapp: QApplication) -> None:
    apply_theme(qapp, "dark", family="DejaVu Sans")
    sheet = style_sheet(theme())
    assert "$" not in sheet
    known = set(vars(PALETTES["dark"]).values())
    assert set(re.findall(r"#[0-9a-f]{6}", sheet)) <= known


def test_the_big_answer_is_at_least_72_px_high(qtbot: QtBot, qapp: QApplication) -> None:
    apply_theme(qapp, "light", 80, family="DejaVu Sans")
    button = QPushButton("Stirred")
    qtbot.addWidget(button)
    dress_button(button, "primary", big=True)
    assert button.sizeHint().height() >= 72


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("look", ["plain", "primary", "quiet", "danger", "ochre"])
def test_focus_is_seen_on_every_button_and_moves_nothing(
    qtbot: QtBot, qapp: QApplication, scheme: str, look: str
) -> None:
    apply_theme(qapp, scheme, family="DejaVu Sans")  # type: ignore[arg-type]
    page = QWidget()
    qtbot.addWidget(page)
    rows = QVBoxLayout(page)
    button, other = QPushButton("Stirred"), QPushButton("Skip…")
    for each in (button, other):
        dress_button(each, look)  # type: ignore[arg-type]
        rows.addWidget(each)
    page.show()
    page.activateWindow()
    qtbot.waitUntil(page.isActiveWindow)
    ring = theme().colours.focus.name()
    other.setFocus()
    size = button.sizeHint()
    assert ring not in pixels(button)
    button.setFocus()
    assert ring in pixels(button)
    assert button.sizeHint() == size


def test_focus_is_seen_on_a_field_too(qtbot: QtBot, qapp: QApplication) -> None:
    apply_theme(qapp, "light", family="DejaVu Sans")
    field = QLineEdit()
    qtbot.addWidget(field)
    field.show()
    field.activateWindow()
    field.setFocus()
    qtbot.waitUntil(field.hasFocus)
    assert theme().colours.focus.name() in pixels(field)


def test_a_heading_is_larger_than_the_body(qtbot: QtBot, qapp: QApplication) -> None:
    apply_theme(qapp, "light", family="DejaVu Sans")
    body, heading = QLabel("Steps"), QLabel("Steps")
    for label in (body, heading):
        qtbot.addWidget(label)
    dress_label(heading, "heading")
    assert heading.sizeHint().height() > body.sizeHint().height()


@pytest.mark.parametrize("name", OUR_ICONS)
def test_an_icon_takes_the_colour_it_is_given(name: str) -> None:
    drawn = icon(name, QColor("#25466e"), QColor("#8f8470"), side=64)
    for mode, colour in ((QIcon.Mode.Normal, "#25466e"), (QIcon.Mode.Disabled, "#8f8470")):
        picture = drawn.pixmap(QSize(64, 64), mode).toImage()
        opaque = {
            picture.pixelColor(x, y).name()
            for x in range(64)
            for y in range(64)
            if picture.pixelColor(x, y).alpha() == 255
        }
        assert opaque == {colour}


def test_all_icons_share_one_line_weight() -> None:
    weights = {
        ET.parse(icon_folder() / f"{name}.svg").getroot().get("stroke-width") for name in OUR_ICONS
    }
    assert weights == {"1.75"}


def test_the_program_icon_is_there_at_every_size() -> None:
    made = program_icon()
    assert {16, 32, 256} <= {size.width() for size in made.availableSizes()}
    assert made.pixmap(64, 64).toImage().pixelColor(32, 40).blue() > 80  # the indigo drop


def test_each_kind_has_its_colours_in_both_schemes(qapp: QApplication) -> None:
    apply_theme(qapp, "light", family="DejaVu Sans")
    light = {kind: theme().kind(kind).fill.name() for kind in StepKind}
    apply_theme(qapp, "dark", family="DejaVu Sans")
    for kind in StepKind:
        assert theme().kind(kind).fill.name() != light[kind]
