"""What was typed on this laptop: the last values of each field, and what was left half typed.

A small file of the studio's folder. It is nobody's record: one that is missing or broken is
passed over, one that cannot be written is no trouble worth a word, and it is bounded.
"""

import json
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass, field
from datetime import datetime
from pathlib import Path
from typing import Any, Final

from studio_log.domain.errors import Refusal
from studio_log.services.whole_file import write_whole

NAME: Final = "typed.json"
LARGEST_FILE: Final = 1_000_000
MOST_FIELDS: Final = 60
MOST_LAST: Final = 8
"""Values kept for a field."""
LONGEST_LAST: Final = 200
MOST_DRAFTS: Final = 30
"""The oldest gives way; so many forms are hardly left half typed."""
LONGEST_DRAFT: Final = 20_000
"""Characters of one field of a draft."""
MOST_IN_DRAFT: Final = 20


@dataclass(frozen=True)
class Draft:
    """What stood in a form that was left: the text of each field, and when, aware UTC."""

    at: datetime
    values: Mapping[str, str]


@dataclass
class Typed:
    """Keeps what was typed; without a path only as long as the program runs."""

    path: Path | None = None
    _last: dict[str, tuple[str, ...]] = field(default_factory=dict)
    _drafts: dict[str, Draft] = field(default_factory=dict)

    def last(self, slug: str) -> tuple[str, ...]:
        """Give the last values of a field, the latest first."""
        return self._last.get(slug, ())

    def note(self, slug: str, *texts: str) -> None:
        """Keep values of a field that were taken, the latest named last."""
        before = self.last(slug)
        after = before
        for text in (text.strip() for text in texts):
            if text and len(text) <= LONGEST_LAST:
                rest = (one for one in after if one.casefold() != text.casefold())
                after = (text, *rest)[:MOST_LAST]
        if after != before and (slug in self._last or len(self._last) < MOST_FIELDS):
            self._last[slug] = after
            self._write()

    def draft(self, key: str) -> Draft | None:
        """Give what was left half typed in a form, or None."""
        return self._drafts.get(key)

    def keep_draft(self, key: str, values: Mapping[str, str], at: datetime) -> None:
        """Keep what stands in a form; with nothing in it, forget it."""
        kept = {
            name: text[:LONGEST_DRAFT] for name, text in [*values.items()][:MOST_IN_DRAFT] if text
        }
        before = self._drafts.get(key)
        if not kept:
            self.drop_draft(key)
        elif before is None or before.values != kept:
            self._drafts.pop(key, None)
            self._drafts[key] = Draft(at, kept)
            for oldest in [*self._drafts][: max(len(self._drafts) - MOST_DRAFTS, 0)]:
                del self._drafts[oldest]
            self._write()

    def drop_draft(self, key: str) -> None:
        """Forget what was left in a form: it was taken, or given up."""
        if self._drafts.pop(key, None) is not None:
            self._write()

    def read(self) -> None:
        """Take in what the file says, as far as it makes sense."""
        told = _read(self.path)
        self._last = _lasts(told.get("last"))
        self._drafts = _drafts(told.get("drafts"))

    def _write(self) -> None:
        if self.path is None:
            return
        told = {
            "last": self._last,
            "drafts": {
                key: {"at": one.at.isoformat(), "values": dict(one.values)}
                for key, one in self._drafts.items()
            },
        }
        data = json.dumps(told, ensure_ascii=False, indent=1).encode("utf-8", "replace")
        if len(data) <= LARGEST_FILE:
            with suppress(Refusal):
                write_whole(self.path, data, wait=False)


def _read(path: Path | None) -> dict[str, Any]:
    try:
        if path is None or path.stat().st_size > LARGEST_FILE:
            return {}
        told = json.loads(path.read_text(encoding="utf-8"))
    except (OSError, ValueError, RecursionError):
        return {}
    return told if isinstance(told, dict) else {}


def _lasts(told: object) -> dict[str, tuple[str, ...]]:
    found = {}
    for slug, texts in [*_mapping(told).items()][:MOST_FIELDS]:
        kept = [one for one in texts if _is_line(one)] if isinstance(texts, list) else []
        if kept:
            found[slug] = tuple(kept[:MOST_LAST])
    return found


def _drafts(told: object) -> dict[str, Draft]:
    found = {}
    for key, one in [*_mapping(told).items()][-MOST_DRAFTS:]:
        parts = _mapping(one)
        values = {
            name: text
            for name, text in [*_mapping(parts.get("values")).items()][:MOST_IN_DRAFT]
            if isinstance(text, str) and 0 < len(text) <= LONGEST_DRAFT
        }
        at = _moment(parts.get("at"))
        if values and at is not None:
            found[key] = Draft(at, values)
    return found


def _mapping(told: object) -> dict[str, Any]:
    return told if isinstance(told, dict) else {}


def _is_line(told: object) -> bool:
    return isinstance(told, str) and 0 < len(told) <= LONGEST_LAST and told.isprintable()


def _moment(told: object) -> datetime | None:
    with suppress(ValueError):
        at = datetime.fromisoformat(told) if isinstance(told, str) else None
        return at if at is not None and at.tzinfo is not None else None
    return None


_typed = Typed()


def typed() -> Typed:
    """Give what was typed here; one for the whole program, as the theme is."""
    return _typed


def remember_in(folder: Path | None) -> Typed:
    """Keep what is typed in a folder from now on, and take in what it has; None: nowhere."""
    global _typed  # noqa: PLW0603 - a window has one studio
    _typed = Typed(folder / NAME if folder is not None else None)
    _typed.read()
    return _typed
