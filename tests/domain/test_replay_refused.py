"""What a lot's journal refuses, in one table, and what stands in whose way."""

from dataclasses import replace

import pytest

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act, Entry
from studio_log.domain.methods import Gap, StepKind
from studio_log.domain.replay import StandsOn, apply, replay
from tests.support.builders import (
    HOUR,
    LONG,
    MINUTE,
    NINE,
    SCOUR,
    Story,
    a_method,
    a_step,
    shipped,
)

PAINTED = a_method(
    a_step("bath", StepKind.SCOUR, gap=Gap()), a_step("rinse", StepKind.RINSE), slug="dye"
)


def drying() -> Story:
    """A lot whose first coat hangs since a moment."""
    story = Story().up_to("spin-1")
    story.after(minutes=5).mark(Act.END, "spin-1")
    return story


def cured() -> Story:
    """A lot whose third coat is dry; the fourth, optional, is open."""
    return Story().up_to("dip-4")


def beans() -> Story:
    story = Story()
    story.mark(Act.START, 1)
    return story


def used() -> Story:
    story = cured()
    story.after(days=10).mark(Act.USE, note="painted")
    return story


def stopped() -> Story:
    story = beans()
    story.mark(Act.STOP)
    return story


def voided() -> Story:
    story = Story()
    story.mark(Act.VOID)
    return story


def going_on() -> Story:
    story = cured()
    story.after(days=90).go_on(PAINTED)
    story.mark(Act.START, "bath")
    return story


REFUSED = [
    (beans, Act.START, 1, {}, "runs already"),
    (beans, Act.START, None, {}, "which step"),
    (beans, Act.END, 99, {}, "no step 99"),
    (beans, Act.END, 0, {}, "no step 0"),
    (beans, Act.END, 1, {"at": NINE - MINUTE}, "before it began"),
    (beans, Act.TEND, 1, {"at": NINE - MINUTE}, "before Bean soak began"),
    (beans, Act.TEND, 2, {}, "has not begun"),
    (beans, Act.DRY, 1, {}, "not a drying step"),
    (beans, Act.DAMP, 1, {}, "not a drying step"),
    (beans, Act.DAMP, "dry-1", {}, "has not begun"),
    (beans, Act.START, "cure", {}, "begins by itself"),
    (beans, Act.END, "cure", {}, "not dry yet"),
    (beans, Act.SKIP, "cure", {}, "not skipped"),
    (beans, Act.REPEAT, "cure", {}, "not repeated"),
    (beans, Act.REPEAT, None, {}, "which step"),
    (beans, Act.USE, None, {}, "no cure running"),
    (beans, Act.NOTE, 99, {}, "no step 99"),
    (beans, Act.NEW, None, {}, "no act"),
    (beans, Act.MILK_NEW, None, {}, "no act"),
    (drying, Act.DAMP, "dry-1", {"at": NINE}, "not begun by then"),
    (drying, Act.DRY, "dry-1", {"at": NINE}, "before it began"),
    (drying, Act.START, 1, {}, "done already"),
    (drying, Act.END, 1, {}, "done already"),
    (drying, Act.TEND, 1, {}, "done already"),
    (drying, Act.SKIP, 1, {}, "done already"),
    (drying, Act.PUTOFF, 1, {"data": {"until": NINE.isoformat()}}, "done already"),
    (drying, Act.PLAN, 1, {"data": {"planned": NINE.isoformat()}}, "done already"),
    (cured, Act.USE, None, {"at": NINE}, "not dry by then"),
    (used, Act.USE, None, {}, "recorded already"),
    (used, Act.START, "dip-4", {}, "skipped already"),
    (used, Act.REPEAT, "dip-3", {}, "cure of 26-001 has ended"),
    (stopped, Act.START, 2, {}, "was stopped"),
    (stopped, Act.END, 1, {}, "was stopped"),
    (stopped, Act.TEND, 1, {}, "was stopped"),
    (stopped, Act.SKIP, 1, {}, "was stopped"),
    (stopped, Act.REPEAT, 1, {}, "was stopped"),
    (stopped, Act.USE, None, {}, "was stopped"),
    (stopped, Act.STOP, None, {}, "was stopped"),
    (stopped, Act.GO_ON, None, {"data": {"method": [SCOUR, 1]}}, "was stopped"),
    (voided, Act.START, 1, {}, "was voided"),
    (voided, Act.NOTE, None, {}, "was voided"),
    (voided, Act.SET, None, {"data": {"name": "x"}}, "was voided"),
    (voided, Act.GO_ON, None, {"data": {"method": [SCOUR, 1]}}, "was voided"),
    (going_on, Act.REPEAT, "dip-3", {}, "can no longer be repeated"),
    (going_on, Act.START, "dip-4", {}, "cure of 26-001 has ended"),
    (going_on, Act.END, "dip-4", {}, "cure of 26-001 has ended"),
    (beans, Act.GO_ON, None, {"data": {"method": ["no-such", 1]}}, "no method 'no-such'"),
    (beans, Act.GO_ON, None, {"data": {"method": [LONG, 7]}}, "version 7"),
    (beans, Act.SPLIT_OFF, None, {"data": {"pieces": []}}, "not none and not all"),
    (beans, Act.SPLIT_OFF, None, {"data": {"pieces": [1, 2]}}, "not none and not all"),
]


@pytest.mark.parametrize(
    ("told", "act", "step", "rest", "words"),
    REFUSED,
    ids=[f"{row[0].__name__}-{row[1].value}-{row[2]}-{row[4][:12]}" for row in REFUSED],
)
def test_what_makes_no_sense_is_refused_in_a_sentence(told, act, step, rest, words):
    story = told()
    refused = story.refusal(act, step, **rest)
    assert words in str(refused)
    assert str(refused).endswith((".", "?"))


def test_only_a_first_entry_makes_a_lot():
    with pytest.raises(Refusal, match="no such lot"):
        replay([], shipped())
    lot = Story().lot
    note = Entry("26-001", Act.MILK_SET, NINE, NINE, "UTC", 2)
    with pytest.raises(Refusal, match="no act"):
        apply(lot, note, shipped())


def test_the_entry_that_stands_in_the_way_is_named():
    story = beans()
    story.after(hours=12).mark(Act.END, 1)
    entries = [replace(entry, at=NINE + 13 * HOUR) if entry.number == 2 else entry
               for entry in story.entries]  # fmt: skip
    with pytest.raises(StandsOn, match=r"Entry 3 \(end\) stands on it") as raised:
        replay(entries, story.book)
    assert raised.value.entry.number == 3
