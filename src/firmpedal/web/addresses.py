"""The addresses of the app's pages, so that each is written in one way."""

from __future__ import annotations

from urllib.parse import quote, urlencode

# The sections of the file whose things have a place in the picture in space.
IN_SPACE = ("lines", "components", "bulkheads", "panels", "zones", "keep clear of")
START, NEW = "/", "/new"
STEP, DESCRIBE = "/aircraft/{file}/{name}", "/aircraft/{file}/describe"
BEGIN = "begin"  # on the page of the options, where one is begun
OPTIONS, RETROFIT = "/aircraft/{file}/options", "/aircraft/{file}/retrofit"
THREAD, THREAD_AT = "/thread", "/aircraft/{file}/thread"  # for nobody's aircraft, and for a place in one
HELD = "/aircraft/{file}/list"
SPACE, TEXT = "/aircraft/{file}/describe/space", "/aircraft/{file}/describe/text"
PAPERS, EXPORTS = "/paper/", "/export/"  # what begins with these is taken away
PAPER, EXPORT = PAPERS + "{file}/{name}", EXPORTS + "{file}/{name}"
ON_PHONE, PAIR = "/phone", "/pair"  # how to let a phone in, on the computer; where the phone asks to
BEGIN_EXAMPLE, BEGIN_LAYOUT, FORM_OF_LAYOUT = "/begin/example", "/begin/layout", "/begin/form.pdf"


def start(refused: str) -> str:
    """The first page, with why something could not be begun."""
    return _with(START, refused=refused)


def step(file: str, name: str, option: str | None = None) -> str:
    """One step of one aircraft."""
    return _about(STEP, file, name, option=option)


def text(file: str, option: str | None = None, line: int | None = None) -> str:
    """The text of one aircraft; `line` goes to a line of it."""
    return _about(TEXT, file, option=option, line=line)


def field(file: str, place: str, option: str | None = None) -> str:
    """The field of a place in the file, such as `lines.left_leg.via.2`."""
    return _about(DESCRIBE, file, option=option, at=place)


def space(file: str, option: str | None = None, place: str | None = None) -> str:
    """The lines in space; `place` is looked at and chosen there."""
    return _about(SPACE, file, option=option, at=place)


def thread(file: str, option: str | None = None, place: str | None = None) -> str:
    """Which thread is it? `place` is where the answer belongs in the file."""
    return _about(THREAD_AT, file, option=option, at=place)


def held(file: str, option: str | None = None) -> str:
    """A supplier's list held against ours."""
    return _about(HELD, file, option=option)


def options(file: str, option: str | None = None) -> str:
    """The options of one aircraft side by side; `option` is the one that the page stands on."""
    return _about(OPTIONS, file, option=option)


def begin(file: str, option: str | None = None) -> str:
    """Where an option is begun, on the page of the options."""
    return f"{options(file, option)}#{BEGIN}"


def retrofit(file: str, option: str | None = None, before: str | None = None) -> str:
    """The work that leads to an option; `before` is what it begins from, without it the file as written."""
    return _about(RETROFIT, file, option=option, before=before)


def paper(file: str, name: str, option: str | None = None) -> str:
    """A paper of one aircraft to print or take along: `form.pdf`, `packet.pdf`, `hangar.html`."""
    return _about(PAPER, file, name, option=option)


def picture(file: str, name: str, page: int, option: str | None, made: int) -> str:
    """A page of a paper as a picture, pages counted from 1; `made` tells one making from the next."""
    return _about(f"{PAPER}/{page}.svg", file, name, option=option, made=made)


def export(file: str, name: str, option: str | None = None) -> str:
    """The lines of one aircraft for other programs: `dxf.zip`."""
    return _about(EXPORT, file, name, option=option)


def new(**words: str) -> str:
    """The page for a new file, with what was chosen already."""
    return _with(NEW, **words)


def _about(path: str, file: str, name: str = "", **words: object) -> str:
    return _with(path.format(file=quote(file, safe=""), name=name), **words)


def _with(path: str, **words: object) -> str:
    given = {key: word for key, word in words.items() if word not in (None, "")}
    return f"{path}?{urlencode(given)}" if given else path
