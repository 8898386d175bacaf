"""The index of words in either database: SQLite's FTS5, PostgreSQL's tsvector.

Both find the beginnings of words, and take a word with signs in it ("blue-green") for its
parts, one after the other. Accents count for nothing.
"""

import re
import unicodedata
from collections.abc import Mapping, Sequence
from typing import Any, Final, Protocol

from sqlalchemy import ColumnElement, bindparam, text
from sqlalchemy.ext.compiler import compiles
from sqlalchemy.sql.functions import FunctionElement
from sqlalchemy.types import Boolean
from sqlmodel import Session

from studio_log.store.rows import rows

LONGEST_WORD: Final = 500
"""Signs of a lexeme, which may have 2,046 bytes (postgresql.org/docs, 12.11 Limitations)."""
LAST_PLACE: Final = 16_383
"""Of a word in a tsvector (the same page)."""
_WORD: Final = re.compile(r"[^\W_]+")


class Index(Protocol):
    """Words of lots by the places of their codes."""

    def __init__(self, session: Session) -> None: ...

    def put(self, words: Mapping[int, str]) -> None:
        """Write the words of these, in place of what is there."""
        ...

    def kept(self) -> dict[int, str]:
        """Give all words as they were written."""
        ...

    def remove(self, places: Sequence[int]) -> None:
        """Forget the words of these."""
        ...

    def clear(self) -> None:
        """Forget all words, also those of a damaged index."""
        ...


class FullText:
    """FTS5 in a file."""

    def __init__(self, session: Session) -> None:
        self._session = session

    def put(self, words: Mapping[int, str]) -> None:
        """Write the words of these, in place of what is there."""
        self.remove(list(words))
        self._session.connection().execute(
            text("INSERT INTO lot_words (rowid, words) VALUES (:at, :words)"),
            [{"at": at, "words": found} for at, found in words.items()],
        )

    def kept(self) -> dict[int, str]:
        """Give all words as they were written."""
        found = rows(self._session, text("SELECT rowid, words FROM lot_words"))
        return {row.rowid: row.words for row in found}

    def remove(self, places: Sequence[int]) -> None:
        """Forget the words of these."""
        self._session.connection().execute(
            text("DELETE FROM lot_words WHERE rowid = :at"), [{"at": at} for at in places]
        )

    def clear(self) -> None:
        """Make the index anew: one that is damaged cannot be emptied."""
        line = self._session.connection()
        made = line.execute(text("SELECT sql FROM sqlite_master WHERE name = 'lot_words'")).scalar()
        line.execute(text("DROP TABLE lot_words"))
        line.execute(text(str(made).replace(":", "\\:")))


class Lexemes:
    """A tsvector on a server, put together here: its own parsers know no half of a word."""

    def __init__(self, session: Session) -> None:
        self._session = session

    def put(self, words: Mapping[int, str]) -> None:
        """Write the words of these, in place of what is there."""
        self._session.connection().execute(
            text(
                "INSERT INTO lot_words (ordinal, words, found) "
                "VALUES (:at, :words, CAST(:found AS tsvector)) ON CONFLICT (ordinal) "
                "DO UPDATE SET words = excluded.words, found = excluded.found"
            ),
            [{"at": at, "words": found, "found": _placed(found)} for at, found in words.items()],
        )

    def kept(self) -> dict[int, str]:
        """Give all words as they were written."""
        found = rows(self._session, text("SELECT ordinal, words FROM lot_words"))
        return {row.ordinal: row.words for row in found}

    def remove(self, places: Sequence[int]) -> None:
        """Forget the words of these."""
        self._session.connection().execute(
            text("DELETE FROM lot_words WHERE ordinal = :at"), [{"at": at} for at in places]
        )

    def clear(self) -> None:
        """Empty the index."""
        self._session.execute(text("DELETE FROM lot_words"))


INDEXES: Final[Mapping[str, type[Index]]] = {"sqlite": FullText, "postgresql": Lexemes}


class _LotsWith(FunctionElement[bool]):
    """Whether the lot of an ordinal has words that match; asked of FTS5 or of a tsvector."""

    type = Boolean()
    inherit_cache = True
    name = "lots_with"


@compiles(_LotsWith, "sqlite")
def _by_full_text(element: Any, compiler: Any, **rest: Any) -> str:
    place, matched, _ = (compiler.process(one, **rest) for one in element.clauses)
    found = f"SELECT rowid FROM lot_words WHERE lot_words MATCH {matched}"  # noqa: S608 - compiled
    return f"({place} IN ({found}))"


@compiles(_LotsWith, "postgresql")
def _by_lexemes(element: Any, compiler: Any, **rest: Any) -> str:
    place, found = (compiler.process(element.clauses.clauses[n], **rest) for n in (0, 2))
    asked = f"SELECT ordinal FROM lot_words WHERE found @@ CAST({found} AS tsquery)"  # noqa: S608
    return f"({place} IN ({asked}))"


def asked_words(find: str) -> list[str]:
    """Give the words of what was typed, small; signs that stand alone are none."""
    plain = "".join(letter if _is_text(letter) else " " for letter in find.casefold())
    return [
        word
        for word in plain.split()
        if any(unicodedata.category(letter)[0] in "LN" for letter in word)
    ]


def lots_with(place: ColumnElement[int], words: Sequence[str]) -> ColumnElement[bool]:
    """Give the condition that the lot whose code has this place has all words so beginning."""
    full_text = " ".join('"' + word.replace('"', '""') + '"*' for word in words)
    lexemes = " & ".join(filter(None, map(_phrase, words)))
    return _LotsWith(
        place,
        bindparam("matched", full_text, unique=True),
        bindparam("lexemes", lexemes, unique=True),
    )


def _is_text(letter: str) -> bool:
    return unicodedata.category(letter) not in {"Cc", "Cs"}


def parts(words: str) -> list[str]:
    """Give the lexemes of a text in order: runs of letters and figures, without accents."""
    plain = unicodedata.normalize("NFD", words.casefold())
    bare = "".join(letter for letter in plain if unicodedata.category(letter) != "Mn")
    return [word[:LONGEST_WORD] for word in _WORD.findall(bare)]


def _placed(words: str) -> str:
    found = enumerate(parts(words), 1)
    return " ".join(f"'{word}':{min(place, LAST_PLACE)}" for place, word in found)


def _phrase(word: str) -> str:
    """Give a word as a tsquery: its parts follow each other, the last one begins so."""
    found = [f"'{part}'" for part in parts(word)]
    return "(" + " <-> ".join(found) + ":*)" if found else ""
