"""What is used up on the way: fluid, sealant, caps for open ends, cleaning. By kind, never by make."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.decide.fluid import fluid_plan
from firmpedal.decide.tube_plan import COUPON, practice_pieces
from firmpedal.model.display import listed
from firmpedal.model.part import Form
from firmpedal.model.stock import LineKind, Tube
from firmpedal.report.practice import too_few
from firmpedal.report.remarks import NAMED, until_measured
from firmpedal.report.to_measure import asked_for, to_measure
from firmpedal.units import Dimension, show

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.decide.fluid import FluidPlan
    from firmpedal.lay.line import LaidLine
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value

Row = tuple[str, str, str]  # what, how much, what for

CLEAN = (
    ("lint-free cloth", "a pack", "to wipe ends and seats before they go together"),
    ("cleaner that the component makers allow", "a small can", "to rinse each tube when flared; blow it dry"),
    ("clear hose and a catch bottle", "1", "for bleeding; the hose's end stays under fluid"),
    ("paint pen", "1", "a stroke across each nut that has had its torque"),
)  # fmt: skip


def consumables(evaluation: Evaluation) -> tuple[Row, ...]:
    """What to have at hand, and how much of it."""
    return (*fluid_rows(evaluation), *_sealant(evaluation), *_caps(evaluation), *_coupons(evaluation), *CLEAN)


def fluid_rows(evaluation: Evaluation) -> list[Row]:
    """The fluid to have, with its sum in words; nothing where there is nothing to fill."""
    plan = fluid_plan(evaluation)
    if plan is None:
        return []
    fluid, volume = evaluation.aircraft.fluid, plan.amount
    name = f"brake fluid {fluid.name}" if fluid is not None else "brake fluid, what can or placard names"
    if volume.known:
        amount = f"at least {_measured(evaluation, volume)}"
        more = [f"On top comes {listed(plan.on_top)}"] if plan.on_top else []
    else:
        wanted = _wanted(evaluation, volume)
        amount = until_measured(len(wanted))
        more = [f"Measure first: {', '.join(wanted)}"] if len(wanted) <= NAMED else []
    return [
        (name, amount, ". ".join([_fluid_sum(evaluation, plan), *more, "From a can that was never open"]))
    ]


def fluid_waits_for(evaluation: Evaluation) -> tuple[str, ...]:
    """What is to be measured before the amount of fluid is known, where it is too much to name beside it."""
    plan = fluid_plan(evaluation)
    wanted = _wanted(evaluation, plan.amount) if plan is not None else ()
    return wanted if len(wanted) > NAMED else ()


def _wanted(evaluation: Evaluation, volume: Value) -> tuple[str, ...]:
    """What is missing, in the words of the rows in which it is asked for: both sides are one."""
    rows, found = to_measure(evaluation), {}
    for each in asked_for(evaluation, volume.missing):
        row = next((row for row in rows if set(row.places) & set(each.places)), each)
        found[row.what] = row
    return tuple(found)


def _fluid_sum(evaluation: Evaluation, plan: FluidPlan) -> str:
    """The sum in words, group by group, each at the upper end of its range as far as that is known."""

    def shown(value: Value) -> str:
        figure = f" {evaluation.display.number(value.high, value.dimension)}" if value.known else ""
        return f"{value.label}{figure}"

    held = ", ".join(map(shown, plan.held))
    pads = f", and once only {shown(plan.pads)}" if plan.pads is not None else ""
    return f"{held}, all of this twice (our estimate: bleeding and spilling take as much again){pads}"


def _measured(evaluation: Evaluation, volume: Value) -> str:
    """The upper end, in the builder's unit and in millilitres as cans are marked."""
    shown = evaluation.display.number(volume.high, Dimension.VOLUME)
    cans = show(volume.high, "ml", decimals=0)
    return shown if evaluation.display.unit(Dimension.VOLUME) == "ml" else f"{shown} ({cans})"


def _sealant(evaluation: Evaluation) -> list[Row]:
    threads = sum(
        mating.one.interface.form is Form.PIPE
        for joint in evaluation.assembly.joints
        for mating in joint.matings
    )
    if not threads:
        return []
    joints = "1 taper thread" if threads == 1 else f"{threads} taper threads"
    words = "paste that the fluid does not dissolve; on taper pipe threads only, never on a flare, no tape"
    return [("thread sealant", f"a small tube, for {joints}", words)]


def _caps(evaluation: Evaluation) -> list[Row]:
    """An open line has two ends, and each leaves an opening at what it came off: four caps or plugs."""
    lines = len(evaluation.laid)
    if not lines:
        return []
    count = "1 line" if lines == 1 else f"{lines} lines, if all are open at once"
    words = (
        f"4 to a line: one over each of its 2 ends, one on each of the 2 things it came off; {count}. "
        "Clean; over an end, not inside it"
    )
    return [("caps and plugs for open ends", _openings(evaluation), words)]


def _openings(evaluation: Evaluation) -> str:
    """What is to be closed, by size: with nuts both sides are of one dash, plastic is not."""
    metal = [line for line in evaluation.laid if line.kind is not LineKind.PLASTIC]
    dashes = ", ".join(dict.fromkeys(line.stock.dash for line in metal if line.stock.dash))
    sizes = [f"{4 * len(metal)}{f' for {dashes}' if dashes else ''}"] if metal else []
    plastic = [line for line in evaluation.laid if line.kind is LineKind.PLASTIC]
    for size in dict.fromkeys(_nominal(line) for line in plastic):
        same = [line for line in plastic if _nominal(line) == size]
        ports = dict.fromkeys(port for line in same for port in _pipe_ports(evaluation, line.name))
        out = f", or once the fitting is out for a port of {listed(ports)}" if ports else ""
        ends = f"{2 * len(same)} for ends of {size} plastic line"
        sizes.append(f"{ends}, {2 * len(same)} for the fittings they came out of{out}")
    return ", ".join(sizes)


def _nominal(line: LaidLine) -> str:
    return line.stock.nominal_size if isinstance(line.stock, Tube) else ""


def _pipe_ports(evaluation: Evaluation, line: str) -> Iterator[str]:
    """The pipe threads by which the fittings of a line are screwed in."""
    for end in ("from", "to"):
        joint = evaluation.assembly.joint_of(line, end)
        for mating in joint.matings if joint is not None else ():
            if mating.one.interface.form is Form.PIPE:
                yield f"{mating.one.interface.size.partition('-')[0]} pipe thread"


def _coupons(evaluation: Evaluation) -> list[Row]:
    phrases = dict.fromkeys(line.stock.phrase for line in evaluation.laid if line.kind is LineKind.TUBE)
    long = evaluation.display.round(COUPON, Dimension.LENGTH)
    why = f"practice pieces of {long}, flared at both ends before the first tube"
    count, said = practice_pieces(evaluation), too_few(evaluation)
    amount = "1 piece" if count == 1 else f"{count} pieces" if count else "none"
    more = said or "they are in the cutting plan"
    return [(phrase, amount, f"{why}; {more}") for phrase in phrases]
