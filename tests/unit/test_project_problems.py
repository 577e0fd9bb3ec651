"""Each thing that can be wrong in a file: one problem, at its place, with what to do about it."""

from __future__ import annotations

import pytest
from project_texts import SOUND, spoiled

from firmpedal.project import read_text

BORE = "bore: 0.625"
SEAT = "seat: [13.1, -7.5, 3]"
FACES = "faces: forward"
PEDAL = "pedal: left_brake"
PORTS = "    ports:\n      inlet: {thread: 1/8 NPT female, faces: right, seat: [9.4, -32.6, -31.4]}\n"
MOVES = "moves with: left_pedal_swing"

# name: (old words, new words), (line, column), piece of the message, piece of the suggestion
SPOILED = {
    "wrong unit": ((BORE, "bore: 5 psi"), (14, 11), "'psi' measures pressure", "in, ft, mm"),
    "unknown unit": ((BORE, "bore: 5 furlong"), (14, 11), "'furlong' is not a unit of length", "in, ft, mm"),
    "no number": ((BORE, "bore: wide"), (14, 11), "there is no number in it", "9-1/4 in"),
    "list for a number": ((BORE, "bore: [1, 2]"), (14, 11), "left_cylinder bore should be one number", ""),
    "unknown key": ((BORE, "bor: 0.625"), (14, 5), "`bor` is not a key that left_cylinder", "`bore`?"),
    "far key": ((BORE, BORE + "\n    colour: red"), (15, 5), "`colour` is not a key", "choose one of: kind"),
    "key of the file": (("fluid:", "fluids:"), (4, 1), "not a key that the file can have", "`fluid`?"),
    "number left out": ((BORE, "bore:"), (14, 5), "nothing is written after left_cylinder bore", "`unknown`"),
    "name left out": ((PEDAL, "pedal:"), (16, 5), "nothing is written after left_cylinder pedal", "line out"),
    "from left out": (("from: left_cylinder.outlet", "from:"), (30, 5), "nothing is written after", ""),
    "direction left out": ((FACES, "faces: "), (19, 40), "nothing is written after", "forward"),
    "absent number": ((f"    {BORE}\n", ""), (11, 3), "left_cylinder has no `bore`", "`bore: unknown`"),
    "absent choice": ((" gear: tailwheel,", ""), (2, 1), "aircraft has no `gear`", "tailwheel, nosewheel"),
    "absent kind": (("    kind: caliper\n", ""), (20, 3), "left_caliper has no `kind`", "reservoir"),
    "absent ports": ((PORTS, ""), (20, 3), "left_caliper has no `ports`", "`ports: ...`"),
    "absent group": (("    pistons: {bore: 1.5, count per side: 1}\n", ""), (20, 3), "has no `pistons`", ""),
    "absent stock": (("    made of: hose -4 PTFE braided\n", ""), (29, 3), "has no `made of`", "add a line"),
    "absent from": (
        ("    from: left_cylinder.outlet\n", ""),
        (29, 3),
        "left_line has no `from`",
        "add a line",
    ),
    "absent version": (("firmpedal: 1\n", ""), (1, 1), "the file has no `firmpedal`", "add a line"),
    "absent aircraft": (
        ("aircraft: {name: Test Bed, gear: tailwheel, brakes: toe}\n", ""),
        (1, 1),
        "the file has no `aircraft`",
        "add a line `aircraft: {name: ..., gear: ..., brakes: ...}`",
    ),
    "another version": (("firmpedal: 1", "firmpedal: 7"), (1, 12), "version `7`", "reads version 1"),
    "dangling from": (
        ("from: left_cylinder.outlet", "from: left_cylinder.outlt"),
        (30, 11),
        "left_cylinder has no `outlt`",
        "did you mean `left_cylinder.outlet`?",
    ),
    "dangling to": (
        ("left_caliper.inlet", "left_calipr.inlet"),
        (31, 9),
        "nothing is called `left_calipr`",
        "left_caliper.inlet",
    ),
    "from nowhere": (
        ("from: left_cylinder.outlet", "from: unknown"),
        (30, 11),
        "left_line from has to lead somewhere",
        "name a port",
    ),
    "dangling pedal": ((PEDAL, "pedal: left_brak"), (16, 12), "no pedal `left_brak`", "`left_brake`?"),
    "dangling moves with": (
        (MOVES, "moves with: swing"),
        (17, 17),
        "no moving thing `swing`",
        "left_pedal_swing",
    ),
    "dangling with": (
        ("  left_pedal_swing:\n", "  left_pedal_swing:\n    with: nobody\n"),
        (9, 11),
        "no moving thing `nobody`",
        "left_pedal_swing",
    ),
    "text for a point": ((SEAT, "seat: 13.1 -7.5 3"), (19, 62), "seat should be a point", "[aft, right, up]"),
    "no name of a place": ((SEAT, "seat: here"), (19, 62), "no place called `here`", "left_caliper.inlet"),
    "two numbers for a point": (
        (SEAT, "seat: [1, 2]"),
        (19, 62),
        "should be three numbers",
        "[aft, right, up]",
    ),
    "unknown place": ((SEAT, "seat: {from: b, aft: 1}"), (19, 69), "there is no place called `b`", ""),
    "unknown way": ((SEAT, "seat: {from: left_caliper.inlet, uup: 1}"), (19, 89), "not a way to go", "`up`?"),
    "list for text": (("name: Test Bed", "name: [Test, Bed]"), (2, 18), "name should be a few words", ""),
    "keys for text": (("name: Test Bed", "name: {a: b}"), (2, 18), "name should be a few words", ""),
    "text for a thing": (
        ("components:\n", "components:\n  x: none\n"),
        (11, 6),
        "x should be a list of keys",
        "",
    ),
    "text for a group": (
        ("brake: {pad: 5, arm: 2.5}", "brake: 2"),
        (27, 35),
        "should be a list of keys and values",
        "",
    ),
    "list of things": (("  left_brake: {", "  - {"), (27, 3), "pedals: each should have a name", ""),
    "wrong mark": (
        (BORE, "bore: {value: 1, mark: assumd}"),
        (14, 28),
        "`assumd` is not a mark",
        "`assumed`?",
    ),
    "wrong mark of a point": (
        (SEAT, "seat: {value: [1, 2, 3], mark: assumd}"),
        (19, 87),
        "`assumd` is not a mark",
        "`assumed`?",
    ),
    "wrong key beside a mark": (
        (FACES, "faces: {value: forward, mrk: assumed}"),
        (19, 64),
        "`mrk` is not a key",
        "`mark`?",
    ),
    "unknown state": (("    rudder: {about", "    ruder: {about"), (9, 5), "no state `ruder`", "`rudder`?"),
    "half a swing": (
        (", axis: left", ""),
        (9, 13),
        "the swing left_pedal_swing rudder has no `axis`",
        "+/- 17 deg",
    ),
    "named position of a range": (
        ("rudder: {about: [15, -7.5, 1], axis: left, swing: +/- 17}", "rudder: {full: [1, 0, 0]}"),
        (9, 14),
        "rudder has no position `full`",
        "",
    ),
    "measured in words": ((MOVES, "measured in: wheels"), (17, 18), "should say the state with its keys", ""),
    "measured in a state": ((MOVES, "measured in: {ruder: 0}"), (17, 19), "no state `ruder`", "`rudder`?"),
    "measured in no number": (
        (MOVES, "measured in: {rudder: left}"),
        (17, 27),
        "`left` is not a number",
        "0",
    ),
    "measured at no number": (
        ("measured at: 0", "measured at: rest"),
        (6, 42),
        "`rest` is no number between the ends",
        "0",
    ),
    "unknown fluid": (
        ("MIL-PRF-5606", "MIL-PRF-5607"),
        (4, 8),
        "not a brake fluid",
        "choose from: MIL-PRF-5606, ",
    ),
    "unknown alloy": (
        ("hose -4 PTFE braided", "tube 5053-O 1/4 x .035"),
        (32, 14),
        "`5053-O` is not a material",
        "did you mean `5052-O`?",
    ),
    "no stock": (("hose -4 PTFE braided", "rope"), (32, 14), "gives no outside diameter", "tube 5052-O"),
    "unknown thread": (
        ("1/8 NPT female, faces: f", "1/8 NPX female, faces: f"),
        (19, 24),
        "not a thread",
        "NPT",
    ),
    "thread without gender": (
        ("1/8 NPT female, faces: f", "1/8 NPT, faces: f"),
        (19, 24),
        "does not say male or female",
        "NPT",
    ),
    "unknown kind": (("kind: caliper", "kind: calliper"), (21, 11), "not a kind of component", "`caliper`?"),
    "unknown choice": (
        ("gear: tailwheel", "gear: tailweel"),
        (2, 34),
        "not a choice for gear",
        "`tailwheel`?",
    ),
    "unknown direction": ((FACES, "faces: forwrd"), (19, 47), "`forwrd` is not a direction", "`forward`?"),
    **{
        f"{word} for a direction": ((FACES, f"faces: {word}"), (19, 47), f"`{word}` is not a direction", hint)
        for hint, words in {
            "write `forward`": ("front", "Front", "fore", "nose"),
            "write `aft`": ("back", "rear", "rearwards", "astern"),
            "write `up`": ("top", "upwards", "above"),
            "write `down`": ("bottom", "downward", "below"),
            "write `left`": ("port",),
            "write `right`": ("starboard",),
            "write `right` for what is on the left side, `left` for": ("in", "inboard", "inwards"),
            "write `left` for what is on the left side, `right` for": ("out", "outboard", "outside"),
        }.items()
        for word in words
    },
    "no direction": ((FACES, "faces: [0, 0, 0]"), (19, 47), "points nowhere", "[1, 0, -1]"),
    "there and back": ((FACES, "faces: forward and aft"), (19, 47), "points nowhere", "[1, 0, -1]"),
    "unit of the file": (("pressure: psi", "pressure: psy"), (3, 31), "'psy' is not a unit", "psi"),
    "length unit of the file": (("length: in", "length: inn"), (3, 17), "'inn' is not a unit", "in"),
    "tab before": ((f"    {BORE}", f"\t{BORE}"), (14, 1), "this line begins with a tab", ""),
    "merge of a text": (
        (f"    {BORE}\n", f"    {BORE}\n    <<: bore\n"),
        (15, 5),
        "`<<` takes over the keys",
        "like",
    ),
    "tag": ((BORE, "bore: !!python/object:os.system x"), (14, 11), "a tag", ""),
    "no anchor": ((BORE, "bore: *x"), (14, 11), "this alias (*) names nothing", ""),
    "swap without like": ((BORE, BORE + "\n    swap: {a: b}"), (15, 5), "`swap` goes with `like`", ""),
    "list as a key": (("components:\n", "? [a, b]\n: 1\ncomponents:\n"), (10, 3), "not a list", ""),
    "number out of reach": ((BORE, "bore: 1e999"), (14, 11), "measured with such a number", ""),
    "less than nothing": ((BORE, "bore: -0.625"), (14, 11), "bore cannot be less than nothing", ""),
    "marked less than nothing": (
        (BORE, "bore: {value: -1, mark: assumed}"),
        (14, 19),
        "bore cannot be less than nothing",
        "",
    ),
    "very long number": ((BORE, "bore: " + "9" * 5000), (14, 11), "measured with such a number", ""),
}

