"""A drying whose cloth was weighed and whose room was read runs by the estimate, not by the method.

The estimate itself is checked in tests/science against published figures; here it is its hold on
windows and reminders.
"""

from datetime import timedelta

from studio_log.domain.drying_time import drying_time
from studio_log.domain.dryings import hanging_of
from studio_log.domain.due import reminders_of
from studio_log.domain.journal import Act
from studio_log.domain.likely import likely_lasts
from studio_log.domain.lots import Lot, LotStep
from studio_log.domain.methods import StepKind
from studio_log.domain.reminders import Kind
from studio_log.domain.windows import windows_of
from studio_log.services.commands import Mark, Undo
from tests.support.fixtures import Workshop

ROOM = {"room-temperature": 20.0, "room-humidity": 55.0}


def hung(shop: Workshop, **readings: float) -> tuple[str, LotStep]:
    """A lot of 299.7 g that has just been hung, wet, with these readings."""
    code = shop.new()
    first = next(one for one in shop.lot(code).steps if one.spec.kind is StepKind.DRY)
    shop.walk_to(code, first.slug)
    running = next((one for one in shop.lot(code).open_steps() if one.slug == first.slug), None)
    if running is None or not running.running:
        shop.mark(code, str(first.number), Act.START)
    if readings:
        shop.do(Mark(code, str(first.number), Act.NOTE, note="weighed", readings=readings))
    return code, shop.lot(code).step(first.number)


def ask(lot: Lot, shop: Workshop) -> timedelta:
    """When "is it dry?" rings, after the cloth was hung."""
    quiet = shop.studio.settings.quiet("UTC")
    found = [one for one in reminders_of(lot, shop.clock.at, quiet) if one.kind is Kind.IS_DRY]
    step = next(one for one in lot.steps if one.spec.kind is StepKind.DRY and one.running)
    assert step.start is not None
    return found[0].due - step.start


def test_without_readings_the_method_stands(shop: Workshop) -> None:
    code, step = hung(shop)
    assert likely_lasts(shop.lot(code), step) is None


def test_with_the_room_alone_the_method_stands_too(shop: Workshop) -> None:
    code, step = hung(shop, **ROOM)
    assert likely_lasts(shop.lot(code), step) is None


def test_the_question_comes_when_the_cloth_is_likely_dry(shop: Workshop) -> None:
    code, step = hung(shop, **ROOM, **{"wet-weight": 480.0})
    lot = shop.lot(code)
    likely = likely_lasts(lot, step)
    assert likely is not None
    hanging = hanging_of(lot, step, shop.entries(code))
    assert hanging is not None
    worked = drying_time(hanging).time.aim
    assert abs(likely.aim - worked) <= timedelta(minutes=3)  # told to five minutes
    assert likely.latest == step.spec.lasts.latest  # type: ignore[union-attr]
    assert ask(lot, shop) == likely.aim
    window = windows_of(lot, shop.clock.at, shop.studio.settings.quiet("UTC"))[step.number]
    assert step.start is not None
    assert window.end.aim == step.start + likely.aim


def test_damper_air_asks_later_and_the_danger_stays_where_it_was(shop: Workshop) -> None:
    code, step = hung(shop, **ROOM, **{"wet-weight": 480.0})
    dry = likely_lasts(shop.lot(code), step)
    shop.do(Mark(code, str(step.number), Act.NOTE, note="rain", readings={"room-humidity": 85.0}))
    damp = likely_lasts(shop.lot(code), shop.lot(code).step(step.number))
    assert dry is not None
    assert damp is not None
    assert damp.aim > dry.aim
    assert damp.latest == dry.latest


def test_a_reading_taken_back_no_longer_counts(shop: Workshop) -> None:
    code, step = hung(shop, **ROOM, **{"wet-weight": 480.0})
    shop.do(Undo(code))
    assert likely_lasts(shop.lot(code), shop.lot(code).step(step.number)) is None


def test_a_slip_of_the_hand_changes_nothing(shop: Workshop) -> None:
    for slip in ({"wet-weight": 20.0}, {"wet-weight": 90_000.0}, {"room-humidity": 99.0}):
        code, step = hung(shop, **{**ROOM, "wet-weight": 480.0, **slip})
        assert likely_lasts(shop.lot(code), shop.lot(code).step(step.number)) is None
