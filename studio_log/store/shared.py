"""A studio on a server, with a whole copy of it in a file of this laptop.

Acts are done on the server; what changed there, by whomever, follows into the file, and all
reading goes on in the file. So lists are as quick as ever, copies and exports are those of
any studio, and a network that is gone takes nothing away.

While the server is out of reach acts are done in the file. Before the first of them the
file is copied (`unsent/`): what the file has beyond that copy waits to be sent. Once it was
sent, the file becomes that copy again and follows the server as before; so nothing that was
done here alone is left in it, and a program that dies anywhere in between sends again what
the server knows already, which it then passes over.
"""

import shutil
import threading
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager
from datetime import datetime
from pathlib import Path
from typing import Final

from typing_extensions import override

from studio_log.domain.errors import BadStudio
from studio_log.store import faults, files, plain, server_side
from studio_log.store.database import Store, open_store
from studio_log.store.faults import ServerGone
from studio_log.store.following import Followed, changes, fetch_photos, mark_of, take_in
from studio_log.store.link import Link, write_link
from studio_log.store.server import Password, Server, open_server
from studio_log.store.server_ear import ServerEar
from studio_log.store.unsent import Send, Unsent, difference
from studio_log.store.work import Work

UNSENT: Final = "unsent"
PARTED: Final = (
    "The studio on {where} was put back or made anew while this laptop was away from it. What was "
    "done here meanwhile was not sent there; it is in {kept}."
)
LATER: Final = (
    "Something was done here while the rest was being sent to {where}. It is kept, and is sent "
    "next."
)


class _Another(Exception):  # noqa: N818 - no fault: the studio there was put back or made anew
    """The studio on the server is not the one that this file follows."""


