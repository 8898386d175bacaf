"""Files that are a table for each thing, named by its short name: cautions, dyes, materials."""

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import TypeVar

from studio_log.domain.method_faults import Faults, refusal
from studio_log.domain.method_fields import Table, is_slug
from studio_log.domain.method_toml import tables_of

Thing = TypeVar("Thing")


def read_named(
    text: str, make: Callable[[str, Table, Faults], Thing], *, name: str, what: str
) -> Mapping[str, Thing]:
    """Give what `make` makes of each table, by its short name, in the order of the text.

    `name` is that of the file and `what` that of the things; BadMethod with all faults.
    """
    faults = Faults()
    data = tables_of(text, faults)
    file = Table(data, (), faults)
    found: dict[str, Thing] = {}
    for slug in data:
        if faults.full:
            break
        if not is_slug(slug):
            faults.add((slug,), "this is no short name", "write small letters and hyphens")
        elif (table := file.table(slug)) is not None:
            found[slug] = make(slug, table, faults)
    if not found and not faults.found:
        faults.add((), f"there are no {what}", "write one or more", line=1)
    if faults.found:
        raise refusal(faults, text=text, data=data, name=name)
    return MappingProxyType(found)
