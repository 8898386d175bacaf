"""The command that reads what a colour instrument wrote: colours, K/S and strength."""

from typing import Any, Final

from studio_log.cli import values
from studio_log.cli.form import JSON, Form, Option, Word
from studio_log.cli.turn import Turn
from studio_log.domain.depth import Depth, depth_of, strength_of
from studio_log.domain.errors import Refusal
from studio_log.domain.instrument_file import LARGEST, read_instrument
from studio_log.domain.instrument_table import Instrument, Sample
from studio_log.domain.number_text import quoted
from studio_log.present.colour_words import lab_words
from studio_log.science.colour.shown import shown_as
from studio_log.services.method_file import small_file

SHOWN: Final = 200
"""Samples told to a person; JSON gives all."""
FILE: Final = Word("FILE", "what the instrument wrote: CSV or CGATS.17")
SAMPLE: Final = Option("--sample", "the name of one sample; else the only one", "NAME")


def instrument_of(typed: str) -> Instrument:
    """Read the file of an instrument."""
    path = values.file_path(typed, "The name of the file")
    return read_instrument(small_file(path, LARGEST), path.name)


def sample_named(found: Instrument, name: str | None) -> Sample:
    """Give one sample by its name, or the only one; Refusal where it is not clear which."""
    if name is None and len(found.samples) == 1:
        return found.samples[0]
    own = [one for one in found.samples if one.name == name]
    if len(own) == 1:
        return own[0]
    names = ", ".join(quoted(one.name) for one in found.samples[:12])
    said = "Say which sample" if name is None else f"There is not one sample {quoted(name)}"
    raise Refusal(f"{said}: the file has {names}. {values.NOTHING}")


def _read(turn: Turn) -> int:
    given = turn.values
    found = instrument_of(given["file"])
    standard = None if given["standard"] is None else sample_named(found, given["standard"])
    ground = None if given["ground"] is None else sample_named(found, given["ground"])
    rows = [_fields(one, standard, ground) for one in found.samples]
    if given["json"]:
        turn.say_json({"samples": rows, "notes": list(found.notes)})
        return 0
    told = [_words(one, row) for one, row in zip(found.samples[:SHOWN], rows, strict=False)]
    more = len(found.samples) - SHOWN
    rest = [f"and {more} more; --json gives all"] if more > 0 else []
    turn.say("\n".join([*told, *rest, *found.notes]))
    return 0


def _fields(one: Sample, standard: Sample | None, ground: Sample | None) -> dict[str, Any]:
    lab, depth = one.lab, depth_of(one)
    strong = None if standard is None else strength_of(one, standard, ground)
    return {
        "name": one.name,
        "L": round(lab.lightness, 4), "a": round(lab.a, 4), "b": round(lab.b, 4),
        "C": round(lab.chroma, 4), "h": None if lab.hue is None else round(lab.hue, 4),
        "white": one.white,
        "shown": shown_as(lab)[0],
        "reflectance": list(one.reflectance),
        "ks_nm": depth.nm if depth else None,
        "ks_peak": round(depth.peak, 6) if depth else None,
        "ks_sum": round(depth.total, 6) if depth else None,
        "strength": None if strong is None else round(strong, 4),
    }  # fmt: skip


def _words(one: Sample, row: dict[str, Any]) -> str:
    parts = [f"{one.name}: {lab_words(one.lab)} ({one.white})"]
    depth: Depth | None = depth_of(one)
    if depth is not None:
        parts.append(f"K/S {depth.peak:.3g} at {depth.nm} nm, {depth.total:.4g} in all")
    if row["strength"] is not None:
        parts.append(f"strength {row['strength']:.1f} %")
    return ", ".join(parts)


FORMS: Final = (
    Form(
        ("colour", "read"),
        "Tell the colours, K/S and strength in a colour instrument's file.",
        _read,
        (FILE,),
        (
            Option("--standard", "the sample that strength is told against", "NAME"),
            Option("--ground", "the undyed cloth, taken off both", "NAME"),
            JSON,
        ),
    ),
)
