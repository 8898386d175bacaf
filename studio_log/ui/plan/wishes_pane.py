"""The left of the plan's page: goals, lots, hours and means, and what counts more."""

from collections.abc import Iterator
from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSlider, QSpinBox, QVBoxLayout, QWidget

from studio_log.domain.plan_wishes import PlanGoal, write_wishes
from studio_log.domain.vessel_text import write_vessels
from studio_log.language.words import counted, tr, tr_later
from studio_log.services.plan import PlanLine, PlanSetup
from studio_log.ui.bridge import Bridge
from studio_log.ui.plan import readers
from studio_log.ui.plan.flowing import Flowing
from studio_log.ui.plan.goal_words import goal_words, slow_text
from studio_log.ui.plan.milk_form import MilkForm, could_share, shared_words
from studio_log.ui.plan.wish_rows import WishRows
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.parts import Words, button, roomy
from studio_log.ui.widgets.understood import UnderstoodLine

WORTH: Final = (240.0, 96.0, 48.0, 24.0, 12.0, 6.0, 3.0, 1.0, 0.0)
"""Hours of one lot's waiting that a session saved is worth, from fewer visits to sooner ready."""
STEPS: Final = len(WORTH) - 1
NO_GOAL: Final = tr_later(
    "None: every lot is then ready as soon as it can be, in as few visits as can be."
)
NO_MILK: Final = tr_later("Every lot makes its own.")
NO_LOT: Final = tr_later("None beside those of the log.")
SLIDER: Final = tr_later("Fewer visits, or sooner ready")


class WishesPane(Flowing):
    """Shows what the plan is made of; says what the dyer changes."""

    changed = Signal(object)
    """Settings that are to be kept, by name."""
    goal_wanted = Signal(int)
    """A goal is to be changed; -1 for a new one."""
    lot_wanted = Signal()
    hours_wanted = Signal()

    def __init__(self, bridge: Bridge) -> None:
        super().__init__()
        self._bridge = bridge
        self._setup: PlanSetup | None = None
        self.milk_form: MilkForm | None = None
        self.goals = WishRows(tr("Goals"), tr("Add a &goal…"), tr(NO_GOAL), change=True)
        self.lots = WishRows(
            tr("Lots that are wanted"), tr("Add a lot that is &wanted…"), tr(NO_LOT)
        )
        self.milks = WishRows(tr("One milk for several lots"), tr("Shar&e a milk…"), tr(NO_MILK))
        self.hours = Words(tone="soft", size="small")
        self.edit_hours = button(tr("&Hours…"))
        self.vessels = UnderstoodLine(
            readers.vessels, name=tr("Buckets and pots"), hint=tr("2 buckets of 20 L; pot 40 L"),
            blank=tr("not said: nobody waits for a vessel"),
        )  # fmt: skip
        self.slow = UnderstoodLine(
            lambda text: readers.slow_days(text, bridge.now(), bridge.zone()),
            name=tr("Days of slow drying"), hint=tr("tomorrow 20 h; 3 Dec 24 h"),
            blank=tr("by the weather, if it is known"),
        )  # fmt: skip
        self.hands = QSpinBox()
        self.hands.setRange(1, 9)
        self.hands.setAccessibleName(tr("Pairs of hands that work at once"))
        roomy(self.hands)
        calm(self.hands)
        self.room = Words(tone="soft", size="small")
        self.slider = QSlider(Qt.Orientation.Horizontal)
        self.slider.setRange(0, STEPS)
        self.slider.setPageStep(1)
        self.slider.setTickPosition(QSlider.TickPosition.TicksBelow)
        self.slider.setAccessibleName(tr(SLIDER))
        self._lay_out()
        self._connect()

    def show_setup(self, setup: PlanSetup) -> None:
        """Show what the studio was asked for; a field that is being typed in is left alone."""
        self._setup = setup
        self.goals.show_rows([goal_words(one, setup.now, setup.zone) for one in setup.goals])
        self.lots.show_rows([_lot_words(one) for one in setup.lots if one.wanted])
        self.others.show_words(_others_words(setup))
        self.milks.show_rows([shared_words(one, setup.lots) for one in setup.shared])
        self.milks.add.setEnabled(could_share(setup))
        self.milks.setVisible(bool(setup.shared) or could_share(setup))
        self.hours.setText(tr("Open: {hours}.", hours=setup.hours_words))
        self.room.setText(_room_words(setup))
        for line, text in (
            (self.vessels, write_vessels(setup.vessels)),
            (self.slow, slow_text(setup.slow_days)),
        ):
            # What is not understood yet is not kept anywhere else.
            if line.ok and not line.line.hasFocus() and line.text() != text:
                line.setText(text)
        self.hands.blockSignals(True)
        self.hands.setValue(setup.problem["resources"]["hands"])
        self.hands.blockSignals(False)
        nearest = min(range(len(WORTH)), key=lambda at: abs(WORTH[at] - setup.visit_hours))
        self.slider.blockSignals(True)
        self.slider.setValue(nearest)
        self.slider.blockSignals(False)

    def with_goal(self, number: int, goal: PlanGoal) -> None:
        """Take in a new goal, or another one in the place of an old."""
        goals = list(self._setup.goals) if self._setup is not None else []
        if 0 <= number < len(goals):
            goals[number] = goal
        else:
            goals.append(goal)
        self.changed.emit({"plan_goals": write_wishes(tuple(goals))})

    def open_milk(self) -> None:
        """Open the form of one milk for several lots."""
        setup = self._setup
        if setup is None:
            return
        self.milk_form = form = MilkForm(setup, self)
        form.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        form.accepted.connect(
            lambda: self.changed.emit({"plan_milks": write_wishes((*setup.shared, form.shared))})
        )
        form.open()

    def _take_milk_out(self, number: int) -> None:
        if self._setup is not None:
            left = tuple(one for at, one in enumerate(self._setup.shared) if at != number)
            self.changed.emit({"plan_milks": write_wishes(left)})

    def _take_goal_out(self, number: int) -> None:
        if self._setup is not None:
            left = tuple(one for at, one in enumerate(self._setup.goals) if at != number)
            self.changed.emit({"plan_goals": write_wishes(left)})

    def _take_lot_out(self, number: int) -> None:
        if self._setup is not None:
            name = [one.code for one in self._setup.lots if one.wanted][number]
            left = tuple(one for one in self._setup.wanted if one.name != name)
            self.changed.emit({"plan_wanted": write_wishes(left)})

    def _keep_vessels(self) -> None:
        if self.vessels.ok and self._setup is not None:
            text = write_vessels(self.vessels.value or ())
            if text != write_vessels(self._setup.vessels):
                self.changed.emit({"vessels": text})

    def _keep_slow(self) -> None:
        if self.slow.ok and self._setup is not None:
            days = self.slow.value or ()
            if days != self._setup.slow_days:
                self.changed.emit({"plan_slow_days": write_wishes(days)})

    def _keep_hands(self, count: int) -> None:
        self.changed.emit({"hands": count})

    def _slid(self, place: int) -> None:
        self.changed.emit({"plan_visit_hours": WORTH[place]})

    def _lay_out(self) -> None:
        self.others = Words(tone="soft", size="small")
        column = QVBoxLayout(self)
        column.setContentsMargins(2, 0, 12, 0)
        column.setSpacing(8)
        head = Words(tr("Hours and means"), bold=True)
        wishes = (*self._weighing(), self.goals, self.lots, self.others, self.milks)
        means = (head, self.hours, _left(self.edit_hours), *self._fields(), self.room)
        for widget in (*wishes, *means):
            column.addWidget(widget)
        column.addStretch(1)

    def _fields(self) -> Iterator[QWidget]:
        for words, field in (
            (tr("&Buckets and pots"), self.vessels),
            (tr("Days of s&low drying"), self.slow),
        ):
            label = QLabel(words)
            label.setBuddy(field.line)
            yield from (label, field)
        label = QLabel(tr("Pairs of h&ands"))
        label.setBuddy(self.hands)
        yield from (label, _left(self.hands))

    def _weighing(self) -> Iterator[QWidget]:
        label = QLabel(tr("What counts &more"))
        label.setBuddy(self.slider)
        ends = QWidget()
        row = QHBoxLayout(ends)
        row.setContentsMargins(0, 0, 0, 0)
        few, soon = (
            Words(words, tone="soft", size="small")
            for words in (tr("fewer visits"), tr("sooner ready"))
        )
        soon.setAlignment(Qt.AlignmentFlag.AlignRight)
        row.addWidget(few)
        row.addWidget(soon)
        yield from (label, self.slider, ends)

    def _connect(self) -> None:
        self.goals.added.connect(lambda: self.goal_wanted.emit(-1))
        self.goals.changed.connect(self.goal_wanted)
        self.goals.removed.connect(self._take_goal_out)
        self.lots.added.connect(self.lot_wanted)
        self.lots.removed.connect(self._take_lot_out)
        self.milks.added.connect(self.open_milk)
        self.milks.removed.connect(self._take_milk_out)
        self.edit_hours.clicked.connect(self.hours_wanted)
        self.vessels.line.editingFinished.connect(self._keep_vessels)
        self.slow.line.editingFinished.connect(self._keep_slow)
        self.hands.valueChanged.connect(self._keep_hands)
        self.slider.valueChanged.connect(self._slid)


