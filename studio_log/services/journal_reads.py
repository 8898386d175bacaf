"""The journal of a lot, line by line, as it is read: what was taken back and corrected is shown."""

from collections.abc import Callable, Mapping

from studio_log.domain.journal import Act, Entry, standing
from studio_log.domain.lots import Lot
from studio_log.language.words import tr
from studio_log.present import words
from studio_log.services import questions as q
from studio_log.services.desk import Desk
from studio_log.services.taking_back import entry_words


def entry_lines(lot: Lot, entries: tuple[Entry, ...]) -> tuple[q.EntryLine, ...]:
    """Give the journal for reading: what was taken back and corrected is shown as such."""
    stand = {entry.number: entry for entry in standing(entries)}
    corrections: dict[int, int] = {
        entry.target: entry.number
        for entry in entries
        if entry.act is Act.CORRECT and entry.target is not None
    }
    meta = {Act.UNDO, Act.REDO, Act.CORRECT}
    return tuple(
        q.EntryLine(
            number=entry.number,
            at=entry.at,
            written=entry.written,
            words=_entry_line_words(lot, entry),
            act=entry.act.value,
            step=entry.step,
            note=entry.note,
            taken_back=entry.act not in meta and entry.number not in stand,
            corrected_by=corrections.get(entry.number),
            readings=dict(stand.get(entry.number, entry).readings),
        )
        for entry in entries
    )


def became(lot: Lot, entries: tuple[Entry, ...], desk: Desk) -> dict[str, str]:
    """Give what each corrected entry says now, by its number."""
    changed = {entry.target for entry in entries if entry.act is Act.CORRECT}
    return {
        str(entry.number): f"{words.moment(entry.at, desk.now, desk.zone)}   "
        f"{_entry_line_words(lot, entry)}{f' — {entry.note}' if entry.note else ''}"
        for entry in standing(entries)
        if entry.number in changed
    }


def _entry_line_words(lot: Lot, entry: Entry) -> str:
    text = _KIN[entry.act](entry) if entry.act in _KIN else entry_words(entry, lot)
    if entry.target is not None:
        text += tr(" entry {target}", target=entry.target)
    if "photo" in entry.data:
        text += tr(", with a photo")
    if entry.readings:
        text += f"; {readings_words(entry)}"
    return text


def _codes(entry: Entry, *names: str) -> str:
    """Give the codes that an entry's data name, "" where it names none, as in a copy."""
    found = [entry.data.get(name) for name in names]
    return ", ".join(", ".join(one) if isinstance(one, list) else one for one in found if one)


_KIN: Mapping[Act, Callable[[Entry], str]] = {
    Act.SPLIT_OFF: lambda entry: tr("split off {codes}", codes=_codes(entry, "child")).strip(),
    Act.SPLIT_FROM: lambda entry: tr("split from {codes}", codes=_codes(entry, "parent")),
    Act.JOIN_INTO: lambda entry: tr("joined into {codes}", codes=_codes(entry, "child")),
    Act.JOIN_FROM: lambda entry: tr("joined from {codes}", codes=_codes(entry, "parents")),
}
"""How the journal says where cloth went and came from."""


def readings_words(entry: Entry) -> str:
    """Say the readings of an entry: "temperature 71 °F, pH 6.8"; a text stands after a colon."""
    return ", ".join(
        f"{name}{': ' if str(value)[:1].isalpha() else ' '}"
        f"{f'{value:g}' if isinstance(value, float) else value}"
        for name, value in entry.readings.items()
    )
