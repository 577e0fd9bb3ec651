"""What findings and questions say to a builder: plain words, no code, no commands, no double `or`."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from firmpedal.pipeline import evaluate_text
from firmpedal.report.to_measure import to_measure

ROOT = Path(__file__).parents[1]
FILES = sorted((ROOT / "rules").glob("*/*.yaml")) + sorted((ROOT.parent / "examples").glob("*.yaml"))
CODE = re.compile(r"`|: (?:yes|no)\b|\bfirmpedal [a-z]|--")


def said(path):
    """Everything that a file makes the rules say, in the builder's own words where they are."""
    evaluation = evaluate_text(path.read_text(encoding="utf-8"), path.name)
    for finding in evaluation.findings:
        yield finding.message
        yield from finding.tries
    for one in to_measure(evaluation):
        yield from (one.what, one.how)


@pytest.mark.parametrize("path", FILES, ids=lambda path: f"{path.parent.name}/{path.name}")
def test_findings_and_questions_hold_no_code(path):
    assert [words for words in said(path) if CODE.search(words)] == []
    assert [words for words in said(path) if words.startswith(("or ", "and "))] == []
