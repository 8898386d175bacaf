"""The guess at target and swatch: made-up photos turned, tilted, shaded; and photos of nothing."""

import math
from typing import Any

import numpy as np
import pytest
from PIL import Image

from studio_log.science.colour.flat_areas import flat_areas
from studio_log.science.colour.guess import guess
from studio_log.science.colour.measure import measure_with_target
from studio_log.science.colour.picture import open_picture
from tests.science.colour import made_photos as made
from tests.science.colour.made_photos import CORNERS, SWATCH


def off(found: Any, told: Any) -> float:
    """How far the worst corner lies from where it should, in pixels."""
    return max(math.dist(one, other) for one, other in zip(found, told, strict=True))


def opened(image: Image.Image) -> Any:
    return open_picture(made.saved(image), "photo.png")


def turned(point: tuple[float, float], quarters: int, size: tuple[int, int]) -> tuple[float, float]:
    """Where a point of a photo lies once the photo is turned clockwise by quarters."""
    for _ in range(quarters):
        point, size = (size[1] - point[1], point[0]), (size[1], size[0])
    return point


@pytest.mark.parametrize("quarters", [0, 1, 2, 3])
def test_the_target_is_found_whichever_way_the_photo_lies(scene: Any, quarters: int) -> None:
    image = made.photo(scene).rotate(-90 * quarters, expand=True)
    found = guess(opened(image))
    assert found.target is not None
    told = [turned(one, quarters, made.SIZE) for one in CORNERS]
    assert off(found.target, told) < 14, "a seventh of a patch"


def test_what_was_guessed_measures_as_what_was_set(scene: Any) -> None:
    picture = opened(made.photo(scene))
    found = guess(picture)
    assert found.target is not None
    left, top, wide, high = found.swatch
    assert SWATCH[0] - 20 <= left
    assert left + wide <= SWATCH[0] + SWATCH[2] + 20
    assert SWATCH[1] - 20 <= top
    assert top + high <= SWATCH[1] + SWATCH[3] + 20
    by_guess = measure_with_target(picture, found.target, found.swatch)
    by_hand = measure_with_target(picture, CORNERS, SWATCH)
    assert by_guess.lab.lightness == pytest.approx(by_hand.lab.lightness, abs=0.5)
    assert by_guess.warnings == ()


def test_shade_and_exposure_do_not_hide_it() -> None:
    for shade, exposure in (
        (lambda x, _y: 1 - 0.3 * x, 0.85),
        (lambda _x, y: 1 - 0.2 * y, 0.4),
    ):
        found = guess(opened(made.photo(made.scene(shade=shade, exposure=exposure))))
        assert found.target is not None
        assert off(found.target, CORNERS) < 14


def test_a_tilted_photo_of_many_points_is_guessed_too(scene: Any) -> None:
    image = made.photo(scene).resize((3600, 2800)).rotate(9, expand=True, fillcolor=(90, 85, 80))
    found = guess(opened(image))
    assert found.target is not None
    middle = np.mean(np.array(found.target), axis=0)
    assert np.linalg.norm(middle - (image.width / 2, image.height / 2)) < image.width / 4


@pytest.mark.parametrize("kind", ["noise", "blank", "stripes", "board", "dot"])
def test_where_there_is_no_target_none_is_made_up(kind: str) -> None:
    chance = np.random.default_rng(1)
    flat = np.full((500, 700, 3), 140, dtype=np.uint8)
    if kind == "noise":
        flat = chance.integers(0, 255, flat.shape, dtype=np.uint8)
    elif kind == "stripes":
        flat[:, ::40] = 20
    elif kind == "board":
        y, x = np.mgrid[0:500, 0:700]
        flat[((x // 60) + (y // 60)) % 2 == 0] = 30
    elif kind == "dot":
        flat = flat[:3, :2]
    picture = opened(Image.fromarray(flat))
    found = guess(picture)
    assert found.target is None
    left, top, wide, high = found.swatch
    assert 0 <= left < left + wide <= picture.size[0]
    assert 0 <= top < top + high <= picture.size[1]


def test_areas_are_counted_as_they_are_drawn() -> None:
    codes = np.zeros((40, 60, 3))
    codes[5:15, 5:25] = 0.5
    codes[20:35, 30:50] = 0.9
    found = sorted(flat_areas(codes), key=lambda one: one.pixels)
    sizes = [one.pixels for one in found]
    assert len(found) == 3
    assert found[-1].at_edge
    assert not found[0].at_edge
    assert sizes[0] == (10 - 4) * (20 - 4), "two pixels along the edge are smoothed away"
    assert found[0].centre == pytest.approx((15, 10), abs=1)
    assert found[1].centre == pytest.approx((40, 27.5), abs=1)
