"""Orders that spoil are told before the pot is hot: when a lot is planned, begun, or read in.

The rules themselves are checked in tests/domain/test_spoil_orders.py; their reasons are common
practice, no source.
"""

from datetime import timedelta

from studio_log.domain.journal import Act
from studio_log.domain.methods import StepKind
from studio_log.services.commands import GoOn, Mark
from tests.support.fixtures import Workshop


def test_a_lot_planned_in_good_order_is_not_warned_of(shop: Workshop) -> None:
    assert shop.do(GoOn(shop.new(method="scour-cellulose"), "soy-immersion-long")).advice == ()


def test_an_alkaline_scour_after_the_soy_is_told_when_it_is_planned(shop: Workshop) -> None:
    code = shop.new()
    advice = shop.do(GoOn(code, "scour-cellulose", sure=True)).advice
    assert any("into alkali, and alkali takes the soy off" in words for words in advice)


def test_a_bath_too_hot_for_its_dye_is_told_as_it_is_read(shop: Workshop) -> None:
    code = shop.new(method="dye-madder")
    hot = next(one for one in shop.lot(code).steps if one.spec.kind is not StepKind.DRY and
               any(rule.slug == "madder" for rule in one.spec.amounts))  # fmt: skip
    shop.walk_to(code, hot.slug)
    begun = shop.mark(code, str(hot.number), Act.START)
    assert not any("72" in words for words in begun.advice)
    shop.clock.at += timedelta(minutes=1)
    read = shop.do(Mark(code, str(hot.number), Act.NOTE, note="", readings={"temperature": 80.0}))
    assert any("madder" in words and "80" in words for words in read.advice)
