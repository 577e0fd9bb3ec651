"""The way from one option to another as a sheet: what stays, what comes off, what to buy, the work."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.decide.retrofit import retrofit
from firmpedal.decide.step import Phase
from firmpedal.decide.taking_off import glassed_in
from firmpedal.finding import Level
from firmpedal.model.display import listed
from firmpedal.model.part import Category
from firmpedal.report.advice import option_name, shortened
from firmpedal.report.looks import looks
from firmpedal.report.retrofit_words import phase_notes, step_words
from firmpedal.report.sheet import Bullets, Heading, Paragraph, Sheet, Table, Tone
from firmpedal.report.worked import worked

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.decide.pieces import Piece
    from firmpedal.decide.retrofit import Retrofit
    from firmpedal.decide.step import Step
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Block

TITLE = "From old to new"
BEFOREHAND = ": at the bench, days before"
WIDTHS = (0.09, 0.27, 0.3, 0.34)


@worked
def retrofit_sheet(before: Evaluation, after: Evaluation) -> Sheet:
    """What leads from one evaluation to another, the counts first, the lists last."""
    plan = retrofit(before, after)
    way = f"from {option_name(plan.before)} to {option_name(plan.after)}"
    if plan.empty:
        return Sheet(TITLE, (Paragraph(f"Nothing to do {way}.", Tone.LEAD),), subtitle=way)
    blocks: list[Block] = [Paragraph(_counts(plan), Tone.LEAD), *_verdict(after), *_warned(plan)]
    blocks += work_blocks(plan.steps, before, after)
    blocks += _to_buy(plan, after)
    blocks += _list("Stays as it is", [pair.after for pair in plan.keep], after)
    blocks += _again(plan)
    blocks += _off(plan, before)
    return Sheet(TITLE, tuple(blocks), subtitle=way)


def _verdict(after: Evaluation) -> list[Block]:
    """What is known against the new state, before anybody buys for it."""
    warnings = [finding.message for finding in after.findings if finding.level is Level.WARNING]
    if warnings:
        more = f" ({len(warnings)} warnings in all)" if len(warnings) > 1 else ""
        words = (
            f"What this leads to is NOT SOUND: {shortened(warnings[0])}{more}. Put that right before you buy."
        )
        return [Paragraph(words, Tone.WARNING)]
    if after.not_shown:
        words = "Whether what this leads to is sound is not shown yet: see what to measure before you buy."
        return [Paragraph(words, Tone.NOTE)]
    return []


def _counts(plan: Retrofit) -> str:
    words = [
        f"{len(plan.remove)} {_pieces(len(plan.remove))} off for good",
        f"{len(plan.keep)} stay",
        f"{len(plan.reuse)} may go on again",
        f"{len(plan.buy)} to buy",
    ]
    return ", ".join(words) + "."


def _pieces(count: int) -> str:
    return "piece" if count == 1 else "pieces"


def _warned(plan: Retrofit) -> list[Block]:
    """What is left in and deserves a second look."""
    blocks: list[Block] = []
    for mixed in plan.metals:
        words = (
            f"{mixed.kept.designation} at {mixed.kept.owner} stays and is of {mixed.metal}; "
            f"{mixed.partner}, which comes to it, is of {mixed.partner_metal}. Two metals corrode where they "
            "meet: change it too, or look at it every year."
        )
        blocks.append(Paragraph(words, Tone.CAUTION))
    for turn in plan.turn:
        words = (
            f"{turn.kept.designation} at {turn.kept.owner} stays, and {listed(list(turn.lines))} comes to "
            "it. If it has to point another way, it is only ever tightened further, never backed off."
        )
        blocks.append(Paragraph(words, Tone.NOTE))
    return blocks


def work_blocks(plan: Iterable[Step], before: Evaluation, after: Evaluation) -> list[Block]:
    """The steps by phase, each with a box; what can be done before anything is opened says so."""
    blocks: list[Block] = []
    number, every = 0, tuple(plan)
    for phase in Phase:
        steps = [step for step in every if step.phase is phase]
        if not steps:
            continue
        number += 1
        ahead = BEFOREHAND if all(step.beforehand for step in steps) else ""
        blocks.append(Heading(f"{number}. {phase.value.capitalize()}{ahead}", first=number == 1))
        blocks += [Paragraph(note) for note in phase_notes(steps, before, after)]
        blocks.append(Bullets(tuple(step_words(step, before, after) for step in steps), boxes=True))
    return blocks


def _to_buy(plan: Retrofit, after: Evaluation) -> list[Block]:
    """The list, under what is said of pieces that wait for a look."""
    supposed = after.aircraft.supposed_ports
    waiting = [piece for piece in plan.buy if piece.owner in supposed and not piece.line]
    blocks = _list("To buy", plan.buy, after)
    return [*blocks[:1], *looks((each.owner for each in waiting), len(waiting)), *blocks[1:]]


def _list(title: str, pieces: Iterable[Piece], evaluation: Evaluation) -> list[Block]:
    rows = _rows(pieces, evaluation)
    if not rows:
        return []
    table = Table(("qty", "designation", "what", "where"), rows, frozenset({0}), widths=WIDTHS)
    return [Heading(title), table]


def _rows(pieces: Iterable[Piece], evaluation: Evaluation) -> tuple[tuple[str, ...], ...]:
    """Equal pieces in one row, in the order of a parts list."""
    order = list(Category)
    groups: dict[tuple[object, ...], list[Piece]] = {}
    for piece in sorted(pieces, key=lambda piece: order.index(piece.category)):
        groups.setdefault(piece.sort, []).append(piece)
    return tuple(
        (
            str(len(some)),
            some[0].designation,
            _what(some[0], evaluation),
            ", ".join(dict.fromkeys(piece.owner for piece in some)),
        )
        for some in groups.values()
    )


def _what(piece: Piece, evaluation: Evaluation) -> str:
    if piece.part is not None:
        return piece.part.name
    if piece.length is not None:
        return evaluation.display.value(piece.length)
    return f"for {piece.holds}"


def _again(plan: Retrofit) -> list[Block]:
    if not plan.reuse:
        return []
    groups: dict[tuple[str, str], list[str]] = {}
    for pair in plan.reuse:
        groups.setdefault((pair.before.designation, pair.look), []).append(
            f"{pair.before.owner} to {pair.after.owner}"
        )
    rows = tuple(
        (str(len(ways)), name, look, ", ".join(dict.fromkeys(ways))) for (name, look), ways in groups.items()
    )
    columns = ("qty", "designation", "look first", "from, to")
    words = "May go on again, if it passes: otherwise buy it new."
    return [Heading("Used again"), Paragraph(words), Table(columns, rows, frozenset({0}), widths=WIDTHS)]


def _off(plan: Retrofit, before: Evaluation) -> list[Block]:
    """What comes off for good, and why it is bought new where the same thing is wanted."""
    if not plan.remove:
        return []
    glassed = [
        item.piece.owner for item in plan.remove if item.piece.length and glassed_in(before, item.piece.line)
    ]
    blocks: list[Block] = [*_list("Comes off for good", [item.piece for item in plan.remove], before)]
    if glassed:
        blocks.append(Paragraph(f"Glassed in, and so stays where it is, shut off: {listed(glassed)}."))
    reasons = dict.fromkeys((item.piece.designation, item.why_not) for item in plan.remove if item.why_not)
    if reasons:
        items = tuple(f"{name}: {why}" for name, why in reasons)
        blocks += [Paragraph("Bought new although the same came off:"), Bullets(items)]
    return blocks
