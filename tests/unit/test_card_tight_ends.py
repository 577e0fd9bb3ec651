"""What a card says of a straight that is no more than just enough for nut, sleeve and tool."""

from evaluated import EXAMPLE

from firmpedal.pipeline import evaluate_text
from firmpedal.report.tube_work import order_of_work

TEXT = EXAMPLE.read_text(encoding="utf-8")


def steps(end_straight):
    text = TEXT.replace("  bend radius: 3/4\n", f"  bend radius: 3/4\n  end straight: {end_straight}\n", 1)
    evaluation = evaluate_text(text, "brindlewick", "rigid")
    line = next(line for line in evaluation.laid if line.name == "left_leg")
    return order_of_work(evaluation, line, line.tube)


def said(found, words):
    return [step for step in found if words in step]


def test_enough_says_nothing():
    found = steps("1")  # the straights are 1.88 and 2.01 in
    assert not said(found, "NOTE") + said(found, "CAUTION")
    assert said(found, "Flare last, in the same way")


def test_only_just_enough_is_a_note_and_flares_last_all_the_same():
    found = steps("1.87")
    assert [step.split(" NOTE: ")[1] for step in said(found, " NOTE: ")] == [
        "only just long enough. Flare before bending, or try the tool's grip on a test piece."
    ]
    assert not said(found, "CAUTION")
    assert said(found, "Flare last, in the same way")


def test_too_short_is_never_called_enough_and_is_flared_before_bending():
    found = steps("2-1/2")
    assert not said(found, "enough")
    assert len(said(found, "CAUTION")) == 2
    assert not said(found, "Flare last")
    before, bending = (
        next(n for n, step in enumerate(found) if words in step) for words in ("end B is", "Bend in")
    )
    assert before < bending
    assert said(found, "End B was flared before bending")
