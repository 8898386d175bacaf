"""Puts a studio together: the only place that knows which concrete parts are used."""

import os
from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from studio_log.app.passwords import Passwords
from studio_log.app.paths import VARIABLE, resource, studio_folder
from studio_log.domain.cautions import read_cautions
from studio_log.domain.server_address import is_address, read_address
from studio_log.outside.alarm import SchedulerAlarm
from studio_log.outside.bell import FileBell
from studio_log.outside.notice_memory import FILE_NAME
from studio_log.outside.notices import DesktopNotice
from studio_log.outside.sleep import SleepWatch
from studio_log.services.clock import SystemClock
from studio_log.services.keeping import Keeper
from studio_log.services.ports import Clock, Delivery, NoticeText
from studio_log.services.shelf import Shelf
from studio_log.services.studio import Studio
from studio_log.services.worker import ThreadWorker
from studio_log.store.link import Link, read_link, write_link

if TYPE_CHECKING:
    from concurrent.futures import Future

TEST = NoticeText("A test of Studio Log", "If you can read this, notices reach you.", "soon", ())


def shipped_methods() -> dict[str, str]:
    """Give the methods that come with the program: file name to TOML."""
    folder = resource("methods")
    return {path.name: path.read_text(encoding="utf-8") for path in sorted(folder.glob("*.toml"))}


def open_studio(
    where: str | Path | None, *, clock: Clock | None = None, secret: Passwords | None = None
) -> Studio:
    """Open (or make) the studio at a place; it does not ring.

    WrongPassword where it lies on a server that wants another one than `secret` knows.
    """
    folder = where if isinstance(where, Path) else studio_folder(where)
    if secret is None:
        secret = secret_of(where, folder)
    cautions = read_cautions(resource("cautions.toml").read_text(encoding="utf-8"))
    studio = Studio(folder, clock or SystemClock(), shipped_methods(), cautions, secret)
    studio.shelf = Shelf(lambda name: resource(name).read_text(encoding="utf-8"))
    return studio


def secret_of(where: str | Path | None, folder: Path) -> Passwords:
    """Give what knows the password of a folder's server; an address that was typed is linked."""
    asked = "" if isinstance(where, Path) else where or os.environ.get(VARIABLE) or ""
    if not is_address(asked):
        link = read_link(folder)
        return Passwords(link.address.text if link is not None else "")
    typed = read_address(asked)
    link = read_link(folder)
    if link is None or link.address != typed.address:
        write_link(
            folder, Link(typed.address) if link is None else replace(link, address=typed.address)
        )
    secret = Passwords(typed.address.text)
    if typed.password:
        secret.learn(typed.address.text, typed.password)
    return secret


class Ringing:
    """What lets a studio ring: alarm, notices, bell, and the watch for waking from sleep.

    `worker` is the thread that owns the studio; `opened` is called, in a thread of the
    notices, where the dyer clicks a notice.
    """

    def __init__(
        self,
        studio: Studio,
        worker: ThreadWorker,
        *,
        demo: bool = False,
        opened: Callable[[], None] | None = None,
    ) -> None:
        self._studio = studio
        self._worker = worker
        self._opened = opened
        self._messenger = ThreadWorker("messenger")
        memory = studio.folder / FILE_NAME
        self._notice = DesktopNotice(demo=demo, acted=self._acted, memory=memory)
        alarm = SchedulerAlarm(self._ring, studio.clock)
        self._sleep = SleepWatch(alarm.look_again)
        studio.notice, studio.alarm, studio.bell = self._notice, alarm, FileBell(studio.folder)
        studio.telling.send_by(self._messenger, worker.hand_on)
        self._keeper = Keeper(studio, worker.submit)
        studio.listeners.append(self._keeper.heard)
        studio.upkeep.day_begun = self._keeper.soon
        self._keeper.soon()

    def test(self) -> "Future[Sequence[Delivery]]":
        """Ring a test; what each channel answered is there within 3 s."""
        return self._messenger.submit(self._notice.show, TEST)

    def close(self) -> None:
        """End in order: nothing new is raised, what is being shown is recorded, the file closed.

        Called on another thread than the studio's own.
        """
        self._worker.submit(self._studio.stop_ringing).result()
        self._sleep.close()
        self._keeper.close()
        self._messenger.close()
        self._worker.submit(self._studio.close).result()

    def _ring(self) -> None:
        self._worker.hand_on(self._studio.raise_due)

    def _acted(self, text: NoticeText, answer: str) -> None:
        if answer != "open":
            self._worker.hand_on(partial(self._studio.answer_notice, text, answer))
        elif self._opened is not None:
            self._opened()
