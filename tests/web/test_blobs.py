"""Photos and voice notes over the wire: in pieces, taken up after a cut, refused when they are not what they say."""

import errno
from pathlib import Path

import pytest

from fieldtally.book.words import PHOTO_TYPES, VOICE_TYPES
from fieldtally.store.blobs import Blobs
from fieldtally.store.media_type import FILE_NAMES, media_type
from support.asking import Browser, error_of
from support.media import PIECE, Uploader, digest, jpeg, webp

PHOTO = jpeg(size=(1200, 900))  # some 600 KiB: three pieces
HTML = b"<!doctype html><script>alert(1)</script>" + b" " * 100
WEBM = b"\x1a\x45\xdf\xa3\x9f\x42\x86\x81\x01\x42\x82\x84webm" + bytes(200)
MP4 = b"\x00\x00\x00\x1cftypM4A " + bytes(200)
OGG = b"OggS" + bytes(200)


@pytest.fixture
def sender(people, browser):
    browser.sign_in("wren")
    return Uploader(browser, people.book)


def test_a_photo_in_pieces_is_there_when_the_last_one_came(sender, browser):
    name = digest(PHOTO)
    assert len(PHOTO) > 2 * PIECE
    assert sender.state(name) == ("0", "?0")
    first = sender.piece(PHOTO[:PIECE], 0, len(PHOTO), name)
    assert first.get_json() == {"received_bytes": PIECE, "complete": False}
    assert sender.state(name) == (str(PIECE), "?0")
    waits = browser.get(sender.path(name))
    assert (waits.status_code, error_of(waits)["code"]) == (404, "not_here_yet")
    assert error_of(waits)["details"] == [{"received_bytes": PIECE}]
    sender.piece(PHOTO[PIECE : 2 * PIECE], PIECE, len(PHOTO), name)
    last = sender.piece(PHOTO[2 * PIECE :], 2 * PIECE, len(PHOTO), name)
    assert last.get_json() == {"received_bytes": len(PHOTO), "complete": True}
    assert sender.state(name) == (str(len(PHOTO)), "?1")
    assert browser.get(sender.path(name)).data == PHOTO


def test_it_is_served_as_what_it_is_and_never_as_a_page(sender, browser):
    sender.send(PHOTO)
    headers = browser.get(sender.path(digest(PHOTO))).headers
    assert headers["Content-Type"] == "image/jpeg"
    assert headers["X-Content-Type-Options"] == "nosniff"
    assert headers["Content-Disposition"] == 'attachment; filename="photo.jpg"'
    assert headers["Content-Security-Policy"].startswith("default-src 'none'; sandbox")
    assert headers["Cache-Control"] == "no-store"


def test_after_a_cut_the_phone_is_told_where_to_go_on(sender):
    name = digest(PHOTO)
    sender.piece(PHOTO[:PIECE], 0, len(PHOTO), name)  # the answer to this one never reached the phone
    refused = sender.piece(PHOTO[:PIECE], 0, len(PHOTO), name)
    assert (refused.status_code, error_of(refused)["code"]) == (409, "wrong_offset")
    assert error_of(refused)["details"] == [{"received_bytes": PIECE}]
    too_far = sender.piece(PHOTO[2 * PIECE :], 2 * PIECE, len(PHOTO), name)
    assert error_of(too_far)["details"] == [{"received_bytes": PIECE}]
    rest = [sender.piece(PHOTO[at : at + PIECE], at, len(PHOTO), name) for at in (PIECE, 2 * PIECE)]
    assert rest[-1].get_json()["complete"]


def test_sending_again_what_is_there_costs_nothing(sender, browser):
    assert sender.send(PHOTO).get_json()["complete"]
    again = sender.piece(PHOTO[:PIECE], 0, len(PHOTO), digest(PHOTO))
    assert again.get_json() == {"received_bytes": len(PHOTO), "complete": True}
    assert browser.get(sender.path(digest(PHOTO))).data == PHOTO


def test_bytes_that_are_not_the_announced_ones_are_gone_again(sender, browser):
    name = digest(b"another photo")
    refused = sender.send(PHOTO, name)
    assert (refused.status_code, error_of(refused)["code"]) == (422, "wrong_digest")
    assert error_of(refused)["fix"]
    assert sender.state(name) == ("0", "?0")
    assert browser.get(sender.path(name)).status_code == 404


