"""Handing notices to the messenger, and keeping what stands on the screen true.

The messenger is a thread of its own: a notification service that hangs holds up nobody's
answer. What became of a notice comes home to the studio's thread and is recorded there.
"""

import logging
from collections.abc import Callable, Collection, Sequence
from functools import partial
from typing import TYPE_CHECKING, Any

from studio_log.services.commands import Outcome
from studio_log.services.ports import Bell, Delivery, Notice, NoticeText
from studio_log.services.worker import InlineWorker, Worker

if TYPE_CHECKING:
    from concurrent.futures import Future

Home = Callable[[Callable[[], None]], Any]
"""Runs a call on the studio's thread, after what was handed in before it."""
Told = Callable[[Sequence[Delivery]], None]

_log = logging.getLogger(__name__)


def _nothing() -> None:
    """Nobody wants to know."""


def _at_once(call: Callable[[], None]) -> None:
    call()


class Telling:
    """Shows notices, revises them, takes them away; used from the studio's thread."""

    def __init__(self) -> None:
        self.notice: Notice | None = None
        self.state_changed: Callable[[], None] = _nothing
        """Called, on the studio's thread, when the channels work otherwise than was said."""
        self._looking = False
        self._has_bell = False
        self._messenger: Worker = InlineWorker()
        self._home: Home = _at_once
        self._groups: list[tuple[str, ...]] = []
        self._under_way: list[tuple[str, ...]] = []

    def send_by(self, messenger: Worker, home: Home) -> None:
        """Send by a thread of its own from now on; `home` must never raise."""
        self._messenger, self._home = messenger, home

    @property
    def under_way(self) -> frozenset[str]:
        """Keys of reminders that are being shown and not recorded yet."""
        return frozenset(key for keys in self._under_way for key in keys)

    @property
    def standing(self) -> tuple[tuple[str, ...], ...]:
        """The groups of reminders told by notices of this process, the latest last."""
        return tuple(self._groups)

    def state(self) -> tuple[bool, str]:
        """Say what is known of the channels; what is stale is asked anew, and nobody waits."""
        if self.notice is None:
            return False, "no reminders ring from this command"
        known = self.notice.state()
        if self.notice.stale() and not self._looking:
            self._looking = True
            future = self._messenger.submit(self.notice.look)
            future.add_done_callback(lambda done: self._home(partial(self._looked, known, done)))
        return known

    def _looked(self, before: tuple[bool, str], done: "Future[tuple[bool, str]]") -> None:
        self._looking = False
        if done.exception() is None and done.result() != before:
            self.state_changed()

    def may_ring(self, bell: Bell | None, changed: Callable[[Outcome], None]) -> bool:
        """Say whether this process may ring: alone it may, else with the bell.

        With the bell go the notices on the screen. `changed` is called, on the studio's thread,
        once those of an earlier process are known, so that answered ones are put right.
        """
        if bell is None:
            return True
        before, self._has_bell = self._has_bell, bell.hold()
        if self.notice is not None and before != self._has_bell:
            if self._has_bell:
                future = self._messenger.submit(self.notice.take_over)
                future.add_done_callback(
                    lambda done: self._home(partial(self._took_over, done, changed))
                )
            else:
                self._messenger.submit(self.notice.hand_over)
                self._groups.clear()
        return self._has_bell

    def _took_over(
        self,
        done: "Future[tuple[tuple[str, ...], ...]]",
        changed: Callable[[Outcome], None],
    ) -> None:
        error = done.exception()
        if error is not None:
            _log.error("the notices of an earlier process were not taken over", exc_info=error)
        elif self._has_bell and done.result():
            older = [keys for keys in done.result() if keys not in self._groups]
            self._groups = older + self._groups
            changed(Outcome(reminders=True))

    def tell(self, text: NoticeText, told: Told) -> None:
        """Show a notice; `told` gets the deliveries, on the studio's thread."""
        if self.notice is None:
            told(())
            return
        self._under_way.append(text.keys)
        future = self._messenger.submit(self.notice.show, text)

        def home(done: "Future[Sequence[Delivery]]") -> None:
            self._home(partial(self._came_home, text, done, told))

        future.add_done_callback(home)

    def say(self, text: NoticeText) -> None:
        """Show words that are no reminder's; nothing is recorded."""
        if self.notice is not None:
            self._messenger.submit(self.notice.show, text)

    def revise(
        self, raised: Collection[str], retell: Callable[[tuple[str, ...]], NoticeText | None]
    ) -> None:
        """Take answered reminders out of the notices that stand on the screen.

        `raised` are the keys that still ring; `retell` makes the text for those left.
        """
        if self.notice is None:
            return
        kept: list[tuple[str, ...]] = []
        later: set[str] = set()
        # One that is being shown takes the place of its older notice, which is left alone.
        ringing = self.under_way.union(raised)
        for keys in reversed(self._groups):
            left = tuple(key for key in keys if key in ringing and key not in later)
            later.update(keys)
            if left == keys:
                kept.append(keys)
                continue
            text = retell(left) if left else None
            self._messenger.submit(self.notice.revise, keys, text)
            if text is not None:
                kept.append(text.keys)
        self._groups = kept[::-1]

    def close(self) -> None:
        """Finish what is under way and let go of the channels."""
        self._messenger.close()
        if self.notice is not None:
            self.notice.close()

    def _came_home(self, text: NoticeText, done: "Future[Sequence[Delivery]]", told: Told) -> None:
        if text.keys in self._under_way:
            self._under_way.remove(text.keys)
        error = done.exception()
        if error is not None and not isinstance(error, Exception):
            raise error
        if error is not None:
            _log.error("a notice could not be shown", exc_info=error)
            deliveries: Sequence[Delivery] = (Delivery("desktop", ok=False, words=f"{error}"),)
        else:
            deliveries = done.result()
        if text.keys and any(one.ok for one in deliveries):
            self._groups = [keys for keys in self._groups if keys != text.keys]
            self._groups.append(text.keys)
        told(deliveries)
