"""20,000 swatches: those nearest to a colour, a keystroke in the list, the list's first rows.

The baseline of the search is CIEDE2000 of every one, read from the table each time.
"""

import argparse
import random
import sys
from collections.abc import Callable
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory
from time import perf_counter

sys.path.insert(0, str(Path(__file__).parents[2]))

import numpy as np

from studio_log.science.colour.lab import Lab
from studio_log.science.colour.near import ciede2000_of
from studio_log.services.swatches import NearFor, SwatchesFor
from studio_log.store.values import ColourBound, SwatchLine
from tests.speed.report import verdict
from tests.support.builders import NINE
from tests.support.fixtures import Workshop, open_workshop
from tests.support.hand_clock import HandClock

EVERYTHING = ColourBound((50.0, 0.0, 0.0), 999.0, 999.0)


def colour(chance: random.Random) -> Lab:
    """Give a colour as plants give them: not spread evenly, most of them warm and dull."""
    return Lab(chance.uniform(20, 92), chance.gauss(12, 18), chance.gauss(20, 18))


def fill(shop: Workshop, count: int) -> None:
    """Write so many lines, each with words of its own."""
    chance, lot = random.Random(1), shop.new()
    with shop.studio.store.work() as work:
        work.swatches.put_all(
            SwatchLine(
                f"W26-{number:03d}", lot, NINE, name=f"swatch {number}", lightness=one.lightness,
                a=one.a, b=one.b, source="photo", white="D65/2", two_u=2.0, chain="soy\nmadder",
                search_text=f"w26-{number:03d} linen runners soy madder box {number % 90}",
            )
            for number, one in ((number, colour(chance)) for number in range(1, count + 1))
        )  # fmt: skip


def took(task: Callable[[], object]) -> float:
    """Give the milliseconds of one run."""
    begun = perf_counter()
    task()
    return 1000 * (perf_counter() - begun)


def brute(shop: Workshop, wanted: Lab) -> list[str]:
    """Measure every swatch."""
    with shop.studio.store.reading() as look:
        found = look.swatches.within(EVERYTHING)
    apart = ciede2000_of(wanted, np.array(found.figures).reshape(-1, 3))
    return [found.codes[at] for at in np.argsort(apart)[:12]]


def main() -> None:
    """Print what was measured."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--count", type=int, default=20_000)
    parser.add_argument("--tries", type=int, default=40)
    given = parser.parse_args()
    chance = random.Random(2)
    with TemporaryDirectory() as folder:
        shop = open_workshop(Path(folder) / "studio", HandClock(NINE))
        fill(shop, given.count)
        shop.studio.ask(NearFor(colour(chance)))  # brings numpy
        wanted = [colour(chance) for _ in range(given.tries)]
        whole = median(took(lambda one=one: brute(shop, one)) for one in wanted[:5])
        found = [took(lambda one=one: shop.studio.ask(NearFor(one))) for one in wanted]
        against = f"every one measured {whole:.3g} ms, ratio {whole / median(found):.3g}"
        verdict(f"{given.count} swatches, nearest, median", median(found), 50, "ms", against)
        verdict(f"{given.count} swatches, nearest, worst", max(found), 50, "ms", against)
        blue = took(lambda: shop.studio.ask(NearFor(Lab(35, 12, -55))))
        verdict("nearest to a blue that is far from all", blue, 50, "ms", against)
        typed = [took(lambda find=find: shop.studio.ask(SwatchesFor(find, limit=200)))
                 for find in ("madder", "box 17", "w26-19", "nothing")]  # fmt: skip
        verdict("a keystroke in the list, worst", max(typed), 50, "ms", "200 rows at most")
        shop.studio.close()


if __name__ == "__main__":
    main()
