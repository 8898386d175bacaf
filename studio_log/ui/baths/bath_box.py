"""The window “Baths and vats”: the list at the left, the chosen one and its diary beside it."""

from functools import partial
from typing import Final

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QWidget
from typing_extensions import override

from studio_log.domain.journal import Act
from studio_log.language.words import tr_later
from studio_log.services.baths import BathFor, BathLine, BathPage, BathsFor, MarkBath, SetBath
from studio_log.services.commands import Outcome
from studio_log.services.questions import Question
from studio_log.ui.baths.bath_dialog import BathDialog
from studio_log.ui.baths.bath_forms import FORMS, NEW, BathForm
from studio_log.ui.baths.bath_view import BathView
from studio_log.ui.bridge import FOREIGN, Bridge
from studio_log.ui.kept.listed_box import ListedBox

SIZE: Final = QSize(66, 44)
NOTHING: Final = tr_later(
    "No bath is kept yet. A chalk bath, a mordant, an indigo vat or a dye bath with its exhausts: "
    "each gets a diary, counts the cloth that went through it, and says when it wants refreshing. "
    "Begin with “New bath”."
)


class BathBox(ListedBox[BathPage]):
    """Shows what the studio answers; asks again when a bath has changed."""

    title = tr_later("Baths and vats — Studio Log")
    name = tr_later("Baths and vats")
    new_words = NEW.button
    ended_words = tr_later("Finished t&oo")
    view_name = tr_later("The chosen bath")
    nothing = NOTHING

    def __init__(self, bridge: Bridge, parent: QWidget | None = None, code: str = "") -> None:
        super().__init__(bridge, parent, code)
        self.view = BathView()
        self.lay_out_halves(self.view, SIZE)
        self.new.clicked.connect(partial(self.open_form, NEW))
        self.view.act_wanted.connect(self._act)

    @override
    def on_changed(self, outcome: Outcome) -> None:
        if outcome.baths or outcome.settings or outcome is FOREIGN:
            self.refresh()

    @override
    def list_question(self) -> Question:
        return BathsFor(finished=self.ended_too.isChecked())

    @override
    def page_question(self, code: str) -> Question:
        return BathFor(code)

    @override
    def line_words(self, line: BathLine) -> str:
        due = f"\n{line.urgent[:1].upper()}{line.urgent[1:]}" if line.urgent else ""
        return f"{line.code} {line.name}\n{line.words}{due}"

    @override
    def show_page(self, page: BathPage) -> None:
        self.view.show_page(page)

    def open_form(self, form: BathForm) -> None:
        """Open the form of one act on the chosen bath."""
        page = self.page
        code = "" if form is NEW or page is None else page.line.code
        filled = form.filled(page) if code and page is not None else {}
        box = BathDialog(self._bridge, form, code, filled=filled, names=self._names, parent=self)
        box.done_with.connect(self._done)
        self._open(box)

    def _act(self, slug: str) -> None:
        if self.page is None:
            return
        code = self.page.line.code
        form = next((one for one in FORMS if one.slug == slug), None)
        if form is not None:
            self.open_form(form)
        elif slug == "withdraw":
            self._do(MarkBath(code, Act.PLAN))
        else:
            self._do(SetBath(code, finished=slug == "finish"))
