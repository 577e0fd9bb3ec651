"""Fluid shut in by a parking valve as a sheet: how fast its pressure rises, what gives first, a placard."""

from __future__ import annotations

from math import floor, inf
from typing import TYPE_CHECKING

from firmpedal.analysis.shut_in import every_shut_in
from firmpedal.checks.circuit_words import DEGREES, degrees_words, so_many_degrees
from firmpedal.model.display import listed
from firmpedal.report.plot import Axis, Band, Curve, Limit, plot
from firmpedal.report.sheet import Heading, Paragraph, Sheet, Table, Tone
from firmpedal.report.worked import worked
from firmpedal.units import Dimension, to_unit

if TYPE_CHECKING:
    from collections.abc import Sequence

    from firmpedal.analysis.shut_in import Gives, ShutIn
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value
    from firmpedal.report.sheet import Block, Drawing

TITLE = "Shut in by the parking valve"
HOW = (
    "Lines and fluid are counted with what they give: tube by its wall, hose by anything from nothing to its "
    "published limit. What caliper, seals and pads give comes off, and so does a bubble of air; fluid behind "
    "the pistons comes on top. Wheel, line and fluid are taken to warm alike. Where the cylinder of one seat "
    "feeds that of the other, the room is that from a hard foot on one pedal to one on both."
)
COOLS = "Shut in warm it goes slack in the cold: chock the wheels, whatever the valve does."
MAKER = "What the makers of valve and caliper allow comes first. A parking brake is no tie-down."
HOTTEST = 50.0  # K, from a cold night to a ramp in the sun
FEW = 4  # limits that a picture can hold


def found_in(evaluation: Evaluation) -> tuple[ShutIn, ...]:
    """Every wheel behind every parking valve, by the degree that is shown."""
    return every_shut_in(evaluation.aircraft, evaluation.laid, evaluation.results, unit_of(evaluation))


def unit_of(evaluation: Evaluation) -> str:
    """The degree in which warmth is shown."""
    return evaluation.display.unit(Dimension.TEMPERATURE) or "degC"


@worked
def trapped_sheet(evaluation: Evaluation) -> Sheet | None:
    """The sheet; None where no valve shuts a wheel in."""
    found = found_in(evaluation)
    if not found:
        return None
    blocks: list[Block] = [
        *(Paragraph(words, Tone.LEAD) for words in _placards(found)),
        Paragraph(MAKER, Tone.CAUTION),
        _rises(evaluation, found),
        Paragraph(HOW, Tone.SMALL),
        Heading("What gives first"),
        _limits(evaluation, found),
        Heading("When it cools"),
        Paragraph(f"{_cooled(found)}{COOLS}"),
    ]
    shown = _tightest([each for each in found if each.rigid.known])
    if shown is not None:
        blocks.append(_picture(evaluation, shown, _none_has_less(found)))
    missing = dict.fromkeys(item.what for each in found for item in each.not_known)
    if missing:
        blocks.append(Paragraph(f"Look up what these hold: {'; '.join(missing)}.", Tone.NOTE))
    return Sheet(TITLE, tuple(blocks))


def _placards(found: tuple[ShutIn, ...]) -> list[str]:
    """What to write beside each valve."""
    return [
        _placard(valve, [each for each in found if each.valve == valve])
        for valve in dict.fromkeys(each.valve for each in found)
    ]


def _placard(valve: str, found: list[ShutIn]) -> str:
    wheels = listed([each.caliper for each in found])
    least = _tightest(found)
    if least is None:
        missing = dict.fromkeys(
            item.what for each in found for item in (*each.rise.missing, *each.degrees.missing)
        )
        return (
            f"Never leave {valve} set: how far it may warm at {wheels} is not known before "
            f"{'; '.join(missing)} is."
        )
    sure = [each for each in found if each.degrees.known]
    number = floor(least.degrees.low)
    first = least.first.name if least.first is not None else "what is weakest"
    unsure = any(each.not_known for each in found)
    unknown = [each.caliper for each in found if not each.degrees.known]
    more = f" How far it may warm at {listed(unknown)} is not known yet." if unknown else ""
    if number < 1:
        return f"{_no_room(valve, sure, first, unsure=unsure)}{more}"
    weakest = f"of what is known {first} gives first, and what the rest holds" if unsure else ""
    rest = f"{weakest} has to be looked up before this counts" if unsure else f"{first} gives first"
    degrees = so_many_degrees(number, least.unit)
    return f"Never leave {valve} set where it may warm by more than {degrees}: {rest}.{more}"


