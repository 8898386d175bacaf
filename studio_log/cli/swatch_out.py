"""Commands that take swatches out: cards to glue them on, and the plane of colours."""

from typing import Final

from studio_log.cli import values
from studio_log.cli.form import Form, Option, UsageError, Word
from studio_log.cli.safety import FILE_NAME, STOCK
from studio_log.cli.turn import Turn
from studio_log.domain.swatch_text import whole_swatch_code
from studio_log.present.swatch_files import csv_of, svg_of
from studio_log.present.swatch_looks import BY_AGE, BY_LOT, PLANE, file_plot, file_title
from studio_log.services.swatch_plane import coloured
from studio_log.services.swatches import CardsFor, SwatchesFor
from studio_log.services.whole_file import write_whole

MOST_LINES: Final = 5000
KINDS: Final = frozenset({".svg", ".png", ".csv"})


def _card(turn: Turn) -> int:
    given = turn.values
    codes = tuple(map(whole_swatch_code, given["code"]))
    path = values.file_path(given["to"], FILE_NAME)
    facts = turn.studio.ask(CardsFor(codes))
    turn.say(turn.house.write_cards(path, facts, given["stock"] or STOCK))
    return 0


def _plot(turn: Turn) -> int:
    given = turn.values
    path = values.file_path(given["to"], FILE_NAME)
    if given["by_lot"] and given["by_age"]:
        raise UsageError("Either --by-lot or --by-age")
    kind = path.suffix.casefold()
    if kind not in KINDS:
        raise UsageError("--to takes the name of a file that ends in .svg, .png or .csv")
    asked = SwatchesFor(
        find=given["find"] or "",
        lots=values.lot_codes(given["lot"]),
        read_only=True,
        order="code",
        limit=MOST_LINES,
        ages=given["by_age"] or kind == ".csv",
    )
    shown = coloured(turn.studio.ask(asked).lines)
    look = BY_AGE if given["by_age"] else BY_LOT if given["by_lot"] else PLANE
    if kind == ".csv":
        write_whole(path, csv_of(shown).encode())
    elif kind == ".png":
        turn.house.write_plot(path, file_plot(shown, look))
    else:
        write_whole(path, svg_of(file_plot(shown, look), file_title(look)).encode())
    count = "1 swatch" if len(shown) == 1 else f"{len(shown)} swatches"
    turn.say(f"{count} written to {path}.")
    return 0


FORMS: Final = (
    Form(
        ("swatch", "plot"), "Write the swatches on the a*b* plane to SVG, PNG or CSV.", _plot,
        options=(
            Option("--to", "the file to write: its name ends in .svg, .png or .csv", "FILE",
                   required=True),
            Option("--find", "words of it: a lot, a name, a method, a place", "TEXT"),
            Option("--lot", "those of this lot; may be repeated", "CODE", repeats=True),
            Option("--by-lot", "each lot on a plane of its own, all at one scale"),
            Option("--by-age", "C* and L* by the age of the cure when each was cut"),
        ),
    ),
    Form(
        ("swatch", "card"), "Write cards to glue swatches on to a PDF.", _card,
        (Word("CODE", "swatch codes", many=True),),
        (
            Option("--to", "the PDF to write", "FILE", required=True),
            Option("--stock", f"what they are printed on; else {STOCK}", "NAME"),
        ),
    ),
)  # fmt: skip
