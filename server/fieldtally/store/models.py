"""The tables. Whatever belongs to a logbook has a primary key that begins with `logbook_id`, and no hot
query crosses logbooks, so the same schema can be spread over several machines.

A body is described once, in book.kinds; here it is the text that was checked. Columns ending in `_ms` are
milliseconds: since 1970 UTC for instants, plain durations for `skew_ms`.
"""

from secrets import token_hex

from sqlalchemy import BigInteger, CheckConstraint, ForeignKey, Index, String, Text, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from fieldtally.store.db import Base

Id = String(36)


class Account(Base):
    """A person who signs in. `sign_in_key` is the name folded for comparing; `sign_in_name` is as typed."""

    __tablename__ = "account"

    id: Mapped[str] = mapped_column(Id, primary_key=True)
    sign_in_name: Mapped[str] = mapped_column(String(200))
    sign_in_key: Mapped[str] = mapped_column(String(400), unique=True)
    display_name: Mapped[str] = mapped_column(String(200))
    password_hash: Mapped[str] = mapped_column(String(300))
    created_at_ms: Mapped[int] = mapped_column(BigInteger)


class SignIn(Base):
    """One browser an account is signed in on. Without its row the cookie of that browser is worth nothing.

    `id` is the SHA-256 of the secret in the cookie, so a copy of the database signs nobody in.
    """

    __tablename__ = "sign_in"

    id: Mapped[str] = mapped_column(String(64), primary_key=True)
    account_id: Mapped[str] = mapped_column(ForeignKey("account.id", ondelete="CASCADE"), index=True)
    label: Mapped[str] = mapped_column(String(120), default="")
    signed_in_at_ms: Mapped[int] = mapped_column(BigInteger)
    last_seen_at_ms: Mapped[int] = mapped_column(BigInteger)


class Device(Base):
    """A phone or browser that has sent entries for an account. Its id is the one its entries carry."""

    __tablename__ = "device"

    account_id: Mapped[str] = mapped_column(ForeignKey("account.id", ondelete="CASCADE"), primary_key=True)
    id: Mapped[str] = mapped_column(Id, primary_key=True)
    label: Mapped[str] = mapped_column(String(120), default="")
    app_version: Mapped[str] = mapped_column(String(60), default="")
    first_seen_at_ms: Mapped[int] = mapped_column(BigInteger)
    last_seen_at_ms: Mapped[int] = mapped_column(BigInteger)


class Logbook(Base):
    """One rider's book. `log_id` names this run of its numbers and is renewed when a backup is restored.

    `last_number` is the number of its newest entry, `evidence_number` that of the newest entry that a
    standing can depend on. `receipt_key` signs who wrote what (store.receipt) and is never renewed, so that
    it outlives a restore.
    """

    __tablename__ = "logbook"

    id: Mapped[str] = mapped_column(Id, primary_key=True)
    title: Mapped[str] = mapped_column(String(200))
    log_id: Mapped[str] = mapped_column(Id)
    last_number: Mapped[int] = mapped_column(BigInteger, default=0)
    evidence_number: Mapped[int] = mapped_column(BigInteger, default=0)
    receipt_key: Mapped[str] = mapped_column(String(64), default=token_hex)
    created_at_ms: Mapped[int] = mapped_column(BigInteger)


class Membership(Base):
    """A person's role in a logbook."""

    __tablename__ = "membership"

    logbook_id: Mapped[str] = mapped_column(ForeignKey("logbook.id", ondelete="CASCADE"), primary_key=True)
    account_id: Mapped[str] = mapped_column(
        ForeignKey("account.id", ondelete="CASCADE"), primary_key=True, index=True
    )
    role: Mapped[str] = mapped_column(String(20))
    created_at_ms: Mapped[int] = mapped_column(BigInteger)

    __table_args__ = (
        CheckConstraint("role IN ('rider', 'coach', 'scribe', 'reader')", name="role"),
    )


class Invitation(Base):
    """A code that lets one person join a logbook. `id` is the code's SHA-256. `made_by` and `used_by` are kept
    without a foreign key: who let whom in is still told when an account is gone."""

    __tablename__ = "invitation"

    logbook_id: Mapped[str] = mapped_column(ForeignKey("logbook.id", ondelete="CASCADE"), primary_key=True)
    id: Mapped[str] = mapped_column(String(64), primary_key=True, index=True)
    role: Mapped[str] = mapped_column(String(20))
    made_by: Mapped[str] = mapped_column(Id)
    made_at_ms: Mapped[int] = mapped_column(BigInteger)
    expires_at_ms: Mapped[int] = mapped_column(BigInteger)
    used_by: Mapped[str | None] = mapped_column(Id)
    used_at_ms: Mapped[int | None] = mapped_column(BigInteger)

    __table_args__ = (CheckConstraint("role IN ('coach', 'scribe', 'reader')", name="role"),)


