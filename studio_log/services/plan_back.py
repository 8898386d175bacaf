"""A plan that several lots follow is taken back, and restored, as one act."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act, Entry, standing
from studio_log.language.words import counted, tr, tr_later
from studio_log.services.commands import Outcome
from studio_log.services.desk import Desk
from studio_log.services.plan import PLAN

if TYPE_CHECKING:
    from datetime import datetime

PLANS: Final = PLAN[0].upper()
"""What no other code begins with."""
One = Callable[[Desk, str, int], None]
"""Takes back, or restores, what one lot's entry of a number did."""


@dataclass(frozen=True)
class _Followed:
    """An entry by which a lot follows a plan, or by which that was taken back."""

    code: str
    entry: Entry


def undo_plan(desk: Desk, one: One) -> Outcome:
    """Take every lot off the plan that was accepted last; its later acts stay."""
    return _each(
        desk,
        one,
        _latest(desk, _following),
        tr_later("No lot follows a plan. Nothing was changed."),
        tr_later("{n} lot does not follow the plan any more."),
        tr_later("{n} lots do not follow the plan any more."),
    )


def redo_plan(desk: Desk, one: One) -> Outcome:
    """Have every lot follow again that was taken off a plan last, and was not acted on since."""
    return _each(
        desk,
        one,
        _latest(desk, _taken_off),
        tr_later("No plan was taken back, or its lots went on since. Nothing was changed."),
        tr_later("{n} lot follows the plan again."),
        tr_later("{n} lots follow the plan again."),
    )


def _each(
    desk: Desk, one: One, lots: list[_Followed], none: str, single: str, many: str
) -> Outcome:
    """Do the same to each lot, and say so; Refusal where there are none."""
    if not lots:
        raise Refusal(tr(none))
    for followed in lots:
        one(desk, followed.code, followed.entry.number)
    codes = frozenset(it.code for it in lots)
    return Outcome(counted(len(lots), single, many), lots=codes, reminders=True, subject=PLAN)


def _latest(desk: Desk, found: Callable[[tuple[Entry, ...]], Iterator[Entry]]) -> list[_Followed]:
    """Give the entries of the one acceptance, or taking back, that was written last."""
    journals = desk.work.journal.of_many(desk.work.lots.live_codes())
    every = [_Followed(code, entry) for code, own in journals.items() for entry in found(own)]
    last: datetime | None = max((one.entry.written for one in every), default=None)
    return [one for one in every if one.entry.written == last]


def _following(entries: tuple[Entry, ...]) -> Iterator[Entry]:
    stand = [one for one in standing(entries) if one.act is Act.FOLLOW]
    yield from stand[-1:]


def _taken_off(entries: tuple[Entry, ...]) -> Iterator[Entry]:
    last = entries[-1]
    if last.act is Act.UNDO and any(
        one.number == last.target and one.act is Act.FOLLOW for one in entries
    ):
        yield last
