"""The pieces of text that a first file is made of; what stands in <brackets> is filled in."""

from __future__ import annotations

HEAD = """\
# A first file. Whatever says `unknown` is still to be measured, looked up or asked; put the figure in its
# place. What says `mark: assumed` is only supposed: look, and write what it is in the place of the brackets.
# The measuring form is the list of it on paper, with a box for each.
#
# Points are [aft, right, up] from the datum below: forward, left and down are minus. Or go by tape from
# a place that has a name: {from: left_floor.below, aft: 2, down: 3}. Measure the left side; the right one
# is its mirror image as long as it stands on the list at the end.
# Measure on wheels, pedals neutral, pads new. `about 6` is an estimate, `5 +/- 1/8` a tolerance.
firmpedal: 1

aircraft:
  name: <name>
  gear: <gear>
  brakes: <brakes>
  landing weight: unknown
  type certificate: unknown          # if yes, the maker's approved data decide

units: <units>

datum:                               # your three zeros in words: change them if others are easier to reach
  x zero: aft face of the firewall
  y zero: aircraft centreline
  z zero: top of the cabin floor

fluid: unknown                       # by its specification, such as MIL-PRF-5606: on the can or the placard

foot: {normal: <normal>, hard: <hard>, panic: <panic>}   # usual figures; change them if you know better
"""

STATES = """\
# What moves other things.<way>
states:
<rudder>  pads: {values: [new, worn], measured at: new}
  gear: {values: [on wheels, on jacks], measured at: on wheels}

attitudes:
  parked: {nose up: unknown}         # a level on the cabin floor as it stands; nose down is minus

moving:
<pedals>  left_wheel:
    gear: {on jacks: unknown}        # the axle's way [aft, right, up] as the weight comes off
  left_caliper_float:
    with: left_wheel
    pads: {worn: unknown}            # how far the caliper slides as the pads wear, such as [0, 1/8, 0]
"""
RUDDER = "  rudder: {from: -1, to: 1, measured at: 0, opposite when mirrored: yes}\n"
SWING = """\
  <name>:
    # Full left rudder against neutral, measured at the cylinder's port; or a swing: see docs/file.md
    rudder: unknown                  # [aft, right, up], or {about: [..], axis: left, swing: +/- 15 deg}
"""

OTHER_SWING = """\
  right_pedals:
    rudder: unknown                  # full left rudder too: these come aft
"""

PEDAL = """\
  <name>:
    side: <side>
<seat><moves>    brake:
      pad: unknown                   # from the lever's pivot to where it is pushed, square to the push
      arm: unknown                   # from the same pivot to the cylinder's rod, square to the rod
"""
OTHER_PEDAL = """\
  <name>: {like: <first>, side: right, moves with: right_pedals}
"""

CYLINDER = """\
  <name>:
    kind: master cylinder
    side: <side>
    pedal: <pedal>
<moves>    bore: unknown                    # cast or stamped on it, or from its leaflet
    stroke: unknown                  # all of it, from its leaflet, or pushed by hand with the port open
    rated pressure: unknown          # from its leaflet
    seals: unknown                   # nitrile, fluorocarbon or ethylene propylene: leaflet or maker
<supply>    ports:
<inlet>      outlet:
        thread: {value: 1/8 NPT female, mark: assumed}   # compare with a plug of known thread
        faces: unknown               # a word or two, such as forward or aft and down
        seat: unknown                # the cone of a straight nipple screwed in by hand
        seat measured with: AN816-4D
"""
OTHER_CYLINDER = """\
  <name>:
    like: <first>   # of the same make; where it is and how it stands is its own
    side: right
    pedal: <pedal>
    moves with: right_pedals
<cap>    ports:
<inlet>      outlet: {faces: unknown, seat: unknown}
"""
OTHER_CAP = "    fill cap: unknown\n"
OTHER_INLET = "      inlet: {faces: unknown, seat: unknown}\n"
BUILT_IN = """\
    reservoir: built in
    capacity: unknown                # what it gives from its full to its low mark, from its leaflet
    air space: unknown               # free above the full mark
    fill cap: unknown                # where fluid would spill
"""
IN_SERIES = """\
    seals when pressed: unknown      # no, if the other seat still gets through while this one is held
    feet add up: unknown             # no, if with both seats pressing the harder foot alone counts
"""
INLET = """\
      inlet:
        thread: {value: 1/8 NPT female, mark: assumed}   # compare with a plug of known thread
        faces: unknown
        seat: unknown                # the cone of a straight nipple screwed in by hand
        seat measured with: AN816-4D
"""

