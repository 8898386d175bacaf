"""Dryings as a journal tells of them; the sums are checked in test_drying_time.py."""

from datetime import timedelta

import pytest

from studio_log.domain.drying_time import drying_time
from studio_log.domain.dryings import hanging_of, logged_dryings, weighed_course
from studio_log.domain.journal import Act
from studio_log.domain.methods import StepKind
from studio_log.domain.pieces import Piece
from tests.support.builders import LONG, Story, a_method, a_step

LAWN = [Piece(1, "cotton", "lawn", length_m=2.0, width_m=1.0, gsm=150.0)]
ROOM = {"room-temperature": 20.0, "room-humidity": 50.0}


def dried(hours: float = 2, *, wet: float | None = 480.0, room: dict[str, float] | None = None,
          pieces: list[Piece] | None = None) -> Story:  # fmt: skip
    """300 g of cloth of 150 g/m² that is hung at 60 % of water and dries in so many hours."""
    story = Story(LONG, pieces=LAWN if pieces is None else pieces).up_to("spin-1")
    readings = {} if wet is None else {"wet-weight": wet}
    story.after(minutes=5).mark(Act.END, "spin-1", readings=readings)  # hanging begins at once
    story.after(hours=hours).mark(Act.DRY, "dry-1", readings=ROOM if room is None else room)
    return story


def test_a_drying_is_told_by_its_room_and_its_wet_weight() -> None:
    """20 °C, 50 %, 150 g/m², 60 % of water, two sides, 0.1 m/s: 1.314 h (check table, row 1)."""
    story = dried(2)
    (one,) = logged_dryings(story.lot, story.entries)
    assert one.worked_out / timedelta(hours=1) == pytest.approx(1.314, rel=0.01)
    assert one.took == timedelta(hours=2)
    assert one.ratio == pytest.approx(2 / 1.314, rel=0.01)
    assert one.ended == story.at


def test_the_cloth_that_hangs_now_can_be_estimated() -> None:
    story = dried()
    hanging = hanging_of(story.lot, story.lot.step(story.number("dry-1")), story.entries)
    assert hanging is not None
    assert (hanging.gsm, hanging.fibre, hanging.room.celsius) == (150, "cotton", 20)
    assert hanging.spun.held.likely == pytest.approx(0.6)
    assert "60 % of its weight in water" in drying_time(hanging).time.why


def test_a_drying_whose_beginning_is_not_known_teaches_nothing() -> None:
    story = Story(a_method(a_step("dry", StepKind.DRY)), pieces=LAWN)
    story.after(hours=2).mark(Act.DRY, "dry", readings={**ROOM, "wet-weight": 480.0})
    assert story.lot.step(story.number("dry")).start is None
    assert list(logged_dryings(story.lot, story.entries)) == []


def test_the_weight_that_counts_is_that_of_when_it_was_hung() -> None:
    """Weighed anew afterwards: the drying keeps its 300 g."""
    story = dried(2)
    story.mark(Act.SET, data={"grams": 600.0})
    assert story.lot.grams == 600
    (one,) = logged_dryings(story.lot, story.entries)
    assert one.worked_out / timedelta(hours=1) == pytest.approx(1.314, rel=0.01)


@pytest.mark.parametrize(
    "story",
    [
        dried(wet=None), dried(room={}), dried(room={"room-temperature": 20.0}), dried(wet=200.0),
        dried(wet=3000.0), dried(room={**ROOM, "room-humidity": 99.0}),
        dried(pieces=[Piece(1, "cotton", given_grams=300.0)]),
        dried(pieces=[Piece(1, "cotton", length_m=2.0, width_m=1.0)]),
    ],
    ids=["no-wet-weight", "no-room", "half-a-room", "lighter", "six-fold", "full-air", "no-size",
         "no-weight"],
)  # fmt: skip
def test_what_was_not_read_or_cannot_be_teaches_nothing(story: Story) -> None:
    assert list(logged_dryings(story.lot, story.entries)) == []


def test_a_correction_counts_and_what_was_taken_back_does_not() -> None:
    story = dried(2, wet=None)
    spin = next(
        e.number for e in story.entries if e.act is Act.END and e.step == story.number("spin-1")
    )
    story.mark(Act.CORRECT, readings={"wet-weight": 480.0}, target=spin)
    assert len(list(logged_dryings(story.lot, story.entries))) == 1
    last = next(e.number for e in story.entries if e.act is Act.DRY)
    story.mark(Act.UNDO, target=last)
    assert list(logged_dryings(story.lot, story.entries)) == []


def shirt(*grams: float, dry: float = 162.0) -> Story:
    """The shirt of tests/reference/drying_series.csv, weighed each quarter of an hour."""
    story = Story(LONG, pieces=[Piece(1, "cotton shirt", given_grams=dry)]).up_to("dry-1")
    for one in grams:
        story.mark(Act.NOTE, "dry-1", readings={"wet-weight": one})
        story.after(minutes=15)
    return story


def course(story: Story) -> timedelta | None:
    lot = story.lot
    return weighed_course(lot, lot.step(story.number("dry-1")), story.entries)


def test_three_weighings_tell_when_the_shirt_will_be_dry() -> None:
    """T. Piotrowski's shirt: 280, 251, 220 g, within 2 % of its last weight after 75 min."""
    found = course(shirt(280, 251, 220))
    assert found is not None
    assert found / timedelta(minutes=1) == pytest.approx(75, rel=0.25)


@pytest.mark.parametrize(
    "story",
    [shirt(), shirt(280, 251), shirt(280, 280, 280), shirt(280, 0, -5), shirt(1, 2, 3)],
    ids=["none", "two", "nothing-lost", "slips", "lighter-than-dry"],
)
def test_too_few_weighings_or_slips_tell_nothing(story: Story) -> None:
    assert course(story) is None


def test_words_in_place_of_figures_are_passed_over() -> None:
    story = Story(LONG, pieces=LAWN).up_to("spin-1")
    story.after(minutes=5).mark(Act.END, "spin-1", readings={"wet-weight": "heavy"})
    story.after(hours=2).mark(Act.DRY, "dry-1", readings=ROOM)
    assert list(logged_dryings(story.lot, story.entries)) == []
