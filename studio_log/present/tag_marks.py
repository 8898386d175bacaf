"""What is drawn on a tag: boxes, texts, lines, a circle and a QR code, all in mm.

x runs right and y down from the tag's top left corner.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Protocol

from studio_log.present.qr import QUIET, QrSymbol

_HAIR = 1e-6


@dataclass(frozen=True)
class Box:
    """An upright rectangle."""

    x: float
    y: float
    width: float
    height: float

    @property
    def right(self) -> float:
        """The right edge."""
        return self.x + self.width

    @property
    def bottom(self) -> float:
        """The bottom edge."""
        return self.y + self.height

    @classmethod
    def between(cls, left: float, top: float, right: float, bottom: float) -> "Box":
        """Give the box of four edges."""
        return cls(left, top, right - left, bottom - top)

    @classmethod
    def around(cls, boxes: Iterable["Box"]) -> "Box":
        """Give the smallest box that holds all of them."""
        every = list(boxes)
        return cls.between(
            min(box.x for box in every),
            min(box.y for box in every),
            max(box.right for box in every),
            max(box.bottom for box in every),
        )

    def grown(self, by: float) -> "Box":
        """Give the box with all edges moved out, or in where `by` is negative."""
        return Box(self.x - by, self.y - by, self.width + 2 * by, self.height + 2 * by)

    def holds(self, other: "Box") -> bool:
        """Say whether the other lies wholly inside."""
        return (
            other.x >= self.x - _HAIR
            and other.y >= self.y - _HAIR
            and other.right <= self.right + _HAIR
            and other.bottom <= self.bottom + _HAIR
        )

    def meets(self, other: "Box") -> bool:
        """Say whether the two share any area; touching edges do not."""
        return (
            self.x < other.right - _HAIR
            and other.x < self.right - _HAIR
            and self.y < other.bottom - _HAIR
            and other.y < self.bottom - _HAIR
        )


@dataclass(frozen=True)
class TextSize:
    """How much room a text takes, in mm, from its start on the baseline."""

    width: float
    ascent: float
    descent: float


class Measure(Protocol):
    """Tells how large a text of a size (mm to the em) comes out, in the font it is drawn in."""

    def __call__(self, text: str, size: float, *, bold: bool) -> TextSize:
        """Give the room the text takes."""
        ...


@dataclass(frozen=True)
class TextMark:
    """A line of text; `box` is the room it takes."""

    text: str
    x: float
    baseline: float
    size: float
    """mm to the em."""
    bold: bool
    box: Box


@dataclass(frozen=True)
class LineMark:
    """A straight line, upright or level."""

    x1: float
    y1: float
    x2: float
    y2: float
    width: float

    @property
    def box(self) -> Box:
        """The room it takes, with half its width on every side."""
        left, right = sorted((self.x1, self.x2))
        top, bottom = sorted((self.y1, self.y2))
        return Box.between(left, top, right, bottom).grown(self.width / 2)


@dataclass(frozen=True)
class FrameMark:
    """An empty frame to write in; its line lies inside `box`."""

    box: Box
    width: float


@dataclass(frozen=True)
class CircleMark:
    """Where to punch the hole; its line lies inside the radius."""

    x: float
    y: float
    radius: float
    width: float

    @property
    def box(self) -> Box:
        """The room it takes."""
        return Box(self.x - self.radius, self.y - self.radius, 2 * self.radius, 2 * self.radius)


@dataclass(frozen=True)
class QrMark:
    """A QR code; `box` is its dark part, `quiet` the white that must stay around it."""

    symbol: QrSymbol
    x: float
    y: float
    module: float

    @property
    def box(self) -> Box:
        """The dark part."""
        side = self.symbol.modules * self.module
        return Box(self.x, self.y, side, side)

    @property
    def quiet(self) -> Box:
        """The dark part and its quiet zone."""
        return self.box.grown(QUIET * self.module)


Mark = TextMark | LineMark | FrameMark | CircleMark | QrMark
