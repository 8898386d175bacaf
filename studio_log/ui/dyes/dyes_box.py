"""The window “Dyes and materials”: a list to find in, a sheet for each, and the aim of a colour."""

from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QBuffer, QIODevice, QSize, Qt, Signal, Slot
from PySide6.QtGui import QGuiApplication, QPageSize, QPdfWriter, QShowEvent, QTextDocument
from PySide6.QtWidgets import (
    QButtonGroup,
    QComboBox,
    QDialog,
    QFileDialog,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QTextBrowser,
    QVBoxLayout,
    QWidget,
)
from typing_extensions import override

from studio_log.domain.dyestuffs import Dye
from studio_log.domain.errors import Refusal
from studio_log.domain.materials import Material
from studio_log.language.words import tr, tr_later
from studio_log.present.colour_aim import FIBRES, Aim, aim_for
from studio_log.services.shelf import DyesFor, MaterialFor, MaterialsFor, MaterialSheet
from studio_log.services.whole_file import write_whole
from studio_log.ui.bridge import Bridge
from studio_log.ui.dyes.sheets import aim_html, dye_html, material_html, wall_html
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.flow_layout import FlowLayout, growing
from studio_log.ui.widgets.parts import Words, button, em, emptied, one_of

if TYPE_CHECKING:
    from collections.abc import Mapping

PAGES: Final = (
    tr_later("&Dyes"),
    tr_later("&Materials and safety"),
    tr_later("&Earthy or bright?"),
)
DYES, MATERIALS, AIM = range(3)
WALL: Final = tr_later("Materials in this studio: for the wall")
SLUG: Final = Qt.ItemDataRole.UserRole


