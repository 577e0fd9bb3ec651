"""The search on the real catalogue: what builders order, and how fast it is found.

Which AN number does which job is common practice (AN816 straight, AN823 45 degrees, AN822 90 degrees
from pipe thread to flare; AN832, AN833 and AN837 through a panel with AN924; AN818 with AN819 on the
tube). That a single dash -4 means 1/4 tube on 1/8 pipe stands in the size table of AS5194E.
"""

from __future__ import annotations

import sys
from dataclasses import replace
from math import radians

import pytest
from invented_parts import FEMALE, PIPE_PORT, Stock, flare, hose, metric, names, pipe, plastic, reasons, tube

from firmpedal.catalog import catalogue
from firmpedal.fit.closing import violations
from firmpedal.fit.counts import flared_count
from firmpedal.fit.hub import fit_hub, fit_meeting
from firmpedal.fit.joint import Hub, MismatchKind, Port
from firmpedal.fit.mating import line_end, port_end
from firmpedal.fit.search import fit_port
from firmpedal.model.part import Category, Form, Interface

REAL = catalogue()


def hub(turn=0, **more):
    return Hub("bulkheads.floor", "floor", radians(turn), through_panel=True, sides=("a", "b"), **more)


@pytest.mark.parametrize(("leaves", "chosen"), [(0, "AN816-4D"), (45, "AN823-4D"), (90, "AN822-4D")])
def test_a_hose_from_an_eighth_pipe_port(leaves, chosen):
    joint = fit_port(PIPE_PORT, hose(leaves=leaves), REAL)
    assert names(joint) == [chosen]
    assert (joint.leak_paths, joint.mismatches, joint.open_ends) == (2, (), ())


def test_a_hose_of_size_3_and_steel_where_asked():
    assert names(fit_port(PIPE_PORT, hose("-3", leaves=90), REAL)) == ["AN822-3D"]
    assert names(fit_port(PIPE_PORT, hose(material="steel"), REAL)) == ["AN816-4"]


def test_a_tube_from_an_eighth_pipe_port():
    assert names(fit_port(PIPE_PORT, tube(leaves=90), REAL)) == ["AN822-4D", "AN818-4D", "AN819-4D"]
    assert names(fit_port(PIPE_PORT, tube("-3", group="steel"), REAL)) == ["AN816-3", "AN818-3", "AN819-3"]


def test_a_quarter_pipe_port_takes_the_double_dash():
    port = Port("p", "p", pipe("1/4-18", FEMALE))
    assert names(fit_port(port, hose(), REAL)) == ["AN816-4-4D"]


def test_quarter_inch_plastic_into_an_eighth_pipe_port():
    straight = fit_port(PIPE_PORT, plastic(), REAL)
    (body,) = straight.parts
    assert {end.interface for end in body.ends} == {pipe(), Interface(Form.COMPRESSION, "1/4 in", FEMALE)}
    assert (body.material, body.turn) == ("brass", 0.0)
    (elbow,) = fit_port(PIPE_PORT, plastic(leaves=90), REAL).parts
    assert elbow.turn == pytest.approx(radians(90))


def test_a_bulkhead_elbow_with_hose_above_and_soft_aluminium_tube_below():
    joint = fit_hub(hub(90), (hose(), tube()), REAL)
    assert names(joint) == ["AN833-4D", "AN924-4D", "AN818-4D", "AN819-4D"]
    assert violations([joint], [line_end(hose()), line_end(tube())]) == ()


def test_a_bracket_takes_a_bulkhead_union():
    joint = fit_hub(hub(0), (tube(), hose()), REAL)
    assert names(joint) == ["AN819-4D", "AN818-4D", "AN832-4D", "AN924-4D"]
    steel = fit_hub(hub(0, material="steel"), (hose(), hose(line="other")), REAL)
    assert names(steel) == ["AN832-4", "AN924-4"]


def test_two_hose_ends_need_the_union_and_two_sizes_the_reducer():
    assert fit_meeting(hose(), hose(line="other"), REAL).mismatches[0].needed == ("AN815-4D",)
    assert fit_meeting(hose("-3"), hose(line="other"), REAL).mismatches[0].needed == ("AN919-4-3D",)
    tubes = fit_meeting(tube("-3"), tube("-3", line="other"), REAL).mismatches[0]
    assert tubes.kind is MismatchKind.BOTH_FEMALE
    assert tubes.needed == ("AN815-3D", "AN819-3D", "AN818-3D", "AN818-3D", "AN819-3D")


