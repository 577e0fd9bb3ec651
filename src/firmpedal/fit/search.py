"""What goes between a port and a line end, or closes a port that no line comes to."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from firmpedal.fit.build import aim_within_reach, contradictions, made_joint, not_as_asked, points_elsewhere
from firmpedal.fit.companions import companions_of, dry_seals
from firmpedal.fit.joint import EndRef, Mismatch, MismatchKind
from firmpedal.fit.kinds import described
from firmpedal.fit.mating import Link, dry_links, line_end, mates, part_end, port_end
from firmpedal.fit.refusals import Case, Near, Reason, dearer, gathered, objection, refused_at_port
from firmpedal.fit.runs import Run, declared_run, links_of, run_of
from firmpedal.fit.shop import shop_of
from firmpedal.fit.ways import Cost, best_cost, passes_in, ways_to
from firmpedal.fit.wishes import Wishes, wishes_of

if TYPE_CHECKING:
    from firmpedal.fit.joint import Joint, LineEnd, Port
    from firmpedal.fit.shop import Catalogue, Shelf, Shop
    from firmpedal.model.part import Interface, Part


def fit_port(port: Port, line: LineEnd | None, catalogue: Catalogue) -> Joint:
    """Fit a line end to a port with fewest leak paths, then parts, then the best angle, then mass.

    Declared fittings are taken as they are, whether they mate or not. Without a line the port is
    closed with a plug or cap if it asks for that, and stays open otherwise.
    """
    return _fit_port(port, line, shop_of(catalogue))


@lru_cache(maxsize=4096)
def _fit_port(port: Port, line: LineEnd | None, shop: Shop) -> Joint:
    if line is None:
        return _closed(port, shop) if port.closed else _left_open(port, shop)
    start, goal = port_end(port), line_end(line)
    if line.fittings:
        run = declared_run(port.interface, line, shop)
        links = [*links_of(run, start, range(len(run.parts)), goal), *dry_links(run.parts)]
        extra = contradictions(run, line, start, goal) + points_elsewhere(run, line, start, goal)
        return made_joint(port.name, port.place, run.parts, links, (start, goal), shop, mismatches=extra)
    wishes = wishes_of(line)
    ways = ways_to(line.interface, wishes, shop).get(port.interface, ())
    aim = aim_within_reach(line, (turn for turn, _ in ways))
    cost = best_cost(port.interface, line.interface, wishes, shop, aim)
    run = Run() if cost is None else run_of(passes_in(cost, shop), wishes, shop)
    links = (
        [Link(start, goal, not_as_asked(start, goal, line, shop))]
        if cost is None
        else [*links_of(run, start, range(len(run.parts)), goal), *dry_links(run.parts)]
    )
    asks = aim if aim.declared or (line.leaves, line.points) != (None, None) else None
    refused = refused_at_port(Case(port.interface, line.interface, wishes, asks, run.parts, cost, shop))
    extra = points_elsewhere(run, line, start, goal)
    return made_joint(port.name, port.place, run.parts, links, (start, goal), shop, refused, extra)


def _left_open(port: Port, shop: Shop) -> Joint:
    return made_joint(port.name, port.place, (), (), (port_end(port),), shop)


def _closed(port: Port, shop: Shop) -> Joint:
    """Close a port with the cheapest part of one end that mates with it."""
    wishes, start = Wishes(), port_end(port)
    plugs = [shelf for shelf in shop.shelves if _closes(shelf.part, port.interface)]
    usable = [shelf for shelf in plugs if not wishes.objection(shelf.part)]
    best = min(usable, key=lambda shelf: _plug_cost(shelf, port.interface, wishes, shop), default=None)
    refused = gathered(
        (_plug_reason(shelf, best, port.interface, wishes, shop), shelf, part)
        for shelf in plugs
        for part in (shelf.part, *shelf.twins)
        if best is None or part is not best.part
    )
    if best is None:
        words = f"nothing in the catalogue closes {described(port.interface)}"
        plug = EndRef("plug", 0, port.interface.complement)
        missing = Mismatch(MismatchKind.NO_PARTS, start, plug, words)
        return made_joint(port.name, port.place, (), (), (start,), shop, refused, (missing,))
    brought = [other.part for other in companions_of(best.part, wishes, shop) if other is not None]
    parts = (best.part, *brought)
    links = [Link(start, part_end(0, best.part, best.part.flow_ends[0])), *dry_links(parts)]
    return made_joint(port.name, port.place, parts, links, (start,), shop, refused)


def _closes(part: Part, interface: Interface) -> bool:
    return len(part.flow_ends) == 1 and mates(part.ends[part.flow_ends[0]].interface, interface)


def _plug_cost(shelf: Shelf, interface: Interface, wishes: Wishes, shop: Shop) -> Cost:
    brought = companions_of(shelf.part, wishes, shop)
    placed = [shelf, *(other for other in brought if other is not None)]
    return Cost(
        bare_threads=1 + len(brought) - len(placed),
        unlike_metals=sum(wishes.unlike(one.part) for one in placed),
        leak_paths=interface.seals + dry_seals(shelf.part),
        parts=len(placed),
        unknown_masses=sum(one.unknown_masses for one in placed),
        micrograms=sum(one.micrograms for one in placed),
        passes=(shelf.rank,),
    )


def _plug_reason(
    shelf: Shelf, best: Shelf | None, interface: Interface, wishes: Wishes, shop: Shop
) -> Reason:
    refused = objection(shelf.part, wishes)
    if refused or best is None:
        return refused or Reason(Near.SAME, 0, "")
    cost, least = (_plug_cost(one, interface, wishes, shop) for one in (shelf, best))
    return dearer(shelf.part, cost, least, None, ())
