"""Long work in a process of its own, so that pages stay quick meanwhile and the work can be stopped."""

from __future__ import annotations

import logging
import signal
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from multiprocessing.connection import Connection

BROKEN = "Something went wrong inside. This is our mistake, not yours. Please send us your file."
UNREADABLE = "The text cannot be read yet, so nothing can be made of it."
NOTHING = "There is nothing to make yet: no line is known well enough."


@dataclass(frozen=True, slots=True)
class Wish:
    """What is wanted of which text: `packet.pdf` of an option of a file."""

    name: str
    text: str
    file: str
    option: str | None


@dataclass(frozen=True, slots=True)
class Refused:
    """Nothing was made, and why."""

    words: str


def work(wish: Wish, say: Connection) -> None:
    """Make what is wished for: words on the way go out as they are, then what was made, or why it was not."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # who stops the app stops us from there
    try:
        say.send("Working it out ...")
        say.send(_made(wish, say))
    except BrokenPipeError:  # nobody waits for it any more
        return
    except Exception:  # the last resort: the page says so and lives on
        logging.getLogger(__name__).exception("%s could not be made", wish.name)
        say.send(Refused(BROKEN))


def _made(wish: Wish, say: Connection) -> object:
    from firmpedal.export.step import MissingCadError  # noqa: PLC0415  the first word is to come at once
    from firmpedal.pipeline import UnusableFileError, evaluate_text  # noqa: PLC0415
    from firmpedal.web.papers import MAKERS  # noqa: PLC0415

    try:
        found = MAKERS[wish.name](evaluate_text(wish.text, wish.file, wish.option), say.send)
    except UnusableFileError:
        return Refused(UNREADABLE)
    except MissingCadError as missing:
        return Refused(str(missing))
    except OSError as trouble:
        return Refused(f"It cannot be written: {trouble.strerror}")
    return found or Refused(NOTHING)