def _no_room(valve: str, sure: list[ShutIn], first: str, *, unsure: bool) -> str:
    """What to write where it may not warm at all; set by one pedal alone there may be room at every wheel."""
    words = f"Never leave {valve} set where it may warm at all"
    alone = min(floor(each.alone.low) if each.alone.known else 0 for each in sure)
    if alone < 1:
        return f"{words}: {first} would come to what it holds."
    room = f"by no more than {so_many_degrees(alone, sure[0].unit)}"
    return (
        f"{words} after two seats have pressed one wheel: {first} would come to what it holds. Set by "
        f"one seat alone, it may warm {room}{_of_what_is_known(unsure=unsure)}."
    )


def _of_what_is_known(*, unsure: bool) -> str:
    return ", by what is known: what the rest holds has to be looked up before this counts" if unsure else ""


def _rises(evaluation: Evaluation, found: tuple[ShutIn, ...]) -> Table:
    show = evaluation.display.value
    rows = tuple(
        (
            each.caliper,
            ", ".join(each.lines),
            show(each.volume),
            show(each.rise),
            show(each.rigid),
            degrees_words(each.degrees, each.unit) if each.degrees.known else "not known",
        )
        for each in found
    )
    columns = ("shut in at", "lines", "they hold", "a degree makes", "if nothing gave", "room, hard foot")
    return Table(columns, rows, widths=(0.16, 0.22, 0.13, 0.15, 0.14, 0.2))


def _limits(evaluation: Evaluation, found: tuple[ShutIn, ...]) -> Table:
    """What is shut in by what it holds, the weakest first; what nobody knows last."""
    gives = {each.name: each for one in found for each in one.gives}
    order = sorted(gives.values(), key=lambda each: each.holds.low if each.holds.known else inf)
    alike: dict[tuple[str, str], list[str]] = {}
    for each in order:
        alike.setdefault((each.words, evaluation.display.value(each.holds)), []).append(each.name)
    rows = tuple((", ".join(names), *words) for words, names in alike.items())
    return Table(("what", "what it holds", "pressure"), rows, widths=(0.4, 0.3, 0.3))


def _cooled(found: tuple[ShutIn, ...]) -> str:
    known = [each for each in found if each.slack.known]
    if not known:
        return ""
    soonest = min(known, key=lambda each: each.slack.low)
    words = degrees_words(soonest.slack, soonest.unit)
    return f"Set by a normal foot, {soonest.caliper} is slack once it has cooled by {words}. "


def _tightest(found: Sequence[ShutIn]) -> ShutIn | None:
    """The wheel with the least room, of which placard and picture both tell; None where no room is known.

    Of wheels alike in that the one with the least room set by one pedal, then the one that rises fastest.
    """
    known = [each for each in found if each.degrees.known]
    return min(known, key=_room, default=None)


def _room(each: ShutIn) -> tuple[float, float, float]:
    return (each.degrees.low, each.alone.low if each.alone.known else 0.0, -each.rise.high)


def _none_has_less(found: tuple[ShutIn, ...]) -> str:
    """Why the picture is of that wheel; nothing where there is no other."""
    if len(found) == 1:
        return ""
    known = all(each.degrees.known for each in found)
    return f": no other wheel {'has' if known else 'is known to have'} less room"


def _picture(evaluation: Evaluation, worst: ShutIn, why: str) -> Drawing:
    """Pressure against warming, from the hard foot, with what gives."""
    unit = evaluation.display.unit(Dimension.PRESSURE) or "bar"

    def shown(pressure: float) -> float:
        return to_unit(pressure, unit)

    start = next(value for symbol, value in _inputs(worst) if symbol == "p_s")
    limits = _few([each for each in worst.gives if each.holds.known])
    top = 1.3 * max(each.holds.low for each in limits)
    reach = min(to_unit(HOTTEST, worst.unit, difference=True), (top - start.low) / worst.rise.low)
    rises = {"at least": (start.low, worst.rise.low), "at most": (start.high, worst.rise.high)}
    low, high = (tuple((n, shown(base + n * by)) for n in (0.0, reach)) for base, by in rises.values())
    rigid = tuple((n, shown(start.high + n * worst.rigid.high)) for n in (0.0, reach))
    return plot(
        Axis(f"warmer by, {DEGREES[worst.unit]}", 0.0, reach),
        Axis(f"pressure at {worst.caliper}, {unit}", 0.0, shown(top)),
        (Band("with what gives", low, high), Curve("if nothing gave", rigid, dashed=True)),
        tuple(Limit(f"{each.name}, {each.words}", shown(each.holds.low)) for each in limits),
        caption=f"Pressure shut in at {worst.caliper} as it warms, from a hard foot on{why}",
    )


def _inputs(worst: ShutIn) -> tuple[tuple[str, Value], ...]:
    return worst.degrees.step.inputs if worst.degrees.step is not None else ()


def _few(gives: list[Gives]) -> list[Gives]:
    """The weakest few, one for each pressure."""
    apart: dict[float, Gives] = {}
    for each in sorted(gives, key=lambda one: one.holds.low):
        apart.setdefault(round(each.holds.low), each)
    return list(apart.values())[:FEW]