# Written below the sound text, whose last lines are those of the one line.
ADDED = {
    "via as text": ("    via: far\n", (33, 10), "via should be a list", "[[7.0"),
    "one point for a list": (
        "    via: [1, 2, 3]\n",
        (33, 10),
        "via should be a list of points",
        "[[7.0",
    ),
    "clamps": ("    clamps: lots\n", (33, 13), "`lots` is not a choice", "propose, none"),
    "clamps as keys": ("    clamps: {a: 1}\n", (33, 13), "left_line clamps", ""),
    "section left out": ("bench:\n", (33, 1), "nothing is written after bench", "take the line out"),
    "things left out": ("panels:\n", (33, 1), "nothing is written after panels", "take the line out"),
    "zone line": (
        "zones:\n  z: {where: {line: left_lin, from: 1, to: 2}}\n",
        (34, 21),
        "there is no line `left_lin`",
        "`left_line`?",
    ),
    "panel passage": (
        "panels:\n  p: {passes: {left_lin: {hole: 1}}}\n",
        (34, 16),
        "no line `left_lin`",
        "left_line",
    ),
    "shape": ("zones:\n  z: {where: {bx: 1}}\n", (34, 15), "`bx` is not a shape", "`box`?"),
    "no shape": ("zones:\n  z: {where: {}}\n", (34, 14), "z should say a shape", "ball"),
    "shape as text": ("zones:\n  z: {where: here}\n", (34, 14), "z should say a shape", "ball"),
    "half a box": ("zones:\n  z: {where: {box: [[1, 2, 3]]}}\n", (34, 20), "two opposite corners", "box"),
    "ball without size": ("zones:\n  z: {where: {ball: [1, 2, 3]}}\n", (34, 21), "a ball needs a radius", ""),
    "zone nowhere": ("zones:\n  z: {heat: brake}\n", (34, 3), "z has no `where`", "`where: unknown`"),
    "bulkhead without sides": (
        "bulkheads:\n  b: {at: [1, 2, 3]}\n",
        (34, 3),
        "b has no `sides`",
        "add a line",
    ),
    "accepted without reason": ("accepted:\n  - {rule: x, at: y}\n", (34, 5), "has no `reason`", ""),
    "accepted as keys": ("accepted: {rule: x, at: y}\n", (33, 11), "should be a list", ""),
    "dot in a name": ("panels:\n  a.b: {thickness: 1}\n", (34, 3), "`a.b` has a dot in it", ""),
    "like nothing": (
        "  other: {like: left_lin}\n",
        (33, 17),
        "there is no `left_lin` among the lines",
        "`left_line`?",
    ),
    "like itself": ("  other: {like: other}\n", (33, 17), "`other` is like itself", ""),
    "like in a circle": ("  one: {like: two}\n  two: {like: one}\n", (34, 15), "`one` is like itself", ""),
    "like a list": ("  other: {like: [left_line]}\n", (33, 17), "name one of the lines here", ""),
    "mirror of nothing": (
        "  other: {mirror of: left_lin}\n",
        (33, 22),
        "no `left_lin` among the lines",
        "`left_line`?",
    ),
    "mirror of itself": ("  other: {mirror of: other}\n", (33, 22), "`other` is like itself", ""),
    "mirror of with a shift": (
        "  x: {mirror of: left_line, shift: {up: 1}}\n",
        (33, 29),
        "goes with `like`",
        "",
    ),
    "swap as text": (
        "  other: {like: left_line, swap: left}\n",
        (33, 34),
        "a swap is two words",
        "{left: right}",
    ),
    "swap of lists": (
        "  other: {like: left_line, swap: {left: [right]}}\n",
        (33, 34),
        "a swap is two words",
        "",
    ),
    "swap of nothing": ("  other: {like: left_line, swap: {}}\n", (33, 34), "a swap is two words", ""),
    "shift as text": (
        "  other: {like: left_line, shift: 5}\n",
        (33, 35),
        "a shift is a way and a length",
        "{right: 7}",
    ),
    "shift to nowhere": (
        "  x: {like: left_line, shift: {rigt: 5}}\n",
        (33, 32),
        "not a way to go",
        "`right`?",
    ),
    "mirror a thing without a side": (
        "mirror: [rudder_thing]\n",
        (33, 10),
        "neither left nor right",
        "mirror: {",
    ),
    "mirror nothing": ("mirror: [left_lin]\n", (33, 10), "nothing is called `left_lin`", "`left_line`?"),
    "mirror of lists": ("mirror: [[left_line]]\n", (33, 10), "a name should stand here", "mirror: ["),
    "mirror left out": ("mirror:\n", (33, 1), "nothing is written after mirror", "mirror: ["),
    "point on itself": ("points:\n  a: {from: a, aft: 1}\n", (34, 13), "`a` hangs on itself", ""),
    "points in a circle": (
        "points:\n  a: {from: b, aft: 1}\n  b: {from: a, up: 1}\n",
        (35, 13),
        "hangs on itself",
        "",
    ),
    "options as text": ("options: 5\n", (33, 10), "the options should have names", ""),
    "an option as text": ("options:\n  rigid: 5\n", (34, 10), "option `rigid` should be a list of keys", ""),
    "a second document": ("---\nfirmpedal: 1\n", (33, 1), "a second document", ""),
}

