"""The order of work on a tube: what cannot be put on later goes on first."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.aircraft import find
from firmpedal.model.circuit import Flare
from firmpedal.model.part import Category
from firmpedal.model.stock import Tube
from firmpedal.report.chain import chain_at
from firmpedal.report.clock import ring
from firmpedal.report.lengths import both, fine

if TYPE_CHECKING:
    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.tube import TubeShape
    from firmpedal.pipeline import Evaluation

ONLY_JUST = "end-straight-too-short"
ONLY_JUST_WORDS = (
    " NOTE: only just long enough. Flare before bending, or try the tool's grip on a test piece."
)
TIGHT_LAST = (
    "NOTE: end B is only just long enough too. If the tool does not grip a bent test piece, put nut and "
    "sleeve on and flare it before bending; then nothing can be trimmed."
)
TRIAL = (
    "Try it in place: ends in line with their fittings, no pull. Trim end B square if it is not flared yet."
)
LENS = "Look at both flares with a lens: round, smooth, no crack. Cracked: cut off and begin again."
FLARES = {
    Flare.SINGLE_37: "single flare, 37 degrees",
    Flare.DOUBLE_37: "double flare, 37 degrees",
    Flare.SINGLE_45: "flare, 45 degrees as the file says: this does not belong in aircraft, see the findings",
}


def order_of_work(evaluation: Evaluation, line: LaidLine, tube: TubeShape) -> tuple[str, ...]:
    """The steps from the stock to the finished tube, each to tick."""
    tight = tight_ends(evaluation, line)
    first, last = (_nut_and_sleeve(evaluation, line, end) for end in ("from", "to"))
    flare = _flare(evaluation, line)
    steps = [
        f"Cut square to {both(tube.cut_length, evaluation.display)}.",
        "Deburr inside and outside. Do not thin the wall. Blow the tube out.",
        f"End A: {first}. Then flare: {flare}.{ONLY_JUST_WORDS if 'first' in tight else ''}",
    ]
    if tube.bends:
        order = line.work.steps if line.work else ()
        rings = ", ".join(ring(step.bend + 1) for step in order)
        steps += [TIGHT_LAST] if "last" in tight else []
        steps.append(f"Mark the bends with a felt pen, never a scriber. Bend in order: {rings}.")
    return (
        *steps,
        TRIAL,
        f"End B: {last}. Flare last, in the same way.",
        LENS,
        "Blow through. Cap both ends.",
    )


def tight_ends(evaluation: Evaluation, line: LaidLine) -> frozenset[str]:
    """Which ends, first or last, have only just the straight that flaring needs."""
    labels = {
        finding.measured.label.split(" ")[0]
        for finding in evaluation.findings
        if finding.rule == ONLY_JUST and finding.place == line.place and finding.measured is not None
    }
    return frozenset(labels & {"first", "last"})


def _nut_and_sleeve(evaluation: Evaluation, line: LaidLine, end: str) -> str:
    """Nut first, then sleeve: nothing goes on once both ends are flared."""
    joint = evaluation.assembly.joint_of(line.name, end)
    parts = chain_at(joint, line.name, end) if joint else ()
    nut = next((part.designation for part in parts if part.category is Category.COUPLING_NUT), "")
    sleeve = next((part.designation for part in parts if part.category is Category.SLEEVE), "")
    return (
        f"nut {nut} on, then sleeve {sleeve}".replace("  ", " ") if nut or sleeve else "nut on, then sleeve"
    )


def _flare(evaluation: Evaluation, line: LaidLine) -> str:
    declared, stock = find(evaluation.aircraft.lines, line.name), line.stock
    words = FLARES[declared.flare] if declared else FLARES[Flare.SINGLE_37]
    if isinstance(stock, Tube) and stock.flare_diameter.known:
        return f"{words}, {fine(evaluation.display).value(stock.flare_diameter)} across"
    return f"{words}; no flare size is known for {stock.phrase}"
