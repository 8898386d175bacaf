"""The few questions the window asks in a box of their own, behind one face.

Tests hand in written answers instead. None always means: leave everything as it was.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Literal, Protocol

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QLineEdit,
    QVBoxLayout,
    QWidget,
)
from typing_extensions import override

from studio_log.domain.day_text import Prefer
from studio_log.domain.methods import Method
from studio_log.domain.pieces import Piece
from studio_log.language.words import tr
from studio_log.ui.widgets.answers import Answers
from studio_log.ui.widgets.fitting_area import FittingArea
from studio_log.ui.widgets.last_values import LastValues
from studio_log.ui.widgets.moment_line import MomentLine, WallClock
from studio_log.ui.widgets.parts import Words, em
from studio_log.ui.widgets.piles import Piles
from studio_log.ui.widgets.readers import days, volume, weight
from studio_log.ui.widgets.understood import UnderstoodLine


@dataclass(frozen=True)
class LotChange:
    """What the dyer wants changed on a lot; None leaves it. Grams of dry cloth."""

    name: str | None = None
    place: str | None = None
    grams: float | None = None
    weighed: str | None = None
    cure_days: int | None = None
    vessel_litres: float | None = None
    vessel: str | None = None


@dataclass(frozen=True)
class SplitChoice:
    """Numbers of the pieces that leave, and the name of the lot they make."""

    pieces: tuple[int, ...]
    name: str


class Ask(Protocol):
    """Every question that has a box of its own."""

    def reason(self, parent: QWidget, title: str, words: str) -> str | None:
        """Ask for a reason; it may be empty."""
        ...

    def moment(self, parent: QWidget, title: str, prefer: Prefer) -> datetime | None:
        """Ask for a time; gives an aware UTC instant."""
        ...

    def split(self, parent: QWidget, pieces: Sequence[Piece], name: str) -> SplitChoice | None:
        """Ask which pieces leave a lot."""
        ...

    def method(self, parent: QWidget, methods: Sequence[Method]) -> str | None:
        """Ask for a method; gives its slug."""
        ...

    def lot_change(
        self, parent: QWidget, name: str, place: str, vessel: str = ""
    ) -> LotChange | None:
        """Ask for name, place and weight."""
        ...

    def tell(self, parent: QWidget, title: str, words: str) -> None:
        """Say something at length."""
        ...

    def closing(self, parent: QWidget, words: str) -> Literal["keep", "quit"] | None:
        """Say once that closing keeps reminding, and ask whether that is meant."""
        ...


class _Box(QDialog):
    """A small box: words, fields, and two buttons named by what they do."""

    def __init__(self, parent: QWidget, title: str, words: str, accept: str) -> None:
        super().__init__(parent)
        self.setWindowTitle(title)
        self.setMinimumWidth(em(self, 24))
        body = QWidget()
        self.column = column = QVBoxLayout(body)
        column.setContentsMargins(20, 18, 20, 0)
        column.setSpacing(12)
        if title:
            column.addWidget(Words(title, size="large", bold=True))
        if words:
            column.addWidget(Words(words, tone="soft"))
        self.fields = QFormLayout()
        self.fields.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapLongRows)
        self.fields.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
        column.addLayout(self.fields)
        self.fault = Words(tone="danger_ink")
        self.fault.hide()
        column.addStretch()
        self.buttons = Answers(accept)
        self.yes = self.buttons.do
        self.buttons.accepted.connect(self.take)
        self.buttons.rejected.connect(self.reject)
        self._stand(body, title or accept.replace("&", ""))

    def _stand(self, body: QWidget, name: str) -> None:
        """Put what is asked above what is said and the buttons, which stay seen."""
        foot = QVBoxLayout()
        foot.setContentsMargins(20, 10, 20, 16)
        foot.setSpacing(10)
        foot.addWidget(self.fault)
        foot.addWidget(self.buttons)
        self.area = FittingArea(body, name=name)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(self.area, 1)
        whole.addLayout(foot)

    def check(self) -> str:
        """Say what is wrong with the fields, "" where nothing is."""
        return ""

    def take(self) -> None:
        """Accept where the fields are right; else say what is wrong, and keep them."""
        words = self.check()
        self.fault.show_words(words)
        self.area.grow_soon()
        if not words:
            self.accept()

    def asked(self) -> bool:
        """Show it and wait; False where it was left."""
        return self.exec() == int(QDialog.DialogCode.Accepted)


class _MomentBox(_Box):
    def __init__(self, parent: QWidget, title: str, clock: WallClock, prefer: Prefer) -> None:
        super().__init__(parent, title, "", tr("&Take this time"))
        self.line = MomentLine(clock, name=tr("Time"), prefer=prefer)
        self.fields.addRow(self.line)

    @override
    def check(self) -> str:
        self.line.read_again()
        return self.line.fault


class _SplitBox(_Box):
    def __init__(self, parent: QWidget, pieces: Sequence[Piece], name: str) -> None:
        words = tr("The pieces that leave make a new lot with the same past.")
        super().__init__(parent, tr("Split the lot"), words, tr("&Split"))
        self.name = QLineEdit(name)
        self.name.setMaxLength(200)
        self.fields.addRow(tr("&Name of the new lot"), self.name)
        self.piles = Piles(pieces)
        self.column.insertWidget(self.column.count() - 1, self.piles, 1)
        self.piles.changed.connect(self.fault.hide)
        self.setMinimumWidth(em(self, 33))

    @property
    def chosen(self) -> tuple[int, ...]:
        return self.piles.leaving

    @override
    def check(self) -> str:
        if not self.chosen:
            return tr("Lay at least one piece on the pile that leaves.")
        if not self.piles.stays.count():
            return tr("At least one piece has to stay.")
        return "" if self.name.text().strip() else tr("The new lot needs a name.")


class _ChangeBox(_Box):
    def __init__(self, parent: QWidget, name: str, place: str, vessel: str) -> None:
        super().__init__(parent, tr("Change the lot"), "", tr("&Change"))
        self.name = QLineEdit(name)
        self.place = QLineEdit(place)
        self.places = LastValues(self.place, "place")
        self.weight = UnderstoodLine(
            weight, name=tr("Weight"), hint=tr("as it is — or 412 g, 14.5 oz"), slug="weight"
        )
        self.weighed = QComboBox()
        for words, value in ((tr("not said"), None), (tr("before scouring"), "before"),
                             (tr("after scouring"), "after")):  # fmt: skip
            self.weighed.addItem(words, value)
        self.cure = UnderstoodLine(
            days, name=tr("Cure"), hint=tr("as it is — or a number of days: 90"), slug="cure"
        )
        self.bucket = UnderstoodLine(
            volume, name=tr("Bucket"), hint=tr("as it is — or 10 L, 2.5 gal"), slug="bucket"
        )
        self.vessel = QLineEdit(vessel)
        self.vessel.setPlaceholderText(tr("blue tub, if lots share it"))
        self.vessels = LastValues(self.vessel, "vessel")
        for label, field in ((tr("&Name"), self.name), (tr("&Place"), self.place),
                             (tr("&Weight"), self.weight), (tr("W&eighed"), self.weighed),
                             (tr("&Cure"), self.cure), (tr("&Bucket"), self.bucket),
                             (tr("Bucket’s na&me"), self.vessel)):  # fmt: skip
            self.fields.addRow(label, field)
        self._before = (name, place, vessel)

    @property
    def change(self) -> LotChange:
        name, place = self.name.text().strip(), self.place.text().strip()
        vessel = self.vessel.text().strip()
        return LotChange(
            name if name != self._before[0] else None,
            place if place != self._before[1] else None,
            self.weight.value,
            self.weighed.currentData() if not self.weight.blank else None,
            self.cure.value,
            self.bucket.value,
            vessel if vessel != self._before[2] else None,
        )

    @override
    def check(self) -> str:
        if not self.name.text().strip():
            return tr("A lot needs a name.")
        lines = (self.weight, self.cure, self.bucket)
        wrong = next((line for line in lines if not line.ok), None)
        if wrong is not None:
            wrong.setFocus(Qt.FocusReason.OtherFocusReason)
            return tr(
                "One of the figures is not understood; it says why beneath. The rest is kept."
            )
        for last in (self.places, self.vessels, *lines):
            last.remember()
        return ""


class Dialogs:
    """Asks with boxes on the screen."""

    def __init__(self, clock: WallClock) -> None:
        self._clock = clock

    def reason(self, parent: QWidget, title: str, words: str) -> str | None:
        """Ask for a reason; it may be empty."""
        box = _Box(parent, title, words, tr("&Go on"))
        line = QLineEdit()
        line.setMaxLength(1000)
        last = LastValues(line, "reason")
        box.fields.addRow(tr("&Reason"), line)
        if not box.asked():
            return None
        last.remember()
        return line.text().strip()

    def moment(self, parent: QWidget, title: str, prefer: Prefer) -> datetime | None:
        """Ask for a time; blank means now."""
        box = _MomentBox(parent, title, self._clock, prefer)
        if not box.asked():
            return None
        return box.line.at or self._clock.now()

    def split(self, parent: QWidget, pieces: Sequence[Piece], name: str) -> SplitChoice | None:
        """Ask which pieces leave a lot."""
        box = _SplitBox(parent, pieces, name)
        return SplitChoice(box.chosen, box.name.text().strip()) if box.asked() else None

    def method(self, parent: QWidget, methods: Sequence[Method]) -> str | None:
        """Ask for a method."""
        box = _Box(
            parent, tr("Go on to a method"), tr("Its steps follow those of the lot."), tr("&Go on")
        )
        choice = QComboBox()
        for method in methods:
            choice.addItem(method.title, method.slug)
        box.fields.addRow(tr("&Method"), choice)
        return str(choice.currentData()) if methods and box.asked() else None

    def lot_change(
        self, parent: QWidget, name: str, place: str, vessel: str = ""
    ) -> LotChange | None:
        """Ask for name, place and weight."""
        box = _ChangeBox(parent, name, place, vessel)
        return box.change if box.asked() else None

    def tell(self, parent: QWidget, title: str, words: str) -> None:
        """Say something at length."""
        box = _Box(parent, title, words, tr("&Close"))
        box.buttons.buttons()[1].hide()
        box.asked()

    def closing(self, parent: QWidget, words: str) -> Literal["keep", "quit"] | None:
        """Say once that closing keeps reminding."""
        box = _Box(parent, tr("Studio Log keeps reminding"), words, tr("&Keep reminding"))
        leave = box.buttons.addButton(tr("&Quit"), QDialogButtonBox.ButtonRole.DestructiveRole)
        wants_quit: list[bool] = []

        def note_quit() -> None:
            wants_quit.append(True)
            box.accept()

        leave.clicked.connect(note_quit)
        if not box.asked():
            return None
        return "quit" if wants_quit else "keep"
