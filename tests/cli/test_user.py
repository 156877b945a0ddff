"""`fieldtally user`: people and their roles; a password is never part of a command."""

import os
import sys

import pytest

from support.command import PASSWORD, Command, assert_complains


def roles(command):
    """sign-in name -> {title of logbook: role}"""
    people = command.json("user", "list")
    return {one["sign_in_name"]: {book["title"]: book["role"] for book in one["logbooks"]} for one in people}


def test_a_rider_gets_a_logbook_and_helpers_join_it(command):
    done = command.add("wren", "--display-name", "Wren Ashdown")
    assert (done.exit_code, done.stderr) == (0, "")
    assert done.stdout == "Added wren (Wren Ashdown): rider of Wren Ashdown\n"
    command.add("maren", "--role", "rider")
    command.add("idris", "--coach-of", "wren", "--coach-of", "maren")
    command.add("pip", "--scribe-of", "WREN")
    command.add("oma", "--reader-of", "wren", "--role", "rider")
    assert roles(command) == {
        "idris": {"Wren Ashdown": "coach", "maren": "coach"},
        "maren": {"maren": "rider"},
        "oma": {"oma": "rider", "Wren Ashdown": "reader"},
        "pip": {"Wren Ashdown": "scribe"},
        "wren": {"Wren Ashdown": "rider"},
    }


def test_the_password_may_be_typed_twice_unseen(command):
    done = command.run("user", "add", "wren", given=f"{PASSWORD}\n{PASSWORD}\n")
    assert done.exit_code == 0
    assert PASSWORD not in done.output


def test_a_password_in_the_command_is_not_an_option(command):
    assert_complains(command.run("user", "add", "wren", "--password", PASSWORD), "No such option")


@pytest.mark.parametrize(
    ("name", "words", "password", "said"),
    [
        ("wren", (), "short", "password: 5 characters is too short"),
        ("", (), PASSWORD, "sign_in_name"),
        ("idris", ("--coach-of", "nobody"), PASSWORD, "nobody signs in as “nobody”"),
        ("idris", ("--role", "coach"), PASSWORD, "Invalid value for '--role'"),
    ],
)
def test_what_cannot_be_is_said_and_nothing_is_added(command, name, words, password, said):
    assert_complains(command.add(name, *words, password=password), said)
    assert command.json("user", "list") == []


def test_a_name_is_taken_however_it_is_spelled(command):
    command.add("Zoë")
    assert_complains(command.add("ZOË"), "is taken")
    assert [one["sign_in_name"] for one in command.json("user", "list")] == ["Zoë"]


def test_a_coach_has_no_logbook_of_their_own(command):
    command.add("wren")
    command.add("idris", "--coach-of", "wren")
    assert_complains(command.add("pip", "--scribe-of", "idris"), "idris has no logbook")
    assert "pip" not in roles(command)


def test_roles_change_and_end(command):
    command.add("wren")
    command.add("pip", "--scribe-of", "wren")
    assert command.run("user", "join", "pip", "--coach-of", "wren").exit_code == 0
    assert roles(command)["pip"] == {"wren": "coach"}
    assert command.run("user", "leave", "pip", "--of", "wren").exit_code == 0
    assert roles(command)["pip"] == {}
    assert_complains(command.run("user", "leave", "pip", "--of", "wren"), "has no role")


def test_a_rider_stays_the_rider_of_her_own_logbook(command):
    command.add("wren")
    assert_complains(command.run("user", "join", "wren", "--reader-of", "wren"), "stays it")
    assert_complains(command.run("user", "leave", "wren", "--of", "wren"), "stays it")
    assert_complains(command.run("user", "join", "wren"), "no role was named")
    assert roles(command) == {"wren": {"wren": "rider"}}


def test_a_new_password(command):
    command.add("wren")
    done = command.run("user", "password", "wren", "--password-stdin", given="another gate entirely\n")
    assert (done.exit_code, PASSWORD in done.output) == (0, False)
    assert_complains(command.run("user", "password", "maren", "--password-stdin", given=PASSWORD), "nobody signs in")


def test_a_list_of_nobody(command):
    assert command.run("user", "list").stdout == "Nobody yet.\n"


def test_settings_that_cannot_be_are_said(tmp_path):
    assert_complains(Command(tmp_path, port="x").run("user", "list"), "FIELDTALLY_PORT", "from 0 to 65535")
    assert_complains(Command(tmp_path, database_url="postgresql://db/x").run("user", "list"), "FIELDTALLY_SECRET_KEY")


def test_a_database_that_does_not_answer_is_said(tmp_path):
    command = Command(tmp_path, database_url="postgresql://x@127.0.0.1:1/x?connect_timeout=2", secret_key="k" * 40)
    assert_complains(command.run("user", "list"), "the database does not answer", "FIELDTALLY_DATABASE_URL")


def test_a_folder_that_cannot_be_made_is_said(tmp_path):
    (tmp_path / "file").write_text("")
    assert_complains(Command(tmp_path / "file" / "data").run("user", "list"), "cannot be used", "FIELDTALLY_DATA_DIR")


def test_what_is_made_can_be_read_by_its_owner_only(command):
    command.add("wren")
    assert sys.platform != "win32"
    modes = {name: os.stat(command.data_dir / name).st_mode & 0o777 for name in os.listdir(command.data_dir)}
    assert modes == {"fieldtally.db": 0o600, "secret_key": 0o600}
    assert os.stat(command.data_dir).st_mode & 0o777 == 0o700
