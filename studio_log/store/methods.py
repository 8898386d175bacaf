"""Methods on disk: every version that a lot may have joined, as it was written."""

import zlib
from typing import Any

from sqlalchemy import Row, Select, select
from sqlmodel import Session

from studio_log.domain.errors import BadMethod, BadStudio
from studio_log.store.rows import UNREADABLE, rows, upsert
from studio_log.store.tables import METHOD
from studio_log.store.values import MethodText

COLUMNS = (METHOD.c.slug, METHOD.c.version, METHOD.c.title, METHOD.c.text, METHOD.c.seal)


class Methods:
    """All versions of all methods; a version, once kept, stays as it is."""

    def __init__(self, session: Session) -> None:
        self._session = session

    def put(self, slug: str, version: int, title: str, text: str) -> None:
        """Keep a version; the same again changes nothing, another text is refused."""
        kept = self.get(slug, version)
        if kept is None:
            value: dict[str, Any] = {"slug": slug, "version": version, "title": title, "text": text}
            value["seal"] = zlib.crc32(text.encode())
            upsert(self._session, METHOD, [value])
        elif kept.text != text:
            raise BadMethod(
                f"Version {version} of {slug} is kept already and says something else. "
                "Nothing was changed. Give the changed method a higher version."
            )

    def get(self, slug: str, version: int) -> MethodText | None:
        """Give a version as it was written, None where it is not kept."""
        wanted = (METHOD.c.slug == slug) & (METHOD.c.version == version)
        found = self._texts(select(*COLUMNS).where(wanted))
        return found[0] if found else None

    def latest(self, slug: str) -> MethodText | None:
        """Give the highest version of a method, None where none is kept."""
        statement = select(*COLUMNS).where(METHOD.c.slug == slug)
        found = self._texts(statement.order_by(METHOD.c.version.desc()).limit(1))
        return found[0] if found else None

    def keys(self) -> set[tuple[str, int]]:
        """Give slug and version of everything that is kept."""
        found = rows(self._session, select(METHOD.c.slug, METHOD.c.version))
        return {(row.slug, row.version) for row in found}

    def all(self) -> tuple[MethodText, ...]:
        """Give every version of every method, by slug, then version."""
        return self._texts(select(*COLUMNS).order_by(METHOD.c.slug, METHOD.c.version))

    def _texts(self, statement: Select[Any]) -> tuple[MethodText, ...]:
        return tuple(_text(row) for row in rows(self._session, statement))


def _text(row: Row[Any]) -> MethodText:
    if not isinstance(row.text, str) or zlib.crc32(row.text.encode()) != row.seal:
        raise BadStudio(UNREADABLE.format(what=f"version {row.version} of method {row.slug}"))
    return MethodText(row.slug, row.version, row.title, row.text)
