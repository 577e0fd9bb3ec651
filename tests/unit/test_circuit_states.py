"""Whose pressure stands where, followed by hand event by event; and the heat of what is shut in."""

from __future__ import annotations

import pytest
from two_seats import TWO_SEATS

from firmpedal.analysis.circuit import circuits_of, graph_of
from firmpedal.analysis.circuit.states import Facts, Machine
from firmpedal.analysis.trapped import rise_per_degree
from firmpedal.formulas.trapped import trapped_pressure_rise
from firmpedal.project import read_text
from firmpedal.units import from_unit

NEAR, FAR = "alder", "cedar"  # to the wheel: the pilot's cylinder is the nearer
PRESS_NEAR, PRESS_FAR = ("press", NEAR), ("press", FAR)
FREE_NEAR, FREE_FAR = ("let go", NEAR), ("let go", FAR)
SHUT = ("shut", "valve")


def aircraft():
    return read_text(TWO_SEATS, "a.yaml").aircraft


def at_the_wheel(*events, seals=()):
    """Whose pressure stands at the wheel after some events."""
    circuit = next(each for each in circuits_of(graph_of(aircraft())) if NEAR in each.cylinders)
    machine = Machine(circuit, Facts(frozenset({NEAR, FAR}), frozenset({FAR, *seals}), frozenset({"pot"})))
    return machine.run(events).owners[circuit.wheel("red_wheel")]


def test_each_side_is_a_circuit_of_its_own():
    found = [(each.cylinders, each.calipers, each.valves) for each in circuits_of(graph_of(aircraft()))]
    assert sorted(found) == [
        (("alder", "cedar"), ("red_wheel",), ("valve",)),
        (("birch", "elder"), ("green_wheel",), ("valve",)),
    ]


@pytest.mark.parametrize("seals", [(), (NEAR,)])
class TestWhateverTheType:
    def test_each_seat_alone(self, seals):
        assert at_the_wheel(PRESS_NEAR, seals=seals) == {NEAR}
        assert at_the_wheel(PRESS_FAR, seals=seals) == {FAR}

    def test_let_go_nothing_stays(self, seals):
        assert at_the_wheel(PRESS_FAR, FREE_FAR, seals=seals) == set()
        assert at_the_wheel(PRESS_FAR, PRESS_NEAR, FREE_NEAR, FREE_FAR, seals=seals) == set()

    def test_parked_by_either_seat(self, seals):
        assert at_the_wheel(PRESS_FAR, SHUT, FREE_FAR, seals=seals) == {FAR}
        assert at_the_wheel(PRESS_NEAR, SHUT, FREE_NEAR, seals=seals) == {NEAR}


class TestOneThatSeals:
    def test_pressed_after_it_the_other_is_shut_out(self):
        assert at_the_wheel(PRESS_NEAR, PRESS_FAR, seals=[NEAR]) == {NEAR}

    def test_pressed_before_it_the_other_is_held(self):
        assert at_the_wheel(PRESS_FAR, PRESS_NEAR, FREE_FAR, seals=[NEAR]) == {NEAR, FAR}

    def test_until_it_lets_go(self):
        assert at_the_wheel(PRESS_FAR, PRESS_NEAR, FREE_FAR, FREE_NEAR, seals=[NEAR]) == set()


class TestOneThatFollows:
    def test_both_press(self):
        assert at_the_wheel(PRESS_NEAR, PRESS_FAR) == {NEAR, FAR}

    @pytest.mark.parametrize("first", [(PRESS_FAR, PRESS_NEAR), (PRESS_NEAR, PRESS_FAR)])
    def test_what_the_other_lets_go_is_gone(self, first):
        assert at_the_wheel(*first, FREE_FAR) == {NEAR}


class TestTrapped:
    def test_by_hand(self):
        """8.28e-4 per kelvin times 1.793 GPa times 10 K."""
        assert trapped_pressure_rise(8.28e-4, 1.793e9, 280.0, 290.0) == pytest.approx(14.846e6, rel=1e-4)

    def test_no_rise_without_warmth(self):
        assert trapped_pressure_rise(8.28e-4, 1.793e9, 280.0, 280.0) == 0
        with pytest.raises(ValueError, match="warm temperature"):
            trapped_pressure_rise(8.28e-4, 1.793e9, 281.0, 280.0)

    def test_one_degree_fahrenheit_is_five_ninths_of_one_celsius(self):
        fluid = aircraft().fluid
        small, large = (rise_per_degree(fluid, unit, "valve").middle for unit in ("degF", "degC"))
        assert small / large == pytest.approx(5 / 9)
        assert small == pytest.approx(from_unit(119.6, "psi"), rel=1e-3)

    def test_of_no_fluid_nothing_is_known(self):
        value = rise_per_degree(None, "degF", "valve")
        assert not value.known
        assert [missing.what for missing in value.missing] == ["which brake fluid is used"]
