"""What the plan's page needs of a timeline; whoever opens the page hands one in."""

from collections.abc import Callable, Sequence
from datetime import datetime
from typing import Protocol, cast

from PySide6.QtCore import SignalInstance
from PySide6.QtWidgets import QWidget

from studio_log.present.lanes import Closed, Lane, Night
from studio_log.present.timeline_shared import SharedRow


class TimeSheet(Protocol):
    """Lots over time: a widget, as the window's own timeline is."""

    plan_wanted: SignalInstance
    """Lot, number of a step, and the moment to which it was moved."""

    def show_lanes(
        self, lanes: Sequence[Lane], nights: Sequence[Night], now: datetime, zone: str, /
    ) -> None:
        """Show lots."""
        ...

    def show_around(
        self, closed: Sequence[Closed], shared: Sequence[SharedRow], /, *, left_out: int = 0
    ) -> None:
        """Take what stands around the lots."""
        ...

    def choose(self, code: str, /) -> None:
        """Highlight a lot."""
        ...


MakeSheet = Callable[[], TimeSheet]


def as_widget(sheet: TimeSheet) -> QWidget:
    """Give the sheet as what can be laid out."""
    return cast("QWidget", sheet)
