"""The ways to draw swatches, and each as it stands in a file."""

from collections.abc import Callable, Mapping, Sequence
from functools import partial
from typing import Final

from studio_log.language.words import tr, tr_later
from studio_log.present.swatch_ages import lay_out_ages
from studio_log.present.swatch_plot import Coloured, Plot, lay_out_plot

PLANE, BY_LOT, BY_AGE = "plane", "lots", "ages"
LAYOUTS: Final[Mapping[str, Callable[[Sequence[Coloured], tuple[float, float], float], Plot]]] = {
    PLANE: lay_out_plot,
    BY_LOT: partial(lay_out_plot, by_lot=True),
    BY_AGE: lay_out_ages,
}
_BY_COLOUR: Final = tr_later("Swatches by a* and b*")
_TITLES: Final = {
    PLANE: _BY_COLOUR,
    BY_LOT: _BY_COLOUR,
    BY_AGE: tr_later("Swatches by the age of their cure"),
}
_SIZE: Final = (1000.0, 1000.0)
_LINE: Final = 18.0


def file_plot(swatches: Sequence[Coloured], look: str) -> Plot:
    """Lay swatches out as they are written to a file."""
    return LAYOUTS[look](swatches, _SIZE, _LINE)


def file_title(look: str) -> str:
    """Give what such a file is called inside."""
    return tr(_TITLES[look])
