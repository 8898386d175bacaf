"""Words that begin with a method's title, which is a link to its page."""

from collections.abc import Mapping, Sequence
from html import escape

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QLabel

from studio_log.language.words import tr
from studio_log.ui.theme.look import theme
from studio_log.ui.widgets.parts import Size, Words


class MethodHeading(Words):
    """Reached by Tab, followed by Enter or a click."""

    method_wanted = Signal(str)
    """Short name of the method."""

    def __init__(self, size: Size = "body") -> None:
        super().__init__(tone="soft", size=size)
        self.setTextFormat(Qt.TextFormat.RichText)
        self.setTextInteractionFlags(
            Qt.TextInteractionFlag.LinksAccessibleByMouse
            | Qt.TextInteractionFlag.LinksAccessibleByKeyboard
        )
        self.linkActivated.connect(self.method_wanted)

    def show_heading(self, said: str, methods: Sequence[Mapping[str, object]]) -> None:
        """Show the words; the title of the lot's last method in them leads to its page."""
        title = str(methods[-1].get("title", "")) if methods else ""
        self.setAccessibleName(said)
        self.setVisible(bool(said))
        words = escape(said)
        if title and said.startswith(title):
            ink = theme().palette.accent_ink
            slug = escape(str(methods[-1].get("slug", "")))
            link = f'<a href="{slug}" style="color:{ink}">{escape(title)}</a>'
            words = f"{link}{escape(said[len(title) :])}"
            self.setToolTip(tr("Open the page of the method"))
        QLabel.setText(self, words)  # what would break long words would break the link
