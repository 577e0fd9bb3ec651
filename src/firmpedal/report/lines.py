"""Each line in short, for the screen: how it is cut and bent, or what hose to order."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.aircraft import find
from firmpedal.report.chain import chain_words
from firmpedal.report.line_findings import warnings_first
from firmpedal.report.remarks import until_measured, wanted_for
from firmpedal.report.sheet import Paragraph, Sheet, Table

if TYPE_CHECKING:
    from firmpedal.lay.line import LaidLine
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value


def line_sheets(evaluation: Evaluation) -> tuple[Sheet, ...]:
    """One short sheet for each line."""
    return tuple(_sheet(evaluation, line) for line in evaluation.laid)


def _sheet(evaluation: Evaluation, line: LaidLine) -> Sheet:
    declared = find(evaluation.aircraft.lines, line.name)
    ends = f"from {declared.start} to {declared.finish}" if declared else ""
    blocks = [*warnings_first(evaluation, line), Paragraph(_lengths(evaluation, line))]
    if line.tube and line.tube.bends:
        blocks.append(_bend_table(evaluation, line))
    if line.tube and line.tube.impossible:
        blocks.append(Paragraph(f"It cannot be bent: {line.tube.impossible.words}."))
    blocks += [Paragraph(text) for text in _ends(evaluation, line)]
    if line.supports.stations:
        places = ", ".join(evaluation.display.value(station) for station in line.supports.stations)
        word = "Clamps proposed at" if line.supports.proposed else "Clamps at"
        blocks.append(Paragraph(f"{word} {places} from the first end."))
    return Sheet(f"{line.name}: {line.stock.phrase}", tuple(blocks), subtitle=ends)


def _lengths(evaluation: Evaluation, line: LaidLine) -> str:
    show = evaluation.display.value
    if line.tube and line.tube.impossible:
        return "Do not cut it yet."
    if not line.order_length.known:
        does = "order it" if line.hose else "cut it"
        count = len(wanted_for(line.order_length))
        return f"The length to {does} is {until_measured(count)}; its card lists them."
    if line.hose:
        ready = "a ready-made length" if line.hose.ready_made else "made to length"
        return (
            f"Order {show(line.order_length)}, {ready}. Declared path {show(line.path_length)}, "
            f"at its longest {show(line.hose.longest_path)}; with {_percent(line.hose.slack)} slack at least "
            f"{show(line.hose.least_length)}. "
            f"{_bent(evaluation, line)}"
        )
    if line.tube:
        developed = show(line.tube.developed_length)
        return f"Cut {show(line.tube.cut_length)}: developed length {developed} and a flare at each end."
    return f"Cut {show(line.path_length)}, the length of its path."


def _bent(evaluation: Evaluation, line: LaidLine) -> str:
    """How tight a hose is bent, as somebody measured it."""
    declared = find(evaluation.aircraft.lines, line.name)
    if declared is None or not declared.tightest_bend.known:
        return "Bend radius not checked."
    return f"Tightest bend {evaluation.display.value(declared.tightest_bend)}, measured."


def _bend_table(evaluation: Evaluation, line: LaidLine) -> Table:
    """The bends in order from the first end; marks are where each bend starts on the straight tube."""
    assert line.tube is not None and line.tube.centreline is not None  # noqa: S101, PT018  it has bends
    show, rows, stations = evaluation.display, [], line.tube.centreline.tangent_stations
    for number, bend in enumerate(line.tube.bends):
        rows.append(
            (
                str(number + 1),
                show.value(line.tube.straights[number]),
                show.number(stations[2 * number + 1], bend.radius.dimension),
                show.value(bend.angle),
                show.value(bend.rotation) if number else "-",
                show.value(bend.radius),
            )
        )
    rows.append(("end", show.value(line.tube.straights[-1]), "", "", "", ""))
    columns = ("bend", "straight before", "starts at", "angle", "rotation", "radius")
    return Table(columns, tuple(rows), frozenset({1, 2, 3, 4, 5}))


def _ends(evaluation: Evaluation, line: LaidLine) -> list[str]:
    found = []
    for end, word in (("from", "First end"), ("to", "Last end")):
        joint = evaluation.assembly.joint_of(line.name, end)
        if joint is not None:
            found.append(f"{word}, {joint.name}: {chain_words(joint, line.name, end)}.")
    return found


def _percent(value: Value) -> str:
    return f"{100 * value.middle:g} percent" if value.known else "unknown"
