"""What is done with swatches: each act an entry of the swatch's own journal."""

import math
from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any, Final

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act, Entry
from studio_log.domain.lots import Lot
from studio_log.domain.reminders import Cause
from studio_log.domain.swatch_text import MOST_2U, check_lab, read_grade
from studio_log.domain.swatches import HALVES, SCALES, SOURCES, TESTS, WHITES, swatch_from
from studio_log.language.words import tr
from studio_log.science.colour.lab import Lab
from studio_log.services.commands import Outcome
from studio_log.services.desk import Desk
from studio_log.services.limits import LONGEST_NAME, clean
from studio_log.services.photos import keep_photo, looked_at
from studio_log.services.swatch_even import evenness
from studio_log.services.swatch_grades import estimated
from studio_log.services.swatch_keeping import settle_swatch, swatch_entries
from studio_log.services.swatches import GradeSwatch, NewSwatch, NoteSwatch, ReadSwatch, SetSwatch

LONGEST_METHOD: Final = 120
MOST_WARNINGS: Final = 20
SPECTRUM: Final = 31
MOST_REFLECTANCE: Final = 2.0


def new_swatch(desk: Desk, command: NewSwatch) -> Outcome:
    """Cut a swatch from a lot."""
    lot = desk.lot(command.lot)
    if lot.voided:
        raise Refusal(
            tr("{lot} was taken back: nothing is cut from it. Nothing was changed.", lot=lot.code)
        )
    numbers = [piece.number for piece in lot.pieces]
    if command.piece is not None and command.piece not in numbers:
        raise Refusal(
            tr(
                "{lot} has no piece {piece}: its pieces are {pieces}. Nothing was changed.",
                lot=lot.code,
                piece=command.piece,
                pieces=", ".join(map(str, numbers)),
            )
        )
    data: dict[str, Any] = {"lot": lot.code, **_kept_data(command)}
    if command.piece is not None or len(numbers) == 1:
        data["piece"] = command.piece if command.piece is not None else numbers[0]
    code = f"W{desk.year % 100:02d}-{desk.work.next_code('swatch', desk.year):03d}"
    entry = desk.entry(code, Act.SWATCH_NEW, command.at, data=data)
    if entry.at < lot.begun:
        raise Refusal(
            tr("{lot} was begun later than that. Nothing was changed; look at the time.",
               lot=lot.code)
        )  # fmt: skip
    step = _step_at(lot, entry) if command.step is None else lot.step(command.step).number
    said = tr("Swatch {code} is cut from {lot}.", code=code, lot=lot.code)
    return written(desk, (), replace(entry, step=step), said, sure=command.sure)


def _kept_data(command: NewSwatch | SetSwatch) -> dict[str, Any]:
    """Give name and places, those that were given."""
    found: dict[str, Any] = {}
    for field, what in (("name", tr("The name")), ("place", tr("The place"))):
        value = getattr(command, field)
        if value or (value is not None and isinstance(command, SetSwatch)):
            found[field] = clean(value, what, LONGEST_NAME)
    if command.test_place is not None:
        found["test_place"] = clean(command.test_place, tr("The place"), LONGEST_NAME)
    return found


def _step_at(lot: Lot, entry: Entry) -> int | None:
    """Give the number of the step that a lot was at: the one begun last by then."""
    begun = [
        (step.start or step.end, place, step.number)
        for place, step in enumerate(lot.steps)
        if (step.start or step.end) is not None
    ]
    past = [(at, place, number) for at, place, number in begun if at and at <= entry.at]
    return max(past)[2] if past else None


def set_swatch(desk: Desk, command: SetSwatch) -> Outcome:
    """Change what is known of a swatch."""
    entries = swatch_entries(desk, command.code)
    data = _kept_data(command)
    if command.whole:
        data["test_place"] = None
    if command.ended is not None:
        data["ended"] = command.ended
    if not data:
        raise Refusal(tr("Say what changes: name, place, test half, or that it is kept no longer."))
    code = entries[0].subject
    entry = desk.entry(code, Act.SWATCH_SET, data=data)
    said = tr("Swatch {code} is changed.", code=code)
    return written(desk, entries, entry, said, sure=command.sure)


