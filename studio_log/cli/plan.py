"""The command that plans around hours, vessels and dates: the log's own lots, or a problem file."""

from typing import Final

from studio_log.cli.form import JSON, Form, Option, Word
from studio_log.cli.turn import Turn


def _plan(turn: Turn) -> int:
    from studio_log.cli.planning_run import plan_file  # noqa: PLC0415 - brings the planner

    return plan_file(turn)


CHANGE: Final = Option(
    "--change", "plan with a change, as ways_out has them; may be repeated", "JSON", repeats=True
)
FORMS: Final = (
    Form(
        ("plan",),
        "Plan the lots ahead, or those of a problem file, around hours, vessels and dates.",
        _plan,
        words=(
            Word(
                "FILE",
                "a problem: JSON of the form studio-plan/1 or rcpsp-max/1; left out, the log's own",
                optional=True,
            ),
        ),
        options=(
            Option("--seconds", "how long to look for a better plan; 20 unless said", "N"),
            Option("--accept", "let the log's lots follow the plan; lots that are wanted are made"),
            Option("--sketch", "give the first plan, without looking for a better one"),
            CHANGE,
            Option(
                "--engine", "who plans: own, optimizer, or auto, which is what is there", "NAME"
            ),
            JSON,
        ),
    ),
)
