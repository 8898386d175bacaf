"""Whether what is kept agrees with the journal, and working it out anew."""

from collections.abc import Callable, Iterator
from contextlib import suppress
from typing import Any

from studio_log.domain.baths import bath_from
from studio_log.domain.errors import BadStudio, Refusal
from studio_log.domain.lot_amounts import Use, uses_of
from studio_log.domain.milks import milk_from
from studio_log.domain.reminders import Cause
from studio_log.domain.replay import replay
from studio_log.domain.trials import trial_from
from studio_log.services.bath_keeping import BATHS
from studio_log.services.desk import Desk, lot_line, step_lines
from studio_log.services.photo_check import mend_photos, photo_faults
from studio_log.services.subjects import settle_others
from studio_log.services.swatch_keeping import settle_swatches, unlike_swatches
from studio_log.services.trial_keeping import TRIALS
from studio_log.store.check import check
from studio_log.store.database import Store
from studio_log.store.work import Work


def look_through(store: Store, desk_of: Callable[[Work], Desk]) -> list[str]:
    """Give all that is wrong with a studio, a sentence each; nothing is changed."""
    found = check(store)
    try:
        with store.reading() as look:
            desk = desk_of(look)
            found += [*unlike(desk), *photo_faults(desk)]
    except BadStudio as refused:
        found.append(str(refused))
    return list(dict.fromkeys(found))


def unlike(desk: Desk) -> list[str]:
    """Name the lots whose kept lines differ from their journal, and baths that do not read."""
    lots = [words for code in lot_codes(desk.work) for words in _unlike_lot(desk, code)]
    return [*lots, *_unread(desk), *unlike_swatches(desk), *_unlike_words(desk)]


def _unlike_words(desk: Desk) -> Iterator[str]:
    """Name the lots that are not found by all that was typed about them."""
    for code in desk.work.lots.unlike_words():
        yield f"What was typed about {code} is not all found by a search."


def _unread(desk: Desk) -> Iterator[str]:
    readers: tuple[tuple[str, Callable[[Any], object]], ...] = (
        (BATHS, bath_from),
        (TRIALS, trial_from),
    )
    for letter, read in readers:
        for code in desk.work.journal.subjects(letter):
            try:
                read(desk.work.journal.of(code))
            except Refusal as refusal:
                yield f"The journal of {code} does not read: {refusal}"


def _unlike_lot(desk: Desk, code: str) -> list[str]:
    look = desk.work
    try:
        lot = replay(look.journal.of(code), desk.book)
    except Refusal as refusal:
        return [f"The journal of {code} does not read: {refusal}"]
    found = []
    if tuple(step_lines(lot)) != tuple(look.steps.of(code)):
        found.append(f"The kept steps of {code} differ from its journal.")
    if sorted(uses_of(lot), key=_place) != sorted(look.uses.of(code), key=_place):
        found.append(f"What {code} took from the stock differs from its journal.")
    kept = look.lots.get(code)
    number = look.journal.last_number(code)
    fresh = lot_line(lot, desk.now, number)
    if kept is None or (kept.name, kept.last_number) != (fresh.name, number):
        found.append(f"The kept line of {code} differs from its journal.")
    return found


def _place(use: Use) -> tuple[int, str]:
    return use.step, use.material


def rebuild(desk: Desk) -> None:
    """Work out every kept line and reminder anew from the journal."""
    desk.work.clear_projections()
    for code in desk.work.journal.subjects("M"):  # first, for lots look at their milk
        with suppress(Refusal):
            desk.put_milk(milk_from(desk.work.journal.of(code)))
    for code in lot_codes(desk.work):
        with suppress(Refusal):
            desk.settle(desk.lot(code), Cause(undoing=True, why="worked out anew"))
    settle_swatches(desk)
    mend_photos(desk)
    settle_others(desk, Cause(undoing=True, why="worked out anew"))


def lot_codes(look: Work) -> list[str]:
    """Give the codes of all lots that ever were."""
    return [code for code in look.journal.subjects() if code[:1].isdigit()]


def settle_all(desk: Desk, why: str) -> None:
    """Work the reminders of everything in work out anew: nights or the zone have changed."""
    for code in desk.work.lots.live_codes():
        desk.settle(desk.lot(code), Cause(why=why))
    settle_others(desk, Cause(why=why))
