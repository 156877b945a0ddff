"""The phones and browsers that have sent entries."""

from sqlalchemy.dialects import postgresql, sqlite

from fieldtally.store.db import db, writing
from fieldtally.store.models import Device

DAY_MS = 86_400_000


def seen(account_id: str, device_id: str, app_version: str, at_ms: int) -> None:
    """Note that the device sent something, at most once a day or when its app was updated."""
    device = db.session.get(Device, (account_id, device_id))
    if device and device.app_version == app_version and at_ms - device.last_seen_at_ms < DAY_MS:
        return
    with writing() as session:
        dialect = postgresql if session.get_bind().dialect.name == "postgresql" else sqlite
        session.execute(
            dialect.insert(Device)
            .values(
                account_id=account_id, id=device_id, label="", app_version=app_version,
                first_seen_at_ms=at_ms, last_seen_at_ms=at_ms,
            )
            .on_conflict_do_update(
                index_elements=["account_id", "id"],
                set_={"app_version": app_version, "last_seen_at_ms": at_ms},
            )
        )  # fmt: skip