def _left(widget: QWidget) -> QWidget:
    """Keep a button as wide as its words, at the left."""
    row = QWidget()
    line = QHBoxLayout(row)
    line.setContentsMargins(0, 0, 0, 0)
    line.addWidget(widget)
    line.addStretch(1)
    return row


def _lot_words(line: PlanLine) -> str:
    pieces = counted(line.pieces, tr_later("{n} piece"), tr_later("{n} pieces"))
    return f"{line.name} · {pieces} · {line.doing}"


def _others_words(setup: PlanSetup) -> str:
    """Say how many lots of the log are planned, follow a plan already, and only serve goals."""
    own = [one for one in setup.lots if not one.wanted]
    counts = (
        (sum(one.open for one in own), tr_later("{n} lot of the log is to be planned."),
         tr_later("{n} lots of the log are to be planned.")),
        (sum(one.open and one.follows for one in own), tr_later("{n} of them follows its plan."),
         tr_later("{n} of them follow their plans.")),
        (sum(not one.open for one in own), tr_later("{n} more cures or is ready: it serves goals."),
         tr_later("{n} more cure or are ready: they serve goals.")),
    )  # fmt: skip
    return " ".join(counted(count, one, many) for count, one, many in counts if count)


def _room_words(setup: PlanSetup) -> str:
    means = setup.problem["resources"]
    line = (
        tr("{metres:g} m of line", metres=means["line_m"])
        if means["line_m"]
        else tr("line without limit")
    )
    burners = (
        counted(means["burners"], tr_later("{n} burner"), tr_later("{n} burners"))
        if means["burners"]
        else tr("burners without limit")
    )
    return tr("{line}, {burners}: change them in the settings.", line=line, burners=burners)
