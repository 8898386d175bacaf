"""The box of one act on a bath: what was understood stands beside each field."""

from typing import Any, Final

from PySide6.QtCore import Qt, Slot
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QComboBox, QGridLayout, QLabel, QLineEdit, QWidget
from typing_extensions import override

from studio_log.domain.bath_kinds import KINDS
from studio_log.language.words import tr
from studio_log.present.words import litres
from studio_log.services.commands import Command
from studio_log.ui.baths.bath_fields import LONGEST, Field, Heard, Names, heard
from studio_log.ui.baths.bath_forms import BathForm
from studio_log.ui.bridge import Bridge
from studio_log.ui.kept.form_box import bare, offer_lots
from studio_log.ui.kept.sending_box import SendingBox
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.moment_line import MomentLine
from studio_log.ui.widgets.parts import Words, em

NARROW: Final = 34
"""Below so many line heights of width, each field stands below its label."""

TOP: Final = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop
MIDDLE: Final = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter


class FieldRow:
    """A label, a field, and what was understood of it or what may be typed."""

    def __init__(self, of: Field, typed: str, names: Names) -> None:
        self.of = of
        self._names = names
        self.line = _choice() if of.kind == "choice" else _line(of, typed, names)
        self.label = QLabel(tr(of.label))
        self.label.setBuddy(self.line)
        self.line.setAccessibleName(bare(of.label))
        self.heard = Words(tone="soft", size="small")

    def read(self, *, told: bool) -> Heard:
        """Read it and say what was understood; a blank that is needed only once `told`."""
        if isinstance(self.line, QComboBox):
            kind = KINDS[str(self.line.currentData())]
            self.heard.show_words(tr("Offered: {litres}", litres=litres(kind.litres)))
            return Heard(kind.slug)
        found = heard(self.of, self.line.text(), self._names)
        if found.fault and not told and not self.line.text().strip():
            found = Heard(None, "", fault=True)
        words = found.words or tr(self.of.says)
        tone = "danger_ink" if found.words and found.fault else "good_ink"
        self.heard.show_words(words)
        self.heard.set_tone(tone if found.words else "soft")  # type: ignore[arg-type]
        self.line.setAccessibleDescription(words)
        return found


class BathDialog(SendingBox):
    """Asks for what an act wants to know; what was understood stands beside each field."""

    def __init__(
        self,
        bridge: Bridge,
        form: BathForm,
        code: str,
        *,
        filled: dict[str, str] | None = None,
        names: Names | None = None,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(bridge, tr(form.accept), parent)
        self.setWindowTitle(f"{tr(form.title)} — {code}" if code else tr(form.title))
        self.form = form
        self._code = code
        self._told = False
        self._narrow: bool | None = None
        given = filled or {}
        self.rows = [FieldRow(one, given.get(one.slug, ""), names or {}) for one in form.fields]
        self.moment = self._moment_line()
        self._lay_out()
        self._connect()
        self.read()

    def row(self, slug: str) -> FieldRow:
        """Give the row of a field."""
        return next(one for one in self.rows if one.of.slug == slug)

    @Slot()
    def read(self) -> dict[str, Heard]:
        """Read every field and say beside it what was understood."""
        return {row.of.slug: row.read(told=self._told) for row in self.rows}

    @override
    def command(self) -> Command | None:
        self._told = True
        found = self.read()
        wrong = next((row for row in self.rows if found[row.of.slug].fault), None)
        if wrong is not None:
            wrong.line.setFocus(Qt.FocusReason.OtherFocusReason)
            return None
        values: dict[str, Any] = {slug: one.value for slug, one in found.items()}
        if self.moment is not None:
            ahead = self.form.moment == "next"
            if not self.stands(self.moment, tr("When"), needed=ahead):
                return None
            values["at"] = self.moment.at
        return self.form.command(self._code, values)

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._arrange(narrow=self.width() < em(self, NARROW))

    def _moment_line(self) -> MomentLine | None:
        if not self.form.moment:
            return None
        ahead = self.form.moment == "next"
        made = MomentLine(
            self._bridge,
            name=tr("When"),
            blank=tr("say when it is used next") if ahead else tr("blank means now"),
            prefer="next" if ahead else "past",
        )
        if ahead:
            made.line.setPlaceholderText(tr("tomorrow 9:00, 14:30"))
        return made

    def _connect(self) -> None:
        for row in self.rows:
            if isinstance(row.line, QComboBox):
                row.line.currentIndexChanged.connect(self.read)
            else:
                row.line.textChanged.connect(self.read)

    def _lay_out(self) -> None:
        inner = QWidget()
        self._grid = QGridLayout(inner)
        self._grid.setContentsMargins(2, 0, 8, 0)
        self._grid.setHorizontalSpacing(14)
        self._grid.setVerticalSpacing(4)
        self._when = QLabel(tr("W&hen"))
        if self.moment is not None:
            self._when.setBuddy(self.moment.line)
        self._arrange(narrow=False)
        lines = 3.8 * len(self.rows) + (4 if self.moment is not None else 0) + 10
        says = tr(self.form.says) if self.form.says else ""
        self.lay_out(tr(self.form.title), says, inner, lines, wide=44)

    def _arrange(self, *, narrow: bool) -> None:
        """Set label, field and words beside each other, or below one another."""
        if narrow is self._narrow:
            return
        self._narrow = narrow
        parts: list[tuple[QLabel, QWidget, QWidget | None]] = [
            (row.label, row.line, row.heard) for row in self.rows
        ]
        if self.moment is not None:
            # What is planned is the moment itself: it is asked for first.
            first = 0 if self.form.moment == "next" else len(parts)
            parts.insert(first, (self._when, self.moment, None))
        for at, (label, line, words) in enumerate(parts):
            self._place(label, at, (0, 0))
            top = line is self.moment and not narrow
            label.setAlignment(TOP if top else MIDDLE)
            label.setContentsMargins(0, em(self, 0.5) if top else 0, 0, 0)
            self._place(line, at, (1, 0) if narrow else (0, 1))
            if words is not None:
                self._place(words, at, (2, 0) if narrow else (1, 1))
            self._grid.setRowMinimumHeight(4 * at + 3, 6)
        self._grid.setColumnStretch(0, 1 if narrow else 0)
        self._grid.setColumnStretch(1, 0 if narrow else 1)
        self._grid.setRowStretch(4 * len(parts), 1)

    def _place(self, widget: QWidget, at: int, place: tuple[int, int]) -> None:
        self._grid.removeWidget(widget)
        self._grid.addWidget(widget, 4 * at + place[0], place[1])


def _line(of: Field, typed: str, names: Names) -> QLineEdit:
    line = QLineEdit(typed)
    line.setMaxLength(LONGEST if of.slug != "note" else 2_000)
    if of.kind == "lots":
        offer_lots(line, names)
    return line


def _choice() -> QComboBox:
    box = QComboBox()
    for kind in KINDS.values():
        title = tr(kind.title)
        box.addItem(f"{title[:1].upper()}{title[1:]}", kind.slug)
    calm(box)
    return box
