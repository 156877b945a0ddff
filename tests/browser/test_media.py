"""Photos and voice notes, from the camera in a field without signal to the coach's screen."""

import io
import re
import time
from uuid import uuid4

import pytest
from axe_playwright_python.sync_playwright import Axe
from PIL import Image
from playwright.sync_api import expect

from browser import person
from browser.person import PASSWORD
from browser.test_recording import PUSH, at_the_field, clear, entry, open_fence, saved
from support.media import digest, gps_exif, jpeg

pytestmark = pytest.mark.xdist_group("browser")

PICTURE = {"name": "IMG_0001.JPG", "mimeType": "image/jpeg"}
BYTES_ON_THE_PHONE = """
  async () => {
    const name = (await indexedDB.databases()).map(({ name }) => name).find((each) => each.startsWith("fieldtally-"));
    const db = await new Promise((done, fail) => {
      const asked = indexedDB.open(name);
      asked.onsuccess = () => done(asked.result);
      asked.onerror = () => fail(asked.error);
    });
    const store = db.transaction("media_bytes").objectStore("media_bytes");
    const rows = await new Promise((done) => (store.getAll().onsuccess = ({ target }) => done(target.result)));
    db.close();
    return rows.map(({ sha256, bytes }) => ({ sha256, bytes: Array.from(new Uint8Array(bytes)) }));
  }
"""


def add_fence(phone) -> str:
    """A fence of a field, and the address of its screen."""
    phone.go("/field/new")
    phone.fill("Name", "Thornybank")
    phone.tap(re.compile("^(Save|Add)"))
    phone.heading("Thornybank")
    phone.go(phone.page.url.replace(phone.address, "").replace("/field/", "/fence/new?field="))
    phone.fill("Name or number", "Oak log")
    phone.tap("Log", exact=True)
    phone.tap(re.compile("^(Add|Save)"))
    phone.tap(re.compile("Oak log"), role="link")
    phone.page.wait_for_url(re.compile(r"/fence/[0-9a-f-]{36}"))
    return phone.page.url.replace(phone.address, "")


def choose_picture(phone, data: bytes) -> None:
    phone.page.get_by_label("Take a photo").set_input_files({**PICTURE, "buffer": data})
    phone.sees("Kept on this phone")  # said only once it is on the disk


def thumb(phone):
    return phone.page.get_by_role("img", name=re.compile("^Photo of Oak log, "))


def kept(phone) -> list[tuple[str, bytes]]:
    return [(row["sha256"], bytes(row["bytes"])) for row in phone.page.evaluate(BYTES_ON_THE_PHONE)]


def on_the_server(server) -> dict[str, bytes]:
    files = (server.data_dir / "media").glob("*/" + "[0-9a-f]" * 64)
    return {path.name: path.read_bytes() for path in files}


def wait_for(phone, what, timeout_s: float = 30) -> None:
    """Waits in the phone's own time, so that its requests go on being answered."""
    end = time.monotonic() + timeout_s
    while not what():
        assert time.monotonic() < end, "it never happened"
        phone.page.wait_for_timeout(200)


def test_a_photo_taken_without_signal_arrives_as_it_is_and_the_coach_sees_it(server, rider, coach):
    fence = add_fence(rider)
    rider.all_sent()
    server.stop()
    rider.go(fence)
    choose_picture(rider, jpeg(size=(2400, 1800), exif=gps_exif()))
    expect(thumb(rider)).to_be_visible()
    rider.page.reload()
    expect(thumb(rider)).to_be_visible()
    [(name, data)] = kept(rider)
    assert digest(data) == name
    server.start()
    rider.page.reload()
    wait_for(rider, lambda: on_the_server(server))
    assert on_the_server(server) == {name: data}
    rider.all_sent()

    coach.open("/")
    coach.sign_in("idris")
    coach.all_sent()
    assert kept(coach) == []  # nothing is fetched before somebody looks
    coach.go(fence)
    expect(thumb(coach)).to_be_visible()
    wait_for(coach, lambda: kept(coach) == [(name, data)])
    thumb(coach).click()
    expect(coach.page.locator("img.photo")).to_be_visible()
    server.stop()
    coach.page.reload()
    expect(coach.page.locator("img.photo")).to_be_visible()  # looked at once, kept for the field


def test_the_place_it_was_taken_at_stays_behind_and_it_stands_upright(rider):
    """EXIF written and read by Pillow: orientation 6 means that the top of the scene is at the right of the file."""
    sent = jpeg(size=(2400, 1200), exif=gps_exif())
    assert b"Exif" in sent and Image.open(io.BytesIO(sent)).getexif().get_ifd(0x8825)
    rider.go(add_fence(rider))
    choose_picture(rider, sent)
    [(_, data)] = kept(rider)
    drawn = Image.open(io.BytesIO(data))
    assert drawn.format == "JPEG" and drawn.size == (800, 1600)
    assert not drawn.getexif() and b"Exif" not in data and b"invented phone" not in data
    assert set(drawn.info) <= {"jfif", "jfif_version", "jfif_unit", "jfif_density", "icc_profile"}


