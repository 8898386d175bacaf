"""The JSON Schema of an exported folder, made from the tables.

`python -m studio_log.store.folder_schema resources/studio.schema.json` writes it after a change of
the tables; a test compares the two. A field or table that a reader has to know raises `VERSION` in
`folder_shape.py`.
"""

import json
import sys
from pathlib import Path
from typing import Any

from sqlalchemy import Boolean, Column, DateTime, Float, Integer

from studio_log.store.folder_shape import (
    AS_JSON,
    FORMAT,
    PICTURES,
    VERSION,
    columns_of,
    kind_of,
    truths,
)

MOMENT = {"type": "string", "format": "date-time", "pattern": r"Z$"}
TABLES = {
    "entry": "The journal, in the order in which it was written. Nothing in it is ever changed: "
    "undo, redo and correct name an earlier entry as their target.",
    "method": "Every version of every method, as its TOML text.",
    "setting": "The settings that were ever changed.",
    "counter": "The last number given out for each kind of code and year; none is given twice.",
    "photo": "Whose picture it is; `photos` above says in which file it lies.",
    "reminder": "Each reminder and what became of it. That one rang stands in no journal.",
    "delivery": "Each attempt to show a reminder.",
}
FIELDS = {
    "entry.subject": "The code of a lot (26-031), milk (M26-004), material (S26-001) or bath "
    "(B26-001).",
    "entry.number": "From 1 within the subject, without gaps.",
    "entry.act": "What was done, as `mark` and the journal name it; newer versions know more acts.",
    "entry.at": "When it happened.",
    "entry.written": "When it was written down.",
    "entry.zone": "The IANA zone in which `at` was meant.",
    "entry.step": "The number of the step, where it concerns one.",
    "entry.readings": "What was read: a name, and a number or words.",
    "entry.data": "What the act needs beside it; masses in grams, lengths in metres.",
    "entry.target": "The number of the entry that is taken back, restored or corrected.",
    "setting.value": "Any JSON value.",
    "photo.hash": "SHA-256 of the file, in hex.",
    "photo.entry": "The number of the lot's entry that the picture belongs to.",
}
KINDS: tuple[tuple[type, dict[str, Any]], ...] = (
    (Boolean, {"type": "boolean"}),
    (DateTime, MOMENT),
    (Integer, {"type": "integer"}),
    (Float, {"type": "number"}),
)
SPECIAL: dict[str, dict[str, Any]] = {
    "entry.act": {"type": "string", "pattern": "^[a-z_]+$"},
    "entry.number": {"type": "integer", "minimum": 1},
    "entry.readings": {"type": "object", "additionalProperties": {"type": ["number", "string"]}},
    "entry.data": {"type": "object"},
    "setting.value": {},
    "photo.hash": {"type": "string", "pattern": "^[0-9a-f]{64}$"},
}


def schema() -> dict[str, Any]:
    """Give the schema (JSON Schema, draft 2020-12)."""
    tables = {table.name: _table(table) for table in truths()}
    moment_ = {**MOMENT, "description": "When the folder was written."}
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "$id": f"urn:studio-log:folder:{VERSION}",
        "title": "A dye studio's whole record",
        "description": "studio.json of an exported folder. Instants are ISO 8601 in UTC with a Z. "
        "The CSV files beside it are for reading; this file alone is read back.",
        "type": "object",
        "additionalProperties": False,
        "required": ["format", "version", "program", "written", "photos", "tables"],
        "properties": {
            "format": {"const": FORMAT},
            "version": {"const": VERSION},
            "program": {"type": "string", "description": "The version that wrote it."},
            "written": moment_,
            "photos": {
                "description": "Hash of a picture -> its file in the folder.",
                "type": "object",
                "propertyNames": {"pattern": "^[0-9a-f]{64}$"},
                "additionalProperties": {"type": "string", "pattern": rf"^{PICTURES}/[^/\\]+$"},
            },
            "tables": {
                "type": "object",
                "additionalProperties": False,
                "required": sorted(tables),
                "properties": tables,
            },
        },
    }


def _table(table: Any) -> dict[str, Any]:
    names = columns_of(table)
    row = {
        "type": "object",
        "additionalProperties": False,
        "required": list(names),
        "properties": {name: _field(table.name, table.c[name]) for name in names},
    }
    told = {"description": TABLES[table.name]} if table.name in TABLES else {}
    return {**told, "type": "array", "items": row}


def _field(table: str, column: "Column[Any]") -> dict[str, Any]:
    key = f"{table}.{column.name}"
    told = {"description": FIELDS[key]} if key in FIELDS else {}
    kind = SPECIAL.get(key)
    if kind is None:
        free = {} if (table, column.name) in AS_JSON else {"type": "string"}
        kind = next((one for sort, one in KINDS if isinstance(kind_of(column), sort)), free)
    if column.nullable:
        kind = {"anyOf": [kind, {"type": "null"}]}
    return {**told, **kind}


if __name__ == "__main__":
    Path(sys.argv[1]).write_text(
        json.dumps(schema(), indent=1, ensure_ascii=False) + "\n", encoding="utf-8"
    )
