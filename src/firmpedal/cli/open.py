"""`firmpedal open`: the app in the browser."""

from __future__ import annotations

import contextlib
import socket
from functools import partial
from typing import TYPE_CHECKING

from rich.text import Text

from firmpedal.cli.terminal import UNUSABLE, console, print_wrapped

if TYPE_CHECKING:
    from pathlib import Path

    from firmpedal.web.lan import Lan

OPEN_TO_PHONES = (
    "A phone is let in with the code alone, and may read. What passes is not encrypted: "
    "do this in a network of your own. Stop it with Ctrl+C."
)
LIFE_WORDS = "one phone and five minutes"
USUAL_PORT = 8417  # kept where it is free, so that a page that was marked is found again


def run(place: Path, port: int | None, *, browser: bool, lan: bool = False) -> int:
    """Run the app on a file or a folder until it is stopped; the result is the exit code."""
    if not place.exists():
        return _refused(f"There is no {place}. Name a folder, or an aircraft's file in it.")
    if port is not None and not _free(port, lan=lan):
        return _refused(f"Port {port} is taken. Leave --port out, and a free one is found.")
    from firmpedal.web.loading import load  # noqa: PLC0415

    load()
    from firmpedal.web import addresses  # noqa: PLC0415
    from firmpedal.web.lan import Lan  # noqa: PLC0415
    from firmpedal.web.pairing import Pairing  # noqa: PLC0415
    from firmpedal.web.serving import serve  # noqa: PLC0415  the server's libraries are slow to load
    from firmpedal.web.shelf import Shelf  # noqa: PLC0415

    whole = place.resolve()
    shelf = Shelf(whole if place.is_dir() else whole.parent)
    page = addresses.START
    if not place.is_dir():
        if shelf.document(whole.name) is None:
            return _refused(f"{place} is no aircraft's file; those end in .yaml.")
        page = addresses.step(whole.name, "sound")
    port = port or free_port(lan=lan)
    phones = Lan(Pairing(_code), port) if lan else None
    with contextlib.suppress(KeyboardInterrupt):
        serve(shelf, port, page, partial(_told, phones=phones), browser=browser, lan=phones)
    return 0


def free_port(*, lan: bool = False) -> int:
    """The usual port, or any other that is free; on all networks where phones may come."""
    if _free(USUAL_PORT, lan=lan):
        return USUAL_PORT
    with socket.socket() as probe:
        probe.bind((_host(lan=lan), 0))
        return int(probe.getsockname()[1])


def _host(*, lan: bool) -> str:
    return "0.0.0.0" if lan else "127.0.0.1"  # noqa: S104  it only tries whether the port is free


def _free(port: int, *, lan: bool) -> bool:
    with socket.socket() as probe:
        probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            probe.bind((_host(lan=lan), port))
        except (OSError, OverflowError):
            return False
    return True


def _told(address: str, phones: Lan | None = None) -> None:
    console().print(Text(f"Firmpedal is open at {address}"), soft_wrap=True)
    if phones is None:
        console().print(Text("It answers this machine alone. Stop it with Ctrl+C."))
        return
    where = phones.addresses()
    for each in where or ("the address of this machine in its network",):
        console().print(Text(f"On the phone: {each}"), soft_wrap=True)
    print_wrapped(console(), "", OPEN_TO_PHONES)
    phones.pairing.ask()


def _code(code: str) -> None:
    console().print(Text(f"Code for the phone: {code}, for {LIFE_WORDS}."))


def _refused(words: str) -> int:
    console(error=True).print(Text(words))
    return UNUSABLE
