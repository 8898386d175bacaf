"""Which notice on the screen tells of which reminders; read and written by several threads."""

import threading
import time
from collections import OrderedDict
from collections.abc import Callable, Iterable
from typing import Final

from studio_log.outside.notice_parcel import DEFAULT, OPEN, Receipt, Shown
from studio_log.services.ports import NoticeText

MOST_REMEMBERED: Final = 300
DOUBLE_S: Final = 2.0
"""A button pressed again within this time was meant once; later it is meant anew."""
Group = tuple[str, ...]
LEAVING: Final = NoticeText("", "", "calm", ())
"""Stands for the text of a notice that is being taken away."""


def _nothing() -> None:
    """Nobody wants to know."""


class Receipts:
    """The notices that may still be seen, newest last; the oldest of too many are forgotten.

    `changed` is called after each change, in the thread that made it.
    """

    def __init__(
        self,
        monotonic: Callable[[], float] = time.monotonic,
        changed: Callable[[], None] = _nothing,
    ) -> None:
        self._monotonic = monotonic
        self._changed = changed
        self._guard = threading.Lock()
        self._shown: OrderedDict[Receipt, Shown] = OrderedDict()
        self._groups: dict[Group, Receipt] = {}
        self._leaving: set[Receipt] = set()

    def __len__(self) -> int:
        return len(self._shown)

    def of(self, keys: Group) -> Receipt | None:
        """Give the receipt of the notice for exactly these keys, in any order."""
        with self._guard:
            return self._groups.get(_group(keys))

    def standing(self) -> list[tuple[Receipt, NoticeText]]:
        """Give the notices of reminders, oldest first; before them those that are leaving."""
        with self._guard:
            shown = [(receipt, one.text) for receipt, one in self._shown.items() if one.text.keys]
            return [*((receipt, LEAVING) for receipt in self._leaving), *shown]

    def adopt(self, left: Iterable[tuple[Receipt, NoticeText]]) -> None:
        """Take over what `standing` gave in an earlier process, oldest first."""
        with self._guard:
            for receipt, text in left:
                if text.keys:
                    self._drop(self._groups.get(_group(text.keys)))
                    self._put(receipt, text)
                else:
                    self._leaving.add(receipt)
        self._changed()

    def keep(
        self, receipt: Receipt, text: NoticeText, replaced: Receipt | None
    ) -> frozenset[Receipt]:
        """Keep a receipt; give those of notices that are now superfluous.

        That is another one for the same keys, and the replaced one where its place was not taken.
        They are known as leaving until they are forgotten.
        """
        with self._guard:
            for one in (replaced, receipt):
                self._drop(one)
            self._leaving.discard(receipt)
            group = _group(text.keys)
            other = self._groups.get(group)
            self._drop(other)
            self._put(receipt, text)
            while len(self._shown) > MOST_REMEMBERED:
                self._drop(next(iter(self._shown)))
            superfluous = frozenset(
                one
                for one in (other, replaced)
                if one is not None and one != receipt and one.owner == receipt.owner
            )
            self._leaving |= superfluous
        self._changed()
        return superfluous

    def forget(self, receipt: Receipt) -> None:
        """Forget a notice that is gone from the screen."""
        self._forget_where(lambda one: one == receipt)

    def keep_only(self, owner: str) -> None:
        """Forget the notices of every service but this one."""
        self._forget_where(lambda one: one.owner != owner)

    def forget_all(self) -> None:
        """Forget every notice: they are another process's."""
        self._forget_where(lambda _one: True)

    def press(self, receipt: Receipt, key: str) -> tuple[NoticeText, str] | None:
        """Give text and answer of a button; None for one not offered, or pressed just now."""
        with self._guard:
            shown = self._shown.get(receipt)
            if shown is None:
                return None
            if key not in (DEFAULT, *(answer for answer, _words in shown.text.answers)):
                return None
            now = self._monotonic()
            if now - shown.pressed.get(key, float("-inf")) < DOUBLE_S:
                return None
            shown.pressed[key] = now
            return shown.text, OPEN if key == DEFAULT else key

    def _forget_where(self, gone: Callable[[Receipt], bool]) -> None:
        with self._guard:
            known = [one for one in (*self._shown, *self._leaving) if gone(one)]
            for one in known:
                self._drop(one)
            self._leaving.difference_update(known)
        if known:
            self._changed()

    def _put(self, receipt: Receipt, text: NoticeText) -> None:
        self._shown[receipt] = Shown(text)
        if text.keys:
            self._groups[_group(text.keys)] = receipt

    def _drop(self, receipt: Receipt | None) -> None:
        if receipt is None:
            return
        shown = self._shown.pop(receipt, None)
        if shown is not None and self._groups.get(_group(shown.text.keys)) == receipt:
            del self._groups[_group(shown.text.keys)]


def _group(keys: Group) -> Group:
    return tuple(sorted(set(keys)))
