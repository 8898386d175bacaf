"""The tables. Rows are thin and stay in this room; migrations make what is named here.

`entry` is the truth and is only ever added to (triggers of the first migration see to
it). `lot`, `step` and `milk` are projections of it; `reminder` keeps what became of each
reminder; `method`, `setting`, `counter` and `delivery` are truths of their own.
`lot_words`, an index of words, is a projection too: `store.search` alone speaks of it.
"""

from datetime import datetime

from sqlalchemy import Column, ForeignKey, Index, MetaData, String, Table, UniqueConstraint, text
from sqlalchemy.orm import registry
from sqlmodel import Field, SQLModel

from studio_log.store.kinds import SEAL

NAMES = {
    "ix": "ix_%(table_name)s_%(column_0_N_name)s",
    "uq": "uq_%(table_name)s_%(column_0_N_name)s",
    "ck": "ck_%(table_name)s_%(constraint_name)s",
    "fk": "fk_%(table_name)s_%(column_0_N_name)s_%(referred_table_name)s",
    "pk": "pk_%(table_name)s",
}
"""Every constraint has a name, or a later migration could not speak of it."""


STILL_OPEN = "status IN ('waiting', 'raised')"
"""Reminders that may still ring: literal, or the partial index would not be used."""


DIPPED = "kind = 'dip' AND coat IS NOT NULL AND start IS NOT NULL AND state <> 'skipped'"
"""Steps that gave a coat."""
CURED = "kind = 'cure'"


class Row(SQLModel, registry=registry(metadata=MetaData(naming_convention=NAMES))):
    """What all rows share: a register of their own."""


class EntryRow(Row, table=True):
    """One line of a journal. `seal` is a CRC-32 over the other fields but `id`."""

    __tablename__ = "entry"
    __table_args__ = (UniqueConstraint("subject", "number"), {"sqlite_autoincrement": True})

    id: int | None = Field(default=None, primary_key=True)
    subject: str
    """Found by the index of (subject, number)."""
    number: int
    act: str
    at: datetime
    written: datetime
    zone: str
    step: int | None = None
    note: str = ""
    readings: str = "{}"
    data: str = "{}"
    target: int | None = None
    seal: int = Field(sa_type=SEAL)


class LotRow(Row, table=True):
    """A lot as lists need it."""

    __tablename__ = "lot"

    code: str = Field(primary_key=True)
    name: str
    state_hint: str = Field(index=True)
    stage: str
    place: str
    method_slug: str
    method_version: int
    grams: float | None = None
    fibre: str
    begun_at: datetime | None = None
    fully_dry_at: datetime | None = None
    ready_at: datetime | None = None
    used_at: datetime | None = None
    ended: bool = Field(index=True)
    search_text: str
    last_number: int
    updated_at: datetime
    ordinal: int = Field(index=True, sa_column_kwargs={"server_default": "0"})
    """Place of the code among all codes, and the number of its words in `lot_words`."""


class StepRow(Row, table=True):
    """A step of a lot as lists need it."""

    __tablename__ = "step"
    __table_args__ = (
        Index("ix_step_dipped", "lot", sqlite_where=text(DIPPED), postgresql_where=text(DIPPED)),
        Index(
            "ix_step_cured", "lot", "end", sqlite_where=text(CURED), postgresql_where=text(CURED)
        ),
    )

    lot: str = Field(
        sa_column=Column(String, ForeignKey("lot.code", ondelete="CASCADE"), primary_key=True)
    )
    number: int = Field(primary_key=True)
    order: int
    slug: str
    title: str
    kind: str
    state: str
    start: datetime | None = None
    end: datetime | None = None
    coat: int | None = None


class ReminderRow(Row, table=True):
    """A reminder and what became of it."""

    __tablename__ = "reminder"
    __table_args__ = (
        Index(
            "ix_reminder_open_rings_at",
            "rings_at",
            sqlite_where=text(STILL_OPEN),
            postgresql_where=text(STILL_OPEN),
        ),
    )

    key: str = Field(primary_key=True)
    subject: str = Field(index=True)
    step: int | None = None
    kind: str
    urgency: str
    due: datetime
    rings_at: datetime
    title: str
    why: str
    if_late: str
    status: str
    raised_at: datetime | None = None
    raise_count: int
    last_rung_at: datetime | None = None
    answered_at: datetime | None = None
    answer: str
    void_at: datetime | None = None
    void_why: str
    channels: str
    retold: bool
    updated_at: datetime = Field(index=True)


