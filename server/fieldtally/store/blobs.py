"""Photos and voice notes: bytes under the name of their own SHA-256, in a folder or any store fsspec reaches.

    <root>/<logbook id>/<sha256>                        whole and checked; never changed again
    <root>/<logbook id>/parts/<sha256>/<first byte>     pieces of an upload under way

What is there is told by the files alone, so a database put back from a backup and the files beside it need not
agree: a phone asks what is here and sends the rest. Every name is made here, from the id of a logbook the asker
belongs to and a digest that is checked to be one.
"""

import os
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from hashlib import sha256
from uuid import uuid4

from flask import Flask, current_app
from fsspec.core import url_to_fs

from fieldtally.settings import Settings
from fieldtally.store.media_type import MOST_BYTES, media_type

PARTS = "parts"
UNFINISHED_FOR = timedelta(days=7)  # an upload that rests longer begins anew
EXTENSION = "fieldtally_blobs"


class WrongOffset(Exception):
    """The piece does not begin where the upload stands: `received_bytes` are here."""

    def __init__(self, received_bytes: int) -> None:
        super().__init__(received_bytes)
        self.received_bytes = received_bytes


class WrongDigest(Exception):
    """All bytes came, but they are not those of that name; what came is gone again."""


class NotMedia(Exception):
    """These bytes are none of the kinds of file that are kept here."""


class TooLarge(Exception):
    """More bytes than a file of that type may have: `most`."""

    def __init__(self, most: int) -> None:
        super().__init__(most)
        self.most = most


class QuotaFull(Exception):
    """The logbook's photos and voice notes would take more than they may."""


@dataclass(frozen=True)
class Blob:
    """One file of a logbook, whole."""

    sha256: str
    size_bytes: int
    kept_since: datetime


