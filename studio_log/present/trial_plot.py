"""The drawing of a trial: each piece a dot, the fit with its intervals; from 0 to 1 both ways.

Ages stand on a log scale. What has no place on it, age 0 and arms with a name, stands in columns
at the left. A batch has a shape of its own, so that no hue has to be told from another.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from statistics import fmean
from typing import Final

from studio_log.domain.number_text import plain
from studio_log.domain.trial_fit import TrialFit
from studio_log.language.words import counted, tr, tr_later
from studio_log.science.statistics_line import Interval, slope_of

SHAPES: Final = 6
"""Batches beyond that share shapes."""
COLUMN: Final = 0.12
MOST_COLUMNS: Final = 0.45
"""Part of the width for columns, beside ages."""
PAD: Final = 0.06
STEPS: Final = 40
JITTER: Final = 0.011
BESIDE: Final = 0.05
"""How far right of its pieces an arm's bar stands, in parts of the width."""
COLUMN_PART: Final = 0.36
"""And at the most in parts of its column."""
Point = tuple[float, float]


@dataclass(frozen=True)
class Piece:
    """What is drawn of one piece; `age_d` None or 0: it stands in the column `arm`."""

    arm: str
    block: int
    age_d: float | None
    value: float
    says: str
    fill: str = ""
    """Its colour as "#rrggbb", "" where none was read."""


@dataclass(frozen=True)
class HeldPieces:
    """Arms held against the control: their words, ages and differences, in values."""

    level: float
    """The mean of the control."""
    arms: tuple[tuple[str, float | None, Interval], ...]


@dataclass(frozen=True)
class Bar:
    """An arm's difference from the control, upwards of the control's mean; y from 0 to 1."""

    x: float
    at: float
    low: float
    high: float
    clear: bool


@dataclass(frozen=True)
class Dot:
    """A piece in its place; y grows upwards."""

    x: float
    y: float
    shape: int
    fill: str
    says: str


@dataclass(frozen=True)
class Tick:
    """A place on an axis, with its words."""

    at: float
    words: str


@dataclass(frozen=True)
class TrialPlot:
    """All that is drawn, in the order of drawing: bands, lines, dots."""

    title: str
    x_words: str
    y_words: str
    x_ticks: tuple[Tick, ...]
    y_ticks: tuple[Tick, ...]
    dots: tuple[Dot, ...]
    fit: tuple[Point, ...] = ()
    mean_band: tuple[Point, ...] = ()
    """A closed line around where the mean lies."""
    new_band: tuple[Point, ...] = ()
    """A closed line around where a new piece falls."""
    by_batch: tuple[tuple[Point, ...], ...] = ()
    curve: tuple[Point, ...] = ()
    """The saturating or the monotone curve, where the line does not fit."""
    bars: tuple[Bar, ...] = ()
    """Of arms without an age; where there is no line, of all."""
    level: float | None = None
    """The control's mean, against which the bars stand."""
    part_at: float | None = None
    """Where the columns end and the ages begin."""
    batches: tuple[str, ...] = ()
    """Names, by their shape."""
    says: str = ""


@dataclass(frozen=True)
class _Scale:
    columns: tuple[str, ...]
    left: float
    low: float
    high: float
    y_low: float
    y_high: float

    def x(self, age: float) -> float:
        across = (math.log10(age) - self.low) / (self.high - self.low)
        return self.left + PAD / 2 + across * (1 - self.left - PAD)

    def column(self, arm: str) -> float:
        return self.left * (self.columns.index(arm) + 0.5) / len(self.columns)

    def y(self, value: float) -> float:
        up = (value - self.y_low) / (self.y_high - self.y_low)
        return min(max(up, 0.0), 1.0)


