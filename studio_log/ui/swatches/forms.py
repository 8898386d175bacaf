"""What can be written down of a swatch, as data: the fields of each form, and its command."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from studio_log.domain.swatches import SCALES, TESTS, WHITES
from studio_log.language.words import tr_later
from studio_log.services.commands import Command
from studio_log.services.swatches import (
    SCALE_WORDS,
    TEST_WORDS,
    GradeSwatch,
    LightTest,
    NewSwatch,
    NoteSwatch,
    ReadSwatch,
    SetSwatch,
)
from studio_log.ui.kept.form_box import Choices, FormField, Values
from studio_log.ui.kept.readers import lot
from studio_log.ui.swatches import readers
from studio_log.ui.swatches.halves import HALF_CHOICES


@dataclass(frozen=True)
class SwatchForm:
    """A form; `command` makes what is sent out of the swatch's code and what was read."""

    slug: str
    title: str
    says: str
    fields: tuple[FormField, ...]
    command: Callable[[str, Values], Command]
    moment: bool = True


HALF: Final = FormField("half", tr_later("Which &cloth"), choices=HALF_CHOICES)
NOTE: Final = FormField("note", tr_later("&Note"), tr_later("a note, if any"))
NAME: Final = FormField(
    "name", tr_later("&Name"), tr_later("second coat, rinsed hot"), kept_as="swatch-name"
)
PLACE: Final = FormField(
    "place", tr_later("&Kept at"), tr_later("master half, or the whole: drawer 3"),
    kept_as="swatch-place",
)  # fmt: skip
TEST_PLACE: Final = FormField(
    "test_place",
    tr_later("&Test half at"),
    tr_later("blank where it is not cut in halves"),
    kept_as="swatch-test_place",
)
_OBSERVERS: Final[Choices] = (
    (WHITES[0], tr_later("daylight D65, 2° (photos)")),
    (WHITES[1], tr_later("daylight D65, 10° (instruments)")),
)


def _named(values: Sequence[str], words: Mapping[str, str]) -> Choices:
    return tuple((one, words[one]) for one in values)


def _new(_code: str, values: Values) -> Command:
    return NewSwatch(**values)


def _read(code: str, values: Values) -> Command:
    return ReadSwatch(code, source="instrument", **values)


def _grade(code: str, values: Values) -> Command:
    return GradeSwatch(code, **values)


def _light(code: str, values: Values) -> Command:
    return LightTest(code, **values)


def _note(code: str, values: Values) -> Command:
    return NoteSwatch(code, **values)


def _set(code: str, values: Values) -> Command:
    return SetSwatch(code, **values)


NEW: Final = SwatchForm(
    "new", tr_later("New swatch"),
    tr_later("It gets a code of its own. The methods that its lot has walked come with it."),
    (
        FormField("lot", tr_later("&Lot"), "26-031", lot, needed=True, lots=True),
        FormField("piece", tr_later("&Piece"), tr_later("its number, if there are several"),
                  readers.whole),
        NAME, PLACE, TEST_PLACE,
    ),
    _new,
)  # fmt: skip
READ: Final = SwatchForm(
    "read", tr_later("A colour that an instrument gave"), "",
    (
        FormField("lab", tr_later("L*, a*, &b*"), "52.1, 31.8, 24.0", readers.colour, needed=True),
        HALF,
        FormField("white", tr_later("&Daylight and observer"), choices=_OBSERVERS),
        FormField("two_u", tr_later("2&u, in CIEDE2000"), tr_later("if it is known: 0.8"),
                  readers.two_u),
        FormField("method", tr_later("&Instrument"), tr_later("its name"),
                  kept_as="swatch-method"),
        NOTE,
    ),
    _read,
)  # fmt: skip
GRADE: Final = SwatchForm(
    "grade", tr_later("The grade of a test"),
    tr_later("Left blank, the grade is estimated: a change from the colours of both halves, "
             "staining from those of the cloth beside it, before and after."),
    (
        FormField("test", tr_later("&Test"), choices=_named(TESTS, TEST_WORDS)),
        FormField("grade", tr_later("&Grade"), "4-5", readers.grade),
        FormField("scale", tr_later("&Scale"), choices=_named(SCALES, SCALE_WORDS)),
        FormField("length", tr_later("How &long"), tr_later("4 weeks, 3 washes"),
                  kept_as="swatch-length"),
        NOTE,
    ),
    _grade,
)  # fmt: skip
LIGHT: Final = SwatchForm(
    "light", tr_later("Begin the light test"),
    tr_later("The test half hangs in the window, the master half stays in the dark. Reminders come "
             "after 2, 4 and 8 weeks."),
    (FormField("place", tr_later("&Window"), tr_later("south, behind glass"),
               kept_as="swatch-window"),
     NOTE),
    _light,
)  # fmt: skip
REMARK: Final = SwatchForm(
    "note", tr_later("A remark"), "",
    (FormField("note", tr_later("&Remark"), needed=True),),
    _note,
)  # fmt: skip
CHANGE: Final = SwatchForm(
    "set", tr_later("Change the swatch"), "", (NAME, PLACE, TEST_PLACE), _set, moment=False
)
