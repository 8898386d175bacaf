"""The command that fits a trial's table: depth against cure age."""

import math
import re
from collections.abc import Sequence
from typing import Any, Final

from studio_log.cli import values
from studio_log.cli.form import JSON, Form, Option, Word
from studio_log.cli.plain import plain
from studio_log.cli.turn import Turn
from studio_log.domain.errors import Refusal
from studio_log.domain.number_text import quoted
from studio_log.domain.trial_file import LARGEST, MOST_AGE_D, read_trial
from studio_log.domain.trial_fit import Expected, TrialFit, fit_trial
from studio_log.domain.trial_words import photo_words, trial_words
from studio_log.science.statistics_line import Interval
from studio_log.services.method_file import small_file

_DAYS: Final = re.compile(r"([0-9]{1,5}(?:[.,][0-9]{1,6})?) ?(?:d|days?)?")

_FIGURE: Final = re.compile(r"[0-9]{1,5}(?:[.,][0-9]{1,6})?")


def _fit(turn: Turn) -> int:
    given = turn.values
    path = values.file_path(given["file"], "The name of the trial's file")
    at = [_age(one) for one in given["at"]]
    two_u = None if given["two_u"] is None else _two_u(given["two_u"])
    table = read_trial(
        small_file(path, LARGEST),
        name=path.name,
        age=given["age"],
        depth=given["depth"],
        batch=given["batch"],
    )
    fit = fit_trial(table.readings, at)
    words = trial_words(fit, table.left_out)
    if two_u is not None:
        words.insert(1, photo_words(fit, two_u))
    if given["json"]:
        change = {"change": fit.change, "two_u": two_u}
        turn.say_json({**fit_fields(fit, table.left_out), **change, "words": words})
        return 0
    shown = [one for one in fit.expected if one.age_d in at] if at else []
    turn.say("\n".join([*words, *map(_said, shown)]))
    return 0


def _age(typed: str) -> float:
    found = _DAYS.fullmatch(typed.strip())
    age = float(found[1].replace(",", ".")) if found else 0.0
    if not 0 < age <= MOST_AGE_D:
        raise Refusal(
            f"{quoted(values.shown(typed[:60]))} is no age in days above 0, such as 90. "
            f"{values.NOTHING}"
        )
    return age


def _two_u(typed: str) -> float:
    if not _FIGURE.fullmatch(typed.strip()):
        raise Refusal(
            f"{quoted(values.shown(typed[:60]))} is no 2u: a figure from 0 in the unit of the "
            f"depths, such as 2.5. {values.NOTHING}"
        )
    return float(typed.strip().replace(",", "."))


def _said(one: Expected) -> str:
    far = " Extrapolated: no swatch is of such an age." if one.extrapolated else ""
    return (
        f"At {one.age_d:g} d: mean {one.mean.value:.4g} ({one.mean.low:.4g} to "
        f"{one.mean.high:.4g}); a new swatch {one.swatch.low:.4g} to {one.swatch.high:.4g}.{far}"
    )


def fit_fields(fit: TrialFit, left_out: Sequence[int]) -> dict[str, Any]:
    """Give a fit as a JSON object."""
    line, lack = fit.line, fit.lack
    return {
        "n": line.count,
        "ages": fit.ages,
        "batches": fit.batches,
        "left_out": left_out,
        "effect": "clear" if fit.clear else "no clear effect",
        "slope": fit.slope.value,
        "slope_low": fit.slope.low,
        "slope_high": fit.slope.high,
        "slope_by": fit.slope_by,
        "batch_slopes": fit.batch_slopes,
        "confounded": fit.confounded,
        "line": {
            "intercept": line.intercept,
            "slope": line.slope,
            "se_intercept": line.se_intercept,
            "se_slope": line.se_slope,
            "slope_low": line.slope_interval().low,
            "slope_high": line.slope_interval().high,
            "p": line.p_slope,
            "r2": line.r2,
            "residual_sd": line.residual_sd,
            "df": line.df,
        },
        "lack_of_fit": None if lack is None else {
            "f": lack.f if math.isfinite(lack.f) else None,
            "df1": lack.df1, "df2": lack.df2, "p": lack.p, "fits": not fit.bent,
        },
        "saturating": None if fit.saturating is None else {
            **plain(fit.saturating), "reached_90_d": fit.saturating.reached(),
        },
        "monotone": plain(fit.rising),
        "robust": {
            **_ends("slope", fit.robust.slope), "intercept": fit.robust.intercept,
            "tau_b": fit.robust.tau_b, "agrees": fit.robust_agrees, "outlying_lines": fit.wild,
        },
        "control": {"n": len(fit.control), "depths": fit.control} if fit.control else None,
        "at": [
            {"age": one.age_d, **_ends("mean", one.mean), "new_low": one.swatch.low,
             "new_high": one.swatch.high, "extrapolated": one.extrapolated}
            for one in fit.expected
        ],
    }  # fmt: skip


def _ends(name: str, interval: Interval) -> dict[str, float]:
    return {name: interval.value, f"{name}_low": interval.low, f"{name}_high": interval.high}


FORMS: Final = (
    Form(
        ("trial", "fit"),
        "Fit depth against the logarithm of cure age, with its checks.",
        _fit,
        words=(Word("FILE", "a trial's table as CSV, one swatch a line"),),
        options=(
            Option("--age", "the column of ages in days: its name or number", "COLUMN",
                   required=True),
            Option("--depth", "the column of depths: C*, K/S or L*", "COLUMN", required=True),
            Option("--batch", "the column that names the batch of milk or cloth", "COLUMN"),
            Option("--two-u", "2u of one swatch's depth, to hold the change against", "FIGURE"),
            Option("--at", "an age in days to say the depth of: 90", "DAYS", repeats=True),
            JSON,
        ),
    ),
)  # fmt: skip
