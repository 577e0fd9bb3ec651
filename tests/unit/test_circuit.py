"""Mistakes planted in a circuit of two seats, each found and no other."""

from __future__ import annotations

import pytest
from two_seats import HOSE, TWO_SEATS, USUAL, outcomes, planted, swapped, told

from firmpedal.pipeline import evaluate_text

W = "WARNING"


def tee(name: str) -> str:
    seats = ", ".join(f"{side}: {{seat: unknown}}" for side in ("stem", "one", "other"))
    return f"  {name}: {{through panel: no, sides: {{{seats}}}}}\n"


def teed(text: str, *names: str, **lines: str) -> str:
    """Put in tees, and lines by name, each written as `from to`."""
    pairs = {name: ends.split() for name, ends in lines.items()}
    written = [f"  {name}: {{from: {one}, to: {other}, {HOSE}}}\n" for name, (one, other) in pairs.items()]
    text = text.replace("pedals:\n", f"bulkheads:\n{''.join(tee(name) for name in names)}pedals:\n")
    return text.replace("lines:\n", f"lines:\n{''.join(written)}")


def message(text: str, rule: str) -> str:
    (item,) = [item for item in outcomes(text) if item.rule == rule]
    return item.message


def test_as_it_should_be():
    assert told(TWO_SEATS) == set()


class TestSides:
    CROSSED = planted(*swapped("to: alder.inlet", "to: birch.inlet"))

    def test_two_lines_swapped(self):
        assert told(self.CROSSED) == {
            (W, "sides-crossed", "lines.red_cross"),
            (W, "sides-crossed", "lines.green_cross"),
        }

    def test_says_whose_pedal_brakes_which_wheel(self):
        first, second = [item.message for item in outcomes(self.CROSSED) if item.rule == "sides-crossed"]
        assert first == (
            "green_cross leads from elder (right) to alder (left): the copilot's right pedal brakes red_wheel"
        )
        assert "the copilot's left pedal brakes green_wheel" in second

    def test_crossed_twice_is_crossed_still(self):
        edits = (*swapped("to: alder.inlet", "to: birch.inlet"),)
        text = planted(*edits, *swapped("to: valve.red_in", "to: valve.green_in"))
        crossed = {place for _, rule, place in told(text) if rule == "sides-crossed"}
        assert crossed == {"lines.red_cross", "lines.green_cross", "lines.red_press", "lines.green_press"}

    def test_after_the_valve(self):
        text = planted(*swapped("to: red_wheel.inlet", "to: green_wheel.inlet"))
        assert {rule for _, rule, _ in told(text)} == {"sides-crossed"}

    def test_the_pedal_tells_the_side_where_the_cylinder_does_not(self):
        text = self.CROSSED.replace("    side: left\n    bore", "    bore")
        assert told(text) == told(self.CROSSED)

    def test_what_has_no_side_serves_both(self):
        text = self.CROSSED.replace("side: left", "side: centre")
        assert told(text) == set()

    def test_a_cylinder_with_the_pedal_of_the_other_side(self):
        text = planted(*swapped("pedal: alder_pedal", "pedal: birch_pedal"))
        assert told(text) == {
            (W, "sides-crossed", "components.alder"),
            (W, "sides-crossed", "components.birch"),
        }


class TestSeatOrder:
    def test_fed_at_the_outlet(self):
        text = planted(*swapped("to: cedar.inlet", "from: cedar.outlet")).replace(
            "red_feed: {from: pot.red, from: cedar.outlet", "red_feed: {from: pot.red, to: cedar.outlet"
        )
        text = text.replace("red_cross: {to: cedar.inlet, ", "red_cross: {from: cedar.inlet, ")
        assert told(text) == {(W, "seat-order-wrong", "components.cedar")}
        assert "its outlet lies open to pot" in message(text, "seat-order-wrong")

    def test_side_by_side_each_pumps_through_the_other(self):
        """Both inlets at the reservoir, both outlets at a tee: at rest each lets the other's fluid back."""
        text = planted(
            ("to: cedar.inlet", "to: above.stem"),
            (
                "red_cross: {from: cedar.outlet, to: alder.inlet",
                "red_cross: {from: above.one, to: cedar.inlet",
            ),
            ("from: alder.outlet, to: valve.red_in", "from: above.other, to: alder.inlet"),
        )
        text = teed(
            text,
            "above",
            "below",
            a="cedar.outlet below.one",
            b="alder.outlet below.other",
            c="below.stem valve.red_in",
        )
        found = told(text)
        assert {item for item in found if item[1] == "seat-order-wrong"} == {
            (W, "seat-order-wrong", "components.alder"),
            (W, "seat-order-wrong", "components.cedar"),
        }
        messages = [item.message for item in outcomes(text) if item.rule == "seat-order-wrong"]
        assert any("with only the pilot's left pedal pressed" in words for words in messages)
        assert any("its outlet lies open to pot through cedar at rest" in words for words in messages)

    def test_a_reservoir_between_the_seats(self):
        spare = "      spare: {thread: 1/8 NPT female, faces: down}\n      red: {thread"
        text = planted(("to: alder.inlet", "to: mid.one"), ("      red: {thread", spare))
        text = teed(text, "mid", a="mid.other alder.inlet", b="pot.spare mid.stem")
        assert told(text) == {(W, "seat-order-wrong", "components.cedar")}

    def test_the_wheel_at_the_inlet(self):
        """Turned round with nothing before it: the wheel is at its inlet, its outlet at the reservoir."""
        text = planted(
            ("from: alder.outlet, to: valve.red_in", "from: alder.inlet, to: valve.red_in"),
            ("to: alder.inlet", "to: alder.outlet"),
        )
        assert (W, "seat-order-wrong", "components.alder") in told(text)


