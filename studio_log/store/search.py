"""The index of words: the only place that knows SQLite's FTS5."""

import unicodedata
from collections.abc import Iterable

from sqlalchemy import (
    ColumnElement,
    Integer,
    bindparam,
    false,
    literal_column,
    select,
    text,
)
from sqlmodel import Session

from studio_log.store.rows import CHUNK, from_json, rows
from studio_log.store.tables import ENTRY, LOT
from studio_log.store.values import LotLine

MATCHING = "SELECT rowid FROM lot_words WHERE lot_words MATCH :matched"


class LotWords:
    """All that was typed about each lot, found by the beginnings of its words."""

    def __init__(self, session: Session) -> None:
        self._session = session

    def put_all(self, lines: Iterable[LotLine]) -> None:
        """Write the words of these lots anew: those of their lines and of their journals."""
        words = self._words_of(lines)
        if words:
            line = self._session.connection()
            gone = [{"at": ordinal(code)} for code in words]
            line.execute(text("DELETE FROM lot_words WHERE rowid = :at"), gone)
            line.execute(
                text("INSERT INTO lot_words (rowid, words) VALUES (:at, :words)"),
                [{"at": ordinal(code), "words": found} for code, found in words.items()],
            )

    def unlike(self, lines: Iterable[LotLine]) -> list[str]:
        """Give the codes whose words are not there as they should be."""
        asked = text("SELECT rowid, words FROM lot_words")
        kept = {row.rowid: row.words for row in rows(self._session, asked)}
        wanted = self._words_of(lines)
        return [code for code, words in wanted.items() if kept.get(ordinal(code)) != words]

    def _words_of(self, lines: Iterable[LotLine]) -> dict[str, str]:
        texts = {line.code: [line.search_text, short_number(line.code)] for line in lines}
        codes = list(texts)
        for start in range(0, len(codes), CHUNK):
            part = codes[start : start + CHUNK]
            asked = select(ENTRY.c.subject, ENTRY.c.note, ENTRY.c.readings, ENTRY.c.data)
            for row in rows(self._session, asked.where(ENTRY.c.subject.in_(part))):
                texts[row.subject] += (row.note, *_texts(row.readings), *_texts(row.data))
        return {code: " ".join(dict.fromkeys(found)).casefold() for code, found in texts.items()}

    def remove(self, code: str) -> None:
        """Forget the words of a lot."""
        self._session.execute(
            text("DELETE FROM lot_words WHERE rowid = :at"), {"at": ordinal(code)}
        )

    def clear(self) -> None:
        """Forget all words, before they are written anew: also those of a damaged index."""
        line = self._session.connection()
        made = line.execute(text("SELECT sql FROM sqlite_master WHERE name = 'lot_words'")).scalar()
        line.execute(text("DROP TABLE lot_words"))
        line.execute(text(str(made).replace(":", "\\:")))


def holds(find: str) -> ColumnElement[bool] | None:
    """Give the condition that a lot's words begin with each word of `find`, None for no words.

    Signs alone are found nowhere.
    """
    matched = match_words(find)
    if not matched:
        return false() if find.strip() else None
    found = text(MATCHING).bindparams(bindparam("matched", matched, unique=True))
    return LOT.c.ordinal.in_(found.columns(literal_column("rowid", Integer)))


def match_words(find: str) -> str:
    """Give what FTS5 is asked for these words: each in quotation marks, each a beginning."""
    plain = "".join(letter if _is_text(letter) else " " for letter in find.casefold())
    return " ".join(
        f'"{word.replace(chr(34), chr(34) * 2)}"*'
        for word in plain.split()
        if any(unicodedata.category(letter)[0] in "LN" for letter in word)
    )


def _is_text(letter: str) -> bool:
    return unicodedata.category(letter) not in {"Cc", "Cs"}


def ordinal(code: str) -> int:
    """Give the place of a code among all codes: 26-999 before 26-1000."""
    year, _, number = code.partition("-")
    return _figure(year) * 1_000_000 + _figure(number)


def short_number(code: str) -> str:
    """Give the number of a code as it is said: "31" of 26-031."""
    return str(_figure(code.partition("-")[2]))


def _figure(figures: str) -> int:
    return int(figures) if figures.isascii() and figures.isdigit() else 0


def _texts(written: str) -> list[str]:
    """Give the texts in a JSON value."""
    waiting = [from_json(written, "an entry")]
    found: list[str] = []
    while waiting:
        value = waiting.pop()
        if isinstance(value, str):
            found.append(value)
        elif isinstance(value, dict):
            waiting.extend(value.values())
        elif isinstance(value, list):
            waiting.extend(value)
    return found
