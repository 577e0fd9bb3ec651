"""A first file for every layout: it reads, asks for everything, and never says sound."""

from itertools import product

import pytest
from typer.testing import CliRunner

from firmpedal.cli.main import app
from firmpedal.finding import Level, Verdict
from firmpedal.pipeline import evaluate_text
from firmpedal.project.layouts import CHOICES, Layout, LayoutError, chosen, layout_text
from firmpedal.project.mentions import mentions
from firmpedal.project.unknowns import unknowns
from firmpedal.report.measuring import form_sheets

EVERY = [Layout(*words) for words in product(*(CHOICES[key] for key in CHOICES if key != "length"))]
METRIC = Layout("nosewheel", "rod", "toe", "tandem", "yes", "mm")
WORDS = {"gear": "tailwheel", "leg": "rod", "brakes": "toe", "seats": "1", "valve": "no", "length": None}


def name_of(layout):
    return f"{layout.gear}-{layout.leg}-{layout.brakes}-{layout.seats}-{layout.valve}-{layout.length}"


def asked(evaluation):
    sheets = [sheet for sheet in form_sheets(evaluation) if sheet.title == "Also asked"]
    return [row.what for sheet in sheets for row in sheet.blocks[1].rows]


def test_there_are_192():
    assert len(EVERY) == len(set(EVERY)) == 192


@pytest.mark.parametrize("layout", [*EVERY, METRIC], ids=name_of)
def test_layout_reads_and_is_not_shown(layout):
    evaluation = evaluate_text(layout_text(layout, "a.yaml"), "a.yaml")
    assert evaluation.verdict is Verdict.NOT_SHOWN
    assert [finding for finding in evaluation.findings if finding.level is Level.WARNING] == []
    assert evaluation.violations == ()
    # Whatever a rule waits for stands in the file as unknown, but for what only the fitted hose shows.
    assert [what for what in asked(evaluation) if not what.startswith("the tightest bend")] == []


@pytest.mark.parametrize("layout", EVERY[::7], ids=name_of)
def test_every_unknown_is_marked_by_itself(layout):
    text = layout_text(layout, "a.yaml")
    said = [row.split("#")[0] for row in text.splitlines()]
    written = sum(row.count("unknown") + row.count("mark: assumed") for row in said)
    assert len(unknowns(evaluate_text(text).reading)) == written > 30


@pytest.mark.parametrize("layout", EVERY, ids=name_of)
def test_text_is_tidy(layout):
    text = layout_text(layout, "a.yaml")
    assert "<" not in text
    assert max(map(len, text.splitlines())) <= 120
    assert "measuring form" in text  # how it is printed is said by whoever shows the file


def circuit(layout):
    aircraft = evaluate_text(layout_text(layout, "a.yaml")).aircraft
    return {line.start: line.finish for line in aircraft.lines}


@pytest.mark.parametrize("seats", ["tandem", "side-by-side"])
def test_seats_in_series_are_fed_second_seat_first(seats):
    # Common practice, no source: reservoir, second seat, first seat, valve, wheel; left with left.
    lines = circuit(Layout("nosewheel", "leaf", "toe", seats, "yes"))
    assert lines["reservoir.left_out"] == "second_left_cylinder.inlet"
    assert lines["second_left_cylinder.outlet"] == "first_left_cylinder.inlet"
    assert lines["first_left_cylinder.outlet"] == "valve.left_in"
    assert lines["reservoir.right_out"] == "second_right_cylinder.inlet"
    assert lines["first_right_cylinder.outlet"] == "valve.right_in"
    assert lines["valve.right_out"] == "right_floor.above"


@pytest.mark.parametrize("seats", ["tandem", "side-by-side"])
@pytest.mark.parametrize("valve", ["yes", "no"])
def test_both_ways_of_sitting_have_the_same_circuit(seats, valve):
    one = circuit(Layout("nosewheel", "rod", "heel", "tandem", valve))
    assert circuit(Layout("nosewheel", "rod", "heel", seats, valve)) == one


SEATED = (
    "_pedals", "_cylinder", "_brake", "_front", "_feed", "_cross", "_to_valve", "_pedal_hose", "_cabin",
)  # fmt: skip


@pytest.mark.parametrize("layout", [one for one in EVERY if one.beside_the_middle], ids=name_of)
def test_beside_the_middle_nothing_of_a_seat_is_mirrored(layout):
    reading = evaluate_text(layout_text(layout, "a.yaml")).reading
    listed = [each.words for each in mentions(reading.text) if each.place.startswith("mirror.")]
    assert [name for name in listed if name.endswith(SEATED)] == []
    assert "left_wheel" in listed
    # Each place of a cylinder is asked for by itself: a mirror or a `like` gives none of them.
    tree = reading.tree
    own = [
        (name, port)
        for name, node in tree.entries["components"].entries.items() if name.endswith("_cylinder")
        for port in node.entries["ports"].entries.values()
        if not any(port.entries[key].via for key in ("faces", "seat"))
    ]  # fmt: skip
    assert len(own) == (8 if layout.in_series else 2)


