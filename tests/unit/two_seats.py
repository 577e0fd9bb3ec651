"""A small aircraft with two seats in series, a shared reservoir and a parking valve, all as it should be."""

from __future__ import annotations

from firmpedal.pipeline import evaluate_text

HOSE = "made of: hose -4 PTFE braided"


def _cylinder(name: str, side: str, aft: int, up: int) -> str:
    return f"""\
  {name}:
    kind: master cylinder
    side: {side}
    bore: 5/8
    stroke: 2
    pedal: {name}_pedal
    seals when pressed: no
    ports:
      inlet: {{thread: 1/8 NPT female, faces: up, seat: [{aft}, 0, {up}]}}
      outlet: {{thread: 1/8 NPT female, faces: down, seat: [{aft}, 0, {up - 2}]}}
"""


def _caliper(name: str, side: str) -> str:
    return f"""\
  {name}:
    kind: caliper
    side: {side}
    pistons: {{bore: 1-1/2, count per side: 1}}
    floats: no
    ports: {{inlet: {{thread: 1/8 NPT female, faces: up, seat: [60, 0, -20]}}}}
"""


def _side(end: str, first: str, second: str) -> str:
    return f"""\
  {end}_feed: {{from: pot.{end}, to: {second}.inlet, {HOSE}}}
  {end}_cross: {{from: {second}.outlet, to: {first}.inlet, {HOSE}}}
  {end}_press: {{from: {first}.outlet, to: valve.{end}_in, {HOSE}}}
  {end}_run: {{from: valve.{end}_out, to: {end}_wheel.inlet, {HOSE}}}
"""


HEAD = """\
firmpedal: 1
aircraft: {name: Sedgemoor, gear: nosewheel, brakes: toe, landing weight: 900 lb, type certificate: no}
units: {length: in, angle: deg, force: lbf, pressure: psi, temperature: degF}
fluid: MIL-PRF-5606
"""
TWO_SEATS = f"""\
{HEAD}components:
  pot:
    kind: reservoir
    ports:
      red: {{thread: 1/8 NPT female, faces: down, seat: [0, 0, 24]}}
      green: {{thread: 1/8 NPT female, faces: down, seat: [0, 1, 24]}}
{_cylinder("alder", "left", 20, 10)}{_cylinder("birch", "right", 20, 10)}\
{_cylinder("cedar", "left", 10, 20)}{_cylinder("elder", "right", 10, 20)}\
  valve:
    kind: parking valve
    stopped open: yes
    reachable strapped in: yes
    ways: [[red_in, red_out], [green_in, green_out]]
    ports:
      red_in: {{thread: 1/8 NPT female, faces: up, seat: [40, 0, -4]}}
      red_out: {{thread: 1/8 NPT female, faces: down, seat: [40, 0, -6]}}
      green_in: {{thread: 1/8 NPT female, faces: up, seat: [40, 2, -4]}}
      green_out: {{thread: 1/8 NPT female, faces: down, seat: [40, 2, -6]}}
{_caliper("red_wheel", "left")}{_caliper("green_wheel", "right")}\
pedals:
  alder_pedal: {{side: left, seat: pilot, brake: {{pad: 5, arm: 2-1/2}}}}
  birch_pedal: {{side: right, seat: pilot, brake: {{pad: 5, arm: 2-1/2}}}}
  cedar_pedal: {{side: left, seat: copilot, brake: {{pad: 5, arm: 2-1/2}}}}
  elder_pedal: {{side: right, seat: copilot, brake: {{pad: 5, arm: 2-1/2}}}}
lines:
{_side("red", "alder", "cedar")}{_side("green", "birch", "elder")}"""

USUAL = {
    ("CAUTION", "parking-valve-traps-heat", "components.valve"),
    ("NOTE", "one-leak-costs-all-wheels", "components.pot"),
}
RULES = {
    "sides-crossed",
    "seat-order-wrong",
    "no-fluid-supply",
    "no-release-path",
    "held-by-the-other-seat",
    "series-capability-unknown",
    "parking-valve-not-after-both-seats",
    "parking-valve-without-stop",
    "parking-valve-traps-heat",
    "one-leak-costs-all-wheels",
}


def planted(*edits: tuple[str, str]) -> str:
    """The aircraft with some pieces written otherwise, each of which stands in it once."""
    text = TWO_SEATS
    for old, new in edits:
        assert text.count(old) == 1, (text.count(old), old)
        text = text.replace(old, new)
    return text


def swapped(one: str, other: str) -> tuple[tuple[str, str], ...]:
    """Edits that swap two connections, each of which stands in the file once."""
    return ((one, "nowhere"), (other, one), ("nowhere", other))


def outcomes(text: str):
    """What the rules of the circuit say, findings first."""
    evaluation = evaluate_text(text, "text")
    return [item for item in (*evaluation.findings, *evaluation.not_shown) if item.rule in RULES]


def told(text: str) -> set[tuple[str, str, str]]:
    """The same as level, rule and place, without what is always so."""
    found = {(str(getattr(item, "level", "?")), item.rule, item.place) for item in outcomes(text)}
    assert found >= USUAL
    return found - USUAL