class DyesBox(QDialog):
    """Shows dyes, materials and ways to a colour."""

    lot_wanted = Signal(str)
    """Slug of the method by which a lot is to be begun."""

    def __init__(self, bridge: Bridge, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Dyes and materials — Studio Log"))
        self.setWindowFlag(Qt.WindowType.WindowMaximizeButtonHint)
        self._bridge = bridge
        self._dyes: dict[str, Dye] = {}
        self._materials: dict[str, Material] = {}
        self.aim: Aim | None = None
        self.finder = _finder()
        self.list = QListWidget()
        self.list.setAccessibleName(tr("Dyes and materials"))
        self.list.setWordWrap(True)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.fibre = QComboBox()
        self.fibre.setAccessibleName(tr("Fibre of the cloth"))
        for slug, words in FIBRES:
            self.fibre.addItem(tr(words), slug)
        calm(self.fibre)
        self.sheet = QTextBrowser()
        self.sheet.setAccessibleName(tr("What is known"))
        self.said = Words(tone="soft")
        self.chips = self._make_chips()
        self.starts = QWidget()
        self._start_row = FlowLayout(self.starts, gap=8)
        self.copy = button(tr("Copy as &text"))
        self.wall = button(tr("Save for the &wall…"))
        self.close_it = button(tr("C&lose"))
        self._lay_out()
        self._connect()
        self._turn(DYES)

    @property
    def page(self) -> int:
        """Which of the pages is shown."""
        return self.chips.checkedId()

    def refresh(self) -> None:
        """Ask for dyes and materials."""
        self._bridge.ask(DyesFor(), self._know_dyes, failed=self.said.setText)
        self._bridge.ask(MaterialsFor(), self._know_materials, failed=self.said.setText)

    def wall_pdf(self) -> bytes:
        """Give the sheet for the wall as a PDF, A4 across."""
        document = QTextDocument()
        document.setHtml(wall_html(self._materials.values(), tr(WALL)))
        buffer = QBuffer()
        buffer.open(QIODevice.OpenModeFlag.WriteOnly)
        writer = QPdfWriter(buffer)
        writer.setPageSize(QPageSize(QPageSize.PageSizeId.A4))
        writer.setPageOrientation(writer.pageLayout().orientation().Landscape)
        writer.setTitle(tr(WALL))
        document.print_(writer)
        buffer.close()
        return bytes(buffer.data().data())

    @override
    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        if not self._dyes:
            self.refresh()

    def _know_dyes(self, dyes: tuple[Dye, ...]) -> None:
        self._dyes = {one.slug: one for one in dyes}
        self._fill()

    def _know_materials(self, materials: tuple[Material, ...]) -> None:
        self._materials = {one.slug: one for one in materials}
        self._fill()

    @Slot()
    def _fill(self) -> None:
        """List what fits the words of the finder, the one chosen before still chosen."""
        before = self._slug()
        shown: Mapping[str, Dye | Material] = (
            self._materials if self.page == MATERIALS else self._dyes
        )
        wanted = self.finder.text().casefold().split()
        self.list.clear()
        for slug, one in shown.items():
            latin = one.latin if isinstance(one, Dye) else one.name
            if all(word in f"{one.title} {latin}".casefold() for word in wanted):
                QListWidgetItem(one.title, self.list).setData(SLUG, slug)
        rows = [str(self.list.item(row).data(SLUG)) for row in range(self.list.count())]
        if rows:
            self.list.setCurrentRow(rows.index(before) if before in rows else 0)
        else:
            self.sheet.setPlainText(tr("Nothing is found by these words.") if wanted else "")

    def _slug(self) -> str:
        row = self.list.currentRow()
        return str(self.list.item(row).data(SLUG)) if row >= 0 else ""

    @Slot()
    def _show(self) -> None:
        slug = self._slug()
        self.said.setText("")
        if self.page == MATERIALS and slug in self._materials:
            self._bridge.ask(MaterialFor(slug), self._show_material)
        elif self.page == DYES and slug in self._dyes:
            self.sheet.setHtml(dye_html(self._dyes[slug]))
        elif slug in self._dyes:
            self._show_aim(self._dyes[slug])

    def _show_material(self, found: MaterialSheet) -> None:
        if self.page == MATERIALS and found.material.slug == self._slug():
            self.sheet.setHtml(material_html(found.material, found.cautions))

    def _show_aim(self, dye: Dye) -> None:
        self.aim = aim_for(dye, str(self.fibre.currentData()))
        self.sheet.setHtml(aim_html(self.aim))
        emptied(self._start_row)
        for way in self.aim.ways:
            made = button(tr("New lot: {way}…", way=way.title))
            made.clicked.connect(partial(self.lot_wanted.emit, way.methods[0]))
            self._start_row.addWidget(made)

    @Slot(int)
    def _turn(self, page: int) -> None:
        self.fibre.setVisible(page == AIM)
        self._fibre_label.setVisible(page == AIM)
        self.starts.setVisible(page == AIM)
        self.wall.setVisible(page == MATERIALS)
        self._fill()
        self._show()

    def _copy(self) -> None:
        QGuiApplication.clipboard().setText(self.sheet.toPlainText())
        self.said.setText(tr("Copied. Paste it where it is wanted."))

    def _save_wall(self) -> None:
        chosen, _ = QFileDialog.getSaveFileName(
            self, tr("Save for the wall"), "materials.pdf", "PDF (*.pdf)"
        )
        if chosen:
            self.save_wall(Path(chosen))

    def save_wall(self, to: Path) -> None:
        """Write the sheet for the wall; what came of it is said."""
        try:
            write_whole(to, self.wall_pdf())
            self.said.setText(tr("Saved as {path}.", path=to))
        except Refusal as refusal:
            self.said.setText(str(refusal))

    def _make_chips(self) -> QButtonGroup:
        titles = map(tr, PAGES)
        rows = ((at, words, words.replace("&", "")) for at, words in enumerate(titles))
        return one_of(self, rows, chosen=DYES)

    def _lay_out(self) -> None:
        head, foot = FlowLayout(gap=8), FlowLayout(gap=8)
        for at in range(len(PAGES)):
            head.addWidget(self.chips.button(at))
        for widget in (growing(self.said), self.wall, self.copy, self.close_it):
            foot.addWidget(widget)
        halves = QHBoxLayout()
        halves.setSpacing(12)
        halves.addWidget(self._left())
        halves.addLayout(self._right(), 1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(16, 14, 16, 12)
        whole.setSpacing(12)
        whole.addLayout(head)
        whole.addLayout(halves, 1)
        whole.addLayout(foot)
        room = self.screen().availableGeometry().size() - QSize(60, 80)
        self.resize(QSize(em(self, 68), em(self, 44)).boundedTo(room))

    def _left(self) -> QWidget:
        side = QWidget()
        side.setMaximumWidth(em(self, 17))
        column = QVBoxLayout(side)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(self.finder)
        column.addWidget(self.list, 1)
        return side

    def _right(self) -> QVBoxLayout:
        self._fibre_label = QLabel(tr("The &cloth"))
        self._fibre_label.setBuddy(self.fibre)
        choice = QHBoxLayout()
        choice.addWidget(self._fibre_label)
        choice.addWidget(self.fibre)
        choice.addStretch(1)
        column = QVBoxLayout()
        column.setSpacing(8)
        column.addLayout(choice)
        column.addWidget(self.sheet, 1)
        column.addWidget(self.starts)
        return column

    def _connect(self) -> None:
        self.chips.idClicked.connect(self._turn)
        self.finder.textChanged.connect(self._fill)
        self.list.currentRowChanged.connect(self._show)
        self.fibre.currentIndexChanged.connect(self._show)
        self.copy.clicked.connect(self._copy)
        self.wall.clicked.connect(self._save_wall)
        self.close_it.clicked.connect(self.reject)


def _finder() -> QLineEdit:
    line = QLineEdit()
    line.setPlaceholderText(tr("Find by name"))
    line.setAccessibleName(tr("Find a dye or a material"))
    line.setClearButtonEnabled(True)
    line.setMaxLength(80)
    return line
