"""Where two lines end at each other: what the place is called, and by which names it is found."""

from __future__ import annotations

import pytest

from commands import firmpedal
from firmpedal.pipeline import evaluate_text
from texts import edited, small

NAME = "where run meets tail"
TAIL = """  tail:
    from: run.to
    to: caliper.inlet
    made of: tube 5052-O 1/4 x .035
    bend radius: 3/4
"""
TEXT = edited(small("quillfen"), ("    to: caliper.inlet\n", "    to: tail.from\n")) + TAIL


def test_it_is_called_by_its_two_lines():
    evaluation = evaluate_text(TEXT, "text")
    assert [joint.name for joint in evaluation.assembly.joints][-1] == NAME
    (finding,) = [item for item in evaluation.findings if item.rule == "part-missing-between"]
    assert finding.message.startswith(f"{NAME}: -4 tube")
    assert finding.place == "lines.run.to"


def test_lines_that_meet_twice_have_two_names():
    circle = edited(TEXT, ("from: cylinder.outlet", "from: tail.to"), ("to: caliper.inlet", "to: run.from"))
    names = [joint.name for joint in evaluate_text(circle, "text").assembly.joints]
    assert len(set(names)) == len(names)
    assert sum("run" in name and "tail" in name for name in names) == 2


@pytest.mark.parametrize("name", [NAME, "lines.run.to", "lines.tail.from"])
def test_explain_finds_it_by_its_name_and_by_either_end(tmp_path, name):
    path = tmp_path / "meeting.yaml"
    path.write_text(TEXT, encoding="utf-8")
    done = firmpedal("explain", path, name)
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.startswith(f"{NAME} (joint 2)\n")
    assert "both are\nfemale" in done.stdout or "both are female" in done.stdout


def test_explain_still_gives_the_figures_at_that_place(tmp_path):
    path = tmp_path / "meeting.yaml"
    path.write_text(TEXT, encoding="utf-8")
    done = firmpedal("explain", path, "lines.run.to")
    assert "where run and tail meet, aft" in done.stdout
