"""The light of a part of a photo, and how sure a colour is, worked out by hand."""

import math
from typing import Any

import numpy as np
import pytest
from PIL import Image

from studio_log.science.colour.correction import Chosen, Correction, Values, tone_of
from studio_log.science.colour.differences import ciede2000
from studio_log.science.colour.lab import Lab
from studio_log.science.colour.photo_sure import sure_of
from studio_log.science.colour.picture import PhotoError, open_picture
from studio_log.science.colour.regions import Field, Region, rect_corners
from studio_log.science.colour.spaces import linear_of_srgb
from studio_log.science.colour.target import patches_lab
from tests.science.colour.made_photos import saved


def region(codes: Any, rect: tuple[float, float, float, float]) -> Region:
    picture = open_picture(saved(Image.fromarray(np.asarray(codes, dtype=np.uint8))), "x.png")
    corners = rect_corners(rect)
    return Field(picture, [corners]).region(corners, "the part")


@pytest.mark.parametrize("code", [(200, 120, 60), (9, 11, 5), (249, 4, 128)])
def test_the_light_of_a_flat_part_is_that_of_its_code(code: tuple[int, int, int]) -> None:
    """IEC 61966-2-1, by the way of another routine."""
    found = region(np.full((60, 80, 3), code), (10, 20, 30, 25))
    told = linear_of_srgb((code[0] / 255, code[1] / 255, code[2] / 255))
    assert tuple(found.light) == pytest.approx(told, rel=1e-9)
    assert (found.pixels, found.clipped) == (30 * 25, 0)
    assert (found.glare, found.uneven) == (pytest.approx(0), pytest.approx(0))
    assert tuple(found.error) == pytest.approx((0, 0, 0), abs=1e-12)
    luminance = 0.2126 * told[0] + 0.7152 * told[1] + 0.0722 * told[2]
    assert found.luminance == pytest.approx(luminance)


def test_a_part_is_read_where_it_is_and_nowhere_else() -> None:
    codes = np.full((60, 80, 3), 255)
    codes[20:45, 10:40] = 100
    assert region(codes, (10, 20, 30, 25)).clipped == 0
    assert region(codes, (9, 20, 30, 25)).clipped == pytest.approx(1 / 30)
    assert region(codes, (10, 21, 30, 25)).clipped == pytest.approx(1 / 25)


def test_wild_tenths_are_left_off_either_end() -> None:
    codes = np.full((50, 40, 3), 100)
    codes[:4] = 240  # two in twenty-five of the lines
    assert region(codes, (0, 0, 40, 50)).light[0] == pytest.approx(_linear(100))
    codes[:10] = 240  # a fifth: half of it stays in
    found = region(codes, (0, 0, 40, 50)).light[0]
    assert found == pytest.approx((7 * _linear(100) + 1 * _linear(240)) / 8)


def _linear(code: int) -> float:
    return linear_of_srgb((code / 255, 0, 0))[0]


def test_the_error_is_that_of_sixteen_blocks_and_the_unevenness_of_their_ends() -> None:
    """Half of the blocks dark, half light: sd by n-1 of 16, over the root of 16."""
    codes = np.full((40, 40, 3), 100)
    codes[:, 20:] = 110
    found = region(codes, (0, 0, 40, 40))
    low, high = _linear(100), _linear(110)
    sd = math.sqrt(16 * ((high - low) / 2) ** 2 / 15)
    assert found.error[0] == pytest.approx(sd / 4)
    assert found.uneven == pytest.approx(high / low - 1)
    assert found.glare == pytest.approx(high / ((low + high) / 2) - 1)


@pytest.mark.parametrize(("code", "clipped"), [(250, 1), (249, 0), (4, 0), (3, 1)])
def test_a_pixel_is_clipped_at_the_ends(code: int, clipped: int) -> None:
    codes = np.full((20, 20, 3), 100)
    codes[..., 1] = code
    assert region(codes, (0, 0, 20, 20)).clipped == clipped


