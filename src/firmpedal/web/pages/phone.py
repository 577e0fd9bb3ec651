"""On the phone: which address to type there, and the code that lets it in. Shown on the computer alone."""

from __future__ import annotations

import os
import re
import shlex
from typing import TYPE_CHECKING

from nicegui import ui

from firmpedal.export.html_words import said as whole_words
from firmpedal.web import addresses
from firmpedal.web.elements import box, link, put_words, raw, said
from firmpedal.web.takeaway.shelves import TAKE

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from firmpedal.web.lan import Lan

_PLAIN = re.compile(r"[\w./\\:-]+")
EVERY = 1.0  # s between two looks at the code
CLOSED = (
    "No phone can come in now: Firmpedal answers this computer alone. Take the aircraft along as one file: "
    f"at the step Fit and fill, the button {TAKE} gives it, and it opens on a phone without a network."
)
ANEW = (
    "Or let the phone in. That is settled when Firmpedal is started: go to the window in which you started "
    "it, hold Ctrl and press C to stop it, then type this and press Enter:"
)
THEN = "The browser opens again, and this page then shows the address to type on the phone, and a code."
NO_NETWORK = "This machine is in no network now. Join the one that the phone is in, and look here again."
OPEN_TO_READ = (
    "What passes between the two is not encrypted. Whoever is in the same network and listens can read it, "
    "so do this in a network of your own, not in a strange one. A phone may read, print and tick; it changes "
    "nothing in your file. It is let go when Firmpedal is stopped."
)


def show(lan: Lan | None, folder: Path) -> None:
    """Lay out the page; the folder is the one that the app is opened on."""
    with box(classes="fp-frame"):
        with box("header", "fp-top"):
            link("All aircraft", addresses.START, "fp-back")
            with box(classes="fp-title"):
                said("h1", "On the phone")
        with box(classes="fp-main", id="main"):
            if lan is None:
                with box(classes="fp-empty"):
                    said("p", CLOSED)
                    said("p", ANEW)
                    raw(whole_words(to_type(folder)), "p", "fp-equation")
                    said("p", THEN)
                return
            with box("section", "fp-card"):
                said("h2", "1. Type this address on the phone")
                found = lan.addresses()
                for address in found:
                    said("p", address, "fp-to-type")
                said("p", "Both have to be in the same network." if found else NO_NETWORK)
            with box("section", "fp-card"):
                said("h2", "2. Type this code there")
                code = said("p", "", "fp-to-type", role="status")
                rest = said("p", "")
            with box("section", "fp-card"):
                said("h2", "Who else could read it")
                said("p", OPEN_TO_READ)
    fresh = _following(lan, code, rest)
    fresh()
    ui.timer(EVERY, fresh)


def to_type(folder: Path) -> str:
    """What starts the app on the same folder again, with phones let in."""
    words = str(folder)
    return f"firmpedal open {words if _PLAIN.fullmatch(words) else _quoted(words)} --lan"


def _quoted(words: str) -> str:
    """A path as one word in the window where it is typed, as this system writes that."""
    return f'"{words}"' if os.name == "nt" else shlex.quote(words)


def _following(lan: Lan, code: ui.html, rest: ui.html) -> Callable[[], None]:
    """What looks at the code again and again; what did not change is not sent anew."""
    shown: dict[ui.html, str] = {}

    def put(element: ui.html, words: str) -> None:
        if shown.get(element) != words:
            shown[element] = words
            put_words(element, words)

    def fresh() -> None:
        put(code, spaced(lan.pairing.ask()) or "No code now")
        put(rest, words_of(lan))

    return fresh


def spaced(code: str) -> str:
    """A code in two halves, as people read figures out."""
    half = len(code) // 2
    return f"{code[:half]} {code[half:]}".strip()


def words_of(lan: Lan) -> str:
    """How long the code holds, and who is in."""
    pairing, count = lan.pairing, lan.pairing.phones
    inside = f"{count or 'No'} phone{'' if count == 1 else 's'} let in so far."
    if pairing.pause:
        return f"There were too many wrong codes. There is another one in {_time(pairing.pause)}. {inside}"
    return f"It lets one phone in, within {_time(pairing.life)}. {inside}"


def _time(seconds: float) -> str:
    """A time that is short enough to wait for; not to the second, for nobody likes to be hurried."""
    if seconds > 90:
        return f"{round(seconds / 60)} minutes"
    return f"{10 * max(round(seconds / 10), 1)} seconds"
