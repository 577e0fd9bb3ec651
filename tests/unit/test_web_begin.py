"""A new file from the pictures: it carries the name that was given, and says how to print its form."""

from __future__ import annotations

import asyncio
from urllib.parse import parse_qs, urlsplit

import pytest
from nicegui import ui
from nicegui.testing import user_simulation

from firmpedal.pipeline import evaluate_text
from firmpedal.web import app
from firmpedal.web.routes import Routes
from firmpedal.web.shelf import Shelf

CHOSEN = {"gear": "tailwheel", "leg": "leaf", "brakes": "toe", "seats": "1", "valve": "no", "length": "mm"}


class Asked:
    """A request with a form."""

    def __init__(self, **given):
        self.given = given

    async def form(self):
        return self.given


def begun(folder, **given):
    """Where the browser is sent to."""
    answer = asyncio.run(Routes(Shelf(folder)).begin_layout(Asked(**given)))
    assert answer.status_code == 303
    return answer.headers["location"]


@pytest.mark.parametrize(
    ("name", "file"),
    [
        ("Finchcote", "Finchcote.yaml"),
        (" Blue  Heron ", "Blue Heron.yaml"),
        ("no", "no.yaml"),  # a word that YAML takes for something else
        ("first.yml", "first.yml"),
    ],
)
def test_the_name_that_was_given_is_that_of_the_aircraft_and_of_its_file(tmp_path, name, file):
    to = begun(tmp_path, name=name, **CHOSEN)
    assert urlsplit(to).path.endswith("/describe")
    text = (tmp_path / file).read_text(encoding="utf-8")
    assert "firmpedal form" not in text  # who begins in the browser types no commands
    called = evaluate_text(text, file).aircraft.aircraft.name
    assert called == " ".join(name.split()).removesuffix(".yml")


def test_what_was_chosen_is_asked_again_with_why_it_was_refused(tmp_path):
    asked = parse_qs(urlsplit(begun(tmp_path, name="../up", **CHOSEN)).query)
    assert "letters and figures" in asked["refused"][0]
    assert asked["gear"] == ["tailwheel"]
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize(("missing", "at_the_name"), [("", True), ("gear", False)])
def test_a_refused_name_is_told_at_its_box_and_the_page_opens_there(tmp_path, missing, at_the_name):
    given = {key: word for key, word in CHOSEN.items() if key != missing}
    to = begun(tmp_path, name="../up", **given)

    async def opened():
        async with user_simulation(root=None) as user:
            app._pages(Shelf(tmp_path), None)
            await user.open(to)
            return [each.content for each in user.find(kind=ui.html).elements]

    box = next(each for each in asyncio.run(opened()) if 'name="name"' in each)
    assert ("autofocus" in box) == ("A name cannot have a slash (/)" in box) == at_the_name
