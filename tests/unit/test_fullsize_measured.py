"""Pages at full size are true on paper to 0.2 mm: measured on the rendered PDF, not on what made it.

What a length should be comes from the points in the file by vector geometry, worked out here, and from the
nominal size in a thread's name.
"""

from __future__ import annotations

import math
import shutil
from functools import cache
from itertools import pairwise
from pathlib import Path
from tempfile import TemporaryDirectory

import numpy as np
import pytest
from evaluated import example
from measured_pages import rendered

from firmpedal.export.fullsize import pdf
from firmpedal.report.fullsize import fullsize_pages
from firmpedal.report.packet import footer_of
from firmpedal.report.paper import PAPERS, proof_words
from firmpedal.report.sheet import Label, Stroke

pytestmark = pytest.mark.skipif(shutil.which("pdftoppm") is None, reason="pdftoppm draws the pages")

TRUE = 0.2  # mm: what a builder's eye and pen can tell
POINT = 25.4 / 72
SIZES = {"A4": (297.0, 210.0), "letter": (279.4, 215.9)}
AREAS = {"A4": (270.0, 140.0), "letter": (250.0, 140.0)}
papers = pytest.mark.parametrize("paper", PAPERS)

# Corners of left_leg in examples/brindlewick.yaml, option rigid, inches; its bends are bent to 3/4 in.
CORNERS = np.array(
    [[7.0, -9.0, -0.9], [7.0, -9.0, -3.2], [9.0, -11.6, -5.2], [5.6, -32.2, -28.6], [6.6, -33.4, -30.2]]
)
RADIUS, OUTSIDE, LEG = 0.75 * 25.4, 0.25 * 25.4, 3 * 25.4


def tube():
    """Angles of the bends, where each begins along the straight tube, and the developed length, in mm."""
    ways = np.diff(CORNERS * 25.4, axis=0)
    lengths = np.linalg.norm(ways, axis=1)
    ways = ways / lengths[:, None]
    angles = [math.acos(float(one @ other)) for one, other in pairwise(ways)]
    starts, done = [], 0.0
    for length, angle, before in zip(lengths, angles, [0.0, *angles], strict=False):
        done += length - RADIUS * (math.tan(angle / 2) + math.tan(before / 2))
        starts.append(done)
        done += RADIUS * angle
    return angles, starts, done + lengths[-1] - RADIUS * math.tan(angles[-1] / 2)


def turn(number: int) -> float:
    """The turn of the plane of bend before a bend, clockwise as one looks along the tube."""
    ways = np.diff(CORNERS, axis=0)
    first, second = (np.cross(ways[n], ways[n + 1]) for n in (number - 1, number))
    sine = np.cross(first, second) @ ways[number] / np.linalg.norm(ways[number])
    return math.atan2(float(sine), float(first @ second))


@cache
def printed(paper: str):
    """The pages that are measured, each with its ink: strip, bends 2 and 3, holes."""
    pages = fullsize_pages(example("rigid"), PAPERS[paper])
    wanted = ("left_leg: marking strip", "left_leg: bends \u2461", "Holes")
    some = tuple(page for page in pages if page.title.startswith(wanted))
    with TemporaryDirectory() as folder:
        inks = rendered(pdf(some, footer_of(example("rigid")), PAPERS[paper]), Path(folder))
    return [(page, ink) for page, ink in zip(some, inks, strict=True)]


def page_titled(paper: str, words: str):
    return next(each for each in printed(paper) if words in each[0].title)


def labels(page, words: str):
    """The labels that hold some words, in millimetres on the page."""
    found = [mark for mark in page.drawing.marks if isinstance(mark, Label) and words in mark.text]
    return [(mark.at[0] * POINT, mark.at[1] * POINT) for mark in found]


@papers
def test_paper_lies_on_its_side_and_white_edges_stay_white(paper):
    for _, ink in printed(paper):
        assert ink.size == pytest.approx(SIZES[paper], abs=0.1)
        assert ink.outside(10.0) == 0.0


