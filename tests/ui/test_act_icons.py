"""The icons of the acts: each has one, drawn in one hand, in the ink of the theme."""

import re

import pytest
from PySide6.QtCore import QSize
from PySide6.QtGui import QAction, QIcon
from PySide6.QtWidgets import QApplication, QPushButton
from pytestqt.qtbot import QtBot

from studio_log.ui.act_icons import ICONS, dress_acts
from studio_log.ui.actions import ACTIONS
from studio_log.ui.theme.icons import icon_folder
from studio_log.ui.theme.look import apply_theme, theme

ONE_HAND = (
    'viewBox="0 0 24 24"', 'fill="none"', 'stroke="currentColor"', 'stroke-width="1.75"',
    'stroke-linecap="round"', 'stroke-linejoin="round"',
)  # fmt: skip


def test_every_act_that_is_not_ticked_has_an_icon() -> None:
    slugs = {row.slug for row in ACTIONS if row.slug != "-" and not row.checkable}
    assert slugs == set(ICONS) & {row.slug for row in ACTIONS}


def test_the_set_is_drawn_in_one_hand() -> None:
    drawn = {path.stem: path.read_text("utf-8") for path in icon_folder().glob("*.svg")}
    assert set(ICONS.values()) <= set(drawn)
    for name in set(ICONS.values()):
        assert [part for part in ONE_HAND if part not in drawn[name]] == []
        # Two points of room on every side: no line is cut at its edge.
        moves = re.findall(r"M(-?[\d.]+)[ ,](-?[\d.]+)", drawn[name])
        assert all(3 <= float(value) <= 21 for pair in moves for value in pair), name


@pytest.mark.parametrize("scheme", ["light", "dark", "strong-light", "strong-dark"])
def test_they_are_drawn_in_the_ink_of_the_theme(qtbot: QtBot, scheme: str) -> None:
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    apply_theme(app, scheme)  # type: ignore[arg-type]
    act, button = QAction("Undo"), QPushButton("Undo")
    qtbot.addWidget(button)
    dress_acts({"undo": act}, {"undo": button})
    inks = {
        QIcon.Mode.Normal: theme().colours.ink,
        QIcon.Mode.Disabled: theme().colours.soft,
        QIcon.Mode.Active: theme().colours.on_accent,
    }
    for mode, ink in inks.items():
        picture = act.icon().pixmap(QSize(24, 24), mode).toImage()
        dots = (
            picture.pixelColor(x, y)
            for x in range(picture.width())
            for y in range(picture.height())
        )
        densest = max(dots, key=lambda one: one.alpha())
        assert densest.alpha() > 150
        pairs = zip(densest.getRgb()[:3], ink.getRgb()[:3], strict=True)
        assert max(abs(one - other) for one, other in pairs) <= 2  # 8 bits, unpremultiplied
    apply_theme(app, "light")
