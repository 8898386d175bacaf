"""What the timeline paints quickly is what a plain drawing of the same would give."""

import pytest
from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QImage, QPainter, QPen
from PySide6.QtWidgets import QApplication

from studio_log.present.timeline_layout import PLAN_END, STITCH_HALF
from studio_log.ui.theme.look import apply_theme, theme
from studio_log.ui.timeline.pencils import FRAME, Pencils, _sizes
from studio_log.ui.timeline.ribbons import ROUND, Ribbon

pytestmark = [
    pytest.mark.qt_log_ignore("propagateSizeHints"),
    pytest.mark.usefixtures("qapp"),
]

FILL, EDGE, GROUND = QColor("#d8af3a"), QColor("#8a6a00"), QColor("#fcf9f1")
HIGH, LEFT = 22, 7


def painted(ratio: float, width: int) -> tuple[QImage, QPainter]:
    picture = QImage(
        round((width + 20) * ratio), round((HIGH + 10) * ratio), QImage.Format.Format_RGB32
    )
    picture.setDevicePixelRatio(ratio)
    picture.fill(GROUND)
    return picture, QPainter(picture)


@pytest.mark.parametrize("width", [2, 9, 11, 12, 13, 40, 318, 319, 320, 324, 326, 639, 700, 2000])
@pytest.mark.parametrize("ratio", [1, 2])
def test_a_bar_cut_from_a_ribbon_is_the_rounded_rectangle_qt_draws(ratio: int, width: int) -> None:
    pen = QPen(EDGE, 1)
    cut, painter = painted(ratio, width)
    Ribbon(QBrush(FILL), pen, HIGH, ratio).draw(painter, LEFT, LEFT + width, 5)
    painter.end()
    plain, painter = painted(ratio, width)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(pen)
    painter.setBrush(FILL)
    place = QRectF(LEFT + 0.5, 5.5, max(width - 1, 1), HIGH - 1)
    painter.drawRoundedRect(place, min(ROUND, place.width() / 2), min(ROUND, place.width() / 2))
    painter.end()
    assert furthest(cut, plain) <= 2  # of 255: smooth corners are blended twice


def furthest(one: QImage, other: QImage) -> int:
    """Give the greatest difference of any channel of any pixel."""
    whole = [each.convertToFormat(QImage.Format.Format_RGBA8888) for each in (one, other)]
    mine, theirs = (bytes(each.constBits()) for each in whole)
    return max(abs(a - b) for a, b in zip(mine, theirs, strict=True))


@pytest.mark.parametrize("scale", [0.8, 0.9, 1, 1.1, 1.25, 1.5, 2, 3])
def test_the_line_of_the_plan_is_clear_of_bar_and_stitches(scale: float) -> None:
    sizes = _sizes(scale)
    assert sizes.planned_y - PLAN_END >= sizes.bar_top + sizes.bar
    assert sizes.planned_y + PLAN_END + 1 <= sizes.stitch_y - STITCH_HALF
    assert sizes.stitch_y + STITCH_HALF <= sizes.row


def test_hatching_runs_on_from_piece_to_piece() -> None:
    tile = QImage(6, 6, QImage.Format.Format_RGB32)
    tile.fill(Qt.GlobalColor.white)
    tile.setPixelColor(2, 0, FILL)
    picture, painter = painted(1, 1500)
    hatch = QBrush(tile)
    Ribbon(hatch, QPen(EDGE, 1), HIGH, 1, round_by=0).draw(painter, 0, 1500, 0)
    painter.end()
    dyed = [x for x in range(1, 1497) if picture.pixelColor(x, 6) == FILL]
    assert dyed == list(range(2, 1497, 6))


@pytest.mark.parametrize("percent", [80, 100, 150, 200])
def test_a_lots_name_lies_within_the_frame_of_the_keyboard(
    qapp: QApplication, percent: int
) -> None:
    apply_theme(qapp, "light", percent)
    try:
        pencils = Pencils(theme(), 1)
    finally:
        apply_theme(qapp, "light", 100)
    foot = pencils.name_middle + pencils.small.metrics.height() / 2
    assert foot <= pencils.sizes.row - FRAME
    code = pencils.sizes.bar_top + pencils.sizes.bar / 2 + pencils.bold.metrics.ascent() / 2
    assert pencils.name_middle - pencils.small.metrics.ascent() / 2 >= code - 1, "nor on the code"
