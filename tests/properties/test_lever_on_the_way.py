"""The greatest ratio of a lever on its way, against turning its pins by hand and against an optimiser."""

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.optimize import minimize_scalar

from firmpedal.pipeline import evaluate_text
from firmpedal.units import from_unit, to_unit
from texts import edited, small

LEVER = "brake: {brake: {pad: 5, arm: 2-1/2}}"
WAYS = 400  # steps by which a lever is turned through its way


def cylinder(pad, rod, base, stroke, stop=None):
    """What the program makes of a lever about the origin, all in inches."""
    more = "" if stop is None else f", travel to stop: {stop!r}"
    points = ", ".join(
        f"{name}: [{at[0]!r}, 0, {at[1]!r}]"
        for name, at in (("pivot", (0.0, 0.0)), ("pad at", pad), ("rod end", rod), ("cylinder base", base))
    )
    text = edited(
        small("quillfen"),
        (LEVER, f"brake: {{brake: {{{points}{more}}}}}"),
        ("    stroke: 3/4\n", f"    stroke: {stroke!r}\n"),
    )
    return evaluate_text(text, "text").results


def turned(at, angle):
    return (
        at[0] * math.cos(angle) - at[1] * math.sin(angle),
        at[0] * math.sin(angle) + at[1] * math.cos(angle),
    )


def ratio(pad, rod, base):
    """Arms by their distances from the lines of force: the cross product over the cylinder's length."""
    arm = abs(rod[0] * base[1] - rod[1] * base[0]) / math.dist(rod, base)
    return math.hypot(*pad) / arm


def by_turning(pad, rod, base, stroke, stop=None):
    """The greatest ratio seen while the lever turns so that the cylinder shortens; None at a dead point."""
    length, small_step = math.dist(rod, base), 1e-7
    way = 1 if math.dist(turned(rod, small_step), base) < length else -1
    opening = math.acos(
        (math.hypot(*rod) ** 2 + math.hypot(*base) ** 2 - length**2)
        / (2 * math.hypot(*rod) * math.hypot(*base))
    )
    low, high = 0.0, opening
    for _ in range(80):  # where the stroke is used up, by halving
        half = (low + high) / 2
        low, high = (
            (half, high) if length - math.dist(turned(rod, way * half), base) < stroke else (low, half)
        )
    end = low if stop is None else min(low, stop / math.hypot(*pad))
    if end > 0.98 * opening:
        return None
    seen = [ratio(pad, turned(rod, way * end * n / WAYS), base) for n in range(WAYS + 1)]
    return max(seen)


coordinate = st.floats(-6, 6).map(lambda number: round(number, 3))
point = st.tuples(coordinate, coordinate)


@given(point, point, point, st.floats(0.2, 1.5), st.one_of(st.none(), st.floats(0.3, 4)))
def test_the_greatest_ratio_is_the_greatest_seen_on_the_way(pad, rod, base, stroke, stop):
    assume(min(math.hypot(*pad), math.hypot(*rod), math.hypot(*base), math.dist(rod, base)) > 0.5)
    assume(abs(rod[0] * base[1] - rod[1] * base[0]) > 0.3)
    expected = by_turning(pad, rod, base, stroke, stop)
    assume(expected is not None)
    found = cylinder(pad, rod, base, stroke, stop).cylinders[0]
    assert found.most.middle == pytest.approx(expected, rel=1e-5)
    assert found.most.middle >= found.ratio.middle * (1 - 1e-9)


@pytest.mark.parametrize(
    ("rod", "base"), [((2.0, 0.5), (-1.0, 7.0)), ((1.5, 2.0), (6.0, 0.0)), ((0.0, 2.0), (6.0, 2.0))]
)
def test_an_optimiser_finds_no_greater_one(rod, base):
    """The ratio has no summit between the ends of the way: scipy looks for one inside."""
    pad, stroke = (-1.0, 5.0), 1.0
    found = cylinder(pad, rod, base, stroke).cylinders[0]
    way = 1 if math.dist(turned(rod, 1e-7), base) < math.dist(rod, base) else -1
    angle = next(
        n / 1e4
        for n in range(1, 30000)
        if math.dist(rod, base) - math.dist(turned(rod, way * n / 1e4), base) >= stroke
    )
    best = minimize_scalar(
        lambda turn: -ratio(pad, turned(rod, way * turn), base), bounds=(0, angle), method="bounded"
    )
    assert found.most.high >= -best.fun * (1 - 1e-3)
    assert found.most.high == pytest.approx(by_turning(pad, rod, base, stroke), rel=1e-5)


class TestStrength:
    """Rod end 2 in above the pivot, cylinder level and 6 in long: its arm falls as it is pressed."""

    PINS = ((-1.0, 5.0), (0.0, 2.0), (6.0, 2.0))

    def test_lines_are_held_against_the_greatest_ratio_and_feel_begins_with_that_at_rest(self):
        results = cylinder(*self.PINS, 0.75)
        (made,), line = results.cylinders, results.pressure_of("run")
        expected = by_turning(*self.PINS, 0.75)
        assert expected > made.ratio.middle
        panic = 200 * expected / (math.pi / 4 * 0.625**2)
        assert to_unit(line.at("panic").middle, "psi") == pytest.approx(panic, rel=1e-5)
        assert made.pressures[2].middle < line.at("panic").middle
        assert made.pressures[2].middle == pytest.approx(
            from_unit(200 * made.ratio.middle / (math.pi / 4 * 0.625**2), "psi")
        )

    def test_a_stop_that_comes_sooner_cuts_the_way_short(self):
        whole, short = (cylinder(*self.PINS, 0.75, stop).cylinders[0].most for stop in (None, 0.5))
        assert cylinder(*self.PINS, 0.75).cylinders[0].ratio.middle < short.middle < whole.middle

    def test_a_dead_point_on_the_way_leaves_the_strength_open(self):
        results = cylinder((-1.0, 5.0), (2.0, 0.5), (5.0, 0.5), 0.75)
        assert results.cylinders[0].ratio.known
        assert not results.cylinders[0].most.known
        assert not results.pressure_of("run").at("panic").known

    def test_by_its_arms_nothing_changes(self):
        (made,) = evaluate_text(small("quillfen"), "text").results.cylinders
        assert made.most is made.ratio
        assert made.greatest is made.pressures
