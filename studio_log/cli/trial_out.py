"""Commands that take a trial out: its report, in words or as a file, and its coded tags."""

from typing import Any, Final

from studio_log.cli import values
from studio_log.cli.form import JSON, Form, Option, Word
from studio_log.cli.plain import picked, plain
from studio_log.cli.safety import FILE_NAME, STOCK
from studio_log.cli.trial import fit_fields
from studio_log.cli.turn import Turn
from studio_log.domain.trial_arms import ArmsHeld
from studio_log.domain.trial_text import whole_trial_code
from studio_log.services.trial_report import block_json
from studio_log.services.trials import ArmMean, TrialReport, TrialReportFor, TrialTagsFor

CODE: Final = Word("CODE", "the trial's code, such as T26-001")
NAME: Final = Word("NAME", "the trial's code, or words that only its question holds")


def _report(turn: Turn) -> int:
    given = turn.values
    report: TrialReport = turn.studio.ask(TrialReportFor(given["name"]))
    if given["to"] is not None:
        path = values.file_path(given["to"], FILE_NAME)
        turn.say(turn.house.write_trial(path, report))
        return 0
    if given["json"]:
        turn.say_json(_report_json(report))
        return 0
    means = list(map(_mean_words, report.means))
    turn.say("\n".join([f"{report.code}  {report.question}", *report.words, "", *means]))
    return 0


def _mean_words(one: ArmMean) -> str:
    said = f"{one.words}: mean {one.mean:.4g} of {one.count}"
    if one.sd is not None:
        said += f", standard deviation {one.sd:.3g}"
    if one.control:
        return f"{said}; the control"
    apart = one.difference
    if apart is None:
        return said
    clear = "clear" if one.clear else "no clear difference"
    return (
        f"{said}; {apart.value:+.3g} to the control ({apart.low:.3g} to {apart.high:.3g}, {clear})"
    )


def _report_json(report: TrialReport) -> dict[str, Any]:
    return {
        "code": report.code,
        "question": report.question,
        "measure": report.measure,
        "words": report.words,
        "pieces": [
            {**picked(one, "tag", "arm", "block", "age_d", "value", "two_u", "blind", "source"),
             "lab": None if one.lab is None else [one.lab.lightness, one.lab.a, one.lab.b]}
            for one in report.results
        ],
        "means": plain(report.means),
        "fit": None if report.fit is None else fit_fields(report.fit, ()),
        "against_control": _held_json(report.held),
        "blocks": block_json(report.blocks),
        "two_u": report.two_u,
        "blind": report.blind,
        "missing": report.missing,
    }  # fmt: skip


def _held_json(found: ArmsHeld | None) -> dict[str, Any] | None:
    if found is None:
        return None
    held = found.held
    return {
        "arm": held.control, "mean": held.control_mean, "by": found.by, "batches": found.blocks,
        "left_out": found.left_out, "df": held.df, "sd": held.sd, "limit": held.limit,
        "together": len(held.arms),
    }  # fmt: skip


def _tags(turn: Turn) -> int:
    given = turn.values
    path = values.file_path(given["to"], FILE_NAME)
    facts = turn.studio.ask(TrialTagsFor(whole_trial_code(given["code"])))
    turn.say(turn.house.write_tags(path, facts, given["stock"] or STOCK))
    return 0


FORMS: Final = (
    Form(
        ("trial", "report"), "Report a trial: what it says, and how surely.", _report, (NAME,),
        (Option("--to", "write it to a file: .pdf, .svg, .png or .csv", "FILE"), JSON),
    ),
    Form(
        ("trial", "tags"), "Write the coded tags of a trial to a PDF.", _tags, (CODE,),
        (
            Option("--to", "the PDF to write", "FILE", required=True),
            Option("--stock", f"what they are printed on; else {STOCK}", "NAME"),
        ),
    ),
)  # fmt: skip
