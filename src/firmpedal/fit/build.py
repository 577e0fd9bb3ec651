"""A joint made of parts and links, and what to say where a line end could not be joined as asked."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from firmpedal.fit.explain import ANY_PART, mismatch_of
from firmpedal.fit.joint import Joint, Mating, Mismatch, MismatchKind
from firmpedal.fit.kinds import described
from firmpedal.fit.mating import bodies_first, ends_of, left_over, mates
from firmpedal.fit.runs import found_run, turns_of
from firmpedal.fit.shop import angle_words, degrees
from firmpedal.fit.ways import STRAIGHT, Aim, ways_to
from firmpedal.fit.wishes import wishes_of
from firmpedal.model.space import SAME_ANGLE

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from firmpedal.fit.joint import EndRef, LineEnd, Refusal
    from firmpedal.fit.mating import Link
    from firmpedal.fit.runs import Run
    from firmpedal.fit.shop import Shop
    from firmpedal.model.part import Part


_SAME_ANGLE = 1e-5  # degrees


def made_joint(
    name: str,
    place: str,
    parts: Sequence[Part],
    links: Sequence[Link],
    outer: Iterable[EndRef],
    shop: Shop,
    refused: tuple[Refusal, ...] = (),
    mismatches: Iterable[Mismatch] = (),
) -> Joint:
    """Join what mates, say of each link that does not why not, and name the ends left open.

    `outer` are the ports and line ends that belong to the joint.
    """
    joined = [link.mismatch is None and mates(link.one.interface, link.other.interface) for link in links]
    matings = tuple(Mating(link.one, link.other) for link, good in zip(links, joined, strict=True) if good)
    wrong = [
        link.mismatch or mismatch_of(link.one, link.other, shop, parts)
        for link, good in zip(links, joined, strict=True)
        if not good
    ]
    open_ends = left_over([*outer, *ends_of(parts)], matings)
    return Joint(name, place, tuple(parts), matings, refused, (*wrong, *mismatches), open_ends)


def aim_of(line: LineEnd) -> Aim:
    """Say where the chain from a port should point for a line."""
    if line.turn is not None:
        return Aim(degrees(line.turn), declared=True)
    if line.points is not None:
        return Aim(degrees(line.points))
    return STRAIGHT if line.leaves is None else Aim(degrees(line.leaves))


def aim_within_reach(line: LineEnd, turns: Iterable[float]) -> Aim:
    """Say where the chain should point, as one of the turns [deg] that there are.

    Where the builder says which way the elbow points, a turn that makes it is met whatever it costs; where
    there is none, the nearest is the best there is.
    """
    aim = aim_of(line)
    if line.turn is not None or line.points is None:
        return aim
    nearest = min(turns, key=lambda turn: abs(turn - aim.angle), default=math.inf)
    return Aim(nearest, declared=True) if abs(nearest - aim.angle) <= degrees(SAME_ANGLE) else aim


def points_elsewhere(run: Run, line: LineEnd, start: EndRef, goal: EndRef) -> list[Mismatch]:
    """Say where no way of turning the fittings brings the line out as the builder says that it points."""
    turns = turns_of(run)
    if line.points is None or not run.parts or len(turns) > 1:
        return []
    wanted, turn = degrees(line.points), sum(turns)
    if abs(turn - wanted) <= degrees(SAME_ANGLE):
        return []
    made = next((part.designation for part in run.parts if part.turn), "")
    turning = f"{made} turns by {angle_words(turn)}" if made else "the fittings are straight"
    words = (
        f"the elbow is said to point {angle_words(wanted)} off the way the port faces, and {turning}: "
        "however it is turned, it does not point there"
        if wanted
        else f"the line is said to go straight on from the port, and {turning}"
    )
    return [Mismatch(MismatchKind.POINTS, start, goal, words)]


def not_as_asked(start: EndRef, goal: EndRef, line: LineEnd, shop: Shop, material: str = "") -> Mismatch:
    """Say why no chain was found: the angle asked for, the metal asked for, or because nothing joins them."""
    wishes = wishes_of(line, material)
    one, other = start.interface, goal.interface
    if found_run(one, other, wishes, shop):
        turns = {turn for turn, _ in ways_to(other, wishes, shop)[one]}
        return Mismatch(MismatchKind.TURN, start, goal, turn_words(aim_of(line).angle, turns))
    if found := found_run(one, other, ANY_PART, shop):
        needed = tuple(bodies_first(found.parts))
        words = (
            f"nothing of the metal wanted joins {described(one)} to {described(other)}; there is "
            + ", ".join(f"{part.designation} ({part.material})" for part in needed)
        )
        return Mismatch(MismatchKind.NO_PARTS, start, goal, words, tuple(part.designation for part in needed))
    return mismatch_of(start, goal, shop)


def turn_words(wanted: float, turns: Iterable[float]) -> str:
    """Say that nothing turns by an angle, what there is, and why two elbows are no answer."""
    known = sorted(turns)
    if wanted in known:
        return "the body turns already, and two elbows in series do not settle where the line points"
    words = (
        f"nothing here is {angle_words(wanted)}; there is {', '.join(angle_words(turn) for turn in known)}"
    )
    if any(abs(one + other - wanted) < _SAME_ANGLE for one in known if one for other in known if other):
        return f"{words}; two elbows in series do not settle where the line points"
    return words


def contradictions(run: Run, line: LineEnd, start: EndRef, goal: EndRef) -> list[Mismatch]:
    """Say where declared fittings turn the line otherwise than the angle declared beside them."""
    turns = turns_of(run)
    if line.turn is None or len(turns) > 1 or sum(turns) == degrees(line.turn):
        return []
    words = (
        f"the declared fittings are {angle_words(sum(turns))}; {angle_words(degrees(line.turn))} is declared"
    )
    return [Mismatch(MismatchKind.TURN, start, goal, words)]
