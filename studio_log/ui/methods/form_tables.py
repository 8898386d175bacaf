"""Which fields the form has, block by block, in the order in which a dyer thinks of them."""

from dataclasses import dataclass
from typing import Final

from studio_log.domain.method_lines import Path
from studio_log.domain.methods import Basis, StepKind
from studio_log.language.words import tr_later
from studio_log.present.hues import KIND_WORDS
from studio_log.ui.methods.fields import FieldSpec as F
from studio_log.ui.methods.sorts import NAMES, NUMBER, PROSE, SPAN, SPANS


@dataclass(frozen=True)
class Rows:
    """A list of small tables, such as the amounts of a step."""

    path: Path
    add: str
    """The button that adds one: "Add an amount"."""
    out: str
    """The button that takes one out, for who does not see where it is: "Take out amount {n}"."""
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
    (Basis.WOF, tr_later("% of the weight of fibre")),
    (Basis.PER_KG, tr_later("litres a kilogram of cloth")),
    (Basis.PER_AREA, tr_later("grams a square metre of cloth")),
    (Basis.FIXED, tr_later("the same for any weight")),
    (Basis.PER_LITRE, tr_later("grams of it to the litre")),
    (Basis.TIMES_VOLUME, tr_later("times the volume of")),
    (Basis.PARTS, tr_later("parts water on one part of")),
    (Basis.IN_BATH, tr_later("grams in each litre of")),
    (Basis.TIMES_WEIGHT, tr_later("times the weight of")),
)
KINDS: Final = tuple((kind.value, words) for kind, words in KIND_WORDS.items())
COMMON: Final = tr_later("common practice, or whose it is")

HEAD: Final = (
    Section(
        tr_later("The method"),
        (
            (F(("title",), tr_later("Name")),),
            (
                F(("school",), tr_later("School of practice")),
                F(("version",), tr_later("Version"), NUMBER, wide=5),
            ),
            (F(("summary",), tr_later("What it does and what it is for"), PROSE, prose=5),),
            (F(("source",), tr_later("Where it comes from"), PROSE, COMMON, prose=2),),
        ),
    ),
    Section(
        tr_later("What it meets"),
        (
            (
                F(("brings",), tr_later("Brings near the cloth"), NAMES, "soy, alkali"),
                F(("spoiled_by",), tr_later("Spoiled afterwards by"), NAMES, "alkali"),
            ),
            (F(("slug",), tr_later("Short name"), hint=tr_later("small letters and hyphens")),),
        ),
        advice=tr_later("Going on with a method that brings what spoils this one is asked about."),
    ),
)

_AMOUNT: Final = Rows(
    ("amounts",),
    tr_later("Add an amount"),
    tr_later("Take out amount {n}"),
    (
        (
            F(("title",), tr_later("What"), hint=tr_later("dry soybeans")),
            F(("slug",), tr_later("Short name"), wide=7),
        ),
        (
            F(("value",), tr_later("How much"), NUMBER, wide=5),
            F(
                ("basis",),
                tr_later("Counted as"),
                choices=tuple((b.value, w) for b, w in BASES),
                wide=12,
            ),
            F(("of",), tr_later("Of what"), choices=(("", tr_later("nothing")),), wide=7),
            F(
                ("unit",),
                tr_later("Unit"),
                choices=(("", tr_later("goes by itself")), ("g", "g"), ("L", "L")),
                wide=6,
            ),
        ),
        (F(("note",), tr_later("Note"), PROSE), F(("source",), tr_later("Source"), PROSE, COMMON)),
        (
            F(("at_least",), tr_later("More does no harm"), flag=False),
            F(("vessel",), tr_later("The bucket has to hold it"), flag=False),
            F(("editable",), tr_later("May be changed for a lot"), flag=True),
        ),
        (F(("cup_grams",), tr_later("Grams in a US cup"), NUMBER, wide=7),),
    ),
    (("title", "new amount"), ("basis", Basis.WOF.value), ("value", 10)),
)
_READING: Final = Rows(
    ("readings",),
    tr_later("Add a reading"),
    tr_later("Take out reading {n}"),
    (
        (
            F(
                ("title",),
                tr_later("What is measured"),
                hint=tr_later("temperature of the bath"),
                wide=10,
            ),
            F(("unit",), tr_later("Unit"), hint="°C", wide=4),
            F(("slug",), tr_later("Short name"), wide=7),
        ),
    ),
    (("title", "new reading"),),
)
_VIEW: Final = Rows(
    ("cure", "views"),
    tr_later("Add a view"),
    tr_later("Take out view {n}"),
    (
        (
            F(("days",), tr_later("Days"), NUMBER, wide=4),
            F(("title",), tr_later("What is said of it"), wide=10),
        ),
        (F(("source",), tr_later("Whose view it is"), PROSE, COMMON),),
    ),
    (("days", 400), ("title", "new view"), ("source", "common practice")),
)

