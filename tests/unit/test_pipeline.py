"""The one road: verdicts, accepted findings, files that cannot be used."""

from __future__ import annotations

import pytest

from firmpedal.finding import Level, Verdict
from firmpedal.pipeline import UnusableFileError, evaluate_file, evaluate_text
from firmpedal.project import read_text
from texts import EXAMPLES, SMALL, edited, example, small

RADIUS = "    bend radius: 3/4\n"
LOOSE = (RADIUS, f"{RADIUS}    clamps: none\n")  # a CAUTION
UNRATED = ("    rated pressure: 2000\n    ports:\n      inlet", "    ports:\n      inlet")  # a question
FLOATS = ("floats: no", "floats: yes")  # a WARNING


def evaluated(*edits: tuple[str, str]):
    return evaluate_text(edited(small("quillfen"), *edits), "text")


def accepting(rule: str, at: str) -> tuple[str, str]:
    return "pedals:\n", f"accepted:\n  - {{rule: {rule}, at: {at}, reason: seen on the bench}}\npedals:\n"


class TestVerdict:
    def test_sound_when_nothing_is_found_and_nothing_asked(self):
        evaluation = evaluate_file(SMALL / "quillfen.yaml")
        assert (evaluation.verdict, evaluation.findings, evaluation.not_shown) == (Verdict.SOUND, (), ())

    @pytest.mark.parametrize(
        ("edits", "verdict"),
        [
            ((LOOSE,), Verdict.SOUND),
            ((UNRATED,), Verdict.NOT_SHOWN),
            ((UNRATED, LOOSE), Verdict.NOT_SHOWN),
            ((FLOATS,), Verdict.NOT_SOUND),
            ((FLOATS, UNRATED, LOOSE), Verdict.NOT_SOUND),
        ],
    )
    def test_by_the_worst_that_is_said(self, edits, verdict):
        assert evaluated(*edits).verdict is verdict

    def test_no_brakes_are_not_sound_brakes(self):
        text = small("quillfen")
        evaluation = evaluate_text(text[: text.index("components:\n")], "text")
        assert evaluation.verdict is Verdict.NOT_SHOWN
        assert "the file has none" in evaluation.not_shown[0].missing[0].what

    def test_brakes_without_a_line_are_not_sound(self):
        text = small("quillfen")
        evaluation = evaluate_text(text[: text.index("lines:\n")], "text")
        assert evaluation.verdict is Verdict.NOT_SOUND

    def test_worst_come_first(self):
        levels = [finding.level for finding in evaluate_text(example("brindlewick"), "text").findings]
        assert levels == sorted(levels, key=list(Level).index)
        assert len(set(levels)) > 1


class TestAccepted:
    @pytest.mark.parametrize("at", ["run", "lines.run", "lines.run.clamps", "run.clamps"])
    def test_a_finding_keeps_its_level_and_gets_the_reason(self, at):
        (finding,) = evaluated(LOOSE, accepting("clamp-spacing", at)).findings
        assert (finding.level, finding.accepted) == (Level.CAUTION, "seen on the bench")

    def test_an_accepted_warning_stays_a_warning(self):
        evaluation = evaluated(FLOATS, accepting("rigid-line-between-moving-ends", "run"))
        assert [finding.level for finding in evaluation.findings] == [Level.WARNING]
        assert evaluation.verdict is Verdict.NOT_SOUND

    @pytest.mark.parametrize("at", ["lines", "clamps", "ru", "runs", "caliper"])
    def test_another_place_is_another_finding(self, at):
        found = {
            finding.rule: finding for finding in evaluated(LOOSE, accepting("clamp-spacing", at)).findings
        }
        assert found["clamp-spacing"].accepted is None
        assert found["accepted-but-gone"].level is Level.NOTE
        assert found["accepted-but-gone"].place == "accepted.1"

    def test_another_rule_is_another_finding(self):
        found = {
            finding.rule: finding for finding in evaluated(LOOSE, accepting("only-tie-wraps", "run")).findings
        }
        assert found["clamp-spacing"].accepted is None
        assert "is not found any more" in found["accepted-but-gone"].message
        assert found["accepted-but-gone"].tries == ("take the entry out",)

    def test_a_rule_that_does_not_exist_is_named(self):
        found = {finding.rule: finding for finding in evaluated(accepting("clamp-spacings", "run")).findings}
        assert "there is no rule of that name" in found["accepted-but-gone"].message
        assert found["accepted-but-gone"].tries == ("did you mean clamp-spacing?",)

    def test_what_cannot_be_told_now_is_not_gone(self):
        edits = (("floats: no", "floats: unknown"), accepting("rigid-line-between-moving-ends", "run"))
        evaluation = evaluated(*edits)
        assert evaluation.findings == ()
        assert {item.rule for item in evaluation.not_shown} == {"rigid-line-between-moving-ends"}


