"""Who may ask: this machine under its own names. What browsers send is after the Fetch standard."""

from __future__ import annotations

import asyncio

import pytest

from firmpedal.web.guard import Guard

PORT = 8417
HTTP, HTTPS = "http://", "https://"
OURS = ["127.0.0.1:8417", "localhost:8417", "LOCALHOST:8417", "[::1]:8417"]
FOREIGN = [
    "example.org:8417", "localhost", "localhost:80", "127.0.0.1:84170", "localhost.example.org:8417", "",
    "192.0.2.7:8417", "[::2]:8417", "user@localhost:8417",
]  # fmt: skip


async def app(scope, _receive, send):
    """Answers whatever gets through, once it is asked for a page or a socket."""
    if scope["type"] == "websocket":
        await send({"type": "websocket.accept"})
        return
    await send({"type": "http.response.start", "status": 200, "headers": []})
    await send({"type": "http.response.body", "body": b"here"})


def asked(kind, *headers):
    """What is sent back to a request with these headers."""
    sent = []

    async def receive():
        return {"type": "websocket.connect" if kind == "websocket" else "http.request"}

    async def send(message):
        sent.append(message)

    raw = [(name.encode(), value.encode("latin-1")) for name, value in headers]
    asyncio.run(Guard(app, PORT)({"type": kind, "headers": raw}, receive, send))
    return sent


def status(*headers):
    return asked("http", *headers)[0]["status"]


def opened(*headers):
    return [message["type"] for message in asked("websocket", *headers)] == ["websocket.accept"]


def refused(*headers):
    """Whether a page and a socket are both kept out, without a word from behind the guard."""
    page, socket = asked("http", *headers), asked("websocket", *headers)
    body = b"".join(message.get("body", b"") for message in page)
    return (
        page[0]["status"] == 403
        and b"here" not in body
        and [message["type"] for message in socket] == ["websocket.close"]
    )


@pytest.mark.parametrize("host", OURS)
def test_our_own_names_are_answered(host):
    assert status(("host", host)) == 200
    assert opened(("host", host))


@pytest.mark.parametrize("host", FOREIGN)
def test_another_name_for_this_machine_is_refused(host):
    """So a page whose name was turned to 127.0.0.1 after it was loaded gets nothing."""
    assert refused(("host", host))


@pytest.mark.parametrize("origin", [HTTP + host for host in OURS])
def test_our_own_pages_may_send(origin):
    assert status(("host", OURS[0]), ("origin", origin)) == 200
    assert opened(("host", OURS[0]), ("origin", origin))


@pytest.mark.parametrize(
    "origin",
    ["null", HTTPS + "example.org", HTTP + "localhost", HTTPS + "localhost:8417", HTTP + "localhost:8418",
     HTTP + "localhost:8417.example.org", f"{HTTP}127.0.0.1:8417, {HTTP}example.org", "file://", ""],
)  # fmt: skip
def test_a_page_from_elsewhere_may_not(origin):
    assert refused(("host", OURS[0]), ("origin", origin))


def test_two_hosts_or_none_are_refused():
    assert refused(("host", OURS[0]), ("host", OURS[1]))
    assert refused()


def test_one_foreign_origin_among_ours_is_refused():
    ours = ("origin", HTTP + OURS[0])
    assert refused(("host", OURS[0]), ours, ("origin", HTTP + "example.org"))


def test_what_is_no_request_passes():
    """The server's own words on starting and stopping are none of the guard's business."""
    assert asked("lifespan")


@pytest.mark.parametrize("host", [OURS[0], "example.org"])
def test_every_answer_tells_the_browser_to_stay_at_home(host):
    headers = dict(asked("http", ("host", host))[0]["headers"])
    policy = headers[b"content-security-policy"].decode()
    assert "default-src 'none'" in policy
    assert "http:" not in policy
    assert "*" not in policy
    assert headers[b"x-content-type-options"] == b"nosniff"
    assert headers[b"referrer-policy"] == b"same-origin"
    assert headers[b"cross-origin-resource-policy"] == b"same-origin"
