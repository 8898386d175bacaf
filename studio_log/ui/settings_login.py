"""Start at login, on the settings page: it shows what is so, not what was wished."""

from typing import Final, Protocol

from PySide6.QtWidgets import QCheckBox

from studio_log.domain.errors import Refusal
from studio_log.language.words import tr
from studio_log.ui.settings_parts import Fault, Section, soft

FIXED: Final = "cannot be switched"


class LoginStart(Protocol):
    """Whoever switches the start at login; both are quick."""

    def state(self) -> tuple[bool, str]:
        """Whether it is on, and words on the truth."""
        ...

    def switch(self, on: bool, /) -> str:  # noqa: FBT001 - it is a switch
        """Switch it; words on what is so now. Refusal where it cannot be switched."""
        ...


class LoginSection(Section):
    """Switches the start at login when the page is kept."""

    def __init__(self, start: LoginStart | None) -> None:
        super().__init__(tr("Start"))
        self._start = start
        self.login = QCheckBox(tr("Start at lo&gin"))
        self.words = soft("")
        self.fault = Fault(self.login)
        for widget in (self.login, self.words, self.fault):
            self.wide(widget)
        self.setVisible(start is not None)
        self.read_truth()

    def read_truth(self) -> None:
        """Show what is so."""
        if self._start is None:
            return
        on, words = self._start.state()
        self.login.setChecked(on)
        self.login.setEnabled(not words.startswith(FIXED))
        self.words.show_words(_sentence(words))

    def submit(self) -> bool:
        """Switch it where the box differs from the truth; False where that was refused."""
        self.fault.say("")
        if self._start is None or not self.login.isEnabled():
            return True
        wanted = self.login.isChecked()
        if wanted is self._start.state()[0]:
            return True
        try:
            self.words.show_words(_sentence(self._start.switch(wanted)))
        except Refusal as refusal:
            self.read_truth()
            self.fault.say(str(refusal))
            return False
        return True


def _sentence(words: str) -> str:
    """Give words as a sentence: "Off."."""
    told = words.strip()
    if not told:
        return ""
    return f"{told[0].upper()}{told[1:]}" + ("" if told.endswith((".", "?", "!")) else ".")
