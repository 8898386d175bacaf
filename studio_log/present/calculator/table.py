"""Every calculation, in the order in which a lot meets them."""

from collections.abc import Mapping
from typing import Final

from studio_log.present.calculator import baths, dry, soy, units
from studio_log.present.calculator.parts import Calculation

CALCULATIONS: Final = (
    *baths.CALCULATIONS,
    *soy.CALCULATIONS,
    *dry.CALCULATIONS,
    *units.CALCULATIONS,
)
BY_SLUG: Final[Mapping[str, Calculation]] = {one.slug: one for one in CALCULATIONS}
