"""Brakes in the cold: figures of whole aircraft worked out by hand beside them, and what stays unknown."""

from __future__ import annotations

import re
from math import log, pi

import pytest

from firmpedal.analysis.cold import cold_of
from firmpedal.analysis.swelling import frost_wall, swell
from firmpedal.model.display import usual_display
from firmpedal.model.stock import LineKind
from firmpedal.pipeline import evaluate_text
from firmpedal.quantity import Mark, exactly
from firmpedal.report.cold import cold_sheet
from firmpedal.report.sheet import Drawing, Table
from firmpedal.report.story import every_value
from firmpedal.units import Dimension
from texts import edited, example, small

INCH, PSI, ICE = 0.0254, 6894.757, 273.15


def cold(evaluation):
    return cold_of(evaluation.aircraft, evaluation.laid, evaluation.results)


@pytest.fixture(scope="module")
def fennimoss():
    return evaluate_text(example("fennimoss"), "fennimoss.yaml", "rigid")


class TestFennimoss:
    def test_the_lines_between_wheel_and_cylinder(self, fennimoss):
        (left, _) = cold(fennimoss)
        assert (left.cylinder, left.lines) == ("left_cylinder", ("left_gear", "left_keel", "left_pedal"))

    def test_pads_come_free_at_minus_40_by_hand(self, fennimoss):
        """128 rho nu V / (pi p) times the sum of L / d^4, at 491 mm^2/s and 3 to 10 psi."""
        (left, _) = cold(fennimoss)
        lines = {line.name: line for line in fennimoss.laid}
        keel = lines["left_keel"].developed_length.middle / (0.1175 * INCH) ** 4
        hoses = sum(lines[name].hose.order_length.middle for name in ("left_gear", "left_pedal"))
        shape = keel + hoses / (0.125 * INCH) ** 4
        gap = 2 * pi / 4 * (1.25 * INCH) ** 2 * 0.020 * INCH
        (row,) = (each for each in left.rows if each.temperature.middle == pytest.approx(ICE - 40))
        least, most = (
            128 * density * 491e-6 * gap * shape / (pi * pressure * PSI)
            for density, pressure in ((859, 10), (875, 3))
        )
        assert (row.free.low, row.free.high) == pytest.approx((least, most), rel=1e-6)

    def behind(self, evaluation, wheel, end):
        """For each line its length, its bore and what it fills: all below it, and half of its own."""
        held = [line for name in wheel.lines for line in evaluation.laid if line.name == name]
        swells = [swell(line, wheel.pressure, "by hand", None, evaluation.aircraft.fluid) for line in held]
        taken = [getattr(each.wall, end) + getattr(each.fluid, end) for each in swells]
        given = getattr(wheel.give, end) if wheel.give is not None else 0.0
        for number, line in enumerate(held):
            long = line.order_length if line.hose else line.developed_length
            bore = 0.125 * INCH if line.hose else 0.1175 * INCH
            yield getattr(long, end), bore, given + sum(taken[:number]) + taken[number] / 2

    def test_the_time_constant_counts_what_lies_behind_each_line_by_hand(self, fennimoss):
        """At 20 degrees 128 rho nu L V / (pi d^4 p) for each line, added up."""
        (left, _) = cold(fennimoss)
        (row,) = (each for each in left.rows if each.temperature.middle == pytest.approx(ICE + 20))
        for end, density, pressure in (("low", 859, left.pressure.high), ("high", 875, left.pressure.low)):
            found = sum(long * taken / bore**4 for long, bore, taken in self.behind(fennimoss, left, end))
            constant = 128 * density * row.viscosity.middle * found / (pi * pressure)
            assert getattr(row.time_constant, end) == pytest.approx(constant, rel=1e-3)

    def test_the_line_that_rings_most_is_told(self, fennimoss):
        """Of 64 rho nu L / (pi d^4) times the root of pi d^2 V / (4 rho L p), the least of three lines."""
        (left, _) = cold(fennimoss)
        (row,) = (each for each in left.rows if each.temperature.middle == pytest.approx(ICE + 20))
        damped = [
            64
            * 859
            * row.viscosity.middle
            * long
            / (pi * bore**4)
            * (pi * bore**2 * taken / (4 * 859 * long * left.pressure.high)) ** 0.5
            for long, bore, taken in self.behind(fennimoss, left, "low")
        ]
        assert max(damped) > 1.5 * min(damped)
        assert row.ringing.low == pytest.approx(min(damped), rel=1e-2)

    def test_a_brake_counts_as_let_go_at_ten_psi(self, fennimoss):
        """From the hard foot down by an e-th in each time constant."""
        for wheel in cold(fennimoss):
            for row in wheel.rows:
                times = log(wheel.pressure.middle / (10 * PSI))
                assert row.let_go.low == pytest.approx(row.time_constant.low * times, rel=1e-6)
                assert row.let_go.high == pytest.approx(row.time_constant.high * times, rel=1e-6)

    def test_colder_is_always_slower(self, fennimoss):
        for wheel in cold(fennimoss):
            for figure in ("viscosity", "closed", "let_go", "free"):
                row = [getattr(each, figure).high for each in wheel.rows]
                assert row == sorted(row, reverse=True)

    def test_a_foot_closes_the_gap_far_quicker_than_seals_open_it(self, fennimoss):
        for wheel in cold(fennimoss):
            for row in wheel.rows:
                assert row.closed.high < row.free.low / 10

    def test_the_sheet_has_a_picture_and_every_figure_can_be_asked_for(self, fennimoss):
        sheet = cold_sheet(fennimoss)
        assert "left_caliper are free only" in sheet.blocks[0].text
        assert any(isinstance(block, Drawing) for block in sheet.blocks)
        assert "components.left_caliper.cold.-40 degC.pads back" in every_value(fennimoss)


