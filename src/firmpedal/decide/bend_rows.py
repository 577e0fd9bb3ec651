"""Bends as feed, rotation and angle, read from the rows of a table."""

from __future__ import annotations

from math import pi, remainder
from typing import TYPE_CHECKING

from firmpedal.decide.listing import ListError
from firmpedal.decide.shape_rows import counted
from firmpedal.lay.half_bent import BendData
from firmpedal.lay.shape import Bend

if TYPE_CHECKING:
    from firmpedal.decide.shape_rows import ShapeRow

PLANE = "plane"  # the plane of bend turns, by the right hand with the thumb along the feed
TUBE = "tube"  # the tube turns in a bender that stays put: the other sign
SIGN_WORDS = {
    PLANE: "rotation: the plane of the next bend, right hand with the thumb along the feed, first bend 0",
    TUBE: "rotation: the tube itself in a bender that stays put, right hand with the thumb along the feed, "
    "first bend 0",
}
END = "end"  # in the column `bend`: the row with the last straight
SAME_ROTATION = 1e-9  # from nothing, or from half a turn: both signs mean the same
SAME_RADIUS = 1e-9  # m


def bends_of(lines: list[ShapeRow], turns: str | None) -> BendData:
    """Read the rows of one line, its last straight in the row `end`.

    Args:
        lines: In order from the first end.
        turns: `plane` or `tube`, what a rotation turns; None where nobody has said it.

    Raises:
        ListError: A row cannot be understood, or contradicts the others.
    """
    straights, bends = [], list[Bend]()
    for count, line in enumerate(lines, 1):
        straights.append(_not_below(line, "straight before", 0.0))
        if line.text("bend").casefold() == END:
            if count < len(lines):
                words = f"{line.text('line') or 'the line'} goes on after its last straight"
                raise ListError(words, "put the row `end` last", lines[count].number)
            _check_end(line, bends)
            return BendData(tuple(straights), tuple(bends))
        counted(line, "bend", count)
        bends.append(_bend(line, count, turns))
    words = f"{lines[0].text('line') or 'the line'} has no row `end` with its last straight"
    raise ListError(words, "add the row, with `end` under bend", lines[-1].number)


def _bend(line: ShapeRow, number: int, turns: str | None) -> Bend:
    angle, radius = _not_below(line, "angle", 0.0), _not_below(line, "radius", 0.0)
    if not 0 < angle < pi:
        words = "a bend turns by more than nothing and less than 180 degrees"
        raise line.refused("angle", words, "give how far the tube turns, 0 is straight")
    if radius == 0:
        raise line.refused("radius", "a tube has no bend of radius 0", "give it to the centre line")
    rotation = line.figure("rotation") if number > 1 else _no_rotation(line)
    if turns is None and SAME_ROTATION < abs(rotation) < pi - SAME_ROTATION:
        words = "the table does not say what turns by a rotation, and so not which way"
        advice = "--rotation plane (the plane of bend turns) or --rotation tube (the tube turns)"
        raise line.refused("rotation", words, advice)
    return Bend(number, angle, -rotation if turns == TUBE else rotation, radius, 0.0)


def _no_rotation(line: ShapeRow) -> float:
    """The first bend has none before it to be turned from; a table that gives one means something else by it.

    It may count from a mark in a machine, or stand one row too high: then every other one does too.
    """
    rotation = line.figure_or_none("rotation")
    if abs(remainder(rotation, 2 * pi)) > SAME_ROTATION:
        words = (
            f"bend 1 has a rotation of {line.text('rotation')}, and there is no bend before it to turn from"
        )
        advice = (
            "write 0 there if it only says how the tube begins in the machine; if each rotation stands in "
            "the row of the bend before it, move them all one row down"
        )
        raise line.refused("rotation", words, advice)
    return 0.0


def _check_end(line: ShapeRow, bends: list[Bend]) -> None:
    """After the last straight nothing is turned or bent: figures that say so are no slip to pass over."""
    for name, is_done in (("rotation", "turned"), ("angle", "bent")):
        if abs(line.figure_or_none(name)) > SAME_ROTATION:
            given = line.text(name)
            words = f"the row `end` has {name} {given}, but after the last straight nothing is {is_done}"
            advice = (
                "give the bend its number, and add a row `end` with the straight after it"
                if name == "angle"
                else "leave it empty; if each rotation stands one row too low, move them all one row up"
            )
            raise line.refused(name, words, advice)
    radius = line.figure_or_none("radius")
    if radius and not any(abs(radius - bend.radius) <= SAME_RADIUS for bend in bends):
        words = f"the row `end` has radius {line.text('radius')}, and no bend of this line has it"
        raise line.refused("radius", words, "leave it empty, or put the radius of the bends right")


def _not_below(line: ShapeRow, name: str, least: float) -> float:
    figure = line.figure(name)
    if figure < least:
        raise line.refused(name, f"{name} is below nothing here", "give it without a minus")
    return figure
