"""One mistake in a file is one problem: at its place, in plain words, with what may have been meant."""

# ruff: noqa: E501 - one case a line reads as a table

from __future__ import annotations

import re

import pytest
from planting import MIRROR, SMALL, only, planted, sound

from firmpedal.project import read_text
from texts import example

WORDS = [
    ("bore: 5/8", "bore: 5/8 psi", "5/8 psi", "measures pressure, and a length is wanted", "write one of in"),
    ("bore: 5/8", "bore: 5/0", "5/0", "divides by nothing", "10-1/2 in"),
    ("bore: 5/8", "bore: five", "five", "there is no number in it", "write for example"),
    ("bore: 5/8", "bore: -5/8", "-5/8", "less than nothing", "without the minus sign"),
    ("bore: 5/8", "bore: [1, 2]", "[1, 2]", "left_cylinder bore should be one number", "10-1/2 in"),
    ("bore: 5/8", "bore: {valu: 3}", "{valu", "left_cylinder bore should be one number", "unknown"),
    ("bore: 5/8", "bore: {value: 3, mark: guess}", "guess", "`guess` is not a mark", "read, measured"),
    ("bore: 5/8", "bore: {value: 3, marc: assumed}", "marc", "`marc` is not a key", "`mark`"),
    ("bore: 5/8", "bore: {value: 3, because: [x]}", "[x]", "should be a few words", "quotes"),
    ("bore: 5/8", "bore: {value: , mark: assumed}", "value: ,", "nothing is written after left_cylinder bore", "number"),
    ("bore: 5/8", "bore:", "bore:", "nothing is written after left_cylinder bore", "unknown"),
    ("bore: 5/8", "bore: ''", "''", "nothing is written after left_cylinder bore", "unknown"),
    ("bore: 5/8", "bore: ~", "bore: ~", "nothing is written after left_cylinder bore", "unknown"),
    ("bore: 5/8", "bor: 5/8", "bor: 5/8", "`bor` is not a key that left_cylinder can have", "`bore`"),
    ("    bore: 5/8\n", "", "left_cylinder:", "left_cylinder has no `bore`", "bore: unknown"),
    ("bore: 5/8", "bore: 5/8\n    wobble: 3", "wobble", "`wobble` is not a key", "rated pressure"),
    ("fluid: MIL-PRF-5606", "fluid: MIL-PRF-5605", "MIL-PRF-5605", "not a brake fluid", "choose from: MIL-PRF"),
    ("fluid: MIL-PRF-5606", "fluid: [a]", "[a]", "should be a few words", "quotes"),
    ("5052-O", "3303-O", "tube 3303-O", "`3303-O` is not a material", "`3003-O`"),
    ("PTFE braided", "PTFE braded", "hose -4", "not a kind of hose", "`PTFE braided`"),
    ("hose -4 PTFE", "hose PTFE", "hose PTFE", "the dash size is missing", "-4"),
    ("tube 5052-O 1/4 x .035", "[tube]", "[tube]", "should be a few words", "quotes"),
    ("1/8 NPT female, faces: f", "1/8 NPT, faces: f", "1/8 NPT", "does not say male or female", "1/8 NPT female"),
    ("AN822-4D", "AN822-4Q", "AN822-4Q", "`AN822-4Q` is not in the catalogue", "did you mean `AN822-4`?"),
    ("AN822-4D", "wheel", "wheel", "`wheel` is not in the catalogue", "AN816"),
    ("brakes: heel", "brakes: heal", "heal", "`heal` is not a choice for brakes", "`heel`"),
    ("brakes: heel", "brakes: [heel]", "[heel]", "brakes should be a few words", "quotes"),
    ("brakes: heel", "brakes: ''", "''", "nothing is written after brakes", "toe, heel, hand"),
    ("gear: tailwheel, ", "", "aircraft: {name", "aircraft has no `gear`", "tailwheel, nosewheel"),
    ("opposite when mirrored: yes", "opposite when mirrored: maybe", "maybe", "yes, no or unknown", "yes"),
    ("kind: caliper", "kind: calliper", "calliper", "`calliper` is not a kind of component", "`caliper`"),
    ("kind: caliper", "kind: wheel", "wheel", "`wheel` is not a kind of component", "parking valve"),
    ("kind: caliper", "kind: [caliper]", "[caliper]", "kind should be a word", "parking valve"),
    ("kind: caliper", "knd: caliper", "knd", "`knd` is not a key", "`kind`"),
    ("    kind: caliper\n", "", "left_caliper:", "left_caliper has no `kind`", "parking valve"),
    ("side: left\n    bore", "side: port\n    bore", "port", "`port` is not a choice for left_cylinder side", "centre"),
    ("firmpedal: 1\n", "", "aircraft", "the file has no `firmpedal`", "firmpedal: ..."),
    ("firmpedal: 1", "firmpedal: 7", "7", "written for version `7`", "reads version 1"),
    ("length: in,", "length: inn,", "inn", "'inn' is not a unit of length", "`in`?"),
    ("length: in,", "length: in, fractions: 64,", "64", "`64` is not a part of an inch", "16, 32"),
    ("length: in, ", "", "-1.5, 0", "left_pedal rudder aft has no unit, and 30 more like it", "`in` as the unit of length, under `units`"),
    ("count per side: 1", "count per side: [1]", "[1]", "count per side should be one number", "unknown"),
    ("normal: 60", "normal: 60 in", "60 in", "a force is wanted", "lbf"),
]  # fmt: skip

