"""The dyer's sums: baths, solutions, recharging, what cloth takes up, weighs and loses.

Every one is plain proportion as dye houses define it (shade and liquor ratio: a mill's
teaching slides; the rest: common practice). The printed examples they are checked against
stand with their sources in tests/science/test_printed_examples.py. Weights in grams, volumes
in litres, lengths in metres; ValueError where a figure has to be above nought and is not.
"""


def _above_nought(**figures: float) -> None:
    for name, figure in figures.items():
        if not 0 < figure < float("inf"):  # also false for nan
            raise ValueError(f"{name.replace('_', ' ')} has to be above nought, not {figure}")


def share_of(grams: float, percent: float) -> float:
    """Give `percent` per cent of a weight in grams: % WOF, or of a first charge."""
    return grams * percent / 100


def percent_of(part: float, whole: float) -> float:
    """Give a part as per cent of a whole, in one unit: depth of shade, % WOF, hydration."""
    _above_nought(the_whole=whole)
    return part / whole * 100


def bath_litres(cloth_grams: float, ratio: float) -> float:
    """Give the litres of a bath at a liquor ratio, litres to the kilogram of dry cloth."""
    return cloth_grams * ratio / 1000


def liquor_ratio(litres: float, cloth_grams: float) -> float:
    """Give the liquor ratio of a bath, litres to the kilogram of dry cloth."""
    _above_nought(the_cloth=cloth_grams)
    return litres * 1000 / cloth_grams


def dissolved_grams(litres: float, grams_per_litre: float) -> float:
    """Give the grams that a bath of a strength in g/L holds."""
    return litres * grams_per_litre


def stock_millilitres(grams: float, percent: float) -> float:
    """Give the mL of a stock solution that hold so many grams.

    Per cent are weight in volume, grams in 100 mL made up: 3.4 g are 34 mL of a 10 % one.
    """
    _above_nought(the_strength=percent)
    return grams * 100 / percent


def recharge_grams(first_grams: float, percent: float) -> float:
    """Give what a used bath is topped up with, in grams, as per cent of its first charge."""
    return share_of(first_grams, percent)


def pick_up_percent(dry_grams: float, wet_grams: float) -> float:
    """Give the liquid that cloth carries, in per cent of its dry weight."""
    _above_nought(the_dry_weight=dry_grams)
    return (wet_grams - dry_grams) / dry_grams * 100


def change_percent(before: float, after: float) -> float:
    """Give the change from before to after in per cent of before: gain above, loss below nought."""
    _above_nought(the_figure_before=before)
    return (after - before) / before * 100


def shrinkage_percent(before: float, after: float) -> float:
    """Give what a length lost, in per cent of the length before."""
    return -change_percent(before, after)


def running_grams(gsm: float, width_m: float) -> float:
    """Give the grams of one running metre of cloth of g/m² and a width in metres."""
    return gsm * width_m


def cloth_metres(grams: float, gsm: float, width_m: float) -> float:
    """Give the metres of cloth that weigh so many grams, from g/m² and width in metres."""
    _above_nought(g_m2=gsm, the_width=width_m)
    return grams / (gsm * width_m)


def after_loss(grams: float, loss_percent: float) -> float:
    """Give the weight after scouring from the one before; the loss in per cent of before."""
    if not 0 <= loss_percent < 100:
        raise ValueError(f"cloth cannot lose {loss_percent} % of its weight")
    return grams * (1 - loss_percent / 100)


def before_loss(grams: float, loss_percent: float) -> float:
    """Give the weight before scouring from the one after; the loss in per cent of before."""
    return grams / (after_loss(1.0, loss_percent))
