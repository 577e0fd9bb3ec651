"""A thread that nobody has looked at: it is to be measured, and told wherever parts are ordered by it."""

from __future__ import annotations

import csv
import io

import pytest

from firmpedal.export.text import parts_text
from firmpedal.finding import Level, Verdict
from firmpedal.model.part import Form, Gender, Interface
from firmpedal.pipeline import evaluate_text
from firmpedal.project import read_text
from firmpedal.project.edit import EditError
from firmpedal.project.edit_keys import with_value
from firmpedal.project.field_edits import put_in, with_mark
from firmpedal.project.field_places import thing_at
from firmpedal.project.fields import form_of
from firmpedal.project.layouts import CHOICES, Layout, layout_text
from firmpedal.project.measured import measured
from firmpedal.project.unknowns import next_unknown, unknowns
from firmpedal.quantity import Mark
from firmpedal.report.buying import parts_sheet
from firmpedal.report.buying_data import buying_data, order_csv
from firmpedal.report.measure_sheet import line_of, same_words
from firmpedal.report.measuring import form_sheets
from firmpedal.report.measuring_items import doubtful
from firmpedal.report.order import order_list
from firmpedal.report.retrofit import retrofit_sheet
from firmpedal.report.sheet import Blanks, Heading, Paragraph, Tone
from firmpedal.report.to_measure import to_measure
from firmpedal.web.form.fields import Around, field_html
from texts import EXAMPLES, edited, example, small

PIPE = "1/8 NPT female"
GUESS = f"{{value: {PIPE}, mark: assumed}}"
INLET, OUTLET, BLEEDER = (
    f"components.{port}.thread"
    for port in ("left_caliper.ports.inlet", "left_cylinder.ports.outlet", "left_caliper.ports.bleeder")
)
LAYOUT = layout_text(Layout(*(next(iter(CHOICES[key])) for key in CHOICES)), "a.yaml")


def supposing(text, *places, words=GUESS):
    for place in places:
        text = with_value(text, place, words, None)
    return text


def rows(text, option=None):
    found = to_measure(evaluate_text(text, option=option))
    return {one.at: one for one in found if one.at.endswith(".thread")}


# -- the file and the model -----------------------------------------------------------------------------


@pytest.mark.parametrize("mark", list(Mark), ids=lambda mark: mark.word)
def test_a_thread_is_supposed_unless_somebody_looked_or_a_source_says_it(mark):
    text = supposing(example("brindlewick"), INLET, words=f"{{value: {PIPE}, mark: {mark.word}}}")
    aircraft = evaluate_text(text).aircraft
    port = next(each for each in aircraft.calipers[0].ports if each.name == "inlet")
    assert port.thread.interface == Interface(Form.PIPE, "1/8-27", Gender.FEMALE)
    assert port.thread.supposed == (mark in (Mark.MEMORY, Mark.ESTIMATE, Mark.ASSUMED))
    assert ("left_caliper.inlet" in aircraft.supposed_ports) == port.thread.supposed


def test_what_is_written_without_a_mark_was_looked_at():
    for path in EXAMPLES.glob("*.yaml"):
        assert evaluate_text(path.read_text(encoding="utf-8")).aircraft.supposed_ports == {}


def test_a_mark_that_there_is_not_and_a_thread_that_there_is_not_are_said():
    text = small("quillfen")
    outlet = "outlet: {thread: 1/8 NPT female"
    wrong = edited(text, (outlet, "outlet: {thread: {value: 1/8 NPT female, mark: perhaps}"))
    assert "`perhaps` is not a mark" in read_text(wrong).problems[0].message
    wrong = edited(text, (outlet, "outlet: {thread: {value: 1/8 NPT, mark: assumed}"))
    assert "does not say male or female" in read_text(wrong).problems[0].message


# -- to measure -----------------------------------------------------------------------------------------


def test_each_supposed_thread_of_a_layout_is_a_row_with_how_to_tell_and_what_it_may_be():
    written = [item.path for item in unknowns(read_text(LAYOUT)) if item.supposed]
    assert len(written) == LAYOUT.count("mark: assumed}")
    found = rows(LAYOUT)
    assert sorted(found) == sorted(written)
    for one in found.values():
        assert "plug of known thread" in one.how
        assert "calliper and thread gauge" in one.how
        assert [offer.words for offer in one.offers] == [PIPE]
        assert "only supposed. Have you looked, and is it that?" in line_of(one)
    assert found[INLET].rules == ("joint-does-not-close",)
    assert found[BLEEDER].rules == ()  # nothing is screwed into it