SECTIONS = [
    ("  left_cylinder:", "  left_cylinder", "left_cylinder", "`left_cylinder` has no `:` after it", "write `left_cylinder:`"),
    ("    ports:\n      outlet", "    ports\n      outlet", "ports", "`ports` has no `:` after it", "write `ports:`"),
    ("components:", "components  # all of them\n  # and more", "components", "`components` has no `:`", "write `components:`"),
    ("components:", "component:", "component:", "`component` is not a key that the file can have", "`components`"),
    ("components:", "wobble:", "wobble:", "`wobble` is not a key that the file can have", "components"),
    ("lines:", "lins:", "lins:", "`lins` is not a key", "`lines`"),
    ("states:", "state:", "state:", "`state` is not a key", "`states`"),
    ("moving:", "movng:", "movng:", "`movng` is not a key", "`moving`"),
    ("points:", "point:", "point:", "`point` is not a key", "`points`"),
    ("bulkheads:", "bulkhead:", "bulkhead:", "`bulkhead` is not a key", "`bulkheads`"),
    ("    ports:\n      outlet", "    prots:\n      outlet", "prots", "`prots` is not a key", "`ports`"),
    ("    sides:", "    side:", "side:", "`side` is not a key that left_floor", "`sides`"),
    ("aircraft: {name: Tansy, gear: tailwheel, brakes: heel}\n", "", "firmpedal", "the file has no `aircraft`", "name: ..., gear: ..."),
    ("aircraft: {name: Tansy, gear: tailwheel, brakes: heel}", "aircraft: Tansy", "Tansy", "list of keys and values", "`name: ...`"),
    ("aircraft: {name: Tansy, gear: tailwheel, brakes: heel}", "aircraft:", "aircraft:", "nothing is written after aircraft", "gear"),
    ("pistons: {bore: 1-1/2, count per side: 1}", "pistons: 3", "3", "should be a list of keys", "`bore: ...`"),
    ("pistons: {bore: 1-1/2, count per side: 1}", "pistons: [3]", "[3]", "should be a list of keys", "`bore: ...`"),
    ("pistons: {bore: 1-1/2, count per side: 1}", "pistons:", "pistons:", "nothing is written after left_caliper pistons", "bore"),
    ("    pistons: {bore: 1-1/2, count per side: 1}\n", "", "left_caliper:", "left_caliper has no `pistons`", "{bore: ..., count per side: ...}"),
    ("      above: {seat: {from: left_floor, up: 1.3}}\n", "      above: 5\n", "5", "left_floor above should be a list of keys", "`seat: ...`"),
    ("units: {length: in, angle: deg, pressure: psi, force: lbf}", "units: inches", "inches", "units should be a list of keys", "`length: ...`"),
    ("pedals:\n  left_heel: {side", "pedals:\n  - {side", "- {side", "each should have a name", "a_name"),
    ("pedals:\n  left_heel: {side: left, moves with: left_pedal, brake: {pad: 5, arm: 2-1/2}}", "pedals: 3", "3", "each should have a name", "a_name"),
    ("points:\n  left_mark: [20, -4, 1]", "points: [20, -4, 1]", "[20", "the points should have names", "a_name"),
    ("  left_wheel: {gear: {on jacks: [0, 1/2, -2]}}", "  left_wheel: 3", "3", "left_wheel should be a list of keys", "write its keys"),
    ("  left_heel:", "  left.heel:", "left.heel", "`left.heel` has a dot in it", "`left_heel`"),
    ("  left_heel:", "  unknown:", "unknown", "`unknown` cannot be a name", "another"),
    ("    side: left\n    bore", "    side: left\n    side: right\n    bore", "side: right", "`side` stands here a second time", "take one"),
]  # fmt: skip

