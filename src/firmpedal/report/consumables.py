"""What is used up on the way: fluid, sealant, caps for open ends, cleaning. By kind, never by make."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.decide.tube_plan import practice_pieces
from firmpedal.model.kinds import Reservoir
from firmpedal.model.part import Form
from firmpedal.model.stock import LineKind
from firmpedal.quantity import total
from firmpedal.units import Dimension, show

if TYPE_CHECKING:
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
    return (*_fluid(evaluation), *_sealant(evaluation), *_caps(evaluation), *_coupons(evaluation), *CLEAN)


def fluid_to_buy(evaluation: Evaluation) -> Value | None:
    """Twice what lines and reservoirs hold: as much again for bleeding and spilling, which is our estimate.

    None where there is nothing to fill.
    """
    reservoirs = [part for part in evaluation.aircraft.components if isinstance(part, Reservoir)]
    held = [*evaluation.results.volumes, *(part.capacity for part in reservoirs)]
    if not held:
        return None
    once = total("fluid in lines and reservoirs", held)
    return total("fluid to buy", (once, once))


def _fluid(evaluation: Evaluation) -> list[Row]:
    volume = fluid_to_buy(evaluation)
    if volume is None:
        return []
    fluid = evaluation.aircraft.fluid
    name = f"brake fluid {fluid.name}" if fluid is not None else "brake fluid, which is not known yet"
    why = "twice what lines and reservoirs hold (our estimate: bleeding and spilling take as much again)"
    why += "; cylinders, calipers and reservoirs that are part of a cylinder come on top"
    if volume.known:
        least = f"at least {_measured(evaluation, volume)}"
        return [(name, least, f"{why}. From a can that was never open")]
    missing = ", ".join(dict.fromkeys(each.what for each in volume.missing))
    return [(name, "not known yet", f"{why}. Measure first: {missing}")]


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
    """A cap for each line end and each port side while work is open: two to a line end."""
    ends = 2 * len(evaluation.laid)
    if not ends:
        return []
    sizes = dict.fromkeys(line.stock.dash or "" for line in evaluation.laid)
    said = ", ".join(size for size in sizes if size)
    words = "clean; over the end, not inside it. One for each line end, one for what it comes off"
    return [("caps and plugs for open ends", f"{2 * ends}{f' for {said}' if said else ''}", words)]


def _coupons(evaluation: Evaluation) -> list[Row]:
    phrases = dict.fromkeys(line.stock.phrase for line in evaluation.laid if line.kind is LineKind.TUBE)
    why = "practice pieces of 4 in, flared at both ends before the first tube"
    count = practice_pieces(evaluation)
    if not count:
        return []
    amount = "1 piece" if count == 1 else f"{count} pieces"
    return [(phrase, amount, f"{why}; they are in the cutting plan") for phrase in phrases]
