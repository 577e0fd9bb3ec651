"""Two who write in one field of a form: the later one is asked, and only where somebody else wrote there."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from firmpedal.project import read_text
from firmpedal.project.field_places import thing_at
from firmpedal.project.fields import form_of
from firmpedal.web.form.chosen import Chosen
from firmpedal.web.form.clash import Clash, Shown, clash_html, where_of
from firmpedal.web.form.writing import Writing
from texts import edited, example

AT = "components.left_cylinder"
WHERE = (f"{AT}.bore", 0, 0)


def bore(words):
    reading = read_text(edited(example("brindlewick"), ("bore: 0.625", f"bore: {words}")), "a.yaml")
    fields = form_of(reading, thing_at(reading, AT)).all_fields()
    return next(field for field in fields if field.place == WHERE[0])


@pytest.mark.parametrize(
    ("now", "typed", "began", "asked"),
    [
        ("6 3/4", "7", "6 1/2", True),
        ("6 1/2", "7", "6 1/2", False),  # nobody else was there
        ("7", "7", "6 1/2", False),  # both wrote the same
        ("unknown", "7", "6 1/2", True),  # taken back by the other one
        ("unknown", "7", "", False),  # there was nothing to begin with
        ("6 3/4", "", "6 1/2", True),  # it was to be emptied
    ],
)
def test_asked_where_another_one_wrote_since(now, typed, began, asked):
    found = Shown().clash(WHERE, bore(now).rows[0].cells[0], typed, began)
    assert (found is not None) is asked
    if found is not None:
        assert (found.mine, found.theirs) == (typed, now)


def test_what_this_page_wrote_itself_is_no_news():
    shown, field = Shown(), bore("6 3/4")
    shown.wrote(WHERE, field)
    assert shown.clash(WHERE, field.rows[0].cells[0], "7", "6 1/2") is None
    assert shown.clash(WHERE, bore("6 7/8").rows[0].cells[0], "7", "6 1/2") is not None


def test_both_values_are_shown_and_the_buttons_know_their_cell():
    where = ("bends.left_leg.heat trial.port", 2, 1)
    clash = Shown().clash(where, bore("6 3/4").rows[0].cells[0], "<7>", "6 1/2")
    html = clash_html(clash)
    assert "wrote 6 3/4 here. You typed &lt;7&gt;." in html
    assert f'data-of="2 1 {where[0]}"' in html
    assert where_of(f"2 1 {where[0]}") == where


def test_what_waits_to_be_settled_outlives_a_text_that_cannot_be_read_for_a_while():
    text = example("brindlewick")
    waits = {None: {WHERE: Clash(WHERE, "3/4", "0.625")}}
    document = SimpleNamespace(text=edited(text, ("foot: {", "foot: {{")), unsettled=waits)
    chosen = Chosen("a.yaml", SimpleNamespace(document=document, option=None), AT)

    def waiting():
        """The place that a page opened now says to be waiting."""
        return Writing(chosen, lambda: None, lambda: None).unsettled_at()

    assert waiting() == WHERE[0]
    document.text = text
    assert waiting() == WHERE[0]
    document.text = edited(text, ("bore: 0.625", "bore: 3/4"))
    assert waiting() == ""
