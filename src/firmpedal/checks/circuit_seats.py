"""Rules about two seats on one line: the order of their cylinders, and what one does to the other."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.analysis.circuit import Kind, seal_question
from firmpedal.analysis.together import answers_contradict
from firmpedal.checks.circuit_words import listed, pedal_words, place_of, same_pedal, seat_words, unclear
from firmpedal.checks.view import Outcome, View, practice
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.model.aircraft import find
from firmpedal.quantity import Answer, Mark, Missing

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.analysis.circuit import Fact, Verdict

IN_SERIES = (
    "lead the line from the reservoir to the inlet of one seat's cylinder, from its outlet to the inlet of "
    "the other seat's, and from there to the valve and the wheel"
)
FOLLOWS = (
    "ask its maker: with the pedal held, does the wheel follow what the other seat presses and lets go? Then "
    "it does not seal"
)


def seat_order_wrong(view: View) -> Iterator[Outcome]:
    """Fluid goes from the reservoir to one seat, on to the other, then to the valve and the wheel.

    A cylinder makes pressure only if nothing but its own relief port joins its outlet to a reservoir. Fed
    at its outlet, or side by side with another cylinder that lies open at rest, it pumps the reservoir.
    """
    rule = "seat-order-wrong"
    for judged in view.results.plumbing.circuits:
        for verdict in judged.of(Kind.MAKES_NO_PRESSURE):
            name = verdict.fact.cylinder
            if verdict.answer is Answer.UNKNOWN:
                yield unclear(rule, place_of(view, name), f"whether {name} makes pressure", [verdict])
                continue
            message = (
                f"with only {pedal_words(view, name)} pressed, {name} makes no pressure: "
                f"its outlet lies open to {_way_up(view, name)}"
            )
            if wheels := _behind(view, name):
                message = f"{message}, and {listed(wheels)} is joined to its inlet"
            yield _wrong_order(view, name, message)
    told = {fact.cylinder for fact in _made_none(view)}
    for name, _ in view.results.plumbing.graph.outlets:
        wheels = _behind(view, name)
        if wheels and name not in told and not _reached(view, name):
            yield _wrong_order(
                view, name, f"{listed(wheels)} is joined to the inlet of {name}, not to its outlet"
            )


def _wrong_order(view: View, name: str, message: str) -> Finding:
    derived = practice("firmpedal-derivation", Mark.DERIVED)
    place = place_of(view, name)
    return Finding("seat-order-wrong", Level.WARNING, place, message, (IN_SERIES,), sources=derived)


def _made_none(view: View) -> Iterator[Fact]:
    for judged in view.results.plumbing.circuits:
        yield from (verdict.fact for verdict in judged.of(Kind.MAKES_NO_PRESSURE))


def _reached(view: View, name: str) -> tuple[str, ...]:
    return next((reach.calipers for reach in view.results.reach if reach.cylinder == name), ())


def _behind(view: View, name: str) -> list[str]:
    """The calipers at a cylinder's inlet that no cylinder reaches through an outlet but its own."""
    graph = view.results.plumbing.graph
    inlets = [way.above for way in graph.ways if way.part == name]
    came = graph.walk(inlets, name)
    pressed = {wheel for reach in view.results.reach for wheel in reach.calipers}
    return [
        caliper
        for caliper, ports in graph.wheels
        if caliper not in pressed and any(port in came for port in ports)
    ]


def _way_up(view: View, name: str) -> str:
    """The reservoir that a cylinder's outlet lies open to, and the cylinders at rest on the way."""
    graph = view.results.plumbing.graph
    outlet = dict(graph.outlets)[name]
    came = graph.walk([outlet], name)
    tops = dict(graph.tops)
    top = next((node for node in came if node in tops), None)
    if top is None:
        return "its reservoir"
    heads, node = [], top
    while came[node][0] != node:
        heads.append(node.partition(".")[0])
        node = came[node][0]
    passed = [each.name for each in view.aircraft.cylinders if each.name in heads and each.name != name]
    whose = find(view.aircraft.cylinders, tops[top])
    where = f"the reservoir of {whose.name}" if whose else tops[top]
    return f"{where} through {listed(passed)} at rest" if passed else where


