"""STEP solids read back by the kernel, DXF drawings audited and measured by their library."""

from __future__ import annotations

import subprocess
import sys
from collections import Counter
from math import pi

import pytest
from evaluated import EXAMPLE, example
from ezdxf.filemanagement import readfile

from firmpedal.export import dxf, step
from firmpedal.export.clamp_rooms import FEET
from firmpedal.export.formats import FORMATS, words
from firmpedal.fit.chain import nut_at
from firmpedal.model.part import Category
from firmpedal.pipeline import evaluate_text, read_text
from firmpedal.units import to_unit
from texts import EXAMPLES, edited, small
from texts import example as aircraft


def placeless(written):
    """What is left out for want of a place, without what every file with hoses and clamps says."""
    known = ("the true shape of ", "clamps of ", FEET)
    return [words for words in written.left_out if not words.startswith(known)]


@pytest.fixture(scope="module")
def solids(tmp_path_factory):
    from build123d import import_step  # noqa: PLC0415  takes seconds, so only where it is used

    path = tmp_path_factory.mktemp("step") / "lines.step"
    written = step.write(example("rigid"), path)
    assert all("AN924-4D at" in words for words in placeless(written))
    return import_step(path)


def test_every_line_is_a_named_solid(solids):
    names = [child.label for child in solids.children]
    for line in example("rigid").laid:
        assert (line.name if line.tube else f"{line.name}_along_declared_path") in names
    assert solids.label == "Brindlewick"
    # four tube ends have a nut of their own; the hoses' swivels are part of the hose
    assert sum(name.startswith("room_of_nut") for name in names) == 4
    # two ports and two bulkheads on either side, each with one body; no length of them is from a standard
    bodies = [name for name in names if name.startswith("room_of_AN8")]
    assert len(bodies) == 8
    assert all(name.endswith("_estimate") for name in bodies)
    # AN924 was read; the axles' panels have no place
    nuts = {"room_of_AN924-4D_at_left_floor", "room_of_AN924-4D_at_right_floor"}
    assert {name for name in names if "AN924" in name} == nuts


def test_a_tube_has_the_volume_of_its_metal(solids):
    for line in example("rigid").laid:
        if line.tube:
            (solid,) = [child for child in solids.children if child.label == line.name]
            outside = line.stock.outside_diameter.middle * 1000
            bore = outside - 2 * line.stock.wall.middle * 1000
            metal = pi / 4 * (outside**2 - bore**2) * line.tube.developed_length.middle * 1000
            assert solid.volume == pytest.approx(metal, rel=1e-6)


def test_solids_are_in_millimetres_where_the_file_has_them(solids):
    (leg,) = [child for child in solids.children if child.label == "left_leg"]
    line = next(line for line in example("rigid").laid if line.name == "left_leg")
    box = leg.bounding_box(optimal=True)
    radius = line.stock.outside_diameter.middle * 500
    for axis, (low, high) in enumerate(zip(tuple(box.min), tuple(box.max), strict=True)):
        numbers = [point[axis] * 1000 for point in line.tube.centreline.tangent_points]
        assert low == pytest.approx(min(numbers), abs=radius + 1)
        assert high == pytest.approx(max(numbers), abs=radius + 1)


def test_two_runs_give_the_same_step_file(tmp_path):
    """Within one run the kernel counts its assemblies on, so each file comes from a run of its own."""
    for number in ("1", "2"):
        command = [
            sys.executable,
            "-c",
            "from firmpedal.cli.main import main; main()",
            "export",
            str(EXAMPLE),
            "--option",
            "rigid",
        ]
        command += ["--to", "step", "-o", str(tmp_path / number)]
        subprocess.run(command, check=True, env={"PYTHONHASHSEED": number}, capture_output=True)
    one, two = ((tmp_path / number / "lines.step").read_bytes() for number in "12")
    assert one == two


def test_drawings_are_sound_and_true_to_length(tmp_path):
    made = dxf.write(example("rigid"), tmp_path)
    assert [path.name for path in made] == ["left_leg.dxf", "right_leg.dxf"]
    for path in made:
        document = readfile(path)
        assert document.audit().errors == []
        assert document.header["$INSUNITS"] == 1  # inches, as the file
        line = next(line for line in example("rigid").laid if line.name == path.stem)
        found = sorted(each.get_measurement() for each in document.modelspace().query("DIMENSION"))
        marks = [to_unit(bend.mark.middle, "in") for bend in line.work.bends]
        assert found == pytest.approx([*marks, to_unit(line.tube.developed_length.middle, "in")])
        shown = {text.dxf.text for block in document.blocks for text in block.query("MTEXT TEXT")}
        assert any("39.63" in text for text in shown)
        assert any("5.80" in text for text in shown)
        words = {text.dxf.text for text in document.modelspace().query("TEXT")}
        assert any("bend radius 0.75 in; lengths from end A, unit: in" in text for text in words)


