"""Runs: the parts between a port (or a body) and a line end, found by the search or declared."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass, replace
from difflib import SequenceMatcher, get_close_matches
from typing import TYPE_CHECKING, NamedTuple

from firmpedal.fit.companions import companions_of, still_owed
from firmpedal.fit.joint import Mismatch, MismatchKind
from firmpedal.fit.mating import NUTS_AND_SLEEVES, Link, Pass, part_end, passes_of
from firmpedal.fit.shop import turn_of
from firmpedal.fit.ways import STRAIGHT, Aim, best_cost, passes_in
from firmpedal.fit.wishes import wishes_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    from firmpedal.fit.joint import EndRef, LineEnd
    from firmpedal.fit.shop import Shop
    from firmpedal.fit.wishes import Wishes
    from firmpedal.model.part import Interface, Part

_NEAR_MISSES = 3


@dataclass(frozen=True, slots=True)
class Run:
    """Parts in order from a start to a line end.

    `passes` goes through the parts that carry fluid; washers and the like stand after the part they
    belong to, or where they were declared. `faults` says, by number of the link, why two neighbours
    are not joined although nothing about their interfaces says so; link 0 is the one at the start.
    """

    parts: tuple[Part, ...] = ()
    passes: tuple[Pass, ...] = ()
    faults: tuple[tuple[int, str], ...] = ()

    def broken_links(self, start: Interface, goal: Interface) -> tuple[int, ...]:
        """Number the links whose two ends do not mate, or must not be joined."""
        shows = [start, *(step.after for step in self.passes)]
        wants = [*(step.before for step in self.passes), goal.complement]
        faulty = {number for number, _ in self.faults}
        links = enumerate(zip(shows, wants, strict=True))
        return tuple(number for number, (one, other) in links if number in faulty or one != other)


def links_of(run: Run, start: EndRef, numbers: Sequence[int], goal: EndRef) -> list[Link]:
    """Link the ends that face each other along a run; `numbers` are its parts' numbers in the joint."""
    through = [number for number, part in zip(numbers, run.parts, strict=True) if part.flow_ends]
    placed = list(zip(through, run.passes, strict=True))
    shows = [start, *(part_end(number, step.part, step.leave) for number, step in placed)]
    wants = [*(part_end(number, step.part, step.enter) for number, step in placed), goal]
    faults = dict(run.faults)
    return [
        Link(one, other, Mismatch(MismatchKind.NO_PARTS, one, other, faults[n]) if n in faults else None)
        for n, (one, other) in enumerate(zip(shows, wants, strict=True))
    ]


def found_run(
    start: Interface, goal: Interface, wishes: Wishes, shop: Shop, aim: Aim = STRAIGHT
) -> Run | None:
    """Give the cheapest chain from an exposed interface to an end as a run, or None if there is none."""
    cost = best_cost(start, goal, wishes, shop, aim)
    return None if cost is None else run_of(passes_in(cost, shop), wishes, shop)


def run_of(passes: tuple[Pass, ...], wishes: Wishes, shop: Shop) -> Run:
    """Make a chain into a run, each part followed by the washers and the like that go on it."""
    parts: list[Part] = []
    for step in passes:
        parts.append(step.part)
        parts += [shelf.part for shelf in companions_of(step.part, wishes, shop) if shelf is not None]
    return Run(tuple(parts), passes)


def bridge(start: Interface, line: LineEnd, shop: Shop) -> Run | None:
    """Give the nut and sleeve that a line end needs of its own to mate with an interface, or None.

    The run is empty where the line end mates as it is.
    """
    return found_run(start, line.interface, replace(wishes_of(line), only=NUTS_AND_SLEEVES), shop)


def find_parts(designation: str, shop: Shop) -> tuple[Part, ...]:
    """Find the parts of a designation, or of one that a part is also known by."""
    wanted = designation.strip().upper()
    exact = tuple(part for part in shop.parts if part.designation.upper() == wanted)
    return exact or tuple(
        part for part in shop.parts if wanted in (other.upper() for other in part.also_known_as)
    )


