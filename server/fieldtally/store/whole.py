"""Everything a logbook holds, for whoever takes it away: heading, entries, what is held, photos, voice notes."""

from base64 import b64encode
from collections.abc import Iterator
from dataclasses import asdict, dataclass

from sqlalchemy import select

from fieldtally.store.blobs import blobs
from fieldtally.store.db import db
from fieldtally.store.feed import page
from fieldtally.store.media_type import media_type
from fieldtally.store.models import Account, HeldEntry, Logbook, Membership


@dataclass(frozen=True)
class Heading:
    """What the logbook is. `members` are {display_name, role}; `last_number` bounds its entries."""

    id: str
    title: str
    log_id: str
    last_number: int
    members: list[dict]

    def to_json(self) -> dict:
        return asdict(self)


def heading(logbook_id: str) -> Heading:
    """The heading of a logbook that exists."""
    logbook = db.session.get_one(Logbook, logbook_id, populate_existing=True)
    return Heading(logbook.id, logbook.title, logbook.log_id, logbook.last_number, _members(logbook_id))


def wire_entries(about: Heading) -> Iterator[dict]:
    """Every entry up to the heading's `last_number`, as it goes over the wire; read page by page."""
    after = 0
    while after < about.last_number:
        found = page(about.id, after).entries
        yield from (entry for entry in found if entry["number"] <= about.last_number)
        after = found[-1]["number"]


def held_texts(logbook_id: str) -> list[str]:
    """The entries this server cannot read yet, as the JSON text that came."""
    which = select(HeldEntry.text).where(HeldEntry.logbook_id == logbook_id)
    return list(db.session.scalars(which.order_by(HeldEntry.received_at_ms, HeldEntry.id)))


def media_files(logbook_id: str) -> Iterator[dict]:
    """Every photo and voice note that is here, one after the other."""
    for blob in blobs().every(logbook_id):
        data = blobs().read(logbook_id, blob.sha256) or b""
        yield {
            "sha256": blob.sha256, "media_type": media_type(data), "size_bytes": len(data),
            "base64": b64encode(data).decode(),
        }  # fmt: skip


def author_names() -> dict[str, str]:
    """Display name by account id, of everybody who has an account."""
    return {account_id: name for account_id, name in db.session.execute(select(Account.id, Account.display_name))}


def _members(logbook_id: str) -> list[dict]:
    rows = db.session.execute(
        select(Account.display_name, Membership.role)
        .join(Membership, Membership.account_id == Account.id)
        .where(Membership.logbook_id == logbook_id)
        .order_by(Membership.role, Account.display_name)
    )
    return [{"display_name": name, "role": role} for name, role in rows]
