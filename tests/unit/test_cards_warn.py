"""What could hurt somebody stands before the figures on a card, and before any list that is bought by."""

from __future__ import annotations

from pathlib import Path

import pytest
from evaluated import blocks, of_kind, words

from firmpedal.cli.main import app
from firmpedal.finding import Level
from firmpedal.pipeline import evaluate_text
from firmpedal.report.cards import card, card_sheets
from firmpedal.report.lines import line_sheets
from firmpedal.report.sheet import Bullets, Figures, Paragraph, Tone
from firmpedal.web.sheets import written
from texts import example

RULES = Path(__file__).parents[1] / "rules"
NO_ORDER = RULES / "bends-in-no-order" / "failing.yaml"
OTHER_ORDER = RULES / "bends-out-of-order" / "failing.yaml"
ACCEPTED = "\naccepted:\n  - {rule: bends-in-no-order, at: run, reason: bend 1 by hand over a round block}\n"


def run_card(text: str):
    evaluation = evaluate_text(text)
    return card(evaluation, evaluation.laid[0])


def text_of(path: Path) -> str:
    return path.read_text(encoding="utf-8")


def steps(sheet) -> list[str]:
    return [item for block in of_kind(sheet, Bullets) if block.boxes for item in block.items]


def test_warnings_stand_before_the_first_figure():
    sheet = run_card(text_of(NO_ORDER))
    before = sheet.blocks[: next(n for n, it in enumerate(sheet.blocks) if isinstance(it, Figures))]
    assert any(it.tone is Tone.WARNING and "in no order" in it.text for it in before)


def test_a_warning_is_not_said_once_more_at_the_end():
    sheet = run_card(text_of(NO_ORDER))
    assert words(sheet).count("can be made in no order: ") == 1


def test_there_is_no_order_of_work_where_the_bends_have_none():
    sheet = run_card(text_of(NO_ORDER))
    assert not any("Bend in order" in step or step.startswith("Cut") for step in steps(sheet))
    assert "Do not cut it before that is put right" in words(sheet)


def test_a_tube_with_another_order_keeps_its_steps():
    sheet = run_card(text_of(OTHER_ORDER))
    assert any("Bend in order" in step for step in steps(sheet))
    assert not any(getattr(it, "tone", None) is Tone.WARNING for it in blocks(sheet))


def test_what_the_builder_accepts_keeps_its_steps_and_says_so():
    sheet = run_card(text_of(NO_ORDER) + ACCEPTED)
    (step,) = [step for step in steps(sheet) if step.startswith("Mark the bends")]
    assert "accepted: bend 1 by hand over a round block" in step
    assert any(isinstance(it, Paragraph) and it.tone is Tone.WARNING for it in sheet.blocks)


def test_a_card_says_in_short_how_its_line_stands():
    assert run_card(text_of(NO_ORDER)).state.startswith("1 WARNING")
    assert "WARNING" not in run_card(text_of(NO_ORDER) + ACCEPTED).state  # it is settled
    evaluation = evaluate_text(example("brindlewick"), "brindlewick.yaml", "rigid")
    leg = next(line for line in evaluation.laid if line.name == "left_leg")
    own = [each for each in evaluation.not_shown if each.place.startswith("lines.left_leg")]
    things = {missing.what for each in own for missing in each.missing}
    cautions = [
        each for each in evaluation.findings
        if each.level is Level.CAUTION and each.place.startswith("lines.left_leg")
    ]  # fmt: skip
    assert len(cautions) > 1
    state = f"{len(cautions)} CAUTIONS, {len(things)} to measure"
    assert card(evaluation, leg).state == state
    assert state in written(card_sheets(evaluation), "brindlewick.yaml", "rigid")  # beside its folded title


def test_the_short_sheet_on_the_screen_begins_with_the_warning():
    (sheet,) = line_sheets(evaluate_text(text_of(NO_ORDER)))
    assert (sheet.blocks[0].tone, "in no order" in sheet.blocks[0].text) == (Tone.WARNING, True)


@pytest.mark.parametrize("command", ["lines", "parts", "cutplan"])
def test_lists_on_the_screen_begin_with_the_verdict(command, capsys):
    warnings = sum(it.level is Level.WARNING for it in evaluate_text(text_of(NO_ORDER)).findings)
    with pytest.raises(SystemExit) as left:
        app([command, str(NO_ORDER)])
    assert left.value.code in (0, None)
    first = next(line for line in capsys.readouterr().out.splitlines() if line.strip())
    assert first.startswith(f"NOT SOUND: {warnings} warning")


def test_a_paragraph_that_warns_says_so_without_colour(capsys):
    with pytest.raises(SystemExit):
        app(["lines", str(NO_ORDER)])
    assert "WARNING: the bends of run can be made in no order" in " ".join(capsys.readouterr().out.split())
