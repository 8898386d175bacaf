"""What a trial can resolve: the least effect that it would show, four times of five.

By two quantiles of t, which is near the exact power by the non-central t, checked by a printed
table; with two or three batches the true part is nearer three of four.
"""

from typing import Final

from studio_log.science.statistics_tails import t_quantile

POWER: Final = 0.8
"""How often an effect of that size would be called clear."""


def least_effect(
    standard_error: float, df: float, power: float = POWER, limit: float | None = None
) -> float:
    """Give the least effect called clear at 95 % in a part `power` of such trials.

    `standard_error` is that of the effect; `df` above 0 those of its estimate. `limit` is how many
    of them an interval is wide, where it holds for several effects together; else that of t.
    """
    wide = t_quantile(df) if limit is None else limit
    return (wide + t_quantile(df, 2 * power - 1)) * standard_error
