"""A button whose words break instead of being cut."""

from typing import Final

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QFont, QPaintEvent, QPalette
from PySide6.QtWidgets import (
    QPushButton,
    QSizePolicy,
    QStyle,
    QStyleOptionButton,
    QStylePainter,
    QWidget,
)
from typing_extensions import override

from studio_log.ui.theme.dress import dress_button
from studio_log.ui.theme.look import theme
from studio_log.ui.theme.metrics import ANSWER_HEIGHT
from studio_log.ui.widgets.parts import BREAK, ButtonKind, breakable

PAD: Final = 12
_FLAGS: Final = int(Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignCenter)
_LEFT: Final = int(
    Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
)
_ROOM: Final = 100_000


def underlined(font: QFont) -> QFont:
    """Give a font with a line under it."""
    made = QFont(font)
    made.setUnderline(True)
    return made


class WrapButton(QPushButton):
    """A push button with wrapped words; `big` is at least 72 px high, for wet hands.

    `left` makes it a link in a text: flush with what stands above and below it, and underlined.
    """

    def __init__(
        self,
        text: str = "",
        *,
        kind: ButtonKind = "plain",
        big: bool = False,
        grows: bool = True,
        left: bool = False,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(breakable(text), parent)
        self._least = ANSWER_HEIGHT if big else 0
        self._left = left
        dress_button(self, kind, big=big)
        self.setAutoDefault(False)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        wide = QSizePolicy.Policy.Expanding if grows else QSizePolicy.Policy.Preferred
        policy = QSizePolicy(wide, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    @override
    def setText(self, text: str, /) -> None:
        super().setText(breakable(text))

    @override
    def hasHeightForWidth(self) -> bool:
        return True

    @override
    def heightForWidth(self, width: int) -> int:
        room = QRect(0, 0, max(width - 2 * PAD, 20), _ROOM)
        words = self.fontMetrics().boundingRect(room, _FLAGS, self.text())
        return max(words.height() + 2 * PAD, self._least)

    @override
    def sizeHint(self) -> QSize:
        # One line while it is short; longer words break at about eighteen letters.
        wide = self.fontMetrics().horizontalAdvance(self.text()) + 2 * PAD + 8
        most = self.fontMetrics().averageCharWidth() * 22 + 2 * PAD
        least = self.fontMetrics().height() * 6 if self._least else 0
        wide = max(min(wide, most), self.minimumSizeHint().width(), least)
        return QSize(wide, self.heightForWidth(wide))

    @override
    def minimumSizeHint(self) -> QSize:
        words = self.text().replace(BREAK, " ").split() or [""]
        longest = max(self.fontMetrics().horizontalAdvance(word) for word in words)
        return QSize(longest + 2 * PAD + 4, max(self.fontMetrics().height() + PAD, self._least))

    @override
    def paintEvent(self, event: QPaintEvent) -> None:
        option = QStyleOptionButton()
        self.initStyleOption(option)
        option.text = ""
        painter = QStylePainter(self)
        painter.drawControl(QStyle.ControlElement.CE_PushButtonBevel, option)
        group = QPalette.ColorGroup.Active if self.isEnabled() else QPalette.ColorGroup.Disabled
        painter.setPen(self.palette().color(group, QPalette.ColorRole.ButtonText))
        if self._left:
            painter.setPen(theme().colours.accent_ink)
            painter.setFont(underlined(self.font()))
        room = self.rect().adjusted(0 if self._left else PAD, 2, -PAD, -2)
        flags = _LEFT if self._left else _FLAGS
        painter.drawText(room, flags | int(Qt.TextFlag.TextShowMnemonic), self.text())
        painter.end()
