"""The commands that compare colours; what they need is imported when one of them runs."""

from dataclasses import asdict
from typing import Any, Final

from studio_log.cli.form import JSON, Form, Word
from studio_log.cli.turn import Turn
from studio_log.domain.swatch_text import read_lab

LABS: Final = (
    Word("STANDARD", "L*,a*,b* of the standard or of the cloth before: 52.1,31.8,24.0"),
    Word("SAMPLE", "L*,a*,b* of the sample or of the cloth after"),
)


def _difference(turn: Turn) -> int:
    from studio_log.science.colour.differences import difference  # noqa: PLC0415 - brings coloraide

    found = difference(*(read_lab(turn.values[word.name.lower()]) for word in LABS))
    if turn.values["json"]:
        turn.say_json(rounded(asdict(found)))
        return 0
    turn.say(
        f"CIEDE2000 {found.ciede2000:.2f}, CIE76 {found.cie76:.2f}, CMC 2:1 {found.cmc_2_1:.2f}.\n"
        f"The second is {_parts(found.lightness, found.chroma)}."
    )
    return 0


def _parts(lightness: float, chroma: float) -> str:
    light = "lighter" if lightness > 0 else "darker"
    strong = "stronger in colour" if chroma > 0 else "duller"
    return f"{abs(lightness):.1f} {light} in L* and {abs(chroma):.1f} {strong} in C*"


def _grade(turn: Turn) -> int:
    from studio_log.science.colour.grades import change, staining  # noqa: PLC0415 - as the others

    before, after = (read_lab(turn.values[word.name.lower()]) for word in LABS)
    changed, stained = change(before, after), staining(before, after)
    near = " It lies close to a limit: the neighbouring grade is as good." if changed.unsure else ""
    if turn.values["json"]:
        figures = {
            "change_figure": changed.figure,
            "change_de_f": changed.de_f,
            "staining_figure": stained.figure,
            "staining_de_gs": stained.de_gs,
        }
        told = {
            "grade_change": changed.grade,
            "grade_staining": stained.grade,
            "change_unsure": changed.unsure,
            **rounded(figures),
            "called": "estimated grade",
        }
        turn.say_json(told)
        return 0
    turn.say(
        f"Estimated grade of change {changed.grade} (ISO 105-A05, {changed.figure:.2f}).{near}\n"
        f"Estimated grade of staining {stained.grade} (ISO 105-A04, {stained.figure:.2f})."
    )
    return 0


def rounded(values: dict[str, Any]) -> dict[str, Any]:
    """Give figures without the dust of their last binary places."""
    return {name: round(one, 9) for name, one in values.items()}


FORMS: Final = (
    Form(
        ("colour", "difference"),
        "Tell how far two colours are apart.",
        _difference,
        words=LABS,
        options=(JSON,),
    ),
    Form(
        ("colour", "grade"),
        "Estimate grey-scale grades of change and of staining from two colours.",
        _grade,
        words=LABS,
        options=(JSON,),
    ),
)
