"""Gives vessels their names again: of those that are alike, the one it was, if that is free."""

from collections.abc import Mapping
from typing import Final

from studio_log.optimizer.frame import Frame
from studio_log.planning.board import Placement
from studio_log.planning.effort import WrongPlanError

Run = tuple[str, int]
LAST: Final = 1 << 60


def named(
    frame: Frame,
    starts: Mapping[str, tuple[int, ...]],
    groups: Mapping[Run, int],
    before: Mapping[str, Placement],
) -> dict[str, Placement]:
    """Give all placements, from the starts and groups of vessels of some lots.

    `before` are the places of all others, and those that were of the lots.
    """
    all_starts = {**{name: one.starts for name, one in before.items()}, **starts}
    all_groups: dict[Run, int] = {}
    liked: dict[Run, str] = {}
    for name, one in before.items():
        liked |= {(name, run): own for run, own in one.vessels.items()}
        all_groups |= {(name, run): frame.alike_of[own] for run, own in one.vessels.items()}
    names = _names(frame, all_starts, all_groups | dict(groups), liked)
    found = {}
    for name, own in all_starts.items():
        vessels = {run: vessel for (lot, run), vessel in names.items() if lot == name}
        was = before.get(name)
        same = was is not None and was.starts == own and dict(was.vessels) == vessels
        found[name] = was if same and was else frame.placement(name, own, vessels)
    return found


def _names(
    frame: Frame,
    starts: Mapping[str, tuple[int, ...]],
    groups: Mapping[Run, int],
    liked: Mapping[Run, str],
) -> dict[Run, str]:
    """Go through the runs by their beginning; each takes a vessel of its group that is free then.

    Those whose vessel is fixed run already: they come first.
    """
    free = {n: dict.fromkeys(one.names, -LAST) for n, one in enumerate(frame.alike)}
    found: dict[Run, str] = {}
    taken = _taken(frame, starts, groups)
    for begin, end, key in sorted(taken, key=lambda one: (one[0], one[2] not in frame.pinned, one)):
        group = groups[key]
        one = frame.alike[group]
        ready = [name for name, until in free[group].items() if until <= begin or one.shared]
        wanted = frame.pinned.get(key) or liked.get(key)
        if not ready or (key in frame.pinned and wanted not in ready):
            raise WrongPlanError(f"No {one.kind} is free for {key[0]}.")
        found[key] = wanted if wanted in ready else ready[0]
        free[group][found[key]] = max(end, begin)
    return found


def _taken(
    frame: Frame, starts: Mapping[str, tuple[int, ...]], groups: Mapping[Run, int]
) -> list[tuple[int, int, Run]]:
    found = []
    for name, own in starts.items():
        times: dict[int, tuple[int, int]] = {}
        for one in frame.stretches[name]:
            if one.run < 0:
                continue
            (first, after), (second, until) = one.begin, one.end
            begin, end = -1 if first < 0 else own[first] + after, own[second] + until
            low, high = times.get(one.run, (begin, end))
            times[one.run] = (min(low, begin), max(high, end))
        found += [(*time, (name, run)) for run, time in times.items() if (name, run) in groups]
    return found