def draw_trial(
    pieces: Sequence[Piece],
    fit: TrialFit | None,
    *,
    title: str,
    y_words: str,
    batches: Sequence[str],
    held: HeldPieces | None = None,
) -> TrialPlot:
    """Give the drawing of a trial; also of one without a single piece, as empty axes."""
    shown = _shown(held, fit)
    scale = _scale_of(pieces, fit, shown)
    ages = sorted({one.age_d for one in pieces if one.age_d})
    dots = tuple(
        Dot(_place(scale, one, len(batches)), scale.y(one.value), one.block % SHAPES, one.fill,
            one.says)
        for one in pieces
    )  # fmt: skip
    columns = [Tick(scale.column(arm), arm) for arm in scale.columns]
    marks = [Tick(scale.x(age), plain(age, 1)) for age in ages]
    drawn = _fitted(scale, fit) if fit is not None else {}
    return TrialPlot(
        title=title,
        x_words=tr("cure age in days, log scale") if ages else tr("arm"),
        y_words=y_words,
        x_ticks=(*columns, *_apart(marks)),
        y_ticks=_y_ticks(scale),
        dots=dots,
        part_at=scale.left if scale.columns and ages else None,
        batches=tuple(batches) if len(batches) > 1 else (),
        says=_says(pieces, fit, y_words),
        bars=tuple(_bar(scale, shown, *one) for one in shown.arms) if shown is not None else (),
        level=scale.y(shown.level) if shown is not None else None,
        by_batch=_by_batch(scale, pieces, fit),
        **drawn,
    )


def _shown(held: HeldPieces | None, fit: TrialFit | None) -> HeldPieces | None:
    """Give the bars that are drawn: beside a line only those of arms without a place on it."""
    if held is None:
        return None
    arms = tuple(one for one in held.arms if fit is None or one[1] is None)
    return replace(held, arms=arms) if arms else None


def _bar(scale: _Scale, held: HeldPieces, arm: str, age_d: float | None, apart: Interval) -> Bar:
    x = scale.x(age_d) if age_d else scale.column(arm)
    ends = (apart.value, apart.low, apart.high)
    at, low, high = (scale.y(held.level + one) for one in ends)
    beside = min(BESIDE, COLUMN_PART * (scale.left or 1.0) / max(len(scale.columns), 1))
    return Bar(x + beside, at, low, high, not apart.low <= 0 <= apart.high)


def _scale_of(
    pieces: Sequence[Piece], fit: TrialFit | None, held: HeldPieces | None = None
) -> _Scale:
    ages = [one.age_d for one in pieces if one.age_d]
    columns = tuple(dict.fromkeys(one.arm for one in pieces if not one.age_d))
    left = 0.0
    if columns:
        left = min(MOST_COLUMNS, COLUMN * len(columns)) if ages else 1.0
    low, high = (math.log10(min(ages)), math.log10(max(ages))) if ages else (0.0, 1.0)
    if high - low < 1e-9:
        low, high = low - 0.5, high + 0.5
    values = [one.value for one in pieces] or [0.0, 1.0]
    values += _ends_of(values, fit)
    values += _bar_ends(values, held)
    room = max(max(values) - min(values), abs(max(values)) * 0.02, 0.1) * 0.12
    y_low, y_high = min(values) - room, max(values) + room
    return _Scale(columns, left, low, high, max(y_low, 0.0) if min(values) >= 0 else y_low, y_high)


def _ends_of(values: Sequence[float], fit: TrialFit | None) -> list[float]:
    """Give the ends of where a new piece falls, as far as they leave the pieces room."""
    if fit is None:
        return []
    far = (max(values) - min(values)) or 1.0
    ends = [end for one in fit.expected for end in (one.swatch.low, one.swatch.high)]
    return [min(max(end, min(values) - far / 2), max(values) + far / 2) for end in ends]


def _bar_ends(values: Sequence[float], held: HeldPieces | None) -> list[float]:
    """Give the ends of the bars, as far as they leave the pieces room."""
    if held is None:
        return []
    far = (max(values) - min(values)) or 1.0
    ends = [held.level + end for _, _, one in held.arms for end in (one.low, one.high)]
    return [min(max(end, min(values) - far / 2), max(values) + far / 2) for end in ends]


def _place(scale: _Scale, piece: Piece, batches: int) -> float:
    """Give where a piece stands; those of batches beside each other, so that none hides."""
    at = scale.x(piece.age_d) if piece.age_d else scale.column(piece.arm)
    return at + JITTER * (piece.block - (batches - 1) / 2) * min(1.0, 6 / max(batches, 1))


def _apart(ticks: Sequence[Tick]) -> list[Tick]:
    """Leave out the words of ages that would run into each other."""
    kept: list[Tick] = []
    for one in ticks:
        near = kept and one.at - kept[-1].at < 0.045
        kept.append(Tick(one.at, "") if near else one)
    return kept


