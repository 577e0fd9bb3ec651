"""Ends by name, which of them face each other, and which are left over."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from firmpedal.fit.joint import EndRef
from firmpedal.model.part import Category, Form, Gender, Interface

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from firmpedal.fit.joint import LineEnd, Mating, Mismatch, Port
    from firmpedal.model.part import Part

NUTS_AND_SLEEVES = frozenset({Category.COUPLING_NUT, Category.SLEEVE})

_DRESSED = {
    Form.TUBE_FLARE_37: (Form.FLARE_37, Gender.FEMALE),
    Form.TUBE_FLARE_45: (Form.FLARE_45, Gender.FEMALE),
    Form.PLAIN_TUBE: (Form.COMPRESSION, Gender.MALE),
}


class Link(NamedTuple):
    """Two ends that face each other; `mismatch` says why they are not joined where that is known already."""

    one: EndRef
    other: EndRef
    mismatch: Mismatch | None = None


class Pass(NamedTuple):
    """A part taken from one of its flow ends to another."""

    part: Part
    enter: int
    leave: int

    @property
    def before(self) -> Interface:
        """The interface that this part screws onto."""
        return self.part.ends[self.enter].interface.complement

    @property
    def after(self) -> Interface:
        """The interface that shows once this part is on."""
        return self.part.ends[self.leave].interface


def passes_of(part: Part) -> tuple[Pass, ...]:
    """Give every way from one flow end of a part to another of its flow ends."""
    ends = part.flow_ends
    return tuple(Pass(part, enter, leave) for enter in ends for leave in ends if enter != leave)


def mates(one: Interface, other: Interface) -> bool:
    """Say whether two interfaces mate: same form and size, opposite gender, and nothing else."""
    return one.form == other.form and one.size == other.size and one.gender != other.gender


def dressed(interface: Interface) -> Interface:
    """Give the interface that a tube end shows with its nut and sleeve on; others show themselves."""
    shown = _DRESSED.get(interface.form)
    if shown is None or interface.gender is Gender.FEMALE:
        return interface
    form, gender = shown
    return Interface(form, interface.size, gender)


def port_end(port: Port) -> EndRef:
    return EndRef(f"port {port.name}", 0, port.interface)


def line_end(line: LineEnd) -> EndRef:
    return EndRef(f"line {line.line} {line.end}", 0, line.interface)


def part_end(number: int, part: Part, index: int) -> EndRef:
    return EndRef(f"part {number}", index, part.ends[index].interface)


def part_number(end: EndRef) -> int | None:
    """Give the number of the part that an end belongs to, or None for a port or line end."""
    word, _, number = end.owner.partition(" ")
    return int(number) if word == "part" else None


def dry_links(parts: Sequence[Part]) -> list[Link]:
    """Link each jam nut, washer or O-ring with the first free dry end that it goes on."""
    dry = [
        (part_end(number, part, index), bool(part.flow_ends))
        for number, part in enumerate(parts)
        for index, end in enumerate(part.ends)
        if not end.flow
    ]
    free = [end for end, on_body in dry if on_body]
    links: list[Link] = []
    for one in (end for end, on_body in dry if not on_body):
        if (other := next((end for end in free if mates(one.interface, end.interface)), None)) is not None:
            free.remove(other)
            links.append(Link(one, other))
    return links


def ends_of(parts: Sequence[Part]) -> list[EndRef]:
    """List every end of every part of a joint."""
    return [part_end(n, part, index) for n, part in enumerate(parts) for index in range(len(part.ends))]


def left_over(ends: Iterable[EndRef], matings: Iterable[Mating]) -> tuple[EndRef, ...]:
    """Pick the ends that nothing mates with."""
    used = {end for mating in matings for end in (mating.one, mating.other)}
    return tuple(end for end in ends if end not in used)


def bodies_first(parts: Iterable[Part]) -> tuple[Part, ...]:
    """Order parts for somebody who has to buy them: bodies first, then nuts and sleeves."""
    return tuple(sorted(parts, key=lambda part: part.category in NUTS_AND_SLEEVES))
