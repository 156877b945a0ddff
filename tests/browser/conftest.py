import json

import pytest

from browser.person import DESK, PASSWORD, PHONE, Person
from browser.running_server import RunningServer
from browser.watching import make_horse_and_track


@pytest.fixture
def server(tmp_path):
    """A new server with no accounts, on a port and a data folder of its own."""
    running = RunningServer(tmp_path / "data")
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
    """A signed-in rider with a phone whose shell is kept for the field."""
    server.command("user", "add", "wren", "--display-name", "Wren Ashdown", "--password-stdin", given=PASSWORD)
    phone = people("wren")
    phone.open("/")
    phone.sign_in("wren")
    phone.ready_for_the_field()
    phone.close()  # signed in yesterday: Chromium writes cookies to disk only after a while
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
