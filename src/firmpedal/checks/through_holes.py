"""The rule about getting a finished tube through the holes that it sits in."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.view import Limit, Outcome, View, practice
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.lay.through_hole import best_end, holes_of, unclear_passages
from firmpedal.model.display import listed
from firmpedal.quantity import Answer, Mark, Missing, all_missing, largest

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.panels import Passing
    from firmpedal.lay.through_hole import BendInHole, EndFirst, Hole, Way
    from firmpedal.quantity import Value

RULE = "tube-does-not-go-through"
ENDS = {"from": "first", "to": "last"}


def tube_does_not_go_through(view: View) -> Iterator[Outcome]:
    """A finished tube, bent and flared, can be pushed through the holes that it sits in.

    Either end may go first. Its nut has to pass the hole, and each bend on the way, and the panel must not be
    in the way of what is bent already. Only the panel itself is looked at, not what stands round about it.
    Whoever has tried it with a wire bent like the tube writes `tried`, and that counts.
    """
    for line in view.laid:
        yield from (_unclear(line, cut) for cut in unclear_passages(view.aircraft, line))
        holes = holes_of(view.aircraft, view.assembly, line)
        if not holes:
            continue
        yield from (_hole_wanted(view, line, hole) for hole in holes if not hole.passage.hole.known)
        # a hole too narrow for the tube as it sits there is told by the rule about holes
        if all(hole.passage.hole.at_least(hole.needs) is Answer.YES for hole in holes):
            yield from _pushed_through(view, line, holes)


def _unclear(line: LaidLine, cut: Passing) -> NotShown:
    """A panel that is somewhere, or passed more than once: nothing is worked out, so it is to be tried."""
    twice = Missing(
        f"{cut.panel.place}.passes", f"whether {line.name} goes through {cut.panel.name}: try a wire"
    )
    message = f"whether {line.name} goes through {cut.panel.name}"
    return NotShown(RULE, line.place, message, cut.unsure or (twice,))


def _hole_wanted(view: View, line: LaidLine, hole: Hole) -> NotShown:
    """Ask for a hole, and say which one would do."""
    name = f"the diameter of the hole for {line.name} in {hole.panel.name}"
    bent = [bend.needs for way in hole.ways for bend in way.bends]
    plain = largest("bare tube", [hole.needs, *bent])
    nuts = [way.nut for way in hole.ways if way.nut is not None]
    words = f": {view.show(plain)} lets the bent tube through" if plain.known else ""
    if plain.known and nuts and all(nut.known for nut in nuts):
        words += f", {view.show(largest('with nut', [plain, *nuts]))} with nut and flare"
    missing = (Missing(f"{hole.passage.place}.hole", f"{name}{words}"),)
    return NotShown(RULE, hole.passage.place, f"whether {line.name} goes through {hole.panel.name}", missing)


def _pushed_through(view: View, line: LaidLine, holes: tuple[Hole, ...]) -> Iterator[Outcome]:
    best = best_end(holes)
    where = listed([hole.panel.name for hole in holes])
    place = holes[0].passage.place
    if best.bends_go is Answer.NO:
        yield _bend_in_place(view, line, holes, best)
    elif missing := _missing(holes, best):
        yield NotShown(RULE, place, f"whether {line.name} goes through {where} finished", missing)
    elif best.nut_goes is Answer.NO:
        yield _flare_last(view, line, holes, best)


def _bend_in_place(view: View, line: LaidLine, holes: tuple[Hole, ...], best: EndFirst) -> Finding:
    one = len(best.bends) == 1
    bends = f"bend{'' if one else 's'} {listed([str(number) for number in best.bends])}"
    later = f"before {bends} {'is' if one else 'are'} made, and make {'it' if one else 'them'} in place"
    tight = _tightest(holes, best)
    wider = view.show(tight.needs) if tight else "try it with a wire bent like the tube"
    return Finding(
        RULE,
        Level.CAUTION,
        holes[0].passage.place,
        f"{line.name} does not go through {listed([hole.panel.name for hole in holes])} once it is bent",
        (
            f"push it in, {ENDS[best.end]} end first, {later}",
            f"a wider hole: {wider}",
            "two tubes with a bulkhead union in the panel",
        ),
        sources=practice("firmpedal-derivation", Mark.DERIVED),
    )


def _tightest(holes: tuple[Hole, ...], best: EndFirst) -> BendInHole | None:
    """The bend that needs the widest hole, where one surely does not pass; else the panel is in the way."""
    tight = [
        bend for way in _ways(holes, best) for bend in way.bends if way.hole.at_least(bend.needs) is Answer.NO
    ]
    return max(tight, key=lambda bend: bend.needs.high, default=None)


def _flare_last(view: View, line: LaidLine, holes: tuple[Hole, ...], best: EndFirst) -> Finding:
    tight = next(way for way in _ways(holes, best) if way.nut_goes is Answer.NO)
    nut = "" if tight.nut is None else f", {view.show(tight.nut)} across its corners,"
    hole = next(hole for hole in holes if tight in hole.ways)
    return Finding(
        RULE,
        Level.NOTE,
        hole.passage.place,
        f"the nut at the {ENDS[best.end]} end of {line.name}{nut} does not go through the hole in "
        f"{hole.panel.name}, {view.show(tight.hole)}",
        (
            f"push the {ENDS[best.end]} end through bare; then nut, sleeve and flare in place",
            "a wider hole, and a grommet that is put in afterwards",
        ),
        tight.hole,
        tight.nut,
        "at least",
        practice("firmpedal-derivation", Mark.DERIVED),
    )


def _ways(holes: tuple[Hole, ...], best: EndFirst) -> list[Way]:
    return [way for hole in holes for way in hole.ways if way.end == best.end]


def _missing(holes: tuple[Hole, ...], best: EndFirst) -> tuple[Missing, ...]:
    """What to find out before the easier end surely goes through, or surely does not."""
    found: list[Missing] = []
    if best.bends_go is Answer.UNKNOWN:
        for hole in holes:
            way = next(way for way in hole.ways if way.end == best.end)
            found += all_missing([way.hole, *(bend.needs for bend in way.bends)])
            found += [item for bend in way.bends for item in _vague(way, bend.needs)]
        if not found:
            found += [_try_it(hole) for hole in holes if hole.passage.tried is Answer.UNKNOWN]
    if best.nut_goes is Answer.UNKNOWN:
        for way in _ways(holes, best):
            found += () if way.nut is None else _vague(way, way.nut)  # without a nut the joint is told
    return tuple(dict.fromkeys(found))


def _vague(way: Way, needs: Value) -> tuple[Missing, ...]:
    limit = Limit(way.hole, needs, "at least")
    return limit.missing if limit.kept is Answer.UNKNOWN else ()


def _try_it(hole: Hole) -> Missing:
    what = f"whether a wire bent like the tube goes through {hole.panel.name}: try it"
    return Missing(f"{hole.passage.place}.tried", what)
