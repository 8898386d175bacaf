"""Fits the parts onto the screen: all shrink together until everything is there, whole."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from PySide6.QtCore import QRectF

from studio_log.language.words import tr
from studio_log.ui.across import sections
from studio_log.ui.across.key_rows import short_key_words
from studio_log.ui.across.letters import Letters, Text
from studio_log.ui.across.scene import NO_LOT, NOTHING, Scene
from studio_log.ui.across.sections import Room, Section

MARGIN: Final = 0.04
"""Room at the edges, as a share of the lesser side."""
LEAST_GAP: Final = 0.014
MOST_GAP: Final = 0.06
SCALES: Final = (1.0, 0.92, 0.84, 0.76, 0.68, 0.6, 0.5, 0.4)


@dataclass(frozen=True)
class Message:
    """Said in place of the first thing: a doubt to be answered, or a refusal."""

    title: str
    words: str
    yes: str
    is_doubt: bool = False


@dataclass(frozen=True)
class Page:
    """All that is said at this moment."""

    scene: Scene
    keys: str
    said: str = ""
    message: Message | None = None

    @property
    def answers(self) -> tuple[str, ...]:
        """Words of the big answer, and of the second one beside it."""
        if self.message is not None:
            return (self.message.yes,)
        first = self.scene.first
        return tuple(filter(None, (first.answer, first.second))) if first else ()


@dataclass
class Sheet:
    """Where everything stands, in pixels."""

    texts: list[Text]
    boxes: list[tuple[str, QRectF]]
    is_whole: bool

    def box(self, name: str) -> QRectF | None:
        """Give the box of this name."""
        return next((box for called, box in self.boxes if called == name), None)


def arrange(page: Page, letters: Letters, width: float) -> Sheet:
    """Place everything; the largest letters at which nothing is cut.

    What gives way, in this order: why it is so, the size of all, the lesser keys, the names of
    later things, the third thing, the second.
    """
    margin = MARGIN * min(width, letters.height)
    high = letters.height - 2 * margin
    parts: list[Section] = []
    for room, rows, all_keys in _steps(letters, width - 2 * margin):
        parts = list(_parts(page, room, rows, all_keys=all_keys))
        least = LEAST_GAP * letters.height * (len(parts) - 1)
        if sum(part.height for part in parts) + least <= high:
            return _spread(parts, margin, letters.height, is_whole=True)
    return _spread(parts, margin, letters.height, is_whole=False)


def _steps(letters: Letters, width: float) -> Iterator[tuple[Room, int, bool]]:
    """Give rooms that shrink, how many things follow the first, whether all keys are told."""
    upright = width < letters.height
    for scale in SCALES:
        for whys in (True, False):
            yield Room(letters, width, scale, whys, upright), 2, True
    least = Room(letters, width, SCALES[-1], whys=False, upright=upright)
    yield least, 2, False
    for rows in (2, 1, 0):
        yield replace(least, brief=True), rows, False


def _parts(page: Page, room: Room, rows: int, *, all_keys: bool) -> Iterator[Section]:
    scene = page.scene
    yield sections.head(scene, room)
    following = list(scene.things)
    if page.message is not None:
        yield sections.message(page.message.title, page.message.words, room)
    elif scene.empty:
        more = tr(NO_LOT) if scene.empty == tr(NOTHING) else ""
        yield sections.empty(scene.empty, more, room)
        rows += 1
    elif following:
        yield sections.thing(following.pop(0), room, first=True)
    if page.answers:
        yield sections.answers(page.answers, room)
    for one in following[:rows]:
        yield sections.thing(one, room, first=False)
    hidden = scene.due - min(1 + rows, len(scene.things))
    keys = page.keys if all_keys or page.message is not None else short_key_words(scene)
    if hidden > 0 and page.message is None:
        keys = tr("And {hidden} more · {keys}", hidden=hidden, keys=keys)
    yield sections.foot(keys, page.said, room)


def _spread(parts: list[Section], margin: float, height: float, *, is_whole: bool) -> Sheet:
    """Head above, foot below, and even gaps between what stands in the middle."""
    used = sum(part.height for part in parts)
    spare = max(height - 2 * margin - used, 0.0)
    gap = min(spare / max(len(parts) - 1, 1), MOST_GAP * height)
    # What is left over goes before and after the middle, so that this stands in the middle.
    rest = (spare - gap * (len(parts) - 1)) / 2
    top = margin
    for at, part in enumerate(parts):
        if at in {1, len(parts) - 1}:
            top += rest
        part.move(margin, top)
        top += part.height + gap
    texts = [text for part in parts for text in part.texts]
    boxes = [box for part in parts for box in part.boxes]
    return Sheet(texts, boxes, is_whole)
