"""What only a real socket shows: malformed requests, sizes, idle connections, proxies, stopping, restarting."""

import json
import os
import select
import signal
import socket
import threading

import pytest

from support.asking import PASSWORD
from support.server_process import ServerProcess

FIRST = {"sign_in_name": "wren", "display_name": "Wren", "password": PASSWORD}
WRONG = {"sign_in_name": "wren", "password": "not her password"}


@pytest.fixture(scope="module")
def server(tmp_path_factory):
    running = ServerProcess(tmp_path_factory.mktemp("real") / "data", threads=4)
    running.start()
    yield running
    running.stop()


@pytest.fixture
def own_server(tmp_path):
    """Makes servers with settings of their own; all of one test share a data folder."""
    made = []

    def make(**settings):
        made.append(ServerProcess(tmp_path / "data", **settings))
        made[-1].start()
        return made[-1]

    yield make
    [each.stop() for each in made]


def still_answers(server):
    return server.ask("GET", "/api/health", timeout_s=5)[0] == 200


# Request smuggling and parsing: RFC 9112 sections 2.2, 5.1, 6.1 and 6.3; waitress 3.0.1 and 3.0.2 change log.
@pytest.mark.parametrize(
    "sent",
    [
        b"POST /api/session HTTP/1.1\r\nHost: x\r\nContent-Length: 4\r\nTransfer-Encoding: gzip, chunked\r\n\r\n0\r\n\r\n",  # noqa: E501
        b"POST /api/session HTTP/1.1\r\nHost: x\r\nContent-Length: +10\r\n\r\n0123456789",
        b"POST /api/session HTTP/1.1\r\nHost: x\r\nContent-Length: 1\r\nContent-Length: 2\r\n\r\n01",
        b"GET /api/health HTTP/1.1\nHost: x\n\n",
        b"GET /api/health HTTP/1.1\r\nHost : x\r\n\r\n",
        b"POST /api/session HTTP/1.1\r\nHost: x\r\nTransfer-Encoding: chunked\r\n\r\nzz\r\nhello\r\n0\r\n\r\n",
        b"complete nonsense\r\n\r\n",
    ],
)
def test_a_malformed_request_is_refused_or_cut_off_and_nothing_follows_it(server, sent):
    found = server.raw(sent + b"GET /api/health HTTP/1.1\r\nHost: x\r\n\r\n")
    assert b" 200 " not in found.split(b"\r\n")[0]
    assert b'"ok"' not in found
    assert found == b"" or found.startswith((b"HTTP/1.1 4", b"HTTP/1.0 4", b"HTTP/1.1 501", b"HTTP/1.0 501"))
    assert b"Traceback" not in found and b"waitress" not in found
    assert still_answers(server)


def test_what_the_listener_itself_refuses_has_our_shape(server):
    found = server.raw(b"POST /api/session HTTP/1.1\r\nHost: x\r\nContent-Length: +10\r\n\r\n")
    head, _, body = found.partition(b"\r\n\r\n")
    assert b"400 Bad Request" in head and b"application/json" in head
    assert json.loads(body)["error"]["code"] == "bad_request"


def test_50_mb_is_answered_413_in_our_shape_and_others_are_served_meanwhile(server):
    answers = []
    big = threading.Thread(target=lambda: answers.append(server.ask("POST", "/api/session", b"x" * 50_000_000)))
    big.start()
    while big.is_alive():
        assert still_answers(server)
    [(status, _, body)] = answers
    assert (status, body["error"]["code"]) == (413, "too_large")


def test_an_endless_chunked_body_is_cut_off(own_server):
    server = own_server(max_request_bytes=65536)
    head = b"POST /api/session HTTP/1.1\r\nHost: x\r\nX-Fieldtally: 1\r\nTransfer-Encoding: chunked\r\n\r\n"
    chunk = b"10000\r\n" + b"x" * 65536 + b"\r\n"
    with socket.create_connection(("127.0.0.1", server.port), timeout=10) as connection:
        connection.sendall(head)
        with pytest.raises(OSError):
            for _ in range(2000):  # 128 MB, of which it must not take more than a fraction
                connection.sendall(chunk)
    assert still_answers(server)


