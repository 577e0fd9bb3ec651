"""The picture in one setting: where lines and bodies are in it, how the aircraft stands, where air stays."""

from __future__ import annotations

import json
from dataclasses import asdict, dataclass
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.analysis.heights import LEAST_DEPTH
from firmpedal.lay.placed import course_in, points_in, unmeasured_in, with_shares

if TYPE_CHECKING:
    from collections.abc import Iterator

    from numpy.typing import NDArray

    from firmpedal.lay.states import Setting
    from firmpedal.model.space import Point
    from firmpedal.model.surroundings import State
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Missing
    from firmpedal.web.space.scene import Scene

    Array = NDArray[np.float64]

UNIT_CUBE = np.array([[0.0, 0, 0], [1, 0, 0], [0, 1, 0], [0, 0, 1]])
FIGURES = 6  # decimals of a metre: a thousandth of a millimetre


@dataclass(frozen=True, slots=True, eq=False)
class Pose:
    """Where everything is: points of each line, 4 by 4 matrices of bodies that moved, the nose's angle up.

    `high` are the high points in which air stays, each with its line and words; `missing` is what to measure
    before the rest of what moves can be shown moved.
    """

    lines: dict[str, Array]
    bodies: dict[str, Array]
    nose_up: float
    high: tuple[tuple[str, Point, str], ...]
    missing: tuple[Missing, ...]
    moved: bool = False  # whether a line is elsewhere than where it was measured


def pose_of(evaluation: Evaluation, scene: Scene, setting: Setting, attitude: str) -> Pose:
    """Bring the picture into a setting of the states and into an attitude; both may be empty.

    Args:
        evaluation: What was worked out.
        scene: The picture as measured.
        setting: The states that are other than as measured.
        attitude: One of the file's attitudes; empty for the aircraft as measured.
    """
    states = evaluation.aircraft.states
    lines = {
        way.key: course_in(with_shares(way.points, way.stations), way.ends, states, (setting,))[0]
        for way in scene.ways
    }
    carried = [end for way in scene.ways for end in way.ends]
    carried += [thing.carried for thing in scene.things]
    missing = [item for each in carried for item in unmeasured_in(each, states, setting)]
    bodies = {thing.key: points_in(UNIT_CUBE, thing.carried, states, (setting,))[0] for thing in scene.things}
    moved = {key: _matrix(cube) for key, cube in bodies.items() if not np.allclose(cube, UNIT_CUBE)}
    return Pose(
        lines,
        moved,
        _nose_up(evaluation, attitude),
        tuple(_high(evaluation, scene, lines, attitude)),
        tuple(dict.fromkeys(missing)),
        any(not np.allclose(lines[way.key], way.points) for way in scene.ways),
    )


def _matrix(cube: Array) -> Array:
    """The rigid movement that brings the unit vectors to where they are."""
    matrix = np.eye(4)
    matrix[:3, 3] = cube[0]
    matrix[:3, :3] = (cube[1:] - cube[0]).T
    return matrix


def _nose_up(evaluation: Evaluation, attitude: str) -> float:
    found = next((each for each in evaluation.aircraft.attitudes if each.name == attitude), None)
    return found.nose_up.middle if found is not None and found.nose_up.known else 0.0


def _high(
    evaluation: Evaluation, scene: Scene, lines: dict[str, Array], attitude: str
) -> Iterator[tuple[str, Point, str]]:
    """The high points of one attitude, each where its line comes nearest to its height and place."""
    names = {line.name: line.place for line in evaluation.laid}
    looked = evaluation.results.heights.attitudes
    as_it_stands = attitude or (looked[0] if looked and not evaluation.aircraft.attitudes else "")
    for trap in evaluation.results.heights.traps:
        depth, way = dict(trap.depths).get(as_it_stands), scene.way(names.get(trap.spot.line, ""))
        if depth is None or depth.high <= LEAST_DEPTH or way is None:
            continue
        off = np.hypot(way.points[:, 0] - trap.spot.aft.middle, way.points[:, 2] - trap.spot.up.middle)
        x, y, z = lines[way.key][int(np.argmin(off))]
        words = f"{trap.spot.near}: air stays, {evaluation.display.value(depth)} deep"
        yield way.key, (float(x), float(y), float(z)), words


def setting_of(chosen: dict[str, float | str], states: tuple[State, ...]) -> Setting:
    """The states that are set by hand, in the order of the file; those that are gone are left out."""
    return tuple((state.name, chosen[state.name]) for state in states if state.name in chosen)


def scene_json(scene: Scene) -> str:
    """The picture as measured, for the browser."""
    ways = [
        {
            "key": way.key,
            "name": way.name,
            "kind": way.kind,
            "radius": _plain(way.radius),
            "stations": _plain(way.stations),
            "points": _plain(way.points),
            "corners": [asdict(each) for each in way.corners],
            "clamps": [asdict(each) for each in way.clamps],
        }
        for way in scene.ways
    ]
    things = [
        {"key": each.key, "name": each.name, "sort": each.sort, "solids": [asdict(s) for s in each.solids]}
        for each in scene.things
    ]
    return json.dumps({"lines": ways, "things": things, "room": [scene.room.low, scene.room.high]})


def pose_json(pose: Pose) -> str:
    """Where everything is, for the browser."""
    return json.dumps(
        {
            "lines": {key: _plain(points) for key, points in pose.lines.items()},
            "things": {key: _plain(matrix.T.flatten()) for key, matrix in pose.bodies.items()},
            "noseUp": pose.nose_up,
            "high": pose.high,
        }
    )


def _plain(numbers: Array | float) -> object:
    return np.round(numbers, FIGURES).tolist()
