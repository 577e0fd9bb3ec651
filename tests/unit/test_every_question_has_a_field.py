"""Whatever the program asks to be measured has a field that takes it, and the answer ends the question."""

from __future__ import annotations

from itertools import product
from pathlib import Path

import pytest

from firmpedal.decide.clamp_sizes import clamp_size
from firmpedal.decide.pieces import find_line
from firmpedal.pipeline import evaluate_text
from firmpedal.project import read_text
from firmpedal.project.edit import EditError
from firmpedal.project.field_places import thing_at
from firmpedal.project.fields import form_of
from firmpedal.project.layouts import CHOICES, Layout, layout_text
from firmpedal.project.measured import measured, written_at
from firmpedal.report.feel import feel_asks
from firmpedal.report.heat import heat_asks
from firmpedal.report.stopping import stopping_asks
from firmpedal.report.to_measure import WITH_UNIT, to_measure
from firmpedal.units import to_unit
from texts import EXAMPLES, SMALL, edited, example, small

FOLDER = Path(__file__).parents[1]
RULES = FOLDER / "rules"
FILES = [
    *sorted(EXAMPLES.glob("*.yaml")),
    *sorted(SMALL.glob("*.yaml")),
    FOLDER / "files" / "everything.yaml",
]
LAYOUTS = [Layout(*words) for words in product(*(CHOICES[key] for key in CHOICES if key != "length"))]


def cases():
    for path in FILES:
        text = path.read_text(encoding="utf-8")
        for option in (None, *read_text(text).options):
            yield pytest.param(text, option, id=f"{path.stem} {option or ''}".strip())
    for layout in LAYOUTS[::11]:
        yield pytest.param(
            layout_text(layout, "a.yaml"), None, id=f"{layout.gear} {layout.leg} {layout.brakes}"
        )


CASES = list(cases())


def asked(evaluation):
    """Everything that is asked on any page: on the list, and beside the figures that wait for it."""
    pages = (to_measure, heat_asks, stopping_asks, feel_asks)
    return {(one.what, one.places): one for page in pages for one in page(evaluation)}.values()


def has_field(reading, place):
    """Whether a form has a field there, or fields of what stands there."""
    place = written_at(reading, place)
    thing = thing_at(reading, place)
    group = form_of(reading, thing) if thing else None
    return group is not None and any(
        f"{place}.".startswith(f"{field.place}.") or f"{field.place}.".startswith(f"{place}.")
        for field in group.all_fields()
    )


@pytest.mark.parametrize(("text", "option"), CASES)
def test_every_question_leads_to_a_field(text, option):
    evaluation = evaluate_text(text, option=option)
    found = asked(evaluation)
    assert found or evaluation.not_shown == ()
    nowhere = [
        one.what for one in found if not all(has_field(evaluation.reading, each) for each in one.places)
    ]
    assert nowhere == []


WORDS = {
    "normal": "aft",
    "faces": "aft",
    "arm": "down",
    "axis": "right",
    "seals": "nitrile",
    "material": "steel",
    "body": "aluminium",
    "fluid": "MIL-PRF-5606",
    "thread": "1/8 NPT female",
}
WITH_ITS_UNIT = WITH_UNIT.partition("{")[0]


def answer_to(one):
    """Words that its field takes; where the file has no unit for it, the row says one."""
    if WITH_ITS_UNIT in one.how:
        return f"1 {one.how.rpartition(WITH_ITS_UNIT)[2]}"
    if one.unit:
        return "yes" if one.unit == "yes or no" else "1"
    return WORDS.get(one.at.rpartition(".")[2], "1")


@pytest.mark.parametrize(("text", "option"), CASES)
def test_every_answer_in_one_figure_ends_its_question(text, option):
    before = {one.at: one for one in asked(evaluate_text(text, option=option)) if one.at}
    for at, one in before.items():
        text, _ = measured(text, at, answer_to(one), option)
    after = {one.at for one in asked(evaluate_text(text, option=option))}
    assert after & before.keys() == set()


# -- figures of a part in hand --------------------------------------------------------------------------

IN_HAND = {"outlet leg": "0.89", "stands off": "0.62", "body width": "0.43"}


