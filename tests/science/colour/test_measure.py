"""A swatch of a made-up photo comes out as it was put in; what spoils a photo is said.

The scene is simulated: published patches, a made-up camera, one per cent of noise.
"""

from typing import Any

import numpy as np
import pytest

from studio_log.science.colour.differences import ciede2000
from studio_log.science.colour.evenness import spread
from studio_log.science.colour.lab import Lab
from studio_log.science.colour.measure import Measured, measure_with_card, measure_with_target
from studio_log.science.colour.picture import PhotoError, open_picture
from studio_log.science.colour.regions import check_corners, patch_corners, perspective
from tests.science.colour import made_photos as made
from tests.science.colour.made_photos import CLOTH, CORNERS, SWATCH

CARDS = ((20.0, 300.0, 60.0, 80.0), (830.0, 300.0, 60.0, 80.0))
"""Places on the grey beside the target."""


def measured(light: Any, gamma: float = 1.0, cards: Any = ()) -> Measured:
    picture = open_picture(made.saved(made.photo(light, gamma)), "cloth.png")
    return measure_with_target(picture, CORNERS, SWATCH, cards)


@pytest.mark.parametrize("gamma", [1.0, 0.8, 1.25])
@pytest.mark.parametrize("cloth", [CLOTH, Lab(70, -4, 45), Lab(30, 4, -22)])
def test_a_swatch_comes_out_within_its_uncertainty(cloth: Lab, gamma: float) -> None:
    """The colour that was put in lies within 2u; a camera's curve is undone."""
    found = measured(made.scene(cloth), gamma)
    assert found.two_u is not None
    assert ciede2000(found.lab, cloth) < 1.0
    assert ciede2000(found.lab, cloth) <= found.two_u.ciede2000
    assert abs(found.lab.lightness - cloth.lightness) <= found.two_u.lightness
    assert abs(found.lab.chroma - cloth.chroma) <= found.two_u.chroma
    assert found.two_u.ciede2000 >= 2.0  # repeated photos alone are taken as 1.0
    assert found.tone_undone == (gamma != 1.0)
    assert (found.patches, found.rejected, found.warnings) == (24, (), ())
    assert found.relative is False


def test_half_the_light_gives_the_same_colour(scene: Any) -> None:
    one, other = measured(scene), measured(scene / 2)
    assert ciede2000(one.lab, other.lab) < 0.3


def test_a_grey_has_a_colour_but_its_hue_is_not_told() -> None:
    found = measured(made.scene(Lab(50, 0.3, -0.2)))
    assert found.two_u is not None
    assert found.two_u.hue is None


def test_a_turned_target_is_measured_where_its_corners_are_named(scene: Any) -> None:
    """Half a turn of the photo: the corners turn with it, in the same order."""
    width, height = made.SIZE
    picture = open_picture(made.saved(made.photo(scene[::-1, ::-1])), "turned.png")
    first, second, third, fourth = ((width - x, height - y) for x, y in CORNERS)
    left, top, wide, high = SWATCH
    swatch = (width - left - wide, height - top - high, wide, high)
    found = measure_with_target(picture, (first, second, third, fourth), swatch)
    assert ciede2000(found.lab, CLOTH) < 1.0


# -- refused in words --------------------------------------------------------------------


def test_an_overexposed_swatch_is_refused() -> None:
    with pytest.raises(PhotoError, match="too bright or too dark for the camera"):
        measured(made.scene(Lab(97, 0, 0), exposure=1.2))


def test_clipped_patches_are_left_out_and_told(scene: Any) -> None:
    found = measured(scene * 1.25)
    assert "white 9.5" in found.rejected
    assert found.patches < 24
    assert any("left out: clipped" in one for one in found.warnings)
    assert ciede2000(found.lab, CLOTH) < 1.5


def test_a_target_too_bright_as_a_whole_is_refused() -> None:
    with pytest.raises(PhotoError, match=r"Only \d+ of the 24 patches"):
        measured(made.scene(Lab(20, 5, 5), exposure=6))


def test_corners_that_begin_elsewhere_are_refused(scene: Any) -> None:
    picture = open_picture(made.saved(made.photo(scene)), "cloth.png")
    first, second, third, fourth = CORNERS
    with pytest.raises(PhotoError, match="do not grow darker from white to black"):
        measure_with_target(picture, (third, fourth, first, second), SWATCH)
    with pytest.raises(PhotoError, match="the wrong way"):
        measure_with_target(picture, (first, fourth, third, second), SWATCH)
    with pytest.raises(PhotoError, match="no shape with four sides"):
        measure_with_target(picture, (first, third, second, fourth), SWATCH)
    with pytest.raises(PhotoError, match="outside the photo of 900 × 700 pixels"):
        measure_with_target(picture, (first, (901, 5), third, fourth), SWATCH)


def test_a_photo_of_something_else_is_refused(scene: Any) -> None:
    """Red and blue exchanged in one half: the neutral row is right, the rest is not."""
    other = scene.copy()
    other[:, :450] = other[:, :450, ::-1]
    with pytest.raises(PhotoError, match="do not look as their target"):
        measured(other)


