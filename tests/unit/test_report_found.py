"""Findings for a page: the answer apart from the reasons, the sums as `explain` prints them."""

from __future__ import annotations

from pathlib import Path

from evaluated import EXAMPLE

from firmpedal.finding import Level
from firmpedal.pipeline import evaluate_text
from firmpedal.report.explaining import limit_words, sums_behind
from firmpedal.report.found import found
from firmpedal.report.sheet import Facts, Paragraph
from texts import example

TEXT = example("brindlewick")
MORE = """
accepted:
  - {rule: stroke-short, at: left_cylinder, reason: new ones are ordered}
  - {rule: stroke-short, at: left_pedal, reason: it was mended}
"""


def of(text, option=None):
    evaluation = evaluate_text(text, option=option)
    return evaluation, found(evaluation)


def rows(blocks):
    return [row for block in blocks if isinstance(block, Facts) for row in block.rows]


def test_every_finding_is_told_once_the_worst_first():
    evaluation, all_found = of(TEXT)
    levels = [list(Level).index(one.level) for one in all_found]
    assert levels == sorted(levels)
    said = [one.answer[0].text for one in all_found if isinstance(one.answer[0], Paragraph)]
    said += [words for one in all_found for term, words in rows(one.answer) if term == "also"]
    assert sorted(said) == sorted(each.message for each in evaluation.findings)


def test_the_answer_says_what_to_try_and_the_fold_says_why():
    one = next(each for each in of(TEXT)[1] if each.rule == "pressure-above-rating")
    answer = dict(rows(one.answer))
    assert answer["found"] == "978 psi; should be at most 513 psi"
    assert answer["try"] == "tube or hose with a higher rating"
    assert [term for term, _ in rows(one.reasons)] == ["why", "rule"]
    assert "Sources: " in rows(one.reasons)[0][1]


def test_the_sums_are_those_that_explain_prints(capsys):
    from firmpedal.cli import explain  # noqa: PLC0415  the terminal is slow to load

    evaluation, all_found = of(TEXT)
    one = next(each for each in all_found if each.rule == "pressure-above-rating")
    explain.run(Path(EXAMPLE), "lines.left_line.pressure.hard", None)
    printed = " ".join(capsys.readouterr().out.split())
    first = next(each for each in evaluation.findings if each.rule == one.rule)
    behind = list(sums_behind(first.measured, evaluation.display))
    assert behind == list(one.sums[: len(behind)])
    assert [depth for depth, _ in behind] == [0, 1]
    for _, each in behind:
        for line in (each.result, each.equation, each.figures, *each.where, each.source):
            assert " ".join(line.split()) in printed
    assert limit_words(first, evaluation.display) in printed


def test_no_sum_says_the_same_twice():
    for _, each in (pair for one in of(TEXT)[1] for pair in one.sums):
        assert not each.equation or each.equation != each.figures


def test_an_accepted_finding_has_its_entry_and_one_that_is_gone_too():
    all_found = of(TEXT + MORE)[1]
    own = [one for one in all_found if one.rule == "stroke-short"]
    assert [(one.places, [entry.at for entry in one.entries]) for one in own] == [
        (("components.left_cylinder",), ["left_cylinder"]),
        (("components.right_cylinder",), []),
    ]
    assert "A warning stays a warning." in dict(rows(own[0].answer))["accepted"]
    gone = next(one for one in all_found if one.gone)
    assert [entry.at for entry in gone.entries] == ["left_pedal"]


def test_what_would_be_accepted_along_is_named():
    all_found = of(TEXT, "rigid")[1]
    first, last = (one for one in all_found if one.rule == "end-straight-too-short")
    assert all("the last straight" in words for words in first.along)
    assert len(first.along) == 2
    assert all("the first straight" in words for words in last.along)
    assert next(one for one in of(TEXT)[1] if one.rule == "stroke-short").along == ()