class SharedStore(Store):
    """The file of a studio that lies on a server. One thread at a time, as any store."""

    def __init__(self, local: Store, link: Link, password: Password) -> None:
        super().__init__(local.path, local.sqlite, local.warnings)
        self._link = link
        self._password = password
        self._server: Server | None = None
        self._foreign = 0
        self._ear: ServerEar | None = None
        self._heard = threading.Event()
        self._heard.set()
        self._may_answer = True
        self.address = link.address.text
        self.rings = link.rings
        self.away_words = ""
        self.refused: BadStudio | None = None

    @property
    @override
    def away(self) -> bool:
        """Whether acts are done here and wait to be sent."""
        return self._server is None

    @override
    def listen(self, heard: Callable[[], None]) -> None:
        """Have a call made, in a thread of its own, when the server tells of a change."""

        def told(*, answers: bool) -> None:
            self._may_answer = answers
            self._heard.set()
            heard()

        if self._ear is not None:
            self._ear.close()
        self._ear = ServerEar(self._link.address, self._password, told)

    # -- while the server answers ------------------------------------------------------

    @contextmanager
    @override
    def work(self) -> Iterator[Work]:
        """Begin one writing transaction on the server, or here while it is out of reach.

        ServerGone where the server fell silent meanwhile: nothing was written, and whoever
        tries again works here.
        """
        if self._server is None:
            with self._work_here() as work:
                yield work
            return
        try:
            with self._server.work() as work:
                yield work
        except ServerGone as gone:
            self._lose(gone)
            raise
        finally:
            # After a refusal too: it was given for what changed there.
            if self._server is not None:
                self.follow(own=self._server.line.span)

    @override
    def catch_up(self) -> None:
        """Bring what changed on the server, whether it was heard of or not."""
        self.follow()

    def follow(self, own: tuple[int, int] = (0, 0)) -> None:
        """Bring what changed on the server into the file; `own` are one's own changes there."""
        if self._server is None or self._waits():  # what waits goes first
            return
        try:
            found = self._followed(self._server)
        except ServerGone as gone:
            self._lose(gone)
            return
        except _Another:
            self._fetch_anew(self._server)
            return
        if found.others(own):
            self._foreign += 1

    @override
    def data_version(self) -> int:
        """Give a number that changes when another laptop, program or process has written."""
        if self._heard.is_set():
            self._heard.clear()
            self.follow()
        return super().data_version() + self._foreign

    def _followed(self, server: Server) -> Followed:
        with (
            server.looking() as remote,
            self.writing() as session,
            changes(remote, mark_of(session)) as (sign, rows),
        ):
            if sign != self._link.sign:
                raise _Another
            found = take_in(session, rows)
            fetch_photos(remote, self.folder, found.photos)
        return found

    def _fetch_anew(self, server: Server) -> Path | None:
        """Fetch the whole studio; gives where the copy is that keeps what the file held."""
        beside = self.folder / f".{UNSENT}-fetched"
        with faults.told_with_disk(self.folder):
            shutil.rmtree(beside, ignore_errors=True)
            try:
                sign = _fetched(server, beside, self.folder)
                kept = self._keep_old()
                plain.pour(beside / files.FILE_NAME, self.path, lambda: None)
            finally:
                shutil.rmtree(beside, ignore_errors=True)
        self._link = self._link.with_sign(sign)
        write_link(self.folder, self._link)
        self._foreign += 1
        return kept

    def _keep_old(self) -> Path | None:
        with self.reading() as look:
            if look.journal.mark() == 0:
                return None
        stamp = files.stamp(files.last_change(self.path))
        kept = files.free_path(self.folder / files.COPIES, f"replaced-{stamp}")
        plain.copy(self.path, kept)
        return kept

    # -- while it does not -------------------------------------------------------------

    def _lose(self, gone: ServerGone) -> None:
        if self._server is not None:
            self._server.close()
        self._server = None
        self.sqlite.execute("PRAGMA synchronous = FULL")
        self._may_answer = False
        self.away_words = str(gone)
        self._foreign += 1

    @property
    def _before(self) -> Path:
        return self.folder / UNSENT

    @contextmanager
    def _work_here(self) -> Iterator[Work]:
        with super().work() as work:
            # Copied while no other process of this laptop can write: its acts are not lost in it.
            if not self._waits():
                with faults.told_with_disk(self.folder):
                    self._before.mkdir(exist_ok=True)
                plain.copy(self.path, self._before / files.FILE_NAME)
            work.provisional = True
            yield work

    def _waits(self) -> bool:
        """Say whether anything was done here, by whatever process, that was not sent."""
        return (self._before / files.FILE_NAME).exists()

    def unsent(self) -> Unsent:
        """Give what was done here and is not on the server yet."""
        if not self._waits():
            return Unsent()
        with (
            open_store(self._before, create=False) as before,
            before.reading() as then,
            self.reading() as now,
        ):
            return difference(then, now)

    @override
    def sent_mark(self) -> int | None:
        """Give the mark of the journal up to which the server has it; None where it has all."""
        copy = self._before / files.FILE_NAME
        if not self._waits():
            return None
        with faults.told_with_disk(self._before), closing(plain.connect(copy, "ro")) as line:
            found = line.execute("SELECT max(id) FROM entry").fetchone()
        return int(found[0] or 0)

    @override
    def reach(self, send: Send) -> bool:
        """Try the server again where it may answer; say whether it does.

        What waits is sent first, by `send`, all of it or nothing.
        """
        server = self._server
        if server is not None and not self._waits():
            return True
        if server is None and not self._may_answer:
            return False
        self._may_answer = False
        try:
            if server is None:
                server = open_server(self._link.address, self._password, self.folder)
            if self._is_ours(server):
                self._send(server, send)
            else:
                self._part(server)
        except BaseException as error:
            if server is not None:
                server.close()
            self._server = None
            if not isinstance(error, BadStudio):
                raise
            # Out of reach, or no longer letting this laptop in: what is here is worked on.
            self.away_words, self.refused = str(error), error
            return False
        self._server = server
        # What the file holds lies on the server too: no commit of it waits for the disk.
        self.sqlite.execute("PRAGMA synchronous = NORMAL")
        self.away_words, self.refused = "", None
        self._foreign += 1
        self.follow()
        return True

    def _is_ours(self, server: Server) -> bool:
        """Say whether the studio there is the one that the file followed, and no older state of it.

        A server that was put back from a copy of its own has the same sign and knows less.
        """
        with self._as_followed() as before:
            anchor, mark = before.journal.anchor(), mark_of(before.session)
        with server.looking() as line:
            sign = server_side.sign(line)
        with server.reading() as there:
            known = there.journal.holds(anchor)
        return sign == self._link.sign and known and mark <= server.data_version()

    @contextmanager
    def _as_followed(self) -> Iterator[Work]:
        """Look at the file as it was when it last followed the server."""
        if not self._waits():
            with self.reading() as look:
                yield look
            return
        with open_store(self._before, create=False) as before, before.reading() as then:
            yield then

    def _part(self, server: Server) -> None:
        """Fetch another studio in the place of the one that was; what waits stays in a copy."""
        waits = len(self.unsent().entries)
        kept = self._fetch_anew(server)
        with faults.told_with_disk(self.folder):
            shutil.rmtree(self._before, ignore_errors=True)
        if waits and kept is not None:
            self.warnings = (*self.warnings, PARTED.format(where=self.address, kept=kept))

    def _send(self, server: Server, send: Send) -> None:
        if not self._waits():
            return
        waiting = self.unsent()
        with server.work() as work:
            send(work, waiting)

        def nothing_since() -> None:
            """See, when nobody can write any more, that nothing was done here meanwhile."""
            with closing(plain.connect(self.path, "ro")) as line:
                found = line.execute("SELECT coalesce(max(id), 0) FROM entry").fetchone()
            if found[0] != waiting.mark:
                raise ServerGone(LATER.format(where=self.address))

        plain.pour(self._before / files.FILE_NAME, self.path, nothing_since)
        with faults.told_with_disk(self.folder):
            shutil.rmtree(self._before)

    @override
    def close(self) -> None:
        """Let go of server and file."""
        if self._ear is not None:
            self._ear.close()
        if self._server is not None:
            self._server.close()
        super().close()


def open_shared(
    folder: Path, link: Link, password: Password, *, now: datetime | None = None
) -> SharedStore:
    """Open the studio that a folder's link names, with this laptop's copy in the folder.

    The server need not answer.

    ServerGone where it does not answer and nothing of the studio is on this laptop yet.
    """
    store = SharedStore(open_store(folder, now=now), link, password)
    if not link.sign:
        with closing_on_error(store):
            _reach_first(store)
    return store


@contextmanager
def closing_on_error(store: Store) -> Iterator[None]:
    """Let go of a store where what follows fails."""
    try:
        yield
    except BaseException:
        store.close()
        raise


def _reach_first(store: SharedStore) -> None:
    if not store.reach(_nothing_to_send) and store.refused is not None:
        raise store.refused


def _nothing_to_send(_work: Work, _unsent: Unsent) -> None:
    """Send nothing: nothing was ever fetched."""


def _fetched(server: Server, beside: Path, folder: Path) -> str:
    """Put all that a server holds into a new file; gives the studio's sign."""
    with (
        open_store(beside) as fresh,
        server.looking() as remote,
        fresh.writing() as session,
        changes(remote, 0) as (sign, rows),
    ):
        fetch_photos(remote, folder, take_in(session, rows).photos)
    return sign
