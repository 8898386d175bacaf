"""Faults of a server and of the way to it, said as sentences."""

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from typing import Final

import psycopg
from sqlalchemy.exc import DBAPIError

from studio_log.domain.errors import BadStudio, Refusal
from studio_log.store.faults import ServerGone, ServerUnsure, WrongPassword
from studio_log.store.journal import NO_TEXT

GONE: Final = (
    "The studio's server {where} cannot be reached. Nothing of this was written there. "
    "Look whether this laptop is on the network and the server runs."
)
UNSURE: Final = (
    "The line to the studio's server {where} broke while this was being written. It may be "
    "there or not: look at it once the server answers again, before doing it a second time."
)
BUSY: Final = (
    "Another laptop held the studio on {where} for more than five seconds. Nothing of this "
    "was written. Wait a little, and do it again."
)
FULL: Final = (
    "The disk of the server {where} is full. Nothing of this was written, and everything "
    "written before is kept. Have room made there, and do it again."
)
SHUT: Final = (
    "The server {where} does not let this user in: the name or the password is wrong, or the "
    "server does not allow this laptop. Nothing was changed. Ask whoever looks after the server."
)
NO_DATABASE: Final = (
    "There is no database of that name on {where}. Nothing was changed. Check the address, or "
    "have an empty database made there."
)
NO_RIGHT: Final = (
    "The server {where} does not allow this user to write there ({detail}). Nothing was "
    "changed. The user has to own the database."
)
TLS: Final = (
    "The server {where} cannot be trusted as the address asks ({detail}). Nothing was sent. "
    "Check sslmode and the certificate in the address."
)
REFUSED: Final = (
    "The studio's server {where} refused what was to be written ({detail}). Nothing of this "
    "was written."
)
FOREIGN: Final = (
    "The database {where} holds something else than a studio. It was left as it is. Name an "
    "empty database."
)
EMPTY: Final = (
    "The database {where} is empty. Nothing was changed. Move a studio there first, on the laptop "
    "that holds it (Studio, Share between laptops; or studio-log share)."
)
NEWER: Final = (
    "The studio on {where} was brought to a newer form by a newer Studio Log. It was left as "
    "it is. Install the newer version on this laptop too; what is here can be read meanwhile."
)
ENCODING: Final = (
    "The database {where} does not keep its text as UTF-8. Nothing was changed. Have one made "
    "with the encoding UTF8."
)

SENTENCES: Final[Mapping[str, str]] = {
    "08": GONE,
    "28": SHUT,
    "3D": NO_DATABASE,
    "53100": FULL,
    "53": BUSY,
    "55P03": BUSY,
    "57014": BUSY,
    "57P": GONE,
    "25P03": GONE,
    "40": BUSY,
    "42501": NO_RIGHT,
    "25006": NO_RIGHT,
}
"""By the SQLSTATE or how it begins (postgresql.org/docs, "PostgreSQL Error Codes")."""
KINDS: Final[Mapping[str, type[BadStudio]]] = {
    GONE: ServerGone,
    UNSURE: ServerUnsure,
    SHUT: WrongPassword,
}


def refusal(words: str, where: str, detail: str = "") -> BadStudio:
    """Give the sentence with its place filled in."""
    return KINDS.get(words, BadStudio)(words.format(where=where, detail=detail))


def as_refusal(error: BaseException, where: str) -> Refusal:
    """Say an error of psycopg as a sentence; what was to be written stands in none."""
    if isinstance(error, DBAPIError) and error.orig is not None:
        error = error.orig
    if isinstance(error, psycopg.DataError):
        return Refusal(NO_TEXT)
    state = getattr(error, "sqlstate", None) or ""
    for length in (5, 3, 2):
        if (words := SENTENCES.get(state[:length])) is not None:
            return refusal(words, where, _detail(error))
    if state:
        return refusal(REFUSED, where, _detail(error))
    return _without_state(error, where)


def _without_state(error: BaseException, where: str) -> BadStudio:
    """Say what libpq told in words alone: it never got as far as a server's answer."""
    words = str(error)
    # A line that breaks speaks of SSL as well: only what is about trust is told as such.
    if "certificate" in words or "does not support SSL" in words:
        return refusal(TLS, where, words.strip().splitlines()[-1][:200])
    if "authentication" in words or "password" in words:
        return refusal(SHUT, where)
    if "does not exist" in words and "database" in words:
        return refusal(NO_DATABASE, where)
    return refusal(GONE, where)


def _detail(error: BaseException) -> str:
    """Give the server's own first line, which names tables and rules and no values."""
    told = getattr(getattr(error, "diag", None), "message_primary", None)
    return str(told or type(error).__name__)[:200]


@contextmanager
def told(where: str) -> Iterator[None]:
    """Turn psycopg's errors inside into sentences; errors of any other kind pass."""
    try:
        yield
    except (DBAPIError, psycopg.Error) as error:
        if isinstance(error, DBAPIError) and not isinstance(error.orig, psycopg.Error):
            raise  # the file's, on its way to its own words
        raise as_refusal(error, where) from error
