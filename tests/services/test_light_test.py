"""The window light test: begun, read at 2, 4 and 8 weeks by reminder, graded, taken back."""

from datetime import timedelta

import pytest

from studio_log.domain.errors import Refusal
from studio_log.services.commands import AnswerReminder, Undo
from studio_log.services.questions import RemindersFor
from studio_log.services.records import record_from
from studio_log.services.swatches import GradeSwatch, LightTest, NewSwatch, SetSwatch, SwatchFor
from tests.support.fixtures import Workshop

WEEK = timedelta(weeks=1)


@pytest.fixture
def code(shop: Workshop) -> str:
    return shop.do(NewSwatch(shop.new(), piece=1, test_place="south window")).code


def ahead(shop: Workshop, code: str) -> list[str]:
    due = shop.studio.ask(RemindersFor(within=80 * 86400.0))
    return [one.key.split("/")[2] for one, _ in due if one.subject == code]


def test_it_rings_at_two_four_and_eight_weeks_and_a_grade_answers(
    shop: Workshop, code: str
) -> None:
    begun = shop.clock.at
    shop.do(LightTest(code, place="behind glass"))
    assert ahead(shop, code) == ["2", "4", "8"]
    (text,) = shop.ring(at=begun + 2 * WEEK)
    assert text.title == f"Read the light test of {code}: 2 weeks"
    shop.do(GradeSwatch(code, "light", "4-5", length="2 weeks"))
    assert ahead(shop, code) == ["4", "8"]
    (key,) = [key for key, one in shop.records(code).items() if record_from(one).fate == "answered"]
    assert key.startswith("light/2/")
    shop.do(Undo(code))
    assert ahead(shop, code) == ["2", "4", "8"]
    shop.do(AnswerReminder(f"{code}/{key}", "done"))
    assert ahead(shop, code) == ["4", "8"]
    assert "seen" in shop.studio.ask(SwatchFor(code)).history[0].words
    shop.clock.at = begun + 8 * WEEK
    shop.do(GradeSwatch(code, "light", "3"))
    assert ahead(shop, code) == []


def test_another_test_or_a_swatch_that_is_gone_ends_nothing_and_all(
    shop: Workshop, code: str
) -> None:
    shop.do(LightTest(code))
    shop.clock.at += 2 * WEEK
    shop.do(GradeSwatch(code, "wash", "4"))
    assert ahead(shop, code) == ["2", "4", "8"]
    shop.do(SetSwatch(code, ended=True))
    assert ahead(shop, code) == []
    shop.do(Undo(code))
    assert ahead(shop, code) == ["2", "4", "8"]
    with pytest.raises(Refusal, match="runs already"):
        shop.do(LightTest(code))
    shop.do(LightTest(code, ended=True))
    assert ahead(shop, code) == []
    with pytest.raises(Refusal, match="No light test"):
        shop.do(LightTest(code, ended=True))
    shop.do(LightTest(code))
    assert ahead(shop, code) == ["2", "4", "8"]
    shop.studio.check(repair=True)
    assert ahead(shop, code) == ["2", "4", "8"]
    assert shop.studio.check() == []


def test_without_a_dark_half_there_is_no_test(shop: Workshop) -> None:
    whole = shop.do(NewSwatch(shop.new(), piece=1)).code
    with pytest.raises(Refusal, match="not cut in halves"):
        shop.do(LightTest(whole))
