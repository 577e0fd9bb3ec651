"""Pressure at each foot, against sums by hand; what is usual, and what is not known."""

from __future__ import annotations

import math

import pytest

from firmpedal.checks.closer import closer
from firmpedal.pipeline import evaluate_text
from firmpedal.quantity import Mark
from firmpedal.report.to_measure import to_measure
from firmpedal.units import to_unit
from texts import edited, small

LEVER = ("brake: {brake: {pad: 5, arm: 2-1/2}}", "brake: {brake: {%s}}")
POINTS = "pivot: [0, 0, 0], pad at: [-1, 0, %s], rod end: [0, 0, 2], cylinder base: [6, 0, %s]"


def results(*edits: tuple[str, str]):
    return evaluate_text(edited(small("quillfen"), *edits), "text").results


def psi(values) -> list[float]:
    return [to_unit(value.middle, "psi") for value in values]


def by_hand(force: float, ratio: float, bore: float) -> float:
    return force * ratio / (math.pi / 4 * bore**2)


class TestFoot:
    def test_usual_forces_on_toe_pedals(self):
        """The panic foot is the pilot limit force of 14 CFR 23.397(b) as it stood; the others are usual."""
        forces = results().forces
        assert [to_unit(value.middle, "lbf") for value in forces] == pytest.approx([75, 150, 200])
        assert [value.mark for value in forces] == [Mark.MEMORY, Mark.MEMORY, Mark.ESTIMATE]

    def test_usual_forces_under_the_heel_have_no_panic(self):
        forces = results(("brakes: toe", "brakes: heel")).forces
        assert [to_unit(value.middle, "lbf") for value in forces[:2]] == pytest.approx([60, 120])
        assert not forces[2].known

    def test_nothing_is_usual_on_a_hand_lever(self):
        assert not any(value.known for value in results(("brakes: toe", "brakes: hand")).forces)

    def test_a_declared_force_wins_and_unknown_is_unknown(self):
        foot = ("components:\n", "foot: {hard: 120, panic: unknown}\ncomponents:\n")
        forces = results(foot).forces
        assert to_unit(forces[0].middle, "lbf") == pytest.approx(75)
        assert to_unit(forces[1].middle, "lbf") == pytest.approx(120)
        assert forces[2].missing[0].place == "foot.panic"


class TestCylinder:
    def test_lever_and_bore(self):
        made = results().cylinders[0]
        assert psi(made.pressures) == pytest.approx([by_hand(f, 2, 0.625) for f in (75, 150, 200)], rel=1e-6)

    def test_a_range_of_bore(self):
        panic = results(("bore: 5/8", "bore: 0.60 to 0.65")).cylinders[0].pressures[2]
        assert to_unit(panic.low, "psi") == pytest.approx(by_hand(200, 2, 0.65), rel=1e-6)
        assert to_unit(panic.high, "psi") == pytest.approx(by_hand(200, 2, 0.60), rel=1e-6)

    def test_an_unknown_arm(self):
        (missing,) = results((LEVER[0], LEVER[1] % "pad: 5, arm: unknown")).cylinders[0].ratio.missing
        assert missing.place.endswith("arm")


