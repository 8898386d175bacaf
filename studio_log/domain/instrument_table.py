"""Tables of colours: columns of wavelengths or of L*, a*, b*, or lines of wavelengths."""

import math
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.swatch_text import LIGHTNESS, MOST_COLOUR
from studio_log.language.words import tr
from studio_log.science.colour.lab import Lab, lab_of_xyz
from studio_log.science.colour.spectra import MOST_REFLECTANCE, WAVELENGTHS, lab_of_reflectance

MOST_SAMPLES: Final = 5_000
MOST_FIELDS: Final = 2_000
LONGEST_NAME: Final = 120
PERCENT_FROM: Final = 2.0
"""A table in which any reflectance is larger is one of percentages."""
_FIGURE: Final = re.compile(r"[-+−]?(?:\d{1,9}(?:[.,]\d{0,12})?|[.,]\d{1,12})(?:[eE][-+]?\d{1,3})?")
_NM: Final = re.compile(r"(?i)^\D{0,24}?(\d{3})(?:\.0*)?\s*(?:nm)?\s*[\[(]?\s*%?\s*[\])]?$")
_LAB: Final = {"l": 0, "a": 1, "b": 2}
_NAMES: Final = frozenset({"samplename", "sampleid", "name", "sample", "id", "label", "probe"})

Table = list[list[str]]


@dataclass(frozen=True)
class Sample:
    """One sample: its name, its colour and under which white, its spectrum or ()."""

    name: str
    lab: Lab
    white: str
    reflectance: tuple[float, ...] = ()


@dataclass(frozen=True)
class Instrument:
    """What a file holds; `notes` say what was taken for granted."""

    samples: tuple[Sample, ...]
    notes: tuple[str, ...]


def colours_of(rows: Table, keywords: Mapping[str, str], name: str) -> Instrument:
    """Give the colours of a table; `keywords` say under which light; Refusal for none."""
    if any(len(row) > MOST_FIELDS for row in rows):
        raise Refusal(tr("{name} has a line with too many values. Nothing was changed.", name=name))
    head, body = _headed(rows)
    samples, notes = _by_columns(head, body, keywords, name)
    if not samples:
        samples, notes = _by_rows(rows, name)
    if not samples:
        raise Refusal(
            tr("{name} holds no colours that are understood: it needs columns for 400 to 700 nm by "
               "10, or for L*, a* and b*. Nothing was changed.", name=name)
        )  # fmt: skip
    return Instrument(tuple(samples[:MOST_SAMPLES]), tuple(notes))


def _headed(rows: Table) -> tuple[list[str], Table]:
    """Give the head of a table and the rest; bare figures get the head that fits their number."""
    for at, row in enumerate(rows[:40]):
        if _places(row, as_head=True):
            return row, rows[at + 1 :]
    plain = [row for row in rows if row and all(_number(cell) is not None for cell in row if cell)]
    if plain and len(plain[0]) == len(WAVELENGTHS):
        return [f"{one} nm" for one in WAVELENGTHS], plain
    if plain and len(plain[0]) == 3:
        return ["L*", "a*", "b*"], plain
    return [], []


def _places(
    head: Sequence[str], *, as_head: bool = False
) -> tuple[dict[int, int], list[int]] | None:
    """Give the columns of wavelengths, and those of L*, a*, b*; None where there are neither."""
    nm: dict[int, int] = {}
    for at, cell in enumerate(head):
        found = _NM.match(cell.strip())
        if found and 300 <= int(found[1]) <= 900:
            nm.setdefault(int(found[1]), at)
    if not set(WAVELENGTHS) <= set(nm):
        # A line of reflectances in per cent may look like a few wavelengths: all have to be there.
        nm = {}
    lab = [-1, -1, -1]
    for at, cell in enumerate(head):
        plain = re.sub(r"[^a-z]", "", cell.casefold().replace("cie", "").removeprefix("lab_"))
        if plain in _LAB and lab[_LAB[plain]] < 0:
            lab[_LAB[plain]] = at
    if min(lab) < 0:
        lab = []
    return (nm, lab) if nm or lab or not as_head else None


def _by_columns(
    head: Sequence[str], body: Table, keywords: Mapping[str, str], name: str
) -> tuple[list[Sample], list[str]]:
    places = _places(head, as_head=True)
    if places is None:
        return [], []
    nm, lab = places
    names = [at for at, cell in enumerate(head) if re.sub(r"\W|_", "", cell.casefold()) in _NAMES]
    titles = [_title(row, names, at) for at, row in enumerate(body, 1)]
    if nm:
        columns = [nm[one] for one in WAVELENGTHS]
        spectra = [_figures(row, columns, name, at) for at, row in enumerate(body, 1)]
        percent = keywords.get("SPECTRAL_NORM", "").startswith("100") or any(
            "%" in head[at] for at in columns
        )
        return _spectral(titles, spectra, name, percent=percent)
    colours = [_figures(row, lab, name, at) for at, row in enumerate(body, 1)]
    return _plain(titles, colours, keywords, name)


