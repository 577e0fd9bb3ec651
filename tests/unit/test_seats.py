"""Where a line's end sits: as measured, shifted to the chosen fitting, or from the thread's face."""

from __future__ import annotations

import pytest

from firmpedal.catalog import catalogue
from firmpedal.pipeline import evaluate_text
from firmpedal.quantity import Mark
from firmpedal.units import to_unit
from texts import edited, small

OUTLET = "outlet: {thread: 1/8 NPT female, faces: down, seat: [10, 0, 4]}"
AXES = ("aft", "right", "up")


def port(words: str) -> tuple[str, str]:
    return OUTLET, f"outlet: {{thread: 1/8 NPT female, {words}}}"


def fitted_with(words: str) -> tuple[str, str]:
    return "from: cylinder.outlet\n", f"from: cylinder.outlet\n    from fitting: {words}\n"


def first_point(*edits: tuple[str, str], name: str = "run"):
    evaluation = evaluate_text(edited(small("quillfen"), *edits), "text")
    return next(line for line in evaluation.laid if line.name == name).points[0]


def place(position) -> dict[str, tuple[float, float]]:
    return {
        axis: (to_unit(value.low, "in"), to_unit(value.high, "in"))
        for axis, value in zip(AXES, position.coordinates, strict=True)
    }


def inches(*span: float):
    return tuple(pytest.approx(bound, abs=1e-9) for bound in span)


def dimension(designation: str, name: str) -> tuple[float, float]:
    value = catalogue().part(designation).dimension(name)
    return to_unit(value.low, "in"), to_unit(value.high, "in")


def test_a_seat_measured_with_the_chosen_fitting_stays():
    found = place(first_point(port("faces: down, seat: [10, 0, 4], seat measured with: AN816-4D")))
    assert found == {"aft": inches(10, 10), "right": inches(0, 0), "up": inches(4, 4)}


@pytest.mark.parametrize("other", ["AN816-4", "an816-4d"])
def test_another_metal_or_name_of_the_same_fitting_is_the_same(other):
    found = place(first_point(port(f"faces: down, seat: [10, 0, 4], seat measured with: {other}")))
    assert found["up"] == inches(4, 4)


def test_a_seat_measured_with_a_nipple_moves_for_an_elbow():
    """Down: the elbow's leg instead of the nipple. Aside, the way of the arm: the elbow's other leg."""
    words = "faces: down, seat: [10, 0, 4], seat measured with: AN816-4D, arm: forward"
    found = place(first_point(port(words), fitted_with("AN822-4D")))
    nipple, leg = dimension("AN816-4D", "overall_length"), dimension("AN822-4D", "leg_centre_to_pipe_end")
    arm = dimension("AN822-4D", "leg_centre_to_flare_end")
    assert found["up"] == inches(4 - (leg[1] - nipple[0]), 4 - (leg[0] - nipple[1]))
    assert found["aft"] == inches(10 - arm[1], 10 - arm[0])
    assert found["right"] == inches(0, 0)


def test_an_arm_that_points_anywhere_points_square_to_the_port():
    words = "faces: down, seat: [10, 0, 4], seat measured with: AN816-4D"
    found = place(first_point(port(words), fitted_with("AN822-4D")))
    nipple, leg = dimension("AN816-4D", "overall_length"), dimension("AN822-4D", "leg_centre_to_pipe_end")
    _, arm = dimension("AN822-4D", "leg_centre_to_flare_end")
    assert found["aft"] == inches(10 - arm, 10 + arm)
    assert found["right"] == inches(-arm, arm)
    assert found["up"] == inches(4 - (leg[1] - nipple[0]), 4 - (leg[0] - nipple[1]))


def test_a_port_that_may_face_anywhere_moves_its_seat_anywhere():
    words = "faces: unknown, seat: [10, 0, 4], seat measured with: AN816-4D"
    found = place(first_point(port(words), fitted_with("AN822-4D")))
    nipple, leg = dimension("AN816-4D", "overall_length"), dimension("AN822-4D", "leg_centre_to_pipe_end")
    most = (nipple[1] - leg[0]) + dimension("AN822-4D", "leg_centre_to_flare_end")[1]
    assert found == {
        "aft": inches(10 - most, 10 + most),
        "right": inches(-most, most),
        "up": inches(4 - most, 4 + most),
    }


