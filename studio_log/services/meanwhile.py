"""What somebody else changed while a form was open: asked about before it is written over."""

from collections.abc import Callable, Mapping
from typing import Any, Final

from studio_log.domain.errors import Question
from studio_log.domain.journal import Act, Entry, standing
from studio_log.language.words import tr, tr_later
from studio_log.present.words import moment
from studio_log.services.desk import Desk

FIELDS: Final[Mapping[str, str]] = {
    "name": tr_later("the name"),
    "place": tr_later("the place"),
    "grams": tr_later("the weight"),
    "cure_days": tr_later("the cure"),
    "vessel": tr_later("the vessel"),
    "vessel_litres": tr_later("the vessel’s litres"),
}


def ask_about_fields(desk: Desk, code: str, seen: int, wanted: Mapping[str, Any]) -> None:
    """Ask where a field to be set was set after entry `seen`, to something else."""

    def told(entry: Entry) -> str:
        if entry.act is not Act.SET:
            return ""
        other = [name for name in FIELDS if name in wanted and name in entry.data
                 and entry.data[name] != wanted[name]]  # fmt: skip
        return ", ".join(f"{tr(FIELDS[name])}: {entry.data[name]}" for name in other)

    _ask(desk, code, seen, told)


def ask_about_entry(desk: Desk, code: str, seen: int, number: int) -> None:
    """Ask where an entry to be corrected was corrected after entry `seen`."""

    def told(entry: Entry) -> str:
        if entry.act is not Act.CORRECT or entry.target != number:
            return ""
        shown = [f"{name} {value}" for name, value in entry.readings.items()]
        at = [moment(entry.at, desk.now, desk.zone)] if entry.data.get("at") else []
        return ", ".join(filter(None, (*at, entry.note, *shown)))

    _ask(desk, code, seen, told)


def _ask(desk: Desk, code: str, seen: int, told: Callable[[Entry], str]) -> None:
    later = [one for one in standing(desk.entries(code)) if one.number > seen]
    corrections = [one for one in desk.entries(code) if one.number > seen and one not in later]
    said = list(dict.fromkeys(filter(None, map(told, (*later, *corrections)))))
    if said:
        raise Question(
            tr(
                "{code} was changed elsewhere while this was open ({what}). Write over it?",
                code=code, what="; ".join(said),
            )
        )  # fmt: skip