class TestSeries:
    SEALS = ("pedal: alder_pedal\n    seals when pressed: no", "pedal: alder_pedal\n    seals when pressed: ")

    def test_a_cylinder_near_the_wheel_that_seals(self):
        text = planted((self.SEALS[0], self.SEALS[1] + "yes"))
        assert told(text) == {(W, "held-by-the-other-seat", "components.alder")}
        words = message(text, "held-by-the-other-seat")
        assert words.startswith(
            "with the pilot's left pedal held and the copilot pressing, the copilot's left"
        )
        assert "leaves red_wheel as hard as it was pressed until the pilot lets go" in words

    def test_one_of_which_nobody_knows(self):
        text = planted((self.SEALS[0], self.SEALS[1] + "unknown"))
        assert told(text) == {("?", "series-capability-unknown", "components.alder")}

    @pytest.mark.parametrize("answer", ["yes", "unknown"])
    def test_the_one_near_the_reservoir_may_seal_as_it_likes(self, answer):
        cedar = "pedal: cedar_pedal\n    seals when pressed: "
        assert told(planted((f"{cedar}no", f"{cedar}{answer}"))) == set()

    def test_two_cylinders_of_one_pedal_are_pressed_together(self):
        text = planted((self.SEALS[0], self.SEALS[1] + "yes"), ("pedal: cedar_pedal", "pedal: alder_pedal"))
        assert told(text.replace("  cedar_pedal: {", "  other_pedal: {")) == set()


class TestReleaseAndSupply:
    def test_a_relief_port_that_stays_shut(self):
        text = planted(("pedal: cedar_pedal\n", "pedal: cedar_pedal\n    opens at rest: no\n"))
        assert told(text) == {(W, "no-release-path", "components.red_wheel")}
        assert message(text, "no-release-path").endswith("cedar lets nothing back at rest")

    def test_no_vent_holds_both_wheels(self):
        text = planted(("kind: reservoir\n", "kind: reservoir\n    vented: no\n"))
        assert {place for _, _, place in told(text)} == {"components.red_wheel", "components.green_wheel"}

    def test_a_feed_that_is_missing(self):
        text = planted((f"  red_feed: {{from: pot.red, to: cedar.inlet, {HOSE}}}\n", ""))
        found = {(item.rule, item.place) for item in outcomes(text)}
        assert ("no-fluid-supply", "components.cedar") in found
        assert ("no-fluid-supply", "components.alder") not in found  # fed by cedar, once that is fed
        joints = [item.place for item in evaluate_text(text).findings if item.rule == "joint-does-not-close"]
        assert sorted(joints) == ["components.cedar.ports.inlet", "components.pot.ports.red"]

    def test_more_unknown_than_can_be_tried(self):
        both = "seals when pressed: unknown\n    opens at rest: unknown"
        text = planted(
            ("to: alder.inlet", "to: mid.one"),
            ("to: birch.inlet", "to: far.one"),
            ("kind: reservoir\n", "kind: reservoir\n    vented: unknown\n"),
        ).replace("seals when pressed: no", both)
        joined = {"a": "mid.other alder.inlet", "b": "far.other birch.inlet", "c": "mid.stem far.stem"}
        text = teed(text, "mid", "far", **joined)
        asked = [item for item in outcomes(text) if item.rule == "no-release-path"]
        assert len(asked) == 1
        assert len(asked[0].missing) == 9


