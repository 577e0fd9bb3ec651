"""Where the builder stands at each step of the job, and what to do next: one line, and the ways to do it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from firmpedal.finding import Level
from firmpedal.report.findings import waiting
from firmpedal.report.measuring_items import unknowns

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.pipeline import Evaluation


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


@dataclass(frozen=True, slots=True)
class Standing:
    """What an aircraft still lacks, counted.

    Args:
        lines: Lines that are described.
        unknown: Figures that the file itself says are unknown, copies not counted.
        warnings: WARNINGs that nobody has accepted.
        accepted: WARNINGs that the builder has accepted; the verdict stays not sound by them.
        cautions: CAUTIONs that nobody has accepted.
        now: Things that rules wait for and that can be measured or looked up now.
        fitted: Things that can be measured only when the lines hang in the aircraft.
    """

    lines: int = 0
    unknown: int = 0
    warnings: int = 0
    accepted: int = 0
    cautions: int = 0
    now: int = 0
    fitted: int = 0


def standing(evaluation: Evaluation) -> Standing:
    """Count what an aircraft still lacks; `now` and `fitted` together are the things of the verdict."""
    late = {
        missing.what for unclear in evaluation.not_shown for missing in unclear.missing if missing.when_fitted
    }
    fitted = len(late)
    return Standing(
        lines=len(evaluation.aircraft.lines),
        unknown=len(unknowns(evaluation.reading)),
        warnings=_open(evaluation, Level.WARNING),
        accepted=sum(
            each.level is Level.WARNING and each.accepted is not None for each in evaluation.findings
        ),
        cautions=_open(evaluation, Level.CAUTION),
        now=len(waiting(evaluation)) - fitted,
        fitted=fitted,
    )


def _open(evaluation: Evaluation, level: Level) -> int:
    return sum(each.level is level and each.accepted is None for each in evaluation.findings)


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
    words = f"{_some(problems, 'thing')} to put right in the text before anything can be worked out."
    return Next(words, (("Go to the text", To.TEXT),))


NOTHING = Next(
    "No line is described yet. Add the components first, then the lines between them.",
    (("Add the first", To.DESCRIBE),),
)
MEASURE = ("See what to measure", To.MEASURE)
SETTLE = ("See what to settle", To.FOUND)
PRINT = ("Print the measuring form", To.FORM)


def _describe(found: Standing) -> Next:
    unknown = (
        f"{_some(found.unknown, 'figure')} of the file {'is' if found.unknown == 1 else 'are'} still unknown"
    )
    if found.warnings:
        also = f", and {unknown}" if found.unknown else ""
        return Next(f"{_to_settle(found)}{also}.", (SETTLE, *((PRINT,) if found.unknown else ())))
    if found.unknown:
        words = "Print the form, take it to the aircraft, and write in here what you measured."
        return Next(f"{unknown}. {words}", (PRINT,))
    if found.now:
        words = f"Nothing in the file is unknown, but it does not say everything yet: {_to_measure(found)}."
        return Next(words, (MEASURE,))
    return Next(f"Described. {_sound(found).words}", _sound(found).ways)


def _sound(found: Standing) -> Next:
    if found.warnings:
        return Next(f"{_to_settle(found)} before you buy anything.", (SETTLE,))
    if found.now:
        accepted = "You accepted the WARNINGS. " if found.accepted else ""
        when = f": {found.now} now, {found.fitted} when the lines are fitted" if found.fitted else ""
        words = f"{accepted}{_to_measure(found)} before anybody can say that it is sound{when}."
        return Next(words, (MEASURE, PRINT))
    if found.cautions:
        return Next(
            f"Nothing that could hurt somebody is open. {_some(found.cautions, 'CAUTION')} to settle, or to "
            "accept with a reason, before you buy.",
            (("See them", To.FOUND), ("What to buy", To.BUY)),
        )
    order = ("Order the parts", To.BUY)
    if found.accepted:
        return Next(
            f"Not sound by {_some(found.accepted, 'WARNING')} that you accepted: show your reasons to "
            "whoever inspects it before you order.",
            (("See your reasons", To.FOUND), ("What to buy", To.BUY)),
        )
    if found.fitted:
        return Next(f"Order the parts. {_when_fitted(found)}", (order,))
    return Next("Sound: order the parts.", (order,))


def _before(does: str, then: Callable[[Standing], Next]) -> Callable[[Standing], Next]:
    """A step that nobody should begin while something can be settled or measured first."""

    def step(found: Standing) -> Next:
        if found.warnings:
            return Next(f"{does}: {_to_settle(found)} first.", (SETTLE,))
        if found.now:
            which = f"{found.now} of the " if found.fitted else ""
            come = "comes" if found.now == 1 else "come"
            return Next(f"{does}: {which}{_to_measure(found)} {come} first.", (MEASURE, PRINT))
        return then(found)

    return step


def _buy(found: Standing) -> Next:
    if found.accepted:
        words = f"Not sound by {_some(found.accepted, 'WARNING')} that you accepted. Read your reasons again"
        return Next(
            f"{words} before you order.", (("See your reasons", To.FOUND), ("Make the lines", To.MAKE))
        )
    return Next("Order these. When they are there, make the lines.", (("Make the lines", To.MAKE),))


def _make(_found: Standing) -> Next:
    words = "Make each line by its card, one at a time. When they lie ready, fit them."
    return Next(words, (("Fit and fill", To.FIT),))


def _fit(found: Standing) -> Next:
    hang = f" {_when_fitted(found)}" if found.fitted else ""
    return Next(
        f"Fit the lines joint by joint, fill the system, get the air out.{hang} Then prove it.",
        (("Prove it", To.PROVE),),
    )


def _prove(_found: Standing) -> Next:
    words = "Give each joint its torque, test it, tick it and sign. Then keep the papers."
    return Next(words, (("Keep the papers", To.KEEP),))


def _keep(found: Standing) -> Next:
    if found.warnings:
        return Next(f"The packet will say NOT SOUND: {_to_settle(found)}.", (SETTLE,))
    if found.now:
        also = "NOT SOUND" if found.accepted else "NOT SHOWN"
        return Next(f"The packet will say {also}: {_to_measure(found)}.", (MEASURE,))
    says = ""
    if found.accepted:
        says = " It will say NOT SOUND, with your reasons."
    elif found.fitted:
        says = f" It will say NOT SHOWN, for {_late(found)} measured when the lines are fitted."
    return Next(
        f"Make the packet, print it, and have the work inspected and signed.{says}",
        (("To the packet", To.PACKET),),
    )


def _when_fitted(found: Standing) -> str:
    return f"{_late(found)} left to measure when the lines are fitted: write them on the cards."


def _late(found: Standing) -> str:
    return f"{_some(found.fitted, 'thing')} {'is' if found.fitted == 1 else 'are'}"


def _to_settle(found: Standing) -> str:
    return f"{_some(found.warnings, 'WARNING')} to settle"


def _to_measure(found: Standing) -> str:
    """All that the verdict counts."""
    return f"{_some(found.now + found.fitted, 'thing')} to measure"


def _some(count: int, word: str) -> str:
    plural = "S" if word.isupper() else "s"
    return f"{count} {word}{'' if count == 1 else plural}"


STEPS: dict[str, Callable[[Standing], Next]] = {
    "describe": _describe,
    "sound": _sound,
    "buy": _before("Do not order yet", _buy),
    "make": _before("Cut nothing yet", _make),
    "fit": _before("Fit nothing yet", _fit),
    "prove": _before("A test comes last", _prove),
    "keep": _keep,
}
