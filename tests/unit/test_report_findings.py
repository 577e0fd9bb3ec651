"""Findings in print, and what to measure."""

from __future__ import annotations

from dataclasses import replace

from evaluated import awkward, blocks, example, of_kind, words

from firmpedal.checks.rules import RULES
from firmpedal.decide.lacking import waiting
from firmpedal.finding import Cited, Finding, Level, NotShown
from firmpedal.project.names import label_of
from firmpedal.project.unknowns import unknowns
from firmpedal.quantity import Mark, Missing
from firmpedal.report.findings import alike, findings_sheet
from firmpedal.report.measure_sheet import measure_sheet
from firmpedal.report.sheet import BOX, Paragraph, Table, Tone


def finding(level: Level, message: str = "found", **more) -> Finding:
    return Finding("some-rule", level, "lines.left_line", message, ("mend it", "or so"), **more)


def of(*findings: Finding):
    return findings_sheet(replace(example(), findings=findings))


def test_warnings_stand_before_cautions_before_notes():
    sheet = of(finding(Level.NOTE, "n"), finding(Level.WARNING, "w"), finding(Level.CAUTION, "c"))
    said = [block.tone for block in of_kind(sheet, Paragraph)[1:]]
    assert said == [Tone.WARNING, Tone.CAUTION, Tone.NOTE]


def test_a_finding_says_where_what_why_and_what_to_try():
    said = words(
        of(finding(Level.WARNING, "the line is too short", sources=(Cited("ac-43-13-1b", Mark.READ),)))
    )
    assert "the line is too short" in said
    assert "where: brindlewick.yaml line 123, lines.left_line" in said
    assert "try: mend it" in said
    assert "or: or so" in said
    assert "AC 43.13-1B" in said
    assert "rule: some-rule" in said


def test_the_place_is_named_without_the_folders_of_this_machine():
    said = words(findings_sheet(awkward()))
    assert "awkward.yaml line" in said
    assert "/some/where" not in said


def test_a_source_from_memory_is_called_not_verified():
    said = words(of(finding(Level.CAUTION, sources=(Cited("ms33584", Mark.MEMORY),))))
    assert "not verified against the source" in said
    said = words(of(finding(Level.CAUTION, sources=(Cited("ms33584", Mark.READ),))))
    assert "not verified" not in said


def test_an_accepted_warning_stays_a_warning_beside_the_reason():
    sheet = findings_sheet(awkward())
    first = of_kind(sheet, Paragraph)[1]
    assert first.tone is Tone.WARNING
    said = words(sheet)
    assert "accepted: by the builder: the right side comes next winter. A warning stays a warning." in said
    assert "the line is glassed in along the whole of the leg" in said


def test_what_is_alike_is_told_once_with_every_place():
    groups = alike(example().findings)
    assert sum(map(len, groups)) == len(example().findings)
    assert len(groups) < len(example().findings)
    said = words(findings_sheet(example()))
    for each in example().findings:
        assert said.count(each.message) == 1


def test_findings_that_differ_in_figures_or_reason_are_not_merged():
    one, other = finding(Level.WARNING), finding(Level.WARNING, accepted="because")
    assert len(alike((one, other))) == 2


def test_nothing_found_says_so():
    assert "Nothing was found against these brakes." in words(
        findings_sheet(replace(example(), findings=(), not_shown=()))
    )


def test_nothing_found_so_far_says_how_many_checks_wait():
    unclear = tuple(
        NotShown(rule, f"lines.{n}", "m", (Missing("", "w"),)) for n, rule in enumerate(("a", "b", "a"))
    )
    for number, count in ((1, "1 check waits"), (2, "2 checks wait"), (3, "2 checks wait")):
        waits = replace(example(), findings=(), not_shown=unclear[:number])
        said = words(findings_sheet(waits))
        assert f"Nothing was found against these brakes in what is known; {count} for figures." in said


def test_a_thing_to_measure_stands_once_with_the_rules_that_wait():
    missing = Missing("lines.left_line", "how long it is")
    unclear = (
        NotShown("tube-yields", "lines.left_line", "m", (missing,)),
        NotShown("stroke-short", "lines.right_line", "m", (missing,)),
        NotShown("tube-yields", "lines.right_line", "m", (Missing("", "how wide it is"),)),
    )
    sheet = measure_sheet(replace(example("rigid"), not_shown=unclear))
    (table,) = of_kind(sheet, Table)
    open_in_file = len(unknowns(example("rigid").reading))
    assert [row[0] for row in table.rows] == [BOX] * (2 + open_in_file)
    assert "how long it is" in table.rows[0][1]
    words = "needed to check: No metal tube yields at the panic foot; The cylinder's stroke is enough"
    assert words in table.rows[0][1]
    assert not [rule.name for rule in RULES if rule.name in str(table.rows)]
    assert "line 168, lines.right_line" in table.rows[1][1]


def test_nothing_to_measure_makes_no_sheet():
    known = replace(example().reading, tree=None)
    assert measure_sheet(replace(example(), reading=known, not_shown=())) is None


def test_every_unknown_of_the_example_is_on_the_sheet():
    said = "\n".join(words(block) for block in blocks(measure_sheet(example("rigid"))))
    for places in (places for _, places in waiting(example("rigid")).values()):
        assert all(label_of(place) in said or place in said for place in places)
