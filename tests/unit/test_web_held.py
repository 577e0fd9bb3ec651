"""A supplier's list on its page: the command's sheet, what is wrong with the list, and that it stays."""

from __future__ import annotations

import re
from base64 import b64encode

import pytest
from html_trees import read, words
from nicegui import ui
from nicegui.testing import user_simulation

from firmpedal.decide.listing import entries
from firmpedal.export.html_words import marked
from firmpedal.pipeline import evaluate
from firmpedal.project import read_text
from firmpedal.report.reconcile import reconcile_sheet, reconciled
from firmpedal.report.sheet import Bullets, Paragraph, Table
from firmpedal.web import addresses, app
from firmpedal.web.pages.held import held_html
from firmpedal.web.shelf import Shelf
from firmpedal.web.takeaway.pasting import LONGEST
from texts import EXAMPLES, example

TEXT = example("brindlewick")
KIT = (EXAMPLES / "brindlewick_kit.csv").read_text(encoding="utf-8")


def plain(made):
    return re.sub(r"\s+", " ", words(read(made)))


def test_it_is_the_sheet_of_the_command():
    evaluation = evaluate(read_text(TEXT, "a.yaml", "rigid"))
    sheet = reconcile_sheet(reconciled(evaluation, entries(KIT)), evaluation.display, "")
    seen = plain(held_html(KIT, TEXT, "a.yaml", "rigid", None))
    told = [each.text for each in sheet.blocks if isinstance(each, Paragraph)]
    told += [item for each in sheet.blocks if isinstance(each, Bullets) for item in each.items]
    told += [cell for each in sheet.blocks if isinstance(each, Table) for row in each.rows for cell in row]
    assert len(told) > 40
    assert [each for each in told if marked(each) not in seen] == []
    assert "line 12: " in seen
    assert held_html(" ", TEXT, "a.yaml", "rigid", None) == ""


@pytest.mark.asyncio
async def test_a_list_is_pasted_found_again_and_cleared(tmp_path):
    (tmp_path / "mine.yaml").write_text(TEXT, encoding="utf-8")
    shelf = Shelf(tmp_path)
    async with user_simulation(root=None) as user:
        app._pages(shelf, None)
        document = shelf.document("mine.yaml")

        def tell(tag, event, args):
            every = user.find(kind=ui.element).elements
            (element,) = [each for each in every if tag in (each.tag, each.props.get("tag"))]
            for listener in element._event_listeners.values():
                if listener.type == event:
                    element._handle_event({"listener_id": listener.id, "args": args})

        await user.open(addresses.held("mine.yaml", "rigid"))
        await user.should_see("Nothing to compare yet", retries=300)
        tell("textarea", "input", KIT)
        await user.should_see("Your list does not cover the design", retries=300)
        assert document.text == TEXT

        # on another page and back it is there, in every option
        await user.open(addresses.step("mine.yaml", "buy", "rigid"))
        await user.open(addresses.held("mine.yaml", "all hose"))
        await user.should_see("Your list does not cover the design", retries=300)
        (box,) = [
            each
            for each in user.find(kind=ui.html).elements
            if each.props["tag"] == "textarea" and not each.props.get("readonly")
        ]
        assert "AN819-4E" in box.content

        # what is no list says so at its box, and nothing is compared with it
        tell("textarea", "input", "AN818-4D\n")
        await user.should_see("No column says how many", retries=300)
        await user.should_see("Nothing to compare yet", retries=300)
        tell("textarea", "input", args=False)
        await user.should_see("too long for a parts list")

        # a file is read whatever program wrote it; a workbook is none
        tell("input", "change", b64encode(KIT.encode("utf-16")).decode())
        await user.should_see("Your list does not cover the design", retries=300)
        assert document.pasted == KIT
        tell("input", "change", b64encode(b"PK\x03\x04\0\0").decode())
        await user.should_see("not as a workbook")
        assert document.pasted == KIT
        user.find("Clear it").click()
        await user.should_see("Nothing to compare yet", retries=300)
        assert document.pasted == ""
        assert len(KIT) < LONGEST
