"""Methods as they are written: TOML read strictly, every fault said at once.

A method file is a few named fields, an optional table `cure` and a list of `steps`. The
files in resources/methods show every field in use.
"""

from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass, replace
from datetime import timedelta
from typing import Final, TypeVar

from studio_log.domain.errors import BadMethod
from studio_log.domain.method_faults import Fault, Faults, first_line, refusal, said
from studio_log.domain.method_fields import Table
from studio_log.domain.method_rules import find_clashes
from studio_log.domain.method_toml import decoded, tables_of
from studio_log.domain.methods import (
    AmountRule,
    AskDry,
    Basis,
    CurePlan,
    CureView,
    Gap,
    Method,
    MethodStep,
    Reading,
    Spread,
    StepKind,
    Tending,
)

MOST_STEPS: Final = 200
MOST_DAYS: Final = 3_650
"""Longest cure, in days."""
MOST_AMOUNT: Final = 100_000.0
"""Largest figure of an amount: per cent, grams, litres or parts."""

_Part = TypeVar("_Part")


def read_method(text: str, *, name: str, cautions: Collection[str] | None = None) -> Method:
    """Give the method written in a text; `name` is what the file is called.

    Where `cautions` are given, a step may name only these. Raises BadMethod with at most
    twenty faults, each with file, line and field, in order of their lines.
    """
    faults = Faults()
    data = tables_of(text, faults)
    method = _method(data, text, faults, cautions)
    if faults.found:
        raise refusal(faults, text=text, data=data, name=name)
    return method


def read_method_bytes(data: bytes, *, name: str, cautions: Collection[str] | None = None) -> Method:
    """Give the method in the bytes of a file; raises BadMethod as `read_method` does."""
    faults = Faults()
    text = decoded(data, faults)
    if faults.found:
        raise refusal(faults, text="", data={}, name=name)
    return read_method(text, name=name, cautions=cautions)


def check_method(text: str, *, name: str, cautions: Collection[str] | None = None) -> list[str]:
    """Give every fault of a text as a sentence, in order of its line; none where it is good."""
    faults = Faults()
    data = tables_of(text, faults)
    _method(data, text, faults, cautions)
    return said(faults, text=text, data=data, name=name)


@dataclass(frozen=True)
class MethodDraft:
    """A text half written: its fields as they stand, the method so far, and its faults.

    `data` is empty and `method` None where the text is no good TOML; where a field is amiss
    the method has a harmless value.
    """

    data: Mapping[str, object]
    method: Method | None
    faults: tuple[Fault, ...]
    said: tuple[str, ...]
    """Every fault as a sentence with its line, in order of the lines."""
    first_line: int = 1
    """The line of the first fault, from 1."""


def read_draft(text: str, *, name: str, cautions: Collection[str] | None = None) -> MethodDraft:
    """Give what a text says so far; nothing is refused."""
    faults = Faults()
    data = tables_of(text, faults)
    broken = bool(faults.found)
    method = _method(data, text, faults, cautions)
    return MethodDraft(
        data,
        None if broken else method,
        tuple(faults.found),
        tuple(said(faults, text=text, data=data, name=name)),
        first_line(faults, text=text),
    )


def write_method(method: Method) -> str:
    """Give the text of a method, from which `read_method` gives it again."""
    if not method.text:
        raise BadMethod(
            f"The method {method.slug} was not read from a file, so there is no text to write. "
            "Nothing was written; write the method as a file first."
        )
    return method.text


def _method(
    data: dict[str, object], text: str, faults: Faults, cautions: Collection[str] | None
) -> Method:
    """Give the method, with harmless values wherever a fault was found."""
    broken = bool(faults.found)
    table = Table(data, (), Faults() if broken else faults)
    method = Method(
        slug=table.slug("slug"),
        version=table.whole("version", least=1, most=9_999),
        title=table.line("title"),
        school=table.line("school"),
        summary=table.prose("summary"),
        source=table.prose("source"),
        brings=table.slugs("brings"),
        spoiled_by=table.slugs("spoiled_by"),
        steps=tuple(_step(step) for step in table.tables("steps", most=MOST_STEPS, needed=True)),
        cure=_inside(table, "cure", _cure),
        text=text,
    )
    table.done()
    if not broken:
        find_clashes(method, faults, cautions=cautions)
    return method


