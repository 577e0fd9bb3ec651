"""The first aircraft from its nylon to aluminium and hose: what the plan of the work has to say.

Brindlewick is invented. The traps were laid by hand before the program was written.
"""

from __future__ import annotations

from collections import Counter
from functools import cache

import pytest

from firmpedal.decide.compare import Comparison, compare
from firmpedal.decide.retrofit import Retrofit, retrofit
from firmpedal.decide.step import Action
from firmpedal.pipeline import Evaluation, evaluate_text
from firmpedal.report.compare import compare_sheet
from firmpedal.report.retrofit import retrofit_sheet
from firmpedal.report.sheet import Bullets, Paragraph
from texts import edited, example

PORTS = [f"{side}_{port}" for side in ("left", "right") for port in ("cylinder.outlet", "caliper.inlet")]
OPTIONS = (None, "rigid", "all hose")
ELBOWS = ("COMP-E-1/4x1/8",)


@cache
def evaluated(option: str | None) -> Evaluation:
    return evaluate_text(example("brindlewick"), "brindlewick.yaml", option)


def plan(to: str | None, start: str | None = None) -> Retrofit:
    return retrofit(evaluated(start), evaluated(to))


def words(sheet) -> str:
    texts = [block.text for block in sheet.blocks if isinstance(block, Paragraph)]
    texts += [item for block in sheet.blocks if isinstance(block, Bullets) for item in block.items]
    return "\n".join(texts)


class TestOldElbows:
    """They may have stretched the thread of their port: gauge it, and do not use them again."""

    @pytest.mark.parametrize("option", ["rigid", "all hose"])
    def test_every_port_they_sat_in_is_gauged(self, option):
        found = plan(option).gauge
        assert sorted(gauge.port for gauge in found) == sorted(PORTS)
        assert {(gauge.old.designation, gauge.old.material) for gauge in found} == {(*ELBOWS, "brass")}

    @pytest.mark.parametrize("option", ["rigid", "all hose"])
    def test_they_come_off_for_good(self, option):
        found = plan(option)
        removed = Counter(item.piece.designation for item in found.remove)
        assert removed[ELBOWS[0]] == 4
        assert not [pair for pair in found.reuse if pair.before.designation in ELBOWS]

    def test_the_builder_is_told_so(self):
        said = words(retrofit_sheet(evaluated(None), evaluated("rigid")))
        assert said.count("Do not use the old COMP-E-1/4x1/8 again.") == 4
        assert "COMP-E-1/4x1/8, brass, is never used again" in said
        assert "stretches its port" in said

    def test_they_are_not_used_again_where_the_same_is_wanted(self):
        """Back from rigid to new nylon, with the old elbows lying on the bench: new ones all the same."""
        back = plan(None, "rigid")
        assert Counter(piece.designation for piece in back.buy)[ELBOWS[0]] == 4
        assert not back.reuse

    def test_it_goes_by_what_they_are_and_not_by_the_aircraft(self):
        text = edited(
            example("brindlewick"), ("    from fitting: 90 degrees ", "    from fitting: straight ")
        )
        before, after = (evaluate_text(text, "text", option) for option in (None, "rigid"))
        old = {gauge.port: gauge.old.designation for gauge in retrofit(before, after).gauge}
        assert old["left_cylinder.outlet"] == "COMP-S-1/4x1/8"
        assert old["left_caliper.inlet"] == ELBOWS[0]


class TestToRigid:
    def test_all_of_the_old_goes_and_all_of_the_new_is_bought(self):
        found = plan("rigid")
        assert found.keep == found.reuse == ()
        counted = Counter(piece.designation for piece in found.buy if piece.part)
        assert counted == {
            "AN816-4D": 2,
            "AN833-4D": 2,
            "AN832-4D": 2,
            "AN924-4D": 4,
            "AN822-4D": 2,
            "AN818-4D": 4,
            "AN819-4D": 4,
        }

    def test_the_tubes_are_made_before_a_line_is_opened(self):
        made = [step for step in plan("rigid").steps if step.action is Action.MAKE]
        assert [step.subject for step in made] == ["left_leg", "right_leg"]
        assert all(step.beforehand for step in made)
        assert all(step.parts == ("2 x AN818-4D", "2 x AN819-4D") for step in made)

    def test_sixteen_places_are_proved(self):
        (step,) = [step for step in plan("rigid").steps if step.action is Action.LEAK_CHECK]
        assert step.parts == ("16",)


class TestSideBySide:
    def found(self) -> Comparison:
        return compare(tuple(evaluated(option) for option in OPTIONS))

    def test_the_nylon_is_out_and_why(self):
        ((number, finding, count),) = self.found().advice.out
        assert (OPTIONS[number], finding.level.value) == (None, "WARNING")
        assert count >= 6

    def test_all_hose_has_the_fewest_joints(self):
        rows = {row.measure: row for row in self.found().rows}
        flares = [
            [about for about in cell.about if about.endswith("flare")] for cell in rows["leak paths"].cells
        ]
        assert flares[1:] == [["12 flare"], ["8 flare"]]
        assert rows["leak paths"].result.winners == rows["parts"].result.winners == (2,)

    def test_where_nobody_can_say_it_says_what_to_measure(self):
        rows = {row.measure: row for row in self.found().rows}
        assert rows["stroke used"].result.winners == ()
        asked = [missing.what for missing in rows["stroke used"].result.measure]
        assert any("-3 expansion" in what for what in asked)

    def test_a_stranger_can_tell_what_to_do(self):
        sheet = compare_sheet(tuple(evaluated(option) for option in OPTIONS))
        said = words(sheet)
        assert "as written: not sound, because" in said
        assert "rigid: no WARNING" in said
        assert "all hose: no WARNING, fewest places that can leak (12 against 16)" in said
        last = sheet.blocks[-1]
        assert isinstance(last, Paragraph)
        assert last.text.startswith("So: all hose, once what is unknown about it is measured")
