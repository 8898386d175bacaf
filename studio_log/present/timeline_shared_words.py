"""What the rows for vessels, drying line and heat say: in two words, and as whole stories."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from studio_log.domain.sharing import Clash, Shared, Taking
from studio_log.language.words import listed, tr
from studio_log.present import words
from studio_log.present.timeline_hits import Hit
from studio_log.present.timeline_shared import SharedRow, line_words

_ALL: Final = 4
"""Codes named in a sentence; beyond that they are counted."""


def clash_label(row: SharedRow, one: Clash) -> str:
    """Say in two words how much is wanted of what there is: "26 of 20 m"."""
    if row.shared is Shared.VESSEL or row.limit is None:
        return tr("{count} meet", count=len(one.codes))
    if row.shared is Shared.HEAT:
        return tr("{wanted:g} of {limit:g}", wanted=one.wanted, limit=row.limit)
    wanted, had = (line_words(metres, row.units) for metres in (one.wanted, row.limit))
    return tr("{wanted} of {had}", wanted=wanted.split()[0], had=had)


def clash_story(row: SharedRow, one: Clash) -> str:
    """Tell who meets where, when, and how much is missing."""
    who, when = _who(one.codes), _when(row, one)
    if row.shared is Shared.VESSEL:
        return tr(
            "{who} meet in {title}, {when}: it holds one lot at a time.",
            who=who,
            title=row.title,
            when=when,
        )
    if row.shared is Shared.HEAT:
        return tr(
            "{who} want heat {when}: {wanted:g} pots, {note}.",
            who=who,
            when=when,
            wanted=one.wanted,
            note=row.note,
        )
    limit = row.limit or 0.0
    short = line_words(one.wanted - limit, row.units)
    wanted = line_words(one.wanted, row.units)
    return tr(
        "{who} want {wanted} of the drying line {when}: {note} there are, {short} too few.",
        who=who,
        wanted=wanted,
        when=when,
        note=row.note,
        short=short,
    )


def taking_story(row: SharedRow, one: Taking) -> str:
    """Tell one taking: lot, step, how much and when, and whom it meets."""
    much = ""
    if row.shared is Shared.LINE:
        much = f": {line_words(one.amount, row.units)}" if one.amount else tr(": length not known")
    on = {Shared.VESSEL: tr("in {title}", title=row.title), Shared.LINE: tr("on the drying line")}
    place = on.get(row.shared, tr("takes a burner"))
    if row.shared is Shared.VESSEL and not one.name:
        place = tr("in a vessel without a name; F2 names it")
    told = tr(
        "{code} {lot} — {title}, step {step}, {place}{much}, {when}.",
        code=one.code,
        lot=one.lot,
        title=one.title,
        step=one.step,
        place=place,
        much=much,
        when=_when(row, one),
    )
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
    now = tr("Now: {who}.", who=_who(there)) if there else tr("Free now.")
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
        return tr(
            "{first}, {second} and {rest} more lots",
            first=codes[0],
            second=codes[1],
            rest=len(codes) - 2,
        )
    return listed(codes)


def _when(row: SharedRow, one: Taking | Clash) -> str:
    start = words.moment(one.start, row.now, row.zone)
    return tr("{start} to {moment}", start=start, moment=words.moment(one.end, row.now, row.zone))
