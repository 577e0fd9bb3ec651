"""What stands on the pages at full size, on every example and on an awkward aircraft."""

from __future__ import annotations

import math
from functools import cache
from itertools import pairwise
from pathlib import Path

import pytest
from evaluated import EXAMPLE, awkward, example
from typer.testing import CliRunner

from firmpedal.cli.main import app
from firmpedal.pipeline import evaluate_file, evaluate_text
from firmpedal.report.bend_template import BendWords, FlatBend, bend_template
from firmpedal.report.fullsize import drawable, fullsize_pages, not_drawn
from firmpedal.report.fullsize_bends import bend_figures
from firmpedal.report.line_holes import line_hole_marks
from firmpedal.report.marks import bounds, label_box
from firmpedal.report.panel_holes import panel_holes, seen_from, upward
from firmpedal.report.paper import PAPERS, WHITE
from firmpedal.report.placing import Box
from firmpedal.report.sheet import Label, Stroke

FOLDER = Path(__file__).parents[2] / "examples"
SMALLEST = 10.4
EVERY = (("brindlewick", "rigid"), ("oatmere", None), ("fennimoss", "rigid"), ("awkward", None))
every = pytest.mark.parametrize(("name", "option"), EVERY, ids=[name for name, _ in EVERY])
papers = pytest.mark.parametrize("paper", PAPERS)


@cache
def evaluation(name: str, option: str | None):
    return awkward() if name == "awkward" else evaluate_file(FOLDER / f"{name}.yaml", option)


@cache
def pages(name: str, option: str | None, paper: str):
    return fullsize_pages(evaluation(name, option), PAPERS[paper])


def words(page) -> str:
    return " ".join(mark.text for mark in page.drawing.marks if isinstance(mark, Label))


@papers
@every
def test_nothing_is_drawn_where_printers_leave_white(name, option, paper):
    wide, tall = PAPERS[paper].size
    inner = Box(WHITE, WHITE, wide - WHITE, tall - WHITE)
    assert pages(name, option, paper)
    for page in pages(name, option, paper):
        assert bounds(page.drawing.marks).inside(inner), page.title


@papers
@every
def test_words_can_be_read_and_stand_clear_of_each_other(name, option, paper):
    for page in pages(name, option, paper):
        labels = [mark for mark in page.drawing.marks if isinstance(mark, Label)]
        assert min(label.size for label in labels) >= SMALLEST
        boxes = [label_box(label).grown(-1.0) for label in labels]
        meeting = [
            (labels[n].text, labels[m].text)
            for n in range(len(boxes))
            for m in range(n + 1, len(boxes))
            if boxes[n].meets(boxes[m])
        ]
        assert meeting == [], page.title


@every
def test_every_tube_has_its_strip_and_every_bend_its_template(name, option):
    found = pages(name, option, "A4")
    for line in drawable(evaluation(name, option)):
        own = [page for page in found if page.title.startswith(f"{line.name}: ")]
        strips = " ".join(words(page) for page in own if "marking strip" in page.title)
        assert strips.count("set ____\u00b0") == len(line.tube.bends)
        assert len(bend_figures(evaluation(name, option), line)) == len(line.tube.bends)
        faces = sum(words(page).count("print to") for page in own)
        assert faces == len(line.tube.bends) - 1


def test_one_line_by_name_has_no_holes():
    titles = [page.title for page in fullsize_pages(example("rigid"), PAPERS["A4"], "right_leg")]
    assert titles
    assert all(title.startswith("right_leg: ") for title in titles)


def test_angle_to_set_stands_on_the_strip_once_trial_bends_are_known():
    text = EXAMPLE.read_text(encoding="utf-8")
    tried = text.replace("bench:\n", "bench:\n  bender: {springback: [{asked: 60, got: 57}]}\n", 1)
    assert tried != text
    page = fullsize_pages(evaluate_text(tried, "tried.yaml", "rigid"), PAPERS["A4"], "left_leg")[0]
    # 58.6 x 60 / 57 = 61.7
    assert "58.6\u00b0, set 61.7\u00b0" in words(page)


def test_length_that_rests_on_an_assumed_point_is_said_first():
    text = EXAMPLE.read_text(encoding="utf-8").replace(
        "[9.0, -11.6, -5.2]", "{value: [9.0, -11.6, -5.2], mark: assumed}"
    )
    page = fullsize_pages(evaluate_text(text, "assumed.yaml", "rigid"), PAPERS["A4"], "left_leg")[0]
    assert page.words.startswith("CAUTION: This length rests on an assumed point")


def test_tube_whose_points_are_unknown_is_named_and_not_drawn():
    text = EXAMPLE.read_text(encoding="utf-8").replace("[9.0, -11.6, -5.2]", "unknown")
    found = evaluate_text(text, "unknown.yaml", "rigid")
    assert [words.partition(":")[0] for words in not_drawn(found)] == ["left_leg", "right_leg"]
    assert [page.title for page in fullsize_pages(found, PAPERS["A4"])] == ["Holes in panels"]


