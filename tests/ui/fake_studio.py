"""A studio written by hand for the window's tests: invented lots, answers as values.

Amounts are worked out for real from the method file; all else stands here as it would come
home from the services.
"""

from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

from studio_log.domain.amounts import vessel_fits, work_out
from studio_log.domain.method_text import read_method_bytes
from studio_log.domain.methods import Method, StepKind
from studio_log.domain.pieces import Piece
from studio_log.domain.tags import TagFacts, TagRow
from studio_log.services import questions as q
from studio_log.services.commands import Outcome
from studio_log.services.lots_found import LotsFound
from studio_log.services.search import FindLots, LotRowsFor
from studio_log.services.settings import Settings
from tests.ui.timeline_lots import NOW, ZONE, lots, nights

METHODS = Path(__file__).parents[2] / "resources" / "methods"
K = StepKind
SOY = (K.BEANS, K.MILK, K.MILK, K.SOAK, K.SPIN, K.DRY, K.DIP, K.SPIN, K.DRY, K.DIP, K.SPIN,
       K.DRY, K.CURE)  # fmt: skip


@dataclass
class HandClock:
    """A clock moved by hand."""

    at: datetime = NOW
    name: str = ZONE

    def now(self) -> datetime:
        """Give the present."""
        return self.at

    def zone(self) -> str:
        """Give the zone."""
        return self.name

    def real(self, span: timedelta) -> timedelta:
        """Nothing hurries."""
        return span


def method(slug: str) -> Method:
    """Read one of the methods that are shipped."""
    return read_method_bytes((METHODS / f"{slug}.toml").read_bytes(), name=f"{slug}.toml")


def strip(done: int, running: int = 1, kinds: tuple[StepKind, ...] = SOY) -> Any:
    """Give a strip with so many steps done and so many running."""
    states = ["done"] * done + ["running"] * running
    states += ["ahead"] * (len(kinds) - len(states))
    return tuple(zip(kinds, states, strict=True))


def lines() -> tuple[q.LotLine, ...]:
    """Give eight lots in all sorts of states."""
    rows = (
        ("26-031", "Linen table runners × 2", "in-work", "First soak · 3 h 40 min in",
         "stir now", "now", strip(3)),
        ("26-030", "Cotton lawn, 3 m", "in-work", "Drying after the second coat",
         "dry ≈ 16:40", "soon", strip(8)),
        ("26-029", "Hemp sampler, 6 swatches", "in-work", "Bean soak · 3 h 36 min in",
         "drain 21:30", "calm", strip(0)),
        ("26-027", "Silk noil scarf", "in-work", "Cooling in the scour", "lift 18:00", "calm",
         strip(1, 1, (K.SCOUR, K.HAND, K.RINSE, K.DRY))),
        ("26-026", "Cotton canvas totes × 8", "in-work", "Drying after the third coat",
         "is it dry?", "now", strip(11)),
        ("26-022", "Linen panels × 4", "curing", "Curing · day 12 of 14 for painting",
         "paint by Thu 11 June", "soon", strip(12)),
        ("26-015", "Muslin backdrop, 5 m", "curing", "Curing · day 61 of 90",
         "ready Wed 8 July", "calm", strip(12)),
        ("26-014", "-h & <b>bold</b>", "planned", "Not begun", "", "calm", strip(0, 0)),
    )  # fmt: skip
    return tuple(
        q.LotLine(code, name, state, doing, need, NOW if need else None, urgency, steps)
        for code, name, state, doing, need, urgency, steps in rows
    )


def steps() -> tuple[q.StepLine, ...]:
    """Give the steps of 26-031: beans and milk done, the first soak running."""
    soy = method("soy-immersion-long")
    amounts = {one.slug: one for one in work_out(
        [rule for step in soy.steps for rule in step.amounts], grams=299.7
    )}  # fmt: skip
    told = {
        "bean-soak": ("done", "8–18 h, aim 12 h", "20:00 → 08:10", "90 g dry → 207 g soaked"),
        "blend": ("done", "1–2 min", "08:20 → 08:24", ""),
        "strain": ("done", "within 1 h", "08:24 → 08:50",
                   "milk M26-004, 0.9 L, cold, use by Thu 08:50"),
        "first-soak": ("running", "10–18 h, aim 14 h", "09:20 → now",
                       "5.4 L bath; stirred 10:05; 1 of 5 stirs done"),
        "spin-1": ("ahead", "within 10 min of lifting", "", ""),
    }  # fmt: skip
    made = []
    for number, step in enumerate(soy.steps, start=1):
        state, planned, actual, details = told.get(step.slug, ("ahead", "", "", ""))
        ahead = state == "ahead"
        acts: tuple[tuple[str, str], ...] = ()
        if state == "running":
            acts = (("tend", "Stirred"), ("end", step.end_done), ("note", "Note only"))
        elif step.slug == "bean-soak":
            acts = (("note", "Note only"),)
        elif step.slug == "spin-1":
            acts = (("start", "Start"), ("skip", "Skip…"))
        made.append(
            q.StepLine(
                number=number,
                order=number,
                slug=step.slug,
                title=step.title,
                kind=step.kind,
                state=state,
                planned=planned or "8–24 h, aim 16 h",
                actual=actual,
                when="Wed 10 June 07:00 (aim 03:00)" if step.slug == "spin-1" else
                ("Wed 10 June 07:12" if ahead else ""),
                why="The aim, 23:20, falls in quiet hours (22:00–07:00); the window allows "
                "07:00, the nearest waking moment." if step.slug == "spin-1" else "",
                broken="",
                amounts=tuple(amounts[rule.slug] for rule in step.amounts),
                details=details,
                do=" ".join(step.do.split()),
                cautions=("Soy is a food allergen: keep the milk away from kitchen things.",)
                if step.slug == "first-soak" else (),
                optional=step.optional,
                acts=acts,
            )
        )  # fmt: skip
    return tuple(made)