class MilkRow(Row, table=True):
    """A batch of milk as lists need it."""

    __tablename__ = "milk"

    code: str = Field(primary_key=True)
    litres: float | None = None
    strength_g_per_l: float | None = None
    place: str
    made_at: datetime | None = None
    use_by: datetime | None = None
    lots: str
    finished: bool


class MethodRow(Row, table=True):
    """One version of a method, as it was written."""

    __tablename__ = "method"

    slug: str = Field(primary_key=True)
    version: int = Field(primary_key=True)
    title: str
    text: str
    seal: int = Field(sa_type=SEAL)
    """CRC-32 of the text."""


class SettingRow(Row, table=True):
    """One setting; the value is JSON."""

    __tablename__ = "setting"

    name: str = Field(primary_key=True)
    value: str


class CounterRow(Row, table=True):
    """The last number given out: "lot/26" -> 31."""

    __tablename__ = "counter"

    name: str = Field(primary_key=True)
    value: int


class DeliveryRow(Row, table=True):
    """One attempt to show a reminder."""

    __tablename__ = "delivery"
    __table_args__ = {"sqlite_autoincrement": True}

    id: int | None = Field(default=None, primary_key=True)
    reminder_key: str = Field(index=True)
    at: datetime
    channel: str
    ok: bool
    words: str


class PhotoRow(Row, table=True):
    """A picture of an entry; the file is photos/HASH.KIND beside the studio's own."""

    __tablename__ = "photo"

    lot: str = Field(primary_key=True)
    entry: int = Field(primary_key=True)
    hash: str = Field(index=True)
    """SHA-256 of the file in hex."""
    step: int | None = None
    kind: str
    name: str
    size: int
    width: int
    height: int
    taken_at: datetime | None = None


class UseRow(Row, table=True):
    """So much of a material went into a step: a projection of the lot's journal."""

    __tablename__ = "material_use"

    lot: str = Field(
        sa_column=Column(String, ForeignKey("lot.code", ondelete="CASCADE"), primary_key=True)
    )
    step: int = Field(primary_key=True)
    material: str = Field(primary_key=True, index=True)
    title: str
    value: float
    unit: str
    at: datetime


class SwatchRow(Row, table=True):
    """A swatch as lists need it; its colour is that of its master half."""

    __tablename__ = "swatch"
    # With code and ended the index answers the search by colour alone: rows are wide.
    __table_args__ = (Index(None, "lightness", "a", "b", "code", "ended"),)

    code: str = Field(primary_key=True)
    ordinal: int = Field(index=True)
    lot: str = Field(index=True)
    piece: int | None = None
    step: int | None = None
    name: str
    place: str
    test_place: str | None = None
    chain: str
    """Titles of the methods that the lot had walked by then, a line each."""
    cut_at: datetime
    read_at: datetime | None = None
    lightness: float | None = None
    a: float | None = None
    b: float | None = None
    two_u: float | None = None
    source: str
    white: str
    grades: str
    """JSON: the latest grade of each test."""
    ended: bool
    search_text: str
    last_number: int


METADATA = Row.metadata
ENTRY: Table = METADATA.tables["entry"]
LOT: Table = METADATA.tables["lot"]
STEP: Table = METADATA.tables["step"]
REMINDER: Table = METADATA.tables["reminder"]
MILK: Table = METADATA.tables["milk"]
METHOD: Table = METADATA.tables["method"]
PHOTO: Table = METADATA.tables["photo"]
USE: Table = METADATA.tables["material_use"]
SWATCH: Table = METADATA.tables["swatch"]
SETTING: Table = METADATA.tables["setting"]
COUNTER: Table = METADATA.tables["counter"]
DELIVERY: Table = METADATA.tables["delivery"]
