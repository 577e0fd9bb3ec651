"""What to do, in sentences, built from who surely wins on what and from nothing else."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.display import listed
from firmpedal.report.sheet import Bullets, Heading, Paragraph

if TYPE_CHECKING:
    from firmpedal.decide.compare import Comparison, Row, Separator
    from firmpedal.report.sheet import Block

AS_WRITTEN = "as written"
MOST = {
    "verdict": "the better verdict",
    "worst finding": "the milder worst finding",
    "heat": "no plastic where it gets hot",
    "leak paths": "fewest places that can leak",
    "joints": "fewest joints",
    "parts": "fewest fittings, nuts and sleeves",
    "rating over panic foot": "most margin of its hoses at the panic foot",
    "yield over panic foot": "most margin of its tubes at the panic foot",
    "stroke used": "least stroke used",
    "mass": "least mass",
}
COUNTED = ("leak paths", "joints", "parts")
NAMED = 6  # things to measure written out; the rest are counted
LONGEST = 90


def option_name(option: str | None) -> str:
    return AS_WRITTEN if option is None else option


def answer(found: Comparison) -> str:
    """The answer in one line."""
    advice = found.advice
    names = [option_name(option) for option in found.options]
    if len(advice.out) == len(names):
        return "None of them is sound: each has at least one WARNING."
    if advice.best is not None:
        if len(advice.standing) == 1:
            return f"{_first_up(names[advice.best])} is the only one without a WARNING."
        first = f"; first settle {listed(_open(found))}" if _open(found) else ""
        return f"{_first_up(names[advice.best])}: best on what can be told{first}."
    left = _first_up(listed([names[n] for n in advice.standing]))
    if not advice.same_job:
        return f"{left} do not do the same job: choose that first."
    return f"{left}: the figures do not choose between them."


def _open(found: Comparison) -> list[str]:
    """What cannot be told of the best, and can be of another that is left."""
    advice = found.advice
    behind = dict(zip(advice.standing, advice.behind, strict=True))
    best = () if advice.best is None else behind[advice.best]
    return [shortened(one.message) for one in best if one.level is None]


def advice_blocks(found: Comparison) -> list[Block]:
    """What to do: who is out and why, who wins on what, what to measure, and the next word to type."""
    items = [*_outs(found), *_wins(found), *_weigh(found), *_measure(found)]
    return [Heading("What to do", first=True), Bullets(tuple(items)), Paragraph(_last(found))]


def _outs(found: Comparison) -> list[str]:
    words = []
    for number, finding, count in found.advice.out:
        more = f" ({count} warnings in all)" if count > 1 else ""
        words.append(
            f"{option_name(found.options[number])}: not sound, because {shortened(finding.message)}{more}."
        )
    return words


def shortened(message: str) -> str:
    """The first thing a long message says."""
    first = message.partition("; ")[0]
    for words in (message, first):
        if len(words) <= LONGEST:
            return words
    clauses = first.split(", ")
    kept = 2 if clauses[0].startswith("with ") else 1  # a circumstance alone says nothing yet
    return ", ".join(clauses[:kept])


def _wins(found: Comparison) -> list[str]:
    words = []
    rows = {row.measure: row for row in found.rows}
    advice = found.advice
    for number, wins, behind in zip(advice.standing, advice.wins, advice.behind, strict=True):
        name = option_name(found.options[number])
        told = [f"{MOST[measure]}{_against(found, rows[measure], number)}" for measure in wins]
        if all(number != n for n, *_ in advice.out):
            words.append(f"{name}: {', '.join(['no WARNING', *told])}.{_behind(list(behind))}")
        elif told:
            words.append(f"{name}, its warnings apart: {', '.join(told)}.")
    return words


def _behind(separators: list[Separator]) -> str:
    """What is said of one option and not of another, in a sentence."""
    found = [shortened(one.message) for one in separators if one.level is not None]
    asked = [shortened(one.message) for one in separators if one.level is None]
    words = f" Against it: {'; '.join(found)}." if found else ""
    return words + (f" Still open: {'; '.join(asked)}." if asked else "")


def _against(found: Comparison, row: Row, number: int) -> str:
    """The figure of a winner against the next best of those that are left."""
    others = [
        value.low
        for n in found.advice.standing
        if n not in row.result.winners and (value := row.cells[n].value) is not None and value.known
    ]
    own = row.cells[number].value
    if row.measure not in COUNTED or not others or own is None:
        return ""
    return f" ({own.low:.0f} against {min(others):.0f})"


def _weigh(found: Comparison) -> list[str]:
    """Where no winner can be named between those that are left, what would have to be known."""
    items = list(dict.fromkeys(missing.what for missing in found.advice.measure))
    if not items or len(found.advice.standing) < 2:
        return []
    return [f"No winner can be named on everything. To settle it, measure: {some_of(items)}."]


def some_of(items: list[str]) -> str:
    """A few things written out, the rest counted."""
    more = f"; and {len(items) - NAMED} more" if len(items) > NAMED else ""
    return f"{'; '.join(items[:NAMED])}{more}"


def _measure(found: Comparison) -> list[str]:
    """What could still turn it against the one that is ahead; the sheet lists it above."""
    best = found.advice.best
    if best is None or not (count := len(found.unknown_apart[best]) + len(found.unknown_in_all)):
        return []
    things = "the one thing" if count == 1 else f"the {count} things"
    return [
        f"Before you buy for {option_name(found.options[best])}, measure or look up {things} listed above."
    ]


def _last(found: Comparison) -> str:
    advice, names = found.advice, [option_name(option) for option in found.options]
    if len(advice.out) == len(names):
        return "So: put the warnings right in the file first; each finding says what to try."
    if not advice.same_job:
        rows = {row.measure: row for row in found.rows}
        jobs = [f"{names[n]} with {listed(list(rows['components'].cells[n].about))}" for n in advice.standing]
        return f"So: decide what you want first, {' or '.join(jobs)}; figures cannot choose that."
    if advice.best is None:
        left = listed([names[n] for n in advice.standing])
        return (
            f"So: each of {left} can be built on these figures. Choose by what counts for you, or measure "
            "what is missing and compare again."
        )
    name = names[advice.best]
    if len(found.unknown_apart[advice.best]) + len(found.unknown_in_all) == 0:
        return f"So: {name}. Nothing is left to measure. Next, plan the work from old to new."
    return (
        f"So: {name}, once what is unknown about it is measured and nothing turns against it. "
        "Then plan the work from old to new."
    )


def _first_up(words: str) -> str:
    return words[:1].upper() + words[1:]