def entries() -> tuple[q.EntryLine, ...]:
    """Give a short journal: a stir was taken back, a start corrected."""
    rows = ((1, -17.1, "Lot made", "new"), (2, -17.1, "Bean soak started", "start"),
            (3, -5.0, "Bean soak ended", "end"), (4, -3.8, "First soak started", "start"),
            (5, -3.0, "Stirred", "tend"))  # fmt: skip
    return tuple(
        q.EntryLine(number, at := NOW + timedelta(hours=hours), at, words, act, None,
                    "with the long spoon" if number == 5 else "", number == 5,
                    6 if number == 2 else None)
        for number, hours, words, act in rows
    )  # fmt: skip


PIECES = (
    Piece(1, "linen", "runner", 1.8, 0.45, 185.0),
    Piece(2, "linen", "runner", 1.8, 0.45, 185.0),
)


def sheet() -> q.LotSheet:
    """Give 26-031 whole."""
    return q.LotSheet(
        code="26-031",
        name="Linen table runners × 2",
        state="in-work",
        heading="soy binder for immersion · 299.7 g · 1.62 m²",
        doing="First soak · 3 h 40 min in",
        pieces=PIECES,
        steps=steps(),
        entries=entries(),
        cure_words="",
        vessel_words="The 10 L bucket holds 5.4 L bath with 299.7 g cloth.",
        cautions=(),
        lineage="",
        milk_words="Milk M26-004, shared with 26-029; kept cold, good until Thu 11 June 08:50.",
        undo="First soak started 09:20",
        redo="",
        data={"place": "line 2"},
    )


STIR = q.Card(
    key="26-031/4/tend/2", lot="26-031", step=4, kind="tend", urgency="now",
    due=NOW - timedelta(minutes=8), due_words="due 13:00, 8 min late", title="Stir the soak",
    why="Every 3 h while awake; last stirred 10:05.",
    if_late="A fold left alone takes up less milk and dyes as a line.", answer="Stirred",
    raised=True,
)  # fmt: skip
SPIN = q.Card(
    key="26-028/5/ready", lot="26-028", step=5, kind="ready", urgency="spoiling",
    due=NOW, due_words="ends 13:20", title="Dip: lift the cloth", why="The dip lasts a minute.",
    if_late="", answer="Lifted", countdown_to=NOW + timedelta(minutes=12, seconds=5),
)  # fmt: skip
DRY = q.Card(
    key="26-026/12/is_dry", lot="26-026", step=12, kind="is_dry", urgency="soon",
    due=NOW + timedelta(minutes=1), due_words="asked from 13:05", title="Is it dry?",
    why="Hung at 07:05, six hours ago.", if_late="Damp past 24 h it may mildew.", answer="Dry",
    second="Still damp", put_off_warning="the last call is at 14:00; after it the cloth may spot.",
)  # fmt: skip


def bench() -> q.Bench:
    """Give two cards for now, some for later."""
    later = tuple(
        replace(DRY, key=f"later-{at}", lot=lot, title=title, second="", put_off_warning="",
                due=NOW + timedelta(hours=hours))
        for at, (hours, lot, title) in enumerate(
            ((2.87, "26-031", "Stir the soak"), (4.87, "26-027", "Lift the silk, rinse"),
             (6, "26-026", "Third coat, if dry"),
             (8.37, "26-029", "Drain the beans before the night"))
        )
    )  # fmt: skip
    tonight = (replace(DRY, key="tonight", lot="26-031", title="Lift the cloth and spin",
                      second="", put_off_warning="",
                      due=NOW + timedelta(hours=17.87)),)  # fmt: skip
    return q.Bench(
        now=(STIR, DRY), later=later, tonight=tonight, next_words="",
        quiet_words="Nothing rings from 22:00 to 07:00.",
        take_back=q.TakeBack("26-031", "26-031 stirred 10:05", NOW + timedelta(minutes=9)),
    )  # fmt: skip


