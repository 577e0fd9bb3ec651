"""The door for phones on the local network: in with a code from the computer, and then to read alone."""

from __future__ import annotations

from html import escape
from http.cookies import CookieError, SimpleCookie
from pathlib import Path
from typing import TYPE_CHECKING
from urllib.parse import parse_qs

from starlette.requests import Request
from starlette.responses import HTMLResponse, RedirectResponse, Response

from firmpedal.web import addresses
from firmpedal.web.pairing import DIGITS, Said

if TYPE_CHECKING:
    from starlette.types import ASGIApp, Receive, Scope, Send

    from firmpedal.web.pairing import Pairing

COOKIE = "fp-phone"
PHONE = "firmpedal.phone"  # in what the pages are told of a request: it comes from a phone
LONGEST = 200  # bytes of a form with one code in it
MACHINERY = "/_nicegui_ws/"  # over which an open page speaks with us
READ = ("/static/", "/_nicegui/", "/favicon.ico", addresses.PAPERS)
ELSEWHERE = "That is done on the computer. A phone may read, print and tick."
_LOOK = (Path(__file__).parent / "static" / "firmpedal.css").read_text(encoding="utf-8")


class Door:
    """Decides about each request that does not come from this machine."""

    def __init__(self, pairing: Pairing, steps: frozenset[str]) -> None:
        """Take the pairing, and the names of the steps that only show."""
        self.pairing, self.steps = pairing, steps

    async def __call__(self, app: ASGIApp, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass a request on to the app, or answer it."""
        paired = self.pairing.knows(_phone_of(scope))
        if scope["type"] == "websocket":
            if paired and scope["path"].startswith(MACHINERY):
                await app({**scope, PHONE: True}, receive, send)
            else:
                await receive()
                await send({"type": "websocket.close", "code": 1008})
            return
        if scope["path"] == addresses.PAIR:
            answer = await self._pair(Request(scope, receive))
        elif not paired:
            self.pairing.ask()
            answer = _form("")
        elif not self._may(scope["method"], scope["path"]):
            answer = _page(f"<p>{escape(ELSEWHERE)}</p><p>{_WAY_BACK}</p>", 403)
        else:
            await app({**scope, PHONE: True}, receive, send)
            return
        await answer(scope, receive, send)

    def _may(self, method: str, path: str) -> bool:
        """Whether a phone may: what is not named here it may not."""
        if path.startswith(MACHINERY):
            return True
        if method not in ("GET", "HEAD"):
            return False
        return path in (addresses.START, addresses.THREAD) or path.startswith(READ) or self._step(path)

    def _step(self, path: str) -> bool:
        parts = path.split("/")
        return len(parts) == 4 and parts[:2] == ["", "aircraft"] and parts[3] in self.steps

    async def _pair(self, request: Request) -> Response:
        if request.method != "POST":
            self.pairing.ask()
            return _form("")
        given = await _given(request)
        if given is None:
            return _form(Said.WRONG)
        found = self.pairing.enter(given)
        if isinstance(found, Said):
            return _form(found)
        answer = RedirectResponse(addresses.START, 303)
        answer.set_cookie(COOKIE, found, httponly=True, samesite="strict", path="/")
        return answer


def _phone_of(scope: Scope) -> str:
    """What a phone says that it is known by; nothing where it says it twice."""
    said = [value.decode("latin-1") for name, value in scope["headers"] if name == b"cookie"]
    try:
        found = SimpleCookie("; ".join(said)).get(COOKIE)
    except CookieError:
        return ""
    return found.value if found is not None else ""


async def _given(request: Request) -> str | None:
    """The code of a form; nothing where there is none, or far more than one."""
    body = b""
    async for part in request.stream():
        body += part
        if len(body) > LONGEST:
            return None
    codes = parse_qs(body.decode("ascii", "replace")).get("code", [])
    return codes[0] if len(codes) == 1 else None


_WAY_BACK = f'<a class="fp-button" href="{addresses.START}">All aircraft</a>'


def _form(refused: str) -> Response:
    why = f'<p class="fp-told fp-caution" role="alert">{escape(refused)}</p>' if refused else ""
    return _page(
        f"<p>The computer shows a code of {DIGITS} figures: where Firmpedal was started, and on its page "
        f"&quot;On the phone&quot;.</p>{why}"
        f'<form class="fp-card" method="post" action="{addresses.PAIR}">'
        '<label class="fp-field"><span>Code from the computer</span>'
        '<input class="fp-pen fp-lead" name="code" inputmode="numeric" autocomplete="off" maxlength="12" '
        'required autofocus></label><button class="fp-button fp-button-main">Let this phone in</button>'
        "</form>",
        403,
    )


def _page(inner: str, status: int) -> Response:
    """A page by itself: whoever is not let in gets nothing of the app, so it brings its own look."""
    return HTMLResponse(
        '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Firmpedal</title>'
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        f'<style>{_LOOK}</style></head><body class="fp-page"><main class="fp-frame"><h1>Firmpedal</h1>'
        f"{inner}</main></body></html>",
        status,
    )
