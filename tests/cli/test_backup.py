"""`fieldtally backup` and `fieldtally restored`."""

import json
import os
import shutil

from support.command import Command, assert_complains


def test_a_backup_put_back_has_everything_and_new_log_ids(command, tmp_path):
    command.run("demo", "--no-serve")
    before = json.loads(command.run("export", "--logbook", "wren").stdout)
    file = tmp_path / "copy.db"
    assert command.run("backup", str(file)).exit_code == 0
    assert os.stat(file).st_mode & 0o777 == 0o600

    elsewhere = Command(tmp_path / "elsewhere")
    elsewhere.data_dir.mkdir()
    shutil.copy(file, elsewhere.data_dir / "fieldtally.db")
    done = elsewhere.run("restored")
    assert (done.exit_code, done.stdout.split(" ")[0]) == (0, "2")
    after = json.loads(elsewhere.run("export", "--logbook", "wren").stdout)
    assert after["entries"] == before["entries"]
    assert after["logbook"]["log_id"] != before["logbook"]["log_id"]
    assert after["logbook"]["id"] == before["logbook"]["id"]


def test_a_file_that_is_there_is_not_written_over(command, tmp_path):
    file = tmp_path / "copy.db"
    file.write_text("precious")
    assert_complains(command.run("backup", str(file)), "exists already")
    assert file.read_text() == "precious"
    assert_complains(command.run("backup", str(tmp_path / "no" / "folder")), "cannot be written")
