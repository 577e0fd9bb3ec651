"""What is not a page: beginning new files from the forms, and papers as PDF."""

from __future__ import annotations

from typing import TYPE_CHECKING

from starlette.concurrency import run_in_threadpool
from starlette.responses import PlainTextResponse, RedirectResponse, Response
from starlette.routing import Route

from firmpedal.project.layouts import CHOICES, LayoutError, chosen, layout_text
from firmpedal.web import addresses
from firmpedal.web.answers import answer
from firmpedal.web.shelf import NameRefusedError

if TYPE_CHECKING:
    from starlette.requests import Request

    from firmpedal.project.layouts import Layout
    from firmpedal.web.shelf import Shelf

CHOOSE = "Choose one of each first."
NOTHING = "There is nothing to print yet: no tube of known shape, and no fitting through a panel."


class Routes:
    """The handlers, all about one folder."""

    def __init__(self, shelf: Shelf) -> None:
        self.shelf = shelf

    def all(self) -> list[Route]:
        return [
            Route(addresses.BEGIN_EXAMPLE, self.begin_example, methods=["POST"]),
            Route(addresses.BEGIN_LAYOUT, self.begin_layout, methods=["POST"]),
            Route(addresses.FORM_OF_LAYOUT, self.form_of_layout, methods=["POST"]),
            Route("/paper/{file}/{name}", self.paper),
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
            name = self.shelf.begin(given.get("name", ""), layout_text(layout, given.get("name", "")))
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
        """One paper of a file, made afresh."""
        file, name = request.path_params["file"], request.path_params["name"]
        document = self.shelf.document(file)
        if document is None:
            return PlainTextResponse("There is no such file in this folder.", 404)
        option = request.query_params.get("option") or None
        return await run_in_threadpool(_printed, name, document.text, file, option)


def _printed(name: str, text: str, file: str, option: str | None) -> Response:
    from firmpedal.web.papers import MADE  # noqa: PLC0415  the printing library is slow to load

    if name not in MADE:
        return PlainTextResponse("There is no such paper.", 404)
    evaluation = answer(text, file, option, None).evaluation
    if evaluation is None:
        return PlainTextResponse("The text cannot be read yet, so nothing can be printed.", 409)
    made = MADE[name](evaluation)
    if not made:
        return PlainTextResponse(NOTHING, 409)
    kept = f'inline; filename="{file.rpartition(".")[0].encode("ascii", "replace").decode()}_{name}"'
    return Response(made, media_type="application/pdf", headers={"content-disposition": kept})


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
