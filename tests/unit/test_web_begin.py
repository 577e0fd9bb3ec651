"""A new file from the pictures: it carries the name that was given, and says how to print its form."""

from __future__ import annotations

import asyncio
from urllib.parse import parse_qs, urlsplit

import pytest

from firmpedal.pipeline import evaluate_text
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
