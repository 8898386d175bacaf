"""Which fields the form has, block by block, in the order in which a dyer thinks of them."""

from dataclasses import dataclass
from typing import Final

from studio_log.domain.method_lines import Path
from studio_log.domain.methods import Basis, StepKind
from studio_log.present.hues import KIND_WORDS
from studio_log.ui.methods.fields import FieldSpec as F
from studio_log.ui.methods.sorts import NAMES, NUMBER, PROSE, SPAN, SPANS


@dataclass(frozen=True)
class Rows:
    """A list of small tables, such as the amounts of a step."""

    path: Path
    one: str
    """What one of them is called: "amount"."""
    rows: tuple[tuple[F, ...], ...]
    new: tuple[tuple[str, object], ...]
    """What a new one begins with; its short name is made of the first."""


@dataclass(frozen=True)
class Section:
    """A heading with rows of fields, or a list of small tables."""

    heading: str
    rows: tuple[tuple[F, ...], ...] = ()
    listed: Rows | None = None
    advice: str = ""
    cautions: bool = False
    kinds: str = ""
    """Kinds of step that need it; for others it is hidden while nothing stands in it."""


BASES: Final = (
    (Basis.WOF, "% of the weight of fibre"),
    (Basis.PER_KG, "litres a kilogram of cloth"),
    (Basis.FIXED, "the same for any weight"),
    (Basis.PER_LITRE, "grams of it to the litre"),
    (Basis.TIMES_VOLUME, "times the volume of"),
    (Basis.PARTS, "parts water on one part of"),
)
KINDS: Final = tuple((kind.value, words) for kind, words in KIND_WORDS.items())
COMMON: Final = "common practice, or whose it is"

HEAD: Final = (
    Section(
        "The method",
        (
            (F(("title",), "Name"),),
            (F(("school",), "School of practice"), F(("version",), "Version", NUMBER, wide=5)),
            (F(("summary",), "What it does and what it is for", PROSE, prose=5),),
            (F(("source",), "Where it comes from", PROSE, COMMON, prose=2),),
        ),
    ),
    Section(
        "What it meets",
        (
            (
                F(("brings",), "Brings near the cloth", NAMES, "soy, alkali"),
                F(("spoiled_by",), "Spoiled afterwards by", NAMES, "alkali"),
            ),
            (F(("slug",), "Short name", hint="small letters and hyphens"),),
        ),
        advice="Going on with a method that brings what spoils this one is asked about.",
    ),
)

_AMOUNT: Final = Rows(
    ("amounts",),
    "amount",
    (
        (F(("title",), "What", hint="dry soybeans"), F(("slug",), "Short name", wide=7)),
        (
            F(("value",), "How much", NUMBER, wide=5),
            F(("basis",), "Counted as", choices=tuple((b.value, w) for b, w in BASES), wide=12),
            F(("of",), "Of what", choices=(("", "nothing"),), wide=7),
            F(("unit",), "Unit", choices=(("", "goes by itself"), ("g", "g"), ("L", "L")), wide=6),
        ),
        (
            F(("cup_grams",), "Grams in a US cup", NUMBER, wide=7),
            F(("at_least",), "More does no harm", flag=False),
            F(("vessel",), "The bucket has to hold it", flag=False),
            F(("editable",), "May be changed for a lot", flag=True),
        ),
        (F(("note",), "Note", PROSE), F(("source",), "Source", PROSE, COMMON)),
    ),
    (("title", "new amount"), ("basis", Basis.WOF.value), ("value", 10)),
)
_READING: Final = Rows(
    ("readings",),
    "reading",
    (
        (
            F(("title",), "What is measured", hint="temperature of the bath", wide=10),
            F(("unit",), "Unit", hint="°C", wide=4),
            F(("slug",), "Short name", wide=7),
        ),
    ),
    (("title", "new reading"),),
)
_VIEW: Final = Rows(
    ("cure", "views"),
    "view",
    (
        (F(("days",), "Days", NUMBER, wide=4), F(("title",), "What is said of it", wide=10)),
        (F(("source",), "Whose view it is", PROSE, COMMON),),
    ),
    (("days", 400), ("title", "new view"), ("source", "common practice")),
)

