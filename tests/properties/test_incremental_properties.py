"""An answer after changes is the answer from nothing: nothing that was remembered on the way is stale."""

from __future__ import annotations

import re
import sys

from hypothesis import HealthCheck, event, given, settings
from hypothesis import strategies as st

from firmpedal.pipeline import evaluate
from firmpedal.project import read_text
from firmpedal.project.edit import EditError, edited
from texts import example

FIGURE = re.compile(r"(?<=[:\[,] )-?\d+(?:\.\d+|-\d+/\d+|/\d+)?(?=[\s,\]}])|(?<=\[)-?\d+(?:\.\d+)?(?=,)")
FIGURES = [
    "unknown",
    "0",
    "-1",
    "0.001",
    "1/64",
    "1",
    "3 to 4",
    "about 5",
    "17",
    "90",
    "{value: 3, mark: assumed}",
]
LINES = ["# a remark\n", "\n", "    # one that stands further in\n", "\n\n\n"]
PLACES = {
    "brindlewick": ["foot.hard", "components.left_cylinder.bore", "bench.bend radius"],
    "fennimoss": ["foot.hard", "bench.bend radius"],
    "oatmere": [
        "foot.hard", "components.pilot_left.bore", "bulkheads.left_belly.thickness", "lines.left_run.via.2",
        "lines.left_gear.via.1", "lines.left_run.clamps", "bench.bend radius",
    ],
}  # fmt: skip
PIECES = ["1/2", "0.81", "unknown", "[10.6, -2.5, -0.5]", "[49.2, -18, -5]", "[14, 24]"]
# What the catalogue and the formulas read of themselves is the same for every aircraft.
CONSTANT = ("firmpedal.catalog", "firmpedal.formulas")


def forget():
    """Take away everything that any stage remembers."""
    for name, module in tuple(sys.modules.items()):
        if name.startswith("firmpedal.") and not name.startswith(CONSTANT):
            for each in tuple(vars(module).values()):
                if hasattr(each, "cache_clear") and not each.__module__.startswith(CONSTANT):
                    each.cache_clear()


def answer(text, option):
    """What a text comes to: its reading, and the evaluation where it can be read."""
    reading = read_text(text, "aircraft.yaml", option)
    return reading, None if reading.problems else evaluate(reading)


@st.composite
def changed(draw, name, text):
    """The text with one more change, as a form, an editor or a slip of the hand makes it."""
    kind = draw(st.sampled_from(["form", "form", "figure", "line"]))
    if kind == "form":
        try:
            return edited(text, draw(st.sampled_from(PLACES[name])), draw(st.sampled_from(PIECES)))
        except EditError:
            return text
    if kind == "figure":
        old = draw(st.sampled_from(list(FIGURE.finditer(text))))
        return text[: old.start()] + draw(st.sampled_from(FIGURES)) + text[old.end() :]
    lines = text.splitlines(keepends=True)
    lines.insert(draw(st.integers(0, len(lines))), draw(st.sampled_from(LINES)))
    return "".join(lines)


@settings(max_examples=15, deadline=None, suppress_health_check=list(HealthCheck))
@given(st.data())
def test_after_any_changes_the_answer_is_the_one_from_nothing(data):
    name = data.draw(st.sampled_from(list(PLACES)))
    text = example(name)
    option = data.draw(st.sampled_from([None, *read_text(text).options]))
    answer(text, option)
    for _ in range(data.draw(st.integers(1, 4))):
        text = data.draw(changed(name, text))
        warm = answer(text, option)
    forget()
    cold = answer(text, option)
    event("cannot be read" if cold[1] is None else "evaluated")
    assert warm[0] == cold[0]
    assert warm[1] == cold[1]
    assert repr(warm[1]) == repr(cold[1])  # to the last figure, and with the same signs of nothing
    assert warm[0].tree == cold[0].tree