def _step(table: Table) -> MethodStep:
    step = MethodStep(
        slug=table.slug("slug"),
        title=table.line("title"),
        order=table.line("order"),
        end_order=table.line("end_order"),
        end_done=table.line("end_done", most=40),
        do=table.prose("do"),
        kind=table.choice("kind", StepKind),
        hands_on=table.span("hands_on"),
        lasts=_inside(table, "lasts", _spread),
        gap=_inside(table, "gap", _gap) or Gap(),
        if_late=table.prose("if_late"),
    )
    step = replace(
        step,
        tending=_inside(table, "tending", _tending),
        ask_dry=_inside(table, "ask_dry", _ask_dry),
        amounts=tuple(_amount(amount) for amount in table.tables("amounts", most=40)),
        readings=tuple(_reading(reading) for reading in table.tables("readings", most=20)),
        cautions=table.slugs("cautions"),
        coat=table.maybe_whole("coat", least=1, most=20),
        optional=table.flag("optional", usual=False),
        makes_milk=table.flag("makes_milk", usual=False),
        uses_milk=table.flag("uses_milk", usual=False),
    )
    table.done()
    return step


def _inside(table: Table, key: str, read: Callable[[Table], _Part]) -> _Part | None:
    inner = table.table(key)
    if inner is None:
        return None
    value = read(inner)
    inner.done()
    return value


def _spread(table: Table) -> Spread:
    return Spread(table.span("earliest"), table.span("aim"), table.span("latest"))


def _gap(table: Table) -> Gap:
    return Gap(
        at_once=table.flag("at_once", usual=False),
        least=table.maybe_span("least") or timedelta(0),
        aim=table.maybe_span("aim") or timedelta(0),
        most=table.maybe_span("most"),
        after=table.line("after", most=40, needed=False),
    )


def _tending(table: Table) -> Tending:
    return Tending(
        act=table.line("act", most=40),
        done=table.line("done", most=40),
        offsets=table.spans("offsets"),
        every=table.maybe_span("every"),
    )


def _ask_dry(table: Table) -> AskDry:
    return AskDry(offsets=table.spans("offsets"), every=table.span("every"))


def _amount(table: Table) -> AmountRule:
    amount = AmountRule(
        slug=table.slug("slug"),
        title=table.line("title"),
        basis=table.choice("basis", Basis),
        value=table.number("value", most=MOST_AMOUNT),
        of=table.slug("of", needed=False),
        unit=table.line("unit", most=10, needed=False),
        at_least=table.flag("at_least", usual=False),
        cup_grams=table.maybe_number("cup_grams", most=2_000),
        vessel=table.flag("vessel", usual=False),
        editable=table.flag("editable", usual=True),
        note=table.prose("note", needed=False),
        source=table.prose("source", needed=False) or "common practice",
    )
    table.done()
    return amount


def _reading(table: Table) -> Reading:
    reading = Reading(
        slug=table.slug("slug"),
        title=table.line("title"),
        unit=table.line("unit", most=20, needed=False),
    )
    table.done()
    return reading


def _cure(table: Table) -> CurePlan:
    return CurePlan(
        ready_title=table.line("ready_title"),
        default_days=table.whole("default_days", least=0, most=MOST_DAYS),
        paint_best_days=table.maybe_whole("paint_best_days", least=1, most=MOST_DAYS),
        views=tuple(_view(view) for view in table.tables("views", most=40, needed=True)),
    )


def _view(table: Table) -> CureView:
    view = CureView(
        days=table.whole("days", least=0, most=MOST_DAYS),
        title=table.line("title"),
        source=table.prose("source"),
    )
    table.done()
    return view
