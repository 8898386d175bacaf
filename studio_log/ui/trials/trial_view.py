"""The chosen trial: what is next, its arms over time, its pieces, its report, its diary."""

from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QHeaderView,
    QSizePolicy,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from studio_log.domain.number_text import plain
from studio_log.language.calendar_words import date_words
from studio_log.language.region import region
from studio_log.language.words import tr, tr_later
from studio_log.services.trials import ArmLine, ArmMean, TrialPage, TrialReport, UnitLine
from studio_log.ui.kept.act_buttons import ActButtons, ActRow
from studio_log.ui.trials.plot import TrialPlotView
from studio_log.ui.widgets.parts import Words, em

ACTS: Final[tuple[ActRow, ...]] = (
    ("read", tr_later("&Read blind…"), "primary"),
    ("done", tr_later("An arm is &done…"), "plain"),
    ("unveil", tr_later("Un&veil"), "plain"),
    ("save", tr_later("Sa&ve the report…"), "plain"),
    ("tags", tr_later("Print &tags…"), "quiet"),
    ("lot", tr_later("&Lot of pieces…"), "quiet"),
    ("swatch", tr_later("&Swatch of a piece…"), "quiet"),
    ("remark", tr_later("Re&mark…"), "quiet"),
    ("change", tr_later("C&hange…"), "quiet"),
    ("end", tr_later("It is over"), "quiet"),
    ("go_on", tr_later("It goes on"), "quiet"),
)
ARM_HEADS: Final = (
    tr_later("Arm"), tr_later("Beans"), tr_later("Dyeing"), tr_later("State"), tr_later("Lots"),
    tr_later("Tags, in the order of dipping"),
)  # fmt: skip
UNIT_HEADS: Final = (
    tr_later("Tag"), tr_later("Read"), tr_later("Dip"), tr_later("Arm"), tr_later("Batch"),
    tr_later("Age"), tr_later("Lot, swatch"),
)  # fmt: skip
MEAN_HEADS: Final = (
    tr_later("Arm"), tr_later("Pieces"), tr_later("Mean"), tr_later("Spread"),
    tr_later("To the control"), tr_later("95 % interval"), tr_later("It says"),
)  # fmt: skip
MOST_ROWS: Final = 9
"""Rows of the pieces that are seen at once; the table scrolls."""
MOST_LINES: Final = 100


class TrialView(QWidget):
    """Shows a page that the studio answered; acts are wished for by their slug."""

    act_wanted = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.title = Words(size="title", bold=True)
        self.next = Words(size="large")
        self.facts = Words(tone="soft")
        self.acts = ActButtons(ACTS, self)
        self.buttons = self.acts.by_slug
        self.arms = table(ARM_HEADS, tr("Arms"))
        self.units_head = Words(size="large", bold=True)
        self.units = table(UNIT_HEADS, tr("Pieces in the order of reading"))
        self.report_head = Words(tr("Report"), size="large", bold=True)
        self.answer = Words(size="large")
        self.plot = TrialPlotView()
        self.report = Words()
        self.means = table(MEAN_HEADS, tr("Arms against the control"))
        self.diary_head = Words(tr("Diary"), size="large", bold=True)
        self.diary = Words()
        self._lay_out()
        self.acts.wanted.connect(self.act_wanted)

    def show_page(self, page: TrialPage) -> None:
        """Show a trial; while it is veiled only its tags."""
        line = page.line
        self.title.setText(f"{line.code}  {line.question}")
        self.next.setText(tr("Next: {next}", next=line.next))
        self.facts.setText(" · ".join(page.facts))
        unveiled = line.unveiled or not line.read
        shown = {
            "read": page.left > 0, "unveil": page.can_unveil,
            "save": unveiled and any(one.value is not None for one in page.units),
            "done": not all(one.dyed for one in page.arms),
            "end": not line.ended, "go_on": line.ended,
        }  # fmt: skip
        for slug, made in self.buttons.items():
            made.setVisible(shown.get(slug, True))
        fill(self.arms, [_arm_row(one) for one in page.arms], len(page.arms))
        self.arms.setColumnHidden(len(ARM_HEADS) - 1, line.veiled)
        self.units_head.setText(
            tr("Pieces, veiled") if line.veiled else tr("Pieces in the order of reading")
        )
        fill(self.units, [_unit_row(one) for one in page.units], MOST_ROWS)
        for column in range(2, len(UNIT_HEADS)):
            self.units.setColumnHidden(column, line.veiled)
        self.diary.setText(
            "\n".join(f"{when}   {words}" for _, when, words in page.history[:MOST_LINES])
        )

    def show_report(self, report: TrialReport | None) -> None:
        """Show what it says, with its drawing; None hides it while it is veiled."""
        self.report_head.setVisible(report is not None)
        self.answer.show_words(report.words[0] if report is not None else "")
        self.report.show_words("\n".join(report.words[1:]) if report is not None else "")
        self.plot.show_plot(report.plot if report is not None else None)
        rows = [_mean_row(one) for one in report.means] if report is not None else []
        self.means.setVisible(bool(rows))
        fill(self.means, rows, len(rows))

    def _lay_out(self) -> None:
        card = QFrame()
        card.setProperty("card", "indigo")
        inner = QVBoxLayout(card)
        inner.setContentsMargins(14, 10, 14, 10)
        inner.setSpacing(4)
        inner.addWidget(self.next)
        inner.addWidget(self.facts)
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 2, 12, 8)
        column.setSpacing(10)
        column.addWidget(self.title)
        column.addWidget(card)
        column.addLayout(self.acts.layout)
        parts: tuple[QWidget, ...] = (
            self.report_head, self.answer, self.plot, self.report, self.means, self.arms,
            self.units_head, self.units, self.diary_head, self.diary,
        )  # fmt: skip
        for part in parts:
            column.addWidget(part)
        column.addStretch(1)


