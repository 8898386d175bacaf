"""Photos: which picture belongs to which entry of which lot."""

import sqlalchemy as sa
from alembic import op

from studio_log.store.migrations.forms import TEXT

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "photo",
        sa.Column("lot", TEXT, nullable=False),
        sa.Column("entry", sa.Integer(), nullable=False),
        sa.Column("hash", TEXT, nullable=False),
        sa.Column("step", sa.Integer(), nullable=True),
        sa.Column("kind", TEXT, nullable=False),
        sa.Column("name", TEXT, nullable=False),
        sa.Column("size", sa.Integer(), nullable=False),
        sa.Column("width", sa.Integer(), nullable=False),
        sa.Column("height", sa.Integer(), nullable=False),
        sa.Column("taken_at", sa.DateTime(timezone=True), nullable=True),
        sa.PrimaryKeyConstraint("lot", "entry", name="pk_photo"),
    )
    op.create_index("ix_photo_hash", "photo", ["hash"])
