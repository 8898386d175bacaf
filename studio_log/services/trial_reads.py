"""What is asked of trials: the list, one with its arms and pieces, its tags, its report."""

from collections.abc import Callable, Mapping, Sequence
from datetime import date
from typing import Any, Final

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import META, Act, Entry, standing
from studio_log.domain.number_text import plain
from studio_log.domain.tags import TagFacts, TagRow
from studio_log.domain.trial_design import dye_day, soy_day
from studio_log.domain.trial_due import in_dip_order, open_groups
from studio_log.domain.trials import MEASURES, Arm, Cell, Trial, Unit, trial_from
from studio_log.language.calendar_words import date_words
from studio_log.language.words import counted, tr, tr_later
from studio_log.present.colour_words import lab_words
from studio_log.present.words import moment
from studio_log.science.colour.lab import Lab
from studio_log.services.desk import Desk
from studio_log.services.journal_back import last_of, next_redo
from studio_log.services.trial_keeping import (
    age_of,
    code_named,
    dry_days,
    local_day,
    trial_entries,
    trial_of,
    trials,
)
from studio_log.services.trial_needs import trial_needs
from studio_log.services.trial_report import results_of, trial_report
from studio_log.services.trials import (
    ArmLine,
    TrialFor,
    TrialLine,
    TrialNeedsFor,
    TrialPage,
    TrialReportFor,
    TrialsFor,
    TrialTagsFor,
    UnitLine,
)

WAY_WORDS: Final[Mapping[str, str]] = {
    "forwards": tr_later("forwards: soyed together, each age dyed on its day"),
    "backwards": tr_later("backwards: soyed on days of their own, one bath for all"),
}


def trial_lines(_house: Any, desk: Desk, question: TrialsFor) -> tuple[TrialLine, ...]:
    """Give the trials, the latest first."""
    found = [one for one in trials(desk) if question.ended or not one.ended]
    return tuple(_line(desk, one) for one in reversed(found))


def trial_page(_house: Any, desk: Desk, question: TrialFor) -> TrialPage:
    """Give one trial, whole."""
    entries = trial_entries(desk, code_named(desk, question.name))
    trial = trial_from(entries)
    dry = dry_days(desk, trial)
    back, gone = last_of(entries), next_redo(entries)
    fixed = back is not None and back.act is Act.TRIAL_UNVEIL
    return TrialPage(
        line=_line(desk, trial),
        trial=trial,
        facts=tuple(_facts(trial)),
        arms=tuple(_arm_line(desk, trial, arm, dry) for arm in trial.arms),
        units=tuple(_unit_lines(desk, trial, dry)),
        next_tag=trial.unread[0].tag if trial.unread else "",
        left=len(trial.unread),
        can_unveil=trial.veiled,
        history=tuple(_history(desk, trial, entries)),
        undo=back.act.words if back is not None and not fixed else "",
        redo=gone.act.words if gone is not None else "",
    )


def _line(desk: Desk, trial: Trial) -> TrialLine:
    read = len(trial.readings)
    words = [
        counted(len(trial.arms), tr_later("{n} arm"), tr_later("{n} arms")),
        counted(len(trial.units), tr_later("{n} piece"), tr_later("{n} pieces")),
    ]
    if read:
        words.append(tr("{read} of {count} read", read=read, count=len(trial.units)))
    if trial.ended:
        words.append(tr("over"))
    return TrialLine(
        trial.code, trial.question, trial.way, trial.day, len(trial.arms), len(trial.blocks),
        len(trial.units), read, trial.veiled, trial.unveiling is not None, trial.ended,
        " · ".join(words), next_words(desk, trial),
    )  # fmt: skip


def next_words(desk: Desk, trial: Trial) -> str:
    """Say what is to be done next, and when."""
    groups = sorted(open_groups(trial, dry_days(desk, trial)), key=lambda one: (one[2], one[1]))
    if trial.voided:
        said = tr("taken back")
    elif groups and not trial.readings:
        said = _arm_words(desk, trial, *groups[0][:3])
    elif trial.unveiling is not None:
        said = tr("look at the report")
    elif not trial.unread:
        said = tr("unveil it")
    elif trial.readings:
        said = tr("read tag {tag}", tag=trial.unread[0].tag)
    else:
        said = tr("read the pieces blind, once they are dry")
    return said