def test_a_connection_cut_in_the_middle_of_a_photo_goes_on_where_it_was(server, rider):
    fence = add_fence(rider)
    rider.all_sent()
    offsets = []

    def cut(route):
        if route.request.method != "PATCH":
            return route.continue_()
        offset = int(route.request.headers["upload-offset"])
        offsets.append(offset)
        if offset > 0 and len(offsets) == 2:
            return route.abort()
        route.continue_()

    rider.context.route("**/media/*", cut)
    rider.go(fence)
    choose_picture(rider, noise())
    [(name, data)] = kept(rider)
    assert len(data) > 256 * 1024
    wait_for(rider, lambda: on_the_server(server), 60)
    assert on_the_server(server) == {name: data}
    assert offsets[:3] == [0, 262_144, 262_144]  # nothing that had arrived was sent again
    rider.all_sent()


def noise() -> bytes:
    """A picture that JPEG cannot make small."""
    out = io.BytesIO()
    channels = [Image.effect_noise((1600, 1200), 120) for _ in range(3)]
    Image.merge("RGB", channels).save(out, "JPEG", quality=95)
    return out.getvalue()


def test_what_waits_is_told_in_numbers_and_goes_by_hand_where_that_was_chosen(server, rider):
    fence = add_fence(rider)
    choose_picture(rider, jpeg())
    rider.all_sent()
    rider.go("/settings")
    rider.page.get_by_role("checkbox", name=re.compile("only when I say so")).check()
    rider.go(fence)
    choose_picture(rider, jpeg(2))
    rider.page.wait_for_timeout(2500)
    expect(rider.page.locator(".top__state")).to_contain_text("1 photo waiting", timeout=20_000)
    assert len(on_the_server(server)) == 1
    rider.go("/settings")
    rider.tap("Send photos now")
    rider.all_sent()
    assert len(on_the_server(server)) == 2


def test_sent_photos_can_be_taken_off_the_phone_and_come_back_when_looked_at(server, rider):
    fence = add_fence(rider)
    choose_picture(rider, jpeg())
    rider.all_sent()
    rider.go("/settings")
    server.stop()
    rider.tap(re.compile("^Remove sent photos"))
    rider.sees("No signal: the server is asked first")
    assert len(kept(rider)) == 1
    server.start()
    rider.tap(re.compile("^Remove sent photos"))
    rider.sees("1 removed from this phone")
    assert kept(rider) == []
    rider.go(fence)
    expect(thumb(rider)).to_be_visible()
    assert len(kept(rider)) == 1


def test_a_caption_is_its_words_and_a_photo_taken_back_returns(rider):
    add_fence(rider)
    choose_picture(rider, jpeg())
    thumb(rider).click()
    rider.fill("What it shows", "Soft on the left")
    rider.page.get_by_label("What it shows").blur()
    expect(rider.page.get_by_role("img", name="Soft on the left")).to_be_visible()
    rider.page.get_by_label("What it shows").click()  # looked at again: what stands there stays
    rider.page.get_by_label("What it shows").blur()
    expect(rider.page.get_by_label("What it shows")).to_have_value("Soft on the left")
    expect(rider.page.get_by_role("img", name="Soft on the left")).to_be_visible()
    rider.tap("Take the photo back")
    rider.sees("Taken back")
    rider.tap("Undo")
    expect(rider.page.get_by_role("img", name="Soft on the left")).to_be_visible()


def test_a_full_phone_refuses_the_photo_and_keeps_the_record(rider):
    fence = add_fence(rider)
    rider.all_sent()
    rider.close()
    rider.open("/api/health")
    used = rider.page.evaluate("navigator.storage.estimate().then(room => room.usage)")
    tools = rider.context.new_cdp_session(rider.page)
    tools.send("Storage.overrideQuotaForOrigin", {"origin": rider.address, "quotaSize": used + 6_000_000})
    rider.go(fence)
    rider.page.get_by_label("Take a photo").set_input_files({**PICTURE, "buffer": jpeg()})
    rider.sees("the room left is for records")
    assert kept(rider) == []
    rider.go("/field/new")  # a record still finds room
    rider.fill("Name", "After the photo")
    rider.tap(re.compile("^(Save|Add)"))
    rider.heading("After the photo")


def test_a_file_that_is_no_picture_is_refused_in_words(rider):
    add_fence(rider)
    page = b"<!doctype html><script>alert(1)</script>"
    rider.page.get_by_label("Choose a picture").set_input_files({**PICTURE, "buffer": page})
    rider.sees("cannot read that file as a picture")


