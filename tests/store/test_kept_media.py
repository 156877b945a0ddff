"""The shelf of photos and voice notes, in a folder and in a store of another kind; on both databases what may go."""

import os
from datetime import UTC, datetime, timedelta
from uuid import uuid4

import pytest

from fieldtally.settings import Settings
from fieldtally.store.blob_use import missing, unused
from fieldtally.store.blobs import PARTS, Blobs, QuotaFull, WrongDigest, WrongOffset, blobs, connect_blobs
from support.media import digest, jpeg
from support.riders import NOON_MS, edit, wire

PHOTO, OTHER = jpeg(1), jpeg(2)
BOOK = str(uuid4())
DAY_MS = 86_400_000
ROOM = 10 * 1024**2


@pytest.fixture(params=["folder", "memory"])
def shelf(request, tmp_path):
    """The same behaviour is asked of a folder and of a store that is none (fsspec's own, in memory)."""
    return Blobs(str(tmp_path / "media") if request.param == "folder" else f"memory://{uuid4()}", ROOM)


def keep(shelf: Blobs, data: bytes, book: str = BOOK) -> None:
    assert shelf.add(book, digest(data), 0, data, len(data)) == len(data)


def test_pieces_add_up_to_the_file(shelf):
    name = digest(PHOTO)
    for at in range(0, len(PHOTO), 1000):
        shelf.add(BOOK, name, at, PHOTO[at : at + 1000], len(PHOTO))
        assert shelf.received(BOOK, name) == min(len(PHOTO), at + 1000)
    assert shelf.read(BOOK, name) == PHOTO
    assert shelf.size(BOOK, name) == len(PHOTO) == shelf.used_bytes(BOOK)
    assert [blob.sha256 for blob in shelf.every(BOOK)] == [name]


def test_a_piece_elsewhere_and_a_digest_that_lies(shelf):
    shelf.add(BOOK, "0" * 64, 0, PHOTO[:500], len(PHOTO))
    with pytest.raises(WrongOffset) as wrong:
        shelf.add(BOOK, "0" * 64, 700, PHOTO[700:], len(PHOTO))
    assert wrong.value.received_bytes == 500
    with pytest.raises(WrongDigest):
        shelf.add(BOOK, "0" * 64, 500, PHOTO[500:], len(PHOTO))
    assert (shelf.received(BOOK, "0" * 64), shelf.used_bytes(BOOK)) == (0, 0)


def test_a_piece_cut_short_by_a_power_failure_is_gone_on_from_where_it_ends(tmp_path):
    shelf, name = Blobs(str(tmp_path), ROOM), digest(PHOTO)
    shelf.add(BOOK, name, 0, PHOTO[:1000], len(PHOTO))
    half = tmp_path / BOOK / PARTS / name / "00000000"
    half.write_bytes(PHOTO[:400])
    assert shelf.received(BOOK, name) == 400
    shelf.add(BOOK, name, 400, PHOTO[400:], len(PHOTO))
    assert shelf.read(BOOK, name) == PHOTO


def test_two_servers_on_one_place_see_each_other_s_pieces(shelf):
    other = Blobs(shelf.fs.unstrip_protocol(shelf.root), ROOM)
    name = digest(PHOTO)
    shelf.add(BOOK, name, 0, PHOTO[:1000], len(PHOTO))
    other.add(BOOK, name, 1000, PHOTO[1000:], len(PHOTO))
    assert shelf.read(BOOK, name) == PHOTO


def test_uploads_under_way_count_against_the_quota(tmp_path):
    shelf = Blobs(str(tmp_path), len(PHOTO) + len(OTHER) - 1)
    shelf.add(BOOK, digest(PHOTO), 0, PHOTO[:1000], len(PHOTO))
    keep(shelf, OTHER)
    shelf.add(BOOK, digest(PHOTO), 1000, PHOTO[1000:], len(PHOTO))  # begun is finished
    with pytest.raises(QuotaFull):
        keep(shelf, jpeg(3))