@pytest.mark.parametrize(
    "path", sorted((RULES / "elbows-cannot-turn").glob("*.yaml")), ids=lambda path: path.stem
)
def test_what_is_asked_of_a_fitting_in_hand_is_asked_once_and_then_never_again(path):
    """The places of the fittings are exact in these files, so that nothing but the fittings is left open."""
    text, done = path.read_text(encoding="utf-8"), set()
    for _ in range(5):
        found = [one for one in evaluate_text(text).not_shown if one.rule == "elbows-cannot-turn"]
        places = {each.place for one in found for each in one.missing}
        new = {place for place in places if place.rpartition(".")[2] in IN_HAND}
        assert new & done == set()
        for place in new:
            text, _ = measured(text, place, IN_HAND[place.rpartition(".")[2]])
        done |= new
        if not new:
            break
    assert not new
    assert bool(done) == path.stem.startswith("unknown")


NEAR = (RULES / "too-near-to-stay-clear" / "failing.yaml").read_text(encoding="utf-8")
TUBE, RUN = "made of: tube 5052-O 1/4 x .035", "lines.run.outside diameter"
NO_TABLE = "made of: hose -4 rubber multiple wire braid"  # no source gives its outside


def near(stock, *keys):
    return evaluate_text(edited(NEAR, (TUBE, "\n    ".join((stock, *keys))), ("    bend radius: 3/4\n", "")))


def asked_of_clearance(evaluation):
    found = (one for one in evaluation.not_shown if one.rule == "too-near-to-stay-clear")
    return {each.place for one in found for each in one.missing}


def test_a_hose_whose_outside_no_table_has_is_asked_for_and_the_answer_is_used():
    assert asked_of_clearance(near(NO_TABLE)) == {RUN}
    answered = near(NO_TABLE, "outside diameter: 0.5")
    assert asked_of_clearance(answered) == set()
    (found,) = [one for one in answered.findings if one.rule == "too-near-to-stay-clear"]
    thicker = near(NO_TABLE, "outside diameter: 0.75")
    (nearer,) = [one for one in thicker.findings if one.rule == "too-near-to-stay-clear"]
    # the surface comes nearer by half of what the hose is thicker
    gap = [to_unit(each.measured.middle, "in") for each in (found, nearer)]
    assert gap[0] - gap[1] == pytest.approx(0.125)


def test_the_outside_that_was_measured_takes_the_place_of_the_usual_one():
    hose = "made of: hose -4 PTFE braided"
    usual = find_line(near(hose), "run").stock.outside_diameter
    assert [each.place for each in usual.missing] == [RUN]
    evaluation = near(hose, "outside diameter: 0.31")
    line = find_line(evaluation, "run")
    assert to_unit(line.stock.outside_diameter.middle, "in") == pytest.approx(0.31)
    assert line.stock.outside_diameter.exact
    assert clamp_size(evaluation, line).across == line.stock.outside_diameter


PLASTIC = "lines.left_line.rated pressure"


def test_plastic_of_a_size_that_no_table_rates_asks_for_its_makers_figure_and_takes_it():
    text = example("fennimoss")
    evaluation = evaluate_text(text)
    assert PLASTIC in {one.at for one in to_measure(evaluation)}
    text, _ = measured(text, PLASTIC, "640 psi")
    after = evaluate_text(text)
    assert PLASTIC not in {one.at for one in to_measure(after)}
    rated = find_line(after, "right_line").stock.rated_pressure  # the mirror image
    assert to_unit(rated.middle, "psi") == pytest.approx(640)


@pytest.mark.parametrize(
    ("stock", "key"),
    [
        ("made of: hose -4 PTFE braided", "rated pressure: 900"),
        (TUBE, "rated pressure: 900"),
        (TUBE, "outside diameter: 0.3"),
        ("made of: plastic nylon 1/4 x .040", "outside diameter: 0.3"),
    ],
)
def test_a_figure_that_the_stock_itself_tells_is_refused(stock, key):
    reading = read_text(edited(small("quillfen"), (TUBE, f"{stock}\n    {key}")))
    (problem,) = reading.problems
    assert "run is no" in problem.message
    assert key.partition(":")[0] in problem.suggestion


def test_a_straight_fitting_stands_out_as_far_as_it_was_measured():
    text = (RULES / "elbows-cannot-turn" / "unknown-body.yaml").read_text(encoding="utf-8")
    with pytest.raises(EditError):
        measured(text, "components.valve.ports.out.stands off", "a bit")
    after, _ = measured(text, "components.valve.ports.out.stands off", "0.7")
    evaluation = evaluate_text(after)
    port = next(port for port in evaluation.aircraft.components[3].ports if port.name == "out")
    assert to_unit(port.stands_off.middle, "in") == pytest.approx(0.7)