NAMES = [
    ("moves with: left_pedal\n", "moves with: left_pedl\n", "left_pedl", "no moving thing `left_pedl`", "`left_pedal`"),
    ("pedal: left_heel", "pedal: left_hel", "left_hel", "no pedal `left_hel`", "`left_heel`"),
    ("pedal: left_heel", "pedal: {a: b}", "{a: b}", "should be a few words", "quotes"),
    ("from: left_cylinder.outlet", "from: left_cylinder.outlt", "left_cylinder.outlt", "left_cylinder has no `outlt`", "`left_cylinder.outlet`"),
    ("from: left_cylinder.outlet", "from: left_cylindr.outlet", "left_cylindr", "nothing is called `left_cylindr`", "`left_cylinder.outlet`"),
    ("from: left_cylinder.outlet", "from: left_cylinder", "left_cylinder", "alone does not say", "`left_cylinder.outlet`"),
    ("from: left_cylinder.outlet", "from: unknown", "unknown", "left_upper from has to lead somewhere", "left_cylinder.outlet"),
    ("from: left_cylinder.outlet,", "from: '',", "''", "nothing is written after left_upper from", "name a port"),
    ("from: left_cylinder.outlet, ", "", "left_upper: {to", "left_upper has no `from`", "from: left_cylinder.outlet"),
    ("to: left_floor.above, ", "", "left_upper: {from", "left_upper has no `to`", "to: left_cylinder.outlet"),
    ("to: left_floor.above", "to: left_cylinder.outlet", "left_cylinder.outlet", "starts and ends at", "a tee"),
    ("to: left_floor.above", "to: left_upper.from", "left_upper.from", "leads to itself", "what it leads to"),
    ("  left_caliper:", "  left_calliper:", "left_caliper.inlet", "nothing is called `left_caliper`", "`left_calliper.inlet`"),
    ("left_upper:", "left_floor:", "left_floor:", "also the name of one of the bulkheads", "another name"),
    ("outlet: {thread", "outlt: {thread", "left_cylinder.outlet", "left_cylinder has no `outlet`", "left_cylinder.outlt"),
]  # fmt: skip

