"""The cover: the answer first, and whose data decide before it."""

from __future__ import annotations

from dataclasses import replace

import pytest
from evaluated import EXAMPLE, awkward, blocks, example, of_kind, words

from firmpedal.finding import Verdict
from firmpedal.pipeline import evaluate_text
from firmpedal.report.cover import cover_sheet, datum_words, verdict_line, why_line
from firmpedal.report.packet import footer_of
from firmpedal.report.sheet import Figures, Paragraph, Tone


def verdict_place(sheet) -> int:
    return next(
        n
        for n, block in enumerate(blocks(sheet))
        if isinstance(block, Paragraph) and block.tone is Tone.VERDICT
    )


@pytest.mark.parametrize(
    ("answer", "said"), [("yes", "has a type certificate"), ("unknown", "does not say whether")]
)
def test_before_the_first_result_stands_whose_data_decide(answer, said):
    text = EXAMPLE.read_text(encoding="utf-8").replace("type certificate: no", f"type certificate: {answer}")
    found = blocks(cover_sheet(evaluate_text(text)))
    assert said in words(found[0])
    assert "approved data decide" in words(found[0])
    assert found[1].tone is Tone.VERDICT


def test_an_aircraft_without_type_certificate_gets_its_answer_first():
    assert verdict_place(cover_sheet(example())) == 0


def test_each_verdict_says_itself_its_count_and_why():
    assert verdict_line(example()) == "NOT SOUND: 6 warnings"
    assert why_line(example()).startswith("The first warning: left_line is plastic")
    assert verdict_line(example("rigid")) == "NOT SHOWN: 10 things to measure"
    sound = replace(example("rigid"), findings=(), not_shown=())
    assert sound.verdict is Verdict.SOUND
    assert verdict_line(sound) == "SOUND"
    assert "nothing that was asked is unknown" in why_line(sound)


def test_one_warning_is_not_plural():
    assert verdict_line(awkward()) == "NOT SOUND: 1 warning"


def test_pressures_at_three_feet_and_counts():
    # 75 lbf at 2:1 on a 5/8 in bore: 489 psi is the published sum, the others are in proportion
    shown = [item for figures in of_kind(cover_sheet(example("rigid")), Figures) for item in figures.items]
    assert [item.text for item in shown[:3]] == ["489 psi", "978 psi", "1,304 psi"]
    # counted by hand: 4 pipe threads at the ports, 12 flared nuts and swivels
    counted = [(item.label, item.text) for item in shown[3:]]
    assert counted == [("lines", "6"), ("joints", "8"), ("leak paths", "16")]


def test_the_datum_in_words():
    said = datum_words(example().aircraft.datum)
    assert said == "aft from forward bulkhead face; right from aircraft centreline; up from cabin floor"
    assert datum_words(awkward().aircraft.datum) == "not described in the file"


@pytest.mark.parametrize(
    "caution",
    ["instructions", "local authority", "licensed or entitled", "approves nothing", "under pressure", "Chock",
     "burns", "eyes and paint"],
)  # fmt: skip
def test_the_usual_cautions_are_there(caution):
    assert caution in words(cover_sheet(example()))


def test_the_footer_names_aircraft_option_revision_and_date():
    assert footer_of(example("rigid")).words == "Brindlewick, option rigid, revision A, 2026-11-25"
    assert footer_of(example()).words == "Brindlewick, as written, revision A, 2026-11-25"
