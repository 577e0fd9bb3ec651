"""Drawings: to scale, the right way round, and with labels that cover nothing."""

from __future__ import annotations

import math
from itertools import combinations, pairwise

import pytest
from evaluated import awkward, example

from firmpedal.report.pictures import picture
from firmpedal.report.placing import Box, Placer, box_of
from firmpedal.report.sheet import Dot, Label, Stroke
from firmpedal.report.views import FROM_ABOVE, FROM_ABOVE_AHEAD, FROM_BEHIND, FROM_LEFT, PAIRS

POINTS_PER_INCH = 72
METRES_PER_INCH = 0.0254
CLAMP = 2.0  # how heavy its bar is drawn


def drawn(name: str, option: str | None = "rigid"):
    evaluation = example(option)
    line = next(line for line in evaluation.laid if line.name == name)
    return line, picture(line, evaluation.display)


def scale_of(drawing) -> float:
    words = next(mark.text for mark in drawing.marks if isinstance(mark, Label) and "scale" in mark.text)
    return float(words.rpartition(":")[2])


def path_lengths(drawing) -> list[float]:
    """The length on paper of the heaviest strokes, which are the line itself."""
    strokes = [mark for mark in drawing.marks if isinstance(mark, Stroke)]
    heaviest = max(stroke.weight for stroke in strokes)
    chosen = [stroke for stroke in strokes if stroke.weight == heaviest]
    return [sum(math.dist(a, b) for a, b in pairwise(stroke.points)) for stroke in chosen]


def test_the_scale_on_the_drawing_is_the_scale_of_the_drawing():
    # left_leg seen from behind and from the left, measured by hand from its corner points: end A
    # to end B is 24.4 in across and 29.3 in down, or 0.4 in aft and 29.3 in down.
    _, drawing = drawn("left_leg")
    ends = [mark.at for mark in drawing.marks if isinstance(mark, Dot)]
    inches = scale_of(drawing) / POINTS_PER_INCH
    spans = sorted(inches * math.dist(*ends[n : n + 2]) for n in (0, 2))
    assert spans[0] == pytest.approx(math.hypot(0.4, 29.3), abs=0.01)
    assert spans[1] == pytest.approx(math.hypot(24.4, 29.3), abs=0.01)


def test_the_scale_bar_is_as_long_as_it_says():
    _, drawing = drawn("left_leg")
    label = next(mark for mark in drawing.marks if isinstance(mark, Label) and "scale" in mark.text)
    length = float(label.text.partition(" in,")[0])
    level = [
        mark.points
        for mark in drawing.marks
        if isinstance(mark, Stroke) and {y for _, y in mark.points} == {label.at[1]}
    ]
    (bar,) = level
    shown = (bar[1][0] - bar[0][0]) / POINTS_PER_INCH * scale_of(drawing)
    assert shown == pytest.approx(length, rel=1e-3)


@pytest.mark.parametrize(
    ("view", "eye"),
    [
        (FROM_BEHIND, (1, 0, 0)),
        (FROM_LEFT, (0, -1, 0)),
        (FROM_ABOVE, (0, 0, 1)),
        (FROM_ABOVE_AHEAD, (0, 0, 1)),
    ],
)
def test_no_view_is_a_mirror_image(view, eye):
    # aft, right, up is a right-handed frame; right on paper crossed with up on paper points to the eye
    across, upward = [0, 0, 0], [0, 0, 0]
    across[view.across[0]], upward[view.upward[0]] = view.across[1], view.upward[1]
    cross = (
        across[1] * upward[2] - across[2] * upward[1],
        across[2] * upward[0] - across[0] * upward[2],
        across[0] * upward[1] - across[1] * upward[0],
    )
    assert cross == eye


def test_views_of_a_pair_share_a_direction_of_the_paper():
    for pair in PAIRS:
        one, other = pair.views
        assert (one.upward == other.upward) if pair.beside else (one.across == other.across)


def test_left_is_drawn_left_and_right_right():
    for name, side in (("left_leg", -1), ("right_leg", 1)):
        _, drawing = drawn(name)
        first, last = [mark.at for mark in drawing.marks if isinstance(mark, Dot)][:2]
        assert (last[0] - first[0]) * side > 0


@pytest.mark.parametrize("name", ["left_leg", "right_leg", "left_pedal", "left_tail", "right_tail"])
def test_no_label_covers_another_or_the_line_or_leaves_the_drawing(name):
    _, drawing = drawn(name)
    labels = [mark for mark in drawing.marks if isinstance(mark, Label) and mark.anchor == "middle"]
    boxes = [box_of(label) for label in labels]
    assert not [pair for pair in combinations(boxes, 2) if pair[0].meets(pair[1])]
    room = Box(0, 0, *drawing.size)
    assert all(box.inside(room) for box in boxes)
    heaviest = max(mark.weight for mark in drawing.marks if isinstance(mark, Stroke))
    path = [
        piece for mark in drawing.marks
        if isinstance(mark, Stroke) and mark.weight == heaviest for piece in pairwise(mark.points)
    ]  # fmt: skip
    assert not [label.text for label, box in zip(labels, boxes, strict=True) if any(map(box.cuts, path))]