class TestValve:
    BETWEEN = (
        ("to: alder.inlet", "to: valve.red_in"),
        ("from: alder.outlet, to: valve.red_in", "from: valve.red_out, to: alder.inlet"),
        ("from: valve.red_out, to: red_wheel.inlet", "from: alder.outlet, to: red_wheel.inlet"),
    )

    def between(self) -> str:
        text = TWO_SEATS
        for old, new in reversed(self.BETWEEN):
            assert old in text
            text = text.replace(old, new, 1)
        return text

    def test_between_the_seats(self):
        text = self.between()
        assert told(text) == {(W, "parking-valve-not-after-both-seats", "components.valve")}
        assert "what the pilot's left pedal pressed on red_wheel" in message(
            text, "parking-valve-not-after-both-seats"
        )

    def test_in_the_branch_of_one_wheel_only(self):
        """One cylinder, a tee, and a valve in the line to one wheel: it holds that wheel, as it should."""
        text = ONE_FOR_TWO
        found = {(item.level, item.rule) for item in outcomes(text)}
        assert found == {("CAUTION", "parking-valve-traps-heat"), ("CAUTION", "one-leak-costs-all-wheels")}
        assert "traps fluid at red_wheel:" in message(text, "parking-valve-traps-heat")

    def test_the_heat_it_traps_by_hand(self):
        """0.00046 per degree Fahrenheit times 1.793 GPa, which is 260,053 psi: 119.6 psi, or 215 a kelvin."""
        assert "up to 120 psi for every degree Fahrenheit" in message(TWO_SEATS, "parking-valve-traps-heat")
        celsius = TWO_SEATS.replace("temperature: degF", "temperature: degC")
        assert "up to 215 psi for every degree Celsius" in message(celsius, "parking-valve-traps-heat")


ONE_FOR_TWO = f"""\
firmpedal: 1
aircraft: {{name: Sedgemoor, gear: tailwheel, brakes: hand, landing weight: 900 lb, type certificate: no}}
units: {{length: in, angle: deg, force: lbf, pressure: psi, temperature: degF}}
fluid: MIL-PRF-5606
components:
  lever:
    kind: master cylinder
    bore: 5/8
    stroke: 2
    pedal: grip
    reservoir: built in
    ports: {{outlet: {{thread: 1/8 NPT female, faces: down, seat: [20, 0, 8]}}}}
  valve:
    kind: parking valve
    stopped open: yes
    reachable strapped in: yes
    ways: [[in, out]]
    ports: {{in: {{thread: 1/8 NPT female, faces: up}}, out: {{thread: 1/8 NPT female, faces: down}}}}
  red_wheel:
    kind: caliper
    side: left
    pistons: {{bore: 1-1/2, count per side: 1}}
    ports: {{inlet: {{thread: 1/8 NPT female, faces: up}}}}
  green_wheel:
    kind: caliper
    side: right
    pistons: {{bore: 1-1/2, count per side: 1}}
    ports: {{inlet: {{thread: 1/8 NPT female, faces: up}}}}
pedals:
  grip: {{brake: {{pad: 5, arm: 2-1/2}}}}
bulkheads:
{tee("fork")}lines:
  stem: {{from: lever.outlet, to: fork.stem, {HOSE}}}
  red: {{from: fork.one, to: valve.in, {HOSE}}}
  on: {{from: valve.out, to: red_wheel.inlet, {HOSE}}}
  green: {{from: fork.other, to: green_wheel.inlet, {HOSE}}}
"""


class TestOneLeak:
    def test_one_cylinder_for_both_wheels(self):
        assert "red_wheel and green_wheel are on one circuit, pressed by lever" in message(
            ONE_FOR_TWO, "one-leak-costs-all-wheels"
        )

    def test_two_calipers_on_one_wheel_are_no_two_sides(self):
        text = ONE_FOR_TWO.replace("side: right", "side: left")
        assert "one-leak-costs-all-wheels" not in {item.rule for item in outcomes(text)}

    def test_a_shared_reservoir_is_worth_knowing_and_two_are_not(self):
        assert ("NOTE", "one-leak-costs-all-wheels", "components.pot") in USUAL
        green = "      green: {thread: 1/8 NPT female, faces: down, seat: [0, 1, 24]}\n"
        text = planted(
            (green, f"  jar:\n    kind: reservoir\n    ports:\n{green}"), ("pot.green", "jar.green")
        )
        assert "one-leak-costs-all-wheels" not in {item.rule for item in outcomes(text)}


class TestTee:
    def test_a_union_with_three_sides_is_atee(self):
        joints = {joint.name: joint for joint in evaluate_text(ONE_FOR_TWO).assembly.joints}
        assert [part.designation for part in joints["fork"].parts] == ["AN824-4D"]
        assert joints["fork"].mismatches == ()

    @pytest.mark.parametrize(
        ("without", "place"),
        [
            ("green", "bulkheads.fork"),
            ("on", "components.valve.ports.out"),
            ("stem", "components.lever.ports.outlet"),
        ],
    )
    def test_a_port_that_nothing_comes_to_is_told(self, without, place):
        lines = [line for line in ONE_FOR_TWO.splitlines() if not line.startswith(f"  {without}: {{from")]
        findings = evaluate_text("\n".join(lines)).findings
        assert place in {item.place for item in findings if item.rule == "joint-does-not-close"}
