"""The sheet of pedal feel in its parts: what it says of a stop, of ranges, of what is missing."""

from __future__ import annotations

import csv
import io
import json
import math

import pytest

from firmpedal.cli.pedal import Wanted, run
from firmpedal.pipeline import evaluate_text
from firmpedal.quantity import Mark, Value
from firmpedal.report.feel import feel_sheet
from firmpedal.report.feel_data import curves_csv, feel_data
from firmpedal.report.feel_pedals import Felt, Unfelt, felt_pedals
from firmpedal.report.feel_shares import share_words
from firmpedal.report.sheet import Bullets, Drawing, Label, Table, Tone
from firmpedal.units import Dimension, from_unit
from texts import edited, small

ARMS = "brake: {brake: {pad: 5, arm: 2-1/2}}"
STROKE, GAP = "stroke: 3/4\n", "pad gap: 0.020\n"
HOSE = ("made of: tube 5052-O 1/4 x .035\n", "made of: hose -4 PTFE braided\n")


def stop(length: str) -> tuple[str, str]:
    return ARMS, f"brake: {{brake: {{pad: 5, arm: 2-1/2, travel to stop: {length}}}}}"


def evaluated(*edits: tuple[str, str]):
    return evaluate_text(edited(small("quillfen"), *edits), "text")


def lead(*edits: tuple[str, str]) -> str:
    sheet = feel_sheet(evaluated(*edits))
    return next(block.text for block in sheet.blocks if getattr(block, "tone", "") is Tone.LEAD)


def pounds(number: float) -> Value:
    newtons = from_unit(number, "lbf")
    return Value("force asked for", Dimension.FORCE, (newtons, newtons), Mark.MEASURED, "foot")


class TestLead:
    def test_there_is_room(self):
        assert lead().startswith("At the hard foot (150 lbf) the pad goes about 0.242 in, of the ")
        assert "of the 1.50 in that there are until the cylinder is at its end" in lead()

    @pytest.mark.parametrize(
        ("spring", "gives", "goes"),
        [
            ("at rest: 0, pressed: 0", "", "0.242 in or more"),
            ("at rest: 0", "travel: 0, under: 500", "0.242 in or less"),
            ("at rest: 0, pressed: 0", "travel: 0, under: 500", "0.242 in"),
        ],
    )
    def test_what_is_not_counted_makes_it_more_or_less(self, spring, gives, goes):
        """A spring, seals, free stroke and a caliper of nothing leave the 0.242 in as they are."""
        nothing = f"stroke: 3/4\n    free stroke: 0\n    seal friction: 0\n    return spring: {{{spring}}}\n"
        more = [("pad gap: 0.020\n", f"pad gap: 0.020\n    gives: {{{gives}}}\n")] if gives else []
        assert f"the pad goes {goes}, of the " in lead((STROKE, nothing), *more)

    def test_the_cylinder_ends_first(self):
        assert lead((STROKE, "stroke: 0.12\n")).startswith("The cylinder is at its end before the hard foot")

    def test_the_pad_is_stopped_first(self):
        assert lead(stop("0.235")).startswith(
            "The pad is at its stop before the hard foot (150 lbf) is there"
        )

    def test_a_range_that_reaches_the_foot_is_not_decided(self):
        words = lead(stop("0.3"), HOSE)
        assert words.startswith("It cannot be said whether the pad is at its stop before the hard foot")

    def test_the_stop_is_told_where_it_comes_first(self):
        assert "of the 1.00 in to its stop" in lead(stop("1.00"))


class TestBudget:
    def table(self, *edits, force=None):
        sheet = feel_sheet(evaluated(*edits), force)
        return next(
            block
            for block in sheet.blocks
            if isinstance(block, Table) and block.columns[0] == "what takes it"
        )

    def test_strokes_add_up_to_the_whole(self):
        """The parts are printed with four decimals, the whole with three figures."""
        rows = self.table((GAP, "pad gap: 0.020\n    gives: {travel: 0.004, under: 500}\n")).rows
        *parts, whole = [[float(each) for each in _ends(row[2])] for row in rows]
        for end in (0, 1):
            assert sum(part[end] for part in parts) == pytest.approx(whole[end], abs=0.001)

    def test_free_stroke_has_a_row_of_its_own(self):
        rows = self.table((STROKE, "stroke: 3/4\n    free stroke: 0.06\n")).rows
        assert rows[0][:4] == ("the free stroke", "", "0.060 in", "0.12 in")

    def test_a_force_that_is_asked_for(self):
        table = self.table(force=pounds(100))
        assert table.title == "Where the travel goes at the force asked for (100 lbf)"

    def test_shares_go_from_the_least_to_the_most(self):
        part = Value("part", Dimension.VOLUME, (0.0, 1.0), Mark.DERIVED)
        whole = Value("whole", Dimension.VOLUME, (1.0, 3.0), Mark.DERIVED)
        assert share_words(part, whole) == "0 to 50 %"
        assert share_words(whole, whole) == "100 %"