def series_capability_unknown(view: View) -> Iterator[Outcome]:
    """A cylinder downstream of another seat's has to let that seat press and release the wheel.

    Not every type does. Some shut their inlet when pressed, and hold what the other seat has pressed.
    Only the maker can say; the type number alone often does not.
    """
    rule = "series-capability-unknown"
    for cylinder in view.aircraft.cylinders:
        asked = seal_question(cylinder)
        others = [
            verdict.fact.cylinder
            for verdict in _between(view)
            if verdict.answer is Answer.UNKNOWN and asked in verdict.matters
        ]
        if others and cylinder.seals_when_pressed is Answer.UNKNOWN:
            message = f"whether {cylinder.name} may stand downstream of {listed(others)}"
            yield NotShown(rule, cylinder.place, message, (asked,))


def seat_answers_contradict(view: View) -> Iterator[Outcome]:
    """What is said of a cylinder downstream of another seat goes together.

    Held and sealed, it shuts the other seat out. If what the other seat presses in pushes on the back of its
    piston, the wheel gets that as well, and the other seat is not shut out. Until one of the two is put
    right the more counts: the wheel is taken to be held, and the lines to bear both feet.
    """
    for cylinder in view.aircraft.cylinders:
        if not answers_contradict(cylinder):
            continue
        seals, adds = (f"{cylinder.place}.{key}" for key in ("seals when pressed", "feet add up"))
        message = (
            f"seals when pressed is yes: with the pedal of {cylinder.name} held the other seat is shut out. "
            "Feet add up is yes: what the other seat presses in reaches the wheel all the same. One of the "
            "two is not so"
        )
        yield Finding(
            "seat-answers-contradict",
            Level.CAUTION,
            adds,
            message,
            (FOLLOWS,),
            sources=practice("firmpedal-derivation", Mark.DERIVED),
            about=(seals,),
        )


def held_by_the_other_seat(view: View) -> Iterator[Outcome]:
    """While one seat holds its pedal, the other must still be able to press the wheel and to let it go.

    If the cylinder nearer the wheel shuts its inlet when pressed, a foot that merely rests on its pedal
    keeps the wheel as hard as the other seat has pressed it: a locked wheel with two people aboard.
    """
    rule = "held-by-the-other-seat"
    found = _between(view)
    for by in dict.fromkeys(verdict.fact.by for verdict in found):
        verdicts = [verdict for verdict in found if verdict.fact.by == by]
        sure = [verdict for verdict in verdicts if verdict.answer is Answer.YES]
        if sure:
            yield _held(view, by, sure)
            continue
        seals = _seal_questions(view)
        rest = [verdict for verdict in verdicts if set(verdict.matters) - seals]
        if rest:
            others = listed(verdict.fact.cylinder for verdict in rest)
            yield unclear(rule, place_of(view, by), f"whether {by} holds what {others} presses", rest)


def _seal_questions(view: View) -> set[Missing]:
    return {seal_question(each) for each in view.aircraft.cylinders}


def _between(view: View) -> list[Verdict]:
    return [
        verdict
        for judged in view.results.plumbing.circuits
        for verdict in judged.of(Kind.HELD, Kind.SHUT_OUT)
        if not same_pedal(view, verdict.fact.cylinder, verdict.fact.by)
    ]


def _held(view: View, by: str, verdicts: list[Verdict]) -> Finding:
    facts = [verdict.fact for verdict in verdicts]
    kept = [fact.caliper for fact in facts if fact.kind is Kind.HELD]
    shut = [fact.caliper for fact in facts if fact.kind is Kind.SHUT_OUT]
    pressing = listed(pedal_words(view, fact.cylinder) for fact in facts)
    held = find(view.aircraft.cylinders, by)
    adds = held is None or answers_contradict(held)
    parts = [f"{pressing} {'may do' if adds else 'does'} nothing at {listed(shut)}"] if shut else []
    if kept:
        parts.append(
            f"pressed before it, {pressing} leaves {listed(kept)} as hard as it was pressed "
            f"until {seat_words(view, by)} lets go"
        )
    message = (
        f"with {pedal_words(view, by)} held and {seat_words(view, facts[0].cylinder)} pressing, "
        f"{'; '.join(parts)}: {by} shuts its inlet when pressed"
    )
    part = find(view.aircraft.cylinders, by)
    return Finding(
        "held-by-the-other-seat",
        Level.WARNING,
        part.place if part else f"components.{by}",
        message,
        (
            "fit a type whose maker allows it downstream of another cylinder; set seals when pressed to no",
            "leave the brakes to one seat",
        ),
        sources=practice("builder-reports"),
    )
