"""What of a damaged studio goes into a new one, and what is lost: worked out, nothing written.

An entry is taken only where its seal agrees. What is missing is looked for in the copies,
whose journals begin alike. What is missing for good is said by its code and number; in a lot
an entry that says so takes its place, where the rest still reads with it.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime
from typing import Any, Final

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act, Entry
from studio_log.domain.methods import Method
from studio_log.domain.replay import replay
from studio_log.store.salvage import Found, Row

Book = Mapping[tuple[str, int], Method]
STUDIO: Final = "studio"
"""What a look ahead is about, where a reminder names its lot."""
LOST_NOTE: Final = "This entry was lost when the studio's file was damaged."
KINDS: Final[Mapping[str, str]] = {
    "": "lot", "M": "milk", "B": "bath", "S": "stock", "W": "swatch",
}  # fmt: skip
"""Whose number a code is, by the letter that it begins with."""


@dataclass
class Mended:
    """A studio put together again."""

    entries: list[Entry] = field(default_factory=list)
    rows: dict[str, list[Row]] = field(default_factory=dict)
    lines: list[str] = field(default_factory=list)
    """What is said: what came from where, and what is lost."""
    apart: list[Entry] = field(default_factory=list)
    """Sound entries that make no sense without those that are lost."""
    lost: int = 0
    sure: bool = True
    """Whether all that is lost is known to be."""
    accounted: int = 0
    """Entries whose code and number are known, lost or not."""


@dataclass
class _Journal:
    """One journal on its way: what was found, from where, what is known to have been."""

    code: str
    have: dict[int, Entry]
    order: dict[int, float]
    known: int
    fetched: dict[str, int] = field(default_factory=dict)
    """How many entries came from which copy."""


def mend(found: Found, copies: Sequence[tuple[str, Found]], book: Book) -> Mended:
    """Put a studio together from a damaged file and its copies, the newest copy first."""
    mended = Mended()
    copies = [(name, copy) for name, copy in copies if _is_alike(found, copy)]
    codes = {*found.entries, *found.listed, *(code for code, _ in found.spoilt)}
    codes.update(code for _, copy in copies for code in copy.entries)
    placed: list[tuple[float, str, Entry]] = []
    for code in sorted(codes):
        journal = _gathered(code, found, copies)
        placed += _placed(journal, book, mended)
    mended.entries = [entry for _, _, entry in sorted(placed, key=lambda one: one[:2])]
    mended.rows = _rows(found, copies, mended.entries)
    _say_rest(found, mended)
    return mended


def _is_alike(found: Found, copy: Found) -> bool:
    """Say whether a copy is of the same studio: where anything is left, it shares an entry."""
    if not found.count:
        return True
    return any(
        entry == copy.entries.get(code, {}).get(number)
        for code, kept in found.entries.items() for number, entry in kept.items()
    )  # fmt: skip


def _gathered(code: str, found: Found, copies: Sequence[tuple[str, Found]]) -> _Journal:
    have = dict(found.entries.get(code, {}))
    spoilt = [number for other, number in found.spoilt if other == code]
    order = {number: float(found.order[code, number]) for number in have}
    known = max([*have, *spoilt, found.listed.get(code, 0)])
    journal = _Journal(code, have, order, known)
    for name, copy in copies:
        theirs = copy.entries.get(code, {})
        if any(theirs[number] != have[number] for number in theirs.keys() & have.keys()):
            continue  # it went on otherwise there: another journal of the same code
        for number in sorted(theirs.keys() - have.keys()):
            have[number] = theirs[number]
            order[number] = float(copy.order[code, number])
            journal.fetched[name] = journal.fetched.get(name, 0) + 1
    journal.known = max([journal.known, *have])
    return journal


def _placed(journal: _Journal, book: Book, mended: Mended) -> list[tuple[float, str, Entry]]:
    """Give the entries that can stand, with their places; say what became of the others."""
    code, have = journal.code, journal.have
    for name, count in journal.fetched.items():
        mended.lines.append(f"{_entries(count)} of {code} came from {name}.")
    missing = [number for number in range(1, journal.known + 1) if number not in have]
    stands = _standing(journal, missing, book)
    numbers = {entry.number for entry in stands}
    apart = [have[number] for number in sorted(have) if number not in numbers]
    mended.accounted += journal.known
    if missing:
        mended.lost += len(missing)
        instead = " A note in the journal says so." if set(missing) & numbers else ""
        mended.lines.append(f"{_numbers(missing)} of {code} {_is(missing)} lost.{instead}")
    if apart:
        mended.apart += apart
        known = [entry.number for entry in apart]
        mended.lines.append(
            f"{_numbers(known)} of {code} could be read, but {_make(known)} no sense without what "
            "is lost; what they say stands in the report."
        )
    placed = []
    last = 0.0
    for entry in stands:
        last = max(journal.order.get(entry.number, last), last)
        placed.append((last, f"{code}/{entry.number:07d}", entry))
    return placed


def _standing(journal: _Journal, missing: Sequence[int], book: Book) -> list[Entry]:
    """Give the longest journal there can be: with notes for what is lost, else its beginning.

    A whole one stands as it is, also where it does not read for want of a method.
    """
    if 1 in journal.have and missing and journal.code[:1].isdigit():
        filled = _with_notes(journal)
        if reads(filled, book):
            return filled
    stands: list[Entry] = []
    while len(stands) + 1 in journal.have:
        stands.append(journal.have[len(stands) + 1])
    return stands


def _with_notes(journal: _Journal) -> list[Entry]:
    stands: list[Entry] = []
    for number in range(1, journal.known + 1):
        entry = journal.have.get(number)
        if entry is None:
            before = stands[-1]
            entry = Entry(
                journal.code, Act.NOTE, before.at, before.written, before.zone, number=number,
                note=LOST_NOTE, data={"lost": True},
            )  # fmt: skip
        stands.append(entry)
    return stands


def reads(entries: Sequence[Entry], book: Book) -> bool:
    """Say whether a lot's journal makes sense."""
    try:
        replay(entries, book)
    except (Refusal, ValueError, TypeError, KeyError, AttributeError, IndexError):
        return False
    return True


