"""A change recomputes only what hangs on it: counted by what the stages' memories do not know yet."""

from __future__ import annotations

import pytest

from firmpedal.fit import hub, search
from firmpedal.lay import crossing, line, movement
from firmpedal.pipeline import evaluate_text
from texts import edited, example

STAGES = {
    "port": search._fit_port,
    "hub": hub._fit_hub,
    "line": line.lay_line,
    "travel": movement.travel,
    "crossing": crossing.crossing,
}
# A waypoint of the left leg's tube in option rigid; ten spaces tell it from the same point of the nylon line.
WAYPOINT = "          - [9.0, -11.6, -5.2]\n"
PORT_SEAT = "seat: [13.1, -7.5, 3.0]"


@pytest.fixture(autouse=True)
def _cold():
    for stage in STAGES.values():
        stage.cache_clear()


def misses() -> dict[str, int]:
    return {name: stage.cache_info().misses for name, stage in STAGES.items()}


def recomputed(text: str, option: str | None = "rigid") -> dict[str, int]:
    """What each stage had to compute anew for a text; stages that had nothing to do are left out."""
    before = misses()
    evaluate_text(text, "text", option)
    return {name: count - before[name] for name, count in misses().items() if count > before[name]}


@pytest.fixture
def text():
    text = example("brindlewick")
    first = recomputed(text)
    assert first.keys() == STAGES.keys()  # the first time everything is new
    assert first["line"] == 6
    return text


def test_the_same_text_again_recomputes_nothing(text):
    assert recomputed(text) == {}


@pytest.mark.parametrize("top", ["# a word at the top\n", "\n", "\n\n# two\n\n"])
def test_what_is_no_part_of_the_description_recomputes_nothing(text, top):
    assert recomputed(top + text) == {}


def test_a_comment_within_recomputes_nothing(text):
    assert recomputed(edited(text, (WAYPOINT, WAYPOINT.replace("\n", "   # felt pen\n")))) == {}


def test_a_waypoint_lays_one_line_and_its_mirror_image_again(text):
    """The tube on the other side is the mirror image, so it is another tube now too: two lines, six zones."""
    moved = recomputed(edited(text, (WAYPOINT, "          - [9.0, -11.6, -5.3]\n")))
    assert moved == {"line": 2, "crossing": 2 * 6}


def test_a_waypoint_of_one_line_lays_that_line_alone(text):
    """Written out for one side, it is an exception to the mirror image: only that side changes."""
    own = "      right_leg: {via: [[7.0, 9.0, -3.2], [9.0, 11.6, -5.3], [5.6, 32.2, -28.6]]}\n"
    text = edited(text, ("      left_tail:\n", own + "      left_tail:\n"))
    recomputed(text)
    assert recomputed(edited(text, ("[9.0, 11.6, -5.3]", "[9.0, 11.6, -5.4]"))) == {"line": 1, "crossing": 6}


def test_a_seat_at_a_port_fits_only_that_port_again(text):
    """The hose leaves the port in another direction, so its joint is another; all others stay."""
    moved = recomputed(edited(text, (PORT_SEAT, "seat: [13.1, -7.5, 3.4]")))
    assert moved == {"port": 2, "line": 2, "travel": 2, "crossing": 2 * 6}


def test_another_foot_force_touches_no_shape_and_no_joint(text):
    assert recomputed(edited(text, ("panic: 200", "panic: 210"))) == {}


def test_another_zone_only_cuts_lines_against_it(text):
    zone = "radius: {value: 6, mark: assumed}"
    assert recomputed(edited(text, (zone, zone.replace("6", "7")))) == {"crossing": 6 * 2}
