"""`fieldtally serve` as a process of its own, for what only a real socket shows. No web client is needed."""

import http.client
import json
import socket

from browser.running_server import RunningServer

ASKED = {"X-Fieldtally": "1", "Content-Type": "application/json"}


class ServerProcess(RunningServer):
    """`settings` go in as FIELDTALLY_* variables."""

    def __init__(self, data_dir, **settings):
        super().__init__(data_dir, needs_client=False)
        self.settings = {f"FIELDTALLY_{name.upper()}": str(value) for name, value in settings.items()}

    def environment(self):
        return super().environment() | self.settings

    def ask(self, method, path, body=None, headers=None, timeout_s=15):
        """(status, headers, JSON or None) of one request over a connection of its own."""
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=timeout_s)
        try:
            raw = body if body is None or isinstance(body, bytes) else json.dumps(body).encode()
            connection.request(method, path, raw, ASKED | (headers or {}))
            reply = connection.getresponse()
            text = reply.read()
            is_json = reply.getheader("Content-Type") == "application/json"
            return reply.status, reply.headers, json.loads(text) if is_json else None
        finally:
            connection.close()

    def raw(self, sent: bytes, timeout_s=15) -> bytes:
        """What comes back for exactly these bytes, until the server closes or falls silent for 2 s."""
        with socket.create_connection(("127.0.0.1", self.port), timeout=timeout_s) as connection:
            connection.sendall(sent)
            connection.settimeout(2)
            found = b""
            try:
                while piece := connection.recv(65536):
                    found += piece
            except TimeoutError:
                pass
            return found
