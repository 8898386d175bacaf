"""Which cloth a colour is of: a half of the swatch, or the undyed cloth beside it in a test."""

from typing import Final

from PySide6.QtWidgets import QComboBox

from studio_log.language.words import tr, tr_later
from studio_log.ui.kept.form_box import Choices
from studio_log.ui.widgets.calm import calm

HALF_CHOICES: Final[Choices] = (
    ("master", tr_later("master half, or the whole")),
    ("test", tr_later("test half")),
    ("adjacent", tr_later("cloth beside it, before the test")),
    ("stained", tr_later("cloth beside it, after the test")),
)


def fill_halves(box: QComboBox) -> None:
    """Offer them in a box."""
    for value, words in HALF_CHOICES:
        box.addItem(tr(words), value)
    box.setAccessibleName(tr("Which cloth"))
    calm(box)
