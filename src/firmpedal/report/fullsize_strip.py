"""What stands on the marking strip of a tube, taken from its work at the bench."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.report.bend_blocks import MARK_WORDS
from firmpedal.report.clock import ring
from firmpedal.report.lengths import degrees, on_tape, to_mark
from firmpedal.report.remarks import length_remark
from firmpedal.report.sheet import Paragraph
from firmpedal.report.strip import Flag, Strip
from firmpedal.report.twins import twin_words
from firmpedal.report.views import POINTS_PER_METRE
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.tube import TubeShape
    from firmpedal.lay.work import TubeWork
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value

ENDS = {"from": "A", "to": "B"}
MARKING_WORDS = (
    "Lay the tube on it, its flare at A on the line there, or while A is not flared yet on the lower line, "
    "cut end. Mark with a felt pen, never a scriber."
)
TELLS = 0.0005  # a range wider than what a tape and a pen can tell [m]
SCALES = {"in": (1.0, 1), "mm": (20.0, 20)}  # how far apart the numbered ticks are, and what they count


def strip_of(evaluation: Evaluation, line: LaidLine) -> Strip:
    """Lay out the strip of a tube whose shape is known.

    Raises:
        ValueError: It is not.
    """
    tube, work = line.tube, line.work
    if tube is None or work is None or tube.centreline is None:
        raise ValueError(f"{line.name} has no known shape")
    unit = evaluation.display.unit(Dimension.LENGTH)
    name = unit if unit in SCALES else "mm"
    step, number = SCALES[name]
    length, spare = _points(tube.developed_length), allowance(tube)
    stations = tube.centreline.tangent_stations
    arcs = tuple(
        (stations[2 * n + 1] * POINTS_PER_METRE, stations[2 * n + 2] * POINTS_PER_METRE)
        for n in range(len(tube.bends))
    )
    flags = (
        *_end_flags(evaluation, tube, spare),
        *_bend_flags(evaluation, tube, work),
        *_clamp_flags(evaluation, line),
    )
    return Strip(
        outside_diameter=_points(line.stock.outside_diameter),
        cut=(-spare, length + spare),
        flared=(0.0, length),
        arcs=arcs,
        flags=flags,
        name=line.name,
        scale=from_unit(step, name) * POINTS_PER_METRE,
        scale_number=number,
    )


def _points(length: Value) -> float:
    return length.middle * POINTS_PER_METRE


def allowance(tube: TubeShape) -> float:
    """What one flare takes of the tube, in points; none where that is unknown."""
    if not tube.cut_length.known:
        return 0.0
    return (tube.cut_length.middle - tube.developed_length.middle) * POINTS_PER_METRE / 2


def _end_flags(evaluation: Evaluation, tube: TubeShape, spare: float) -> Iterator[Flag]:
    """Where the tube begins and ends, once it is flared and before."""
    show, length = evaluation.display, _points(tube.developed_length)
    yield Flag(0.0, ("A flared", "end of the flare"), weight=0.4)
    yield Flag(length, ("B flared", on_tape(tube.developed_length, show)), weight=0.4)
    if tube.cut_length.known:
        yield Flag(-spare, ("cut end",), above=False, weight=0.4)
        yield Flag(length + spare, (f"cut {on_tape(tube.cut_length, show)}",), above=False, weight=0.4)


def _bend_flags(evaluation: Evaluation, tube: TubeShape, work: TubeWork) -> Iterator[Flag]:
    held = {known.held for known in work.bends}
    for number, (bend, known) in enumerate(zip(tube.bends, work.bends, strict=True), 1):
        ask = degrees(known.ask) if known.ask.known else "____\u00b0"
        words = f"{degrees(bend.angle)}, set {ask}"
        words += f", hold {ENDS[known.held]}" if len(held) > 1 else ""
        yield Flag(_points(known.mark), (f"{ring(number)} {to_mark(known.mark, evaluation.display)}", words))


def _clamp_flags(evaluation: Evaluation, line: LaidLine) -> Iterator[Flag]:
    for number, station in enumerate(line.supports.stations, 1):
        words = f"c{number} {on_tape(station, evaluation.display)}"
        yield Flag(_points(station), (words,), above=False, weight=0.5)


def strip_words(evaluation: Evaluation, line: LaidLine, count: int) -> str:
    """What the strip is, how it is put together, and what speaks against using it as it is."""
    tube = line.tube
    if tube is None:
        return ""
    remarks = length_remark(tube.cut_length, "cut")
    found = [f"CAUTION: {each.text}" for each in remarks if isinstance(each, Paragraph)]
    if not tube.cut_length.known:
        found.append("CAUTION: the cut length is unknown, because what a flare takes is.")
    low, high = tube.developed_length.span or (0.0, 0.0)
    if high - low > TELLS:
        found.append("CAUTION: drawn for the middle of a range of lengths. Fit before you cut.")
    found.append(f"{line.stock.phrase[:1].upper()}{line.stock.phrase[1:]}, still straight.")
    if count > 1:
        found.append(
            f"Cut out its {count} pieces. At J1 cut one of two along the dashed line, lay it on the other, "
            "cross on cross, and glue; so on."
        )
    length = on_tape(tube.developed_length, evaluation.display)
    found.append(f"From flare to flare the strip must measure {length}.")
    if tube.bends:
        held = {known.held for known in line.work.bends} if line.work else set()
        side = f", held on the side of {ENDS[held.pop()]}" if len(held) == 1 else ""
        mark = MARK_WORDS[evaluation.aircraft.bench.bender.mark]
        found.append(f"A mark is {mark}{side}; c1 and on are clamps.")
    twin = twin_words(evaluation, line)
    return " ".join([*found, twin] if twin else found)
