"""Moving a studio to a server and back, and opening one that is there."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final, Protocol

from studio_log.domain.errors import BadStudio, Question, Refusal
from studio_log.domain.server_address import ServerAddress, TypedAddress, read_address
from studio_log.language.words import tr
from studio_log.services.commands import Outcome
from studio_log.services.desk import Desk
from studio_log.services.ports import Secret
from studio_log.services.shared import (
    JoinStudio,
    RingHere,
    SharedSeen,
    ShareStudio,
    UnshareStudio,
)
from studio_log.store.database import Store
from studio_log.store.link import Link, read_link, remove_link, write_link
from studio_log.store.places import NO_DRIVER

if TYPE_CHECKING:
    from studio_log.services.keeping import Upkeep
    from studio_log.store.moving_in import Carried
    from studio_log.store.server import Server

ALL: Final = frozenset({"*"})


class Place(Protocol):
    """The studio, as a question sees it."""

    folder: Path
    store: Store
    upkeep: "Upkeep"


class Studio(Place, Protocol):
    """The studio, as it is moved."""

    secret: Secret

    def begin_anew(self) -> None:
        """Open the studio again, wherever it lies by now."""
        ...

    def set_alarm(self) -> None:
        """Set the alarm to the next ring."""
        ...


def share(studio: Studio, command: ShareStudio) -> Outcome:
    """Carry the studio to an empty database and go on there."""
    _not_shared(studio)
    typed = _typed(command.address, command.password)
    told = _known(studio, typed)
    with _opened(studio, typed.address, create=True) as server:
        carried = _moved(studio.store, server)
    _link(studio, typed.address)
    words = tr(
        "The studio lies on {where} now. Carried there and counted: lots {lots}, entries "
        "{entries}, photos {photos}. This laptop keeps a copy that follows.",
        where=typed.address.host, lots=carried.lots, entries=carried.entries,
        photos=carried.photos,
    )  # fmt: skip
    return _outcome(f"{words} {told}")


def join(studio: Studio, command: JoinStudio) -> Outcome:
    """Go on with the studio at an address; this laptop's has to be empty."""
    _not_shared(studio)
    with studio.store.reading() as look:
        if look.journal.mark():
            raise Refusal(
                tr(
                    "This folder holds a studio of its own. Nothing was changed. Open the one on "
                    "the server in another folder: studio-log --studio {address}.",
                    address=_typed(command.address, "").address.text,
                )
            )
    typed = _typed(command.address, command.password)
    told = _known(studio, typed)
    _opened(studio, typed.address, create=False).close()
    _link(studio, typed.address)
    return _outcome(tr("This laptop works on the studio on {where} now.", where=typed.address.host)
                    + f" {told}")  # fmt: skip


def unshare(studio: Studio, command: UnshareStudio) -> Outcome:
    """Go on with this laptop's copy alone, once it is as the server has it."""
    link = _linked(studio, tr("This studio is this laptop’s own already. Nothing was changed."))
    if studio.store.away:
        raise Refusal(
            tr(
                "The server is out of reach: what other laptops did would be missing here. "
                "Nothing was changed. Do it when the server answers."
            )
        )
    if not command.sure:
        raise Question(
            tr(
                "From then on this laptop and the others write two studios that nobody puts "
                "together again. Take it back to this laptop?"
            )
        )
    studio.store.catch_up()
    with _opened(studio, link.address, create=False) as server:
        from studio_log.store.moving_in import compare  # noqa: PLC0415 - as below

        compare(studio.store, server)
    remove_link(studio.folder)
    studio.begin_anew()
    return _outcome(
        tr(
            "The studio is this laptop’s own again: every entry was compared with the server’s. "
            "What lies on {where} stayed as it is; other laptops go on there.",
            where=link.address.host,
        )
    )


def ring_here(studio: Studio, command: RingHere) -> Outcome:
    """Choose whether reminders ring here."""
    link = _linked(
        studio, tr("Only one laptop has this studio, and it has to ring. Nothing was changed.")
    )
    write_link(studio.folder, replace(link, rings=command.rings))
    studio.begin_anew()
    studio.set_alarm()
    words = tr("Reminders ring on this laptop.") if command.rings else tr(
        "Reminders do not ring on this laptop; another one has to."
    )  # fmt: skip
    return Outcome(words, reminders=True)


def _linked(studio: Place, else_: str) -> Link:
    """Give where the studio lies on a server; else a Refusal with these words."""
    link = read_link(studio.folder)
    if link is None:
        raise Refusal(else_)
    return link


def seen(studio: Place, desk: Desk) -> SharedSeen:
    """Say where the studio lies and how it fares."""
    link = read_link(studio.folder)
    if link is None:
        return SharedSeen()
    store = studio.store
    return SharedSeen(
        link.address.text,
        store.away_words,
        len(desk.work.journal.after(mark)) if (mark := store.sent_mark()) is not None else 0,
        studio.upkeep.faults.get("sent", ""),
        link.rings,
    )


HANDLERS: Final[Mapping[type, Callable[[Studio, Any], Outcome]]] = {
    ShareStudio: share,
    JoinStudio: join,
    UnshareStudio: unshare,
    RingHere: ring_here,
}
"""Done outside any transaction: the studio's place itself changes."""


def _not_shared(studio: Studio) -> None:
    if studio.store.address:
        raise Refusal(
            tr(
                "This studio lies on {where} already. Nothing was changed; take it back to this "
                "laptop first.",
                where=studio.store.address,
            )
        )


def _typed(address: str, password: str) -> TypedAddress:
    found = read_address(address)
    return replace(found, password=password) if password else found


def _known(studio: Studio, typed: TypedAddress) -> str:
    """Have this laptop know the password; gives a sentence where it will have to be asked anew."""
    return studio.secret.learn(typed.address.text, typed.password) if typed.password else ""


def _link(studio: Studio, address: ServerAddress) -> None:
    """Name the server in the folder and open the studio there; or all is as it was."""
    write_link(studio.folder, Link(address))
    try:
        studio.begin_anew()
    except Refusal:
        remove_link(studio.folder)
        studio.begin_anew()
        raise


def _opened(studio: Studio, address: ServerAddress, *, create: bool) -> "Server":
    try:
        # Late: the driver takes a fifth of a second, and most studios are one laptop's own.
        from studio_log.store.server import open_server  # noqa: PLC0415
    except ImportError as error:
        raise BadStudio(NO_DRIVER) from error
    return open_server(address, studio.secret, studio.folder, create=create)


def _moved(local: Store, server: "Server") -> "Carried":
    """Carry all of it; where that fails, an empty database is empty again."""
    from studio_log.store.moving_in import holds_work, move_in  # noqa: PLC0415 - as above
    from studio_log.store.server import drop_studio  # noqa: PLC0415

    try:
        return move_in(local, server, lambda _done, _all: None)
    except Refusal:
        if not holds_work(server):
            drop_studio(server)
        raise


def _outcome(words: str) -> Outcome:
    return Outcome(words.strip(), lots=ALL, settings=True, reminders=True)
