"""The pressure at every connection for any pedals pressed together, and what can stay when all are let go."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import combinations, permutations, product
from typing import TYPE_CHECKING

from firmpedal.analysis.circuit import machines
from firmpedal.analysis.pressure import FEET
from firmpedal.quantity import Mark, Step, Value, all_missing
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from firmpedal.analysis.circuit import Machine
    from firmpedal.analysis.circuit.parts import Circuit
    from firmpedal.analysis.results import Results
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.quantity import Missing

Owners = frozenset[str]

MOST_TOGETHER = 4  # pedals of one circuit that are pressed together in every order; of more, every two
WORDS = "from the greatest of the pressures that stand there to all of them together"


@dataclass(frozen=True)
class Pressed:
    """Some pedals of one circuit pressed together: the pressure at each wheel and at each connection."""

    cylinders: tuple[str, ...]
    wheels: tuple[tuple[str, Value], ...]
    nodes: tuple[tuple[str, Value], ...]


@dataclass(frozen=True)
class Pressures:
    """One circuit: every combination of its pedals, and what can stand at each wheel with all let go.

    `asked` is what the file leaves open and was taken both ways; where that is too much, nothing is pressed.
    """

    pressed: tuple[Pressed, ...]
    left: tuple[tuple[str, Value], ...]
    asked: tuple[Missing, ...]


def pressures(aircraft: Aircraft, results: Results, foot: str) -> tuple[Pressures, ...]:
    """Work out every circuit at one foot force on every pedal pressed."""
    made = {each.cylinder: each.pressures[FEET.index(foot)] for each in results.cylinders}
    return tuple(_of_circuit(aircraft, each.circuit, made) for each in results.plumbing.circuits)


def _of_circuit(aircraft: Aircraft, circuit: Circuit, made: dict[str, Value]) -> Pressures:
    found, asked = machines(aircraft, circuit)
    every = tuple(found.values())
    if not every:
        return Pressures((), (), tuple(asked))
    pressed = tuple(_pressed(every, circuit, some, made) for some in _together(circuit.cylinders))
    return Pressures(pressed, tuple(_left(every, circuit, made)), tuple(asked))


def _together(cylinders: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    most = len(cylinders) if len(cylinders) <= MOST_TOGETHER else 2
    for count in range(1, most + 1):
        yield from combinations(cylinders, count)


def _pressed(
    every: tuple[Machine, ...], circuit: Circuit, some: tuple[str, ...], made: dict[str, Value]
) -> Pressed:
    standings = [
        machine.run([("press", name) for name in order]).owners
        for machine in every
        for order in permutations(some)
    ]
    where = " and ".join(some)
    values = {
        group: _value({each[group] for each in standings}, circuit, made, f"pressure with {where} pressed")
        for group in range(circuit.groups)
    }
    wheels = tuple((name, values[group]) for name, group in circuit.wheels)
    return Pressed(some, wheels, tuple((node, values[group]) for node, group in circuit.nodes))


def _left(
    every: tuple[Machine, ...], circuit: Circuit, made: dict[str, Value]
) -> Iterator[tuple[str, Value]]:
    """What stands at each wheel when pedals that were pressed in any order are let go in any order."""
    some = circuit.cylinders if len(circuit.cylinders) <= MOST_TOGETHER else circuit.cylinders[:2]
    standings = [
        machine.run([*(("press", name) for name in on), *(("let go", name) for name in off)]).owners
        for machine in every
        for on, off in product(permutations(some), repeat=2)
    ]
    for name, group in circuit.wheels:
        yield name, _value({each[group] for each in standings}, circuit, made, f"pressure left at {name}")


def _value(found: Iterable[Owners], circuit: Circuit, made: dict[str, Value], label: str) -> Value:
    """The range over all that can be: each time from the greatest pressure to the sum of what adds up."""
    cases = list(found)
    owners = sorted(frozenset().union(*cases))
    inputs = tuple((f"p{n}", made[name]) for n, name in enumerate(owners, 1))
    mark = max([Mark.DERIVED, *(value.mark for _, value in inputs)])
    step = Step(WORDS, inputs)
    if any(value.span is None for _, value in inputs):
        missing = all_missing(value for _, value in inputs)
        return Value(label, Dimension.PRESSURE, None, mark, "", step=step, missing=missing)
    ends = [_ends(each, circuit, made) for each in cases]
    span = (min(low for low, _ in ends), max(high for _, high in ends))
    return Value(label, Dimension.PRESSURE, span, mark, "", "firmpedal-derivation", step)


def _ends(owners: Owners, circuit: Circuit, made: dict[str, Value]) -> tuple[float, float]:
    if not owners:
        return 0.0, 0.0
    low = max(made[name].low for name in owners)
    highs = [made[name].high for name in owners]
    return low, sum(highs) if _in_series(owners, circuit) else max(highs)


def _in_series(owners: Owners, circuit: Circuit) -> bool:
    """Whether one of some cylinders takes its fluid from where others press, so that they can add up."""
    if len(owners) < 2:
        return False
    tops = {group for group, _ in circuit.tops}
    return any(passage.above not in tops for name in owners for passage in circuit.of(name))
