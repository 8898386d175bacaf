"""The rows for vessels, line and heat: their order, places and words. Reckoned by hand."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from studio_log.domain.methods import StepKind
from studio_log.domain.sharing import Shared, Taking
from studio_log.present.time_scale import time_scale
from studio_log.present.timeline_layout import RowSizes, Sheet
from studio_log.present.timeline_shared import SharedRow, Stock, line_words, shared_rows
from studio_log.present.timeline_shared_layout import (
    LEAST_CLASH,
    MOST_SLOTS,
    hit_shared,
    lay_out_shared,
)
from studio_log.present.timeline_shared_words import (
    clash_label,
    clash_story,
    row_stops,
    row_story,
    taking_story,
)

NOW = datetime(2026, 6, 9, 12, tzinfo=UTC)
HOUR, DAY = timedelta(hours=1), timedelta(days=1)


def taking(code: str, start: float, end: float, **more) -> Taking:
    plain = Taking(
        Shared.LINE, "", code, "Runners", 5, "Dry", StepKind.DRY, NOW + start * HOUR,
        NOW + end * HOUR, False, 8.0,
    )  # fmt: skip
    return replace(plain, **more)


def soak(code: str, start: float, end: float, name: str = "blue tub") -> Taking:
    return taking(
        code, start, end, shared=Shared.VESSEL, name=name, kind=StepKind.SOAK, title="First soak",
        amount=1.0,
    )  # fmt: skip


def row(*takings: Taking, stock: Stock | None = None, **more) -> SharedRow:
    (made,) = shared_rows(takings, stock or Stock(20.0, 1), NOW, "UTC", **more)
    return made


def sheet() -> Sheet:
    scale = time_scale(NOW - DAY, NOW + 3 * DAY, 20.0)  # now lies at 480
    measure = lambda text: 6.0 * len(text)  # noqa: E731 - six pixels a letter
    return Sheet(scale, (0.0, 1000.0), NOW, RowSizes(), measure, measure)


def test_vessels_come_by_name_then_those_without_then_line_and_heat() -> None:
    heat = taking("A", 0, 1, shared=Shared.HEAT, amount=1.0)
    rows = shared_rows(
        [heat, taking("A", 1, 2), soak("A", 0, 1, ""), soak("B", 0, 1, "White  tub"),
         soak("C", 3, 4, "white tub"), soak("D", 0, 1)],
        Stock(), NOW, "UTC",
    )  # fmt: skip
    assert [(one.title, one.note) for one in rows] == [
        ("blue tub", "vessel"),
        ("white tub", "vessel"),  # however it was written; the last one counts
        ("Vessels", "without a name"),
        ("Drying line", "length not said"),
        ("Heat", "burners not said"),
    ]
    assert [len(one.takings) for one in rows] == [1, 2, 1, 1, 1]
    assert all(one.clashes == () for one in rows)


@pytest.mark.parametrize(
    ("stock", "notes"),
    [(Stock(16.0, 1), ("16 m", "1 burner")), (Stock(7.25, 3), ("7.3 m", "3 burners"))],
)
def test_a_row_says_how_much_there_is(stock: Stock, notes: tuple[str, str]) -> None:
    heat = taking("A", 0, 1, shared=Shared.HEAT, amount=1.0)
    rows = shared_rows([heat, taking("A", 0, 1)], stock, NOW, "UTC")
    assert tuple(one.note for one in rows) == notes


def test_line_is_told_in_one_unit_so_that_it_compares() -> None:
    assert line_words(1.44, "metric") == "1.4 m"
    assert line_words(16.0, "us") == "17.5 yd"  # 16 / 0.9144


def test_lots_at_the_same_time_stand_above_one_another() -> None:
    one = row(taking("A", 0, 4), taking("B", 1, 3), taking("C", 3, 6), taking("A", 4, 5))
    assert one.slots == (0, 1, 1, 0)


def test_two_lots_in_one_vessel_meet_by_shape_and_word() -> None:
    one = row(soak("26-001", -4, 9), soak("26-003", 4, 18))
    assert clash_label(one, one.clashes[0]) == "2 meet"
    layout = lay_out_shared(one, sheet())
    (met,) = layout.clashes
    assert (met.left, met.right) == pytest.approx((560, 660))
    when = "today 16:00 to today 21:00"
    told = f"26-001 and 26-003 meet in blue tub, {when}: it holds one lot at a time."
    assert clash_story(one, one.clashes[0]) == told
    assert hit_shared(layout, 600, 20).story == told
    assert hit_shared(layout, 600, 20).part == "clash"
    assert told in taking_story(one, one.takings[0])


def test_too_much_on_the_line_says_how_much() -> None:
    one = row(taking("A", 0, 6), taking("B", 1, 6, amount=9.5), taking("C", 2, 4, amount=6.0))
    (met,) = one.clashes
    assert clash_label(one, met) == "23.5 of 20 m"
    assert clash_story(one, met) == (
        "A, B and C want 23.5 m of the drying line today 14:00 to today 16:00: "
        "20 m there are, 3.5 m too few."
    )
    many = row(*(taking(f"L{n}", 0, 2) for n in range(9)))
    assert clash_story(many, many.clashes[0]).startswith("L0, L1 and 7 more lots want 72 m")
    in_yards = row(*(taking(f"L{n}", 0, 2) for n in range(9)), units="us")
    assert clash_label(in_yards, in_yards.clashes[0]) == "78.7 of 21.9 yd"


def test_two_pots_on_one_burner() -> None:
    pots = [taking(c, 0, 2, shared=Shared.HEAT, amount=1.0, title="Simmer") for c in ("A", "B")]
    one = row(*pots)
    assert clash_label(one, one.clashes[0]) == "2 of 1"
    assert clash_story(one, one.clashes[0]) == (
        "A and B want heat today 12:00 to today 14:00: 2 pots, 1 burner."
    )


def test_a_taking_tells_lot_step_how_much_and_when() -> None:
    one = row(taking("26-001", 1, 3), taking("26-002", 5, 6, amount=None))
    assert taking_story(one, one.takings[0]) == (
        "26-001 Runners — Dry, step 5, on the drying line: 8 m, today 13:00 to today 15:00."
    )
    assert "length not known" in taking_story(one, one.takings[1])
    nameless = row(soak("26-001", 1, 3, ""))
    assert "F2 names it" in taking_story(nameless, nameless.takings[0])


def test_a_row_tells_who_is_there_now_and_the_first_meeting() -> None:
    assert row_story(row(taking("A", 1, 2))) == "Drying line, 20 m. Free now."
    there = row_story(row(soak("A", -1, 2), soak("B", 1, 2)))
    assert there.startswith("blue tub, vessel. Now: A. A and B meet in blue tub")


def test_keys_go_through_a_row_in_order_of_time_a_meeting_before_what_meets() -> None:
    one = row(soak("A", -1, 3), soak("B", 1, 4))
    assert [(hit.part, hit.code, hit.step) for hit in row_stops(one)] == [
        ("taking", "A", 5),
        ("clash", "A", None),
        ("taking", "B", 5),
    ]


def test_a_meeting_of_a_minute_is_seen_and_fifty_lots_stay_in_the_row() -> None:
    short = row(soak("A", 0, 1), soak("B", 59 / 60, 2))
    (met,) = lay_out_shared(short, sheet()).clashes
    assert met.right - met.left == pytest.approx(LEAST_CLASH)
    many = lay_out_shared(row(*(taking(f"L{n}", 0, 9) for n in range(50))), sheet())
    assert len({shape.top for shape in many.takings}) == MOST_SLOTS
    assert max(shape.top + shape.high for shape in many.takings) <= RowSizes().row


def test_what_is_out_of_sight_is_not_laid_out() -> None:
    one = row(taking("A", -40, -30), taking("B", 1, 2), taking("C", 60, 70))
    assert [shape.taking.code for shape in lay_out_shared(one, sheet()).takings] == ["B"]
    assert hit_shared(lay_out_shared(one, sheet()), 100, 20).part == "row"


def test_words_keep_clear_of_the_tag_of_a_clash() -> None:
    layout = lay_out_shared(row(soak("26-001", -4, 1), soak("26-003", 0.7, 18)), sheet())
    (met,) = layout.clashes
    left, right = met.reach
    assert right - left > met.right - met.left  # the tag is wider than the lattice
    for shape in layout.takings:
        assert shape.label is not None
        assert shape.label.x + shape.label.width <= left or shape.label.x >= right
