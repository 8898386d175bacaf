"""Find by colour: a colour typed, chosen, picked from the screen, or a swatch’s; what is near."""

from functools import partial
from typing import Any, Final

from PySide6.QtCore import QPoint, QSize, Qt, QTimer, Signal, Slot
from PySide6.QtGui import QColor, QIcon, QPixmap
from PySide6.QtWidgets import (
    QColorDialog,
    QDialog,
    QHBoxLayout,
    QHeaderView,
    QTreeWidget,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from studio_log.domain.number_text import pointed
from studio_log.language.words import tr, tr_later
from studio_log.science.colour.lab import Lab
from studio_log.science.colour.shown import lab_of_code, shown_as
from studio_log.services.swatches import NearFor, NearLine, SwatchShown
from studio_log.ui.bridge import Bridge
from studio_log.ui.errors import MessageBar
from studio_log.ui.swatches.readers import colour
from studio_log.ui.swatches.screen_pick import ScreenPick
from studio_log.ui.widgets.flow_layout import FlowLayout, growing
from studio_log.ui.widgets.parts import Words, button, em
from studio_log.ui.widgets.understood import UnderstoodLine

COLUMNS: Final = (tr_later("ΔE"), tr_later("Swatch"), tr_later("Methods"), tr_later("Cut"))
CODE: Final = Qt.ItemDataRole.UserRole
MOST: Final = 30
NAME: Final = 18
"""Most of a column beside the methods, in line heights."""
TYPING_MS: Final = 150
HIDE_MS: Final = 250
"""Until our own windows have gone from the screen."""
ASK: Final = tr_later(
    "Type a colour, choose one, or pick it from the screen: what is near is shown here."
)
SAYS: Final = tr_later(
    "ΔE is CIEDE2000: about 1 is just seen side by side, 5 across a table. The colours of a screen "
    "are taken as sRGB: as true as the screen is."
)


class NearBox(QDialog):
    """Shows the swatches nearest to a colour, the nearest first."""

    swatch_wanted = Signal(str)
    photo_wanted = Signal()

    def __init__(
        self, bridge: Bridge, parent: QWidget | None = None, line: SwatchShown | None = None
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Find by colour — Studio Log"))
        self.setWindowFlag(Qt.WindowType.WindowMaximizeButtonHint)
        self._bridge, self._line = bridge, line
        self._but, self._white = "", "D65/2"
        self._setting = False
        self.patch = Words()
        self.lab: UnderstoodLine[Lab] = UnderstoodLine(
            colour, name=tr("L*, a*, b*"), hint="52.1, 31.8, 24.0"
        )
        self.own = button(tr("The chosen &swatch"))
        self.choose_it = button(tr("&Choose a colour…"))
        self.from_screen = button(tr("&Pick from the screen"))
        self.from_photo = button(tr("From a p&hoto…"))
        self.tree = QTreeWidget()
        self.said = Words(tr(ASK), tone="soft")
        self.message = MessageBar(bridge)
        self.show_it = button(tr("Sho&w it"), kind="primary")
        self.leave = button(tr("C&lose"))
        self.pick = ScreenPick(self)
        self._hidden: list[tuple[QWidget, QPoint]] = []
        self._soon = QTimer(self, singleShot=True, interval=TYPING_MS)
        self._gone = QTimer(self, singleShot=True, interval=HIDE_MS)
        self._lay_out()
        self._connect()
        if line is not None and line.lab is not None:
            self.take_own()

    def take(self, lab: Lab, *, but: str = "", white: str = "D65/2") -> None:
        """Look for a colour, but not for the swatch whose colour it is."""
        self._but, self._white = but, white
        self._setting = True
        self.lab.setText(", ".join(pointed(one, 2) for one in (lab.lightness, lab.a, lab.b)))
        self._setting = False
        self._soon.stop()
        self.ask()

    @Slot()
    def take_own(self) -> None:
        """Look for what is near the chosen swatch."""
        if self._line is not None and self._line.lab is not None:
            self.take(self._line.lab, but=self._line.code, white=self._line.white)

    @Slot(str)
    def take_code(self, code: str) -> None:
        """Look for a colour of the screen, "#rrggbb"."""
        self.take(lab_of_code(code))

    @Slot()
    def ask(self) -> None:
        """Ask for what is near the colour that stands there."""
        lab = self.lab.value
        self._paint(lab)
        if lab is None:
            self._show(())
            return
        question = NearFor(lab, most=MOST, white=self._white, but=self._but)
        self._bridge.ask(question, self._show, failed=self.message.refuse)

    def _paint(self, lab: Lab | None) -> None:
        shown = shown_as(lab)[0] if lab is not None else "transparent"
        self.patch.setStyleSheet(f"background: {shown}; border: 1px solid palette(mid);")
        self.patch.setAccessibleName(tr("The colour looked for: {code}", code=shown))

    def _show(self, found: tuple[NearLine, ...]) -> None:
        self.tree.clear()
        for one in found:
            self.tree.addTopLevelItem(self._item(one))
        for at in (0, 1, 3):
            self.tree.resizeColumnToContents(at)
            self.tree.setColumnWidth(at, min(self.tree.columnWidth(at), em(self, NAME)))
        if (first := self.tree.topLevelItem(0)) is not None:
            self.tree.setCurrentItem(first)
        asked = self.lab.value is not None
        self.tree.setVisible(bool(found))
        self.show_it.setEnabled(bool(found))
        self.said.setText(
            tr(SAYS) if found else tr("No swatch with a colour is there yet.") if asked else tr(ASK)
        )

    def _item(self, one: NearLine) -> QTreeWidgetItem:
        line = one.line
        name = " · ".join(
            filter(
                None, (f"{line.code} {line.name}".strip(), f"{line.lot} {line.lot_name}".strip())
            )
        )
        cells = [f"{one.apart:.1f}", name, ", ".join(line.chain), line.cut_words]
        item = QTreeWidgetItem(cells)
        item.setData(0, CODE, line.code)
        square = QPixmap(em(self, 2.6), round(em(self, 1.5)))
        square.fill(QColor(line.shown))
        icon = QIcon(square)
        icon.addPixmap(square, QIcon.Mode.Selected)  # else Qt would tint what is chosen
        item.setIcon(0, icon)
        words = "\n".join(filter(None, (*cells, line.colour_words, one.doubt)))
        for at in range(len(COLUMNS)):
            item.setToolTip(at, words)
        if one.doubt:
            item.setText(0, f"{one.apart:.1f} ?")
        item.setData(0, Qt.ItemDataRole.AccessibleTextRole, words)
        return item

    def _choose_colour(self) -> None:
        """Ask by the colour box of the desktop, with the colour that stands there."""
        before = self.lab.value
        shown = QColor(shown_as(before)[0]) if before is not None else QColor("#b86555")
        chosen = QColorDialog.getColor(shown, self, tr("Choose a colour"))
        if chosen.isValid():
            self.take_code(chosen.name())

    def begin_pick(self) -> None:
        """Take our own windows away and let a colour be picked."""
        parent = self.parentWidget()
        shown = [one for one in (parent, self) if one is not None and one.isVisible()]
        self._hidden = [(one, one.pos()) for one in shown]
        for window in reversed(shown):
            window.hide()
        self._gone.start()

    @Slot()
    def _look(self) -> None:
        if words := self.pick.begin():
            self._come_back()
            self.message.advise(words)

    @Slot()
    def _come_back(self) -> None:
        """Show our own windows again."""
        hidden, self._hidden = self._hidden, []
        for window, place in hidden:
            window.show()
            window.move(place)  # else some desktops put it a frame further on each time
            window.raise_()

    def _chosen(self) -> None:
        item: Any = self.tree.currentItem()
        if item is not None:
            self.swatch_wanted.emit(str(item.data(0, CODE)))

    def _typed(self) -> None:
        if not self._setting:
            self._but, self._white = "", "D65/2"
            self._soon.start()

    def _connect(self) -> None:
        self.lab.changed.connect(self._typed)
        self._soon.timeout.connect(self.ask)
        self.own.clicked.connect(self.take_own)
        self.choose_it.clicked.connect(self._choose_colour)
        self.from_screen.clicked.connect(self.begin_pick)
        self.from_photo.clicked.connect(self.photo_wanted)
        self._gone.timeout.connect(self._look)
        self.pick.picked.connect(self.take_code)
        self.pick.over.connect(self._come_back)
        self.tree.itemActivated.connect(partial(self._chosen))
        self.show_it.clicked.connect(self._chosen)
        self.leave.clicked.connect(self.reject)

    def _dress_tree(self) -> None:
        self.tree.setHeaderLabels([tr(title) for title in COLUMNS])
        self.tree.setRootIsDecorated(False)
        self.tree.setUniformRowHeights(True)
        self.tree.header().setStretchLastSection(False)
        self.tree.header().setSectionResizeMode(2, QHeaderView.ResizeMode.Stretch)
        self.tree.setIconSize(QSize(em(self, 2.6), round(em(self, 1.5))))
        self.tree.setAccessibleName(tr("Nearest swatches"))
        self.tree.hide()

    def _lay_out(self) -> None:
        self._dress_tree()
        self.patch.setFixedSize(em(self, 7), em(self, 4))
        self.own.setVisible(self._line is not None and self._line.lab is not None)
        ways = FlowLayout(gap=8)
        for widget in (self.own, self.choose_it, self.from_screen, self.from_photo):
            ways.addWidget(widget)
        right = QVBoxLayout()
        right.addWidget(self.lab)
        right.addLayout(ways)
        head = QHBoxLayout()
        head.setSpacing(14)
        head.addWidget(self.patch, 0, Qt.AlignmentFlag.AlignTop)
        head.addLayout(right, 1)
        foot = FlowLayout(gap=10)
        for part in (growing(Words()), self.show_it, self.leave):
            foot.addWidget(part)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(16, 14, 16, 12)
        whole.setSpacing(12)
        whole.addLayout(head)
        whole.addWidget(self.tree, 1)
        whole.addWidget(self.said)
        whole.addWidget(self.message)
        whole.addLayout(foot)
        self.show_it.setEnabled(False)
        room = self.screen().availableGeometry().size() - QSize(60, 80)
        self.resize(QSize(em(self, 54), em(self, 34)).boundedTo(room))
