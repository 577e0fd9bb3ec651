"""The addresses of the app's pages, so that each is written in one way."""

from __future__ import annotations

from urllib.parse import quote, urlencode

START, NEW, STEP = "/", "/new", "/aircraft/{file}/{name}"
SPACE = "/aircraft/{file}/describe/space"
ON_PHONE, PAIR = "/phone", "/pair"  # how to let a phone in, on the computer; where the phone asks to
BEGIN_EXAMPLE, BEGIN_LAYOUT, FORM_OF_LAYOUT = "/begin/example", "/begin/layout", "/begin/form.pdf"


def start(refused: str) -> str:
    """The first page, with why something could not be begun."""
    return _with(START, refused=refused)


def step(file: str, name: str, option: str | None = None, line: int | None = None) -> str:
    """One step of one aircraft; `line` goes to a line of its text."""
    return _with(f"/aircraft/{quote(file, safe='')}/{name}", option=option, line=line)


def field(file: str, place: str, option: str | None = None, line: int | None = None) -> str:
    """The field of a place in the file, such as `lines.left_leg.via.2`; `line` is where that stands."""
    return _with(f"/aircraft/{quote(file, safe='')}/describe", option=option, at=place, line=line)


def space(file: str, option: str | None = None, place: str | None = None) -> str:
    """The lines in space; `place` is looked at and chosen there."""
    return _with(f"/aircraft/{quote(file, safe='')}/describe/space", option=option, at=place)


def paper(file: str, name: str, option: str | None = None) -> str:
    """A paper of one aircraft to print: `form.pdf`, `packet.pdf`."""
    return _with(f"/paper/{quote(file, safe='')}/{name}", option=option)


def new(**words: str) -> str:
    """The page for a new file, with what was chosen already."""
    return _with(NEW, **words)


def _with(path: str, **words: object) -> str:
    given = {key: word for key, word in words.items() if word not in (None, "")}
    return f"{path}?{urlencode(given)}" if given else path
