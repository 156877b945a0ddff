import json
import shutil

import pytest

from browser.person import DESK, PASSWORD, PHONE, Person
from browser.running_server import RunningServer
from browser.watching import make_horse_and_track

PROFILE = "profile-wren"
NOT_COPIED = shutil.ignore_patterns("Singleton*")  # links that name the browser that had the profile


@pytest.fixture(scope="session")
def signed_in_yesterday(playwright, tmp_path_factory):
    """A stopped server that has the rider's account, and in its folder her phone's profile: signed in, its shell kept
    for the field. Each test that asks for `rider` gets a copy of both."""
    folder = tmp_path_factory.mktemp("yesterday")
    running = RunningServer(folder / "data")
    running.start()
    running.command("user", "add", "wren", "--display-name", "Wren Ashdown", "--password-stdin", given=PASSWORD)
    phone = Person(playwright, folder / PROFILE, running.address, PHONE)
    phone.open("/")
    phone.sign_in("wren")
    phone.ready_for_the_field()
    phone.close()  # Chromium writes cookies to disk only after a while
    assert phone.mistakes == []
    running.stop()
    return running


@pytest.fixture
def server(request, tmp_path):
    """A server with a data folder of its own: with no accounts, or as the rider left it."""
    running = RunningServer(tmp_path / "data")
    if "rider" in request.fixturenames:
        before = request.getfixturevalue("signed_in_yesterday")
        running.port = before.port  # what a browser keeps belongs to an address
        for name in ("data", PROFILE):
            shutil.copytree(before.data_dir.parent / name, tmp_path / name, ignore=NOT_COPIED)
    running.start()
    yield running
    running.stop()


@pytest.fixture
def people(playwright, server, tmp_path):
    """Makes people with devices; afterwards closes them and fails on any error a page threw."""
    made: list[Person] = []

    def person(name: str, device: dict = PHONE) -> Person:
        made.append(Person(playwright, tmp_path / f"profile-{name}", server.address, device))
        return made[-1]

    yield person
    for each in made:
        each.close()
    assert [mistake for each in made for mistake in each.mistakes] == []


@pytest.fixture
def rider(server, people):
    """A signed-in rider with a phone whose shell is kept for the field: see `signed_in_yesterday`."""
    phone = people("wren")
    phone.open("/")
    return phone


@pytest.fixture(scope="module")
def saddled(playwright, tmp_path_factory):
    """A rider's phone with a horse and a track, shared by a file's tests: each opens the browser anew."""
    folder = tmp_path_factory.mktemp("saddled")
    server = RunningServer(folder / "data")
    server.start()
    server.command("user", "add", "wren", "--display-name", "Wren Ashdown", "--password-stdin", given=PASSWORD)
    person = Person(playwright, folder / "profile", server.address, PHONE)
    person.open("/")
    person.sign_in("wren")
    person.ready_for_the_field()
    make_horse_and_track(person)
    person.all_sent()
    person.close()
    yield person
    server.stop()


@pytest.fixture
def coach(server, rider, people):
    """The rider's coach at a desk, not yet signed in."""
    server.command(
        "user", "add", "idris", "--display-name", "Idris Vale", "--coach-of", "wren", "--password-stdin", given=PASSWORD
    )
    return people("idris", DESK)


@pytest.fixture
def season(people, tmp_path):
    """The demonstration's rider on her own server, with her whole logbook on the phone."""
    running = RunningServer(tmp_path / "season")
    told = json.loads(running.command("demo", "--no-serve", "--json"))["people"]
    running.start()
    phone = people("season")
    phone.address = running.address
    phone.open("/sign-in")
    phone.sign_in("wren", next(one["password"] for one in told if one["sign_in_name"] == "wren"))
    phone.all_sent()
    yield phone
    running.stop()
