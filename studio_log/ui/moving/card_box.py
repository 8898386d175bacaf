"""Times that were written on a card by hand, entered row by row on one page."""

from datetime import datetime
from typing import Final

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QGridLayout,
    QPushButton,
    QVBoxLayout,
    QWidget,
)
from typing_extensions import override

from studio_log.domain.card_text import card_words
from studio_log.domain.errors import Refusal
from studio_log.domain.moment_text import MomentReading
from studio_log.language.region import region
from studio_log.language.words import tr, tr_later
from studio_log.services.card_times import CardRow, CardSaid, TakeCard, TryCard
from studio_log.services.commands import Outcome
from studio_log.services.questions import LotSheet, StepLine
from studio_log.ui.bridge import Bridge, Doubt
from studio_log.ui.widgets.moment_line import MomentLine
from studio_log.ui.widgets.parts import Words, em, scrolled
from studio_log.ui.widgets.understood import Understood

ABOUT: Final = tr_later(
    "Type what stands in the frames, as 9/6 20:15 or 09062015. A time alone is the first one after "
    "the time above it. Rows that stay blank are left as they are."
)
_TONES: Final = {"good": "good_ink", "doubt": "ochre_ink", "fault": "danger_ink"}


class CardMoment(MomentLine):
    """A moment as a card has it; a time alone follows the moment above."""

    def __init__(self, bridge: Bridge, name: str, above: "CardMoment | None") -> None:
        self._above = above
        self._bridge = bridge
        super().__init__(bridge, name=name, blank=" ")
        self.line.setPlaceholderText(tr("6/9 20:15") if region().month_first else tr("9/6 20:15"))

    @property
    def known(self) -> datetime | None:
        """The moment of this line, else of the nearest one above that has one."""
        if self.at is not None:
            return self.at
        return self._above.known if self._above is not None else None

    @override
    def _read_moment(self, text: str) -> Understood[MomentReading]:
        after = self._above.known if self._above is not None else None
        try:
            said = card_words(text, now=self._bridge.now(), zone=self._bridge.zone(), after=after,
                              month_first=region().month_first)  # fmt: skip
        except Refusal as refusal:
            return Understood(fault=str(refusal))
        return super()._read_moment(said)


class CardBox(QDialog):
    """Asks for the times of every step that is open, and writes them down as one act."""

    def __init__(self, bridge: Bridge, sheet: LotSheet, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bridge = bridge
        self._code = sheet.code
        self._doubts = False
        self.lines: dict[int, tuple[CardMoment | None, CardMoment | None]] = {}
        self.said: dict[int, Words] = {}
        self.setWindowTitle(tr("Times from the card of {code}", code=sheet.code))
        self._grid = QGridLayout()
        self._fill(sheet)
        self._lay_out()
        self._soon = QTimer(self, singleShot=True, interval=200)
        self._soon.timeout.connect(self._try)
        self.resize(820, 620)
        first = next((one for pair in self.lines.values() for one in pair if one), None)
        if first is not None:
            first.setFocus()

    def _fill(self, sheet: LotSheet) -> None:
        heads = ("", tr("Step"), tr("Begun"), tr("Ended"))
        for column, head in enumerate(heads):
            self._grid.addWidget(Words(head, bold=True), 0, column)
        above: CardMoment | None = None
        rows = [line for line in sheet.steps
                if line.state not in {"done", "skipped"} and line.kind != "cure"]  # fmt: skip
        for row, line in enumerate(rows, 1):
            above = self._add(2 * row - 1, line, above)
        for column in (1, 2, 3):
            self._grid.setColumnStretch(column, 1)

    def _add(self, row: int, line: StepLine, above: CardMoment | None) -> CardMoment | None:
        begun: CardMoment | None = None
        self._grid.addWidget(Words(str(line.order)), row, 0)
        self._grid.addWidget(Words(line.title), row, 1)
        if line.start is None:
            begun = CardMoment(self._bridge, tr("{title}, begun", title=line.title), above)
            self._grid.addWidget(begun, row, 2)
        else:
            self._grid.addWidget(Words(line.actual.split(" → ")[0], tone="soft"), row, 2)
        ended = CardMoment(self._bridge, tr("{title}, ended", title=line.title), begun or above)
        self._grid.addWidget(ended, row, 3)
        said = self.said[line.number] = Words("", size="small")
        said.hide()
        self._grid.addWidget(said, row + 1, 1, 1, 3)
        for one in (begun, ended):
            if one is not None:
                one.setMinimumWidth(em(self, 8))
                one.changed.connect(self._changed)
        self.lines[line.number] = (begun, ended)
        return ended

    def _lay_out(self) -> None:
        self.whole_said = Words()
        buttons = QDialogButtonBox(self)
        role = QDialogButtonBox.ButtonRole
        self.write_button = QPushButton(tr("&Write down"), self)
        self.write_button.setEnabled(False)
        self.close_button = QPushButton(tr("&Close"), self)
        buttons.addButton(self.write_button, role.ActionRole)
        buttons.addButton(self.close_button, role.RejectRole)
        # Enter in a field would press a button that nobody looked at.
        for button in (self.write_button, self.close_button):
            button.setAutoDefault(False)
        self.write_button.clicked.connect(self._write)
        self.close_button.clicked.connect(self.reject)
        page = QWidget()
        column = QVBoxLayout(page)
        column.addLayout(self._grid)
        column.addStretch(1)
        whole = QVBoxLayout(self)
        whole.addWidget(Words(tr(ABOUT), tone="soft"))
        whole.addWidget(scrolled(page, name=tr("Steps of the card")), 1)
        whole.addWidget(self.whole_said)
        whole.addWidget(buttons)

    def _rows(self) -> tuple[CardRow, ...]:
        """Give the rows in which something is typed."""
        rows = (
            CardRow(number, begun.at if begun else None, ended.at if ended else None)
            for number, (begun, ended) in self.lines.items()
        )
        return tuple(row for row in rows if row.begun is not None or row.ended is not None)

    def _all_read(self) -> bool:
        return all(line is None or line.ok for pair in self.lines.values() for line in pair)

    def _changed(self) -> None:
        self.write_button.setEnabled(False)
        self._soon.start()

    def _try(self) -> None:
        self._bridge.ask(TryCard(self._code, self._rows()), self._show, failed=self._failed)

    def _show(self, answer: tuple[CardSaid, ...]) -> None:
        found = {one.step: one for one in answer}
        for number, words in self.said.items():
            one = found.get(number)
            words.set_tone(_TONES[one.kind] if one else "soft")  # type: ignore[arg-type]
            words.show_words(one.words if one else "")
        kinds = {one.kind for one in answer}
        self._doubts = "doubt" in kinds
        self.write_button.setText(tr("&Write down all the same") if self._doubts else
                                  tr("&Write down"))  # fmt: skip
        self.write_button.setEnabled(bool(answer) and "fault" not in kinds and self._all_read())

    def _write(self) -> None:
        command = TakeCard(self._code, self._rows(), sure=self._doubts)
        self.write_button.setEnabled(False)
        self._bridge.do(command, self._written, failed=self._failed, asked=self._asked)

    def _written(self, _outcome: Outcome) -> None:
        self.accept()

    def _asked(self, doubt: Doubt) -> None:
        self._failed(doubt.words)
        self._try()

    def _failed(self, words: str) -> None:
        self.whole_said.setText(words)