STATUS = q.Status(
    saved="Saved 13:08",
    channels="reminders on: desktop notices, chime",
    channels_ok=True,
    next_ring="next ring 16:00",
    copy="last copy today 07:00",
)
SILENT = replace(
    STATUS,
    channels="desktop notices are off: no service answers; ringing here only",
    channels_ok=False,
)


@dataclass
class FakeStudio:
    """Answers from what stands above; remembers what it was told."""

    done: list[Any] = field(default_factory=list)
    asked: list[Any] = field(default_factory=list)
    refusals: list[Exception] = field(default_factory=list)
    """Raised by the next commands, one each."""
    outcomes: list[Outcome] = field(default_factory=list)
    """Given by the next commands, one each."""
    settings: Settings = field(
        default_factory=lambda: Settings(studio="Harbour Lane Cloth Studio", welcomed=True)
    )
    lines: tuple[q.LotLine, ...] = field(default_factory=lines)
    sheet: q.LotSheet = field(default_factory=sheet)
    bench: q.Bench = field(default_factory=bench)
    status: q.Status = STATUS
    counts: dict[str, int] = field(default_factory=lambda: {
        "live": 8, "in-work": 5, "curing": 2, "ready": 0, "planned": 1, "all": 214,
    })  # fmt: skip

    def do(self, command: Any) -> Outcome:
        """Note the command; refuse or answer as laid out."""
        self.done.append(command)
        if self.refusals:
            raise self.refusals.pop(0)
        return self.outcomes.pop(0) if self.outcomes else Outcome(lots=frozenset({"26-031"}))

    def ask(self, question: Any) -> Any:
        """Answer a question."""
        self.asked.append(question)
        return getattr(self, f"_{type(question).__name__}")(question)

    def sent(self, kind: type[Any]) -> list[Any]:
        """Give the commands of one kind, in order."""
        return [one for one in self.done if isinstance(one, kind)]

    def _LotLinesFor(self, of: q.LotLinesFor) -> q.LotLines:  # noqa: N802
        find = of.find.casefold()
        shown = [one for one in self.lines if find in f"{one.code} {one.name}".casefold()]
        if of.state not in ("live", "all"):
            shown = [one for one in shown if one.state == of.state]
        return q.LotLines(tuple(shown), self.counts)

    def _FindLots(self, of: FindLots) -> LotsFound:  # noqa: N802
        shown = self._LotLinesFor(q.LotLinesFor(of.state, of.find))
        codes = tuple(line.code for line in shown.lines)
        said = tuple(f"“{word}”" for word in of.find.split())
        return LotsFound(codes, shown.counts, said, shown.lines[: of.rows])

    def _LotRowsFor(self, of: LotRowsFor) -> tuple[q.LotLine, ...]:  # noqa: N802
        return tuple(line for line in self.lines if line.code in of.codes)

    def _LotSheetFor(self, of: q.LotSheetFor) -> q.LotSheet:  # noqa: N802
        if of.code == self.sheet.code:
            return self.sheet
        line = next(one for one in self.lines if one.code == of.code)
        return replace(self.sheet, code=of.code, name=line.name, steps=(), entries=())

    def _TimelineFor(self, _of: q.TimelineFor) -> q.Timeline:  # noqa: N802
        return q.Timeline(tuple(lots()), tuple(nights()), NOW, ZONE)

    def _BenchFor(self, _of: q.BenchFor) -> q.Bench:  # noqa: N802
        return self.bench

    def _StatusFor(self, _of: q.StatusFor) -> q.Status:  # noqa: N802
        return self.status

    def _SettingsFor(self, _of: q.SettingsFor) -> Settings:  # noqa: N802
        return self.settings

    def _MethodsFor(self, _of: q.MethodsFor) -> tuple[Method, ...]:  # noqa: N802
        return (method("soy-immersion-long"), method("soy-painting-short"),
                method("scour-cellulose"))  # fmt: skip

    def _AmountsFor(self, of: q.AmountsFor) -> q.AmountsAnswer:  # noqa: N802
        rules = [rule for step in method(of.slug).steps for rule in step.amounts]
        amounts = work_out(rules, grams=of.grams, changed=of.changed)
        bath = next((one.value for one in amounts if one.vessel), None)
        if bath is None or of.vessel_litres is None:
            return q.AmountsAnswer(amounts, "", None)
        fit = vessel_fits(bath, of.grams, of.vessel_litres)
        return q.AmountsAnswer(amounts, fit.sentence, fit.fits)

    def _TagsFor(self, of: q.TagsFor) -> tuple[TagFacts, ...]:  # noqa: N802
        rows = (TagRow("First soak", "Tue 9 June 09:20"), TagRow("Spin"))
        return tuple(
            TagFacts(code, "Linen table runners × 2", "299.7 g", "soy binder", "8 June 2026",
                     rows, "Soy is a food allergen.", "Harbour Lane Cloth Studio")
            for code in of.codes
        )  # fmt: skip
