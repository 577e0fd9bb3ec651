"""What must not pass for good, such as heat and contradictions; and choices that decide a length."""

import pytest

from firmpedal.finding import Level, NotShown, Verdict
from firmpedal.pipeline import UnusableFileError, evaluate_text
from firmpedal.project import read_text
from firmpedal.units import from_unit
from texts import edited, small

SOUND = small("quillfen")
IN = from_unit(1, "in")


def evaluated(*edits):
    return evaluate_text(edited(SOUND, *edits))


def with_zone(zone):
    return ("lines:\n", f"zones:\n  hot: {zone}\nlines:\n")


def rules(evaluation, level=Level.WARNING):
    return {finding.rule for finding in evaluation.findings if finding.level is level}


def unclear(evaluation):
    return {item.rule for item in evaluation.not_shown if isinstance(item, NotShown)}


def problems(*edits):
    return [problem.message for problem in read_text(edited(SOUND, *edits)).problems]


def test_the_aircraft_to_start_from_is_sound():
    assert evaluated().verdict is Verdict.SOUND


class TestHeat:
    @pytest.mark.parametrize("temperature", ["900", "unknown", "200 to 220"])
    def test_metal_in_great_or_unknown_heat_is_not_shown(self, temperature):
        zone = f"{{where: {{up above: -99}}, heat: exhaust, temperature: {temperature}}}"
        found = evaluated(with_zone(zone))
        assert found.verdict is Verdict.NOT_SHOWN
        assert unclear(found) == {"tube-yields"}

    def test_metal_beside_a_warm_brake_is_as_strong_as_cold(self):
        zone = "{where: {up above: -99}, heat: brake, temperature: 200}"
        assert evaluated(with_zone(zone)).verdict is Verdict.SOUND

    def test_a_hose_over_its_cold_rating_is_a_warning_whatever_its_heat(self):
        zone = "{where: {up above: -99}, heat: exhaust, temperature: unknown}"
        foot = ("fluid: MIL", "foot: {normal: 200, hard: 250, panic: 300}\nfluid: MIL")
        hose = ("made of: tube 5052-O 1/4 x .035\n    bend radius: 3/4", "made of: hose -4 PTFE braided")
        assert "pressure-above-rating" in rules(evaluated(with_zone(zone), foot, hose))

    def test_a_hose_colder_than_its_limit_is_not_shown(self):
        hose = ("made of: tube 5052-O 1/4 x .035\n    bend radius: 3/4", "made of: hose -4 PTFE braided")
        cold = ("lines:\n  run:\n", "lines:\n  run:\n    temperature: -100\n")
        assert "pressure-above-rating" in unclear(evaluated(hose, cold))


class TestForms:
    def test_a_one_piece_nut_that_is_declared_is_a_warning(self):
        found = evaluated(
            ("    to: caliper.inlet\n", "    to: caliper.inlet\n    to fitting: [AN816-4D, AN817-4D]\n")
        )
        assert rules(found) == {"pressure-above-rating"}

    def test_a_kink_is_no_bend(self):
        found = evaluated(
            ("faces: forward, seat: [16, 0, -6]", "faces: up, seat: [10, 0, -6]"),
            ("- [10, 0, -6]", "- [10.0001, 0, 0]"),
        )
        assert "no-bend-in-rigid-line" in rules(found)

    def test_a_bend_inside_the_tube_itself_is_a_warning(self):
        assert "tube-cannot-be-bent" in rules(evaluated(("bend radius: 3/4", "bend radius: 1/8")))

    def test_nothing_that_holds_a_tube_is_a_caution(self):
        found = evaluated(("    bend radius: 3/4\n", "    bend radius: 3/4\n    support: nothing\n"))
        assert "only-tie-wraps" in rules(found, Level.CAUTION)

    @pytest.mark.parametrize("sleeve", ["PE", "vinyl", "polyurethane tube"])
    def test_plastic_by_other_names_is_plastic(self, sleeve):
        zone = "{where: {up above: -99}, heat: brake, temperature: 150}"
        sleeved = ("    bend radius: 3/4\n", f"    bend radius: 3/4\n    sleeve: {sleeve}\n")
        assert "plastic-in-hot-place" in rules(evaluated(with_zone(zone), sleeved))

    def test_a_copper_sleeve_is_not_plastic(self):
        zone = "{where: {up above: -99}, heat: brake, temperature: 150}"
        sleeved = ("    bend radius: 3/4\n", "    bend radius: 3/4\n    sleeve: copper\n")
        assert "plastic-in-hot-place" not in rules(evaluated(with_zone(zone), sleeved))


class TestContradictions:
    def test_feet_out_of_order(self):
        assert problems(("fluid: MIL", "foot: {hard: 240, panic: 150}\nfluid: MIL")) == [
            "the panic foot is lighter than the hard foot"
        ]

    def test_a_hard_foot_over_the_usual_panic_leaves_panic_unknown(self):
        found = evaluated(("fluid: MIL", "foot: {hard: 240}\nlimits: {burst factor: 2}\nfluid: MIL"))
        assert found.verdict is Verdict.NOT_SHOWN
        assert not found.results.forces[2].known

    @pytest.mark.parametrize("count", ["0", "0.5", "-1"])
    def test_pistons_are_counted(self, count):
        with pytest.raises(UnusableFileError):
            evaluated(("count per side: 1", f"count per side: {count}"))

    def test_a_closed_port_takes_no_line(self):
        closed = ("faces: forward, seat: [16, 0, -6]", "faces: forward, seat: [16, 0, -6], closed: yes")
        assert problems(closed) == ["caliper.inlet is closed, and run comes to it"]


class TestChoices:
    def test_two_flares_are_cut_for_and_the_lines_own_radius_wins(self):
        (line,) = evaluated(("lines:\n", "bench: {bend radius: 1, flare allowance: 1/10}\nlines:\n")).laid
        assert line.tube.radius.middle == pytest.approx(0.75 * IN)
        assert line.cut_length.middle - line.developed_length.middle == pytest.approx(0.2 * IN)

    def test_the_last_point_sets_the_angle_at_the_last_end(self):
        """The line comes to the caliper from the last point, straight into its port, not from the first."""
        found = evaluated(("- [10, 0, -6]", "- [10, 0, 0]\n      - [8, 0, -6]"))
        joint = found.assembly.joint_of("run", "to")
        assert next(part.family for part in joint.parts) == "AN816"

    def test_usual_forces_of_heel_brakes(self):
        """60 and 120 lbf: common practice, no source."""
        forces = evaluated(("brakes: toe", "brakes: heel")).results.forces
        assert [force.middle if force.known else None for force in forces] == [
            pytest.approx(from_unit(60, "lbf")),
            pytest.approx(from_unit(120, "lbf")),
            None,
        ]

    def test_fluid_weighs_in(self):
        wet = evaluated().results.mass
        masses = [value for _, value in wet.step.inputs]
        assert any("fluid" in value.label for value in masses)
        assert wet.middle == pytest.approx(sum(value.middle for value in masses))
