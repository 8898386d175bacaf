"""A small button under a field of several lines that offers the lines typed there before."""

from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu, QPlainTextEdit, QPushButton

from studio_log.language.words import tr
from studio_log.ui.theme.dress import dress_button
from studio_log.ui.typed import typed


class LinesBefore(QPushButton):
    """Adds a chosen line to the field; hidden while there is none."""

    def __init__(self, field: QPlainTextEdit, slug: str) -> None:
        super().__init__(tr("Typed &before"))
        self._field = field
        self._slug = slug
        dress_button(self, "quiet")
        self.setAutoDefault(False)
        self.menu_of_lines = QMenu(self)
        self.menu_of_lines.aboutToShow.connect(self._fill)
        self.setMenu(self.menu_of_lines)
        self.setVisible(bool(typed().last(slug)))

    def remember(self) -> None:
        """Keep every line of the field."""
        lines = [line for line in self._field.toPlainText().splitlines() if line.strip()]
        typed().note(self._slug, *reversed(lines))

    def _fill(self) -> None:
        self.menu_of_lines.clear()
        for line in typed().last(self._slug):
            act = self.menu_of_lines.addAction(line.replace("&", "&&"))
            act.setData(line)
            act.triggered.connect(self._add)

    def _add(self) -> None:
        act = self.sender()
        line = str(act.data()) if isinstance(act, QAction) else ""
        text = self._field.toPlainText().rstrip("\n")
        self._field.setPlainText(f"{text}\n{line}" if text.strip() else line)
        self._field.moveCursor(self._field.textCursor().MoveOperation.End)
        self._field.setFocus()
