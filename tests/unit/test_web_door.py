"""The door for phones: nothing without a code, with it reading alone. Scopes are after the ASGI standard."""

from __future__ import annotations

import asyncio
from urllib.parse import urlencode

import pytest

from firmpedal.web.door import COOKIE, PHONE, Door
from firmpedal.web.guard import Guard
from firmpedal.web.pairing import Pairing

PORT, HERE, THERE = 8417, "127.0.0.1", "192.0.2.9"
HTTP = "http://"
FORM = (b"content-type", b"application/x-www-form-urlencoded")


async def app(scope, _receive, send):
    """Answers whatever gets through, and says whether it was told of a phone."""
    if scope["type"] == "websocket":
        await send({"type": "websocket.accept"})
        return
    await send({"type": "http.response.start", "status": 200, "headers": []})
    await send({"type": "http.response.body", "body": b"phone" if PHONE in scope else b"computer"})


class Asking:
    """Requests from a machine to the server; `code` is the one that is shown."""

    def __init__(self):
        self.pairing = Pairing()
        self.guard = Guard(app, PORT, Door(self.pairing, frozenset(("make", "prove"))))
        self.cookie = ""

    def __call__(
        self, path, method="GET", kind="http", body=b"", client="192.0.2.40", server=THERE, **headers
    ):
        sent = []
        given = {"host": f"{server}:{PORT}", **({"cookie": self.cookie} if self.cookie else {}), **headers}

        async def receive():
            return {"type": f"{kind}.connect" if kind == "websocket" else "http.request", "body": body}

        async def send(message):
            sent.append(message)

        scope = {
            "type": kind, "path": path, "method": method, "query_string": b"",
            "client": (client, 50000), "server": (server, PORT),
            "headers": [(name.encode(), word.encode("latin-1")) for name, word in given.items()] + [FORM],
        }  # fmt: skip
        asyncio.run(self.guard(scope, receive, send))
        return sent

    def status(self, *given, **how):
        sent = self(*given, **how)
        return sent[0]["status"], b"".join(each.get("body", b"") for each in sent)

    def opened(self, path, **how):
        return self(path, kind="websocket", **how)[0]["type"] == "websocket.accept"

    def pair(self, code):
        answer = self("/pair", "POST", body=urlencode({"code": code}).encode())[0]
        cookies = [value.decode() for name, value in answer["headers"] if name == b"set-cookie"]
        if cookies:
            self.cookie = cookies[0].split(";")[0]
        return answer["status"], cookies


@pytest.fixture
def ask():
    return Asking()


@pytest.fixture
def paired(ask):
    status, _ = ask.pair(ask.pairing.ask())
    assert status == 303
    return ask


SOCKET = "/_nicegui_ws/socket.io"
READ = ["/", "/thread", "/aircraft/mine.yaml/make", "/aircraft/mine.yaml/prove",
        "/paper/mine.yaml/packet.pdf", "/paper/mine.yaml/hangar.html",
        "/static/app.css", "/_nicegui/1/x.js", "/favicon.ico"]  # fmt: skip
REFUSED = ["/new", "/phone", "/aircraft/mine.yaml/list", "/aircraft/mine.yaml/describe",
           "/aircraft/mine.yaml", "/begin/example", "/aircraft/a/b/make", "/export/mine.yaml/dxf.zip",
           "/openapi.json", "/papers", "//paper/mine.yaml/packet.pdf"]  # fmt: skip


@pytest.mark.parametrize("path", [*READ, *REFUSED, SOCKET])
def test_a_stranger_gets_only_the_question_for_the_code(ask, path):
    status, body = ask.status(path)
    assert status == 403
    assert b"Code from the computer" in body
    assert b"mine" not in body
    assert not ask.opened(path)


def test_a_made_up_cookie_is_no_use(ask):
    ask.pairing.ask()
    for cookie in (f"{COOKIE}=", f"{COOKIE}=abc", f'{COOKIE}="', "\xe4", f"{COOKIE}={ask.pairing.code}"):
        assert ask.status("/", cookie=cookie)[0] == 403


def test_the_right_code_makes_a_cookie_for_this_run_alone(ask):
    status, cookies = ask.pair(ask.pairing.ask())
    assert status == 303
    (cookie,) = cookies
    words = {each.strip().lower() for each in cookie.split(";")[1:]}
    assert {"httponly", "samesite=strict", "path=/"} == words
    other = Asking()
    other.cookie = ask.cookie
    assert ask.status("/")[0] == 200
    assert other.status("/")[0] == 403


def test_a_wrong_code_makes_none(ask):
    code = ask.pairing.ask()
    assert ask.pair(f"{(int(code) + 1) % 10**6:06d}") == (403, [])
    assert ask.pair("") == (403, [])
    assert ask("/pair", "POST", body=b"code=" + b"1" * 10_000)[0]["status"] == 403
    assert ask("/pair", "POST", body=f"code={code}&code={code}".encode())[0]["status"] == 403
    assert ask.pairing.phones == 0


@pytest.mark.parametrize("path", READ)
def test_a_phone_reads(paired, path):
    assert paired.status(path) == (200, b"phone")


def test_a_phone_has_its_socket(paired):
    assert paired.opened(SOCKET)
    assert not paired.opened("/another")


@pytest.mark.parametrize("path", REFUSED)
def test_a_phone_does_nothing_else(paired, path):
    assert paired.status(path)[0] == 403


@pytest.mark.parametrize("path", READ)
@pytest.mark.parametrize("method", ["POST", "PUT", "DELETE", "PATCH", "OPTIONS"])
def test_a_phone_sends_nothing(paired, path, method):
    assert paired.status(path, method=method)[0] == 403


@pytest.mark.parametrize(
    "headers",
    [{"host": "example.org:8417"}, {"host": f"{HERE}:{PORT}"}, {"host": f"localhost:{PORT}"}, {"host": THERE},
     {"origin": HTTP + "example.org"}, {"origin": f"{HTTP}{HERE}:{PORT}"}, {"origin": "null"}],
)  # fmt: skip
def test_even_a_paired_phone_calls_us_by_the_address_it_reached(paired, headers):
    assert paired.status("/", **headers)[0] == 403
    assert not paired.opened(SOCKET, **headers)
    assert paired.opened(SOCKET, origin=f"{HTTP}{THERE}:{PORT}")


def test_the_computer_itself_is_asked_for_nothing(ask):
    assert ask.status("/new", client=HERE, server=HERE) == (200, b"computer")
    assert ask.opened(SOCKET, client=HERE, server=HERE)


@pytest.mark.parametrize(
    "ends", [{"client": HERE}, {"server": HERE}, {"client": "127.0.0.2", "server": HERE}]
)
def test_one_end_on_this_machine_is_not_enough(ask, ends):
    assert ask.status("/new", **ends)[0] == 403
    assert not ask.opened(SOCKET, **ends)


def test_what_comes_from_nobody_knows_where_is_refused(ask):
    for lacking in ({"client": None}, {"server": None}):
        sent = []

        async def send(message, sent=sent):
            sent.append(message)

        scope = {"type": "http", "path": "/", "method": "GET", "headers": [(b"host", b"127.0.0.1:8417")],
                 "client": (HERE, 1), "server": (HERE, PORT), **lacking}  # fmt: skip
        asyncio.run(ask.guard(scope, None, send))
        assert sent[0]["status"] == 403
