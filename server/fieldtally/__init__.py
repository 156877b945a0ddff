"""Fieldtally: evidence for one decision. `create_app` puts the server together; nothing imports the app."""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from flask import Flask

    from fieldtally.settings import Settings


def create_app(settings: "Settings") -> "Flask":
    """The web server with these settings. Imports stand here so that `fieldtally pace` needs none of them."""
    from flask import Flask

    from fieldtally.store.blobs import connect_blobs
    from fieldtally.store.db import connect
    from fieldtally.web import (
        account,
        auth,
        blobs,
        errors,
        field_shares,
        health,
        invitations,
        limits,
        logbooks,
        members,
        openapi,
        rulebooks,
        security,
        shell,
        standing,
        sync,
        what_if,
    )

    app = Flask(__name__, static_folder=None)
    security.configure(app, settings)
    connect(app, settings.database)
    connect_blobs(app, settings)
    errors.register(app)
    limits.register(app, settings)
    auth.register(app)
    for room in (
        account, blobs, field_shares, health, invitations, logbooks, members, openapi, rulebooks, standing, sync,
        what_if, shell,
    ):
        app.register_blueprint(room.bp)
    return app
