"""The card of a hose: what to order, and how it must lie."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.aircraft import find
from firmpedal.model.stock import Hose
from firmpedal.quantity import any_of
from firmpedal.report.lengths import both, decimals, on_tape
from firmpedal.report.remarks import length_remark, wanted_for
from firmpedal.report.sheet import Bullets, Facts, Fields, Figure, Figures, Group, Heading, Paragraph, Tone

if TYPE_CHECKING:
    from firmpedal.lay.hose import HoseLengths
    from firmpedal.lay.line import LaidLine
    from firmpedal.model.display import Display
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value
    from firmpedal.report.sheet import Block

WORK = (
    "Seal faces clean and dry; thread and back of the nut wet with the system's own fluid, nothing else.",
    "Both swivel nuts on by hand, lay line straight, no twist. Then one wrench holds, the other turns.",
    "No bend at the sockets. Support it where it can swing.",
    "Move everything at once from stop to stop: nothing pulls, kinks, rubs, or comes near tyre or disc.",
)


def hose_blocks(
    evaluation: Evaluation, line: LaidLine, lengths: HoseLengths, drawing: list[Block]
) -> list[Block]:
    """Everything on a hose's card that other lines do not have."""
    show = evaluation.display
    stock = line.stock
    if not isinstance(stock, Hose):
        return drawing
    blocks: list[Block] = []
    if not lengths.order_length.known:
        words = "This hose cannot be ordered yet. For its length, measure first:"
        blocks += [Paragraph(words, Tone.LEAD), Bullets(wanted_for(lengths.order_length), boxes=True)]
    figures = _figures(lengths, show)
    blocks += [
        *([Figures(figures)] if figures else []),
        *length_remark(lengths.order_length, "order"),
        *drawing,
        _bend_radius(evaluation, line, stock.least_bend_radius),
    ]
    blocks += [
        _order_facts(evaluation, line, stock),
        Group((Heading("Fitting it"), Bullets(WORK, boxes=True))),
    ]
    return blocks


def _figures(lengths: HoseLengths, show: Display) -> tuple[Figure, ...]:
    """What to order and how that comes about, as far as it is known."""
    found = []
    if lengths.order_length.known:
        made = "a ready-made length" if lengths.ready_made else "made to length"
        order = on_tape(lengths.order_length, show)
        found.append(Figure("order, seat to seat", order, _note(lengths.order_length, made, show)))
    if lengths.path_length.known:
        path = on_tape(lengths.path_length, show)
        found.append(Figure("declared path", path, _longest(lengths, show)))
    return tuple(found)


def _longest(lengths: HoseLengths, show: Display) -> str:
    """How long its way gets, and how much more a hose for it must have."""
    words = []
    if lengths.longest_path.known:
        words.append(f"at its longest {decimals(lengths.longest_path, show)}")
    if lengths.least_length.known:
        words.append(f"with {percent(lengths.slack)} slack at least {decimals(lengths.least_length, show)}")
    return "; ".join(words)


def _note(length: Value, made: str, show: Display) -> str:
    plain = decimals(length, show)
    return made if plain == on_tape(length, show) else f"{plain}, {made}"


def percent(value: Value) -> str:
    """A share in percent."""
    if value.span is None:
        return "unknown"
    low, high = (f"{100 * bound:.3g}" for bound in value.span)
    return f"{low} %" if low == high else f"{low} to {high} %"


def _bend_radius(evaluation: Evaluation, line: LaidLine, least: Value) -> Block:
    declared = find(evaluation.aircraft.lines, line.name)
    if declared is not None and declared.tightest_bend.known:
        found, limit = declared.tightest_bend, both(least, evaluation.display)
        words = f"Bend radius: {both(found, evaluation.display)} measured; at least {limit} inside the bend."
        return Paragraph(f"{words} When hose, ends or way are changed: move everything, measure again.")
    words = (
        f"Bend radius: NOT CHECKED, the shape of the hose is not worked out here. At least "
        f"{both(least, evaluation.display)} inside the bend: fit it, move everything, measure."
    )
    return Group((Paragraph(words, Tone.CAUTION), Fields(("tightest bend, fitted", "in which position"))))


def _order_facts(evaluation: Evaluation, line: LaidLine, stock: Hose) -> Group:
    show = evaluation.display.value
    operating, proof, burst = map(
        show, (stock.operating_pressure, stock.proof_pressure, stock.burst_pressure)
    )
    angles = _end_angles(evaluation, line)
    rows = (
        ("hose", f"{stock.specification}, size {stock.dash}, {stock.phrase.removeprefix('hose ')}"),
        ("ends", f"two female swivels, 37 degrees, size {stock.dash}; {angles}"),
        ("rated", f"operating {operating}, proof {proof}, burst {burst}"),
        ("moves", _travel_words(evaluation, line)),
    )
    facts: list[Block] = [Heading("For the order"), Facts(rows)]
    if _bent_ends(evaluation, line):
        facts.append(Fields(("angle between the two ends (clocking), seen along the hose",)))
    return Group(tuple(facts))


def _bent_ends(evaluation: Evaluation, line: LaidLine) -> bool:
    """Whether both ends of a hose are bent, so that they stand at an angle to each other."""
    declared = find(evaluation.aircraft.lines, line.name)
    ends = [declared.from_end, declared.to_end] if declared else []
    return bool(ends) and all(value.known and value.high > 0 for value in ends)


def _end_angles(evaluation: Evaluation, line: LaidLine) -> str:
    declared = find(evaluation.aircraft.lines, line.name)
    ends = [declared.from_end, declared.to_end] if declared else []
    if any(value.known for value in ends):
        words = [evaluation.display.value(value) if value.known else "not given" for value in ends]
        return f"end A {words[0]}, end B {words[1]}"
    return "angles not given in the file, so taken as straight"


def _travel_words(evaluation: Evaluation, line: LaidLine) -> str:
    moved = line.travel
    if not moved.play.known:
        return "unknown: " + "; ".join(missing.what for missing in moved.play.missing)
    show = evaluation.display.value
    apart = show(any_of("apart", (moved.nearest, moved.farthest), line.name, "they swing between"))
    if moved.play.high == 0:
        return f"its ends do not move against each other; they are {apart} apart"
    return f"its ends move {show(moved.play)} against each other; they are {apart} apart"
