"""Where line ends meet: in a bulkhead or bracket, at a free union, or with nothing between them."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from typing import TYPE_CHECKING

from firmpedal.fit.bodies import best_trial
from firmpedal.fit.build import made_joint, not_as_asked
from firmpedal.fit.explain import mismatch_of
from firmpedal.fit.hub_explain import (
    contradictions,
    no_body,
    no_line_joined,
    refused_bodies,
    right_structure,
    turns_right,
    two_ends,
)
from firmpedal.fit.joint import Hub, Mismatch, MismatchKind, meeting_name
from firmpedal.fit.mating import Link, bodies_first, dressed, dry_links, line_end, part_end
from firmpedal.fit.runs import Run, bridge, find_parts, links_of, unknown_words
from firmpedal.fit.shop import shop_of
from firmpedal.fit.wishes import body_wishes

if TYPE_CHECKING:
    from collections.abc import Sequence

    from firmpedal.fit.bodies import Lines, Trial
    from firmpedal.fit.joint import Joint, LineEnd, Refusal
    from firmpedal.fit.shop import Catalogue, Shop
    from firmpedal.fit.wishes import Wishes
    from firmpedal.model.part import Part


def fit_hub(hub: Hub, lines: Lines, catalogue: Catalogue) -> Joint:
    """Fit the body of a bulkhead, bracket or free union, and what leads from it to each line.

    `lines` go with the hub's sides; a side without a line leaves its end open. A declared fitting is
    taken as it is.
    """
    return _fit_hub(hub, lines, shop_of(catalogue))


@lru_cache(maxsize=4096)
def _fit_hub(hub: Hub, lines: Lines, shop: Shop) -> Joint:
    present = tuple(line for line in lines if line is not None)
    wishes = body_wishes(present, hub.material)
    if hub.fitting:
        return _declared_hub(hub, lines, wishes, shop)
    if not present:
        return _made(hub, (), (), lines, shop)
    bodies = [
        shelf
        for shelf in right_structure(hub, lines, shop)
        if turns_right(shelf.part, hub) and not wishes.objection(shelf.part)
    ]
    trial = best_trial(bodies, lines, wishes, hub.material, shop)
    if trial is None:
        return _made(hub, (), (), lines, shop, mismatches=[no_body(hub, lines, wishes, shop)])
    if not any(trial.runs):
        return _made(hub, (), no_line_joined(hub, lines, bodies, shop), lines, shop)
    parts, links = _placed(trial, lines, hub.material, shop)
    refused = refused_bodies(hub, lines, wishes, trial, shop)
    return _made(hub, parts, links, lines, shop, refused)


def _made(
    hub: Hub,
    parts: Sequence[Part],
    links: Sequence[Link],
    lines: Lines,
    shop: Shop,
    refused: tuple[Refusal, ...] = (),
    mismatches: Sequence[Mismatch] = (),
) -> Joint:
    outer = [line_end(line) for line in lines if line is not None]
    return made_joint(hub.name, hub.place, parts, links, outer, shop, refused, mismatches)


def _placed(trial: Trial, lines: Lines, material: str, shop: Shop) -> tuple[list[Part], list[Link]]:
    """Number the parts from the first side to the last, and link their ends."""
    first, *rest = [run or Run() for run in trial.runs]
    body = len(first.parts)
    parts = [*reversed(first.parts), trial.part, *trial.companions]
    numbers = [range(body - 1, -1, -1)]
    for after in rest:
        numbers.append(range(len(parts), len(parts) + len(after.parts)))
        parts += after.parts
    links: list[Link] = []
    for line, end, run, numbered in zip(lines, trial.ends, trial.runs, numbers, strict=True):
        if line is not None:
            start, goal = part_end(body, trial.part, end), line_end(line)
            if run is None:
                links.append(Link(start, goal, not_as_asked(start, goal, line, shop, material)))
            else:
                links += links_of(run, start, numbered, goal)
    return parts, [*links, *dry_links(parts)]


def _declared_hub(hub: Hub, lines: Lines, wishes: Wishes, shop: Shop) -> Joint:
    """Place the declared fitting, whether it suits or not, and say where it does not."""
    found = find_parts(hub.fitting, shop)
    words = unknown_words(hub.fitting, shop)
    if len(found) == 1:
        shelf = next(item for item in shop.shelves if found[0] in (item.part, *item.twins))
        trial = best_trial([replace(shelf, part=found[0])], lines, wishes, hub.material, shop)
        if trial is not None:
            parts, links = _placed(trial, lines, hub.material, shop)
            wrong = contradictions(hub, found[0], lines)
            return _made(hub, parts, links, lines, shop, mismatches=wrong)
        words = f"{hub.fitting} has too few ends for {len(lines)} lines"
    nothing = Mismatch(MismatchKind.NO_PARTS, *two_ends(hub, lines), words)
    return _made(hub, (), (), lines, shop, mismatches=[nothing])


def fit_meeting(one: LineEnd, other: LineEnd, catalogue: Catalogue) -> Joint:
    """Fit two line ends that are brought together with nothing declared between them.

    They are joined if they mate, or mate with the nut and sleeve of a tube. Otherwise nothing is
    placed, and the mismatch names all that is missing, the body first. Fittings declared at either
    end are placed as a free union.
    """
    return _fit_meeting(one, other, shop_of(catalogue))


@lru_cache(maxsize=4096)
def _fit_meeting(one: LineEnd, other: LineEnd, shop: Shop) -> Joint:
    name = meeting_name(one.line, other.line)
    declared = (*reversed(one.fittings), *other.fittings)
    union = Hub(one.place, name, one.turn or other.turn or 0.0, through_panel=False, sides=("one", "other"))
    plain = replace(one, fittings=(), turn=None)
    if declared:
        hub = replace(union, fitting=declared[0])
        return _fit_hub(hub, (plain, replace(other, fittings=declared[1:], turn=None)), shop)
    start, goal = line_end(one), line_end(other)
    tube, facing = (one, other) if dressed(one.interface) != one.interface else (other, one)
    if (run := bridge(facing.interface, tube, shop)) is not None:
        links = links_of(run, line_end(facing), range(len(run.parts)), line_end(tube))
        return made_joint(name, one.place, run.parts, links, (start, goal), shop)
    found = _fit_hub(union, (plain, replace(other, turn=None)), shop)
    needed = () if found.mismatches else tuple(part.designation for part in bodies_first(found.parts))
    wrong = replace(mismatch_of(start, goal, shop), needed=needed)
    return made_joint(name, one.place, (), (), (start, goal), shop, mismatches=[wrong])
