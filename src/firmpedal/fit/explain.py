"""Why two ends do not mate, and what would join them."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from firmpedal.fit.joint import Mismatch, MismatchKind
from firmpedal.fit.kinds import described, kind_of, nearness, nominal, system, words_for
from firmpedal.fit.mating import NUTS_AND_SLEEVES, bodies_first, dressed, mates, part_number
from firmpedal.fit.runs import found_run
from firmpedal.fit.shop import shop_of
from firmpedal.fit.ways import ways_to
from firmpedal.fit.wishes import Wishes
from firmpedal.model.part import Form
from firmpedal.units import from_unit

if TYPE_CHECKING:
    from collections.abc import Sequence

    from firmpedal.fit.joint import EndRef
    from firmpedal.fit.shop import Catalogue, Shop
    from firmpedal.fit.ways import Way
    from firmpedal.model.part import Interface, Part

ANY_PART = Wishes()
_SAME_SIZE = 1e-6


def why_not(one: EndRef, other: EndRef, catalogue: Catalogue, parts: Sequence[Part] = ()) -> Mismatch:
    """Classify why two ends do not mate, and name what would join them.

    Args:
        one: An end.
        other: The end it was brought to; the two do not mate.
        catalogue: Where parts to join them are looked for.
        parts: The parts of the joint, so that an end of `part 0` can be told by the part it belongs to.
    """
    return mismatch_of(one, other, shop_of(catalogue), parts)


def mismatch_of(one: EndRef, other: EndRef, shop: Shop, parts: Sequence[Part] = ()) -> Mismatch:
    """Do what `why_not` does, in a shop."""
    kind = kind_of(one.interface, other.interface)
    run = found_run(one.interface, other.interface, ANY_PART, shop)
    needed = tuple(part.designation for part in bodies_first(run.parts)) if run else ()
    if kind is MismatchKind.THREAD_SIZE and (words := _pipe_dash(one, other, parts, shop)):
        return Mismatch(MismatchKind.PIPE_DASH, one, other, words, needed)
    if kind not in (MismatchKind.DIFFERENT_FORM, MismatchKind.NO_PARTS):
        return Mismatch(kind, one, other, words_for(kind, one.interface, other.interface), needed)
    words = words_for(kind, one.interface, other.interface)
    if needed:
        missing = f"{words}; missing between them: {', '.join(needed)}"
        return Mismatch(MismatchKind.DIFFERENT_FORM, one, other, missing, needed)
    if system(one.interface) == system(other.interface):
        return Mismatch(kind, one, other, words)
    return _nearest_miss(one, other, shop)


def _nearest_miss(one: EndRef, other: EndRef, shop: Shop) -> Mismatch:
    """Put one body on either end, and say why the two nearest ends that then show do not mate."""
    pairs = [
        (near + far, nearness(shown, wanted), shown, wanted)
        for shown, near in _showing(one.interface, shop)
        for wanted, far in _showing(other.interface, shop)
        if near + far <= 1
        and kind_of(shown, wanted) is not MismatchKind.DIFFERENT_FORM
        and not mates(shown, wanted)
    ]
    nothing = f"nothing in the catalogue joins {described(one.interface)} to {described(other.interface)}"
    if not pairs:
        return Mismatch(MismatchKind.NO_PARTS, one, other, nothing)
    *_, shown, wanted = min(pairs, key=lambda pair: pair[:2])
    kind = kind_of(shown, wanted)
    return Mismatch(kind, one, other, f"{nothing}; {words_for(kind, shown, wanted)}")


def _showing(end: Interface, shop: Shop) -> list[tuple[Interface, int]]:
    """List the interfaces that can be made to show from an end, with the bodies that takes.

    Parts pass both ways, so what leads to an end also leads away from it. What shows between a nut
    and its sleeve is left out: nobody puts anything else there.
    """
    return [
        (shown, min(_bodies(way, shop) for _, way in ways))
        for start, ways in ways_to(end, ANY_PART, shop).items()
        if dressed(shown := start.complement).form is system(shown)
    ]


def _bodies(way: Way, shop: Shop) -> int:
    return sum(shop.passes[number].part.category not in NUTS_AND_SLEEVES for number in way.passes)


def _pipe_dash(one: EndRef, other: EndRef, parts: Sequence[Part], shop: Shop) -> str:
    """Say what dash an all-pipe fitting should have had, or nothing if neither end belongs to one."""
    for end, facing in ((one, other), (other, one)):
        dash, wanted = _eighths(end.interface), _eighths(facing.interface)
        if dash and wanted and any(_all_pipe(part) for part in _owners(end, parts, shop)):
            return (
                f"dash -{dash} on an all-pipe fitting is {_in_eighths(dash)} pipe, not tube size {dash}; "
                f"the {facing.owner.split()[0]} is {_in_eighths(wanted)}: dash -{wanted}"
            )
    return ""


def _owners(end: EndRef, parts: Sequence[Part], shop: Shop) -> list[Part]:
    """Give the part an end belongs to; the parts it may belong to where the joint's parts are not given."""
    number = part_number(end)
    if number is None:
        return []
    if number < len(parts):
        return [parts[number]]
    return [part for part in shop.parts if end.interface in (one.interface for one in part.ends)]


def _all_pipe(part: Part) -> bool:
    return all(end.interface.form is Form.PIPE for end in part.ends)


def _eighths(interface: Interface) -> int:
    """Give the pipe size in eighths of an inch, which is its dash number; 0 if it has none."""
    eighths = nominal(interface) / from_unit(1 / 8, "in")
    whole = round(eighths)
    return whole if interface.form is Form.PIPE and abs(eighths - whole) < _SAME_SIZE else 0


def _in_eighths(dash: int) -> str:
    return str(Fraction(dash, 8))
