"""What the timeline is told of vessels, line, heat and closed hours, from real lots."""

from datetime import UTC, datetime, timedelta

import pytest

from studio_log.domain.journal import Act
from studio_log.domain.sharing import Shared
from studio_log.services import questions as q
from studio_log.services import timeline_reads
from studio_log.services.commands import ChangeSettings, SetLot, Undo
from tests.support.fixtures import Workshop, a_studio, clock, shop

__all__ = ["a_studio", "clock", "shop"]
SCOUR = "scour-cellulose"


def rows(shop: Workshop) -> dict[str, tuple[str, int, int]]:
    told = shop.studio.ask(q.TimelineFor()).shared
    return {one.title: (one.note, len(one.takings), len(one.clashes)) for one in told}


def in_the_soak(shop: Workshop, vessel: str) -> str:
    code = shop.new(vessel=vessel)
    shop.walk_to(code, "first-soak")
    shop.mark(code, "first-soak", Act.START)
    return code


def test_two_soaks_in_one_tub_meet_until_one_gets_a_tub_of_its_own(shop: Workshop) -> None:
    first, second = in_the_soak(shop, "blue tub"), in_the_soak(shop, "Blue  tub")
    assert shop.lot(first).vessel == "blue tub"
    (row,) = (one for one in shop.studio.ask(q.TimelineFor()).shared if one.title == "Blue  tub")
    assert row.clashes[0].codes == (first, second)
    shop.do(SetLot(second, vessel="pail"))
    assert {"blue tub", "pail"} <= set(rows(shop))
    assert all(clashes == 0 for _, _, clashes in rows(shop).values())
    shop.do(Undo(second))
    assert shop.lot(second).vessel == "Blue  tub"


def test_a_soak_in_milk_takes_no_heat_and_a_scour_does(shop: Workshop) -> None:
    code = shop.new(vessel="blue tub")
    shop.mark(code, shop.lot(code).steps[0].slug, Act.START)
    assert "Heat" not in rows(shop)
    pot = shop.new(method=SCOUR, vessel="pot")
    shop.mark(pot, "wet-out", Act.START)
    told = shop.studio.ask(q.TimelineFor()).shared
    (heat,) = (one for one in told if one.shared is Shared.HEAT)
    lot = shop.lot(pot)
    assert [lot.step(one.step).slug for one in heat.takings] == ["heat-up", "simmer"]


def test_line_and_burners_of_the_settings_are_what_there_is(shop: Workshop) -> None:
    code = shop.new()
    shop.mark(code, shop.lot(code).steps[0].slug, Act.START)
    assert rows(shop)["Drying line"][0] == "length not said"
    shop.do(ChangeSettings({"line_metres": 1.5, "burners": 2}))
    note, takings, clashes = rows(shop)["Drying line"]
    assert note == "1.5 m"
    assert clashes == takings > 0  # one lot alone is longer than the line each time it dries


def test_closed_hours_of_the_settings_are_told_in_utc(shop: Workshop) -> None:
    code = shop.new()
    shop.mark(code, shop.lot(code).steps[0].slug, Act.START)
    assert shop.studio.ask(q.TimelineFor()).closed == ()
    shop.do(ChangeSettings({"open_hours": "Mon – Fri 9:00–17:00"}))
    told = shop.studio.ask(q.TimelineFor())
    now = shop.clock.now()
    ahead = [one for one in told.closed if one.end > now]
    assert len(ahead) > 7
    longest = max(one.end - one.start for one in ahead)
    assert longest == timedelta(hours=64)  # Friday 17:00 to Monday 09:00
    assert all(one.start.tzinfo is UTC for one in ahead)
    assert isinstance(ahead[0].start, datetime)


def test_a_vessel_name_that_cannot_be_kept_is_refused(shop: Workshop) -> None:
    from studio_log.domain.errors import Refusal

    code = shop.new(vessel="tub")
    for name in ("tub\x00", "t" * 500):
        with pytest.raises(Refusal, match="vessel's name"):
            shop.do(SetLot(code, vessel=name))
    assert shop.lot(code).vessel == "tub"


def test_of_too_many_lots_those_that_need_hands_first_are_shown(
    shop: Workshop, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(timeline_reads, "MOST_LANES", 2)
    planned = [shop.new() for _ in range(3)]
    pressing = in_the_soak(shop, "tub")
    told = shop.studio.ask(q.TimelineFor())
    assert told.left_out == 2
    assert [lane.code for lane in told.lanes] == [pressing]  # before those only planned
    assert shop.studio.ask(q.TimelineFor((planned[0],))).left_out == 0
