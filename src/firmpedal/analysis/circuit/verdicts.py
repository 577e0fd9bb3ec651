"""What is true of a circuit: for sure, for sure not, or depending on answers that the file does not give."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass
from enum import StrEnum
from functools import lru_cache
from itertools import combinations, product
from typing import TYPE_CHECKING

from firmpedal.analysis.circuit.parts import roots
from firmpedal.analysis.circuit.states import Facts, Machine
from firmpedal.model.aircraft import find
from firmpedal.model.kinds import MasterCylinder, Reservoir
from firmpedal.quantity import Answer, Missing

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.analysis.circuit.parts import Circuit
    from firmpedal.model.aircraft import Aircraft

MOST_UNKNOWN = 6  # answers that are tried both ways: 64 machines
ALL_TOGETHER = 4  # cylinders whose every order is tried; with more, every two of them
MOST_CYLINDERS = 12  # in one circuit; no aircraft has more, and the pairs would take minutes


class Kind(StrEnum):
    """What can be wrong in a circuit."""

    MAKES_NO_PRESSURE = "makes no pressure"
    NOT_FREED = "not freed"
    HELD = "held"
    SHUT_OUT = "shut out"
    NOT_PARKED = "not parked"
    NOT_FOLLOWED = "not followed"


@dataclass(frozen=True, slots=True)
class Fact:
    """One thing that can be so: of which caliper, which cylinder, and because of which other part."""

    kind: Kind
    caliper: str = ""
    cylinder: str = ""
    by: str = ""


@dataclass(frozen=True, slots=True)
class Verdict:
    """A fact that is so, or may be so; `matters` is what it then depends on."""

    fact: Fact
    answer: Answer
    matters: tuple[Missing, ...] = ()


def verdicts(aircraft: Aircraft, circuit: Circuit) -> tuple[Verdict, ...]:
    """Try every answer that is not given, and keep what is so in all cases or in some."""
    found, missing = machines(aircraft, circuit)
    if not found:
        asked = tuple(missing) or (_too_many(circuit),)
        return (Verdict(Fact(Kind.NOT_FOLLOWED), Answer.UNKNOWN, asked),)
    cases = {answers: _facts_of(machine) for answers, machine in found.items()}
    return tuple(_verdict(fact, cases, missing) for fact in sorted(set().union(*cases.values()), key=_order))


def machines(aircraft: Aircraft, circuit: Circuit) -> tuple[dict[tuple[bool, ...], Machine], list[Missing]]:
    """A machine for every way to answer what the file leaves open, and what is asked; none where too many."""
    given, open_questions = _questions(aircraft, circuit)
    missing = [each for _, _, each in open_questions]
    if len(open_questions) > MOST_UNKNOWN or len(circuit.cylinders) > MOST_CYLINDERS:
        return {}, missing
    found = {}
    for answers in product((True, False), repeat=len(open_questions)):
        taken = {key: set(names) for key, names in given.items()}
        for (key, name, _), answer in zip(open_questions, answers, strict=True):
            if answer:
                taken[key].add(name)
        facts = Facts(*(frozenset(taken[key]) for key in ("opens", "seals", "vented")))
        found[answers] = Machine(circuit, facts)
    return found, missing


def _order(fact: Fact) -> tuple[int, str, str, str]:
    return list(Kind).index(fact.kind), fact.caliper, fact.cylinder, fact.by


def _too_many(circuit: Circuit) -> Missing:
    first = circuit.cylinders[0]
    return Missing(
        f"components.{first}", f"whether {len(circuit.cylinders)} cylinders are joined in one circuit"
    )


def _verdict(fact: Fact, cases: dict[tuple[bool, ...], frozenset[Fact]], missing: list[Missing]) -> Verdict:
    if all(fact in facts for facts in cases.values()):
        return Verdict(fact, Answer.YES)
    matters = tuple(
        what
        for n, what in enumerate(missing)
        if any((fact in facts) != (fact in cases[_turned(case, n)]) for case, facts in cases.items())
    )
    return Verdict(fact, Answer.UNKNOWN, matters)


def _turned(case: tuple[bool, ...], n: int) -> tuple[bool, ...]:
    return (*case[:n], not case[n], *case[n + 1 :])


Question = tuple[str, str, Missing]


def _questions(aircraft: Aircraft, circuit: Circuit) -> tuple[dict[str, set[str]], list[Question]]:
    """The names that have each property for sure, and the properties that are not known."""
    given: dict[str, set[str]] = defaultdict(set)
    asked: list[Question] = []

    def ask(key: str, name: str, answer: Answer, missing: Missing) -> None:
        if answer is Answer.YES:
            given[key].add(name)
        elif answer is Answer.UNKNOWN:
            asked.append((key, name, missing))

    for name in circuit.cylinders:
        part = find(aircraft.cylinders, name)
        if part is not None and circuit.of(name):
            words = f"whether {name} lets fluid back at rest"
            ask("opens", name, part.opens_at_rest, Missing(f"{part.place}.opens at rest", words))
            ask("seals", name, _seals(aircraft, circuit, part), seal_question(part))
    for name in dict.fromkeys(name for _, name in circuit.tops):
        top = find(aircraft.components, name)
        if isinstance(top, Reservoir):
            words = f"whether air gets in and out of {name}"
            ask("vented", name, top.vented, Missing(f"{top.place}.vented", words))
        else:
            given["vented"].add(name)
    return {key: given[key] for key in ("opens", "seals", "vented")}, asked


def seal_question(cylinder: MasterCylinder) -> Missing:
    """What to ask the maker of a cylinder that stands behind another."""
    words = (
        f"ask its maker whether {cylinder.name} may be downstream of another cylinder: with its pedal held, "
        "is the other seat shut out (then seals when pressed is yes), or does the wheel follow what the "
        "other seat presses and lets go (then it is no)?"
    )
    return Missing(f"{cylinder.place}.seals when pressed", words)


def _seals(aircraft: Aircraft, circuit: Circuit, cylinder: MasterCylinder) -> Answer:
    """Whether it seals; right below a vented reservoir it is all the same, and taken as yes."""
    vented = {group for group, name in circuit.tops if _vented(aircraft, name)}
    if all(passage.above in vented for passage in circuit.of(cylinder.name)):
        return Answer.YES
    return cylinder.seals_when_pressed


def _vented(aircraft: Aircraft, name: str) -> bool:
    top = find(aircraft.components, name)
    return not isinstance(top, Reservoir) or top.vented is Answer.YES


@lru_cache(maxsize=512)  # whatever else of the aircraft changes, its circuit does so seldom
def _facts_of(machine: Machine) -> frozenset[Fact]:
    return frozenset(_facts(machine))


def _facts(machine: Machine) -> Iterator[Fact]:
    circuit = machine.circuit
    alone = {name: machine.run([("press", name)]) for name in circuit.cylinders}
    for name, standing in alone.items():
        if machine.vented(standing)[circuit.outlet(name)]:
            yield Fact(Kind.MAKES_NO_PRESSURE, cylinder=name)
    air = machine.vented(machine.free)
    for caliper, group in circuit.wheels:
        if not air[group]:
            yield Fact(Kind.NOT_FREED, caliper)
    serves = {
        (name, caliper)
        for name, standing in alone.items()
        for caliper, group in circuit.wheels
        if name in standing.owners[group]
    }
    yield from _between_seats(machine, serves)
    yield from _parking(machine, serves)


def _between_seats(machine: Machine, serves: set[tuple[str, str]]) -> Iterator[Fact]:
    """What one pressed cylinder does to what another presses, in any order of events."""
    circuit = machine.circuit
    names = circuit.cylinders
    together = [names] if len(names) <= ALL_TOGETHER else list(combinations(names, 2))
    moments = {now for some in together for now in machine.reachable(frozenset(some))}
    for caliper, group in circuit.wheels:
        for name in names:
            for other in names:
                if name == other or not {(name, caliper), (other, caliper)} <= serves:
                    continue
                pressing = [now for now in moments if other in now.pressed]
                if any(name in now.owners[group] and name not in now.pressed for now in pressing):
                    yield Fact(Kind.HELD, caliper, name, other)
                two = {name, other}
                if any(name not in now.owners[group] and now.pressed == two for now in pressing):
                    yield Fact(Kind.SHUT_OUT, caliper, name, other)


def _parking(machine: Machine, serves: set[tuple[str, str]]) -> Iterator[Fact]:
    circuit = machine.circuit
    for valve in circuit.valves:
        for caliper, group in circuit.wheels:
            if not stands_between(circuit, valve, caliper):
                continue
            for name in circuit.cylinders:
                events = [("press", name), ("shut", valve), ("let go", name)]
                if (name, caliper) in serves and name not in machine.run(events).owners[group]:
                    yield Fact(Kind.NOT_PARKED, caliper, name, valve)


def stands_between(circuit: Circuit, valve: str, caliper: str) -> bool:
    """Whether a shut valve parts a caliper from any cylinder or reservoir."""
    ways = [(each.above, each.below) for each in circuit.passages if each.part != valve]
    root = roots(circuit.groups, ways)
    ends = [group for _, group in circuit.outlets] + [group for group, _ in circuit.tops]
    return any(root[end] != root[circuit.wheel(caliper)] for end in ends)
