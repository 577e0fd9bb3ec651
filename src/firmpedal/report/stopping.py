"""Will it stop and hold: the answer, what each foot gives, what it takes, the energy, what to measure."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.quantity import Answer, Value, total
from firmpedal.report.measure_sheet import line_of
from firmpedal.report.sheet import Bullets, Group, Heading, Paragraph, Sheet, Table, Tone
from firmpedal.report.stopping_answer import answer
from firmpedal.report.stopping_left_out import left_out
from firmpedal.report.stopping_plot import stopping_plot
from firmpedal.report.stopping_run_up import run_up_words, thrust_words
from firmpedal.report.stopping_travel import endings, first_end, goes_so_far, met, travel_cautions
from firmpedal.report.stopping_words import (
    alike,
    far,
    of_one_wheel,
    slowing_cell,
    usual_words,
    wanted,
)
from firmpedal.report.to_measure import asked_for
from firmpedal.report.worked import worked

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from firmpedal.analysis.stopping import Needed, Stopping, WheelBrake
    from firmpedal.model.display import Display
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Block
    from firmpedal.report.stopping_travel import Span
    from firmpedal.report.to_measure import ToMeasure

TITLE = "Stopping and holding"
RULES = (
    "brake-figures-contradict",
    "stop-too-weak",
    "run-up-not-held",
    "noses-over",
    "run-up-noses-over",
    "wheels-lock-early",
    "brakes-pull-to-one-side",
    "stop-energy-above-rating",
)
CAUTION = (
    "This is arithmetic, not a tested figure: the data of kit maker and brake maker come first. Try the "
    "brakes out at a slow taxi first, with room all round and somebody looking on."
)
FEET_WIDTHS = (0.17, 0.19, 0.16, 0.25, 0.23)
NEEDS_WIDTHS = (0.2, 0.2, 0.17, 0.19, 0.12, 0.12)
HOLDS = {
    Answer.YES: "yes",
    Answer.NO: "no",
    Answer.UNKNOWN: "not shown",
}


@worked
def stopping_sheet(evaluation: Evaluation, *, asks: bool = True) -> Sheet:
    """Everything about stopping, as far as the file goes.

    Args:
        evaluation: The aircraft.
        asks: Whether it lists what is to be measured; a page that has rows to write in does not.
    """
    stop, display = evaluation.results.stopping, evaluation.display
    ends = endings(evaluation)
    end = first_end(ends)
    asked = len(stopping_asks(evaluation))
    blocks: list[Block] = [*answer(evaluation, asked, end), *_findings(evaluation)]
    blocks += [*travel_cautions(evaluation, ends), *(Paragraph(words) for words in of_one_wheel(stop))]
    if any(at.drag.known for at in stop.feet):
        blocks.append(Group((Heading("What each foot gives", first=True), _feet(stop, display, end))))
    if (drawing := stopping_plot(stop, display)) is not None:
        blocks.append(drawing)
    blocks.append(Group((Heading("What it takes"), _needs(stop, display, end))))
    if words := run_up_words(stop, display):
        blocks.append(Paragraph(words))
    blocks += [
        Group((Heading("Energy of one stop, for each wheel"), _energy(evaluation, stop))),
        *(_open(evaluation) if asks else ()),
    ]
    taken = usual_words((*(brake.friction for brake in stop.brakes), *_grips(stop)), display)
    if taken:
        words = "Usual figures taken, common practice without a source; yours win:"
        blocks.append(Group((Paragraph(words), Bullets(taken))))
    blocks += [*left_out(evaluation), Paragraph(CAUTION, Tone.CAUTION)]
    return Sheet(TITLE, tuple(blocks))


def packet_sheet(evaluation: Evaluation) -> Sheet | None:
    """The same for the packet; nothing where the file says nothing about braking."""
    return stopping_sheet(evaluation) if evaluation.results.stopping.asked else None


def _findings(evaluation: Evaluation) -> list[Block]:
    """What the rules on stopping found, as elsewhere."""
    tones = {"WARNING": Tone.WARNING, "CAUTION": Tone.CAUTION, "NOTE": Tone.NOTE}
    found = (finding for finding in evaluation.findings if finding.rule in RULES)
    return [Paragraph(finding.message, tones[finding.level.value]) for finding in found]


def _feet(stop: Stopping, display: Display, end: Span) -> Table:
    rows = [
        (
            "\n".join(filter(None, (f"{at.foot}, {display.value(at.force)}", goes_so_far(at.force, end)))),
            slowing_cell(at.reached, display),
            far(at.distance, display),
            _pressed(stop, n, display),
            f"{slowing_cell(at.by_brakes, display)}\n{display.value(at.drag)} of drag",
        )
        for n, at in enumerate(stop.feet)
    ]
    columns = ("foot", "it slows by", "stops in", "pressure", "brakes alone")
    return Table(columns, tuple(rows), frozenset({1, 2, 3, 4}), widths=FEET_WIDTHS)


def _pressed(stop: Stopping, number: int, display: Display) -> str:
    """Pressure at the calipers over the torque at a wheel, which is that of all its calipers."""
    forces = {brake.caliper: brake.feet[number] for brake in stop.brakes}
    wheels = [[forces[name].torque for name in group] for group in stop.stance.braked.most]
    torque = alike((total("torque at a wheel", each) for each in wheels), display)
    return f"{alike((force.pressure for force in forces.values()), display)}\n{torque} of torque"


def _needs(stop: Stopping, display: Display, end: Span) -> Table:
    """Each thing that a foot is asked for, with the foot that it takes and whether foot and tyres do it."""
    ground, (stopping, holding) = stop.limits, met(stop, end)
    rows = [
        (
            *_need("the wanted stop", slowing_cell(stop.stance.wanted, display), stop.wanted, display),
            *(HOLDS[each] for each in stopping),
        ),
        (
            *_need("holding full throttle", thrust_words(stop, display), stop.hold, display),
            *(HOLDS[each] for each in holding),
        ),
        *_locking(stop, display),
    ]
    if stop.nose_over is not None and ground.nose_over is not None:
        over = slowing_cell(ground.nose_over, display)
        rows.append((*_need("the tail coming up", over, stop.nose_over, display), "", ""))
    columns = (
        "for",
        "that is",
        "foot on each pedal",
        "pressure",
        "hard foot does it",
        "ground holds it",
    )
    return Table(columns, tuple(rows), frozenset({2, 3}), widths=NEEDS_WIDTHS)


def _locking(stop: Stopping, display: Display) -> list[tuple[str, ...]]:
    """The foot that locks the wheels; each by itself where they are not alike, the first one first."""
    over = slowing_cell(stop.limits.peak, display)
    wheels = sorted(
        stop.locks, key=lambda each: each.needed.foot.middle if each.needed.foot.known else float("inf")
    )
    if not wheels:
        return [(*_need("wheels that lock", over, stop.lock, display), "", "")]
    return [(*_need(f"locking {each.name}", over, each.needed, display), "", "") for each in wheels]


def _need(words: str, what: str, needed: Needed, display: Display) -> tuple[str, ...]:
    pressure = alike(needed.pressures or (needed.pressure,), display)
    return (words, what, display.value(needed.foot), pressure)


def _energy(evaluation: Evaluation, stop: Stopping) -> Table:
    show = evaluation.display.value
    ratings = [each.leaflet.energy for each in evaluation.aircraft.calipers if each.leaflet.energy.known]
    rows = [
        ("by the older rule for small aeroplanes", show(stop.rule_energy)),
        ("by motion, without air drag", show(stop.motion_energy)),
        *_of_each_brake(stop, show),
        (
            "what the brake takes, by its leaflet",
            alike(ratings, evaluation.display) if ratings else "not given",
        ),
    ]
    return Table(("", "energy"), tuple(rows), right=frozenset({1}))


def _of_each_brake(stop: Stopping, show: Callable[[Value], str]) -> Iterator[tuple[str, str]]:
    """What each brake gets of it, where that is not what every wheel gets."""
    for brake, energy in zip(stop.brakes, stop.energies, strict=True):
        if energy.span != stop.energy.span:
            yield f"the greater, as {brake.caliper} gets it", show(energy)


def stopping_asks(evaluation: Evaluation) -> tuple[ToMeasure, ...]:
    """What is still to be measured, each thing once."""
    return asked_for(evaluation, wanted(main_values(evaluation.results.stopping)))


def _open(evaluation: Evaluation) -> list[Block]:
    asked = stopping_asks(evaluation)
    if not asked:
        return []
    words = Bullets(tuple(map(line_of, asked)), boxes=True)
    return [Group((Heading("To measure for the figures that are unknown"), words))]


def _grips(stop: Stopping) -> tuple[Value, ...]:
    stance = stop.stance
    return (stance.usual_grip, stance.peak_grip, *((stance.thrust_nose_up,) if stance.thrust.known else ()))


def main_values(stop: Stopping) -> tuple[Value, ...]:
    """The figures that count, in the order in which they are read."""
    feet = [value for at in stop.feet for value in (at.drag, at.by_brakes, at.reached, at.distance)]
    needs = [stop.wanted, stop.hold, stop.lock, *((stop.nose_over,) if stop.nose_over else ())]
    return (
        *feet,
        *(value for need in needs for value in (need.foot, need.pressure)),
        stop.wanted_distance,
        *_of_run_up(stop),
        stop.rule_energy,
        stop.motion_energy,
    )


def _of_run_up(stop: Stopping) -> tuple[Value, ...]:
    run_up = stop.run_up
    return (run_up.pull, run_up.holds, *((run_up.lifts,) if run_up.lifts is not None else ()))


def sums_of_stopping(stop: Stopping) -> tuple[Value, ...]:
    """What the packet prints sums of: one brake at the hard foot step by step, then all that counts."""
    hard = [value for brake in stop.brakes for value in _steps(brake)]
    over = (stop.limits.nose_over,) if stop.limits.nose_over else ()
    limits = (stop.limits.usual, stop.limits.peak, *over, *_of_run_up(stop))
    at_hard = (stop.feet[1].drag, stop.feet[1].by_brakes, stop.feet[1].reached, stop.feet[1].distance)
    needs = [stop.wanted, stop.hold, stop.lock, *((stop.nose_over,) if stop.nose_over else ())]
    feet = [value for need in needs for value in (need.pressure, need.foot)]
    return (*hard, *at_hard, *limits, stop.wanted.drag, *feet, stop.rule_energy, stop.motion_energy)


def _steps(brake: WheelBrake) -> tuple[Value, ...]:
    force = brake.feet[1]
    return (force.clamp, force.torque, force.drag)