def _y_ticks(scale: _Scale) -> tuple[Tick, ...]:
    span = scale.y_high - scale.y_low
    step = 10.0 ** math.floor(math.log10(span / 4))
    step = next(step * many for many in (1, 2, 5, 10) if span / (step * many) <= 7)
    first = math.ceil(scale.y_low / step - 1e-9)
    last = math.floor(scale.y_high / step + 1e-9)
    places = max(0, -math.floor(math.log10(step) + 1e-9))
    return tuple(
        Tick(scale.y(number * step), plain(number * step, places))
        for number in range(first, last + 1)
    )


def _fitted(scale: _Scale, fit: TrialFit) -> dict[str, tuple[Point, ...]]:
    first, last = fit.ages[0], fit.ages[-1]
    logs = [math.log10(first) + (math.log10(last) - math.log10(first)) * at / STEPS
            for at in range(STEPS + 1)]  # fmt: skip
    xs = [scale.x(10**one) for one in logs]
    means = [fit.line.mean_interval(one) for one in logs]
    news = [fit.line.prediction_interval(one) for one in logs]
    found: dict[str, tuple[Point, ...]] = {
        "fit": _line(scale, xs, [one.value for one in means]),
        "mean_band": _band(scale, xs, [one.low for one in means], [one.high for one in means]),
        "new_band": _band(scale, xs, [one.low for one in news], [one.high for one in news]),
    }
    if fit.saturating is not None:
        found["curve"] = _line(scale, xs, [fit.saturating.at(10**one) for one in logs])
    elif fit.rising is not None:
        rising = fit.rising
        found["curve"] = _line(scale, [scale.x(age) for age in rising.ages], rising.depths)
    return found


def _by_batch(
    scale: _Scale, pieces: Sequence[Piece], fit: TrialFit | None
) -> tuple[tuple[Point, ...], ...]:
    """Give the line of each batch that has a slope, through its own mean."""
    if fit is None or fit.slope_by != "batches":
        return ()
    found = []
    for block in sorted({one.block for one in pieces}):
        own = [(math.log10(one.age_d), one.value) for one in pieces
               if one.block == block and one.age_d]  # fmt: skip
        if len({x for x, _ in own}) < 2:
            continue
        slope = slope_of([x for x, _ in own], [y for _, y in own])
        mean_x, mean_y = fmean(x for x, _ in own), fmean(y for _, y in own)
        ends = [min(x for x, _ in own), max(x for x, _ in own)]
        ys = [mean_y + slope * (x - mean_x) for x in ends]
        found.append(_line(scale, [scale.x(10**x) for x in ends], ys))
    return tuple(found)


def _line(scale: _Scale, xs: Sequence[float], ys: Sequence[float]) -> tuple[Point, ...]:
    return tuple((x, scale.y(y)) for x, y in zip(xs, ys, strict=True))


def _band(
    scale: _Scale, xs: Sequence[float], low: Sequence[float], high: Sequence[float]
) -> tuple[Point, ...]:
    return (*_line(scale, xs, high), *reversed(_line(scale, xs, low)))


def _says(pieces: Sequence[Piece], fit: TrialFit | None, y_words: str) -> str:
    """Say the drawing to whoever hears it."""
    count = counted(len(pieces), tr_later("{n} piece"), tr_later("{n} pieces"))
    said = tr("{count}, {measure} against age.", count=count, measure=y_words)
    if fit is None:
        return said
    first, last = fit.expected[0], fit.expected[-1]
    return f"{said} " + tr(
        "The line goes from {low} at {first} d to {high} at {last} d.",
        low=plain(first.mean.value, 1), first=plain(first.age_d, 1),
        high=plain(last.mean.value, 1), last=plain(last.age_d, 1),
    )  # fmt: skip


def csv_rows(
    heads: Sequence[str], rows: Sequence[Sequence[str]], write: Callable[[Sequence[str]], object]
) -> None:
    """Write a table row by row; a cell that a table program would take for a formula is marked."""
    for row in (heads, *rows):
        write([f"'{one}" if one[:1] in "=+-@\t" and not _figure(one) else one for one in row])


def _figure(text: str) -> bool:
    try:
        return math.isfinite(float(text))
    except ValueError:
        return False
