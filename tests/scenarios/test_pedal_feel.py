"""The soft pedals of the examples by their sheets: why they are soft, and that metal makes them firm."""

from __future__ import annotations

import re

import pytest

from firmpedal.pipeline import evaluate_text, usable_options
from firmpedal.report.feel import feel_sheet
from firmpedal.report.feel_options import feel_options_sheet
from firmpedal.report.feel_pedals import COLD, HOT, felt_pedals
from firmpedal.report.feel_shares import items
from firmpedal.report.sheet import Drawing, Paragraph, Table, Tone
from firmpedal.units import to_unit
from texts import example

NORMAL, HARD = 0, 1
AREA = 0.306796  # sq in, of a bore of 5/8 in


def evaluated(name: str, option: str | None = None):
    return evaluate_text(example(name), f"{name}.yaml", option)


def only(name: str, option: str | None = None):
    """Both pedals of an aircraft come out alike."""
    (felt,) = felt_pedals(evaluated(name, option))
    assert len(felt.names) == 2
    return felt


def stroke(felt, case, number: int) -> tuple[float, float]:
    found = felt.feel.stroke(case, number)
    return to_unit(found.low, "in"), to_unit(found.high, "in")


def near(span: tuple[float, float], answer: float) -> bool:
    return span[0] - 0.005 <= answer <= span[1] + 0.005


def lead(evaluation) -> str:
    return next(
        block.text for block in feel_sheet(evaluation).blocks if getattr(block, "tone", "") is Tone.LEAD
    )


class TestBrindlewick:
    def test_the_pad_gap(self):
        felt = only("brindlewick")
        assert to_unit(felt.budget.gap.middle, "in") == pytest.approx(0.115, abs=0.0005)

    @pytest.mark.parametrize(
        ("hot", "force", "answer"), [(False, "75 lbf", 0.17), (True, "75 lbf", 0.43), (True, "150 lbf", 0.87)]
    )
    def test_what_57_inches_of_nylon_take(self, hot, force, answer):
        evaluation = evaluated("brindlewick")
        wanted = next(each for each in evaluation.results.forces if evaluation.display.value(each) == force)
        (felt,) = felt_pedals(evaluation, wanted)
        (wall,) = [value for name, value in items(felt, hot=hot) if "swelling" in name]
        ends = [to_unit(end, "cu in") / AREA for end in wall.span]
        assert near((ends[0], ends[1]), answer)

    def test_hot_the_stroke_is_used_up_before_150_lb(self):
        felt = only("brindlewick")
        assert stroke(felt, HOT, HARD)[0] > 0.80 > stroke(felt, COLD, HARD)[1]
        low, high = (to_unit(each, "lbf") for each in felt.feel.force_of(felt.feel.bottoms, HOT))
        assert 75 < low < high < 150

    def test_the_sheet_says_so_first(self):
        words = lead(evaluated("brindlewick"))
        assert words.startswith("The cylinder is at its end before the hard foot (150 lbf) is there")

    def test_metal_is_firm(self):
        written, rigid = only("brindlewick"), only("brindlewick", "rigid")
        assert rigid.feel.travel(COLD, HARD).high < 0.5 * written.feel.travel(HOT, HARD).low
        said = lead(evaluated("brindlewick", "rigid"))
        assert re.match(r"At the hard foot \(150 lbf\) the pad goes about 0\.\d+ to 0\.\d+ in, of the", said)

    def test_options_stand_beside_each_other(self):
        sheet = feel_options_sheet(usable_options(evaluated("brindlewick").reading))
        (table,) = [block for block in sheet.blocks if isinstance(block, Table)]
        assert [row[0].partition(":")[0] for row in table.rows] == ["as written", "rigid", "all hose"]
        assert table.rows[0][3] == "to its end"
        assert any(isinstance(block, Drawing) for block in sheet.blocks)


class TestFennimoss:
    def test_hot_it_uses_0_74_of_0_70_at_the_normal_foot(self):
        felt = only("fennimoss")
        assert near(stroke(felt, HOT, NORMAL), 0.74)
        assert stroke(felt, HOT, NORMAL)[0] > 0.70

    def test_metal_is_firm(self):
        written, rigid = only("fennimoss"), only("fennimoss", "rigid")
        assert HOT not in rigid.feel.cases  # metal and hose do not feel it
        assert rigid.feel.travel(COLD, NORMAL).high < written.feel.travel(HOT, NORMAL).low

    def test_cold_it_depends_on_the_grade_of_the_nylon(self):
        """The stiffest nylon is as firm as the softest hose that its standard lets pass; 480 MPa is not."""
        rigid, unknown = only("fennimoss", "rigid"), only("fennimoss")
        assert rigid.feel.travel(COLD, NORMAL).high > unknown.feel.travel(COLD, NORMAL).low
        nylon = "    made of: plastic nylon 3/16 x .025"
        told = example("fennimoss").replace(nylon, f"    stiffness: {{cool: 480 MPa}}\n{nylon}")
        (felt,) = felt_pedals(evaluate_text(told))
        assert rigid.feel.travel(COLD, NORMAL).high < felt.feel.travel(COLD, NORMAL).low


class TestOatmere:
    def test_the_seat_further_away_and_the_side_with_the_longer_hose_are_softer(self):
        """The copilot's pedals fill the line between the seats too; the left hose to the valve is longer."""
        pilot, copilot = felt_pedals(evaluated("oatmere"))
        assert pilot.names == ("pilot_left_pedal", "pilot_right_pedal")
        assert copilot.names == ("copilot_left_pedal", "copilot_right_pedal")
        assert copilot.feel.travel(COLD, HARD).high > pilot.feel.travel(COLD, HARD).high
        assert all(0.01 < each.differ < 0.1 for each in (pilot, copilot))


def test_what_is_not_counted_is_said():
    sheet = feel_sheet(evaluated("brindlewick"))
    words = " ".join(block.text for block in sheet.blocks if isinstance(block, Paragraph))
    assert "Not counted, because the file does not give it: free stroke of left_cylinder" in words
    assert "No" not in sheet.title


def test_a_file_without_brakes_has_no_such_sheet():
    text = "firmpedal: 1\naircraft: {name: Bare, gear: nosewheel, brakes: toe, type certificate: no}\n"
    assert feel_sheet(evaluate_text(text)) is None
