"""The room of clamps, worked out by hand from the points of a line and the catalogue's widths."""

from __future__ import annotations

import pytest

from firmpedal.export.clamp_rooms import clamp_rooms
from firmpedal.pipeline import evaluate_text
from texts import edited, small

INCH = 0.0254
MADE = "    made of: tube 5052-O 1/4 x .035\n    bend radius: 3/4\n"


def rooms(words, made=MADE):
    """The rooms of the one line, with more said of it."""
    evaluation = evaluate_text(edited(small("quillfen"), (MADE, f"{made}    {words}\n")))
    (line,) = evaluation.laid
    return line, clamp_rooms(evaluation, line)


def inches(point):
    return tuple(one / INCH for one in point)


def test_a_block_lies_along_its_line_half_a_band_to_either_side():
    # the tube goes down from [10, 0, 4]; the band is at most 5/8 in, a quarter tube's clamp .50 in across
    line, ((room, *_), left_out) = rooms("clamps: [3]")
    assert [point.point[2] / INCH for point in line.points[:2]] == pytest.approx([4, -6])
    assert left_out == ()
    assert room.name == "room_of_clamp_1_of_run_estimate"
    assert [inches(point) for point in room.path] == [
        pytest.approx((10, 0, 4 - 3 + off)) for off in (5 / 16, 0, -5 / 16)
    ]
    assert 2 * room.radius / INCH == pytest.approx(0.50)


def test_a_place_that_is_a_range_makes_the_block_longer():
    _, ((room,), _) = rooms("clamps: [2 to 4]")
    assert inches(room.path[0]) == pytest.approx((10, 0, 2 + 5 / 16))
    assert inches(room.path[-1]) == pytest.approx((10, 0, 0 - 5 / 16))


def test_a_hose_is_clamped_by_its_outside():
    hose = "    made of: hose -4 PTFE braided\n    slack: 0.06\n"
    line, ((room,), left_out) = rooms("clamps: [3]", hose)
    assert left_out == ()
    # the thickest in the catalogue is that for 5/16 in, .57 in across
    around = (0.57 - 5 / 16) / 2 * INCH
    assert room.radius == pytest.approx(line.stock.outside_diameter.high / 2 + around)


def test_over_a_sleeve_that_was_not_measured_nothing_is_drawn():
    _, (found, (words,)) = rooms("clamps: [3]\n    sleeve: fire sleeve")
    assert found == ()
    assert words == "clamps of run: what they go round is not known. Measure it across, sleeve and all"


def test_tie_wraps_are_no_clamps():
    assert rooms("clamps: [3]\n    support: tie wraps")[1] == ((), ())
