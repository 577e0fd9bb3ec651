"""Metric, banjo, boss and compression joints from a builder's text to the parts that close them.

What goes into such a joint is common practice, no source: a parallel thread is sealed by a washer under the
shoulder, a banjo by one on each side of its body, a boss by an O-ring, and soft tube in a compression
fitting takes an insert besides its nut and sleeve. A washer holds fluid at two faces.
"""

from __future__ import annotations

from dataclasses import replace
from math import radians

import pytest
from invented_parts import FEMALE, MALE, Stock, hose, metric, names, panel, part, pipe, reasons, tube

from firmpedal.catalog import catalogue
from firmpedal.fit.assembly import assemble, named_open, outer_ends
from firmpedal.fit.closing import violations
from firmpedal.fit.counts import flared_count, seal_count
from firmpedal.fit.hub import fit_hub, fit_meeting
from firmpedal.fit.joint import Hub, LineEnd, MismatchKind, Port
from firmpedal.fit.mating import line_end, port_end
from firmpedal.fit.search import fit_port
from firmpedal.model.part import Category, Form, Interface
from firmpedal.project.read import read_text

REAL = catalogue()
BOSS = Interface(Form.BOSS, "-4", FEMALE)
FACE = Interface(Form.WASHER_FACE, "M10", MALE)

TEXT = """
firmpedal: 1
aircraft: {{name: Sallowby, gear: tailwheel, brakes: toe}}
units: {{length: in, angle: deg, force: lbf, pressure: psi, temperature: degF}}
fluid: MIL-PRF-5606
components:
  cylinder:
    kind: master cylinder
    bore: 5/8
    stroke: 3/4
    pedal: brake
    ports:
      outlet: {{thread: {outlet}, faces: down, seat: [10, 0, 4]}}
  caliper:
    kind: caliper
    pistons: {{bore: 1-1/2, count per side: 1}}
    ports:
      inlet: {{thread: {inlet}, faces: forward, seat: [16, 0, -6]}}
      second: {{thread: {second}, faces: aft, closed: yes}}
pedals:
  brake: {{brake: {{pad: 5, arm: 2-1/2}}}}
lines:
  run:
    from: cylinder.outlet
    to: caliper.inlet
    {asked}
    made of: {stock}
"""
ALUMINIUM, PLASTIC = "tube 5052-O 1/4 x .035", "plastic nylon 1/4 x .040"
TUBE_END = ["AN818-4D", "AN819-4D"]
SOFT_END = ["COMP-NUT-1/4", "COMP-SLEEVE-1/4", "COMP-INSERT-1/4"]


def assembled(outlet, inlet, second, stock, asked="from fitting: straight"):
    text = TEXT.format(outlet=outlet, inlet=inlet, second=second, stock=stock, asked=asked)
    reading = read_text(text)
    assert reading.aircraft is not None
    return reading.aircraft, assemble(reading.aircraft, REAL)


def closes(aircraft, assembly):
    """Check an assembly by the closing law and by the counts that follow from it."""
    outer, declared = outer_ends(aircraft), named_open(aircraft)
    assert violations(assembly.joints, outer, declared) == ()
    assert flared_count(assembly.joints, outer, declared).disagreements == ()
    assert seal_count(assembly.joints, outer, declared).disagreements == ()
    return seal_count(assembly.joints, outer, declared)


@pytest.mark.parametrize(
    ("thread", "body", "seal", "plug"),
    [
        ("M10 x 1", "MET-S-M10x1x4D", "WASHER-C-M10", "MET-P-M10x1D"),
        ("M10 x 1.25", "MET-S-M10x1.25x4D", "WASHER-C-M10", "MET-P-M10x1.25D"),
        ("M12 x 1", "MET-S-M12x1x4D", "WASHER-C-M12", "MET-P-M12x1D"),
        ("-4 boss", "AN815-4D in a boss", "MS28778-4", "AN814-4D"),
    ],
)
def test_a_tube_from_a_sealed_port_and_a_plug_in_another(thread, body, seal, plug):
    aircraft, assembly = assembled("1/8 NPT female", f"{thread} female", f"{thread} female", ALUMINIUM)
    cylinder, caliper, second = assembly.joints
    assert names(cylinder) == ["AN816-4D", *TUBE_END]
    assert names(caliper)[:2] == [body, seal]
    assert names(caliper)[2:] == TUBE_END
    assert names(second) == [plug, seal]
    counted = closes(aircraft, assembly)
    assert (counted.washers, counted.o_rings) == ((0, 2) if "boss" in thread else (2, 0))
    faces = 1 if "boss" in thread else 2
    assert (caliper.leak_paths, second.leak_paths) == (faces + 1, faces)


