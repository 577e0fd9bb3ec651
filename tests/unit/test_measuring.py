"""The measuring form: each unknown once, at its station; what is filled in goes off it."""

import pytest
from evaluated import EXAMPLE, example
from printed_pages import reader
from typer.testing import CliRunner

from firmpedal.cli.main import app
from firmpedal.export.packet import write
from firmpedal.export.typst import pdf
from firmpedal.finding import Verdict
from firmpedal.model.aircraft import Brakes
from firmpedal.model.display import display_of
from firmpedal.model.worked import in_words_of
from firmpedal.pipeline import evaluate_text
from firmpedal.project.edit import edited
from firmpedal.project.layouts import Layout, layout_text
from firmpedal.project.unknowns import unknowns
from firmpedal.report.measuring import form_sheets
from firmpedal.report.measuring_items import doubtful
from firmpedal.report.measuring_places import STATIONS
from firmpedal.report.measuring_words import ALIKE
from firmpedal.report.packet import footer_of
from firmpedal.report.sheet import Blanks, Heading

LAYOUTS = [
    Layout("tailwheel", "rod", "toe", "tandem", "yes", "mm"),
    Layout("nosewheel", "link", "heel", "1", "no"),
    Layout("nosewheel", "bow", "hand", "tandem", "yes"),
]
# What somebody could have measured, by key; figures are invented.
ANSWERS = {"answer": "yes", "direction": "aft"}
MOVED = "[0, 1/8 in, 0]"
FIGURES = {
    "material": "aluminium",
    "bore": "0.6 in",
    "stroke": "0.8 in",
    "rated pressure": "2000 psi",
    "count per side": "1",
    "pad": "5 in",
    "arm": "2.5 in",
    "pad gap": "0.02 in",
    "pad wear": "0.1 in",
    "capacity": "3 cu in",
    "air space": "1 cu in",
    "temperature": "150 degF",
    "seals": "nitrile",
    "body": "aluminium",
    "fluid": "MIL-PRF-5606",
    "landing weight": "1200 lb",
    "nose up": "10 deg",
    "bend radius": "0.75 in",
    "thickness": "0.1 in",
    "radius": "3 in",
    "thread": "1/8 NPT female",
}


HEAD = """firmpedal: 1
aircraft: {name: Quillfen, gear: tailwheel, brakes: toe, landing weight: 900 lb, type certificate: no}
units: {length: in, angle: deg, force: lbf, pressure: psi, temperature: degF, volume: cu in}
fluid: MIL-PRF-5606
"""
INCHES = display_of(example().aircraft.units)


def made(layout):
    return layout_text(layout, "a.yaml")


def round_the_aircraft(evaluation):
    """The rows of the walk by station, without those on the other side."""
    found, station = {}, ""
    blocks = next((s.blocks for s in form_sheets(evaluation) if s.title == "Round the aircraft"), ())
    for block in blocks:
        if isinstance(block, Heading):
            station = block.text
        elif isinstance(block, Blanks):
            rows = [row for row in block.rows if row != ALIKE]
            found.setdefault(station, []).extend((block.title, row.what) for row in rows)
    return found


def answer_to(item, number):
    if item.reads is not None and item.reads.method in ANSWERS:
        return ANSWERS[item.reads.method]
    if item.path.startswith("moving."):
        return MOVED
    return FIGURES.get(item.key, f"[{10 + 4 * number} in, {-9 - number} in, {4 - number} in]")


def filled_in(text, items):
    for number, item in enumerate(items):
        text = edited(text, item.path, answer_to(item, number))
    return text


@pytest.mark.parametrize("layout", LAYOUTS, ids=str)
def test_every_unknown_stands_on_the_form_once(layout):
    evaluation = evaluate_text(made(layout))
    rows = [row for rows in round_the_aircraft(evaluation).values() for row in rows]
    assert len(rows) == len(set(rows)) == len(unknowns(evaluation.reading))


@pytest.mark.parametrize("layout", LAYOUTS, ids=str)
def test_stations_come_in_the_order_of_the_walk(layout):
    stations = list(round_the_aircraft(evaluate_text(made(layout))))
    walk = [in_words_of(Brakes(layout.brakes), station) for station in STATIONS]
    assert stations == sorted(stations, key=walk.index)


def test_one_answer_takes_one_row_off():
    text = made(LAYOUTS[0])
    before = unknowns(evaluate_text(text).reading)
    after = unknowns(evaluate_text(filled_in(text, before[:1])).reading)
    assert [item.path for item in after] == [item.path for item in before[1:]]


@pytest.mark.parametrize("layout", LAYOUTS, ids=str)
def test_a_filled_file_has_nothing_left_on_its_form(layout):
    text = made(layout)
    evaluation = evaluate_text(filled_in(text, unknowns(evaluate_text(text).reading)))
    assert unknowns(evaluation.reading) == ()
    assert round_the_aircraft(evaluation) == {}
    assert evaluation.verdict in (Verdict.NOT_SOUND, Verdict.NOT_SHOWN)  # invented points are no good route
    waits = {missing.what for one in evaluation.not_shown for missing in one.missing}
    assert not [what for what in waits if "seat" in what or "bore" in what or "pad" in what]


def test_the_other_side_is_asked_for_once():
    evaluation = evaluate_text(made(LAYOUTS[1]))
    sheet = next(sheet for sheet in form_sheets(evaluation) if sheet.title == "Round the aircraft")
    titled = {block.title: block.rows for block in sheet.blocks if isinstance(block, Blanks)}
    rows = titled["left_cylinder (and right_cylinder)"]
    assert rows.count(ALIKE) == 1
    assert ALIKE not in titled["aircraft"]


