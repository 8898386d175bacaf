"""A milk's two lives, and what its journal says. Its hours: common practice, no source."""

import pytest

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act, Entry
from studio_log.domain.milks import milk_from
from tests.support.builders import HOUR, NINE


def line(number: int, act: Act, **data: object) -> Entry:
    return Entry("M26-001", act, NINE, NINE, "UTC", number, data=data)


def test_milk_kept_cold_is_good_for_48_h_and_at_room_heat_for_hours():
    cold = milk_from([line(1, Act.MILK_NEW, cold=True, lots=["26-001"])])
    warm = milk_from([line(1, Act.MILK_NEW, cold=False)])
    assert cold.use_by == NINE + 48 * HOUR
    assert warm.use_by == NINE + 4 * HOUR
    assert cold.lots == ("26-001",)


def test_a_milk_is_changed_by_later_entries_and_these_may_be_taken_back():
    entries = [
        line(1, Act.MILK_NEW, cold=True, litres=0.9),
        line(2, Act.MILK_SET, cold=False),
        line(3, Act.MILK_SET, finished=True, lots=["26-002"]),
    ]
    milk = milk_from(entries)
    assert (milk.cold, milk.finished, milk.lots, milk.litres) == (False, True, ("26-002",), 0.9)
    back = Entry("M26-001", Act.UNDO, NINE, NINE, "UTC", 4, target=3)
    assert not milk_from([*entries, back]).finished


def test_no_journal_is_no_milk():
    with pytest.raises(Refusal, match="no such milk"):
        milk_from([])