@pytest.mark.parametrize("data", [HTML, b"%PDF-1.7" + bytes(99), b"GIF89a" + bytes(99), b"<svg xmlns=''>" + bytes(99)])
def test_what_is_no_photo_is_refused_whatever_it_is_called(sender, data):
    refused = sender.piece(data, 0, len(data), digest(data))
    assert (refused.status_code, error_of(refused)["code"]) == (415, "not_media")


def test_a_page_hidden_behind_a_photo_s_first_bytes_is_served_as_a_photo(sender, browser):
    """Polyglots: the browser is told what it is and must not look for itself."""
    data = jpeg()[:20] + HTML
    assert sender.send(data).get_json()["complete"]
    headers = browser.get(sender.path(digest(data))).headers
    assert (headers["Content-Type"], headers["X-Content-Type-Options"]) == ("image/jpeg", "nosniff")
    assert "sandbox" in headers["Content-Security-Policy"]


@pytest.mark.parametrize(
    ("data", "found"),
    [(jpeg(), "image/jpeg"), (webp(), "image/webp"), (WEBM, "audio/webm"), (MP4, "audio/mp4"), (OGG, "audio/ogg"),
     (b"\x1a\x45\xdf\xa3" + b"\x42\x82\x88matroska" + bytes(99), None), (b"RIFF\0\0\0\0WAVE", None), (b"", None)],
)  # fmt: skip
def test_types_are_known_by_their_first_bytes(data, found):
    """JPEG and WebP as Pillow writes them; the others by RFC 8794, ISO/IEC 14496-12, RFC 3533."""
    assert media_type(data) == found
    assert set(FILE_NAMES) == {*PHOTO_TYPES, *VOICE_TYPES}


@pytest.mark.parametrize(("start", "most"), [(jpeg(), 2 * 1024**2), (OGG, 1024**2)])
def test_a_file_above_its_limit_is_refused_before_it_is_taken(sender, start, most):
    refused = sender.piece(start, 0, most + 1, "a" * 64)
    assert (refused.status_code, error_of(refused)["code"]) == (413, "too_large")
    assert str(most) in error_of(refused)["fix"]
    assert sender.state("a" * 64) == ("0", "?0")
    assert sender.piece(start, 0, most, "a" * 64).status_code == 200


def test_a_piece_above_256_kib_is_refused(sender):
    refused = sender.piece(PHOTO[: PIECE + 1], 0, len(PHOTO), digest(PHOTO))
    assert (refused.status_code, error_of(refused)["code"]) == (413, "too_large")


@pytest.mark.parametrize(
    ("offset", "length"), [("", "9"), ("0", ""), ("-1", "9"), ("0", "9e9"), ("1.5", "9"), ("٣", "9"), ("0", "9" * 30)]
)
def test_headers_that_are_no_numbers_are_named(sender, browser, offset, length):
    headers = {"X-Fieldtally": "1", "Upload-Offset": offset.encode().decode("latin-1"), "Upload-Length": length}
    refused = browser.client.patch(sender.path("a" * 64), data=OGG, headers=headers)
    assert (refused.status_code, error_of(refused)["code"]) == (400, "out_of_range")
    assert error_of(refused)["field"] in ("Upload-Offset", "Upload-Length")


def test_more_than_was_announced_or_nothing_at_all_is_refused(sender):
    assert error_of(sender.piece(OGG, 0, len(OGG) - 1, digest(OGG)))["code"] == "out_of_range"
    assert error_of(sender.piece(b"", 0, 9, digest(OGG)))["code"] == "out_of_range"


@pytest.mark.parametrize("name", ["../../secret_key", "A" * 64, "a" * 63, "parts", "a" * 64 + "."])
def test_a_name_that_is_no_digest_leads_nowhere(sender, browser, name):
    assert browser.get(sender.path(name)).status_code == 404
    assert sender.piece(OGG, 0, len(OGG), name).status_code in (404, 405)  # 405: the shell's address


