"""One cloth, garment, skein or swatch in a lot."""

from dataclasses import dataclass
from enum import StrEnum


class Weighed(StrEnum):
    """When a dry weight was taken: before or after scouring."""

    BEFORE = "before"
    AFTER = "after"


@dataclass(frozen=True)
class Piece:
    """One piece; lengths in metres, area density in g/m², weight in grams of dry cloth.

    `given_grams` is a weight off the scale, which always beats the one worked out from
    the area.
    """

    number: int
    fibre: str
    weave: str = ""
    length_m: float | None = None
    width_m: float | None = None
    gsm: float | None = None
    given_grams: float | None = None
    weighed: Weighed | None = None

    @property
    def area_m2(self) -> float | None:
        """Area of one side in m², where length and width are known."""
        if self.length_m is None or self.width_m is None:
            return None
        return self.length_m * self.width_m

    @property
    def grams(self) -> float | None:
        """Dry weight in grams: off the scale, else area times density, else unknown."""
        if self.given_grams is not None:
            return self.given_grams
        area = self.area_m2
        return None if area is None or self.gsm is None else area * self.gsm

    @property
    def title(self) -> str:
        """Fibre and weave in words, as typed."""
        return f"{self.fibre} {self.weave}".strip()
