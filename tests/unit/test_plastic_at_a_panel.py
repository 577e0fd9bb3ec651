"""Plastic led to a fitting in a panel: no catalogue part holds it there, and the finding says what does."""

from evaluated import EXAMPLE

from firmpedal.pipeline import evaluate_text

TEXT = EXAMPLE.read_text(encoding="utf-8")
LEG = "        made of: tube 5052-O 1/4 x .035\n        via:\n          - [7.0, -9.0, -3.2]"


def between(text):
    evaluation = evaluate_text(text, "brindlewick", "rigid")
    return [finding for finding in evaluation.findings if finding.rule == "part-missing-between"]


def test_plastic_at_a_bulkhead_is_told_to_go_through_in_one_piece():
    assert not between(TEXT)
    assert LEG in TEXT
    found = between(TEXT.replace(LEG, LEG.replace("tube 5052-O 1/4 x .035", "plastic nylon 1/4 x .040"), 1))
    assert {finding.place.split(".")[1] for finding in found} >= {"left_floor", "left_axle"}
    assert all("with a grommet" in finding.tries[0] for finding in found)
    assert not any("choose parts that mate" in words for finding in found for words in finding.tries)