BOMB = "a0: &a0 [x, x, x, x, x, x, x, x, x]\n" + "".join(
    f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 9)}]\n" for n in range(1, 9)
)

WHOLE = {
    "empty": ("", (1, 1), "nothing is written in this file", "begin a new one"),
    "blank": ("  \n\n", (1, 1), "nothing is written in this file", "begin a new one"),
    "only comments": ("# nothing\n# here\n", (1, 1), "nothing is written in this file", "begin a new one"),
    "a list": ("- a\n- b\n", (1, 1), "should be a list of keys such as `aircraft:`", ""),
    "a word": ("hello\n", (1, 1), "should be a list of keys such as `aircraft:`", ""),
    "a bell": ("a: b\nc: d\x07\n", (2, 5), "a character here cannot be seen", ""),
    "brackets": ("[" * 100_000, (1, 41), "nested too deeply", ""),
    "maps in maps": ("a: " + "{a: " * 200 + "1" + "}" * 200, (1, 157), "nested too deeply", ""),
    "keys under keys": ("\n".join(" " * n + "a:" for n in range(200)), (40, 40), "nested too deeply", ""),
    "dashes": ("- " * 100_000, (1, 81), "nested too deeply", ""),
    "alias of itself": ("a: &a {b: *a}\n", (1, 1), "nested too deeply", ""),
    "aliases of aliases": (BOMB, (1, 1), "unfolds to too many pieces", ""),
}


