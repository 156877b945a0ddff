"""A field on foot: where its fences stand, which is nearest, the field from above, and handing it on."""

import json
import re

import pytest
from playwright.sync_api import expect

from browser.person import DESK, PASSWORD, Person
from browser.test_journey import add_fence, add_field, add_horse

pytestmark = pytest.mark.xdist_group("browser")

# a thousandth of a degree northwards is 111 m (invented place)
GATE = (51.5000, -2.2500)
ALONG = (51.5010, -2.2500)


def stand(phone: Person, where: tuple[float, float], accuracy_m: float = 5) -> None:
    phone.context.grant_permissions(["geolocation"], origin=phone.address)
    phone.context.set_geolocation({"latitude": where[0], "longitude": where[1], "accuracy": accuracy_m})


def field_id(phone: Person) -> str:
    phone.go("/fields")
    phone.page.get_by_role("link", name=re.compile("Thornybank")).click()
    phone.heading("Thornybank")
    return phone.page.url.rsplit("/", 1)[1]


@pytest.fixture
def field(rider):
    """Two fences of a field, on a phone with signal."""
    add_field(rider)
    add_fence(rider, "1 Long log", "Log", "88")
    add_fence(rider, "2 Birch brush", "Brush", "85")
    rider.all_sent()
    return field_id(rider)


def walk(phone: Person, field: str) -> None:
    phone.go(f"/field/{field}/walk")
    for place, label in ((GATE, "1 Long log"), (ALONG, "2 Birch brush")):
        stand(phone, place)
        phone.tap(f"I am standing at {label}")
        phone.sees(re.compile("Stand still: ± 5 m"))
        phone.tap(f"I am standing at {label}")  # enough
        expect(phone.page.locator(".toast")).to_contain_text(f"{label}: Position ± 5 m")


def test_a_field_walked_with_no_signal_is_drawn_and_told_in_words(server, rider, field):
    rider.ready_for_the_field()
    server.stop()
    walk(rider, field)
    rider.go(f"/field/{field}/sketch")
    expect(rider.page.get_by_role("img", name=re.compile("from above with 2 fences"))).to_be_visible()
    rider.sees(re.compile(r"111 m north \(0°\) of 1 Long log"))
    rider.page.reload()
    rider.sees(re.compile("Position ± 5 m"))


def test_a_phone_that_will_not_say_where_it_is_says_what_to_do(rider, field):
    rider.context.clear_permissions()
    rider.go(f"/field/{field}/walk")
    rider.tap("I am standing at 1 Long log")
    rider.sees(re.compile("Allow location for this site"))
    rider.sees("No position")


def test_a_fence_is_placed_by_hand_with_the_keyboard_alone(rider, field):
    rider.go(f"/field/{field}/sketch")
    rider.tap("Place by hand")
    rider.page.get_by_label("Fence to place").select_option(label="1 Long log")
    north = rider.page.get_by_role("button", name="5 m to the north")
    north.focus()
    rider.page.keyboard.press("Enter")
    expect(rider.page.locator(".toast")).to_contain_text("1 Long log: Placed by hand")
    rider.page.get_by_label("Fence to place").select_option(label="2 Birch brush")
    east = rider.page.get_by_role("button", name="5 m to the east")
    east.focus()
    for _ in range(4):
        rider.page.keyboard.press("ArrowRight")
    expect(rider.page.locator(".toast")).to_contain_text("2 Birch brush: Placed by hand")
    rider.tap("Place by hand")
    rider.sees(re.compile(r"2\d m (south-)?east"))
    rider.page.reload()
    rider.sees(re.compile(r"2\d m (south-)?east"))


def test_in_an_outing_the_nearest_fence_comes_first_and_the_sketch_leads_to_it(rider, field):
    add_horse(rider)
    walk(rider, field)
    rider.go("/")
    rider.page.get_by_text("Going, confidence, another day").click()
    rider.choose("Field", "Thornybank")
    rider.tap("Start the outing")
    rider.page.wait_for_url(re.compile("/outing/"))
    outing = re.search(r"/outing/([0-9a-f-]+)", rider.page.url)[1]
    caution = rider.page.get_by_role("button", name="I have read this")
    if caution.count():
        caution.first.click()
    titles = rider.page.locator(".fence-row .row__title")
    expect(titles).to_have_text(["1 Long log", "2 Birch brush"])
    stand(rider, ALONG, 4)
    rider.tap("Nearest first")
    expect(titles).to_have_text(["2 Birch brush", "1 Long log"])
    rider.sees("Nearest first, from where you are ± 4 m. Those nobody has located come last.")
    rider.sees(re.compile("111 m ·"))
    rider.tap("Riding order")
    expect(titles).to_have_text(["1 Long log", "2 Birch brush"])
    rider.page.get_by_role("link", name="Sketch").click()
    rider.page.get_by_role("link", name=re.compile("2 Birch brush")).click()
    rider.page.wait_for_url(re.compile(f"/outing/{outing}/fence/"))
    rider.heading("2 Birch brush")


def test_a_field_handed_on_as_a_file_is_brought_once(server, rider, people, field, tmp_path):
    server.command("user", "add", "maren", "--display-name", "Maren Oduya", "--password-stdin", given=PASSWORD)
    rider.go(f"/field/{field}/share")
    rider.heading("Share Thornybank")
    rider.page.evaluate("navigator.canShare = () => false")
    with rider.page.expect_download() as download:
        rider.tap("Hand over the file")
    file = tmp_path / "field.json"
    download.value.save_as(file)
    parts = json.loads(file.read_text(encoding="utf-8"))["parts"]
    assert [part["kind"] for part in parts] == ["field", "fence", "fence"]
    other = people("maren", DESK)
    other.open("/")
    other.sign_in("maren")
    for fresh, already in ((3, 0), (0, 3)):
        other.go("/fields/bring")
        other.page.get_by_label("From a file").set_input_files(file)
        other.sees(f"New here: {fresh}. Changed by whoever shares it: 0. Here already: {already}.")
        if fresh:
            other.tap(re.compile("^Bring it into"))
            other.sees("It is here.")
    other.go("/fields")
    expect(other.page.get_by_role("link", name=re.compile("Thornybank.*2 fences"))).to_have_count(1)
    other.all_sent()


def test_a_field_handed_on_by_a_code(server, rider, people, field):
    server.command("user", "add", "maren", "--display-name", "Maren Oduya", "--password-stdin", given=PASSWORD)
    rider.go(f"/field/{field}/share")
    rider.tap("Make a code")
    code = rider.page.locator(".share-code").inner_text()
    other = people("maren")
    other.open("/")
    other.sign_in("maren")
    other.go("/fields/bring")
    other.fill("Code of a field", "0000 0000 0000")
    other.tap("Open it")
    expect(other.page.get_by_role("alert")).to_be_visible()
    other.fill("Code of a field", code.lower())
    other.tap("Open it")
    other.tap(re.compile("^Bring it into"))
    other.sees("It is here.")
    other.go("/fields")
    other.sees("Thornybank")


def test_a_file_that_is_no_field_says_so(rider, tmp_path):
    file = tmp_path / "other.json"
    file.write_text('{"some": "thing"}', encoding="utf-8")
    rider.go("/fields/bring")
    rider.page.get_by_label("From a file").set_input_files(file)
    rider.sees(re.compile("not a field shared by Fieldtally"))
