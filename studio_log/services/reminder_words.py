"""What a reminder says: in the notice, on its buttons, on its card."""

from collections.abc import Mapping, Sequence
from datetime import datetime, timedelta

from studio_log.domain.lots import Lot, LotStep
from studio_log.domain.reminders import WITHOUT_ACT, Kind, Record, Reminder, told_together
from studio_log.language.words import tr, tr_later
from studio_log.present.words import lateness
from studio_log.services.ports import NoticeText

WORTH_SAYING = timedelta(minutes=2)
"""Lateness below this is not mentioned."""
MOST_LINES = 8
"""Lines of a notice; the rest is counted and stands on the bench."""
LATER = ("later", tr_later("In 10 min"))
DAMP = tr_later("Still damp")
OF_OTHERS = {
    Kind.MAKE_READY: tr_later("Made ready"),
    Kind.REFRESH: tr_later("Refreshed"),
    Kind.TRIAL_ARM: tr_later("Done"),
}
"""The answers to what only a bath or a trial asks."""


def answer_words(reminder: Reminder, step: LotStep | None) -> str:
    """Give the words of the one big answer: "Stirred", "Dry", "Begin now"."""
    if reminder.kind in OF_OTHERS:
        return tr(OF_OTHERS[reminder.kind])
    if step is None or reminder.kind in WITHOUT_ACT:
        return tr("Seen")
    if step.start is None:
        return tr("Begin now")
    if reminder.kind is Kind.TEND and step.spec.tending is not None:
        return step.spec.tending.done
    return tr("Dry") if step.spec.ask_dry is not None else step.spec.end_done


def second_words(step: LotStep | None) -> str:
    """Give the words of the second answer, to "is it dry?"; "" where there is none."""
    return tr(DAMP) if step is not None and step.spec.ask_dry and step.running else ""


def notice_text(
    records: Sequence[Record],
    now: datetime,
    lots: Mapping[str, Lot],
    looks: Sequence[str] = (),
) -> NoticeText:
    """Give one notice for all that is due, oldest danger first; `looks` end its body.

    One reminder alone can be answered in the notice; several can be put off together.
    """
    told = told_together(records)
    keys = tuple(record.reminder.key for record in records)
    urgency = max((record.reminder.urgency for record in told), key=lambda one: one.rank)
    if len(told) == 1:
        one = told[0].reminder
        said = [late_words(one, now), one.why, one.if_late, *looks]
        answers = _answers(one, lots.get(one.subject))
        return NoticeText(
            one.title, "\n".join(filter(None, said)), urgency.value, keys, answers, one.key
        )
    lines = [_line(record.reminder, now) for record in told]
    if len(lines) > MOST_LINES:
        rest = len(lines) - MOST_LINES + 1
        lines = [*lines[: MOST_LINES - 1], tr("… and {rest} more on the bench.", rest=rest)]
    title = tr("{count} things need hands", count=len(told))
    return NoticeText(title, "\n".join([*lines, *looks]), urgency.value, keys, (_later(),))


def _answers(one: Reminder, lot: Lot | None) -> tuple[tuple[str, str], ...]:
    step = lot.step(one.step) if lot is not None and one.step is not None else None
    found = [("done", answer_words(one, step))]
    if second := second_words(step):
        found.append(("damp", second))
    return (*found, _later())


def _line(one: Reminder, now: datetime) -> str:
    late = late_words(one, now)
    return f"• {one.title}" + (f" — {late}" if late else "")


def late_words(reminder: Reminder, now: datetime) -> str:
    """Say how late a reminder is, "" where it is not worth saying."""
    late = now - reminder.due
    return lateness(late) if late >= WORTH_SAYING else ""


def _later() -> tuple[str, str]:
    slug, words = LATER
    return slug, tr(words)
