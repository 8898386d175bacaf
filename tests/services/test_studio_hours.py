"""The studio's hours asked for: of a span of days, from the settings as they are kept."""

from datetime import date, timedelta

import pytest

from studio_log.domain.errors import Refusal
from studio_log.domain.stretch_text import write_stretches
from studio_log.services import questions as q
from studio_log.services.commands import ChangeSettings
from studio_log.services.studio_hours import StudioHoursAnswer, StudioHoursFor
from tests.support.fixtures import Workshop, a_studio, clock, shop

__all__ = ["a_studio", "clock", "shop"]
EVE = date(2026, 12, 24)
CHOSEN = {
    "open_hours": "mon-fri 09:00-12:30; mon-fri 13:30-17:00",
    "single_days": "2026-12-24 9-12: baking; 2026-12-28 usual",
    "holiday_place": "GB-ENG",
}


def asked(shop: Workshop, first: date, last: date) -> StudioHoursAnswer:
    answer = shop.studio.ask(StudioHoursFor(first, last))
    assert isinstance(answer, StudioHoursAnswer)
    return answer


def test_before_anything_is_said_all_days_are_whole_and_the_nights_are_not(shop: Workshop) -> None:
    told = asked(shop, EVE, EVE + timedelta(days=6))
    assert [one.working for one in told.days] == [((0, 1440),)] * 7
    assert told.waking == (((420, 1320),),) * 7


def test_each_day_has_its_stretches_and_why_they_differ(shop: Workshop) -> None:
    shop.do(ChangeSettings(CHOSEN))
    told = asked(shop, EVE - timedelta(days=1), EVE + timedelta(days=4))
    assert [(write_stretches(one.working), one.words) for one in told.days] == [
        ("09:00-12:30, 13:30-17:00", ""),
        ("09:00-12:00", "open 09:00–12:00: baking"),
        ("", "Christmas Day"),
        ("", "Boxing Day"),
        ("", ""),
        ("09:00-12:30, 13:30-17:00", "open 09:00–12:30, 13:30–17:00: Boxing Day (observed)"),
    ]


def test_waking_hours_that_are_said_hold_outside_the_quiet_ones(shop: Workshop) -> None:
    shop.do(ChangeSettings({"waking_hours": "mon-sun 06:00-21:00; sun 21:30-24:00"}))
    told = asked(shop, EVE, EVE)
    assert [write_stretches(one) for one in told.waking] == ["07:00-21:00"] * 6 + [
        "07:00-21:00, 21:30-22:00"
    ]


def test_a_span_nobody_plans_is_refused(shop: Workshop) -> None:
    for last in (EVE - timedelta(days=1), EVE + timedelta(days=4000)):
        with pytest.raises(Refusal, match="from a day to a later one"):
            asked(shop, EVE, last)


def test_a_place_that_is_not_known_changes_nothing(shop: Workshop) -> None:
    with pytest.raises(Refusal, match="No holidays are known of 'XX'"):
        shop.do(ChangeSettings({"holiday_place": "XX", "burners": 3}))
    assert (shop.studio.settings.holiday_place, shop.studio.settings.burners) == ("", 0)


def test_a_place_kept_by_another_version_stops_nothing(shop: Workshop) -> None:
    with shop.studio.store.work() as work:
        work.settings.put_all({"holiday_place": "XX"})
        shop.studio.read_kept_settings(work)
    shop.do(ChangeSettings({"burners": 2}))
    assert "none is counted" in asked(shop, EVE, EVE).doubt


def test_the_timeline_is_closed_on_holidays_and_says_their_names(shop: Workshop) -> None:
    """9 June 2026 is a Tuesday; its 19 June is a fair."""
    shop.do(ChangeSettings({**CHOSEN, "single_days": "2026-06-19 closed: fair"}))
    told = shop.studio.ask(q.TimelineFor())
    days = [day for one in told.closed for day in one.days]
    assert days[0] == (date(2026, 6, 19), "closed: fair")
