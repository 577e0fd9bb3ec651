"""Who may ask: this machine, under its own name, and no page from elsewhere.

A page from elsewhere in the same browser can send requests here, and a name server can make another name
mean this machine. Both carry the wrong name with them, in Origin or in Host, and are refused. Where phones
of the local network may come, what does not come from this machine goes through their door, and has to call
us by the very address that it reached: a name server's trick has a name there.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from starlette.types import ASGIApp, Message, Receive, Scope, Send

    from firmpedal.web.door import Door

OURSELVES = ("127.0.0.1", "::1")
LOOPBACK = ("127.0.0.1", "localhost", "[::1]")

# NiceGUI writes its scripts and styles into the page and compiles templates in the browser, so
# 'unsafe-inline' and 'unsafe-eval' stay; nothing at all may come from or go to elsewhere.
POLICY = (
    "default-src 'none'; script-src 'self' 'unsafe-inline' 'unsafe-eval'; style-src 'self' 'unsafe-inline'; "
    "img-src 'self' data:; font-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; "
    "frame-ancestors 'none'"
)
# With no referrer at all browsers would send our own forms as from nowhere (`Origin: null`), so: to us alone.
HEADERS = (
    (b"content-security-policy", POLICY.encode()),
    (b"x-content-type-options", b"nosniff"),
    (b"x-frame-options", b"DENY"),
    (b"referrer-policy", b"same-origin"),
    (b"cross-origin-opener-policy", b"same-origin"),
    (b"cross-origin-resource-policy", b"same-origin"),
)
REFUSED = b"Firmpedal answers only to this machine, under its own address.\n"


class Guard:
    """Refuses foreign names before anything else sees a request, and tells browsers to stay at home."""

    def __init__(self, app: ASGIApp, port: int, door: Door | None = None) -> None:
        self.app, self.door = app, door
        self.hosts = frozenset(f"{name}:{port}" for name in LOOPBACK)

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass a request on, or refuse it."""
        if scope["type"] not in ("http", "websocket"):
            await self.app(scope, receive, send)
            return
        if scope["type"] == "http":
            send = _with_headers(send)
        if self.door is None or _from_here(scope):
            await (self.app if _known(scope, self.hosts) else _refuse)(scope, receive, send)
        elif _known(scope, _reached(scope)):
            await self.door(self.app, scope, receive, send)
        else:
            await _refuse(scope, receive, send)


def _from_here(scope: Scope) -> bool:
    """Whether a request came from this machine to this machine alone; both ends are the system's word."""
    ends = (scope.get("client"), scope.get("server"))
    return all(end is not None and end[0] in OURSELVES for end in ends)


def _reached(scope: Scope) -> frozenset[str]:
    """The address at which a request came in, as a browser writes it."""
    server = scope.get("server")
    return frozenset((f"{server[0]}:{server[1]}",)) if server is not None else frozenset()


def _known(scope: Scope, ours: frozenset[str]) -> bool:
    """Whether the one Host is ours, and the Origin too where there is one: whatever a page sends has."""
    hosts = [value.decode("latin-1").lower() for name, value in scope["headers"] if name == b"host"]
    origins = [value.decode("latin-1").lower() for name, value in scope["headers"] if name == b"origin"]
    return (
        len(hosts) == 1
        and hosts[0] in ours
        and all(each in {"http://" + one for one in ours} for each in origins)
    )


async def _refuse(scope: Scope, receive: Receive, send: Send) -> None:
    if scope["type"] == "websocket":
        await receive()
        await send({"type": "websocket.close", "code": 1008})
        return
    headers = [(b"content-type", b"text/plain; charset=utf-8")]
    await send({"type": "http.response.start", "status": 403, "headers": headers})
    await send({"type": "http.response.body", "body": REFUSED})


def _with_headers(send: Send) -> Send:
    async def sending(message: Message) -> None:
        if message["type"] == "http.response.start":
            message = {**message, "headers": [*message.get("headers", ()), *HEADERS]}
        await send(message)

    return sending