def test_boxes_have_the_units_of_the_file():
    evaluation = evaluate_text(made(LAYOUTS[0]))
    sheet = next(sheet for sheet in form_sheets(evaluation) if sheet.title == "Round the aircraft")
    boxes = {row.what: row.boxes for block in sheet.blocks if isinstance(block, Blanks) for row in block.rows}
    assert boxes["outlet seat"] == ("aft mm", "right mm", "up mm")
    assert boxes["rated pressure"] == ("bar",)
    assert boxes["capacity"] == ("ml",)
    assert boxes["floats"] == ("yes or no",)


def test_guesses_are_listed_once_to_be_checked():
    found = dict(doubtful(example().reading, INCHES))
    assert found["attitudes.parked.nose up"] == "11 deg (assumed)"
    assert found["zones.left_brake_heat.where.radius"] == "6 in (assumed)"
    assert found["zones.left_brake_heat.where.ball"] == "[7.0, -35.0, -31.5] in (assumed)"
    assert found["components.left_caliper.ports.inlet.arm"] == "[0.8, -0.2, -1.2] (assumed)"
    assert not [path for path in found if "right_" in path]
    sheet = next(sheet for sheet in form_sheets(example()) if sheet.title == "To check")
    assert len(sheet.blocks[1].items) == len(found)


UNWRITTEN = """
lines:
  run:
    from: pedal.outlet
    to: brake.inlet
    made of: hose -4 PTFE braided
components:
  pedal:
    kind: master cylinder
    bore: 5/8
    stroke: 3/4
    pedal: press
    ports: {outlet: {thread: 1/8 NPT female}}
  brake:
    kind: caliper
    pistons: {bore: {value: 30 mm, mark: estimate}, count per side: 1}
    ports: {inlet: {thread: 1/8 NPT female}}
pedals: {press: {brake: {pad: 5, arm: 2-1/2}}}
"""


def test_what_rules_ask_besides_has_room_for_its_figure_and_is_counted():
    evaluation = evaluate_text(HEAD + UNWRITTEN)
    first, *_, asked = (sheet for sheet in form_sheets(evaluation) if sheet.title != "To check")
    assert asked.title == "Also asked"
    (block,) = (block for block in asked.blocks if isinstance(block, Blanks))
    rows = {row.what: row for row in block.rows}
    assert rows["brake pad gap"].boxes == ("in",)
    assert rows["brake pad gap"].how == "feeler gauges: all that the pads travel before both touch"
    assert rows["pedal outlet seat (aft, right, up)"].boxes == ("aft in", "right in", "up in")
    assert rows["the rated pressure of brake, from its maker"].boxes == ("psi",)
    assert next(row for what, row in rows.items() if what.startswith("the tightest bend")).boxes == ("in",)
    assert first.blocks[0].text.endswith(f" {len(rows)} that the rules ask for besides.")


def test_a_guess_with_its_own_unit_keeps_it_alone():
    assert dict(doubtful(evaluate_text(HEAD + UNWRITTEN).reading, INCHES)) == {
        "components.brake.pistons.bore": "30 mm (estimate)"
    }


def test_a_thread_is_checked_until_its_port_is_measured():
    place = "components.left_caliper.ports.inlet"
    text = edited(made(LAYOUTS[1]), f"{place}.thread", "1/8 NPT female")
    assert f"{place}.thread" in dict(doubtful(evaluate_text(text).reading, INCHES))
    measured = edited(text, f"{place}.seat", "[40, -33, -20]")
    assert f"{place}.thread" not in dict(doubtful(evaluate_text(measured).reading, INCHES))


def test_each_line_gets_rows_for_its_corners():
    evaluation = evaluate_text(made(LAYOUTS[1]))
    sheet = next(sheet for sheet in form_sheets(evaluation) if sheet.title == "Corners of the lines")
    titles = [block.title.partition(",")[0] for block in sheet.blocks if isinstance(block, Blanks)]
    assert titles == ["left_pedal_hose", "left_cabin", "left_leg", "left_across"]


def test_lines_with_corners_need_no_rows():
    assert "Corners of the lines" not in [sheet.title for sheet in form_sheets(example())]


def test_form_on_paper(tmp_path):
    evaluation = evaluate_text(made(LAYOUTS[0]))
    out = tmp_path / "form.pdf"
    pages = write(form_sheets(evaluation), evaluation, out)
    texts = [page.extract_text() for page in reader(out.read_bytes()).pages]
    assert len(texts) == pages
    assert all("My aircraft, as written" in text for text in texts)
    whole = "\n".join(texts)
    assert "aft face of the firewall" in whole
    assert whole.count("aft mm") == sum(
        row.boxes[:1] == ("aft mm",)
        for sheet in form_sheets(evaluation)
        for block in sheet.blocks
        if isinstance(block, Blanks)
        for row in block.rows
    )


def test_printing_twice_gives_the_same_bytes():
    evaluation = evaluate_text(made(LAYOUTS[1]))
    sheets, footer = form_sheets(evaluation), footer_of(evaluation)
    assert pdf(sheets, footer) == pdf(sheets, footer)


def test_form_on_the_screen():
    result = CliRunner(env={"COLUMNS": "80", "NO_COLOR": "1"}).invoke(
        app, ["form", str(EXAMPLE), "--option", "rigid"]
    )
    assert result.exit_code == 0
    text = result.stdout
    assert "left_wheel (and right_wheel)" in text
    assert "[ ] gear on jacks: ______ aft in  ______ right in  ______ up in" in text
    assert text.count("left_axle (and right_axle)") == 1


def test_form_of_a_file_that_cannot_be_used(tmp_path):
    result = CliRunner().invoke(app, ["form", str(tmp_path / "none.yaml")])
    assert result.exit_code == 2
