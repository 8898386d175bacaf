"""Pictures of the window, made off-screen from a studio and a clock."""

from pathlib import Path
from time import monotonic
from typing import Final

from PySide6.QtCore import QEvent, QEventLoop
from PySide6.QtWidgets import QApplication, QWidget

from studio_log.domain.errors import Refusal
from studio_log.present.hues import Scheme
from studio_log.services.ports import Clock
from studio_log.services.studio import Studio
from studio_log.services.worker import InlineWorker
from studio_log.ui.bridge import Bridge
from studio_log.ui.main_window import MainWindow
from studio_log.ui.methods.method_box import MethodBox
from studio_log.ui.swatches.swatch_box import SwatchBox
from studio_log.ui.theme.look import apply_theme, theme
from studio_log.ui.widgets import style

PLAN_TRIES: Final = 30
PATIENCE_S: Final = 90.0


def the_app() -> QApplication:
    """Give the running application, or make one."""
    app = QApplication.instance()
    return app if isinstance(app, QApplication) else QApplication(["studio-log"])


def window_picture(  # noqa: PLR0913 - what a picture is made of
    studio: Studio,
    clock: Clock,
    to: Path,
    size: tuple[int, int],
    *,
    scheme: Scheme = "light",
    text_percent: int = 100,
    lot: str | None = None,
) -> None:
    """Write the main window's picture as PNG; Refusal where the file cannot be written."""
    apply_theme(the_app(), scheme, text_percent)
    bridge = Bridge(InlineWorker(), studio, clock)
    window = MainWindow(bridge)
    window.resize(*size)
    window.start()
    window.show()
    if lot is not None:
        window.choose_lot(lot)
    _settle()
    window.minute.stop()
    _save(window, to, bridge)


def methods_picture(studio: Studio, clock: Clock, to: Path, size: tuple[int, int]) -> None:
    """Write a picture of the window “Methods”; Refusal where the file cannot be written."""
    apply_theme(the_app(), "light", 100)
    bridge = Bridge(InlineWorker(), studio, clock)
    box_picture(MethodBox(bridge), bridge, to, size)


def plan_picture(studio: Studio, clock: Clock, to: Path, size: tuple[int, int]) -> None:
    """Write a picture of the window “Plan”, of the plan that so many tries give each time."""
    from studio_log.app.window import plan_page

    apply_theme(the_app(), "light", 100)
    bridge = Bridge(InlineWorker(), studio, clock)
    box = plan_page(bridge, None, tries=PLAN_TRIES)
    _open(box, size)
    until = monotonic() + PATIENCE_S
    while box.is_busy and monotonic() < until:
        _settle()
    _settle()
    _save(box, to, bridge)


def swatches_picture(studio: Studio, clock: Clock, to: Path, size: tuple[int, int]) -> None:
    """Write a picture of the window “Swatches”; Refusal where the file cannot be written."""
    apply_theme(the_app(), "light", 100)
    bridge = Bridge(InlineWorker(), studio, clock)
    box_picture(SwatchBox(bridge), bridge, to, size)


def box_picture(box: QWidget, bridge: Bridge, to: Path, size: tuple[int, int]) -> None:
    """Write a picture of any window that was made over this bridge, and let both go."""
    _open(box, size)
    _save(box, to, bridge)


def _open(box: QWidget, size: tuple[int, int]) -> None:
    """Show a window by itself, dressed as the main window dresses what it opens."""
    box.setStyleSheet(style.sheet(theme()))
    box.resize(*size)
    box.show()
    _settle()


def _settle() -> None:
    """Let what was asked come home and be laid out."""
    app = the_app()
    for _ in range(12):
        app.processEvents(QEventLoop.ProcessEventsFlag.AllEvents, 50)
        app.sendPostedEvents()


def _save(widget: QWidget, to: Path, bridge: Bridge) -> None:
    """Write a widget's picture and let the widget go."""
    saved = widget.grab().save(str(to))
    bridge.close()
    widget.hide()
    widget.deleteLater()
    the_app().sendPostedEvents(None, QEvent.Type.DeferredDelete.value)
    if not saved:
        raise Refusal(f"The picture {to} could not be written. Is the folder writable?")
