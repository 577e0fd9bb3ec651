"""The page for the hangar as text: what is on it, what it forbids, under which key it keeps ticks."""

from __future__ import annotations

import base64
import re
from dataclasses import replace
from hashlib import sha256
from html import unescape
from html.parser import HTMLParser

import pytest
from evaluated import EXAMPLE, awkward, example, words
from typer.testing import CliRunner

from firmpedal.cli.main import app
from firmpedal.export.hangar import page, write
from firmpedal.export.place_words import PLACES
from firmpedal.pipeline import evaluate_text, usable_options
from firmpedal.report.cover import CAUTIONS, verdict_line
from firmpedal.report.hangar import before_sheet, hangar_sheets
from firmpedal.report.packet import footer_of
from firmpedal.report.sheet import BOX, Bullets, Group, Paragraph, Sheet, Table
from firmpedal.report.torque import torque_sheet

TEXT = EXAMPLE.read_text(encoding="utf-8")


def page_of(evaluation, options=()):
    return page(hangar_sheets(evaluation, options), footer_of(evaluation), verdict_line(evaluation))


def shown(made):
    """The words of a page; its style and script are none."""
    return re.sub("<[^>]+>", "", re.sub(r"<(style|script)>.*?</\1>", "", made, flags=re.DOTALL))


def key_of(made):
    return unescape(re.search(r'<main data-key="([^"]*)"', made)[1])


class Tags(HTMLParser):
    def __init__(self):
        super().__init__()
        self.found = []

    def handle_starttag(self, tag, attrs):
        self.found.append((tag, dict(attrs)))


def tags_of(made):
    reader = Tags()
    reader.feed(made)
    reader.close()
    return reader.found


def test_the_cards_come_in_the_order_of_the_work():
    evaluation = example("rigid")
    titles = [sheet.title for sheet in hangar_sheets(evaluation, usable_options(evaluation.reading))]
    assert titles[:4] == ["Before you begin", "From old to new", "Circuit", "Flaring a tube"]
    lines = ("Hose {}_pedal", "Tube {}_leg", "Hose {}_tail")
    assert titles[4:-4] == [line.format(side) for side in ("left", "right") for line in lines]
    assert titles[-4:] == [
        "Putting it together",
        "Torque and flare",
        "Filling and bleeding",
        "Joints, one by one",
    ]


def test_the_file_as_written_has_no_work_from_old_to_new():
    assert "From old to new" not in [sheet.title for sheet in hangar_sheets(example(), (example(),))]


def test_cautions_come_before_the_verdict():
    said = words(before_sheet(example()))
    assert max(said.index(caution) for caution in CAUTIONS) < said.index("NOT SOUND")


def test_an_aircraft_that_may_have_a_type_certificate_is_told_so_first():
    first = before_sheet(awkward()).blocks[0]
    assert "maker's approved data decide" in first.text


def test_it_says_of_which_revision_it_is_a_copy():
    made = shown(page_of(example("rigid")))
    assert "Copy of revision A, 2026-11-25" in made
    assert "This is a copy of revision A, 2026-11-25. It does not follow changes" in made


def test_a_file_without_revision_and_date_says_so():
    text = TEXT.replace("  revision: A\n", "").replace("  date: 2026-11-25\n", "")
    assert text != TEXT
    made = shown(page_of(evaluate_text(text)))
    assert "Copy of a file that names no revision" in made
    assert "a copy of a file that names no revision, without a date" in made
    assert "Write a revision and a date under Describe, aircraft, to tell two copies apart." in made


def test_what_is_named_is_not_asked_for():
    assert "to tell two copies apart" not in shown(page_of(example("rigid")))
    made = shown(page_of(evaluate_text(TEXT.replace("  date: 2026-11-25\n", ""))))
    assert "Write a date under Describe, aircraft," in made


def test_a_place_of_the_file_is_said_in_words_as_everywhere_in_the_app():
    sheets = (
        Sheet(
            "A card",
            (
                Paragraph("bore: oatmere.yaml line 79, components.pilot_left.bore"),
                Bullets(("seals (oatmere.yaml line 90, components.pilot_left.ports.outlet.at)",), boxes=True),
                Table(("what", "where"), (("corner", "oatmere.yaml line 9, lines.left_leg.via.2"),)),
            ),
        ),
    )
    made = shown(page(sheets, footer_of(example()), ""))
    assert "oatmere.yaml line 79, pilot_left bore" in made
    assert "(oatmere.yaml line 90, pilot_left outlet at)" in made
    assert "oatmere.yaml line 9, left_leg via 2" in made
    assert not re.search(r"(components|lines)\.\w", made)


@pytest.mark.parametrize("option", [None, "rigid", "all hose"])
def test_no_card_shows_a_key_of_the_file(option):
    evaluation = example(option)
    made = shown(page_of(evaluation, usable_options(evaluation.reading)))
    assert re.findall(rf"\b(?:{'|'.join(PLACES)})\.[a-z]\w*", made) == []


