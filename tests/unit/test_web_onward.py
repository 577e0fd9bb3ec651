"""The ways on from a page: each leads to a page or a paper of the app, none to where somebody is."""

from __future__ import annotations

from urllib.parse import urlsplit

import pytest

from firmpedal.report.next_step import Next, To
from firmpedal.web import addresses
from firmpedal.web.onward import AT_THE_COMPUTER, way_to, ways_on
from firmpedal.web.papers import MAKERS
from firmpedal.web.site import READ, every_page

FILE, OPTION = "blue heron.yaml", "all hose"


@pytest.mark.parametrize("to", To)
def test_each_way_leads_to_something_that_the_app_has(to):
    address = way_to(to, FILE, OPTION)
    assert "option=all+hose" in address
    pages = {urlsplit(each).path for each in every_page(FILE, OPTION)}
    papers = {urlsplit(addresses.paper(FILE, name, OPTION)).path for name in MAKERS}
    assert urlsplit(address).path in pages | papers


def test_a_phone_is_led_only_where_it_may_go():
    found = Next("Go on.", tuple((to.value, to) for to in To))
    here = addresses.step(FILE, "make")
    assert len(ways_on(found, FILE, None, here, changes=True)) == len(To) - 1
    on_phone = ways_on(found, FILE, None, here, changes=False)
    assert len(on_phone) == len(To) - 1 - len(AT_THE_COMPUTER)
    steps = {urlsplit(addresses.step(FILE, name)).path for name, _ in READ}
    form = urlsplit(addresses.paper(FILE, "form.pdf")).path
    assert {urlsplit(to).path for _, to in on_phone} <= steps | {form}


def test_no_way_leads_to_the_page_itself():
    found = Next("Mend it.", (("Go to the text", To.TEXT), ("Print the form", To.FORM)))
    words = [words for words, _ in ways_on(found, FILE, None, addresses.text(FILE), changes=True)]
    assert words == ["Print the form"]
