"""A plan as days, visits and what is tended in passing; cases worked out by hand."""

from datetime import UTC, datetime, timedelta

from studio_log.present.plan_visits import HandsOn, Tended, plan_days


def at(hour: int, minute: int = 0, day: int = 9) -> datetime:
    return datetime(2026, 6, day, hour, minute, tzinfo=UTC)


def act(start: datetime, lot: str, order: str, minutes: int = 10) -> HandsOn:
    return HandsOn(start, start + timedelta(minutes=minutes), lot, order.lower(), order)


def stir(start: datetime, lot: str = "26-001", words: str = "Stir") -> Tended:
    return Tended(start, start, lot, words)


def test_a_visit_goes_on_until_nothing_is_done_for_half_an_hour() -> None:
    acts = [act(at(9), "A", "Spin"), act(at(9, 40), "B", "Dip"), act(at(10, 21), "A", "Hang")]
    (day,) = plan_days(acts, "UTC")
    assert [(one.start, one.end) for one in day.visits] == [
        (at(9), at(9, 50)), (at(10, 21), at(10, 31)),
    ]  # fmt: skip


def test_what_is_done_stands_in_the_order_in_which_it_is_done() -> None:
    """Two lots in turn are three lines, not two: nobody hangs up what is not dipped."""
    acts = [act(at(9, 20), "A", "Hang"), act(at(9), "A", "Spin"), act(at(9, 10), "B", "Dip")]
    (day,) = plan_days([*acts, act(at(9, 30), "A", "Rinse")], "UTC")
    (visit,) = day.visits
    told = [(run[0].lot, [one.order for one in run]) for run in visit.runs]
    assert told == [("A", ["Spin"]), ("B", ["Dip"]), ("A", ["Hang", "Rinse"])]


def test_a_day_on_which_only_something_is_stirred_is_there_without_a_visit() -> None:
    days = plan_days([act(at(9), "A", "Spin")], "UTC", [stir(at(12, day=10))])
    assert [(one.day.day, len(one.visits), len(one.tended)) for one in days] == [
        (9, 1, 0), (10, 0, 1),
    ]  # fmt: skip


def test_tendings_soon_after_another_are_one_line_and_those_hours_apart_are_not() -> None:
    turns = [stir(at(9, minute), "B", "Turn the cloth") for minute in (10, 20, 30)]
    (day,) = plan_days((), "UTC", [stir(at(9, 15)), *turns, stir(at(12, 15))])
    assert [(one.lot, one.start, one.end, one.times) for one in day.tended] == [
        ("B", at(9, 10), at(9, 30), 3), ("26-001", at(9, 15), at(9, 15), 1),
        ("26-001", at(12, 15), at(12, 15), 1),
    ]  # fmt: skip


def test_a_day_is_that_of_the_place() -> None:
    (day,) = plan_days([act(at(23, 30), "A", "Spin")], "Europe/London", [stir(at(23, 50))])
    assert day.day.day == 10
