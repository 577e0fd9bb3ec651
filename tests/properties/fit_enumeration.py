"""A second way to fit a joint: write down every sequence of parts that mates, and take the cheapest.

It shares nothing with the search but the rules, written here again from the parts themselves.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import permutations
from math import degrees

from firmpedal.model.part import Category, Form

BOUND = 6
SEALED = {Form.FLARE_37, Form.FLARE_45, Form.PIPE, Form.METRIC, Form.COMPRESSION, Form.BOSS}
SMALL = {Category.COUPLING_NUT, Category.SLEEVE}


def mate(one, other):
    return (one.form, one.size) == (other.form, other.size) and one.gender != other.gender


def flow(part):
    return [end.interface for end in part.ends if end.flow]


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
    return not asked or part.material in wanted


def sequences(parts, start, goal, bound=BOUND):
    """Give every sequence of parts from an exposed interface to a goal, as (part, enter, leave)."""
    if mate(start, goal):
        yield ()
    if bound == 0:
        return
    for part in parts:
        if len(part.ends) == len(flow(part)) == 2:
            for enter, leave in ((0, 1), (1, 0)):
                if mate(start, part.ends[enter].interface):
                    for rest in sequences(parts, part.ends[leave].interface, goal, bound - 1):
                        yield ((part, enter, leave), *rest)


def chains(parts, start, line, material=""):
    """Give every chain to a line that the rules allow."""
    usable = [part for part in parts if allowed(part, line, material)]
    for chain in sequences(usable, start, line.interface):
        if sum(turn_of(part) != 0 for part, _, _ in chain) <= 1:
            yield chain


def leak_paths(chain, start):
    shows = [start, *(part.ends[leave].interface for part, _, leave in chain)]
    return sum(interface.form in SEALED for interface in shows)


def unlike(parts, wanted):
    return sum(part.category not in SMALL and part.material not in wanted for part in parts)


def mass_of(parts):
    """Count unknown masses, and add the known ones exactly."""
    known = [Fraction(str(part.mass.middle)) for part in parts if part.mass.known]
    return len(parts) - len(known), sum(known)


def port_cost(chain, start, line):
    parts = [part for part, _, _ in chain]
    turn = sum(turn_of(part) for part in parts)
    wish = line.turn if line.turn is not None else line.leaves
    off = abs(turn - round(degrees(wish or 0.0), 6))
    leaks = leak_paths(chain, start)
    return unlike(parts, metals_of(line)[0]), leaks, len(parts), round(off, 6), turn, *mass_of(parts)


def cheapest_chains(parts, start, line):
    """Give the least cost of all chains and every chain that has it; None if there is no chain."""
    costed = [(port_cost(chain, start, line), chain) for chain in chains(parts, start, line)]
    if line.turn is not None:
        costed = [(cost, chain) for cost, chain in costed if cost[3] == 0]
    if not costed:
        return None, []
    least = min(cost for cost, _ in costed)
    return least, [[part for part, _, _ in chain] for cost, chain in costed if cost == least]


def cheapest_hub(parts, hub, lines):
    """Give the least cost of a body with both lines on it.

    The cost is: lines not joined, threads without jam nut, unlike metals, leak paths, parts, mass.
    """
    metals = _hub_metals(hub, lines)
    nuts = [part for part in parts if len(part.ends) == 1 and _hub_allows(part, metals)]
    costs = []
    for body in parts:
        if _hub_allows(body, metals) and _is_body(body, hub):
            panel_ends = [end.interface for end in body.ends if not end.flow]
            for jam in _jam_nuts(body, panel_ends, nuts, metals):
                costs += [
                    _hub_cost(body, jam, ends, panel_ends, lines, parts, hub, metals)
                    for ends in permutations(flow(body), 2)
                ]
    return min(costs, default=None)


def _hub_metals(hub, lines):
    asked = {hub.material} if hub.material else {line.material for line in lines if line.material}
    like = {line.group for line in lines if line.group in ("aluminium", "steel")}
    return (asked, True) if asked else (like or {"aluminium", "steel"}, False)


def _hub_allows(part, metals):
    wanted, asked = metals
    return part.brake_pressure and (not asked or part.material in wanted)


def _is_body(part, hub):
    panel = [end.interface for end in part.ends if not end.flow]
    if part.category in SMALL or len(flow(part)) != 2 or turn_of(part) != round(degrees(hub.turn), 6):
        return False
    return bool(panel) == hub.through_panel


def _jam_nuts(body, panel_ends, nuts, metals):
    """Give the jam nuts that may go with a body: of its own metal if there are any, the lightest."""
    if not panel_ends:
        return [()]
    fitting = [nut for nut in nuts if mate(nut.ends[0].interface, panel_ends[0])]
    order = {
        nut.designation: (unlike([nut], metals[0]), nut.material != body.material, *mass_of([nut]))
        for nut in fitting
    }
    least = min(order.values(), default=None)
    return [(nut,) for nut in fitting if order[nut.designation] == least] or [()]


def _hub_cost(body, jam, ends, panel_ends, lines, parts, hub, metals):
    placed = [body, *jam]
    total = [0, len(panel_ends) - len(jam), unlike(placed, metals[0]), 0, len(placed), *mass_of(placed)]
    for start, line in zip(ends, lines, strict=True):
        total = [one + more for one, more in zip(total, _side_cost(start, line, parts, hub), strict=True)]
    return tuple(total)


def _side_cost(start, line, parts, hub):
    costs = []
    for chain in chains(parts, start, line, hub.material):
        placed = [part for part, _, _ in chain]
        if sum(turn_of(part) for part in placed) == 0:
            wanted = metals_of(line, hub.material)[0]
            leaks = leak_paths(chain, start)
            costs.append((0, 0, unlike(placed, wanted), leaks, len(placed), *mass_of(placed)))
    return min(costs, default=(1, 0, 0, 0, 0, 0, 0))
