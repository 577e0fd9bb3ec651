"""Taking off, looking and putting on, in words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.elbow_room import RULE as ELBOWS
from firmpedal.decide.again import again
from firmpedal.decide.pieces import find_line, joint_pieces
from firmpedal.finding import Level
from firmpedal.model.display import listed
from firmpedal.model.stock import LineKind
from firmpedal.report.joint_numbers import numbered

if TYPE_CHECKING:
    from firmpedal.decide.step import Step
    from firmpedal.lay.line import LaidLine
    from firmpedal.pipeline import Evaluation

TAPER = "sealant on the taper thread only, the first threads bare; never backed off to point the right way"


def stock_words(line: LaidLine | None) -> str:
    """A line's stock as the builder wrote it."""
    return line.stock.phrase if line else "the line"


def take_line(step: Step, before: Evaluation, _after: Evaluation) -> str:
    line = find_line(before, step.subject)
    parts = f" with {listed(list(step.parts))}" if step.parts else ""
    pattern = " Keep it whole as a pattern." if line and line.kind is not LineKind.HOSE else ""
    hole = f" Its hole in {listed(list(step.about))} is free: use it or close it." if step.about else ""
    ends = "Cap what it leaves open at once."
    return f"Take off {step.subject}, {stock_words(line)},{parts}. {ends}{pattern}{hole}".replace(",.", ".")


def leave_line(step: Step, before: Evaluation, _after: Evaluation) -> str:
    """What laminate holds is not pulled at: it is shut off and stays, or it is cut out on purpose."""
    parts = f" Take off {listed(list(step.parts))}." if step.parts else ""
    return (
        f"{step.subject}, {stock_words(find_line(before, step.subject))}, is glassed in: do not pull at it."
        f"{parts} Drain it, cut it where it leaves the laminate, cap it at both ends, and label it as out of "
        "use: it stays in. Or cut it out, if the kit maker says how the laminate is made good. Cap at once "
        "what it came off."
    )


def take_parts(step: Step, _before: Evaluation, _after: Evaluation) -> str:
    return f"Take {listed(list(step.parts))} off {step.subject}."


def take_component(step: Step, _before: Evaluation, _after: Evaluation) -> str:
    return f"Take {step.subject} out."


def close_hole(step: Step, _before: Evaluation, _after: Evaluation) -> str:
    return f"{step.subject} leaves a hole: close it, or use it again."


def gauge(step: Step, before: Evaluation, _after: Evaluation) -> str:
    old, new = step.parts
    return f"{step.subject}: {old} comes out, {new} goes in.{_not_again(step, before)}"


def gauge_note(steps: list[Step], after: Evaluation) -> str:
    """How to gauge a port, once for all of them."""
    turns = dict.fromkeys(after.display.value(step.amount) for step in steps if step.amount)
    by_hand = f"about {' or '.join(turns)} turns" if turns else "as many turns as into a new port"
    return (
        "Gauge these ports. A taper thread stretches its port each time. Clean it and try the new fitting "
        f"without sealant: it goes in {by_hand} by hand. If it goes in more than a turn deeper, or rocks, "
        "the thread is worn, and no sealant makes up for that."
    )


def _not_again(step: Step, before: Evaluation) -> str:
    joints = [joint for joint in before.assembly.joints if joint.name == step.subject]
    pieces = [
        piece for joint in joints for piece in joint_pieces(joint) if piece.designation == step.parts[0]
    ]
    refused = any(not again(piece).allowed for piece in pieces)
    return f" Do not use the old {step.parts[0]} again." if refused else ""


def not_again_note(steps: list[Step], before: Evaluation) -> list[str]:
    """Why the old fittings of these ports are not used again, each kind once."""
    pieces = [piece for joint in before.assembly.joints for piece in joint_pieces(joint)]
    reasons = dict.fromkeys(
        (f"{piece.designation}, {piece.material},", again(piece).words)
        for step in steps
        for piece in pieces
        if (piece.owner, piece.designation) == (step.subject, step.parts[0]) and not again(piece).allowed
    )
    return [f"{name} is never used again: {why}." for name, why in reasons]


def look_at_cone(step: Step, _before: Evaluation, _after: Evaluation) -> str:
    return (
        f"{step.subject}: {listed(list(step.parts))} stays and gets {listed(list(step.about))}. Its cone "
        "must be smooth, with no ring and no scratch."
    )


