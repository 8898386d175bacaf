"""Soy milk as a binder: its protein, its life, and what of it stays on the cloth.

Recovery of solids and protein: Yuwono and Susanto, J. Teknologi Pertanian, abstract (53.53 and
73.08 % at ten parts of water, 68.44 and 83.21 % at thirty). Below five parts a part of the
protein will not dissolve (Eiyo To Shokuryo 15, 1962). Protein of the bean 36.5 g in 100 g
(36 to 40 by variety): food composition tables. Points: tests/reference/soymilk_points.csv. How
long raw milk keeps is in no paper: the hours are proposals, bracketed by food rules.
"""

from typing import Final

from studio_log.science.between import between

BEAN_PROTEIN: Final = 0.365
"""Parts of a dry bean."""
PROTEIN_RECOVERY: Final = ((10.0, 0.7308), (30.0, 0.8321))
"""Water over beans, by weight -> part of the protein that comes into the milk."""
SOLIDS_RECOVERY: Final = ((10.0, 0.5353), (30.0, 0.6844))
LEAST_WATER: Final = 5.0
"""Parts of water to one of beans below which protein stays behind."""
KG_PER_L: Final = 1.02
"""Density of the milk at 20 °C, 1.01 to 1.03: from memory."""
GRIND_ML_PER_G: Final = 4.0
"""Water of the first grind, mL to the gram of soaked beans: common practice."""
KEEPS: Final = ((4.0, 48.0), (18.0, 8.0), (20.0, 4.0), (25.0, 4.0), (28.0, 2.0), (32.0, 1.0))
"""°C -> hours that raw milk keeps: a proposal; at 32 °C the food rule of one hour."""
WARMEST_C: Final = 45.0


def recovery(water_to_beans: float) -> float:
    """Give the part of the beans' protein that comes into the milk, at parts of water by weight.

    Outside ten to thirty parts the nearest figure holds on. ValueError for no water.
    """
    if not water_to_beans > 0:
        raise ValueError("milk has water in it")
    return between(PROTEIN_RECOVERY, water_to_beans)


def solids_recovery(water_to_beans: float) -> float:
    """Give the part of the beans' solids that comes into the milk; as for `recovery`."""
    if not water_to_beans > 0:
        raise ValueError("milk has water in it")
    return between(SOLIDS_RECOVERY, water_to_beans)


def protein_per_litre(bean_grams: float, litres: float, part: float | None = None) -> float:
    """Give the grams of protein in a litre of milk made of so many grams of dry beans.

    `part` is the recovery, worked out from the strength where None. Right to a fifth at best.
    """
    if not (bean_grams > 0 and litres > 0):
        raise ValueError("milk is made of beans and water")
    got = recovery(litres * 1000 / bean_grams) if part is None else part
    return bean_grams * BEAN_PROTEIN * got / litres


def grind_litres(soaked_grams: float) -> float:
    """Give the water of the first grind in litres for so many grams of soaked beans."""
    return soaked_grams * GRIND_ML_PER_G / 1000


def keeps_hours(celsius: float) -> float:
    """Give the hours that raw milk keeps at a temperature; ValueError outside 0 to 45 °C.

    Between the points by ratio: spoiling goes faster by a factor a degree.
    """
    if not 0 <= celsius <= WARMEST_C:
        raise ValueError(f"milk is not kept at {celsius} °C")
    return between(KEEPS, celsius, by_ratio=True)


def milk_left(dry_grams: float, held: float) -> float:
    """Give the grams of bath on cloth that holds `held` times its dry weight."""
    if not (dry_grams > 0 and held >= 0):
        raise ValueError("cloth weighs something and holds nothing or more")
    return dry_grams * held


def protein_on_cloth(protein_g_per_l: float, held: float) -> float:
    """Give the grams of protein that a bath leaves on 100 g of dry cloth, if all of it stays.

    `held` is what the cloth carries into drying, kg to the kg. A most: what was only in the
    water between the threads can drip or wash away. Weigh the dry cloth to know.
    """
    return milk_left(100.0, held) / (KG_PER_L * 1000) * protein_g_per_l
