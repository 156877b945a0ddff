"""Accounts and who is signed in; logbooks, their members, entries, held entries and standings."""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None


def an_id(name: str) -> sa.Column:
    return sa.Column(name, sa.String(36), nullable=False)


def text(name: str, longest: int) -> sa.Column:
    return sa.Column(name, sa.String(longest), nullable=False)


def number(name: str, nullable: bool = False) -> sa.Column:
    return sa.Column(name, sa.BigInteger, nullable=nullable)


def belongs_to(owner: str, table: str) -> sa.ForeignKeyConstraint:
    return sa.ForeignKeyConstraint(
        [f"{owner}_id"], [f"{owner}.id"], name=f"{table}_{owner}_id_fk", ondelete="CASCADE"
    )


def upgrade() -> None:
    accounts()
    logbooks()
    entries()
    held_entries()
    standings()


def accounts() -> None:
    op.create_table(
        "account",
        an_id("id"),
        text("sign_in_name", 200),
        text("sign_in_key", 400),
        text("display_name", 200),
        text("password_hash", 300),
        number("created_at_ms"),
        sa.PrimaryKeyConstraint("id", name="account_pk"),
        sa.UniqueConstraint("sign_in_key", name="account_sign_in_key_once"),
    )
    op.create_table(
        "sign_in",
        text("id", 64),
        an_id("account_id"),
        text("label", 120),
        number("signed_in_at_ms"),
        number("last_seen_at_ms"),
        sa.PrimaryKeyConstraint("id", name="sign_in_pk"),
        belongs_to("account", "sign_in"),
    )
    op.create_index("sign_in_of_account_id", "sign_in", ["account_id"])
    op.create_table(
        "device",
        an_id("account_id"),
        an_id("id"),
        text("label", 120),
        text("app_version", 60),
        number("first_seen_at_ms"),
        number("last_seen_at_ms"),
        sa.PrimaryKeyConstraint("account_id", "id", name="device_pk"),
        belongs_to("account", "device"),
    )


def logbooks() -> None:
    op.create_table(
        "logbook",
        an_id("id"),
        text("title", 200),
        an_id("log_id"),
        number("last_number"),
        number("evidence_number"),
        text("receipt_key", 64),
        number("created_at_ms"),
        sa.PrimaryKeyConstraint("id", name="logbook_pk"),
    )
    op.create_table(
        "membership",
        an_id("logbook_id"),
        an_id("account_id"),
        text("role", 20),
        number("created_at_ms"),
        sa.PrimaryKeyConstraint("logbook_id", "account_id", name="membership_pk"),
        belongs_to("logbook", "membership"),
        belongs_to("account", "membership"),
        sa.CheckConstraint("role IN ('rider', 'coach', 'scribe', 'reader')", name=op.f("membership_role")),
    )
    op.create_index("membership_of_account_id", "membership", ["account_id"])


def entries() -> None:
    op.create_table(
        "entry",
        an_id("logbook_id"),
        sa.Column("number", sa.BigInteger, autoincrement=False, nullable=False),
        an_id("id"),
        an_id("record_id"),
        sa.Column("supersedes", sa.Text, nullable=False),
        text("kind", 60),
        sa.Column("kind_version", sa.Integer, nullable=False),
        sa.Column("body", sa.Text),
        number("recorded_at_ms"),
        sa.Column("utc_offset_min", sa.Integer, nullable=False),
        text("local_date", 10),
        sa.Column("clock", sa.Text),
        an_id("author"),
        an_id("device"),
        number("skew_ms", nullable=True),
        number("received_at_ms"),
        text("content_digest", 64),
        sa.PrimaryKeyConstraint("logbook_id", "number", name="entry_pk"),
        belongs_to("logbook", "entry"),
        sa.UniqueConstraint("logbook_id", "id", name="entry_id_once"),
    )
    op.create_index("entry_of_record", "entry", ["logbook_id", "record_id"])


def held_entries() -> None:
    op.create_table(
        "held_entry",
        an_id("logbook_id"),
        an_id("id"),
        text("reason", 60),
        sa.Column("text", sa.Text, nullable=False),
        an_id("author"),
        text("role", 20),
        an_id("device"),
        number("skew_ms", nullable=True),
        number("received_at_ms"),
        text("content_digest", 64),
        sa.Column("refusal", sa.Text),
        sa.PrimaryKeyConstraint("logbook_id", "id", name="held_entry_pk"),
        belongs_to("logbook", "held_entry"),
    )


def standings() -> None:
    op.create_table(
        "standing",
        an_id("logbook_id"),
        an_id("horse_id"),
        text("as_of", 10),
        number("checked_number"),
        text("bar_digest", 64),
        sa.Column("body", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("logbook_id", "horse_id", name="standing_pk"),
        belongs_to("logbook", "standing"),
    )
