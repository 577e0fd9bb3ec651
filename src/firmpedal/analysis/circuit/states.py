"""What pressure stands where as pedals are pressed and let go: a small machine, one event at a time.

Everything here is definite: what the file leaves unknown is assumed one way or the other by the caller.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.analysis.circuit.parts import Circuit, Passage, roots

if TYPE_CHECKING:
    from collections.abc import Iterable

Owners = frozenset[str]
"""The cylinders whose pressure stands in a group of connections."""


@dataclass(frozen=True, slots=True)
class Facts:
    """What a machine runs on: which parts let fluid back at rest, seal when pressed, are vented."""

    opens: frozenset[str]
    seals: frozenset[str]
    vented: frozenset[str]


@dataclass(frozen=True, slots=True)
class Standing:
    """One moment: what is pressed, which valves are shut, and whose pressure stands in each group."""

    pressed: frozenset[str]
    shut: frozenset[str]
    owners: tuple[Owners, ...]


@dataclass(frozen=True)
class Machine:
    """One circuit with definite answers."""

    circuit: Circuit
    facts: Facts

    @property
    def free(self) -> Standing:
        """All pedals free, all valves open, no pressure anywhere."""
        return self._settled(frozenset(), frozenset(), (frozenset(),) * self.circuit.groups)

    def press(self, before: Standing, cylinder: str) -> Standing:
        return self._settled(before.pressed | {cylinder}, before.shut, before.owners)

    def let_go(self, before: Standing, cylinder: str) -> Standing:
        """The piston comes back first, and takes its own fluid along from where its outlet stands."""
        root = self._roots(before)
        here = root[self.circuit.outlet(cylinder)]
        owners = tuple(
            each - {cylinder} if root[group] == here else each for group, each in enumerate(before.owners)
        )
        return self._settled(before.pressed - {cylinder}, before.shut, owners)

    def shut(self, before: Standing, valve: str) -> Standing:
        return self._settled(before.pressed, before.shut | {valve}, before.owners)

    def run(self, events: Iterable[tuple[str, str]]) -> Standing:
        """Take some events in order from all free: `press`, `let go` or `shut`, and the part's name."""
        now = self.free
        for event, part in events:
            now = {"press": self.press, "let go": self.let_go, "shut": self.shut}[event](now, part)
        return now

    def domain(self, standing: Standing, group: int) -> frozenset[int]:
        """The groups that share one pressure with a group."""
        root = self._roots(standing)
        return frozenset(other for other, each in enumerate(root) if each == root[group])

    def vented(self, standing: Standing) -> list[bool]:
        """For each group, whether it stands open to a vented reservoir."""
        root = self._roots(standing)
        open_to_air = {root[group] for group, name in self.circuit.tops if name in self.facts.vented}
        return [each in open_to_air for each in root]

    def reachable(self, cylinders: frozenset[str]) -> set[Standing]:
        """Every moment that pressing and letting go of some cylinders, in any order, can lead to."""
        found = {self.free}
        waiting = list(found)
        while waiting:
            now = waiting.pop()
            for name in cylinders:
                then = self.let_go(now, name) if name in now.pressed else self.press(now, name)
                if then not in found:
                    found.add(then)
                    waiting.append(then)
        return found

    def _open(self, passage: Passage, standing: Standing) -> bool:
        if passage.part in self.circuit.valves:
            return passage.part not in standing.shut
        return passage.part not in standing.pressed and passage.part in self.facts.opens

    def _roots(self, standing: Standing) -> list[int]:
        joined = [(each.above, each.below) for each in self.circuit.passages if self._open(each, standing)]
        return roots(self.circuit.groups, joined)

    def _settled(self, pressed: frozenset[str], shut: frozenset[str], kept: tuple[Owners, ...]) -> Standing:
        """Work out whose pressure stands where: what was trapped stays, what is open to air is lost.

        A pressed cylinder that does not seal passes on what stands at its inlet and keeps nothing of it
        when that goes: behind it, only its own foot holds.
        """
        now = Standing(pressed, shut, kept)
        root, air = self._roots(now), self.vented(now)
        follows = [
            (root[each.above], root[each.below])
            for each in self.circuit.passages
            if each.part in pressed and each.part not in self.facts.seals
        ]
        fresh = {below for _, below in follows}
        owners: dict[int, Owners] = {each: frozenset() for each in root}
        for group, before in enumerate(kept):
            if not air[group] and root[group] not in fresh:
                owners[root[group]] |= before
        for name in pressed:
            outlet = self.circuit.outlet(name)
            if not air[outlet]:
                owners[root[outlet]] |= {name}
        for _ in follows:
            for above, below in follows:
                if not air[below]:
                    owners[below] |= owners[above]
        return replace(now, owners=tuple(owners[each] for each in root))