@pytest.mark.parametrize("name", FORMATS)
def test_every_format_writes_files_and_says_what_it_is_for(name, tmp_path):
    made = FORMATS[name](example("all hose" if name == "step" else "rigid"), tmp_path, "plane")
    assert made.paths
    assert placeless(made) == []
    assert all(path.stat().st_size > 100 for path in made.paths)
    assert words(name).endswith(".")


LOOP = """
  loop:
    from: cylinder.outlet
    to: caliper.inlet
    made of: {made}
    bend radius: 1
    via: {via}
"""


def looped(made, via, seat="[10, 0, 4]"):
    """Quillfen with one line, and its caliper's seat in the very place of its cylinder's or elsewhere."""
    text = edited(small("quillfen"), ("seat: [16, 0, -6]", f"seat: {seat}"))
    head = text[: text.index("  run:\n")]
    return evaluate_text(head + LOOP.lstrip("\n").format(made=made, via=via), "looped")


def read_back(evaluation, path):
    from build123d import import_step  # noqa: PLC0415

    written = step.write(evaluation, path)
    return written, {child.label: child for child in import_step(path).children}


def test_a_tube_whose_ends_are_one_place_is_a_solid(tmp_path):
    # a square of 8 in with one corner cut by the two ends: three bends
    evaluation = looped("tube 5052-O 1/4 x .035", "[[10, 0, -4], [18, 0, -4], [18, 0, 4]]")
    line = evaluation.laid[0]
    written, found = read_back(evaluation, tmp_path / "a.step")
    assert not [words for words in written.left_out if words.startswith("loop")]
    metal = pi / 4 * (6.35**2 - (6.35 - 2 * 0.889) ** 2) * line.tube.developed_length.middle * 1000
    assert found["loop"].volume == pytest.approx(metal, rel=1e-6)


def test_bends_that_follow_each_other_without_a_straight_are_one_solid(tmp_path):
    # bends of 90 degrees and 1 in at corners 2 in apart leave no straight between them
    evaluation = looped("tube 5052-O 1/4 x .035", "[[10, 0, -4], [12, 0, -4], [12, 2, -4]]", "[12, 2, 4]")
    line = evaluation.laid[0]
    assert line.tube.centreline.straights[1:3] == (0.0, 0.0)
    _, found = read_back(evaluation, tmp_path / "a.step")
    metal = pi / 4 * (6.35**2 - (6.35 - 2 * 0.889) ** 2) * line.tube.developed_length.middle * 1000
    assert found["loop"].volume == pytest.approx(metal, rel=1e-6)


def test_a_hose_that_goes_nowhere_is_left_out_and_one_with_a_point_twice_is_not(tmp_path):
    written, found = read_back(looped("hose -4 PTFE braided", "[]"), tmp_path / "a.step")
    assert "loop: its ends are one place" in written.left_out
    assert not [name for name in found if name.startswith("loop")]
    evaluation = looped("hose -4 PTFE braided", "[[10, 0, 0], [10, 0, 0], [12, 0, 0]]")
    _, found = read_back(evaluation, tmp_path / "b.step")
    box = found["loop_along_declared_path"].bounding_box()
    outside = evaluation.laid[0].stock.outside_diameter.middle * 1000
    assert pytest.approx(2 * 25.4 + outside / 2, abs=outside) == box.size.X


def test_what_cannot_be_drawn_is_named(tmp_path):
    evaluation = looped("hose -4 PTFE braided", "[unknown]")
    written = step.write(evaluation, tmp_path / "a.step")
    assert "loop: its points are not all known" in written.left_out


# What has no place, as the files have it: elbows without an arm whose line comes otherwise (Brindlewick as
# written, the valve of the first sketch); panels without `at`. All the rest of the parts list has a room.
WITHOUT = {
    ("brindlewick", None): {
        "left_cylinder.outlet": "COMP-E-1/4x1/8",
        "right_cylinder.outlet": "COMP-E-1/4x1/8",
    },
    ("brindlewick", "rigid"): {"left_axle": "AN924-4D", "right_axle": "AN924-4D"},
    ("brindlewick", "all hose"): {},
    ("fennimoss", None): {},
    ("fennimoss", "rigid"): {
        f"{side}_{name}": "AN924-3D" for side in ("left", "right") for name in ("bracket", "gear_bracket")
    },
    ("oatmere", None): {"left_belly": "AN924-4D", "right_belly": "AN924-4D"},
    ("oatmere", "single brakes"): {"left_belly": "AN924-4D", "right_belly": "AN924-4D"},
    ("oatmere", "first sketch"): {
        "left_belly": "AN924-4D",
        "right_belly": "AN924-4D",
        "valve.left_in": "AN822-4D",
        "valve.right_in": "AN822-4D",
    },
}


def as_read(name):
    """The reader of STEP files makes underlines of dots."""
    return name.replace(".", "_")


