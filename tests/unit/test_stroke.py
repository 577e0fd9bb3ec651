"""What the cylinder's stroke is spent on, added up once more by hand."""

from __future__ import annotations

import math

import pytest

from firmpedal.finding import Finding
from firmpedal.pipeline import evaluate_text
from firmpedal.project import read_text
from firmpedal.report.story import cautions
from firmpedal.units import to_unit
from texts import edited, example, small

TUBE = "made of: tube 5052-O 1/4 x .035\n"
HOSE = (TUBE, "made of: hose -4 PTFE braided\n")
NYLON = (TUBE, "made of: plastic nylon 1/4 x .040\n")
WHOLE = 10 + 6 - 2 * 0.75 + 0.75 * math.pi / 2  # developed length of the tube
PATH = 10 + 6
AREA = math.pi / 4 * 0.625**2
GAP = math.pi / 4 * 1.5**2 * 0.020
PSI = 6894.757293168


def evaluated(*edits: tuple[str, str]):
    return evaluate_text(edited(small("quillfen"), *edits), "text")


def budget(foot: str, *edits: tuple[str, str]):
    return next(item for item in evaluated(*edits).results.budgets if item.foot == foot)


def heat(temperature: str) -> tuple[str, str]:
    zone = f"{{where: {{up above: -99}}, heat: brake, temperature: {temperature}}}"
    return "lines:\n", f"zones:\n  hot: {zone}\nlines:\n"


def pressure(force: float) -> float:
    return force * 2 / AREA  # psi


def growth(load: float, outside: float, wall: float, modulus: float, poisson: float) -> float:
    """Share by which the bore of a closed tube grows: two hoop strains and one along, by Lame's stresses."""
    bore = outside - 2 * wall
    share = load / (outside**2 - bore**2)
    hoop, radial, axial = share * (outside**2 + bore**2), -load, share * bore**2
    around = (hoop - poisson * (radial + axial)) / modulus
    along = (axial - poisson * (hoop + radial)) / modulus
    return 2 * around + along


def strokes(value) -> tuple[float, float]:
    return to_unit(value.low, "in"), to_unit(value.high, "in")


def cubic(value) -> tuple[float, float]:
    return to_unit(value.low, "cu in"), to_unit(value.high, "cu in")


def moduli(line) -> tuple[float, float]:
    material = line.stock.material
    return material.elastic_modulus.middle / PSI, material.poisson_ratio.middle


def test_pad_gap_alone():
    assert strokes(budget("normal").gap) == pytest.approx((GAP / AREA, GAP / AREA))


@pytest.mark.parametrize(("foot", "force"), [("normal", 75), ("hard", 150), ("panic", 200)])
def test_gap_wall_and_fluid_of_a_tube(foot, force):
    evaluation = evaluated()
    (line,), load = evaluation.laid, pressure(force)
    volume = math.pi / 4 * 0.18**2 * WHOLE
    wall = volume * growth(load, 0.25, 0.035, *moduli(line))
    bulk = evaluation.aircraft.fluid.bulk_modulus
    fluid = [volume * (1 - math.exp(-load * PSI / bound)) for bound in (bulk.high, bulk.low)]
    found = next(item for item in evaluation.results.budgets if item.foot == foot)
    assert strokes(found.cold) == pytest.approx([(GAP + wall + part) / AREA for part in fluid], rel=1e-6)
    assert found.hot.span == found.cold.span


def test_two_calipers_take_twice_the_gap():
    twin = "  twin:\n    kind: caliper\n    pistons: {bore: 1-1/2, count per side: 1}\n    pad gap: 0.020\n"
    twin += "    ports: {inlet: {thread: 1/8 NPT female, faces: forward, seat: [20, 0, -6]}}\n"
    out = "      bleed: {thread: 1/8 NPT female, faces: aft, seat: [17, 0, -6]}\n"
    inlet = "      inlet: {thread: 1/8 NPT female, faces: forward, seat: [16, 0, -6]}\n"
    cross = "  cross: {from: caliper.bleed, to: twin.inlet, made of: hose -4 PTFE braided}\n"
    edits = ((inlet, inlet + out), ("pedals:\n", f"{twin}pedals:\n"), ("lines:\n", f"lines:\n{cross}"))
    assert strokes(budget("normal", *edits).gap) == pytest.approx((2 * GAP / AREA, 2 * GAP / AREA))


def test_a_hose_swells_from_nothing_to_its_published_limit():
    found = budget("hard", HOSE)
    (swell,) = found.swells
    assert to_unit(swell.wall.low, "cu in") == 0
    assert swell.wall.high > 0
    assert swell.hot_wall == swell.wall


