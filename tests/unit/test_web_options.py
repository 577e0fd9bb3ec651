"""Options side by side and the work between them, as pages: the same report as on the command line."""

from __future__ import annotations

import re

import pytest
from html_trees import of_class, read, words

from firmpedal.export.html_words import marked
from firmpedal.export.place_words import named
from firmpedal.model.display import usual_display
from firmpedal.pipeline import evaluate, evaluate_options
from firmpedal.project import read_text
from firmpedal.report.compare import compare_sheet
from firmpedal.report.putting_together import putting_together_sheet
from firmpedal.report.retrofit import retrofit_sheet
from firmpedal.report.sheet import Bullets, Paragraph, Table
from firmpedal.web import addresses
from firmpedal.web.answers import System
from firmpedal.web.app import _only_option
from firmpedal.web.options import options_of
from firmpedal.web.pages import fit
from firmpedal.web.pages.options import UNREADABLE, side_by_side
from firmpedal.web.pages.retrofit import work_html
from firmpedal.web.shelf import Shelf
from texts import edited, example

TEXT = example("brindlewick")
BROKEN = edited(TEXT, ("moves with: left_wheel\n        sides:", "moves wth: left_wheel\n        sides:"))


def plain(made):
    """The words of a page, blanks made one; a place to break a long name is no word."""
    return re.sub(r"\s+", " ", words(read(made)))


def said_in(blocks):
    """The words that a sheet is made of."""
    for block in blocks:
        if isinstance(block, Paragraph):
            yield block.text
        elif isinstance(block, Bullets):
            yield from block.items
        elif isinstance(block, Table):
            yield from (line for row in block.rows for cell in row for line in cell.split("\n") if line)


def test_side_by_side_is_the_report_of_the_command_line():
    made = plain(side_by_side(TEXT, "a.yaml", None, None))
    sheet = compare_sheet(evaluate_options(read_text(TEXT, "a.yaml")))
    told = list(said_in(sheet.blocks))
    assert len(told) > 100
    assert [each for each in told if marked(named(each)) not in made] == []


def test_each_option_has_a_card_with_its_verdict_and_ways_on():
    found = options_of(TEXT, "a.yaml", None)
    cards = of_class(read(side_by_side(TEXT, "a.yaml", "rigid", None)), "fp-card")
    assert [words(card.find("h2")) for card in cards] == ["as written", "rigid", "all hose"]
    for card, option in zip(cards, found, strict=True):
        (bar,) = of_class(card, "fp-verdict-bar")
        assert bar.get("data-verdict") == option.evaluation.verdict.value
        links = [each.get("href") for each in card.iter("a")]
        assert links[0] == addresses.step("a.yaml", "sound", option.name)
        assert links[1:] == ([addresses.retrofit("a.yaml", option.name)] if option.name else [])


def test_figures_are_in_the_units_that_are_wanted():
    for before, unit, other in ((None, " lb", " kg"), (System.METRIC, " kg", " lb")):
        made = plain(side_by_side(TEXT, "a.yaml", None, before))
        assert unit in made
        assert other not in made


def test_an_option_that_cannot_be_read_is_named_and_left_out():
    made = side_by_side(BROKEN, "a.yaml", None, None)
    card = of_class(read(made), "fp-card")[1]
    assert UNREADABLE in words(card)
    assert next(card.iter("a")).get("href") == addresses.step("a.yaml", "describe", "rigid")
    assert "as written, all hose" in plain(made)
    assert work_html(None, BROKEN, "a.yaml", "rigid", None) == ""


def test_a_file_without_options_has_nothing_to_set_beside_another():
    text = TEXT.partition("\noptions:")[0] + "\n"
    assert options_of(text, "a.yaml", None)[0].evaluation is not None
    assert side_by_side(text, "a.yaml", None, None) == ""


@pytest.mark.parametrize(("before", "after"), [(None, "rigid"), ("rigid", "all hose"), ("all hose", None)])
def test_the_work_is_the_report_of_the_command_line(before, after):
    made = plain(work_html(before, TEXT, "a.yaml", after, None))
    old, new = evaluate_options(read_text(TEXT, "a.yaml"), (before, after))
    told = list(said_in(retrofit_sheet(old, new).blocks))
    assert len(told) > 20
    assert [each for each in told if each not in made] == []


def test_old_and_new_are_told_in_the_same_units():
    made = plain(work_html("rigid", TEXT, "a.yaml", None, System.METRIC))
    assert " mm" in made
    assert not re.search(r"\d\.\d+ in\b", made)  # `1/4 in` is the name of a clamp


def test_there_is_no_work_from_one_to_the_same():
    assert work_html("rigid", TEXT, "a.yaml", "rigid", None) == ""
    assert work_html("nothing of the kind", TEXT, "a.yaml", "rigid", None) == ""


def test_the_work_under_fit_and_fill_is_in_the_units_of_the_page():
    (written, built) = evaluate_options(read_text(TEXT, "a.yaml"), (None, "rigid"))
    metric = usual_display("mm", 16)
    shown = [evaluate(each.reading, metric) for each in (written, built)]
    assert retrofit_sheet(*shown) in fit.sheets(shown[1])
    assert retrofit_sheet(written, built) in fit.sheets(built)
    assert retrofit_sheet(*shown) != retrofit_sheet(written, built)


@pytest.mark.parametrize("option", [None, "rigid"])
def test_fit_and_fill_says_what_goes_on_before_what_ahead_of_filling(option):
    (found,) = evaluate_options(read_text(TEXT, "a.yaml"), (option,))
    sheets = fit.sheets(found)
    order = [sheet.title for sheet in sheets]
    assert putting_together_sheet(found) in sheets
    assert order.index("Putting it together") < order.index("Filling and bleeding")


def test_where_there_is_one_option_the_work_leads_to_it(tmp_path):
    one = TEXT.partition("\noptions:")[0] + "\n"
    for name, text in (("none", one), ("one", f"{one}options: {{braided hose: {{}}}}\n"), ("two", TEXT)):
        (tmp_path / f"{name}.yaml").write_text(text, encoding="utf-8")
    shelf = Shelf(tmp_path)
    found = [_only_option(shelf, f"{name}.yaml") for name in ("none", "one", "two", "nowhere")]
    assert found == [None, "braided hose", None, None]
