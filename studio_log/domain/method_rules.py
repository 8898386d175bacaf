"""What the fields of a method have to agree on with each other.

Every rule looks only at fields in which no fault was found, so that one mistake is said once.
"""

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from datetime import timedelta
from itertools import pairwise
from typing import Final

from studio_log.domain.method_amounts import amounts_follow, amounts_of
from studio_log.domain.method_faults import Faults, nearest, shown
from studio_log.domain.method_fields import span_words
from studio_log.domain.method_lines import Path
from studio_log.domain.methods import CurePlan, Method, MethodStep, StepKind

_NONE: Final = timedelta(0)
_IN_ORDER: Final = "write earliest, aim and latest in order"
_GAP_IN_ORDER: Final = "write least, aim and most in order"


def find_clashes(method: Method, faults: Faults, *, cautions: Collection[str] | None) -> None:
    """Add the faults of fields that do not agree; `cautions` are those that may be named."""
    _slugs_once(method, faults)
    amounts_follow(method, faults)
    _cure_fits(method, faults)
    _coats_rise(method, faults)
    for number, step in enumerate(method.steps):
        one = _One(step, ("steps", number), faults)
        one.lasts_in_order()
        one.gap_in_order(first=number == 0)
        one.tending_fits()
        one.asks_dry_when_drying()
        if cautions is not None:
            one.cautions_known(cautions)


@dataclass(frozen=True)
class _One:
    """The rules inside one step."""

    step: MethodStep
    path: Path
    faults: Faults

    def lasts_in_order(self) -> None:
        """Find a spread that runs not from earliest over aim to latest, or takes no time."""
        lasts = self.step.lasts
        if lasts is None or not self._clear("lasts"):
            return
        if lasts.earliest <= _NONE:
            self._add(("lasts", "earliest"), "a step takes some time", "write 1 min or more")
        named = (("earliest", lasts.earliest), ("aim", lasts.aim), ("latest", lasts.latest))
        self._rises("lasts", named, _IN_ORDER)

    def gap_in_order(self, *, first: bool) -> None:
        """Find a gap out of order, or one at once that has nothing before it or a wait."""
        gap = self.step.gap
        if not self._clear("gap"):
            return
        named = [("least", gap.least), ("aim", gap.aim)]
        if gap.most is not None:
            named.append(("most", gap.most))
        self._rises("gap", named, _GAP_IN_ORDER)
        if gap.at_once and first:
            what = "there is no step before the first"
            self._add(("gap", "at_once"), what, "take it out")
        elif gap.at_once and gap.least > _NONE:
            what = f"at once and {span_words(gap.least)} later cannot both be"
            self._add(("gap", "at_once"), what, "take one of them out")

    def tending_fits(self) -> None:
        """Find tending without moments, or with moments out of order or after the step."""
        tending, lasts = self.step.tending, self.step.lasts
        if tending is None or not self._clear("tending"):
            return
        if not tending.offsets and tending.every is None:
            self._add(("tending",), "it has no moments", "write offsets, every or both")
        if tending.every is not None and tending.every <= _NONE:
            self._add(("tending", "every"), "no time passes between", "write 1 min or more")
        self._offsets_rise("tending", tending.offsets)
        last = tending.offsets[-1] if tending.offsets else _NONE
        if lasts is not None and self._clear("lasts") and last > lasts.latest:
            what = f"{span_words(last)} is after the step must end, {span_words(lasts.latest)}"
            place = ("tending", "offsets", len(tending.offsets) - 1)
            self._add(place, what, "take it out or let the step last longer")

    def asks_dry_when_drying(self) -> None:
        """Find a step that asks whether it is dry and does not dry, or asks out of order."""
        ask = self.step.ask_dry
        if ask is None or not self._clear("ask_dry"):
            return
        if self.step.kind is not StepKind.DRY and self._clear("kind"):
            what = f"a step of the kind {self.step.kind} does not dry"
            self._add(("ask_dry",), what, 'take it out or write kind = "dry"')
        if ask.every <= _NONE:
            self._add(("ask_dry", "every"), "no time passes between", "write 1 min or more")
        self._offsets_rise("ask_dry", ask.offsets)

    def cautions_known(self, known: Collection[str]) -> None:
        """Find cautions for which there are no words."""
        if not self._clear("cautions"):
            return
        for number, slug in enumerate(self.step.cautions):
            if slug not in known:
                near = nearest(slug, sorted(known))
                fix = f'write "{near}"' if near else f"write one of {', '.join(sorted(known))}"
                self._add(("cautions", number), f"there is no caution {shown(slug)}", fix)

    def _offsets_rise(self, key: str, offsets: Sequence[timedelta]) -> None:
        before = _NONE
        for number, offset in enumerate(offsets):
            if offset <= before:
                what = f"{span_words(offset)} does not come after {span_words(before)}"
                self._add((key, "offsets", number), what, "write the moments in order")
                return
            before = offset

    def _rises(self, key: str, named: Sequence[tuple[str, timedelta]], fix: str) -> None:
        for (low_name, low), (name, span) in pairwise(named):
            if span < low:
                what = f"{span_words(span)} is before the {low_name}, {span_words(low)}"
                self._add((key, name), what, fix)
                return

    def _clear(self, key: str) -> bool:
        return self.faults.clear((*self.path, key))

    def _add(self, inner: Path, what: str, fix: str) -> None:
        self.faults.add((*self.path, *inner), what, fix)


