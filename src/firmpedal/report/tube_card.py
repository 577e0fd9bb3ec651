"""The card of a bent tube: cut, mark, bend, flare."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.report.clock import clock_time, faces, ring, turn_words
from firmpedal.report.lengths import bare, both, decimals, degrees, fine, on_tape
from firmpedal.report.remarks import length_remark
from firmpedal.report.sheet import (
    Bullets,
    Facts,
    Fields,
    Figure,
    Figures,
    Group,
    Heading,
    Paragraph,
    Table,
    Tone,
)
from firmpedal.report.tube_work import order_of_work
from firmpedal.report.twins import twin_words
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.shape import Centreline
    from firmpedal.lay.tube import BendValues, TubeShape
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value
from firmpedal.report.sheet import Block


def tube_blocks(evaluation: Evaluation, line: LaidLine, tube: TubeShape, drawing: list[Block]) -> list[Block]:
    """Everything on a tube's card that other lines do not have."""
    if tube.centreline is None:
        return [*_no_shape(line, tube), *drawing]
    blocks: list[Block] = [_figures(evaluation, tube), *length_remark(tube.cut_length, "cut")]
    twin = twin_words(evaluation, line)
    blocks += [Paragraph(twin, Tone.NOTE)] if twin else []
    blocks += drawing
    blocks += _bend_blocks(evaluation, tube, tube.centreline)
    blocks += [Heading("Order of work"), Bullets(order_of_work(evaluation, line, tube), boxes=True)]
    blocks.append(_checksum(evaluation, tube))
    return [*blocks, *_clamps(evaluation, line)]


def _no_shape(line: LaidLine, tube: TubeShape) -> list[Block]:
    if tube.impossible is not None:
        words = f"This tube cannot be bent as described: {tube.impossible.words}. Do not cut it."
        return [Paragraph(words, Tone.WARNING)]
    missing = tuple(dict.fromkeys(each.what for each in tube.developed_length.missing))
    words = f"{line.name} cannot be cut yet: its length is unknown. Measure first:"
    return [Paragraph(words, Tone.LEAD), Bullets(missing, boxes=True)]


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


def _bend_blocks(evaluation: Evaluation, tube: TubeShape, shape: Centreline) -> list[Block]:
    if not tube.bends:
        return []
    rows = tuple(_bend_row(evaluation, number, bend, shape) for number, bend in enumerate(tube.bends))
    columns = ("bend", "mark, from end A", "next bend goes to", "bend", "set tool to")
    table = Table(columns, rows, widths=(0.09, 0.27, 0.28, 0.16, 0.2), large=frozenset({0, 1, 2, 3}))
    blocks: list[Block] = [table, Paragraph(_mark_words(evaluation, tube), Tone.SMALL)]
    turned = [
        (number, bend.rotation, degrees(bend.rotation).lstrip("-"))
        for number, bend in enumerate(tube.bends, 1)
        if number > 1
    ]
    if turned:
        blocks.append(Group((faces(turned), Paragraph(CLOCK_WORDS, Tone.SMALL))))
    words = "Springback: bend a coupon first, a spare piece of the same tube on the same tool."
    fields = ("coupon: tool set to, degrees", "it came to, degrees", "so add, degrees")
    blocks.append(Group((Paragraph(words), Fields(fields))))
    return blocks


CLOCK_WORDS = (
    "Look along the tube from A to B, the leg before the last bend at 12 o'clock: the next bend goes where "
    "the hand points. In a bender that stays put, turn the tube by as much the other way, then check."
)


def _bend_row(evaluation: Evaluation, number: int, bend: BendValues, shape: Centreline) -> tuple[str, ...]:
    start = shape.tangent_stations[2 * number + 1]
    mark = _station(start, bend.radius, evaluation)
    if number == 0:
        turn = "\u2014\nfirst bend: any way up"
    else:
        words = turn_words(bend.rotation)
        turn = f"{degrees(bend.rotation, signed=True)}\n{words}, to {clock_time(bend.rotation.middle)}"
    return (ring(number + 1), mark, turn, degrees(bend.angle), "")


def _station(start: float, like: Value, evaluation: Evaluation) -> str:
    """A place along the tube, on the tape and as a decimal."""
    value = type(like)("mark", Dimension.LENGTH, (start, start))
    tape, plain = on_tape(value, evaluation.display), decimals(value, evaluation.display)
    return tape if tape == plain else f"{tape}\n{plain}"


def _mark_words(evaluation: Evaluation, tube: TubeShape) -> str:
    allowance = tube.cut_length.step.inputs[-1][1] if tube.cut_length.step else None
    words = "A mark is where the bend starts, from the finished flare at end A."
    if allowance is not None and allowance.known:
        words += f" While A is not flared yet, add {decimals(allowance, evaluation.display)}."
    return words


def _checksum(evaluation: Evaluation, tube: TubeShape) -> Group:
    """Straights and arcs in order, so that the length can be added up by hand."""
    show = fine(evaluation.display).value
    straights = " + ".join(bare(straight, fine(evaluation.display)) for straight in tube.straights)
    arcs = " + ".join(bare(bend.arc, fine(evaluation.display)) for bend in tube.bends) or "none"
    rows = [("straights", straights), ("and arcs", f"{arcs}, together {show(tube.developed_length)}")]
    if tube.cut_length.step and tube.cut_length.known:
        flare = show(tube.cut_length.step.inputs[-1][1])
        rows.append(("two flares", f"2 x {flare}: cut to {show(tube.cut_length)}"))
    return Group((Heading("Length, to check"), Facts(tuple(rows))))


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
