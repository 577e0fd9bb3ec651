"""Who may ask: this machine, under its own name, and no page from elsewhere.

A page from elsewhere in the same browser can send requests here, and a name server can make another name
mean this machine. Both carry the wrong name with them, in Origin or in Host, and are refused.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from starlette.types import ASGIApp, Message, Receive, Scope, Send

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

    def __init__(self, app: ASGIApp, port: int) -> None:
        self.app = app
        self.hosts = frozenset(f"{name}:{port}" for name in LOOPBACK)
        self.origins = frozenset("http://" + host for host in self.hosts)

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass a request on, or refuse it."""
        if scope["type"] not in ("http", "websocket"):
            await self.app(scope, receive, send)
        elif not self._known(scope):
            await _refuse(scope, receive, send)
        elif scope["type"] == "http":
            await self.app(scope, receive, _with_headers(send))
        else:
            await self.app(scope, receive, send)

    def _known(self, scope: Scope) -> bool:
        """Whether the one Host is ours, and the Origin too where there is one: whatever a page sends has."""
        hosts = [value.decode("latin-1").lower() for name, value in scope["headers"] if name == b"host"]
        origins = [value.decode("latin-1").lower() for name, value in scope["headers"] if name == b"origin"]
        return len(hosts) == 1 and hosts[0] in self.hosts and all(each in self.origins for each in origins)


async def _refuse(scope: Scope, receive: Receive, send: Send) -> None:
    if scope["type"] == "websocket":
        await receive()
        await send({"type": "websocket.close", "code": 1008})
        return
    headers = [(b"content-type", b"text/plain; charset=utf-8"), *HEADERS]
    await send({"type": "http.response.start", "status": 403, "headers": headers})
    await send({"type": "http.response.body", "body": REFUSED})


def _with_headers(send: Send) -> Send:
    async def sending(message: Message) -> None:
        if message["type"] == "http.response.start":
            message = {**message, "headers": [*message.get("headers", ()), *HEADERS]}
        await send(message)

    return sending
