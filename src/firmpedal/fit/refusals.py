"""What else was looked at for a joint, and why it was not taken."""

from __future__ import annotations

from dataclasses import dataclass
from enum import IntEnum
from typing import TYPE_CHECKING, NamedTuple

from firmpedal.fit.joint import MismatchKind, Refusal
from firmpedal.fit.kinds import described, kind_of, nearness, system
from firmpedal.fit.mating import NUTS_AND_SLEEVES, dressed
from firmpedal.fit.shop import angle_words
from firmpedal.fit.ways import Aim, best_cost_through, passes_in
from firmpedal.model.display import count_of

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.fit.shop import Shelf, Shop
    from firmpedal.fit.ways import Cost
    from firmpedal.fit.wishes import Wishes
    from firmpedal.model.part import Interface, Part

MOST_REFUSALS = 12

_OTHER_SIZE = frozenset({MismatchKind.DASH_SIZE, MismatchKind.METRIC_TUBE, MismatchKind.FLARE_ANGLE})


class Near(IntEnum):
    """How near a part came to being taken; the nearest is told first."""

    ANGLE = 0
    MASS = 1
    SAME = 2
    METAL = 3
    MORE = 4
    LINE_SIZE = 5
    STRUCTURE = 6
    LOW_PRESSURE = 7
    NO_WAY = 8
    PORT = 9


class Reason(NamedTuple):
    """Why a part was not taken, in a form that sorts the nearest first."""

    near: Near
    distance: float
    words: str


def gathered(reasons: Iterable[tuple[Reason, Shelf, Part]]) -> tuple[Refusal, ...]:
    """Order reasons by nearness, put parts with the same reason together, and keep the nearest."""
    ordered = sorted(reasons, key=lambda item: (item[0].near, item[0].distance, item[1].rank, item[0].words))
    merged: dict[str, list[str]] = {}
    for reason, _, part in ordered:
        merged.setdefault(reason.words, []).append(part.designation)
    refusals = [Refusal(tuple(designations), words) for words, designations in merged.items()]
    return tuple(refusals[:MOST_REFUSALS])


def objection(part: Part, wishes: Wishes) -> Reason | None:
    """Give the reason that does not depend on the rest of the joint: pressure or metal."""
    words = wishes.objection(part)
    if not words:
        return None
    return Reason(Near.METAL if part.brake_pressure else Near.LOW_PRESSURE, 0, words)


def does_not_mate(end: Interface, other: Interface, whose: str) -> str:
    """Say why one end of a part does not go with a port's or line's."""
    match kind_of(end, other):
        case MismatchKind.FLARE_ANGLE:
            return f"its {end.form} never goes with the {whose}'s {system(other)}"
        case MismatchKind.METRIC_AND_PIPE:
            return (
                f"its {end.size} {end.form} is not for the {whose}'s {other.size} {other.form}: "
                "they may start by hand, then wedge or leak"
            )
        case MismatchKind.DASH_SIZE | MismatchKind.METRIC_TUBE | MismatchKind.THREAD_SIZE:
            return f"its {end.size} {system(end)} does not mate with the {whose}'s {other.size}"
        case _:
            return f"its {described(end)} does not mate with the {whose}'s {described(other)}"


def dearer(part: Part, cost: Cost, best: Cost, aim: Aim | None, with_it: Iterable[Part]) -> Reason:
    """Say by what a joint with a part is worse than the best one.

    Args:
        part: The part.
        cost: What the best joint with it costs.
        best: What the joint taken costs.
        aim: Where the joint should point, None where nothing asks for an angle.
        with_it: The bodies that the joint with this part needs besides.
    """
    leaks, more = cost.leak_paths - best.leak_paths, cost.parts - best.parts
    odd = "its open end is of another size than the line"
    metal = f"{part.material}: another metal is taken only where nothing else joins"
    steps = (
        (cost.open_lines > best.open_lines, Reason(Near.NO_WAY, 0, "leaves a line end open")),
        (cost.bare_threads > best.bare_threads, Reason(Near.NO_WAY, 0, "there is no jam nut for it")),
        (cost.unlike_metals > best.unlike_metals, Reason(Near.METAL, 0, metal)),
        (leaks > 0 or more > 0, Reason(Near.MORE, leaks + more / 10, _more_words(leaks, more, with_it))),
        (cost.odd_ends > best.odd_ends, Reason(Near.LINE_SIZE, 0, odd)),
        (_angle(cost) > _angle(best), Reason(Near.ANGLE, cost.off_angle, _angle_reason(cost, best, aim))),
        (_mass(cost) > _mass(best), Reason(Near.MASS, 0, f"heavier: {part.material}")),
    )
    same = Reason(Near.SAME, 0, "as good in every way that counts")
    return next((reason for worse, reason in steps if worse), same)


