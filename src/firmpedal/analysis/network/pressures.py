"""The pressure at every connection for any pedals pressed together, and what can stay when all are let go."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import combinations, permutations, product
from typing import TYPE_CHECKING

from firmpedal.analysis.circuit import machines
from firmpedal.analysis.pressure import FEET
from firmpedal.analysis.together import added_shares, pressed_together
from firmpedal.quantity import Mark, Value, any_of, exactly
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from firmpedal.analysis.circuit import Feeds, Machine
    from firmpedal.analysis.circuit.parts import Circuit
    from firmpedal.analysis.results import Results
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.quantity import Missing

Owners = frozenset[str]

MOST_TOGETHER = 4  # pedals of one circuit that are pressed together in every order; of more, every two
WORDS = "from the least to the greatest, by what is pressed first and by what is not known"
NOTHING = exactly("no pressure", Dimension.PRESSURE, 0.0, Mark.DERIVED)


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
    made = {each.cylinder: each.greatest[FEET.index(foot)] for each in results.cylinders}
    feet = _Feet(made, results.plumbing.feeds, added_shares(aircraft))
    return tuple(_of_circuit(aircraft, each.circuit, feet) for each in results.plumbing.circuits)


def _of_circuit(aircraft: Aircraft, circuit: Circuit, feet: _Feet) -> Pressures:
    found, asked = machines(aircraft, circuit)
    every = tuple(found.values())
    if not every:
        return Pressures((), (), tuple(asked))
    pressed = tuple(_pressed(every, circuit, some, feet) for some in _together(circuit.cylinders))
    return Pressures(pressed, tuple(_left(every, circuit, feet)), tuple(asked))


def _together(cylinders: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    most = len(cylinders) if len(cylinders) <= MOST_TOGETHER else 2
    for count in range(1, most + 1):
        yield from combinations(cylinders, count)


def _pressed(every: tuple[Machine, ...], circuit: Circuit, some: tuple[str, ...], feet: _Feet) -> Pressed:
    standings = [
        machine.run([("press", name) for name in order]).owners
        for machine in every
        for order in permutations(some)
    ]
    where = " and ".join(some)
    values = {
        group: _value({each[group] for each in standings}, feet, f"pressure with {where} pressed")
        for group in range(circuit.groups)
    }
    wheels = tuple((name, values[group]) for name, group in circuit.wheels)
    return Pressed(some, wheels, tuple((node, values[group]) for node, group in circuit.nodes))


def _left(every: tuple[Machine, ...], circuit: Circuit, feet: _Feet) -> Iterator[tuple[str, Value]]:
    """What stands at each wheel when pedals that were pressed in any order are let go in any order."""
    some = circuit.cylinders if len(circuit.cylinders) <= MOST_TOGETHER else circuit.cylinders[:2]
    standings = [
        machine.run([*(("press", name) for name in on), *(("let go", name) for name in off)]).owners
        for machine in every
        for on, off in product(permutations(some), repeat=2)
    ]
    for name, group in circuit.wheels:
        yield name, _value({each[group] for each in standings}, feet, f"pressure left at {name}")


@dataclass(frozen=True)
class _Feet:
    """What each pedal's own foot makes, and how feet add up."""

    own: dict[str, Value]
    feeds: Feeds
    shares: dict[str, Value]

    def of(self, owners: Owners) -> Value:
        own = {name: self.own[name] for name in sorted(owners)}
        return pressed_together(own, self.feeds, self.shares, f"pressure of {' and '.join(own)}", "")


def _value(found: Iterable[Owners], feet: _Feet, label: str) -> Value:
    """The range over all that can be."""
    cases = sorted(set(found), key=sorted)
    values = [feet.of(each) if each else NOTHING for each in cases]
    if len(values) == 1:
        return values[0].named(label)
    return any_of(label, values, "", WORDS, source="firmpedal-derivation")
