"""Rules about fluid: where each cylinder takes it from, whether it comes back, and what one leak costs."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.analysis.circuit import Kind
from firmpedal.analysis.circuit.states import Facts, Machine
from firmpedal.checks.circuit_words import listed, place_of, unclear
from firmpedal.checks.view import Outcome, View, practice
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.model.aircraft import find
from firmpedal.model.component import SideOf
from firmpedal.model.kinds import Reservoir
from firmpedal.quantity import Answer, Mark, Missing

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.analysis.circuit import Circuit
    from firmpedal.model.kinds import Caliper

UNKNOWN = "unknown"


def no_fluid_supply(view: View) -> Iterator[Outcome]:
    """Every cylinder takes fluid from a reservoir: its own, or through its inlet and all that is before it.

    Without, the pedal sinks as the pads wear, and the first drop that is lost stays lost.
    """
    rule = "no-fluid-supply"
    graph = view.results.plumbing.graph
    above = {way.part: way.above for way in graph.ways}
    dry: dict[str, dict[str, tuple[str, str]]] = {}
    for name, outlet in graph.outlets:
        came = graph.walk([above[name]], name) if name in above else {}
        fed_at_outlet = graph.walk([outlet], name)  # which is another rule's to tell
        if not any(node in came or node in fed_at_outlet for node, _ in graph.tops):
            dry[name] = came
    for cylinder in view.aircraft.cylinders:
        met = dry.get(cylinder.name)
        if met is None or any(dict(graph.outlets)[other] in met for other in dry if other != cylinder.name):
            continue  # fed, or fed through another that is told of
        if cylinder.reservoir == UNKNOWN:
            what = Missing(f"{cylinder.place}.reservoir", f"where {cylinder.name} takes its fluid from")
            yield NotShown(rule, cylinder.place, f"whether {cylinder.name} has a reservoir", (what,))
            continue
        lacks = "no reservoir is joined to its inlet" if cylinder.name in above else "it has no open inlet"
        yield Finding(
            rule,
            Level.WARNING,
            cylinder.place,
            f"{cylinder.name} takes fluid from nowhere: {lacks} and none is built in",
            (
                "lead a line from a reservoir to its inlet",
                "if its reservoir is its own, set reservoir to built in",
            ),
            sources=practice("firmpedal-derivation", Mark.DERIVED),
        )


def no_release_path(view: View) -> Iterator[Outcome]:
    """With all pedals free and the valve open, every caliper lies open to a vented reservoir.

    If not, pressure stays when the foot is gone, and grows as the brake warms the fluid: the pads drag,
    heat, and lock. A cylinder's relief port has to be clear of its seal when the pedal is back.
    """
    rule = "no-release-path"
    pressed = {caliper for reach in view.results.reach for caliper in reach.calipers}
    for judged in view.results.plumbing.circuits:
        if not judged.circuit.tops:  # which is another rule's to tell
            continue
        for verdict in judged.of(Kind.NOT_FOLLOWED):
            place = place_of(view, judged.circuit.cylinders[0])
            yield unclear(rule, place, "what is open and shut in this circuit", [verdict])
        for verdict in judged.of(Kind.NOT_FREED):
            name = verdict.fact.caliper
            if name in pressed and verdict.answer is Answer.YES:
                yield _not_freed(view, judged.circuit, name)
            elif name in pressed:
                message = f"whether {name} is released when all pedals are free"
                yield unclear(rule, place_of(view, name), message, [verdict])


def _not_freed(view: View, circuit: Circuit, caliper: str) -> Finding:
    return Finding(
        "no-release-path",
        Level.WARNING,
        place_of(view, caliper),
        f"with all pedals free and every valve open, {caliper} does not lie open to a vented reservoir: "
        f"{_shut(view, circuit, caliper)}",
        (
            "see that the pedal comes all the way back and its rod is fully out",
            "clear the vent, or fit a cap that has one",
        ),
        sources=practice("builder-reports"),
    )


def _shut(view: View, circuit: Circuit, caliper: str) -> str:
    """What stands between a caliper and the air when all is at rest."""
    opens = frozenset(each.name for each in view.aircraft.cylinders if each.opens_at_rest is not Answer.NO)
    machine = Machine(circuit, Facts(opens, frozenset(), frozenset()))
    domain = machine.domain(machine.free, circuit.wheel(caliper))
    closed = [
        f"{each.part} lets nothing back at rest"
        for each in circuit.passages
        if (each.above in domain) != (each.below in domain)
    ]
    stuffy = [
        f"{name} has no vent"
        for group, name in circuit.tops
        if group in domain and isinstance(find(view.aircraft.components, name), Reservoir)
    ]
    return listed([*closed, *stuffy]) if closed or stuffy else "nothing joins it to one"


def one_leak_costs_all_wheels(view: View) -> Iterator[Outcome]:
    """One leak should not take the brakes of both sides.

    Where one cylinder presses both wheels, or the lines of both sides meet, it does, and at once. Two
    sides that only share a reservoir lose it in time: there the level is what to watch.
    """
    pressed = {caliper for reach in view.results.reach for caliper in reach.calipers}
    braked = [caliper for caliper in view.aircraft.calipers if caliper.name in pressed]
    if not _on_two_wheels(braked):
        return
    names = {caliper.name for caliper in braked}
    judged = [each.circuit for each in view.results.plumbing.circuits]
    circuits = [circuit for circuit in judged if names.intersection(circuit.calipers)]
    if len(circuits) == 1:
        yield _one_circuit(view, circuits[0], braked)
        return
    for name in sorted(set.intersection(*({name for _, name in circuit.tops} for circuit in circuits))):
        yield Finding(
            "one-leak-costs-all-wheels",
            Level.NOTE,
            place_of(view, name),
            f"all brakes take their fluid from {name}: a leak on either side empties it for both in time",
            ("look at its level before every flight",),
            sources=practice("firmpedal-derivation", Mark.DERIVED),
        )


def _on_two_wheels(calipers: list[Caliper]) -> bool:
    """Whether there are calipers that are not all declared to be on one and the same side."""
    sides = {caliper.side for caliper in calipers}
    return len(calipers) > 1 and (len(sides) > 1 or SideOf.CENTRE in sides)


def _one_circuit(view: View, circuit: Circuit, braked: list[Caliper]) -> Finding:
    wheels, pressing = listed(caliper.name for caliper in braked), listed(circuit.cylinders)
    return Finding(
        "one-leak-costs-all-wheels",
        Level.CAUTION,
        place_of(view, circuit.cylinders[0]),
        f"{wheels} are on one circuit, pressed by {pressing}: one leak anywhere in it takes both brakes",
        ("give each side its own cylinder and line", "try the brakes before taxiing"),
        sources=practice("firmpedal-derivation", Mark.DERIVED),
    )
