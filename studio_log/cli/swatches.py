"""Commands about swatches: cutting, reading their colour, grading, finding by colour."""

from typing import Any, Final

from studio_log.cli import values
from studio_log.cli.colour_even import even_json
from studio_log.cli.form import AT, JSON, LOT, SURE, Form, Option, UsageError, Word
from studio_log.cli.plain import picked, plain
from studio_log.cli.swatch_read import CODE, NOTE, READ, text_or_none
from studio_log.cli.turn import Turn
from studio_log.domain.swatch_text import read_lab, whole_swatch_code
from studio_log.domain.swatches import SCALES, TESTS, WHITES
from studio_log.present.colour_words import lab_words
from studio_log.science.colour.lab import Lab
from studio_log.services.swatch_even import evenness_of
from studio_log.services.swatches import (
    GradeSwatch,
    LightTest,
    NearFor,
    NearLine,
    NewSwatch,
    NoteSwatch,
    SetSwatch,
    SwatchesFor,
    SwatchesThere,
    SwatchFor,
    SwatchPage,
    SwatchShown,
)

FIELDS: Final = (
    "code", "lot", "lot_name", "name", "piece", "step", "cut_at", "chain", "place", "test_place",
    "white", "source", "two_u", "shown", "beyond", "grades", "ended",
)  # fmt: skip
COLOUR: Final = Word("LAB", "L*,a*,b* such as 52.1,31.8,24.0; after -- where it begins with a -")
PLACE: Final = Option("--place", "where the master half is kept, or the whole", "TEXT")
TEST_PLACE: Final = Option("--test-half", "it is cut in halves; where the other one is", "TEXT")
NAME: Final = Option("--name", "a name or remark", "TEXT")
MOST_NEAR: Final = 1000
MOST_LINES: Final = 5000


def _new(turn: Turn) -> int:
    given = turn.values
    command = NewSwatch(
        values.lot_code(given["code"]),
        piece=_number(given["piece"], "the number of a piece"),
        step=_number(given["step"], "the number of a step"),
        name=text_or_none(given["name"], "The name") or "",
        place=text_or_none(given["place"], "The place") or "",
        test_place=text_or_none(given["test_half"], "The place"),
        at=turn.moment("at"),
        sure=given["sure"],
    )
    return turn.finish_new(turn.do(command))


def _set(turn: Turn) -> int:
    given = turn.values
    if given["gone"] and given["kept"]:
        raise UsageError("Either --gone or --kept")
    if given["whole"] and given["test_half"] is not None:
        raise UsageError("Either --whole or --test-half")
    command = SetSwatch(
        whole_swatch_code(given["code"]),
        name=text_or_none(given["name"], "The name"),
        place=text_or_none(given["place"], "The place"),
        test_place=text_or_none(given["test_half"], "The place"),
        whole=given["whole"],
        ended=True if given["gone"] else False if given["kept"] else None,
    )
    if command == SetSwatch(command.code):
        raise UsageError("Nothing to change was given. See: studio-log swatch set --help")
    return turn.finish(turn.do(command))


def _number(typed: str | None, what: str) -> int | None:
    return None if typed is None else values.whole(typed, what, most=10_000)


def _grade(turn: Turn) -> int:
    given = turn.values
    if (given["grade"] is None) != given["estimate"]:
        raise UsageError("Give --grade, or --estimate it from colours that were read")
    command = GradeSwatch(
        whole_swatch_code(given["code"]),
        given["test"],
        grade=given["grade"] or "",
        scale=given["scale"] or SCALES[0],
        length=text_or_none(given["for"], "How long") or "",
        note=values.note(given["note"]),
        at=turn.moment("at"),
        sure=given["sure"],
    )
    return turn.finish(turn.do(command))


def _note(turn: Turn) -> int:
    given = turn.values
    photo = given["photo"]
    command = NoteSwatch(
        whole_swatch_code(given["code"]),
        note=values.note(given["note"]),
        path=None if photo is None else values.file_path(photo, "The name of the photo"),
        at=turn.moment("at"),
        sure=given["sure"],
    )
    return turn.finish(turn.do(command))


