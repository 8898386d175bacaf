"""Our own icons, drawn as SVG with one line weight and coloured when they are asked for."""

from pathlib import Path
from typing import Final

from PySide6.QtCore import QByteArray, QRectF, Qt
from PySide6.QtGui import QColor, QIcon, QPainter, QPixmap
from PySide6.QtSvg import QSvgRenderer

_HERE: Final = Path(__file__).resolve()
_FOLDERS: Final = (
    _HERE.parents[2] / "_resources" / "icons",  # in the wheel and the frozen program
    _HERE.parents[3] / "resources" / "icons",  # in the tree
)
_DENSE: Final = 2
"""Each icon is drawn once more at so many dots a point, for screens that have them."""
_PROGRAM_SIDES: Final = (16, 22, 24, 32, 48, 64, 128, 256)


def icon_folder() -> Path:
    """Give the folder that holds the SVG files."""
    return next((folder for folder in _FOLDERS if folder.is_dir()), _FOLDERS[-1])


def icon(
    name: str,
    colour: QColor,
    unable: QColor | None = None,
    chosen: QColor | None = None,
    *,
    side: int = 24,
) -> QIcon:
    """Draw `resources/icons/<name>.svg` in one colour, so many points wide and high.

    `unable` is the colour of what cannot be used now, `chosen` that of the chosen row of a menu.
    """
    made = QIcon()
    text = (icon_folder() / f"{name}.svg").read_text(encoding="utf-8")
    inks = {
        QIcon.Mode.Normal: colour,
        QIcon.Mode.Disabled: unable or colour,
        QIcon.Mode.Active: chosen or colour,
    }
    for mode, ink in inks.items():
        coloured = text.replace("currentColor", ink.name())
        for dots in (side, side * _DENSE):
            made.addPixmap(_drawn(coloured, dots), mode)
    return made


def program_icon() -> QIcon:
    """Draw the program's own icon in its own colours."""
    text = (icon_folder() / "studio-log.svg").read_text(encoding="utf-8")
    made = QIcon()
    for side in _PROGRAM_SIDES:
        made.addPixmap(_drawn(text, side))
    return made


def _drawn(svg: str, side: int) -> QPixmap:
    picture = QPixmap(side, side)
    picture.fill(Qt.GlobalColor.transparent)
    painter = QPainter(picture)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    QSvgRenderer(QByteArray(svg.encode())).render(painter, QRectF(0, 0, side, side))
    painter.end()
    return picture