def read_swatch(desk: Desk, command: ReadSwatch) -> Outcome:
    """Write down a colour of a swatch."""
    entries = swatch_entries(desk, command.code)
    code = entries[0].subject
    _one_of(command.source, SOURCES, tr("source of a colour"))
    _one_of(command.half, HALVES, tr("half of a swatch"))
    _one_of(command.white, WHITES, tr("white"))
    data: dict[str, Any] = {"source": command.source, "half": command.half, "white": command.white}
    lab = check_lab(_mean_of_spots(command, data))
    readings: dict[str, float | str] = {
        "L": round(lab.lightness, 4), "a": round(lab.a, 4), "b": round(lab.b, 4),
    }  # fmt: skip
    if command.two_u is not None:
        readings["two_u"] = round(_two_u(command.two_u), 4)
    if command.method:
        data["method"] = clean(command.method, tr("The method"), LONGEST_METHOD)
    if command.warnings:
        data["warnings"] = [clean(one, tr("A warning")) for one in command.warnings[:MOST_WARNINGS]]
    if command.reflectance:
        data["reflectance"] = _spectrum(command.reflectance)
    note = clean(command.note, tr("The note"))
    entry = desk.entry(code, Act.SWATCH_READ, command.at, note=note, readings=readings, data=data)
    said = tr("{code}: its colour is written down.", code=code)
    return written(desk, entries, entry, said, sure=command.sure)


def _mean_of_spots(command: ReadSwatch, data: dict[str, Any]) -> Lab:
    """Give the colour of a reading, of several spots their mean; they go into `data`."""
    if not command.spots:
        if command.lab is None:
            raise Refusal(tr("No colour was given. Nothing was changed."))
        return command.lab
    if not 0 <= command.noise <= MOST_2U:
        raise Refusal(tr("The grain of a photo is 0 or more, in CIEDE2000. Nothing was changed."))
    if len(command.spectra) not in {0, len(command.spots)}:
        raise Refusal(tr("Either every spot has a spectrum or none. Nothing was changed."))
    spots = [check_lab(one) for one in command.spots]
    found = evenness(spots, [_spectrum(one) for one in command.spectra], command.noise)
    data["spots"] = [[round(x, 4) for x in (one.lightness, one.a, one.b)] for one in spots]
    if command.spectra:
        data["spectra"] = [_spectrum(one) for one in command.spectra]
    if command.noise:
        data["noise"] = round(command.noise, 4)
    return found.spread.mean


def grade_swatch(desk: Desk, command: GradeSwatch) -> Outcome:
    """Write down the grade of a test, by eye or estimated from colours that were read."""
    entries = swatch_entries(desk, command.code)
    swatch = swatch_from(entries)
    _one_of(command.test, TESTS, tr("test"))
    _one_of(command.scale, SCALES, tr("scale"))
    data: dict[str, Any] = {"test": command.test, "scale": command.scale}
    if command.grade:
        grade = read_grade(command.grade, command.scale)
    else:
        found = estimated(swatch, command.scale)
        grade = found.grade
        data |= {"estimated": True, "figure": round(found.figure, 2), "from": list(found.entries)}
    if command.length:
        data["length"] = clean(command.length, tr("How long"), LONGEST_NAME)
    entry = desk.entry(
        swatch.code, Act.SWATCH_GRADE, command.at, note=clean(command.note, tr("The note")),
        readings={"grade": grade}, data=data,
    )  # fmt: skip
    said = tr("{code}: grade {grade} is written down.", code=swatch.code, grade=grade)
    return written(desk, entries, entry, said, sure=command.sure)