def _arm_words(desk: Desk, trial: Trial, what: str, arm: int, day: date) -> str:
    when = _day_words(desk, day)
    if arm == 0:
        return tr("dye all arms in one bath: {when}", when=when)
    named = trial.arm(arm).words
    if what == "soy":
        return tr("soak beans for arm {arm}: {when}", arm=named, when=when)
    return tr("dye arm {arm}: {when}", arm=named, when=when)


def _day_words(desk: Desk, day: date) -> str:
    away = (day - local_day(desk, desk.now)).days
    said = date_words(day, short=True)
    if away == 0:
        return tr("today")
    if away < 0:
        late = counted(-away, tr_later("{n} day late"), tr_later("{n} days late"))
        return tr("{day}, {late}", day=said, late=late)
    ahead = counted(away, tr_later("in {n} day"), tr_later("in {n} days"))
    return tr("{day}, {ahead}", day=said, ahead=ahead)


def _facts(trial: Trial) -> list[str]:
    day = date_words(trial.day, short=True, year=True)
    found = [
        tr(WAY_WORDS[trial.way]),
        tr("all dyed on {day}", day=day)
        if trial.way == "backwards"
        else tr("cloth dry on {day}", day=day),
        tr("read by {measure}", measure=tr(MEASURES[trial.measure].words)),
        tr("{count} replicates in each of: {blocks}", count=trial.replicates,
           blocks=_named_blocks(trial)),
    ]  # fmt: skip
    if trial.control is not None:
        found.append(tr("control: {arm}", arm=trial.arm(trial.control).words))
    if not trial.veiled:  # a seed tells all to whoever can draw again
        found.append(tr("orders and tags drawn from seed {seed}", seed=trial.seed))
    if trial.veiled:
        found.append(tr("veiled while it is read: only tags are shown"))
    elif trial.unveiling is not None:
        found.append(
            tr("the blind was broken with {left} tags unread", left=trial.unveiling.unread)
            if trial.unveiling.broken
            else tr("unveiled after all was read")
        )
    return found


def _named_blocks(trial: Trial) -> str:
    return ", ".join(trial.block_words(number) for number in range(1, len(trial.blocks) + 1))


def _arm_line(desk: Desk, trial: Trial, arm: Arm, dry: Mapping[Cell, date]) -> ArmLine:
    cells = [cell for cell in trial.cells if cell[0] == arm.number]
    days = {
        local_day(desk, trial.dyed[cell])
        if cell in trial.dyed
        else dye_day(trial, cell, dry.get(cell))
        for cell in cells
    }
    soyed = all(cell in trial.soyed or cell in trial.lots for cell in cells)
    dyed = all(cell in trial.dyed for cell in cells)
    state = tr("dyed") if dyed else tr("soyed") if soyed else tr("ahead")
    if not dyed and any(cell in trial.dyed for cell in cells):
        state = tr("dyed in part")
    hidden = trial.veiled
    return ArmLine(
        arm.number, arm.words, arm.age_d,
        soy_day(trial, arm.number) if arm.age_d is not None else None,
        tuple(sorted(days)), soyed, dyed, state,
        tuple(dict.fromkeys(trial.lots[cell] for cell in cells if cell in trial.lots)),
        () if hidden else tuple(one.tag for one in in_dip_order(trial) if one.arm == arm.number),
        arm.number == trial.control,
    )  # fmt: skip


def _unit_lines(desk: Desk, trial: Trial, dry: dict[Cell, date]) -> list[UnitLine]:
    results = {unit.number: result for unit, result in results_of(desk, trial)}
    return [
        _unit_line(desk, trial, unit, dry, results.get(unit.number))
        for unit in sorted(trial.units, key=lambda one: one.read)
    ]