class TestHotNylon:
    """Modulus by temperature from the table of the tube's maker, the softer of two rows."""

    def wall(self, *edits: tuple[str, str]):
        (swell,) = budget("normal", NYLON, *edits).swells
        return swell

    def by_hand(self, *megapascals: float) -> tuple[float, ...]:
        """At 75 lb, in cu in; Poisson's ratio 0.40."""
        volume = math.pi / 4 * 0.17**2 * PATH
        stiff = (each * 1e6 / PSI for each in megapascals)
        return tuple(volume * growth(pressure(75), 0.25, 0.040, each, 0.40) for each in stiff)

    def test_cold_it_may_be_any_grade(self):
        """35 and 100 kgf/mm^2 on the sheet: 343 and 981 MPa."""
        swell = self.wall()
        assert cubic(swell.wall) == pytest.approx(self.by_hand(980.665, 343.23), rel=1e-3)
        assert swell.hot_wall.span == swell.wall.span

    def test_the_grade_tells_it(self):
        """50 kgf/mm^2 of S20."""
        graded = (NYLON[0], NYLON[1].replace("nylon", "nylon 11 S20"))
        (swell,) = budget("normal", graded, heat("70 degC")).swells
        assert cubic(swell.wall) == pytest.approx(self.by_hand(490.33, 490.33), rel=1e-3)
        assert cubic(swell.hot_wall) == pytest.approx(self.by_hand(186.33, 186.33), rel=5e-3)

    def test_what_its_maker_says_wins(self):
        """480 and 200 MPa in the file."""
        told = (NYLON[0], f"{NYLON[1]}    stiffness: {{cool: 480 MPa, hot: 200 MPa}}\n")
        (swell,) = budget("normal", told, heat("70 degC")).swells
        assert cubic(swell.wall) == pytest.approx(self.by_hand(480, 480), rel=1e-6)
        assert cubic(swell.hot_wall) == pytest.approx(self.by_hand(200, 200), rel=1e-6)

    def test_a_verdict_inside_the_range_waits_for_the_grade(self):
        """The panic foot takes from 0.18 to 0.30 in of stroke, by the grade; a quarter is there."""
        evaluation = evaluated(NYLON, ("stroke: 3/4", "stroke: 1/4"))
        (item,) = [each for each in evaluation.not_shown if each.rule == "stroke-short"]
        assert any("stiffness of the wall of run more closely" in each.what for each in item.missing)

    def test_metal_has_no_grade_to_tell(self):
        text = edited(small("quillfen"), (TUBE, f"{TUBE}    stiffness: {{cool: 480 MPa}}\n"))
        (problem,) = read_text(text, "text").problems
        assert problem.message.startswith("run is not plastic")

    def test_growth_beyond_small_strain_is_said_in_the_sum(self):
        """At 75 lb, 489 psi on 167 MPa, the bore would grow by 11 to 12 percent; in metal by 0.03."""
        (swell,) = budget("normal", NYLON, heat("70 degC")).swells
        assert any("beyond the small growth" in words for words in cautions(swell.hot_wall))
        assert cautions(budget("normal").swells[0].wall) == ()

    @pytest.mark.parametrize("temperature", ["176 degF", "80 degC", "60 degC", "24 degC"])
    def test_up_to_the_warmest_row_it_is_as_soft_as_the_next_row(self, temperature):
        """17 and 19 kgf/mm^2, printed as whole numbers and stored in whole megapascals."""
        found = cubic(self.wall(heat(temperature)).hot_wall)
        assert found == pytest.approx(self.by_hand(19 * 9.80665, 17 * 9.80665), rel=5e-3)

    def test_beyond_the_table_nothing_is_known(self):
        swell = self.wall(heat("81 degC"))
        assert swell.wall.known
        assert swell.hot_wall.span is None
        assert "no published table says how stiff nylon is" in swell.hot_wall.missing[0].what

    def test_an_unknown_temperature(self):
        swell = self.wall(heat("unknown"))
        assert swell.hot_wall.span is None
        assert swell.hot_wall.missing[0].place == "zones.hot.temperature"

    def test_what_is_too_much_cold_is_found_whatever_the_heat(self):
        found = evaluated(NYLON, heat("unknown"), ("stroke: 3/4", "stroke: 0.1")).findings
        (finding,) = [item for item in found if item.rule == "stroke-short"]
        assert isinstance(finding, Finding)


class TestUnknown:
    def test_fluid(self):
        found = budget("normal", ("fluid: MIL-PRF-5606", "fluid: unknown"))
        assert found.gap.known
        assert [missing.place for missing in found.cold.missing] == ["fluid"]

    def test_pad_gap(self):
        found = budget("normal", ("pad gap: 0.020", "pad gap: unknown"))
        assert found.gap.span is None

    def test_length(self):
        found = budget("normal", ("[10, 0, -6]", "[10, unknown, -6]"))
        assert found.gap.known
        assert found.cold.span is None


def test_wear_of_both_pads_follows_the_piston():
    (wear,) = evaluated().results.wear
    assert to_unit(wear.volume.middle, "cu in") == pytest.approx(math.pi / 4 * 1.5**2 * 0.2)
    (wear,) = evaluated(("pad wear: 0.10", "pad wear: unknown")).results.wear
    assert wear.volume.span is None


@pytest.mark.parametrize("free", [0.03, 0.12])
def test_the_free_stroke_is_used_before_any_fluid_is_pushed_out(free):
    """It comes on top of the stroke at a foot, cold and hot, and of the gap alone it is no part."""
    text = example("brindlewick")
    given = text.replace("    stroke: 0.80\n", f"    stroke: 0.80\n    free stroke: {free}\n", 1)
    assert given != text
    plain, with_free = (evaluate_text(each, "x").results.budgets for each in (text, given))
    compared = 0
    for one, other in zip(plain, with_free, strict=True):
        if one.cylinder == "left_cylinder":
            compared += 1
            for name in ("cold", "hot"):
                more = getattr(other, name).middle - getattr(one, name).middle
                assert more == pytest.approx(free * 0.0254)
    assert compared