@papers
def test_ruler_and_corner_crosses(paper):
    for page, ink in printed(paper):
        # the ruler's line is the longest level line in the lowest 30 mm
        lowest = ink.dark[-round(30 * 600 / 25.4) :, : round(140 * 600 / 25.4)]
        base = (len(lowest) - int(lowest.sum(axis=1).argmax()) - 0.5) * 25.4 / 600
        above, below = (ink.level(base + way * 3.6, 5.0, 122.0) for way in (1, -1))
        assert np.diff(above) == pytest.approx([50.0, 50.0], abs=TRUE)
        assert np.diff(below) == pytest.approx([25.4] * 4, abs=TRUE)
        wide, tall = AREAS[paper]
        left, low = (SIZES[paper][0] - wide) / 2, 31.0
        corners = [ink.cross((left + x * wide, low + y * tall)) for x, y in ((0, 0), (1, 0), (0, 1))]
        assert math.dist(corners[0], corners[1]) == pytest.approx(wide, abs=TRUE)
        assert math.dist(corners[0], corners[2]) == pytest.approx(tall, abs=TRUE)
        assert f"{wide:.0f} mm apart" in proof_words(PAPERS[paper]), page.title


def glued(paper: str) -> dict[str, float]:
    """Lay the pieces of the strip together at their crosses; where each mark then stands along it."""
    found, joints = {}, {}
    pieces = [
        (page, ink, low)
        for page, ink in printed(paper)
        if "marking strip" in page.title
        for low in (y for _, y in labels(page, "left_leg, "))
    ]
    for number, (page, ink, middle) in enumerate(pieces, 1):
        own = {
            mark.text: (mark.at[0] * POINT, mark.at[1] * POINT)
            for mark in page.drawing.marks
            if isinstance(mark, Label) and abs(mark.at[1] * POINT - middle) < 12
        }
        here = {
            name: ink.cross((x - 4 * POINT, y - 14 * POINT))[0]
            for name, (x, y) in own.items()
            if name[0] == "J"
        }
        zero = joints[f"J{number - 1}"] - here[f"J{number - 1}"] if number > 1 else None
        for name, (x, y) in own.items():
            if name in ("A flared", "B flared") or "set" in name:
                # words stand 3 points beside their line; those at end B to the left of it
                aside = width(name) + 3 * POINT if name == "B flared" else -3 * POINT
                found[name] = ink.level_near((x + aside, y))
        zero = -found["A flared"] if zero is None else zero
        found |= {name: found[name] + zero for name in own if name in found}
        joints |= {name: x + zero for name, x in here.items()}
    return found


def width(words: str) -> float:
    return 0.602 * 12 * len(words) * POINT


@papers
def test_marks_stand_true_along_the_glued_strip(paper):
    angles, starts, length = tube()
    found = glued(paper)
    assert found["A flared"] == pytest.approx(0.0, abs=1e-9)
    marks = [place for name, place in sorted(found.items(), key=lambda each: each[1]) if "set" in name]
    assert marks == pytest.approx(starts, abs=TRUE)
    assert found["B flared"] == pytest.approx(length, abs=TRUE)
    assert len(marks) == len(angles) == 3


