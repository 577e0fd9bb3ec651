"""What refers to what: names that lead nowhere, and two lines on one port."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from firmpedal.model.shapes import Stretch
from firmpedal.project.names import near_miss, other_side, quoted, suggest
from firmpedal.project.tree import Branch, Items, Leaf, Node

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.kinds import Component
    from firmpedal.project.notes import Notes

# Sections whose things a line can be connected to, and so must not share names.
CONNECTED = ("components", "bulkheads", "lines")


@dataclass
class References:
    """Looks names up in a model; a name that is missing in several places is spoken of once."""

    aircraft: Aircraft
    tree: Branch
    notes: Notes
    missing: dict[tuple[str, str], tuple[list[Node], str]] = field(default_factory=dict)

    def node(self, path: str) -> Node:
        """The piece of the file at an object path, or the nearest one around it."""
        found: Node = self.tree
        for word in path.split("."):
            if isinstance(found, Branch) and word in found.entries:
                found = found.entries[word]
            elif isinstance(found, Items) and word.isdecimal() and 0 < int(word) <= len(found.nodes):
                found = found.nodes[int(word) - 1]
        return found

    def known(
        self, path: str, kind: str, name: str, names: Iterable[str], section: str, *, at_key: bool = False
    ) -> None:
        """Look for a name among the names of a kind; `at_key` says that the name is itself a key."""
        names = list(names)
        if name and name not in names and not self.notes.doubtful("", section):
            node = self._key(path) if at_key else self.node(path)
            self.lacking(path, f"there is no {kind} {quoted(name)}", name, self._advice(name, names), node)

    def _key(self, path: str) -> Node:
        around, _, name = path.rpartition(".")
        found = self.node(around)
        return Leaf(name, found.key_span(name), path, found.via) if isinstance(found, Branch) else found

    def lacking(self, path: str, message: str, name: str, advice: str, node: Node | None = None) -> None:
        self.missing.setdefault((message, name), ([], advice))[0].append(node or self.node(path))

    def _advice(self, name: str, names: list[str]) -> str:
        other = other_side(name)
        if other != name and other in names:
            return f"write {quoted(name)} out, or put {quoted(other)} on the mirror list"
        return suggest(name, names)

    def say(self) -> None:
        """Note each missing name once, at the first place that the builder wrote."""
        for (message, _), (nodes, advice) in self.missing.items():
            written = [node for node in nodes if node.via is None] or nodes
            spans = list(dict.fromkeys(node.span for node in written))
            more = len(spans) - 1
            if more:
                places = "one more place names it" if more == 1 else f"{more} more places name it"
                self.notes.note(written[0], f"{message}; {places}", advice, spans[1])
            else:
                self.notes.note(written[0], message, advice)


def check_references(work: References) -> None:
    """Note every name that points nowhere and every connection that is used twice."""
    _shared_names(work)
    _lines(work)
    _names(work)
    _ports(work)
    work.say()


def _shared_names(work: References) -> None:
    """Two things that the same words would mean."""
    for sections in (CONNECTED, ("points", "bulkheads")):
        first: dict[str, str] = {}
        for section in sections:
            node = work.tree.entries.get(section)
            for name in node.entries if isinstance(node, Branch) else ():
                if name in first and isinstance(node, Branch):
                    others = work.tree.entries[first[name]]
                    also = others.key_span(name) if isinstance(others, Branch) else others.span
                    message = f"{quoted(name)} is also the name of one of the {first[name]}"
                    work.notes.note_at(
                        node.key_span(name), message, name, "give one of them another name", also
                    )
                first.setdefault(name, section)


def connections(aircraft: Aircraft) -> dict[str, str]:
    """Everything a line can be connected to by name, with the place where it is declared."""
    found = {f"{part.name}.{port.name}": port.place for part in aircraft.components for port in part.ports}
    found |= {f"{wall.name}.{side.name}": side.place for wall in aircraft.bulkheads for side in wall.sides}
    return found | {
        f"{line.name}.{end}": f"{line.place}.{end}" for line in aircraft.lines for end in ("from", "to")
    }


def _lines(work: References) -> None:
    targets = connections(work.aircraft)
    taken: dict[str, str] = {}
    for line in work.aircraft.lines:
        for end, target in (("from", line.start), ("to", line.finish)):
            place = f"{line.place}.{end}"
            if target in (f"{line.name}.from", f"{line.name}.to"):
                work.notes.note(work.node(place), f"{line.name} leads to itself", "name what it leads to")
            elif target in taken and target in targets:
                _two_on_one(work, place, taken[target], target)
            elif target not in targets and target:
                _nowhere(work, place, target, targets)
            taken.setdefault(target, place)


def _two_on_one(work: References, place: str, other: str, target: str) -> None:
    names = place.split(".")[1], other.split(".")[1]
    node, first = work.node(place), work.node(other)
    if names[0] == names[1]:
        message = f"{names[0]} starts and ends at {quoted(target)}"
    else:
        message = f"two lines come to {quoted(target)}: {names[0]} and {names[1]}"
    advice = "one port takes one line; put a tee or another port between"
    via, head = node.via or first.via, target.partition(".")[0]
    if via is None or node.span != first.span:
        work.notes.note(node, message, advice, first.span)
    elif other_side(head) == head:  # a copy of the very same line comes to something in the middle
        work.notes.note_at(via, message, target, advice, first.span)
    else:
        message = f"the copies come to {quoted(head)} as well, and its places are taken"
        advice = f"put {quoted(head)} on the mirror list too, or say where the copies lead"
        work.lacking(place, message, head, advice, replace(node, span=via, via=None))


def _nowhere(work: References, place: str, target: str, targets: Iterable[str]) -> None:
    """A line's end at something that is not there, or that has no such port."""
    head, _, tail = target.partition(".")
    targets = list(targets)
    heads: dict[str, str] = {}
    for section in CONNECTED:
        node = work.tree.entries.get(section)
        heads |= dict.fromkeys(node.entries, section) if isinstance(node, Branch) else {}
    if head in heads:
        path, inner = (
            f"{heads[head]}.{head}",
            {"components": "ports", "bulkheads": "sides"}.get(heads[head], ""),
        )
        if work.notes.doubtful(path, f"{path}.{inner}"):
            return
        own = [name for name in targets if name.startswith(f"{head}.")]
        message = (
            f"{head} has no {quoted(tail)}"
            if tail
            else f"{quoted(head)} alone does not say at which of its places the line begins or ends"
        )
        work.lacking(place, message, target, suggest(target, own))
    elif not work.notes.doubtful("", *CONNECTED):
        other = other_side(head)
        close = near_miss(target, targets)
        if other != head and other in heads:
            advice = f"write {quoted(head)} out, or put {quoted(other)} on the mirror list"
        else:
            advice = f"did you mean `{close}`?" if close else suggest(head, heads)
        work.lacking(place, f"nothing is called {quoted(head)}", head, advice)


