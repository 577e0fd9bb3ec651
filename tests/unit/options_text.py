"""A small invented aircraft with an option for each kind of change, and its evaluations."""

from __future__ import annotations

from functools import cache

from firmpedal.pipeline import Evaluation, evaluate_text

TEXT = """
firmpedal: 1
aircraft: {name: Thistlemoor, gear: tailwheel, brakes: toe, landing weight: 900 lb, type certificate: no}
units: {length: in, angle: deg, force: lbf, pressure: psi, temperature: degF, mass: lb, volume: cu in}
fluid: MIL-PRF-5606
components:
  tank:
    kind: reservoir
    ports:
      out: {thread: 1/8 NPT female, faces: down, seat: [6, 0, 20]}
  cylinder:
    kind: master cylinder
    bore: 5/8
    stroke: 3/4
    rated pressure: 2000
    pedal: brake
    ports:
      inlet: {thread: 1/8 NPT female, faces: up, seat: [10, 0, 8]}
      outlet: {thread: 1/8 NPT female, faces: down, seat: [10, 0, 4]}
  caliper:
    kind: caliper
    pistons: {bore: 1-1/2, count per side: 1}
    pad gap: 0.020
    pad wear: 0.10
    floats: no
    rated pressure: 2000
    ports:
      inlet: {thread: 1/8 NPT female, faces: forward, seat: [30, 0, -20]}
pedals:
  brake: {brake: {pad: 5, arm: 2-1/2}}
bulkheads:
  floor:
    at: [10, 0, 0]
    normal: up
    thickness: 0.1
    fitting: AN832-4D
    sides: {above: {seat: [10, 0, 1]}, below: {seat: [10, 0, -1]}}
lines:
  feed: {from: tank.out, to: cylinder.inlet, made of: hose -4 PTFE braided, via: [[6, 0, 10]]}
  pedal: {from: cylinder.outlet, to: floor.above, made of: hose -4 PTFE braided, via: [[11, 0, 3]]}
  leg:
    from: floor.below
    to: caliper.inlet
    made of: tube 5052-O 1/4 x .035
    bend radius: 3/4
    via: [[10, 0, -20]]
options:
  no change: {fluid: MIL-PRF-5606}
  leg moved: {lines: {leg: {via: [[10, 0, -12], [20, 0, -20]]}}}
  leg renamed:
    lines:
      leg: removed
      shin:
        from: floor.below
        to: caliper.inlet
        made of: tube 5052-O 1/4 x .035
        bend radius: 3/4
        via: [[10, 0, -20]]
  one hose:
    bulkheads: {floor: removed}
    lines:
      pedal: removed
      leg: removed
      whole: {from: cylinder.outlet, to: caliper.inlet, made of: hose -4 PTFE braided, via: [[10, 0, -20]]}
  one tube:
    bulkheads: {floor: removed}
    lines:
      pedal: removed
      leg: removed
      whole:
        from: cylinder.outlet
        to: caliper.inlet
        made of: tube 5052-O 1/4 x .035
        bend radius: 3/4
        via: [[10, 0, -20]]
  dash 3:
    bulkheads: {floor: {fitting: AN832-3D}}
    lines:
      pedal: {made of: hose -3 PTFE braided}
      leg: {made of: tube 5052-O 3/16 x .035}
  steel leg: {lines: {leg: {made of: tube 304 annealed 1/4 x .035}}}
  own fluid:
    components:
      tank: removed
      cylinder: {ports: {inlet: {closed: yes}}}
    lines: {feed: removed}
  vented:
    components:
      tank: removed
      cylinder: {ports: {inlet: {open: a breather is in it}}}
    lines: {feed: removed}
  floor moved:
    bulkheads: {floor: {at: [12, 0, 0], sides: {above: {seat: [12, 0, 1]}, below: {seat: [12, 0, -1]}}}}
  hose swung: {lines: {pedal: {via: [[9, 0, 3]]}}}
  bigger bore: {components: {cylinder: {bore: 3/4}}}
  elbow at floor: {bulkheads: {floor: {fitting: AN833-4D}}}
  nylon:
    bulkheads: {floor: removed}
    lines:
      pedal: removed
      leg: removed
      old:
        from: cylinder.outlet
        to: caliper.inlet
        made of: plastic nylon 1/4 x .040
        via: [[10, 0, -20]]
  other nylon:
    bulkheads: {floor: removed}
    lines:
      pedal: removed
      leg: removed
      old:
        from: cylinder.outlet
        to: caliper.inlet
        made of: plastic nylon 1/4 x .040
        via: [[12, 0, -20]]
"""
OPTIONS = (
    *(
        None,
        "no change",
        "leg moved",
        "leg renamed",
        "one hose",
        "one tube",
        "dash 3",
        "steel leg",
        "own fluid",
    ),
    *("vented", "floor moved", "hose swung", "bigger bore", "elbow at floor", "nylon", "other nylon"),
)


@cache
def thistlemoor(option: str | None = None) -> Evaluation:
    return evaluate_text(TEXT, "thistlemoor.yaml", option)