@papers
@pytest.mark.parametrize("number", [2, 3])
def test_template_has_the_angle_the_radius_and_the_width(paper, number):
    page, ink = page_titled(paper, "bends \u2461")
    angle = tube()[0][number - 1]
    title = labels(page, "left_leg ")[number - 2]
    outline = next(
        mark.points
        for mark in page.drawing.marks
        if isinstance(mark, Stroke) and mark.weight == 1.0 and len(mark.points) > 20
        and 0 < title[1] - max(y for _, y in mark.points) * POINT < 20
    )  # fmt: skip
    across, upward = zip(*outline, strict=True)
    left, right, top = min(across) * POINT, max(across) * POINT, max(upward) * POINT
    lines = []
    for places in ((left + 8, left + 30), (right - 30, right - 8)):
        scans = [ink.upright(x, top - 45, top + 1) for x in places]
        scans = [(x, max(scan), edge_below(scan)) for x, scan in zip(places, scans, strict=True)]
        lines.append([(x, (high + low) / 2) for x, high, low in scans])
        slope = math.atan(abs(lines[-1][1][1] - lines[-1][0][1]) / (places[1] - places[0]))
        assert slope * LEG == pytest.approx(angle / 2 * LEG, abs=TRUE)
        for _, high, low in scans:
            assert (high - low) * math.cos(slope) == pytest.approx(OUTSIDE, abs=TRUE)
    corner = crossing(*lines)
    ridge = max(ink.upright(corner[0], top - 3, top + 1)) - OUTSIDE / 2
    assert corner[1] - ridge == pytest.approx(RADIUS * (1 / math.cos(angle / 2) - 1), abs=TRUE)


def edge_below(scan: list[float]) -> float:
    """The tube's lower edge: the lowest line within its width of the upper one."""
    return min(y for y in scan if max(scan) - y < 1.3 * OUTSIDE)


def crossing(one, other):
    (x, y), (x1, y1) = one
    (u, v), (u1, v1) = other
    slope, rest = (y1 - y) / (x1 - x), (v1 - v) / (u1 - u)
    at = (v - y + slope * x - rest * u) / (slope - rest)
    return at, y + slope * (at - x)


@papers
@pytest.mark.parametrize("number", [2, 3])
def test_clock_face_has_the_hole_of_the_tube_and_its_hand_points_true(paper, number):
    page, ink = page_titled(paper, "bends \u2461")
    nines = [mark.at for mark in page.drawing.marks if isinstance(mark, Label) and mark.text == "9"]
    left = sorted(((x * POINT, y * POINT) for x, y in nines), key=lambda at: -at[1])[number - 2]
    middle = (left[0] + 23 - 5.6, left[1])
    x = ink.level_near((middle[0], middle[1] + 0.4))
    chord = ink.level(middle[1] + 1.5, x - 4.5, x + 4.5)
    assert diameter(chord, 1.5) == pytest.approx(OUTSIDE, abs=TRUE)
    reach = 12.0
    dark = ink.round_about((x, middle[1]), reach) > 0.5
    turns = np.flatnonzero(dark) * math.tau / len(dark)
    hand = [t for t in turns if abs(math.remainder(t - turn(number - 1), math.tau)) < 0.3]
    found = math.atan2(np.mean(np.sin(hand)), np.mean(np.cos(hand)))
    assert found * 23 == pytest.approx(turn(number - 1) * 23, abs=TRUE)
    assert len(hand) * math.tau / len(dark) * reach == pytest.approx(3.2 * POINT, abs=TRUE)


def diameter(chord: list[float], over: float) -> float:
    """Of a circle, from its outermost crossings with a level line so far over its middle."""
    return 2 * math.hypot((max(chord) - min(chord)) / 2, over)


@papers
def test_hole_is_the_thread_and_a_64th(paper):
    page, ink = page_titled(paper, "Holes")
    names = [at for name in ("left_floor", "right_axle") for at in labels(page, name)]
    assert len(names) == 2
    for across, upward in names:
        y = upward + 6 * POINT - 17
        middle = ink.level_near((across - 36 + 17, y + 1.0))
        chord = ink.level(y + 2.0, middle - 7, middle + 7)
        # 7/16-20: the thread's major diameter is the size in its name
        assert diameter(chord, 2.0) == pytest.approx((7 / 16 + 1 / 64) * 25.4, abs=TRUE)


def test_same_bytes_twice():
    pages = fullsize_pages(example("rigid"), PAPERS["A4"], "left_leg")
    one, other = (pdf(pages, footer_of(example("rigid")), PAPERS["A4"]) for _ in range(2))
    assert one == other
