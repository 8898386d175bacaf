"""Texts spoilt at random: the form changes them as was asked, or refuses; nothing else happens."""

import random
import tomllib
from collections.abc import Callable
from pathlib import Path

import pytest

from studio_log.domain.errors import Refusal
from studio_log.domain.method_draft import with_cure, with_row, with_value, without_row
from studio_log.domain.method_steps import (
    with_new_step,
    with_steps_moved,
    with_steps_repeated,
    without_steps,
)
from studio_log.domain.method_text import read_draft

METHODS = Path(__file__).parents[2] / "resources" / "methods"
LONG = (METHODS / "soy-immersion-long.toml").read_text("utf-8")
BITS = (
    "[[steps]]\n", "[cure]\n", '"', '"""', "'''", "# x\n", "=", "{", "}", "[", "]", "steps",
    "a.b = 1\n", "lasts = 3\n", "gap = []\n", "amounts = {}\n", "[steps.x]\n", "é", "\u2028",
    'slug = "x"\n', "[[steps.amounts]]\n", "[[cure.views]]\n", "readings = [1]\n", "\r\n",
    'tending.act = "x"\n',
)  # fmt: skip
VALUES = ("x", 'a "b" \\c', None, 3, 2.5, ["1 h", "2 h"], "3 h", "long " * 60)
Change = Callable[[str, random.Random], str]
CHANGES: dict[str, Change] = {
    "field": lambda text, by: with_value(
        text, ("steps", by.randrange(6), by.choice(("title", "do", "coat"))), by.choice(VALUES)
    ),
    "small table": lambda text, by: with_value(
        text,
        (
            "steps",
            by.randrange(6),
            by.choice(("lasts", "gap", "tending")),
            by.choice(("aim", "every")),
        ),
        by.choice(VALUES),
    ),
    "amount": lambda text, by: with_value(
        text, ("steps", by.randrange(6), "amounts", by.randrange(3), "value"), by.choice(VALUES)
    ),
    "row": lambda text, by: with_row(
        text, ("steps", by.randrange(6), by.choice(("amounts", "readings"))), {"slug": "q"}
    ),
    "no row": lambda text, by: without_row(text, ("steps", by.randrange(6), "amounts", 0)),
    "view": lambda text, _by: with_row(text, ("cure", "views"), {"days": 4}),
    "cure": lambda text, _by: with_cure(text),
    "new": lambda text, by: with_new_step(text, by.randrange(4)),
    "out": lambda text, by: without_steps(text, by.randrange(3), 3),
    "move": lambda text, by: with_steps_moved(text, 1, by.randrange(1, 4), by.choice((-1, 1))),
    "repeat": lambda text, by: with_steps_repeated(text, by.randrange(3), 3),
}


def spoilt(text: str, by: random.Random) -> str:
    """The text with up to three things cut, put in or moved."""
    for _ in range(by.randrange(4)):
        at = by.randrange(len(text))
        lines = text.splitlines(keepends=True)
        moved = lines.pop(by.randrange(len(lines)))
        lines.insert(by.randrange(len(lines)), moved)
        text = by.choice(
            (
                text[:at] + text[at + by.randrange(1, 60) :],
                text[:at] + by.choice(BITS) + text[at:],
                "".join(lines),
            )
        )
    return text


@pytest.mark.parametrize("name", sorted(CHANGES))
def test_a_spoilt_text_is_changed_or_refused(name: str) -> None:
    refused = 0
    for seed in range(60):
        by = random.Random(f"{name} {seed}")
        text = spoilt(LONG, by)
        try:
            after = CHANGES[name](text, by)
        except Refusal:
            refused += 1
            continue
        tomllib.loads(after)  # the standard library's own reader
        read_draft(after, name="spoilt")
    assert 0 < refused < 60, "some texts are too far gone, and some are not"
