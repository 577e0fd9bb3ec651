"""What `identify --json` prints."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from firmpedal.report.contract import SCHEMA, si
from firmpedal.report.identify import answer, engagement_words
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.decide.engagement import Engagement
    from firmpedal.decide.identify import Fit, Identification, Judged, Question
    from firmpedal.decide.tell_apart import Difference, Trial
    from firmpedal.quantity import Value


def identify_data(found: Identification) -> dict[str, Any]:
    """Every candidate with every measurement held against it, the tests, the turns by hand."""
    return {
        "schema": SCHEMA,
        "settled": found.settled,
        "questions": [_question(question) for question in found.questions],
        "engagements": [_engagement(each) for each in found.engagements],
    }


def _question(question: Question) -> dict[str, Any]:
    return {
        "subject": question.subject,
        "answer": answer(question),
        "candidates": [_judged(each) for each in question.remaining],
        "ruled_out": [_judged(each) for each in question.ruled_out],
        "tests": [_pair(pair) for pair in question.differences],
        "measure_next": [quantity.value for quantity in question.measure_next],
    }


def _judged(judged: Judged) -> dict[str, Any]:
    thread = judged.candidate.thread
    return {
        "name": judged.candidate.name,
        "thread": thread.name if thread else None,
        "fits": [_fit(fit) for fit in judged.fits],
    }


def _fit(fit: Fit) -> dict[str, Any]:
    return {
        "quantity": fit.quantity.value,
        "answer": fit.answer.value,
        "measured": si(fit.measured),
        "expected": _span(fit.expected),
        "mark": fit.expected.mark.word if fit.expected else None,
        "off": si(fit.off),
        "allowed": si(fit.allowed),
    }


def _span(value: Value | None) -> list[float] | None:
    """Both ends of a range, angles in degrees."""
    if value is None or not value.known:
        return None
    if value.dimension is not Dimension.ANGLE:
        return [value.low, value.high]
    middle = si(value)
    return None if middle is None else [middle, middle]


def _pair(pair: Difference) -> dict[str, Any]:
    return {
        "first": pair.first.name,
        "second": pair.second.name,
        "test": _trial(pair.test) if pair.test else None,
        "others": [_trial(trial) for trial in pair.others],
    }


def _trial(trial: Trial) -> dict[str, Any]:
    return {
        "quantity": trial.quantity.value,
        "decides": trial.decides,
        "first": _span(trial.first),
        "second": _span(trial.second),
        "difference": si(trial.difference),
        "needed": si(trial.needed),
        "pitches": trial.over or None,
        "length": si(trial.length),
        "gap": si(trial.gap),
    }


def _engagement(each: Engagement) -> dict[str, Any]:
    return {
        "thread": each.thread.name,
        "turns": si(each.turns),
        "owed": si(each.owed),
        "says": each.depth.value,
        "good": each.good,
        "message": engagement_words(each),
    }
