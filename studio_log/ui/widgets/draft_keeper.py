"""Keeps what stands half typed in some fields, so that no crash and no other step loses it."""

from collections.abc import Callable, Collection, Mapping
from datetime import datetime
from typing import Final

from PySide6.QtCore import QCoreApplication, QObject, QTimer
from PySide6.QtWidgets import QComboBox, QLineEdit, QPlainTextEdit

from studio_log.ui.typed import Draft, typed

STILL_MS: Final = 700
"""A draft is kept once nobody has typed for so long."""
Kept = QLineEdit | QPlainTextEdit | QComboBox


class DraftKeeper(QObject):
    """Watches fields by name. Only the fields that `count` make a draft at all."""

    def __init__(
        self,
        fields: Mapping[str, Kept],
        now: Callable[[], datetime],
        *,
        count: Collection[str],
        parent: QObject,
    ) -> None:
        super().__init__(parent)
        self._fields = fields
        self._now = now
        self._typed = typed()
        self._count = frozenset(count)
        self.key = ""
        self._filling = False
        self._still = QTimer(self, singleShot=True, interval=STILL_MS)
        self._still.timeout.connect(self.keep_now)
        for one in fields.values():
            if isinstance(one, QComboBox):
                one.currentIndexChanged.connect(self._changed)
            else:
                one.textChanged.connect(self._changed)
        app = QCoreApplication.instance()
        if app is not None:
            app.aboutToQuit.connect(self.keep_now)

    def turn_to(self, key: str) -> Draft | None:
        """Keep what stands here under its own key, then show what was left under another.

        Where nothing was left the fields become blank, save at the first key of all: what was
        typed before it was known belongs to it.
        """
        if key == self.key:
            return None
        first = not self.key
        self.keep_now()
        self.key = key
        draft = self._typed.draft(key)
        if draft is not None or not first:
            self._fill(draft.values if draft is not None else {})
        return draft

    def forget(self, key: str) -> None:
        """Drop what was kept: it was taken, or given up. The fields of this key become blank."""
        self._typed.drop_draft(key)
        if key == self.key:
            self._fill({})

    def keep_now(self) -> None:
        """Keep what stands here."""
        self._still.stop()
        if not self.key:
            return
        values = {name: text_of(one) for name, one in self._fields.items()}
        there = any(values[name].strip() for name in self._count)
        self._typed.keep_draft(self.key, values if there else {}, self._now())

    def _changed(self) -> None:
        if not self._filling:
            self._still.start()

    def _fill(self, values: Mapping[str, str]) -> None:
        """Put texts into the fields; lists keep their choice where none is named."""
        self._filling = True
        for name, one in self._fields.items():
            _put(one, values.get(name, ""))
        self._filling = False
        self._still.stop()


def text_of(one: Kept) -> str:
    """Give what stands in a field; of a list the value of its row."""
    if isinstance(one, QComboBox):
        chosen = one.currentData()
        return "" if chosen is None else str(chosen)
    return one.toPlainText() if isinstance(one, QPlainTextEdit) else one.text()


def _put(one: Kept, text: str) -> None:
    if isinstance(one, QComboBox):
        rows = [row for row in range(one.count()) if str(one.itemData(row)) == text]
        if rows:
            one.setCurrentIndex(rows[0])
    elif isinstance(one, QPlainTextEdit):
        one.setPlainText(text)
    else:
        one.setText(text)
