"""What `--json` prints: plain data in SI units (angles in degrees), schema 1."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

from firmpedal.checks.closer import NOT_IN_THE_FILE
from firmpedal.decide.tube_plan import tube_plans
from firmpedal.model.stock import Hose
from firmpedal.report.parts import parts_list, whole_length
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.finding import Finding, Problem
    from firmpedal.lay.line import LaidLine
    from firmpedal.pipeline import Evaluation
    from firmpedal.project import Reading
    from firmpedal.quantity import Missing, Value
    from firmpedal.report.parts import Item

SCHEMA = 1
SI_UNITS = {
    Dimension.LENGTH: "m",
    Dimension.ANGLE: "degree",
    Dimension.PRESSURE: "Pa",
    Dimension.FORCE: "N",
    Dimension.VOLUME: "m3",
    Dimension.TEMPERATURE: "K",
    Dimension.MASS: "kg",
    Dimension.TORQUE: "N m",
    Dimension.ENERGY: "J",
    Dimension.SPEED: "m/s",
    Dimension.TIME: "s",
    Dimension.ACCELERATION: "m/s2",
    Dimension.NUMBER: "1",
    Dimension.FLOW: "m3/s",
    Dimension.TIME: "s",
}


def head(reading: Reading) -> dict[str, Any]:
    """What every answer begins with: the form of the data, the file and the option."""
    return {"schema": SCHEMA, "file": reading.file, "option": reading.option}


def check_data(evaluation: Evaluation) -> dict[str, Any]:
    """The verdict, every finding with its place, and what somebody has to measure."""
    return {
        **head(evaluation.reading),
        "verdict": evaluation.verdict.value,
        "findings": [_finding(evaluation, finding) for finding in evaluation.findings],
        "unknown": _unknown(evaluation),
    }


def errors_data(reading: Reading) -> dict[str, Any]:
    """What is wrong with a file that cannot be used."""
    return {**head(reading), "errors": [_problem(problem) for problem in reading.problems]}


def _problem(problem: Problem) -> dict[str, Any]:
    return {
        "file": problem.span.file,
        "line": problem.span.line,
        "column": problem.span.column,
        "message": problem.message,
        "text": problem.text,
        "try": [problem.suggestion] if problem.suggestion else [],
    }


def _place(evaluation: Evaluation, place: str) -> dict[str, Any]:
    span = evaluation.span_of(place)
    return {"object": place, "file": span.file, "line": span.line, "column": span.column}


def _finding(evaluation: Evaluation, finding: Finding) -> dict[str, Any]:
    return {
        "rule": finding.rule,
        "level": finding.level.value,
        "place": _place(evaluation, finding.place),
        "message": finding.message,
        "measured": _figure(finding.measured, finding.relation),
        "allowed": _figure(finding.allowed, finding.relation),
        "source": [{"key": source.key, "mark": source.mark.word} for source in finding.sources],
        "try": list(finding.tries),
        "accepted": finding.accepted,
    }


def _figure(value: Value | None, relation: str) -> dict[str, Any] | None:
    number = si(value)
    if value is None or number is None:
        return None
    return {
        "value": number,
        "unit": SI_UNITS.get(value.dimension, value.dimension.value),
        "relation": relation,
    }


def si(value: Value | None) -> float | None:
    """One number in SI, the middle of a range; angles in degrees; None when unknown."""
    if value is None or not value.known:
        return None
    return math.degrees(value.middle) if value.dimension is Dimension.ANGLE else value.middle


def span(value: Value) -> list[float] | None:
    """The least and the most of a value in SI; None when unknown."""
    return None if value.span is None else list(value.span)


def _unknown(evaluation: Evaluation) -> list[dict[str, Any]]:
    """Each thing to measure once, with the rules that wait for it."""
    waiting: dict[tuple[str, str], list[str]] = {}
    for unclear in evaluation.not_shown:
        for missing in unclear.missing:
            place = unclear.place if missing.place in NOT_IN_THE_FILE else missing.place
            rules = waiting.setdefault((place, missing.what), [])
            if unclear.rule not in rules:
                rules.append(unclear.rule)
    return [
        {"place": _place(evaluation, place), "what": what, "needed_by": rules}
        for (place, what), rules in waiting.items()
    ]


def span_data(value: Value | None) -> list[float] | None:
    """The least and the greatest a figure can be, in SI; None when unknown."""
    return None if value is None or value.span is None else [value.low, value.high]


def missing_data(evaluation: Evaluation, missing: tuple[Missing, ...]) -> list[dict[str, Any]]:
    """What somebody has to measure, with its place."""
    return [{"place": _place(evaluation, each.place), "what": each.what} for each in missing]


def parts_data(evaluation: Evaluation) -> dict[str, Any]:
    """The parts list, each tube or hose row with its lengths."""
    return {**head(evaluation.reading), "items": [_item(item) for item in parts_list(evaluation)]}


def _item(item: Item) -> dict[str, Any]:
    whole = whole_length(item)
    return {
        "designation": item.designation,
        "category": item.category.value,
        "quantity": item.quantity,
        "size": item.size,
        "material": item.material,
        "description": item.description,
        "where": list(item.where),
        "spare": item.spare,
        "also_known_as": list(item.also_known_as),
        "lengths": [si(length) for length in item.lengths],
        "total_length": si(whole),
    }


def lines_data(evaluation: Evaluation) -> dict[str, Any]:
    """Every line walked from its first end to its last."""
    declared = {line.name: line for line in evaluation.aircraft.lines}
    return {
        **head(evaluation.reading),
        "lines": [
            _line(line, declared[line.name].start, declared[line.name].finish) for line in evaluation.laid
        ],
    }


def _line(line: LaidLine, start: str, finish: str) -> dict[str, Any]:
    tube = line.tube
    stock = line.stock
    bends = [
        {"angle": si(bend.angle), "rotation": si(bend.rotation), "radius": si(bend.radius)}
        for bend in (tube.bends if tube else ())
    ]
    return {
        "name": line.name,
        "kind": line.kind.value,
        "from": start,
        "to": finish,
        "material": stock.specification if isinstance(stock, Hose) else stock.material.name,
        "points": [[si(value) for value in point.coordinates] for point in line.points],
        "path_length": si(line.path_length),
        "developed_length": si(line.developed_length),
        "cut_length": si(line.cut_length),
        "order_length": si(line.order_length),
        "straights": [si(straight) for straight in tube.straights] if tube else None,
        "bends": bends if tube else None,
    }


def cutplan_data(evaluation: Evaluation) -> dict[str, Any]:
    """For each kind of tube the sticks with their pieces, and what finds no stick or has no length yet."""
    return {
        **head(evaluation.reading),
        "tubes": [
            {
                "tube": plan.phrase,
                "to_buy": plan.to_buy,
                "cuts": [
                    {
                        "stick": cut.stick.name,
                        "length": cut.stick.length,
                        "in_hand": cut.stick.in_hand,
                        "pieces": [{"line": each.name, "length": each.length} for each in cut.pieces],
                        "left_over": cut.left_over,
                    }
                    for cut in plan.plan.cuts
                ],
                "without_stick": [piece.name for piece in plan.plan.without_stick],
                "unknown": list(plan.unknown),
            }
            for plan in tube_plans(evaluation)
        ],
    }
