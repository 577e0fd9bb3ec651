"""The order of work on a tube: what cannot be put on later goes on first."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.finding import Level
from firmpedal.fit.chain import chain_at
from firmpedal.lay.through_hole import best_end, holes_of
from firmpedal.model.aircraft import find
from firmpedal.model.circuit import Flare
from firmpedal.model.display import listed
from firmpedal.model.part import Category
from firmpedal.model.stock import Tube
from firmpedal.quantity import Answer
from firmpedal.report.clock import ring
from firmpedal.report.lengths import both, fine
from firmpedal.report.line_findings import without_order

if TYPE_CHECKING:
    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.through_hole import EndFirst, Hole
    from firmpedal.lay.tube import TubeShape
    from firmpedal.pipeline import Evaluation

ENDS = {"from": "A", "to": "B"}
OTHER = {"from": "to", "to": "from"}
SIDES = {"from": "first", "to": "last"}
TIGHT = "end-straight-too-short"
FIRST_WORDS = {
    Level.NOTE: " NOTE: only just long enough. Flare before bending, or try the tool's grip on a test piece.",
    Level.CAUTION: " CAUTION: shorter than nut, sleeve and tool need. Flare it before bending.",
}
LAST_WORDS = {
    Level.NOTE: (
        "NOTE: the straight at end {end} is only just long enough. If the tool does not grip a bent test "
        "piece, put nut and sleeve on and flare it before bending; then nothing can be trimmed."
    ),
    Level.CAUTION: (
        "CAUTION: the straight at end {end} is shorter than nut, sleeve and tool need: put nut and sleeve "
        "on and flare it before bending; then nothing can be trimmed."
    ),
}
IN_PLACE_TOO_SHORT = (
    "CAUTION: the straight at end {end} is shorter than nut, sleeve and tool need, and it is flared in "
    "place. Try the tool's grip on a bent test piece before you cut."
)
FLARED_BEFORE = "End {end} was flared before bending: see that nut and sleeve are on."
PLACES = {True: "in place", False: "in the same way"}
MARK_BENDS = "Mark the bends with a felt pen, never a scriber."
TRIAL = (
    "Try it in place: ends in line with their fittings, no pull. Trim end {end} square, unless it is flared."
)
LENS = "Look at both flares with a lens: round, smooth, no crack. Cracked: cut off and begin again."
FLARES = {
    Flare.SINGLE_37: "single flare, 37 degrees",
    Flare.DOUBLE_37: "double flare, 37 degrees",
    Flare.SINGLE_45: "flare, 45 degrees as the file says: this does not belong in aircraft, see the findings",
}


def order_of_work(evaluation: Evaluation, line: LaidLine, tube: TubeShape) -> tuple[str, ...]:
    """The steps from the stock to the finished tube, each to tick."""
    holes = holes_of(evaluation.aircraft, evaluation.assembly, line)
    best = best_end(holes) if holes else None
    last = _last_flared(best)
    first = OTHER[last]
    tight = tight_ends(evaluation, line)
    at_first, at_last = tight.get(SIDES[first]), tight.get(SIDES[last]) if tube.bends else None
    told = FIRST_WORDS[at_first] if at_first else ""
    flare = _flare(evaluation, line)
    steps = [
        f"Cut square to {both(tube.cut_length, evaluation.display)}.",
        "Deburr inside and outside. Do not thin the wall. Blow the tube out.",
        f"End {ENDS[first]}: {_nut_and_sleeve(evaluation, line, first)}. Then flare: {flare}.{told}",
    ]
    bare = best is not None and best.bare
    if tube.bends:
        steps += [_tight_last(at_last, bare=bare).format(end=ENDS[last])] if at_last else []
        steps.append(f"{MARK_BENDS} {_by_hand(evaluation, line)}{_bends(line, best)}")
    flare_last = f"End {ENDS[last]}: {_nut_and_sleeve(evaluation, line, last)}. Flare last, {PLACES[bare]}."
    return (
        *steps,
        *(_through(holes, best) if best else ()),
        TRIAL.format(end=ENDS[last]),
        flare_last if bare or at_last is not Level.CAUTION else FLARED_BEFORE.format(end=ENDS[last]),
        LENS,
        "Blow through. Cap both ends.",
    )


def _tight_last(level: Level, *, bare: bool) -> str:
    """What is said of a straight that is no more than just enough, at the end that is flared last."""
    return IN_PLACE_TOO_SHORT if bare and level is Level.CAUTION else LAST_WORDS[level]


@dataclass(frozen=True, slots=True)
class Finish:
    """What of a tube hangs on where it goes: the end flared last, and whether that goes through a hole bare.

    `later` are the bends that wait until then, `parts` are nut and sleeve at end A and at end B, `flare`
    is its kind and size.
    """

    last: str  # A, B
    bare: bool
    later: tuple[int, ...]
    parts: tuple[str, str]
    flare: str


def finish_of(evaluation: Evaluation, line: LaidLine) -> Finish:
    """How a tube is finished once it is cut and marked."""
    best = _best(evaluation, line)
    parts = (_nut_and_sleeve(evaluation, line, "from"), _nut_and_sleeve(evaluation, line, "to"))
    bare, later = (best.bare, best.later) if best else (False, ())
    return Finish(ENDS[_last_flared(best)], bare, later, parts, _flare(evaluation, line))


def _best(evaluation: Evaluation, line: LaidLine) -> EndFirst | None:
    holes = holes_of(evaluation.aircraft, evaluation.assembly, line)
    return best_end(holes) if holes else None


def _last_flared(best: EndFirst | None) -> str:
    return best.end if best and best.bare else "to"


def _bends(line: LaidLine, best: EndFirst | None) -> str:
    """In which order to bend, and which bends have to wait until the tube is through its hole."""
    later = set(best.later) if best else set()
    numbers = [step.bend + 1 for step in (line.work.steps if line.work else ())]
    now = ", ".join(ring(number) for number in numbers if number not in later)
    if not later:
        return f"Bend in order: {now}."
    wait = ", ".join(ring(number) for number in numbers if number in later)
    return f"{f'Bend in order: {now}.' if now else 'No bend yet.'} Leave {wait} until it is in place."


def _by_hand(evaluation: Evaluation, line: LaidLine) -> str:
    """What the builder has accepted where the bender finds no order for the bends."""
    found = without_order(evaluation, line)
    return f"The bender finds no order; accepted: {found.accepted}. " if found and found.accepted else ""


def _through(holes: tuple[Hole, ...], best: EndFirst) -> list[str]:
    """How the tube gets through the holes that it sits in."""
    where = listed([hole.panel.name for hole in holes])
    end = ENDS[best.end]
    if best.bends_go is Answer.NO:
        bends = ", ".join(ring(number) for number in best.bends)
        return [f"Push end {end}, bare, through {where}. Only then make {bends}, in place."]
    if Answer.UNKNOWN in (best.bends_go, best.nut_goes):
        return [f"Whether it goes through {where} finished is not known. Try a wire bent like it first."]
    if best.nut_goes is Answer.NO:
        return [f"Push end {end}, bare, through {where}: its nut does not go through the hole."]
    return [f"Through {where}: it goes through finished, end {end} first."]


def tight_ends(evaluation: Evaluation, line: LaidLine) -> dict[str, Level]:
    """Which ends, first or last, have only just the straight that flaring needs, or less than that."""
    found = {
        finding.measured.label.split(" ")[0]: finding.level
        for finding in evaluation.findings
        if finding.rule == TIGHT and finding.place == line.place and finding.measured is not None
    }
    return {end: level for end, level in found.items() if end in SIDES.values()}


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
