"""Small words by which a widget says how it wants to look; the style sheet does the rest."""

from typing import Literal

from PySide6.QtWidgets import QAbstractButton, QFrame, QLabel, QWidget

ButtonLook = Literal["plain", "primary", "quiet", "danger", "ochre"]
LabelRole = Literal[
    "body", "soft", "small", "title", "heading", "digits", "danger", "ochre", "indigo", "good"
]
CardGround = Literal["plain", "danger", "ochre", "indigo"]


def dress_button(button: QAbstractButton, look: ButtonLook, *, big: bool = False) -> None:
    """Give a button its look; `big` makes it at least 72 px high, for the one big answer."""
    button.setProperty("look", look)
    button.setProperty("big", big)
    repolish(button)


def dress_label(label: QLabel, role: LabelRole) -> None:
    """Give a label its size and colour."""
    label.setProperty("role", role)
    repolish(label)


def dress_card(card: QFrame, ground: CardGround) -> None:
    """Give a frame the ground of a card with a selvedge at its left."""
    card.setProperty("card", ground)
    repolish(card)


def repolish(widget: QWidget) -> None:
    """Have the style sheet read the widget's properties again."""
    style = widget.style()
    style.unpolish(widget)
    style.polish(widget)
    widget.update()
