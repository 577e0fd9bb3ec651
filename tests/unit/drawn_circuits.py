"""Circuits that the tests of the diagram share: the examples, and some that are awkward to draw."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

from evaluated import AWKWARD

from firmpedal.pipeline import Evaluation, evaluate_file, evaluate_text
from firmpedal.report.schematic.picture import circuit_drawing

if TYPE_CHECKING:
    from firmpedal.report.sheet import Drawing

ROOT = Path(__file__).parents[2]
EXAMPLES = {
    "brindlewick": (None, "rigid", "all hose"),
    "oatmere": (None, "single brakes", "first sketch"),
    "fennimoss": (None, "rigid"),
}
OTHERS = ("quillfen", "sedgeholm", "tarnholt", "withyford")

HEAD = """
firmpedal: 1
aircraft: {name: Bench, gear: tailwheel, brakes: toe, landing weight: 1000 lb, type certificate: no}
units: {length: in, angle: deg, force: lbf, pressure: psi, temperature: degF, volume: cu in}
fluid: MIL-PRF-5606
pedals: {pedal: {brake: {pad: 5, arm: 2.5}}}
"""
KINDS = {
    "tank": "kind: reservoir",
    "cylinder": "kind: master cylinder, bore: 5/8, stroke: 3/4, pedal: pedal",
    "valve": "kind: parking valve",
    "caliper": "kind: caliper, pistons: {bore: 1.5, count per side: 1}",
}
PORT = "{thread: 1/8 NPT female, faces: up, seat: [0, %g, 0]%s}"


def part(name: str, kind: str, ports: dict[str, str], extra: str = "", right: float = 0.0) -> str:
    """A component in one line; what stands for a port is added to its entry."""
    entries = ", ".join(f"{port}: {PORT % (right, more)}" for port, more in ports.items())
    return f"  {name}: {{{KINDS[kind]}{extra}, ports: {{{entries}}}}}\n"


def line(name: str, start: str, finish: str, stock: str = "hose -4 PTFE braided") -> str:
    return f"  {name}: {{from: {start}, to: {finish}, made of: {stock}}}\n"


def file(components: list[str], lines: list[str], bulkheads: str = "") -> str:
    hubs = f"bulkheads:\n{bulkheads}" if bulkheads else ""
    return f"{HEAD}components:\n{''.join(components)}{hubs}lines:\n{''.join(lines)}"


def hub(name: str, *sides: str, panel: str = "no") -> str:
    entries = ", ".join(f"{side}: {{seat: [0, {n}, 0]}}" for n, side in enumerate(sides))
    return f"  {name}: {{through panel: {panel}, sides: {{{entries}}}}}\n"


# One cylinder, a tee, two calipers; a plug, a port that nothing comes to, and a line round a caliper.
TEE = file(
    [
        part("cylinder", "cylinder", {"outlet": "", "inlet": ", closed: yes"}, ", reservoir: built in"),
        part("left", "caliper", {"a": "", "b": "", "c": ", closed: yes"}, ", side: left"),
        part("right", "caliper", {"a": "", "b": "", "c": ""}, ", side: right"),
    ],
    [
        line("down", "cylinder.outlet", "tee.top"),
        line("to_left", "tee.one", "left.a", "tube 5052-O 1/4 x .035"),
        line("to_right", "tee.other", "right.a"),
        line("round", "right.b", "right.c"),
    ],
    hub("tee", "top", "one", "other"),
)
# A valve whose second way is fed by its first, a port that is in no way, and two line ends that meet.
CIRCLE = file(
    [
        part("cylinder", "cylinder", {"outlet": ""}, ", reservoir: built in"),
        part("valve", "valve", dict.fromkeys("abcde", ""), ", ways: [[a, b], [c, d]]"),
        part("caliper", "caliper", {"in": ""}),
    ],
    [
        line("one", "cylinder.outlet", "valve.a"),
        line("back", "valve.b", "valve.c"),
        line("two", "valve.d", "three.from"),
        line("three", "two.to", "caliper.in", "tube 5052-O 1/4 x .035"),
    ],
)


def four(outlet: str = "outlet", inlet: str = "inlet") -> str:
    """Four cylinders side by side below one tank, two on each wheel; the last one can be the wrong way up."""
    components = [part("tank", "tank", {f"o{n}": "" for n in range(4)})]
    lines, hubs = [], ""
    for n, side in enumerate(("left", "right")):
        for k, seat in enumerate(("first", "second")):
            last = (n, k) == (1, 1)
            components.append(
                part(f"{seat}_{side}", "cylinder", {"inlet": "", "outlet": ""}, f", side: {side}")
            )
            fed, pressed = (inlet, outlet) if last else ("inlet", "outlet")
            feed = f"feed_{seat}_{side}", f"tank.o{2 * n + k}", f"{seat}_{side}.{fed}"
            lines.append(line(*feed, "plastic nylon 1/4 x .040"))
            lines.append(line(f"out_{seat}_{side}", f"{seat}_{side}.{pressed}", f"join_{side}.{'ab'[k]}"))
        components.append(part(f"wheel_{side}", "caliper", {"in": ""}, f", side: {side}"))
        lines.append(line(f"leg_{side}", f"join_{side}.down", f"wheel_{side}.in"))
        hubs += hub(f"join_{side}", "a", "b", "down")
    return file(components, lines, hubs)


def long(count: int = 12) -> str:
    """A line of many pieces."""
    lines = [line("first", "cylinder.outlet", "b0.up")]
    lines += [line(f"piece_{n}", f"b{n}.down", f"b{n + 1}.up") for n in range(count - 1)]
    lines.append(line("last", f"b{count - 1}.down", "caliper.in"))
    hubs = "".join(hub(f"b{n}", "up", "down", panel="yes") for n in range(count))
    ends = [
        part("cylinder", "cylinder", {"outlet": ""}, ", reservoir: built in"),
        part("caliper", "caliper", {"in": ""}),
    ]
    return file(ends, lines, hubs)


TEXTS = {
    "awkward": AWKWARD,
    "tee": TEE,
    "circle": CIRCLE,
    "four": four(),
    "upside_down": four(outlet="inlet", inlet="outlet"),
    "long": long(),
}
CASES = tuple(
    [(name, option) for name, options in EXAMPLES.items() for option in options]
    + [(name, None) for name in (*OTHERS, *TEXTS)]
)
PUBLIC = CASES[: -len(TEXTS)]


@cache
def evaluated(name: str, option: str | None = None) -> Evaluation:
    if name in TEXTS:
        return evaluate_text(TEXTS[name], f"{name}.yaml")
    folder = ROOT / "examples" if name in EXAMPLES else ROOT / "tests" / "aircraft"
    return evaluate_file(folder / f"{name}.yaml", option)


@cache
def drawn(name: str, option: str | None = None) -> Drawing:
    drawing = circuit_drawing(evaluated(name, option))
    assert drawing is not None
    return drawing