def test_uploads_nobody_goes_on_with_are_forgotten_after_a_week(shelf):
    shelf.add(BOOK, digest(PHOTO), 0, PHOTO[:1000], len(PHOTO))
    keep(shelf, OTHER)
    now = datetime.now(UTC)
    assert shelf.drop_unfinished(BOOK, now + timedelta(days=6)) == 0
    assert shelf.received(BOOK, digest(PHOTO)) == 1000
    assert shelf.drop_unfinished(BOOK, now + timedelta(days=8)) == 1
    assert (shelf.received(BOOK, digest(PHOTO)), shelf.read(BOOK, digest(OTHER))) == (0, OTHER)


def test_a_deleted_logbook_takes_only_its_own(shelf):
    other = str(uuid4())
    keep(shelf, PHOTO)
    keep(shelf, PHOTO, other)
    shelf.drop_logbook(BOOK)
    shelf.drop_logbook(BOOK)  # again is no mistake
    assert (shelf.read(BOOK, digest(PHOTO)), shelf.read(other, digest(PHOTO))) == (None, PHOTO)


# What may be dropped. Entries are received a second after NOON_MS; files were kept today, so time runs on from now.


@pytest.fixture
def book(store, stable, tmp_path):
    connect_blobs(store, Settings(data_dir=tmp_path))
    keep(blobs(), PHOTO, stable.logbook)
    return stable


def photo_entry(data: bytes = PHOTO, **changes) -> dict:
    body = {
        "about_id": str(uuid4()), "media_sha256": digest(data), "media_type": "image/jpeg", "size_bytes": len(data),
        "width_px": 320, "height_px": 240,
    }  # fmt: skip
    return wire("photo", body, **changes)


def later(days: int) -> int:
    return int(datetime.now(UTC).timestamp() * 1000) + days * DAY_MS


def droppable(book, days: int) -> list[str]:
    return [blob.sha256 for blob in unused(book.logbook, later(days))]


def test_what_an_entry_speaks_of_is_never_dropped(book):
    entry = photo_entry()
    book.push(entry)
    assert droppable(book, 4000) == []
    book.push(edit(entry, entry["body"] | {"caption": "Softer now"}))
    assert droppable(book, 4000) == []


def test_what_was_taken_back_stays_30_days_and_is_only_offered_then(book, tmp_path):
    os.utime(tmp_path / "media" / book.logbook / digest(PHOTO), (0, 0))
    entry = photo_entry()
    book.push(entry)
    book.push(edit(entry, None))
    taken_back_ms = NOON_MS + 1000
    assert unused(book.logbook, taken_back_ms + 30 * DAY_MS) == []
    assert [blob.sha256 for blob in unused(book.logbook, taken_back_ms + 30 * DAY_MS + 1)] == [digest(PHOTO)]
    assert blobs().read(book.logbook, digest(PHOTO)) == PHOTO  # looking drops nothing


def test_a_photo_put_back_stands_again(book):
    entry = photo_entry()
    gone = edit(entry, None)
    book.push(entry, gone)
    book.push(edit(gone, entry["body"]))
    assert droppable(book, 400) == []


def test_either_side_of_a_fork_keeps_it(book):
    entry = photo_entry()
    book.push(entry, edit(entry, None), edit(entry, entry["body"] | {"caption": "Keep this one"}))
    assert droppable(book, 400) == []


def test_an_entry_this_server_cannot_read_keeps_what_it_mentions(book):
    book.push(photo_entry(kind_version=9))
    assert droppable(book, 400) == []


def test_what_no_entry_ever_spoke_of_goes_after_30_days(book):
    assert droppable(book, 29) == []
    assert droppable(book, 31) == [digest(PHOTO)]


def test_what_a_logbook_speaks_of_and_is_not_here_is_counted(book):
    gone = photo_entry(jpeg(9))
    book.push(photo_entry(), photo_entry(OTHER), gone, edit(gone, None))
    assert missing(book.logbook) == 1
