"""The card of a bent tube: cut, mark, bend, flare."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.report.bend_blocks import bend_blocks
from firmpedal.report.lengths import bare, both, decimals, fine, on_tape
from firmpedal.report.line_findings import without_order
from firmpedal.report.remarks import length_remark, wanted_for
from firmpedal.report.sheet import (
    Bullets,
    Facts,
    Figure,
    Figures,
    Group,
    Heading,
    Paragraph,
    Tone,
)
from firmpedal.report.tube_work import order_of_work
from firmpedal.report.twins import twin_words

if TYPE_CHECKING:
    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.tube import TubeShape
    from firmpedal.lay.work import TubeWork
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value
from firmpedal.report.sheet import Block

NO_ORDER_YET = (
    "None yet: on this bender its bends can be made in no order. Do not cut it before that is put right."
)


def tube_blocks(evaluation: Evaluation, line: LaidLine, tube: TubeShape, drawing: list[Block]) -> list[Block]:
    """Everything on a tube's card that other lines do not have."""
    work = line.work
    if work is None:
        return [*_no_shape(line, tube), *drawing]
    blocks: list[Block] = [_figures(evaluation, tube), *length_remark(tube.cut_length, "cut")]
    twin = twin_words(evaluation, line)
    blocks += [Paragraph(twin, Tone.NOTE)] if twin else []
    blocks += drawing
    blocks += bend_blocks(evaluation, tube, work)
    blocks += [Heading("Order of work"), _order(evaluation, line, tube)]
    blocks.append(_checksum(evaluation, tube, work))
    return [*blocks, *_clamps(evaluation, line)]


def _order(evaluation: Evaluation, line: LaidLine, tube: TubeShape) -> Block:
    """The steps; none for a tube that nobody can bend, unless the builder has accepted that."""
    found = without_order(evaluation, line)
    if found is not None and not found.accepted:
        return Paragraph(NO_ORDER_YET, Tone.WARNING)
    return Bullets(order_of_work(evaluation, line, tube), boxes=True)


def _no_shape(line: LaidLine, tube: TubeShape) -> list[Block]:
    if tube.impossible is not None:
        words = f"This tube cannot be bent as described: {tube.impossible.words}. Do not cut it."
        return [Paragraph(words, Tone.WARNING)]
    words = f"{line.name} cannot be cut yet. For its length, measure first:"
    return [Paragraph(words, Tone.LEAD), Bullets(wanted_for(tube.developed_length), boxes=True)]


def _figures(evaluation: Evaluation, tube: TubeShape) -> Figures:
    show = evaluation.display
    radius = f"centreline radius {both(tube.radius, show)}" if tube.bends else "no bend"
    return Figures(
        (
            Figure("cut to", on_tape(tube.cut_length, show), _beside(tube.cut_length, evaluation)),
            Figure("bends", str(len(tube.bends)), radius),
            Figure(
                "developed length",
                on_tape(tube.developed_length, show),
                _beside(tube.developed_length, evaluation),
            ),
        )
    )


def _beside(value: Value, evaluation: Evaluation) -> str:
    """The decimal beside a fraction; nothing where both read the same."""
    plain = decimals(value, evaluation.display)
    return "" if plain == on_tape(value, evaluation.display) else plain


def _finished(evaluation: Evaluation, work: TubeWork) -> list[tuple[str, str]]:
    """The size of the finished part, to check it on the bench."""
    if not work.bends or not all(value.known for value in work.box):
        return []
    along, across, over = (decimals(value, evaluation.display) for value in work.box)
    words = f"{along} x {across}, {over} high, first leg along the table's edge, first bend flat on it"
    return [("finished", words)]


def _checksum(evaluation: Evaluation, tube: TubeShape, work: TubeWork) -> Group:
    """Straights and arcs in order, so that the length can be added up by hand."""
    show = fine(evaluation.display).value
    straights = " + ".join(bare(straight, fine(evaluation.display)) for straight in tube.straights)
    arcs = " + ".join(bare(bend.arc, fine(evaluation.display)) for bend in tube.bends) or "none"
    rows = [("straights", straights), ("and arcs", f"{arcs}, together {show(tube.developed_length)}")]
    if tube.cut_length.step and tube.cut_length.known:
        flare = show(tube.cut_length.step.inputs[-1][1])
        rows.append(("two flares", f"2 x {flare}: cut to {show(tube.cut_length)}"))
    rows += _finished(evaluation, work)
    return Group((Heading("Lengths, to check"), Facts(tuple(rows))))


def _clamps(evaluation: Evaluation, line: LaidLine) -> list[Block]:
    supports = line.supports
    if not supports.stations:
        return []
    word = "proposed" if supports.proposed else "as declared"
    places = (on_tape(station, evaluation.display) for station in supports.stations)
    rows = [("from end A", "; ".join(f"c{number} {place}" for number, place in enumerate(places, 1)))]
    if supports.longest_gap is not None:
        limit = evaluation.display.value(supports.spacing)
        words = f"{evaluation.display.value(supports.longest_gap)}; at most {limit} is usual for this tube"
        rows.append(("longest free", words))
    return [Group((Heading(f"Cushioned clamps, {word}"), Facts(tuple(rows))))]