PLACES = [
    ("{from: left_mark, down: 4}", "{from: left_mrk, down: 4}", "left_mrk", "no place called `left_mrk`", "`left_mark`"),
    ("{from: left_mark, down: 4}", "{from: left_mark, dwn: 4}", "dwn", "`dwn` is not a way to go", "`down`"),
    ("{from: left_mark, down: 4}", "{from: left_mark, down: deep}", "deep", "no number in it", "write for example"),
    ("{from: left_mark, down: 4}", "{down: 4}", "{down", "should say where it starts from", "from: a_place"),
    ("{from: left_mark, down: 4}", "{}", "{}", "should say where it starts from", "from: a_place"),
    ("{from: left_mark, down: 4}", "[1, 2]", "[1, 2]", "three numbers, and there are 2", "[aft, right, up]"),
    ("{from: left_mark, down: 4}", "[1, 2, x]", "x]", "left_lower via 1 up: 'x'", "write for example"),
    ("{from: left_mark, down: 4}", "7 9 3", "7 9 3", "should be a point", "[aft, right, up]"),
    ("{from: left_mark, down: 4}", "{mirror of: left_mark, up: 3}", "up: 3", "`up` is not a way to go", "mirror of"),
    ("[{from: left_mark, down: 4}, [9, -12, -5]]", "9", "9", "left_lower via should be a list", "[[7.0"),
    ("left_mark: [20, -4, 1]", "left_mark: {from: left_mark}", "left_mark}", "hangs on itself", "in numbers"),
    ("faces: forward", "faces: forwards", "forwards", "`forwards` is not a direction", "`forward`"),
    ("faces: forward", "faces: forward and aft", "forward and aft", "points nowhere", "[1, 0, -1]"),
    ("faces: forward", "faces: [0, 0, 0]", "[0, 0", "points nowhere", "[1, 0, -1]"),
    ("faces: forward", "faces: [1, 0]", "[1, 0]", "should be a direction", "[1, 0, -1]"),
    ("faces: forward", "faces: {way: up}", "{way", "should be a direction", "[1, 0, -1]"),
    ("faces: forward", "faces: ''", "''", "nothing is written", "[1, 0, -1]"),
    ("gear: {on jacks", "gaer: {on jacks", "gaer", "there is no state `gaer`", "`gear`"),
    ("{on jacks: [0", "{on jack: [0", "on jack:", "`on jack` is not a position of gear", "`on jacks`"),
    ("gear: {on jacks: [0, 1/2, -2]}", "gear: [0, 1, 2]", "[0, 1", "at which position of gear", "on jacks"),
    ("rudder: [-1.5, 0, 0]", "rudder: {down: [0, 0, 1]}", "down: [0", "rudder has no position `down`", "vector"),
    ("rudder: [-1.5, 0, 0]", "rudder: far", "far", "left_pedal rudder should be a movement", "vector"),
    ("rudder: [-1.5, 0, 0]", "rudder: [1, 2]", "[1, 2]", "left_pedal rudder should be a movement", "vector"),
    ("rudder: [-1.5, 0, 0]", "rudder: {about: [1, 2, 3], axis: up}", "{about", "has no `swing`", "swing: +/- 17"),
    ("rudder: [-1.5, 0, 0]", "rudder: {about: [1, 2, 3], axs: up, swing: 3}", "axs", "`axs` is not a key that a swing", "`axis`"),
    ("rudder: [-1.5, 0, 0]", "rudder: {about: [1, 2, 3], axis: up, swing: -3 to 17}", "-3 to 17", "one angle", "+/- 17"),
    ("{from: -1, to: 1, opp", "{from: 1, to: -1, opp", "-1, opp", "rudder ends before it begins", "smaller end"),
    ("{from: -1, to: 1, opp", "{from: -1, to: 1, measured at: far, opp", "far", "no number between", "measured at: 0"),
    ("on jacks]}", "on jacks], measured at: jacked}", "jacked", "`jacked` is not a position of gear", "on wheels"),
    ("on jacks]}", "on jacks], from: 1}", "{values", "a range or a list", "take"),
    ("moves with: left_wheel", "moves with: left_wheel\n    measured in: {gear: up}", "up", "`up` is not a position", "on jacks"),
    ("moves with: left_wheel", "moves with: left_wheel\n    measured in: {gaer: up}", "gaer", "there is no state `gaer`", "`gear`"),
    ("moves with: left_wheel", "moves with: left_wheel\n    measured in: up", "up", "should say the state", "gear: on wheels"),
    ("left_wheel: {gear", "left_wheel: {with: left_wheel, gear", "left_wheel, gear", "carried by itself", "take one"),
]  # fmt: skip


ALL = [*WORDS, *SECTIONS, *NAMES, *PLACES]
# Where a mistake takes a name of the mirror list out of the file, the list has a mistake of its own.
MIRRORED = [
    case
    for case in ALL
    if all(f" {name.strip()}:" in planted(case[0], case[1]) for name in MIRROR[9:-2].split(","))
    and case[1] != "wobble:"
    and "left_floor:" not in case[1]
]


@pytest.mark.parametrize(("old", "new", "stands", "message", "suggestion"), ALL)
def test_one_mistake_is_one_problem(old, new, stands, message, suggestion):
    found = only(planted(old, new))
    assert found.stands.startswith(stands)
    assert message in found.message
    assert suggestion in found.suggestion


@pytest.mark.parametrize(("old", "new", "stands", "message", "suggestion"), MIRRORED)
def test_a_mistake_in_a_mirrored_thing_is_told_once(old, new, stands, message, suggestion):
    found = only(planted(old, new, MIRROR))
    assert found.stands.startswith(stands)
    assert message in found.message
    assert suggestion in found.suggestion


def test_the_small_aircraft_is_sound_with_and_without_its_other_side():
    assert len(sound(SMALL).aircraft.lines) == 2
    assert len(sound(SMALL + MIRROR).aircraft.lines) == 4


@pytest.mark.parametrize("name", ["brindlewick", "fennimoss", "oatmere"])
def test_every_key_over_others_that_lost_its_colon_is_found_on_its_own_line(name):
    rows = example(name).split("\n")
    keys = [n for n, row in enumerate(rows) if re.match(r" *[A-Za-z][\w ]*:\s*(#.*)?$", row)]
    for n in keys:
        broken = [*rows[:n], rows[n].replace(":", "", 1), *rows[n + 1 :]]
        (problem,) = read_text("\n".join(broken), "a.yaml").problems
        assert problem.span.line == n + 1
        assert "has no `:` after it" in problem.message
