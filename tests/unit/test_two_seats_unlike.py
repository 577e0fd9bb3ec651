"""Two seats whose levers differ press one brake: what stopping says holds for whichever seat presses."""

import pytest
from test_stopping import AIRCRAFT

from firmpedal.pipeline import evaluate_text
from firmpedal.units import to_unit

SECOND = """
  left_second:
    kind: master cylinder
    side: left
    bore: 5/8
    stroke: 3/4
    pedal: left_other
    ports:
      outlet: {thread: 1/8 NPT female, faces: down, seat: [2, -4, 4]}
"""


RUN = "  second_run: {from: left_second.outlet, to: left_caliper.other, made of: tube 5052-O 1/4 x .035}\n"
OTHER = "  left_other: {{side: left, brake: {{pad: 5, arm: {arm}}}}}\n"


def seats(arm):
    text = AIRCRAFT
    for old, new in (
        ("\n  left_caliper:", f"{SECOND}  left_caliper:"),
        ("      inlet: {", "      other: {thread: 1/8 NPT female, seat: [16, -5, -6]}\n      inlet: {"),
        ("pedals:\n", f"pedals:\n{OTHER.format(arm=arm)}"),
        ("lines:\n", f"lines:\n{RUN}"),
        ("mirror: [", "mirror: [left_second, left_other, "),
        ("left_run]", "left_run, second_run]"),
    ):
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    return evaluate_text(text.replace("second_run", "left_second_run"), "text").results.stopping


def pressure(stop):
    """At the left brake under the normal foot."""
    return [to_unit(bound, "psi") for bound in stop.brakes[0].feet[0].pressure.span]


def test_seats_alike_press_as_one():
    low, high = pressure(seats(5))
    assert low == pytest.approx(high)


def test_the_weaker_seat_is_not_hidden_behind_the_stronger_one():
    """Pad and arm of 5 in make no ratio; twice the arm makes half the pressure."""
    low, high = pressure(seats(10))
    assert high == pytest.approx(2 * low)
    assert high == pytest.approx(pressure(seats(5))[1])