class TestPivotPoints:
    """Pad straight above the pivot, rod end 2 in above it, cylinder level or aslant."""

    def ratio(self, pad: str, base: str):
        return results((LEVER[0], LEVER[1] % (POINTS % (pad, base)))).cylinders[0].ratio

    def test_a_cylinder_square_to_its_arm(self):
        assert self.ratio("5", "2").middle == pytest.approx(math.hypot(1, 5) / 2)

    def test_a_cylinder_aslant_has_a_shorter_arm(self):
        """The rod falls 2 in on 6, so it passes the pivot at 2 in times cos atan(1/3)."""
        arm = 2 * math.cos(math.atan2(2, 6))
        assert self.ratio("5", "0").middle == pytest.approx(math.hypot(1, 5) / arm)

    def test_a_cylinder_aslant_in_every_direction(self):
        """Pythagoras: what is left of the rod end's distance after its part along the cylinder."""
        points = "pivot: [1, -2, 0.5], pad at: [0, 2, 5], rod end: [0.5, 1, 2], cylinder base: [6, 3, -1]"
        rod, along = (-0.5, 3.0, 1.5), (5.5, 2.0, -3.0)
        part = sum(a * b for a, b in zip(rod, along, strict=True)) / math.hypot(*along)
        arm = math.sqrt(math.hypot(*rod) ** 2 - part**2)
        ratio = results((LEVER[0], LEVER[1] % points)).cylinders[0].ratio
        assert ratio.middle == pytest.approx(math.hypot(1, 4, 4.5) / arm)

    def test_a_point_known_only_within_a_range(self):
        ratio = self.ratio("4 to 6", "2")
        assert (ratio.low, ratio.high) == pytest.approx((math.hypot(1, 4) / 2, math.hypot(1, 6) / 2))

    def test_a_rod_that_points_at_the_pivot_is_no_lever(self):
        points = "pivot: [0, 0, 0], pad at: [0, 0, 5], rod end: [0, 0, 2], cylinder base: [0, 0, 8]"
        ratio = results((LEVER[0], LEVER[1] % points)).cylinders[0].ratio
        assert ratio.span is None
        assert ratio.missing

    def test_a_rod_without_length_is_no_lever(self):
        points = "pivot: [0, 0, 0], pad at: [0, 0, 5], rod end: [0, 0, 2], cylinder base: [0, 0, 2]"
        assert results((LEVER[0], LEVER[1] % points)).cylinders[0].ratio.span is None

    def test_points_that_are_not_all_there(self):
        points = "pivot: [0, 0, 0], pad at: [0, 0, 5], rod end: [0, 0, 2]"
        ratio = results((LEVER[0], LEVER[1] % points)).cylinders[0].ratio
        assert ratio.span is None
        assert "cylinder base" in ratio.missing[0].what


# A second cylinder ahead of the first one, in series: it presses through the first to the same wheel.
SECOND = """\
components:
  front:
    kind: master cylinder
    bore: 1/2
    stroke: 3/4
    rated pressure: 3000
    pedal: brake
    ports:
      outlet: {thread: 1/8 NPT female, faces: aft, seat: [4, 0, 4]}
"""
OUTLET = "      outlet: {thread: 1/8 NPT female, faces: down, seat: [10, 0, 4]}\n"
INLET = "      inlet: {thread: 1/8 NPT female, faces: forward, seat: [9, 0, 5]}\n"
CROSS = "  cross: {from: front.outlet, to: cylinder.inlet, made of: hose -4 PTFE braided}\n"
SERIES = (("components:\n", SECOND), (OUTLET, OUTLET + INLET), ("lines:\n", f"lines:\n{CROSS}"))


def saying(answer: str) -> tuple[str, str]:
    """Whether two feet add up in the cylinder near the wheel."""
    return INLET, f"{INLET}    feet add up: {answer}\n"