def _rows(
    found: Found, copies: Sequence[tuple[str, Found]], entries: Sequence[Entry]
) -> dict[str, list[Row]]:
    """Give the rows of the other tables; what is missing comes from the newest copies."""
    kept: dict[str, dict[tuple[Any, ...], Row]] = {
        table: dict(rows) for table, rows in found.rows.items()
    }
    for _, copy in copies:
        for table, theirs in copy.rows.items():
            if table not in found.read_whole:
                kept[table] = {**theirs, **kept.get(table, {})}
    known = {entry.subject for entry in entries}
    for table, column in (("reminder", "subject"), ("photo", "lot")):
        rows = kept.get(table, {})
        kept[table] = {key: row for key, row in rows.items() if row[column] in {*known, STUDIO}}
    _raise_counters(kept.setdefault("counter", {}), entries)
    return {table: list(rows.values()) for table, rows in kept.items()}


def _raise_counters(counters: dict[tuple[Any, ...], Row], entries: Sequence[Entry]) -> None:
    """See that no code that was ever given is given again."""
    for code in {entry.subject for entry in entries}:
        letter = "" if code[:1].isdigit() else code[:1]
        year, _, number = code.removeprefix(letter).partition("-")
        name = f"{KINDS.get(letter, 'other')}/{year}"
        row = counters.setdefault((name,), {"name": name, "value": 0})
        row["value"] = max(row["value"], int(number))


def _say_rest(found: Found, mended: Mended) -> None:
    read = len(mended.entries)
    subjects = {entry.subject for entry in mended.entries}
    lots = sum(code[:1].isdigit() for code in subjects)
    head = f"{_entries(read)} of {len(subjects)} journals, {lots} of them of lots, could be read."
    unknown = max(found.ever - mended.accounted, 0)
    if unknown:
        mended.lost += unknown
        mended.lines.append(
            f"{unknown:,} more {'entry is' if unknown == 1 else 'entries are'} lost; which, cannot "
            "be told."
        )
    if not found.counted:
        mended.sure = False
        mended.lines.append("How many entries there once were cannot be told; more may be lost.")
    mended.lines.insert(0, head)


def report(mended: Mended, damaged: str, at: datetime) -> str:
    """Give the report as text: what was said, and all that could be read and not be placed."""
    lines = [f"{at:%Y-%m-%d %H:%M} UTC: a damaged studio was read as far as it could be.",
             f"The damaged file is kept: {damaged}", "", *mended.lines]  # fmt: skip
    if mended.apart:
        lines += ["", "Read, and not in the journal:"]
    for entry in mended.apart:
        said = [
            f"{entry.subject} {entry.number}",
            f"{entry.at:%Y-%m-%d %H:%M} UTC",
            entry.act.words,
        ]
        said += [f"step {entry.step}"] if entry.step is not None else []
        said += [f"{name} {value}" for name, value in entry.readings.items()]
        lines.append("; ".join([*said, *filter(None, [entry.note])]))
    return "\n".join(lines) + "\n"


def _entries(count: int) -> str:
    return "1 entry" if count == 1 else f"{count:,} entries"


def _numbers(numbers: Sequence[int]) -> str:
    """Name entries: "Entry 5", "Entries 5, 6 and 9", "Entries 5 to 40"."""
    if len(numbers) == 1:
        return f"Entry {numbers[0]}"
    if len(numbers) > 2 and numbers[-1] - numbers[0] == len(numbers) - 1:
        return f"Entries {numbers[0]} to {numbers[-1]}"
    return f"Entries {', '.join(map(str, numbers[:-1]))} and {numbers[-1]}"


def _is(numbers: Sequence[int]) -> str:
    return "is" if len(numbers) == 1 else "are"


def _make(numbers: Sequence[int]) -> str:
    return "makes" if len(numbers) == 1 else "make"
