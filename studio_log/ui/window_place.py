"""Where the window stood and how its panes were shared, kept between runs in a small file.

The file is nobody's record: one that is missing, broken or from another screen is passed over,
and one that cannot be written is no trouble worth a word.
"""

import json
from contextlib import suppress
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Final

from PySide6.QtCore import QRect
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QMainWindow

from studio_log.domain.errors import Refusal
from studio_log.services.whole_file import write_whole
from studio_log.ui.panes import Panes

LARGEST_FILE: Final = 4_000
MOST_PIXELS: Final = 30_000
SEEN: Final = 120
"""So many pixels of the window's width and height have to lie on a screen."""


@dataclass(frozen=True)
class WindowPlace:
    """A place as it is kept; widths and heights in logical pixels, empty where never moved."""

    left: int
    top: int
    width: int
    height: int
    maximised: bool = False
    panes: tuple[int, ...] = ()
    middle: tuple[int, ...] = ()


def place_of(window: QMainWindow, panes: Panes) -> WindowPlace:
    """Give where a window stands; of a maximised one, where it stood before."""
    large = window.isMaximized() or window.isFullScreen()
    spot = window.normalGeometry() if large or window.isMinimized() else window.geometry()
    widths, heights = panes.shares()
    return WindowPlace(spot.left(), spot.top(), spot.width(), spot.height(), large, widths, heights)


def put_back(window: QMainWindow, panes: Panes, place: WindowPlace) -> None:
    """Stand a window where it stood, as far as a screen is still there."""
    spot = QRect(place.left, place.top, place.width, place.height)
    if _is_seen(spot):
        window.setGeometry(spot)
    panes.share_as(place.panes, place.middle)
    if place.maximised:
        window.setWindowState(window.windowState() | window.windowState().WindowMaximized)


def read_place(path: Path) -> WindowPlace | None:
    """Give what a file says; None where it says nothing sensible."""
    try:
        if path.stat().st_size > LARGEST_FILE:
            return None
        told = json.loads(path.read_text(encoding="utf-8"))
        return WindowPlace(
            _pixels(told["left"]),
            _pixels(told["top"]),
            _pixels(told["width"]),
            _pixels(told["height"]),
            maximised=told.get("maximised") is True,
            panes=tuple(_pixels(one) for one in told.get("panes", ())),
            middle=tuple(_pixels(one) for one in told.get("middle", ())),
        )
    except (OSError, ValueError, TypeError, KeyError, AttributeError, RecursionError):
        return None


def keep_place(path: Path, place: WindowPlace) -> None:
    """Write a place for the next run."""
    with suppress(Refusal):
        write_whole(path, json.dumps(asdict(place)).encode())


def _pixels(value: object) -> int:
    if not isinstance(value, int) or isinstance(value, bool) or abs(value) > MOST_PIXELS:
        raise ValueError(value)
    return value


def _is_seen(spot: QRect) -> bool:
    screens = QGuiApplication.screens()
    shown = (screen.availableGeometry().intersected(spot) for screen in screens)
    return any(part.width() >= SEEN and part.height() >= SEEN for part in shown)