def test_a_banjo_is_bolt_body_and_two_washers_and_turns_a_right_angle():
    asked = "to fitting: 90 degrees"
    aircraft, assembly = assembled("1/8 NPT female", "M10 x 1 female", "M10 x 1 female", ALUMINIUM, asked)
    caliper = assembly.joint_of("run", "to")
    banjo = ["BANJO-BOLT-M10x1D", "WASHER-C-M10", "BANJO-M10x4D", "WASHER-C-M10"]
    assert names(caliper) == [*banjo, *TUBE_END]
    assert caliper.leak_paths == 5  # four washer faces and the flare
    assert closes(aircraft, assembly).washers == 3


@pytest.mark.parametrize(("turn", "body"), [(45, "AN837-4D"), (90, "AN833-4D")])
def test_an_elbow_in_a_boss_is_locked_by_the_jam_nut_of_its_bulkhead_thread(turn, body):
    asked = f"to fitting: {turn} degrees"
    aircraft, assembly = assembled("1/8 NPT female", "-4 boss female", "-4 boss female", ALUMINIUM, asked)
    caliper = assembly.joint_of("run", "to")
    assert names(caliper) == [f"{body} in a boss", "AN924-4D", "MS28778-4", *TUBE_END]
    assert caliper.leak_paths == 2
    closes(aircraft, assembly)


def test_plastic_takes_body_nut_sleeve_and_insert_at_both_ends():
    asked = "to fitting: 90 degrees"
    outlet, closed = "1/8 NPT female", "1/8 NPT female"
    aircraft, assembly = assembled(outlet, "1/8 NPT female", closed, PLASTIC, asked)
    assert names(assembly.joint_of("run", "to")) == ["COMP-E-1/4x1/8", *SOFT_END]
    counted = closes(aircraft, assembly)
    assert (counted.compression_sockets, counted.inserts, counted.plain_tube_ends) == (2, 2, 2)
    assert assembly.joint_of("run", "to").leak_paths == 2


def test_a_compression_socket_in_a_component_takes_all_but_the_body():
    aircraft, assembly = assembled(
        "compression 1/4 in female", "compression 1/4 in female", "1/8 NPT female", PLASTIC, "via: []"
    )
    assert names(assembly.joints[0]) == SOFT_END
    closes(aircraft, assembly)


def plastic(line="plastic", size="1/4 in", **more):
    return LineEnd(line, "to", Interface(Form.PLAIN_TUBE, size, MALE), "plastic", **more)


def test_two_plastic_tubes_need_a_union_with_everything_on_both_sides():
    needed = fit_meeting(plastic(), plastic("other"), REAL).mismatches[0].needed
    assert sorted(needed) == sorted(["COMP-U-1/4", *SOFT_END, *SOFT_END])
    union = Hub("h", "h", 0.0, through_panel=False, sides=("a", "b"))
    joint = fit_hub(union, (plastic(), plastic("other")), REAL)
    assert names(joint) == [*SOFT_END[::-1], "COMP-U-1/4", *SOFT_END]
    assert violations([joint], [line_end(plastic()), line_end(plastic("other"))]) == ()


def test_a_metric_plastic_tube_in_an_inch_socket_is_told():
    port = Port("p", "p", Interface(Form.COMPRESSION, "1/4 in", FEMALE))
    wrong = fit_port(port, plastic(size="6 mm"), REAL).mismatches[0]
    assert wrong.kind is MismatchKind.METRIC_TUBE
    assert "made for 1/4 in tube, 6.35 mm" in wrong.words


@pytest.mark.parametrize("material", ["steel", "aluminium"])
def test_the_metal_asked_for_is_that_of_the_fitting_and_never_of_its_washer(material):
    letter = {"steel": "", "aluminium": "D"}[material]
    port = Port("p", "p", metric(gender=FEMALE))
    assert names(fit_port(port, hose(material=material), REAL)) == [f"MET-S-M10x1x4{letter}", "WASHER-C-M10"]
    boss = fit_port(Port("p", "p", BOSS), hose(material=material, turn=90), REAL)
    assert names(boss) == [f"AN833-4{letter} in a boss", f"AN924-4{letter}", "MS28778-4"]


def test_declared_fittings_get_the_washers_that_were_not_declared():
    port = Port("p", "p", metric(gender=FEMALE))
    straight = fit_port(port, tube(fittings=("MET-S-M10x1x4",)), REAL)
    assert names(straight) == ["MET-S-M10x1x4", *TUBE_END, "WASHER-C-M10"]
    banjo = fit_port(port, hose(fittings=("BANJO-BOLT-M10x1", "WASHER-B-M10", "BANJO-M10x4")), REAL)
    assert names(banjo) == ["BANJO-BOLT-M10x1", "WASHER-B-M10", "BANJO-M10x4", "WASHER-C-M10"]
    assert (straight.open_ends, banjo.open_ends) == ((), ())
    assert banjo.leak_paths == 5


