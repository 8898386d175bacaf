"""A full-text index over all that was typed about a lot."""

import json

import sqlalchemy as sa
from alembic import op

from studio_log.store.migrations.forms import on_server

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None

INDEX = """
CREATE VIRTUAL TABLE lot_words USING fts5(
    words, tokenize = "unicode61 remove_diacritics 2", prefix = '1 2 3'
)
"""
SERVER_INDEX = (
    """
CREATE TABLE lot_words (ordinal integer PRIMARY KEY, words text NOT NULL, found tsvector NOT NULL)
""",
    "CREATE INDEX ix_lot_words_found ON lot_words USING gin (found)",
)
ORDINAL = """
UPDATE lot SET ordinal =
    CAST(substr(code, 1, 2) AS INTEGER) * 1000000 + CAST(substr(code, 4) AS INTEGER)
"""
TYPED = """
SELECT lot.ordinal, lot.search_text, entry.note, entry.readings, entry.data
FROM lot LEFT JOIN entry ON entry.subject = lot.code ORDER BY lot.ordinal, lot.code, entry.number
"""
DIPPED = "kind = 'dip' AND coat IS NOT NULL AND start IS NOT NULL AND state <> 'skipped'"
CURED = "kind = 'cure'"


def upgrade() -> None:
    op.add_column("lot", sa.Column("ordinal", sa.Integer(), nullable=False, server_default="0"))
    op.execute(ORDINAL.strip())
    op.create_index("ix_lot_ordinal", "lot", ["ordinal"])
    dipped, cured = sa.text(DIPPED), sa.text(CURED)
    op.create_index("ix_step_dipped", "step", ["lot"], sqlite_where=dipped, postgresql_where=dipped)
    op.create_index(
        "ix_step_cured", "step", ["lot", "end"], sqlite_where=cured, postgresql_where=cured
    )
    if on_server(op):  # which has no studio of the version before
        for statement in SERVER_INDEX:
            op.execute(statement)
        return
    op.execute(INDEX.strip())
    fill()


def fill() -> None:
    connection = op.get_bind()
    words: dict[int, list[str]] = {}
    for ordinal, typed, note, readings, data in connection.exec_driver_sql(TYPED):
        found = words.setdefault(ordinal, [str(typed), str(ordinal % 1_000_000)])
        if note is not None:
            found.extend((str(note), *texts(readings), *texts(data)))
    if words:
        connection.exec_driver_sql(
            "INSERT INTO lot_words (rowid, words) VALUES (?, ?)",
            [(at, " ".join(dict.fromkeys(found)).casefold()) for at, found in words.items()],
        )


def texts(written: object) -> list[str]:
    """Give the texts in a JSON value; a damaged one is left to the check of the journal."""
    try:
        waiting = [json.loads(str(written))]
    except (ValueError, RecursionError):
        return []
    found: list[str] = []
    while waiting:
        value = waiting.pop()
        if isinstance(value, str):
            found.append(value)
        elif isinstance(value, dict):
            waiting.extend(value.values())
        elif isinstance(value, list):
            waiting.extend(value)
    return found
