"""The parts of the screen, each laid out from its own top: head, first thing, next ones, foot."""

from dataclasses import dataclass, field
from typing import Final

from PySide6.QtCore import QRectF

from studio_log.ui.across.key_rows import TOGETHER
from studio_log.ui.across.letters import COUNTDOWN, LEAST, Letters, Text, in_one_line, lay_out
from studio_log.ui.across.scene import Scene, Thing

GAP: Final = 0.012
"""Between words that belong together, as a share of the height."""
BAR: Final = 0.014
"""Width of the selvedge at the left of each thing."""
SAID: Final = (0.036, 0.033, 0.03, 0.0275, LEAST)
"""Sizes of what was written down, the largest first."""
SIDE: Final = 0.36
"""Share of the width that the hour or the countdown takes where it stands beside the words."""


@dataclass(frozen=True)
class Room:
    """The width there is, the letters, and how far they have had to shrink."""

    letters: Letters
    width: float
    scale: float
    whys: bool
    upright: bool
    """Higher than wide: the hour stands above the words, not beside them."""
    brief: bool = False
    """Later things are told by act and lot alone."""

    def share(self, wished: float, least: float = LEAST) -> float:
        """Give a size that has shrunk with the rest, down to its least."""
        return max(wished * self.scale, least)

    @property
    def gap(self) -> float:
        """Pixels between words that belong together."""
        return GAP * self.letters.height


@dataclass
class Section:
    """Texts and boxes of one part; boxes are named by what stands in them."""

    texts: list[Text] = field(default_factory=list)
    boxes: list[tuple[str, QRectF]] = field(default_factory=list)
    height: float = 0.0

    def move(self, left: float, top: float) -> None:
        """Bring it to its place on the screen."""
        for text in self.texts:
            text.rect.translate(left, top)
        for _, box in self.boxes:
            box.translate(left, top)

    def stack(self, text: Text, left: float, gap: float) -> None:
        """Put a text below what there is."""
        self.height = text.place(left, self.height + (gap if self.height else 0.0))
        self.texts.append(text)


def head(scene: Scene, room: Room) -> Section:
    """Give the hour and the day at the left, how it rings at the right."""
    made = Section()
    hour = lay_out(scene.hour, room.letters.font(room.share(0.05), bold=True), room.width, "ink")
    small = room.letters.font(LEAST)
    left = room.width if room.upright else room.width * 0.5
    day = lay_out(scene.day, small, left - hour.rect.width() - 3 * room.gap, "soft")
    states = " · ".join(scene.states)
    states = states[:1].upper() + states[1:]
    made.texts = [hour, day]
    hour.place(0, 0)
    day.place(hour.rect.right() + 3 * room.gap, max(hour.drop - day.drop, 0.0))
    bottom = max(hour.rect.bottom(), day.rect.bottom())
    if room.upright:
        told = lay_out(states, small, room.width, "soft")
        bottom = told.place(0, bottom)
    else:
        told = lay_out(states, small, room.width * 0.48, "soft", right=True)
        top = day.rect.top() if told.layout.lineCount() == 1 else 0.0
        bottom = max(bottom, told.place(room.width * 0.52, top))
    made.texts.append(told)
    made.height = bottom
    return made


def thing(one: Thing, room: Room, *, first: bool) -> Section:
    """Give one thing: when, then what; the first one is the largest on the screen."""
    inset = BAR * room.letters.height + 2 * room.gap
    wide = room.width - inset
    when = _when(one, room, wide if room.upright else wide * SIDE, first=first)
    words = _words_of(one, room, first=first)
    made = Section()
    if room.upright:
        left, room_right = inset, wide
        if first or not _is_short(one, room):
            made.stack(when, left, 0)
    else:
        column = max(wide * SIDE, when.rect.width())
        left = inset + column + 3 * room.gap
        room_right = room.width - left
        when.place(inset, 0)
        made.texts.append(when)
    for share, role, bold, text in words:
        font = room.letters.font(share, bold=bold)
        made.stack(lay_out(text, font, room_right, role), left, room.gap * (0.6 if first else 0.2))
    if not room.upright:
        made.height = _level(made, when)
    bar = QRectF(0, 0, BAR * room.letters.height, made.height)
    made.boxes.append((f"bar {one.urgency}", bar))
    return made


