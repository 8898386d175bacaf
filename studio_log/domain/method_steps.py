"""Steps of a method's text added, taken out, moved and repeated, as whole blocks of lines."""

import re
import unicodedata
from collections.abc import Callable, Collection, Sequence
from typing import Any, Final

from studio_log.domain.errors import Refusal
from studio_log.domain.method_draft import with_value
from studio_log.domain.method_parts import (
    OWN_WAY,
    Part,
    body_and_end,
    joined,
    parts_of,
    plain_data,
    spaced,
)

NEW_STEP: Final = """\
[[steps]]
slug = "{slug}"
title = "New step"
kind = "hand"
order = "Begin"
end_order = "Come to an end"
end_done = "Done"
hands_on = "10 min"
lasts = {{ earliest = "10 min", aim = "15 min", latest = "30 min" }}
"""
"""What is done and what happens if it waits is left to be written: only the dyer knows."""


def with_new_step(text: str, at: int) -> str:
    """Give the text with a step of its own before the step `at`, or at the end."""
    taken = {_text(step, "slug") for step in _steps(text)}
    block = NEW_STEP.format(slug=free_name("new-step", taken))
    return _rebuilt(text, lambda blocks: [*blocks[:at], block, *blocks[at:]])


def without_steps(text: str, first: int, last: int) -> str:
    """Give the text without the steps from `first` to `last`; Refusal where none would be left."""
    if last - first + 1 >= len(_steps(text)):
        raise Refusal("A method has at least one step. Nothing was changed.")
    return _rebuilt(text, lambda blocks: [*blocks[:first], *blocks[last + 1 :]])


def with_steps_moved(text: str, first: int, last: int, by: int) -> str:
    """Give the text with the steps from `first` to `last` one place earlier (-1) or later (1)."""
    if not (first + by >= 0 and last + by < len(_steps(text))):
        return text

    def moved(blocks: list[str]) -> list[str]:
        rest = [*blocks[:first], *blocks[last + 1 :]]
        at = first + by
        return [*rest[:at], *blocks[first : last + 1], *rest[at:]]

    return _rebuilt(text, moved)


def with_steps_repeated(text: str, first: int, last: int) -> str:
    """Give the text with these steps once more after them, under names of their own.

    Where they are whole coats, the repeated ones are counted as the next coats, and the
    coats after them move on.
    """
    steps = _steps(text)
    shift = _coats_to_shift(steps, first, last)

    def repeated(blocks: list[str]) -> list[str]:
        run = blocks[first : last + 1]
        run[-1] = body_and_end(run[-1])[0]  # the comment there is about the step after the run
        return [*blocks[:first], *run, *blocks[first:]]

    new = _rebuilt(text, repeated)
    count = last - first + 1
    steps_taken = {_text(step, "slug") for step in steps}
    amounts_taken = {_text(one, "slug") for step in steps for one in _rows(step, "amounts")}
    renamed: dict[str, str] = {}
    for at in range(last + 1, last + 1 + count):
        step = steps[at - count]
        new = _named_anew(new, ("steps", at, "slug"), _text(step, "slug"), steps_taken)
        for row, amount in enumerate(_rows(step, "amounts")):
            slug, of = _text(amount, "slug"), _text(amount, "of")
            path = ("steps", at, "amounts", row)
            new = _named_anew(new, (*path, "slug"), slug, amounts_taken)
            renamed[slug] = _text(_rows(_steps(new)[at], "amounts")[row], "slug")
            if of in renamed:
                new = with_value(new, (*path, "of"), renamed[of])
    return _coats_shifted(new, last + 1, shift) if shift else new


def free_name(name: str, taken: Collection[str]) -> str:
    """Give a short name not yet taken: "dip-2" after "dip", "dip-5" after "dip-4"."""
    found = re.fullmatch(r"(.*?)-([0-9]{1,4})", name)
    stem, number = (found[1], int(found[2])) if found else (name, 1)
    if not found and name not in taken:
        return name
    while True:
        tail = f"-{number}"
        made = f"{stem[: 40 - len(tail)]}{tail}"
        if made not in taken and number > 1:
            return made
        number += 1


def short_name(title: str) -> str:
    """Give a title as a short name: "First soak, cold" becomes "first-soak-cold"."""
    plain = unicodedata.normalize("NFKD", title).encode("ascii", "ignore").decode().lower()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:34].strip("-")


def unused(text: str, name: str) -> str:
    """Give a short name that no step, amount or reading of a method has yet."""
    steps = _steps(text)
    inside = [one for step in steps for key in ("amounts", "readings") for one in _rows(step, key)]
    return free_name(name, {_text(one, "slug") for one in (*steps, *inside)})


def _rebuilt(text: str, change: Callable[[list[str]], list[str]]) -> str:
    """Give the text with its blocks of steps in another order, each numbered by its place."""
    parts = parts_of(text)
    own = [at for at, part in enumerate(parts) if part.path[:1] == ("steps",)]
    if own and own != list(range(own[0], own[0] + len(own))):
        raise Refusal(OWN_WAY)  # the cure stands between the steps: nobody can tell what is meant
    if not own and "steps" in plain_data(text):
        raise Refusal(OWN_WAY)
    at = own[0] if own else 1
    blocks = change([parts[number].text for number in own])
    steps = [spaced(Part(("steps", number), block)) for number, block in enumerate(blocks)]
    before = [spaced(part) for part in parts[:at]]
    made = joined([*before, *steps, *parts[at + len(own) :]])
    plain_data(made)
    return f"{made.rstrip()}\n"


def _named_anew(text: str, path: tuple[str | int, ...], slug: str, taken: set[str]) -> str:
    name = free_name(slug, taken)
    taken.add(name)
    return with_value(text, path, name)


def _coats_to_shift(steps: Sequence[Any], first: int, last: int) -> int:
    """Give how many coats a run of steps is, nought where it holds only part of one."""
    inside = {_coat(step) for step in steps[first : last + 1]} - {0}
    outside = {_coat(step) for step in (*steps[:first], *steps[last + 1 :])}
    return len(inside) if inside and not inside & outside else 0


def _coats_shifted(text: str, first: int, by: int) -> str:
    for at, step in enumerate(_steps(text)):
        if at >= first and _coat(step):
            text = with_value(text, ("steps", at, "coat"), _coat(step) + by)
    return text


def _steps(text: str) -> list[Any]:
    steps = plain_data(text).get("steps", [])
    if not isinstance(steps, list) or not all(isinstance(step, dict) for step in steps):
        raise Refusal(OWN_WAY)
    return steps


def _rows(step: Any, key: str) -> list[Any]:
    rows = step.get(key, [])
    return [one for one in rows if isinstance(one, dict)] if isinstance(rows, list) else []


def _text(table: Any, key: str) -> str:
    value = table.get(key, "")
    return value if isinstance(value, str) else ""


def _coat(step: Any) -> int:
    value = step.get("coat")
    return value if type(value) is int and value > 0 else 0