def note_swatch(desk: Desk, command: NoteSwatch) -> Outcome:
    """Write down a remark on a swatch, with a picture if there is one."""
    entries = swatch_entries(desk, command.code)
    code = entries[0].subject
    note = clean(command.note, tr("The note"))
    picture = looked_at(desk, command) if command.path is not None or command.content else None
    if not note and picture is None:
        raise Refusal(tr("The note is empty. Nothing was changed."))
    data = {} if picture is None else {"photo": picture.digest}
    entry = desk.entry(code, Act.NOTE, command.at, note=note, data=data)
    said = tr("{code}: a remark is written down.", code=code)
    outcome = written(desk, entries, entry, said, sure=command.sure)
    if picture is not None:
        keep_photo(desk, code, len(entries) + 1, None, picture)
    return outcome


def written(
    desk: Desk,
    before: tuple[Entry, ...],
    entry: Entry,
    said: str,
    *,
    sure: bool,
    answer: str = "",
) -> Outcome:
    """Check an entry against the swatch, append it, and keep its line and its reminders.

    `answer` is what it makes of a reminder that it ends.
    """
    desk.check_time(entry.at, sure=sure)
    if before and swatch_from(before).voided:
        raise Refusal(tr("{code} was taken back. Nothing was changed.", code=entry.subject))
    number = len(before) + 1
    swatch = swatch_from((*before, replace(entry, number=number)))
    desk.work.journal.append(entry)
    made_of_it = answer or ("graded" if entry.act is Act.SWATCH_GRADE else "")
    cause = Cause(None, made_of_it, why=entry.act.words)
    settle_swatch(desk, swatch, number, cause)
    return Outcome(
        said,
        lots=frozenset({swatch.lot}),
        swatches=frozenset({swatch.code}),
        code="" if before else swatch.code,
        subject=swatch.code,
        reminders=swatch.light_begun is not None or entry.act is Act.SWATCH_TEST,
    )


def swatch_readings(readings: Mapping[str, float | str]) -> dict[str, float | str]:
    """Give what a correction may say: L, a, b and two_u of a colour, or a grade."""
    kept: dict[str, float | str] = {}
    for name, value in readings.items():
        if name == "grade":
            text = f"{value:g}" if isinstance(value, int | float) else value
            kept[name] = read_grade(text, "blue-wool" if text in {"6", "7", "8"} else "change")
        elif name in {"L", "a", "b", "two_u"} and isinstance(value, int | float):
            kept[name] = _two_u(value) if name == "two_u" else float(value)
        else:
            raise Refusal(
                tr("{name} is no reading of a swatch: L, a, b, two_u or grade. Nothing was "
                   "changed.", name=name)
            )  # fmt: skip
    figures = [float(kept.get(name, 0.0)) for name in ("L", "a", "b")]
    check_lab(Lab(*figures))
    return kept


def _two_u(value: float) -> float:
    if not (math.isfinite(value) and 0 <= value <= MOST_2U):
        raise Refusal(
            tr("{value} is no 2u: 0 to {most} CIEDE2000. Nothing was changed.",
               value=f"{value:g}", most=f"{MOST_2U:g}")
        )  # fmt: skip
    return float(value)


def _spectrum(reflectance: tuple[float, ...]) -> list[float]:
    sound = all(math.isfinite(one) and 0 <= one <= MOST_REFLECTANCE for one in reflectance)
    if len(reflectance) != SPECTRUM or not sound:
        raise Refusal(tr("A spectrum has 31 fractions, 400 to 700 nm by 10. Nothing was changed."))
    return [round(one, 6) for one in reflectance]


def _one_of(given: str, known: tuple[str, ...], what: str) -> None:
    if given not in known:
        raise Refusal(
            tr("{given} is no {what}; there are: {known}. Nothing was changed.",
               given=repr(given[:40]), what=what, known=", ".join(known))
        )  # fmt: skip


HANDLERS: Final[Mapping[type, Callable[[Desk, Any], Outcome]]] = {
    NewSwatch: new_swatch,
    SetSwatch: set_swatch,
    ReadSwatch: read_swatch,
    GradeSwatch: grade_swatch,
    NoteSwatch: note_swatch,
}