class TestWhatTheCaliperGives:
    """0.004 in of one piston of 1.5 in at 500 psi, behind one tube."""

    GAP = "    pad gap: 0.020\n"
    TOLD = (GAP, f"{GAP}    gives: {{travel: 0.004, under: 500}}\n")

    def overshoots(self, *edits) -> list[str]:
        evaluation = evaluate_text(edited(small("quillfen"), *edits), "x")
        (table,) = [block for block in cold_sheet(evaluation).blocks if isinstance(block, Table)]
        return [row[-1] for row in table.rows]

    def test_without_it_nothing_overshoots_for_sure(self):
        assert set(self.overshoots()) <= {"no", "may"}

    def test_with_it_the_answer_is_a_sure_one(self):
        assert "yes" in self.overshoots(self.TOLD)

    def test_it_comes_on_top_behind_every_line_by_hand(self):
        """Damping grows with the root of what is behind the line: give and half of the line's own."""
        bare, told = (
            cold(evaluate_text(edited(small("quillfen"), *edits), "x"))[0] for edits in ((), (self.TOLD,))
        )
        assert (len(bare.lines), bare.give) == (1, None)
        taken = pi / 4 * 1.5**2 * 0.004 * INCH**3 * told.pressure.middle / (500 * PSI)
        assert told.give.middle == pytest.approx(taken)
        half = bare.own.middle / 2
        for one, other in zip(bare.rows, told.rows, strict=True):
            more = (half + taken) / half
            assert other.ringing.high / one.ringing.high == pytest.approx(more**0.5, rel=1e-6)
            assert other.time_constant.high / one.time_constant.high == pytest.approx(more, rel=1e-6)

    def test_colder_than_room_what_takes_up_may_be_half_as_much_of_the_fluid(self):
        """Half of the fluid, all of the metal's wall: the damping's low end goes by the root of that."""
        evaluation = evaluate_text(small("quillfen"), "x")
        found, (line,) = cold(evaluation)[0], evaluation.laid
        *colder, room = found.rows
        own = swell(line, found.pressure, "by hand", None, evaluation.aircraft.fluid)
        share = (own.wall.low + own.fluid.low / 2) / (own.wall.low + own.fluid.low)
        assert 0.5 < share < 0.6
        for row in colder:
            thicker = row.viscosity.middle / room.viscosity.middle
            assert row.ringing.low / room.ringing.low == pytest.approx(share**0.5 * thicker, rel=1e-6)

    def test_the_pressure_goes_no_sooner_than_said(self):
        evaluation = evaluate_text(small("quillfen"), "x")
        (table,) = [block for block in cold_sheet(evaluation).blocks if isinstance(block, Table)]
        assert all(row[3].endswith("or more") for row in table.rows)


