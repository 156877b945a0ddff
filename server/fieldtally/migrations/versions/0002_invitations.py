"""Invitations, by which a rider lets somebody into her logbook."""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"


def upgrade() -> None:
    op.create_table(
        "invitation",
        sa.Column("logbook_id", sa.String(36), nullable=False),
        sa.Column("id", sa.String(64), nullable=False),
        sa.Column("role", sa.String(20), nullable=False),
        sa.Column("made_by", sa.String(36), nullable=False),
        sa.Column("made_at_ms", sa.BigInteger, nullable=False),
        sa.Column("expires_at_ms", sa.BigInteger, nullable=False),
        sa.Column("used_by", sa.String(36)),
        sa.Column("used_at_ms", sa.BigInteger),
        sa.PrimaryKeyConstraint("logbook_id", "id", name="invitation_pk"),
        sa.ForeignKeyConstraint(
            ["logbook_id"], ["logbook.id"], name="invitation_logbook_id_fk", ondelete="CASCADE"
        ),
        sa.CheckConstraint("role IN ('coach', 'scribe', 'reader')", name=op.f("invitation_role")),
    )
    op.create_index("invitation_of_id", "invitation", ["id"])
