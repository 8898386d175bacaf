"""The report of a trial: its pieces, what they say together, and the drawing."""

import math
from collections import defaultdict
from collections.abc import Sequence
from contextlib import suppress
from statistics import fmean, median, stdev
from typing import Any

from studio_log.domain.errors import Refusal
from studio_log.domain.number_text import plain
from studio_log.domain.swatches import swatch_from
from studio_log.domain.trial_arm_words import arms_answer, arms_words
from studio_log.domain.trial_arms import ArmsHeld, hold_arms
from studio_log.domain.trial_file import Reading
from studio_log.domain.trial_fit import TrialFit, fit_trial
from studio_log.domain.trial_values import two_u_of, value_of
from studio_log.domain.trial_words import block_words, photo_words, trial_words
from studio_log.domain.trials import MEASURES, Trial, Unit
from studio_log.language.words import counted, tr, tr_later
from studio_log.present.trial_plot import HeldPieces, Piece, TrialPlot, draw_trial
from studio_log.science.colour.shown import shown_as
from studio_log.science.statistics_blocks import BlockTest, block_test
from studio_log.services.desk import Desk
from studio_log.services.trial_keeping import age_of, code_named, dry_days, trial_of
from studio_log.services.trials import ArmMean, Result, TrialReport, TrialReportFor

READING = "reading"


def results_of(desk: Desk, trial: Trial) -> list[tuple[Unit, Result]]:
    """Give the pieces that were read, in the order of their numbers.

    A piece without a reading of its own has that of its swatch, if its colour says the measure.
    """
    dry = dry_days(desk, trial)
    found = []
    for unit in trial.units:
        read = _reading(desk, trial, unit)
        if read is None:
            continue
        value, lab, two_u, blind, source = read
        result = Result(
            unit.tag, trial.arm(unit.arm).words, trial.block_words(unit.block),
            age_of(desk, trial, unit, dry), value,
            None if two_u is None or lab is None else two_u_of(trial.measure, lab, two_u),
            lab, blind, source,
        )  # fmt: skip
        found.append((unit, result))
    return found


def _reading(desk: Desk, trial: Trial, unit: Unit) -> Any:
    own = trial.readings.get(unit.number)
    if own is not None:
        value = own.value
        if value is None and own.lab is not None:
            value = value_of(trial.measure, own.lab)
        return None if value is None else (value, own.lab, own.two_u, own.blind, READING)
    code = trial.swatches.get(unit.number)
    if code is None:
        return None
    with suppress(Refusal):
        colour = swatch_from(desk.entries(code)).reading
        if colour is not None and colour.source != "relative":
            value = value_of(trial.measure, colour.lab)
            if value is not None:
                return value, colour.lab, colour.two_u, False, code
    return None


def trial_report(_house: Any, desk: Desk, question: TrialReportFor) -> TrialReport:
    """Give the report; Refusal while the trial is veiled."""
    trial = trial_of(desk, code_named(desk, question.name))
    if trial.voided:
        raise Refusal(tr("{code} was taken back. Nothing was changed.", code=trial.code))
    if trial.veiled:
        raise Refusal(_veiled_words(trial))
    return report_of(desk, trial)


def _veiled_words(trial: Trial) -> str:
    if not trial.unread:
        return tr("{code} was read blind, and all its tags are read. The report would tell what "
                  "they are; unveil the trial first.", code=trial.code)  # fmt: skip
    return tr("{code} is being read blind: {left} of {count} tags are not read yet. The report "
              "would tell what they are; unveil the trial first.",
              code=trial.code, left=len(trial.unread), count=len(trial.units))  # fmt: skip


