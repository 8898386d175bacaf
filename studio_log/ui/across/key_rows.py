"""The keys across the room as a table, and the line that tells them."""

from collections.abc import Mapping
from typing import Final

from PySide6.QtCore import Qt

from studio_log.language.words import tr, tr_later
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
ANSWER_KEY: Final = tr_later("Space")
DOUBT_KEYS: Final = tr_later("Space again says yes · Esc says no")
REFUSAL_KEYS: Final = tr_later("Space goes back to what is waiting")
LEAVE: Final = tr_later("Esc leaves")
LATER: Final = tr_later("Later: 1 in 10 min, 2 in 30 min, M next morning")
SHORT_LATER: Final = tr_later("Later: 1, 2, M")
TOGETHER: Final = "\N{NO-BREAK SPACE}"


def key_words(scene: Scene, *, awake: bool) -> str:
    """Tell the keys that do something just now; a line breaks between them only."""
    said = []
    if scene.first is not None:
        said.append(tr(LATER))
    if scene.take_back:
        said.append(tr("U takes {take_back} back", take_back=scene.take_back))
    said.append(tr("W lets the screen rest") if awake else tr("W keeps the screen on"))
    said.append(tr(LEAVE))
    return _joined(said)


def short_key_words(scene: Scene) -> str:
    """Tell the chief keys alone, where things need the room."""
    said = [tr(SHORT_LATER)] if scene.first is not None else []
    if scene.take_back:
        said.append(tr("U takes back"))
    return _joined([*said, tr(LEAVE)])


def _joined(said: list[str]) -> str:
    return f"{TOGETHER}· ".join(
        words.replace(" ", TOGETHER).replace(f",{TOGETHER}", ", ") for words in said
    )
