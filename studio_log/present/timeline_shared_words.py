"""What the rows for vessels, drying line and heat say: in two words, and as whole stories."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from studio_log.domain.quiet_text import listed
from studio_log.domain.sharing import Clash, Shared, Taking
from studio_log.present import words
from studio_log.present.timeline_hits import Hit
from studio_log.present.timeline_shared import SharedRow, line_words

_ALL: Final = 4
"""Codes named in a sentence; beyond that they are counted."""


def clash_label(row: SharedRow, one: Clash) -> str:
    """Say in two words how much is wanted of what there is: "26 of 20 m"."""
    if row.shared is Shared.VESSEL or row.limit is None:
        return f"{len(one.codes)} meet"
    if row.shared is Shared.HEAT:
        return f"{one.wanted:g} of {row.limit:g}"
    wanted, had = (line_words(metres, row.units) for metres in (one.wanted, row.limit))
    return f"{wanted.split()[0]} of {had}"


def clash_story(row: SharedRow, one: Clash) -> str:
    """Tell who meets where, when, and how much is missing."""
    who, when = _who(one.codes), _when(row, one)
    if row.shared is Shared.VESSEL:
        return f"{who} meet in {row.title}, {when}: it holds one lot at a time."
    if row.shared is Shared.HEAT:
        return f"{who} want heat {when}: {one.wanted:g} pots, {row.note}."
    limit = row.limit or 0.0
    short = line_words(one.wanted - limit, row.units)
    wanted = line_words(one.wanted, row.units)
    return f"{who} want {wanted} of the drying line {when}: {row.note} there are, {short} too few."


def taking_story(row: SharedRow, one: Taking) -> str:
    """Tell one taking: lot, step, how much and when, and whom it meets."""
    much = ""
    if row.shared is Shared.LINE:
        much = f": {line_words(one.amount, row.units)}" if one.amount else ": length not known"
    on = {Shared.VESSEL: f"in {row.title}", Shared.LINE: "on the drying line"}
    place = on.get(row.shared, "takes a burner")
    if row.shared is Shared.VESSEL and not one.name:
        place = "in a vessel without a name; F2 names it"
    told = f"{one.code} {one.lot} — {one.title}, step {one.step}, {place}{much}, {_when(row, one)}."
    met = _met(row, one)
    return told if met is None else f"{told} {clash_story(row, met)}"


def with_clash(hit: Hit, rows: Sequence[SharedRow]) -> Hit:
    """Add to the story of a lot's step where it meets another: the first time it does."""
    if hit.part not in ("bar", "drop"):
        return hit
    mine = (hit.code, hit.step)
    for row in rows:
        for one in row.takings if row.clashes else ():
            met = _met(row, one) if (one.code, one.step) == mine else None
            if met is not None:
                return replace(hit, story=f"{hit.story} {clash_story(row, met)}")
    return hit


def row_story(row: SharedRow) -> str:
    """Tell who takes it now, and the first clash ahead."""
    there = list(dict.fromkeys(one.code for one in row.takings if one.start <= row.now < one.end))
    now = f"Now: {_who(there)}." if there else "Free now."
    met = f" {clash_story(row, row.clashes[0])}" if row.clashes else ""
    return f"{row.title}, {row.note}. {now}{met}"


def row_stops(row: SharedRow) -> list[Hit]:
    """List what of a row can have the keyboard, in order of time, clashes first."""
    stops = [
        Hit(one.codes[0], "clash", None, clash_story(row, one), one.start) for one in row.clashes
    ]
    stops += [
        Hit(one.code, "taking", one.step, taking_story(row, one), one.start) for one in row.takings
    ]
    return sorted(stops, key=lambda hit: (hit.at or row.now, hit.part != "clash"))


def _met(row: SharedRow, one: Taking) -> Clash | None:
    """Find the first clash that a taking is part of."""
    return next(
        (
            met
            for met in row.clashes
            if one.code in met.codes and met.start < one.end and met.end > one.start
        ),
        None,
    )


def _who(codes: Sequence[str]) -> str:
    if len(codes) > _ALL:
        return f"{codes[0]}, {codes[1]} and {len(codes) - 2} more lots"
    return listed(codes)


def _when(row: SharedRow, one: Taking | Clash) -> str:
    start = words.moment(one.start, row.now, row.zone)
    return f"{start} to {words.moment(one.end, row.now, row.zone)}"