def report_of(desk: Desk, trial: Trial) -> TrialReport:
    """Work the report of a trial out, whatever it is shown to."""
    pairs = results_of(desk, trial)
    results = [result for _, result in pairs]
    aged, why = _fit([(unit, result) for unit, result in pairs])
    table = _table(trial, pairs)
    blocks = block_test(table) if table else None
    known = [one.two_u for one in results if one.two_u is not None]
    two_u = median(known) if known else None
    read = {unit.number for unit, _ in pairs}
    missing = tuple(unit.tag for unit in trial.units if unit.number not in read)
    tags = {unit.number: unit.tag for unit in trial.units}
    held, why_not = _held(trial, pairs)
    said = trial_words(aged, tags=tags) if aged is not None else []
    if aged is not None and two_u is not None:
        said.insert(1, photo_words(aged, two_u))
    if held is not None:
        each = aged is None or any(trial.arm(one.arm).age_d is None for one in held.held.arms)
        said += [arms_answer(trial, held), *arms_words(trial, held, two_u, each=each)]
    if aged is None and (held is None or any(arm.age_d is not None for arm in trial.arms)):
        said.append(why)
    if why_not:
        said.append(why_not)
    if blocks is not None:
        said += block_words(blocks, pairs=held is None)
    said += _blind_words(trial, results, missing) if results else []
    return TrialReport(
        trial.code, trial.question, trial.measure, tuple(said), tuple(results),
        tuple(_means(trial, pairs, held)), aged, held, blocks, two_u,
        sum(one.blind for one in results), missing, _drawn(trial, pairs, aged, held),
    )  # fmt: skip


def _fit(pairs: Sequence[tuple[Unit, Result]]) -> tuple[TrialFit | None, str]:
    """Give the fit, or why there is none."""
    readings = [
        Reading(result.age_d, result.value, result.block, unit.number)
        for unit, result in pairs
        if result.age_d is not None
    ]
    if not pairs:
        return None, tr("Nothing was read yet: there is nothing to report.")
    try:
        return fit_trial(readings), ""
    except Refusal as refusal:
        return None, str(refusal)


def _table(trial: Trial, pairs: Sequence[tuple[Unit, Result]]) -> list[list[float]]:
    """Give the mean of each arm in each batch; [] where one has none."""
    cells: dict[tuple[int, int], list[float]] = defaultdict(list)
    for unit, result in pairs:
        cells[unit.cell].append(result.value)
    if set(cells) != set(trial.cells):
        return []
    return [
        [fmean(cells[arm.number, block]) for block in range(1, len(trial.blocks) + 1)]
        for arm in trial.arms
    ]


def _held(trial: Trial, pairs: Sequence[tuple[Unit, Result]]) -> tuple[ArmsHeld | None, str]:
    """Give the arms against the control, or why they are not; "" where there is no control."""
    if trial.control is None or not pairs:
        return None, ""
    readings = [(unit.cell, result.value) for unit, result in pairs]
    try:
        return hold_arms(readings, trial.arm(trial.control)), ""
    except Refusal as refusal:
        return None, str(refusal)


def _means(
    trial: Trial, pairs: Sequence[tuple[Unit, Result]], held: ArmsHeld | None
) -> list[ArmMean]:
    against = {one.arm: one for one in held.held.arms} if held is not None else {}
    sure = held is not None and held.scattered
    found = []
    for arm in trial.arms:
        own = [result.value for unit, result in pairs if unit.arm == arm.number]
        if not own:
            continue
        spread = stdev(own) if len(own) > 1 else None
        one = against.get(arm.number) if sure else None
        found.append(
            ArmMean(arm.words, len(own), fmean(own), spread, arm.number == trial.control,
                    *((one.difference, one.p, one.clear) if one else ()))
        )  # fmt: skip
    return found


