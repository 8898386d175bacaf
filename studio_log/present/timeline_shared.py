"""The rows for vessels, drying line and heat: who takes each, how many at once, who meets."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime

from studio_log.domain.number_text import plain
from studio_log.domain.sharing import Clash, Shared, Taking, clashes
from studio_log.language.words import tr
from studio_log.present import words
from studio_log.science.units import convert


@dataclass(frozen=True, slots=True)
class Stock:
    """How much the studio has; None where that was not said."""

    metres: float | None = None
    burners: int | None = None

    def of(self, shared: Shared, name: str) -> float | None:
        """Give how much there is of one thing: a vessel that has a name is one."""
        if shared is Shared.VESSEL:
            return 1.0 if name else None
        return self.metres if shared is Shared.LINE else self.burners


@dataclass(frozen=True, slots=True)
class SharedRow:
    """One vessel, the line or the heat, with who takes it and where lots meet."""

    shared: Shared
    title: str
    note: str
    """What there is of it, in few words: "20 m"."""
    limit: float | None
    takings: tuple[Taking, ...]
    slots: tuple[int, ...]
    """The place of each taking among those at the same time, from 0 at the top."""
    clashes: tuple[Clash, ...]
    now: datetime
    zone: str
    units: words.Units = "metric"


def shared_rows(
    takings: Iterable[Taking],
    stock: Stock,
    now: datetime,
    zone: str,
    units: words.Units = "metric",
) -> tuple[SharedRow, ...]:
    """Make a row of each thing that is taken: vessels by name, then line, then heat."""
    groups: dict[tuple[Shared, str], list[Taking]] = {}
    for one in takings:
        groups.setdefault((one.shared, " ".join(one.name.casefold().split())), []).append(one)
    order = list(Shared)
    keys = sorted(groups, key=lambda key: (order.index(key[0]), not key[1], key[1]))
    return tuple(_row(key[0], groups[key], stock, (now, zone, units)) for key in keys)


def _row(
    shared: Shared,
    takings: list[Taking],
    stock: Stock,
    said: tuple[datetime, str, words.Units],
) -> SharedRow:
    now, zone, units = said
    takings.sort(key=lambda one: (one.start, one.code, one.step))
    name = takings[-1].name
    limit = stock.of(shared, name)
    title, note = _names(shared, name, limit, units)
    return SharedRow(
        shared, title, note, limit, tuple(takings), _slots(takings),
        clashes(takings, limit, now), now, zone, units,
    )  # fmt: skip


def _names(shared: Shared, name: str, limit: float | None, units: words.Units) -> tuple[str, str]:
    if shared is Shared.VESSEL:
        return (name, "vessel") if name else (tr("Vessels"), tr("without a name"))
    if shared is Shared.LINE:
        return tr("Drying line"), line_words(limit, units) if limit else tr("length not said")
    count = (
        tr("1 burner")
        if limit == 1
        else tr("{limit:g} burners", limit=limit)
        if limit
        else tr("burners not said")
    )
    return tr("Heat"), count


def line_words(metres: float, units: words.Units) -> str:
    """Say how much line, to a hand's width: "16 m", "17.5 yd"; one unit, so that it compares."""
    if units == "us":
        return f"{plain(convert(metres, 'm', 'yd'), 1)} yd"
    return f"{plain(metres, 1)} m"


def _slots(takings: Sequence[Taking]) -> tuple[int, ...]:
    """Give each lot the topmost place that is free for as long as it takes it."""
    free_from: list[tuple[datetime, str]] = []
    found: list[int] = []
    for one in takings:
        slot = next(
            (n for n, (at, code) in enumerate(free_from) if at <= one.start or code == one.code),
            len(free_from),
        )
        if slot == len(free_from):
            free_from.append((one.end, one.code))
        else:
            free_from[slot] = (max(one.end, free_from[slot][0]), one.code)
        found.append(slot)
    return tuple(found)
