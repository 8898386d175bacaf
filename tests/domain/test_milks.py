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


def test_what_was_lost_in_the_warm_is_not_won_back_in_the_cold():
    def at(hours: float, number: int, act: Act, **data: object) -> Entry:
        when = NINE + hours * HOUR
        return Entry("M26-001", act, when, when, "UTC", number, data=data)

    made = at(0, 1, Act.MILK_NEW, cold=False)
    half = milk_from([made, at(2, 2, Act.MILK_SET, cold=True)])
    assert half.use_by == NINE + (2 + 24) * HOUR  # two of four hours spent: half of 48 is left
    spent = milk_from([made, at(5, 2, Act.MILK_SET, cold=True)])
    assert spent.use_by == NINE + 4 * HOUR  # it was over before it was moved
    back = milk_from([made, at(2, 2, Act.MILK_SET, cold=True), at(14, 3, Act.MILK_SET, cold=False)])
    assert back.use_by == NINE + (14 + 4 * 0.25) * HOUR


def test_a_measured_heat_wins_until_the_milk_is_moved():
    # Hours by heat: science.soy_milk.KEEPS, a proposal bracketed by food rules.
    warm = milk_from([line(1, Act.MILK_NEW, cold=False, celsius=32.0)])
    assert warm.use_by == NINE + HOUR
    cool = milk_from([line(1, Act.MILK_NEW, cold=False, celsius=18.0)])
    assert cool.use_by == NINE + 8 * HOUR
    moved = milk_from(
        [line(1, Act.MILK_NEW, cold=False, celsius=32.0), line(2, Act.MILK_SET, cold=True)]
    )
    assert moved.use_by == NINE + 48 * HOUR
    assert moved.celsius is None


def test_no_journal_is_no_milk():
    with pytest.raises(Refusal, match="no such milk"):
        milk_from([])
