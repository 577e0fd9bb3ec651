"""Taper pipe threads by turns, and how far each elbow on one may be turned to make it point."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from firmpedal.catalog import catalogue
from firmpedal.finding import Cited
from firmpedal.formulas.threads import engagement_turns
from firmpedal.model.part import Form
from firmpedal.quantity import Mark, apply, total
from firmpedal.report.section import LETTERS, THIN
from firmpedal.report.sheet import (
    BOX,
    Bullets,
    Dot,
    Drawing,
    Facts,
    Group,
    Heading,
    Label,
    Paragraph,
    Stroke,
    Table,
    Tone,
)
from firmpedal.report.story import source_text

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.catalog import Thread
    from firmpedal.fit.joint import Joint
    from firmpedal.model.part import Part
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value
    from firmpedal.report.section import Flat
    from firmpedal.report.sheet import Block
    from firmpedal.report.sheet import Mark as Drawn

SEALANT = "Sealant on pipe threads only, the first one or two threads bare; paste, no tape. Never back off."
HOW = (
    "Try it dry by hand and count the turns until it stops. Over one turn short: look at the port first.",
    "Clean, sealant on the male thread, by hand to the same place. Mark where it points.",
    "Turn on with a wrench. It points the right way once in each turn: stop there inside the window.",
    "Never back, not by a hair: that breaks the seal. Gone past: out, clean, new sealant, or another elbow.",
    "Hold the part itself, not by its mounting. Soft aluminium splits when turned beyond the window.",
)
READ_PART = "2.5 to 3 turns were read, the lower end is from memory"
HOW_SOURCE = ("common-practice", Mark.MEMORY)
SHARE = 0.32  # of a turn: where the elbow in the picture is to point
WIDTHS = (0.06, 0.18, 0.28, 0.17, 0.17, 0.14)


def pipe_blocks(evaluation: Evaluation) -> list[Block]:
    """How far each size of taper thread goes in, and each elbow to tick when it points and holds."""
    threads = pipe_threads(evaluation)
    if not threads:
        return []
    facts = tuple((thread.name, _turns_words(evaluation, thread)) for thread in threads)
    blocks: list[Block] = [Group((Heading("Taper pipe threads, by turns"), Facts(facts), Paragraph(SEALANT)))]
    elbows = pipe_elbows(evaluation)
    if elbows:
        columns = ("", "elbow", "where", "turns by hand", "then by wrench", "in all")
        rows = tuple(_row(evaluation, *each) for each in elbows)
        blocks.append(Group((Heading("Elbows that must point"), _window(evaluation, elbows[0][2]))))
        blocks += [Bullets(HOW), Table(columns, rows, widths=WIDTHS)]
    return [*blocks, _sources(threads)]


def _turns_words(evaluation: Evaluation, thread: Thread) -> str:
    owed, wrench = _owed(thread), _shown(evaluation, thread, "wrench_turns")
    hand = _tenths(owed) if owed is not None else _shown(evaluation, thread, "hand_turns")
    return f"by hand {hand} turns, then with a wrench {wrench}"


def _row(evaluation: Evaluation, part: Part, name: str, thread: Thread) -> tuple[str, ...]:
    owed = _owed(thread)
    hand = _tenths(owed) if owed is not None else "unknown"
    wrench = _shown(evaluation, thread, "wrench_turns")
    return BOX, part.designation, name, hand, wrench, _in_all(thread)


def pipe_threads(evaluation: Evaluation) -> tuple[Thread, ...]:
    """The taper threads of the joints that are there, in the order of the catalogue."""
    sizes = {
        mating.one.interface.size
        for joint in evaluation.assembly.joints
        for mating in joint.matings
        if mating.one.interface.form is Form.PIPE
    }
    return tuple(thread for thread in catalogue().threads if thread.name in sizes)


def pipe_elbows(evaluation: Evaluation) -> tuple[tuple[Part, str, Thread], ...]:
    """Each part that turns the line and screws in by a taper thread: it must point and hold at once."""
    return tuple(found for joint in evaluation.assembly.joints for found in _elbows(joint))


def _elbows(joint: Joint) -> Iterator[tuple[Part, str, Thread]]:
    for part in joint.parts:
        pipes = [end.interface.size for end in part.ends if end.interface.form is Form.PIPE]
        thread = catalogue().thread(pipes[0]) if pipes else None
        if part.turn and thread is not None:
            yield part, joint.name, thread


def _owed(thread: Thread) -> Value | None:
    """Turns by hand: the hand-tight length over the pitch."""
    length, pitch = thread.value("hand_tight_length"), thread.value("pitch")
    if length is None or pitch is None:
        return None
    return apply(engagement_turns, f"turns by hand of {thread.name}", engagement=length, pitch=pitch)


def _shown(evaluation: Evaluation, thread: Thread, name: str) -> str:
    value = thread.value(name)
    return evaluation.display.value(value) if value is not None else "unknown"


def _in_all(thread: Thread) -> str:
    """By hand and by wrench together."""
    owed, wrench = _owed(thread), thread.value("wrench_turns")
    if owed is None or wrench is None:
        return "unknown"
    return _tenths(total(f"turns of {thread.name} in all", (owed, wrench)))


def _tenths(turns: Value) -> str:
    """Turns to a tenth: nobody counts them more finely."""
    if turns.span is None:
        return "unknown"
    low, high = (f"{bound:.1f}" for bound in turns.span)
    return low if low == high else f"{low} to {high}"


def _window(evaluation: Evaluation, thread: Thread) -> Drawing:
    """The turns after hand tight as a spiral: thin while too loose, thick where it may stay."""
    window = thread.value("wrench_turns")
    low, high = (window.low, window.high) if window is not None and window.known else (0.0, 0.0)
    middle: Flat = (92.0, 78.0)
    marks: list[Drawn] = [
        _spiral(middle, 0.0, low, 1.0, dashed=True),
        _spiral(middle, low, high, 4.5),
        Stroke((middle, _on(middle, SHARE, 70.0)), THIN * 2, dashed=True),
        Dot(middle, 2.5),
    ]
    passes = [n + SHARE for n in range(math.ceil(high)) if n + SHARE <= high]
    marks += [Dot(_on(middle, turn, _reach(turn)), 5.5 if low <= turn else 2.6) for turn in passes]
    marks.append(Label("to point here", _on(middle, SHARE, 74.0), LETTERS, "start"))
    show = evaluation.display.value
    span = show(window) if window is not None else "an unknown number of"
    words = (
        ("From hand tight, at twelve o'clock, outward:", False),
        ("dashed: by wrench, too loose to hold", False),
        (f"thick: {span} turns, where it may stay", True),
        ("small dots: it points, and is too loose: go on", False),
        ("large dot: it points and holds: stop", True),
    )
    marks += [
        Label(text, (190, 134 - 17 * n), LETTERS, "start", bold=bold) for n, (text, bold) in enumerate(words)
    ]
    return Drawing((490.0, 156.0), tuple(marks))


def _reach(turn: float) -> float:
    return 18.0 + 15.0 * turn


def _spiral(middle: Flat, start: float, end: float, weight: float, *, dashed: bool = False) -> Stroke:
    count = max(2, int((end - start) * 40))
    turns = (start + (end - start) * n / count for n in range(count + 1))
    return Stroke(tuple(_on(middle, turn, _reach(turn)) for turn in turns), weight, dashed)


def _on(middle: Flat, turn: float, reach: float) -> Flat:
    """A point by its turns clockwise from twelve o'clock."""
    angle = 2 * math.pi * turn
    return (round(middle[0] + reach * math.sin(angle), 2), round(middle[1] + reach * math.cos(angle), 2))


def _sources(threads: tuple[Thread, ...]) -> Paragraph:
    """Where the turns come from, and where two sources print two figures."""
    said = []
    for thread in threads:
        owed, older, length = _owed(thread), thread.value("hand_turns"), thread.value("hand_tight_length")
        wrench = thread.value("wrench_turns")
        if owed is None or length is None or wrench is None:
            continue
        other = f", {older.middle:g} by {source_text(older.source, older.mark)}" if older is not None else ""
        hand = f"by hand {owed.middle:.2f} by {source_text(length.source, length.mark)}{other}"
        said.append(
            f"{thread.name}: {hand}; by wrench, {source_text(wrench.source, wrench.mark)}, {READ_PART}"
        )
    return Paragraph(f"Turns of taper threads. {'. '.join(said)}.", Tone.SMALL)


def cited_of_pipes(evaluation: Evaluation) -> Iterator[Cited]:
    """Every source of the turns that are printed."""
    threads = pipe_threads(evaluation)
    for thread in threads:
        names = ("hand_tight_length", "hand_turns", "wrench_turns")
        yield from (Cited(value.source, value.mark) for name in names if (value := thread.value(name)))
    if threads:
        yield Cited(*HOW_SOURCE)