def _light(turn: Turn) -> int:
    given = turn.values
    command = LightTest(
        whole_swatch_code(given["code"]),
        place=text_or_none(given["where"], "The place") or "",
        ended=given["end"],
        note=values.note(given["note"]),
        at=turn.moment("at"),
        sure=given["sure"],
    )
    return turn.finish(turn.do(command))


def _list(turn: Turn) -> int:
    given = turn.values
    asked = SwatchesFor(
        find=given["find"] or "",
        lots=values.lot_codes(given["lot"]),
        ended=given["all"],
        order="code",
        limit=MOST_LINES,
    )
    found: SwatchesThere = turn.studio.ask(asked)
    if given["json"]:
        turn.say_json([fields_of(line) for line in found.lines])
        return 0
    more = found.total - len(found.lines)
    rest = [f"and {more} more; --find looks for some of them"] if more else []
    turn.say("\n".join([*map(_words, found.lines), *rest]) or "No swatch was cut yet.")
    return 0


def fields_of(line: SwatchShown) -> dict[str, Any]:
    """Give a swatch as a JSON object."""
    return {**picked(line, *FIELDS), "lab": lab_json(line.lab)}


def lab_json(lab: Lab | None) -> dict[str, float] | None:
    """Give a colour as a JSON object."""
    if lab is None:
        return None
    return {"L": round(lab.lightness, 4), "a": round(lab.a, 4), "b": round(lab.b, 4)}


def _words(line: SwatchShown) -> str:
    name = f" {line.name}" if line.name else ""
    return f"{line.code}  {line.lot} {line.lot_name}{name}: {line.colour_words}"


def _show(turn: Turn) -> int:
    page: SwatchPage = turn.studio.ask(SwatchFor(whole_swatch_code(turn.values["code"])))
    if turn.values["json"]:
        turn.say_json(_page_json(page))
        return 0
    line = page.line
    told = [
        f"{line.code}  {line.name}".rstrip(),
        f"Lot {line.lot} {line.lot_name}, cut {line.cut_words}",
        ", ".join(filter(None, (page.piece_words, page.step_words, page.age_words))),
        line.colour_words,
        page.halves,
        *filter(None, (page.even_words, page.apart_words)),
        *page.chain,
        "",
        *(f"{one.entry:>3}  {one.when}  {one.words}" for one in page.history),
    ]
    turn.say("\n".join(one for at, one in enumerate(told) if one or at > 4))
    return 0


def _page_json(page: SwatchPage) -> dict[str, Any]:
    of = page.swatch
    readings = [
        {"entry": one.entry, "at": plain(one.at), "half": one.half, "lab": lab_json(one.lab),
         "white": one.white, "source": one.source, "two_u": one.two_u, "method": one.method,
         "warnings": list(one.warnings), "reflectance": list(one.reflectance), "note": one.note,
         "spots": list(map(lab_json, one.spots)), "spectra": [list(each) for each in one.spectra],
         "evenness": even_json(evenness_of(one))}
        for one in of.readings
    ]  # fmt: skip
    return {
        **fields_of(page.line),
        "readings": readings,
        "tests": plain(of.grades),
        "remarks": plain(of.remarks),
        "methods": list(page.chain),
        "photos": plain(page.photos),
        "undo": page.undo,
        "redo": page.redo,
    }


