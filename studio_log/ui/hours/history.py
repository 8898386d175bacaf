"""What was changed in the box of the hours, one step back at a time, until it is kept."""

from typing import Final

from studio_log.domain.hours_draft import HoursDraft

MOST_STEPS: Final = 200


class History:
    """The draft in hand, those before it and those taken back."""

    def __init__(self, draft: HoursDraft) -> None:
        self.now = draft
        self._before: list[HoursDraft] = []
        self._after: list[HoursDraft] = []
        self._source = ""

    def push(self, draft: HoursDraft, source: str = "") -> None:
        """Take a new draft; what comes from one line, letter by letter, is one step."""
        if draft == self.now:
            return
        if not source or source != self._source or not self._before:
            self._before = [*self._before, self.now][-MOST_STEPS:]
        self._source, self.now = source, draft
        self._after.clear()

    def undo(self) -> bool:
        """Go a step back; False where there is none."""
        return self._go(self._before, self._after)

    def redo(self) -> bool:
        """Go a step on again; False where there is none."""
        return self._go(self._after, self._before)

    @property
    def can_undo(self) -> bool:
        """Whether there is a step to take back."""
        return bool(self._before)

    @property
    def can_redo(self) -> bool:
        """Whether there is one to restore."""
        return bool(self._after)

    def _go(self, there: list[HoursDraft], here: list[HoursDraft]) -> bool:
        if not there:
            return False
        here.append(self.now)
        self.now = there.pop()
        self._source = ""
        return True
