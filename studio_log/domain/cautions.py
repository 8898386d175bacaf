"""Cautions: what can hurt, in words for the screen, the step card and the tag."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from studio_log.domain.method_faults import Faults
from studio_log.domain.method_fields import Table
from studio_log.domain.named_tables import read_named

LONGEST_SHORT: Final = 60
"""Most letters of what is printed on a tag."""


@dataclass(frozen=True)
class Caution:
    """One danger and what to do about it."""

    slug: str
    title: str
    text: str
    """In full sentences."""
    short: str
    """For a tag: 60 letters at most."""


def read_cautions(text: str, *, name: str = "cautions.toml") -> Mapping[str, Caution]:
    """Give the cautions of a text by their slug, in its order; BadMethod with its faults."""
    return read_named(text, _caution, name=name, what="cautions")


def _caution(slug: str, table: Table, _faults: Faults) -> Caution:
    caution = Caution(
        slug=slug,
        title=table.line("title"),
        text=table.prose("text"),
        short=table.line("short", most=LONGEST_SHORT),
    )
    table.done()
    return caution
