"""The one object between the worker and the screens.

Screens hand over commands and questions as values; what became of them comes home in the
GUI thread, in the order in which it was asked.
"""

from collections.abc import Callable, Sequence
from concurrent.futures import Future
from dataclasses import dataclass, fields, replace
from datetime import datetime, timedelta
from functools import partial
from typing import Any, Final, Protocol, cast

from PySide6.QtCore import QObject, Qt, Signal, Slot
from shiboken6 import isValid

from studio_log.domain.errors import Question as Doubtful
from studio_log.domain.errors import Refusal
from studio_log.services.commands import Command, Outcome
from studio_log.services.ports import Clock, Delivery, NoticeText, Raised
from studio_log.services.questions import Question

Then = Callable[[Outcome], None]
Answered = Callable[[Any], None]
Failed = Callable[[str], None]

FOREIGN: Final = Outcome(settings=True, reminders=True)
"""Sent where another program changed the studio: anything may have changed."""


class Worker(Protocol):
    """The one thread that owns the data, or its twin for tests."""

    def submit(self, fn: Callable[..., Any], /, *args: Any) -> Future[Any]:
        """Run the call after those before it and give its future."""
        ...


class Studio(Protocol):
    """What can be asked for and asked; called on the worker only."""

    def do(self, command: Command, /) -> Outcome:
        """Do what a person asks; Refusal with words where it will not be done."""
        ...

    def ask(self, question: Question, /) -> Any:
        """Answer a question with the value that `services.questions` names."""
        ...


@dataclass(frozen=True)
class Doubt:
    """A doubtful request: the plain question, and what to send where the dyer insists."""

    words: str
    command: Command
    then: Then | None = None
    failed: Failed | None = None
    asked: "Callable[[Doubt], None] | None" = None


@dataclass(frozen=True)
class _Errand:
    """One call on its way to the worker and home."""

    home: Callable[["_Errand", Future[Any]], None]
    then: Callable[[Any], None] | None
    failed: Failed | None
    command: Command | None = None
    asked: Callable[[Doubt], None] | None = None

    def done(self, future: Future[Any]) -> None:
        """Hand the future on; runs in the worker's thread."""
        self.home(self, future)


def touches(outcome: Outcome, code: str) -> bool:
    """Say whether a change concerns the lot of this code."""
    return outcome is FOREIGN or code in outcome.lots


def insisted(command: Command) -> Command:
    """Give the same command with `sure` set, where it has that field."""
    if any(field.name == "sure" for field in fields(command)):
        return cast("Command", replace(cast("Any", command), sure=True))
    return command


