"""A photo of 12 million pixels from its file to the colour, as the window does it.

The baseline is Pillow's own decoding of the same file to the same pixels.
"""

import argparse
import io
import sys
from pathlib import Path
from time import perf_counter

sys.path.insert(0, str(Path(__file__).parents[2]))

from PIL import Image

from studio_log.ui.swatches.photo_job import Marks, _measure, _open
from tests.science.colour import made_photos as made
from tests.speed.report import verdict


def main() -> None:
    """Print what was measured."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--megapixels", type=float, default=12.0)
    parser.add_argument("--tries", type=int, default=3)
    given = parser.parse_args()
    share = (given.megapixels * 1e6 / (made.SIZE[0] * made.SIZE[1])) ** 0.5
    size = (round(made.SIZE[0] * share), round(made.SIZE[1] * share))
    content = made.saved(made.photo(made.scene()).resize(size), "JPEG", quality=92)
    _open(lambda _stage: None, None, content, "first.jpg")  # brings numpy and Pillow
    begun = perf_counter()
    Image.open(io.BytesIO(content)).load()
    decoded = perf_counter() - begun
    opening, measuring = [], []
    for _ in range(given.tries):
        begun = perf_counter()
        photo = _open(lambda _stage: None, None, content, "photo.jpg")
        opening.append(perf_counter() - begun)
        begun = perf_counter()
        _measure(lambda _stage: None, photo, Marks(photo.guess.target, photo.guess.swatch))
        measuring.append(perf_counter() - begun)
    whole = min(opening) + min(measuring)
    against = f"decoding alone {decoded:.3g} s, ratio {whole / decoded:.3g}"
    what = f"{given.megapixels:g} million pixels"
    verdict(f"{what}, read and guessed", min(opening), 1.4, "s", against)
    verdict(f"{what}, measured", min(measuring), 0.6, "s", against)
    verdict(f"{what}, from file to colour", whole, 2, "s", against)


if __name__ == "__main__":
    main()
