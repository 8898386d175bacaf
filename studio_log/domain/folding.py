"""A bath, a swatch or a trial worked out of its journal: made by its first entry, then on."""

from collections.abc import Callable, Iterable
from typing import TypeVar

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act, Entry, standing
from studio_log.language.words import tr

Thing = TypeVar("Thing")
UNREADABLE = (KeyError, TypeError, ValueError, AttributeError, OverflowError)
"""What values of a journal from elsewhere may raise."""


def folded(
    entries: Iterable[Entry],
    new: Act,
    make: Callable[[Entry], Thing],
    after: Callable[[Thing, Entry], Thing],
    *,
    missing: str,
    by_time: bool = False,
) -> Thing:
    """Give what a journal tells: `make` of its entry `new`, then `after` for each that follows.

    `by_time` takes these in the order in which they happened, not in which they were written.
    Refusal `missing` where nothing was made, and another where the journal does not read.
    """
    stand = standing(entries)
    place = next((at for at, one in enumerate(stand) if one.act is new), None)
    if place is None:
        raise Refusal(tr(missing))
    first, later = stand[place], list(stand[place + 1 :])
    if by_time:
        later.sort(key=lambda one: (one.at, one.number))
    try:
        thing = make(first)
        for entry in later:
            thing = after(thing, entry)
    except UNREADABLE as error:
        raise Refusal(
            tr("The journal of {code} does not read. Nothing was changed; restore a copy.",
               code=first.subject)
        ) from error  # fmt: skip
    return thing
