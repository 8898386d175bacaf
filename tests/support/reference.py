"""The tables of tests/reference; each says in its first lines what its source is."""

import csv
from pathlib import Path

REFERENCE = Path(__file__).parent.parent / "reference"


def rows(name: str) -> list[dict[str, str]]:
    """The rows of a table by the names of its columns."""
    with (REFERENCE / name).open(encoding="utf-8") as lines:
        return list(csv.DictReader(line for line in lines if not line.startswith("#")))


def numbers(name: str) -> list[dict[str, float]]:
    """The rows of a table that holds nothing but numbers."""
    return [{key: float(value) for key, value in row.items()} for row in rows(name)]
