"""`fieldtally doctor`: looks, changes nothing, says what to fix, and says so with its status."""

import json
import os
import socket
import sqlite3
import time

import pytest

from fieldtally.cli import checks, startup_warnings
from fieldtally.web import shell
from support.command import Command
from support.server_process import ServerProcess


@pytest.fixture
def built(tmp_path, monkeypatch):
    """A client that counts as built, whether or not it is here."""
    (tmp_path / "static").mkdir()
    (tmp_path / "static" / "index.html").write_text("")
    monkeypatch.setattr(shell, "STATIC", tmp_path / "static")


@pytest.fixture
def healthy(built, tmp_path):
    """A doctor on a free port; tests/run sets variables of its own that the doctor would remark on."""
    return Command(tmp_path / "data", port=0, chromium="", test_workers="")


def examined(command):
    """(status, check name -> state)"""
    done = command.run("doctor", "--json")
    found = json.loads(done.stdout)
    assert found["ok"] == (done.exit_code == 0)
    for check in found["checks"]:
        assert check["state"] in ("fine", "attention", "broken") and check["found"]
    return done.exit_code, {check["name"]: check["state"] for check in found["checks"]}


def test_a_fresh_installation_is_fine_and_stays_untouched(healthy):
    status, states = examined(healthy)
    assert status == 0
    assert set(states.values()) - {"fine"} <= {"attention"}
    assert states.keys() == {
        "python", "web client", "settings", "data folder", "secret key", "database", "photos", "disk", "clock", "port",
        "https",
    }  # fmt: skip
    assert not healthy.data_dir.exists()


def test_a_used_installation_is_fine(healthy):
    healthy.add("wren")
    status, states = examined(healthy)
    assert (status, states["database"], states["secret key"]) == (0, "fine", "fine")


def test_in_words(healthy, monkeypatch, tmp_path):
    monkeypatch.setattr(shell, "STATIC", tmp_path / "nothing")
    done = healthy.run("doctor")
    assert done.exit_code == 2
    assert "BROKEN  web client" in done.stdout and "pip install ." in done.stdout
    assert "ok      python" in done.stdout


def test_a_key_others_can_read_is_broken(healthy):
    healthy.add("wren")
    os.chmod(healthy.data_dir / "secret_key", 0o644)
    status, states = examined(healthy)
    assert (status, states["secret key"]) == (2, "broken")
    assert f"chmod 600 {healthy.data_dir / 'secret_key'}" in healthy.run("doctor").stdout


def test_a_damaged_database_is_broken(healthy):
    healthy.add("wren")
    healthy.run("demo", "--no-serve")
    file = healthy.data_dir / "fieldtally.db"
    with sqlite3.connect(file) as connection:
        connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    connection.close()
    content = bytearray(file.read_bytes())
    content[8192 : len(content) - 4096] = b"\xa5" * (len(content) - 4096 - 8192)
    file.write_bytes(content)
    assert examined(healthy)[1]["database"] == "broken"


def test_a_database_of_a_newer_release_is_broken(healthy):
    healthy.add("wren")
    with sqlite3.connect(healthy.data_dir / "fieldtally.db") as connection:
        connection.execute("UPDATE alembic_version SET version_num = '9999'")
    connection.close()
    assert examined(healthy)[1]["database"] == "broken"
    refused = healthy.run("user", "list")
    assert refused.exit_code == 2 and "newer release" in refused.stderr


def test_an_older_database_is_to_be_upgraded(healthy):
    healthy.data_dir.mkdir()
    (healthy.data_dir / "fieldtally.db").touch()
    status, states = examined(healthy)
    assert (status, states["database"]) == (0, "attention")


def test_a_database_server_that_is_not_there_is_broken(built, tmp_path):
    url = "postgresql://x@127.0.0.1:1/x?connect_timeout=2"
    command = Command(tmp_path / "data", port=0, database_url=url, secret_key="k" * 40)
    assert examined(command)[1]["database"] == "broken"


def test_hardly_any_disk_is_broken_and_little_is_remarked_on(healthy, monkeypatch):
    for free, state in ((10_000_000, "broken"), (200_000_000, "attention"), (9_000_000_000, "fine")):
        monkeypatch.setattr(checks.shutil, "disk_usage", lambda _, free=free: type("Usage", (), {"free": free}))
        assert examined(healthy)[1]["disk"] == state


def test_a_clock_before_the_installation_is_broken(healthy, monkeypatch):
    monkeypatch.setattr(checks.time, "time", lambda: 86_400.0 * 365)
    monkeypatch.setattr(checks.time, "gmtime", lambda: time.struct_time((1971, 1, 1, 0, 0, 0, 4, 1, 0)))
    assert examined(healthy)[1]["clock"] == "broken"


def test_a_shared_folder_is_remarked_on(healthy, monkeypatch):
    monkeypatch.setattr(startup_warnings, "file_system", lambda _: "nfs4")
    status, states = examined(healthy)
    assert (status, states["data folder"]) == (0, "attention")


def test_a_slip_of_the_pen_is_remarked_on(built, tmp_path):
    command = Command(tmp_path / "data", port=0, prot=1)
    status, states = examined(command)
    assert (status, states["settings"]) == (0, "attention")
    assert "FIELDTALLY_PROT" in command.run("doctor").stdout


def test_a_setting_that_cannot_be_is_broken(built, tmp_path):
    done = Command(tmp_path / "data", port="x").run("doctor")
    assert done.exit_code == 2
    assert "FIELDTALLY_PORT" in done.stdout and "from 0 to 65535" in done.stdout


def test_a_port_on_which_fieldtally_answers_is_fine_and_any_other_taken_one_is_not(built, tmp_path):
    server = ServerProcess(tmp_path / "data")
    server.start()
    try:
        assert examined(Command(server.data_dir, port=server.port))[1]["port"] == "fine"
    finally:
        server.stop()
    with socket.create_server(("127.0.0.1", 0)) as other:
        assert examined(Command(server.data_dir, port=other.getsockname()[1]))[1]["port"] == "broken"