def test_a_target_far_off_is_refused(scene: Any) -> None:
    picture = open_picture(made.saved(made.photo(scene)), "cloth.png")
    small = ((100.0, 80.0), (160.0, 80.0), (160.0, 120.0), (100.0, 120.0))
    with pytest.raises(PhotoError, match="too small in the photo"):
        measure_with_target(picture, small, SWATCH)


# -- warned of ---------------------------------------------------------------------------


def test_light_that_falls_off_is_warned_of() -> None:
    found = measured(made.scene(shade=lambda x, _y: 1 - 0.3 * x), cards=CARDS)
    told = " ".join(found.warnings)
    assert "across the target" in told
    assert "between the cards" in told


def test_even_light_is_not_warned_of(scene: Any) -> None:
    assert measured(scene, cards=CARDS).warnings == ()


def test_shine_on_a_patch_is_warned_of(scene: Any) -> None:
    shining = scene.copy()
    xs, ys = zip(*patch_corners(CORNERS)[0], strict=True)
    left, top = int(min(xs)), int(min(ys))
    shining[top : top + 60, left : left + 12] *= 2
    assert any("shines on the target (dark skin)" in one for one in measured(shining).warnings)


def test_a_fold_in_the_swatch_is_warned_of(scene: Any) -> None:
    folded = scene.copy()
    folded[560:660, 300:350] *= 0.6
    assert any("a fold, a shadow" in one for one in measured(folded).warnings)


# -- a card alone ------------------------------------------------------------------------


def test_with_a_card_alone_it_is_relative_only(scene: Any) -> None:
    """The grey beside the target reflects 0.3; the swatch's L* of 45 has Y 14.5 (CIE 15)."""
    picture = open_picture(made.saved(made.photo(scene)), "cloth.png")
    found = measure_with_card(picture, SWATCH, CARDS, 0.3)
    assert (found.relative, found.two_u, found.method) == (True, None, "card")
    assert found.warnings[0].startswith("Relative only")
    assert found.lab.lightness == pytest.approx(45, abs=2)
    darker = measure_with_card(picture, SWATCH, CARDS, 0.15)
    assert darker.lab.lightness < found.lab.lightness - 8
    bright = open_picture(made.saved(made.photo(scene * 4)), "cloth.png")
    with pytest.raises(PhotoError, match=r"swatch is too bright|card is too bright"):
        measure_with_card(bright, SWATCH, CARDS, 0.3)


# -- geometry ----------------------------------------------------------------------------


def test_the_perspective_goes_through_its_corners() -> None:
    view = perspective(CORNERS)
    for unit, corner in zip(((0, 0), (1, 0), (1, 1), (0, 1)), CORNERS, strict=True):
        x, y, w = view @ np.array([*unit, 1.0])
        assert (x / w, y / w) == pytest.approx(corner, abs=1e-9)
    straight = patch_corners(((0.0, 0.0), (600.0, 0.0), (600.0, 400.0), (0.0, 400.0)))
    assert straight[0] == tuple(
        pytest.approx(one) for one in ((25, 25), (75, 25), (75, 75), (25, 75))
    )
    assert straight[23][2] == pytest.approx((575, 375))
    check_corners(CORNERS, made.SIZE, "the target")


# -- spots --------------------------------------------------------------------------------


def test_an_even_cloth_has_nine_spots_that_lie_within_the_grain(scene: Any) -> None:
    """The scene has one per cent of noise and nothing else."""
    spots = measured(scene).spots
    assert len(spots.colours) == 9
    assert spread(spots.colours, spots.noise).band == "even"
    assert 0 < spots.noise < 0.3


def test_a_cloth_lighter_at_one_side_is_uneven(scene: Any) -> None:
    """A twentieth more light at the right third: about 1.7 L* there, so a mean of about 0.7."""
    left, top, wide, high = (int(one) for one in SWATCH)
    scene = scene.copy()  # which others look at too
    scene[top : top + high, left + 2 * wide // 3 : left + wide] *= 1.12
    spots = measured(scene).spots
    assert spread(spots.colours, spots.noise).band in {"visible", "strong"}
    right = [one.lightness for one in spots.colours[2::3]]
    assert min(right) > max(one.lightness for one in spots.colours[0::3])


def test_a_frame_too_small_to_be_parted_has_no_spots(scene: Any) -> None:
    picture = open_picture(made.saved(made.photo(scene)), "cloth.png")
    left, top, *_ = SWATCH
    found = measure_with_target(picture, CORNERS, (left + 5, top + 5, 15, 15))
    assert found.spots.colours == ()


def test_beside_a_card_alone_spots_can_be_held_against_each_other(scene: Any) -> None:
    picture = open_picture(made.saved(made.photo(scene)), "cloth.png")
    found = measure_with_card(picture, SWATCH, CARDS[:1], 0.18)
    assert spread(found.spots.colours, found.spots.noise).band == "even"
