"""The studio's own factor, from whole lots that were spun, weighed, hung and found dry."""

import pytest

from studio_log.domain.journal import Act
from studio_log.services.commands import ChangeSettings, SplitLot
from studio_log.services.drying_reads import DryingFactorFor
from tests.support.fixtures import Workshop


def dry_one(shop: Workshop, hours: float) -> str:
    """A lot of 299.7 g linen of 185 g/m², hung at 60 % of water, dry after so many hours."""
    code = shop.new()
    shop.walk_to(code, "spin-1")
    shop.clock.move(minutes=5)
    shop.mark(code, "spin-1", Act.END, readings={"wet-weight": 299.7 * 1.6})
    shop.clock.move(hours=hours)
    readings = {"room-temperature": 20.0, "room-humidity": 50.0}
    shop.mark(code, "dry-1", Act.DRY, readings=readings)
    return code


def test_five_dryings_make_the_factor_of_the_studio(shop: Workshop) -> None:
    for _ in range(4):
        dry_one(shop, 3)
    assert shop.studio.ask(DryingFactorFor()) is None
    dry_one(shop, 3)
    factor = shop.studio.ask(DryingFactorFor())
    # 185 g/m² linen, 60 %, at 20 °C and 50 %: regain 1.4 x 0.07, the rest as in the check table.
    assert factor.count == 5
    assert factor.mean == pytest.approx(3 / 1.49, rel=0.05)
    assert factor.spread == pytest.approx(1.15)


def test_a_split_lot_does_not_teach_twice(shop: Workshop) -> None:
    codes = [dry_one(shop, 3) for _ in range(4)]
    shop.do(SplitLot(codes[-1], (1,), "half"))
    assert shop.studio.ask(DryingFactorFor()) is None


def test_the_factor_is_reset_by_a_moment(shop: Workshop) -> None:
    for _ in range(5):
        dry_one(shop, 3)
    assert shop.studio.ask(DryingFactorFor()) is not None
    shop.do(ChangeSettings({"dryings_since": shop.clock.at.isoformat()}))
    shop.clock.move(days=1)
    for _ in range(4):
        dry_one(shop, 2)
    assert shop.studio.ask(DryingFactorFor()).count == 5, "the last one ended at that moment"
    shop.do(ChangeSettings({"dryings_since": ""}))
    assert shop.studio.ask(DryingFactorFor()).count == 9


def test_a_studio_without_dryings_has_no_factor(shop: Workshop) -> None:
    assert shop.studio.ask(DryingFactorFor()) is None
    shop.new()
    assert shop.studio.ask(DryingFactorFor()) is None
