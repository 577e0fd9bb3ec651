"""What holds for every formula at every valid input."""

import inspect
import math
import pkgutil
from functools import cache
from importlib import import_module

import pytest
from formula_domains import DOMAINS, DOWN, UP
from hypothesis import given, settings
from hypothesis import strategies as st
from printed_equation import evaluate

import firmpedal.formulas
from firmpedal.formulas import attitude, bubbles, grip, run_up, temperature, thread_crests, threads, viscosity
from firmpedal.quantity import Mark, Value, apply, story_of
from firmpedal.units import dimension_of

ROUNDING = 1e-12
WITHOUT_EQUATION = {temperature.nylon_strength_retained}  # read from a table
WITH_INCHES = {
    threads.pitch_diameter_at_small_end,
    threads.effective_thread_length,
    thread_crests.least_external_crest,
    grip.rule_energy,
}
# Standard gravity, or the unit of a chart, is a figure of its own in the equation.
WITH_GRAVITY = {
    attitude.column_pressure,
    bubbles.bond_number,
    bubbles.widest_bore_that_holds_air,
    bubbles.buoyancy_number,
    bubbles.rise_in_a_time,
    bubbles.sweeping_flow,
    grip.grip_limit_nosewheel,
    grip.grip_limit_tailwheel,
    grip.nose_over_limit,
    grip.grip_standing,
    grip.grip_tail_up,
    run_up.pull_held_nosewheel,
    run_up.pull_held_tailwheel,
    run_up.pull_that_lifts_the_tail,
    viscosity.walther_number,
    viscosity.viscosity_between,
}
BASE_POWERS = {
    "m": (0, 1, 0, 0),
    "m^3": (0, 3, 0, 0),
    "N m": (1, 2, -2, 0),
    "J": (1, 2, -2, 0),
    "m/s": (0, 1, -1, 0),
    "s": (0, 0, 1, 0),
    "m^2": (0, 2, 0, 0),
    "W": (1, 2, -3, 0),
    "W/K": (1, 2, -3, -1),
    "W/m^2 K": (1, 0, -3, -1),
    "J/kg K": (0, 2, -2, -1),
    "m/s^2": (0, 1, -2, 0),
    "m^3/m": (0, 2, 0, 0),
    "Pa": (1, -1, -2, 0),
    "N": (1, 1, -2, 0),
    "kg": (1, 0, 0, 0),
    "kg/m": (1, -1, 0, 0),
    "kg/m^3": (1, -3, 0, 0),
    "rad": (0, 0, 0, 0),
    "-": (0, 0, 0, 0),
    "K": (0, 0, 0, 1),
    "1/K": (0, 0, 0, -1),
    "m^2/s": (0, 2, -1, 0),
    "N/m": (1, 0, -2, 0),
    "m^3/s": (0, 3, -1, 0),
}

few = settings(max_examples=40)  # for each of a hundred arguments


def for_each(formulas):
    return pytest.mark.parametrize("formula", formulas, ids=lambda formula: formula.__name__)


every_formula = for_each(DOMAINS)
every_equation = for_each([each for each in DOMAINS if each not in WITHOUT_EQUATION])
every_homogeneous_formula = for_each(
    [each for each in DOMAINS if each not in WITHOUT_EQUATION | WITH_INCHES | WITH_GRAVITY]
)
every_argument = pytest.mark.parametrize(
    ("formula", "argument"),
    [(formula, argument) for formula, domain in DOMAINS.items() for argument in domain],
    ids=lambda each: each if isinstance(each, str) else each.__name__,
)


def test_every_formula_has_a_domain_for_every_argument():
    listed = {
        function
        for module in pkgutil.iter_modules(firmpedal.formulas.__path__, "firmpedal.formulas.")
        for name, function in inspect.getmembers(import_module(module.name), inspect.isfunction)
        if function.__module__ == module.name and not name.startswith("_") and "Source: [" in function.__doc__
    }
    assert listed == set(DOMAINS)
    for formula, domain in DOMAINS.items():
        assert list(domain) == list(inspect.signature(formula).parameters)


@cache
def inputs_of(formula):
    """One number for each argument within its range; made once, as making it costs as much as a draw."""
    return st.fixed_dictionaries(
        {name: st.floats(low, high) for name, (low, high, _) in DOMAINS[formula].items()}
    )


@cache
def three_of(low, high):
    return st.lists(st.floats(low, high), min_size=3, max_size=3)


@every_argument
@few
@given(data=st.data())
def test_result_never_turns_back_along_an_argument(formula, argument, data):
    inputs = data.draw(inputs_of(formula))
    low, high, way = DOMAINS[formula][argument]
    places = sorted(data.draw(three_of(low, high)))
    first, middle, last = (formula(**{**inputs, argument: place}) for place in places)
    slack = ROUNDING * max(abs(first), abs(middle), abs(last))
    assert min(first, last) - slack <= middle <= max(first, last) + slack
    if way == UP:
        assert first <= last + slack
    if way == DOWN:
        assert first >= last - slack


@every_formula
def test_result_really_moves_with_every_argument(formula):
    middle = {name: low + 0.6 * (high - low) for name, (low, high, _) in DOMAINS[formula].items()}
    for name, (low, high, _) in DOMAINS[formula].items():
        ends = [formula(**{**middle, name: low}), formula(**{**middle, name: high})]
        assert abs(ends[0] - ends[1]) > 1e-3 * max(map(abs, ends)), name


@every_formula
@few
@given(data=st.data())
def test_range_carried_by_its_corners_holds_every_result_inside_it(formula, data):
    one, other, between = (data.draw(inputs_of(formula)) for _ in range(3))
    values, inside = {}, {}
    for argument in story_of(formula).arguments:
        low, high = sorted((one[argument.name], other[argument.name]))
        dimension = dimension_of(argument.unit)
        values[argument.name] = Value(argument.name, dimension, (low, high), Mark.MEASURED)
        inside[argument.name] = min(max(between[argument.name], low), high)
    carried = apply(formula, "result", **values)
    slack = ROUNDING * max(abs(carried.low), abs(carried.high))
    assert carried.low - slack <= formula(**inside) <= carried.high + slack


@every_equation
@few
@given(data=st.data())
def test_printed_equation_gives_what_the_code_gives(formula, data):
    inputs = data.draw(inputs_of(formula))
    story = story_of(formula)
    printed = evaluate(story.equation, {each.symbol: inputs[each.name] for each in story.arguments})
    assert printed == pytest.approx(formula(**inputs), rel=1e-9, abs=_lost_digits(inputs))


def _lost_digits(inputs):
    """What a sum may lose where nearly equal numbers are subtracted from each other."""
    return 1e-14 * max(abs(number) for number in inputs.values())


@pytest.mark.parametrize(
    "formula",
    [each for each in DOMAINS if each not in WITHOUT_EQUATION | WITH_INCHES | WITH_GRAVITY],
    ids=lambda each: each.__name__,
)
@few
@given(data=st.data())
def test_scaling_the_units_scales_the_result(formula, data):
    inputs = data.draw(inputs_of(formula))
    scales = [data.draw(st.floats(0.5, 2)) for _ in range(4)]
    story = story_of(formula)
    scaled = {each.name: inputs[each.name] * _factor(each.unit, scales) for each in story.arguments}
    expected = formula(**inputs) * _factor(story.unit, scales)
    assert formula(**scaled) == pytest.approx(expected, rel=1e-9, abs=_lost_digits(scaled))


def _factor(unit, scales):
    return math.prod(scale**power for scale, power in zip(scales, BASE_POWERS[unit], strict=True))
