"""A line for readings that says beneath it what was understood, and asks where one looks wrong."""

from collections.abc import Mapping
from typing import Final

from studio_log.language.words import tr, tr_later
from studio_log.ui.lots.readings_text import LONGEST, Readings, read_readings
from studio_log.ui.widgets.understood import Understood, UnderstoodLine

HINT: Final = tr_later("71 F, pH 6.8, 160 g")
BLANK: Final = tr_later("temperature, pH, weight, or name: value")


class ReadingsLine(UnderstoodLine[Readings]):
    """Reads while it is typed; a doubt is asked beside the field and holds nothing up."""

    def __init__(self) -> None:
        super().__init__(
            _understood, name=tr("Readings"), hint=tr(HINT), blank=tr(BLANK), slug="readings"
        )
        self.line.setMaxLength(LONGEST)

    @property
    def values(self) -> dict[str, float | str]:
        """What is to be kept, by name."""
        return self.value.values if self.value is not None else {}

    def show_values(self, values: Mapping[str, float | str]) -> None:
        """Fill the line with readings that were kept before."""
        self.line.setText("; ".join(_typed(name, value) for name, value in values.items()))


def _understood(text: str) -> Understood[Readings]:
    readings = read_readings(text)
    if readings.fault:
        return Understood(fault=readings.fault)
    said = tr("Understood: {understood}", understood=readings.understood) if readings.found else ""
    return Understood(readings, said, "", readings.doubt)


def _typed(name: str, value: float | str) -> str:
    return f"{name}: {value:g}" if isinstance(value, float) else f"{name}: {value}"