def check(reading, place, message, suggestion):
    assert reading.aircraft is None
    (problem,) = reading.problems
    assert (problem.span.line, problem.span.column) == place, problem
    assert message in problem.message
    assert suggestion in problem.suggestion
    assert problem.also is None


@pytest.mark.parametrize(("edit", "place", "message", "suggestion"), SPOILED.values(), ids=SPOILED)
def test_spoiled_words_are_one_problem(edit, place, message, suggestion):
    check(spoiled(edit), place, message, suggestion)


@pytest.mark.parametrize(("text", "place", "message", "suggestion"), ADDED.values(), ids=ADDED)
def test_added_words_are_one_problem(text, place, message, suggestion):
    check(read_text(SOUND + text), place, message, suggestion)


@pytest.mark.parametrize(("text", "place", "message", "suggestion"), WHOLE.values(), ids=WHOLE)
def test_text_that_is_no_aircraft_is_one_problem(text, place, message, suggestion):
    check(read_text(text), place, message, suggestion)


def test_duplicate_key_says_both_places():
    reading = spoiled((BORE, BORE + "\n    stroke: 0.7\n    # a comment"))
    (problem,) = reading.problems
    assert "`stroke` stands here a second time" in problem.message
    assert (problem.span.line, problem.also.line) == (17, 15)
    assert not problem.opened


