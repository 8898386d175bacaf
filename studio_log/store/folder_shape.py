"""The shape of an exported folder: which tables hold truths, and how a value is written.

`resources/studio.schema.json` documents it for others; a test holds the two together.
"""

from collections.abc import Callable, Mapping
from datetime import UTC, datetime
from typing import Any, Final

from sqlalchemy import Boolean, Column, DateTime, Float, Integer, Table, TypeDecorator
from sqlalchemy.types import TypeEngine

from studio_log.domain.errors import Refusal
from studio_log.store.rows import to_json
from studio_log.store.tables import METADATA

FORMAT: Final = "studio-log-folder"
VERSION: Final = 1
DOCUMENT: Final = "studio.json"
SCHEMA: Final = "studio.schema.json"
TABLES: Final = "tables"
PICTURES: Final = "photos"
PROJECTIONS: Final = frozenset({"lot", "step", "milk", "material_use", "swatch"})
"""Worked out from the journal; written as CSV for reading, never read back."""
OWN_KEYS: Final = frozenset({("entry", "id"), ("entry", "seal"), ("method", "seal"),
                             ("delivery", "id")})  # fmt: skip
"""Columns that are given anew when a folder is read back."""
AS_JSON: Final = frozenset({("entry", "readings"), ("entry", "data"), ("setting", "value")})
"""Columns that hold JSON text; in the folder they are values."""

SPOILED: Final = (
    "The folder does not say what it should ({what}). Nothing was taken from it; the studio is "
    "as it was. Export it again from where it came."
)


def truths() -> tuple[Table, ...]:
    """Give the tables that are exported to be read back, parents before children."""
    return tuple(one for one in METADATA.sorted_tables if one.name not in PROJECTIONS)


def columns_of(table: Table) -> tuple[str, ...]:
    """Give the columns of a table that a folder holds."""
    return tuple(one.name for one in table.columns if (table.name, one.name) not in OWN_KEYS)


def kind_of(column: Column[Any]) -> TypeEngine[Any]:
    """Give the kind of a column below what wraps it."""
    kind = column.type
    return kind.impl_instance if isinstance(kind, TypeDecorator) else kind


def outward(table: Table, column: str, value: Any, read: Callable[[str], Any]) -> Any:
    """Give a value of the file as it is written into a folder; instants in UTC with a Z."""
    if value is None:
        return None
    if (table.name, column) in AS_JSON:
        return read(value)
    kind = kind_of(table.c[column])
    if isinstance(kind, DateTime):
        return f"{str(value).replace(' ', 'T')}Z"
    return bool(value) if isinstance(kind, Boolean) else value


def inward(table: Table, row: Mapping[str, Any], where: str) -> dict[str, Any]:
    """Give the values of a row for the file; Refusal where it is not what it should be."""
    if not isinstance(row, dict) or set(row) != set(columns_of(table)):
        raise spoiled(f"{where} has other fields than it should")
    return {name: _inward(table, name, value, f"{where}, {name}") for name, value in row.items()}


def _inward(table: Table, column: str, value: Any, where: str) -> Any:
    if (table.name, column) in AS_JSON:
        try:
            return to_json(value)
        except ValueError as error:
            raise spoiled(f"{where} is no value") from error
    if value is None:
        if table.c[column].nullable:
            return None
        raise spoiled(f"{where} is missing")
    kind = kind_of(table.c[column])
    for sort, read in _READERS:
        if isinstance(kind, sort):
            return read(value, where)
    return _text(value, where)


def _text(value: Any, where: str) -> str:
    if not isinstance(value, str):
        raise spoiled(f"{where} is no text")
    try:
        value.encode()
    except UnicodeEncodeError as error:
        raise spoiled(f"{where} holds signs that are no text") from error
    return value


def _truth(value: Any, where: str) -> bool:
    if not isinstance(value, bool):
        raise spoiled(f"{where} is neither true nor false")
    return value


def _whole(value: Any, where: str) -> int:
    if isinstance(value, bool) or not isinstance(value, int) or abs(value) >= 2**53:
        raise spoiled(f"{where} is no whole number")
    return value


def _number(value: Any, where: str) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise spoiled(f"{where} is no number")
    if not abs(value) < 1e15:
        raise spoiled(f"{where} is too large")
    return float(value)


def _moment(value: Any, where: str) -> datetime:
    text = _text(value, where)
    try:
        at = datetime.fromisoformat(text)
    except ValueError as error:
        raise spoiled(f"{where} is no moment") from error
    if at.tzinfo is None or at.utcoffset() != UTC.utcoffset(None):
        raise spoiled(f"{where} is no moment in UTC")
    return at.astimezone(UTC)


_READERS: Final[tuple[tuple[type, Callable[[Any, str], Any]], ...]] = (
    (Boolean, _truth),
    (DateTime, _moment),
    (Integer, _whole),
    (Float, _number),
)


def spoiled(what: str) -> Refusal:
    """Give the refusal of a folder."""
    return Refusal(SPOILED.format(what=what))