class Blobs:
    """All files of all logbooks below `url`; `quota_bytes` is the most for one logbook."""

    def __init__(self, url: str, quota_bytes: int) -> None:
        # a listing kept from before would hide what another server of ours has stored since
        self.fs, self.root = url_to_fs(url, use_listings_cache=False)
        self.quota_bytes = quota_bytes

    def size(self, logbook_id: str, digest: str) -> int | None:
        """How many bytes the whole file has; None while it is not whole."""
        try:
            return self.fs.info(self._whole(logbook_id, digest))["size"]
        except FileNotFoundError:
            return None

    def received(self, logbook_id: str, digest: str) -> int:
        """How many bytes from the beginning on are here."""
        whole = self.size(logbook_id, digest)
        return sum(size for _, size in self._parts(logbook_id, digest)) if whole is None else whole

    def read(self, logbook_id: str, digest: str) -> bytes | None:
        try:
            return self.fs.cat_file(self._whole(logbook_id, digest))
        except FileNotFoundError:
            return None

    def add(self, logbook_id: str, digest: str, offset: int, piece: bytes, size_bytes: int) -> int:
        """Keep the next piece of a file of `size_bytes`; returns how many bytes are here now.

        With the last piece the digest is checked and the file becomes readable. Sending again what is here
        already is answered like the first time. Raises the exceptions above.
        """
        if self.size(logbook_id, digest) is not None:
            return size_bytes
        here = self.received(logbook_id, digest)
        if offset != here:
            raise WrongOffset(here)
        if here == 0:
            self._may_begin(logbook_id, piece, size_bytes)
        self._write(f"{self._folder_of_parts(logbook_id, digest)}/{offset:08d}", piece)
        if here + len(piece) >= size_bytes:
            self._finish(logbook_id, digest)
        return here + len(piece)

    def every(self, logbook_id: str) -> Iterator[Blob]:
        """The whole files of a logbook."""
        for found in self._listed(self._folder(logbook_id)):
            if found["type"] == "file" and "." not in _name(found):
                yield Blob(_name(found), found["size"], self._since(found["name"]))

    def used_bytes(self, logbook_id: str) -> int:
        """What the logbook takes, unfinished uploads among it."""
        try:
            return sum(found["size"] for found in self.fs.find(self._folder(logbook_id), detail=True).values())
        except FileNotFoundError:
            return 0

    def drop(self, logbook_id: str, digest: str) -> None:
        self.fs.rm_file(self._whole(logbook_id, digest))

    def drop_logbook(self, logbook_id: str) -> None:
        self._remove_folder(self._folder(logbook_id))

    def drop_unfinished(self, logbook_id: str, now: datetime | None = None) -> int:
        """Forget uploads that nobody went on with for a week; how many those were."""
        before = (now or datetime.now(UTC)) - UNFINISHED_FOR
        stale = [
            folder["name"]
            for folder in self._listed(f"{self._folder(logbook_id)}/{PARTS}")
            if all(self._since(part["name"]) < before for part in self._listed(folder["name"]))
        ]
        for folder in stale:
            self._remove_folder(folder)
        return len(stale)

    def _may_begin(self, logbook_id: str, piece: bytes, size_bytes: int) -> None:
        self.drop_unfinished(logbook_id)
        _check(piece, size_bytes)
        if self.used_bytes(logbook_id) + size_bytes > self.quota_bytes:
            raise QuotaFull

    def _finish(self, logbook_id: str, digest: str) -> None:
        folder = self._folder_of_parts(logbook_id, digest)
        data = b"".join(self.fs.cat_file(f"{folder}/{name}") for name, _ in self._parts(logbook_id, digest))
        try:
            if sha256(data).hexdigest() != digest:
                raise WrongDigest
            _check(data, len(data))
            self._write_whole(self._whole(logbook_id, digest), data)
        finally:
            self._remove_folder(folder)

    def _parts(self, logbook_id: str, digest: str) -> list[tuple[str, int]]:
        """Name and size of the pieces that follow each other without a gap from the first byte on."""
        found = sorted((_name(part), part["size"]) for part in self._listed(self._folder_of_parts(logbook_id, digest)))
        reached, kept = 0, []
        for name, size in found:
            if int(name) == reached:
                kept.append((name, size))
                reached += size
        return kept

    def _write(self, path: str, data: bytes) -> None:
        self.fs.makedirs(path.rpartition("/")[0], exist_ok=True)
        with self.fs.open(path, "wb") as file:
            file.write(data)
            if "file" in self.fs.protocol:  # the phone may forget its copy once we say that we have it
                file.flush()
                os.fsync(file.fileno())

    def _write_whole(self, path: str, data: bytes) -> None:
        """Nobody ever sees half of it, not even after a power cut."""
        unfinished = f"{path}.{uuid4().hex}"
        self._write(unfinished, data)
        self.fs.mv(unfinished, path)

    def _listed(self, folder: str) -> list[dict]:
        try:
            return self.fs.ls(folder, detail=True)
        except (FileNotFoundError, NotADirectoryError):
            return []

    def _since(self, path: str) -> datetime:
        try:
            return self.fs.modified(path)
        except FileNotFoundError:  # gone meanwhile
            return datetime.now(UTC)

    def _remove_folder(self, folder: str) -> None:
        try:
            self.fs.rm(folder, recursive=True)
        except FileNotFoundError:
            pass

    def _folder(self, logbook_id: str) -> str:
        return f"{self.root}/{logbook_id}"

    def _whole(self, logbook_id: str, digest: str) -> str:
        return f"{self._folder(logbook_id)}/{digest}"

    def _folder_of_parts(self, logbook_id: str, digest: str) -> str:
        return f"{self._folder(logbook_id)}/{PARTS}/{digest}"


def connect_blobs(app: Flask, settings: Settings) -> None:
    app.extensions[EXTENSION] = Blobs(settings.blobs, settings.media_quota_bytes)


def blobs() -> Blobs:
    """The files of the app at work."""
    return current_app.extensions[EXTENSION]


def _name(found: dict) -> str:
    return found["name"].rstrip("/").rpartition("/")[2]


def _check(start: bytes, size_bytes: int) -> None:
    found = media_type(start)
    if found is None:
        raise NotMedia
    if size_bytes > MOST_BYTES[found]:
        raise TooLarge(MOST_BYTES[found])
