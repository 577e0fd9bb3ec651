"""What is asked and is more than one figure is typed where it is asked: in the cells of its fields."""

from __future__ import annotations

import pytest
from simulated import simulated

from firmpedal.pipeline import evaluate_text
from firmpedal.project.layouts import chosen, layout_text
from firmpedal.report.to_measure import to_measure
from firmpedal.web.form.element import Made
from firmpedal.web.shelf import Shelf
from firmpedal.web.sound.in_fields import in_fields
from texts import edited

TEXT = layout_text(chosen(gear="tailwheel", leg="leaf", brakes="toe", seats="1", valve="no"), "mine.yaml")
SEAT = "components.left_cylinder.ports.outlet.seat"
RUDDER = "moving.left_pedals.rudder"
PUT = {"place": SEAT, "row": 0, "began": "unknown"}


def asked(text):
    evaluation = evaluate_text(text)
    return in_fields(evaluation, to_measure(evaluation))


def test_whatever_is_asked_of_a_new_layout_is_typed_where_it_is_asked():
    found = asked(TEXT)
    assert [each.told.what for each in found if not each.told.at and not each.fields] == []
    assert not [each for each in found if each.fields and each.told.at in each.fields]
    fields = {each.fields for each in found}
    assert {(SEAT,), (RUDDER,)} <= fields


def test_the_pieces_of_a_point_stay_one_question_until_all_are_known():
    old = TEXT[TEXT.index("  left_cylinder:") :]
    old = old[: old.index("seat: unknown") + len("seat: unknown")]
    known = [("13", "unknown", "unknown"), ("13", "2 1/2", "unknown")]
    for words in known:
        text = edited(TEXT, (old, old.replace("seat: unknown", f"seat: [{', '.join(words)}]")))
        (row,) = [each for each in asked(text) if each.fields == (SEAT,)]
        assert {place.rpartition(".")[0] for place in row.told.places} == {
            SEAT, SEAT.replace("left_", "right_"),
        }  # fmt: skip
    whole = edited(TEXT, (old, old.replace("seat: unknown", "seat: [13, 2 1/2, -4]")))
    assert not [each for each in asked(whole) if each.fields == (SEAT,)]


@pytest.mark.asyncio
async def test_a_point_is_typed_in_its_row_which_goes_when_it_is_whole(tmp_path):
    (tmp_path / "mine.yaml").write_text(TEXT, encoding="utf-8")
    shelf = Shelf(tmp_path)
    async with simulated(shelf) as user:
        await user.open("/aircraft/mine.yaml/sound")
        await user.should_see("left_cylinder outlet seat", retries=300)
        document = shelf.document("mine.yaml")

        def box(place):
            every = user.find(kind=Made).elements
            return next((each for each in every if f'data-place="{place}"' in each.props["made"]), None)

        def tell(at, event, **args):
            element = box(at)
            for listener in element._event_listeners.values():
                if listener.type == event:
                    element._handle_event({"listener_id": listener.id, "args": args})

        numbers = {each.id for each in user.find(kind=Made).elements}
        assert len(numbers) > 5
        tell(SEAT, "put", number=0, words="13", **PUT)
        assert "seat: [13, unknown, unknown]" in document.text
        tell(SEAT, "put", number=1, words="elbows", **PUT)
        assert "elbows" not in document.text
        assert "Not saved" in box(SEAT).props["made"]
        tell(SEAT, "put", number=1, words="2 1/2", **PUT)
        assert "Not saved" not in box(SEAT).props["made"]
        tell(SEAT, "put", number=2, words="-4", **PUT)
        assert "seat: [13, 2 1/2, -4]" in document.text
        await user.should_see("left_cylinder outlet seat is in the file as you wrote it. Undo takes it out.")
        await user.should_not_see("left_cylinder outlet seat (", retries=300)
        assert box(SEAT) is None
        for _ in range(3):
            document.undo()
        assert document.text == TEXT
        await user.should_see("left_cylinder outlet seat", retries=300)
        tell(RUDDER, "way", place=RUDDER, row=0, words="straight, so far")
        assert "rudder: [unknown, unknown, unknown]" in document.text
        tell(RUDDER, "put", place=RUDDER, row=1, number=0, words="-3", began="unknown")
        assert "rudder: [-3, unknown, unknown]" in document.text