class Bridge(QObject):
    """Takes commands and questions down to the studio, brings changes up; GUI thread only."""

    changed = Signal(object)
    """An Outcome, or FOREIGN: what has changed."""
    refused = Signal(str)
    questioned = Signal(object)
    """A Doubt: show its words; `insist` sends it again, sure."""
    broke = Signal(str)
    """A fault of the program; the words are for whoever mends it."""
    raised = Signal(object)
    """A NoticeText: a reminder is being raised just now."""
    shown = Signal(object)
    """A Raised: it was shown and recorded; the channels of the desktop have answered."""
    window_wanted = Signal()
    """The dyer has clicked a notice on the desktop."""

    _came_home = Signal(object, object)
    _elsewhere = Signal(object)
    _notice = Signal(object)
    _shown = Signal(object)
    _wanted = Signal()

    def __init__(
        self,
        worker: Worker,
        studio: Studio,
        clock: Clock,
        parent: QObject | None = None,
        *,
        ring_test: "Callable[[], Future[Sequence[Delivery]]] | None" = None,
    ) -> None:
        super().__init__(parent)
        self._worker = worker
        self._studio = studio
        self._clock = clock
        self._ring_test = ring_test
        self._closed = False
        queued = Qt.ConnectionType.QueuedConnection
        self._came_home.connect(self._deliver, queued)
        self._elsewhere.connect(self._tell_elsewhere, queued)
        self._notice.connect(self._tell_notice, queued)
        self._shown.connect(self._tell_shown, queued)
        self._wanted.connect(self.window_wanted, queued)

    def now(self) -> datetime:
        """Give the present, an aware UTC instant."""
        return self._clock.now()

    def zone(self) -> str:
        """Give the IANA name of the zone in force."""
        return self._clock.zone()

    def real(self, span: timedelta) -> timedelta:
        """Give how long a span lasts outside: shorter where the clock is hurried."""
        return self._clock.real(span)

    def do(
        self,
        command: Command,
        then: Then | None = None,
        *,
        failed: Failed | None = None,
        asked: Callable[[Doubt], None] | None = None,
    ) -> None:
        """Send a command. Without `failed` a refusal goes to `refused`, likewise `asked`."""
        self._send(
            _Errand(self._bring_home, then, failed, command, asked), self._studio.do, command
        )

    def insist(self, doubt: Doubt) -> None:
        """Send a doubted command again, sure."""
        self.do(insisted(doubt.command), doubt.then, failed=doubt.failed, asked=doubt.asked)

    def ask(self, question: Question, then: Answered, *, failed: Failed | None = None) -> None:
        """Ask; `then` gets the answer. It is dropped where its screen is gone by then."""
        self._send(_Errand(self._bring_home, then, failed), self._studio.ask, question)

    def ring_test(self, then: Answered) -> bool:
        """Ring a test by every channel; `then` gets the deliveries. False: cannot here."""
        if self._ring_test is None:
            return False
        self._ring_test().add_done_callback(_Errand(self._bring_home, then, None).done)
        return True

    def tell_changed(self, outcome: Outcome) -> None:
        """Take note, from any thread, of a change that no screen asked for."""
        if not self._closed:
            self._elsewhere.emit(FOREIGN if "*" in outcome.lots else outcome)

    def tell_raised(self, notice: NoticeText) -> None:
        """Take note, from any thread, that a reminder was raised."""
        if not self._closed:
            self._notice.emit(notice)

    def tell_shown(self, raised: Raised) -> None:
        """Take note, from any thread, that a reminder was shown and recorded."""
        if not self._closed:
            self._shown.emit(raised)

    def want_window(self) -> None:
        """Take note, from any thread, that the window is wanted."""
        if not self._closed:
            self._wanted.emit()

    def close(self) -> None:
        """Hear nothing any more."""
        self._closed = True

    def _send(self, errand: _Errand, call: Callable[..., Any], *args: Any) -> None:
        if not self._closed:
            self._worker.submit(call, *args).add_done_callback(errand.done)

    def _bring_home(self, errand: _Errand, future: Future[Any]) -> None:
        if not self._closed:
            self._came_home.emit(errand, future)

    @Slot(object, object)
    def _deliver(self, errand: _Errand, future: Future[Any]) -> None:
        if self._closed or future.cancelled():
            return
        error = future.exception()
        if error is None:
            self._deliver_answer(errand, future.result())
        elif isinstance(error, Doubtful) and errand.command is not None:
            self._deliver_doubt(errand, error)
        elif isinstance(error, Refusal):
            _call(errand.failed or self.refused.emit, str(error))
        else:
            if errand.failed is not None:
                _call(errand.failed, "")
            self.broke.emit(f"{type(error).__name__}: {error}")

    def _deliver_answer(self, errand: _Errand, answer: Any) -> None:
        if errand.then is not None:
            _call(errand.then, answer)
        if errand.command is not None:
            self.changed.emit(answer)
            if "*" in answer.lots:
                self.changed.emit(FOREIGN)

    def _deliver_doubt(self, errand: _Errand, error: Doubtful) -> None:
        if errand.command is None:  # pragma: no cover - the caller has looked
            return
        doubt = Doubt(str(error), errand.command, errand.then, errand.failed, errand.asked)
        _call(errand.asked or self.questioned.emit, doubt)

    @Slot(object)
    def _tell_elsewhere(self, outcome: Outcome) -> None:
        self.changed.emit(outcome)

    @Slot(object)
    def _tell_notice(self, notice: NoticeText) -> None:
        self.raised.emit(notice)

    @Slot(object)
    def _tell_shown(self, raised: Raised) -> None:
        self.shown.emit(raised)


def _call(target: Callable[[Any], None], value: Any) -> None:
    """Call a screen's method unless the screen was closed meanwhile."""
    bound = target.func if isinstance(target, partial) else target
    owner = getattr(bound, "__self__", None)
    if isinstance(owner, QObject) and not isValid(owner):
        return
    target(value)
