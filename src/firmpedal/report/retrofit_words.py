"""The steps of a retrofit in words, with lengths and volumes in the builder's units."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.threading import RULE as THREAD_IN_RULE
from firmpedal.decide.pieces import find_line
from firmpedal.decide.step import Action
from firmpedal.model.aircraft import find
from firmpedal.model.display import listed
from firmpedal.model.kinds import MasterCylinder
from firmpedal.report import retrofit_parts as on
from firmpedal.report.joint_numbers import joint_numbers, numbered
from firmpedal.report.remarks import rests_on
from firmpedal.report.retrofit_parts import stock_words

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.decide.step import Step
    from firmpedal.lay.line import LaidLine
    from firmpedal.pipeline import Evaluation

    Words = Callable[[Step, Evaluation, Evaluation], str]

PAIR = 2  # as many are named one by one
SEE_FIRST = (
    " See first whether it can be put in from the side; if not, it is threaded in before its last bends."
)


def step_words(step: Step, before: Evaluation, after: Evaluation) -> str:
    """Say a step."""
    return WORDS[step.action](step, before, after)


def phase_notes(steps: list[Step], before: Evaluation, after: Evaluation) -> list[str]:
    """What holds for several steps of a phase, once."""
    actions = {step.action for step in steps}
    ports = [step for step in steps if step.action is Action.GAUGE]
    notes = [on.gauge_note(ports, after), *on.not_again_note(ports, before)] if ports else []
    notes += [on.BENCH_NOTE] if Action.FIT_ON_BENCH in actions else []
    notes += [on.FIT_NOTE] if actions & {Action.FIT_PARTS, Action.FIT_BULKHEAD} else []
    notes += [on.LINE_NOTE] if actions & {Action.FIT_LINE, Action.THREAD_IN} else []
    return notes


def _buy(step: Step, _before: Evaluation, _after: Evaluation) -> str:
    count = int(step.parts[0])
    return f"Lay out what to buy, {'one piece' if count == 1 else f'{count} pieces'}, against the list below."


def _make(step: Step, _before: Evaluation, after: Evaluation) -> str:
    line = find_line(after, step.subject)
    on_it = f" Nut, then sleeve, then flare: {listed(list(step.parts))}." if step.parts else ""
    cut = _long(line, after, ", cut to {}")
    words = f"Cut, bend and flare {stock_words(line)} for {step.subject}{cut}.{on_it}{_unsure(line)}"
    return words + (SEE_FIRST if line and _may_be_threaded(line, after) else "")


def _may_be_threaded(line: LaidLine, after: Evaluation) -> bool:
    """Whether nobody knows yet if a tube has to be threaded in before its last bends."""
    return any((it.rule, it.place) == (THREAD_IN_RULE, line.place) for it in after.not_shown)


def _make_in_part(step: Step, _before: Evaluation, after: Evaluation) -> str:
    line = find_line(after, step.subject)
    cut = _long(line, after, ", cut to {}")
    on_it = f" Lay by {listed(list(step.parts))}: nut, then sleeve, then flare." if step.parts else ""
    return (
        f"Cut {stock_words(line)} for {step.subject}{cut}. It has to be threaded in: leave "
        f"{listed(list(step.about))} until it is in its place, and make the rest now.{on_it}{_unsure(line)}"
    )


def _hose(step: Step, _before: Evaluation, after: Evaluation) -> str:
    line = find_line(after, step.subject)
    length = _long(line, after, ", {} from seat to seat")
    return f"Have {stock_words(line)} at hand for {step.subject}{length}.{_unsure(line)}"


def _cut(step: Step, _before: Evaluation, after: Evaluation) -> str:
    line = find_line(after, step.subject)
    length = _long(line, after, ", {}")
    return f"Cut {stock_words(line)} for {step.subject}{length}; the last bit at the aircraft.{_unsure(line)}"


def _long(line: LaidLine | None, after: Evaluation, words: str) -> str:
    """How long a line is, in words that are left out as long as nobody knows."""
    return words.format(after.display.value(line.order_length)) if line and line.order_length.known else ""


def _unsure(line: LaidLine | None) -> str:
    if line is None or not line.order_length.known:
        return " Its length is not known yet: see what to measure."
    words = rests_on(line.order_length)
    return f" Its length {words} first." if words else ""


def _on_bench(step: Step, _before: Evaluation, after: Evaluation) -> str:
    joint = numbered(step.subject, after)
    words = f"Screw {listed(list(step.parts))} into {joint} before it goes on the aircraft."
    return f"{words}{on.why_now(step, after)}"


def _chock(_step: Step, before: Evaluation, _after: Evaluation) -> str:
    """Where no line is there yet, nothing can be under pressure: what counts is the first fluid."""
    if not before.laid:
        return (
            "Chock the wheels. From the first fluid on: goggles on, rags at hand, no flame; brake fluid "
            "burns and harms eyes and paint. Nothing is opened or tightened while it is under pressure."
        )
    return (
        "Chock the wheels. No pressure in any line, and nobody touches a pedal until the end. Goggles on, "
        "rags out, no flame: brake fluid burns, and it harms eyes and paint."
    )


def _valve(step: Step, _before: Evaluation, _after: Evaluation) -> str:
    return f"Open {step.subject}, then press and release each pedal: a closed valve keeps pressure behind it."


def _drain(step: Step, before: Evaluation, after: Evaluation) -> str:
    lines, held = listed(list(step.about)), _held(step, after)
    cylinder = find(before.aircraft.components, step.subject)
    own = isinstance(cylinder, MasterCylinder) and cylinder.has_reservoir
    above = f"what is in the reservoir of {step.subject}" if own else "what stands above"
    where = " at the wheel" if step.subject else ""
    return f"Drain {lines}{where} into a jar{held}, and {above} comes on top."


def _held(step: Step, after: Evaluation) -> str:
    """How much fluid lines hold, nothing where that is not known."""
    known = step.amount is not None and step.amount.known
    holds = "it holds" if len(step.about) == 1 else "they hold"
    return f": {holds} {after.display.value(step.amount)}" if step.amount and known else ""


def _flush(step: Step, _before: Evaluation, _after: Evaluation) -> str:
    return (
        f"The fluid changes from {listed(list(step.about))} to {step.subject}: every drop of the old one "
        "goes out of cylinders and calipers too, and their seals must be made for the new one."
    )


def _tighten(step: Step, _before: Evaluation, after: Evaluation) -> str:
    numbers = joint_numbers(after)
    order = _counted_up(sorted(numbers[name] for name in step.about))
    return (
        f"Tighten every joint that was touched ({step.parts[0]}), with two wrenches, to the figure on its "
        f"card, by their numbers on the circuit: {order}. Mark each with a stripe of paint."
    )


def _fill(step: Step, _before: Evaluation, after: Evaluation) -> str:
    if not step.parts:
        return f"Fill and bleed {listed(list(step.about))}{_held(step, after)}."
    top = f" to {step.subject}" if step.subject else ""
    order = ", then ".join(step.about)
    return (
        f"Fill and bleed from {listed(list(step.parts))} up{top}: {order}{_held(step, after)}. "
        "How, step by step: Filling and bleeding."
    )


def _open_to_fill(step: Step, _before: Evaluation, _after: Evaluation) -> str:
    return f"Open {step.subject}, and leave it open: through a closed valve neither fluid nor air passes."


def _leak(step: Step, _before: Evaluation, _after: Evaluation) -> str:
    return (
        "Press as hard and as long as the sheet Joints, one by one says, and wipe round every place that can "
        f"leak ({step.parts[0]}): "
        f"{listed(list(step.about))}. Once more after a night. Release: the wheels turn freely."
    )


def _counted_up(numbers: list[int]) -> str:
    """Numbers in order, as a stretch where none is left out."""
    if len(numbers) > PAIR and numbers[-1] - numbers[0] == len(numbers) - 1:
        return f"{numbers[0]} to {numbers[-1]}"
    return listed([str(number) for number in numbers])


def _close_up(step: Step, _before: Evaluation, _after: Evaluation) -> str:
    return f"Only now close {step.subject}, which hides {listed(list(step.about))}."


def _record(_step: Step, _before: Evaluation, _after: Evaluation) -> str:
    return (
        "Write down what was changed, the date and the change of mass, and have the work inspected and "
        "signed by somebody who is licensed or entitled to."
    )


WORDS: dict[Action, Words] = {
    Action.BUY: _buy,
    Action.MAKE: _make,
    Action.MAKE_IN_PART: _make_in_part,
    Action.HAVE_HOSE: _hose,
    Action.CUT: _cut,
    Action.FIT_ON_BENCH: _on_bench,
    Action.CHOCK: _chock,
    Action.OPEN_VALVE: _valve,
    Action.DRAIN: _drain,
    Action.FLUSH: _flush,
    Action.TAKE_LINE: on.take_line,
    Action.LEAVE_LINE: on.leave_line,
    Action.TAKE_PARTS: on.take_parts,
    Action.TAKE_COMPONENT: on.take_component,
    Action.CLOSE_HOLE: on.close_hole,
    Action.GAUGE: on.gauge,
    Action.LOOK_AT: on.look_at,
    Action.LOOK_CONE: on.look_at_cone,
    Action.PLUG: on.plug,
    Action.LEFT_OPEN: on.left_open,
    Action.FIT_COMPONENT: on.fit_component,
    Action.MAKE_HOLE: on.make_hole,
    Action.FIT_BULKHEAD: on.fit_bulkhead,
    Action.FIT_PARTS: on.fit_parts,
    Action.FIT_LINE: on.fit_line,
    Action.THREAD_IN: on.thread_in,
    Action.JOIN_AGAIN: on.join_again,
    Action.MOVE_CLAMPS: on.move_clamps,
    Action.TIGHTEN: _tighten,
    Action.OPEN_TO_FILL: _open_to_fill,
    Action.FILL: _fill,
    Action.LEAK_CHECK: _leak,
    Action.CLOSE_UP: _close_up,
    Action.RECORD: _record,
}
