"""Where a lot comes from and where its cloth went: a small drawing whose codes open lots."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, Qt, Signal
from PySide6.QtGui import QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget
from typing_extensions import override

from studio_log.language.words import tr
from studio_log.ui.theme.look import theme
from studio_log.ui.widgets.parts import Words, button, em, emptied

MOST = 8
"""Codes on a side; what is more is counted."""


class LineageView(QWidget):
    """Parents at the left, this lot, what its pieces went into at the right."""

    opened = Signal(str)
    """The code of another lot."""

    def __init__(self) -> None:
        super().__init__()
        self.buttons: list[QPushButton] = []
        self._told: tuple[str, tuple[str, ...], tuple[str, ...], str] = ("", (), (), "")
        self.own = Words(bold=True)
        self.own.setWordWrap(False)
        self._left, self._right = QVBoxLayout(), QVBoxLayout()
        line = QHBoxLayout(self)
        line.setContentsMargins(0, 4, 0, 4)
        line.setSpacing(em(self, 2.4))
        for layout in (self._left, self._right):
            layout.setSpacing(4)
        line.addLayout(self._left)
        line.addWidget(self.own, 0, Qt.AlignmentFlag.AlignVCenter)
        line.addLayout(self._right)
        line.addStretch()
        self.hide()

    def show_lineage(
        self,
        code: str,
        parents: Sequence[str],
        children: Sequence[str],
        *,
        joined: bool = False,
        into: str = "",
    ) -> None:
        """Show a lot between these; nothing where it has neither.

        `joined` says that it was made of its parents, `into` names the child it ended in.
        """
        told = (code, tuple(parents), tuple(children), into)
        if told == self._told:
            return
        self._told = told
        emptied(self._left)
        emptied(self._right)
        self.buttons = []
        self.own.setText(code)
        split = [child for child in children if child != into]
        self._fill(self._left, parents, tr("joined from") if joined else tr("split from"))
        self._fill(self._right, split, tr("split into"))
        self._fill(self._right, [into] if into else [], tr("joined into"))
        self.setVisible(bool(parents or children))

    @override
    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(theme().colours.outline, 1.5))
        own = self.own.geometry()
        for one in self.buttons:
            box = one.geometry()
            left, right = (box, own) if box.right() < own.left() else (own, box)
            painter.drawPath(_line(
                QPointF(left.right() + 3, left.center().y()),
                QPointF(right.left() - 3, right.center().y()),
            ))  # fmt: skip
        painter.end()

    def _fill(self, column: QVBoxLayout, codes: Sequence[str], how: str) -> None:
        if codes:
            column.addWidget(Words(how, tone="soft", size="small"))
        for code in codes[:MOST]:
            made = button(code, says=tr("{how} {code}: open it", how=how, code=code))
            made.setObjectName("chip")
            made.setProperty("code", code)
            made.clicked.connect(self._clicked)
            self.buttons.append(made)
            column.addWidget(made)
        if len(codes) > MOST:
            more = tr("and {count} more", count=len(codes) - MOST)
            column.addWidget(Words(more, tone="soft", size="small"))

    def _clicked(self) -> None:
        self.opened.emit(str(self.sender().property("code")))


def _line(start: QPointF, end: QPointF) -> QPainterPath:
    """Give a soft line from left to right."""
    path = QPainterPath(start)
    middle = (start.x() + end.x()) / 2
    path.cubicTo(QPointF(middle, start.y()), QPointF(middle, end.y()), end)
    return path
