"""Uses: what of a material went into which step; worked out from the lots' journals."""

import sqlalchemy as sa
from alembic import op

from studio_log.store.migrations.forms import TEXT

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "material_use",
        sa.Column("lot", TEXT, nullable=False),
        sa.Column("step", sa.Integer(), nullable=False),
        sa.Column("material", TEXT, nullable=False),
        sa.Column("title", TEXT, nullable=False),
        sa.Column("value", sa.Float(), nullable=False),
        sa.Column("unit", TEXT, nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.ForeignKeyConstraint(
            ["lot"], ["lot.code"], name="fk_material_use_lot_lot", ondelete="CASCADE"
        ),
        sa.PrimaryKeyConstraint("lot", "step", "material", name="pk_material_use"),
    )
    op.create_index("ix_material_use_material", "material_use", ["material"])
