"""Pressures in the circuit, what stays, what one leak costs, left against right: worked out apart."""

from __future__ import annotations

import math

import pytest

from firmpedal.analysis.network.leaks import leaks
from firmpedal.analysis.network.pressures import pressures
from firmpedal.analysis.network.sides import sides
from firmpedal.pipeline import evaluate_text
from firmpedal.quantity import Mark
from firmpedal.report.network import network_sheet
from firmpedal.report.network_data import network_data
from firmpedal.report.sheet import Paragraph, Table, Tone
from firmpedal.units import to_unit
from texts import edited, example, small

AREA = math.pi / 4 * 0.625**2
ONE = 150 * 5.5 / 2.2 / AREA  # psi, of one of Oatmere's pedals at the hard foot


def oatmere(*edits: tuple[str, str]):
    return evaluate_text(edited(example("oatmere"), *edits), "oatmere.yaml")


def quillfen(*edits: tuple[str, str]):
    return evaluate_text(edited(small("quillfen"), *edits), "text")


def at(evaluation, cylinders: tuple[str, ...], node: str) -> tuple[float, float]:
    for circuit in pressures(evaluation.aircraft, evaluation.results, "hard"):
        for each in circuit.pressed:
            if each.cylinders == cylinders:
                value = dict(each.nodes)[node]
                return to_unit(value.low, "psi"), to_unit(value.high, "psi")
    raise AssertionError(cylinders)


def leak(evaluation, line: str):
    return next(each for each in leaks(evaluation.aircraft, evaluation.results) if each.line == line)


class TestTwoSeats:
    """Reservoir, copilot, pilot, valve, wheel: the pilot's cylinder is the nearer one."""

    @pytest.mark.parametrize("seat", ["pilot", "copilot"])
    def test_either_seat_alone_presses_the_wheel(self, seat):
        assert at(oatmere(), (f"{seat}_left",), "left_caliper.inlet") == pytest.approx((ONE, ONE))

    def test_both_seats_give_from_the_greater_to_the_sum(self):
        both = at(oatmere(), ("pilot_left", "copilot_left"), "left_caliper.inlet")
        assert both == pytest.approx((ONE, 2 * ONE))

    def test_of_two_seats_that_press_unlike_it_is_from_the_harder_one(self):
        """The copilot's pedal has a ratio of 2 in place of 2.5."""
        gentle = "copilot_left_pedal: {like: pilot_left_pedal, seat: copilot"
        evaluation = oatmere((gentle, f"{gentle}, brake: {{arm: 2.75}}"))
        both = at(evaluation, ("pilot_left", "copilot_left"), "left_caliper.inlet")
        assert both == pytest.approx((ONE, ONE + 150 * 2 / AREA))

    def test_the_line_between_the_seats_feels_the_far_one_alone(self):
        evaluation = oatmere()
        assert at(evaluation, ("pilot_left",), "copilot_left.outlet") == (0, 0)
        both = at(evaluation, ("pilot_left", "copilot_left"), "copilot_left.outlet")
        assert both[0] >= ONE * (1 - 1e-9)

    def test_the_feed_never_feels_anything(self):
        evaluation = oatmere()
        for circuit in pressures(evaluation.aircraft, evaluation.results, "hard"):
            for each in circuit.pressed:
                tops = {node: value for node, value in each.nodes if node.startswith("reservoir.")}
                assert tops
                assert all(value.span == (0, 0) for value in tops.values())

    def test_nothing_stays_at_the_wheels(self):
        found = pressures((evaluation := oatmere()).aircraft, evaluation.results, "hard")
        assert all(value.span == (0, 0) for circuit in found for _, value in circuit.left)

    def test_left_and_right_make_the_same_pressure_with_different_strokes(self):
        evaluation = oatmere()
        found = sides(evaluation.aircraft, evaluation.results, "hard")
        assert [each.seat for each in found] == ["pilot", "copilot"]
        for each in found:
            assert each.pressures[0].span == pytest.approx(each.pressures[1].span)
            assert each.budgets[0].cold.high > each.budgets[1].cold.high  # its hose to the valve is longer