@pytest.mark.parametrize(
    ("text", "opened"), [("a:\n  b: [1,\n    2}\n", True), ("a:\n  - 1\n  b: 2\n", False)]
)
def test_what_is_not_closed_says_where_it_was_opened(text, opened):
    problem = read_text(text, "text").problems[0]
    assert (problem.span.line, problem.also.line) == (3, 2)
    assert problem.opened is opened


def test_unknown_option_names_the_near_miss_or_the_choices():
    text = SOUND + "options:\n  rigid: {bench: {bend radius: 1}}\n  long_way: {}\n"
    assert read_text(text, option="rigid").problems == ()
    (near,) = read_text(text, option="rigd").problems
    assert (near.message, near.suggestion) == ("there is no option `rigd`", "did you mean `rigid`?")
    (far,) = read_text(text, option="zzz").problems
    assert "rigid, long_way" in far.suggestion
    (none,) = read_text(SOUND, option="rigid").problems
    assert none.suggestion == "this file has no options"


def test_several_problems_come_in_the_order_of_the_file():
    reading = spoiled((BORE, "bore: wide"), ("MIL-PRF-5606", "water"), ("kind: caliper", "kind: calliper"))
    assert [problem.span.line for problem in reading.problems] == [4, 14, 21]


def test_bare_numbers_without_a_unit_are_one_problem_that_counts_them():
    reading = read_text(SOUND.replace("length: in, ", "").replace("[15, -7.5, 1]", "unknown"))
    (problem,) = reading.problems
    assert problem.message == "left_cylinder bore has no unit, and 10 more like it"
    assert problem.span.line == 14
    assert "`in` as the unit of length, under `units`" in problem.suggestion