def test_memory_stays_flat_while_large_bodies_come(own_server):
    server = own_server()
    server.ask("POST", "/api/session", b"x" * 1000)
    before = resident_bytes(server)
    for _ in range(3):
        assert server.ask("POST", "/api/session", b"x" * 50_000_000)[0] == 413
    assert resident_bytes(server) - before < 50_000_000


def resident_bytes(server):
    with open(f"/proc/{server.process.pid}/statm") as statm:
        return int(statm.read().split()[1]) * os.sysconf("SC_PAGE_SIZE")


def test_200_half_open_connections_do_not_silence_it(server):
    idle = [socket.create_connection(("127.0.0.1", server.port), timeout=10) for _ in range(200)]
    try:
        [each.sendall(b"POST /api/session HTTP/1.1\r\nHost: x\r\nContent-Le") for each in idle]
        assert still_answers(server)
    finally:
        [each.close() for each in idle]


def test_a_forged_forwarding_header_is_not_believed(own_server):
    server = own_server(sign_in_limit="2 per minute")
    server.ask("POST", "/api/first-account", FIRST)
    found = [
        server.ask("POST", "/api/session", WRONG, {"X-Forwarded-For": f"10.0.0.{n}", "Forwarded": f"for=10.0.0.{n}"})
        for n in range(3)
    ]
    assert [status for status, _, _ in found] == [401, 401, 429]


def test_a_named_proxy_is_believed_for_the_last_hop_only(own_server):
    server = own_server(sign_in_limit="2 per minute", trusted_proxy_count=1)
    server.ask("POST", "/api/first-account", FIRST)

    def fail(chain):
        return server.ask("POST", "/api/session", WRONG, {"X-Forwarded-For": chain})[0]

    assert [fail(f"{n}.{n}.{n}.{n}, 203.0.113.7") for n in (1, 2, 3)] == [401, 401, 429]
    assert fail("203.0.113.8") == 401


def test_a_restart_keeps_everybody_signed_in_and_a_second_process_knows_them(own_server):
    one = own_server()
    _, headers, _ = one.ask("POST", "/api/first-account", FIRST)
    cookie = {"Cookie": headers["Set-Cookie"].split(";")[0]}
    two = own_server()
    assert two.ask("GET", "/api/session", headers=cookie)[2]["account"]["sign_in_name"] == "wren"
    one.stop(), one.start()
    assert one.ask("GET", "/api/session", headers=cookie)[2]["account"]["sign_in_name"] == "wren"
    one.ask("DELETE", "/api/session", headers=cookie)
    assert two.ask("GET", "/api/session", headers=cookie)[2]["account"] is None


def test_sigterm_finishes_what_was_begun_and_ends_with_status_0(own_server):
    """One thread and four requests: when the first is answered, the others have been read and wait."""
    server = own_server(threads=1)
    server.ask("POST", "/api/first-account", FIRST)
    body = json.dumps(FIRST).encode()
    head = (
        b"POST /api/session HTTP/1.1\r\nHost: x\r\nX-Fieldtally: 1\r\nContent-Type: application/json\r\n"
        b"Connection: close\r\nContent-Length: %d\r\n\r\n" % len(body)
    )
    waiting = [socket.create_connection(("127.0.0.1", server.port), timeout=10) for _ in range(4)]
    [each.sendall(head + body) for each in waiting]
    select.select(waiting, [], [], 10)
    server.process.send_signal(signal.SIGTERM)
    replies = [each.recv(65536).split(b"\r\n")[0] for each in waiting]
    [each.close() for each in waiting]
    assert replies == [b"HTTP/1.1 200 OK"] * 4
    assert server.process.wait(15) == 0
    with pytest.raises(OSError):
        socket.create_connection(("127.0.0.1", server.port), timeout=2)
