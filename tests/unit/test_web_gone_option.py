"""A link to an option that the file does not have: the page says so, and leads to those that there are."""

from __future__ import annotations

import pytest
from nicegui import ui
from simulated import simulated

from firmpedal.web.shelf import Shelf
from texts import edited, example

TEXT = example("brindlewick")
PAGES = ("sound", "describe", "describe/space", "buy", "options", "retrofit", "heat")


@pytest.mark.asyncio
@pytest.mark.parametrize("page", PAGES)
async def test_a_link_to_an_option_that_is_gone_leads_to_those_that_are_there(tmp_path, page):
    (tmp_path / "mine.yaml").write_text(TEXT, encoding="utf-8")
    async with simulated(Shelf(tmp_path)) as user:
        await user.open(f"/aircraft/mine.yaml/{page}?option=all+rigid")
        await user.should_see("This file has no option “all rigid”.")
        await user.should_see("NO SUCH OPTION", retries=100)
        await user.should_not_see("CANNOT BE READ")
        shown = [each for each in user.find(kind=ui.html).elements if each.visible]
        ways = [each.props["href"] for each in shown if "fp-button" in each.classes and "href" in each.props]
        for option in ("", "?option=rigid", "?option=all+hose"):
            assert f"/aircraft/mine.yaml/{page}{option}" in ways
        make = "/aircraft/mine.yaml/make"
        steps = [each.props["href"] for each in shown if make in each.props.get("href", "")]
        assert steps == [make]


@pytest.mark.asyncio
async def test_an_option_that_goes_while_it_is_looked_at_is_told_and_comes_back(tmp_path):
    (tmp_path / "mine.yaml").write_text(TEXT, encoding="utf-8")
    shelf = Shelf(tmp_path)
    async with simulated(shelf) as user:
        await user.open("/aircraft/mine.yaml/sound?option=rigid")
        document = shelf.document("mine.yaml")
        document.rewrite(edited(TEXT, ("  rigid:\n", "  stiff:\n")), "renamed")
        await user.should_see("This file has no option “rigid”.", retries=100)
        hrefs = [each.props.get("href") for each in user.find(kind=ui.html).elements if each.visible]
        assert "/aircraft/mine.yaml/sound?option=stiff" in hrefs
        document.undo()
        await user.should_not_see("This file has no option “rigid”.", retries=100)