def _ends(text: str) -> tuple[str, str]:
    first, _, last = text.removesuffix(" in").partition(" to ")
    return first, last or first


class TestPlot:
    def labels(self, *edits) -> set[str]:
        sheet = feel_sheet(evaluated(*edits))
        (drawing,) = [block for block in sheet.blocks if isinstance(block, Drawing)]
        return {mark.text for mark in drawing.marks if isinstance(mark, Label)}

    def test_curves_and_ends_are_named(self):
        labels = self.labels(stop("0.25"))
        assert {
            "new pads, no air",
            "2 % of air",
            "pad at its stop",
            "pad travel, in",
            "force on the pad, lbf",
        } <= labels

    def test_a_wide_range_is_a_band_and_says_which_edge_the_air_is_on(self):
        assert any("at its softest" in text for text in self.labels(HOSE))


class TestMissing:
    def test_what_is_wanted_is_listed(self):
        evaluation = evaluated((GAP, "pad gap: unknown\n"))
        (one,) = felt_pedals(evaluation)
        assert isinstance(one, Unfelt)
        (asked,) = [block for block in feel_sheet(evaluation).blocks if isinstance(block, Bullets)]
        assert asked.boxes
        assert any("pad gap" in item for item in asked.items)

    def test_a_hand_lever_without_forces(self):
        evaluation = evaluated(("brakes: toe", "brakes: hand"))
        (one,) = felt_pedals(evaluation)
        assert isinstance(one, Unfelt)
        (one,) = felt_pedals(evaluation, pounds(60))
        assert isinstance(one, Felt)


class TestData:
    def test_json_is_plain_and_in_si(self):
        data = json.loads(json.dumps(feel_data(evaluated(stop("1.00")))))
        (pedal,) = data["pedals"]
        assert pedal["full_travel"] == pytest.approx([1.5 * 0.0254] * 2)
        assert {len(case["travel"]) for case in pedal["cases"]} == {3}
        assert all(case["pad_at_stop"] for case in pedal["cases"])
        assert math.isclose(pedal["forces"][1][0], 150 * 4.4482216152605)

    def test_what_no_force_does_is_null(self):
        (pedal,) = feel_data(evaluated((STROKE, "stroke: 30\n")))["pedals"]
        assert pedal["cases"][0]["cylinder_at_end"] == [None, None]

    def test_missing_is_told(self):
        (pedal,) = feel_data(evaluated(("fluid: MIL-PRF-5606", "fluid: unknown")))["pedals"]
        assert "which brake fluid is used" in pedal["missing"]

    def test_the_table_has_every_curve_in_the_units_of_the_file(self):
        rows = list(csv.DictReader(io.StringIO(curves_csv(evaluated()))))
        assert {row["edge"] for row in rows} == {"firm", "soft"}
        cold = [row for row in rows if row["case"] == "cold" and row["edge"] == "soft"]
        travels = [float(row["travel in"]) for row in cold]
        assert travels == sorted(travels)
        assert float(cold[-1]["force lbf"]) == pytest.approx(200, rel=1e-4)
        assert float(cold[0]["travel in"]) == pytest.approx(
            2 * math.pi / 4 * 1.5**2 * 0.02 / (math.pi / 4 * 0.625**2), rel=1e-4
        )