def test_ports_are_closed():
    assert fit_port(replace(PIPE_PORT, closed=True), None, REAL).parts[0].category is Category.CAP
    cap = fit_port(Port("p", "p", flare("-4"), closed=True), None, REAL)
    assert names(cap) == ["AN929-4D"]


def test_the_obvious_wrong_parts_are_refused():
    told = reasons(fit_port(PIPE_PORT, hose(leaves=90), REAL))
    assert told["AN816-4D"] == "same joints, but straight while the line leaves at 90 degrees"
    assert told["AN822-4"] == "heavier: steel"
    assert told["AN822-3D"] == "its -3 37-degree flare does not mate with the line's -4"
    assert told["AN826-4D"] == "leaves an end open: it has a branch"
    assert told["AN842-4D"] == "low-pressure or obsolete form: never in a brake line"
    assert told["AN914-1D"] == "would need 1 leak path and 1 part more, with AN816-4D"


def test_declared_fittings_and_their_errors():
    metric_port = Port("p", "p", metric(gender=FEMALE))
    joint = fit_port(metric_port, hose(fittings=("AN816-4D",)), REAL)
    assert joint.mismatches[0].kind is MismatchKind.METRIC_AND_PIPE
    wrong_dash = fit_port(PIPE_PORT, hose(fittings=("AN911-3D", "AN816-4D")), REAL)
    assert wrong_dash.mismatches[0].words == (
        "dash -3 on an all-pipe fitting is 3/8 pipe, not tube size 3; the port is 1/8: dash -1"
    )
    unknown = fit_port(PIPE_PORT, hose(fittings=("AN861-4D",)), REAL)
    assert "did you mean AN816-4D" in unknown.mismatches[0].words
    assert names(fit_port(PIPE_PORT, hose(fittings=("MS20822-4D",)), REAL)) == ["AN822-4D"]


def test_one_wheel_from_cylinder_to_caliper_closes():
    """One side of an all-metal line with hose tails: the parts a builder of such a line orders."""
    pedal, run, tail = hose(line="pedal"), tube(line="run"), hose(line="tail")
    caliper = Port("caliper", "caliper.inlet", PIPE_PORT.interface)
    joints = (
        fit_port(PIPE_PORT, replace(pedal, leaves=0.0), REAL),
        fit_hub(hub(90), (replace(pedal, end="to"), replace(run, end="from")), REAL),
        fit_hub(replace(hub(), place="bulkheads.axle"), (run, tail), REAL),
        fit_port(caliper, replace(tail, end="to", leaves=radians(85)), REAL),
    )
    ordered = [name for joint in joints for name in names(joint)]
    assert sorted(ordered) == sorted(
        ["AN816-4D", "AN833-4D", "AN832-4D", "AN822-4D"] + ["AN924-4D", "AN818-4D", "AN819-4D"] * 2
    )
    ends = [replace(line, end=end) for line in (pedal, run, tail) for end in ("from", "to")]
    outer = [*map(line_end, ends), port_end(PIPE_PORT), port_end(caliper)]
    assert violations(joints, outer) == ()
    assert flared_count(joints, outer).disagreements == ()
    assert sum(joint.leak_paths for joint in joints) == 8


class TestWorkFromCold:
    """Calls of functions instead of seconds, which depend on the machine; `make bench` has the seconds."""

    JOINT = (PIPE_PORT, tube(leaves=90))
    NO_JOINT = (Port("p", "p", metric("M12x1.5", FEMALE)), tube())

    def test_the_shelf_is_a_real_one(self):
        assert len(REAL.parts) > 200

    @pytest.mark.parametrize(("asked", "most"), [(JOINT, 200), (NO_JOINT, 250)], ids=["joint", "none"])
    def test_each_part_on_the_shelf_is_looked_at_a_few_times(self, asked, most):
        assert _calls(asked, REAL.parts) < most * len(REAL.parts)

    @pytest.mark.parametrize("asked", [JOINT, NO_JOINT], ids=["joint", "none"])
    def test_twice_the_parts_are_no_more_than_twice_the_work(self, asked):
        """With some room, as the two halves of the shelf are not quite alike."""
        assert _calls(asked, REAL.parts) < 1.15 * (
            _calls(asked, REAL.parts[::2]) + _calls(asked, REAL.parts[1::2])
        )


def _calls(asked, parts):
    """How many functions are called to fit a line to a port from a stock never seen before."""
    stock, count = Stock(parts), 0

    def see(_frame, event, _argument):
        nonlocal count
        count += event == "call"

    sys.setprofile(see)
    try:
        fit_port(*asked, stock)
    finally:
        sys.setprofile(None)
    return count