class FieldShare(Base):
    """A field handed on by a code. `id` is the code's SHA-256, `text` the field as book.bodies.shared_field
    describes it, already checked. `made_by` is kept without a foreign key, as in an invitation."""

    __tablename__ = "field_share"

    logbook_id: Mapped[str] = mapped_column(ForeignKey("logbook.id", ondelete="CASCADE"), primary_key=True)
    id: Mapped[str] = mapped_column(String(64), primary_key=True, index=True)
    name: Mapped[str] = mapped_column(String(200))
    text: Mapped[str] = mapped_column(Text)
    made_by: Mapped[str] = mapped_column(Id)
    made_at_ms: Mapped[int] = mapped_column(BigInteger)
    expires_at_ms: Mapped[int] = mapped_column(BigInteger)
    uses_left: Mapped[int]


class Entry(Base):
    """One accepted line of a logbook; never changed. `body` null: the record is taken back.

    `content_digest` tells the same entry sent again from another one under its id. `author` is kept
    without a foreign key: an entry outlives the account that wrote it.
    """

    __tablename__ = "entry"

    logbook_id: Mapped[str] = mapped_column(ForeignKey("logbook.id", ondelete="CASCADE"), primary_key=True)
    number: Mapped[int] = mapped_column(BigInteger, primary_key=True, autoincrement=False)
    id: Mapped[str] = mapped_column(Id)
    record_id: Mapped[str] = mapped_column(Id)
    supersedes: Mapped[str] = mapped_column(Text)
    kind: Mapped[str] = mapped_column(String(60))
    kind_version: Mapped[int]
    body: Mapped[str | None] = mapped_column(Text)
    recorded_at_ms: Mapped[int] = mapped_column(BigInteger)
    utc_offset_min: Mapped[int]
    local_date: Mapped[str] = mapped_column(String(10))
    clock: Mapped[str | None] = mapped_column(Text)
    author: Mapped[str] = mapped_column(Id)
    device: Mapped[str] = mapped_column(Id)
    skew_ms: Mapped[int | None] = mapped_column(BigInteger)
    received_at_ms: Mapped[int] = mapped_column(BigInteger)
    content_digest: Mapped[str] = mapped_column(String(64))

    __table_args__ = (
        UniqueConstraint("logbook_id", "id", name="entry_id_once"),
        Index("entry_of_record", "logbook_id", "record_id"),
    )


class HeldEntry(Base):
    """An entry this server cannot read yet: `text` is what the device wrote, as JSON. Beside it stands what
    is needed to number it after an upgrade; `refusal` says, as JSON, why it could not be numbered then."""

    __tablename__ = "held_entry"

    logbook_id: Mapped[str] = mapped_column(ForeignKey("logbook.id", ondelete="CASCADE"), primary_key=True)
    id: Mapped[str] = mapped_column(Id, primary_key=True)
    reason: Mapped[str] = mapped_column(String(60))
    text: Mapped[str] = mapped_column(Text)
    author: Mapped[str] = mapped_column(Id)
    role: Mapped[str] = mapped_column(String(20))
    device: Mapped[str] = mapped_column(Id)
    skew_ms: Mapped[int | None] = mapped_column(BigInteger)
    received_at_ms: Mapped[int] = mapped_column(BigInteger)
    content_digest: Mapped[str] = mapped_column(String(64))
    refusal: Mapped[str | None] = mapped_column(Text)


class Standing(Base):
    """The standings of one horse, as last computed. They hold on the day `as_of`, while `checked_number` is
    not below the logbook's `evidence_number`, and for the bars and rulebooks of `bar_digest`."""

    __tablename__ = "standing"

    logbook_id: Mapped[str] = mapped_column(ForeignKey("logbook.id", ondelete="CASCADE"), primary_key=True)
    horse_id: Mapped[str] = mapped_column(Id, primary_key=True)
    as_of: Mapped[str] = mapped_column(String(10))
    checked_number: Mapped[int] = mapped_column(BigInteger)
    bar_digest: Mapped[str] = mapped_column(String(64))
    body: Mapped[str] = mapped_column(Text)
