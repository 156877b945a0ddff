"""Serves one built client after another from one address, as a server does before and after its upgrade."""

import json
import threading
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

TYPES = {
    ".html": "text/html; charset=utf-8", ".js": "text/javascript", ".css": "text/css", ".json": "application/json",
    ".webmanifest": "application/manifest+json", ".svg": "image/svg+xml", ".png": "image/png",
}  # fmt: skip
NOBODY = {"account": None, "first_run": False, "version": "0.1.0", "protocol": 1, "logbooks": []}
NOTHING = {"error": {"code": "not_found", "message": "Nothing is here.", "field": None, "fix": None, "details": []}}


class ShellServer:
    """`folders`: the built clients it answers from, in turn if there are several. `spoiled`: addresses that
    answer with a portal's page instead."""

    def __init__(self, *folders: Path) -> None:
        self.folders, self.spoiled, self.asked = list(folders), set(), 0
        outer = self

        class Handler(BaseHTTPRequestHandler):
            def do_GET(self) -> None:
                status, kind, body = outer.answer(self.path.split("?")[0])
                self.send_response(status)
                self.send_header("Content-Type", kind)
                self.send_header("Content-Length", str(len(body)))
                self.send_header("Cache-Control", "no-cache")
                self.end_headers()
                self.wfile.write(body)

            def log_message(self, *_) -> None:
                pass

        self.httpd = ThreadingHTTPServer(("127.0.0.1", 0), Handler)
        threading.Thread(target=self.httpd.serve_forever, daemon=True).start()

    @property
    def address(self) -> str:
        return f"http://localhost:{self.httpd.server_port}"

    def stop(self) -> None:
        self.httpd.shutdown()
        self.httpd.server_close()

    def answer(self, path: str) -> tuple[int, str, bytes]:
        if path == "/api/session":
            return 200, "application/json", json.dumps(NOBODY).encode()
        if path.startswith("/api/"):
            return 404, "application/json", json.dumps(NOTHING).encode()
        if any(path.endswith(end) for end in self.spoiled):
            return 200, "text/html; charset=utf-8", b"<!doctype html><title>Welcome to the station</title>"
        name = path.lstrip("/") if "." in path.rpartition("/")[2] else "index.html"
        return self.file(self.folder_for(name) / name)

    def folder_for(self, name: str) -> Path:
        """The worker's script comes from each folder in turn, everything else from wherever it is."""
        if name == "sw.js":
            self.asked += 1
            return self.folders[self.asked % len(self.folders)]
        return next((folder for folder in self.folders if (folder / name).is_file()), self.folders[0])

    def file(self, path: Path) -> tuple[int, str, bytes]:
        if not path.is_file():
            return 404, "text/plain", b"no such file"
        return 200, TYPES.get(path.suffix, "application/octet-stream"), path.read_bytes()
