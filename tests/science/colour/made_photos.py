"""Photos of a target made for the tests, and files that are none."""

import io
from collections.abc import Callable
from typing import Any

import numpy as np
from PIL import Image

from studio_log.science.colour.lab import Lab, xyz_of_lab
from studio_log.science.colour.regions import Corners, perspective
from studio_log.science.colour.target import patches_xyz

SIZE = (900, 700)
CORNERS: Corners = ((100.0, 80.0), (800.0, 110.0), (780.0, 520.0), (120.0, 500.0))
SWATCH = (300.0, 560.0, 200.0, 100.0)
CLOTH = Lab(45, 25, 20)
XYZ_TO_LIGHT = np.linalg.inv(
    np.array([[0.4124, 0.3576, 0.1805], [0.2126, 0.7152, 0.0722], [0.0193, 0.1192, 0.9505]])
)
"""IEC 61966-2-1."""
CAMERA = np.array([[0.86, 0.12, 0.02], [0.06, 0.88, 0.06], [0.02, 0.1, 0.88]])
"""A made-up camera: each channel sees some of the others."""


def light_of(xyz: Any) -> Any:
    """Linear light of the made-up camera for X, Y, Z of white 100."""
    return np.clip(np.asarray(xyz) / 100 @ XYZ_TO_LIGHT.T, 0, None) @ CAMERA.T


def scene(
    cloth: Lab = CLOTH,
    shade: Callable[[Any, Any], Any] = lambda x, _y: np.ones_like(x, dtype=float),
    exposure: float = 0.85,
) -> Any:
    """Linear light of a target on grey with a swatch below it, height by width by 3."""
    width, height = SIZE
    x, y = np.meshgrid(np.arange(width) + 0.5, np.arange(height) + 0.5)
    back = np.linalg.inv(perspective(CORNERS))
    seen = np.stack([x, y, np.ones_like(x)], axis=-1) @ back.T
    u, v = seen[..., 0] / seen[..., 2] * 6, seen[..., 1] / seen[..., 2] * 4
    found = np.full((height, width, 3), 0.3)
    inside = (u > 0) & (u < 6) & (v > 0) & (v < 4)
    edge = (np.minimum(u % 1, 1 - u % 1) < 0.06) | (np.minimum(v % 1, 1 - v % 1) < 0.06)
    place = np.clip(v.astype(int), 0, 3) * 6 + np.clip(u.astype(int), 0, 5)
    found[inside] = light_of(patches_xyz())[place[inside]]
    found[inside & edge] = 0.02
    left, top, wide, high = (int(one) for one in SWATCH)
    found[top - 20 : top + high + 20, left - 20 : left + wide + 20] = light_of(xyz_of_lab(cloth))
    chance = np.random.default_rng(3)
    noise = 1 + 0.01 * chance.standard_normal(found.shape)
    return found * exposure * shade(x / width, y / height)[..., np.newaxis] * noise


def codes(light: Any, gamma: float = 1.0) -> Any:
    """sRGB codes of linear light that a camera bent by a power."""
    bent = np.clip(light, 0, 1) ** gamma
    shown = np.where(bent <= 0.0031308, 12.92 * bent, 1.055 * bent ** (1 / 2.4) - 0.055)
    return np.round(255 * np.clip(shown, 0, 1)).astype(np.uint8)


def saved(image: Image.Image, kind: str = "PNG", **more: Any) -> bytes:
    """The bytes of an image file."""
    into = io.BytesIO()
    image.save(into, kind, **more)
    return into.getvalue()


def photo(light: Any, gamma: float = 1.0) -> Image.Image:
    """An image of linear light."""
    return Image.fromarray(codes(light, gamma))
