"""The look on the settings page: light or dark, size of text, language."""

from typing import Final, Protocol

from PySide6.QtWidgets import QSpinBox

from studio_log.domain.errors import Refusal
from studio_log.language.choice import FOLLOW
from studio_log.language.languages import LANGUAGES
from studio_log.language.words import tr, tr_later
from studio_log.services.settings import Settings
from studio_log.ui.settings_parts import Fault, Section, choice, soft
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.parts import roomy

AS_SYSTEM: Final = tr_later("as the system has it")
THEMES: Final = (
    (AS_SYSTEM, "system"),
    (tr_later("light"), "light"),
    (tr_later("dark"), "dark"),
    (tr_later("high contrast"), "strong"),
)
NEXT_START: Final = tr_later("The window speaks it from its next start on.")


class LanguageChoice(Protocol):
    """Whoever keeps which language this laptop speaks."""

    def chosen(self) -> str:
        """Give the language chosen, by its code; "" follows the system."""
        ...

    def choose(self, language: str, /) -> None:
        """Choose for the next start; Refusal where it cannot be kept."""
        ...


class LookSection(Section):
    """Shows the look; the language is kept for this laptop, the rest with the studio."""

    def __init__(self, settings: Settings, language: LanguageChoice | None) -> None:
        super().__init__(tr("Look"))
        self._language = language
        self.scheme = choice(THEMES, settings.theme)
        self.text = QSpinBox()
        self.text.setRange(80, 200)
        self.text.setSingleStep(10)
        roomy(self.text)
        calm(self.text)
        self.text.setSuffix(" %")
        self.text.setValue(settings.text_percent)
        self.row(tr("The &window is"), self.scheme)
        self.row(tr("Size of te&xt"), self.text)
        languages = ((AS_SYSTEM, FOLLOW), *((name, code) for code, name in LANGUAGES.items()))
        self.speech = choice(languages, language.chosen() if language else FOLLOW)
        self.fault = Fault(self.speech)
        if language is not None:
            self.row(tr("&Language"), self.speech)
            self.wide(soft(tr(NEXT_START)))
            self.wide(self.fault)

    def changes(self) -> dict[str, object]:
        """Give the studio's settings on this page, by name."""
        return {"theme": self.scheme.currentData(), "text_percent": self.text.value()}

    def submit(self) -> bool:
        """Keep the language where it was changed; False where that was refused."""
        self.fault.say("")
        wanted = self.speech.currentData()
        if self._language is None or wanted == self._language.chosen():
            return True
        try:
            self._language.choose(wanted)
        except Refusal as refusal:
            self.fault.say(str(refusal))
            return False
        return True
