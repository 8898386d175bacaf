"""The journal: what happened, when it happened, when it was written.

Entries are never changed. A later entry takes one back, restores it or corrects it, and
`standing` says which ones then count, in the order in which they were written.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime
from enum import StrEnum
from typing import Any


class Act(StrEnum):
    """What an entry says was done. The first twelve are those of `mark`."""

    START = "start"
    END = "end"
    TEND = "tend"
    DRY = "dry"
    DAMP = "damp"
    SKIP = "skip"
    REPEAT = "repeat"
    NOTE = "note"
    PUTOFF = "putoff"
    USE = "use"
    STOP = "stop"
    PLAN = "plan"
    FOLLOW = "follow"
    NEW = "new"
    GO_ON = "go_on"
    SET = "set"
    MILK = "milk"
    SPLIT_OFF = "split_off"
    SPLIT_FROM = "split_from"
    JOIN_INTO = "join_into"
    JOIN_FROM = "join_from"
    VOID = "void"
    PRINTED = "printed"
    MILK_NEW = "milk_new"
    MILK_SET = "milk_set"
    STOCK_NEW = "stock_new"
    STOCK_IN = "stock_in"
    STOCK_OUT = "stock_out"
    STOCK_COUNT = "stock_count"
    STOCK_SET = "stock_set"
    BATH_NEW = "bath_new"
    BATH_SET = "bath_set"
    BATH_USE = "bath_use"
    BATH_DIP = "bath_dip"
    BATH_READ = "bath_read"
    BATH_FEED = "bath_feed"
    BATH_REFRESH = "bath_refresh"
    BATH_READY = "bath_ready"
    SWATCH_NEW = "swatch_new"
    SWATCH_SET = "swatch_set"
    SWATCH_READ = "swatch_read"
    SWATCH_GRADE = "swatch_grade"
    SWATCH_TEST = "swatch_test"
    TRIAL_NEW = "trial_new"
    TRIAL_SET = "trial_set"
    TRIAL_UNITS = "trial_units"
    TRIAL_ARM = "trial_arm"
    TRIAL_READ = "trial_read"
    TRIAL_UNVEIL = "trial_unveil"
    UNDO = "undo"
    REDO = "redo"
    CORRECT = "correct"

    @property
    def words(self) -> str:
        """As it reads in a sentence: "put off", "go on"; the value is for files and commands."""
        return _SPOKEN.get(self.value, self.value.replace("_", " "))


_SPOKEN: Mapping[str, str] = {
    "damp": "still damp",
    "putoff": "put off",
    "printed": "tag printed",
    "follow": "plan accepted",
    "join_into": "joined into another lot",
    "join_from": "made by joining lots",
    "milk_new": "milk made",
    "milk_set": "milk changed",
    "stock_new": "material taken in",
    "stock_in": "bought",
    "stock_out": "drawn by hand",
    "stock_count": "counted",
    "stock_set": "material changed",
    "bath_new": "bath made",
    "bath_set": "bath changed",
    "bath_use": "cloth through the bath",
    "bath_dip": "dip",
    "bath_read": "reading",
    "bath_feed": "feeding",
    "bath_refresh": "refreshing",
    "bath_ready": "making ready",
    "swatch_new": "swatch cut",
    "swatch_set": "swatch changed",
    "swatch_read": "colour read",
    "swatch_grade": "grade",
    "swatch_test": "test begun",
    "trial_new": "trial planned",
    "trial_set": "trial changed",
    "trial_units": "lots and swatches of the trial",
    "trial_arm": "arm",
    "trial_read": "reading of a tag",
    "trial_unveil": "unveiling",
}
"""Acts whose value is no word a dyer would say."""

META: frozenset[Act] = frozenset({Act.UNDO, Act.REDO, Act.CORRECT})
"""Entries about other entries; `target` names the entry they act on."""


@dataclass(frozen=True)
class Entry:
    """One line of a journal; `subject` is a code: 26-031, B26-001, W26-001, T26-001.

    `number` counts from 1 within the subject; 0 means not written yet. `at` and `written`
    are aware UTC instants; `zone` is the IANA name of the zone in which `at` was meant.
    `data` holds plain JSON values only.
    """

    subject: str
    act: Act
    at: datetime
    written: datetime
    zone: str
    number: int = 0
    step: int | None = None
    note: str = ""
    readings: Mapping[str, float | str] = field(default_factory=dict)
    data: Mapping[str, Any] = field(default_factory=dict)
    target: int | None = None


def standing(entries: Iterable[Entry]) -> tuple[Entry, ...]:
    """Give the entries that count, corrected, without those taken back, as written."""
    kept: dict[int, Entry] = {}
    away: set[int] = set()
    for entry in entries:
        target = entry.target
        if entry.act not in META:
            kept[entry.number] = entry
        elif target is None or target not in kept:
            continue
        elif entry.act is Act.UNDO:
            away.add(target)
        elif entry.act is Act.REDO:
            away.discard(target)
        else:
            kept[target] = corrected(kept[target], entry)
    return tuple(entry for number, entry in kept.items() if number not in away)


def corrected(entry: Entry, correction: Entry) -> Entry:
    """Give the entry as the correction says it: another time, note or readings."""
    changes: dict[str, Any] = {}
    if "at" in correction.data:
        changes["at"] = correction.at
        changes["zone"] = correction.zone
    if correction.note:
        changes["note"] = correction.note
    if correction.readings:
        changes["readings"] = {**entry.readings, **correction.readings}
    if correction.data.get("sure"):
        changes["data"] = {**entry.data, "sure": True}
    return replace(entry, **changes)


def taken_back(entries: Iterable[Entry]) -> tuple[Entry, ...]:
    """Give the entries that undo took back and redo can restore, the latest undone last.

    A lot is voided by undoing its first entry: that is no new act, and undone in its turn.
    """
    kept: dict[int, Entry] = {}
    away: dict[int, Entry] = {}
    for entry in entries:
        if entry.act not in META:
            kept[entry.number] = entry
            if entry.act is not Act.VOID:
                away.clear()  # a new act ends what redo could restore
        elif entry.target not in kept or kept[entry.target].act is Act.VOID:
            continue
        elif entry.act is Act.UNDO:
            away[entry.target] = kept[entry.target]
        elif entry.act is Act.REDO:
            away.pop(entry.target, None)
    return tuple(away.values())


def restorable(entries: Iterable[Entry], gone: str) -> tuple[Act, Entry] | None:
    """Give the act that restores what was taken back last, and the entry it names; None for none.

    Of what has no void of its own, such as a milk, an entry noted `gone` takes the whole back:
    restoring is to undo that entry.
    """
    written = tuple(entries)
    undone = [entry for entry in taken_back(written) if entry.note != gone]
    if undone:
        return Act.REDO, undone[-1]
    stand = standing(written)
    return (Act.UNDO, stand[-1]) if stand and stand[-1].note == gone else None
