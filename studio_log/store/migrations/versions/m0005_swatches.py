"""Swatches: their colour and their words as lists need them; worked out from their journals."""

import sqlalchemy as sa
from alembic import op

from studio_log.store.migrations.forms import TEXT

revision = "0005"
down_revision = "0004"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "swatch",
        sa.Column("code", TEXT, nullable=False),
        sa.Column("ordinal", sa.Integer(), nullable=False),
        sa.Column("lot", TEXT, nullable=False),
        sa.Column("piece", sa.Integer(), nullable=True),
        sa.Column("step", sa.Integer(), nullable=True),
        sa.Column("name", TEXT, nullable=False),
        sa.Column("place", TEXT, nullable=False),
        sa.Column("test_place", TEXT, nullable=True),
        sa.Column("chain", TEXT, nullable=False),
        sa.Column("cut_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("read_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("lightness", sa.Float(), nullable=True),
        sa.Column("a", sa.Float(), nullable=True),
        sa.Column("b", sa.Float(), nullable=True),
        sa.Column("two_u", sa.Float(), nullable=True),
        sa.Column("source", TEXT, nullable=False),
        sa.Column("white", TEXT, nullable=False),
        sa.Column("grades", TEXT, nullable=False),
        sa.Column("ended", sa.Boolean(), nullable=False),
        sa.Column("search_text", TEXT, nullable=False),
        sa.Column("last_number", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("code", name="pk_swatch"),
    )
    op.create_index("ix_swatch_ordinal", "swatch", ["ordinal"])
    op.create_index("ix_swatch_lot", "swatch", ["lot"])
    op.create_index(
        "ix_swatch_lightness_a_b_code_ended", "swatch", ["lightness", "a", "b", "code", "ended"]
    )
