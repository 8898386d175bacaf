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
LEAVE: Final = "Esc leaves"
LATER: Final = "Later: 1 in 10 min, 2 in 30 min, M next morning"
SHORT_LATER: Final = "Later: 1, 2, M"
TOGETHER: Final = "\N{NO-BREAK SPACE}"


def key_words(scene: Scene, *, awake: bool) -> str:
    """Tell the keys that do something just now; a line breaks between them only."""
    said = []
    if scene.first is not None:
        said.append(LATER)
    if scene.take_back:
        said.append(f"U takes {scene.take_back} back")
    said.append("W lets the screen rest" if awake else "W keeps the screen on")
    said.append(LEAVE)
    return _joined(said)


def short_key_words(scene: Scene) -> str:
    """Tell the chief keys alone, where things need the room."""
    said = [SHORT_LATER] if scene.first is not None else []
    if scene.take_back:
        said.append("U takes back")
    return _joined([*said, LEAVE])


def _joined(said: list[str]) -> str:
    return f"{TOGETHER}· ".join(
        words.replace(" ", TOGETHER).replace(f",{TOGETHER}", ", ") for words in said
    )
