"""What is not a page: beginning new files from the forms, and what can be taken away."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from starlette.concurrency import run_in_threadpool
from starlette.responses import PlainTextResponse, RedirectResponse, Response
from starlette.routing import Route

from firmpedal.project.layouts import CHOICES, LayoutError, chosen, layout_text
from firmpedal.web import addresses
from firmpedal.web.answers import answer
from firmpedal.web.shelf import NameRefusedError, file_name
from firmpedal.web.takeaway import LONG, fits, kind_of
from firmpedal.web.worker import NOTHING, UNREADABLE, Wish
from firmpedal.web.works import WORKS

if TYPE_CHECKING:
    from starlette.requests import Request

    from firmpedal.project.layouts import Layout
    from firmpedal.web.papers import Made
    from firmpedal.web.shelf import Shelf
    from firmpedal.web.works import Works

CHOOSE = "Choose one of each first."
UNKNOWN = "There is no such paper."
_NOT_IN_NAME = re.compile(r"[^A-Za-z0-9_.-]+")


class Routes:
    """The handlers, all about one folder."""

    def __init__(self, shelf: Shelf, works: Works = WORKS) -> None:
        self.shelf, self.works = shelf, works

    def all(self) -> list[Route]:
        return [
            Route(addresses.BEGIN_EXAMPLE, self.begin_example, methods=["POST"]),
            Route(addresses.BEGIN_LAYOUT, self.begin_layout, methods=["POST"]),
            Route(addresses.FORM_OF_LAYOUT, self.form_of_layout, methods=["POST"]),
            Route(addresses.PAPER + "/{page:int}.svg", self.picture),
            Route(addresses.PAPER, self.paper),
            Route(addresses.EXPORT, self.paper),
        ]

    async def begin_example(self, request: Request) -> Response:
        """Copy an example into the folder, and go there."""
        given = await _given(request)
        try:
            name = self.shelf.begin_example(given.get("example", ""))
        except NameRefusedError as refusal:
            return _to(addresses.start(str(refusal)))
        return _to(addresses.step(name, "sound"))

    async def begin_layout(self, request: Request) -> Response:
        """Write a new file for a layout, and go there; what was refused is asked again."""
        given = await _given(request)
        layout = _layout(given)
        if layout is None:
            return _to(addresses.new(**given, refused=CHOOSE))
        try:
            file = file_name(given.get("name", ""))
            name = self.shelf.begin(file, layout_text(layout, file, file.rpartition(".")[0]))
        except NameRefusedError as refusal:
            return _to(addresses.new(**given, refused=str(refusal)))
        return _to(addresses.step(name, "describe"))

    async def form_of_layout(self, request: Request) -> Response:
        """The measuring form of a layout, without writing a file."""
        given = await _given(request)
        layout = _layout(given)
        if layout is None:
            return _to(addresses.new(**given, refused=CHOOSE))
        text = layout_text(layout, "new.yaml")
        return await run_in_threadpool(_printed, "form.pdf", text, "new.yaml", None)

    async def paper(self, request: Request) -> Response:
        """Something of a file to take away; made afresh, or what was made of the same text already."""
        file, name = request.path_params["file"], request.path_params["name"]
        document = self.shelf.document(file)
        if document is None:
            return PlainTextResponse("There is no such file in this folder.", 404)
        if not fits(request.url.path, name):
            return PlainTextResponse(UNKNOWN, 404)
        option = request.query_params.get("option") or None
        if name in LONG:
            return await self._long(Wish(name, document.text, file, option))
        return await run_in_threadpool(_printed, name, document.text, file, option)

    async def _long(self, wish: Wish) -> Response:
        """Wait for work that takes long, begun here or elsewhere."""
        work = self.works.begin(wish)
        await run_in_threadpool(work.wait)
        if work.made is None:
            return PlainTextResponse(work.words, 409)
        return _sent(wish.name, wish.file, wish.option, work.made)

    async def picture(self, request: Request) -> Response:
        """A page of a paper that has been made, as a picture."""
        given, option = request.path_params, request.query_params.get("option") or None
        work = self.works.find(given["file"], option, given["name"])
        seen = work.made.pictures if work is not None and work.made is not None else ()
        if not 1 <= given["page"] <= len(seen):
            return PlainTextResponse("There is no such page.", 404)
        headers = {"content-encoding": "gzip", "cache-control": "no-store"}
        return Response(seen[given["page"] - 1], media_type="image/svg+xml", headers=headers)


def _printed(name: str, text: str, file: str, option: str | None) -> Response:
    from firmpedal.web.papers import MAKERS  # noqa: PLC0415  the printing library is slow to load

    if name not in MAKERS:
        return PlainTextResponse(UNKNOWN, 404)
    evaluation = answer(text, file, option, None).evaluation
    if evaluation is None:
        return PlainTextResponse(UNREADABLE, 409)
    made = MAKERS[name](evaluation, lambda _words: None)
    return PlainTextResponse(NOTHING, 409) if made is None else _sent(name, file, option, made)


def _sent(name: str, file: str, option: str | None, made: Made) -> Response:
    """Send it under a name of its own for each aircraft and option, so that none takes another's place."""
    media, how = kind_of(name)
    about = "_".join(words for words in (file.rpartition(".")[0], option) if words)
    kept = _NOT_IN_NAME.sub("_", f"{about}_{name}")
    return Response(made.data, media_type=media, headers={"content-disposition": f'{how}; filename="{kept}"'})


async def _given(request: Request) -> dict[str, str]:
    """What a form says, of the fields that we know."""
    known = {*CHOICES, "name", "example"}
    return {key: str(value) for key, value in (await request.form()).items() if key in known}


def _layout(given: dict[str, str]) -> Layout | None:
    try:
        return chosen(**{key: given.get(key) for key in CHOICES})
    except LayoutError:
        return None


def _to(address: str) -> Response:
    return RedirectResponse(address, 303)
