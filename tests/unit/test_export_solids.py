"""STEP solids read back by the kernel, DXF drawings audited and measured by their library."""

from __future__ import annotations

import subprocess
import sys
from math import pi

import pytest
from evaluated import EXAMPLE, example
from ezdxf.filemanagement import readfile

from firmpedal.export import dxf, step
from firmpedal.export.formats import FORMATS, words
from firmpedal.pipeline import evaluate_text
from firmpedal.units import to_unit
from texts import edited, small


@pytest.fixture(scope="module")
def solids(tmp_path_factory):
    from build123d import import_step  # noqa: PLC0415  takes seconds, so only where it is used

    path = tmp_path_factory.mktemp("step") / "lines.step"
    written = step.write(example("rigid"), path)
    assert written.left_out == ()
    return import_step(path)


def test_every_line_is_a_named_solid(solids):
    names = [child.label for child in solids.children]
    for line in example("rigid").laid:
        assert (line.name if line.tube else f"{line.name}_along_declared_path") in names
    assert solids.label == "Brindlewick"
    # four tube ends have a nut of their own; the hoses' swivels are part of the hose
    assert sum(name.startswith("room_of_nut") for name in names) == 4
    # two ports and two bulkheads on either side, each with one body; no length of them is from a standard
    bodies = [name for name in names if name.startswith("room_of_AN")]
    assert len(bodies) == 8
    assert all(name.endswith("_estimate") for name in bodies)


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
    made = FORMATS[name](example("rigid"), tmp_path, "plane")
    assert made.paths
    assert made.left_out == ()
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