def test_a_layout_is_not_shown_and_nothing_warns():
    evaluation = evaluate_text(LAYOUT)
    assert evaluation.verdict is Verdict.NOT_SHOWN
    assert [each for each in evaluation.findings if each.level is Level.WARNING] == []


def test_a_supposed_thread_alone_keeps_a_sound_design_from_being_shown():
    assert evaluate_text(small("quillfen")).verdict is Verdict.SOUND
    evaluation = evaluate_text(supposing(small("quillfen"), "components.caliper.ports.inlet.thread"))
    assert evaluation.verdict is Verdict.NOT_SHOWN
    (left,) = evaluation.not_shown
    assert (left.rule, left.missing[0].what) == ("joint-does-not-close", "which thread caliper.inlet has")


def test_the_form_has_a_box_for_it_beside_what_it_is_supposed_to_be():
    evaluation = evaluate_text(LAYOUT)
    blanks = [
        block for sheet in form_sheets(evaluation) for block in sheet.blocks if isinstance(block, Blanks)
    ]
    cylinder = next(block for block in blanks if block.title == "left_cylinder (and right_cylinder)")
    row = next(row for row in cylinder.rows if row.what.startswith("outlet thread"))
    assert (row.what, row.boxes) == (f"outlet thread (supposed: {PIPE})", ("",))
    assert "plug of known thread" in row.how
    assert not any(path.endswith(".thread") for path, _ in doubtful(evaluation.reading, evaluation.display))


def test_next_to_measure_leads_to_it():
    paths, last = set(), ("", -1)
    for _ in unknowns(read_text(LAYOUT)):
        last = next_unknown(read_text(LAYOUT), "", last)
        paths.add(last[0])
    assert {INLET, OUTLET, BLEEDER} <= paths


# -- the answer -----------------------------------------------------------------------------------------


@pytest.mark.parametrize("answer", [PIPE, "M10 x 1 female"])
def test_an_answer_ends_its_own_question_and_no_other(answer):
    before = rows(LAYOUT)
    after, _ = measured(LAYOUT, INLET, answer)
    assert edited(LAYOUT, *different(LAYOUT, after)) == after
    assert rows(after) == {at: one for at, one in before.items() if at != INLET}


def different(before, after):
    """The one line that changed, with the line before it, which is of its own port."""
    old, new = before.splitlines(), after.splitlines()
    assert len(old) == len(new)
    (at,) = [n for n, (one, other) in enumerate(zip(old, new, strict=True)) if one != other]
    around = "\n".join(old[at - 2 : at + 1])
    return [(around, "\n".join(new[at - 2 : at + 1]))]


def test_what_is_no_thread_is_refused_and_a_thread_that_was_seen_is_not_written_over():
    with pytest.raises(EditError) as refused:
        measured(LAYOUT, INLET, "1/8 NPT")
    assert "male or female" in str(refused.value)
    after, _ = measured(LAYOUT, INLET, PIPE)
    with pytest.raises(EditError):
        measured(after, INLET, "M10 x 1 female")


def test_the_other_side_is_told_that_it_gets_the_same_answer():
    for at in (INLET, BLEEDER):
        one = rows(LAYOUT)[at]
        assert one.others == (at.replace("left_", "right_"),)
        assert same_words(one).endswith("which the file makes alike: look there too.")


def test_threads_that_share_their_words_are_not_answered_by_one_of_them():
    text = edited(
        small("quillfen"),
        ("outlet: {thread: 1/8 NPT female", f"outlet: {{thread: &same {GUESS}"),
        ("inlet: {thread: 1/8 NPT female", "inlet: {thread: *same"),
    )
    (one,) = rows(text).values()
    assert [one.at, *one.others] == [place for place in read_text(text).spans if place.endswith(".thread")][
        :2
    ]
    for place in (one.at, *one.others):
        with pytest.raises(EditError) as refused:
            measured(text, place, PIPE)
        assert "shared" in str(refused.value)


