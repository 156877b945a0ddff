"""Small real photos and sounds, and a phone that sends them in pieces."""

import io
from hashlib import sha256

from PIL import Image
from PIL.ExifTags import IFD, Base

from support.asking import ASKED

PIECE = 256 * 1024


def jpeg(seed: int = 1, size: tuple[int, int] = (320, 240), *, quality: int = 90, exif: bytes = b"") -> bytes:
    """A JPEG written by Pillow, of a noise that does not squeeze well."""
    picture = Image.effect_noise(size, 40 + seed).convert("RGB")
    out = io.BytesIO()
    picture.save(out, "JPEG", quality=quality, exif=exif)
    return out.getvalue()


def webp() -> bytes:
    out = io.BytesIO()
    Image.new("RGB", (8, 8), (10, 80, 40)).save(out, "WEBP")
    return out.getvalue()


def gps_exif() -> bytes:
    """EXIF as a phone writes it: make, turned on its side, and where it was taken."""
    exif = Image.Exif()
    exif[Base.Make] = "An invented phone"
    exif[Base.Orientation] = 6  # the top of the scene is at the right of the file
    exif.get_ifd(IFD.GPSInfo).update({1: "N", 2: (51.0, 30.0, 12.5), 3: "W", 4: (1.0, 15.0, 0.0)})
    return exif.tobytes()


def digest(data: bytes) -> str:
    return sha256(data).hexdigest()


class Uploader:
    """Sends media of one logbook as the client does."""

    def __init__(self, browser, logbook: str) -> None:
        self.browser, self.logbook = browser, logbook

    def path(self, name: str) -> str:
        return f"/api/logbooks/{self.logbook}/media/{name}"

    def piece(self, data: bytes, offset: int, size_bytes: int, name: str):
        headers = {"Upload-Offset": str(offset), "Upload-Length": str(size_bytes)}
        return self.browser.client.patch(
            self.path(name), data=data, headers=ASKED | headers, content_type="application/partial-upload"
        )

    def send(self, data: bytes, name: str | None = None, piece_bytes: int = PIECE):
        """All pieces until one is refused; the last answer."""
        answer = None
        for offset in range(0, len(data), piece_bytes):
            answer = self.piece(data[offset : offset + piece_bytes], offset, len(data), name or digest(data))
            if answer.status_code != 200:
                break
        return answer

    def state(self, name: str) -> tuple[str, str]:
        headers = self.browser.client.head(self.path(name)).headers
        return headers["Upload-Offset"], headers["Upload-Complete"]