def test_bends_straights_ends_and_clamps_are_marked():
    line, drawing = drawn("left_leg")
    texts = [mark.text.strip() for mark in drawing.marks if isinstance(mark, Label)]
    assert texts.count("A") == texts.count("B") == 2
    assert {"1  58.6\u00b0", "2  39.1\u00b0", "3  33.1\u00b0"} <= set(texts)
    assert {"1.88 in", "3.15 in", "30.87 in", "2.01 in"} <= set(texts)
    assert {f"c{n}" for n in range(1, len(line.supports.stations) + 1)} <= set(texts)


def test_a_declared_path_is_dashed_and_labelled_so():
    _, drawing = drawn("left_tail")
    assert any(mark.dashed for mark in drawing.marks if isinstance(mark, Stroke))
    assert "declared path" in drawing.caption


def test_a_path_with_unknown_ends_is_drawn_as_far_as_it_is_known():
    text = """
firmpedal: 1
aircraft: {name: Bench, gear: tailwheel, brakes: toe, landing weight: 1000 lb}
units: {length: in}
fluid: MIL-PRF-5606
components:
  caliper: {kind: caliper, pistons: {bore: 1.5, count per side: 1},
            ports: {inlet: {thread: 1/8 NPT female, faces: up, seat: unknown}, other: {thread: 1/8 NPT female,
            faces: up, seat: unknown}}}
lines:
  piece:
    from: caliper.inlet
    to: caliper.other
    made of: plastic nylon 1/4 x .040
    via: [[0, 0, 0], [4, 0, 0], [4, 3, 0]]
"""
    from firmpedal.pipeline import evaluate_text  # noqa: PLC0415

    evaluation = evaluate_text(text)
    drawing = picture(evaluation.laid[0], evaluation.display)
    texts = [mark.text for mark in drawing.marks if isinstance(mark, Label)]
    assert "2" in texts
    assert "A" not in texts
    assert path_lengths(drawing)


def test_a_line_of_many_bends_stays_within_the_drawing():
    evaluation = awkward()
    drawing = picture(evaluation.laid[0], evaluation.display)
    room = Box(0, 0, *drawing.size)
    assert all(
        box_of(mark).inside(room)
        for mark in drawing.marks
        if isinstance(mark, Label) and mark.anchor == "middle"
    )


def test_a_label_goes_to_the_free_side_of_a_line():
    placer = Placer(Box(0, 0, 200, 200))
    placer.segments.append(((0, 100), (200, 100)))
    placer.boxes.append(Box(0, 100, 200, 200))
    (label,) = placer.place("below", (100, 100), math.pi / 2, 10)
    assert box_of(label).high < 100


def test_a_crowded_label_gets_a_leader_to_its_point():
    placer = Placer(Box(0, 0, 200, 200))
    placer.boxes.append(Box(70, 70, 130, 130))
    leader, label = placer.place("far", (100, 100), 0.0, 10)
    assert leader.points[0] == (100, 100)
    assert not box_of(label).meets(Box(70, 70, 130, 130))


def test_words_keep_off_a_line_that_is_drawn_thick():
    placer = Placer(Box(0, 0, 200, 200), thick=12)
    placer.segments.append(((0, 100), (100, 100)))
    (end,) = placer.place("A", (100, 100), 0.0, 10)
    (beside,) = placer.place("1.5 in", (50, 100), math.pi / 2, 10)
    for label in (end, beside):
        assert not box_of(label).grown(12).cuts(((0, 100), (100, 100)))


@pytest.mark.parametrize("option", [None, "rigid", "all hose"])
def test_a_line_fills_its_drawing_and_the_bar_is_no_longer_than_it(option):
    evaluation = example(option)
    for line in evaluation.laid:
        drawing = picture(line, evaluation.display)
        if drawing is None:
            continue
        strokes = [mark for mark in drawing.marks if isinstance(mark, Stroke)]
        heaviest = max(stroke.weight for stroke in strokes if stroke.weight != CLAMP)
        path = [point for each in strokes if each.weight == heaviest for point in each.points]
        across, upward = ([point[n] for point in path] for n in (0, 1))
        assert max(upward) - min(upward) > 40
        label = next(mark for mark in drawing.marks if isinstance(mark, Label) and "scale" in mark.text)
        bar = float(label.text.partition(" in,")[0]) * POINTS_PER_INCH / scale_of(drawing)
        assert bar <= max(max(across) - min(across), max(upward) - min(upward))
