"""Methods, lots and entries for tests, told in few words."""

from collections.abc import Iterable
from datetime import UTC, datetime, time, timedelta
from functools import cache

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act, Entry
from studio_log.domain.lots import Lot
from studio_log.domain.method_text import read_method
from studio_log.domain.methods import (
    AskDry,
    CurePlan,
    CureView,
    Gap,
    Method,
    MethodStep,
    Spread,
    StepKind,
    Tending,
)
from studio_log.domain.pieces import Piece
from studio_log.domain.quiet import QuietHours
from studio_log.domain.replay import replay
from studio_log.domain.starting import piece_data
from tests.support.tree import TREE

NINE = datetime(2026, 6, 9, 8, 0, tzinfo=UTC)
"""09:00 in London on 9 June 2026, a Tuesday."""
LONDON = QuietHours(time(22), time(7), "Europe/London")
NO_QUIET = QuietHours(time(0), time(0), "Europe/London")
MINUTE, HOUR, DAY = timedelta(minutes=1), timedelta(hours=1), timedelta(days=1)

LONG = "soy-immersion-long"
SHORT = "soy-painting-short"
SCOUR = "scour-cellulose"


def shipped_texts() -> dict[str, str]:
    """The methods that come with the program: file name to TOML."""
    found = sorted((TREE / "resources" / "methods").glob("*.toml"))
    return {path.name: path.read_text("utf-8") for path in found}


@cache
def shipped() -> dict[tuple[str, int], Method]:
    """The shipped methods by slug and version."""
    methods = [read_method(text, name=name) for name, text in shipped_texts().items()]
    return {method.key: method for method in methods}


def spread(earliest: float, aim: float, latest: float, unit: timedelta = HOUR) -> Spread:
    return Spread(earliest * unit, aim * unit, latest * unit)


def a_step(slug: str = "soak", kind: StepKind = StepKind.SOAK, **rest: object) -> MethodStep:
    """A step of an hour or two, hands-on for ten minutes."""
    values: dict[str, object] = {
        "title": slug.replace("-", " ").capitalize(),
        "order": f"Begin {slug}",
        "end_order": f"End {slug}",
        "end_done": "Done",
        "do": "Do it.",
        "hands_on": timedelta(minutes=10),
        "lasts": None if kind is StepKind.CURE else spread(1, 2, 3),
        "gap": Gap(),
        "if_late": "It spoils.",
    }
    return MethodStep(slug=slug, kind=kind, **(values | rest))  # type: ignore[arg-type]


def a_cure(**rest: object) -> CurePlan:
    values: dict[str, object] = {
        "ready_title": "ready for immersion",
        "default_days": 90,
        "views": (CureView(90, "three months", "common practice, no source"),),
        "paint_best_days": 14,
    }
    return CurePlan(**(values | rest))  # type: ignore[arg-type]


def a_method(*steps: MethodStep, slug: str = "made-up", **rest: object) -> Method:
    values: dict[str, object] = {
        "version": 1,
        "title": slug.capitalize(),
        "school": "none",
        "summary": "For a test.",
        "source": "invented",
    }
    return Method(slug=slug, steps=steps, **(values | rest))  # type: ignore[arg-type]


def coat(number: int, *, optional: bool = False) -> tuple[MethodStep, ...]:
    """A dip, a spin and a drying, as the long soak has them."""
    at_once = Gap(at_once=True, most=timedelta(minutes=15))
    same = {"coat": number, "optional": optional}
    ask = AskDry((6 * HOUR, 12 * HOUR), 3 * HOUR)
    return (
        a_step(f"dip-{number}", StepKind.DIP, lasts=spread(1, 1, 2, MINUTE), uses_milk=True,
               gap=Gap(most=48 * HOUR, after="fully dry"), **same),
        a_step(f"spin-{number}", StepKind.SPIN, lasts=spread(1, 5, 10, MINUTE), gap=at_once,
               **same),
        a_step(f"dry-{number}", StepKind.DRY, lasts=spread(3, 8, 24), gap=at_once, ask_dry=ask,
               **same),
    )  # fmt: skip


STIRRED = Tending("Stir", "Stirred", (10 * MINUTE, 30 * MINUTE, 60 * MINUTE), 3 * HOUR)


class Story:
    """A lot told act by act: each is checked against all that went before.

    `at` is the moment the story has reached; every act moves it where it says so. An act
    that is refused leaves the story as it was.
    """

    def __init__(
        self,
        method: Method | str = LONG,
        *others: Method | str,
        at: datetime = NINE,
        pieces: Iterable[Piece] = (),
        **new: object,
    ) -> None:
        made = [shipped()[(one, 1)] if isinstance(one, str) else one for one in (method, *others)]
        self.book = {one.key: one for one in made} | shipped()
        self.at = at
        self.entries: list[Entry] = []
        held = list(pieces) or [Piece(1, "linen", given_grams=150.0), two_hundred(2)]
        data = {"name": "runners", "method": list(made[0].key)}
        self._add(Entry(
            "26-001", Act.NEW, at, at, "Europe/London",
            data={**data, "pieces": [piece_data(one) for one in held], **new},
        ))  # fmt: skip

    def _add(self, entry: Entry) -> Lot:
        numbered = [*self.entries, entry]
        numbered[-1] = Entry(**{**entry.__dict__, "number": len(numbered)})
        lot = replay(numbered, self.book)
        self.entries = numbered
        return lot

    @property
    def lot(self) -> Lot:
        return replay(self.entries, self.book)

    def number(self, step: int | str) -> int:
        """The number of a step, by its slug the latest of that name."""
        if isinstance(step, int):
            return step
        return [one.number for one in self.lot.steps if one.slug == step][-1]

    def mark(self, act: Act, step: int | str | None = None, at: datetime | None = None,
             *, sure: bool = False, **rest: object) -> Lot:  # fmt: skip
        data = {**rest.pop("data", {}), **({"sure": True} if sure else {})}  # type: ignore[dict-item]
        self.at = at or self.at
        number = None if step is None else self.number(step)
        return self._add(Entry("26-001", act, self.at, self.at, "Europe/London", step=number,
                               data=data, **rest))  # type: ignore[arg-type]  # fmt: skip

    def go_on(self, method: Method | str, **rest: object) -> Lot:
        if isinstance(method, Method):
            self.book[method.key] = method
        key = [method, 1] if isinstance(method, str) else list(method.key)
        return self.mark(Act.GO_ON, data={"method": key}, **rest)  # type: ignore[arg-type]

    def after(self, **span: float) -> "Story":
        """Let time pass."""
        self.at += timedelta(**span)
        return self

    def refusal(self, act: Act, step: int | str | None = None, **rest: object) -> Refusal:
        """Do what must be refused, and give the refusal behind it."""
        before = list(self.entries)
        try:
            self.mark(act, step, **rest)  # type: ignore[arg-type]
        except Refusal as refusal:
            assert self.entries == before
            return getattr(refusal, "refusal", refusal)
        raise AssertionError(f"{act} of {step} was taken")

    def up_to(self, slug: str) -> "Story":
        """Walk every step before one, each for its aim, so that this one is next."""
        for step in self.lot.steps:
            if step.slug == slug:
                return self
            if step.spec.kind is StepKind.CURE or step.optional:
                continue
            if not self.lot.step(step.number).running:
                self.mark(Act.START, step.number)
            self.at += step.spec.lasts.aim if step.spec.lasts else DAY
            self.mark(Act.DRY if step.spec.kind is StepKind.DRY else Act.END, step.number)
        return self


def two_hundred(number: int) -> Piece:
    return Piece(number, "cotton", given_grams=200.0)