def _names(work: References) -> None:
    aircraft = work.aircraft
    moving = [thing.name for thing in aircraft.moving]
    pedals = [pedal.name for pedal in aircraft.pedals]
    lines = [line.name for line in aircraft.lines]
    for thing in (*aircraft.components, *aircraft.bulkheads, *aircraft.pedals, *aircraft.keep_clear_of):
        work.known(f"{thing.place}.moves with", "moving thing", thing.moves_with, moving, "moving")
    for carried in aircraft.moving:
        work.known(f"{carried.place}.with", "moving thing", carried.carried_by, moving, "moving")
    for cylinder in aircraft.cylinders:
        work.known(f"{cylinder.place}.pedal", "pedal", cylinder.pedal, pedals, "pedals")
    calipers = [caliper.name for caliper in aircraft.calipers]
    for wheel in aircraft.wheels:
        work.known(f"{wheel.place}.caliper", "caliper", wheel.caliper, calipers, "components")
    for zone in aircraft.zones:
        for shape in zone.where:
            if isinstance(shape, Stretch):
                work.known(f"{zone.place}.where.line", "line", shape.line, lines, "lines")
    for panel in aircraft.panels:
        for passage in panel.passes:
            work.known(passage.place, "line", passage.name, lines, "lines", at_key=True)


def _ports(work: References) -> None:
    """Ports that a component names among its own."""
    for part in work.aircraft.components:
        for port in {port for pair in part.inner_ways for port in pair}:
            _own_port(work, part, "ways", port)
    for cylinder in work.aircraft.cylinders:
        for key, port in (("outlet", cylinder.outlet), ("inlet", cylinder.inlet)):
            if key in cylinder.written:  # left out, it is simply not known which port it is
                _own_port(work, cylinder, key, port)


def _own_port(work: References, part: Component, key: str, port: str) -> None:
    own = [f"{part.name}.{each.name}" for each in part.ports]
    name = f"{part.name}.{port}"
    if port and name not in own and not work.notes.doubtful(part.place, f"{part.place}.ports"):
        message = f"{part.name} has no {quoted(port)}"
        work.lacking(f"{part.place}.{key}", message, name, suggest(name, own))
