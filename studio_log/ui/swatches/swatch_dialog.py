"""The box of one form of a swatch."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from PySide6.QtWidgets import QWidget
from typing_extensions import override

from studio_log.language.words import tr
from studio_log.services.commands import Command
from studio_log.ui.bridge import Bridge
from studio_log.ui.kept.form_box import FormBox, FormField
from studio_log.ui.swatches.forms import CHANGE, SwatchForm
from studio_log.ui.widgets.understood import UnderstoodLine


class SwatchDialog(FormBox):
    """Asks for what a form names, filled with what is known."""

    def __init__(
        self,
        bridge: Bridge,
        form: SwatchForm,
        code: str = "",
        *,
        filled: Mapping[str, str] | None = None,
        names: Mapping[str, str] | None = None,
        parent: QWidget | None = None,
    ) -> None:
        before = dict(filled or {})
        rows = [_as_shown(one, before.get(one.slug, "")) for one in form.fields]
        super().__init__(bridge, rows, moment=form.moment, names=names, parent=parent)
        self.form, self._code, self._before = form, code, before
        self.setWindowTitle(f"{tr(form.title)} — {code}" if code else tr(form.title))
        self.show_form(tr(form.title), tr(form.says) if form.says else "")
        first = self.fields[form.fields[0].slug]
        if isinstance(first, UnderstoodLine):
            first.line.selectAll()

    @override
    def made(self) -> Command:
        return self.form.command(
            self._code, self._changed() if self.form is CHANGE else self.values
        )

    def _changed(self) -> dict[str, Any]:
        """Give the texts that are otherwise than before; a blank one takes away."""
        lines = {slug: one for slug, one in self.fields.items() if isinstance(one, UnderstoodLine)}
        return {
            slug: line.text()
            for slug, line in lines.items()
            if line.text() != self._before.get(slug, "")
        }


def _as_shown(of: FormField, filled: str) -> FormField:
    """Give a field with its choices in the language spoken, and what stands in it."""
    return replace(of, choices=tuple((value, tr(words)) for value, words in of.choices),
                   filled=filled)  # fmt: skip