def _title(row: Sequence[str], columns: Sequence[int], number: int) -> str:
    said = [row[at] for at in columns if at < len(row) and row[at]]
    plain = "".join(sign for sign in " ".join(dict.fromkeys(said[:2])) if sign.isprintable())
    return plain[:LONGEST_NAME].strip() or str(number)


def _by_rows(rows: Table, name: str) -> tuple[list[Sample], list[str]]:
    """Read a table whose lines are wavelengths and whose columns are samples."""
    by_nm: dict[int, list[str]] = {}
    head: list[str] = []
    for row in rows:
        first = _NM.match(row[0].strip()) if row else None
        if first and 300 <= int(first[1]) <= 900 and len(row) > 1:
            by_nm.setdefault(int(first[1]), row[1:])
        elif not by_nm:
            head = row[1:]
    if not set(WAVELENGTHS) <= set(by_nm):
        return [], []
    count = min(len(by_nm[one]) for one in WAVELENGTHS)
    spectra = [
        _figures([by_nm[one][at] for one in WAVELENGTHS], range(len(WAVELENGTHS)), name, at + 1)
        for at in range(count)
    ]
    titles = [_title([head[at]], [0], at + 1) if at < len(head) else str(at + 1)
              for at in range(count)]  # fmt: skip
    percent = any("%" in cell for cell in head)
    return _spectral(titles, spectra, name, percent=percent)


def _spectral(
    titles: Sequence[str], spectra: Sequence[list[float]], name: str, *, percent: bool
) -> tuple[list[Sample], list[str]]:
    percent = percent or any(one > PERCENT_FROM for figures in spectra for one in figures)
    share = 100.0 if percent else 1.0
    found = []
    for title, figures in zip(titles, spectra, strict=True):
        parts = tuple(one / share for one in figures)
        if not all(0 <= one <= MOST_REFLECTANCE for one in parts):
            raise Refusal(
                tr("{name}, sample {sample}: a reflectance lies outside 0 to {most} %. Nothing was "
                   "changed.", name=name, sample=title, most=f"{100 * MOST_REFLECTANCE:g}")
            )  # fmt: skip
        found.append(Sample(title, lab_of_reflectance(parts), "D65/10", parts))
    scale = tr("per cent") if percent else tr("fractions from 0 to 1")
    return found, [tr("Reflectance is taken as {scale}.", scale=scale)]


def _plain(
    titles: Sequence[str], colours: Sequence[list[float]], keywords: Mapping[str, str], name: str
) -> tuple[list[Sample], list[str]]:
    """Take L*, a*, b* as they are, or from the D50 of printers to daylight."""
    said = " ".join(keywords.values())
    told = re.search(r"\bd50\b|\bd65\b", said)
    is_d50 = told is not None and told[0] == "d50"
    ten = re.search(r"\b10\b|\b1964\b", keywords.get("OBSERVER", "") or said) is not None
    white = "D65/10" if ten or told is None else "D65/2"
    found = []
    for title, (light, a, b) in zip(titles, colours, strict=True):
        low, high = LIGHTNESS
        if not low <= light <= high or max(abs(a), abs(b)) > MOST_COLOUR:
            raise Refusal(
                tr("{name}, sample {sample}: {L}, {a}, {b} is no colour of a surface. Nothing was "
                   "changed.", name=name, sample=title, L=f"{light:g}", a=f"{a:g}", b=f"{b:g}")
            )  # fmt: skip
        lab = Lab(light, a, b)
        found.append(Sample(title, _daylight(lab) if is_d50 else lab, white))
    if is_d50:
        return found, [tr("The colours were read under D50 and turned to D65, by Bradford.")]
    if told is None:
        return found, [tr("The light is not named: D65 and 10 degree are assumed.")]
    return found, []


def _daylight(lab: Lab) -> Lab:
    from studio_log.science.colour.spaces import d65_of_d50  # noqa: PLC0415 - brings coloraide

    return lab_of_xyz(d65_of_d50(lab))


def _figures(row: Sequence[str], columns: Sequence[int], name: str, number: int) -> list[float]:
    found = []
    for at in columns:
        value = _number(row[at]) if at < len(row) else None
        if value is None:
            shown = row[at][:20] if at < len(row) else ""
            raise Refusal(
                tr("{name}, sample {sample}: “{text}” is no figure. Nothing was changed.",
                   name=name, sample=number, text=shown)
            )  # fmt: skip
        found.append(value)
    return found


def _number(cell: str) -> float | None:
    plain = cell.strip().removesuffix("%").strip()
    if not _FIGURE.fullmatch(plain):
        return None
    value = float(plain.replace(",", ".").replace("−", "-"))
    return value if math.isfinite(value) else None