def test_names_on_the_disk_are_made_here(sender, tmp_path, people):
    sender.send(PHOTO)
    files = [path.relative_to(tmp_path) for path in (tmp_path / "media").rglob("*") if path.is_file()]
    assert files == [Path("media") / people.book / digest(PHOTO)]


def test_the_quota_is_for_one_logbook(make_app, people_of):
    app = people_of(make_app(media_quota_bytes=1024**2))
    wren, maren = Browser(app), Browser(app)
    wren.sign_in("wren")
    maren.sign_in("maren")
    books = [person.get("/api/session").get_json()["logbooks"][0]["id"] for person in (wren, maren)]
    mine, other = Uploader(wren, books[0]), Uploader(maren, books[1])
    assert mine.send(PHOTO).get_json()["complete"]
    refused = mine.send(jpeg(2, (1200, 900)))
    assert (refused.status_code, error_of(refused)["code"]) == (413, "quota_full")
    assert "FIELDTALLY_MEDIA_QUOTA_BYTES" in error_of(refused)["fix"]
    assert mine.send(OGG).get_json()["complete"]  # what still fits
    assert other.send(PHOTO).get_json()["complete"]


def test_the_same_photo_in_another_logbook_is_not_lent_out(sender, app, people):
    sender.send(PHOTO)
    maren = Browser(app)
    maren.sign_in("maren")
    assert maren.get(f"/api/logbooks/{people.other}/media/{digest(PHOTO)}").status_code == 404


@pytest.mark.parametrize("who", ["coach", "scribe", "reader"])
def test_every_member_sees_it_and_all_but_the_reader_add(sender, app, people, who):
    sender.send(PHOTO)
    helper = Browser(app)
    helper.sign_in(who)
    assert helper.get(sender.path(digest(PHOTO))).data == PHOTO
    answer = Uploader(helper, people.book).send(OGG)
    assert answer.status_code == (403 if who == "reader" else 200)


def test_asking_how_much_is_here_is_for_members_too(sender, app):
    sender.send(PHOTO)
    stranger = Browser(app)
    assert stranger.client.head(sender.path(digest(PHOTO))).status_code == 401
    stranger.sign_in("maren")
    answer = stranger.client.head(sender.path(digest(PHOTO)))
    assert answer.status_code == 403 and "Upload-Offset" not in answer.headers


def test_pieces_are_limited_per_person(make_app, people_of):
    app = people_of(make_app(media_limit="2 per minute"))
    browser = Browser(app)
    browser.sign_in("wren")
    sender = Uploader(browser, browser.get("/api/session").get_json()["logbooks"][0]["id"])
    refused = sender.send(PHOTO)
    assert (refused.status_code, error_of(refused)["code"]) == (429, "too_many")
    assert refused.headers["Retry-After"]
    assert sender.state(digest(PHOTO)) == (str(2 * PIECE), "?0")


def test_a_full_disk_is_told_and_what_came_before_stays(sender, monkeypatch):
    sender.piece(PHOTO[:PIECE], 0, len(PHOTO), digest(PHOTO))

    def full(*_):
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(Blobs, "_write", full)
    refused = sender.piece(PHOTO[PIECE : 2 * PIECE], PIECE, len(PHOTO), digest(PHOTO))
    assert (refused.status_code, error_of(refused)["code"]) == (503, "no_room")
    monkeypatch.undo()
    assert sender.state(digest(PHOTO)) == (str(PIECE), "?0")


def test_whoever_takes_a_logbook_away_takes_its_photos_along(sender, browser, people):
    sender.send(PHOTO)
    [media] = browser.get(f"/api/logbooks/{people.book}/export").get_json()["media"]
    assert (media["sha256"], media["media_type"], media["size_bytes"]) == (digest(PHOTO), "image/jpeg", len(PHOTO))


def test_a_logbook_that_is_deleted_takes_its_photos_with_it(sender, browser, tmp_path):
    sender.send(PHOTO)
    sender.piece(OGG[:80], 0, len(OGG), digest(OGG))
    assert browser.send("POST", "/api/account/end", {"password": "rope halter seven gates"}).status_code == 204
    assert [path for path in (tmp_path / "media").rglob("*") if path.is_file()] == []
