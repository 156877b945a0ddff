"""`fieldtally demo`: a living system with an invented season, the same people each time."""

import json
import os
import signal
import subprocess
import sys

from fieldtally import create_app
from fieldtally.settings import Settings
from fieldtally.store.db import db
from support.asking import Browser
from support.command import Command, assert_complains
from support.server_process import ServerProcess


def test_it_makes_the_season_and_says_who_can_sign_in(command):
    made = command.json("demo", "--no-serve")
    assert made["address"] is None
    assert {(one["sign_in_name"], one["role"]) for one in made["people"]} >= {("wren", "rider"), ("idris", "coach")}
    app = create_app(Settings(data_dir=command.data_dir))
    for person in made["people"]:
        answer = Browser(app).sign_in(person["sign_in_name"], person["password"])
        assert answer.status_code == 200
        assert max(book["last_number"] for book in answer.get_json()["logbooks"]) > 20
    with app.app_context():
        db.engine.dispose()


def test_passwords_are_made_up_anew_for_each_demonstration(tmp_path):
    one, two = (Command(tmp_path / name).json("demo", "--no-serve")["people"] for name in ("one", "two"))
    assert not {person["password"] for person in one} & {person["password"] for person in two}


def test_the_second_time_nothing_is_added_and_the_same_people_are_named(command):
    first = command.json("demo", "--no-serve")
    assert command.json("demo", "--no-serve") == first
    assert len(command.json("user", "list")) == len(first["people"])
    assert os.stat(command.data_dir / "who-can-sign-in.json").st_mode & 0o077 == 0


def test_a_database_with_people_of_its_own_is_left_alone(command):
    command.add("wren")
    assert_complains(command.run("demo", "--no-serve"), "people of its own", "another folder")
    assert len(command.json("user", "list")) == 1


def test_without_a_variable_it_is_made_in_the_folder_one_stands_in(tmp_path):
    done = subprocess.run(
        [sys.executable, "-m", "fieldtally", "demo", "--no-serve"], cwd=tmp_path, text=True, capture_output=True,
        env={"PYTHONPATH": ServerProcess(tmp_path).environment()["PYTHONPATH"], "PATH": os.environ["PATH"]},
    )  # fmt: skip
    assert (done.returncode, done.stderr) == (0, "")
    assert "wren" in done.stdout
    assert (tmp_path / "fieldtally-demo" / "fieldtally.db").exists()


def test_it_serves_on_the_next_free_port_and_ends_with_ctrl_c(tmp_path):
    taken = ServerProcess(tmp_path / "one" / "data")
    taken.data_dir.parent.mkdir()
    taken.start()
    environment = taken.environment() | {"FIELDTALLY_DATA_DIR": str(tmp_path / "demo")}
    command = [sys.executable, "-u", "-m", "fieldtally", "demo", "--json"]
    with subprocess.Popen(command, env=environment, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True) as demo:
        try:
            told = json.JSONDecoder().raw_decode(read_object(demo.stdout))[0]
            port = int(told["address"].rstrip("/").rpartition(":")[2])
            assert taken.port < port < taken.port + 20
            here = ServerProcess(tmp_path / "demo")
            here.port = port
            wren = next(one for one in told["people"] if one["sign_in_name"] == "wren")
            body = {"sign_in_name": "wren", "password": wren["password"]}
            assert here.ask("POST", "/api/session", body)[0] == 200
        finally:
            demo.send_signal(signal.SIGINT)
            rest = demo.communicate(timeout=20)
            taken.stop()
    assert (demo.returncode, rest) == (0, ("", ""))


def read_object(stream):
    """Lines up to the closing brace of the outermost object."""
    text = ""
    for line in stream:
        text += line
        if line == "}\n":
            return text
    raise AssertionError(f"no object in: {text}")
