"""Vessels, line and heat: who takes them, and where lots meet. Figures reckoned by hand."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.lots import Lot
from studio_log.domain.methods import (
    AmountRule,
    Basis,
    Gap,
    Method,
    MethodStep,
    Reading,
    Spread,
    StepKind,
)
from studio_log.domain.pieces import Piece
from studio_log.domain.quiet import QuietHours
from studio_log.domain.sharing import (
    Clash,
    Shared,
    Taking,
    clashes,
    line_metres,
    needs_heat,
    needs_vessel,
    takings_of,
)
from studio_log.domain.starting import steps_of
from studio_log.domain.windows import windows_of

NOW = datetime(2026, 6, 9, 12, tzinfo=UTC)
HOUR = timedelta(hours=1)
HEAT = Reading("bath-temperature", "temperature of the bath", "°C")


def spec(
    kind: StepKind, *readings: Reading, hours: float = 2, hot: bool = False, bath: bool = False
) -> MethodStep:
    whole = hours * HOUR
    return MethodStep(
        kind.value, kind.value.title(), "Do it", "End it", "Ended", "How.", kind, HOUR / 6,
        Spread(whole, whole, whole), Gap(), "It spoils.", readings=readings,
        cautions=("hot-bath", "sds") if hot else ("sds",),
        amounts=(AmountRule("bath", "water", Basis.FIXED, 9, unit="L", vessel=True),) * bath,
    )  # fmt: skip


def taking(code: str, start: float, end: float, amount: float | None = 1.0, **more) -> Taking:
    plain = Taking(
        Shared.LINE, "", code, "Lot", 1, "Dry", StepKind.DRY, NOW + start * HOUR, NOW + end * HOUR,
        False, amount,
    )  # fmt: skip
    return replace(plain, **more)


@pytest.mark.parametrize(
    ("step", "vessel", "heat"),
    [
        (spec(StepKind.SOAK), True, False),
        (spec(StepKind.DIP), True, False),
        (spec(StepKind.DIP, HEAT, hot=True), True, False),  # a dip passes through a hot bath
        (spec(StepKind.SOAK, HEAT), True, False),  # cold milk, whose heat is read
        (spec(StepKind.SOAK, hot=True), True, False),  # cooling in its pot
        (spec(StepKind.SCOUR, HEAT, hot=True), True, True),
        (spec(StepKind.HAND, bath=True), True, False),
        (spec(StepKind.MILK, bath=True), False, False),
        (spec(StepKind.HAND, HEAT, hot=True), True, True),
        (spec(StepKind.HAND), False, False),
        (spec(StepKind.DRY), False, False),
        (spec(StepKind.RINSE), False, False),
    ],
)
def test_what_a_step_takes(step: MethodStep, vessel: bool, heat: bool) -> None:
    assert (needs_vessel(step), needs_heat(step)) == (vessel, heat)


def a_lot(*steps: MethodStep, lengths: tuple[float | None, ...] = (3.0, 1.8)) -> Lot:
    method = Method("m", 1, "Method", "school", "", "common practice", steps)
    pieces = tuple(Piece(n, "linen", length_m=one) for n, one in enumerate(lengths, 1))
    return Lot(
        "26-031", "Runners", NOW, "UTC", pieces, (method,), steps_of(method, join=0, first=1)
    )


def test_a_lot_takes_what_its_steps_take_one_after_another() -> None:
    lot = replace(
        a_lot(spec(StepKind.SCOUR, HEAT, hot=True), spec(StepKind.DRY, hours=5)), vessel="tub"
    )
    started = replace(lot, steps=(replace(lot.steps[0], start=NOW - HOUR), *lot.steps[1:]))
    found = takings_of(started, windows_of(started, NOW, QuietHours(zone="UTC")))
    assert [(one.shared, one.name, one.amount) for one in found] == [
        (Shared.VESSEL, "tub", 1.0),
        (Shared.HEAT, "", 1.0),
        (Shared.LINE, "", 4.8),
    ]
    assert (found[0].start, found[0].end) == (NOW - HOUR, NOW + HOUR)
    assert (found[2].start, found[2].end) == (NOW + HOUR, NOW + 6 * HOUR)


def test_one_length_that_is_not_known_leaves_the_line_open() -> None:
    assert line_metres(a_lot(lengths=(3.0, None))) is None
    assert line_metres(a_lot(lengths=())) is None


def test_three_lots_that_want_more_than_the_line_meet_while_they_do() -> None:
    found = [taking("A", 0, 6, 8), taking("B", 2, 8, 8), taking("C", 4, 5, 6)]
    assert clashes(found, 20.0, NOW) == (
        Clash(NOW + 4 * HOUR, NOW + 5 * HOUR, ("A", "B", "C"), 22.0),
    )
    assert clashes(found, 22.0, NOW) == ()
    assert clashes(found, None, NOW) == ()
    assert clashes(found, 10.0, NOW) == (
        Clash(NOW + 2 * HOUR, NOW + 6 * HOUR, ("A", "B", "C"), 22.0),
    )  # C comes and goes; it is one clash all the same


def test_what_is_past_is_let_be() -> None:
    found = [taking("A", -6, -1), taking("B", -5, 2), taking("C", -2, 1)]
    assert clashes(found, 1.0, NOW) == (Clash(NOW, NOW + HOUR, ("B", "C"), 2.0),)


def test_one_lot_never_meets_itself_nor_those_in_its_milk() -> None:
    mine = [taking("A", 0, 4), taking("A", 2, 6)]
    assert clashes(mine, 1.0, NOW) == ()
    tub = {"shared": Shared.VESSEL, "name": "tub"}
    together = [taking("A", 0, 4, milk="M26-001", **tub), taking("B", 1, 5, milk="M26-001", **tub)]
    assert clashes(together, 1.0, NOW) == ()
    assert clashes([*together, taking("C", 3, 6, **tub)], 1.0, NOW) != ()
    on_the_line = [replace(one, shared=Shared.LINE) for one in together]
    assert clashes(on_the_line, 1.0, NOW) != ()  # milk is shared in a vessel, not on the line


def test_unknown_metres_count_as_nothing() -> None:
    assert clashes([taking("A", 0, 4, 12), taking("B", 0, 4, None)], 12.0, NOW) == ()


spans = st.tuples(
    st.sampled_from("ABCD"), st.integers(-4, 20), st.integers(1, 9), st.integers(1, 9)
)


@given(st.lists(spans, max_size=9), st.integers(1, 20))
def test_at_each_quarter_of_an_hour_they_meet_just_where_the_sum_says(
    rows: list[tuple[str, int, int, int]], limit: int
) -> None:
    found = [taking(code, start, start + long, much) for code, start, long, much in rows]
    told = clashes(found, float(limit), NOW)
    for one, other in pairwise(told):
        assert one.end <= other.start
    for quarter in range(1, 30 * 4, 3):
        at = NOW + quarter * HOUR / 4
        most: dict[str, float] = {}
        for one in found:
            if one.start <= at < one.end:
                most[one.code] = max(most.get(one.code, 0), one.amount or 0)
        meets = any(one.start <= at < one.end for one in told)
        assert meets is (sum(most.values()) > limit)
