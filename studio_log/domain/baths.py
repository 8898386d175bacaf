"""A bath or vat: a long-lived liquid, worked out from its own journal and nothing else.

What happened counts in the order in which it happened, not in which it was written down: a
use typed the next morning stands where it belongs among the exhausts.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from typing import Any, Final
from zoneinfo import ZoneInfo

from studio_log.domain.bath_kinds import KINDS, BathKind, Range, heat_of
from studio_log.domain.errors import Refusal
from studio_log.domain.folding import folded
from studio_log.domain.journal import Act, Entry
from studio_log.language.words import tr, tr_later

MISSING: Final = tr_later("There is no such bath. `bath list` shows every one.")


@dataclass(frozen=True)
class BathUse:
    """Cloth that went through: `exhaust` is 0 for the first use since made or refreshed."""

    number: int
    at: datetime
    lots: tuple[str, ...]
    step: int | None
    grams: float
    exhaust: int
    charge: int
    """How often the bath had been refreshed before."""
    counted: bool = False
    """Whether it is a dye bath, of which exhausts are spoken."""


@dataclass(frozen=True)
class Dip:
    """One dip in a vat; `nth` counts those of the same cloth since it was last entered."""

    number: int
    at: datetime
    lots: tuple[str, ...]
    nth: int
    dipped: timedelta | None
    aired: timedelta | None


@dataclass(frozen=True)
class Seen:
    """The last reading of one kind: what was seen or measured, and when."""

    value: float | str
    at: datetime


@dataclass(frozen=True)
class BathPlan:
    """A use that is planned, and when that was said; `ready` once the bath is."""

    number: int
    at: datetime
    made_at: datetime
    ready: bool = False


@dataclass(frozen=True)
class Bath:
    """A bath as it stands. Weights in grams, volume in litres."""

    code: str
    kind: BathKind
    made_at: datetime
    name: str = ""
    litres: float | None = None
    place: str = ""
    own_refresh: float | None = None
    uses: tuple[BathUse, ...] = ()
    dips: tuple[Dip, ...] = ()
    read: Mapping[str, Seen] = field(default_factory=dict)
    """The last reading by its name: ph, temperature, colour, flower."""
    refreshed: tuple[datetime, ...] = ()
    fed_at: datetime | None = None
    plan: BathPlan | None = None
    finished: bool = False
    voided: bool = False
    answered: frozenset[str] = frozenset()
    """Tails of the keys of reminders that the dyer has seen."""

    @property
    def live(self) -> bool:
        """Whether it still stands in the studio."""
        return not (self.finished or self.voided)

    @property
    def fresh_since(self) -> datetime:
        """When it was made or last refreshed."""
        return self.refreshed[-1] if self.refreshed else self.made_at

    @property
    def uses_since(self) -> tuple[BathUse, ...]:
        """The uses since it was made or last refreshed."""
        return tuple(one for one in self.uses if one.charge == len(self.refreshed))

    @property
    def grams(self) -> float:
        """All the cloth that ever went through."""
        return sum(one.grams for one in self.uses)

    @property
    def grams_since(self) -> float:
        """The cloth that went through since it was made or last refreshed."""
        return sum(one.grams for one in self.uses_since)

    @property
    def most_grams(self) -> float | None:
        """Cloth after which it wants refreshing: its own figure, else its kind's; or None."""
        if self.own_refresh is not None:
            return self.own_refresh
        rule = self.kind.refresh
        if rule is None or rule.grams_per_litre is None:
            return rule.grams if rule else None
        return rule.grams_per_litre * (self.litres or self.kind.litres)

    @property
    def refresh_since(self) -> datetime | None:
        """The use after which it wants refreshing, None where it does not yet."""
        most = self.most_grams
        times = self.kind.refresh.uses if self.kind.refresh else None
        grams = 0.0
        for count, one in enumerate(self.uses_since, start=1):
            grams += one.grams
            if (most is not None and grams >= most) or (times is not None and count >= times):
                return one.at
        return None

    @property
    def next_exhaust(self) -> int:
        """What the next use would be: 0 for the first of a fresh bath."""
        return len(self.uses_since)

    @property
    def use_by(self) -> datetime | None:
        """When it is likely too old, None where its kind keeps."""
        return self.fresh_since + self.kind.keeps if self.kind.keeps else None

    @property
    def heat(self) -> Range | None:
        """The heat it should have."""
        return heat_of(self.kind, self.name)

    @property
    def lots(self) -> tuple[str, ...]:
        """Every lot that used it, the first first."""
        named = [one.lots for one in self.uses] + [one.lots for one in self.dips]
        return tuple(dict.fromkeys(code for codes in named for code in codes))


def bath_from(entries: Iterable[Entry]) -> Bath:
    """Give the bath as its journal tells it; Refusal where that does not read."""
    return folded(entries, Act.BATH_NEW, _made, _applied, missing=MISSING, by_time=True)


