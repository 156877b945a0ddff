"""The built client: every file of it, and its one page for every address of the app. Never a redirect,
since a browser refuses a redirected page that was kept for offline use."""

import re
from hashlib import sha256
from pathlib import Path

from flask import Blueprint, Response, request
from werkzeug.utils import safe_join

from fieldtally.web.errors import problem

STATIC = Path(__file__).parents[1] / "static"
TYPES = {
    ".html": "text/html; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".css": "text/css; charset=utf-8",
    ".json": "application/json",
    ".map": "application/json",
    ".webmanifest": "application/manifest+json",
    ".svg": "image/svg+xml",
    ".png": "image/png",
    ".ico": "image/x-icon",
    ".woff2": "font/woff2",
    ".txt": "text/plain; charset=utf-8",
}
ENCODINGS = (("br", ".br"), ("gzip", ".gz"))  # best first
HASHED = re.compile(r"-[0-9A-Z]{8}\.")  # as the build names files after their content
NOT_BUILT = """<!doctype html><html lang="en-GB"><meta charset="utf-8"><title>Fieldtally</title>
<h1>The web client is not built yet</h1>
<p>In the project's folder run <code>pip install .</code>, or after a change to the client
<code>cd webclient &amp;&amp; npm ci &amp;&amp; node build.mjs</code>.
<code>fieldtally doctor</code> checks the rest.</p></html>
"""

bp = Blueprint("shell", __name__)


@bp.get("/", defaults={"path": ""})
@bp.get("/<path:path>")
def page_or_file(path: str):
    if path == "api" or path.startswith("api/"):
        problem(404, "not_found", "There is nothing at this address.")
    if "." in path.rpartition("/")[2]:
        return file(path)
    if not is_built():
        return Response(NOT_BUILT, 503, content_type=TYPES[".html"])
    return file("index.html")


def is_built() -> bool:
    return (STATIC / "index.html").is_file()


def file(path: str) -> Response:
    """The file at `path` of the built client in the best encoding the browser takes, or 404."""
    found = safe_join(str(STATIC), path)
    kind = TYPES.get(Path(path).suffix)
    if found is None or kind is None or not Path(found).is_file():
        problem(404, "not_found", "There is no such file.")
    encoding, stored = best(Path(found))
    content = stored.read_bytes()
    response = Response(content, content_type=kind)
    response.headers["Vary"] = "Accept-Encoding"
    if encoding:
        response.headers["Content-Encoding"] = encoding
    hashed = HASHED.search(path)
    response.headers["Cache-Control"] = "public, max-age=31536000, immutable" if hashed else "no-cache"
    response.set_etag(sha256(content).hexdigest()[:32])
    return response.make_conditional(request)


def best(stored: Path) -> tuple[str | None, Path]:
    """(encoding, file): the smallest form of `stored` that was built and that the browser accepts."""
    for encoding, suffix in ENCODINGS:
        packed = stored.with_name(stored.name + suffix)
        if request.accept_encodings[encoding] > 0 and packed.is_file():
            return encoding, packed
    return None, stored
