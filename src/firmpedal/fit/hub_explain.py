"""Why a bulkhead, bracket or union could not be fitted as declared, and which bodies were refused."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from firmpedal.fit.bodies import structure_objection, trials_of
from firmpedal.fit.build import not_as_asked, turn_words
from firmpedal.fit.joint import EndRef, Mismatch, MismatchKind
from firmpedal.fit.kinds import nearness
from firmpedal.fit.mating import NUTS_AND_SLEEVES, Link, dressed, line_end
from firmpedal.fit.refusals import Near, Reason, dearer, does_not_mate, gathered, objection
from firmpedal.fit.shop import angle_words, degrees, turn_of
from firmpedal.model.part import Form, Gender, Interface

if TYPE_CHECKING:
    from firmpedal.fit.bodies import Lines, Trial
    from firmpedal.fit.joint import Hub, Refusal
    from firmpedal.fit.shop import Shelf, Shop
    from firmpedal.fit.wishes import Wishes
    from firmpedal.model.part import Part


def right_structure(hub: Hub, lines: Lines, shop: Shop) -> list[Shelf]:
    """Give the bodies with the right number of ends, with a bulkhead thread or without as declared."""
    return [
        shelf
        for shelf in shop.shelves
        if not structure_objection(shelf.part, len(lines), through_panel=hub.through_panel)
    ]


def turns_right(part: Part, hub: Hub) -> bool:
    """Say whether a body turns as declared; a tee has no one turn to compare."""
    return len(part.flow_ends) > 2 or turn_of(part) == degrees(hub.turn)


def two_ends(hub: Hub, lines: Lines) -> tuple[EndRef, EndRef]:
    """Give the ends that a hub as a whole is about: its lines, or its own hole where a line is missing."""
    refs = [line_end(line) for line in lines if line is not None]
    holes = [_hole(hub, side) for side in range(2)]
    one, other, *_ = [*refs, *holes]
    return one, other


def _hole(hub: Hub, side: int) -> EndRef:
    """Stand for one side of a hub that has no body: a hole for a bulkhead thread of no known size."""
    return EndRef(f"hub {hub.name}", side, Interface(Form.PANEL, "", Gender.FEMALE))


def contradictions(hub: Hub, part: Part, lines: Lines) -> list[Mismatch]:
    """Say where a declared fitting is not what else is declared at its place."""
    one, other = two_ends(hub, lines)
    wrong = []
    if not turns_right(part, hub):
        words = f"{hub.fitting} is {angle_words(turn_of(part))}; {angle_words(degrees(hub.turn))} is declared"
        wrong.append(Mismatch(MismatchKind.TURN, one, other, words))
    if hub.through_panel and all(end.interface.form is not Form.PANEL for end in part.ends):
        words = f"{hub.fitting} has no bulkhead thread: nothing holds it in a panel or bracket"
        wrong.append(Mismatch(MismatchKind.DIFFERENT_FORM, one, other, words))
    return wrong


def no_body(hub: Hub, lines: Lines, wishes: Wishes, shop: Shop) -> Mismatch:
    """Say why there is no body to try: no such turn, not of the metal asked for, or none at all."""
    one, other = two_ends(hub, lines)
    structure = right_structure(hub, lines, shop)
    usable = [shelf.part for shelf in structure if not wishes.objection(shelf.part)]
    if usable:
        words = turn_words(degrees(hub.turn), {turn_of(part) for part in usable})
        return Mismatch(MismatchKind.TURN, one, other, words)
    free = [shelf.part for shelf in structure if not wishes.without_asking().objection(shelf.part)]
    metals = sorted({part.material for part in free if turns_right(part, hub)})
    what = "bulkhead fitting" if hub.through_panel else "union"
    words = f"there is no such {what} of the metal asked for, but of {' or '.join(metals)}"
    return Mismatch(MismatchKind.NO_PARTS, one, other, words if metals else f"there is no such {what}")


def no_line_joined(hub: Hub, lines: Lines, bodies: list[Shelf], shop: Shop) -> list[Link]:
    """Say of each line why it goes on no body, by the body's end that comes nearest."""
    ends = {end.interface for shelf in bodies for end in shelf.part.ends if end.flow}
    links = []
    for side, line in enumerate(lines):
        if line is not None:
            nearest = min(ends, key=lambda end: nearness(end, line.interface))
            body, goal = EndRef(f"hub {hub.name}", side, nearest), line_end(line)
            links.append(Link(body, goal, not_as_asked(body, goal, line, shop, hub.material)))
    return links


def refused_bodies(
    hub: Hub, lines: Lines, wishes: Wishes, taken: Trial | None, shop: Shop
) -> tuple[Refusal, ...]:
    """Say of every body that takes the same lines, or is like the one taken, why it was not taken."""
    if taken is None:
        return ()
    joined = [taken.part.ends[end].interface for end, run in zip(taken.ends, taken.runs, strict=True) if run]
    return gathered(
        (_reason(part, shelf, hub, lines, wishes, taken, shop), shelf, part)
        for shelf in shop.shelves
        for part in (shelf.part, *shelf.twins)
        if part.category not in NUTS_AND_SLEEVES
        and part is not taken.part
        and _alike(part, taken.part, joined)
    )


def _alike(part: Part, taken: Part, joined: list[Interface]) -> bool:
    flow_ends = Counter(part.ends[index].interface for index in part.flow_ends)
    return part.family == taken.family or (len(part.flow_ends) > 1 and Counter(joined) <= flow_ends)


def _reason(
    part: Part, shelf: Shelf, hub: Hub, lines: Lines, wishes: Wishes, taken: Trial, shop: Shop
) -> Reason:
    structure = structure_objection(part, len(lines), through_panel=hub.through_panel)
    if structure:
        return Reason(Near.STRUCTURE, 0, structure)
    if not turns_right(part, hub):
        words = f"{angle_words(turn_of(part))}, and {angle_words(degrees(hub.turn))} is declared"
        return Reason(Near.ANGLE, abs(turn_of(part) - degrees(hub.turn)), words)
    if refused := objection(part, wishes):
        return refused
    trial = min(trials_of(shelf, lines, wishes, hub.material, shop), key=lambda trial: trial.cost)
    for end, line, run in zip(trial.ends, lines, trial.runs, strict=True):
        if line is not None and run is None:
            interface = part.ends[end].interface
            words = does_not_mate(interface, dressed(line.interface), "line")
            return Reason(Near.LINE_SIZE, nearness(interface, line.interface)[1], words)
    bodies = [
        other for run in trial.runs if run for other in run.parts if other.category not in NUTS_AND_SLEEVES
    ]
    return dearer(part, trial.cost, taken.cost, None, bodies)
