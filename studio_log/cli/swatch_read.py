"""The command that writes a colour of a swatch down: typed, by spots, from a file or a photo."""

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, Any, Final

from studio_log.cli import values
from studio_log.cli.colour_even import spots_in
from studio_log.cli.colour_file import SAMPLE, instrument_of, sample_named
from studio_log.cli.colour_measure import RECT, TARGET, measured
from studio_log.cli.form import AT, JSON, SURE, Form, Option, UsageError, Word
from studio_log.cli.turn import Turn
from studio_log.domain.errors import Refusal
from studio_log.domain.swatch_text import read_lab, whole_swatch_code
from studio_log.domain.swatches import HALVES, WHITES
from studio_log.services.swatches import ReadSwatch

if TYPE_CHECKING:
    from studio_log.science.colour.photo_spots import Spots

CODE: Final = Word("CODE", "the swatch's code, such as W26-001")
NOTE: Final = Option("--note", "a note", "TEXT")


def text_or_none(typed: str | None, what: str) -> str | None:
    """Give a text that may be blank, None where none was given."""
    return None if typed is None else values.text(typed, what, empty=True)


def _read(turn: Turn) -> int:
    given = turn.values
    ways = [name for name in _WAYS if given[name]]
    if len(ways) != 1:
        raise UsageError("Give one of --lab, --spot, --photo and --file")
    if given["spots"] and ways[0] not in {"photo", "file"}:
        raise UsageError("--spots goes with --photo or --file; give each spot by --spot")
    found = _WAYS[ways[0]](given)
    command = ReadSwatch(
        whole_swatch_code(given["code"]),
        half=given["half"] or HALVES[0],
        note=values.note(given["note"]),
        at=turn.moment("at"),
        sure=given["sure"],
        **found,
    )
    return turn.finish(turn.do(command))


def _by_figures(given: dict[str, Any]) -> dict[str, Any]:
    return {
        "lab": read_lab(given["lab"]),
        "source": "relative" if given["relative"] else "instrument",
        "white": given["white"] or WHITES[0],
        "two_u": _two_u(given["two_u"]),
        "method": text_or_none(given["by"], "The instrument") or "",
    }


def _by_spots(given: dict[str, Any]) -> dict[str, Any]:
    first = {**given, "lab": given["spot"][0]}
    spots = tuple(read_lab(one) for one in given["spot"])
    return {**_by_figures(first), "lab": None, "spots": spots}


def _by_photo(given: dict[str, Any]) -> dict[str, Any]:
    if given["swatch"] is None:
        raise UsageError("--photo needs --swatch: where in the photo it lies")
    found = measured(given)
    return {
        "lab": found.lab,
        "source": "relative" if found.relative else "photo",
        "two_u": None if found.two_u is None else found.two_u.ciede2000,
        "method": found.method,
        "warnings": found.warnings,
        **_photo_spots(given, found.spots),
    }


def _photo_spots(given: dict[str, Any], spots: "Spots") -> dict[str, Any]:
    if not given["spots"]:
        return {}
    if not spots.colours:
        raise Refusal("The swatch is too small in the photo for nine spots. Nothing was changed.")
    return {"lab": None, "spots": spots.colours, "noise": spots.noise}


def _by_file(given: dict[str, Any]) -> dict[str, Any]:
    found = instrument_of(given["file"])
    if given["spots"]:
        if given["sample"] is not None:
            raise UsageError("Either --sample, or --spots: every sample of the file is a spot")
        return {
            "lab": None, "source": "instrument", "white": found.samples[0].white,
            "method": text_or_none(given["by"], "The instrument") or "", **spots_in(found),
        }  # fmt: skip
    sample = sample_named(found, given["sample"])
    return {
        "lab": sample.lab,
        "source": "instrument",
        "white": sample.white,
        "two_u": _two_u(given["two_u"]),
        "method": text_or_none(given["by"], "The instrument") or "",
        "reflectance": sample.reflectance,
    }


_WAYS: Final[Mapping[str, Callable[[dict[str, Any]], dict[str, Any]]]] = {
    "lab": _by_figures,
    "spot": _by_spots,
    "photo": _by_photo,
    "file": _by_file,
}


def _two_u(typed: str | None) -> float | None:
    if typed is None:
        return None
    return values.readings([f"two_u={typed}"])["two_u"]  # type: ignore[return-value]


READ: Final = Form(
    ("swatch", "read"), "Write down a colour of a swatch, typed or from a photo.", _read,
    (CODE,),
    (
        Option("--lab", "the colour, as an instrument gives it: 52.1,31.8,24.0", "LAB"),
        Option("--white", "of --lab; D65/2 unless said", "WHITE", choices=WHITES),
        Option("--two-u", "of --lab or --file: twice its uncertainty, in CIEDE2000", "NUMBER"),
        Option("--by", "of --lab or --file: the instrument", "TEXT"),
        Option("--relative", "of --lab: it can be compared within its own photo only"),
        Option("--file", "or an instrument's file: CSV or CGATS.17", "FILE"),
        SAMPLE,
        Option("--spot", "or several spots of one cloth, each as --lab: how even it is",
               "LAB", repeats=True),
        Option("--spots", "every sample of --file, or nine parts of --swatch, is such a spot"),
        Option("--photo", "or a photo, with --swatch and --target or --card", "PHOTO"),
        Option("--swatch", RECT, "RECT"),
        *TARGET,
        Option("--half", "which half, or the cloth beside it; master unless said", "HALF",
               choices=HALVES),
        NOTE, AT, SURE, JSON,
    ),
)  # fmt: skip