def test_the_list_has_every_option_of_every_example():
    found = [
        (path.stem, option)
        for path in EXAMPLES.glob("*.yaml")
        for option in (None, *read_text(path.read_text(encoding="utf-8"), path.name).options)
    ]
    assert sorted(map(str, found)) == sorted(map(str, WITHOUT))


@pytest.mark.parametrize(("name", "option"), WITHOUT)
def test_every_fitting_with_a_place_has_its_room(name, option, tmp_path):
    evaluation = evaluate_text(aircraft(name), name, option)
    listed = Counter(
        f"room_of_{part.designation}_at_{joint.name}"
        for joint in evaluation.assembly.joints
        for part in joint.parts
        if part.category in (Category.FITTING, Category.JAM_NUT, Category.CAP)
    )
    without = WITHOUT[name, option]
    listed -= Counter(f"room_of_{part}_at_{joint}" for joint, part in without.items())
    ends = [(line.name, end) for line in evaluation.laid for end in ("from", "to")]
    joints = {(line, end): evaluation.assembly.joint_of(line, end) for line, end in ends}
    nuts = [f"room_of_nut_{line}_{end}" for (line, end), joint in joints.items() if nut_at(joint, line, end)]
    written, found = read_back(evaluation, tmp_path / "a.step")
    rooms = Counter(
        label.removesuffix("_estimate").removesuffix("_either_way").removesuffix("_either_side")
        for label in found
        if label.startswith("room_of_") and not label.startswith("room_of_clamp_")
    )
    assert rooms == Counter(map(as_read, [*listed.elements(), *nuts]))
    assert sorted(words.partition(":")[0] for words in placeless(written)) == sorted(
        f"{part} at {joint}" for joint, part in without.items()
    )
    asked = "Measure where the middle of the hole", "Measure which way the arm of the elbow"
    assert all(any(each in words for each in asked) for words in placeless(written))
    sleeved = {"left_gear", "right_gear"} if (name, option) == ("fennimoss", "rigid") else set()
    assert sum(words.startswith("clamps of ") for words in written.left_out) == len(sleeved)
    clamps = [
        f"room_of_clamp_{n}_of_{line.name}_estimate"
        for line in evaluation.laid
        if line.name not in sleeved
        for n in range(1, len(line.supports.stations) + 1)
    ]
    assert sorted(label for label in found if label.startswith("room_of_clamp_")) == sorted(clamps)
    assert (FEET in written.left_out) is bool(clamps)
    hung = [line.name for line in evaluation.laid if f"{line.name}_along_declared_path" in written.names]
    (words,) = [words for words in written.left_out if words.startswith("the true shape of ")] or [""]
    assert all(name in words for name in hung)
    assert bool(words) is bool(hung)


def rod(flats, length):
    """The volume of a rod over the corners of a hexagon [mm3], from inches."""
    return pi / 4 * (flats * 2 / 3**0.5) ** 2 * length * 25.4**3


def test_rooms_have_the_volume_and_place_of_their_figures(tmp_path):
    # AN924-4 is .688 in over flats and .250 in thick, on both sides of Oatmere's firewall of .020 in at
    # aft 0, right -1, up 20
    _, found = read_back(evaluate_text(aircraft("oatmere"), "oatmere"), tmp_path / "a.step")
    nut = found["room_of_AN924-4_at_left_firewall_either_side"]
    assert nut.volume == pytest.approx(2 * rod(0.688, 0.250), rel=1e-6)
    box = nut.bounding_box(optimal=True)
    half = 0.688 / 3**0.5
    low, high = (-0.26, -1 - half, 20 - half), (0.26, -1 + half, 20 + half)
    assert tuple(box.min) == pytest.approx([25.4 * one for one in low], abs=1e-3)
    assert tuple(box.max) == pytest.approx([25.4 * one for one in high], abs=1e-3)


def test_an_adapter_and_its_fitting_have_each_their_room(tmp_path):
    # AN816-4 is at most 1.241 in long and .53 in over flats; AN910-1 at most 1.00 in long and 11/16 in wide,
    # and what its place leaves open: .10 in of the AN816 either way, and 1-1/2 turns of 1/27 in of the thread
    caliper = "    to: caliper.inlet\n"
    edit = (caliper, f"{caliper}    to fitting: [AN910-1D, AN816-4D]\n")
    _, found = read_back(evaluate_text(edited(small("quillfen"), edit)), tmp_path / "a.step")
    fitting = found[as_read("room_of_AN816-4D_at_caliper.inlet_estimate")]
    assert fitting.volume == pytest.approx(rod(0.53, 1.241), rel=1e-6)
    adapter = found[as_read("room_of_AN910-1D_at_caliper.inlet_estimate")]
    assert adapter.volume == pytest.approx(rod(11 / 16, 1.00 + 0.20 + 1.5 / 27), rel=1e-6)