class TestWhatStays:
    def test_a_reservoir_that_lets_no_air_in_keeps_what_one_seat_trapped_of_the_other(self):
        """The copilot presses, the pilot shuts it in, the copilot lets go, then the pilot: no way to air."""
        evaluation = oatmere(("    kind: reservoir\n", "    kind: reservoir\n    vented: no\n"))
        found = pressures(evaluation.aircraft, evaluation.results, "hard")
        left = dict(value for circuit in found for value in circuit.left)
        assert to_unit(left["left_caliper"].high, "psi") >= ONE * (1 - 1e-9)
        assert left["left_caliper"].low == 0  # in another order nothing stays
        (warning,) = [
            block for block in network_sheet(evaluation).blocks if getattr(block, "tone", "") is Tone.WARNING
        ]
        assert "drags" in warning.text

    def test_a_sheet_with_nothing_left_says_so(self):
        words = [block.text for block in network_sheet(oatmere()).blocks if isinstance(block, Paragraph)]
        assert "With all pedals let go, in whatever order, no pressure stays at any wheel." in words
        tones = [block.tone for block in network_sheet(oatmere()).blocks if isinstance(block, Paragraph)]
        assert Tone.WARNING not in tones


class TestLeaks:
    def test_a_line_beyond_both_seats_takes_its_side_at_once_and_the_other_in_time(self):
        evaluation = oatmere()
        found = leak(evaluation, "left_gear")
        assert set(found.pedals) == {"pilot_left", "copilot_left"}
        assert found.wheels == ("left_caliper",)
        assert found.emptied == ("reservoir",)
        assert found.in_time == ("right_caliper",)

    def test_a_line_between_the_seats_leaves_the_near_seat_its_brake_for_a_while(self):
        evaluation = oatmere()
        found = leak(evaluation, "left_cross")
        assert found.pedals == ("copilot_left",)
        assert found.wheels == ()
        assert "left_caliper" in found.in_time

    def test_a_feed_costs_no_pedal_at_once(self):
        evaluation = oatmere()
        found = leak(evaluation, "left_feed")
        assert (found.pedals, found.wheels) == ((), ())
        assert set(found.in_time) == {"left_caliper", "right_caliper"}

    def test_sides_with_their_own_reservoirs_cost_each_other_nothing(self):
        evaluation = evaluate_text(example("brindlewick"), "brindlewick.yaml")
        for each in leaks(evaluation.aircraft, evaluation.results):
            assert len(each.wheels) == 1
            assert each.in_time == ()

    def test_lines_alike_are_one_row(self):
        tables = [block for block in network_sheet(oatmere()).blocks if isinstance(block, Table)]
        (table,) = [each for each in tables if each.columns[0] == "a leak in"]
        assert any(row[0] == "left_to_valve, left_run and left_gear" for row in table.rows)


def test_data_have_every_connection():
    data = network_data(oatmere())
    assert {len(each["cylinders"]) for circuit in data["circuits"] for each in circuit["pressed"]} == {1, 2}
    nodes = {place["at"] for circuit in data["circuits"] for place in circuit["pressed"][0]["nodes"]}
    for port in ("left_caliper.inlet", "valve.left_in", "right_belly.lower", "copilot_right.outlet"):
        assert port in nodes
    assert {each["line"] for each in data["leaks"]} >= {"left_feed", "right_gear"}
    assert data["flows"]


def test_a_pressure_is_no_better_known_than_the_bore_that_makes_it():
    evaluation = quillfen(("bore: 5/8", "bore: {value: 5/8, mark: assumed}"))
    (circuit,) = pressures(evaluation.aircraft, evaluation.results, "hard")
    ((_, value),) = circuit.pressed[0].wheels
    assert value.mark is Mark.ASSUMED


def test_an_unknown_force_is_asked_for():
    evaluation = quillfen(("brakes: toe", "brakes: hand"))
    ((circuit),) = pressures(evaluation.aircraft, evaluation.results, "hard")
    ((_, value),) = circuit.pressed[0].wheels
    assert not value.known
    assert value.missing
