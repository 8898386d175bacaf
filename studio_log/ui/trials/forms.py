"""What can be written down of a trial, as data: the fields of each form, and its command."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from typing import Any, Final

from studio_log.language.words import tr, tr_later
from studio_log.services.commands import Command
from studio_log.services.trials import (
    DoArm,
    GiveLot,
    GiveSwatch,
    NoteTrial,
    SetTrial,
    TrialPage,
    UnveilTrial,
)
from studio_log.ui.kept.form_box import Choices, FormField, Values
from studio_log.ui.kept.readers import lot
from studio_log.ui.trials import readers


@dataclass(frozen=True)
class TrialForm:
    """A form; `fields` are those for a trial as it stands, `today` the day on the wall."""

    slug: str
    title: str
    says: str
    fields: Callable[[TrialPage, date], tuple[FormField, ...]]
    command: Callable[[str, Values], Command]
    moment: bool = False


def _arm(page: TrialPage) -> FormField:
    all_of = ((0, tr("all arms")),)
    arms = tuple((one.number, one.words) for one in page.arms)
    return FormField("arm", tr_later("&Arm"), choices=all_of + arms)


def _batch(page: TrialPage) -> FormField:
    trial = page.trial
    all_of = ((0, tr("all batches")),)
    blocks = tuple(
        (number, trial.block_words(number)) for number in range(1, len(trial.blocks) + 1)
    )
    return FormField("batch", tr_later("&Batch"), choices=all_of + blocks)


LOT_FIELD: Final = FormField("lot", tr_later("&Lot"), "26-031", lot, needed=True, lots=True)
NOTE: Final = FormField("note", tr_later("&Note"), tr_later("a note, if any"))


def _done_fields(page: TrialPage, _today: date) -> tuple[FormField, ...]:
    what: Choices = (("dye", tr("dyed")), ("soy", tr("soyed")))
    first = what if page.trial.way == "forwards" or not page.line.next else what[::-1]
    return FormField("what", tr_later("&What"), choices=first), _arm(page), _batch(page), NOTE


def _cells(values: Values) -> dict[str, Any]:
    found = {"arms": values.get("arm"), "blocks": values.get("batch")}
    return {name: (number,) if number else () for name, number in found.items()}


def _done(code: str, values: Values) -> Command:
    return DoArm(code, values["what"], **_cells(values), note=values.get("note", ""),
                 at=values.get("at"))  # fmt: skip


def _lot_fields(page: TrialPage, _today: date) -> tuple[FormField, ...]:
    return LOT_FIELD, _arm(page), _batch(page)


def _lot(code: str, values: Values) -> Command:
    return GiveLot(code, values["lot"], **_cells(values))


def _swatch_fields(_page: TrialPage, _today: date) -> tuple[FormField, ...]:
    return (
        FormField("tag", tr_later("&Tag"), "417", needed=True),
        FormField("swatch", tr_later("&Swatch"), "W26-001", readers.swatch, needed=True),
    )


def _swatch(code: str, values: Values) -> Command:
    return GiveSwatch(code, values["tag"], values["swatch"])


def _remark_fields(_page: TrialPage, _today: date) -> tuple[FormField, ...]:
    return (FormField("note", tr_later("&Remark"), needed=True),)


def _remark(code: str, values: Values) -> Command:
    return NoteTrial(code, values["note"], at=values.get("at"))


def _change_fields(page: TrialPage, today: date) -> tuple[FormField, ...]:
    day = page.line.day.isoformat()
    return (
        FormField("question", tr_later("&Question"), filled=page.line.question, needed=True),
        FormField("day", tr_later("Da&y"), read=readers.day_reader(today), filled=day, needed=True),
    )


def _change(code: str, values: Values) -> Command:
    return SetTrial(code, question=values["question"], day=values["day"])


def _break_fields(_page: TrialPage, _today: date) -> tuple[FormField, ...]:
    return (FormField("note", tr_later("Wh&y"), tr_later("what happened"), needed=True),)


def _break(code: str, values: Values) -> Command:
    return UnveilTrial(code, broken=True, note=values["note"])


DONE: Final = TrialForm(
    "done", tr_later("An arm is done"), tr_later("It answers the reminder of the arm."),
    _done_fields, _done, moment=True,
)  # fmt: skip
LOT: Final = TrialForm(
    "lot", tr_later("The lot of pieces"),
    tr_later("Ages then count from when this lot was fully dry."), _lot_fields, _lot,
)  # fmt: skip
SWATCH: Final = TrialForm(
    "swatch", tr_later("The swatch of a piece"),
    tr_later("Its colour counts where the tag has no reading of its own."),
    _swatch_fields, _swatch,
)  # fmt: skip
REMARK: Final = TrialForm("remark", tr_later("A remark"), "", _remark_fields, _remark, moment=True)
CHANGE: Final = TrialForm(
    "change", tr_later("Change the trial"),
    tr_later("The day is when the cloth is dry; backwards, when all is dyed."),
    _change_fields, _change,
)  # fmt: skip
BREAK: Final = TrialForm(
    "break", tr_later("Unveil before all is read"),
    tr_later("What is read later is not read blind any more. Journal and report keep that, and it "
             "is not taken back."),
    _break_fields, _break,
)  # fmt: skip
FORMS: Final = {one.slug: one for one in (DONE, LOT, SWATCH, REMARK, CHANGE, BREAK)}