def _blind_words(trial: Trial, results: Sequence[Result], missing: Sequence[str]) -> list[str]:
    found = []
    blind = sum(one.blind for one in results)
    if results:
        found.append(tr("Read blind: {blind} of {count}.", blind=blind, count=len(results)))
    if trial.unveiling is not None and trial.unveiling.broken:
        why = f": {trial.unveiling.note}" if trial.unveiling.note else ""
        found.append(tr("The blind was broken with {left} tags unread{why}.",
                        left=trial.unveiling.unread, why=why))  # fmt: skip
    if missing:
        many = counted(len(missing), tr_later("{n} piece has no reading"),
                       tr_later("{n} pieces have no reading"))  # fmt: skip
        found.append(tr("{many}: {tags}.", many=many, tags=", ".join(missing[:12])))
    if len({arm.age_d for arm in trial.arms}) == 1:
        return found  # one day, one bath: nothing but the arms differs by design
    if trial.way == "backwards":
        found.append(tr("Each age has soy milk of its own: what two milks differ by is in the "
                        "scatter."))  # fmt: skip
    else:
        found.append(tr("Each age met a bath of its own: what two baths differ by looks like a "
                        "difference of the ages."))  # fmt: skip
    return found


def _drawn(
    trial: Trial,
    pairs: Sequence[tuple[Unit, Result]],
    fit: TrialFit | None,
    held: ArmsHeld | None,
) -> TrialPlot:
    kind = MEASURES[trial.measure]
    pieces = [
        Piece(
            result.arm, unit.block - 1, result.age_d, result.value,
            tr("tag {tag}, {arm}, {block}: {value}", tag=result.tag, arm=result.arm,
               block=result.block, value=plain(result.value, 2)),
            shown_as(result.lab)[0] if result.lab is not None else "",
        )
        for unit, result in pairs
    ]  # fmt: skip
    return draw_trial(
        pieces, fit, title=f"{trial.code}  {trial.question}", y_words=tr(kind.words),
        batches=[trial.block_words(at) for at in range(1, len(trial.blocks) + 1)],
        held=_to_draw(trial, held) if held is not None and held.scattered else None,
    )  # fmt: skip


def _to_draw(trial: Trial, held: ArmsHeld) -> HeldPieces:
    """Give the bars of arms against the control, by their words as pieces name them."""
    return HeldPieces(
        held.held.control_mean,
        tuple((trial.arm(one.arm).words, trial.arm(one.arm).age_d, one.difference)
              for one in held.held.arms),
    )  # fmt: skip


def spread_kept(desk: Desk, measure: str, trials: Sequence[Trial]) -> tuple[float, int] | None:
    """Give how far alike pieces lay apart in trials so far, and how many trials said so.

    It is the pooled deviation from their lines, where arms have names that of the pieces of one
    arm and batch; None where none was read in that measure.
    """
    squares, freedom, count = 0.0, 0, 0
    for trial in trials:
        if trial.measure != measure or trial.veiled or not trial.readings:
            continue
        pairs = results_of(desk, trial)
        fit, _ = _fit(pairs)
        own = (
            (fit.line.residual_sd**2 * fit.line.df, fit.line.df)
            if fit is not None
            else _within_cells(pairs)
        )
        if own[1] > 0:
            squares, freedom, count = squares + own[0], freedom + own[1], count + 1
    return ((squares / freedom) ** 0.5, count) if freedom else None


def _within_cells(pairs: Sequence[tuple[Unit, Result]]) -> tuple[float, int]:
    """Give the sum of squares of pieces about the mean of their arm and batch, and its freedom."""
    cells: dict[tuple[int, int], list[float]] = defaultdict(list)
    for unit, result in pairs:
        cells[unit.cell].append(result.value)
    squares = sum((one - fmean(some)) ** 2 for some in cells.values() for one in some)
    return squares, len(pairs) - len(cells)


def block_json(test: BlockTest | None) -> dict[str, float | int | None] | None:
    """Give the test of the blocks as a JSON object; an infinite F is null."""
    if test is None:
        return None
    ratios = (("f_arms", test.f_arms), ("f_blocks", test.f_blocks))
    finite = {name: value if math.isfinite(value) else None for name, value in ratios}
    return {
        **finite, "p_arms": test.p_arms, "p_blocks": test.p_blocks, "df_arms": test.arms_df,
        "df_blocks": test.blocks_df, "df_rest": test.rest_df,
        "least_difference": test.least_difference,
    }  # fmt: skip
