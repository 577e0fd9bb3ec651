"""What a port, fitting or tube can be, as a sheet: the answer, the fits, the tests, what was ruled out."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.decide.engagement import BOTH_PARTS, ONE_PART, Depth
from firmpedal.decide.thread_ends import Quantity
from firmpedal.quantity import Answer, Mark
from firmpedal.report.identify_sums import figures_of
from firmpedal.report.identify_words import (
    advice_of,
    coarse,
    expected_words,
    figure,
    fit_words,
    measured_words,
    test_words,
)
from firmpedal.report.sheet import Bullets, Heading, Paragraph, Sheet, Table, Tone
from firmpedal.report.story import sum_of

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.decide.engagement import Engagement
    from firmpedal.decide.identify import Identification, Judged, Question
    from firmpedal.model.display import Display
    from firmpedal.report.sheet import Block

MEMORY = "* from memory or estimated, not verified against the source"
MOST_REFUSED = 6  # the nearest ones; nobody wants to read why a 3/4 thread is no 1/8


def identify_sheet(found: Identification, display: Display) -> Sheet:
    """Everything that can be said about what was measured, the answer first."""
    answers = [*map(answer, found.questions), *turns_in_short(found)]
    blocks: list[Block] = [Paragraph(words, Tone.LEAD) for words in answers]
    for question in found.questions:
        blocks += _question_blocks(question, display)
    blocks += _engagement_blocks(found, display)
    for question in found.questions:
        blocks += figures_of(question, display)
    foot = (Paragraph(words, Tone.SMALL) for words in (_accuracies(found, display), MEMORY))
    return Sheet("What is it?", (*blocks, *foot))


def answer(question: Question) -> str:
    """The one line on a thread or a tube."""
    names = [judged.candidate.name for judged in question.remaining]
    if not names:
        return f"No {question.subject} in the catalogue fits."
    if question.by_one_figure and question.subject == "thread":
        return f"By that one figure it is {names[0]}: measure the pitch as well, a worn mouth reads wrong."
    if len(names) == 1:
        return f"Only one {question.subject} in the catalogue fits: {names[0]}."
    if not question.paired:
        return f"{len(names)} {question.subject}s fit: too little was measured to tell."
    return f"{len(names)} {question.subject}s fit: {'; '.join(names)}."


def turns_in_short(found: Identification) -> list[str]:
    """What the turns by hand say, in a line, where they say something."""
    depths = list(dict.fromkeys(each.depth for each in found.engagements))
    if not depths or found.measured.turns is None:
        return []
    turns = f"Hand tight after {figure(found.measured.turns)} turns"
    return [f"{turns}: {' or '.join(depth.value for depth in depths)}."]


def _question_blocks(question: Question, display: Display) -> list[Block]:
    blocks: list[Block] = []
    if not question.remaining:
        blocks.append(Paragraph(_again(question)))
    elif not question.paired:
        blocks.append(Paragraph(f"To tell them apart, measure next: {_next(question)}."))
    elif question.differences:
        blocks += [Heading("What tells them apart", first=True), *_differences(question, display)]
    if question.remaining:
        blocks += [Heading(f"What fits ({question.subject})"), _fit_table(question.remaining, display)]
    if question.ruled_out:
        blocks += _refused(question, display)
    return blocks


def _fit_table(judged: Iterable[Judged], display: Display) -> Table:
    rows = []
    for each in judged:
        name = each.candidate.name
        for fit in each.fits:
            rows.append((name, fit.quantity.value, measured_words(fit, display), expected_words(fit, display),
                         fit_words(fit, display)))  # fmt: skip
            name = ""
    return Table(("candidate", "measured", "found", "it has", "fits"), tuple(rows))


def _differences(question: Question, display: Display) -> list[Block]:
    return [
        Bullets((f"{pair.first.name}, or {pair.second.name}: {test_words(pair, display)}",))
        for pair in question.differences
    ]


def _refused(question: Question, display: Display) -> list[Block]:
    nearest = question.ruled_out[:MOST_REFUSED]
    rows = tuple(
        (
            each.candidate.name,
            "; ".join(
                f"{fit.quantity.value} {measured_words(fit, display)}, it has {expected_words(fit, display)}"
                for fit in each.refusals
            ),
        )
        for each in nearest
    )
    more = len(question.ruled_out) - len(nearest)
    words = f"And {more} more that lie further off."
    title = Heading(f"The nearest that do not fit ({question.subject})")
    table = Table(("ruled out", "because"), rows, about=0)
    return [title, table, Paragraph(words, Tone.SMALL)] if more else [title, table]


def _again(question: Question) -> str:
    """Say what to measure again when nothing fits: what the nearest ones stumble over."""
    nearest = question.ruled_out[0] if question.ruled_out else None
    stumbled = [fit.quantity for fit in nearest.refusals] if nearest else []
    words = " and ".join(advice_of(quantity) for quantity in dict.fromkeys(stumbled))
    begun = f"The nearest is {nearest.candidate.name}. " if nearest else ""
    return f"{begun}Measure again: {words}. If it stays so, it is a size that is not in the catalogue."


def _next(question: Question) -> str:
    return (
        ", then ".join(advice_of(quantity) for quantity in question.measure_next) or "the same, more finely"
    )


def _engagement_blocks(found: Identification, display: Display) -> list[Block]:
    if found.measured.turns is None:
        return []
    if not found.engagements:
        words = (
            "The turns by hand say nothing here: no taper thread is left among those that fit. A parallel "
        )
        return [Paragraph(words + "thread goes in to its shoulder and seals there, on a washer or a ring.")]
    blocks: list[Block] = [Heading("Turns by hand", first=True)]
    for each in found.engagements:
        tone = Tone.PLAIN if each.good else Tone.CAUTION
        blocks += [Paragraph(engagement_words(each), tone), sum_of(each.owed, display)]
    margin = f"{ONE_PART.middle:g} turn for each part, {BOTH_PARTS * ONE_PART.middle:g} together"
    blocks.append(Paragraph(f"Allowed: {margin} (recalled from ASME B1.20.1, not verified).", Tone.SMALL))
    return blocks


SAID = {
    Depth.RIGHT: "as it should.",
    Depth.SHORT: "short. Possible only if fitting and port are both at their limits: try a new fitting in "
    "the port, and the fitting in a good port.",
    Depth.TOO_SHORT: "too few: the port is under-tapped, or it has another thread. Sealant will not cure it. "
    "Find out the thread first; if it is under-tapped, a taper tap deepens it where the part has the depth "
    "and its maker allows it.",
    Depth.DEEP: "deep. Possible only if fitting and port are both at their limits: see that the last turns "
    "still tighten.",
    Depth.TOO_DEEP: "too many: the port is over-tapped or worn, or it has another thread. Sealant will not "
    "cure it. Replace the part.",
}


def engagement_words(each: Engagement) -> str:
    """Turns found against turns owed."""
    owed = f"{each.owed.middle:.2f}"
    older = f" (older figures: {each.usual.middle:g})" if each.usual else ""
    found = f"hand tight after {figure(each.turns)} turns where {owed} are owed{older}"
    return f"{each.thread.full_name.replace('ANPT', 'NPT')}: {found}: {SAID[each.depth]}"


def _accuracies(found: Identification, display: Display) -> str:
    measured = found.measured
    said = measured.accuracy.mark is not Mark.ASSUMED
    words = f"Diameters are taken as good to {display.value(measured.accuracy)}"
    words += "" if said else ", as with callipers; if it was a tape, say 1/32 in"
    if measured.pitch is not None:
        over = f"{measured.counted.middle:g} threads"
        words += f". The pitch as measured over {over}, so to {_pitch(found, display)}"
    if measured.seat_angle is not None:
        words += f". The angle to {display.value(measured.angle_accuracy)}"
    taper = "" if measured.taper is not Answer.UNKNOWN or not measured.of_thread else " Taper: not said."
    return f"{words}.{taper}"


def _pitch(found: Identification, display: Display) -> str:
    return coarse(found.measured.allowed(Quantity.PITCH), display)
