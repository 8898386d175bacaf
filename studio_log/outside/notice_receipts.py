"""Which notice on the screen tells of which reminders; read and written by several threads."""

import threading
import time
from collections import OrderedDict
from collections.abc import Callable
from typing import Final

from studio_log.outside.notice_parcel import DEFAULT, OPEN, Receipt, Shown
from studio_log.services.ports import NoticeText

MOST_REMEMBERED: Final = 300
DOUBLE_S: Final = 2.0
"""A button pressed again within this time was meant once; later it is meant anew."""
Group = tuple[str, ...]


class Receipts:
    """The notices that may still be seen, newest last; the oldest of too many are forgotten."""

    def __init__(self, monotonic: Callable[[], float] = time.monotonic) -> None:
        self._monotonic = monotonic
        self._guard = threading.Lock()
        self._shown: OrderedDict[Receipt, Shown] = OrderedDict()
        self._groups: dict[Group, Receipt] = {}

    def __len__(self) -> int:
        return len(self._shown)

    def of(self, keys: Group) -> Receipt | None:
        """Give the receipt of the notice for exactly these keys, in any order."""
        with self._guard:
            return self._groups.get(_group(keys))

    def keep(
        self, receipt: Receipt, text: NoticeText, replaced: Receipt | None
    ) -> frozenset[Receipt]:
        """Keep a receipt; give those of notices that are now superfluous.

        That is another one for the same keys, and the replaced one where its place was not taken.
        """
        with self._guard:
            for one in (replaced, receipt):
                self._drop(one)
            group = _group(text.keys)
            other = self._groups.get(group)
            self._drop(other)
            self._shown[receipt] = Shown(text)
            if group:
                self._groups[group] = receipt
            while len(self._shown) > MOST_REMEMBERED:
                self._drop(next(iter(self._shown)))
            return frozenset(
                one
                for one in (other, replaced)
                if one is not None and one != receipt and one.owner == receipt.owner
            )

    def forget(self, receipt: Receipt) -> None:
        """Forget a notice that is gone from the screen."""
        with self._guard:
            self._drop(receipt)

    def keep_only(self, owner: str) -> None:
        """Forget the notices of every service but this one."""
        with self._guard:
            for one in [one for one in self._shown if one.owner != owner]:
                self._drop(one)

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

    def _drop(self, receipt: Receipt | None) -> None:
        if receipt is None:
            return
        shown = self._shown.pop(receipt, None)
        if shown is not None and self._groups.get(_group(shown.text.keys)) == receipt:
            del self._groups[_group(shown.text.keys)]


def _group(keys: Group) -> Group:
    return tuple(sorted(set(keys)))
