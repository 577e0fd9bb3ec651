"""The page of the fields: what is pressed there, what the file says then, and one step of undo each."""

from __future__ import annotations

import re
from contextlib import asynccontextmanager

import pytest
from nicegui import ui
from simulated import simulated

from firmpedal.project import read_text
from firmpedal.web.form.element import Made
from firmpedal.web.shelf import Shelf
from texts import edited, example

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
    async with simulated(shelf) as user:
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


async def test_a_hose_made_plastic_says_what_went_with_it_and_one_undo_brings_it_back(tmp_path):
    async with page(tmp_path, "lines.left_tail") as form:
        bend, made_of = (
            {"place": f"lines.left_tail.{key}", "row": 0, "number": 0} for key in ("tightest bend", "made of")
        )
        before = form.tell("put", **bend, words="3")
        after = form.tell("put", **made_of, words="plastic nylon 1/4 x .040")
        assert "tightest bend: 3" in before
        assert "tightest bend" not in after
        assert "tightest bend went with the hose" in form.shown
        form.document.undo()
        assert form.document.text == before


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
        assert form.press("unmirror", "lines.left_spring") == text
        assert "Take right_spring away?" in form.shown
        text = form.press("unmirrored", "lines.left_spring")
        assert "mirror: [left_floor, left_axle, left_pedal, left_tail]" in text
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


BORE = "components.left_cylinder.bore"


def written_by_another(form, words):
    """Another program puts another bore into the file."""
    path = form.document.path
    path.write_text(edited(form.document.text, ("bore: 0.625", f"bore: {words}")), encoding="utf-8")
    form.document.look()


def typed(form, words, began="0.625"):
    form.user.find(kind=Made).trigger(
        "put", {"place": BORE, "row": 0, "number": 0, "words": words, "began": began}
    )


async def left_and_come_back(form, to="sound"):
    """Go to another page by its address and back to the fields, with nothing chosen there."""
    await form.user.open(f"/aircraft/mine.yaml/{to}?option=rigid")
    await form.user.should_see("Not saved yet")
    await form.user.should_see("left_cylinder bore: you typed 0.75.")
    (way,) = [
        each.props["href"] for each in form.user.find(kind=ui.html).elements
        if str(each.props.get("href", "")).endswith("at=components.left_cylinder.bore")
    ]  # fmt: skip
    await form.user.open(way)


async def test_a_disputed_value_is_kept_when_the_page_is_left_and_can_still_be_written(tmp_path):
    async with page(tmp_path, "components.left_cylinder") as form:
        written_by_another(form, "0.7")
        typed(form, "0.75")
        assert "wrote 0.7 here. You typed 0.75." in form.shown
        await form.user.should_see("what you typed in a field is not saved yet")
        await left_and_come_back(form)
        assert "wrote 0.7 here. You typed 0.75." in form.shown
        text = form.press("mine", f"0 0 {BORE}")
        assert "bore: 0.75" in text
        assert "You typed" not in form.shown
        await form.user.should_see("every change is saved")
        await form.user.open("/aircraft/mine.yaml/sound?option=rigid")
        await form.user.should_not_see("Not saved yet")


async def test_a_disputed_value_is_found_again_without_being_looked_for_and_can_be_given_up(tmp_path):
    async with page(tmp_path, "components.left_cylinder") as form:
        written_by_another(form, "0.7")
        typed(form, "0.75")
        await form.user.open("/aircraft/mine.yaml/describe?option=rigid")
        assert "<h2>left_cylinder</h2>" in form.shown
        assert "You typed 0.75." in form.shown
        text = form.document.text
        assert form.press("theirs", f"0 0 {BORE}") == text
        assert "You typed" not in form.shown
        assert "bore: 0.7" in text