STEP: Final = (
    Section(
        "What is done",
        (
            (F(("title",), "Name", wide=12), F(("kind",), "Kind", choices=KINDS, wide=7)),
            (F(("do",), "What to do", PROSE, prose=6),),
            (F(("if_late",), "What happens if it waits", PROSE, prose=2),),
        ),
    ),
    Section(
        "How long",
        (
            (
                F(("hands_on",), "By hand", SPAN, "10 min", "{} of work", wide=6.5),
                F(("lasts", "earliest"), "Earliest", SPAN, "8 h", "may end after {}", wide=6.5),
                F(("lasts", "aim"), "Aim", SPAN, "12 h", "best after {}", wide=6.5),
                F(("lasts", "latest"), "Latest", SPAN, "18 h", "must end after {}", wide=6.5),
            ),
        ),
        advice="From its start.",
        kinds=" ".join(kind.value for kind in StepKind if kind is not StepKind.CURE),
    ),
    Section(
        "After the step before",
        (
            (F(("gap", "at_once"), "Begins at once, as the step before ends", flag=False),),
            (
                F(("gap", "least"), "Not before", SPAN, "if there is a rest", "rests {}", wide=6.5),
                F(("gap", "aim"), "Best after", SPAN, "if it matters", "best {} after", wide=6.5),
                F(("gap", "most"), "Not later than", SPAN, "no limit", "within {}", wide=6.5),
                F(("gap", "after"), "Counted from", hint="lifting", wide=6.5),
            ),
        ),
    ),
    Section(
        "Tending",
        (
            (
                F(("tending", "act"), "A short order", hint="Stir"),
                F(("tending", "done"), "Its button says", hint="Stirred"),
            ),
            (
                F(("tending", "offsets"), "At first after", SPANS, "10 min, 30 min", "at {}"),
                F(("tending", "every"), "Then every", SPAN, "3 h", "each {} after the last"),
            ),
        ),
        advice="A small act inside a long step. All empty: none.",
    ),
    Section(
        "Is it dry?",
        (
            (
                F(("ask_dry", "offsets"), "Ask first after", SPANS, "6 h, 12 h", "at {}"),
                F(("ask_dry", "every"), "Then every", SPAN, "3 h", "each {} while you are awake"),
            ),
        ),
        kinds="dry",
    ),
    Section("Goes in", listed=_AMOUNT),
    Section("Worth measuring", listed=_READING),
    Section("Cautions", cautions=True),
    Section(
        "As notices and buttons say it",
        (
            (F(("order",), "When it may begin", hint="Lay the cloth in the milk"),),
            (
                F(("end_order",), "When it ends", hint="Lift the cloth and spin"),
                F(("end_done",), "The button says", hint="Lifted", wide=7),
            ),
        ),
    ),
    Section(
        "Coat and milk",
        (
            (
                F(("coat",), "Coat", NUMBER, "1, 2, 3 …", wide=5),
                F(("slug",), "Short name", wide=8),
            ),
            (
                F(("optional",), "The coat may be left out", flag=False, wide=10),
                F(("makes_milk",), "Makes milk", flag=False),
                F(("uses_milk",), "Uses milk", flag=False),
            ),
        ),
    ),
)

CURE: Final = (
    Section(
        "The cure",
        (
            (
                F(("cure", "ready_title"), "Once it is over", hint="ready for immersion", wide=12),
                F(("cure", "default_days"), "Days offered first", NUMBER, wide=6),
                F(("cure", "paint_best_days"), "Best for painting, days", NUMBER, wide=6),
            ),
        ),
        advice="Days count from fully dry. Each view is a choice with its source.",
    ),
    Section("Views", listed=_VIEW),
)