def look_at(step: Step, _before: Evaluation, _after: Evaluation) -> str:
    return f"Before it goes on again, {listed(list(step.parts))}: {step.subject}."


def plug(step: Step, _before: Evaluation, _after: Evaluation) -> str:
    return f"Close {step.subject} with {listed(list(step.parts))}: {TAPER.split(';', maxsplit=1)[0]}."


def left_open(step: Step, _before: Evaluation, _after: Evaluation) -> str:
    why = listed([word for word in step.about if word])
    return f"{step.subject} had a line and gets none. " + (
        f"The file says: {why}." if why else "Nothing closes it: plug it, and say so in the file."
    )


def fit_component(step: Step, _before: Evaluation, _after: Evaluation) -> str:
    return f"Fit {step.subject}."


def make_hole(step: Step, _before: Evaluation, _after: Evaluation) -> str:
    return (
        f"{step.subject} passes {listed(list(step.about))}: make its hole, smooth it, and put a grommet in."
    )


def fit_bulkhead(step: Step, _before: Evaluation, after: Evaluation) -> str:
    hole = f" The hole was made for {listed(list(step.about))}: see whether it fits." if step.about else ""
    return f"{listed(list(step.parts))} at {numbered(step.subject, after)}.{hole}"


def fit_parts(step: Step, _before: Evaluation, after: Evaluation) -> str:
    return f"{listed(list(step.parts))} into {numbered(step.subject, after)}.{why_now(step, after)}"


def why_now(step: Step, after: Evaluation) -> str:
    """Why a fitting goes in before others, or before its component is mounted; nothing where that is free."""
    words = ""
    if step.about:
        others = listed([numbered(name, after) for name in step.about])
        words = f" First, before {others}: beside that it has no sure room to turn."
    joint = next((one for one in after.assembly.joints if one.name == step.subject), None)
    met = [one for one in after.findings if (one.rule, one.level) == (ELBOWS, Level.NOTE)]
    if joint is not None and any(one.place == joint.place for one in met):
        words += f" On the bench, not later: with {step.subject.rpartition('.')[0]} in place it cannot turn."
    return f"{words}{_no_room(joint.place, after) if joint else ''}"


def _no_room(port: str, after: Evaluation) -> str:
    """What stands against a fitting in a port, so that nobody begins with it."""
    found = [
        f"{one.message}. Accepted: {one.accepted}" if one.accepted else f"{one.message}; put that right first"
        for one in after.findings
        if (one.rule, one.level) == (ELBOWS, Level.CAUTION) and port in (one.place, *one.about)
    ]
    return "".join(f" CAUTION: {words}." for words in found)


BENCH_NOTE = f"Into a port: {TAPER}."
FIT_NOTE = (
    f"What goes into a port: {TAPER}. In the vice, if the part comes off: nothing of the aircraft is in its "
    "way there. What goes through a panel or bracket: point it the right way, hold its body, tighten the "
    "jam nut, all before any line comes to it."
)
LINE_NOTE = (
    "Tubes first: both nuts by hand, nothing pulled into place. Hoses without a twist: the printed line "
    "stays straight. Then the clamps. No wrench before every line lies free."
)


def fit_line(step: Step, _before: Evaluation, after: Evaluation) -> str:
    clamps = f", with {listed(list(step.parts))}" if step.parts else ""
    return f"{step.subject}, {stock_words(find_line(after, step.subject))}, {_way(step, after)}{clamps}."


def _way(step: Step, after: Evaluation) -> str:
    """From which joint to which a line goes."""
    ends = [after.assembly.joint_of(step.subject, end) for end in ("from", "to")]
    return " to ".join(numbered(joint.name, after) for joint in ends if joint)


def thread_in(step: Step, _before: Evaluation, after: Evaluation) -> str:
    clamps = f" Then {listed(list(step.parts))}." if step.parts else ""
    stock = stock_words(find_line(after, step.subject))
    return (
        f"Thread in {step.subject}, {stock}, {_way(step, after)}. Then, in place, make "
        f"{listed(list(step.about))}: nut and sleeve go on before the flare.{clamps}"
    )


def join_again(step: Step, _before: Evaluation, after: Evaluation) -> str:
    return f"Join {step.subject} again at {listed([numbered(name, after) for name in step.about])}."


def move_clamps(step: Step, _before: Evaluation, _after: Evaluation) -> str:
    return f"Move the clamps of {step.subject} to their new places."
