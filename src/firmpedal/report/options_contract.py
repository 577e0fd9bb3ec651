"""What `compare --json` and `retrofit --json` print: plain data in SI units, schema 1."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from firmpedal.decide.compare import compare
from firmpedal.decide.retrofit import retrofit
from firmpedal.report.contract import SCHEMA, SI_UNITS, si
from firmpedal.report.retrofit_words import step_words

if TYPE_CHECKING:
    from firmpedal.decide.compare import Comparison, Row
    from firmpedal.decide.measures import Cell
    from firmpedal.decide.pieces import Piece
    from firmpedal.decide.retrofit import Retrofit
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value

Data = dict[str, Any]


def compare_data(evaluations: tuple[Evaluation, ...]) -> Data:
    """Options side by side; an option is its name, `null` for the file as written."""
    found = compare(evaluations)
    advice = found.advice
    return {
        "schema": SCHEMA,
        "file": evaluations[0].reading.file,
        "options": list(found.options),
        "rows": [_row(found, row) for row in found.rows],
        "separators": [
            {
                "rule": one.rule,
                "level": one.level.value if one.level else None,
                "counts": list(one.counts),
                "message": one.message,
            }
            for one in found.separators
        ],
        "unknown_in_all": list(found.unknown_in_all),
        "unknown_apart": [list(own) for own in found.unknown_apart],
        "advice": {
            "out": [
                {"option": found.options[n], "message": finding.message, "warnings": count}
                for n, finding, count in advice.out
            ],
            "standing": [found.options[n] for n in advice.standing],
            "wins": [list(wins) for wins in advice.wins],
            "behind": [[one.rule for one in some] for some in advice.behind],
            "same_job": advice.same_job,
            "decided": advice.best is not None,
            "best": None if advice.best is None else found.options[advice.best],
            "measure": [missing.what for missing in advice.measure],
        },
    }


def _row(found: Comparison, row: Row) -> Data:
    changes = list(found.mass_changes) if row.measure == "mass" else [None] * len(row.cells)
    return {
        "measure": row.measure,
        "cells": [_cell(cell, change) for cell, change in zip(row.cells, changes, strict=True)],
        "outcome": row.result.outcome.value,
        "winners": [found.options[n] for n in row.result.winners],
        "measure_first": [missing.what for missing in row.result.measure],
    }


def _cell(cell: Cell, change: Value | None) -> Data:
    return {"figure": figure(cell.value), "about": list(cell.about), "change": figure(change)}


def figure(value: Value | None) -> Data | None:
    """A range in SI; `least` and `most` are `null` while it is unknown."""
    if value is None:
        return None
    return {
        "least": value.low if value.known else None,
        "most": value.high if value.known else None,
        "unit": SI_UNITS.get(value.dimension, value.dimension.value),
        "mark": value.mark.word,
    }


def retrofit_data(before: Evaluation, after: Evaluation) -> Data:
    """The way from one evaluation to another."""
    plan = retrofit(before, after)
    return {
        "schema": SCHEMA,
        "file": after.reading.file,
        "from": plan.before,
        "to": plan.after,
        "keep": [_piece(pair.after) for pair in plan.keep],
        "reuse": [
            {"before": _piece(pair.before), "after": _piece(pair.after), "look": pair.look}
            for pair in plan.reuse
        ],
        "remove": [{**_piece(item.piece), "why_not": item.why_not} for item in plan.remove],
        "buy": [_piece(piece) for piece in plan.buy],
        **_looks(plan),
        "steps": [
            {
                "phase": step.phase.value,
                "action": step.action.value,
                "subject": step.subject,
                "parts": list(step.parts),
                "about": list(step.about),
                "beforehand": step.beforehand,
                "words": step_words(step, before, after),
            }
            for step in plan.steps
        ],
    }


def _looks(plan: Retrofit) -> Data:
    return {
        "gauge": [
            {
                "port": item.port,
                "place": item.place,
                "thread": item.thread,
                "old": item.old.designation,
                "new": item.new.designation,
                "turns_by_hand": si(item.by_hand),
            }
            for item in plan.gauge
        ],
        "mixed_metals": [
            {
                "kept": _piece(item.kept),
                "metal": item.metal,
                "partner": item.partner,
                "partner_metal": item.partner_metal,
            }
            for item in plan.metals
        ],
        "turned_elbows": [{"kept": _piece(item.kept), "lines": list(item.lines)} for item in plan.turn],
    }


def _piece(piece: Piece) -> Data:
    return {
        "designation": piece.designation,
        "category": piece.category.value,
        "size": piece.size,
        "material": piece.material,
        "place": piece.place,
        "owner": piece.owner,
        "line": piece.line or None,
        "length": si(piece.length),
    }
