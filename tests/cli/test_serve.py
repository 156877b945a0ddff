"""`fieldtally serve`: what it says at start, and what it refuses to start with."""

import subprocess
import sys

import pytest

from fieldtally.cli.startup_warnings import SHARED, file_system
from support.command import PASSWORD
from support.server_process import ServerProcess


@pytest.fixture
def server(tmp_path):
    running = ServerProcess(tmp_path / "data")
    yield running
    running.stop()


def serve(server, *words):
    command = [sys.executable, "-m", "fieldtally", "serve", *words]
    return subprocess.run(command, env=server.environment(), capture_output=True, text=True, timeout=60)


def test_an_empty_server_says_where_it_is_and_how_to_begin(server):
    server.start()
    server.stop()
    log = server.log.read_text()
    assert f"answers at http://localhost:{server.port}/" in log
    assert str(server.data_dir) in log
    assert "fieldtally user add" in log
    assert "Traceback" not in log


def test_it_makes_its_data_folder_and_keeps_what_is_there(server):
    server.command("user", "add", "wren", "--password-stdin", given=f"{PASSWORD}\n")
    server.start()
    assert server.ask("GET", "/api/session")[2]["first_run"] is False
    assert "fieldtally user add" not in server.log.read_text()


def test_a_taken_port_is_said_with_the_cure(server):
    server.start()
    done = serve(server)
    assert (done.returncode, done.stdout) == (2, "")
    assert f"port {server.port}" in done.stderr and "--port" in done.stderr and "Traceback" not in done.stderr


def test_postgresql_without_a_key_is_refused(tmp_path):
    done = serve(ServerProcess(tmp_path / "data", database_url="postgresql://db/fieldtally"))
    assert done.returncode == 2
    assert "FIELDTALLY_SECRET_KEY" in done.stderr and "secrets.token_urlsafe" in done.stderr


def test_a_limit_storage_that_is_not_there_is_said(tmp_path):
    done = serve(ServerProcess(tmp_path / "data", limit_storage="nowhere://x"))
    assert done.returncode == 2
    assert "FIELDTALLY_LIMIT_STORAGE" in done.stderr and "Traceback" not in done.stderr


def test_listening_to_every_network_without_https_is_warned_of(tmp_path):
    server = ServerProcess(tmp_path / "data", host="0.0.0.0")
    server.environment = lambda: ServerProcess.environment(server) | {"FIELDTALLY_HOST": "0.0.0.0"}
    server.start()
    server.stop()
    assert "over HTTPS only" in server.log.read_text()


MOUNTS = """\
/dev/vda / ext4 rw 0 0
proc /proc proc rw 0 0
nas:/club /srv/club nfs4 rw 0 0
/dev/vdb /srv/club/local\\040disk ext4 rw 0 0
tmpfs /tmp tmpfs rw 0 0
//nas/share /tmp cifs rw 0 0
"""


@pytest.mark.parametrize(
    ("folder", "kind", "shared"),
    [
        ("/home/club/data", "ext4", False),
        ("/srv/club/data", "nfs4", True),
        ("/srv/club/local disk/data", "ext4", False),
        ("/srv/clubs", "ext4", False),
        ("/tmp/data", "cifs", True),
    ],
)
def test_a_shared_file_system_is_recognised(tmp_path, folder, kind, shared):
    """SQLite's own documentation (Write-Ahead Logging, section 1): WAL does not work over a network file system."""
    mounts = tmp_path / "mounts"
    mounts.write_text(MOUNTS)
    found = file_system(tmp_path.__class__(folder), mounts)
    assert (found, found in SHARED) == (kind, shared)


def test_where_a_machine_does_not_tell_nothing_is_claimed(tmp_path):
    assert file_system(tmp_path, tmp_path / "no mounts here") is None