def unknown_words(designation: str, shop: Shop) -> str:
    """Say that a designation is not known, or not enough, and what may have been meant."""
    several = [part.designation for part in find_parts(designation, shop)]
    if several:
        return f"{designation} is more than one part: write one of {', '.join(several)}"
    names = {
        name.upper(): part.designation
        for part in shop.parts
        for name in (*part.also_known_as, part.designation)
    }
    wanted = designation.strip().upper()
    same_letters = [name for name in sorted(names) if sorted(name) == sorted(wanted)]
    swapped = sorted(same_letters, key=lambda name: -SequenceMatcher(None, wanted, name).ratio())
    near = [*swapped, *get_close_matches(wanted, sorted(names), n=_NEAR_MISSES)]
    meant = list(dict.fromkeys(names[name] for name in near))[:_NEAR_MISSES]
    question = f": did you mean {' or '.join(meant)}?" if meant else ""
    return f"no part called {designation} is in the catalogue{question}"


def declared_run(start: Interface, line: LineEnd, shop: Shop) -> Run:
    """Put the declared fittings in their order, then the line's own nut and sleeve, then washers and O-rings.

    Whatever does not mate stays: it is for the builder to change.
    """
    parts: list[Part] = []
    faults: dict[int, list[str]] = defaultdict(list)
    through = 0
    for designation in line.fittings:
        found = find_parts(designation, shop)
        if len(found) != 1:
            faults[through].append(unknown_words(designation, shop))
            continue
        part = found[0] if through else _put_to_use(found[0], start, shop)
        parts.append(part)
        if part.flow_ends:
            through += 1
            if len(part.flow_ends) == 1:
                faults[through].append(f"{designation} has one end only: nothing can follow it")
    return _turned(start, line, parts, tuple((n, "; ".join(words)) for n, words in faults.items()), shop)


def _put_to_use(part: Part, start: Interface, shop: Shop) -> Part:
    """Give the use of a part that goes on a start where the part itself does not: a union in a boss."""
    uses = (part, *(other for other in shop.parts if other.same_as == part.designation))
    mating = (use for use in uses if any(end.interface == start.complement for end in use.ends))
    return next(mating, part)


class _Row(NamedTuple):
    """Declared parts turned one way or the other, and how many neighbours do not mate."""

    misses: int
    ends: tuple[tuple[int, int], ...]
    passes: tuple[Pass, ...]


def _turned(
    start: Interface,
    line: LineEnd,
    parts: Sequence[Part],
    faults: tuple[tuple[int, str], ...],
    shop: Shop,
) -> Run:
    """Turn every part so that as few neighbours as can be do not mate, and add what the line end needs."""
    rows = {start: _Row(0, (), ())}
    closed = {number for number, _ in faults}
    for part in parts:
        if part.flow_ends:
            rows = _one_more(rows, part, closed)
    bridges = {
        shows: None if len(row.passes) in closed else bridge(shows, line, shop) for shows, row in rows.items()
    }
    shows = min(rows, key=lambda shows: (rows[shows].misses + (bridges[shows] is None), rows[shows].ends))
    last = bridges[shows] or Run()
    owed = still_owed(parts, wishes_of(line), shop)
    return Run((*parts, *last.parts, *owed), (*rows[shows].passes, *last.passes), faults)


def _one_more(rows: dict[Interface, _Row], part: Part, closed: set[int]) -> dict[Interface, _Row]:
    """Put a part after every row, each way it can be turned; keep the best row for each end that shows."""
    only = part.flow_ends[0]
    longer: dict[Interface, _Row] = {}
    for step in passes_of(part) or (Pass(part, only, only),):
        for shows, row in rows.items():
            miss = len(row.passes) in closed or step.before != shows
            ends = (*row.ends, (step.enter, step.leave))
            new = _Row(row.misses + miss, ends, (*row.passes, step))
            if step.after not in longer or new[:2] < longer[step.after][:2]:
                longer[step.after] = new
    return longer


def turns_of(run: Run) -> tuple[float, ...]:
    """Give the turns of a run's parts in degrees, without the straight ones."""
    return tuple(turn for step in run.passes if (turn := turn_of(step.part)))
