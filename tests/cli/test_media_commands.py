"""Photos and voice notes in `backup`, `restored`, `export` and `tidy`."""

import base64
import json
import os
import shutil
import time

import pytest

from support.command import Command, assert_complains
from support.media import digest, jpeg

PHOTO = jpeg(4)
DAY_S = 86_400


@pytest.fixture
def demo(command):
    """The demonstration with one photo in Wren's logbook that no entry speaks of."""
    assert command.run("demo", "--no-serve").exit_code == 0
    book = json.loads(command.run("export", "--logbook", "wren").stdout)["logbook"]["id"]
    command.photo = command.data_dir / "media" / book / digest(PHOTO)
    command.photo.parent.mkdir(parents=True, exist_ok=True)
    command.photo.write_bytes(PHOTO)
    return command


def test_a_backup_has_the_photos_beside_it_and_they_can_be_put_back(demo, tmp_path):
    file = tmp_path / "copy.db"
    done = demo.run("backup", str(file))
    assert done.exit_code == 0 and "photos and voice notes copied to" in done.stdout
    copies = tmp_path / "copy.db.media"
    kept = [path for path in copies.rglob("*") if path.is_file()]
    assert digest(PHOTO) in {path.name for path in kept}
    assert os.stat(copies).st_mode & 0o077 == 0

    elsewhere = Command(tmp_path / "elsewhere")
    elsewhere.data_dir.mkdir()
    shutil.copy(file, elsewhere.data_dir / "fieldtally.db")
    shutil.copytree(copies, elsewhere.data_dir / "media")
    assert "not here" not in elsewhere.run("restored").stdout
    media = json.loads(elsewhere.run("export", "--logbook", "wren").stdout)["media"]
    assert base64.b64decode(next(one for one in media if one["sha256"] == digest(PHOTO))["base64"]) == PHOTO


def test_restored_counts_the_photos_that_did_not_come_back(demo, tmp_path):
    wren = json.loads(demo.run("export", "--logbook", "wren").stdout)
    media = [entry for entry in wren["entries"] if entry["kind"] in ("photo", "voice_note")]
    count = len({entry["body"]["media_sha256"] for entry in media})
    elsewhere = Command(tmp_path / "elsewhere")
    elsewhere.data_dir.mkdir()
    demo.run("backup", str(elsewhere.data_dir / "fieldtally.db"))
    said = elsewhere.run("restored").stdout
    assert ("not here" in said) == bool(count)


def test_an_export_may_leave_the_photos_out(demo):
    with_photo = json.loads(demo.run("export", "--logbook", "wren").stdout)
    without = json.loads(demo.run("export", "--logbook", "wren", "--without-media").stdout)
    assert digest(PHOTO) in {one["sha256"] for one in with_photo["media"]} and without["media"] == []
    assert without["entries"] == with_photo["entries"]


def test_tidy_drops_nothing_unless_told_and_only_what_is_old(demo):
    assert demo.json("tidy", "--drop")["files"] == 0  # not yet 30 days old
    old = time.time() - 31 * DAY_S
    os.utime(demo.photo, (old, old))
    assert demo.json("tidy") == {"dropped": False, "files": 1, "size_bytes": len(PHOTO), "unfinished_uploads": 0}
    assert "takes --drop" in demo.run("tidy").stdout
    assert demo.photo.exists()
    assert "Dropped 1 photos" in demo.run("tidy", "--drop").stdout
    assert not demo.photo.exists()


def test_doctor_says_where_the_photos_are(demo):
    check = next(one for one in demo.json("doctor")["checks"] if one["name"] == "photos")
    assert check["state"] == "fine" and "data folder" in check["found"]


def test_a_place_for_photos_that_cannot_be_is_named(tmp_path):
    assert_complains(Command(tmp_path, blobs_url="nowhere://x").run("tidy"), "FIELDTALLY_BLOBS_URL")
