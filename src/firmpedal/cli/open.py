"""`firmpedal open`: the app in the browser."""

from __future__ import annotations

import contextlib
import socket
from typing import TYPE_CHECKING

from rich.text import Text

from firmpedal.cli.terminal import UNUSABLE, console

if TYPE_CHECKING:
    from pathlib import Path

USUAL_PORT = 8417  # kept where it is free, so that a page that was marked is found again


def run(place: Path, port: int | None, *, browser: bool) -> int:
    """Run the app on a file or a folder until it is stopped; the result is the exit code."""
    if not place.exists():
        return _refused(f"There is no {place}. Name a folder, or an aircraft's file in it.")
    if port is not None and not _free(port):
        return _refused(f"Port {port} is taken. Leave --port out, and a free one is found.")
    from firmpedal.web import addresses  # noqa: PLC0415
    from firmpedal.web.app import serve  # noqa: PLC0415  the server's libraries are slow to load
    from firmpedal.web.shelf import Shelf  # noqa: PLC0415

    whole = place.resolve()
    shelf = Shelf(whole if place.is_dir() else whole.parent)
    page = addresses.START
    if not place.is_dir():
        if shelf.document(whole.name) is None:
            return _refused(f"{place} is no aircraft's file; those end in .yaml.")
        page = addresses.step(whole.name, "sound")
    with contextlib.suppress(KeyboardInterrupt):
        serve(shelf, port or free_port(), page, _told, browser=browser)
    return 0


def free_port() -> int:
    """The usual port, or any other that is free."""
    if _free(USUAL_PORT):
        return USUAL_PORT
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


def _free(port: int) -> bool:
    with socket.socket() as probe:
        probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            probe.bind(("127.0.0.1", port))
        except (OSError, OverflowError):
            return False
    return True


def _told(address: str) -> None:
    console().print(Text(f"Firmpedal is open at {address}"), soft_wrap=True)
    console().print(Text("It answers this machine alone. Stop it with Ctrl+C."))


def _refused(words: str) -> int:
    console(error=True).print(Text(words))
    return UNUSABLE
