"""The box of one form of a trial."""

from collections.abc import Mapping
from datetime import date

from PySide6.QtWidgets import QWidget
from typing_extensions import override

from studio_log.language.words import tr
from studio_log.services.commands import Command
from studio_log.services.trials import TrialPage
from studio_log.ui.bridge import Bridge
from studio_log.ui.kept.form_box import FormBox
from studio_log.ui.trials.forms import TrialForm


class TrialDialog(FormBox):
    """Asks for what a form names, of a trial as it stands."""

    def __init__(
        self,
        bridge: Bridge,
        form: TrialForm,
        page: TrialPage,
        today: date,
        *,
        names: Mapping[str, str] | None = None,
        parent: QWidget | None = None,
    ) -> None:
        rows = form.fields(page, today)
        super().__init__(bridge, rows, moment=form.moment, names=names, parent=parent)
        self.form, self._code = form, page.line.code
        self.setWindowTitle(f"{tr(form.title)} — {self._code}")
        self.show_form(tr(form.title), tr(form.says) if form.says else "")

    @override
    def made(self) -> Command:
        return self.form.command(self._code, self.values)
