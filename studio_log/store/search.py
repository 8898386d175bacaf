"""The words of lots: all that was typed about each one, found by the beginnings of its words."""

from collections.abc import Iterable

from sqlalchemy import ColumnElement, false, select
from sqlmodel import Session

from studio_log.store.rows import CHUNK, from_json, rows
from studio_log.store.tables import ENTRY, LOT
from studio_log.store.values import LotLine
from studio_log.store.word_index import INDEXES, asked_words, lots_with


class LotWords:
    """All that was typed about each lot, found by the beginnings of its words."""

    def __init__(self, session: Session) -> None:
        self._session = session
        self._index = INDEXES[session.get_bind().dialect.name](session)

    def put_all(self, lines: Iterable[LotLine]) -> None:
        """Write the words of these lots anew: those of their lines and of their journals."""
        words = {ordinal(code): found for code, found in self._words_of(lines).items()}
        if words:
            self._index.put(words)

    def unlike(self, lines: Iterable[LotLine]) -> list[str]:
        """Give the codes whose words are not there as they should be."""
        kept = self._index.kept()
        wanted = self._words_of(lines)
        return [code for code, words in wanted.items() if kept.get(ordinal(code)) != words]

    def _words_of(self, lines: Iterable[LotLine]) -> dict[str, str]:
        texts = {line.code: [line.search_text, short_number(line.code)] for line in lines}
        codes = list(texts)
        for start in range(0, len(codes), CHUNK):
            part = codes[start : start + CHUNK]
            asked = select(ENTRY.c.subject, ENTRY.c.note, ENTRY.c.readings, ENTRY.c.data)
            ordered = asked.where(ENTRY.c.subject.in_(part)).order_by(
                ENTRY.c.subject, ENTRY.c.number
            )
            for row in rows(self._session, ordered):
                texts[row.subject] += (row.note, *_texts(row.readings), *_texts(row.data))
        return {code: " ".join(dict.fromkeys(found)).casefold() for code, found in texts.items()}

    def remove(self, code: str) -> None:
        """Forget the words of a lot."""
        self._index.remove([ordinal(code)])

    def clear(self) -> None:
        """Forget all words, before they are written anew: also those of a damaged index."""
        self._index.clear()


def holds(find: str) -> ColumnElement[bool] | None:
    """Give the condition that a lot's words begin with each word of `find`, None for no words.

    Signs alone are found nowhere.
    """
    words = asked_words(find)
    if not words:
        return false() if find.strip() else None
    return lots_with(LOT.c.ordinal, words)


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
