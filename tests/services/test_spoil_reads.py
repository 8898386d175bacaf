"""What would spoil stands with the steps of a lot; the rules have tests of their own."""

import pytest

from studio_log.domain.journal import Act
from studio_log.services.commands import GoOn
from studio_log.services.questions import LotSheetFor
from tests.support.fixtures import Workshop


def told(shop: Workshop, code: str) -> dict[str, list[str]]:
    """The warnings of each step that has any, by its short name."""
    steps = shop.studio.ask(LotSheetFor(code)).data["steps"]
    return {
        step["slug"]: [one["slug"] for one in step["warnings"]]
        for step in steps
        if step["warnings"]
    }


@pytest.fixture
def cured(shop: Workshop) -> str:
    """A lot whose last coat is dry and whose cure of 90 days has run for one."""
    code = shop.new()
    shop.walk_to(code, "cure")
    shop.clock.move(days=1)
    return code


def test_a_lot_that_goes_its_way_is_told_nothing(shop: Workshop, cured: str) -> None:
    assert told(shop, cured) == {}
    shop.do(GoOn(cured, "dye-madder"))
    assert told(shop, cured) == {}, "planned for after the cure"


def test_a_dye_bath_begun_too_early_is_told_while_it_runs(shop: Workshop, cured: str) -> None:
    shop.do(GoOn(cured, "dye-madder", sure=True))
    shop.mark(cured, "wet-out", Act.START, sure=True)
    assert told(shop, cured) == {"wet-out": ["uncured-to-bath"]}
    (warned,) = shop.studio.ask(LotSheetFor(cured)).steps[-6].warned
    assert "(1 of 90 days)" in warned.words
    assert warned.source == "common practice"


def test_alkali_ahead_is_told_long_before(shop: Workshop, cured: str) -> None:
    shop.do(GoOn(cured, "scour-cellulose", sure=True))
    assert told(shop, cured)["heat-up"] == ["alkali-after-soy"]


def test_heat_read_in_a_running_step_is_told(shop: Workshop) -> None:
    code = shop.new(method="dye-madder")
    shop.walk_to(code, "heat-up")
    shop.mark(code, "heat-up", Act.START)
    shop.mark(code, "heat-up", Act.NOTE, readings={"bath-temperature": 74.0})
    assert told(shop, code) == {"heat-up": ["too-hot"]}
    shop.mark(code, "heat-up", Act.NOTE, readings={"bath-temperature": 65.0})
    assert told(shop, code) == {}


def test_a_lot_that_was_stopped_is_told_nothing(shop: Workshop, cured: str) -> None:
    shop.do(GoOn(cured, "scour-cellulose", sure=True))
    shop.mark(cured, "heat-up", Act.STOP, sure=True)
    assert told(shop, cured) == {}
