"""Each line in space: path, bends, lengths to cut and order, clamps and heights, with their story."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from firmpedal.formulas.attitude import height
from firmpedal.hashing import HashKept, hash_kept
from firmpedal.lay.hose import HoseLengths, hose_lengths
from firmpedal.lay.line_run import LineRun, run_of
from firmpedal.lay.movement import Carried, Travel, travel
from firmpedal.lay.supports import Supports, supports_of
from firmpedal.lay.tube import TubeShape, tube_shape
from firmpedal.lay.work import TubeWork, tube_work
from firmpedal.model.stock import Hose, LineKind
from firmpedal.quantity import Value, apply

if TYPE_CHECKING:
    from firmpedal.lay.shape import Point
    from firmpedal.model.bench import Bench
    from firmpedal.model.circuit import Expansion, Line, Stiffness, Swells
    from firmpedal.model.space import Position
    from firmpedal.model.stock import Stock
    from firmpedal.model.surroundings import Attitude, State


@dataclass(frozen=True, slots=True)
class LineSetting:
    """Everything that the shape of one line depends on, and nothing else."""

    line: Line
    start: Carried
    finish: Carried
    bench: Bench
    states: tuple[State, ...]
    attitudes: tuple[Attitude, ...]


@dataclass(frozen=True, slots=True)
class Height:
    """How high a point of a line stands in one attitude."""

    attitude: str
    point: int
    value: Value


@hash_kept
@dataclass(frozen=True, slots=True)
class LaidLine(HashKept):
    """One line as it lies: `tube` for bent tube, `hose` for hose; plastic has neither."""

    name: str
    place: str
    kind: LineKind
    stock: Stock
    points: tuple[Position, ...]
    path_length: Value
    travel: Travel
    tube: TubeShape | None
    work: TubeWork | None
    hose: HoseLengths | None
    supports: Supports
    heights: tuple[Height, ...]
    swells: Swells
    expansion_curve: tuple[Expansion, ...]
    stiffness: Stiffness

    @property
    def run(self) -> LineRun:
        """The line as its surroundings see it: where it is, and how thick."""
        return run_of(self)

    @property
    def path(self) -> tuple[Point, ...] | None:
        """The corner points as plain numbers; None while one is unknown."""
        return self.run.path

    @property
    def drawn_width(self) -> float:
        """How wide it is drawn [m]: a hose whose outside nobody knows is drawn by its bore."""
        bore = self.stock.bore if isinstance(self.stock, Hose) else self.stock.outside_diameter
        outside = self.stock.outside_diameter
        return outside.middle if outside.known or not bore.known else bore.middle

    @property
    def developed_length(self) -> Value | None:
        return self.tube.developed_length if self.tube else None

    @property
    def cut_length(self) -> Value | None:
        """What to cut: tube with its flares; plastic at its path; a hose is bought, not cut."""
        if self.tube:
            return self.tube.cut_length
        return None if self.hose else self.path_length

    @property
    def order_length(self) -> Value:
        """What to buy for this line."""
        if self.hose:
            return self.hose.order_length
        return self.cut_length or self.path_length


@lru_cache(maxsize=4096)
def lay_line(setting: LineSetting) -> LaidLine:
    """Lay one line; remembered for as long as nothing that it depends on changes."""
    line = setting.line
    points = (setting.start.position, *line.via, setting.finish.position)
    moved = travel(setting.start, setting.finish, setting.states, line.place)
    tube = work = hose = None
    stock = line.stock
    if isinstance(stock, Hose):
        hose = hose_lengths(line, setting.start, setting.finish, setting.states)
        path = hose.path_length
    else:
        shape = tube_shape(line, stock, points, setting.bench)
        path = shape.path_length
        if stock.kind is LineKind.TUBE:
            tube, work = shape, tube_work(shape, stock, setting.bench.bender, line.place)
    supports = supports_of(line, tube.centreline if tube else None, tube.developed_length if tube else path)
    heights = tuple(_heights(points, setting.attitudes, line.place))
    return LaidLine(
        line.name,
        line.place,
        stock.kind,
        stock,
        points,
        path,
        moved,
        tube,
        work,
        hose,
        supports,
        heights,
        line.swells,
        line.expansion_curve,
        line.stiffness,
    )


def _heights(points: tuple[Position, ...], attitudes: tuple[Attitude, ...], place: str) -> list[Height]:
    return [
        Height(
            attitude.name,
            number,
            apply(
                height,
                f"height of point {number + 1} when {attitude.name}",
                place=f"{place}.height {number + 1}",
                aft=point.aft,
                up=point.up,
                nose_up_angle=attitude.nose_up,
            ),
        )
        for attitude in attitudes
        for number, point in enumerate(points)
    ]
