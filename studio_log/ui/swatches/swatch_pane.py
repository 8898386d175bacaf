"""The swatches at the left of their window: as tiles, on the plane of colours, or lot by lot."""

from pathlib import Path
from typing import Final

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QFileDialog, QVBoxLayout, QWidget

from studio_log.domain.errors import Refusal
from studio_log.language.words import counted, tr, tr_later
from studio_log.present.swatch_looks import BY_AGE, BY_LOT, PLANE
from studio_log.services.swatches import SwatchesThere
from studio_log.ui.swatches.plot_view import PlotView
from studio_log.ui.swatches.tiles import SwatchGrid, SwatchModel
from studio_log.ui.widgets.flow_layout import FlowLayout
from studio_log.ui.widgets.parts import Words, button, one_of

LOOKS: Final = (
    tr_later("&Tiles"), tr_later("&All by colour"), tr_later("Lots &side by side"),
    tr_later("By age o&f cure"),
)  # fmt: skip
TILES: Final = 0
PLOTS: Final = ("", PLANE, BY_LOT, BY_AGE)
"""What is drawn, look by look."""
SAVED_AS: Final = tr_later("Drawing (*.svg);;Picture (*.png);;Figures (*.csv)")
NOTHING: Final = tr_later(
    "No swatch was cut yet. Cut one from a lot when its colour is worth keeping: it gets a code, "
    "and the log knows by which methods it came about. Begin with “New swatch”."
)
NONE_FOUND: Final = tr_later("No swatch holds these words.")


class SwatchPane(QWidget):
    """Shows a list and says what is chosen in it; it asks for nothing itself."""

    chosen = Signal(str)
    more_wanted = Signal(int)
    """So many tiles are there, and more are wanted."""
    plane_wanted = Signal()
    """The colours of all that was found are wanted."""
    far_chosen = Signal(str)
    """A swatch whose tile is not there yet was chosen on the plane."""
    saved = Signal(str)
    refused = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.model = SwatchModel(self)
        self.grid = SwatchGrid(self.model)
        self.plot = PlotView()
        self.looks = one_of(
            self,
            ((at, tr(words), tr(words).replace("&", "")) for at, words in enumerate(LOOKS)),
            chosen=TILES,
        )
        self.save_it = button(tr("Sa&ve…"))
        self.empty = Words(tr(NOTHING), tone="soft")
        self.counted = Words(tone="soft", size="small")
        self._searching = False
        self._lay_out()
        self.grid.chosen.connect(self.chosen)
        self.model.more_wanted.connect(self.more_wanted)
        self.looks.idClicked.connect(self._turn)
        self.plot.chosen.connect(self._choose_dot)
        self.save_it.clicked.connect(self._ask_save)

    @property
    def ages_wanted(self) -> bool:
        """Whether the ages of the cures are to be drawn."""
        return PLOTS[self.looks.checkedId()] == BY_AGE

    @property
    def code(self) -> str:
        """Code of the chosen swatch, "" for none."""
        index = self.grid.currentIndex()
        return self.model.lines[index.row()].code if index.isValid() else ""

    def show_list(self, there: SwatchesThere, wanted: str, *, searching: bool) -> None:
        """Show a new list, and choose a swatch of it."""
        self._searching = searching
        self.grid.blockSignals(True)
        self.model.show_first(there)
        self.grid.choose(wanted)
        self.grid.blockSignals(False)
        self._turn()

    def add(self, there: SwatchesThere) -> None:
        """Add more of the list."""
        self.model.add(there)
        self._count()

    def show_plane(self, there: SwatchesThere) -> None:
        """Show the colours of all that was found."""
        self.plot.show_swatches(there.lines, PLOTS[self.looks.checkedId()] or PLANE)
        self.plot.choose(self.code)
        left = self.plot.plot.left_out
        words = counted(left, tr_later("{n} lot more"), tr_later("{n} lots more")) if left else ""
        rest = there.total - len(there.lines)
        more = counted(rest, tr_later("{n} swatch more"), tr_later("{n} swatches more"))
        parts = (tr("○ relative only"), words, more if rest > 0 else "")
        self.counted.show_words("   ".join(filter(None, parts)))

    def save_as(self, path: Path) -> None:
        """Save the plane as SVG, PNG or CSV, by the name's ending."""
        try:
            written = self.plot.save(path)
        except Refusal as refusal:
            self.refused.emit(str(refusal))
        else:
            self.saved.emit(tr("Saved as {path}.", path=written))

    @Slot()
    def _turn(self, _look: int = TILES) -> None:
        """Show tiles or the plane, or why there is neither."""
        there, tiles = bool(self.model.total), self.looks.checkedId() == TILES
        self.empty.setText(tr(NONE_FOUND) if self._searching else tr(NOTHING))
        self.empty.setVisible(not there)
        self.grid.setVisible(there and tiles)
        self.plot.setVisible(there and not tiles)
        self.save_it.setVisible(there and not tiles)
        if tiles or not there:
            self._count()
        else:
            self.plane_wanted.emit()

    def _count(self) -> None:
        words = counted(self.model.total, tr_later("{n} swatch"), tr_later("{n} swatches"))
        signs = tr("~ relative only   ≈ beyond the screen")
        self.counted.show_words(f"{words}   {signs}" if self.model.total else "")

    def _choose_dot(self, code: str) -> None:
        if self.model.row_of(code) >= 0:
            self.grid.choose(code)
        else:
            self.far_chosen.emit(code)

    def _ask_save(self) -> None:
        title = tr("Save the swatches by colour")
        chosen, _ = QFileDialog.getSaveFileName(self, title, "swatches.svg", tr(SAVED_AS))
        if chosen:
            self.save_as(Path(chosen))

    def _lay_out(self) -> None:
        looks = FlowLayout(gap=8)
        for at in range(len(LOOKS)):
            looks.addWidget(self.looks.button(at))
        looks.addWidget(self.save_it)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addLayout(looks)
        column.addWidget(self.empty)
        column.addWidget(self.grid, 1)
        column.addWidget(self.plot, 1)
        column.addWidget(self.counted)
        column.addStretch(0)
        self.plot.hide()
        self.save_it.hide()
