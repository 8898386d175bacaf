"""What a key or a click does across the room, and what is said of it; nothing is painted here."""

from collections.abc import Callable
from datetime import timedelta
from functools import partial
from typing import Final

from PySide6.QtCore import QObject, QTimer, Signal, Slot

from studio_log.language.words import tr, tr_later
from studio_log.present.words import clock
from studio_log.services.commands import AnswerReminder, Outcome, Undo
from studio_log.ui.across.guard import AFTER_MS, TURNED_MS, Guard
from studio_log.ui.across.scene import Scene, Thing, written
from studio_log.ui.across.sheet import Message
from studio_log.ui.bridge import Bridge, Doubt

SAID_MS: Final = 2_000
LONG_SAID_MS: Final = 10_000
"""For what has to be read and thought about."""
PUT_OFFS: Final = {
    "ten": timedelta(minutes=10),
    "thirty": timedelta(minutes=30),
    "morning": None,
}
FAULT: Final = tr_later(
    "The log met a fault of its own, and this was not written down. The log’s own window says more."
)
REFUSED: Final = tr_later("Not written down")
DOUBTED: Final = tr_later("Is this right?")
COSTLY: Final = tr_later("Put it off all the same?")


class Answering(QObject):
    """Sends one answer at a time and keeps what has to be said."""

    turned = Signal()
    """Something is to be shown anew."""

    def __init__(self, bridge: Bridge, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._bridge = bridge
        self._waiting = False
        self._ours = False
        self._yes: Callable[[], None] | None = None
        self.message: Message | None = None
        self.said = ""
        self.guard = Guard(self)
        self.saying = QTimer(self, singleShot=True)
        self.saying.timeout.connect(self._said_enough)

    @property
    def held(self) -> bool:
        """Whether the big answer takes no key just now."""
        return self._waiting or self.guard.holds("answer")

    def act(self, name: str, scene: Scene) -> None:
        """Do one act by its name in the table of keys, for what is shown."""
        if self.message is not None:
            self._settle(name)
        elif name == "back":
            self._take_back(scene)
        elif scene.first is not None and not self.held:
            self._answer(name, scene.first)

    def came(self, before: Thing | None, after: Thing | None) -> None:
        """Note that the bench came; what came first by itself is held until it can be read."""
        if after is not None and not self._ours and (before is None or before.key != after.key):
            self.guard.hold("answer", TURNED_MS)
        self._ours = self._waiting

    def forget(self) -> None:
        """Drop a question that was not answered; nothing of it is written."""
        self._yes = self.message = None
        self.said = ""
        self.saying.stop()

    def say(self, words: str, ms: int = LONG_SAID_MS) -> None:
        """Say something for so many milliseconds."""
        self.said = words
        self.saying.start(ms)
        self.turned.emit()

    def failed(self, words: str) -> None:
        """Show why something was refused, until a key is pressed."""
        self._waiting = self._ours = False
        self._yes = None
        self.message = Message(tr(REFUSED), words or tr(FAULT), tr("Go on"))
        self.turned.emit()

    def _answer(self, name: str, thing: Thing) -> None:
        if name in PUT_OFFS:
            span = PUT_OFFS[name]
            command = AnswerReminder(
                thing.key, "putoff", put_off=span, until_morning=span is None
            )  # fmt: skip
            if thing.warning:
                self._doubt_it(tr(COSTLY), thing.warning, partial(self._send, thing, command))
            else:
                self._send(thing, command)
        elif name == "answer":
            self._send(thing, AnswerReminder(thing.key, "done"))
        elif name == "damp" and thing.second:
            self._send(thing, AnswerReminder(thing.key, "damp"))

    def _send(self, thing: Thing, command: AnswerReminder) -> None:
        self._begin("answer")
        then = partial(self._done, thing, command.answer)
        self._bridge.do(command, then, failed=self.failed, asked=self._asked)

    def _take_back(self, scene: Scene) -> None:
        if scene.take_back and not self._waiting and not self.guard.holds("back"):
            self._begin("back")
            command = Undo(scene.take_back)
            self._bridge.do(command, self._taken_back, failed=self.failed, asked=self._asked)

    def _settle(self, name: str) -> None:
        """Take yes or no for what is asked; every other key is left alone."""
        if name not in {"answer", "no"} or (name == "answer" and self.held):
            return
        yes, self._yes, self.message = self._yes, None, None
        self.guard.hold("answer", AFTER_MS)
        if yes is not None and name == "answer":
            yes()
        self.turned.emit()

    def _begin(self, act: str) -> None:
        self._waiting = self._ours = True
        self.guard.hold("answer", AFTER_MS)
        self.guard.hold(act, AFTER_MS)
        self.turned.emit()

    def _done(self, thing: Thing, answer: str, outcome: Outcome) -> None:
        at = clock(self._bridge.now(), self._bridge.zone())
        back = tr(" — U takes it back") if outcome.subject else ""
        self._home(written(thing, answer, at) + back, outcome)

    def _taken_back(self, outcome: Outcome) -> None:
        self._home(outcome.words, outcome)

    def _home(self, words: str, outcome: Outcome) -> None:
        self._waiting = False
        ms = LONG_SAID_MS if outcome.advice else SAID_MS
        self.say(". ".join((words.removesuffix("."), *outcome.advice)), ms)

    def _asked(self, doubt: Doubt) -> None:
        self._waiting = self._ours = False
        self._doubt_it(tr(DOUBTED), doubt.words, partial(self._insist, doubt))

    def _doubt_it(self, title: str, words: str, yes: Callable[[], None]) -> None:
        self.guard.hold("answer", AFTER_MS)
        self._yes = yes
        self.message = Message(title, words, tr("Yes"), is_doubt=True)
        self.turned.emit()

    def _insist(self, doubt: Doubt) -> None:
        self._begin("answer")
        self._bridge.insist(doubt)

    @Slot()
    def _said_enough(self) -> None:
        self.said = ""
        self.turned.emit()