class TestRows:
    def test_the_temperatures_are_those_at_which_fluids_are_told(self):
        (found,) = cold(evaluate_text(small("quillfen"), "x"))
        told = [round(row.temperature.middle - ICE, 6) for row in found.rows]
        assert told == [-54, -40, -30, -20, 0, 20]

    def test_only_at_room_temperature_is_what_takes_up_no_estimate(self):
        *colder, room = cold(evaluate_text(small("quillfen"), "x"))[0].rows
        assert {row.time_constant.mark for row in colder} == {Mark.ESTIMATE}
        assert room.time_constant.mark is not Mark.ESTIMATE

    def test_every_estimate_in_a_row_says_that_it_is_ours(self):
        """What the reader is shown has a source, or the figures that it comes from."""
        waiting = [row.free for row in cold(evaluate_text(small("quillfen"), "x"))[0].rows]
        waiting += [row.let_go for row in cold(evaluate_text(small("quillfen"), "x"))[0].rows]
        roots = set()
        while waiting:
            value = waiting.pop()
            inputs = [each for _, each in value.step.inputs] if value.step else []
            waiting += inputs
            if not inputs and value.mark is Mark.ESTIMATE:
                roots.add((value.label, value.source))
        assert len(roots) >= 2
        assert {source for _, source in roots} == {"firmpedal-estimate"}

    def test_a_line_whose_way_is_unknown_leaves_the_rows_open(self):
        text = edited(small("quillfen"), ("- [10, 0, -6]", "- unknown"))
        (found,) = cold(evaluate_text(text, "x"))
        for row in found.rows:
            assert row.viscosity.known
            assert not row.closed.known
            assert row.closed.missing
            assert row.ringing is None

    def test_plastic_is_stiffer_in_the_cold_and_may_be_no_stiffer(self):
        """At least what its wall takes as stiff as at -40 degrees and half the fluid, at most all as warm."""
        evaluation = evaluate_text(example("brindlewick"), "brindlewick.yaml")
        (found, *_) = cold(evaluation)
        (line,) = (each for each in evaluation.laid if each.name == found.lines[0])
        assert (len(found.lines), line.kind) == (1, LineKind.PLASTIC)
        own = swell(line, found.pressure, "by hand", None, evaluation.aircraft.fluid)
        stiff = frost_wall(line, found.pressure, "by hand")
        assert stiff.low < own.wall.low
        given = found.give or exactly("nothing", Dimension.VOLUME, 0.0, Mark.DERIVED)
        *colder, room = found.rows
        for end, taken in (("low", stiff.low + own.fluid.low / 2), ("high", own.wall.high + own.fluid.high)):
            warm = getattr(own.wall, end) + getattr(own.fluid, end)
            share = (getattr(given, end) + taken / 2) / (getattr(given, end) + warm / 2)
            for row in colder:
                thicker = row.viscosity.middle / room.viscosity.middle
                ratio = getattr(row.time_constant, end) / getattr(room.time_constant, end)
                assert ratio == pytest.approx(share * thicker, rel=1e-6)


class TestSound:
    """1,336 m/s, 4,384 ft/s, in aluminium 1/4 x .035: derived in tests/published, there with fixed ends."""

    def test_it_is_told_in_feet_per_second_and_the_landing_in_knots(self):
        ground = ("attitudes:", "on the ground: {landing speed: 48 kt}\nattitudes:")
        evaluation = evaluate_text(edited(small("withyford"), ground), "x")
        values = every_value(evaluation)
        sound = evaluation.display.value(values["lines.floor.speed of sound"][0])
        assert re.fullmatch(r"4,[3-7]\d\d(\.\d)?( to 4,[3-7]\d\d(\.\d)?)? ft/s", sound)
        assert evaluation.display.value(values["on the ground.landing speed"][0]) == "48.0 kt"

    def test_it_goes_there_and_back_through_every_line(self):
        evaluation = evaluate_text(example("fennimoss"), "fennimoss.yaml", "rigid")
        (left, _) = cold(evaluation)
        values = every_value(evaluation)
        least = most = 0.0
        for name in left.lines:
            (line,) = (each for each in evaluation.laid if each.name == name)
            speed = values[f"lines.{name}.speed of sound"][0]
            long = line.order_length if line.hose else line.developed_length
            least, most = least + 2 * long.low / speed.high, most + 2 * long.high / speed.low
        assert left.echo.span == pytest.approx((least, most), rel=1e-6)

    def test_in_metres_where_lengths_are(self):
        evaluation = evaluate_text(small("withyford"), "x")
        value = every_value(evaluation)["lines.floor.speed of sound"][0]
        assert usual_display("mm").value(value).endswith(" m/s")


class TestOthers:
    def test_in_series_the_far_seat_counts(self):
        (left, right) = cold(evaluate_text(example("oatmere"), "oatmere.yaml"))
        assert (left.cylinder, right.cylinder) == ("copilot_left", "copilot_right")
        assert left.lines[-1] == "left_cross"
        assert left.pressure.place.startswith("components.copilot_left.")
        assert right.pressure.place.startswith("components.copilot_right.")

    @pytest.mark.parametrize("fluid", ["", "fluid: DOT 3\n"])
    def test_without_a_thickness_there_is_no_sheet(self, fluid):
        evaluation = evaluate_text(edited(small("withyford"), ("fluid: MIL-PRF-5606\n", fluid)), "x")
        assert cold_sheet(evaluation) is None

    def test_an_unknown_pad_gap_leaves_the_pads_open_and_not_the_pressure(self):
        text = edited(small("withyford"), ("    pad gap: 0.020\n", "    pad gap: unknown\n"))
        evaluation = evaluate_text(text, "x")
        (wheel,) = cold(evaluation)
        assert not wheel.rows[0].free.known
        assert wheel.rows[0].let_go.known
        assert "Not worked out before this is known" in cold_sheet(evaluation).blocks[-1].text

    def test_a_fluid_that_is_not_known_so_cold_has_fewer_rows(self):
        text = edited(small("withyford"), ("fluid: MIL-PRF-5606\n", "fluid: MIL-PRF-83282\n"))
        (wheel,) = cold(evaluate_text(text, "x"))
        assert wheel.rows[0].temperature.middle == pytest.approx(ICE - 40)
