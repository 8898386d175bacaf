"""A method edited in a form: its steps at the left, the fields of the chosen one beside them."""

from collections.abc import Mapping, Sequence
from functools import partial
from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QScrollArea, QSplitter, QStackedWidget, QVBoxLayout, QWidget

from studio_log.domain.amounts import Amount, work_out
from studio_log.domain.cautions import Caution
from studio_log.domain.errors import Refusal
from studio_log.domain.method_draft import with_cure
from studio_log.domain.method_lines import Path
from studio_log.domain.method_text import MethodDraft
from studio_log.domain.methods import Method
from studio_log.language.words import tr
from studio_log.services.method_page import PAGE_GRAMS
from studio_log.ui.methods.form_page import FormPage
from studio_log.ui.methods.form_rows import at_path
from studio_log.ui.methods.form_tables import CURE as CURE_SECTIONS
from studio_log.ui.methods.form_tables import HEAD as HEAD_SECTIONS
from studio_log.ui.methods.form_tables import STEP as STEP_SECTIONS
from studio_log.ui.methods.step_rows import CURE, HEAD, StepRows
from studio_log.ui.widgets.parts import em, scrolled

STEPPING: Final = (("Ctrl+PgUp", -1), ("Ctrl+PgDown", 1))
"""Keys that go to the step before and after while the keyboard stays where it is."""


class MethodForm(QSplitter):
    """Shows a draft; each change is handed on as a change of its text."""

    wanted = Signal(object, str)
    undo_wanted = Signal(bool)
    chosen = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self._draft = MethodDraft({}, None, (), ())
        self.steps = StepRows()
        self.pages = {
            HEAD: FormPage(HEAD_SECTIONS),
            0: FormPage(STEP_SECTIONS),
            CURE: FormPage(CURE_SECTIONS),
        }
        self._areas: dict[int, QScrollArea] = {}
        self._stack = QStackedWidget()
        self._lay_out()
        self.steps.wanted.connect(self.wanted)
        self.steps.chosen.connect(self._choose)
        self.steps.entered.connect(self.to_fields)
        for keys, by in STEPPING:
            shortcut = QShortcut(QKeySequence(keys), self)
            shortcut.setContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
            shortcut.activated.connect(partial(self.steps.step, by))
        for page in self.pages.values():
            page.wanted.connect(self.wanted)
            page.undo_wanted.connect(self.undo_wanted)

    @property
    def page(self) -> FormPage:
        """The page that is shown."""
        return self.pages[min(self.steps.place, 0)]

    def offer_cautions(self, cautions: Sequence[Caution]) -> None:
        """Offer these cautions to every step."""
        ticks = self.pages[0].cautions
        if ticks is not None:
            ticks.offer(cautions)

    def show_draft(self, draft: MethodDraft) -> None:
        """Show the draft; the place chosen stays."""
        self._draft = draft
        self.steps.show_draft(draft)
        self._fill()

    def to_fields(self) -> None:
        """Go on to the fields: to the first that is amiss, else to the first."""
        self.page.first().box.setFocus(Qt.FocusReason.TabFocusReason)

    def to_fault(self) -> None:
        """Choose the first block with a fault and go to its field."""
        if self._draft.faults:
            self.steps.choose(_block_of(self._draft.faults[0].path))
            self._fill()
            self.to_fields()

    def _choose(self, place: int) -> None:
        if place == CURE and "cure" not in self._draft.data:
            self.wanted.emit(with_cure, "")
        area = self._areas[min(place, 0)]
        self._stack.setCurrentWidget(area)
        area.verticalScrollBar().setValue(0)
        self._fill()
        self.chosen.emit(place)

    def _fill(self) -> None:
        """Fill the page that is shown; the others are filled when they are."""
        place = self.steps.place
        base: Path = ("steps", place) if place >= 0 else ()
        faults = [one for one in self._draft.faults if _block_of(one.path) == place]
        data = at_path(self._draft.data, base)
        self.page.show_block(data, base, faults, amounts_of(self._draft.method))

    def _lay_out(self) -> None:
        self.setChildrenCollapsible(False)
        left = QWidget()
        column = QVBoxLayout(left)
        column.setContentsMargins(0, 0, 6, 0)
        column.addWidget(self.steps)
        self.addWidget(left)
        for place, page in self.pages.items():
            area = scrolled(page, name=tr("Fields"))
            self._areas[place] = area
            self._stack.addWidget(area)
        self.addWidget(self._stack)
        self.setStretchFactor(0, 0)
        self.setStretchFactor(1, 1)
        self.setSizes([em(self, 14), em(self, 30)])


def _block_of(path: Path) -> int:
    """Give the place in the list to which a fault belongs."""
    if path[:1] == ("steps",) and len(path) > 1 and isinstance(path[1], int):
        return path[1]
    return CURE if path[:1] == ("cure",) else HEAD


def amounts_of(method: Method | None) -> Mapping[str, Amount]:
    """Give what the amounts come to on 100 g of cloth, by their slug, as far as can be told."""
    found: dict[str, Amount] = {}
    rules = [rule for step in method.steps for rule in step.amounts] if method else []
    for at, rule in enumerate(rules):
        try:
            found[rule.slug] = work_out(rules[: at + 1], grams=PAGE_GRAMS)[-1]
        except Refusal:
            continue
    return found