@pytest.mark.parametrize("written", ["AN833-4D", "AN833-4D in a boss"])
def test_a_bulkhead_elbow_declared_at_a_boss_goes_in_with_its_nut_and_o_ring(written):
    joint = fit_port(Port("p", "p", BOSS), hose(fittings=(written,)), REAL)
    assert names(joint) == ["AN833-4D in a boss", "AN924-4D", "MS28778-4"]
    assert (joint.mismatches, joint.open_ends) == ((), ())


@pytest.mark.parametrize("lost", ["WASHER-C-M10", "BANJO-BOLT-M10x1D", "COMP-INSERT-1/4", "COMP-NUT-1/4"])
def test_the_law_and_the_counts_find_what_was_left_out(lost):
    """A part is taken out of a sound joint, with all that mated with it."""
    port, line = Port("p", "p", metric(gender=FEMALE)), hose(turn=90)
    if lost.startswith("COMP"):
        port, line = Port("p", "p", pipe(gender=FEMALE)), plastic()
    joint = fit_port(port, line, REAL)
    outer = [port_end(port), line_end(line)]
    assert violations([joint], outer) == ()
    number = names(joint).index(lost)
    gone = f"part {number}"
    matings = tuple(one for one in joint.matings if gone not in (one.one.owner, one.other.owner))
    parts = list(joint.parts)
    parts[number] = replace(parts[number], ends=())
    broken = replace(joint, parts=tuple(parts), matings=matings)
    assert violations([broken], outer) != ()
    assert seal_count([broken], outer).disagreements != ()


def _sealed(name, *, face=FACE, grams=20):
    return part(name, metric(), Interface(Form.FLARE_37, "-4", MALE), face, grams=grams)


def _washer(name, grams, metal="copper"):
    return part(name, FACE.complement, grams=grams, metal=metal, row=Category.WASHER)


METRIC_PORT = Port("p", "p", metric(gender=FEMALE))


def test_a_part_whose_washer_cannot_be_had_is_not_taken():
    assert names(fit_port(METRIC_PORT, hose(), Stock((_sealed("WET"),)))) == []
    plain = part("PLAIN", metric(), Interface(Form.FLARE_37, "-4", MALE), grams=99)
    assert names(fit_port(METRIC_PORT, hose(), Stock((_sealed("WET"), plain)))) == ["PLAIN"]


def test_washers_count_as_parts_and_as_mass():
    """Two light parts with a washer lose against one heavy part without, by the number of parts."""
    other = replace(_sealed("OTHER"), ends=_sealed("OTHER").ends[:2])
    stock = Stock((_sealed("WET", face=Interface(Form.O_RING, "-4", MALE), grams=1), other))
    ring = part("RING", Interface(Form.O_RING, "-4", FEMALE), grams=1, row=Category.WASHER)
    assert names(fit_port(METRIC_PORT, hose(), stock.plus(ring))) == ["OTHER"]
    heavy = Stock((_sealed("HEAVY", grams=30), _sealed("LIGHT", grams=25), _washer("W", 3)))
    assert names(fit_port(METRIC_PORT, hose(), heavy)) == ["LIGHT", "W"]


def test_the_washer_of_the_bodys_metal_is_taken_else_the_lightest():
    stock = Stock((_sealed("BODY"), _washer("HEAVY", 3), _washer("LIGHT", 2)))
    assert names(fit_port(METRIC_PORT, hose(), stock)) == ["BODY", "LIGHT"]
    like = stock.plus(_washer("LIKE", 9, metal="aluminium"))
    assert names(fit_port(METRIC_PORT, hose(), like)) == ["BODY", "LIKE"]


def test_a_chain_of_more_bodies_wins_where_it_takes_fewer_parts_with_its_washers():
    """One body with three dry rings is four parts; two bodies with none, joined dry, are two."""
    rings = [Interface(Form.O_RING, size, MALE) for size in ("-3", "-4", "-5")]
    joined = panel("-9")
    one = part("ONE", metric(), Interface(Form.FLARE_37, "-4", MALE), *rings, grams=1)
    stock = Stock(
        (
            replace(one, ends=tuple(replace(end, flow=n < 2) for n, end in enumerate(one.ends))),
            *(part(f"RING{ring.size}", ring.complement, row=Category.WASHER) for ring in rings),
            _flowing("FIRST", metric(), joined),
            _flowing("SECOND", joined.complement, Interface(Form.FLARE_37, "-4", MALE)),
        )
    )
    assert names(fit_port(METRIC_PORT, hose(), stock)) == ["FIRST", "SECOND"]


def _flowing(name, *interfaces):
    made = part(name, *interfaces)
    return replace(made, ends=tuple(replace(end, flow=True) for end in made.ends), turn=radians(0))


def test_what_a_longer_chain_would_cost_is_told_with_its_washers():
    told = reasons(fit_port(METRIC_PORT, hose(), REAL))
    assert told["BANJO-BOLT-M10x1D"] == "would need 2 leak paths and 2 parts more, with BANJO-M10x4D"
    assert told["MET-P-M10x1D"] == "has one end only: it closes what it is screwed to"
