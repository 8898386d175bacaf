"""The keys across the room as a table, and the line that tells them."""

from collections.abc import Mapping
from typing import Final

from PySide6.QtCore import Qt

from studio_log.ui.across.scene import Scene

_Key = Qt.Key

ACTS: Final[Mapping[int, str]] = {
    _Key.Key_Space: "answer",
    _Key.Key_Return: "answer",
    _Key.Key_Enter: "answer",
    _Key.Key_PageDown: "answer",
    _Key.Key_1: "ten",
    _Key.Key_2: "thirty",
    _Key.Key_M: "morning",
    _Key.Key_D: "damp",
    _Key.Key_U: "back",
    _Key.Key_W: "awake",
    _Key.Key_Escape: "no",
    _Key.Key_F11: "leave",
}
"""What each key does; Space, Enter and Page Down are what foot switches send."""
ANSWER_KEY: Final = "Space"
DOUBT_KEYS: Final = "Space again says yes · Esc says no"
REFUSAL_KEYS: Final = "Space goes back to what is waiting"
SHORT_KEYS: Final = "Esc leaves"
"""All that is told where a name takes the whole screen."""
LATER: Final = "Later: 1 in 10 min, 2 in 30 min, M next morning"


def key_words(scene: Scene, *, awake: bool) -> str:
    """Tell the keys that do something just now."""
    said = []
    if scene.first is not None:
        said.append(LATER)
    if scene.take_back:
        said.append(f"U takes {scene.take_back} back")
    said.append("W lets the screen rest" if awake else "W keeps the screen on")
    said.append(SHORT_KEYS)
    return " · ".join(said)
