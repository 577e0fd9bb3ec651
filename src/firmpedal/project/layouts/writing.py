"""A layout written as a builder's file, put together from small pieces of text."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.project.layouts import parts
from firmpedal.project.layouts.routes import routes
from firmpedal.project.names import other_side
from firmpedal.project.plain import quoted_if_needed

if TYPE_CHECKING:
    from firmpedal.project.layouts.choice import Layout

UNITS = {
    "in": "{length: in, angle: deg, pressure: psi, force: lbf, volume: cu in, temperature: degF, mass: lb}",
    "mm": "{length: mm, angle: deg, pressure: bar, force: N, volume: ml, temperature: degC, mass: kg}",
}
# Normal, hard and panic force, common practice, no source; a hand pulls less than a leg pushes.
FEET = {"toe": (75, 150, 200), "heel": (60, 120, 200), "hand": (40, 75, 120)}
NEWTONS = {40: 180, 60: 270, 75: 330, 120: 530, 150: 670, 200: 890}
SEATS = ("first", "second")


def layout_text(layout: Layout, file: str, name: str = "My aircraft") -> str:
    """Write the first file of a layout.

    Args:
        layout: What was chosen.
        file: The file's name, for the words on how to print the form.
        name: What the aircraft is called.
    """
    route = routes(layout)
    pieces = [
        _head(layout, file, name),
        _states(layout),
        "pedals:\n" + "".join(_pedal(layout, number) for number in _sets(layout)),
        "components:\n" + _components(layout),
        "bulkheads:\n" + "".join(route.fittings),
        parts.WHEELS,
        parts.LINES_HEAD + "".join(route.lines),
        _mirror(layout, route.mirrored),
    ]
    return "\n".join(pieces)


def filled(text: str, **words: str) -> str:
    """Put words in the place of <brackets>."""
    for key, word in words.items():
        text = text.replace(f"<{key}>", word)
    return text


def _sets(layout: Layout) -> tuple[int, ...]:
    return (0, 1) if layout.in_series else (0,)


def prefix(layout: Layout, number: int) -> str:
    """What the names of one seat's things begin with: nothing where there is one seat only."""
    if layout.hand:
        return "hand"
    return f"{SEATS[number]}_left" if layout.in_series else "left"


def _head(layout: Layout, file: str, name: str) -> str:
    feet = [force if layout.length == "in" else NEWTONS[force] for force in FEET[layout.brakes]]
    normal, hard, panic = map(str, feet)
    text = filled(parts.HEAD, gear=layout.gear, brakes=layout.brakes, units=UNITS[layout.length])
    text = filled(text, normal=normal, hard=hard, panic=panic)
    typed = f'"{file}"' if " " in file else file  # a blank would part it for the command
    return filled(text, name=quoted_if_needed(name), file=typed)


def _states(layout: Layout) -> str:
    swings = "" if layout.hand else filled(parts.SWING, name="left_pedals")
    swings += parts.OTHER_SWING if layout.beside_the_middle else ""
    rudder, way = ("", "") if layout.hand else (parts.RUDDER, " Rudder +1 is left pedal forward.")
    return filled(parts.STATES, rudder=rudder, way=way, pedals=swings)


def _moves(layout: Layout) -> str:
    return "" if layout.hand else "    moves with: left_pedals\n"


def _pedal(layout: Layout, number: int) -> str:
    name = f"{prefix(layout, number)}_{'lever' if layout.hand else 'brake'}"
    seat = f"    seat: {SEATS[number]}\n" if layout.in_series else ""
    found = filled(parts.PEDAL, name=name, side=_side(layout), seat=seat, moves=_moves(layout))
    if layout.beside_the_middle:
        found += filled(parts.OTHER_PEDAL, name=other_side(name), first=name)
    return found


def _side(layout: Layout) -> str:
    return "centre" if layout.hand else "left"


def _components(layout: Layout) -> str:
    found = "".join(_cylinders(layout, number) for number in _sets(layout))
    if layout.in_series:
        ports = "".join(filled(parts.PORT, name=name) for name in ("left_out", "right_out"))
        found += filled(parts.RESERVOIR, ports=ports)
    if layout.has_valve:
        names = ("in", "out") if layout.hand else ("left_in", "left_out", "right_in", "right_out")
        ways = "[[in, out]]" if layout.hand else "[[left_in, left_out], [right_in, right_out]]"
        ports = "".join(filled(parts.PORT, name=name) for name in names)
        found += filled(parts.VALVE, ways=ways, ports=ports)
    return found + parts.CALIPER


def _cylinders(layout: Layout, number: int) -> str:
    """The cylinder of the left pedal of a seat, and that of its right one where it is no mirror image."""
    first, name = _cylinder(layout, number), f"{prefix(layout, number)}_cylinder"
    if not layout.beside_the_middle:
        return first
    return first + filled(
        parts.OTHER_CYLINDER,
        name=other_side(name),
        first=name,
        pedal=f"{other_side(prefix(layout, number))}_brake",
        cap="" if layout.in_series else parts.OTHER_CAP,
        inlet=parts.OTHER_INLET if layout.in_series else "",
    )


def _cylinder(layout: Layout, number: int) -> str:
    name = prefix(layout, number)
    series = layout.in_series
    return filled(
        parts.CYLINDER,
        name=f"{name}_cylinder",
        side=_side(layout),
        pedal=f"{name}_{'lever' if layout.hand else 'brake'}",
        moves=_moves(layout),
        supply=parts.IN_SERIES if series else parts.BUILT_IN,
        inlet=parts.INLET if series else "",
    )


def _mirror(layout: Layout, lines: tuple[str, ...]) -> str:
    names = ["left_wheel", "left_caliper_float", "left_caliper", "left_main", "left_disc", "left_brake_heat"]
    if not layout.hand and not layout.beside_the_middle:
        names.append("left_pedals")
        for number in _sets(layout):
            names += [f"{prefix(layout, number)}_brake", f"{prefix(layout, number)}_cylinder"]
    rows = [", ".join([*names[n : n + 6]]) for n in range(0, len(names), 6)]
    rows += [", ".join(lines[n : n + 6]) for n in range(0, len(lines), 6)]
    body = ",\n         ".join(rows)
    why = parts.NOT_MIRRORED if layout.beside_the_middle else ""
    return f"{parts.MIRROR}{why}mirror: [{body}]\n"
