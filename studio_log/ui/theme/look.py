"""Dressing the program in the light or the dark palette, and following the system's wish."""

from collections.abc import Mapping
from typing import Final, Literal

from PySide6.QtCore import QObject, Qt, Slot
from PySide6.QtGui import QFont, QFontDatabase
from PySide6.QtWidgets import QApplication

from studio_log.present.hues import Scheme
from studio_log.ui.theme.palette import qt_palette
from studio_log.ui.theme.state import Theme
from studio_log.ui.theme.style import style_sheet

Wish = Scheme | Literal["strong", "system"]
"""Strong is the high contrast, light or dark as the system has it."""
_SCHEMES: Final[Mapping[tuple[bool, bool], Scheme]] = {
    (False, False): "light",
    (True, False): "dark",
    (False, True): "strong-light",
    (True, True): "strong-dark",
}
"""By dark and strong."""
LEAST_TEXT, MOST_TEXT = 80, 200
"""Sizes of text that can be asked for, in per cent."""


class _Dresser(QObject):
    """Holds the wish and the theme in force, and dresses anew when the system changes."""

    def __init__(self, app: QApplication) -> None:
        super().__init__(app)
        self.setObjectName("dresser")
        self._app = app
        self._plain_font = QFontDatabase.systemFont(QFontDatabase.SystemFont.GeneralFont)
        self._wish: Wish = "system"
        self._percent = 100
        self._family = ""
        self.theme = Theme("light", self._plain_font)
        app.setStyle("Fusion")
        app.styleHints().colorSchemeChanged.connect(self._follow)
        app.styleHints().accessibility().contrastPreferenceChanged.connect(self._follow)

    def dress(self, wish: Wish, percent: int, family: str) -> None:
        self._wish, self._family = wish, family
        self._percent = min(max(percent, LEAST_TEXT), MOST_TEXT)
        self.theme = Theme(self._scheme(), self._font())
        self._app.setFont(self.theme.font())
        self._app.setPalette(qt_palette(self.theme.palette))
        self._app.setStyleSheet(style_sheet(self.theme))

    @Slot()
    def _follow(self) -> None:
        if self.theme.scheme != self._scheme():
            self.dress(self._wish, self._percent, self._family)

    def _scheme(self) -> Scheme:
        """Give what the wish comes to on this system now."""
        dark, strong = self._system_wish()
        match self._wish:
            case "system":
                return _SCHEMES[dark, strong]
            case "strong":
                return _SCHEMES[dark, True]
            case scheme:
                return scheme

    def _system_wish(self) -> tuple[bool, bool]:
        """Give whether the system wants it dark, and whether with high contrast."""
        hints = self._app.styleHints()
        dark = hints.colorScheme() is Qt.ColorScheme.Dark
        wanted = hints.accessibility().contrastPreference()
        return dark, wanted is Qt.ContrastPreference.HighContrast

    def _font(self) -> QFont:
        font = QFont(self._plain_font)
        if self._family:
            font.setFamily(self._family)
        # Some systems ask for 9 pt, too small to read across a bench.
        font.setPointSizeF(max(font.pointSizeF(), 10.0) * self._percent / 100)
        return font


def apply_theme(
    app: QApplication, scheme: Wish, text_percent: int = 100, *, family: str = ""
) -> None:
    """Dress the whole program; may be called again at any time.

    `text_percent` is held between 80 and 200. `family` names a font for pictures and
    tests; without it the system's own is taken.
    """
    _dresser(app).dress(scheme, text_percent, family)


def theme() -> Theme:
    """Give the theme in force; the light one if none was applied yet."""
    app = QApplication.instance()
    if not isinstance(app, QApplication):
        raise TypeError("the theme needs a QApplication")
    return _dresser(app).theme


def _dresser(app: QApplication) -> _Dresser:
    found = app.findChild(_Dresser, "dresser", Qt.FindChildOption.FindDirectChildrenOnly)
    return found or _Dresser(app)
