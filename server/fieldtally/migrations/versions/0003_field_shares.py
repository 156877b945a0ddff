"""Fields that one logbook hands to another by a code."""

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"


def upgrade() -> None:
    op.create_table(
        "field_share",
        sa.Column("logbook_id", sa.String(36), nullable=False),
        sa.Column("id", sa.String(64), nullable=False),
        sa.Column("name", sa.String(200), nullable=False),
        sa.Column("text", sa.Text, nullable=False),
        sa.Column("made_by", sa.String(36), nullable=False),
        sa.Column("made_at_ms", sa.BigInteger, nullable=False),
        sa.Column("expires_at_ms", sa.BigInteger, nullable=False),
        sa.Column("uses_left", sa.Integer, nullable=False),
        sa.PrimaryKeyConstraint("logbook_id", "id", name="field_share_pk"),
        sa.ForeignKeyConstraint(
            ["logbook_id"], ["logbook.id"], name="field_share_logbook_id_fk", ondelete="CASCADE"
        ),
    )
    op.create_index("field_share_of_id", "field_share", ["id"])