class TestSeries:
    def test_who_presses_on_what(self):
        reach = {way.cylinder: (set(way.lines), way.calipers) for way in results(*SERIES).reach}
        assert reach == {"front": ({"cross", "run"}, ("caliper",)), "cylinder": ({"run"}, ("caliper",))}

    @pytest.mark.parametrize(("answer", "least", "most"), [("unknown", 0, 1), ("no", 0, 0), ("yes", 0.75, 1)])
    def test_a_line_bears_from_the_greater_of_two_to_both(self, answer, least, most):
        """Forces on the nearer piston: its foot's, and what comes in behind, less a rod of half the bore."""
        found = results(*SERIES, saying(answer))
        front, first = by_hand(200, 2, 0.5), by_hand(200, 2, 0.625)
        assert front > first
        run = found.pressure_of("run")
        both = [max(front, first + share * front) for share in (least, most)]
        assert [to_unit(end, "psi") for end in run.at("panic").span] == pytest.approx(both, rel=1e-6)
        assert psi([run.at("panic", alone=True)]) == pytest.approx([front], rel=1e-6)
        assert psi([found.pressure_of("cross").at("panic")]) == pytest.approx([front], rel=1e-6)
        assert (run.adding, found.pressure_of("cross").adding) == (("front", "cylinder"), ())

    def test_what_is_not_known_is_asked_of_its_maker(self):
        text = edited(small("quillfen"), *SERIES).replace("rated pressure: 2000", "rated pressure: 2500")
        asked = {
            missing.place
            for item in evaluate_text(text, "text").not_shown
            if item.rule == "pressure-above-rating"
            for missing in item.missing
        }
        # First whether the other seat gets through; of the front one, behind which nobody presses, neither.
        assert "components.cylinder.seals when pressed" in asked
        assert not {"components.cylinder.feet add up", "components.front.seals when pressed"} & asked

    @pytest.mark.parametrize(
        ("seals", "place", "least", "most"),
        [
            ("unknown", "seals when pressed", 0, 1),
            ("no", "feet add up", 0, 1),
            ("yes", None, 0, 0),
        ],
    )
    def test_the_questions_come_in_order(self, seals, place, least, most):
        """Shut out, the other seat adds nothing; only where it gets through it is asked whether it adds."""
        found = results(*SERIES, (INLET, f"{INLET}    seals when pressed: {seals}\n"))
        front, first = by_hand(200, 2, 0.5), by_hand(200, 2, 0.625)
        pressure = found.pressure_of("run").at("panic")
        both = [max(front, first + share * front) for share in (least, most)]
        assert [to_unit(end, "psi") for end in pressure.span] == pytest.approx(both, rel=1e-6)
        asked = {missing.place for missing in closer(pressure)}
        assert asked >= ({f"components.cylinder.{place}"} if place else set())
        assert not any("feet add up" in each for each in asked if place != "feet add up")

    def test_both_yes_is_a_contradiction_and_the_more_counts(self):
        answers = (INLET, f"{INLET}    seals when pressed: yes\n    feet add up: yes\n")
        evaluation = evaluate_text(edited(small("quillfen"), *SERIES, answers), "text")
        (found,) = [each for each in evaluation.findings if each.rule == "seat-answers-contradict"]
        places = (found.place, *found.about)
        assert places == ("components.cylinder.feet add up", "components.cylinder.seals when pressed")
        both = by_hand(200, 2, 0.5) + by_hand(200, 2, 0.625)
        most = evaluation.results.pressure_of("run").at("panic").high
        assert to_unit(most, "psi") == pytest.approx(both, rel=1e-6)

    def test_a_question_that_comes_later_is_not_counted_yet(self):
        for seals, counted in (("unknown", False), ("yes", False), ("no", True)):
            answers = (INLET, f"{INLET}    seals when pressed: {seals}\n    feet add up: unknown\n")
            evaluation = evaluate_text(edited(small("quillfen"), *SERIES, answers), "text")
            asked = [each for each in to_measure(evaluation) if "feet add up" in f"{each.at} {each.what}"]
            assert bool(asked) is counted

    @pytest.mark.parametrize("name", ["cylinder", "caliper"])
    def test_so_does_every_component_on_the_way(self, name):
        """Good for what the nearer cylinder makes, 1304 psi, and not for the farther one's 2037."""
        text = edited(small("quillfen"), *SERIES, saying("no"))
        start = text.index(f"  {name}:\n")
        text = text[:start] + text[start:].replace("rated pressure: 2000", "rated pressure: 1500", 1)
        place = f"components.{name}"
        findings = evaluate_text(text, "text").findings
        (finding,) = [
            item for item in findings if (item.rule, item.place) == ("pressure-above-rating", place)
        ]
        assert psi([finding.measured]) == pytest.approx([by_hand(150, 2, 0.5)], rel=1e-6)


def test_a_port_of_another_name_is_the_outlet_if_it_is_the_only_one():
    edits = (("      outlet: ", "      to_wheel: "), ("from: cylinder.outlet", "from: cylinder.to_wheel"))
    assert results(*edits).reach[0].calipers == ("caliper",)


def test_what_no_cylinder_reaches_has_no_pressure():
    away = ("from: cylinder.outlet\n", "from: wall.low\n")
    sides = "{high: {seat: [10, 0, 4]}, low: {seat: [10, 0, 4]}}"
    wall = ("pedals:\n", f"bulkheads:\n  wall: {{sides: {sides}}}\npedals:\n")
    found = results(away, wall)
    assert found.pressure_of("run") is None
    assert found.reach[0].calipers == ()
