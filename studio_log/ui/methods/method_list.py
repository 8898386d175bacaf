"""The methods of the studio as a list, found by any word of their title, school and summary."""

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from studio_log.domain.methods import Method
from studio_log.language.words import tr, tr_later
from studio_log.ui.widgets.find_line import FindLine
from studio_log.ui.widgets.parts import Words, em

WORDS_ROLE = int(Qt.ItemDataRole.UserRole) + 1
"""Role under which a row gives all the words by which it is found."""
NONE = tr_later("No method has these words.")


class MethodList(QWidget):
    """A field and the rows that have its words; the one that is chosen stays chosen."""

    def __init__(self) -> None:
        super().__init__()
        self.list = QListWidget()
        self.list.setAccessibleName(tr("Methods"))
        self.list.setWordWrap(True)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.field = FindLine(tr("Find a method"), tr("Find a method"))
        self.none = Words(tr(NONE), tone="soft")
        self.none.hide()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        for widget in (self.field, self.none):
            column.addWidget(widget)
        column.addWidget(self.list, 1)
        self.setMaximumWidth(em(self, 15))
        self.field.textChanged.connect(self._find)
        self.field.down.connect(self._to_list)
        self.field.returnPressed.connect(self._to_list)

    @property
    def slug(self) -> str:
        """The method chosen; "" while there is none."""
        item = self.list.currentItem()
        return "" if self.list.currentRow() < 0 else str(item.data(Qt.ItemDataRole.UserRole))

    def show_methods(self, methods: Sequence[Method], chosen: str) -> None:
        """Show these; `chosen` is chosen where it is among them, else the first."""
        self.list.blockSignals(True)
        self.list.clear()
        for one in methods:
            version = tr("version {n}", n=one.version) if one.version > 1 else ""
            item = QListWidgetItem("\n".join(filter(None, (one.title, version))), self.list)
            item.setData(Qt.ItemDataRole.UserRole, one.slug)
            item.setData(WORDS_ROLE, f"{one.title} {one.school} {one.summary}".casefold())
        self.list.blockSignals(False)
        slugs = [one.slug for one in methods]
        self.list.setCurrentRow(slugs.index(chosen) if chosen in slugs else 0)
        self._find(self.field.text())

    def _to_list(self) -> None:
        self.list.setFocus(Qt.FocusReason.TabFocusReason)

    def _find(self, typed: str) -> None:
        """Hide what has not every word; where the chosen one is hidden, the first is chosen."""
        wanted = typed.casefold().split()
        rows = [self.list.item(row) for row in range(self.list.count())]
        for item in rows:
            item.setHidden(not all(word in item.data(WORDS_ROLE) for word in wanted))
        shown = [row for row, item in enumerate(rows) if not item.isHidden()]
        self.none.setVisible(bool(rows) and not shown)
        if shown and self.list.currentRow() not in shown:
            self.list.setCurrentRow(shown[0])
