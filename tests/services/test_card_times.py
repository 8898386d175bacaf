"""Times from a card: read as they stand in the frames, looked over, written all or none."""

from datetime import UTC, datetime, timedelta

import pytest

from studio_log.domain.card_text import card_words
from studio_log.domain.errors import Question, Refusal
from studio_log.domain.journal import Act
from studio_log.services.card_times import CardRow, TakeCard, TryCard
from studio_log.services.commands import Undo
from tests.support.builders import HOUR, MINUTE, NINE
from tests.support.fixtures import Workshop

ZONE = "Europe/London"


@pytest.mark.parametrize(
    ("text", "more", "words"),
    [
        ("8/6 20:15", {}, "2026-06-08 20:15"),
        ("08.06. 20.15", {}, "2026-06-08 20.15"),
        ("8 / 6  20:15", {}, "2026-06-08 20:15"),
        ("08062015", {}, "2026-06-08 20:15"),
        ("6/8 20:15", {"month_first": True}, "2026-06-08 20:15"),
        # The card hung there since last year: the tenth of December is still ahead.
        ("10/12 8:05", {}, "2025-12-10 08:05"),
        ("10/12/2024 8:05", {}, "2024-12-10 08:05"),
        ("20:15", {"after": NINE - 12 * HOUR}, "2026-06-09 20:15"),
        ("21:00", {"after": NINE - 12 * HOUR}, "2026-06-08 21:00"),
        ("20:15", {}, "20:15"),
        ("at eight last night", {}, "at eight last night"),
    ],
)
def test_frames_are_read_as_they_were_filled_in(
    text: str, more: dict[str, object], words: str
) -> None:
    told = {"now": NINE, "zone": ZONE, "after": None, **more}
    assert card_words(text, **told).replace(".", ":") == words.replace(".", ":")  # type: ignore[arg-type]


@pytest.mark.parametrize("text", ["31/2 20:15", "8/13 20:15", "8/6 25:00", "99999999"])
def test_what_is_no_moment_is_said(text: str) -> None:
    with pytest.raises(Refusal, match="Nothing was changed"):
        card_words(text, now=NINE, zone=ZONE, after=None)


@pytest.fixture
def code(shop: Workshop) -> str:
    return shop.new("runners")


def rows(
    shop: Workshop, code: str, *told: tuple[datetime | None, datetime | None]
) -> tuple[CardRow, ...]:
    steps = shop.lot(code).steps
    return tuple(CardRow(step.number, *pair) for step, pair in zip(steps, told, strict=False))


BEANS = (NINE - 14 * HOUR, NINE - 2 * HOUR)
BLEND = (NINE - 2 * HOUR + 5 * MINUTE, NINE - 2 * HOUR + 20 * MINUTE)


def test_good_rows_are_written_as_if_marked(shop: Workshop, code: str) -> None:
    told = rows(shop, code, BEANS, BLEND)
    assert [one.kind for one in shop.studio.ask(TryCard(code, told))] == ["good", "good"]
    assert shop.entries(code)[1:] == ()
    outcome = shop.do(TakeCard(code, told))
    assert "2 steps" in outcome.words
    lot = shop.lot(code)
    assert [(one.start, one.end) for one in lot.steps[:2]] == [BEANS, BLEND]
    assert [entry.act for entry in shop.entries(code)[1:]] == [Act.START, Act.END] * 2
    shop.do(Undo(code))
    assert shop.lot(code).steps[1].end is None
    assert shop.studio.check() == []


@pytest.mark.parametrize(
    ("told", "kind", "words"),
    [
        ([(NINE - 2 * HOUR, NINE - 14 * HOUR)], "fault", "before"),
        ([(NINE - 2 * HOUR, NINE + HOUR)], "fault", "ahead"),
        ([(NINE - timedelta(days=500), None)], "doubt", "more than a year ago"),
        ([(NINE - 40 * HOUR, NINE - 2 * HOUR)], "doubt", "the method says"),
        ([BEANS, (NINE - 20 * HOUR, NINE - 19 * HOUR)], "doubt", "before the row above"),
    ],
)
def test_each_row_has_its_sense_looked_at(
    shop: Workshop,
    code: str,
    told: list[tuple[datetime | None, datetime | None]],
    kind: str,
    words: str,
) -> None:
    said = shop.studio.ask(TryCard(code, rows(shop, code, *told)))[-1]
    assert said.kind == kind
    assert words in said.words
    with pytest.raises(Question if kind == "doubt" else Refusal):
        shop.do(TakeCard(code, rows(shop, code, *told)))
    # Nothing half done: not even the good rows above.
    assert shop.entries(code)[1:] == ()
    if kind == "doubt":
        shop.do(TakeCard(code, rows(shop, code, *told), sure=True))
        assert len(shop.entries(code)) > 1


def test_an_empty_card_is_refused(shop: Workshop, code: str) -> None:
    with pytest.raises(Refusal, match="Nothing is typed"):
        shop.do(TakeCard(code, ()))
    assert shop.clock.now().tzinfo is UTC