STEP: Final = (
    Section(
        tr_later("What is done"),
        (
            (
                F(("title",), tr_later("Name"), wide=12),
                F(("kind",), tr_later("Kind"), choices=KINDS, wide=7),
            ),
            (F(("do",), tr_later("What to do"), PROSE, prose=6),),
            (F(("if_late",), tr_later("What happens if it waits"), PROSE, prose=2),),
        ),
    ),
    Section(
        tr_later("How long"),
        (
            (
                F(
                    ("hands_on",),
                    tr_later("By hand"),
                    SPAN,
                    "10 min",
                    tr_later("{span} of work"),
                    wide=6.5,
                ),
                F(
                    ("lasts", "earliest"),
                    tr_later("Earliest"),
                    SPAN,
                    "8 h",
                    tr_later("may end after {span}"),
                    wide=6.5,
                ),
                F(
                    ("lasts", "aim"),
                    tr_later("Aim"),
                    SPAN,
                    "12 h",
                    tr_later("best after {span}"),
                    wide=6.5,
                ),
                F(
                    ("lasts", "latest"),
                    tr_later("Latest"),
                    SPAN,
                    "18 h",
                    tr_later("must end after {span}"),
                    wide=6.5,
                ),
            ),
        ),
        advice=tr_later("From its start."),
        kinds=" ".join(kind.value for kind in StepKind if kind is not StepKind.CURE),
    ),
    Section(
        tr_later("After the step before"),
        (
            (
                F(
                    ("gap", "at_once"),
                    tr_later("Begins at once, as the step before ends"),
                    flag=False,
                ),
            ),
            (
                F(
                    ("gap", "least"),
                    tr_later("Not before"),
                    SPAN,
                    tr_later("if there is a rest"),
                    tr_later("rests {span}"),
                    wide=6.5,
                ),
                F(
                    ("gap", "aim"),
                    tr_later("Best after"),
                    SPAN,
                    tr_later("if it matters"),
                    tr_later("best {span} after"),
                    wide=6.5,
                ),
                F(
                    ("gap", "most"),
                    tr_later("Not later than"),
                    SPAN,
                    tr_later("no limit"),
                    tr_later("within {span}"),
                    wide=6.5,
                ),
                F(("gap", "after"), tr_later("Counted from"), hint=tr_later("lifting"), wide=6.5),
            ),
        ),
    ),
    Section(
        tr_later("Tending"),
        (
            (
                F(("tending", "act"), tr_later("A short order"), hint=tr_later("Stir")),
                F(("tending", "done"), tr_later("Its button says"), hint=tr_later("Stirred")),
            ),
            (
                F(
                    ("tending", "offsets"),
                    tr_later("At first after"),
                    SPANS,
                    "10 min, 30 min",
                    tr_later("at {span}"),
                ),
                F(
                    ("tending", "every"),
                    tr_later("Then every"),
                    SPAN,
                    "3 h",
                    tr_later("each {span} after the last"),
                ),
            ),
        ),
        advice=tr_later("A small act inside a long step. All empty: none."),
    ),
    Section(
        tr_later("Is it dry?"),
        (
            (
                F(
                    ("ask_dry", "offsets"),
                    tr_later("Ask first after"),
                    SPANS,
                    "6 h, 12 h",
                    tr_later("at {span}"),
                ),
                F(
                    ("ask_dry", "every"),
                    tr_later("Then every"),
                    SPAN,
                    "3 h",
                    tr_later("each {span} while you are awake"),
                ),
            ),
        ),
        kinds="dry",
    ),
    Section(tr_later("Goes in"), listed=_AMOUNT),
    Section(tr_later("Worth measuring"), listed=_READING),
    Section(tr_later("Cautions"), cautions=True),
    Section(
        tr_later("As notices and buttons say it"),
        (
            (
                F(
                    ("order",),
                    tr_later("When it may begin"),
                    hint=tr_later("Lay the cloth in the milk"),
                ),
            ),
            (
                F(
                    ("end_order",),
                    tr_later("When it ends"),
                    hint=tr_later("Lift the cloth and spin"),
                ),
                F(("end_done",), tr_later("The button says"), hint=tr_later("Lifted"), wide=7),
            ),
        ),
    ),
    Section(
        tr_later("Coat and milk"),
        (
            (
                F(("coat",), tr_later("Coat"), NUMBER, "1, 2, 3 …", wide=5),
                F(("slug",), tr_later("Short name"), wide=8),
            ),
            (
                F(("optional",), tr_later("The coat may be left out"), flag=False, wide=10),
                F(("makes_milk",), tr_later("Makes milk"), flag=False),
                F(("uses_milk",), tr_later("Uses milk"), flag=False),
            ),
        ),
    ),
)

CURE: Final = (
    Section(
        tr_later("The cure"),
        (
            (
                F(
                    ("cure", "ready_title"),
                    tr_later("Once it is over"),
                    hint=tr_later("ready for immersion"),
                    wide=12,
                ),
                F(("cure", "default_days"), tr_later("Days offered first"), NUMBER, wide=6),
                F(("cure", "paint_best_days"), tr_later("Best for painting, days"), NUMBER, wide=6),
            ),
        ),
        advice=tr_later("Days count from fully dry. Each view is a choice with its source."),
    ),
    Section(tr_later("Views"), listed=_VIEW),
)