def _unit_line(
    desk: Desk, trial: Trial, unit: Unit, dry: dict[Cell, date], result: Any
) -> UnitLine:
    own = trial.readings.get(unit.number)
    lost = own is not None and own.value is None and own.lab is None
    value = None if result is None else result.value
    words = tr("lost") if lost else "" if value is None else plain(value, 2)
    if own is not None and own.note:
        words = f"{words} · {own.note}"
    if trial.veiled:
        value = value if own is not None else None
        return UnitLine(unit.tag, unit.read, None, "", "", "", "", None, value,
                        words if own is not None else "", lost)  # fmt: skip
    return UnitLine(
        unit.tag, unit.read, unit.dip, trial.arm(unit.arm).words, trial.block_words(unit.block),
        trial.lots.get(unit.cell, ""), trial.swatches.get(unit.number, ""),
        age_of(desk, trial, unit, dry), value, words, lost,
    )  # fmt: skip


def _history(desk: Desk, trial: Trial, entries: Sequence[Entry]) -> list[tuple[int, str, str]]:
    stand = [one for one in standing(entries) if one.act not in META]
    return [
        (one.number, moment(one.at, desk.now, desk.zone), _entry_words(trial, one))
        for one in reversed(stand)
    ]


def _entry_words(trial: Trial, entry: Entry) -> str:
    make = _TOLD.get(entry.act)
    said = make(trial, entry) if make is not None else entry.act.words
    return f"{said} · {entry.note}" if entry.note else said


def _told_arm(trial: Trial, entry: Entry) -> str:
    arms = ", ".join(dict.fromkeys(trial.arm(int(arm)).words for arm, _ in entry.data["cells"]))
    said = tr("soyed: {arms}") if entry.data["what"] == "soy" else tr("dyed: {arms}")
    return said.format(arms=arms)


def _told_units(trial: Trial, entry: Entry) -> str:
    if trial.veiled:
        return entry.act.words  # lot and swatch would tell what a tag is
    named = [*(str(lot) for *_, lot in entry.data.get("lots", ())),
             *(f"{trial.units[int(unit) - 1].tag} {code}"
               for unit, code in entry.data.get("swatches", ()))]  # fmt: skip
    return tr("belong to it: {named}", named=", ".join(dict.fromkeys(named)))


def _told_read(trial: Trial, entry: Entry) -> str:
    tag = trial.units[int(entry.data["unit"]) - 1].tag
    found = entry.readings
    said = [plain(float(found["value"]), 2)] if "value" in found else []
    if "L" in found:
        said.append(lab_words(Lab(*(float(found[one]) for one in "Lab"))))
    if "two_u" in found:
        said.append(tr("2u {figure}", figure=plain(float(found["two_u"]), 1)))
    figures = ", ".join(said)
    return tr("tag {tag}: {figures}", tag=tag, figures=figures or tr("lost"))


_TOLD: Final[Mapping[Act, Callable[[Trial, Entry], str]]] = {
    Act.TRIAL_ARM: _told_arm,
    Act.TRIAL_UNITS: _told_units,
    Act.TRIAL_READ: _told_read,
}


def trial_tags(_house: Any, desk: Desk, question: TrialTagsFor) -> tuple[TagFacts, ...]:
    """Give coded tags, in the order of reading, so that their order says nothing."""
    trial = trial_of(desk, question.code)
    if trial.voided:
        raise Refusal(tr("{code} was taken back. Nothing was printed.", code=trial.code))
    rows = (TagRow(tr("Read")),)  # the day of dyeing would tell the age
    return tuple(
        TagFacts(
            f"{trial.code}-{unit.tag}", trial.question, "", tr("Tag {tag}", tag=unit.tag),
            date_words(local_day(desk, trial.made_at), short=True, year=True), rows, "",
            desk.settings.studio,
        )
        for unit in sorted(trial.units, key=lambda one: one.read)
    )  # fmt: skip


ANSWERS: Final[Mapping[type, Callable[[Any, Desk, Any], Any]]] = {
    TrialsFor: trial_lines,
    TrialFor: trial_page,
    TrialNeedsFor: trial_needs,
    TrialTagsFor: trial_tags,
    TrialReportFor: trial_report,
}
