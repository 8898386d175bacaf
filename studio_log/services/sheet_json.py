"""One lot as plain JSON values: the fields that `lot show --json` promises."""

from collections.abc import Mapping, Sequence
from dataclasses import asdict
from datetime import UTC, datetime
from typing import Any

from studio_log.domain.journal import Act, Entry
from studio_log.domain.lots import Lot, cure_of
from studio_log.domain.methods import StepKind
from studio_log.domain.quiet import Window
from studio_log.domain.starting import piece_data
from studio_log.domain.windows import StepWindow
from studio_log.services.desk import Desk
from studio_log.services.questions import StepLine


def instant(at: datetime | None) -> str | None:
    """Give an instant as ISO 8601 UTC with Z, whole seconds; None stays None."""
    return None if at is None else at.astimezone(UTC).strftime("%Y-%m-%dT%H:%M:%SZ")


def _window(window: Window | None, best: datetime | None) -> dict[str, Any] | None:
    if window is None:
        return None
    return {
        "earliest": instant(window.earliest),
        "aim": instant(window.aim),
        "latest": instant(window.latest),
        "best": instant(best),
    }


def sheet_data(
    desk: Desk,
    lot: Lot,
    entries: Sequence[Entry],
    windows: Mapping[int, StepWindow],
    lines: Sequence[StepLine],
) -> dict[str, Any]:
    """Give the lot as JSON values; instants ISO with Z, masses in grams, lengths in metres."""
    return {
        "code": lot.code,
        "name": lot.name,
        "methods": [
            {"slug": method.slug, "version": method.version, "title": method.title}
            for method in lot.methods
        ],
        "state": lot.state(desk.now).value,
        "grams": lot.grams,
        "weighed": lot.weighed,
        "place": lot.place,
        "vessel": lot.vessel,
        "pieces": [{**piece_data(piece), "grams": piece.grams} for piece in lot.pieces],
        "swatches": list(desk.work.swatches.codes_of_lot(lot.code)),
        "parents": list(lot.parents),
        "children": list(lot.children),
        "joined": lot.joined,
        "joined_into": lot.joined_into,
        "steps": [_step(lot, line, windows.get(line.number)) for line in lines],
        "cure": _cure(desk, lot),
        "use": {"at": instant(lot.use.at), "note": lot.use.note} if lot.use else None,
        "entries": _entries(entries),
    }


def _step(lot: Lot, line: StepLine, window: StepWindow | None) -> dict[str, Any]:
    step = lot.step(line.number)
    return {
        "number": line.number,
        "order": line.order,
        "slug": line.slug,
        "title": line.title,
        "kind": line.kind.value,
        "coat": step.coat,
        "optional": step.optional,
        "state": line.state,
        "planned": _window(window.end, window.best_end) if window else None,
        "planned_start": _window(window.start, window.best_start) if window else None,
        "why": line.why,
        "broken": line.broken,
        "actual": {"start": instant(step.start), "end": instant(step.end)},
        "tended": [instant(at) for at in step.tended],
        "milk": step.milk,
        "amounts": [
            {
                "slug": one.slug,
                "title": one.title,
                "value": one.value,
                "unit": one.unit,
                "shown": one.shown,
                "kitchen": one.kitchen,
                "how": one.how,
            }
            for one in line.amounts
        ],
        "cautions": list(line.cautions),
        "warnings": [asdict(one) for one in line.warned],
    }


def _cure(desk: Desk, lot: Lot) -> dict[str, Any] | None:
    cure = cure_of(lot)
    if cure is None:
        if not any(step.spec.kind is StepKind.CURE for step in lot.steps):
            return None
        return {"fully_dry": None, "age_days": None, "marks": []}
    return {
        "fully_dry": instant(cure.fully_dry),
        "age_days": cure.age(desk.now).total_seconds() / 86400,
        "running": cure.running,
        "ready_at": instant(cure.ready_at),
        "marks": [
            {"name": mark.name, "kind": mark.kind, "day": mark.day, "at": instant(mark.at)}
            for mark in cure.marks
        ],
    }


def _entries(entries: Sequence[Entry]) -> list[dict[str, Any]]:
    corrected = {entry.target: entry.number for entry in entries if entry.act is Act.CORRECT}
    undone: set[int | None] = set()
    for entry in entries:
        if entry.act is Act.UNDO:
            undone.add(entry.target)
        elif entry.act is Act.REDO:
            undone.discard(entry.target)
    return [
        {
            "number": entry.number,
            "at": instant(entry.at),
            "written": instant(entry.written),
            "zone": entry.zone,
            "act": entry.act.value,
            "step": entry.step,
            "note": entry.note,
            "readings": dict(entry.readings),
            "target": entry.target,
            "corrected_by": corrected.get(entry.number),
            "taken_back": entry.number in undone,
        }
        for entry in entries
    ]
