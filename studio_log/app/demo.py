"""Harbour Lane Cloth Studio: an invented studio, laid out around the present."""

import json
import tomllib
from collections.abc import Mapping
from dataclasses import replace
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any, Final
from zoneinfo import ZoneInfo

from studio_log.app.compose import open_studio
from studio_log.app.paths import resource
from studio_log.domain.journal import Act
from studio_log.domain.lots import Lot, StepState
from studio_log.domain.piece_text import read_piece
from studio_log.domain.reminders import Cause, Kind
from studio_log.domain.starting import piece_data
from studio_log.science.colour.lab import Lab
from studio_log.services.bath_acts import mark_bath, new_bath
from studio_log.services.baths import MarkBath, NewBath
from studio_log.services.commands import AnswerReminder
from studio_log.services.desk import Desk
from studio_log.services.lot_acts import next_lot_code
from studio_log.services.ports import Clock
from studio_log.services.ringing import answer
from studio_log.services.stock import NewMaterial
from studio_log.services.stock_acts import new_material
from studio_log.services.studio import Studio
from studio_log.services.swatch_acts import grade_swatch, new_swatch, read_swatch
from studio_log.services.swatches import GradeSwatch, NewSwatch, ReadSwatch
from studio_log.services.trial_acts import do_arm, new_trial, read_tag, unveil
from studio_log.services.trial_keeping import trial_of
from studio_log.services.trials import DoArm, NewTrial, ReadTag, TrialPlan, UnveilTrial
from studio_log.services.walking import walk

KEPT: Final = ("studio", "open_hours", "line_metres", "burners", "vessels")
"""Settings that stand in the sample as they are kept."""
CARRIED_ON = timedelta(hours=2)
"""How long ago the demo's dyer last looked: what came due since then is still to do."""


def open_demo(folder: Path, clock: Clock) -> Studio:
    """Make the invented studio in an empty folder and give it, open."""
    data = tomllib.loads(resource("sample/studio.toml").read_text(encoding="utf-8"))
    studio = open_studio(folder, clock=clock)
    with studio.store.work() as work:
        kept = {name: data[name] for name in KEPT}
        work.settings.put_all({**kept, **_wishes(data, studio), "welcomed": True})
        studio.read_kept_settings(work)
        desk = studio.desk(work)
        for row in data["stock"]:
            _shelve(desk, row)
        for index, row in enumerate(data["lots"]):
            _make(desk, row, timedelta(minutes=7 * index))
        for row in data["bath"]:
            _stand(desk, row)
        lots = {line.name: line.code for line in work.lots.of(work.lots.codes()).values()}
        for row in data["swatches"]:
            _cut(desk, row, lots[row["lot"]])
        for row in data["trials"]:
            _try(desk, row)
    return studio


def _wishes(data: Mapping[str, Any], studio: Studio) -> dict[str, str]:
    """Give the demo's goals, at days from now in the studio's zone, and what it wants to make."""
    today = studio.clock.now().astimezone(ZoneInfo(studio.zone)).date()
    goals = [
        {
            **{name: value for name, value in row.items() if name not in {"days", "hour"}},
            "at": f"{today + timedelta(days=row['days'])}T{row['hour']:02d}:00",
        }
        for row in data["goals"]
    ]
    return {"plan_goals": json.dumps(goals), "plan_wanted": json.dumps(data["wanted"])}


def _shelve(desk: Desk, row: Mapping[str, Any]) -> None:
    told = {name: value for name, value in row.items() if name != "days"}
    new_material(desk, NewMaterial(**told, at=desk.now - timedelta(days=row["days"]), sure=True))


def _stand(desk: Desk, row: Mapping[str, Any]) -> None:
    """Set up a bath and tell its diary; `hours` are those before the present."""
    told = {name: value for name, value in row.items() if name not in {"hours", "diary"}}
    made = desk.now - timedelta(hours=row["hours"])
    code = new_bath(desk, NewBath(**told, made_at=made, sure=True)).code
    for line in row["diary"]:
        rest = {name: value for name, value in line.items() if name not in {"act", "hours"}}
        for name in {"dipped", "aired"} & set(rest):
            rest[name] = timedelta(minutes=rest[name])
        if "planned" in rest:
            rest["planned"] = desk.now + timedelta(hours=rest["planned"])
        at = desk.now - timedelta(hours=line.get("hours", 0))
        mark_bath(desk, MarkBath(code, Act(line["act"]), at, **rest, sure=True))