class TestCommand:
    @pytest.fixture
    def file(self, tmp_path):
        path = tmp_path / "quillfen.yaml"
        path.write_text(small("quillfen"), encoding="utf-8")
        return path

    def test_it_prints_the_answer_and_ends_with_0(self, file, capsys):
        assert run(file, None, Wanted()) == 0
        assert "At the hard foot (150 lbf)" in capsys.readouterr().out

    def test_a_force_without_a_unit_is_in_the_files(self, file, capsys):
        assert run(file, None, Wanted(force="100")) == 0
        assert "(100 lbf)" in capsys.readouterr().out

    @pytest.mark.parametrize("force", ["much", "-3", "0", "3 in"])
    def test_a_force_that_is_none_is_refused(self, file, capsys, force):
        assert run(file, None, Wanted(force=force)) == 2
        assert "--force" in capsys.readouterr().err

    def test_the_table_is_written_and_never_over_the_file(self, file, tmp_path, capsys):
        assert run(file, None, Wanted(table=tmp_path / "out.csv")) == 0
        assert (tmp_path / "out.csv").read_text(encoding="utf-8").startswith("pedals,case,edge,pressure psi")
        assert run(file, None, Wanted(table=file)) == 2
        assert "firmpedal: 1" in file.read_text(encoding="utf-8")
        capsys.readouterr()

    def test_json_alone(self, file, capsys):
        assert run(file, None, Wanted(as_json=True)) == 0
        assert json.loads(capsys.readouterr().out)["schema"] == 1


class TestWithoutAStroke:
    """The stroke sets where the travel ends, and nothing else where the lever is given by its arms."""

    UNKNOWN = (STROKE, "stroke: unknown\n")

    def test_the_travel_is_that_of_a_cylinder_with_a_stroke(self):
        known, unknown = (next(iter(felt_pedals(evaluated(*edits)))) for edits in ((), (self.UNKNOWN,)))
        for case in known.feel.cases:
            for number in range(3):
                assert unknown.feel.travel(case, number).span == known.feel.travel(case, number).span

    def test_its_end_is_said_to_be_unknown_and_the_stroke_is_asked_for(self):
        words = lead(self.UNKNOWN)
        assert words.endswith("How far it could go is not known: the stroke of its cylinder is not given.")
        sheet = feel_sheet(evaluated(self.UNKNOWN))
        table = next(block for block in sheet.blocks if isinstance(block, Table))
        assert {row[-1] for row in table.rows} == {"unknown"}
        assert any(
            "stroke" in item for block in sheet.blocks if isinstance(block, Bullets) for item in block.items
        )
        assert all(
            case["cylinder_at_end"] is None
            for case in feel_data(evaluated(self.UNKNOWN))["pedals"][0]["cases"]
        )

    def test_a_pad_that_meets_its_stop_does_so_at_the_latest_there(self):
        sheet = feel_sheet(evaluated(self.UNKNOWN, stop("0.3")))
        table = next(block for block in sheet.blocks if isinstance(block, Table))
        assert all(row[-1].endswith("or less") or row[-1] == "unknown" for row in table.rows)

    def test_a_spring_that_goes_by_the_stroke_needs_it(self):
        spring = ("stroke: 3/4\n", "stroke: unknown\n    return spring: {at rest: 5 lbf, pressed: 9 lbf}\n")
        assert isinstance(next(iter(felt_pedals(evaluated(spring)))), Unfelt)


class TestWhatTakesMost:
    def test_of_a_tube_it_is_the_gap(self):
        text = " ".join(block.text for block in feel_sheet(evaluated()).blocks if hasattr(block, "text"))
        assert "What takes most at the hard foot (150 lbf) is closing the pad gap of" in text

    def test_where_a_hose_may_take_nothing_or_more_than_the_gap_it_is_not_said(self):
        """A gap of 0.001 in under 1.767 sq in is 0.0018 cu in; the hose may swell by more, or by nothing."""
        narrow = (GAP, "pad gap: 0.001\n")
        sheet = feel_sheet(evaluated(narrow, HOSE))
        text = " ".join(block.text for block in sheet.blocks if hasattr(block, "text"))
        assert "cannot be said yet. Of the fluid, the swelling of run takes 0 to" in text
        assert "What narrows it: what each hose takes as it swells, measured." in text

    def test_no_force_is_told_as_never(self):
        sheet = feel_sheet(evaluated())
        table = next(block for block in sheet.blocks if isinstance(block, Table))
        assert {row[-1] for row in table.rows} == {"never"}
        assert table.title.endswith("(never: no force that anybody presses with)")
