"""A trial's journal from anywhere: it reads, or it is refused in words; nothing else happens."""

from datetime import UTC, date, datetime, timedelta
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act, Entry
from studio_log.domain.quiet import QuietHours
from studio_log.domain.trial_due import trial_reminders
from studio_log.domain.trials import trial_from

AT = datetime(2026, 6, 1, 9, tzinfo=UTC)
PLAN: dict[str, Any] = {
    "question": "Does it?", "arms": [{"age": 0.0}, {"age": 30.0}, {"name": "no soy"}],
    "blocks": ["1", "2"], "replicates": 1, "seed": 3, "way": "forwards", "day": "2026-06-04",
    "lead": 3, "measure": "chroma",
    "units": [[arm, block, 1, str(100 + 2 * arm + block), 2 * arm + block - 2, 9 - 2 * arm - block]
              for arm in (1, 2, 3) for block in (1, 2)],
}  # fmt: skip


def entry(act: Act, number: int = 1, **more: Any) -> Entry:
    return Entry("T26-001", act, AT, AT, "Europe/London", number=number, **more)


def test_a_plan_reads_and_rings_on_its_days() -> None:
    trial = trial_from([entry(Act.TRIAL_NEW, data=PLAN)])
    assert [arm.words for arm in trial.arms] == ["0 d", "30 d", "no soy"]
    quiet = QuietHours(zone="Europe/London")
    due = trial_reminders(trial, {(2, 2): date(2026, 6, 6)}, quiet)
    # Dry on 4 June, batch 2 on 6 June: 30 days on is 4 and 6 July by a calendar.
    days = {one.key.removeprefix("T26-001/dye/"): one.due.date().isoformat() for one in due}
    assert days == {"1/1": "2026-06-04", "3/1": "2026-06-04", "2/1": "2026-07-04",
                    "2/2": "2026-07-06"}  # fmt: skip
    assert "Of batch 2." in next(one.why for one in due if one.key.endswith("2/2"))


@pytest.mark.parametrize(
    "change",
    [
        {"arms": []}, {"arms": [{"age": -1}]}, {"arms": [{"age": 1e300}]}, {"arms": [{"age": "x"}]},
        {"arms": None}, {"units": []}, {"units": [[9, 1, 1, "100", 1, 1]]}, {"units": [[1]]},
        {"way": "sideways"}, {"measure": "taste"}, {"day": "9 July"}, {"day": "9999-12-31"},
        {"day": 7}, {"lead": 10**9}, {"seed": None}, {"blocks": 5},
    ],
)  # fmt: skip
def test_a_plan_that_makes_no_sense_is_refused(change: dict[str, Any]) -> None:
    with pytest.raises(Refusal, match="does not read"):
        trial_from([entry(Act.TRIAL_NEW, data={**PLAN, **change})])


@pytest.mark.parametrize(
    ("act", "more"),
    [
        (Act.TRIAL_ARM, {"data": {"what": "dye", "cells": [[7, 1]]}}),
        (Act.TRIAL_ARM, {"data": {"what": "dye"}}),
        (Act.TRIAL_UNITS, {"data": {"lots": [[1, 9, "26-001"]]}}),
        (Act.TRIAL_UNITS, {"data": {"swatches": [[0, "W26-001"]]}}),
        (Act.TRIAL_READ, {"data": {"unit": 99}, "readings": {"value": 3.0}}),
        (Act.TRIAL_READ, {"data": {"unit": 1}, "readings": {"value": "dark"}}),
        (Act.TRIAL_READ, {"data": {"unit": 1}, "readings": {"value": float("nan")}}),
        (Act.TRIAL_READ, {"data": {"unit": 1}, "readings": {"L": 5.0}}),
        (Act.TRIAL_SET, {"data": {"day": "soon"}}),
        (Act.BATH_USE, {"data": {}}),
    ],
)
def test_an_entry_that_makes_no_sense_is_refused(act: Act, more: dict[str, Any]) -> None:
    with pytest.raises(Refusal, match="does not read"):
        trial_from([entry(Act.TRIAL_NEW, data=PLAN), entry(act, 2, **more)])


@settings(max_examples=80, deadline=None)
@given(st.sampled_from(sorted(PLAN)), st.recursive(
    st.none() | st.integers() | st.floats() | st.text(max_size=5) | st.booleans(),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=4), inner),
    max_leaves=6,
))  # fmt: skip
def test_whatever_stands_in_a_plan_is_read_or_refused(field: str, value: Any) -> None:
    try:
        trial = trial_from([entry(Act.TRIAL_NEW, data={**PLAN, field: value})])
    except Refusal:
        return
    found = trial_reminders(trial, {}, QuietHours(zone="Europe/London"))
    assert all(one.due > AT - timedelta(days=200_000) for one in found)


def test_veiled_from_the_first_reading_to_the_unveiling() -> None:
    plan = entry(Act.TRIAL_NEW, data=PLAN)
    read = entry(Act.TRIAL_READ, 2, data={"unit": 1}, readings={"value": 3.0})
    told = entry(Act.TRIAL_UNVEIL, 3, data={"broken": True, "unread": 5})
    late = entry(Act.TRIAL_READ, 4, data={"unit": 2}, readings={"value": 3.0})
    assert not trial_from([plan]).veiled
    assert trial_from([plan, read]).veiled
    last = trial_from([plan, read, told, late])
    assert not last.veiled
    assert (last.readings[1].blind, last.readings[2].blind) == (True, False)