def test_a_seat_measured_with_an_elbow_moves_for_a_nipple():
    words = "faces: down, seat: [10, 0, 4], seat measured with: AN822-4D, arm: forward"
    found = place(first_point(port(words), fitted_with("AN816-4D")))
    arm = dimension("AN822-4D", "leg_centre_to_flare_end")
    assert found["aft"] == inches(10 + arm[0], 10 + arm[1])


def test_a_shift_from_estimates_is_an_estimate():
    words = "faces: down, seat: [10, 0, 4], seat measured with: AN822-4D, arm: forward"
    assert first_point(port(words), fitted_with("AN816-4D")).aft.mark is Mark.ESTIMATE


def test_from_the_face_of_the_thread():
    """The nipple less what screws in: by hand L1 of ASME B1.20.1, and 1-1/2 to 3 turns by the wrench."""
    found = place(first_point(port("faces: down, at: [10, 0, 5]")))
    nipple = dimension("AN816-4D", "overall_length")
    screwed_in = (0.1615 + 1.5 / 27, 0.1615 + 3 / 27)
    assert found["up"] == inches(5 - nipple[1] + screwed_in[0], 5 - nipple[0] + screwed_in[1])
    assert found["aft"] == inches(10, 10)


class TestUnknown:
    def asked(self, position) -> set[str]:
        assert not position.known
        return {missing.what for missing in position.missing}

    def test_two_fittings_in_a_row(self):
        words = "faces: down, seat: [10, 0, 4], seat measured with: AN816-4D"
        (what,) = self.asked(first_point(port(words), fitted_with("[AN914-1D, AN816-4D]")))
        assert what == "how far the seat of AN914-1D and AN816-4D stands off the port"

    def test_two_fittings_that_the_seat_was_measured_on_as_they_are(self):
        found = place(first_point(fitted_with("[AN914-1D, AN816-4D]")))
        assert found["up"] == inches(4, 4)

    def test_a_thread_that_no_table_has(self):
        small_pipe = (OUTLET, "outlet: {thread: 1/16 NPT female, faces: down, at: [10, 0, 5]}")
        position = first_point(small_pipe, fitted_with("AN816-4D"))
        assert any("thread 1/16-27 screws in at cylinder.outlet" in what for what in self.asked(position))

    def test_where_two_lines_meet(self):
        tail = "  tail: {from: run.to, to: caliper.inlet, made of: hose -4 PTFE braided}\n"
        edits = (("to: caliper.inlet\n", "to: tail.from\n"), ("lines:\n", f"lines:\n{tail}"))
        assert self.asked(first_point(*edits, name="tail")) == {"where run and tail meet"}


class TestBulkheads:
    WALL = (
        ("from: cylinder.outlet\n", "from: wall.low\n"),
        (
            "lines:\n",
            "lines:\n  stub: {from: cylinder.outlet, to: wall.high, made of: hose -4 PTFE braided}\n",
        ),
    )

    def wall(self, words: str):
        sides = f"bulkheads:\n  wall:\n    sides: {{high: {{seat: [10, 0, 3]}}, low: {{{words}}}}}\npedals:\n"
        return first_point(*self.WALL, ("pedals:\n", sides))

    def test_a_seat_as_measured(self):
        assert place(self.wall("seat: [10, 0, 1]"))["up"] == inches(1, 1)

    def test_a_seat_measured_with_the_chosen_fitting(self):
        assert place(self.wall("seat: [10, 0, 1], seat measured with: AN832-4D"))["up"] == inches(1, 1)

    def test_a_seat_measured_with_another_fitting_is_asked_for(self):
        position = self.wall("seat: [10, 0, 1], seat measured with: AN833-4D")
        (what,) = {missing.what for missing in position.missing}
        assert what == "the seat with AN832-4D: it was measured with AN833-4D"