def _near(turn: Turn) -> int:
    given = turn.values
    typed = given["lab"]
    but, white, lab = "", given["white"] or WHITES[0], None
    if typed.strip()[:1].upper() == "W":
        page: SwatchPage = turn.studio.ask(SwatchFor(whole_swatch_code(typed)))
        but, white, lab = page.line.code, page.line.white, page.line.lab
        if lab is None:
            raise UsageError(f"The colour of {but} was not read yet")
    within = None if given["within"] is None else _apart(given["within"])
    asked = NearFor(
        lab or read_lab(typed),
        most=_number(given["most"], "a number of swatches") or 12,
        within=within,
        white=white,
        ended=given["all"],
        but=but,
    )
    found: tuple[NearLine, ...] = turn.studio.ask(asked)
    if given["json"]:
        turn.say_json(
            [{"ciede2000": round(one.apart, 4), "doubt": one.doubt, **fields_of(one.line)}
             for one in found]
        )  # fmt: skip
        return 0
    told = [
        f"{one.apart:6.2f}  {_words(one.line)}" + (f" ({one.doubt})" if one.doubt else "")
        for one in found
    ]
    head = f"Nearest to {lab_words(asked.lab)}, by CIEDE2000:"
    turn.say("\n".join([head, *told]) if told else "No swatch with a colour is that near.")
    return 0


def _apart(typed: str) -> float:
    found = values.readings([f"within={typed}"])["within"]
    if not isinstance(found, float) or not 0 < found <= 200:
        raise UsageError("--within takes a difference, such as 3")
    return found


FORMS: Final = (
    Form(
        ("swatch", "new"), "Cut a swatch from a lot and print its code.", _new, (LOT,),
        (
            Option("--piece", "the number of the piece it is cut from", "NUMBER"),
            Option("--step", "the step it is cut at; the lot's latest unless said", "NUMBER"),
            NAME, PLACE, TEST_PLACE, AT, SURE, JSON,
        ),
    ),
    Form(
        ("swatch", "list"), "List the swatches.", _list,
        options=(
            Option("--find", "words of it: a lot, a name, a method, a place", "TEXT"),
            Option("--lot", "those of this lot; may be repeated", "CODE", repeats=True),
            Option("--all", "those kept no longer as well"), JSON,
        ),
    ),
    Form(("swatch", "show"), "Show one swatch with its diary.", _show, (CODE,), (JSON,)),
    READ,
    Form(
        ("swatch", "grade"), "Write down the grade of a test.", _grade,
        (CODE, Word("TEST", "what was tested", choices=TESTS)),
        (
            Option("--grade", "the step: 4, 4-5; of blue wool 1 to 8", "GRADE"),
            Option("--estimate", "estimate it: the change from both halves, staining from the "
                   "adjacent cloth"),
            Option("--scale", "change unless said", "SCALE", choices=SCALES),
            Option("--for", "how long or how often: “4 weeks”", "TEXT"),
            NOTE, AT, SURE, JSON,
        ),
    ),
    Form(
        ("swatch", "light"), "Begin a window light test, read at 2, 4 and 8 weeks.", _light,
        (CODE,),
        (
            Option("--where", "the window: “south, behind glass”", "TEXT"),
            Option("--end", "it is taken down for good"), NOTE, AT, SURE, JSON,
        ),
    ),
    Form(
        ("swatch", "note"), "Write down a remark, with a photo if there is one.", _note, (CODE,),
        (NOTE, Option("--photo", "a picture: JPEG, PNG or WebP", "FILE"), AT, SURE, JSON),
    ),
    Form(
        ("swatch", "set"), "Change a swatch's name, its halves, or say that it is gone.", _set,
        (CODE,),
        (
            NAME, PLACE, TEST_PLACE, Option("--whole", "it is not in halves any more"),
            Option("--gone", "it is kept no longer"), Option("--kept", "it is kept after all"),
            JSON,
        ),
    ),
    Form(
        ("swatch", "near"), "List the swatches nearest to a colour, or to a swatch.", _near,
        (Word("LAB", "L*,a*,b* such as 52.1,31.8,24.0, or a swatch's code"),),
        (
            Option("--most", "so many at most; 12 unless said", "NUMBER"),
            Option("--within", "at most so far off, CIEDE2000", "NUMBER"),
            Option("--white", "of the colour; D65/2 unless said", "WHITE", choices=WHITES),
            Option("--all", "those kept no longer as well"), JSON,
        ),
    ),
)  # fmt: skip
