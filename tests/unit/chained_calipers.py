"""An invented aircraft with two calipers in series on each wheel, fed by one line."""

TEXT = """
firmpedal: 1
aircraft: {name: Harrowmere, gear: tailwheel, brakes: heel, landing weight: 600 kg, type certificate: no}
units: {length: mm, angle: deg, pressure: bar, force: N, volume: ml, temperature: degC, mass: kg}
fluid: MIL-PRF-5606
foot: {normal: 200, hard: 400, panic: 600}
attitudes: {parked: {nose up: 12}}
pedals:
  left_heel: {side: left, brake: {pad: 80, arm: 40}}
components:
  cylinder:
    kind: master cylinder
    side: left
    pedal: left_heel
    bore: 16
    stroke: 20
    seals: nitrile
    reservoir: built in
    capacity: 30
    air space: 30
    fill cap: [300, -150, 250]
    ports:
      outlet: {thread: 1/8 NPT female, faces: down, seat: [300, -150, 0], seat measured with: AN816-4D}
  front:
    kind: caliper
    side: left
    wheel: left_main
    pistons: {bore: 38, count per side: 1}
    pad gap: 0.4
    pad wear: 3
    floats: no
    seals: nitrile
    ports:
      inlet: {thread: 1/8 NPT female, faces: up, seat: [350, -850, -500], seat measured with: AN816-4D}
      outlet: {thread: 1/8 NPT female, faces: aft, seat: [400, -850, -540], seat measured with: AN816-4D}
  rear:
    like: front
    ports:
      inlet: {thread: 1/8 NPT female, faces: forward, seat: [500, -850, -540], seat measured with: AN816-4D}
      outlet: {thread: 1/8 NPT female, faces: down, at: [520, -850, -600], closed: yes}
bench: {bend radius: 15, end straight: 32}
lines:
  down: {from: cylinder.outlet, to: front.inlet, made of: tube 5052-O 1/4 in x .035 in,
    via: [[300, -150, -60], [350, -850, -420]]}
  bridge: {from: front.outlet, to: rear.inlet, made of: hose -4 PTFE braided}
"""
SEAT = "thread: 1/8 NPT female, faces: down, seat: [300, -150, 0], seat measured with: AN816-4D"
FACE = "thread: M10 x 1 female, faces: down, at: [300, -150, 20]"