def test_side_by_side_a_seat_has_its_two_pedals_where_they_were_measured():
    # The first seat's pedals stand 14 and 8 in left of the middle; no mirror brings the right one to +14.
    text = layout_text(Layout("tailwheel", "leaf", "toe", "side-by-side", "no"), "a.yaml")
    places = {"left": "[8, -14, 2]", "right": "[8, -8, 2]"}
    left, right = (text.index(f"  first_{side}_cylinder:") for side in places)
    for at, where in ((right, places["right"]), (left, places["left"])):
        outlet = text.index("outlet:", at)
        seat = text.index("seat: unknown", outlet)
        text = text[:seat] + f"seat: {where}" + text[seat + len("seat: unknown") :]
    parts = {each.name: each for each in evaluate_text(text).aircraft.components}
    found = [parts[f"first_{side}_cylinder"].ports[-1].seat.right.middle for side in places]
    assert found == pytest.approx([-14 * 0.0254, -8 * 0.0254])


def test_hand_brake_has_one_cylinder_for_two_wheels():
    layout = Layout("tailwheel", "rod", "hand", "1", "no")
    aircraft = evaluate_text(layout_text(layout, "a.yaml")).aircraft
    assert len(aircraft.cylinders) == 1
    assert len(aircraft.calipers) == 2
    lines = circuit(layout)
    assert (lines["tee.left_run"], lines["tee.right_run"]) == ("left_floor.above", "right_floor.above")


def stock_to_caliper(leg):
    layout = Layout("tailwheel", leg, "toe", "1", "no")
    aircraft = evaluate_text(layout_text(layout, "a.yaml")).aircraft
    return [
        line.made_of.kind.value
        for line in aircraft.lines
        if "left_floor.below" in line.start or line.finish == "left_caliper.inlet"
    ]


def test_each_leg_gets_what_bears_its_movement():
    assert stock_to_caliper("leaf") == stock_to_caliper("bow") == ["hose"]
    assert stock_to_caliper("rod") == stock_to_caliper("link") == ["tube", "hose"]


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ({"leg": None, "valve": None}, "Still to choose: --leg, --valve."),
        ({"leg": "spring"}, "--leg spring is not a choice."),
        ({"seats": "4"}, "--seats 4 is not a choice."),
        ({"length": "furlong"}, "--length furlong is not a choice."),
    ],
)
def test_refusal_says_why_and_lists_the_choices(words, said):
    with pytest.raises(LayoutError) as refusal:
        chosen(**{**WORDS, **words})
    lines = str(refusal.value)
    assert said in lines
    for key in words:
        assert all(f"   {choice}" in lines for choice in CHOICES[key])


def run(folder, *words):
    return CliRunner(env={"COLUMNS": "80"}).invoke(app, ["new", str(folder / "a.yaml"), *words])


FULL = ("--gear", "tailwheel", "--leg", "leaf", "--brakes", "heel", "--seats", "1", "--valve", "no")


def test_new_writes_what_check_and_form_can_read(tmp_path):
    result = run(tmp_path, *FULL)
    assert result.exit_code == 0
    assert "firmpedal form" in result.stdout
    checked = CliRunner().invoke(app, ["check", str(tmp_path / "a.yaml")])
    assert checked.exit_code == 1
    assert "NOT SHOWN" in checked.stdout


def test_new_overwrites_nothing(tmp_path):
    (tmp_path / "a.yaml").write_text("mine", encoding="utf-8")
    result = run(tmp_path, *FULL)
    assert result.exit_code == 2
    assert "nothing was written" in " ".join(result.stderr.split())
    assert (tmp_path / "a.yaml").read_text(encoding="utf-8") == "mine"


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ((), "Still to choose"),
        (("--like", "brindlewick", "--leg", "bow"), "An example has its own layout"),
        (("--like", "brindlewik"), "did you mean brindlewick?"),
    ],
)
def test_new_refuses_kindly_and_writes_nothing(tmp_path, words, said):
    result = run(tmp_path, *words)
    assert result.exit_code == 2
    assert said in result.stderr
    assert not (tmp_path / "a.yaml").exists()


def test_new_copies_an_example(tmp_path):
    assert run(tmp_path, "--like", "brindlewick").exit_code == 0
    assert (
        evaluate_text((tmp_path / "a.yaml").read_text(encoding="utf-8")).aircraft.aircraft.name
        == "Brindlewick"
    )
