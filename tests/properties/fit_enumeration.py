"""A second way to fit a joint: write down every sequence of parts that mates, and take the cheapest.

It shares nothing with the search but the rules, written here again from the parts themselves.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import permutations
from math import degrees

from firmpedal.model.part import Category, Form, Gender

BOUND = 6
SEALED = {
    Form.FLARE_37,
    Form.FLARE_45,
    Form.PIPE,
    Form.METRIC,
    Form.COMPRESSION,
    Form.BOSS,
    Form.BANJO,
    Form.WASHER_FACE,
}
SMALL = {Category.COUPLING_NUT, Category.SLEEVE}
OF_ANY_METAL = SMALL | {Category.WASHER}


def mate(one, other):
    return (one.form, one.size) == (other.form, other.size) and one.gender != other.gender


def flow(part):
    return [end.interface for end in part.ends if end.flow]


def dry(part):
    return [end.interface for end in part.ends if not end.flow]


def through_a_panel(part):
    """A bulkhead thread asks for a panel, unless the fitting goes into a boss: there the nut locks it."""
    bulkhead = any(end.form is Form.PANEL and end.gender is Gender.MALE for end in dry(part))
    return bulkhead and not any(end.form is Form.BOSS and end.gender is Gender.MALE for end in flow(part))


def turn_of(part):
    return round(degrees(part.turn or 0.0), 6)


def metals_of(line, material=""):
    """Give the metals wanted for bodies, and whether the builder named one."""
    if material or line.material:
        return {material or line.material}, True
    return ({line.group}, False) if line.group in ("aluminium", "steel") else ({"aluminium", "steel"}, False)


def allowed(part, line, material=""):
    wanted, asked = metals_of(line, material)
    if not part.brake_pressure:
        return False
    if part.category in SMALL:
        return line.group not in ("aluminium", "steel") or part.material == line.group
    return not asked or part.category in OF_ANY_METAL or part.material in wanted


def that_go_on(body, parts, wanted):
    """Give what goes on each dry end of a part: the lightest, of its own metal if there is any, or None."""
    found = []
    for end in dry(body):
        fitting = [one for one in parts if len(one.ends) == 1 and dry(one) and mate(dry(one)[0], end)]
        order = [
            (unlike([one], wanted), one.material != body.material, *mass_of([one]), number)
            for number, one in enumerate(fitting)
        ]
        found.append(fitting[min(order)[-1]] if order else None)
    return found


def with_what_goes_on(chain, parts, wanted):
    """Give all parts of a chain with what goes on their dry ends; None where something is missing."""
    placed = []
    for part, _, _ in chain:
        placed += [part, *that_go_on(part, parts, wanted)]
    return None if None in placed else placed


def sequences(parts, start, goal, bound=BOUND):
    """Give every sequence of parts from an exposed interface to a goal, as (part, enter, leave)."""
    if mate(start, goal):
        yield ()
    if bound == 0:
        return
    for part in parts:
        if len(flow(part)) == 2 and not through_a_panel(part):
            flowing = [number for number, end in enumerate(part.ends) if end.flow]
            for enter, leave in (flowing, flowing[::-1]):
                if mate(start, part.ends[enter].interface):
                    for rest in sequences(parts, part.ends[leave].interface, goal, bound - 1):
                        yield ((part, enter, leave), *rest)


def chains(parts, start, line, material=""):
    """Give every chain to a line that the rules allow, and all the parts that it takes."""
    usable = [part for part in parts if allowed(part, line, material)]
    for chain in sequences(usable, start, line.interface):
        placed = with_what_goes_on(chain, usable, metals_of(line, material)[0])
        if placed is not None and sum(turn_of(part) != 0 for part, _, _ in chain) <= 1:
            yield chain, placed


def leak_paths(chain, start):
    shows = [start, *(part.ends[leave].interface for part, _, leave in chain)]
    faces = [end for part, _, _ in chain for end in dry(part)]
    return sum(interface.form in SEALED for interface in (*shows, *faces))


def unlike(parts, wanted):
    return sum(part.category not in OF_ANY_METAL and part.material not in wanted for part in parts)


def mass_of(parts):
    """Count unknown masses, and add the known ones exactly."""
    known = [Fraction(str(part.mass.middle)) for part in parts if part.mass.known]
    return len(parts) - len(known), sum(known)


def port_cost(chain, parts, start, line):
    turn = sum(turn_of(part) for part in parts)
    wish = line.turn if line.turn is not None else line.leaves
    off = abs(turn - round(degrees(wish or 0.0), 6))
    leaks = leak_paths(chain, start)
    return unlike(parts, metals_of(line)[0]), leaks, len(parts), round(off, 6), turn, *mass_of(parts)


def cheapest_chains(parts, start, line):
    """Give the least cost of all chains and every chain that has it; None if there is no chain."""
    costed = [(port_cost(chain, all_, start, line), all_) for chain, all_ in chains(parts, start, line)]
    if line.turn is not None:
        costed = [(cost, chain) for cost, chain in costed if cost[3] == 0]
    if not costed:
        return None, []
    least = min(cost for cost, _ in costed)
    return least, [all_ for cost, all_ in costed if cost == least]


def cheapest_hub(parts, hub, lines):
    """Give the least cost of a body with both lines on it.

    The cost is: lines not joined, threads without jam nut, unlike metals, leak paths, parts, mass.
    """
    metals = _hub_metals(hub, lines)
    usable = [part for part in parts if _hub_allows(part, metals)]
    costs = []
    for body in usable:
        if _is_body(body, hub):
            held = [one for one in that_go_on(body, usable, metals[0]) if one is not None]
            costs += [
                _hub_cost(body, held, ends, lines, parts, hub, metals) for ends in permutations(flow(body), 2)
            ]
    return min(costs, default=None)


def _hub_metals(hub, lines):
    asked = {hub.material} if hub.material else {line.material for line in lines if line.material}
    like = {line.group for line in lines if line.group in ("aluminium", "steel")}
    return (asked, True) if asked else (like or {"aluminium", "steel"}, False)


def _hub_allows(part, metals):
    wanted, asked = metals
    free = part.category is Category.WASHER or part.material in wanted
    return part.brake_pressure and (not asked or free)


def _is_body(part, hub):
    if part.category in SMALL or len(flow(part)) != 2 or turn_of(part) != round(degrees(hub.turn), 6):
        return False
    return through_a_panel(part) == hub.through_panel


def _hub_cost(body, held, ends, lines, parts, hub, metals):
    placed = [body, *held]
    faces = sum(end.form in SEALED for end in dry(body))
    total = [
        0,
        len(dry(body)) - len(held),
        unlike(placed, metals[0]),
        faces,
        len(placed),
        *mass_of(placed),
    ]
    for start, line in zip(ends, lines, strict=True):
        total = [one + more for one, more in zip(total, _side_cost(start, line, parts, hub), strict=True)]
    return tuple(total)


def _side_cost(start, line, parts, hub):
    costs = []
    for chain, placed in chains(parts, start, line, hub.material):
        if sum(turn_of(part) for part in placed) == 0:
            wanted = metals_of(line, hub.material)[0]
            leaks = leak_paths(chain, start)
            costs.append((0, 0, unlike(placed, wanted), leaks, len(placed), *mass_of(placed)))
    return min(costs, default=(1, 0, 0, 0, 0, 0, 0))
