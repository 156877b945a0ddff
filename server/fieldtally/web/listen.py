"""The process that listens: waitress with limits set, refusals in our one JSON shape, a calm end.

At SIGTERM or Ctrl-C it takes no new connection, finishes what it has begun (at most 10 s), and ends.
"""

import json
import logging
import signal
import threading
import time

from flask import Flask
from waitress import create_server, wasyncore
from waitress.channel import HTTPChannel
from waitress.server import BaseWSGIServer
from waitress.task import ErrorTask

from fieldtally.settings import Settings
from fieldtally.web.errors import HTTP_PROBLEMS, error_body

PATIENCE_S = 10
IDLE_S = 60
MOST_CONNECTIONS = 600  # well below the usual 1024 open files a process may have
# A body somewhat too large is still read to its end, so that the phone gets the answer and not a broken
# connection. It is kept on disk, not in memory.
READ_TIMES = 4
FORWARDED = {"x-forwarded-for", "x-forwarded-proto"}


class OurErrorTask(ErrorTask):
    """What waitress itself refuses (a malformed or oversized request), in the shape of web/errors.py."""

    def execute(self) -> None:
        refused = self.request.error
        code, message, fix = HTTP_PROBLEMS.get(refused.code, HTTP_PROBLEMS[400])
        body = json.dumps(error_body(code, message, fix=fix)).encode()
        self.status = f"{refused.code} {refused.reason}"
        self.response_headers.extend([("Content-Type", "application/json"), ("X-Content-Type-Options", "nosniff")])
        self.set_close_on_finish()
        self.content_length = len(body)
        self.write(body)


class OurChannel(HTTPChannel):
    error_task_class = OurErrorTask


class Listener:
    """`app` on the settings' host and port, from construction on; OSError if the port is taken."""

    def __init__(self, app: Flask, settings: Settings) -> None:
        self.map: dict = {}
        logging.getLogger("waitress.queue").setLevel(logging.ERROR)  # a short queue is no news
        self.server = create_server(app, map=self.map, **options(settings))
        for each in self.listening():
            each.channel_class = OurChannel
        self.stopping = threading.Event()

    @property
    def port(self) -> int:
        return int(self.listening()[0].effective_port)

    def listening(self) -> list[BaseWSGIServer]:
        return [each for each in self.map.values() if isinstance(each, BaseWSGIServer)]

    def stop(self, *_signal) -> None:
        self.stopping.set()
        self.listening()[0].pull_trigger()  # wakes the loop below

    def run(self) -> None:
        """Answer requests until SIGTERM or SIGINT comes."""
        for told in (signal.SIGTERM, signal.SIGINT):
            signal.signal(told, self.stop)
        while not self.stopping.is_set():
            self._turn(1.0)
        self._finish()

    def _turn(self, at_most_s: float) -> None:
        wasyncore.loop(timeout=at_most_s, map=self.map, use_poll=True, count=1)

    def _finish(self) -> None:
        servers, end = self.listening(), time.monotonic() + PATIENCE_S
        for each in servers:
            wasyncore.dispatcher.close(each)
        while self._busy() and time.monotonic() < end:
            self._turn(0.05)
        servers[0].task_dispatcher.shutdown()
        wasyncore.close_all(self.map)

    def _busy(self) -> bool:
        channels = [each for each in self.map.values() if isinstance(each, HTTPChannel)]
        return any(each.requests or each.total_outbufs_len for each in channels)


def options(settings: Settings) -> dict:
    """Waitress's adjustments. Forwarding headers are dropped unless a proxy of ours is named."""
    behind_proxy = settings.trusted_proxy_count > 0
    proxy = {
        "trusted_proxy": settings.trusted_proxy,
        "trusted_proxy_count": settings.trusted_proxy_count,
        "trusted_proxy_headers": FORWARDED,
    }
    return {
        "host": settings.host,
        "port": settings.port,
        "threads": settings.threads,
        "ident": "",
        "clear_untrusted_proxy_headers": True,
        "connection_limit": MOST_CONNECTIONS,
        "channel_timeout": IDLE_S,
        "cleanup_interval": 10,
        "max_request_header_size": 32 * 1024,
        "max_request_body_size": READ_TIMES * settings.max_request_bytes,
        "asyncore_use_poll": True,
    } | (proxy if behind_proxy else {})