def message(title: str, words: str, room: Room) -> Section:
    """Give a doubt or a refusal in place of the first thing."""
    inset = BAR * room.letters.height + 2 * room.gap
    made = Section()
    bold = room.letters.font(room.share(0.055), bold=True)
    plain = room.letters.font(room.share(0.042))
    made.stack(lay_out(title, bold, room.width - inset, "now"), inset, 0)
    made.stack(lay_out(words, plain, room.width - inset, "ink"), inset, 2 * room.gap)
    made.boxes.append(("bar now", QRectF(0, 0, BAR * room.letters.height, made.height)))
    return made


def empty(words: str, more: str, room: Room) -> Section:
    """Give what is said where nothing is due."""
    made = Section()
    big = room.letters.font(room.share(0.085, 0.05), bold=True)
    made.stack(lay_out(words, big, room.width, "ink"), 0, 0)
    if more:
        made.stack(lay_out(more, room.letters.font(room.share(0.035)), room.width, "soft"), 0,
                   2 * room.gap)  # fmt: skip
    return made


def answers(names: tuple[str, ...], room: Room) -> Section:
    """Give boxes for the one big answer, and for a second one beside it."""
    made = Section(height=room.share(0.15, 0.1) * room.letters.height)
    gap = 2 * room.gap
    second = (room.width - gap) * 0.32
    first = room.width if len(names) == 1 else room.width - gap - second
    made.boxes.append(("answer", QRectF(0, 0, first, made.height)))
    if len(names) > 1:
        made.boxes.append(("second", QRectF(first + gap, 0, second, made.height)))
    return made


def foot(keys: str, said: str, room: Room) -> Section:
    """Give the keys, or for two seconds what was written down, in the same room."""
    made = Section()
    hint = lay_out(keys, room.letters.font(LEAST), room.width, "soft")
    shown = hint
    if said:
        # As large as leaves everything above it where it was, if there is such a size.
        for share in SAID:
            shown = lay_out(said, room.letters.font(share), room.width, "good")
            if shown.height <= hint.height:
                break
    made.stack(shown, 0, 0)
    made.height = max(made.height, hint.height)
    return made


def _when(one: Thing, room: Room, width: float, *, first: bool) -> Text:
    role = "ink" if one.counts else one.urgency
    if one.counts:
        font = room.letters.font(max(0.15 * room.scale, COUNTDOWN), bold=True)
        # Plain digits are narrower: on a screen that is high and narrow they still fit.
        if not in_one_line("88:88", font, room.width * 0.9):
            font.setBold(False)
        digits = lay_out(one.when, font, room.width, role)
        digits.tighten()
        return digits
    share = room.share(0.11 if first else 0.05, 0.05 if first else LEAST)
    least = 0.045 if first else LEAST
    font = room.letters.font(share, bold=True)
    while share > least and not in_one_line(one.when, font, width):
        share *= 0.92
        font = room.letters.font(max(share, least), bold=True)
    return lay_out(one.when, font, width, role)


def _words_of(one: Thing, room: Room, *, first: bool) -> list[tuple[float, str, bool, str]]:
    if not first:
        since = one.since.replace(" ", TOGETHER) if one.answer else ""
        parts = (one.name, since) if not room.brief else ()
        rest = " · ".join(part for part in parts if part)
        act = f"{one.when}: {one.act}" if _is_short(one, room) else one.act
        words = [(room.share(0.04), "ink", True, act), (LEAST, "soft", False, rest)]
    else:
        words = [
            (room.share(0.068), "ink", True, one.act),
            (room.share(0.042), "ink", False, one.name),
            (room.share(0.032), one.urgency, True, one.since),
            (LEAST, "soft", False, one.why if room.whys else ""),
        ]
    return [row for row in words if row[3]]


def _is_short(one: Thing, room: Room) -> bool:
    """Say whether the hour of a later thing stands in one line with it, to save height."""
    return room.upright and not one.counts


def _level(made: Section, when: Text) -> float:
    """Bring the hour and the first line of the words onto one level; gives the height."""
    words = made.texts[1:]
    by = when.drop - words[0].drop if words else 0.0
    if by > 0 and by < when.height:
        for text in words:
            text.rect.translate(0, min(by, when.height / 4))
    elif by < 0:
        when.rect.translate(0, -by)
    return max(text.rect.bottom() for text in made.texts)