async def test_a_disputed_value_that_stands_there_by_now_is_no_question_any_more(tmp_path):
    async with page(tmp_path, "components.left_cylinder") as form:
        written_by_another(form, "0.7")
        typed(form, "0.75")
        form.document.path.write_text(TEXT.replace("bore: 0.625", "bore: 0.75"), encoding="utf-8")
        form.document.look()
        await form.user.open("/aircraft/mine.yaml/describe?option=rigid")
        assert "You typed" not in form.shown
        await form.user.should_see("every change is saved")


async def test_what_is_typed_while_there_are_two_versions_waits_for_the_choice(tmp_path):
    async with page(tmp_path, "components.left_cylinder") as form:
        form.document.replace_text(f"{TEXT}# mine\n", based_on="something else")
        assert form.document.conflict is not None
        typed(form, "0.75")
        assert "there are two versions of this file" in form.shown
        form.document.take_theirs()
        await left_and_come_back(form)
        assert "bore: 0.75" in form.press("mine", f"0 0 {BORE}")


async def test_under_the_word_that_the_file_is_gone_stands_no_empty_picture(tmp_path):
    async with page(tmp_path, "") as form:
        path = form.document.path
        path.unlink()
        form.document.look()
        await form.user.should_see("This file is gone")
        for step in ("describe", "sound", "buy"):
            await form.user.open(f"/aircraft/mine.yaml/{step}?option=rigid")
            await form.user.should_see("This file is gone")
            await form.user.should_not_see("There is no picture yet")
            await form.user.should_not_see("There is nothing here yet")
        path.write_text(
            edited(TEXT, ("\nmirror: [", "\nmiror: [")), encoding="utf-8"
        )  # back, and hard to read
        form.document.look()
        await form.user.open("/aircraft/mine.yaml/sound?option=rigid")
        await form.user.should_see("There is nothing here yet")


THREAD = "components.left_cylinder.ports.outlet.thread"
NO_THREAD = "elbows 3/8"


def put_thread(form, words, began):
    form.user.find(kind=Made).trigger(
        "put", {"place": THREAD, "row": 0, "number": 0, "words": words, "began": began}
    )


async def test_what_is_refused_is_kept_with_its_reason_until_it_is_settled(tmp_path):
    async with page(tmp_path, "components.left_cylinder") as form:
        text = form.document.text
        put_thread(form, NO_THREAD, None)
        assert form.document.text == text
        assert f'value="{NO_THREAD}"' in form.shown
        reason = form.shown[form.shown.index("Not saved: ") :].partition("<")[0]
        await form.user.should_see("what you typed in a field is not saved yet")
        form.user.find(kind=Made).trigger("pick", "components.left_caliper")
        assert NO_THREAD not in form.shown
        assert "Go to left_cylinder outlet thread" in form.shown
        await form.user.open("/aircraft/mine.yaml/sound?option=rigid")
        await form.user.should_see(f"left_cylinder outlet thread: you typed {NO_THREAD}. Not saved: ")
        await form.user.open("/aircraft/mine.yaml/describe?option=rigid")
        assert f'value="{NO_THREAD}"' in form.shown
        assert reason in form.shown
        form.press("mine", f"0 0 {THREAD}")
        assert reason in form.shown
        put_thread(form, "1/8 NPT female", now_in(form, THREAD))
        assert NO_THREAD not in form.shown
        assert "Not saved" not in form.shown
        await form.user.should_see("every change is saved")


async def test_what_is_refused_can_be_given_up(tmp_path):
    async with page(tmp_path, "components.left_cylinder") as form:
        text = form.document.text
        put_thread(form, NO_THREAD, None)
        await form.user.open("/aircraft/mine.yaml/describe?option=rigid")
        form.press("theirs", f"0 0 {THREAD}")
        assert form.document.text == text
        assert NO_THREAD not in form.shown
        await form.user.open("/aircraft/mine.yaml/sound?option=rigid")
        await form.user.should_not_see("Not saved")


def now_in(form, place):
    """What is written in a cell, as the page knows it."""
    found = re.search(rf'data-cell="{re.escape(place)}"[^>]* data-was="([^"]*)"', form.shown)
    return found[1]
