"""Asks for the password of a studio's server before the window opens."""

from PySide6.QtWidgets import QDialog, QLineEdit, QVBoxLayout, QWidget

from studio_log.language.words import tr
from studio_log.ui.widgets.answers import Answers
from studio_log.ui.widgets.parts import Words, em


class PasswordBox(QDialog):
    """Says why the server did not let this laptop in, and takes a password."""

    def __init__(self, says: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("The studio’s server — Studio Log"))
        self.line = password_line()
        buttons = Answers(tr("&Open the studio"), tr("Lea&ve it"))
        self.go = buttons.do
        self.go.setEnabled(False)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        self.line.textChanged.connect(self._typed)
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 16, 20, 14)
        column.setSpacing(10)
        column.addWidget(
            Words(tr("The studio’s server asks for a password"), size="large", bold=True)
        )
        column.addWidget(Words(says))
        label = Words(tr("&Password"))
        label.setBuddy(self.line)
        column.addWidget(label)
        column.addWidget(self.line)
        column.addWidget(
            Words(
                tr("It goes into this system’s keyring, and into no file of Studio Log."),
                tone="soft",
            )
        )
        column.addStretch(1)
        column.addWidget(buttons)
        self.resize(em(self, 34), self.sizeHint().height())

    @property
    def password(self) -> str:
        """What was typed."""
        return self.line.text()

    def _typed(self, text: str) -> None:
        self.go.setEnabled(bool(text))


def password_line() -> QLineEdit:
    """Make a field that shows dots and keeps no typed words anywhere."""
    line = QLineEdit()
    line.setEchoMode(QLineEdit.EchoMode.Password)
    line.setAccessibleName(tr("Password"))
    return line
