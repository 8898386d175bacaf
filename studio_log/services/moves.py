"""The studio written out as a folder, and read back into an empty one, entry for entry."""

import re
from collections.abc import Callable, Mapping
from datetime import UTC, datetime
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final, cast

from studio_log import __version__
from studio_log.domain.baths import bath_from
from studio_log.domain.errors import Refusal
from studio_log.domain.lot_amounts import uses_of
from studio_log.domain.method_text import read_method
from studio_log.domain.milks import milk_from
from studio_log.domain.replay import replay
from studio_log.domain.stock import material_from
from studio_log.domain.swatches import swatch_from
from studio_log.domain.trials import trial_from
from studio_log.services.commands import Outcome
from studio_log.services.desk import Desk, lot_line, step_lines
from studio_log.services.moving import ExportFor, LongWork, Looked, Progress, TakeFolder
from studio_log.services.safety import lot_codes
from studio_log.services.swatch_keeping import SWATCHES, settle_swatch
from studio_log.services.trial_keeping import TRIALS
from studio_log.store import folder_in, folder_out

if TYPE_CHECKING:
    from studio_log.domain.methods import Method

ABOUT: Final = """\
This folder holds everything that a dye studio's log knows, as it stood at {written}.

studio.json         all of it, to be read back:  studio-log --studio NEW_FOLDER import THIS_FOLDER
studio.schema.json  the form of studio.json, as a JSON Schema with words for every field
tables/*.csv        the same as tables, UTF-8 with commas, to be read by other programs;
                    lot, step, milk, swatch and material_use are worked out from entry, the journal.
                    A cell that would look like a formula has an apostrophe before it.
photos/             the photos, named by lot and entry

Times are in UTC, masses in grams, lengths in metres.
"""


_NOTHING: Final = "Nothing was taken in."
_CODE: Final = re.compile(r"[A-Z]?[0-9]{2}-[0-9]{1,6}")
_ODD: Final = (KeyError, TypeError, ValueError, AttributeError, IndexError, ArithmeticError)
"""What a rule may raise over data that this program never wrote."""


def export_work(house: Any, desk: Desk, question: ExportFor) -> LongWork:
    """Give the work of an export; it looks at the file by a line of its own."""
    at = _instant(desk.now)
    order = folder_out.Order(
        studio=house.store.path,
        to=question.to,
        zipped=question.zipped,
        written=at,
        program=__version__,
        schema=house.shelf.folder_schema,
        about=ABOUT.format(written=at),
    )
    return LongWork(partial(_export, order))


def _export(order: folder_out.Order, progress: Progress) -> str:
    folder_out.export(order, progress)
    return f"Everything is written to {order.to}. The studio itself was not changed."


def take_folder(desk: Desk, command: TakeFolder) -> Outcome:
    """Read a folder back; Refusal, and nothing changed, where any of it does not make sense."""
    with folder_in.opened(command.path) as folder:
        desk.work.take(folder)
        desk.cache.clear()
        book = cast("dict[tuple[str, int], Method]", desk.book)  # the studio's own, and mended if
        book.clear()  # this is rolled back
        book.update(_book(desk))
        _work_out(desk)
        desk.work.take_photos(folder, only_look=command.only_look)
        counts = folder.counts
    lots = len(lot_codes(desk.work))
    told = (
        f"{lots} lots with {counts['entry']:,} entries, {counts['photo']} photos and "
        f"{counts['method']} methods"
    )
    if command.only_look:
        raise Looked(f"{command.path} reads well: {told}. Nothing was changed.")
    return Outcome(
        f"Taken in from {command.path}: {told}.",
        lots=frozenset({"*"}),
        settings=True,
        reminders=True,
    )


def _book(desk: Desk) -> "dict[tuple[str, int], Method]":
    kept = desk.work.methods.all()
    return {(one.slug, one.version): read_method(one.text, name=one.slug) for one in kept}


def _work_out(desk: Desk) -> None:
    """Work out what lists need; what became of reminders was taken over as it was."""
    subjects = desk.work.journal.subjects()
    odd = [code for code in subjects if not _CODE.fullmatch(code)]
    if odd:
        raise Refusal(f"“{odd[0][:24]}” is no code of a studio. {_NOTHING}")
    for kind, work_out in _KINDS:
        for code in subjects:
            if code.rstrip("0123456789-") == kind:
                _told(desk, code, work_out)


def _told(desk: Desk, code: str, work_out: Callable[[Desk, str], None]) -> None:
    """Work one journal out; whatever is wrong with it is said as its fault."""
    try:
        work_out(desk, code)
    except Refusal as refusal:
        raise Refusal(f"The journal of {code} does not read: {refusal} {_NOTHING}") from refusal
    except _ODD as error:
        raise Refusal(f"The journal of {code} does not read. {_NOTHING}") from error


def _milk(desk: Desk, code: str) -> None:
    desk.put_milk(milk_from(desk.work.journal.of(code)))


def _lot(desk: Desk, code: str) -> None:
    entries = desk.work.journal.of(code)
    lot = replay(entries, desk.book)
    desk.cache[code] = (entries[-1].number, lot)
    desk.work.lots.put(lot_line(lot, desk.now, entries[-1].number))
    desk.work.steps.replace(code, step_lines(lot))
    desk.work.uses.replace(code, uses_of(lot))
    desk.reminders(lot)  # so that what no reminder can be made of is found out now


def _material(desk: Desk, code: str) -> None:
    material_from(desk.work.journal.of(code))


def _bath(desk: Desk, code: str) -> None:
    bath_from(desk.work.journal.of(code))


def _swatch(desk: Desk, code: str) -> None:
    entries = desk.work.journal.of(code)
    settle_swatch(desk, swatch_from(entries), entries[-1].number)


def _trial(desk: Desk, code: str) -> None:
    trial_from(desk.work.journal.of(code))


_KINDS: Final[tuple[tuple[str, Callable[[Desk, str], None]], ...]] = (
    ("M", _milk),  # before lots, which look at their milk
    ("", _lot),
    ("S", _material),
    ("B", _bath),
    (SWATCHES, _swatch),
    (TRIALS, _trial),
)
"""By the letter that codes begin with."""


def _instant(at: datetime) -> str:
    return at.astimezone(UTC).isoformat(timespec="seconds").replace("+00:00", "Z")


def is_folder(path: Path) -> bool:
    """Say whether a path is an exported folder or archive."""
    return folder_in.is_export(path)


HANDLERS: Final[Mapping[type, Callable[[Desk, Any], Outcome]]] = {TakeFolder: take_folder}