def torques_ticked(evaluation):
    """Every tick beside a torque, by the card that it is on."""
    return {
        sheet.title: [
            row for table in tables(sheet) if "torque" in table.columns for row in table.rows if BOX in row
        ]
        for sheet in hangar_sheets(evaluation)
    }


def tables(sheet):
    return [block for block in flat(sheet.blocks) if isinstance(block, Table)]


def flat(blocks):
    for block in blocks:
        yield from flat(block.blocks) if isinstance(block, Group) else (block,)


def test_a_nut_is_ticked_once_with_its_joint_and_the_torques_say_where():
    evaluation = example("rigid")
    ticked = {title: rows for title, rows in torques_ticked(evaluation).items() if rows}
    assert list(ticked) == ["Joints, one by one"]
    assert len(ticked["Joints, one by one"]) == len(evaluation.assembly.joints)
    (torques,) = (sheet for sheet in hangar_sheets(evaluation) if sheet.title == "Torque and flare")
    assert "It is ticked once, with its joint, on the card \u201cJoints, one by one\u201d." in words(torques)


def test_on_paper_the_torques_keep_their_list_to_tick():
    sheet = torque_sheet(example("rigid"))
    assert any(BOX in row for table in tables(sheet) if "by, date" in table.columns for row in table.rows)


def test_the_same_file_gives_the_same_page():
    assert page_of(example("rigid")) == page_of(evaluate_text(TEXT, EXAMPLE.name, "rigid"))


def test_every_revision_option_and_aircraft_keeps_its_own_ticks():
    sheets, footer = hangar_sheets(example()), footer_of(example())
    changed = [replace(footer, **{name: "other"}) for name in ("aircraft", "revision", "option")]
    keys = {key_of(page(sheets, each, "")) for each in (footer, *changed)}
    assert len(keys) == 4
    assert key_of(page(sheets, replace(footer, date="other"), "")) == key_of(page(sheets, footer, ""))


def test_the_policy_lets_in_this_style_and_this_script_only():
    made = page_of(example("rigid"))
    (policy,) = (each["content"] for tag, each in tags_of(made) if tag == "meta" and "http-equiv" in each)
    sources = dict(part.split(" ", 1) for part in policy.split("; "))
    assert sources["default-src"] == "'none'"
    for tag in ("style", "script"):
        (text,) = re.findall(f"<{tag}>(.*?)</{tag}>", made, re.DOTALL)
        digest = base64.b64encode(sha256(text.encode()).digest()).decode()
        assert sources[f"{tag}-src"] == f"'sha256-{digest}'"
    assert made.index("Content-Security-Policy") < made.index("<style>")


def test_nothing_on_the_page_leads_anywhere_else():
    for tag, attributes in tags_of(page_of(example("rigid"))):
        assert tag not in {"link", "img", "iframe", "base", "form", "object"}
        assert "src" not in attributes
        assert attributes.get("href", "#").startswith("#")
        assert "style" not in attributes
        assert not [name for name in attributes if name.startswith("on")]


def test_every_id_and_every_name_stands_once():
    tags = tags_of(page_of(example("rigid"), usable_options(example("rigid").reading)))
    ids = [each["id"] for _, each in tags if "id" in each]
    names = [each["name"] for tag, each in tags if tag == "input"]
    assert len(names) > 100
    assert len(ids) == len(set(ids))
    assert len(names) == len(set(names))


def test_every_card_stands_in_the_list():
    tags = tags_of(page_of(example("rigid")))
    links = [each["href"] for tag, each in tags if tag == "a"]
    cards = [f"#{each['id']}" for _, each in tags if "fp-hangar-card" in each.get("class", "")]
    assert sorted(links) == sorted(set(cards) - {"#cards"})


def test_a_hostile_name_stays_a_name():
    nasty = "</title><script>alert(1)</script>\" onload='x"
    footer = replace(footer_of(example()), aircraft=nasty, revision=nasty, option=nasty, date=nasty)
    made = page(hangar_sheets(example()), footer, nasty)
    tags = tags_of(made)
    assert [tag for tag, _ in tags].count("script") == 1
    assert not [each for _, each in tags if "onload" in each]
    assert nasty in key_of(made).replace('\\"', '"')


def test_the_command_writes_it(tmp_path):
    out = tmp_path / "page.html"
    told = CliRunner().invoke(app, ["hangar", str(EXAMPLE), "--option", "rigid", "-o", str(out)])
    assert told.exit_code == 0
    assert "14 cards" in " ".join(told.stdout.split())
    evaluation = example("rigid")
    again = tmp_path / "again.html"
    assert write(evaluation, usable_options(evaluation.reading), again) == 14
    assert out.read_text(encoding="utf-8") == again.read_text(encoding="utf-8")


@pytest.mark.parametrize("out", ["a_file/page.html", "."])
def test_the_command_says_what_it_cannot_write(tmp_path, out):
    (tmp_path / "a_file").write_text("", encoding="utf-8")
    told = CliRunner().invoke(app, ["hangar", str(EXAMPLE), "-o", str(tmp_path / out)])
    assert told.exit_code == 2
    assert "cannot be written" in " ".join(told.stderr.split())
