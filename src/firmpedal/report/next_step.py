"""Where the builder stands at each step of the job, and what to do next: one line, and the ways to do it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from typing import TYPE_CHECKING

from firmpedal.model.display import count_of
from firmpedal.report.standing import standing

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.pipeline import Evaluation
    from firmpedal.report.standing import Standing


class To(StrEnum):
    """Where something is done; whoever shows it knows how to get there."""

    TEXT = "text"
    DESCRIBE = "describe"
    FORM = "form"
    FOUND = "found"
    MEASURE = "measure"
    BUY = "buy"
    MAKE = "make"
    FIT = "fit"
    PROVE = "prove"
    KEEP = "keep"
    PACKET = "packet"


@dataclass(frozen=True, slots=True)
class Next:
    """Where the builder stands, in one line, and the ways on from there, the first one first."""

    words: str
    ways: tuple[tuple[str, To], ...] = ()


def next_step(evaluation: Evaluation, step: str) -> Next:
    """What to do next at a step of the job.

    Args:
        evaluation: One option of a file.
        step: `describe`, `sound`, `buy`, `make`, `fit`, `prove` or `keep`.
    """
    found = standing(evaluation)
    return STEPS[step](found) if found.lines else NOTHING


def first_step(evaluation: Evaluation) -> str:
    """The step at which a builder who comes back goes on: what is missing or wrong is done first."""
    found = standing(evaluation)
    return "describe" if not found.lines or (found.unknown and not found.warnings) else "sound"


def to_mend(problems: int) -> Next:
    """What to do next with a file that cannot be read; the same at each step."""
    words = f"{count_of(problems, 'thing')} to put right in the text before anything can be worked out."
    return Next(words, (("Go to the text", To.TEXT),))


NOTHING = Next(
    "No line is described yet. Add the components first, then the lines between them.",
    (("Add the first", To.DESCRIBE),),
)
MEASURE = ("See what to measure", To.MEASURE)
SETTLE = ("See what to settle", To.FOUND)
MAKE = ("Make the lines", To.MAKE)
PRINT = ("Print the measuring form", To.FORM)


def _describe(found: Standing) -> Next:
    if found.warnings:
        also = f", and {_to_measure(found)}" if found.things else ""
        return Next(f"{_to_settle(found)}{also}.", (SETTLE, *((PRINT,) if found.unknown else ())))
    if found.unknown:
        words = "Print the form, take it to the aircraft, and write in here what you measured."
        return Next(f"{_to_measure(found)}. {words}", (PRINT, MEASURE))
    if found.asked:
        words = f"Nothing in the file is unknown, but it does not say everything yet: {_to_measure(found)}."
        return Next(words, (MEASURE,))
    return Next(f"Described. {_sound(found).words}", _sound(found).ways)


def _sound(found: Standing) -> Next:
    if found.warnings:
        return Next(f"{_to_settle(found)} before you buy anything.", (SETTLE,))
    if found.asked:
        accepted = "You accepted the WARNINGS. " if found.accepted else ""
        words = f"{accepted}{_to_measure(found)} before anybody can say that it is sound"
        return Next(f"{words}{_by_when(found)}.", (MEASURE, PRINT))
    if found.cautions:
        return Next(
            f"Nothing that could hurt somebody is open. {count_of(found.cautions, 'CAUTION')} to settle, or "
            "to accept with a reason, before you buy.",
            (("See them", To.FOUND), ("What to buy", To.BUY)),
        )
    if found.accepted:
        return Next(
            f"Not sound by {count_of(found.accepted, 'WARNING')} that you accepted: show your reasons to "
            "whoever inspects it before you order.",
            (("See your reasons", To.FOUND), ("What to buy", To.BUY)),
        )
    return _order(found)


def _order(found: Standing) -> Next:
    """Nothing holds the order up."""
    order = (("Order the parts", To.BUY),)
    if found.later:
        words = f"Order the parts. {count_of(found.later, 'thing')} to measure later"
        return Next(f"{words}{_by_when(replace(found, now=0))}.", order)
    if found.now:
        words = f"Sound: order the parts. {_to_measure(found)}, for which no rule waits."
        return Next(words, (*order, MEASURE))
    return Next("Sound: order the parts.", order)


def _buy(found: Standing) -> Next:
    if found.warnings or found.asked:
        return _first("Do not order yet", found, found.asked)
    if found.accepted:
        accepted = count_of(found.accepted, "WARNING")
        words = f"Not sound by {accepted} that you accepted. Read your reasons again before you order."
        return Next(words, (("See your reasons", To.FOUND), MAKE))
    if found.cautions:
        words = f"{count_of(found.cautions, 'CAUTION')} to settle, or to accept with a reason"
        return Next(f"{words}, before you order.", (("See them", To.FOUND), MAKE))
    if found.in_hand:
        words = f"Order these. When they are there, measure {count_of(found.in_hand, 'thing')} at them"
        return Next(f"{words}; then make the lines.", (MEASURE, MAKE))
    return Next("Order these. When they are there, make the lines.", (MAKE,))


def _with_parts(does: str, then: Callable[[Standing], Next]) -> Callable[[Standing], Next]:
    """A step with the parts in hand, that nobody should begin while anything is to settle or to measure."""

    def step(found: Standing) -> Next:
        first = found.asked + found.in_hand
        return _first(does, found, first) if found.warnings or first else then(found)

    return step


def _first(does: str, found: Standing, things: int) -> Next:
    """What comes before a step."""
    if found.warnings:
        return Next(f"{does}: {_to_settle(found)} first.", (SETTLE,))
    which = f"{things} of the " if things < found.things else ""
    come = "comes" if things == 1 else "come"
    return Next(f"{does}: {which}{_to_measure(found)} {come} first.", (MEASURE, PRINT))


def _make(_found: Standing) -> Next:
    words = "Make each line by its card, one at a time. When they lie ready, fit them."
    return Next(words, (("Fit and fill", To.FIT),))


def _fit(found: Standing) -> Next:
    hang = f" {count_of(found.fitted, 'thing')} to measure as they hang: write them on the cards."
    return Next(
        "Fit the lines joint by joint, fill the system, get the air out. Then prove it."
        f"{hang if found.fitted else ''}",
        (("Prove it", To.PROVE),),
    )


def _prove(_found: Standing) -> Next:
    words = "Give each joint its torque, test it, tick it and sign. Then keep the papers."
    return Next(words, (("Keep the papers", To.KEEP),))


def _keep(found: Standing) -> Next:
    if found.warnings:
        return Next(f"The packet will say NOT SOUND: {_to_settle(found)}.", (SETTLE,))
    first = found.asked + found.in_hand
    if first:
        says = "NOT SOUND" if found.accepted else "NOT SHOWN"
        return Next(f"The packet will say {says}: {_to_measure(found)}.", (MEASURE,))
    says = ""
    if found.accepted:
        says = " It will say NOT SOUND, with your reasons."
    elif found.later:
        says = f" It will say NOT SHOWN: {_to_measure(found)}{_by_when(found)}."
    return Next(
        f"Make the packet, print it, and have the work inspected and signed.{says}",
        (("To the packet", To.PACKET),),
    )


def _by_when(found: Standing) -> str:
    """When each can be measured, where not all can be now."""
    parts = (
        (found.now, "now"),
        (found.in_hand, "with the parts in hand"),
        (found.fitted, "when the lines are fitted"),
        (found.tried, "in the first trials"),
    )
    said = [f"{count} {when}" for count, when in parts if count]
    return f": {', '.join(said)}" if found.later else ""


def _to_settle(found: Standing) -> str:
    return f"{count_of(found.warnings, 'WARNING')} to settle"


def _to_measure(found: Standing) -> str:
    """All that the verdict counts."""
    return f"{count_of(found.things, 'thing')} to measure"


STEPS: dict[str, Callable[[Standing], Next]] = {
    "describe": _describe,
    "sound": _sound,
    "buy": _buy,
    "make": _with_parts("Cut nothing yet", _make),
    "fit": _with_parts("Fit nothing yet", _fit),
    "prove": _with_parts("A test comes last", _prove),
    "keep": _keep,
}
