"""Which wheels a parking valve shuts in: it has to stand between the wheel and what presses it."""

from __future__ import annotations

import pytest
from two_seats import HEAD

from firmpedal.analysis.shut_in import every_shut_in
from firmpedal.pipeline import evaluate_text
from firmpedal.report.trapped import trapped_sheet

HOSE = "made of: hose -4 PTFE braided"


def valve(name, up):
    return f"""\
  {name}:
    kind: parking valve
    ways: [[in, out]]
    ports:
      in: {{thread: 1/8 NPT female, faces: up, seat: [20, 0, {up}]}}
      out: {{thread: 1/8 NPT female, faces: down, seat: [20, 0, {up - 2}]}}
"""


def side(name, *parts):
    """A cylinder, a caliper and a pedal of one side, with hose from the pot through parts with two ports."""
    ways = ["pot." + name, *(f"{part}.in {part}.out" for part in parts), f"{name}_wheel.inlet"]
    ends = " ".join(ways).split()
    runs = zip(ends[::2], ends[1::2], strict=True)
    return (
        f"""\
  {name}_foot:
    kind: master cylinder
    side: {name}
    bore: 5/8
    stroke: 2
    pedal: {name}_pedal
    inlet: in
    outlet: out
    ports:
      in: {{thread: 1/8 NPT female, faces: up, seat: [10, 0, 10]}}
      out: {{thread: 1/8 NPT female, faces: down, seat: [10, 0, 8]}}
  {name}_wheel:
    kind: caliper
    side: {name}
    pistons: {{bore: 1-1/2, count per side: 1}}
    ports: {{inlet: {{thread: 1/8 NPT female, faces: up, seat: [60, 0, -20]}}}}
""",
        "".join(
            f"  {name}_{n}: {{from: {one}, to: {other}, {HOSE}}}\n" for n, (one, other) in enumerate(runs)
        ),
    )


def aircraft(left, right, *valves):
    (one, ones), (other, others) = side("left", *left), side("right", *right)
    return f"""\
{HEAD}components:
  pot:
    kind: reservoir
    ports:
      left: {{thread: 1/8 NPT female, faces: down, seat: [0, 0, 24]}}
      right: {{thread: 1/8 NPT female, faces: down, seat: [0, 1, 24]}}
{"".join(valve(name, 4 * n) for n, name in enumerate(valves))}{one}{other}\
pedals:
  left_pedal: {{side: left, brake: {{pad: 5, arm: 2-1/2}}}}
  right_pedal: {{side: right, brake: {{pad: 5, arm: 2-1/2}}}}
lines:
{ones}{others}"""


def held(*what):
    found = evaluate_text(aircraft(*what), "valves")
    shut = every_shut_in(found.aircraft, found.laid, found.results, "degF")
    assert (trapped_sheet(found) is None) is (not shut)
    return {(each.valve, each.caliper) for each in shut}


@pytest.mark.parametrize(
    ("left", "right", "valves", "wheels"),
    [
        (("left_foot", "stop"), ("right_foot",), ("stop",), {("stop", "left_wheel")}),
        (("left_foot",), ("right_foot", "stop"), ("stop",), {("stop", "right_wheel")}),
        (
            ("left_foot", "one"),
            ("right_foot", "two"),
            ("one", "two"),
            {("one", "left_wheel"), ("two", "right_wheel")},
        ),
        # In the feed it shuts the pot off and holds nothing: the cylinder lets go below it.
        (("stop", "left_foot"), ("right_foot",), ("stop",), set()),
        (("feed", "left_foot", "stop"), ("right_foot",), ("feed", "stop"), {("stop", "left_wheel")}),
        (("stop", "left_foot", "feed"), ("right_foot",), ("feed", "stop"), {("feed", "left_wheel")}),
    ],
)
def test_a_valve_shuts_in_the_wheels_below_it_whose_pressure_it_keeps(left, right, valves, wheels):
    assert held(left, right, *valves) == wheels
