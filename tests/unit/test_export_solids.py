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
from firmpedal.units import to_unit


@pytest.fixture(scope="module")
def solids(tmp_path_factory):
    from build123d import import_step  # noqa: PLC0415  takes seconds, so only where it is used

    path = tmp_path_factory.mktemp("step") / "lines.step"
    written = step.write(example("rigid"), path)
    assert written.left_out == ()
    return import_step(path)


def test_every_line_is_a_named_solid(solids):
    names = [child.label for child in solids.children]
    assert {line.name for line in example("rigid").laid} <= set(names)
    assert solids.label == "Brindlewick"
    # four tube ends have a nut of their own; the hoses' swivels are part of the hose
    assert sum(name.startswith("room_of_nut") for name in names) == 4


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


@pytest.mark.parametrize("name", FORMATS)
def test_every_format_writes_files_and_says_what_it_is_for(name, tmp_path):
    made = FORMATS[name](example("rigid"), tmp_path, "plane")
    assert made
    assert all(path.stat().st_size > 100 for path in made)
    assert words(name).endswith(".")
