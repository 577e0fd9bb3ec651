"""Both seats pressing one wheel, against the fluid of both chambers counted in each order by scipy."""

from __future__ import annotations

import math

import pytest
from scipy.optimize import fsolve
from two_seats import HOSE, TWO_SEATS

from firmpedal.analysis.pressure import FEET
from firmpedal.analysis.together_travel import Travel, pressed_together_all
from firmpedal.pipeline import evaluate_text
from firmpedal.quantity import Mark, exactly
from firmpedal.report.feel import feel_sheet
from firmpedal.report.feel_together import TITLE
from firmpedal.report.sheet import Heading, Paragraph, Table
from firmpedal.units import Dimension

BULK = 1.793e9  # Pa, MIL-PRF-5606
TUBE = "made of: tube 5052-O 1/4 x .035, bend radius: 0.75"
GAP = "    floats: no\n", "    floats: no\n    pad gap: 0.02\n"
SEALS = "seals when pressed: no\n"


def two_seats(adds="unknown", *edits, seals="no"):
    """All lines are tube, so that nothing is a range; the nearer cylinders answer as they are told to."""
    text = TWO_SEATS.replace(HOSE, TUBE).replace(*GAP)
    for name in ("alder", "birch"):
        start = text.index(f"  {name}:\n")
        told = f"seals when pressed: {seals}\n    feet add up: {adds}\n"
        text = text[:start] + text[start:].replace(SEALS, told, 1)
    for old, new in edits:
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    return evaluate_text(text, "two")


def together(evaluation, foot="hard"):
    found = pressed_together_all(evaluation.aircraft, evaluation.results, foot)
    return {each.cylinder: each for each in found}


def by_hand(evaluation, foot, share):
    """The most stroke of the nearer and of the farther cylinder: the fluid of both chambers, in each order.

    What the wheel and its lines take at a pressure is what the nearer pedal alone pushes, and what the line
    between the cylinders takes is what the farther one alone pushes more.
    """
    presses = {each.cylinder.name: each for each in evaluation.results.presses}
    budgets = {(each.cylinder, each.foot): each for each in evaluation.results.budgets}
    near, far = presses["alder"], presses["cedar"]
    own, inlet = (budgets[name, foot].pressure.middle for name in ("alder", "cedar"))
    areas = [math.pi / 4 * each.cylinder.bore.middle**2 for each in (near, far)]

    def wheel(pressure):
        return taken(near, pressure) * areas[0]

    def between(pressure):
        return taken(far, pressure) * areas[1] - wheel(pressure)

    out = own + share * inlet
    # The nearer one first: it fills the wheel by itself, then goes on as the farther one presses behind it.
    first = wheel(own) / areas[0]
    near_first = fsolve(
        lambda s: [
            s[0] * areas[0] - wheel(out),
            s[1] * areas[1] - between(inlet) - share * areas[0] * (s[0] - first),
        ],
        [first, first],
    )
    # The farther one first: it fills all; then the nearer one shuts its way and goes on.
    if out > inlet:
        far_first = fsolve(
            lambda s: [
                s[0] * areas[0] + wheel(inlet) - wheel(out),
                s[1] * areas[1] - between(inlet) - wheel(inlet) - share * areas[0] * s[0],
            ],
            [first, first],
        )
    else:  # too weak, it is pushed back
        far_first = [0.0, (between(inlet) + wheel(inlet)) / areas[1]]
    return [max(one, other) for one, other in zip(near_first, far_first, strict=True)]


def taken(pressing, pascal):
    pressure = exactly("by hand", Dimension.PRESSURE, float(pascal), Mark.DERIVED)
    return pressing.strokes_at(pressure, "by hand")[0].middle


WEAKER = ("alder_pedal: {side: left, seat: pilot, brake: {pad: 5, arm: 2-1/2}}",
          "alder_pedal: {side: left, seat: pilot, brake: {pad: 5, arm: 4}}")  # fmt: skip


@pytest.mark.parametrize("foot", FEET)
@pytest.mark.parametrize("edits", [(), (WEAKER,)], ids=["alike", "weaker"])
def test_where_feet_add_up_both_go_as_far_as_the_chambers_of_both_ask(foot, edits):
    """With a rod up to half as thick as the bore 0.75 to 1 of the piston's back counts.

    The nearer one to the last digit. Of what the nearer one raises on top the fluid, already pressed by p_i,
    takes less by up to p_i / B: ours is the most, and no more than that above.
    """
    evaluation = two_seats("yes", *edits)
    found = together(evaluation, foot)
    assert found["alder"].travel is Travel.PUSHED_ON
    assert found["cedar"].travel is Travel.DRAWN_ON
    ends = [by_hand(evaluation, foot, share) for share in (0.75, 1.0)]
    near, far = found["alder"].strokes[0], found["cedar"].strokes[0]
    assert near.span == pytest.approx([end[0] for end in ends], rel=1e-9)
    budgets = {(each.cylinder, each.foot): each for each in evaluation.results.budgets}
    firmer = budgets["cedar", foot].pressure.middle / BULK
    for ours, (_, exact) in zip(far.span, ends, strict=True):
        assert 0 <= ours - exact <= firmer * (ours - found["cedar"].alone[0].middle)
    assert near.low > found["alder"].alone[0].high
    assert far.low > found["cedar"].alone[0].high


@pytest.mark.parametrize("edits", [(), (WEAKER,)], ids=["alike", "weaker"])
def test_where_the_harder_foot_counts_none_goes_further_than_alone(edits):
    evaluation = two_seats("no", *edits)
    for name, each in together(evaluation).items():
        assert each.travel is Travel.NO_FURTHER
        assert each.strokes == each.alone, name
    near, far = by_hand(evaluation, "hard", 0.0)
    alone = {each.cylinder: each.cold.middle for each in evaluation.results.budgets if each.foot == "hard"}
    assert near == pytest.approx(alone["alder"])
    assert far == pytest.approx(alone["cedar"])


