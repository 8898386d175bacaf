"""The command that tells how even a colour is over several spots of one cloth."""

from typing import Any, Final

from studio_log.cli.colour_file import instrument_of
from studio_log.cli.form import JSON, Form, Option, UsageError, Word
from studio_log.cli.turn import Turn
from studio_log.domain.errors import Refusal
from studio_log.domain.instrument_table import Instrument
from studio_log.domain.swatch_text import read_lab
from studio_log.services.swatch_even import (
    OWN_BANDS,
    RUI_BANDS,
    Evenness,
    even_sentence,
    evenness,
)


def _even(turn: Turn) -> int:
    given = turn.values
    if bool(given["labs"]) == (given["file"] is not None):
        raise UsageError("Give the colours of the spots, or --file")
    if given["file"] is None:
        found = evenness([read_lab(one) for one in given["labs"]])
    else:
        found = evenness(**spots_in(instrument_of(given["file"])))
    if turn.values["json"]:
        turn.say_json(even_json(found))
    else:
        turn.say(even_sentence(found))
    return 0


def spots_in(found: Instrument) -> dict[str, Any]:
    """Give every sample of a file as a spot, with the spectra where all have one."""
    if len({one.white for one in found.samples}) > 1:
        raise Refusal(
            "The samples of the file are of different light: they are no spots of one cloth. "
            "Nothing was changed."
        )
    spectra = tuple(one.reflectance for one in found.samples if one.reflectance)
    whole = len(spectra) == len(found.samples)
    return {
        "spots": tuple(one.lab for one in found.samples),
        "spectra": spectra if whole else (),
    }


def even_json(found: Evenness | None) -> dict[str, Any] | None:
    """Give evenness as a JSON object; whose bands they are stands beside them."""
    if found is None:
        return None
    known, level = found.spread, found.unlevelness
    return {
        "spots": known.spots,
        "mean_apart": round(known.mean_apart, 4),
        "sd_apart": round(known.sd_apart, 4),
        "most_apart": round(known.most_apart, 4),
        "sd_lightness": round(known.sd_lightness, 4),
        "band": known.band,
        "bands_of": OWN_BANDS,
        "rui": None if level is None else round(level.index, 4),
        "rui_band": None if level is None else level.band,
        "rui_bands_of": None if level is None else RUI_BANDS,
    }


FORMS: Final = (
    Form(
        ("colour", "evenness"),
        "Tell how even a colour is over several spots of one cloth.",
        _even,
        (Word("LABS", "L*,a*,b* of each spot: three or more, better eight", optional=True,
              many=True),),
        (Option("--file", "or an instrument's file: every sample is a spot", "FILE"), JSON),
    ),
)  # fmt: skip