def test_hole_of_an_unknown_fitting_has_no_circle_and_says_so():
    text = EXAMPLE.read_text(encoding="utf-8").replace(
        "        form: 90 degrees\n", "        fitting: AN910-1D\n        form: 90 degrees\n", 1
    )
    found = evaluate_text(text, "odd.yaml", "rigid")
    hole = next(hole for hole in panel_holes(found) if hole.bulkhead.name == "left_floor")
    assert not hole.diameter.known
    page = fullsize_pages(found, PAPERS["A4"])[-1]
    assert "No circle" in words(page)
    circles = [mark for mark in page.drawing.marks if isinstance(mark, Stroke) and len(mark.points) > 100]
    assert len(circles) == sum(hole.diameter.known for hole in panel_holes(found))


def test_panel_says_from_where_it_is_seen_and_which_way_is_up():
    by_name = {hole.bulkhead.name: hole.bulkhead.normal for hole in panel_holes(evaluation("oatmere", None))}
    assert seen_from(by_name["left_firewall"]) == "face of the panel seen from behind"
    assert upward(by_name["left_firewall"]) == "up"
    assert seen_from(by_name["left_belly"]) == "face of the panel seen from below"
    assert upward(by_name["left_belly"]) == "forward"
    unknown = next(hole for hole in panel_holes(example("rigid")) if hole.bulkhead.name == "left_axle")
    assert seen_from(unknown.bulkhead.normal) == upward(unknown.bulkhead.normal) == ""


@pytest.mark.parametrize("degrees", [5, 33, 90, 135, 175])
def test_template_is_as_long_as_its_legs_and_arc(degrees):
    bend = FlatBend(math.radians(degrees), 54.0, 100.0, 216.0, 18.0, 0.0)
    marks = bend_template(bend, BendWords("x", (), (), ()))
    line = next(mark.points for mark in marks if isinstance(mark, Stroke) and mark.dashed)
    assert math.dist(line[0], line[1]) == pytest.approx(100.0)
    assert math.dist(line[-2], line[-1]) == pytest.approx(216.0)
    long = sum(math.dist(a, b) for a, b in pairwise(line))
    assert long == pytest.approx(316 + 54 * math.radians(degrees), rel=1e-4)


def test_template_larger_than_the_page_is_cut_with_joints_on_both_pieces():
    some = fullsize_pages(evaluate_text(WIDE, "wide.yaml"), PAPERS["A4"])
    bends = [page for page in some if ": bend" in page.title]
    names = [
        mark.text
        for page in bends
        for mark in page.drawing.marks
        if isinstance(mark, Label) and mark.text[0] == "J"
    ]
    assert names
    assert all(names.count(name) == 2 for name in names)


WIDE = """
firmpedal: 1
aircraft: {name: Wide, gear: nosewheel, brakes: toe}
units: {length: mm}
components:
  one:
    kind: reservoir
    ports: {out: {thread: 1/8 NPT female, faces: aft, seat: [0, 0, 0], seat measured with: AN816-4D}}
  other:
    kind: reservoir
    ports: {in: {thread: 1/8 NPT female, faces: forward, seat: [900, 900, 0], seat measured with: AN816-4D}}
bench: {bend radius: 300}
lines:
  long_way: {from: one.out, to: other.in, made of: tube 5052-O 1/4 in x .035 in, via: [[900, 0, 0]]}
"""


@pytest.mark.parametrize(
    ("words", "says", "ends"),
    [
        (["--option", "rigid", "--line", "left_leg", "--paper", "letter"], "of letter:", 0),
        (["--option", "rigid", "--line", "left_tail"], "is no tube whose shape is known", 2),
        (["--option", "rigid", "--paper", "A3"], "--paper is A4 or letter", 2),
        ([], "Nothing to print at full size", 2),
    ],
)
def test_command_says_what_it_wrote_or_why_not(words, says, ends, tmp_path):
    out = tmp_path / "full.pdf"
    result = CliRunner().invoke(app, ["fullsize", str(EXAMPLE), "-o", str(out), *words])
    assert says in " ".join(result.output.split())
    assert result.exit_code == ends
    assert out.exists() is (ends == 0)


def test_hole_of_a_line_is_as_wide_as_the_file_says_and_without_a_figure_there_is_none():
    text = (FOLDER / "oatmere.yaml").read_text(encoding="utf-8")
    wide = evaluate_text(text.replace("left_run: {grommet: yes}", "left_run: {grommet: yes, hole: 5/8}"))
    (left,) = line_hole_marks(wide)
    (circle,) = [mark for mark in left if isinstance(mark, Stroke) and len(mark.points) > 8]
    across = max(x for x, _ in circle.points) - min(x for x, _ in circle.points)
    assert across == pytest.approx(5 / 8 * 72, rel=1e-3)
    assert line_hole_marks(evaluate_text(text)) == []