def test_a_cylinder_that_shuts_the_other_out_is_not_pushed_on():
    found = together(two_seats("unknown", seals="yes"))
    assert {each.travel for each in found.values()} == {Travel.NO_FURTHER}


def test_not_answered_it_is_from_alone_to_the_most_and_the_maker_is_asked():
    found, most = together(two_seats()), together(two_seats("yes"))
    for name in ("alder", "cedar"):
        cold, alone = found[name].strokes[0], found[name].alone[0]
        assert cold.low == pytest.approx(alone.low)
        assert cold.high == pytest.approx(most[name].strokes[0].high)
        assert [each.place for each in found[name].asked] == ["components.alder.feet add up"]


SIDE_BY_SIDE = f"""\
  red_cross: {{from: cedar.outlet, to: tee.back, {TUBE}}}
  red_near: {{from: alder.outlet, to: tee.front, {TUBE}}}
  red_press: {{from: tee.down, to: valve.red_in, {TUBE}}}
"""
IN_SERIES = f"""\
  red_cross: {{from: cedar.outlet, to: alder.inlet, {TUBE}}}
  red_press: {{from: alder.outlet, to: valve.red_in, {TUBE}}}
"""
TEE = """\
bulkheads:
  tee:
    through panel: no
    sides: {back: {seat: [30, 0, 0]}, front: {seat: [31, 0, 0]}, down: {seat: [31, 0, -1]}}
lines:
"""


def test_cylinders_side_by_side_go_no_further():
    """Both press into one line, neither through the other."""
    found = together(two_seats("yes", (IN_SERIES, SIDE_BY_SIDE), ("lines:\n", TEE)))
    assert (found["alder"].travel, found["cedar"].travel) == (Travel.NO_FURTHER, Travel.NO_FURTHER)
    assert found["birch"].travel is Travel.PUSHED_ON


def test_three_pedals_on_one_wheel_are_not_reckoned_and_it_says_why():
    """A third seat's cylinder between reservoir and the second."""
    third = """\
  third:
    kind: master cylinder
    side: left
    bore: 5/8
    stroke: 2
    pedal: third_pedal
    ports:
      inlet: {thread: 1/8 NPT female, faces: up, seat: [5, 0, 22]}
      outlet: {thread: 1/8 NPT female, faces: down, seat: [5, 0, 20]}
"""
    feed = f"  red_feed: {{from: pot.red, to: cedar.inlet, {TUBE}}}\n"
    fed = feed.replace("cedar", "third") + f"  red_third: {{from: third.outlet, to: cedar.inlet, {TUBE}}}\n"
    pedal = "  third_pedal: {side: left, seat: third, brake: {pad: 5, arm: 2-1/2}}\n"
    edits = (("  valve:\n", f"{third}  valve:\n"), ("pedals:\n", f"pedals:\n{pedal}"), (feed, fed))
    evaluation = two_seats("yes", *edits)
    assert together(evaluation)["alder"].travel is Travel.NOT_RECKONED
    texts = " ".join(getattr(each, "text", "") for each in said(evaluation))
    assert "alder: not reckoned, for 3 pedals press one wheel" in texts


def said(evaluation):
    """What stands under the heading of both seats; nothing where there is none."""
    blocks = feel_sheet(evaluation).blocks
    headings = [n for n, each in enumerate(blocks) if isinstance(each, Heading)]
    starts = [n for n in headings if blocks[n].text == TITLE]
    return [each for start in starts for each in blocks[start : min(n for n in headings if n > start)]]


def test_the_sheet_tells_whether_a_pedal_comes_to_its_end():
    """At the hard foot 0.133 in are used alone, 0.115 of it for the gap; pushed on, 0.146 to 0.150."""
    for stroke, ends in (("2", "no"), ("0.148", "it may"), ("0.14", "yes")):
        text = two_seats("yes").reading.text.replace("stroke: 2\n", f"stroke: {stroke}\n")
        sheet = feel_sheet(evaluate_text(text, "two"))
        (table,) = [
            each for each in sheet.blocks if isinstance(each, Table) and each.columns[-1] == "at its end"
        ]
        assert [row[0] for row in table.rows] == ["alder_pedal", "birch_pedal", "cedar_pedal", "elder_pedal"]
        words = " ".join(each.text for each in sheet.blocks if isinstance(each, Paragraph))
        assert ("A pedal at its end holds what it has" in words) is (ends != "no")
        assert ends in {row[-1] for row in table.rows}


def test_where_one_side_alone_goes_further_the_sheet_names_the_pedals_that_do_not():
    """The right side's nearer cylinder adds the feet up, the left side's does not."""
    text = two_seats("yes").reading.text.replace("feet add up: yes", "feet add up: no", 1)
    evaluation = evaluate_text(text, "two")
    assert {each.travel for each in together(evaluation).values()} == set(Travel) - {Travel.NOT_RECKONED}
    texts = " ".join(getattr(each, "text", "") for each in said(evaluation))
    assert "the pad of alder_pedal and cedar_pedal goes no further than by itself" in texts
    assert "no pedal goes further" not in texts


def test_one_seat_alone_has_no_such_words():
    single = TWO_SEATS.replace(*GAP).replace("pedal: cedar_pedal", "pedal: alder_pedal").replace(
        "pedal: elder_pedal", "pedal: birch_pedal"
    )  # fmt: skip
    evaluation = evaluate_text(single, "two")
    assert together(evaluation) == {}
    assert said(evaluation) == []
    assert said(two_seats()) != []