def _arm_row(one: ArmLine) -> tuple[str, ...]:
    days = ", ".join(date_words(day, short=True, year=True) for day in one.dye_days)
    beans = date_words(one.soy_day, short=True, year=True) if one.soy_day is not None else ""
    named = tr("{arm} (control)", arm=one.words) if one.control else one.words
    return named, beans, days, one.state, ", ".join(one.lots), " ".join(one.tags)


def _mean_row(one: ArmMean) -> tuple[str, ...]:
    apart, interval, says = "", "", tr("control") if one.control else ""
    if one.difference is not None:
        apart = _two(one.difference.value)
        low, high = _two(one.difference.low), _two(one.difference.high)
        interval = tr("{low} to {high}", low=low, high=high)
        says = tr("clear") if one.clear else tr("no clear difference")
    spread = "" if one.sd is None else _two(one.sd)
    return one.words, str(one.count), _two(one.mean), spread, apart, interval, says


def _two(value: float) -> str:
    """Write a figure with its two decimals, so that a column stands alike."""
    return f"{value:.2f}".replace(".", region().decimal)


def _unit_row(one: UnitLine) -> tuple[str, ...]:
    age = "" if one.age_d is None else tr("{days} d", days=plain(one.age_d, 1))
    from_ = " · ".join(filter(None, (one.lot, one.swatch)))
    dip = "" if one.dip is None else str(one.dip)
    return one.tag, one.words, dip, one.arm, one.block, age, from_


def table(heads: tuple[str, ...], name: str) -> QTableWidget:
    """Give a table for reading: it scrolls by itself and is walked by the arrows."""
    made = QTableWidget(0, len(heads))
    made.setHorizontalHeaderLabels([tr(one) for one in heads])
    made.setAccessibleName(name)
    made.verticalHeader().hide()
    made.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
    made.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
    made.setTabKeyNavigation(False)
    made.setWordWrap(False)
    made.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
    made.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
    header = made.horizontalHeader()
    header.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
    header.setStretchLastSection(True)
    header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
    return made


def fill(into: QTableWidget, rows: list[tuple[str, ...]], seen: int) -> None:
    """Write rows into a table and make it so high that so many of them are seen."""
    into.setRowCount(len(rows))
    for at, row in enumerate(rows):
        for column, words in enumerate(row):
            item = QTableWidgetItem(words)
            item.setToolTip(words)
            head = into.model().headerData(column, Qt.Orientation.Horizontal)
            spoken = f"{head}: {words or '–'}"
            item.setData(Qt.ItemDataRole.AccessibleTextRole, spoken)
            into.setItem(at, column, item)
    into.resizeRowsToContents()
    high = sum(into.rowHeight(at) for at in range(min(len(rows), seen)))
    bar = into.horizontalScrollBar().sizeHint().height()
    into.setFixedHeight(high + into.horizontalHeader().sizeHint().height() + bar + em(into, 0.3))
