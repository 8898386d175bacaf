"""The first tables, and the triggers that keep the journal append-only."""

import sqlalchemy as sa
from alembic import op

from studio_log.store.migrations.forms import SEAL, TEXT, on_server

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None

APPLICATION_ID = 0x53744C67

NO_UPDATE = """
CREATE TRIGGER entry_no_update BEFORE UPDATE ON entry
BEGIN SELECT RAISE(ABORT, 'entries are never changed'); END
"""
NO_DELETE = """
CREATE TRIGGER entry_no_delete BEFORE DELETE ON entry
BEGIN SELECT RAISE(ABORT, 'entries are never taken away'); END
"""
# INSERT OR REPLACE deletes without calling the trigger above, so it is met here.
NEXT_ONLY = """
CREATE TRIGGER entry_next_only BEFORE INSERT ON entry
WHEN NEW.number IS NOT (
    SELECT coalesce(max(number), 0) + 1 FROM entry WHERE subject = NEW.subject
) OR NEW.id IN (SELECT id FROM entry WHERE id = NEW.id)
BEGIN SELECT RAISE(ABORT, 'an entry takes the next number of its subject'); END
"""
SERVER_KEEPS = (
    """
CREATE FUNCTION entry_stays() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF TG_OP = 'UPDATE' THEN
        RAISE EXCEPTION 'entries are never changed';
    END IF;
    RAISE EXCEPTION 'entries are never taken away';
END $$
""",
    """
CREATE FUNCTION entry_follows() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF NEW.number IS DISTINCT FROM (
        SELECT coalesce(max(number), 0) + 1 FROM entry WHERE subject = NEW.subject
    ) THEN
        RAISE EXCEPTION 'an entry takes the next number of its subject';
    END IF;
    RETURN NEW;
END $$
""",
    """
CREATE TRIGGER entry_stays BEFORE UPDATE OR DELETE ON entry
FOR EACH ROW EXECUTE FUNCTION entry_stays()
""",
    """
CREATE TRIGGER entry_next_only BEFORE INSERT ON entry
FOR EACH ROW EXECUTE FUNCTION entry_follows()
""",
)
"""The same three rules for a server, where an entry is never replaced."""


def text(name: str) -> "sa.Column[str]":
    return sa.Column(name, TEXT, nullable=False)


def number(name: str, *, nullable: bool = False) -> "sa.Column[int]":
    return sa.Column(name, sa.Integer(), nullable=nullable)


def seal() -> "sa.Column[int]":
    return sa.Column("seal", SEAL, nullable=False)


def moment(name: str, *, nullable: bool = False) -> "sa.Column[object]":
    return sa.Column(name, sa.DateTime(timezone=True), nullable=nullable)


def real(name: str) -> "sa.Column[float]":
    return sa.Column(name, sa.Float(), nullable=True)


def flag(name: str) -> "sa.Column[bool]":
    return sa.Column(name, sa.Boolean(), nullable=False)


def upgrade() -> None:
    if not on_server(op):
        op.execute(f"PRAGMA application_id = {APPLICATION_ID}")
    entries()
    projections()
    reminders()
    truths()


def entries() -> None:
    op.create_table(
        "entry",
        number("id"),
        text("subject"),
        number("number"),
        text("act"),
        moment("at"),
        moment("written"),
        text("zone"),
        number("step", nullable=True),
        text("note"),
        text("readings"),
        text("data"),
        number("target", nullable=True),
        seal(),
        sa.PrimaryKeyConstraint("id", name="pk_entry"),
        sa.UniqueConstraint("subject", "number", name="uq_entry_subject_number"),
        sqlite_autoincrement=True,
    )
    for trigger in SERVER_KEEPS if on_server(op) else (NO_UPDATE, NO_DELETE, NEXT_ONLY):
        op.execute(trigger.strip())


def projections() -> None:
    op.create_table(
        "lot",
        text("code"),
        text("name"),
        text("state_hint"),
        text("stage"),
        text("place"),
        text("method_slug"),
        number("method_version"),
        real("grams"),
        text("fibre"),
        moment("begun_at", nullable=True),
        moment("fully_dry_at", nullable=True),
        moment("ready_at", nullable=True),
        moment("used_at", nullable=True),
        flag("ended"),
        text("search_text"),
        number("last_number"),
        moment("updated_at"),
        sa.PrimaryKeyConstraint("code", name="pk_lot"),
    )
    op.create_index("ix_lot_state_hint", "lot", ["state_hint"])
    op.create_index("ix_lot_ended", "lot", ["ended"])
    op.create_table(
        "step",
        text("lot"),
        number("number"),
        number("order"),
        text("slug"),
        text("title"),
        text("kind"),
        text("state"),
        moment("start", nullable=True),
        moment("end", nullable=True),
        number("coat", nullable=True),
        sa.PrimaryKeyConstraint("lot", "number", name="pk_step"),
        sa.ForeignKeyConstraint(["lot"], ["lot.code"], "fk_step_lot_lot", ondelete="CASCADE"),
    )
    op.create_table(
        "milk",
        text("code"),
        real("litres"),
        real("strength_g_per_l"),
        text("place"),
        moment("made_at", nullable=True),
        moment("use_by", nullable=True),
        text("lots"),
        flag("finished"),
        sa.PrimaryKeyConstraint("code", name="pk_milk"),
    )


def reminders() -> None:
    op.create_table(
        "reminder",
        text("key"),
        text("subject"),
        number("step", nullable=True),
        text("kind"),
        text("urgency"),
        moment("due"),
        moment("rings_at"),
        text("title"),
        text("why"),
        text("if_late"),
        text("status"),
        moment("raised_at", nullable=True),
        number("raise_count"),
        moment("last_rung_at", nullable=True),
        moment("answered_at", nullable=True),
        text("answer"),
        moment("void_at", nullable=True),
        text("void_why"),
        text("channels"),
        flag("retold"),
        moment("updated_at"),
        sa.PrimaryKeyConstraint("key", name="pk_reminder"),
    )
    op.create_index("ix_reminder_subject", "reminder", ["subject"])
    op.create_index("ix_reminder_updated_at", "reminder", ["updated_at"])
    op.create_index(
        "ix_reminder_open_rings_at",
        "reminder",
        ["rings_at"],
        sqlite_where=sa.text("status IN ('waiting', 'raised')"),
        postgresql_where=sa.text("status IN ('waiting', 'raised')"),
    )
    op.create_table(
        "delivery",
        number("id"),
        text("reminder_key"),
        moment("at"),
        text("channel"),
        flag("ok"),
        text("words"),
        sa.PrimaryKeyConstraint("id", name="pk_delivery"),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_delivery_reminder_key", "delivery", ["reminder_key"])


def truths() -> None:
    op.create_table(
        "method",
        text("slug"),
        number("version"),
        text("title"),
        text("text"),
        seal(),
        sa.PrimaryKeyConstraint("slug", "version", name="pk_method"),
    )
    op.create_table(
        "setting", text("name"), text("value"), sa.PrimaryKeyConstraint("name", name="pk_setting")
    )
    op.create_table(
        "counter", text("name"), number("value"), sa.PrimaryKeyConstraint("name", name="pk_counter")
    )