class TestOnce:
    """One fault is one finding."""

    def test_a_floating_caliper_that_is_also_seen_to_move(self):
        moving = "states:\n  pads: {values: [new, worn]}\nmoving:\n  slide: {pads: {worn: [0, 0.2, 0]}}\n"
        edits = (
            ("components:\n", f"{moving}components:\n"),
            ("floats: no\n", "floats: yes\n    moves with: slide\n"),
        )
        (finding,) = evaluated(*edits).findings
        assert finding.rule == "rigid-line-between-moving-ends"

    def test_a_joint_in_a_cover_where_two_lines_come_together(self):
        cover = "zones:\n  sock: {where: {box: [[9, -1, -1], [11, 1, 3]]}, covered: yes, gap: 0.3}\n"
        sides = "{high: {seat: [10, 0, 2]}, low: {seat: [10, 0, 0]}}"
        wall = f"bulkheads:\n  wall: {{sides: {sides}}}\npedals:\n"
        stub = "  stub: {from: cylinder.outlet, to: wall.high, made of: hose -4 PTFE braided}\n"
        edits = (
            ("pedals:\n", wall),
            ("lines:\n", f"{cover}lines:\n{stub}"),
            ("from: cylinder.outlet\n", "from: wall.low\n"),
        )
        found = [item for item in evaluated(*edits).findings if item.rule == "joint-in-covered-length"]
        assert [finding.place for finding in found] == ["bulkheads.wall"]


class TestUnusable:
    def test_the_problems_are_carried_along(self):
        with pytest.raises(UnusableFileError) as caught:
            evaluated(("bore: 5/8", "bore: five eighths"))
        assert [problem.text for problem in caught.value.reading.problems] == ["five eighths"]
        assert "1 problem" in str(caught.value)

    def test_an_option_that_is_not_there(self):
        with pytest.raises(UnusableFileError):
            evaluate_file(EXAMPLES / "brindlewick.yaml", "ridgid")


def test_text_and_file_are_one_road():
    one = evaluate_file(EXAMPLES / "brindlewick.yaml", "rigid")
    other = evaluate_text(example("brindlewick"), str(EXAMPLES / "brindlewick.yaml"), "rigid")
    assert one.findings == other.findings
    assert one.reading == read_text(example("brindlewick"), str(EXAMPLES / "brindlewick.yaml"), "rigid")


def test_every_line_is_laid_even_where_lines_meet():
    """A line whose end is another line's end is not lost: it is bought, drawn and asked about."""
    tail = "  tail: {from: run.to, to: caliper.inlet, made of: hose -4 PTFE braided}\n"
    evaluation = evaluated(("to: caliper.inlet\n", "to: tail.from\n"), ("lines:\n", f"lines:\n{tail}"))
    assert {line.name for line in evaluation.laid} == {"run", "tail"}
    joints = [joint.name for joint in evaluation.assembly.joints if "run" in joint.name]
    assert len(joints) == 1
    assert evaluation.assembly.joint_of("run", "to") is evaluation.assembly.joint_of("tail", "from")