def _slugs_once(method: Method, faults: Faults) -> None:
    _once(faults, ((("steps", i), step.slug) for i, step in enumerate(method.steps)))
    _once(faults, ((path, amount.slug) for path, amount in amounts_of(method)))
    for i, step in enumerate(method.steps):
        readings = enumerate(step.readings)
        _once(faults, ((("steps", i, "readings", j), one.slug) for j, one in readings))


def _once(faults: Faults, named: Iterator[tuple[Path, str]]) -> None:
    seen: set[str] = set()
    for path, slug in named:
        if slug and slug in seen:
            faults.add((*path, "slug"), f"{shown(slug)} stands here twice", "give another name")
        seen.add(slug)


def _cure_fits(method: Method, faults: Faults) -> None:
    """Find a cure that is not the last step or lacks its views, and lengths that are amiss."""
    for i, step in enumerate(method.steps):
        if faults.clear(("steps", i, "kind"), ("steps", i, "lasts")):
            _length_fits(step, ("steps", i), faults)
        if step.kind is StepKind.CURE and i != len(method.steps) - 1:
            faults.add(("steps", i, "kind"), "a cure is the last step", "move it to the end")
    cures = [i for i, step in enumerate(method.steps) if step.kind is StepKind.CURE]
    if method.cure is not None:
        kinds: list[Path] = [("steps", i, "kind") for i in range(len(method.steps))]
        if not cures and faults.clear(*kinds):
            faults.add(("cure",), "no step is a cure", "take it out or write the step")
        _views_rise(method.cure, faults)
    elif cures and faults.clear(("cure",)):
        faults.add(("steps", cures[0]), "a cure step needs a table cure", "write it")


def _length_fits(step: MethodStep, path: Path, faults: Faults) -> None:
    if step.kind is StepKind.CURE and step.lasts is not None:
        what = "the length of a cure is the dyer's choice among its views"
        faults.add((*path, "lasts"), what, "take it out")
    elif step.kind is not StepKind.CURE and step.lasts is None:
        faults.add((*path, "lasts"), "this field is missing", "write earliest, aim and latest")


def _views_rise(cure: CurePlan, faults: Faults) -> None:
    if not faults.clear(("cure", "views")):
        return
    days = [view.days for view in cure.views]
    for i, (low, high) in enumerate(pairwise(days)):
        if high <= low:
            what = f"{high} days do not come after {low}"
            faults.add(("cure", "views", i + 1, "days"), what, "write the views in order")
            return
    if cure.default_days not in days and faults.clear(("cure", "default_days")):
        what = f"no view is of {cure.default_days} days"
        faults.add(("cure", "default_days"), what, "write the days of one of the views")


def _coats_rise(method: Method, faults: Faults) -> None:
    """Find coats that do not count 1, 2, 3, or of which only some steps are optional."""
    coat = 0
    optional: dict[int, bool] = {}
    for i, step in enumerate(method.steps):
        path: Path = ("steps", i, "coat")
        if step.coat is None or not faults.clear(path):
            continue
        if step.coat not in (coat, coat + 1) or step.coat == 0:
            what = f"coat {step.coat} does not follow coat {coat}"
            faults.add(path, what, "count the coats from 1 along the steps")
            return
        coat = step.coat
        if optional.setdefault(coat, step.optional) is not step.optional:
            what = f"coat {coat} is optional in one step and not in another"
            faults.add(("steps", i, "optional"), what, "write the same in each step of the coat")
