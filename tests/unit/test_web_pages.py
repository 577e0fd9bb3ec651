"""The one list of the app's pages: whoever adds a page and forgets it there is told so."""

from __future__ import annotations

import re
from urllib.parse import urlsplit

import pytest
from nicegui import ui
from simulated import simulated

from firmpedal.web import app, site
from firmpedal.web.shelf import Shelf


@pytest.fixture
def patterns(monkeypatch, tmp_path):
    """The addresses that the app has pages on."""
    found = []

    def page(path, **_how):
        found.append(path)
        return lambda made: made

    monkeypatch.setattr(app.ui, "page", page)
    app._pages(Shelf(tmp_path), None)
    return found


def fits(pattern, address):
    return re.fullmatch(re.sub(r"\\\{\w+\\\}", "[^/]+", re.escape(pattern)), urlsplit(address).path)


def test_every_page_is_in_the_list_and_nothing_else(patterns):
    listed = site.every_page("mine.yaml", "rigid")
    assert [each for each in patterns if not any(fits(each, address) for address in listed)] == []
    assert [each for each in listed if not any(fits(pattern, each) for pattern in patterns)] == []


def test_every_step_is_in_the_list_with_its_option():
    listed = site.every_page("mine.yaml", "all hose")
    for name, _ in site.STEPS:
        assert f"/aircraft/mine.yaml/{name}?option=all+hose" in listed


@pytest.mark.asyncio
async def test_what_is_to_be_typed_is_not_torn_at_its_dashes(tmp_path):
    async with simulated(Shelf(tmp_path)) as user:
        await user.open("/phone")
        (shown,) = [
            each.content for each in user.find(kind=ui.html).elements if "fp-equation" in each.classes
        ]
    assert '<span class="fp-whole">--lan</span>' in shown
