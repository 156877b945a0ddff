"""Whether the server works, for monitors and for a phone that wonders whom it reached."""

from flask import Blueprint
from sqlalchemy import text

from fieldtally.store.clock import now_ms
from fieldtally.store.db import db
from fieldtally.web.version import PROTOCOL, VERSION

bp = Blueprint("health", __name__, url_prefix="/api")


@bp.get("/health")
def health():
    """503 `database_busy`, from errors.py, when the database does not answer."""
    db.session.execute(text("SELECT 1"))
    return {
        "ok": True,
        "name": "fieldtally",
        "version": VERSION,
        "protocol": PROTOCOL,
        "database": db.engine.dialect.name,
        "server_time_ms": now_ms(),
    }
