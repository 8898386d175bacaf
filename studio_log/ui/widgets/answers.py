"""The two buttons of a form: one does it, the Enter key too, and one leaves all as it is."""

from PySide6.QtWidgets import QDialogButtonBox

from studio_log.language.words import tr
from studio_log.ui.theme.dress import dress_button


class Answers(QDialogButtonBox):
    """Says `accepted` and `rejected` as its base does."""

    def __init__(self, do: str, leave: str = "") -> None:
        """Name what is done; `leave` is "" for the usual words."""
        super().__init__()
        self.do = self.addButton(do, QDialogButtonBox.ButtonRole.AcceptRole)
        words = leave or tr("&Leave it")
        self.leave = self.addButton(words, QDialogButtonBox.ButtonRole.RejectRole)
        dress_button(self.do, "primary")
        self.do.setDefault(True)
