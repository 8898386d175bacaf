"""What was done on a laptop while the server was out of reach."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from studio_log.domain.journal import Entry
from studio_log.store.photos import PhotoRecord
from studio_log.store.values import DeliveryRecord, MethodText, ReminderRecord
from studio_log.store.work import Work


@dataclass(frozen=True)
class Unsent:
    """What was done here while the server was out of reach, in order."""

    mark: int = 0
    """Of the journal when this was read."""
    entries: tuple[Entry, ...] = ()
    reminders: tuple[tuple[ReminderRecord, ReminderRecord | None], ...] = ()
    """Each as it is now, and as it was before."""
    settings: tuple[tuple[str, object, object], ...] = ()
    """Names, what they are now, and what they were before."""
    methods: tuple[MethodText, ...] = ()
    deliveries: tuple[DeliveryRecord, ...] = ()
    photos: tuple[PhotoRecord, ...] = ()


Send = Callable[[Work, Unsent], None]
"""Writes what was not sent yet on the server, in the one transaction given."""


def difference(then: Work, now: Work) -> Unsent:
    """Give what `now` has beyond `then`, an earlier state of the same file."""
    since = then.journal.mark()
    old, new = then.settings.all(), now.settings.all()
    known = {(one.slug, one.version) for one in then.methods.all()}
    last = then.deliveries.last()
    return Unsent(
        now.journal.mark(),
        now.journal.after(since),
        tuple(_changed(then, now)),
        tuple((name, new[name], old.get(name)) for name in new if new[name] != old.get(name)),
        tuple(one for one in now.methods.all() if (one.slug, one.version) not in known),
        now.deliveries.after(last),
        now.photos.unlike(then.photos),
    )


def _changed(then: Work, now: Work) -> Iterator[tuple[ReminderRecord, ReminderRecord | None]]:
    last = then.reminders.last_change()
    for one in now.reminders.since(last) if last is not None else now.reminders.every():
        before = then.reminders.get(one.key)
        if before != one:
            yield one, before