def test_a_voice_note_is_recorded_kept_and_sent(server, people, monkeypatch):
    flags = ["--use-fake-device-for-media-stream", "--use-fake-ui-for-media-stream"]
    monkeypatch.setattr(person, "QUIET", [*person.QUIET, *flags])
    server.command("user", "add", "wren", "--display-name", "Wren Ashdown", "--password-stdin", given=PASSWORD)
    phone = people("voice")
    phone.open("/")
    phone.sign_in("wren")
    phone.ready_for_the_field()
    add_fence(phone)
    phone.tap("Voice note")
    expect(phone.page.get_by_role("timer")).to_contain_text("0:02 of 1:00")
    stop = phone.page.get_by_role("button", name="Stop and keep")
    assert stop.bounding_box()["height"] >= 64
    stop.click()
    phone.sees("Kept on this phone")
    expect(phone.page.locator("audio")).to_have_attribute("src", re.compile("^blob:"))
    heard = "async (audio) => (await new Promise((done) => ((audio.onended = done), audio.play())), audio.currentTime)"
    assert phone.page.locator("audio").evaluate(heard) > 1  # seconds
    phone.all_sent()
    [(name, data)] = kept(phone)
    assert on_the_server(server) == {name: data} and data.startswith(b"\x1a\x45\xdf\xa3")


def test_what_was_said_is_read_where_it_cannot_be_played(rider, coach):
    """The bytes never arrived; the coach was told by telephone what was said, and types it."""
    fence = add_fence(rider)
    said = {"media_sha256": "ab" * 32, "media_type": "audio/webm", "size_bytes": 9000, "duration_ms": 5000}
    rider.page.evaluate(PUSH, [entry("voice_note", said | {"about_id": fence.split("/")[-1]}, str(uuid4()))])
    rider.all_sent()
    coach.open("/")
    coach.sign_in("idris")
    coach.all_sent()
    coach.go(fence)
    coach.sees(re.compile("^Voice note of 0:05, Wren Ashdown, .*still on the phone of Wren Ashdown"))
    coach.page.get_by_text("Write down what was said").click()
    coach.fill("What was said", "Soft\non the left")
    coach.page.wait_for_timeout(500)
    coach.page.reload()  # half typed it is still there, and in sight
    expect(coach.page.get_by_label("What was said")).to_have_value("Soft\non the left")
    coach.tap("Keep the words")
    expect(coach.page.locator(".media__said")).to_have_text("Soft\non the left")
    assert Axe().run(coach.page).response["violations"] == []
    coach.all_sent()
    rider.go(fence)
    expect(rider.page.locator(".media__said")).to_have_text("Soft\non the left", timeout=30_000)
    rider.sees(re.compile("^Voice note of 0:05, Wren Ashdown"))  # hers, whoever typed


def test_leaving_the_screen_keeps_what_was_said(people, server, monkeypatch):
    flags = ["--use-fake-device-for-media-stream", "--use-fake-ui-for-media-stream"]
    monkeypatch.setattr(person, "QUIET", [*person.QUIET, *flags])
    server.command("user", "add", "wren", "--display-name", "Wren Ashdown", "--password-stdin", given=PASSWORD)
    phone = people("voice")
    phone.open("/")
    phone.sign_in("wren")
    add_fence(phone)
    phone.tap("Voice note")
    expect(phone.page.get_by_role("timer")).to_contain_text("0:01 of 1:00")
    phone.tap("Back")
    phone.sees("Kept on this phone")


def test_where_nothing_can_be_recorded_it_is_said_and_not_offered(rider):
    rider.context.add_init_script("delete window.MediaRecorder")
    rider.page.reload()
    add_fence(rider)
    rider.sees("This browser cannot record voice notes.")
    assert rider.page.get_by_role("button", name="Voice note").count() == 0


def test_a_photo_of_an_attempt_stands_in_the_outing_as_the_coach_reads_it(rider, coach):
    outing = at_the_field(rider)
    open_fence(rider, outing, "1 Log")
    clear(rider).click()
    saved(rider)
    rider.go(f"{outing}/attempts")
    rider.page.locator("a[href^='/attempt/']").first.click()
    choose_picture(rider, jpeg())
    shown = re.compile("^Photo of 1 Log, ")
    expect(rider.page.get_by_role("img", name=shown)).to_be_visible()
    rider.all_sent()
    coach.open("/")
    coach.sign_in("idris")
    coach.all_sent()
    coach.go(outing.replace("/outing/", "/timeline/"))
    expect(coach.page.get_by_role("img", name=shown)).to_be_visible()
    assert Axe().run(coach.page).response["violations"] == []
