"""Two servers on one database, of either sort: they know the same people, and sign the same people out."""

import pytest

from fieldtally import create_app
from fieldtally.settings import Settings
from fieldtally.store import schema
from fieldtally.store.db import db
from support.asking import PASSWORD, Browser

KEY = "one key for every server of this club"


@pytest.fixture
def servers(database_url, tmp_path):
    """Two servers that share the database and the configured key, and nothing else."""
    folders = [tmp_path / name for name in ("one", "two")]
    made = [create_app(Settings(data_dir=folder, database_url=database_url, secret_key=KEY)) for folder in folders]
    with made[0].app_context():
        schema.upgrade()
    yield made
    for app in made:
        with app.app_context():
            db.engine.dispose()


def test_a_sign_in_at_one_holds_at_the_other_until_signed_out(servers):
    one, two = (Browser(app) for app in servers)
    first = {"sign_in_name": "Zoë", "display_name": "Zoë", "password": PASSWORD}
    assert one.send("POST", "/api/first-account", first).status_code == 200
    two.client.set_cookie("fieldtally", one.client.get_cookie("fieldtally").value)
    assert two.who() == "Zoë"
    assert two.send("POST", "/api/first-account", first).status_code == 403
    one.sign_out()
    assert two.who() is None
    assert two.sign_in("ZOË").status_code == 200


def test_health_names_the_database(servers, database_url):
    assert Browser(servers[1]).get("/api/health").get_json()["database"] == database_url.split(":")[0]