def _angle(cost: Cost) -> tuple[float, float]:
    return cost.off_angle, cost.turn


def _mass(cost: Cost) -> tuple[int, int]:
    return cost.unknown_masses, cost.micrograms


def _more_words(leaks: int, more: int, with_it: Iterable[Part]) -> str:
    counts = [count_of(number, what) for number, what in ((leaks, "leak path"), (more, "part")) if number > 0]
    names = " and ".join(other.designation for other in with_it)
    return f"would need {' and '.join(counts)} more" + (f", with {names}" if names else "")


def _angle_reason(cost: Cost, best: Cost, aim: Aim | None) -> str:
    points = angle_words(cost.turn)
    if aim is None:
        return f"same joints, but {points}: nothing asks for a turn"
    if cost.off_angle > best.off_angle:
        leaves = f"at {angle_words(aim.angle)}" if aim.angle else "straight"
        return f"same joints, but {points} while the line leaves {leaves}"
    return f"{points}: as near to where the line leaves, but the straighter is taken"


@dataclass(frozen=True, slots=True)
class Case:
    """A port, a line end, and the chain taken between them, if there was one."""

    port: Interface
    goal: Interface
    wishes: Wishes
    aim: Aim | None
    taken: tuple[Part, ...]
    best: Cost | None
    shop: Shop


def refused_at_port(case: Case) -> tuple[Refusal, ...]:
    """Say of every part that goes on the port, or is like the one taken, why it was not taken."""
    families = {part.family for part in case.taken if part.category not in NUTS_AND_SLEEVES}
    taken = {part.designation for part in case.taken}
    return gathered(
        (reason, shelf, part)
        for shelf in case.shop.shelves
        for part in (shelf.part, *shelf.twins)
        if part.designation not in taken and (reason := _reason_at_port(part, shelf, families, case))
    )


def _reason_at_port(part: Part, shelf: Shelf, families: set[str], case: Case) -> Reason | None:
    interfaces = shelf.flowing
    if case.port.complement in interfaces:
        if shelf.objection:
            return Reason(Near.STRUCTURE, 0, shelf.objection)
        return objection(part, case.wishes) or _reason_on_port(part, shelf, case)
    if not interfaces:
        return None
    end = min(interfaces, key=lambda interface: nearness(interface, case.port))
    reaches = not case.taken and dressed(case.goal).complement in interfaces and not shelf.objection
    tempting = reaches and kind_of(end, case.port) is not MismatchKind.DIFFERENT_FORM
    if part.family in families or tempting:
        return Reason(Near.PORT, nearness(end, case.port)[1], does_not_mate(end, case.port, "port"))
    return None


def _reason_on_port(part: Part, shelf: Shelf, case: Case) -> Reason | None:
    """Give the reason for a part that goes on the port and may stand in the joint."""
    shop = case.shop
    numbers = [n for n in shop.by_before[case.port] if shop.shelf_of[n] is shelf]
    shown = min((shop.passes[n].after for n in numbers), key=lambda after: nearness(after, case.goal))
    if kind_of(shown, case.goal) in _OTHER_SIZE:
        return Reason(Near.LINE_SIZE, nearness(shown, case.goal)[1], does_not_mate(shown, case.goal, "line"))
    free_aim = Aim(case.aim.angle if case.aim else 0.0)
    found = [best_cost_through(n, case.goal, case.wishes, case.shop, free_aim) for n in numbers]
    cost = min((cost for cost in found if cost), default=None)
    if cost is None:
        return Reason(Near.NO_WAY, 0, f"nothing joins its {described(shown)} to the line")
    if case.aim and case.aim.declared and cost.off_angle:
        words = f"{angle_words(cost.turn)}, and {angle_words(case.aim.angle)} is declared"
        return Reason(Near.ANGLE, cost.off_angle, words)
    if case.best is None:
        return None
    rest = [step.part for step in passes_in(cost, case.shop)[1:]]
    bodies = [other for other in rest if other.category not in NUTS_AND_SLEEVES]
    return dearer(part, cost, case.best, case.aim, bodies)
