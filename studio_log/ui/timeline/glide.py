"""A zoom that glides to where it is wanted, so that the eye can follow what comes nearer."""

import math
from typing import Final

from PySide6.QtCore import QEasingCurve, QObject, QVariantAnimation, Signal, Slot
from typing_extensions import override

GLIDE_MS: Final = 130
"""How long one step takes; each further step begins anew from where the last one is."""


class Glide(QVariantAnimation):
    """Runs from one zoom to another by equal ratios; at rest it costs nothing."""

    zoomed = Signal(float)
    """Pixels an hour, each frame."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self.length = GLIDE_MS
        """Milliseconds; nought jumps."""
        self._wanted = 0.0
        self.setEasingCurve(QEasingCurve.Type.OutCubic)
        self.valueChanged.connect(self._tell)
        self.finished.connect(self._arrive)

    def aim(self, zoom: float) -> float:
        """Give the zoom that is on its way, else the one that is."""
        return self._wanted if self.state() is QVariantAnimation.State.Running else zoom

    def go(self, zoom: float, wanted: float) -> None:
        """Glide from a zoom to the one that is wanted."""
        self.stop()
        self._wanted = wanted
        if self.length <= 0:
            self.zoomed.emit(wanted)
            return
        self.setDuration(self.length)
        self.setStartValue(math.log(zoom))
        self.setEndValue(math.log(wanted))
        self.start()

    @override
    def interpolated(self, start: float, end: float, progress: float) -> float:
        return start + (end - start) * progress

    @Slot()
    def _arrive(self) -> None:
        self.zoomed.emit(self._wanted)

    @Slot(object)
    def _tell(self, value: float | None) -> None:
        if value is not None and self.state() is QVariantAnimation.State.Running:
            self.zoomed.emit(math.exp(value))