def _made(entry: Entry) -> Bath:
    data = entry.data
    bath = Bath(entry.subject, KINDS[data["kind"]], entry.at)
    return _with_values(_noted(bath, entry), data)


def _applied(bath: Bath, entry: Entry) -> Bath:
    act = _ACTS.get(entry.act)
    if act is None:
        raise Refusal(tr("{act} is nothing that is done to a bath.", act=entry.act.words))
    if entry.at < bath.made_at:
        raise Refusal(
            tr("{code} was made {made}: nothing can have been done to it before. Nothing was "
               "changed; look at the time.",
               code=bath.code, made=_wall(bath.made_at, entry.zone))
        )  # fmt: skip
    if bath.finished and entry.act in WORK:
        raise Refusal(
            tr("{code} is finished: {act} cannot follow. Nothing was changed; "
               "`bath set {code} --not-finished` opens it again.",
               code=bath.code, act=entry.act.words)
        )  # fmt: skip
    return act(_noted(bath, entry), entry)


def _wall(at: datetime, zone: str) -> str:
    return f"{at.astimezone(ZoneInfo(zone)):%Y-%m-%d %H:%M}"


def _noted(bath: Bath, entry: Entry) -> Bath:
    """Take over what was measured with any act."""
    if not entry.readings:
        return bath
    return replace(
        bath,
        read={**bath.read, **{name: Seen(said, entry.at) for name, said in entry.readings.items()}},
    )


def _with_values(bath: Bath, data: Mapping[str, Any]) -> Bath:
    names = ("name", "litres", "place", "own_refresh", "finished")
    return replace(bath, **{name: data[name] for name in names if name in data})


def _set(bath: Bath, entry: Entry) -> Bath:
    return _with_values(bath, entry.data)


def _used(bath: Bath, entry: Entry) -> Bath:
    data = entry.data
    use = BathUse(
        entry.number, entry.at, tuple(data.get("lots", ())), data.get("step"),
        float(data["grams"]), bath.next_exhaust, len(bath.refreshed), bath.kind.exhausts,
    )  # fmt: skip
    return replace(bath, uses=(*bath.uses, use), plan=None)


def _dipped(bath: Bath, entry: Entry) -> Bath:
    lots = tuple(entry.data.get("lots", ()))
    entered = [one.at for one in bath.uses if not lots or set(lots) & set(one.lots)]
    since = entered[-1] if entered else bath.made_at
    alike = [
        one for one in bath.dips
        if one.at >= since and (not lots or not one.lots or set(lots) & set(one.lots))
    ]  # fmt: skip
    dipped, aired = (_span(entry.data.get(name)) for name in ("dipped", "aired"))
    dip = Dip(entry.number, entry.at, lots, len(alike) + 1, dipped, aired)
    return replace(bath, dips=(*bath.dips, dip))


def _span(seconds: float | None) -> timedelta | None:
    return None if seconds is None else timedelta(seconds=float(seconds))


def _fed(bath: Bath, entry: Entry) -> Bath:
    return replace(bath, fed_at=entry.at)


def _refreshed(bath: Bath, entry: Entry) -> Bath:
    return replace(bath, refreshed=(*bath.refreshed, entry.at))


def _planned(bath: Bath, entry: Entry) -> Bath:
    said = entry.data.get("planned")
    plan = BathPlan(entry.number, datetime.fromisoformat(said), entry.at) if said else None
    return replace(bath, plan=plan)


def _ready(bath: Bath, entry: Entry) -> Bath:
    plan = replace(bath.plan, ready=True) if bath.plan is not None else None
    return replace(bath, plan=plan, fed_at=entry.at)


def _remarked(bath: Bath, entry: Entry) -> Bath:
    seen = entry.data.get("seen")
    return replace(bath, answered=bath.answered | {str(seen)}) if seen else bath


def _voided(bath: Bath, _entry: Entry) -> Bath:
    return replace(bath, voided=True)


def _read(bath: Bath, _entry: Entry) -> Bath:
    return bath  # what was measured is taken over with every act


WORK = frozenset(
    {Act.BATH_USE, Act.BATH_DIP, Act.BATH_READ, Act.BATH_FEED, Act.BATH_REFRESH, Act.BATH_READY,
     Act.PLAN}
)  # fmt: skip
"""What is done with a bath that stands; a finished one takes only a remark or a change."""
_ACTS: Mapping[Act, Callable[[Bath, Entry], Bath]] = {
    Act.BATH_SET: _set,
    Act.BATH_USE: _used,
    Act.BATH_DIP: _dipped,
    Act.BATH_READ: _read,
    Act.BATH_FEED: _fed,
    Act.BATH_REFRESH: _refreshed,
    Act.BATH_READY: _ready,
    Act.PLAN: _planned,
    Act.NOTE: _remarked,
    Act.VOID: _voided,
}
