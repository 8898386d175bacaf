"""The form that joins two lots: which other one, and what will become of both beforehand."""

from typing import Final

from PySide6.QtCore import QSize, Qt, QTimer, Signal
from PySide6.QtWidgets import (
    QDialog,
    QFormLayout,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QVBoxLayout,
    QWidget,
)

from studio_log.language.words import tr, tr_later
from studio_log.services.commands import Outcome
from studio_log.services.joins import JoinFor, JoinLots, JoinOffer, JoinSeen
from studio_log.ui.bridge import Bridge
from studio_log.ui.errors import MessageBar
from studio_log.ui.widgets.answers import Answers
from studio_log.ui.widgets.parts import Words, em, scrolled

CODE: Final = int(Qt.ItemDataRole.UserRole)
ROOM: Final = 20
"""Pixels above and below the two lines of a lot, its focus included."""
TYPING_MS: Final = 250
MOST_LINES: Final = 4
"""So many lots are seen at once; more of them scroll."""
INTRO: Final = tr_later("A new lot takes the pieces of both and carries on. Both codes end in it.")
ALONE: Final = tr_later(
    "No other lot follows this method and stands at the same step now. Type a code to see what "
    "keeps it apart."
)
CHOOSE: Final = tr_later("What will become of them stands here once a lot is chosen.")
NO_LOT: Final = tr_later("Choose the lot that joins it, or type its code.")


class JoinBox(QDialog):
    """Nothing is written before it was seen; what cannot be is said in the form itself."""

    made = Signal(str)
    """Code of the joined lot."""

    def __init__(self, bridge: Bridge, offer: JoinOffer, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Join lots"))
        self.setModal(True)
        self._bridge = bridge
        self._offer = offer
        self._seen = JoinSeen()
        self._asked = ""
        self.lots = QListWidget()
        self.lots.setAccessibleName(tr("Lots that can join it"))
        self.code = QLineEdit()
        self.code.setMaxLength(20)
        self.code.setPlaceholderText("26-031")
        self.name = QLineEdit(offer.name)
        self.name.setMaxLength(200)
        self.becomes = Words(tr(CHOOSE), tone="soft")
        self.doubts = Words(tone="ochre_ink")
        self.refusal = Words(tone="danger_ink")
        self.message = MessageBar(bridge)
        self.buttons = Answers(tr("&Join them"))
        self.join, self.leave = self.buttons.do, self.buttons.leave
        self._soon = QTimer(self, singleShot=True, interval=TYPING_MS)
        self._settled = QTimer(self, singleShot=True, interval=0)
        self._lay_out()
        self._fill()
        self._connect()

    @property
    def other(self) -> str:
        """The code of the other lot as typed or chosen."""
        return self.code.text().strip()

    def submit(self) -> None:
        """Join them as it was shown; a doubt that was read is answered by the button itself."""
        if not self.other or self._asked != self.other:
            self._soon.stop()
            self._look()
            return
        if self._seen.refusal:
            self.code.setFocus(Qt.FocusReason.OtherFocusReason)
            return
        name = self.name.text().strip()
        if not name:
            self.refusal.show_words(tr("The joined lot needs a name."))
            self.name.setFocus(Qt.FocusReason.OtherFocusReason)
            return
        command = JoinLots((self._offer.code, self.other), name, sure=bool(self._seen.doubts))
        self.message.put_away()
        self._bridge.do(
            command, self._made, failed=self.message.refuse, asked=self.message.question
        )

    def _made(self, outcome: Outcome) -> None:
        self.made.emit(outcome.code)
        self.accept()

    def _connect(self) -> None:
        self.buttons.accepted.connect(self.submit)
        self.buttons.rejected.connect(self.reject)
        self.lots.currentItemChanged.connect(self._chosen)
        self.code.textChanged.connect(self._typed)
        self._soon.timeout.connect(self._look)
        self._settled.timeout.connect(self._bring_in_sight)

    def _chosen(self, item: QListWidgetItem | None) -> None:
        if item is not None:
            self.code.setText(str(item.data(CODE)))

    def _typed(self) -> None:
        self._soon.start()

    def _look(self) -> None:
        """Ask what would become of the two; an answer for a code left meanwhile is dropped."""
        self._asked = self.other
        if not self.other:
            self._show(JoinSeen(refusal="" if self.lots.count() else tr(ALONE)))
            self.refusal.show_words(tr(NO_LOT))
            return
        self._bridge.ask(JoinFor((self._offer.code, self.other)), self._show)

    def _show(self, seen: JoinSeen) -> None:
        self._seen = seen
        self.becomes.set_tone("ink" if seen.becomes else "soft")
        self.becomes.setText("\n".join(seen.becomes) or tr(CHOOSE))
        self.becomes.setVisible(not seen.refusal)
        self.doubts.show_words("\n".join(f"? {words}" for words in seen.doubts))
        self.refusal.show_words(seen.refusal)
        self.code.setAccessibleDescription(
            " ".join((*seen.becomes, *seen.doubts, seen.refusal)).strip()
        )
        self._settled.start()
        self.join.setText(tr("&Join them all the same") if seen.doubts else tr("&Join them"))

    def _bring_in_sight(self) -> None:
        """Scroll to what was found once its lines are laid out: nobody joins unread."""
        bar = self.area.verticalScrollBar()
        bar.setValue(bar.maximum() if self.other else 0)

    def _fill(self) -> None:
        for code, name, doing in self._offer.lots:
            item = QListWidgetItem(f"{code}  {name}\n{doing}")
            item.setData(CODE, code)
            item.setSizeHint(QSize(0, self._row))
            self.lots.addItem(item)
        self.lots.setVisible(self.lots.count() > 0)
        self.alone.setVisible(self.lots.count() == 0)
        self.lots.setFixedHeight(self._row * min(self.lots.count(), MOST_LINES) + 8)

    def _fields(self) -> QWidget:
        fields = QWidget()
        form = QFormLayout(fields)
        form.setContentsMargins(0, 0, 0, 0)
        form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapLongRows)
        form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
        for label, field in ((tr("&Other lot"), self.code), (tr("&Name"), self.name)):
            form.addRow(label, field)
            field.setAccessibleName(label.replace("&", ""))
        return fields

    def _lay_out(self) -> None:
        line = em(self)
        self._row = line * 2 + ROOM
        body, fields = QWidget(), self._fields()
        column = QVBoxLayout(body)
        column.setContentsMargins(20, 18, 20, 10)
        column.setSpacing(10)
        title = tr(
            "Join {code} {name} with another lot", code=self._offer.code, name=self._offer.name
        )
        self.lots.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.alone = Words(tr(ALONE), tone="soft")
        intro = tr(INTRO)
        for widget in (
            Words(title, size="large", bold=True),
            Words(f"{self._offer.doing}. {intro}", tone="soft"),
            self.lots,
            self.alone,
            fields,
            Words(tr("What becomes of them"), bold=True),
            self.becomes,
            self.doubts,
            self.refusal,
        ):
            column.addWidget(widget)
        column.addStretch()
        for words in (self.doubts, self.refusal):
            words.hide()
        foot = QVBoxLayout()
        foot.setContentsMargins(20, 6, 20, 14)
        foot.addWidget(self.buttons)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        self.area = scrolled(body, name=tr("Join lots"))
        whole.addWidget(self.area, 1)
        whole.addWidget(self.message)
        whole.addLayout(foot)
        room = self.screen().availableGeometry()
        self.resize(min(line * 32, room.width() - 40), min(line * 40, room.height() - 60))
