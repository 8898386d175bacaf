"""The small forms of a goal and of a lot that is wanted; nothing typed is lost by a refusal."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QDate, QLocale, Qt, QTime, Slot
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import (
    QComboBox,
    QDateEdit,
    QDialog,
    QFormLayout,
    QLineEdit,
    QPlainTextEdit,
    QSpinBox,
    QTimeEdit,
    QVBoxLayout,
    QWidget,
)
from typing_extensions import override

from studio_log.domain.errors import Refusal
from studio_log.domain.piece_text import read_piece
from studio_log.domain.plan_wishes import (
    LONGEST_NAME,
    LONGEST_PIECES,
    MOST_DAYS,
    MOST_PIECES,
    PlanGoal,
    WantedLot,
)
from studio_log.language.words import tr, tr_later
from studio_log.services.public_holidays import SPOKEN
from studio_log.ui.widgets.answers import Answers
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.month import month_ahead
from studio_log.ui.widgets.parts import Words, em, roomy

CURED: Final = 90
"""Days offered first, for an immersion; common practice, no source."""
BESIDE: Final = 60
"""Pixels of the screen that a form leaves."""
LONG_TITLE: Final = 38
"""Letters of a method’s title that are seen."""
PIECES_HINT: Final = tr_later("8 x linen napkins 42x42cm 175g/m2")


class SmallForm(QDialog):
    """What all forms share: rows, a message beneath, two buttons."""

    def __init__(self, title: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(title)
        self.setModal(True)
        self.fault = Words(tone="danger_ink", size="small")
        self.fault.hide()
        self.form = QFormLayout()
        self.form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapLongRows)
        self.form.setLabelAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        self.form.setHorizontalSpacing(14)
        self.form.setVerticalSpacing(10)
        self.buttons = Answers(tr("&Take it in"))
        self.keep = self.buttons.do
        self.buttons.accepted.connect(self.submit)
        self.buttons.rejected.connect(self.reject)

    def lay_out(self) -> None:
        """Put rows, message and buttons in place, once all rows are there."""
        whole = QVBoxLayout(self)
        whole.setContentsMargins(16, 14, 16, 12)
        whole.setSpacing(12)
        whole.addLayout(self.form)
        whole.addWidget(self.fault)
        whole.addStretch(1)
        whole.addWidget(self.buttons)
        self._fit()

    @override
    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self._fit()  # by now the letters are as large as they will be

    def _fit(self) -> None:
        """Be as wide as no row has to wrap, where there is room, and as high as that takes."""
        hint, room = self.sizeHint(), self.screen().availableGeometry().size()
        wide = min(max(em(self, 30), hint.width()), room.width() - BESIDE)
        whole = self.layout()
        high = max(hint.height(), whole.totalHeightForWidth(wide) if whole is not None else 0)
        self.resize(wide, min(high, room.height() - BESIDE))

    @Slot()
    def submit(self) -> None:
        """Close where all makes sense; else say what does not."""
        fault = self.first_fault()
        self.fault.show_words(fault)
        if not fault:
            self.accept()

    def first_fault(self) -> str:
        """Say what is amiss, "" where nothing is."""
        return ""


class WishForm(SmallForm):
    """A form of something that has a name of its own."""

    def __init__(self, title: str, taken: Sequence[str], parent: QWidget | None = None) -> None:
        super().__init__(title, parent)
        self._taken = frozenset(taken)
        self.name = QLineEdit()
        self.name.setMaxLength(LONGEST_NAME)

    @override
    def first_fault(self) -> str:
        """Say what is amiss, "" where nothing is."""
        name = self.typed_name
        if not name:
            self.name.setFocus()
            return tr("Give it a name, so that the plan can speak of it.")
        if name in self._taken:
            self.name.setFocus()
            return tr("{name} is there already. Choose another name.", name=name)
        return ""

    @property
    def typed_name(self) -> str:
        """The name, with single spaces."""
        return " ".join(self.name.text().split())


class GoalForm(WishForm):
    """So many pieces, cured so many days, by a day."""

    def __init__(
        self,
        today: QDate,
        taken: Sequence[str],
        goal: PlanGoal | None = None,
        parent: QWidget | None = None,
    ) -> None:
        title = tr("Goal") if goal is None else tr("Change the goal")
        super().__init__(title, taken, parent)
        self.name.setPlaceholderText(tr("class, market, order"))
        self._lots = goal.lots if goal is not None else ()
        self.pieces, self.cured = QSpinBox(), QSpinBox()
        self.pieces.setRange(1, MOST_PIECES)
        self.cured.setRange(0, MOST_DAYS)
        self.cured.setSuffix(tr(" days"))
        self.day, self.hour = QDateEdit(), QTimeEdit()
        self.day.setLocale(QLocale(tr(SPOKEN)))
        self.day.setCalendarPopup(True)
        self.day.setCalendarWidget(month_ahead(today))
        self.day.setDisplayFormat(tr("ddd d MMMM yyyy"))
        self.day.setMinimumDate(today)
        self.day.setCurrentSection(QDateEdit.Section.DaySection)  # the weekday follows from it
        self.hour.setDisplayFormat("HH:mm")
        for field in (self.pieces, self.cured, self.day, self.hour):
            roomy(field)
            calm(field)
        self._fill(today, goal)
        rows: tuple[tuple[str, QWidget], ...] = (
            (tr("&What for"), self.name),
            (tr("&Pieces"), self.pieces),
            (tr("&Cured"), self.cured),
            (tr("&By"), self.day),
            (tr("&At"), self.hour),
        )
        for label, row in rows:
            self.form.addRow(label, row)
        self.lay_out()

    def _fill(self, today: QDate, goal: PlanGoal | None) -> None:
        self.name.setText(goal.name if goal else "")
        self.pieces.setValue(goal.pieces if goal else 1)
        self.cured.setValue(goal.cured_days if goal else CURED)
        at = goal.at if goal else ""
        day = QDate.fromString(at[:10], "yyyy-MM-dd") if at else today.addDays(CURED + 30)
        self.day.setDate(day)
        self.hour.setTime(QTime.fromString(at[11:16], "HH:mm") if at else QTime(9, 0))

    @property
    def goal(self) -> PlanGoal:
        """What the form says."""
        at = f"{self.day.date().toString('yyyy-MM-dd')}T{self.hour.time().toString('HH:mm')}"
        return PlanGoal(self.typed_name, at, self.pieces.value(), self.cured.value(), self._lots)


class WantedForm(WishForm):
    """A lot that is not made yet: its method and its pieces."""

    def __init__(
        self,
        methods: Sequence[tuple[str, str]],
        taken: Sequence[str],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(tr("A lot that is wanted"), taken, parent)
        self.name.setPlaceholderText(tr("Class napkins"))
        self.method = QComboBox()
        for slug, title in methods:
            self.method.addItem(title, slug)
        soy = self.method.findData("soy-immersion-long")
        self.method.setCurrentIndex(max(soy, 0))
        self.method.setSizeAdjustPolicy(
            QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        )
        self.method.setMinimumContentsLength(LONG_TITLE)
        calm(self.method)
        self.pieces = QPlainTextEdit()
        self.pieces.setPlaceholderText(tr(PIECES_HINT))
        self.pieces.setTabChangesFocus(True)
        self.pieces.setFixedHeight(em(self.pieces, 4))
        self.understood = Words(tone="good_ink", size="small")
        self.understood.hide()
        self.form.addRow(tr("&Name"), self.name)
        self.form.addRow(tr("Metho&d"), self.method)
        self.form.addRow(tr("&Pieces, one line each"), self.pieces)
        self.form.addRow("", self.understood)
        self.pieces.textChanged.connect(self.read)
        self.lay_out()

    @Slot()
    def read(self) -> str:
        """Say what is understood of the pieces; gives what is amiss."""
        lines = [one for one in self.pieces.toPlainText().splitlines() if one.strip()]
        try:
            told = [read_piece(one).understood for one in lines]
        except Refusal as refusal:
            self.understood.set_tone("danger_ink")
            self.understood.show_words(str(refusal))
            return str(refusal)
        self.understood.set_tone("good_ink")
        self.understood.show_words("\n".join(told))
        return ""

    @override
    def first_fault(self) -> str:
        """Say what is amiss, "" where nothing is."""
        found = super().first_fault()
        if found:
            return found
        text = self.pieces.toPlainText()
        if not text.strip():
            self.pieces.setFocus()
            return tr("Say which pieces: so many, of what, how large and how heavy.")
        if len(text) > LONGEST_PIECES:
            return tr("These are too many lines. Make two lots of them.")
        return self.read()

    @property
    def wanted(self) -> WantedLot:
        """What the form says."""
        pieces = self.pieces.toPlainText().strip()
        return WantedLot(self.typed_name, str(self.method.currentData()), pieces)
