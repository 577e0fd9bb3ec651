"""Which body carries several line ends: every body is tried with its ends both ways round."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from itertools import permutations
from typing import TYPE_CHECKING

from firmpedal.fit.companions import companions_of, dry_seals
from firmpedal.fit.mating import NUTS_AND_SLEEVES
from firmpedal.fit.runs import Run, declared_run, run_of
from firmpedal.fit.shop import degrees, turn_of, weight
from firmpedal.fit.ways import Aim, Cost, best_cost, passes_in
from firmpedal.fit.wishes import wishes_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from firmpedal.fit.joint import LineEnd
    from firmpedal.fit.shop import Shelf, Shop
    from firmpedal.fit.wishes import Wishes
    from firmpedal.model.part import Interface, Part

Lines = tuple["LineEnd | None", ...]


@dataclass(frozen=True, slots=True)
class Trial:
    """A body, which of its ends each side gets, what leads to each line, and what that costs.

    A run is None where nothing leads to the line, or where the side has no line. `companions` are the
    jam nuts, washers and the like that go on the body.
    """

    cost: Cost
    part: Part
    ends: tuple[int, ...]
    runs: tuple[Run | None, ...]
    companions: tuple[Part, ...]


def best_trial(
    shelves: Iterable[Shelf], lines: Lines, wishes: Wishes, material: str, shop: Shop
) -> Trial | None:
    """Find the body that carries the lines at the least cost, or None if there is no body to try."""
    trials = (trial for shelf in shelves for trial in trials_of(shelf, lines, wishes, material, shop))
    return min(trials, key=lambda trial: trial.cost, default=None)


def trials_of(shelf: Shelf, lines: Lines, wishes: Wishes, material: str, shop: Shop) -> Iterator[Trial]:
    """Try a body with its flow ends given to the sides in every order."""
    picked = companions_of(shelf.part, wishes, shop)
    companions = [other for other in picked if other is not None]
    for ends in permutations(shelf.part.flow_ends, len(lines)):
        sides = [
            _side(shelf.part.ends[end].interface, line, turn_of(shelf.part), material, shop)
            for end, line in zip(ends, lines, strict=True)
        ]
        cost = _cost(shelf, ends, lines, [side for side, _ in sides], companions, wishes)
        runs = tuple(run for _, run in sides)
        yield Trial(cost, shelf.part, ends, runs, tuple(other.part for other in companions))


_NOTHING = Cost()
_NOT_JOINED = Cost(open_lines=1)


@lru_cache(maxsize=1024)
def _side(
    shows: Interface, line: LineEnd | None, body_turn: float, material: str, shop: Shop
) -> tuple[Cost, Run | None]:
    """Lead from one end of a body to a line; straight unless the line's own end declares a turn."""
    if line is None:
        return _NOTHING, None
    wishes = wishes_of(line, material)
    if line.fittings:
        run = declared_run(shows, line, shop)
        return _declared_cost(run, shows, line, wishes), run
    aim = Aim(degrees(line.turn or 0.0), declared=True)
    if body_turn and aim.angle:
        return _NOT_JOINED, None  # two elbows in series do not settle where the line points
    cost = best_cost(shows, line.interface, wishes, shop, aim)
    return (_NOT_JOINED, None) if cost is None else (cost, run_of(passes_in(cost, shop), wishes, shop))


def _declared_cost(run: Run, shows: Interface, line: LineEnd, wishes: Wishes) -> Cost:
    """Add up what a declared run costs; every end is tried with the same parts, so no key is needed."""
    broken = run.broken_links(shows, line.interface)
    links = [shows, *(step.after for step in run.passes)]
    leaks = sum(end.seals for number, end in enumerate(links) if number not in broken)
    leaks += sum(dry_seals(step.part) for step in run.passes)
    weights = [weight(part) for part in run.parts]
    return Cost(
        open_lines=len(broken),
        unlike_metals=sum(wishes.unlike(part) for part in run.parts),
        leak_paths=leaks,
        parts=len(run.parts),
        unknown_masses=sum(unknown for unknown, _ in weights),
        micrograms=sum(micrograms for _, micrograms in weights),
    )


def _cost(
    shelf: Shelf,
    ends: tuple[int, ...],
    lines: Lines,
    sides: list[Cost],
    companions: list[Shelf],
    wishes: Wishes,
) -> Cost:
    placed = [shelf, *companions]
    return Cost(
        open_lines=sum(side.open_lines for side in sides),
        bare_threads=len(shelf.part.dry_ends) - len(companions),
        unlike_metals=sum(side.unlike_metals for side in sides)
        + sum(wishes.unlike(one.part) for one in placed),
        leak_paths=dry_seals(shelf.part) + sum(side.leak_paths for side in sides),
        parts=sum(side.parts for side in sides) + len(placed),
        odd_ends=_odd_ends(shelf.part, ends, lines),
        unknown_masses=sum(side.unknown_masses for side in sides) + sum(one.unknown_masses for one in placed),
        micrograms=sum(side.micrograms for side in sides) + sum(one.micrograms for one in placed),
        passes=(shelf.rank, *ends, *(number for side in sides for number in side.passes)),
    )


def _odd_ends(part: Part, ends: tuple[int, ...], lines: Lines) -> int:
    """Count the ends without a line that are not like one with a line: a later line is the same size."""
    joined = {end for end, line in zip(ends, lines, strict=True) if line is not None}
    like = {part.ends[end].interface for end in joined}
    return sum(part.ends[end].interface not in like for end in part.flow_ends if end not in joined)


def structure_objection(part: Part, sides: int, *, through_panel: bool) -> str:
    """Say why a part cannot carry so many lines in a panel, or freely, or nothing."""
    if part.category in NUTS_AND_SLEEVES:
        return "belongs to a tube: it is no body"
    if len(part.flow_ends) != max(sides, 2):
        return "leaves an end open: it has a branch" if len(part.flow_ends) > sides else "has too few ends"
    if through_panel and not part.needs_panel:
        return "has no bulkhead thread: nothing holds it in a panel or bracket"
    if part.needs_panel and not through_panel:
        return "made for a panel: it needs a hole and a jam nut"
    return ""