RESERVOIR = """\
  reservoir:
    kind: reservoir
    capacity: unknown                # from its full to its low mark: fill one to see
    air space: unknown               # free above the full mark
    fill cap: unknown                # where fluid would spill
    ports:
<ports>"""

VALVE = """\
  valve:
    kind: parking valve
    ways: <ways>
    stopped open: unknown            # yes, if something holds it fully open in flight
    reachable strapped in: unknown   # try it, belted
    rated pressure: unknown          # from its leaflet
    seals: unknown                   # nitrile, fluorocarbon or ethylene propylene: leaflet or maker
    ports:
<ports>"""

PORT = """\
      <name>:
        thread: {value: 1/8 NPT female, mark: assumed}   # compare with a plug of known thread
        faces: unknown
        seat: unknown                # the cone of a straight nipple screwed in by hand
        seat measured with: AN816-4D
"""

CALIPER = """\
  left_caliper:
    kind: caliper
    side: left
    pistons:
      bore: unknown                  # from its leaflet, or a caliper gauge on a piston pushed out a little
      count per side: unknown        # pistons on one side of the disc
    pad gap: unknown                 # feeler gauges: all that the pads travel before both touch
    pad wear: unknown                # new thickness of one lining less the least its maker allows
    floats: unknown                  # yes, if it slides on pins
    moves with: left_caliper_float
    body: unknown                    # aluminium, magnesium, steel, ...
    rated pressure: unknown          # from its leaflet
    seals: unknown                   # nitrile, fluorocarbon or ethylene propylene: leaflet or maker
    ports:
      inlet:
        thread: {value: 1/8 NPT female, mark: assumed}   # compare with a plug of known thread
        faces: unknown
        seat: unknown                # plumb line from the cone of a straight nipple to the floor
        seat measured with: AN816-4D
      bleeder:
        thread: {value: 1/8 NPT female, mark: assumed}   # compare with a plug of known thread
        faces: unknown
        at: unknown                  # the middle of its thread's face
        open: the bleed screw is in it
"""

FITTING = """\
  <name>:                      # <words>
    at: unknown                      # the middle of the hole
    normal: unknown                  # which way the panel or bracket looks, such as up
    thickness: unknown               # with its doublers
    material: unknown                # aluminium, steel, plywood, sandwich, ...
    form: <form>
<moves>    sides:
      <first>: {seat: unknown}       # where a line's end will sit: the cone
      <second>: {seat: unknown}
"""
TEE = """\
  tee:                               # one line comes, two go to the wheels; a fitting on a bracket
    through panel: no
    sides:
      from_lever: {seat: unknown}
      left_run: {seat: unknown}
      right_run: {seat: unknown}
"""

WHEELS = """\
wheels:
  left_main:
    caliper: left_caliper
    lowest structure: unknown        # of leg, axle or bracket at the wheel; not the tyre
    foremost structure: unknown

keep clear of:
  left_disc:
    kind: disc
    where: {disc: unknown, axis: right, radius: unknown, thickness: unknown}   # its middle, tape, feeler
    moves with: left_wheel

zones:
  left_brake_heat:                   # a ball round the brake: its middle, and the disc and a hand's breadth
    where: {ball: unknown, radius: unknown}
    heat: brake
    temperature: unknown             # a heat strip at the line's last fitting, after a hard taxi

bench:
  bend radius: unknown               # of your bender, to the tube's middle: stamped on it
"""

MIRROR = "# What stands a second time on the right, seen in a mirror.\n"
NOT_MIRRORED = """\
# Not the pedals, their cylinders and what leads from them: the middle of the aircraft is not between the two
# pedals of one seat, so each is measured where it is.
"""

LINES_HEAD = """\
# Corners: once a route is chosen add `via:` with its corners in order, the crossing of two straights each.
# A line without them is taken as straight from end to end.
lines:
"""
LINE = """\
  <name>: {from: <start>, to: <finish>, made of: <stock>}
"""
