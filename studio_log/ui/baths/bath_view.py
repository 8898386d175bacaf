"""The chosen bath: its state, what it should measure, what was done, the lots that used it."""

from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QGridLayout, QVBoxLayout, QWidget

from studio_log.language.words import tr, tr_later
from studio_log.services.baths import BathPage, DiaryLine
from studio_log.ui.baths.bath_forms import FORMS
from studio_log.ui.kept.act_buttons import ActButtons, ActRow
from studio_log.ui.widgets.parts import ButtonKind, Words, emptied

MOST_LINES: Final = 200
"""Lines of the diary that are shown; the rest is counted."""

LOOK: Final[dict[str, ButtonKind]] = {"use": "primary", "note": "quiet", "set": "quiet"}
ACTS: Final[tuple[ActRow, ...]] = (
    *((form.slug, form.button, LOOK.get(form.slug, "plain")) for form in FORMS),
    ("withdraw", tr_later("&Withdraw the plan"), "quiet"),
    ("finish", tr_later("F&inished"), "quiet"),
    ("reopen", tr_later("&Not finished after all"), "plain"),
)


class BathView(QWidget):
    """Shows a `BathPage`; an act is wanted by a button, never done here."""

    act_wanted = Signal(str)
    """Slug of a form, or "finish", "reopen", "withdraw"."""

    def __init__(self) -> None:
        super().__init__()
        self.title = Words(size="title", bold=True)
        self.state = Words(tone="soft")
        self.urgent = Words(tone="ochre_ink", bold=True)
        self.warnings = Words(tone="danger_ink")
        self.facts = Words()
        self.lots = Words()
        self.cautions = Words(tone="soft", size="small")
        self.diary_head = Words(tr("Diary"), size="large", bold=True)
        self.acts = ActButtons(ACTS, self)
        self.buttons = self.acts.by_slug
        self._diary = QGridLayout()
        self._lay_out()
        self.acts.wanted.connect(self.act_wanted)

    def show_page(self, page: BathPage) -> None:
        """Show this bath."""
        line = page.line
        self.title.setText(f"{line.code} {line.name}")
        self.state.setText(
            line.words if line.name == line.kind_words else f"{line.kind_words} · {line.words}"
        )
        urgent = f"{line.urgent[:1].upper()}{line.urgent[1:]}." if line.urgent else ""
        self.urgent.show_words(urgent)
        self.warnings.show_words("\n".join(page.warnings))
        self.facts.show_words("\n".join(page.facts))
        used = ", ".join(f"{code} {name}".strip() for code, name in page.lots)
        self.lots.show_words(tr("Used by {lots}.", lots=used) if used else "")
        said = " · ".join(page.cautions)
        self.cautions.show_words(tr("Care: {said}.", said=said) if said else "")
        for form in FORMS:
            self.buttons[form.slug].setVisible(form.offered(page))
        self.buttons["withdraw"].setVisible(line.planned is not None and not line.finished)
        self.buttons["finish"].setVisible(not line.finished)
        self.buttons["reopen"].setVisible(line.finished)
        self.acts.layout.invalidate()
        self._show_diary(page.diary)

    def told(self) -> list[str]:
        """Give the lines of the diary as they are shown."""
        rows = range(self._diary.rowCount())
        items = (self._diary.itemAtPosition(row, 1) for row in rows)
        shown = (item.widget() for item in items if item is not None)
        return [words.text() for words in shown if isinstance(words, Words)]

    def _lay_out(self) -> None:
        card = QFrame()
        card.setProperty("card", "indigo")
        inner = QVBoxLayout(card)
        inner.setContentsMargins(14, 10, 14, 10)
        inner.setSpacing(4)
        for words in (self.urgent, self.warnings, self.facts, self.lots):
            inner.addWidget(words)
        self._diary.setHorizontalSpacing(16)
        self._diary.setVerticalSpacing(6)
        self._diary.setColumnStretch(1, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 2, 12, 8)
        column.setSpacing(10)
        for part in (self.title, self.state, card):
            column.addWidget(part)
        column.addLayout(self.acts.layout)
        column.addWidget(self.diary_head)
        column.addLayout(self._diary)
        column.addWidget(self.cautions)
        column.addStretch(1)

    def _show_diary(self, diary: tuple[DiaryLine, ...]) -> None:
        emptied(self._diary)
        top = Qt.AlignmentFlag.AlignTop
        for row, one in enumerate(diary[:MOST_LINES]):
            tone = "soft" if one.taken_back else "ink"
            when = Words(one.when, tone="soft")
            when.setWordWrap(False)
            words = f"{one.words} — {one.note}" if one.note else one.words
            if one.taken_back:
                words = tr("{words} (taken back)", words=words)
            self._diary.addWidget(when, row, 0, top)
            self._diary.addWidget(Words(words, tone=tone), row, 1)  # type: ignore[arg-type]
        rest = len(diary) - MOST_LINES
        if rest > 0:
            said = tr("… and {rest} earlier; `bath show` lists all.", rest=rest)
            self._diary.addWidget(Words(said, tone="soft"), MOST_LINES, 1)
