"""Torque and flare: the figures for the sizes that are there, with every source that was found."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.finding import Cited
from firmpedal.formulas.references import entry
from firmpedal.quantity import Mark
from firmpedal.report.flare_card import (
    SOURCE_WIDTHS,
    USED,
    cited_on_card,
    flare_figure,
    tube_sizes,
)
from firmpedal.report.nuts import tightened, torque_rows, torque_used
from firmpedal.report.pipe_elbows import cited_of_pipes, pipe_blocks
from firmpedal.report.sheet import (
    BOX,
    Bullets,
    Figure,
    Figures,
    Group,
    Heading,
    Paragraph,
    Sheet,
    Table,
    Tone,
)
from firmpedal.report.story import source_text
from firmpedal.report.torque_pairs import pair_table

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.pipeline import Evaluation
    from firmpedal.report.nuts import Tightened
    from firmpedal.report.sheet import Block

CONFLICTS = (
    "All that was found is shown. Where sources conflict, the safer one that was seen in print is used."
)
AS_DONE = "Each nut, as it is done"
PAINT = "Put a paint mark across each nut when it has had its torque."
ONCE = "It is ticked once, with its joint, {where}."
TICK_WIDTHS = (0.06, 0.26, 0.18, 0.16, 0.2, 0.14)

NEVER_UNDER_PRESSURE = ("Never loosen or tighten a joint under pressure.", "navedtra-14105", Mark.READ)
TUBE_DECIDES = (
    "The torque goes by the metal of the tube, not of the nut. Where any part of the joint is aluminium, "
    "or the tube is copper, the aluminium figure holds."
)
BY_HAND = (
    "Line both ends up and run both nuts on by hand before any wrench. Never pull a line into place with "
    "its nut."
)
LEAKS = (
    "A weeping flare is not cured by torque: an aluminium joint that leaks at full torque is taken apart "
    "and the fault found."
)
BULKHEAD = (
    "On a bulkhead fitting set the direction first, then tighten the jam nut with the body held, then the "
    "tube nuts."
)
# What holds for every flared joint, with the source it was read in.
BENCH_RULES: tuple[tuple[str, str, Mark], ...] = (
    (TUBE_DECIDES, "maintenance-manual-torque", Mark.READ),
    (BY_HAND, "routing-course", Mark.READ),
    ("Two wrenches: one holds the body, the other turns the nut.", "common-practice", Mark.MEMORY),
    NEVER_UNDER_PRESSURE,
    ("No sealant, tape or paste on a flare or cone: the seal is metal on metal.", "ac-65-9a", Mark.READ),
    (LEAKS, "navedtra-14105", Mark.READ),
    (BULKHEAD, "common-practice", Mark.MEMORY),
)


def torque_sheet(evaluation: Evaluation, *, ticked: str = "") -> Sheet:
    """The figures to work by, the rules, each nut to tick off, and last where the figures come from.

    Args:
        evaluation: The aircraft.
        ticked: Where else the joints are ticked off, such as `under Prove`: a nut is ticked in one place,
            so this sheet names it. Without it there is a list to tick here.
    """
    nuts = tightened(evaluation)
    kinds = {(nut.kind, nut.dash, nut.metal): nut for nut in nuts}
    sizes = tube_sizes(evaluation)
    figures = [_torque_figure(evaluation, nut) for nut in kinds.values()]
    figures += [flare_figure(evaluation, size) for size in sizes]
    blocks: list[Block] = [Figures(tuple(figures[n : n + 2])) for n in range(0, len(figures), 2)]
    if not nuts:
        blocks.append(Paragraph("There is no flared joint here. Tighten by the maker's instructions."))
    blocks += [pair_table(evaluation, nuts)] if nuts else []
    blocks.append(Group(tuple(_how_to_tighten(flared=bool(nuts)))))
    blocks += pipe_blocks(evaluation)
    if nuts:
        blocks += [
            _ticked(ticked) if ticked else _tick_list(evaluation, nuts),
            Heading("Where these figures come from"),
            Paragraph(CONFLICTS),
        ]
    blocks += [_torque_table(evaluation, nut) for nut in kinds.values() if torque_rows(nut)]
    blocks.append(_rule_sources(flared=bool(nuts)))
    return Sheet("Torque and flare", tuple(blocks))


def bench_rules(*, flared: bool) -> tuple[tuple[str, str, Mark], ...]:
    """The rules of tightening that matter here: all where a joint is flared, else the one on pressure."""
    return BENCH_RULES if flared else (NEVER_UNDER_PRESSURE,)


def _how_to_tighten(*, flared: bool) -> list[Block]:
    rules = bench_rules(flared=flared)
    return [Heading("How to tighten"), Bullets(tuple(text for text, _, _ in rules))]


def _rule_sources(*, flared: bool) -> Paragraph:
    titles = dict.fromkeys(entry(key).title for _, key, _ in bench_rules(flared=flared))
    return Paragraph(f"The rules of tightening are from: {'; '.join(titles)}.", Tone.SMALL)


def _tick_list(evaluation: Evaluation, nuts: tuple[Tightened, ...]) -> Group:
    """Each nut with its torque, to tick when it is done and marked."""
    rows = []
    for nut in nuts:
        row = torque_used(nut)
        figure = evaluation.display.value(row.torque) if row else "see the maker"
        rows.append((BOX, nut.joint, nut.line, nut.nut, figure, ""))
    columns = ("", "joint", "line", "nut", "torque", "by, date")
    table = Table(columns, tuple(rows), widths=TICK_WIDTHS, pen=frozenset({5}))
    return Group((Heading(AS_DONE), Paragraph(PAINT), table))


def _ticked(where: str) -> Group:
    return Group((Heading(AS_DONE), Paragraph(f"{PAINT} {ONCE.format(where=where)}")))


def _title(nut: Tightened) -> str:
    return f"{nut.dash} {nut.kind}, {nut.metal or 'a pair without a figure'}"


def _torque_figure(evaluation: Evaluation, nut: Tightened) -> Figure:
    used = torque_used(nut)
    if used is None:
        return Figure(_title(nut), "see the maker", "no source gives a torque")
    return Figure(_title(nut), evaluation.display.value(used.torque), used.condition.partition(";")[0])


def _torque_table(evaluation: Evaluation, nut: Tightened) -> Table:
    """Every source for one nut, the one in use first."""
    rows = tuple(
        (
            USED if row.preferred else "",
            evaluation.display.value(row.torque),
            _with_note(row.condition, row.note),
            source_text(row.torque.source, row.torque.mark),
        )
        for row in torque_rows(nut)
    )
    return Table(("", "torque", "condition", "source"), rows, title=_title(nut), widths=SOURCE_WIDTHS)


def _with_note(text: str, note: str) -> str:
    return f"{text}\n{note}" if note else text


def cited_here(evaluation: Evaluation) -> Iterator[Cited]:
    """Every source that this sheet prints."""
    for nut in tightened(evaluation):
        yield from (Cited(row.torque.source, row.torque.mark) for row in torque_rows(nut))
    yield from cited_on_card(evaluation)
    yield from cited_of_pipes(evaluation)
    flared = bool(tightened(evaluation))
    yield from (Cited(key, mark) for _, key, mark in bench_rules(flared=flared))
