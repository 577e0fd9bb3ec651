"""Each block as HTML, read back as a tree."""

from __future__ import annotations

import pytest
from evaluated import awkward, example
from html_trees import names, of_class, read, tags, tree, words

from firmpedal.export.html import sheet_html
from firmpedal.export.plain import plain
from firmpedal.export.svg import svg
from firmpedal.report.measuring import form_sheets
from firmpedal.report.packet import packet_sheets
from firmpedal.report.sheet import (
    BOX,
    Blank,
    Blanks,
    Bullets,
    Contents,
    Dot,
    Drawing,
    Facts,
    Fields,
    Figure,
    Figures,
    Group,
    Heading,
    Label,
    Paragraph,
    Sheet,
    Stroke,
    Sum,
    Tone,
)

SVG = "{http://www.w3.org/2000/svg}"
DRAWING = Drawing(
    (490.0, 100.0),
    (Stroke(((0, 50), (490, 50)), arrows=True), Dot((10, 10), 2), Label(" 1  mark", (50, 50), 10.5)),
    "What it shows",
)


def test_a_sheet_is_an_article_under_its_title():
    root = read(sheet_html(Sheet("Title & more", (Heading("Part"),), subtitle="below")))
    article = root.find("article")
    assert article.get("aria-label") == "Title & more"
    assert tags(article) == ["h2", "p", "h3"]
    assert words(article) == "Title & morebelowPart"


@pytest.mark.parametrize("tone", [Tone.WARNING, Tone.CAUTION, Tone.NOTE])
def test_what_is_told_says_its_word_first(tone):
    (told,) = tree(Paragraph("keep away", tone))
    assert words(told) == f"{tone} keep away"
    assert told.get("class") == f"fp-told fp-{tone.lower()}"
    assert told[0].tag == "strong"


@pytest.mark.parametrize("tone", [Tone.VERDICT, Tone.LEAD, Tone.SMALL])
def test_other_tones_are_classes(tone):
    (paragraph,) = tree(Paragraph("so", tone))
    assert paragraph.get("class") == f"fp-{tone}"


def test_a_plain_paragraph_has_no_class():
    (paragraph,) = tree(Paragraph("so"))
    assert paragraph.attrib == {}


def test_bullets_are_a_list():
    (made,) = tree(Bullets(("one", "two")))
    assert made.tag == "ul"
    assert [words(item) for item in made] == ["one", "two"]
    assert names(made) == []


def test_bullets_with_boxes_are_checkboxes_in_their_labels():
    (made,) = tree(Bullets(("one", "two"), boxes=True))
    for item, text in zip(made, ("one", "two"), strict=True):
        (label,) = item
        assert label.tag == "label"
        assert label.find("input").get("type") == "checkbox"
        assert words(label) == text


def test_facts_are_terms_and_a_row_without_a_term_goes_on():
    (made,) = tree(Facts((("try", "this"), ("", "that"), ("why", "so"))))
    assert [[(each.tag, words(each)) for each in group] for group in made] == [
        [("dt", "try"), ("dd", "this"), ("dd", "that")],
        [("dt", "why"), ("dd", "so")],
    ]


def test_figures_have_label_figure_and_note():
    (made,) = tree(Figures((Figure("cut to", "39.67 in", "at A"), Figure("bends", "3"))))
    assert [[words(each) for each in item] for item in made] == [
        ["cut to", "39.67 in", "at A"],
        ["bends", "3"],
    ]
    assert of_class(made, "fp-figure")[0].text == "39.67 in"


def test_fields_are_inputs_in_their_labels():
    (made,) = tree(Fields(("made by", "date")))
    assert [label.tag for label in made] == ["label", "label"]
    assert [words(label) for label in made] == ["made by", "date"]
    assert all(label.find("input").get("type") == "text" for label in made)


def test_blanks_are_a_group_with_a_box_and_an_input_for_each_figure():
    rows = (Blank("bore", "across the piston", ("in",)), Blank("seat", "", ("aft in", "up in")))
    (made,) = tree(Blanks("left_cylinder", rows))
    assert made.tag == "fieldset"
    assert made[0].tag == "legend"
    assert [each.get("aria-label") for each in of_class(made, "fp-blank")] == ["bore", "seat"]
    assert len(set(names(made))) == 2 + 3
    assert [words(each) for each in of_class(made, "fp-field")] == ["in", "aft in", "up in"]


def test_a_sum_gives_result_then_equation_then_figures():
    (made,) = tree(Sum("p", "p = F / A", "(75 lbf) / (1 in\u00b2)", "p = 75 psi", ("F: foot",), "A book"))
    assert [words(each) for each in made] == [
        "p = 75 psi",
        "p = F / A",
        "(75 lbf) / (1 in\u00b2)",
        "F: foot",
        "Source: A book",
    ]


def test_a_sum_leaves_out_what_it_has_not():
    (made,) = tree(Sum("p", "", "", "p = 75 psi"))
    assert len(made) == 1