def test_its_field_is_to_be_measured_and_has_its_mark():
    reading = read_text(LAYOUT)
    field = field_at(reading, INLET)
    assert field.supposed
    html = field_html(field, Around("a.yaml", None))
    assert "to measure" in html
    assert "How: a plug of known thread" in html
    assert f'value="{PIPE}"' in html
    assert '<option value="assumed" selected>' in html
    seen = read_text(with_mark(reading, field, "measured"))
    assert "to measure" not in field_html(field_at(seen, INLET), Around("a.yaml", None))
    assert set(rows(seen.text)) == set(rows(LAYOUT)) - {INLET}
    other = read_text(put_in(reading, field, field.rows[0].cells[0], "M10 x 1 female"))
    assert field_at(other, INLET).supposed  # another guess is a guess


def field_at(reading, place):
    group = form_of(reading, thing_at(reading, place))
    return next(field for field in group.all_fields() if field.place == place)


# -- what is ordered ------------------------------------------------------------------------------------


def supposed_one():
    """The example with one caliper's port supposed; its image on the right goes along."""
    return evaluate_text(supposing(example("brindlewick"), INLET), option="rigid")


def test_parts_that_hang_on_it_wait_and_no_others():
    evaluation = supposed_one()
    joints = {joint.name: joint for joint in evaluation.assembly.joints}
    bodies = [
        part.designation
        for name in ("left_caliper.inlet", "right_caliper.inlet")
        for part in joints[name].parts
        if part.category.value not in ("coupling nut", "sleeve")
    ]
    waiting = {row.item.designation: row for row in order_list(evaluation) if row.item.supposed}
    assert sorted(waiting) == sorted(set(bodies))
    for designation, row in waiting.items():
        assert len(row.item.supposed) == bodies.count(designation)
        assert "only supposed" in row.waits
        if row.quantity > len(row.item.supposed):
            assert f"{len(row.item.supposed)} of {row.quantity} wait" in row.waits
            assert "left_caliper.inlet and right_caliper.inlet" in row.waits


def test_the_list_says_how_many_wait_and_where():
    evaluation = supposed_one()
    first = parts_sheet(evaluation).blocks[0]
    count = sum(len(row.item.supposed) for row in order_list(evaluation))
    assert isinstance(first, Paragraph)
    assert first.tone is Tone.CAUTION
    assert count > 0
    assert first.text.startswith(
        f"{count} pieces wait for a look: at left_caliper.inlet and right_caliper.inlet"
    )


def test_letter_table_and_data_say_it_too():
    evaluation = supposed_one()
    told = {row.item.designation: row.waits for row in order_list(evaluation) if row.item.supposed}
    letter, table = parts_text(evaluation), list(csv.DictReader(io.StringIO(order_csv(evaluation))))
    data = {row["designation"]: row["wait"] for row in buying_data(evaluation)["order"]}
    assert "CAUTION: " in letter
    for designation, words in told.items():
        assert words in letter
        assert any(words in row["description"] for row in table if row["designation"] == designation)
        assert data[designation] == words


def test_what_a_retrofit_buys_waits_too():
    text = supposing(example("brindlewick"), INLET)
    blocks = retrofit_sheet(evaluate_text(text), evaluate_text(text, option="rigid")).blocks
    at = next(n for n, block in enumerate(blocks) if block == Heading("To buy"))
    bought = [row for row in blocks[at + 2].rows if "left_caliper.inlet" in row[3]]
    bodies = [row for row in bought if not row[1].startswith(("AN818", "AN819"))]
    count = sum(int(row[0]) for row in bodies)
    ports = "left_caliper.inlet and right_caliper.inlet"
    assert count > 0
    assert blocks[at + 1].text.startswith(f"{count} pieces wait for a look: at {ports} the threads are only")


def test_nothing_waits_once_it_was_seen():
    text, _ = measured(supposing(example("brindlewick"), INLET), INLET, PIPE)
    assert text == example("brindlewick")
    assert not any(row.item.supposed for row in order_list(evaluate_text(text, option="rigid")))


def test_a_port_that_takes_no_part_of_its_own_is_told_as_well():
    """A flare port takes the line's own nut; were it a pipe thread, a fitting would be missing."""
    text = supposing(small("quillfen"), "components.caliper.ports.inlet.thread", words=(
        "{value: -4 flare 37 male, mark: memory}"
    ))  # fmt: skip
    evaluation = evaluate_text(text)
    first = parts_sheet(evaluation).blocks[0]
    assert first.text.startswith("No pieces wait for a look: at caliper.inlet the thread is only supposed.")
