"""The circuit under pressure as a sheet: which feet press which wheel how hard, and what one leak costs."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.analysis.network.leaks import leaks
from firmpedal.analysis.network.pressures import pressures
from firmpedal.analysis.network.sides import sides
from firmpedal.analysis.pressure import FEET
from firmpedal.model.aircraft import find
from firmpedal.model.display import listed
from firmpedal.model.kinds import ParkingValve
from firmpedal.report.sheet import Bullets, Heading, Paragraph, Sheet, Table, Tone
from firmpedal.report.worked import worked

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.analysis.network.leaks import Leak
    from firmpedal.analysis.network.pressures import Pressures
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value
    from firmpedal.report.sheet import Block

TITLE = "Pressure in the circuit"
PRESSED = "Which feet press which wheel"
FOOT = "hard"
TOGETHER = (
    "Two seats on one wheel: from the greater of both pressures to their sum, unless the file says whether "
    "feet add up in the cylinder nearer to the wheel; its maker knows. Both may press in a fright, so every "
    "line is held against what all pedals on it make together."
)
FREE = "With all pedals let go, in whatever order, no pressure stays at any wheel."
FREE_OPEN = (
    "With all pedals let go, in whatever order, and every parking valve open, no pressure stays at any wheel."
)
STAYS = "With all pedals let go{valve}, pressure can stay at a wheel, which then drags and heats:"
AT_ONCE = (
    "At once means with the next foot: the pedal pushes its fluid out of the leak. In time means that the "
    "reservoir runs empty. A pedal that sinks is a leak until it is found."
)
EQUAL = 0.01  # a smaller difference between the sides is not felt


@worked
def network_sheet(evaluation: Evaluation) -> Sheet | None:
    """The sheet of the circuit at the hard foot; None where no pedal presses a brake."""
    results = evaluation.results
    found = pressures(evaluation.aircraft, results, FOOT)
    if not found:
        return None
    force = results.forces[FEET.index(FOOT)]
    lead = f"At the hard foot ({evaluation.display.value(force)}) on every pedal that is named:"
    blocks = list(_left(evaluation, found))
    blocks += [Heading(PRESSED), Paragraph(lead), _pressed(evaluation, found)]
    if any(len(each.cylinders) > 1 for one in found for each in one.pressed):
        blocks.append(Paragraph(TOGETHER))
    asked = tuple(dict.fromkeys(what.what for one in found for what in one.asked))
    if asked:
        blocks += [Paragraph("Taken both ways, because the file leaves it open:"), Bullets(asked, boxes=True)]
    blocks += [Heading("What one leak costs"), _leaks(evaluation), Paragraph(AT_ONCE, Tone.NOTE)]
    blocks += list(_sides(evaluation))
    return Sheet(TITLE, tuple(blocks))


def _pressed(evaluation: Evaluation, found: tuple[Pressures, ...]) -> Table:
    show = evaluation.display.value
    rows = [
        (listed(_pedals(evaluation, each.cylinders)), wheel, show(value))
        for one in found
        for each in one.pressed
        for wheel, value in each.wheels
    ]
    return Table(("pressed", "wheel", "pressure"), tuple(rows), frozenset({2}), widths=(0.5, 0.25, 0.25))


def _pedals(evaluation: Evaluation, cylinders: tuple[str, ...]) -> list[str]:
    """The pedals of some cylinders; a cylinder without a pedal by its own name."""
    aircraft = evaluation.aircraft
    found = ((name, find(aircraft.cylinders, name)) for name in cylinders)
    return list(
        dict.fromkeys(part.pedal if part is not None and part.pedal else name for name, part in found)
    )


def _left(evaluation: Evaluation, found: tuple[Pressures, ...]) -> Iterator[Block]:
    valves = any(isinstance(part, ParkingValve) for part in evaluation.aircraft.components)
    stays = [(wheel, value) for one in found for wheel, value in one.left if not _nothing(value)]
    if not stays:
        yield Paragraph(FREE_OPEN if valves else FREE)
        return
    yield Paragraph(
        STAYS.format(valve=", even with every parking valve open" if valves else ""), Tone.WARNING
    )
    yield Bullets(tuple(f"{wheel}: {evaluation.display.value(value)}" for wheel, value in stays))


def _nothing(value: Value) -> bool:
    return value.span is not None and value.span[1] <= 0


def _leaks(evaluation: Evaluation) -> Table:
    """One row for lines whose leak costs the same."""
    alike: dict[tuple[object, ...], list[Leak]] = {}
    for leak in leaks(evaluation.aircraft, evaluation.results):
        alike.setdefault((leak.pedals, leak.wheels, leak.emptied, leak.in_time), []).append(leak)
    rows = [_leak_row(evaluation, group) for group in alike.values()]
    columns = ("a leak in", "takes at once", "no brake at", "in time also at")
    return Table(columns, tuple(rows), widths=(0.3, 0.26, 0.2, 0.24))


def _leak_row(evaluation: Evaluation, group: list[Leak]) -> tuple[str, ...]:
    first = group[0]
    pedals = listed(_pedals(evaluation, first.pedals)) or "no pedal"
    return (
        listed(leak.line for leak in group),
        pedals,
        listed(first.wheels) or "no wheel",
        listed(first.in_time) or "no other",
    )


def _sides(evaluation: Evaluation) -> Iterator[Block]:
    """Left and right of each seat: the pressures, and the stroke that each takes."""
    found = sides(evaluation.aircraft, evaluation.results, FOOT)
    if not found:
        return
    show = evaluation.display.value
    rows = []
    for each in found:
        left, right = each.budgets
        rows.append((each.seat or "pedals", "pressure", *map(show, each.pressures), _differ(*each.pressures)))
        rows.append(("", "stroke used, hot", show(left.hot), show(right.hot), _differ(left.hot, right.hot)))
    yield Heading("Left against right")
    columns = ("seat", "", "left", "right", "more by")
    yield Table(columns, tuple(rows), frozenset({2, 3, 4}), widths=(0.15, 0.22, 0.23, 0.23, 0.17))
    said = [each.message for each in evaluation.findings if each.rule == "brakes-pull-to-one-side"]
    yield from (Paragraph(f"{words[:1].upper()}{words[1:]}.", Tone.CAUTION) for words in said)


def _differ(one: Value, other: Value) -> str:
    """How much more the greater is than the lesser, by the middles of both."""
    if not (one.known and other.known):
        return "unknown"
    low, high = sorted((one.middle, other.middle))
    if high <= 0 or high - low < EQUAL * high:
        return "alike"
    return f"{100 * (high / low - 1):.0f} %" if low > 0 else "all of it"