def test_too_few_pixels_are_refused() -> None:
    codes = np.full((20, 20, 3), 100)
    assert region(codes, (0, 0, 10, 10)).pixels == 100
    with pytest.raises(PhotoError, match=r"^The part is too small in the photo: 90 pixels"):
        region(codes, (0, 0, 10, 9))


# -- how sure ----------------------------------------------------------------------------


def made_region(light: tuple[float, ...], error: tuple[float, ...]) -> Region:
    return Region(np.array(light), np.array(error), 900, 0.0, 0.0, 0.0)


def chosen(off: tuple[float, float, float], apart: float) -> Chosen:
    """A fit that foretells every patch off by as much."""
    foretold = [Lab(p.lightness + off[0], p.a + off[1], p.b + off[2]) for p in patches_lab()]
    correction = Correction("matrix", np.eye(3), None)
    return Chosen(correction, tuple(foretold), (apart,) * 24)


def hundredfold(light: Values) -> Lab:
    return Lab(*(float(100 * one) for one in light))


def test_2u_is_twice_the_root_of_the_squares() -> None:
    """Fit 3, 4, 5 in L*, a*, b* and 2 as a whole; repeats 1, a third of its square for each."""
    swatch = made_region((0.5, 0.3, 0.4), (0, 0, 0))
    found = sure_of(Lab(50, 30, 40), swatch, chosen((3, 4, -5), 2), range(24), hundredfold)
    u_a, u_b = math.sqrt(16 + 1 / 3), math.sqrt(25 + 1 / 3)
    assert found.ciede2000 == pytest.approx(2 * math.sqrt(5))
    assert found.lightness == pytest.approx(2 * math.sqrt(9 + 1 / 3))
    assert (found.a, found.b) == (pytest.approx(2 * u_a), pytest.approx(2 * u_b))
    # C* and h by the first derivatives, C* being 50.
    assert found.chroma == pytest.approx(2 * math.hypot(30 * u_a, 40 * u_b) / 50)
    assert found.hue == pytest.approx(2 * math.degrees(math.hypot(40 * u_a, 30 * u_b) / 2500))


def test_the_scatter_of_the_swatch_is_in_it() -> None:
    swatch = made_region((0.5, 0.3, 0.4), (0.02, 0, 0))
    lab = Lab(50, 30, 40)
    found = sure_of(lab, swatch, chosen((0, 0, 0), 0), range(24), hundredfold)
    assert found.lightness == pytest.approx(2 * math.sqrt(4 + 1 / 3))
    assert found.a == pytest.approx(2 * math.sqrt(1 / 3))
    own = ciede2000(lab, Lab(52, 30, 40))
    assert found.ciede2000 == pytest.approx(2 * math.sqrt(own**2 + 1))


@pytest.mark.parametrize(("chroma", "told"), [(1.0, False), (1.2, True)])
def test_a_hue_is_told_from_twice_the_error_of_its_chroma(chroma: float, told: bool) -> None:
    """u of a* is the root of a third, 0.577, and twice that 1.155."""
    swatch = made_region((0.5, chroma / 100, 0), (0, 0, 0))
    lab = Lab(50, chroma, 0)
    found = sure_of(lab, swatch, chosen((0, 0, 0), 0), range(24), hundredfold)
    assert (found.hue is not None) == told


def test_a_tone_curve_goes_by_luminance() -> None:
    """Greens count for most (IEC 61966-2-1): a cast in red hardly moves the curve."""
    grey = np.array([[one] * 3 for one in (0.9, 0.6, 0.36, 0.19, 0.09, 0.03)])
    luminance = (100 * grey[:, 1] ** 1.2).tolist()
    plain = tone_of(grey, luminance)
    assert plain == pytest.approx((1.2, 0), abs=1e-9)
    cast = grey * np.array([0.5, 1, 1])
    assert tone_of(cast, luminance) != plain
