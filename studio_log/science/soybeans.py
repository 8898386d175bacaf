"""Density of dry soybeans, for turning their weight into cups and soak water.

Source: 774 kg/m³ from the table of standard densities in a Deere seed-drill manual
(60 lb to the bushel); H. Kibar, Int. Agrophysics 22(3), 2008, prints 719 to 766 by
moisture. A US cup of 236.6 mL then holds 183 g (computed; 186 g is the household measure
of the USDA, from memory).
"""

from typing import Final

BULK_KG_PER_M3: Final = 774.0
CUP_GRAMS: Final = 183.0
"""Grams of dry soybeans in a level US customary cup."""
