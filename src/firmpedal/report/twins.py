"""Lines that are the same tube again, or its mirror image."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from firmpedal.model.display import listed
from firmpedal.report.tube_work import finish_of
from firmpedal.units import from_unit

if TYPE_CHECKING:
    from firmpedal.lay.line import LaidLine
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value
    from firmpedal.report.tube_work import Finish

SAME_LENGTH = from_unit(0.005, "in")  # below what a tape and a pen can tell
SAME_ANGLE = math.radians(0.05)
TURNED = "same cut, marks and bends, turned the other way"
BY_ITS_CARD = "not finished like it: go by the order of work on each card."


def twin_words(evaluation: Evaluation, line: LaidLine) -> str:
    """Say which other lines are made alike, and what differs; empty where none is."""
    others = [other for other in evaluation.laid if other.name != line.name]
    same = [other for other in others if _alike(line, other, 1)]
    mirrored = [other for other in others if other not in same and _alike(line, other, -1)]
    words = []
    own = finish_of(evaluation, line) if same or mirrored else None
    alike, not_quite = _parted(evaluation, same, own)
    if alike:
        words.append(f"The same tube as {listed(alike)}: make one more of it.")
    if not_quite:
        words.append(f"Cut and bent as {listed(not_quite)}, but {BY_ITS_CARD}")
    alike, not_quite = _parted(evaluation, mirrored, own)
    if alike:
        words.append(f"Mirror image of {listed(alike)}: {TURNED}.")
    if not_quite:
        words.append(f"Mirror image of {listed(not_quite)}: {TURNED}, but {BY_ITS_CARD}")
    return " ".join(words)


def _parted(
    evaluation: Evaluation, others: list[LaidLine], own: Finish | None
) -> tuple[list[str], list[str]]:
    """The names of those that are finished as this tube is, and of those that are not."""
    alike = [other.name for other in others if finish_of(evaluation, other) == own]
    return alike, [other.name for other in others if other.name not in alike]


def _alike(one: LaidLine, other: LaidLine, hand: int) -> bool:
    """Whether two bent tubes agree in all lengths and angles, with turns alike (1) or opposite (-1)."""
    first, second = one.tube, other.tube
    if first is None or second is None or not (first.straights and second.straights):
        return False
    if len(first.bends) != len(second.bends) or one.stock.phrase != other.stock.phrase:
        return False
    lengths = _agree(first.straights, second.straights, SAME_LENGTH)
    pairs = list(zip(first.bends, second.bends, strict=True))
    bends = all(
        _near(a.angle, b.angle, SAME_ANGLE) and _near(a.radius, b.radius, SAME_LENGTH) for a, b in pairs
    )
    return lengths and bends and all(_turned_alike(a.rotation, b.rotation, hand) for a, b in pairs)


def _agree(one: tuple[Value, ...], other: tuple[Value, ...], within: float) -> bool:
    return all(_near(a, b, within) for a, b in zip(one, other, strict=True))


def _near(one: Value, other: Value, within: float) -> bool:
    return one.known and other.known and abs(one.middle - other.middle) <= within


def _turned_alike(one: Value, other: Value, hand: int) -> bool:
    """Compare turns round the clock: half a turn either way is the same."""
    if not (one.known and other.known):
        return False
    return abs(math.remainder(one.middle - hand * other.middle, 2 * math.pi)) <= SAME_ANGLE