def _cut(desk: Desk, row: Mapping[str, Any], lot: str) -> None:
    """Cut a swatch from a lot, read it and grade it; `hours` are those before the present."""

    def before(hours: float) -> datetime:
        return desk.now - timedelta(hours=hours)

    told = {name: row[name] for name in ("name", "place", "test_place") if name in row}
    code = new_swatch(desk, NewSwatch(lot, **told, at=before(row["hours"]), sure=True)).code
    for light, a, b, source, two_u, half, hours in row.get("readings", ()):
        lab, sure = Lab(light, a, b), two_u or None
        read_swatch(desk, ReadSwatch(code, lab, source, half, two_u=sure, at=before(hours)))
    for test, grade, length, hours in row.get("grades", ()):
        grade_swatch(desk, GradeSwatch(code, test, grade, length=length, at=before(hours)))


def _try(desk: Desk, row: Mapping[str, Any]) -> None:
    """Plan a trial, dye each arm on its day, read it blind and unveil it; `days` before now."""
    begun = desk.now - timedelta(days=row["days"])
    day = begun.astimezone(ZoneInfo(desk.zone)).date()
    plan = TrialPlan(
        tuple(row["ages"]), blocks=tuple(row["blocks"]), replicates=1, day=day, seed=row["seed"]
    )
    early = begun - timedelta(days=plan.lead_d + 1)
    code = new_trial(desk, NewTrial(row["question"], plan, at=early, sure=True)).code
    for number, age in enumerate(row["ages"], 1):
        dyed = begun + timedelta(days=age)
        do_arm(desk, DoArm(code, "dye", (number,), at=dyed, sure=True))
    last = begun + timedelta(days=max(row["ages"]) + 2)
    for unit in trial_of(desk, code).unread:
        place = (unit.arm - 1) * len(row["blocks"]) + unit.block - 1
        lab = Lab(*row["colours"][place])
        read_tag(desk, ReadTag(code, unit.tag, lab=lab, two_u=row["two_u"], at=last, sure=True))
    unveil(desk, UnveilTrial(code))


def _make(desk: Desk, row: Mapping[str, Any], shift: timedelta) -> None:
    method = desk.method(row["method"])
    pieces = read_piece(row["piece"]).pieces
    hours = row.get("begun_hours")
    begun = desk.now - timedelta(hours=hours) if hours is not None else desk.now - shift
    made = begun - timedelta(minutes=20)
    code = next_lot_code(desk)
    new = {
        "name": row["name"],
        "method": list(method.key),
        "pieces": [piece_data(piece) for piece in pieces],
        "cure_days": row.get("cure_days"),
        "vessel_litres": 20.0,
        "vessel": row.get("vessel", ""),
    }
    entry = replace(desk.entry(code, Act.NEW, made, data=new), written=made)
    lot = desk.write(None, entry, sure=True)
    if hours is not None:
        lot = _carry(desk, lot, row, begun)
    desk.settle(lot, Cause())
    _answer_old(desk, code)


def _answer_old(desk: Desk, code: str) -> None:
    """Let the demo's dyer have seen every mark of the cure older than a day."""
    for kept in desk.work.reminders.of(code):
        if kept.kind == Kind.CURE_MARK.value and kept.due < desk.now - timedelta(days=1):
            answer(desk, AnswerReminder(kept.key, "done"))


def _carry(desk: Desk, lot: Lot, row: Mapping[str, Any], begun: datetime) -> Lot:
    """Begin a lot and walk it to the present, to its use or to where it was stopped."""
    ended = row.get("stopped_hours") or row.get("used_hours")
    until = desk.now - (timedelta(hours=ended) if ended else CARRIED_ON)
    first = lot.steps[0]
    start = desk.entry(lot.code, Act.START, begun, step=first.number)
    lot = desk.write(lot, replace(start, written=begun), sure=True)
    lot = walk(desk, lot, begun, until)
    if "stopped_hours" in row:
        note = "Left wet over the week-end; grey spots."
        lot = desk.write(lot, desk.entry(lot.code, Act.STOP, until, note=note), sure=True)
    elif "used_hours" in row and not _still_wet(lot):
        lot = desk.write(lot, desk.entry(lot.code, Act.USE, until, note="painted"), sure=True)
    return lot


def _still_wet(lot: Lot) -> bool:
    return any(
        not step.optional and lot.state_of(step) in {StepState.OPEN, StepState.AHEAD}
        for step in lot.steps
    )
