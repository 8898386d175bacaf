"""Which lots shall follow the plan: all, or those that are ticked."""

from collections.abc import Sequence

from PySide6.QtWidgets import (
    QCheckBox,
    QDialog,
    QVBoxLayout,
    QWidget,
)

from studio_log.language.words import tr
from studio_log.services.plan_means import is_kept
from studio_log.ui.plan.tick_list import TickList
from studio_log.ui.plan.what_if import Change, Tried
from studio_log.ui.widgets.answers import Answers
from studio_log.ui.widgets.parts import Words, em


class AcceptForm(QDialog):
    """Offers every lot of the plan, ticked; each with when it is needed first."""

    def __init__(
        self,
        lots: Sequence[tuple[str, str]],
        counts_on: Sequence[Tried],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Follow the plan"))
        self.setModal(True)
        self._changes = tuple(change for one in counts_on for change in one.changes)
        self.list = TickList(tr("Lots that shall follow the plan"))
        self.list.show_lots(lots, {code for code, _ in lots})
        self.keep = QCheckBox(tr("&Write that into the studio’s hours, means and goals"))
        self.keep.setChecked(is_kept(self._changes))
        self.keep.setVisible(is_kept(self._changes))
        self.buttons = Answers(tr("&Follow it"))
        self.take = self.buttons.do
        self.buttons.accepted.connect(self.accept)
        self.buttons.rejected.connect(self.reject)
        self.list.itemChanged.connect(self._changed)
        self._lay_out("; ".join(one.words for one in counts_on))
        self.resize(em(self, 36), em(self, 24))

    def _lay_out(self, counts_on: str) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 14, 16, 12)
        column.setSpacing(10)
        column.addWidget(
            Words(
                tr(
                    "Lots that follow the plan are told by their reminders when it is time. "
                    "What is wanted becomes a lot. Undo takes the plan back, and on a lot that lot "
                    "alone."
                )
            )
        )
        if counts_on:
            said = tr("This plan counts on: {changes}.", changes=counts_on)
            column.addWidget(Words(said, tone="ochre_ink"))
        column.addWidget(self.keep)
        column.addWidget(self.list, 1)
        column.addWidget(self.buttons)

    @property
    def codes(self) -> tuple[str, ...]:
        """The lots that are ticked."""
        return self.list.ticked

    @property
    def changes(self) -> tuple[Change, ...]:
        """What is to be written into the studio."""
        return self._changes if self.keep.isChecked() else ()

    def _changed(self) -> None:
        self.take.setEnabled(bool(self.codes))
