"""What a calculation is made of: inputs that say what was understood, an answer with its source."""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Final

from studio_log.domain.amount_shown import grams_shown, litres_shown
from studio_log.domain.cloth_text import read_gsm, read_metres
from studio_log.domain.errors import Question, Refusal
from studio_log.domain.mass_text import read_grams, read_litres
from studio_log.domain.number_text import NUMBER, clean, plain, quoted, read_number
from studio_log.domain.room_text import read_air, read_celsius, read_humidity
from studio_log.domain.spin_text import read_spun
from studio_log.language.words import tr
from studio_log.present.words import density, length

Values = Mapping[str, float | str]
"""What was typed, by the slug of its input: figures in g, L, m, °C, %; choices as they are."""

LONGEST: Final = 60
MOST_PERCENT: Final = 1_000.0
MOST_RATIO: Final = 1_000.0


@dataclass(frozen=True)
class Reader:
    """Reads one kind of figure and says it back."""

    read: Callable[[str], float]
    say: Callable[[float], str]
    keeps_text: bool = False
    """Whether the sum wants what was typed, and not the figure."""


def _figure(text: str, what: str, most: float, units: str) -> float:
    """Give a figure above nought, whatever of `units` ("%", ": 1") stands behind it."""
    typed = clean(text, what, longest=LONGEST).casefold()
    found = re.fullmatch(rf"({NUMBER}) ?(?:{units})?", typed)
    value = read_number(found[1]) if found else 0.0
    if not 0 < value <= most:
        raise Refusal(
            tr("{typed} cannot be read as {what}: a figure above nought, at most {most}.",
               typed=quoted(text), what=what, most=plain(most, 0))
        )  # fmt: skip
    return value


def _percent(text: str) -> float:
    return _figure(text, tr("a share"), MOST_PERCENT, r"%|per cent|percent")


def _ratio(text: str) -> float:
    return _figure(text, tr("a ratio"), MOST_RATIO, r": ?1|to 1|l ?/ ?kg|times")


READERS: Final[Mapping[str, Reader]] = {
    "grams": Reader(read_grams, grams_shown),
    "litres": Reader(read_litres, litres_shown),
    "metres": Reader(read_metres, length),
    "gsm": Reader(read_gsm, density),
    "percent": Reader(_percent, lambda value: f"{plain(value, 2)} %"),
    "ratio": Reader(_ratio, lambda value: f"{plain(value, 2)} : 1"),
    "celsius": Reader(read_celsius, lambda value: f"{plain(value, 1)} °C"),
    "humidity": Reader(read_humidity, lambda value: f"{plain(value, 0)} %"),
    "air": Reader(read_air, lambda value: f"{plain(value, 2)} m/s"),
    "spun": Reader(
        lambda text: read_spun(text).held.likely * 100,
        lambda value: tr("about {share} % of its weight in water", share=plain(value, 0)),
        keeps_text=True,
    ),
}
"""By what is typed. Each raises Refusal or Question in sentences."""


@dataclass(frozen=True)
class Input:
    """One thing to type or to choose."""

    slug: str
    label: str
    """With the letter that leads to it."""
    kind: str
    """A key of `READERS`, or "choice"; "own" has its reader with it."""
    offered: str
    """What stands there at first."""
    says: str
    """What it is, for whoever does not know."""
    choices: tuple[tuple[str, str], ...] = ()
    """Slug and words of each, for a choice."""
    reader: Reader | None = None


@dataclass(frozen=True)
class Understood:
    """What became of a typed text: a value and its words, or a fault."""

    value: float | str | None
    words: str
    fault: bool = False


@dataclass(frozen=True)
class Answer:
    """What comes out: the figure in large, sentences below it, and where it is from."""

    figure: str
    lines: tuple[str, ...] = ()
    source: str = ""


@dataclass(frozen=True)
class Curve:
    """A drawing: bands of y over x, a point where the typed values stand, words for the axes."""

    xs: tuple[float, ...]
    least: tuple[float, ...]
    likely: tuple[float, ...]
    most: tuple[float, ...]
    x_words: str
    y_words: str
    at: tuple[float, float] | None
    says: str
    """What the drawing shows, for whoever hears it."""


@dataclass(frozen=True)
class Calculation:
    """One sum of the trade."""

    slug: str
    title: str
    says: str
    inputs: tuple[Input, ...]
    work: Callable[[Values], Answer]
    """Raises Refusal where the values do not go together."""
    draw: Callable[[Values], Curve] | None = None


def understood(of: Input, text: str) -> Understood:
    """Read what was typed for an input; never raises."""
    if of.kind == "choice":
        return Understood(text, "")
    reader = of.reader or READERS[of.kind]
    try:
        value = reader.read(text)
        return Understood(text if reader.keeps_text else value, reader.say(value))
    except (Refusal, Question) as refusal:
        return Understood(None, str(refusal), fault=True)


def worked(of: Calculation, values: Values) -> Answer:
    """Work it out; a refusal becomes the answer's words, and no figure stands there."""
    try:
        return of.work(values)
    except (Refusal, Question) as refusal:
        return Answer("", (str(refusal),))
    except ValueError:
        return Answer("", (tr("These figures do not go together; look at each once more."),))


def as_text(of: Calculation, said: Mapping[str, str], answer: Answer) -> str:
    """Give a calculation as lines of text to paste elsewhere; `said` has the words by slug."""
    asked = [f"{tr(one.label).replace('&', '')}: {said.get(one.slug, '')}" for one in of.inputs]
    lines = [tr(of.title), *asked, answer.figure, *answer.lines, answer.source]
    return "\n".join(filter(None, lines)) + "\n"


def number(values: Values, slug: str) -> float:
    """Give the figure typed for an input."""
    return float(values[slug])
