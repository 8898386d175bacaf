"""A layout that breaks its line like text, so that nothing is cut in a narrow pane."""

from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtWidgets import QLayout, QLayoutItem, QSizePolicy, QWidget, QWidgetItem
from typing_extensions import override


class FlowLayout(QLayout):
    """Lays its widgets side by side, on further lines where the width is used up.

    Widgets whose horizontal policy expands share what is left of their line.
    """

    def __init__(self, parent: QWidget | None = None, *, gap: int = 8, row_gap: int = 6) -> None:
        super().__init__(parent)
        self._items: list[QLayoutItem] = []
        self._row_gap = min(gap, row_gap)
        self.setSpacing(gap)
        self.setContentsMargins(0, 0, 0, 0)

    @override
    def addWidget(self, widget: QWidget, /) -> None:
        """Add a widget by an item made here.

        One that Qt makes is deleted by Qt unheard of: its address is then given to the item of
        another layout, which is lost with the first one.
        """
        self.addChildWidget(widget)
        self.addItem(QWidgetItem(widget))
        self.invalidate()

    @override
    def addItem(self, item: QLayoutItem) -> None:
        self._items.append(item)

    @override
    def count(self) -> int:
        return len(self._items)

    @override
    def itemAt(self, index: int) -> QLayoutItem | None:
        return self._items[index] if 0 <= index < len(self._items) else None

    @override
    def takeAt(self, index: int) -> QLayoutItem | None:
        return self._items.pop(index) if 0 <= index < len(self._items) else None

    @override
    def expandingDirections(self) -> Qt.Orientation:
        return Qt.Orientation(0)

    @override
    def hasHeightForWidth(self) -> bool:
        return True

    @override
    def heightForWidth(self, width: int) -> int:
        return self._lay(QRect(0, 0, width, 0), move=False)

    @override
    def setGeometry(self, rect: QRect) -> None:
        super().setGeometry(rect)
        self._lay(rect, move=True)

    @override
    def sizeHint(self) -> QSize:
        shown = self._shown()
        margins = self.contentsMargins()
        wide = sum(_wanted(item).width() for item in shown) + self.spacing() * (len(shown) - 1)
        high = max((_wanted(item).height() for item in shown), default=0)
        return QSize(
            max(wide, 0) + margins.left() + margins.right(),
            high + margins.top() + margins.bottom(),
        )

    @override
    def minimumSize(self) -> QSize:
        shown = self._shown()
        margins = self.contentsMargins()
        wide = max((item.minimumSize().width() for item in shown), default=0)
        high = max((item.minimumSize().height() for item in shown), default=0)
        return QSize(
            wide + margins.left() + margins.right(), high + margins.top() + margins.bottom()
        )

    def _shown(self) -> list[QLayoutItem]:
        return [item for item in self._items if not item.isEmpty()]

    def _lay(self, rect: QRect, *, move: bool) -> int:
        area = rect.marginsRemoved(self.contentsMargins())
        y = area.y()
        for line in self._lines(area.width()):
            wide = self._shares(line, area.width())
            high = max(_height(item, share) for item, share in zip(line, wide, strict=True))
            if move:
                self._place(line, QPoint(area.x(), y), wide, high)
            y += high + self._row_gap
        margins = self.contentsMargins()
        end = y - self._row_gap if y > area.y() else y
        return end - rect.y() + margins.bottom()

    def _lines(self, width: int) -> list[list[QLayoutItem]]:
        lines: list[list[QLayoutItem]] = []
        used = 0
        for item in self._shown():
            wide = min(_wanted(item).width(), width)
            if not lines or used + self.spacing() + wide > width:
                lines.append([item])
                used = wide
            else:
                lines[-1].append(item)
                used += self.spacing() + wide
        return lines

    def _shares(self, line: list[QLayoutItem], width: int) -> list[int]:
        wide = [min(_wanted(item).width(), width) for item in line]
        left = max(width - sum(wide) - self.spacing() * (len(line) - 1), 0)
        growing = [at for at, item in enumerate(line) if _grows(item)]
        for at in growing:
            wide[at] += left // len(growing)
        return wide

    def _place(self, line: list[QLayoutItem], start: QPoint, wide: list[int], high: int) -> None:
        x = start.x()
        for item, share in zip(line, wide, strict=True):
            tall = high if _grows(item) else min(_height(item, share), high)
            item.setGeometry(QRect(x, start.y() + (high - tall) // 2, share, tall))
            x += share + self.spacing()


def _wanted(item: QLayoutItem) -> QSize:
    return item.sizeHint().expandedTo(item.minimumSize())


def _height(item: QLayoutItem, width: int) -> int:
    if item.hasHeightForWidth():
        return item.heightForWidth(width)
    return _wanted(item).height()


def _grows(item: QLayoutItem) -> bool:
    return bool(item.expandingDirections() & Qt.Orientation.Horizontal)


def growing(widget: QWidget) -> QWidget:
    """Let a widget take what is left of its line; gives the widget."""
    widget.setSizePolicy(QSizePolicy.Policy.Expanding, widget.sizePolicy().verticalPolicy())
    return widget