def test_a_group_holds_its_blocks_and_contents_are_for_paper():
    (made,) = tree(Group((Heading("a"), Contents(), Paragraph("b"))), Contents())
    assert made.get("class") == "fp-group"
    assert tags(made) == ["h3", "p"]


def test_a_drawing_takes_the_colour_of_the_text_and_is_named():
    (figure,) = tree(DRAWING)
    picture = figure.find(f".//{SVG}svg")
    assert picture.get("fill") == "currentColor"
    assert {each.get("stroke") for each in picture.iter(f"{SVG}polyline")} == {"currentColor"}
    assert picture.get("role") == "img"
    assert picture.get("aria-label") == "Drawing. What it shows. 1 mark"
    assert words(figure.find("figcaption")) == "What it shows"
    assert "black" not in str(list(picture.iter()))


def test_the_smallest_letters_of_a_drawing_are_as_large_as_the_text():
    (figure,) = tree(DRAWING)
    picture = figure.find(f".//{SVG}svg")
    assert picture.get("width") == f"{490 / 10.5:.3f}em"
    assert picture.get("viewBox") == "0 0 490 100"


@pytest.mark.parametrize(
    ("mark", "left", "right"),
    [
        (Stroke(((200, 10), (300, 20))), 192, 308),
        (Dot((200, 10), 5), 187, 213),
        (Label("x" * 10, (200, 10), 10.0, "start"), 192, 268.2),  # 10 letters of 0.602 of their size
        (Label("x" * 10, (200, 10), 10.0, "middle"), 161.9, 238.1),
        (Label("x" * 10, (200, 10), 10.0, "end"), 131.8, 208),
        (Label("x" * 10, (200, 10), 10.0, "start", 90.0), 131.8, 268.2),
        (Stroke(((-50, 10), (600, 20))), 0, 490),
    ],
)
def test_blank_paper_beside_a_drawing_is_taken_off(mark, left, right):
    (figure,) = tree(Drawing((490.0, 100.0), (mark,)))
    seen = [float(number) for number in figure.find(f".//{SVG}svg").get("viewBox").split()]
    assert seen == pytest.approx([left, 0, right - left, 100], abs=0.051)


def test_an_empty_drawing_keeps_its_size():
    (figure,) = tree(Drawing((490.0, 100.0), ()))
    assert figure.find(f".//{SVG}svg").get("viewBox") == "0 0 490 100"


def test_paper_keeps_its_black():
    made = svg(DRAWING)
    assert 'stroke="black"' in made
    assert "currentColor" not in made
    assert "fill=" not in made.replace('fill="none"', "")


def test_the_box_of_a_drawing_can_be_reached_and_scrolled_by_keys():
    (figure,) = tree(DRAWING)
    assert figure[0].get("tabindex") == "0"
    assert figure[0].get("aria-label")


def test_the_same_words_on_two_sheets_are_two_inputs_and_stay_the_same():
    block = Fields(("made by, date",))
    here, there = names(tree(block, within="Tube a")), names(tree(block, within="Tube b"))
    assert here != there
    assert names(tree(block, within="Tube a")) == here


def test_what_stands_twice_on_a_sheet_is_counted():
    block = Bullets(("look", "look"), boxes=True)
    assert len(set(names(tree(block, block)))) == 4


def every_sheet():
    for evaluation in (example(), example("rigid"), awkward()):
        yield from packet_sheets(evaluation)
        yield from form_sheets(evaluation)


def texts(data):
    """Every text in plain data that is there to be read."""
    if isinstance(data, str):
        yield from data.replace(BOX, "").split("\n")
    elif isinstance(data, list):
        for each in data:
            yield from texts(each)
    elif isinstance(data, dict):
        # The state of a sheet stands beside its title where it is folded, which is on the pages of the app.
        unread = {"kind", "tone", "anchor", "state"} | ({"label"} if data["kind"] == "sum" else set())
        for key, each in data.items():
            yield from texts(each if key not in unread else [])


def test_every_word_of_every_sheet_arrives():
    for sheet in every_sheet():
        shown = "".join(words(read(sheet_html(sheet))).split())
        missing = [text for text in texts(plain(sheet)) if "".join(text.split()) not in shown]
        assert missing == []


def test_no_style_no_script_and_no_address_in_any_sheet():
    for sheet in every_sheet():
        for each in read(sheet_html(sheet)).iter():
            assert each.tag.rpartition("}")[2] not in {"script", "style", "a", "img"}
            assert not {"style", "href", "src", "id"} & set(each.attrib)
            assert not [name for name in each.attrib if name.startswith("on")]
            assert all(name.startswith("fp-") for name in each.get("class", "").split())


def test_every_input_of_every_sheet_has_a_name_of_its_own():
    for evaluation in (example("rigid"), awkward()):
        sheets = packet_sheets(evaluation) + form_sheets(evaluation)
        found = [name for sheet in sheets for name in names(read(sheet_html(sheet)))]
        assert len(found) > 50
        assert len(found) == len(set(found))
