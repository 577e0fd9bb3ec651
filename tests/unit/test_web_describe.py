"""The page of the fields: what is pressed there, what the file says then, and one step of undo each."""

from __future__ import annotations

from contextlib import asynccontextmanager

import pytest
from nicegui.testing import user_simulation

from firmpedal.project import read_text
from firmpedal.web import app
from firmpedal.web.form.element import Made
from firmpedal.web.shelf import Shelf
from texts import example

pytestmark = pytest.mark.asyncio

TEXT = example("brindlewick")


class Form:
    """The page as somebody sees it: what its form shows, and what is pressed in it."""

    def __init__(self, user, document):
        self.user, self.document = user, document

    @property
    def shown(self):
        return next(
            each.props["made"] for each in self.user.find(kind=Made).elements if "fp-form" in each.classes
        )

    def tell(self, event, **args):
        """What the browser tells; each change has to be one step of undo, and leave a file that reads."""
        before, past = self.document.text, len(self.document._history.past)
        self.user.find(kind=Made).trigger(event, args)
        after = self.document.text
        assert len(self.document._history.past) == past + (after != before)
        assert read_text(after, "a.yaml", "rigid").problems == ()
        return after

    def press(self, what, place="", **answers):
        assert f'data-do="{what}" data-of="{place}"' in self.shown
        return self.tell("does", what=what, place=place, answers=answers)


@asynccontextmanager
async def page(folder, at):
    (folder / "mine.yaml").write_text(TEXT, encoding="utf-8")
    shelf, faults = Shelf(folder), []
    async with user_simulation(root=None) as user:
        app._pages(shelf, None)
        await user.open(f"/aircraft/mine.yaml/describe?option=rigid&at={at}")
        try:
            yield Form(user, shelf.document("mine.yaml"))
        except AssertionError as fault:  # the simulation would not end while one is on its way
            faults.append(fault)
    if faults:
        raise faults[0]


async def test_a_port_is_added_named_anew_and_taken_out(tmp_path):
    async with page(tmp_path, "components.left_caliper") as form:
        ports = "components.left_caliper.ports"
        form.press("add", ports)
        assert 'data-asked="add components.left_caliper.ports"' in form.shown
        form.press("added", ports, **{"a name": "bleeder", "thread": "a thread"})
        assert form.document.text == TEXT
        assert "a thread" in form.shown  # what was typed stays, with what is wrong with it
        text = form.press("added", ports, **{"a name": "bleeder", "thread": "1/8 NPT female"})
        assert "      bleeder: {thread: 1/8 NPT female, faces: unknown, at: unknown}\n" in text
        assert "It moves with left_caliper_float" in form.shown
        form.press("rename", f"{ports}.bleeder")
        text = form.press("renamed", f"{ports}.bleeder", **{"a name": "bleed_port"})
        assert "      bleed_port: {thread: 1/8 NPT female, faces: unknown, at: unknown}\n" in text
        form.press("remove", f"{ports}.bleed_port")
        assert form.press("removed", f"{ports}.bleed_port") == TEXT
        form.document.undo()
        assert form.document.text == text


async def test_what_names_a_thing_is_shown_and_keeps_it(tmp_path):
    async with page(tmp_path, "moving.left_wheel") as form:
        form.press("remove", "moving.left_wheel")
        assert "left_caliper_float: with" in form.shown
        assert "left_axle: moves with (option rigid)" in form.shown
        assert 'data-do="removed"' not in form.shown
        form.tell("does", what="removed", place="moving.left_wheel", answers={})  # from another window
        assert form.document.text == TEXT
        assert "Nothing was changed" in form.shown
        form.press("pick", "moving.left_caliper_float")
        assert "<h2>left_caliper_float</h2>" in form.shown


async def test_a_point_is_given_by_tape_and_what_cannot_be_is_said(tmp_path):
    async with page(tmp_path, "lines.left_leg") as form:
        via = "lines.left_leg.via"
        text = form.tell("way", place=via, row=0, words="from left_floor.below")
        assert "          - {from: left_floor.below, down: 2.3}\n" in text
        assert "Comes to aft 7.00 in, right -9.00 in, up -3.20 in" in form.shown
        form.tell("way", place=via, row=0, words="from nowhere")
        assert form.document.text == text
        assert "Not saved" in form.shown
        assert "by coordinates" in form.shown
        text = form.tell("put", place=via, row=0, number=5, words="2 1/2")
        assert "          - {from: left_floor.below, down: 2 1/2}\n" in text
        form.tell("way", place=via, row=7, words="by coordinates")  # a row that is no longer there
        assert form.document.text == text


async def test_a_thing_gets_another_name_and_stays_chosen(tmp_path):
    async with page(tmp_path, "lines.left_leg") as form:
        form.press("rename", "lines.left_leg")
        form.press("renamed", "lines.left_leg", **{"a name": "left_tail"})
        assert form.document.text == TEXT
        assert "there is a left_tail already" in form.shown
        text = form.press("renamed", "lines.left_leg", **{"a name": "left_spring"})
        assert "mirror: [left_floor, left_axle, left_pedal, left_spring, left_tail]" in text
        assert "<h2>left_spring</h2>" in form.shown
        assert "left_axle" in form.press("unmirror", "lines.left_spring")
        assert "mirror: [left_floor, left_axle, left_pedal, left_tail]" in form.document.text
        assert "left_pedal, left_tail, left_spring]" in form.press("mirror", "lines.left_spring")


async def test_something_new_is_begun_and_left_again(tmp_path):
    async with page(tmp_path, "states.gear") as form:
        form.press("add", "state")
        assert "its positions, such as up, down" in form.shown
        form.press("leave")
        assert "data-asked" not in form.shown
        form.press("add", "named point")
        form.press("added", "named point", **{"a name": "left_axle_end"})
        assert "\n    points:\n      left_axle_end: unknown\n" in form.document.text
        assert "<h2>left_axle_end</h2>" in form.shown
        form.tell("does", what="added", place="no such thing", answers={})
        form.tell("does", what="add", place="no such thing", answers={})
        assert "data-asked" not in form.shown
