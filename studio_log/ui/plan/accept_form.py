"""Which lots shall follow the plan: all, or those that are ticked."""

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QListWidget,
    QListWidgetItem,
    QVBoxLayout,
    QWidget,
)

from studio_log.language.words import tr
from studio_log.ui.theme.dress import dress_button
from studio_log.ui.widgets.parts import Words, em

CODE = Qt.ItemDataRole.UserRole


class AcceptForm(QDialog):
    """Offers every lot of the plan, ticked; each with when it is needed first."""

    def __init__(
        self,
        lots: Sequence[tuple[str, str]],
        counts_on: Sequence[str],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Follow the plan"))
        self.setModal(True)
        self.list = QListWidget()
        self.list.setAccessibleName(tr("Lots that shall follow the plan"))
        self.list.setWordWrap(True)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        for code, words in lots:
            item = QListWidgetItem(words)
            item.setData(CODE, code)
            item.setFlags(item.flags() | Qt.ItemFlag.ItemIsUserCheckable)
            item.setCheckState(Qt.CheckState.Checked)
            self.list.addItem(item)
        buttons = QDialogButtonBox()
        self.take = buttons.addButton(tr("&Follow it"), QDialogButtonBox.ButtonRole.AcceptRole)
        buttons.addButton(tr("&Leave it"), QDialogButtonBox.ButtonRole.RejectRole)
        dress_button(self.take, "primary")
        self.take.setDefault(True)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        self.list.itemChanged.connect(self._changed)
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
            said = tr("This plan counts on: {changes}.", changes="; ".join(counts_on))
            column.addWidget(Words(said, tone="ochre_ink"))
        column.addWidget(self.list, 1)
        column.addWidget(buttons)
        self.resize(em(self, 36), em(self, 24))

    @property
    def codes(self) -> tuple[str, ...]:
        """The lots that are ticked."""
        items = (self.list.item(row) for row in range(self.list.count()))
        return tuple(
            str(item.data(CODE)) for item in items if item.checkState() is Qt.CheckState.Checked
        )

    def _changed(self) -> None:
        self.take.setEnabled(bool(self.codes))
