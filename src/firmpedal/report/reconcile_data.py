"""What `reconcile --json` prints."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from firmpedal.report.contract import SCHEMA, si
from firmpedal.report.reconcile import headline

if TYPE_CHECKING:
    from firmpedal.decide.fault import Discrepancy
    from firmpedal.decide.listing import ListError
    from firmpedal.decide.reconcile import Reconciliation
    from firmpedal.pipeline import Evaluation


def reconcile_data(evaluation: Evaluation, found: Reconciliation, name: str) -> dict[str, Any]:
    """Everything that does not agree, the questions, and every thing with its counts."""
    return {
        "schema": SCHEMA,
        "file": evaluation.reading.file,
        "option": evaluation.reading.option,
        "list": name,
        "agrees": found.agrees,
        "covers": found.covers,
        "answer": headline(found),
        "open_ends": len(evaluation.violations),
        "faults": [_fault(fault) for fault in found.faults],
        "asks": [
            {"file": name, "line": each.line, "column": each.column, "message": each.message,
             "try": [each.suggestion] if each.suggestion else []}
            for each in found.listing.questions
        ],
        "notes": list(found.listing.notes),
        "items": [
            {
                "designation": row.name,
                "needed": row.needed,
                "listed": row.listed,
                "agrees": row.agrees,
                "needed_length": si(row.needed_length),
                "listed_length": si(row.listed_length),
            }
            for row in found.rows
        ],
    }  # fmt: skip


def _fault(fault: Discrepancy) -> dict[str, Any]:
    return {
        "fault": fault.fault.value,
        "quantity": fault.quantity,
        "designation": fault.name,
        "instead_of": fault.needed or None,
        "where": list(fault.where),
        "detail": fault.detail or None,
        "listed_length": si(fault.found),
        "needed_length": si(fault.asked),
    }


def list_errors(error: ListError, name: str) -> dict[str, Any]:
    """Why a list cannot be used."""
    problem = {
        "file": name,
        "line": error.line,
        "column": error.column,
        "message": error.message,
        "text": "",
        "try": [error.suggestion],
    }
    return {"schema": SCHEMA, "list": name, "errors": [problem]}
