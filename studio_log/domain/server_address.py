"""The address of a studio that lies on a PostgreSQL server, as it is typed and kept.

A connection URI as libpq reads it (postgresql.org/docs, "Connection URIs"), one host, and of
the parameters only those about TLS. A password may be typed in it; it is never part of what
is kept or shown.
"""

import re
from dataclasses import dataclass
from typing import Final
from urllib.parse import parse_qsl, quote, unquote, urlsplit

from studio_log.domain.errors import Refusal

SCHEMES: Final = ("postgresql", "postgres")
PORT: Final = 5432
TLS_MODES: Final = ("disable", "allow", "prefer", "require", "verify-ca", "verify-full")
"""`sslmode` of libpq; "prefer" is its default: TLS where the server offers it."""
LONGEST: Final = 400
LONGEST_NAME: Final = 63
"""Bytes of a name in PostgreSQL."""
_HOST: Final = re.compile(r"[A-Za-z0-9](?:[A-Za-z0-9.-]{0,252})|[0-9A-Fa-f:.]{2,45}")
FORM: Final = "postgresql://name@host/studio"


@dataclass(frozen=True)
class ServerAddress:
    """Where a shared studio lies; without the password."""

    host: str
    database: str
    user: str
    port: int = PORT
    tls: str = "prefer"
    root_cert: str = ""
    """A file with the certificate that signs the server's; "" for libpq's own place."""

    @property
    def text(self) -> str:
        """The address as it is kept and shown."""
        host = f"[{self.host}]" if ":" in self.host else self.host
        place = f"{host}:{self.port}" if self.port != PORT else host
        asked = [f"sslmode={self.tls}"] if self.tls != "prefer" else []
        if self.root_cert:
            asked.append(f"sslrootcert={quote(self.root_cert, safe='/')}")
        tail = "?" + "&".join(asked) if asked else ""
        user, database = quote(self.user, safe=""), quote(self.database, safe="")
        return f"postgresql://{user}@{place}/{database}{tail}"


@dataclass(frozen=True)
class TypedAddress:
    """An address as it was typed, and the password that stood in it, "" for none."""

    address: ServerAddress
    password: str = ""


def is_address(text: str) -> bool:
    """Say whether a text is meant as a server's address and not as a folder."""
    return text.strip().lower().startswith(tuple(f"{scheme}:" for scheme in SCHEMES))


def read_address(text: str) -> TypedAddress:
    """Read an address; Refusal that says what is amiss, and never repeats a password."""
    typed = text.strip()
    if len(typed) > LONGEST:
        raise _refused("it is far too long")
    if any(ord(letter) < 33 or ord(letter) == 127 for letter in typed):
        raise _refused("it holds a space or a sign that no address has")
    try:
        split = urlsplit(typed)
        port = split.port or PORT
    except ValueError as error:
        raise _refused("its host or its port cannot be read") from error
    if split.scheme not in SCHEMES:
        raise _refused("it does not begin with postgresql://")
    host = split.hostname or ""
    if not _HOST.fullmatch(host):
        raise _refused("it names no host")
    address = ServerAddress(
        host,
        _name(split.path.removeprefix("/"), "database"),
        _name(split.username or "", "user"),
        port,
        **_tls(split.query),
    )
    if split.fragment:
        raise _refused("something stands behind it")
    return TypedAddress(address, _secret(split.password))


def _name(text: str, what: str) -> str:
    name = unquote(text, errors="replace")
    if not name or "\0" in name or "\ufffd" in name or len(name.encode()) > LONGEST_NAME:
        raise _refused(f"it names no {what}")
    if what == "database" and "/" in text:
        raise _refused("its path is no name of a database")
    return name


def _secret(text: str | None) -> str:
    secret = unquote(text or "", errors="replace")
    if "\0" in secret or "\ufffd" in secret:
        raise _refused("its password cannot be read")
    return secret


def _tls(query: str) -> dict[str, str]:
    found: dict[str, str] = {}
    try:
        asked = parse_qsl(query, keep_blank_values=True, strict_parsing=bool(query))
    except ValueError as error:
        raise _refused("what stands behind its question mark cannot be read") from error
    for name, value in asked:
        if name == "sslmode" and value in TLS_MODES:
            found["tls"] = value
        elif name == "sslrootcert" and value and "\0" not in value:
            found["root_cert"] = value
        else:
            raise _refused("of parameters it may have sslmode and sslrootcert only")
    return found


def _refused(why: str) -> Refusal:
    return Refusal(
        f"That is no address of a studio on a server: {why}. Nothing was changed. "
        f"An address reads {FORM}, or {FORM}?sslmode=verify-full."
    )
