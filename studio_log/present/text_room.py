"""Finding room for words: free stretches, and texts cut to fit them."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Final

Measure = Callable[[str], float]
"""Width of a text in pixels."""
Interval = tuple[float, float]

_ELLIPSIS: Final = "…"
_LEAST_LETTERS: Final = 3
"""An elided text with fewer letters says nothing and is left out."""


@dataclass(frozen=True, slots=True)
class Text:
    """A text that fits its place, perhaps elided."""

    x: float
    width: float
    text: str


def fitted(text: str, room: float, measure: Measure) -> str:
    """Give the text, elided at its end to fit the room, or "" where nothing worth reading fits."""
    if measure(text) <= room:
        return text
    least, most = 0, len(text) - 1
    while least < most:
        middle = (least + most + 1) // 2
        if measure(_cut(text, middle) + _ELLIPSIS) <= room:
            least = middle
        else:
            most = middle - 1
    cut = _cut(text, least)
    return cut + _ELLIPSIS if len(cut) >= _LEAST_LETTERS else ""


def free_parts(span: Interval, taken: Iterable[Interval]) -> list[Interval]:
    """List what is left of the span when the taken intervals are cut out of it."""
    left, parts = span[0], []
    for one, other in sorted(taken):
        if other <= left or one >= span[1]:
            continue
        if one > left:
            parts.append((left, one))
        left = max(left, other)
    if left < span[1]:
        parts.append((left, span[1]))
    return parts


def text_in(
    text: str, span: Interval, taken: Iterable[Interval], measure: Measure, pad: float
) -> Text | None:
    """Place a text in the first free part that holds it whole, or elided in the widest."""
    parts = free_parts(span, taken)
    if not parts or not text:
        return None
    width = measure(text)
    whole = next((p for p in parts if p[1] - p[0] >= width + 2 * pad), None)
    left, right = whole or max(parts, key=lambda p: p[1] - p[0])
    cut = fitted(text, right - left - 2 * pad, measure)
    return Text(left + pad, measure(cut), cut) if cut else None


def _cut(text: str, letters: int) -> str:
    """Give the first letters without a dangling blank, comma or dash at their end."""
    return text[:letters].rstrip().rstrip(" ,·–—-(")
